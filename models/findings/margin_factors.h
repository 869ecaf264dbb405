// What each kind of part has least in hand, as figures alone: the margins of margins.h without their words.
#pragma once

#include <optional>

namespace gapstrain::models {

// Strength over demand, the least of all parts of a kind and all loads; nothing where data are not known or
// nothing strains the part. Fatigue is that of one load or of all of a day, whichever is less.
struct MarginFactors {
  std::optional<double> plate_yield, plate_fatigue, screw_yield, screw_fatigue;
  std::optional<double> screw_hold;  // of screws whose figure is not indicative only

  std::optional<double> least() const;
  int failing() const;  // how many of them are below 1
};

}  // namespace gapstrain::models
