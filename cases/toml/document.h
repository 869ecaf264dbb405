// A parsed TOML text as a plain tree in which every key and value knows its place in the file.
#pragma once

#include <cstdint>
#include <stdexcept>
#include <string>
#include <string_view>
#include <variant>
#include <vector>

namespace gapstrain::cases {

struct Place {
  int line = 1, column = 1;  // from 1
  friend auto operator<=>(const Place&, const Place&) = default;
};

struct Value;
struct Entry;

struct Table {
  Place place;  // of its header
  std::vector<Entry> entries;
};

struct DateOrTime {};  // TOML has them, a case needs none

struct Value {
  Place place;
  std::variant<bool, std::int64_t, double, std::string, DateOrTime, std::vector<Value>, Table> content;
};

struct Entry {
  std::string key;
  Place place;  // of the key
  Value value;
};

struct SyntaxError : std::runtime_error {
  SyntaxError(Place at, const std::string& message) : std::runtime_error(message), place(at) {}
  Place place;
};

// @throw SyntaxError where the text is no TOML.
Table parse_toml(std::string_view text);

// The tree as a TOML text that parses to it, keys by their names. @pre no dates or times
std::string format_toml(const Table& tree);

}  // namespace gapstrain::cases
