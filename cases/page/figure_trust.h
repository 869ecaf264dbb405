// What a page says of each figure beside its value: where it comes from, and how far off it may be.
#pragma once

#include "cases/files/json_value.h"

namespace gapstrain::cases {

// {name: {"source", "error"?}} of all figures of outcomes: a sentence without full stop, a share.
Json figure_trust();

}  // namespace gapstrain::cases
