#include "cases/toml/describe_keys.h"

#include "cases/text/words.h"

#include <fmt/format.h>

namespace gapstrain::cases {

std::string allowed_values(const Key& key) {
  if (const auto dimension = dimension_of(key.kind))
    return fmt::format("{} ({})", with_article(*dimension), units_of(*dimension));
  if (const auto dimension = dimension_of_components(key.kind))
    return fmt::format("{} ({}) along each of x, y and z, as a list", with_article(*dimension),
                       units_of(*dimension));
  switch (key.kind) {
    case Kind::choice:
      return fmt::format("\"{}\"", fmt::join(key.choices, "\", \""));
    case Kind::number:
      return "a plain number";
    case Kind::count:
      return "a whole number";
    case Kind::counts:
      return "a list of whole numbers";
    case Kind::texts:
      return key.choices.empty() ? "a text or a list of texts"
                                 : fmt::format("a list of \"{}\"", fmt::join(key.choices, "\", \""));
    case Kind::measure:
      return "a plain number, or a quantity as a text with its unit";
    case Kind::values:
      return "a list of values";
    default:
      return "a text";
  }
}

namespace {

std::string need_of(const Key& key) {
  switch (key.need) {
    case Need::required:
      return "required";
    case Need::optional:
      return "optional";
    case Need::literal:
      return key.kind == Kind::number || key.kind == Kind::count ? fmt::format("default {}", key.fallback)
                                                                 : fmt::format("default \"{}\"", key.fallback);
    case Need::derived:
      return fmt::format("default: {}", key.fallback);
  }
  return {};
}

void describe_table(const KeyTable& keys, std::string_view table, std::string& out) {
  for (const Key* key : keys.keys_of(table)) {
    if (is_table(*key)) continue;
    const std::string meaning = key->meaning.empty() ? "" : fmt::format("; {}", key->meaning);
    const std::string range = has_range(*key) ? fmt::format(", {}", range_text(*key)) : "";
    out += fmt::format("  {:<21}{}{}\n{:23}{}{}\n", key->name, need_of(*key), meaning, "", allowed_values(*key),
                       range);
  }
  for (const Key* key : keys.keys_of(table)) {
    if (!is_table(*key)) continue;
    const std::string path = join_path(table, key->name);
    const std::string number = has_range(*key) ? fmt::format("; {} of them", range_text(*key)) : "";
    out += fmt::format("\n{}  {}; {}{}\n", keys.header_of(path), need_of(*key), key->meaning, number);
    describe_table(keys, path, out);
  }
}

}  // namespace

std::string describe_keys(const KeyTable& keys, std::string_view file) {
  std::string out = fmt::format(
      "A {} file is TOML. Quantities are texts with a unit, such as \"2.7 mm\"; only counts and ratios are "
      "plain\n"
      "numbers. Tables in [[double brackets]] may be repeated.\n\n",
      file);
  describe_table(keys, "", out);
  return out;
}

}  // namespace gapstrain::cases
