// How a construct is made: its steps in order, and which screws they call by which name.
#pragma once

#include "models/parts/construct.h"

#include <map>
#include <string>
#include <vector>

namespace gapstrain::models {

struct Procedure {
  std::map<std::string, int> screws;  // label -> position in Assembly::screws
  std::vector<Step> steps;
  Length prebend;
  FrictionLaw friction = FrictionLaw::coulomb;
};

// The construct's own: `chosen` are the candidates of its screws, in their order. What its steps name and it does
// not have is left out of them (another choice of screws, same operation); a screw that no step inserts goes in
// and is tightened after the last one, in that order.
Procedure procedure_of(const Construct& construct, const std::vector<int>& chosen);

// A step in words, such as "insert and tighten S4".
std::string describe(const Step& step, const std::vector<Screw>& screws);

}  // namespace gapstrain::models
