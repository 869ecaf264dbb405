// Loads of bench models, by name: how a test holds its specimen and pushes it.
#pragma once

#include "models/evidence/bench_sizes.h"
#include "models/parts/loading.h"

#include <string_view>
#include <vector>

namespace gapstrain::models {

namespace bench_load {
// Every model has these, between balls at the bone's ends on its axis. Bending is the constant moment between the
// inner rollers of a four-point test.
inline constexpr std::string_view axial = "axial", torsion = "torsion";
inline constexpr std::string_view tension = "bending, plate in tension";
inline constexpr std::string_view compression = "bending, plate in compression";
inline constexpr std::string_view edge = "bending on the plate's edge";
// Where a statement leaves open how ends are held. Gripped: both ends kept straight, one of them turns about the
// bone's axis and slides along it.
inline constexpr std::string_view axial_held = "axial, distal end held, proximal on a ball";
inline constexpr std::string_view axial_guided = "axial, distal end held, proximal guided";
inline constexpr std::string_view axial_free = "axial, distal end held, proximal free";
inline constexpr std::string_view torsion_gripped = "torsion, ends gripped";
inline constexpr std::string_view hard = "bending hard, plate in tension";  // where a gap is to close
// A head beside the bone's axis takes the load: along a line beside it, and from there to the axis at the far end.
inline constexpr std::string_view aside = "axial, line aside";
inline constexpr std::string_view aside_held = "axial, line aside, distal end held";
inline constexpr std::string_view head_to_knee = "axial, from head to knee";
inline constexpr std::string_view head_to_knee_held = "axial, from head to knee, distal end held";
}  // namespace bench_load

// Those of every model, then those that the sizes ask for.
std::vector<LoadCase> bench_loads(const BenchSizes& sizes);

// Its one force or moment, N or N mm.
double size_of(const LoadCase& load);

}  // namespace gapstrain::models
