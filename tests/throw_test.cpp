// Throws on purpose, at every place where the core asks for memory: whatever is thrown inside ends at the one door as a
// refusal. Under Emscripten this fails at once without an exception flag, for then `catch (...)` does not catch.
#include <gtest/gtest.h>

#include <string>

#include "core/ask.hpp"
#include "requests.hpp"
#include "short_memory.hpp"

namespace stopgap {
namespace {

TEST(Door, WhateverIsThrownInsideEndsAsARefusal) {
  const std::string request = requests::request("adult").dump();
  const std::string whole = ask("advise", request);
  ASSERT_FALSE(is_refusal(whole)) << whole;
  long refused = 0, place = 0;
  for (;; ++place) {
    tests::allocations_until_throw = place;
    const std::string answer = ask("advise", request);
    const bool thrown = tests::allocations_until_throw < 0;
    tests::allocations_until_throw = -1;
    if (!thrown) break;
    if (is_refusal(answer)) ++refused;
    else EXPECT_EQ(answer, whole) << "a half answer after a throw at allocation " << place;
  }
  EXPECT_GT(place, 100) << "hardly anything was asked for: the test no longer reaches the core";
  EXPECT_GT(refused, 100);
}

}  // namespace
}  // namespace stopgap
