#include "json/pack_plan.hpp"

#include <algorithm>

#include "figures/packing.hpp"
#include "figures/ranges.hpp"
#include "json/base45.hpp"
#include "json/deflate.hpp"
#include "json/known_plan.hpp"
#include "json/plain_text.hpp"
#include "json/read.hpp"
#include "json/sha256.hpp"
#include "json/writer.hpp"

namespace stopgap::json {
namespace {

constexpr std::string_view name = "STOPGAP", prefix = "STOPGAP1:";
constexpr std::size_t check_bytes = 16;
constexpr unsigned hex_values = 16;

bool is_digit(char c) { return c >= '0' && c <= '9'; }

// "STOPGAP2:" is a text of ours, made by a later release.
bool names_later_version(std::string_view text) {
  if (!text.starts_with(name)) return false;
  std::string_view number = text.substr(name.size());
  std::size_t digits = 0;
  while (digits < number.size() && is_digit(number[digits])) ++digits;
  if (digits == number.size() || number[digits] != ':') return false;
  number = number.substr(0, digits);
  return !number.empty() && number.front() != '0' && number != "1";
}

// The first bytes of the fingerprint of a text.
std::string check_of(std::string_view hex) {
  const auto value = [](char c) { return static_cast<unsigned>(is_digit(c) ? c - '0' : c - 'a' + 10); };
  std::string out;
  for (std::size_t i = 0; i < check_bytes; ++i) out += static_cast<char>(value(hex[2 * i]) * hex_values + value(hex[2 * i + 1]));
  return out;
}

struct LongText {
  std::string path;
  std::size_t size = 0;
};

void gather_texts(const Node& node, const std::string& path, std::vector<LongText>& out) {
  if (node.kind == Node::Kind::string) out.push_back({path, node.text.size()});
  for (std::size_t i = 0; i < node.items.size(); ++i) gather_texts(node.items[i], path + "/" + std::to_string(i), out);
  for (const auto& [key, value] : node.members) {
    std::string place = path;
    append_pointer_step(place, key);
    gather_texts(value, place, out);
  }
}

// The longest texts, until together they are longer than what is over: any one of them may do, all of them surely will.
void refuse_long_texts(const Node& node, std::string_view path, std::size_t length, Refusals& refusals) {
  std::vector<LongText> texts;
  gather_texts(node, std::string{path}, texts);
  std::stable_sort(texts.begin(), texts.end(), [](const LongText& a, const LongText& b) { return a.size > b.size; });
  std::size_t named = 0;
  for (const LongText& text : texts) {
    if (named > length - figures::code_characters) return;
    refusals.add(text.path, Reason::tooLarge, std::to_string(length), std::to_string(figures::code_characters));
    named += text.size;
  }
}

}  // namespace

PackedPlan pack_plan(const Node& node, const Plan& plan, std::string_view path, Refusals& refusals) {
  const std::string bytes = check_of(plan.fingerprint) + deflate(canonical(node), known_plan);
  PackedPlan packed{std::string{prefix} + base45(bytes), bytes.size(), 1};
  for (const std::int16_t capacity : figures::code_capacities.value) {
    if (packed.text.size() <= static_cast<std::size_t>(capacity)) return packed;
    ++packed.version;
  }
  refuse_long_texts(node, path, packed.text.size(), refusals);
  return {};
}

UnpackedPlan unpack_plan(std::string_view text, std::string_view path, Refusals& refusals) {
  const std::string place{path};
  const auto refuse = [&](Reason reason, std::string accepted) {
    refusals.add(place, reason, shortened(text), std::move(accepted));
    return UnpackedPlan{};
  };
  if (text.size() > figures::code_characters) return refuse(Reason::tooLarge, std::to_string(figures::code_characters));
  if (!text.starts_with(prefix)) {
    return refuse(names_later_version(text) ? Reason::newerFormat : Reason::wrongType, std::string{prefix});
  }
  const auto bytes = bytes_of_base45(text.substr(prefix.size()));
  if (!bytes || bytes->size() <= check_bytes) return refuse(Reason::fingerprintMismatch, {});
  const std::string_view check = std::string_view{*bytes}.substr(0, check_bytes);
  const Inflated inflated = inflate(std::string_view{*bytes}.substr(check_bytes), known_plan, figures::plan_bytes);
  if (inflated.state == Inflated::State::too_large) return refuse(Reason::tooLarge, std::to_string(figures::plan_bytes));
  if (inflated.state == Inflated::State::damaged || check_of(sha256_hex(inflated.text)) != check)
    return refuse(Reason::fingerprintMismatch, {});

  Refusals inside;
  const Node node = parse(inflated.text, inside);
  Plan plan;
  if (inside.empty()) plan = read_plan(node, {}, inside);
  for (const Refusal& each : inside.list()) refusals.add("/plan" + each.path, each.reason, each.got, each.accepted);
  if (!inside.empty()) return {};
  // A plan has one text, so that one fingerprint means one text on every device.
  if (canonical(node) != inflated.text) return refuse(Reason::fingerprintMismatch, {});
  return {inflated.text, plan.fingerprint};
}

std::string write_packed(const PackedPlan& packed, const Plan& plan) {
  Writer out;
  out.open('{').key("text").text(packed.text).key("bytes").raw(std::to_string(packed.bytes));
  out.key("version").raw(std::to_string(packed.version)).key("level").text("M").key("fingerprint").text(plan.fingerprint).close('}');
  return out.take();
}

std::string write_unpacked(const UnpackedPlan& unpacked) {
  Writer out;
  out.open('{').key("plan").raw(unpacked.canonical).key("fingerprint").text(unpacked.fingerprint).close('}');
  return out.take();
}

}  // namespace stopgap::json
