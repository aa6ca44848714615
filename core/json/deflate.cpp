#include "json/deflate.hpp"

#include <boost/beast/zlib/deflate_stream.hpp>
#include <boost/beast/zlib/inflate_stream.hpp>

namespace stopgap::json {
namespace {

namespace zlib = boost::beast::zlib;

constexpr int smallest = 9, whole_window = 15, most_memory = 9;  // the library's settings for the shortest output
constexpr unsigned byte_values = 256;
constexpr std::size_t look_ahead = 2, byte_bits = 8, bits_held = 64;  // flags stand above the count of bits

zlib::z_params from_to(std::string_view in, char* out, std::size_t room) {
  zlib::z_params turn{};
  turn.next_in = in.data();
  turn.avail_in = in.size();
  turn.next_out = out;
  turn.avail_out = room;
  return turn;
}

// The library offers no preset dictionary. A block that only stores the known text, put before the stream, does the same.
std::string stored_block(std::string_view text) {
  std::string out(1, '\0');
  const auto length = static_cast<std::uint16_t>(text.size());
  for (const unsigned value : {unsigned{length}, 0xFFFFu - length}) {
    out += static_cast<char>(value % byte_values);
    out += static_cast<char>(value / byte_values);
  }
  return out.append(text);
}

}  // namespace

std::string deflate(std::string_view text, std::string_view known) {
  zlib::deflate_stream stream;
  stream.reset(smallest, whole_window, most_memory, zlib::Strategy::normal);
  std::string out(stream.upper_bound(known.size() + text.size()), '\0');
  boost::system::error_code state;
  // Read the known text, and leave out what it makes: a flush ends on a whole byte, and what follows may refer back.
  zlib::z_params turn = from_to(known, out.data(), out.size());
  stream.write(turn, zlib::Flush::sync, state);
  turn = from_to(text, out.data(), out.size());
  stream.write(turn, zlib::Flush::finish, state);
  out.resize(out.size() - turn.avail_out);
  return out;
}

Inflated inflate(std::string_view bytes, std::string_view known, std::size_t most) {
  // The library looks ahead for the longest code there could be, even where the last one is shorter: without room to look it
  // would wait for more. It says how many bits it holds back, so where the stream ended is known to the byte.
  const std::string in = stored_block(known).append(bytes).append(look_ahead, '\0');
  std::string out(known.size() + most + 1, '\0');  // one more than may be: that it was filled tells that there was too much
  zlib::inflate_stream stream;
  boost::system::error_code state;
  zlib::z_params turn = from_to(in, out.data(), out.size());
  stream.write(turn, zlib::Flush::sync, state);
  const std::size_t made = out.size() - turn.avail_out;
  const auto held_back = static_cast<std::size_t>(turn.data_type) % bits_held;
  const std::size_t end = in.size() - turn.avail_in - held_back / byte_bits;
  if (made == out.size()) return {Inflated::State::too_large, {}};
  if (state != zlib::error::end_of_stream || end != in.size() - look_ahead || made < known.size()) return {};
  return {Inflated::State::whole, out.substr(known.size(), made - known.size())};
}

}  // namespace stopgap::json
