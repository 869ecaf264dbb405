// The keys of a case's loads.
#pragma once

#include "cases/toml/key.h"

#include <string>
#include <vector>

namespace gapstrain::cases {

std::vector<Key> load_keys();

// Faces of the bone, as files name them.
std::vector<std::string> aspect_names();

}  // namespace gapstrain::cases
