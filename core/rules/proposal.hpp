// What a rule proposes: the advice so far. The way down (advise.cpp) adds what holds under every rule.
#pragma once
#include "figures/timing.hpp"
#include "model/advice.hpp"
#include "rules/facts.hpp"

namespace stopgap::rules {

struct Proposal {
  Advice advice;
  bool named_looks = false;  // else one look at the usual time

  void look(Instant at, bool glucose = true, bool ketones = true) {
    advice.looks.add({at, glucose, ketones});
    named_looks = true;
  }
  void look_in(const Facts& facts, Duration span, bool glucose = true, bool ketones = true) { look(facts.now + span, glucose, ketones); }
  void step(Step step) { advice.steps.add(step); }
  // The call of the row the ketones fall in; nothing while they are unknown.
  void call_by_row(const Facts& facts) {
    if (facts.row) advice.raise_call(facts.row->call);
  }
  void give(Carbohydrate grams) { advice.carbohydrate = greater(advice.carbohydrate, grams); }
};

// Every quarter of an hour for the first hour.
void look_every_quarter(const Facts& facts, Proposal& proposal);

}  // namespace stopgap::rules
