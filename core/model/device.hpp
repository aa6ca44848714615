// What insulin is injected with.
#pragma once
#include <cstdint>
#include "units/insulin.hpp"

namespace stopgap {

enum class DeviceKind : std::uint8_t { syringe, pen };

// A syringe or a pen.
struct Device {
  Insulin capacity;
  Insulin step;
};

}  // namespace stopgap
