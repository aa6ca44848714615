// A plan as text for one printed code, and back. "STOPGAP1:" and, in Base45, the first bytes of the plan's fingerprint and its
// canonical text deflated. Each way passes the whole strict reading of a plan, and what was damaged on the way is refused.
// The 1 stands for all of this, the known text included: to change any of it is to begin a 2.
// Errors: /text tooLarge before anything is done with it, or once it would grow past a plan's size; wrongType (no such text);
// newerFormat; fingerprintMismatch (damaged). What is wrong with the plan inside has its place in the plan: /plan/high/trigger.
#pragma once
#include <string>
#include <string_view>
#include "json/text.hpp"
#include "model/plan.hpp"

namespace stopgap::json {

struct PackedPlan {
  std::string text;
  std::size_t bytes = 0;  // what the Base45 carries
  int version = 0;        // the smallest code of level M that holds the text
};
// `node` is what the plan was read from, at `path`. Too long for one code: the longest texts are named, as many as must shrink.
PackedPlan pack_plan(const Node& node, const Plan& plan, std::string_view path, Refusals& refusals);

struct UnpackedPlan {
  std::string canonical;
  std::string fingerprint;
};
UnpackedPlan unpack_plan(std::string_view text, std::string_view path, Refusals& refusals);

std::string write_packed(const PackedPlan& packed, const Plan& plan);
std::string write_unpacked(const UnpackedPlan& unpacked);

}  // namespace stopgap::json
