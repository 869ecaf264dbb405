// Stress at the places followed when parts of a load are larger or smaller than entered, each by itself.
#pragma once

#include "models/findings/findings.h"
#include "models/measures/screw_forces.h"
#include "models/parts/loading.h"

#include <Eigen/Core>

#include <array>
#include <cstddef>
#include <vector>

namespace gapstrain::models {

enum class LoadPart;  // models/parts/load_parts.h

// One value a part, at `index_of`.
using PartFactors = std::array<double, 3>;
constexpr std::size_t index_of(LoadPart part) { return static_cast<std::size_t>(part); }
inline constexpr PartFactors all_as_entered{1.0, 1.0, 1.0};

// All that stress at the places is worked from in one state; linear in what acts as long as nothing that touches
// changes.
struct PlaceForces {
  Eigen::Matrix3Xd plate;         // s11, s22, s12 at each place of the plate, MPa
  std::vector<ScrewCuts> screws;  // of those that are followed
};

// Under one load: as entered, and with each part at either end of its band.
struct PartStates {
  PlaceForces entered;
  struct Ends {
    PlaceForces low, high;
  };
  std::array<Ends, 3> ends;  // nothing in those of a part whose band is not open
};

// Between the ends of a part's band and the load as entered the state goes straight; what several parts change
// adds up. Exact where the construct is linear, whatever the factors. @pre factors within the bands
PlaceForces between(const PartStates& states, const std::array<PartBand, 3>& bands, const PartFactors& factors);

// One a place: the plate's, then the heads of the screws, then where their threads enter or leave a cortex.
std::vector<StressCycle> cycles_of(const PlaceForces& at_rest, const PlaceForces& loaded,
                                   const std::vector<CoreSection>& cores);

// 1 where every part is as entered, likewise straight between: of a value that is not below a twentieth of it.
struct PartRatios {
  struct Ends {
    double low = 1.0, high = 1.0;
  };
  std::array<Ends, 3> ends{};
};
double between(const PartRatios& ratios, const std::array<PartBand, 3>& bands, const PartFactors& factors);

}  // namespace gapstrain::models
