#include "cases/reader/case_keys.h"
#include "cases/reader/words.h"

#include <fmt/format.h>

namespace gapstrain::cases {

namespace {

std::string allowed_values(const Key& key) {
  if (const auto dimension = dimension_of(key.kind))
    return fmt::format("{} ({})", with_article(*dimension), units_of(*dimension));
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
      return "a text or a list of texts";
    default:
      return "a text";
  }
}

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

bool is_table(const Key& key) { return key.kind == Kind::table || key.kind == Kind::tables; }

void describe_table(std::string_view table, std::string& out) {
  for (const Key* key : keys_of(table)) {
    if (is_table(*key)) continue;
    const std::string meaning = key->meaning.empty() ? "" : fmt::format("; {}", key->meaning);
    out += fmt::format("  {:<21}{}{}\n{:23}{}\n", key->name, need_of(*key), meaning, "", allowed_values(*key));
  }
  for (const Key* key : keys_of(table)) {
    if (!is_table(*key)) continue;
    const std::string path = join_path(table, key->name);
    out += fmt::format("\n{}  {}; {}\n", header_of(path), need_of(*key), key->meaning);
    describe_table(path, out);
  }
}

}  // namespace

std::string describe_case_keys() {
  std::string out =
      "A case file is TOML. Quantities are texts with a unit, such as \"2.7 mm\"; only counts and ratios are "
      "plain\n"
      "numbers. Tables in [[double brackets]] may be repeated.\n\n";
  describe_table("", out);
  return out;
}

}  // namespace gapstrain::cases
