// Bytes as a page holds them.
#pragma once

#include <string>
#include <string_view>

namespace gapstrain::cases {

// RFC 4648, with padding, one line.
std::string base64(std::string_view bytes);

// RFC 1951, as small as zlib makes it: "deflate-raw" to a browser's DecompressionStream.
std::string deflated(std::string_view bytes);

// FIPS 180-4, 32 bytes.
std::string sha256(std::string_view bytes);

// As text within an element, or an attribute in double quotes.
std::string html_text(std::string_view text);

}  // namespace gapstrain::cases
