// Margins as they are collected, part by part.
#pragma once

#include "models/margins/margins.h"

#include <string>
#include <vector>

namespace gapstrain::models {

struct MarginList {
  std::vector<Margin> margins;
  std::vector<std::string> left_out;

  // One that is no finite number is left out. `why`: what that means then, a sentence.
  void add(Margin margin, const std::string& why);
};

void add_plate_margins(const Construct& construct, const Findings& findings, MarginList& list);
void add_screw_margins(const Construct& construct, const Findings& findings, MarginList& list);
void add_bone_margins(const Construct& construct, const Findings& findings, MarginList& list);

}  // namespace gapstrain::models
