// The only door of the core: the name of a call and a JSON text in, a JSON text out. Native program, WebAssembly and tests all
// come through it. It never throws; bad input is answered by {"refused":[...]} with every reason and its place.
#pragma once
#include <string>
#include <string_view>

namespace stopgap {

std::string ask(std::string_view call, std::string_view request) noexcept;
bool is_refusal(std::string_view answer);
// Whether there is a call of this name.
bool is_call(std::string_view call);

}  // namespace stopgap
