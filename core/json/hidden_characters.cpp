#include "json/hidden_characters.hpp"

#include "json/plain_text.hpp"

namespace stopgap::json {
namespace {

// As Unicode writes it, such as U+200B.
std::string code_point(std::size_t c) {
  constexpr std::string_view digits = "0123456789ABCDEF";
  std::string text;
  for (; c != 0 || text.size() < 4; c /= digits.size()) text.insert(text.begin(), digits[c % digits.size()]);
  return "U+" + text;
}

void look(const Node& node, const std::string& path, std::vector<HiddenCharacter>& found) {
  if (node.kind == Node::Kind::string) {
    if (const auto c = first_hidden(node.text)) found.push_back({path, code_point(*c)});
  }
  for (std::size_t i = 0; i < node.items.size(); ++i) look(node.items[i], path + "/" + std::to_string(i), found);
  for (const auto& [key, value] : node.members) look(value, path + "/" + key, found);
}

}  // namespace

std::vector<HiddenCharacter> hidden_characters(const Node& plan, std::string_view path) {
  std::vector<HiddenCharacter> found;
  look(plan, std::string{path}, found);
  return found;
}

}  // namespace stopgap::json
