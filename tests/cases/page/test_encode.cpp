// Bytes as a page holds them, against the standards' own examples.
#include "cases/page/encode.h"

#include <fmt/format.h>
#include <zlib.h>
#include <catch2/catch.hpp>

#include <string>

namespace gapstrain {

using namespace cases;  // NOLINT: this file is nothing but pages

namespace {

std::string hex(const std::string& bytes) {
  std::string text;
  for (const char byte : bytes) text += fmt::format("{:02x}", static_cast<unsigned char>(byte));
  return text;
}

std::string inflated(const std::string& packed) {
  z_stream stream{};
  REQUIRE(inflateInit2(&stream, -15) == Z_OK);
  std::string input = packed, output(1 << 20, '\0');
  stream.next_in = reinterpret_cast<Bytef*>(input.data());
  stream.avail_in = static_cast<uInt>(input.size());
  stream.next_out = reinterpret_cast<Bytef*>(output.data());
  stream.avail_out = static_cast<uInt>(output.size());
  CHECK(inflate(&stream, Z_FINISH) == Z_STREAM_END);
  output.resize(stream.total_out);
  inflateEnd(&stream);
  return output;
}

}  // namespace

TEST_CASE("base64 is RFC 4648's", "[page]") {
  // S. Josefsson 2006, RFC 4648, section 10.
  CHECK(base64("").empty());
  CHECK(base64("f") == "Zg==");
  CHECK(base64("fo") == "Zm8=");
  CHECK(base64("foo") == "Zm9v");
  CHECK(base64("foob") == "Zm9vYg==");
  CHECK(base64("fooba") == "Zm9vYmE=");
  CHECK(base64("foobar") == "Zm9vYmFy");
  CHECK(base64(std::string("\xff\xfe\x00", 3)) == "//4A");
}

TEST_CASE("SHA-256 is FIPS 180-4's", "[page]") {
  // NIST, Examples with Intermediate Values, SHA-256: "abc" and the two-block message; the empty one from memory.
  CHECK(hex(sha256("abc")) == "ba7816bf8f01cfea414140de5dae2223b00361a396177a9cb410ff61f20015ad");
  CHECK(hex(sha256("abcdbcdecdefdefgefghfghighijhijkijkljklmklmnlmnomnopnopq")) ==
        "248d6a61d20638b8e5c026930c3e6039a33ce45964ff2167f6ecedd419db06c1");
  CHECK(hex(sha256("")) == "e3b0c44298fc1c149afbf4c8996fb92427ae41e4649b934ca495991b7852b855");
}

TEST_CASE("what is deflated comes back, and is smaller where it repeats itself", "[page]") {
  std::string bytes;
  for (int k = 0; k < 100000; ++k) bytes += static_cast<char>(k * k % 251);
  CHECK(inflated(deflated(bytes)) == bytes);
  CHECK(deflated(bytes).size() < bytes.size() / 4);
  CHECK(inflated(deflated("")).empty());
}

TEST_CASE("hostile texts stay text", "[page]") {
  CHECK(html_text("<img src=x onerror=\"a&b\">") == "&lt;img src=x onerror=&quot;a&amp;b&quot;&gt;");
}

}  // namespace gapstrain
