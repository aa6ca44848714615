// How old a fact may be, how long a span lasts, and when to look again.
#pragma once
#include "figures/figure.hpp"
#include "figures/sources.hpp"
#include "units/time.hpp"

namespace stopgap::figures {

inline constexpr Figure<Duration> glucose_reading_lasts{
    "glucose-reading-lasts", Duration::minutes(15), "min", "house", "an older reading counts as missing", Mark::house, {2026, 11, 25}};
inline constexpr Figure<Duration> ketone_reading_lasts{
    "ketone-reading-lasts", Duration::minutes(30), "min", "house", "an older reading counts as not tested", Mark::house, {2026, 11, 25}};
inline constexpr Figure<Duration> last_ketones_matter{
    "last-ketones-matter", Duration::hours(4), "h", sources::rch_ketones.id, "ketones every 4 h while ill (R-10)", Mark::read, {2026, 11, 25}};
inline constexpr Figure<Duration> clock_tolerance{
    "clock-tolerance", Duration::minutes(2), "min", "house", "an event later than this after now: clock in doubt", Mark::house, {2026, 11, 25}};
inline constexpr Figure<Duration> incident_span{
    "incident-span", Duration::hours(24), "h", "house", "implied from the last 24 h; closed after 24 h of silence", Mark::house, {2026, 11, 25}};
inline constexpr Figure<Duration> change_before_dose{
    "change-before-dose", Duration::minutes(60), "min", "house", "a change this long before the dose answers it", Mark::house, {2026, 11, 25}};
inline constexpr Figure<Duration> unanswered_call{
    "unanswered-call", Duration::minutes(30), "min", "house", "team did not answer: call emergency", Mark::house, {2026, 11, 25}};

inline constexpr Figure<Duration> mis_tap_lasts{
    "mis-tap-lasts", Duration::seconds(60), "s", "house", "taken back at once: the wrong button was pressed", Mark::house, {2026, 12, 1}};
inline constexpr Figure<Duration> clock_behind{
    "clock-behind", Duration::hours(24), "h", "house", "earlier than this before a day known to be past: clock in doubt", Mark::house,
    {2026, 12, 1}};
inline constexpr Figure<Duration> short_run_of_pump{
    "short-run-of-pump", Duration::minutes(30), "min", "house", "a pump that ran no longer than this never came back", Mark::house, {2026, 12, 1}};
inline constexpr Figure<Duration> mistake_with_long_acting{
    "mistake-with-long-acting", Duration::hours(24), "h", "house", "no further long-acting insulin for a day after a mistake with it", Mark::house,
    {2026, 12, 1}};

inline constexpr Figure<Duration> look_low{
    "look-low", Duration::minutes(15), "min", sources::au_pump.id, "low: look at 15 min (R-16)", Mark::read, {2026, 11, 25}};
inline constexpr Figure<Duration> look_going_low{
    "look-going-low", Duration::minutes(30), "min", "house", "would go low from the middle up; could go low while high", Mark::house, {2026, 11, 25}};
inline constexpr Figure<Duration> look_usual{
    "look-usual", Duration::minutes(60), "min", sources::au_pump.id, "both at 1 h (R-16)", Mark::read, {2026, 11, 25}};
inline constexpr Figure<Duration> look_quiet{
    "look-quiet", Duration::minutes(120), "min", sources::rch_line.id, "recheck in 2 h (R-09)", Mark::read, {2026, 11, 25}};

inline constexpr Figure<std::int64_t> adult_years{
    "adult-years", 18, "years", "common practice", "age from which weight is reviewed yearly", Mark::practice, {2026, 11, 25}};
inline constexpr Figure<std::int64_t> child_weight_days{
    "child-weight-days", 90, "days", "common practice", "a child's weight and daily total are older: say so", Mark::practice, {2026, 11, 25}};
inline constexpr Figure<std::int64_t> adult_weight_days{
    "adult-weight-days", 365, "days", "common practice", "an adult's weight and daily total are older: say so", Mark::practice, {2026, 11, 25}};

inline constexpr Figure<std::int64_t> review_notice_days{
    "review-notice-days", 30, "days", "common practice", "time to find an appointment before the review date", Mark::practice, {2026, 11, 25}};

}  // namespace stopgap::figures
