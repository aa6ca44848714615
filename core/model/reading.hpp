// Readings as somebody took them. A word of a meter (HI, LO) or of a strip is a category: no arithmetic reaches it.
#pragma once
#include <cstdint>
#include <optional>
#include "units/glucose.hpp"
#include "units/ketones.hpp"
#include "units/time.hpp"

namespace stopgap {

enum class MeterWord : std::uint8_t { number, HI, LO };
enum class ReadFrom : std::uint8_t { finger, sensor };

struct GlucoseReading {
  MeterWord word = MeterWord::number;
  Glucose value;                              // only with MeterWord::number
  GlucoseUnit unit = GlucoseUnit::mmol;       // as read; another unit than the plan's makes it a converted number
  ReadFrom from = ReadFrom::finger;
  friend bool operator==(const GlucoseReading&, const GlucoseReading&) = default;
};

enum class KetoneKind : std::uint8_t { blood, bloodHI, urine, notYet, noStrips, error };

struct KetoneReading {
  KetoneKind kind = KetoneKind::notYet;
  Ketones blood;                              // only with KetoneKind::blood
  StripWord strip = StripWord::negative;      // only with KetoneKind::urine
  friend bool operator==(const KetoneReading&, const KetoneReading&) = default;
};

// A value or a word of a strip, and not the reason why there is none.
constexpr bool is_known(const KetoneReading& reading) {
  return reading.kind == KetoneKind::blood || reading.kind == KetoneKind::bloodHI || reading.kind == KetoneKind::urine;
}

}  // namespace stopgap
