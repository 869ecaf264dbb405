// What comes once in a while and is no part of a day: whether plate and screws bear it without bending for good.
#pragma once

#include "models/margins/margins.h"
#include "models/patient/gait.h"

#include <optional>
#include <string>
#include <vector>

namespace gapstrain::models {

// A landing after a jump, such as off a sofa: the force on one paw at its peak over that at the trot, all parts of
// the load being as many times as large.
struct RareEvent {
  double over_trot = 1.0;
  LoadEvidence evidence = LoadEvidence::none;
  std::string source;  // a clause
};
RareEvent landing(Species species, LongBone bone);

// Of plate and screws the part that yields first. `factor`: times the load under which its margin is least.
struct OnceBorne {
  Margin first;
  double needed = 1.0;  // times that load that the event asks for
  bool is_borne() const { return first.factor >= needed; }
};
// Nothing where no yield strength is known. @pre the margins' loads are the patient's gaits
std::optional<OnceBorne> borne_once(const std::vector<Margin>& margins, const RareEvent& event);

}  // namespace gapstrain::models
