// What `advise` costs beside reading and printing the same texts with the JSON library alone. Not a test: a machine is noisy.
//   stopgap-bench REQUEST.json ANSWER.json      (ANSWER is written, for the twin in node)
#include <algorithm>
#include <chrono>
#include <fstream>
#include <iostream>
#include <iterator>
#include <nlohmann/json.hpp>
#include <string>
#include <vector>

#include "core/ask.hpp"

namespace {

constexpr int batches = 200, calls_a_batch = 50;
std::size_t kept = 0;  // what is measured must not be optimised away

template <class Work>
double median_microseconds(Work work) {
  std::vector<double> times;
  for (int batch = 0; batch < batches; ++batch) {
    const auto start = std::chrono::steady_clock::now();
    for (int call = 0; call < calls_a_batch; ++call) kept += work();
    const std::chrono::duration<double, std::micro> took = std::chrono::steady_clock::now() - start;
    times.push_back(took.count() / calls_a_batch);
  }
  std::nth_element(times.begin(), times.begin() + batches / 2, times.end());
  return times[batches / 2];
}

std::size_t parse_and_print(const std::string& text) { return nlohmann::json::parse(text).dump().size(); }

}  // namespace

int main(int count, char** words) {
  if (count != 3) return 2;
  std::ifstream file(words[1]);
  const std::string request{std::istreambuf_iterator<char>(file), {}};
  const std::string answer = stopgap::ask("advise", request);
  if (stopgap::is_refusal(answer)) {
    std::cerr << answer << '\n';
    return 1;
  }
  std::ofstream(words[2]) << answer;
  const double advise = median_microseconds([&] { return stopgap::ask("advise", request).size(); });
  const double alone = median_microseconds([&] { return parse_and_print(request) + parse_and_print(answer); });
  std::cout << "native: advise " << advise << " us, JSON alone " << alone << " us, ratio " << advise / alone << '\n';
  return kept ? 0 : 1;
}
