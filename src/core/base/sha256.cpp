#include "cutback/sha256.hpp"

#include <array>
#include <cstddef>
#include <cstdint>

namespace cutback {
namespace {

using Word = std::uint32_t;
constexpr std::size_t k_block = 64;

// The first 32 bits of the fractional parts of the cube roots of the first 64 primes.
constexpr std::array<Word, 64> k_constants{
    0x428a2f98, 0x71374491, 0xb5c0fbcf, 0xe9b5dba5, 0x3956c25b, 0x59f111f1, 0x923f82a4, 0xab1c5ed5,
    0xd807aa98, 0x12835b01, 0x243185be, 0x550c7dc3, 0x72be5d74, 0x80deb1fe, 0x9bdc06a7, 0xc19bf174,
    0xe49b69c1, 0xefbe4786, 0x0fc19dc6, 0x240ca1cc, 0x2de92c6f, 0x4a7484aa, 0x5cb0a9dc, 0x76f988da,
    0x983e5152, 0xa831c66d, 0xb00327c8, 0xbf597fc7, 0xc6e00bf3, 0xd5a79147, 0x06ca6351, 0x14292967,
    0x27b70a85, 0x2e1b2138, 0x4d2c6dfc, 0x53380d13, 0x650a7354, 0x766a0abb, 0x81c2c92e, 0x92722c85,
    0xa2bfe8a1, 0xa81a664b, 0xc24b8b70, 0xc76c51a3, 0xd192e819, 0xd6990624, 0xf40e3585, 0x106aa070,
    0x19a4c116, 0x1e376c08, 0x2748774c, 0x34b0bcb5, 0x391c0cb3, 0x4ed8aa4a, 0x5b9cca4f, 0x682e6ff3,
    0x748f82ee, 0x78a5636f, 0x84c87814, 0x8cc70208, 0x90befffa, 0xa4506ceb, 0xbef9a3f7, 0xc67178f2};

constexpr Word turned(Word word, unsigned by) { return (word >> by) | (word << (32U - by)); }

Word word_at(std::string_view block, std::size_t at) {
  Word word = 0;
  for (std::size_t i = 0; i < 4; ++i) {
    word = (word << 8U) | static_cast<unsigned char>(block[at + i]);
  }
  return word;
}

void take_block(std::array<Word, 8>& state, std::string_view block) {
  std::array<Word, 64> w{};
  for (std::size_t i = 0; i < 16; ++i) w[i] = word_at(block, 4 * i);
  for (std::size_t i = 16; i < 64; ++i) {
    const Word s0 = turned(w[i - 15], 7) ^ turned(w[i - 15], 18) ^ (w[i - 15] >> 3U);
    const Word s1 = turned(w[i - 2], 17) ^ turned(w[i - 2], 19) ^ (w[i - 2] >> 10U);
    w[i] = w[i - 16] + s0 + w[i - 7] + s1;
  }
  auto [a, b, c, d, e, f, g, h] = state;
  for (std::size_t i = 0; i < 64; ++i) {
    const Word big1 = turned(e, 6) ^ turned(e, 11) ^ turned(e, 25);
    const Word t1 = h + big1 + ((e & f) ^ (~e & g)) + k_constants[i] + w[i];
    const Word big0 = turned(a, 2) ^ turned(a, 13) ^ turned(a, 22);
    const Word t2 = big0 + ((a & b) ^ (a & c) ^ (b & c));
    h = g;
    g = f;
    f = e;
    e = d + t1;
    d = c;
    c = b;
    b = a;
    a = t1 + t2;
  }
  const std::array<Word, 8> add{a, b, c, d, e, f, g, h};
  for (std::size_t i = 0; i < add.size(); ++i) state[i] += add[i];
}

}  // namespace

std::string sha256(std::string_view text) {
  std::array<Word, 8> state{0x6a09e667, 0xbb67ae85, 0x3c6ef372, 0xa54ff53a,
                            0x510e527f, 0x9b05688c, 0x1f83d9ab, 0x5be0cd19};
  const std::uint64_t bits = std::uint64_t{text.size()} * 8U;
  for (; text.size() >= k_block; text.remove_prefix(k_block)) {
    take_block(state, text.substr(0, k_block));
  }
  std::string end(text);
  end += '\x80';
  while (end.size() % k_block != k_block - 8) end += '\0';
  for (unsigned i = 0; i < 8; ++i) end += static_cast<char>((bits >> (56U - 8U * i)) & 0xFFU);
  for (std::size_t at = 0; at < end.size(); at += k_block) {
    take_block(state, std::string_view(end).substr(at, k_block));
  }
  std::string out;
  for (const Word word : state) {
    for (unsigned i = 0; i < 8; ++i) out += "0123456789abcdef"[(word >> (28U - 4U * i)) & 0xFU];
  }
  return out;
}

}  // namespace cutback
