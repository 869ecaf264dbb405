// What of a page never changes while it is open.
#pragma once

#include "cases/answers/byte_block.h"
#include "models/assembly/prepared_bodies.h"

namespace gapstrain::cases {

// Plate with holes and what may go into each, bone, fracture, loads, tissues by name. Added to `json`.
void put_parts(Json& json, const models::PreparedBodies& prepared);

}  // namespace gapstrain::cases
