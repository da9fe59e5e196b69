#include "io/encoding.hpp"

#include <algorithm>
#include <array>
#include <cstdint>

#include "cutback/error.hpp"
#include "io/utf8.hpp"

namespace cutback::io {
namespace {

// The bytes 80 to 9F of Windows-1252 (the WHATWG Encoding Standard, index windows-1252, has the
// same but for the five that stand for nothing); all others are those of ISO 8859-1.
constexpr std::array<std::uint32_t, 32> k_windows_1252{
    0x20AC, 0,      0x201A, 0x0192, 0x201E, 0x2026, 0x2020, 0x2021, 0x02C6, 0x2030, 0x0160,
    0x2039, 0x0152, 0,      0x017D, 0,      0,      0x2018, 0x2019, 0x201C, 0x201D, 0x2022,
    0x2013, 0x2014, 0x02DC, 0x2122, 0x0161, 0x203A, 0x0153, 0,      0x017E, 0x0178};

void append_utf8(std::string& out, std::uint32_t code) {
  const auto tail = [&](unsigned shift) {
    out += static_cast<char>(0x80U | ((code >> shift) & 0x3FU));
  };
  if (code < 0x80) {
    out += static_cast<char>(code);
  } else if (code < 0x800) {
    out += static_cast<char>(0xC0U | (code >> 6U));
    tail(0);
  } else if (code < 0x10000) {
    out += static_cast<char>(0xE0U | (code >> 12U));
    tail(6);
    tail(0);
  } else {
    out += static_cast<char>(0xF0U | (code >> 18U));
    tail(12);
    tail(6);
    tail(0);
  }
}

enum class Order { none, little, big };

/// UTF-16 by its mark; without one, by the zero bytes of its first letters.
Order utf_16_order(std::string_view text) {
  if (text.starts_with("\xFF\xFE")) return Order::little;
  if (text.starts_with("\xFE\xFF")) return Order::big;
  constexpr std::size_t k_looked_at = 64;
  const std::string_view first = text.substr(0, k_looked_at);
  if (first.size() < 4) return Order::none;
  const auto zeros = [&](std::size_t begin) {
    std::size_t count = 0;
    for (std::size_t i = begin; i < first.size(); i += 2) {
      if (first[i] == '\0') ++count;
    }
    return count;
  };
  const std::size_t pairs = first.size() / 2;
  if (zeros(0) == 0 && zeros(1) * 2 > pairs) return Order::little;
  if (zeros(1) == 0 && zeros(0) * 2 > pairs) return Order::big;
  return Order::none;
}

InputError fault(std::string what, std::string_view text, std::size_t at, const std::string& name) {
  const auto line =
      1 + std::count(text.begin(), text.begin() + static_cast<std::ptrdiff_t>(at), '\n');
  return InputError(make_fault(ErrorCode::bad_syntax, std::move(what),
                               name + ", line " + std::to_string(line), "", "",
                               "save the file as CSV in UTF-8"));
}

std::string from_utf_16(std::string_view text, bool little, const std::string& name) {
  std::string out;
  out.reserve(text.size());
  const auto unit = [&](std::size_t at) {
    const auto a = static_cast<std::uint32_t>(static_cast<unsigned char>(text[at]));
    const auto b = static_cast<std::uint32_t>(static_cast<unsigned char>(text[at + 1]));
    return little ? a | b << 8U : a << 8U | b;
  };
  std::size_t lines = 0;
  const auto bad = [&](const char* what) {
    return InputError(make_fault(ErrorCode::bad_syntax, what,
                                 name + ", line " + std::to_string(lines + 1), "", "",
                                 "save the file as CSV in UTF-8"));
  };
  for (std::size_t at = 0; at < text.size(); at += 2) {
    if (at + 1 == text.size()) throw bad("a text in UTF-16 that is cut short");
    std::uint32_t code = unit(at);
    if (at == 0 && code == 0xFEFF) continue;
    if (code >= 0xD800 && code < 0xE000) {  // half of a character
      const bool first = code < 0xDC00 && at + 3 < text.size();
      const std::uint32_t second = first ? unit(at + 2) : 0;
      if (second < 0xDC00 || second > 0xDFFF) throw bad("half a character of UTF-16");
      code = 0x10000 + ((code - 0xD800) << 10U) + (second - 0xDC00);
      at += 2;
    }
    if (code == 0) throw bad("this is not a text file: it holds a zero character");
    if (code == '\n') ++lines;
    append_utf8(out, code);
  }
  return out;
}

std::string from_windows_1252(std::string_view text, const std::string& name) {
  std::string out;
  out.reserve(text.size() + text.size() / 8);
  for (std::size_t at = 0; at < text.size(); ++at) {
    const auto byte = static_cast<std::uint32_t>(static_cast<unsigned char>(text[at]));
    const std::uint32_t code = byte >= 0x80 && byte < 0xA0 ? k_windows_1252[byte - 0x80] : byte;
    if (code == 0) throw fault("bytes that are neither UTF-8 nor Windows-1252", text, at, name);
    append_utf8(out, code);
  }
  return out;
}

/// Whether a text has characters of several bytes of UTF-8, and not by chance.
bool has_utf8(std::string_view text, std::size_t before) {
  return std::any_of(text.begin(), text.begin() + static_cast<std::ptrdiff_t>(before),
                     [](char c) { return static_cast<unsigned char>(c) >= 0x80; });
}

}  // namespace

bool needs_decoding(std::string_view text) {
  return utf_16_order(text) != Order::none || first_invalid_utf8(text) < text.size();
}

std::optional<Decoded> decoded(std::string_view text, const std::string& name) {
  const Order order = utf_16_order(text);
  if (order != Order::none)
    return Decoded{from_utf_16(text, order == Order::little, name), "UTF-16"};
  const std::size_t bad = first_invalid_utf8(text);
  if (bad >= text.size()) return std::nullopt;
  if (has_utf8(text, bad)) {
    throw fault("bytes that are not UTF-8, in a file that is UTF-8 up to there", text, bad, name);
  }
  return Decoded{from_windows_1252(text, name), "Windows-1252"};
}

}  // namespace cutback::io
