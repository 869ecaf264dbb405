// What may go into each hole of a plate instead of what is in it, so that one mesh is made ready for all of it.
#pragma once

#include "models/parts/construct.h"

#include <optional>
#include <string>
#include <vector>

namespace gapstrain::models {

struct HoleChoice {
  Screw screw;
  std::optional<std::string> why_not;  // a sentence: it cannot be there, or needs another mesh
};

// One a kind and number of cortices, the hole's own screw as it is; others straight, with size, metal and
// tightening of the construct's first screw of the kind, or of its first ball head. @pre check(construct) reports
// no error
std::vector<HoleChoice> choices_of_hole(const Construct& construct, int hole);

// The construct's own screws, then all that may go into its holes, each place once.
std::vector<Screw> screws_of_all_choices(const Construct& construct);

// Whether a mesh can be made ready for both: in one hole their shafts pass the same patches of the bone, or
// patches that are clear of each other.
bool fit_one_mesh(const Construct& construct, const Screw& one, const Screw& other);

// A screw of the construct whose shaft passes the bone beside the middle of the patch that it shares with other
// candidates: where its forces act is right, how soft the wall is there is taken from beside.
struct BesidePatch {
  std::string label;
  Length distance;  // the larger of both walls'
};
std::vector<BesidePatch> screws_beside_patches(const Construct& construct, const std::vector<Screw>& ready);

}  // namespace gapstrain::models
