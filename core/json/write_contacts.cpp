#include "json/write_contacts.hpp"

#include "model/contacts.hpp"

namespace stopgap::json {
namespace {

void write_list(Writer& out, const std::vector<Ringing>& list) {
  out.open('[');
  for (const auto& [contact, answers] : list) {
    out.open('{').key("name").text(contact->name).key("phone").text(contact->phone).key("when").text(contact->when);
    out.key("dial").truth(can_be_dialled(contact->phone)).key("readable").truth(answers != Answers::unreadable);
    out.key("open").truth(answers == Answers::now).close('}');
  }
  out.close(']');
}

}  // namespace

void write_ring(const Page& page) {
  Writer& out = page.out;
  const Ring ring = ring_at(page.plan, page.now);
  out.key("ring").open('{').key("team");
  write_list(out, ring.team);
  out.key("emergency").text(page.plan.emergency_number).key("emergencyDial").truth(can_be_dialled(page.plan.emergency_number)).key("home");
  write_list(out, ring.home);
  out.close('}');
}

void write_call_slots(const Page& page, Relation relation) {
  const Ring ring = ring_at(page.plan, page.now);
  const std::vector<Ringing>& list = relation == Relation::team ? ring.team : ring.home;
  const std::string_view nobody = relation == Relation::team ? std::string_view(page.plan.emergency_number) : std::string_view{};
  page.out.key("name").text(list.empty() ? std::string_view{} : std::string_view(list.front().contact->name));
  page.out.key("phone").text(list.empty() ? nobody : std::string_view(list.front().contact->phone));
}

}  // namespace stopgap::json
