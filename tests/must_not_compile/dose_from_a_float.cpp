// A dose is never made from a floating-point number.
// Says: conversion from 'double' to non-scalar type|could not convert
#include "units/insulin.hpp"

using stopgap::Insulin;

#ifdef FORBIDDEN
constexpr Insulin dose = 3.5;
#else
constexpr Insulin dose = Insulin::hundredths(350);
#endif
