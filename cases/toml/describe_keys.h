// The keys of a kind of file for a reader at a terminal.
#pragma once

#include "cases/toml/key_table.h"

#include <string>
#include <string_view>

namespace gapstrain::cases {

// "a length (mm, cm, m or um)", as messages and the help say it; without its range.
std::string allowed_values(const Key& key);

// All keys with unit, default and meaning, as a TOML-like listing. `file` is what to call the file: "case".
std::string describe_keys(const KeyTable& keys, std::string_view file);

}  // namespace gapstrain::cases
