// Service loads and the supports they act against. Loads act at the bone's ends, at named sections and at places
// on the bone's surface.
#pragma once

#include "models/parts/units.h"

#include <array>
#include <optional>
#include <string>
#include <vector>

namespace gapstrain::models {

// What one end of the bone cannot do. Translations and turns are along and about the construct's axes, or where a
// load line is given by two points, along and across that line.
enum class EndHold {
  free,    // nothing is held
  ball,    // turns freely about a point; see EndSupports for what it holds
  guided,  // slides along the bone (along the load line where one is given); does not move across, does not turn
  held,    // all six motions
  elastic  // all six motions, by springs to the ground
};

// Motion of an end per force on it, about its section's centre: translations along x, y, z, then turns about them.
struct EndFlexibility {
  std::array<double, 36> rows{};  // (6 x 6), mm/N, 1/N, rad/N, rad/(N mm); symmetric, semi-definite; zero: rigid
  bool operator==(const EndFlexibility&) const = default;
};

// Springs one a motion, in the order of the rows; an absent one is rigid.
struct EndSprings {
  std::array<std::optional<AxialStiffness>, 3> translation;
  std::array<std::optional<AngularStiffness>, 3> rotation;
};
EndFlexibility flexibility_of(const EndSprings& springs);

struct EndSupport {
  EndHold hold = EndHold::ball;
  EndFlexibility flexibility{};  // of an elastic end
  bool operator==(const EndSupport&) const = default;
};

// Whether forces act on the construct as it is deformed: what axial forces add to bending as parts turn, and turns
// that are not small.
enum class SecondOrderEffects {
  automatic,  // in every load above 5 % of the one that buckles the construct; turns above 0.1 rad as large ones
  always,     // in every load; turns likewise
  never,
  large  // as automatic, and turns as large ones in every load
};

enum class BoneEnd { proximal, distal };
constexpr BoneEnd other(BoneEnd end) { return end == BoneEnd::proximal ? BoneEnd::distal : BoneEnd::proximal; }

// Both ends. One of them is the base, the other one the loaded end: the base is the end that is held more firmly,
// held before elastic before ball before guided before free, the proximal one of equals. A ball at the base holds
// all translations of its point, one at the loaded end those across the line.
struct EndSupports {
  EndSupport proximal{}, distal{};
  const EndSupport& at(BoneEnd end) const { return end == BoneEnd::proximal ? proximal : distal; }
  bool operator==(const EndSupports&) const = default;
};
EndSupports ball_joints();  // at both ends
EndSupports cantilever();   // proximal end held, distal end free

BoneEnd base_of(const EndSupports& supports);
// A ball turns freely; where nothing at the other end holds twist (a ball, or a free end), the base's ball does.
bool is_twist_held_by_ball(const EndSupports& supports, BoneEnd end);
// Whether end moments act on it: it may turn, and is not what the loaded end is loaded against.
bool takes_bending(const EndSupports& supports, BoneEnd end);
bool takes_torsion(const EndSupports& supports, BoneEnd end);

// In construct axes.
struct Point {
  Length x, y, z;
  bool operator==(const Point&) const = default;
};
struct ForceVector {
  Force x, y, z;
  bool operator==(const ForceVector&) const = default;
};

// What the axial force acts along; the proximal ball sits at `from`, the distal one at `to`.
struct LoadLine {
  Point from, to;
  bool operator==(const LoadLine&) const = default;
};

// A force on the bone's outer surface, such as a muscle's.
struct SurfaceForce {
  Length position;  // along the bone
  Angle around;     // round the bone from the plate's side towards +y
  ForceVector force;
  bool operator==(const SurfaceForce&) const = default;
};

// Four rollers in one plane; each is a saddle round the bone. Positions along the bone, outer ones are supports.
struct FourPointBending {
  Length outer_proximal, inner_proximal, inner_distal, outer_distal;
  Force total;                // on both inner rollers together
  bool across_plate = false;  // false: pushed along z (plate normal); true: along y (plate edge)
  bool operator==(const FourPointBending&) const = default;
};

// How many times as large as entered one part of a load may be: from below 1 to above it; 1 at both ends where its
// size is no more in doubt than that of the whole load.
struct PartBand {
  double low = 1.0, high = 1.0;
  bool operator==(const PartBand&) const = default;
};

// One load case: the sum of its parts acts at once. Signs in construct axes (DEVELOPERS.md): x distal,
// z from the bone's axis to the plate, y completing a right-handed set.
struct LoadCase {
  std::string name;
  EndSupports supports;
  Length ball_distance;  // of each ball beyond the bone's end, along x
  Length ball_offset_y;  // of the load line from the end sections' centres
  Length ball_offset_z;
  std::optional<LoadLine> line;  // in place of the three above
  // Along the line that is given, else along that of two balls, else along x; presses on the loaded end.
  Force axial_compression;
  Force transverse_y;  // on the loaded end, where it is free or elastic
  Force transverse_z;
  Moment bending_y;                            // end moments about y: positive closes the far cortex
  Moment bending_z;                            // end moments about z
  Moment torsion;                              // about x, on the distal end; on a proximal one reversed
  std::optional<FourPointBending> four_point;  // takes the place of all the parts above
  std::vector<SurfaceForce> forces;            // together with either
  std::optional<double> cycles_per_day;        // how often it is applied; absent: it is no part of a patient's day
  double spread = 0.25;                        // standard deviation of its size over the size
  PartBand axial_band, bending_band, torsion_band;  // see load_parts.h for what each is of
  bool operator==(const LoadCase&) const = default;
};

}  // namespace gapstrain::models
