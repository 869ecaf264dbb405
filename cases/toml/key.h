// One key of a file that the program reads.
#pragma once

#include "cases/toml/quantity_text.h"

#include <optional>
#include <string>
#include <string_view>
#include <vector>

namespace gapstrain::cases {

enum class Kind {
  text,
  texts,
  choice,
  number,
  count,
  counts,
  length,
  force,
  stress,
  moment,
  angle,
  mass,
  stiffness,
  angular_stiffness,
  lengths,  // three, along x, y and z
  forces,   // likewise
  measure,  // a plain number or a quantity, kept as written: which of them another key says
  values,   // whatever another key takes, several times, kept as written
  table,
  tables
};

enum class Need {
  required,
  optional,  // absent means: there is no such thing, or another key takes its place (see the meaning)
  literal,   // `fallback` is used as if it stood in the file
  derived    // `fallback` says in words what the reader takes
};

// Bounds that belong to it, as the file writes values; of a list's items, and of the number of repeated tables.
struct Range {
  std::string_view least{}, most{};  // both empty: none
  std::string_view most_means{};     // where the rest of the file bounds it further, in words
};

struct Key {
  std::string_view table;  // "" is the top level; "bone.station" are the tables [[bone.station]]
  std::string_view name;
  Kind kind = Kind::text;
  Need need = Need::optional;
  std::string_view fallback;
  std::string_view meaning;
  std::vector<std::string> choices;  // of Kind::choice, and of Kind::texts that are not free
  Range range{};                     // of quantities, numbers, counts and repeated tables
};

bool is_table(const Key& key);

bool has_range(const Key& key);

// "5 mm to 1000 mm". @pre has_range
std::string range_text(const Key& key);

// "bone" and "station" to "bone.station"; either may be empty.
std::string join_path(std::string_view table, std::string_view name);

// The dimension of a quantity's kind; nothing for the other kinds.
std::optional<Dimension> dimension_of(Kind kind);

// That of each of a vector's three components; nothing for the other kinds.
std::optional<Dimension> dimension_of_components(Kind kind);

}  // namespace gapstrain::cases
