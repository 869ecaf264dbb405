// The parts of an answer on one state.
#pragma once

#include "cases/answers/byte_block.h"
#include "cases/answers/solved_state.h"

namespace gapstrain::cases {

// What was read, before anything is solved: screws, steps, loads, tissue, rules of the trade. Added to `answer`.
void put_read(Json& answer, SolvedState& state);

// `quick`: forces and motions, no stress of plate and bone. @pre bodies are factored
void put_quick(Json& answer, SolvedState& state);

// `figures`, `findings`, `head`, `verdict`, `worst`, `along_plate`: as an analysis has them.
void put_findings(Json& answer, SolvedState& state, models::Extent extent, bool with_race);

// `wanted`: [{"load": 0}, {"step": 2}]. @throw RequestError for others
void put_fields(Json& answer, SolvedState& state, const Json& wanted, ByteBlock& bytes);

}  // namespace gapstrain::cases
