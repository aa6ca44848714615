// Codes under which a clinic's system knows a reading and a unit. Only codes whose source was read, or read about, stand here.
#pragma once
#include <string_view>
#include "figures/figure.hpp"
#include "figures/sources.hpp"

namespace stopgap::figures {

inline constexpr Figure<std::string_view> loinc_finger_mg{
    "loinc-finger-mg", "41653-7", "LOINC", sources::loinc_codes.id, "glucose by meter, mass", Mark::second_hand, {2026, 11, 25}};
inline constexpr Figure<std::string_view> loinc_finger_mmol{
    "loinc-finger-mmol", "14743-9", "LOINC", sources::loinc_codes.id, "glucose by meter, moles", Mark::second_hand, {2026, 11, 25}};
inline constexpr Figure<std::string_view> loinc_sensor_mg{
    "loinc-sensor-mg", "99504-3", "LOINC", sources::loinc_codes.id, "glucose by sensor, mass", Mark::second_hand, {2026, 11, 25}};
inline constexpr Figure<std::string_view> loinc_sensor_mmol{
    "loinc-sensor-mmol", "105272-9", "LOINC", sources::loinc_codes.id, "glucose by sensor, moles", Mark::second_hand, {2026, 11, 25}};
inline constexpr Figure<std::string_view> loinc_ketones_blood{
    "loinc-ketones-blood", "66441-7", "LOINC", sources::loinc_codes.id, "beta-hydroxybutyrate, test strip", Mark::second_hand, {2026, 11, 25}};
inline constexpr Figure<std::string_view> loinc_ketones_urine{
    "loinc-ketones-urine", "50557-8", "LOINC", sources::loinc_codes.id, "ketones in urine, test strip", Mark::second_hand, {2026, 11, 25}};

inline constexpr Figure<std::string_view> ucum_mg{
    "ucum-mg", "mg/dL", "UCUM", sources::ucum.id, "common codes", Mark::read, {2026, 11, 25}};
inline constexpr Figure<std::string_view> ucum_mmol{
    "ucum-mmol", "mmol/L", "UCUM", sources::ucum.id, "common codes", Mark::read, {2026, 11, 25}};
// "U" is the enzyme unit and another thing.
inline constexpr Figure<std::string_view> ucum_insulin{
    "ucum-insulin", "[iU]", "UCUM", sources::ucum.id, "common codes", Mark::read, {2026, 11, 25}};

}  // namespace stopgap::figures
