// The reasons of an advice are complete and minimal: a fact that is not named may be changed to anything and the advice stays;
// a fact that is named can be changed so that it does not. The changes are drawn here, wider than any list the core could try.
#include <gtest/gtest.h>

#include <functional>

#include "because.hpp"
#include "nights.hpp"

namespace stopgap {
namespace {

using namespace nights;

constexpr std::uint64_t nights_drawn = 4000;
constexpr int changes_drawn = 40, most_changes_drawn = 4000;  // a named fact is tried until a change is found that matters

// One change of one fact, drawn.
struct Changeable {
  const char* name;
  Fact fact;
  std::function<void(Night&, Draw&)> change;
};

Situation drawn_with(const Night& night, Draw& draw) { return NightDrawn(draw, night.plan).situation(); }

std::vector<Changeable> changeables() {
  const auto another = [](auto Situation::*member) {
    return [member](Night& night, Draw& draw) { night.situation.*member = drawn_with(night, draw).*member; };
  };
  return {
      {"glucose", Fact::glucose, another(&Situation::glucose)},
      {"ketones", Fact::ketones, another(&Situation::ketones)},
      {"signs", Fact::signs,
       [](Night& night, Draw& draw) {
         night.situation.signs = {};
         for (int sign = 0; sign < 9; ++sign)
           if (draw.chance(20)) night.situation.signs.add(static_cast<Sign>(sign));
       }},
      {"seen", Fact::seen,
       [](Night& night, Draw& draw) {
         night.situation.seen = {};
         for (int fault = 0; fault < 8; ++fault)
           if (draw.chance(20)) night.situation.seen.add(static_cast<Fault>(fault));
       }},
      {"carbs", Fact::carbs,
       [](Night& night, Draw& draw) {
         night.situation.carbs.reset();
         if (draw.chance(90)) night.situation.carbs = Carbohydrate::grams(draw.from(0, 150));
       }},
      {"unwell", Fact::unwell, [](Night& night, Draw& draw) { night.situation.unwell = draw.chance(50); }},
      {"mistake", Fact::mistake,
       [](Night& night, Draw& draw) {
         night.situation.mistake.reset();
         if (draw.chance(20)) return;
         night.situation.mistake = Situation::Mistake{static_cast<MistakeKind>(draw.from(0, 3)), draw.chance(50) ? InsulinType::rapid : InsulinType::long_acting, {}};
         if (draw.chance(70)) night.situation.mistake->units = Insulin::hundredths(draw.from(5, 10000));
       }},
      {"pumpOnBoard", Fact::pumpOnBoard,
       [](Night& night, Draw& draw) {
         night.situation.pump_on_board.reset();
         if (draw.chance(90)) night.situation.pump_on_board = Insulin::hundredths(draw.chance(70) ? draw.from(0, 1200) : draw.from(0, 10000));
       }},
      {"pumpOffersNothing", Fact::pumpOffersNothing, [](Night& night, Draw& draw) { night.situation.pump_offers_nothing = draw.chance(50); }},
      {"highSince", Fact::highSince,
       [](Night& night, Draw& draw) {
         night.situation.high_since.reset();
         if (draw.chance(90)) night.situation.high_since = ago(draw.from(0, 1000));
       }},
      {"with", Fact::with,
       [](Night& night, Draw& draw) {
         night.situation.with.reset();
         if (night.plan.syringe && night.plan.pen && draw.chance(80)) night.situation.with = draw.one_of({DeviceKind::syringe, DeviceKind::pen});
       }},
      {"viewer", Fact::viewer,
       [](Night& night, Draw& draw) {
         if (night.plan.school) night.situation.viewer = draw.one_of({Viewer::person, Viewer::school});
       }},
      {"agreement", Fact::agreement,
       [](Night& night, Draw& draw) {
         night.plan.agreement.status = draw.one_of({PlanStatus::agreed, PlanStatus::agreed, PlanStatus::draft, PlanStatus::withdrawn});
         night.plan.agreement.review_by = local_day(night.situation.now).plus_days(draw.from(-60, 60));
       }},
      {"pregnant", Fact::pregnant,
       [](Night& night, Draw&) {
         if (night.plan.ketones.any_glucose) night.plan.person.pregnant = !night.plan.person.pregnant;
       }},
      {"sglt2Inhibitor", Fact::sglt2Inhibitor,
       [](Night& night, Draw&) {
         if (night.plan.ketones.any_glucose) night.plan.person.sglt2_inhibitor = !night.plan.person.sglt2_inhibitor;
       }},
  };
}

// The events of one kind taken away, or any one of them alone; a switch may also be turned the other way.
void change_events(Night& night, Draw& draw, EventKind kind) {
  std::vector<Event>& events = night.record.events;
  const auto is_of_kind = [&](const Event& event) { return event.kind == kind; };
  if ((kind == EventKind::automation || kind == EventKind::pump) && draw.chance(50)) {
    const bool on = draw.chance(50);
    for (Event& event : events)
      if (is_of_kind(event)) event.on = on;
  } else if (draw.chance(50)) {
    std::erase_if(events, is_of_kind);
  } else {
    auto left_out = draw.from(0, std::count_if(events.begin(), events.end(), is_of_kind) - 1);
    events.erase(std::find_if(events.begin(), events.end(), [&](const Event& event) { return is_of_kind(event) && left_out-- == 0; }));
  }
}

// A night with its advice and the reasons for it. Every fact is weighed in the same nights, so they are worked out once.
struct Known {
  Night night;
  Advice advice;
  std::vector<Because> reasons;
  bool names(Fact fact) const {
    return std::any_of(reasons.begin(), reasons.end(), [&](const Because& reason) { return reason.fact == fact; });
  }
  bool names(EventKind kind) const {
    return std::any_of(reasons.begin(), reasons.end(), [&](const Because& reason) { return reason.fact == Fact::event && reason.kind == kind; });
  }
};

const std::vector<Known>& known_nights() {
  static const std::vector<Known> all = [] {
    std::vector<Known> made;
    made.reserve(nights_drawn);
    for (std::uint64_t number = 0; number < nights_drawn; ++number) {
      Night night = night_of(number);
      Advice advice = night.advice();
      std::vector<Because> reasons = because(night.plan, night.record, night.situation, advice);
      made.push_back({std::move(night), std::move(advice), std::move(reasons)});
    }
    return made;
  }();
  return all;
}

// Whether a fact is named exactly if some change of it changes the advice.
class Judge {
 public:
  // `change` is drawn anew each time; a night is passed over where the fact cannot be changed.
  void weigh(const Known& known, bool named, const std::function<void(Night&)>& change) {
    const Night& night = known.night;
    Night other = night;
    for (int i = 0; i < (named ? most_changes_drawn : changes_drawn); ++i) {
      if (i > 0) other = night;  // assigned and not made anew: a copy in place asks for no memory
      change(other);
      if (other.advice() == known.advice) continue;
      if (!named && ++not_named_ == 1) example_ += "\nnot named, yet changing it changes the advice:\n" + told(night) + "\n  changed to\n" + told(other);
      return;
    }
    if (named && ++idle_ == 1) example_ += "\nnamed, yet no change of it changes the advice:\n" + told(night);
  }
  void expect_none(const std::string& name) const {
    EXPECT_EQ(not_named_, 0) << name << example_;
    EXPECT_EQ(idle_, 0) << name << example_;
  }

 private:
  int not_named_ = 0, idle_ = 0;
  std::string example_;
};

class WhatIsEntered : public testing::TestWithParam<std::size_t> {};

TEST_P(WhatIsEntered, IsNamedExactlyIfItMatters) {
  const Changeable changeable = changeables()[GetParam()];
  Judge judge;
  for (std::uint64_t number = 0; number < nights_drawn; ++number) {
    Draw draw(7 * number);
    const Known& known = known_nights()[number];
    judge.weigh(known, known.names(changeable.fact), [&](Night& other) { changeable.change(other, draw); });
  }
  judge.expect_none(changeable.name);
}
INSTANTIATE_TEST_SUITE_P(Because, WhatIsEntered, testing::Range(std::size_t{0}, changeables().size()),
                         [](const auto& instance) { return std::string(changeables()[instance.param].name); });

class WhatIsRecorded : public testing::TestWithParam<int> {};

TEST_P(WhatIsRecorded, IsNamedExactlyIfItMatters) {
  const auto kind = static_cast<EventKind>(GetParam());
  Judge judge;
  for (std::uint64_t number = 0; number < nights_drawn; ++number) {
    Draw draw(7 * number);
    const Known& known = known_nights()[number];
    const auto& events = known.night.record.events;
    if (std::none_of(events.begin(), events.end(), [&](const Event& event) { return event.kind == kind; })) continue;
    judge.weigh(known, known.names(kind), [&](Night& other) { change_events(other, draw, kind); });
  }
  judge.expect_none("events of kind " + std::to_string(GetParam()));
}
INSTANTIATE_TEST_SUITE_P(Because, WhatIsRecorded, testing::Range(0, event_kinds));

}  // namespace
}  // namespace stopgap
