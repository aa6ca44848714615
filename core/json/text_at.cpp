#include "json/text_at.hpp"

#include <charconv>

namespace stopgap::json {
namespace {

const Node* child_of(const Node& node, std::string_view step) {
  if (node.kind == Node::Kind::object) return node.find(step);
  if (node.kind != Node::Kind::array) return nullptr;
  std::size_t index = 0;
  const auto read = std::from_chars(step.data(), step.data() + step.size(), index);
  const bool whole = read.ec == std::errc{} && read.ptr == step.data() + step.size();
  return whole && index < node.items.size() ? &node.items[index] : nullptr;
}

const Node* node_at(const Node& plan, std::string_view pointer) {
  constexpr std::string_view root = "/plan";
  if (!pointer.starts_with(root)) return nullptr;
  pointer.remove_prefix(root.size());
  const Node* node = &plan;
  while (node && !pointer.empty()) {
    pointer.remove_prefix(1);
    const std::size_t end = pointer.find('/');
    node = child_of(*node, pointer.substr(0, end));
    pointer = end == std::string_view::npos ? std::string_view{} : pointer.substr(end);
  }
  return node;
}

}  // namespace

std::string text_at(const Node& plan, std::string_view pointer) {
  const Node* node = node_at(plan, pointer);
  if (!node) return {};
  if (node->kind == Node::Kind::string) return node->text;
  if (node->kind == Node::Kind::number) return canonical(*node);
  if (node->kind != Node::Kind::object) return {};
  std::string found;
  for (const auto& [key, member] : node->members) {
    if (member.kind != Node::Kind::number) continue;
    if (!found.empty()) return {};
    found = canonical(member);
  }
  return found;
}

}  // namespace stopgap::json
