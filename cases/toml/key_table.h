// All keys of one kind of file.
#pragma once

#include "cases/toml/key.h"
#include "cases/toml/parse_value.h"

#include <map>
#include <string>
#include <string_view>
#include <utility>
#include <vector>

namespace gapstrain::cases {

class KeyTable {
 public:
  // In the order of the help.
  // @throw ValueError for a literal default that its own key does not allow
  explicit KeyTable(std::vector<Key> keys);

  const std::vector<Key>& keys() const { return keys_; }

  // The key of that name in that table; null for an unknown one.
  const Key* find(std::string_view table, std::string_view name) const;

  // The keys of one table; none for an unknown table.
  std::vector<const Key*> keys_of(std::string_view table) const;
  std::vector<std::string> names_of(std::string_view table) const;

  // "[bone]" or "[[bone.station]]", as a table's kind wants its header.
  std::string header_of(std::string_view table) const;

  // See parse_fallback. @pre the key is known
  const ParsedValue& fallback_of(std::string_view table, std::string_view name) const;

 private:
  std::vector<Key> keys_;
  std::vector<ParsedValue> fallbacks_;                                            // one a key
  std::map<std::pair<std::string_view, std::string_view>, std::size_t> indices_;  // of table and name
};

}  // namespace gapstrain::cases
