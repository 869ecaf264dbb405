// Margins as they are collected, part by part.
#pragma once

#include "models/margins/margins.h"
#include "models/margins/margins_fatigue.h"

#include <string>
#include <vector>

namespace gapstrain::models {

struct MarginList {
  std::vector<Margin> margins;
  std::vector<LeftOutMargin> left_out;

  // One that is no finite number is left out: nothing strains it.
  void add(Margin margin);
  void add_all(MarginList other);
};

// What a metal has in hand under repeated loads: of the load under which it lives least and, where several make up
// the patient's day, of all together. `cycles`: one a load. `locations`: the plate's, one a load; empty for a
// screw. `metal`: @pre its fatigue strength is known
struct RepeatedLoads {
  MarginKind alone, together;  // kinds
  const Metal& metal;
  double finish = 1.0;
  NotchBasis notch{};
  std::string source;
  std::vector<StressCycle> cycles;
  std::vector<PlateLocation> locations;
  ScrewId screw = ScrewId::none;
};
void add_fatigue_margins(const Construct& construct, const RepeatedLoads& loads, MarginList& list);

void add_plate_margins(const Construct& construct, const Findings& findings, MarginList& list);
void add_screw_margins(const Construct& construct, const Findings& findings, MarginList& list);
void add_bone_margins(const Construct& construct, const Findings& findings, MarginList& list);

}  // namespace gapstrain::models
