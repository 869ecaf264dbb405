// Every key of a case file, once: the reader, the help and the messages are all made from this table.
#pragma once

#include "cases/reader/quantity_text.h"

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
  table,
  tables
};

enum class Need {
  required,
  optional,  // absent means: there is no such thing, or another key takes its place (see the meaning)
  literal,   // `fallback` is used as if it stood in the file
  derived    // `fallback` says in words what the reader takes
};

struct Key {
  std::string_view table;  // "" is the top level; "bone.station" are the tables [[bone.station]]
  std::string_view name;
  Kind kind = Kind::text;
  Need need = Need::optional;
  std::string_view fallback;
  std::string_view meaning;
  std::vector<std::string> choices;  // of Kind::choice
};

// In the order of the help.
const std::vector<Key>& case_keys();

// The key of that name in that table; null for an unknown one.
const Key* find_key(std::string_view table, std::string_view name);

// "bone" and "station" to "bone.station"; either may be empty.
std::string join_path(std::string_view table, std::string_view name);

// "[bone]" or "[[bone.station]]", as a table's kind wants its header.
std::string header_of(std::string_view table);

// The keys of one table; none for an unknown table.
std::vector<const Key*> keys_of(std::string_view table);

// The dimension of a quantity's kind; nothing for the other kinds.
std::optional<Dimension> dimension_of(Kind kind);

// All keys with unit, default and meaning, as a TOML-like listing for a terminal.
std::string describe_case_keys();

}  // namespace gapstrain::cases
