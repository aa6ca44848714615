#include "json/write_card.hpp"

#include "figures/paper.hpp"
#include "json/write_paper.hpp"

namespace stopgap::json {
namespace {

constexpr std::array<std::string_view, 4> card_blanks{"time", "glucose", "ketones", "units"};
constexpr std::array<std::string_view, 8> record_blanks{"day", "time", "glucose", "ketones", "units", "insulin", "done", "initials"};
constexpr std::array<std::string_view, 4> signatures{"prescriber", "parent", "nurse", "student"};

std::string millilitres(Insulin pack) { return std::to_string((pack.in_units() / Fraction{figures::units_per_ml.value}).floor()); }

template <std::size_t count>
void write_words(Writer& out, std::string_view key, const std::array<std::string_view, count>& words) {
  out.key(key).open('[');
  for (const std::string_view word : words) out.text(word);
  out.close(']');
}

void write_kits(Writer& out, const std::vector<Kit>& kits) {
  out.key("kits").open('[');
  for (const Kit& kit : kits) {
    out.open('{').key("days").text(std::to_string(kit.days)).key("rapidVials").text(std::to_string(kit.rapid_vials));
    out.key("rapidPens").text(std::to_string(kit.rapid_pens)).key("longPens");
    if (kit.long_pens > 0) out.text(std::to_string(kit.long_pens));
    else out.null();
    out.key("sets").text(std::to_string(kit.sets)).close('}');
  }
  out.close(']');
}

}  // namespace

std::string write_card(const Card& card, const Plan& plan, Paper paper, const std::vector<std::string_view>& languages, std::string_view engine) {
  Writer out;
  out.open('{');
  write_front(out, plan, engine);
  write_paper(out, paper);
  write_lines(out, "head", card.head, plan);
  write_spans(out, card.spans, plan);
  write_lines(out, "steps", card.steps, plan);
  write_lines(out, "after", card.after, plan);
  write_lines(out, "calls", card.calls, plan);
  write_lines(out, "noStrips", card.no_strips, plan);
  write_lines(out, "offPump", card.off_pump, plan);
  write_lines(out, "storage", card.storage, plan);
  write_contacts(out, plan);
  write_words(out, "blanks", card_blanks);
  write_words(out, "record", record_blanks);
  write_lines(out, "stranger", card.stranger, plan);
  out.key("abroad").open('{').key("languages").open('[');
  for (const std::string_view language : languages) out.text(language);
  out.close(']');
  write_lines(out, "lines", card.stranger_abroad, plan);
  out.close('}');
  write_lines(out, "security", card.security, plan);
  write_lines(out, "carry", card.carry, plan);
  write_lines(out, "zones", card.zones, plan);
  write_kits(out, card.kits);
  out.key("packs").open('{').key("vialMl").text(millilitres(figures::vial_holds.value)).key("penMl").text(millilitres(figures::pen_holds.value)).close('}');
  out.key("rapid").text(plan.rapid.name).key("longActing");
  if (plan.long_acting) out.text(plan.long_acting->name);
  else out.null();
  out.close('}');
  return out.take();
}

std::string write_school_sheet(const SchoolSheet& sheet, const Plan& plan, Paper paper, std::string_view engine) {
  Writer out;
  out.open('{');
  write_front(out, plan, engine);
  write_paper(out, paper);
  write_lines(out, "head", sheet.head, plan);
  write_spans(out, sheet.spans, plan, plan.school->call_first_above);
  write_lines(out, "low", sheet.low, plan);
  write_lines(out, "steps", sheet.steps, plan);
  write_lines(out, "danger", sheet.danger, plan);
  write_lines(out, "orders", sheet.orders, plan);
  write_lines(out, "school", sheet.school, plan);
  write_contacts(out, plan);
  write_words(out, "signatures", signatures);
  write_words(out, "record", record_blanks);
  out.close('}');
  return out.take();
}

}  // namespace stopgap::json
