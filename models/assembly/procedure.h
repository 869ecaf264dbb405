// How a construct is made: its steps in order, and which parts they work on.
#pragma once

#include "models/parts/construct.h"

#include <optional>
#include <string>
#include <vector>

namespace gapstrain::models {

// A screw by its position in Assembly::screws, or a temporary hold by that in Construct::temporary.
struct Part {
  enum class Kind { screw, hold };
  Kind kind = Kind::screw;
  int index = 0;
  bool operator==(const Part&) const = default;
};

// A step of the construct with its parts found.
struct ProcedureStep {
  std::vector<int> place;            // holds
  std::vector<int> insert, tighten;  // screws
  std::vector<Part> remove;
  std::optional<Tissue> tissue;
};

struct Procedure {
  std::vector<int> screws;  // the construct's, in its order: positions in Assembly::screws
  std::vector<ProcedureStep> steps;
  Length prebend;
  FrictionLaw friction = FrictionLaw::coulomb;
};

// The construct's own: `chosen` are the candidates of its screws, in their order. What its steps name and it does
// not have is left out of them (another choice of screws, same operation); a screw that no step inserts goes in
// and is tightened after the last one, in that order.
Procedure procedure_of(const Construct& construct, const std::vector<int>& chosen);

// A step in words, such as "insert and tighten S4". @pre the procedure is of this choice of screws
std::string describe(const ProcedureStep& step, const Procedure& procedure, const Construct& construct);

}  // namespace gapstrain::models
