// Off the pump and back: how soon, how long, what a journey across time zones does to injected basal, and how long insulin keeps.
#pragma once
#include <array>
#include <cstdint>
#include <string_view>
#include "figures/figure.hpp"
#include "figures/sources.hpp"
#include "units/insulin.hpp"
#include "units/time.hpp"

namespace stopgap::figures {

inline constexpr Figure<Duration> off_pump_look{
    "off-pump-look", Duration::minutes(60), "min", sources::wtd.id, "off the pump, look hourly (R-23)", Mark::read, {2026, 11, 25}};
inline constexpr Figure<Duration> longest_without_insulin{
    "longest-without-insulin", Duration::hours(2), "h", sources::chw_1878.id, "not more than 2 h without insulin (R-23)", Mark::read, {2026, 11, 25}};
inline constexpr Figure<Duration> bridge_tolerance{
    "bridge-tolerance", Duration::minutes(30), "min", "house", "a bridge this much early or late still follows on the last one", Mark::house, {2026, 11, 25}};
inline constexpr Figure<Duration> order_stands{
    "order-stands", Duration::hours(1), "h", "house", "an amount of long-acting named on a call is for now: later it is asked for again", Mark::house, {2026, 11, 28}};
inline constexpr Figure<Duration> signs_last{
    "signs-last", Duration::hours(4), "h", "house", "signs noted this long ago still hold off the pump, as ketones do", Mark::house, {2026, 11, 25}};
inline constexpr Figure<Duration> back_first_look{
    "back-first-look", Duration::hours(2), "h", sources::hamilton.id, "back on the pump, look at 2 h (R-27)", Mark::read, {2026, 11, 25}};
inline constexpr Figure<Duration> back_later_looks{
    "back-later-looks", Duration::hours(4), "h", sources::hamilton.id, "look at 2 h, then 4-hourly (R-27)", Mark::read, {2026, 11, 28}};

// A long-acting dose is a whole day's basal, in one part or in two.
inline constexpr Figure<Duration> long_acting_day{
    "long-acting-day", Duration::hours(24), "h", sources::hamilton.id, "24 h basal, given once a day (CV-22, R-27)", Mark::read, {2026, 11, 25}};
inline constexpr Figure<Duration> later_long_acting_part{
    "later-long-acting-part", Duration::hours(12), "h", sources::fi_backup.id, "two parts: morning and evening (CV-23)", Mark::read, {2026, 11, 25}};
inline constexpr Figure<Duration> part_after_a_half{
    "part-after-a-half", Duration::hours(6), "h", sources::fi_backup.id, "half at 13:00, the evening dose at 19:00 (CV-26)", Mark::derived, {2026, 11, 25}};
inline constexpr Figure<Share> half_part{
    "half-part", Share::thousandths(500), "share", sources::fi_backup.id, "13:00 half the morning dose (CV-26)", Mark::read, {2026, 11, 25}};
// First day of a basal insulin in two parts, by the clock: whole, half, whole (CV-26 prints 10:00, 13:00 and 19:00).
inline constexpr Figure<TimeOfDay> first_part_halves_from{
    "first-part-halves-from", TimeOfDay::minutes(12 * 60), "time of day", sources::fi_backup.id, "13:00 half the morning dose; the edge is ours", Mark::derived, {2026, 11, 25}};
inline constexpr Figure<TimeOfDay> first_part_is_evening_from{
    "first-part-is-evening-from", TimeOfDay::minutes(18 * 60), "time of day", sources::fi_backup.id, "19:00 the whole evening dose; the edge is ours", Mark::derived, {2026, 11, 25}};

inline constexpr Figure<Share> enough_of_long_acting{
    "enough-of-long-acting", Share::thousandths(900), "share", "house",
    "nine tenths of the plan's amount stand for all of it; with less, the team is called", Mark::house, {2026, 12, 1}};
inline constexpr Figure<Duration> long_acting_sum_span{
    "long-acting-sum-span", Duration::hours(20), "h", "house",
    "what went in this long ago is added to an order: together never more than a day's dose", Mark::house, {2026, 12, 1}};
inline constexpr Figure<Duration> onset_that_is_bridged{
    "onset-that-is-bridged", Duration::hours(2), "h", sources::chw_1878.id,
    "a following dose with a longer onset is bridged: not more than 2 h without insulin (R-23)", Mark::derived, {2026, 12, 1}};
inline constexpr Figure<std::int64_t> young_child_years{
    "young-child-years", 5, "years", sources::sbd_2023.id, "under 5 years help early (R-05)", Mark::read, {2026, 12, 1}};
// What a record can say of the hours that a bridge is for.
inline constexpr Figure<Duration> basal_hours_step{
    "basal-hours-step", Duration::minutes(30), "min", "house", "hours of a bridge are written down in halves", Mark::house, {2026, 12, 1}};

// A day's journey. East shortens the day: less, at the home clock's time. West lengthens it: the dose in two halves.
inline constexpr Figure<std::int64_t> zones_that_matter{
    "zones-that-matter", 3, "zones", sources::fi_backup.id, "under 3 h ignore (CV-31)", Mark::read, {2026, 11, 25}};
inline constexpr Figure<std::int64_t> zones_that_change_basal{
    "zones-that-change-basal", 5, "zones", sources::zones_2013.id, "the basal rule starts at 5 (CV-31)", Mark::second_hand, {2026, 11, 25}};
inline constexpr Figure<Share> east_share{
    "east-share", Share::thousandths(900), "share", sources::zones_2013.id, "0.9 less a 24th for each zone east (CV-28)", Mark::second_hand, {2026, 11, 25}};
inline constexpr Figure<std::int64_t> zones_of_a_day{
    "zones-of-a-day", 24, "zones", sources::zones_2013.id, "a zone is a 24th of a day (CV-28)", Mark::second_hand, {2026, 11, 25}};
inline constexpr Figure<Share> west_part{
    "west-part", Share::thousandths(500), "share", sources::zones_2013.id, "half at the home clock's time, half at the usual hour there (CV-30)", Mark::second_hand, {2026, 11, 25}};

// What stays in the pump and under the skin.
inline constexpr Figure<Duration> set_lasts{
    "set-lasts", Duration::hours(72), "h", sources::lispro_label.id, "set and site 3 days (CV-33)", Mark::read, {2026, 11, 25}};
inline constexpr Figure<Duration> lispro_reservoir_lasts{
    "lispro-reservoir-lasts", Duration::hours(7 * 24), "h", sources::lispro_label.id, "lispro reservoir 7 days (CV-33)", Mark::read, {2026, 11, 25}};
inline constexpr Figure<Duration> aspart_reservoir_lasts{
    "aspart-reservoir-lasts", Duration::hours(6 * 24), "h", "from memory", "aspart 6-7 days, faster aspart 6 (R-30): the shorter", Mark::memory, {2026, 11, 25}};
inline constexpr Figure<Duration> glulisine_reservoir_lasts{
    "glulisine-reservoir-lasts", Duration::hours(2 * 24), "h", "from memory", "glulisine 2 days (R-30)", Mark::memory, {2026, 11, 25}};

struct ReservoirDays {
  std::string_view insulin;
  Duration lasts;
};
inline constexpr std::array<ReservoirDays, 4> reservoirs{{{"lispro", lispro_reservoir_lasts.value}, {"aspart", aspart_reservoir_lasts.value},
    {"faster aspart", aspart_reservoir_lasts.value}, {"glulisine", glulisine_reservoir_lasts.value}}};

// An outage nobody was told of.
inline constexpr Figure<Duration> outage_call{
    "outage-call", Duration::hours(24), "h", "house", "a day on injections: talk to the team", Mark::house, {2026, 11, 25}};
inline constexpr Figure<Duration> outage_call_again{
    "outage-call-again", Duration::hours(48), "h", "house", "two days: the plan was not made for this", Mark::house, {2026, 11, 25}};

}  // namespace stopgap::figures
