// Plate, screws, their number and their holes, and so the working length, sized together for a bridged fracture.
#pragma once

#include "models/assembly/prepared_bodies.h"
#include "models/layouts/layouts.h"
#include "models/margins/margins.h"
#include "models/patient/starting_plate.h"

#include <cstddef>
#include <functional>
#include <memory>
#include <optional>
#include <string>
#include <vector>

namespace gapstrain::models {

// What plate and screws are to have in hand at the middle of all loads, strength over demand: with the metal's
// fatigue strength at the low end of what is published (0.85 of the middle) 1.02 of it is left (ours; no source
// has a figure for bone plates).
inline constexpr double wanted_margin = 1.2;

// A choice of screws on one plate.
struct FoundLayout {
  ScrewHoles holes;
  double margin = 0.0;  // the least of plate and screws
  MarginKind least = MarginKind::plate_yield;
  std::vector<std::string> broken;  // rules of the trade
  // The least at either end of any part's band, one part at a time; of the choice taken on a plate, where loads
  // have bands and all of their ends an answer.
  std::optional<double> over_bands{};
  std::size_t solved = 0;  // choices on this plate
};

// Choices that come into question, of a plate with locking screws: 3 to 5 a fragment, in the four holes next to
// the fracture and the two outermost, for a screw between them bears little (ours). @pre bridged
LayoutRules layouts_to_size(const Construct& construct);

// Whether it has what is wanted in hand, and breaks no rule.
bool is_enough(const FoundLayout& found);

// Whether nothing known of it fails within the bands.
bool holds_over_bands(const FoundLayout& found);

// Whether one is to be preferred: it has what is wanted in hand where the other has not, else holds where the
// other fails; then breaks fewer rules; then, of those with enough in hand, holds over the bands where the other
// does not, has fewer screws; then more in hand.
bool is_better(const FoundLayout& one, const FoundLayout& other);

// The best of all choices on bodies made for them; the construct's own where that is as good in all of these but
// up to 3 % less in hand. Nothing where none has an answer that passes its checks.
// @pre bodies made for `screws`, which begin with the layouts' candidates
std::optional<FoundLayout> find_layout(const std::shared_ptr<const PreparedBodies>& prepared,
                                       const Construct& construct, const std::vector<Screw>& screws,
                                       const Layouts& layouts);

struct TriedPlate {
  PlateChoice plate;
  std::optional<FoundLayout> found;  // nothing: it does not fit, or has no answer
};

struct Sizing {
  std::vector<TriedPlate> tried;     // smallest first
  std::optional<std::size_t> taken;  // of them
  bool is_wanted() const;            // the taken one has what is wanted in hand
  std::size_t solved() const;        // choices on all plates
};

// One plate after another until one is enough and holds over the bands; else the best of all, the smaller one of
// those as good.
Sizing size_plates(const std::vector<PlateChoice>& plates,
                   const std::function<std::optional<FoundLayout>(const PlateChoice&)>& find);

}  // namespace gapstrain::models
