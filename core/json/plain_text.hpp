// What a text field may hold: characters a person reads, and nothing that could change how the rest of a line looks.
// Shape: valid UTF-8 in (the JSON reader saw to that), code points out. Errors: none.
#pragma once
#include <cstddef>
#include <cstdint>
#include <optional>
#include <string>
#include <string_view>

namespace stopgap::json {

struct PlainText {
  std::size_t code_points = 0;
  bool blank = true;       // nothing a person would see
  bool unreadable = false; // control characters, line separators, characters that turn the direction of writing
  bool decomposed = false; // a letter and its accent apart, where one character holds both (not NFC)
};
PlainText inspect(std::string_view text);

// The first character that nobody can see: no width, a tag, a variation selector, or another that Unicode says to ignore. Two texts may
// look the same and differ in one of these. The joiners of scripts that are written with them are seen by their effect, and are left out.
std::optional<std::uint32_t> first_hidden(std::string_view text);

// A name as it is compared: capitals as small letters, blanks at its ends left out and every other run of them as one. Forgives nothing
// else: a nearly right name is another name.
std::string folded_name(std::string_view text);

// The text as typed for a refusal: at most forty characters, harmless on a screen, never cut inside a character.
std::string shortened(std::string_view text);

// One step of a JSON pointer. Our own keys are short; a strange long one is shortened, so that an answer stays short.
void append_pointer_step(std::string& path, std::string_view key);

}  // namespace stopgap::json
