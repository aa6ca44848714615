// The whole edge of the module: text goes in, text comes out. `ask` never throws, so nothing here can.
#include <emscripten/bind.h>

#include <string>

#include "core/ask.hpp"

EMSCRIPTEN_BINDINGS(stopgap) {
  // Strings travel as UTF-8 bytes. node hands over raw bytes, so a text that is not UTF-8 is refused by the core itself.
  emscripten::function("ask", +[](const std::string& call, const std::string& request) { return stopgap::ask(call, request); });
  emscripten::function("isCall", +[](const std::string& call) { return stopgap::is_call(call); });
  emscripten::function("isRefusal", +[](const std::string& answer) { return stopgap::is_refusal(answer); });
}
