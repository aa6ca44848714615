// A number alone is no glucose: the unit has to be said.
// Says: conversion from 'double' to non-scalar type|could not convert
#include "units/glucose.hpp"

using stopgap::Glucose;

#ifdef FORBIDDEN
constexpr Glucose reading = 16.0;
#else
constexpr Glucose reading = Glucose::mmol_tenths(160);
#endif
