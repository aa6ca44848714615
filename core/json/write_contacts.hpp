// Whom a call rings at the moment of the answer, for the button that calls and for the step that says it.
#pragma once
#include "json/page.hpp"

namespace stopgap::json {

// The key `ring`: team, emergency number, home.
void write_ring(const Page& page);
// The slots of a step that calls: the one to ring first. Where nobody of the team answers, no name and the emergency number; where
// a plan has nobody at home, both are empty.
void write_call_slots(const Page& page, Relation relation);

}  // namespace stopgap::json
