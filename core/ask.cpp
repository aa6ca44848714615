#include "ask.hpp"

#include <algorithm>
#include "advise.hpp"
#include "because.hpp"
#include "compare.hpp"
#include "documents/clinic_export.hpp"
#include "figures/packing.hpp"
#include "figures/ranges.hpp"
#include "holds.hpp"
#include "incident.hpp"
#include "json/check_record.hpp"
#include "json/hidden_characters.hpp"
#include "json/pack_plan.hpp"
#include "json/plain_text.hpp"
#include "json/read.hpp"
#include "json/read_off_pump.hpp"
#include "json/read_paper.hpp"
#include "json/text_at.hpp"
#include "json/write.hpp"
#include "json/write_card.hpp"
#include "json/write_fhir.hpp"
#include "json/write_off_pump.hpp"
#include "json/write_story.hpp"
#include "json/write_ranges.hpp"
#include "json/write_review.hpp"
#include "off_pump.hpp"
#include "plan_findings.hpp"
#include "review.hpp"
#include "review_kept.hpp"
#include "standing.hpp"
#include "version.hpp"

namespace stopgap {
namespace {

using json::Node;
constexpr std::size_t request_bytes = figures::plan_bytes + figures::record_bytes + figures::situation_bytes;

// Sizes are judged on the text, before anything is built from it. In a small request no member can be too large.
void refuse_large_parts(std::string_view request, Refusals& refusals) {
  if (request.size() <= std::min(figures::plan_bytes, figures::situation_bytes)) return;
  const auto judge = [&](std::string_view key, std::string path, std::size_t most) {
    if (json::top_level_member(request, key).size() > most) refusals.add(std::move(path), Reason::tooLarge, {}, std::to_string(most));
  };
  judge("plan", "/plan", figures::plan_bytes);
  judge("before", "/before", figures::plan_bytes);
  judge("after", "/after", figures::plan_bytes);
  judge("record", "/record", figures::record_bytes);
  judge("situation", "/situation", figures::situation_bytes);
  // A packed text is far shorter than a plan; what is longer than a whole plan is not even unescaped.
  if (json::top_level_member(request, "text").size() > figures::plan_bytes)
    refusals.add("/text", Reason::tooLarge, {}, std::to_string(figures::code_characters));
  if (refusals.empty() && request.size() > request_bytes) refusals.add("", Reason::tooLarge, {}, std::to_string(request_bytes));
}

// The members a call takes; another one is refused, a missing one named.
const Node* member(const Node& request, std::string_view key, Refusals& refusals) {
  const Node* found = request.find(key);
  if (!found) refusals.add("/" + std::string(key), Reason::missing);
  return found;
}

void refuse_other_members(const Node& request, std::initializer_list<std::string_view> known, Refusals& refusals) {
  for (const auto& [key, value] : request.members) {
    bool is_known = false;
    for (const std::string_view name : known) is_known |= key == name;
    if (is_known) continue;
    std::string path;
    json::append_pointer_step(path, key);
    refusals.add(std::move(path), Reason::unknownKey);
  }
}

// Whose record it is can be judged only beside a plan that was read.
void read_plan_and_record(const Node* plan_node, const Node* record_node, Plan& plan, Record& record, Refusals& refusals) {
  if (plan_node) plan = json::read_plan(*plan_node, "/plan", refusals);
  const bool plan_is_read = plan_node && refusals.empty();
  if (record_node) record = json::read_record(*record_node, "/record", plan_is_read ? &plan.id : nullptr, refusals);
}

std::string advise_call(const Node& request, Refusals& refusals) {
  refuse_other_members(request, {"plan", "record", "situation"}, refusals);
  const Node *plan_node = member(request, "plan", refusals), *record_node = member(request, "record", refusals),
             *situation_node = member(request, "situation", refusals);
  Plan plan;
  Record record;
  read_plan_and_record(plan_node, record_node, plan, record, refusals);
  Situation situation;
  if (situation_node) situation = json::read_situation(*situation_node, "/situation", plan, refusals);
  if (!refusals.empty()) return {};
  const std::vector<Finding> refused = refused_in_use(plan);
  Advice advice = advise(plan, record, situation);
  tell_plan_findings(refused, advice);
  return json::write_advice(advice, because(plan, record, situation, advice, refused), refused, plan, situation,
                            engine_version());
}

// Calls about a moment of a record.
void read_at_a_moment(const Node& request, Plan& plan, Record& record, Moment& now, Refusals& refusals) {
  const Node *plan_node = member(request, "plan", refusals), *record_node = member(request, "record", refusals),
             *now_node = member(request, "now", refusals);
  read_plan_and_record(plan_node, record_node, plan, record, refusals);
  if (now_node) now = json::read_now(*now_node, "/now", refusals);
}

std::string holds_call(const Node& request, Refusals& refusals) {
  refuse_other_members(request, {"plan", "record", "now", "curve"}, refusals);
  const Node* curve = request.find("curve");
  Plan plan;
  Record record;
  Moment now;
  read_at_a_moment(request, plan, record, now, refusals);
  if (curve && curve->kind != Node::Kind::boolean) refusals.add("/curve", Reason::wrongType, curve->text, "true, false");
  if (!refusals.empty()) return {};
  return json::write_holds(holds(plan, record, now, curve && curve->truth), refused_in_use(plan), plan, now);
}

// What a calendar says at a look is written by whoever asks: without words it is the name of this program.
std::string reminders_call(const Node& request, Refusals& refusals) {
  refuse_other_members(request, {"plan", "record", "now", "words"}, refusals);
  const Node* words_node = request.find("words");
  Plan plan;
  Record record;
  Moment now;
  read_at_a_moment(request, plan, record, now, refusals);
  const auto words = words_node ? json::read_title(*words_node, "/words", refusals) : std::optional<std::string>{"Stopgap"};
  if (!refusals.empty()) return {};
  return json::write_reminders(holds(plan, record, now, false), plan, now, *words, engine_version());
}

std::string off_pump_call(const Node& request, Refusals& refusals) {
  Plan plan;
  Record record;
  read_plan_and_record(request.find("plan"), request.find("record"), plan, record, refusals);
  const OffPumpQuestion question = json::read_off_pump(request, plan, refusals);
  if (!refusals.empty()) return {};
  const std::vector<Finding> refused = refused_in_use(plan);
  OffPumpAnswer answer = off_pump(plan, record, question);
  tell_plan_findings(refused, answer);
  return json::write_off_pump(answer, refused, plan, question.now, engine_version());
}

// For the page: the parts of a dose that was drawn in another amount than it was shown.
std::string parts_given_call(const Node& request, Refusals& refusals) {
  const auto [shown, units] = json::read_parts_given(request, refusals);
  return refusals.empty() ? json::write_parts_given(parts_given(shown, units)) : std::string{};
}

// For the page: the rows of its store, each by itself, against their seals.
std::string check_record_call(const Node& request, Refusals& refusals) {
  const Node *plan_node = request.find("plan"), *now_node = request.find("now");
  const json::StoredRecord stored = json::read_stored_record(request, refusals);
  const Moment now = now_node ? json::read_now(*now_node, "/now", refusals) : Moment{};
  if (!refusals.empty()) return {};
  // A plan that cannot be read is no reason to keep the rows back: it says only how long a dose counts.
  Refusals of_plan;
  std::optional<Plan> plan;
  if (plan_node) plan = json::read_plan(*plan_node, "/plan", of_plan);
  return json::write_record_check(json::check_record(stored, plan && of_plan.empty() ? &*plan : nullptr, now.instant));
}

// Calls that look back: they take a plan and a record, and no moment.
bool read_looking_back(const Node& request, Plan& plan, Record& record, Refusals& refusals) {
  refuse_other_members(request, {"plan", "record"}, refusals);
  const Node *plan_node = member(request, "plan", refusals), *record_node = member(request, "record", refusals);
  read_plan_and_record(plan_node, record_node, plan, record, refusals);
  return refusals.empty();
}

std::string incident_call(const Node& request, Refusals& refusals) {
  Plan plan;
  Record record;
  if (!read_looking_back(request, plan, record, refusals)) return {};
  return json::write_incident(incident(plan, record), plan, engine_version());
}

std::string export_fhir_call(const Node& request, Refusals& refusals) {
  Plan plan;
  Record record;
  if (!read_looking_back(request, plan, record, refusals)) return {};
  return json::write_fhir(clinic_export(record), plan);
}

std::string review_plan_call(const Node& request, Refusals& refusals) {
  refuse_other_members(request, {"plan"}, refusals);
  const Node* plan_node = member(request, "plan", refusals);
  Plan plan;
  if (plan_node) plan = json::read_plan(*plan_node, "/plan", refusals);
  if (!refusals.empty()) return {};
  const auto text_at = [&](std::string_view path) { return json::text_at(*plan_node, path); };
  return json::write_review(review_plan(plan, text_at, json::hidden_characters(*plan_node, "/plan")), plan);
}

std::string compare_plans_call(const Node& request, Refusals& refusals) {
  refuse_other_members(request, {"before", "after"}, refusals);
  const Node *before_node = member(request, "before", refusals), *after_node = member(request, "after", refusals);
  Plan before, after;
  if (before_node) before = json::read_plan(*before_node, "/before", refusals);
  if (after_node) after = json::read_plan(*after_node, "/after", refusals);
  if (!refusals.empty()) return {};
  return json::write_changes(compare_plans(*before_node, *after_node), before.fingerprint, after.fingerprint);
}

std::string pack_plan_call(const Node& request, Refusals& refusals) {
  refuse_other_members(request, {"plan"}, refusals);
  const Node* plan_node = member(request, "plan", refusals);
  Plan plan;
  if (plan_node) plan = json::read_plan(*plan_node, "/plan", refusals);
  if (!refusals.empty()) return {};
  return json::write_packed(json::pack_plan(*plan_node, plan, "/plan", refusals), plan);
}

std::string unpack_plan_call(const Node& request, Refusals& refusals) {
  refuse_other_members(request, {"text"}, refusals);
  const Node* text = member(request, "text", refusals);
  if (text && text->kind != Node::Kind::string) refusals.add("/text", Reason::wrongType, {}, "text");
  if (!refusals.empty()) return {};
  return json::write_unpacked(json::unpack_plan(text->text, "/text", refusals));
}

std::string version_call(const Node& request, Refusals& refusals) {
  refuse_other_members(request, {}, refusals);
  return refusals.empty() ? json::write_version(version()) : std::string{};
}

// For the desk: what a number may be before it is typed, and how a plan stands on a day.
std::string ranges_call(const Node& request, Refusals& refusals) {
  refuse_other_members(request, {"unit"}, refusals);
  const Node* unit_node = member(request, "unit", refusals);
  const auto unit = unit_node ? json::read_glucose_unit(*unit_node, "/unit", refusals) : std::nullopt;
  return unit && refusals.empty() ? json::write_ranges(*unit) : std::string{};
}

std::string standing_call(const Node& request, Refusals& refusals) {
  refuse_other_members(request, {"plan", "today"}, refusals);
  const Node *plan_node = member(request, "plan", refusals), *today_node = member(request, "today", refusals);
  Plan plan;
  if (plan_node) plan = json::read_plan(*plan_node, "/plan", refusals);
  const auto today = today_node ? json::read_day(*today_node, "/today", refusals) : std::nullopt;
  return today && refusals.empty() ? json::write_standing(standing(plan, *today)) : std::string{};
}

// Paper: a plan nobody may act on, or one without orders for a school, is refused whole.
std::string card_call(const Node& request, Refusals& refusals) {
  refuse_other_members(request, {"plan", "paper", "languages"}, refusals);
  const Node *plan_node = member(request, "plan", refusals), *paper_node = member(request, "paper", refusals),
             *languages_node = member(request, "languages", refusals);
  Plan plan;
  if (plan_node) plan = json::read_plan(*plan_node, "/plan", refusals);
  const Paper paper = paper_node ? json::read_paper(*paper_node, "/paper", refusals) : Paper::a4;
  const auto languages = languages_node ? json::read_languages(*languages_node, "/languages", refusals) : std::vector<std::string_view>{};
  if (refusals.empty()) json::refuse_unless_agreed(plan, "/plan", refusals);
  if (!refusals.empty()) return {};
  const Plan printed = as_printed(std::move(plan));
  return json::write_card(card(printed), printed, paper, languages, engine_version());
}

std::string school_sheet_call(const Node& request, Refusals& refusals) {
  refuse_other_members(request, {"plan", "paper"}, refusals);
  const Node *plan_node = member(request, "plan", refusals), *paper_node = member(request, "paper", refusals);
  Plan plan;
  if (plan_node) plan = json::read_plan(*plan_node, "/plan", refusals);
  const Paper paper = paper_node ? json::read_paper(*paper_node, "/paper", refusals) : Paper::a4;
  if (refusals.empty() && !plan.school) refusals.add("/plan/school", Reason::missing);
  if (refusals.empty()) json::refuse_unless_agreed(plan, "/plan", refusals);
  if (!refusals.empty()) return {};
  const Plan printed = as_printed(std::move(plan));
  return json::write_school_sheet(school_sheet(printed), printed, paper, engine_version());
}

struct CallEntry {
  std::string_view name;
  std::string (*answer)(const Node&, Refusals&);
};
constexpr CallEntry calls[] = {{"version", version_call}, {"advise", advise_call}, {"holds", holds_call}, {"reminders", reminders_call},
                               {"reviewPlan", review_plan_call}, {"comparePlans", compare_plans_call},
                               {"packPlan", pack_plan_call}, {"unpackPlan", unpack_plan_call},
                               {"ranges", ranges_call}, {"standing", standing_call},
                               {"incident", incident_call}, {"exportFhir", export_fhir_call},
                               {"card", card_call}, {"schoolSheet", school_sheet_call}, {"offPump", off_pump_call},
                               {"partsGiven", parts_given_call}, {"checkRecord", check_record_call},
                               {"seal", json::write_seals}, {"samePerson", json::write_same_person}};

std::string call_names() {
  std::string out;
  for (const CallEntry& known : calls) out += (out.empty() ? "" : ", ") + std::string(known.name);
  return out;
}

std::string answer(std::string_view call, std::string_view request) {
  Refusals refusals;
  const CallEntry* entry = nullptr;
  for (const CallEntry& known : calls)
    if (known.name == call) entry = &known;
  if (!entry) refusals.add("", Reason::outOfRange, std::string(call), call_names());
  if (refusals.empty()) refuse_large_parts(request, refusals);
  if (!refusals.empty()) return json::write_refusals(refusals);
  const Node node = json::parse(request, refusals);
  if (refusals.empty() && node.kind != Node::Kind::object) refusals.add("", Reason::wrongType, {}, "object");
  std::string text;
  if (refusals.empty()) text = entry->answer(node, refusals);
  return refusals.empty() ? text : json::write_refusals(refusals);
}

}  // namespace

bool is_call(std::string_view call) {
  for (const CallEntry& known : calls)
    if (known.name == call) return true;
  return false;
}

bool is_refusal(std::string_view text) { return text.starts_with("{\"refused\":"); }

std::string ask(std::string_view call, std::string_view request) noexcept {
  try {
    return answer(call, request);
  } catch (...) {
    // A mistake of ours or no memory left: no answer is the safe answer.
    return R"({"refused":[{"path":"","reason":"notJson"}]})";
  }
}

}  // namespace stopgap
