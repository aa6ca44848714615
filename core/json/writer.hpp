// Appends JSON to a text, commas included. Answers are written once, in a fixed order, so that equal answers are equal bytes.
#pragma once
#include <string>
#include <string_view>
#include "json/text.hpp"

namespace stopgap::json {

class Writer {
 public:
  Writer() { out_.reserve(expected_bytes); }
  Writer& open(char bracket) { comma(); out_ += bracket; first_ = true; return *this; }
  Writer& close(char bracket) { out_ += bracket; first_ = false; return *this; }
  Writer& key(std::string_view name) { comma(); out_ += '"'; out_ += name; out_ += "\":"; first_ = true; return *this; }
  Writer& text(std::string_view value) { comma(); append_string(out_, value); return *this; }
  Writer& raw(std::string_view value) { comma(); out_ += value; return *this; }
  Writer& truth(bool value) { return raw(value ? "true" : "false"); }
  Writer& null() { return raw("null"); }
  std::string take() { return std::move(out_); }

 private:
  static constexpr std::size_t expected_bytes = 4096;
  void comma() {
    if (!first_) out_ += ',';
    first_ = false;
  }
  std::string out_;
  bool first_ = true;
};

}  // namespace stopgap::json
