#include "cases/page/encode.h"

#include <zlib.h>

#include <algorithm>
#include <array>
#include <bit>
#include <cstdint>
#include <limits>
#include <stdexcept>

namespace gapstrain::cases {

namespace {

constexpr std::string_view digits64 = "ABCDEFGHIJKLMNOPQRSTUVWXYZabcdefghijklmnopqrstuvwxyz0123456789+/";

// First 32 bits of the fractional parts of the cube roots of the first 64 primes (FIPS 180-4, 4.2.2).
constexpr std::array<std::uint32_t, 64> round_constants{
    0x428a2f98, 0x71374491, 0xb5c0fbcf, 0xe9b5dba5, 0x3956c25b, 0x59f111f1, 0x923f82a4, 0xab1c5ed5,
    0xd807aa98, 0x12835b01, 0x243185be, 0x550c7dc3, 0x72be5d74, 0x80deb1fe, 0x9bdc06a7, 0xc19bf174,
    0xe49b69c1, 0xefbe4786, 0x0fc19dc6, 0x240ca1cc, 0x2de92c6f, 0x4a7484aa, 0x5cb0a9dc, 0x76f988da,
    0x983e5152, 0xa831c66d, 0xb00327c8, 0xbf597fc7, 0xc6e00bf3, 0xd5a79147, 0x06ca6351, 0x14292967,
    0x27b70a85, 0x2e1b2138, 0x4d2c6dfc, 0x53380d13, 0x650a7354, 0x766a0abb, 0x81c2c92e, 0x92722c85,
    0xa2bfe8a1, 0xa81a664b, 0xc24b8b70, 0xc76c51a3, 0xd192e819, 0xd6990624, 0xf40e3585, 0x106aa070,
    0x19a4c116, 0x1e376c08, 0x2748774c, 0x34b0bcb5, 0x391c0cb3, 0x4ed8aa4a, 0x5b9cca4f, 0x682e6ff3,
    0x748f82ee, 0x78a5636f, 0x84c87814, 0x8cc70208, 0x90befffa, 0xa4506ceb, 0xbef9a3f7, 0xc67178f2};

using State = std::array<std::uint32_t, 8>;

void take_block(State& state, const unsigned char* block) {
  std::array<std::uint32_t, 64> w{};
  for (std::size_t k = 0; k < 16; ++k)
    for (std::size_t j = 0; j < 4; ++j) w[k] = w[k] << 8U | block[4 * k + j];
  for (std::size_t k = 16; k < 64; ++k) {
    const std::uint32_t a = w[k - 15], b = w[k - 2];
    w[k] = w[k - 16] + w[k - 7] + (std::rotr(a, 7) ^ std::rotr(a, 18) ^ a >> 3U) +
           (std::rotr(b, 17) ^ std::rotr(b, 19) ^ b >> 10U);
  }
  auto [a, b, c, d, e, f, g, h] = state;
  for (std::size_t k = 0; k < 64; ++k) {
    const std::uint32_t t1 = h + (std::rotr(e, 6) ^ std::rotr(e, 11) ^ std::rotr(e, 25)) + ((e & f) ^ (~e & g)) +
                             round_constants[k] + w[k];
    const std::uint32_t t2 =
        (std::rotr(a, 2) ^ std::rotr(a, 13) ^ std::rotr(a, 22)) + ((a & b) ^ (a & c) ^ (b & c));
    h = g;
    g = f;
    f = e;
    e = d + t1;
    d = c;
    c = b;
    b = a;
    a = t1 + t2;
  }
  const State more{a, b, c, d, e, f, g, h};
  for (std::size_t k = 0; k < state.size(); ++k) state[k] += more[k];
}

}  // namespace

std::string base64(std::string_view bytes) {
  std::string text;
  text.reserve((bytes.size() + 2) / 3 * 4);
  for (std::size_t k = 0; k < bytes.size(); k += 3) {
    std::uint32_t three = 0;
    for (std::size_t j = 0; j < 3; ++j)
      three = three << 8U | (k + j < bytes.size() ? static_cast<unsigned char>(bytes[k + j]) : 0U);
    for (std::size_t j = 0; j < 4; ++j)
      text += k + j > bytes.size() ? '=' : digits64[three >> (18U - 6U * j) & 63U];
  }
  return text;
}

std::string deflated(std::string_view bytes) {
  z_stream stream{};
  constexpr int raw = -15, most_memory = 9;  // window of 32 kB without a heading
  if (deflateInit2(&stream, Z_BEST_COMPRESSION, Z_DEFLATED, raw, most_memory, Z_DEFAULT_STRATEGY) != Z_OK)
    throw std::runtime_error("there is no memory to compress the page");
  std::string input(bytes);  // zlib reads from what it may not change, by its older signature
  std::string output(deflateBound(&stream, static_cast<uLong>(input.size())), '\0');
  if (std::max(input.size(), output.size()) > std::numeric_limits<uInt>::max()) {
    deflateEnd(&stream);
    throw std::runtime_error("the page is too large");
  }
  stream.next_in = reinterpret_cast<Bytef*>(input.data());
  stream.avail_in = static_cast<uInt>(input.size());
  stream.next_out = reinterpret_cast<Bytef*>(output.data());
  stream.avail_out = static_cast<uInt>(output.size());
  const int done = deflate(&stream, Z_FINISH);
  output.resize(stream.total_out);
  deflateEnd(&stream);
  if (done != Z_STREAM_END) throw std::runtime_error("the page cannot be compressed");
  return output;
}

std::string sha256(std::string_view bytes) {
  State state{0x6a09e667, 0xbb67ae85, 0x3c6ef372, 0xa54ff53a, 0x510e527f, 0x9b05688c, 0x1f83d9ab, 0x5be0cd19};
  std::string padded(bytes);
  padded += static_cast<char>(0x80);
  while (padded.size() % 64 != 56) padded += '\0';
  const std::uint64_t bits = 8 * static_cast<std::uint64_t>(bytes.size());
  for (int shift = 56; shift >= 0; shift -= 8)
    padded += static_cast<char>(bits >> static_cast<unsigned>(shift) & 0xffU);
  for (std::size_t k = 0; k < padded.size(); k += 64)
    take_block(state, reinterpret_cast<const unsigned char*>(padded.data()) + k);
  std::string hash;
  for (const std::uint32_t word : state)
    for (int shift = 24; shift >= 0; shift -= 8)
      hash += static_cast<char>(word >> static_cast<unsigned>(shift) & 0xffU);
  return hash;
}

std::string html_text(std::string_view text) {
  std::string safe;
  for (const char letter : text) {
    if (letter == '&')
      safe += "&amp;";
    else if (letter == '<')
      safe += "&lt;";
    else if (letter == '>')
      safe += "&gt;";
    else if (letter == '"')
      safe += "&quot;";
    else if (letter == '\r')
      safe += ' ';
    else
      safe += letter;
  }
  return safe;
}

}  // namespace gapstrain::cases
