#include "cases/answers/page_pack.h"

#include <fmt/format.h>

namespace gapstrain::cases {

namespace {

// A mark, the length of the heading in ten digits, the heading as JSON, the archives one after another.
constexpr std::string_view mark = "gapstrain page 1 ";
constexpr std::size_t digits = 10;

}  // namespace

std::string write_pack(const PagePack& pack) {
  Json heading{{"file", pack.file},     {"entered", pack.entered}, {"version", pack.version},
               {"commit", pack.commit}, {"date", pack.date},       {"variants", Json::array()}};
  for (const auto& variant : pack.variants)
    heading["variants"].push_back({{"label", variant.label},
                                   {"changes", variant.changes},
                                   {"candidates", variant.candidates},
                                   {"bytes", variant.bodies.size()}});
  const std::string text = heading.dump(-1, ' ', false, Json::error_handler_t::replace);
  std::string bytes = fmt::format("{}{:0{}}{}", mark, text.size(), digits, text);
  for (const auto& variant : pack.variants) bytes += variant.bodies;
  return bytes;
}

PagePack read_pack(std::string_view bytes) {
  const auto fail = [] { throw RequestError("this is no pack of a page of this version, or it is damaged"); };
  if (!bytes.starts_with(mark) || bytes.size() < mark.size() + digits) fail();
  std::size_t length = 0;
  for (const char digit : bytes.substr(mark.size(), digits)) {
    if (digit < '0' || digit > '9') fail();
    length = 10 * length + static_cast<std::size_t>(digit - '0');
  }
  bytes.remove_prefix(mark.size() + digits);
  if (bytes.size() < length) fail();
  const Json heading = Json::parse(bytes.substr(0, length), nullptr, false);
  if (!heading.is_object()) fail();
  bytes.remove_prefix(length);
  PagePack pack{heading.at("file"),   heading.at("entered"), heading.at("version"),
                heading.at("commit"), heading.at("date"),    {}};
  for (const auto& variant : heading.at("variants")) {
    const auto size = variant.at("bytes").get<std::size_t>();
    if (bytes.size() < size) fail();
    pack.variants.push_back(
        {variant.at("label"), variant.at("changes"), variant.at("candidates"), bytes.substr(0, size)});
    bytes.remove_prefix(size);
  }
  if (pack.variants.empty() || !bytes.empty()) fail();
  return pack;
}

}  // namespace gapstrain::cases
