// The module of the page with one function more: the same text read and printed by the JSON library alone.
#include <emscripten/bind.h>

#include <nlohmann/json.hpp>
#include <string>

#include "core/ask.hpp"

EMSCRIPTEN_BINDINGS(stopgap_bench) {
  emscripten::function("ask", +[](const std::string& call, const std::string& request) { return stopgap::ask(call, request); });
  emscripten::function("parseAndPrint", +[](const std::string& text) { return nlohmann::json::parse(text).dump(); });
}
