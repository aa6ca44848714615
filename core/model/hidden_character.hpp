#pragma once
#include <string>

namespace stopgap {

// A character of a plan's text that nobody can see: where, and which ("U+200B").
struct HiddenCharacter {
  std::string path;
  std::string code;
};

}  // namespace stopgap
