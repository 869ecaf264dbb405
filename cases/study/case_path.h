// One key of one case file by its path: "plate.standoff", "load[0].axial", "bone.station[2].cortex".
#pragma once

#include "cases/toml/document.h"
#include "cases/toml/key_table.h"

#include <optional>
#include <string>
#include <vector>

namespace gapstrain::cases {

struct PathStep {
  std::string name;
  std::optional<std::size_t> index;  // of a list of tables, from 0
};

struct CasePath {
  std::string text;             // one and the same for the same key
  std::vector<PathStep> steps;  // the last one is the key
  const Key* key = nullptr;
};

// A key that the case may have. It need not be written there, nor its [table], but the lists of tables on its way
// must be long enough.
// @throw ValueError with what was found, what is allowed and how to mend it.
CasePath find_case_path(const std::string& text, const KeyTable& keys, const Table& tree);

// What the case says; null where it is silent.
const Value* value_at(const Table& tree, const CasePath& path);

// Sets the key, at the place where it stands or else that of the table around it.
// @pre the path was found in this tree
void set_value(Table& tree, const CasePath& path, const Value& value);

}  // namespace gapstrain::cases
