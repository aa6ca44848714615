// The core from a shell. ask.mjs is its twin on the built module: same help, same exit codes, same bytes.
#include <cstddef>
#include <iostream>
#include <streambuf>
#include <string>
#include <string_view>

#include "core/ask.hpp"
#include "help.hpp"

namespace {

// Above the largest plan, record and situation together. What lies past it is read but not kept, so the core still
// sees that the request is too large, and the program never runs out of memory.
constexpr std::size_t largest_request = 5u * 1024 * 1024;

enum Exit { answered = 0, refused = 1, wrong_usage = 2 };

// False once nothing was left to read. A final newline does not begin another line.
bool read_request(std::streambuf& in, bool one_line, std::string& request) {
  constexpr int end = std::char_traits<char>::eof();
  request.clear();
  bool any = false;
  for (int c = in.sbumpc(); c != end; c = in.sbumpc()) {
    any = true;
    if (one_line && c == '\n') return true;
    if (request.size() <= largest_request) request.push_back(static_cast<char>(c));
  }
  return any;
}

Exit say(const std::string& answer) {
  std::cout << answer << '\n' << std::flush;
  return stopgap::is_refusal(answer) ? refused : answered;
}

}  // namespace

int main(int count, char** words) {
  std::ios::sync_with_stdio(false);
  const std::string_view call = count > 1 ? words[1] : "";
  if (count == 2 && (call == "--help" || call == "-h")) {
    std::cout << help;
    return answered;
  }
  const bool lines = count == 3 && std::string_view(words[2]) == "--lines";
  if (!stopgap::is_call(call) || count > 3 || (count == 3 && !lines)) {
    std::cerr << help;
    return wrong_usage;
  }

  std::string request;
  Exit exit = answered;
  if (lines) {
    while (std::cout && read_request(*std::cin.rdbuf(), true, request))
      if (say(stopgap::ask(call, request)) == refused) exit = refused;
  } else {
    read_request(*std::cin.rdbuf(), false, request);
    exit = say(stopgap::ask(call, request));
  }
  // An answer that could not be printed was not given.
  return std::cout ? exit : wrong_usage;
}
