// Service loads and the supports they act against. All loads act at the bone's ends or at named sections.
#pragma once

#include "models/parts/units.h"

#include <optional>
#include <string>
#include <vector>

namespace gapstrain::models {

enum class Support {
  ball_joints,  // proximal ball holds 3 translations and axial twist, distal ball the 2 transverse translations
  cantilever    // proximal end fully held, distal end free
};

// Four rollers in one plane; each is a saddle round the bone. Positions along the bone, outer ones are supports.
struct FourPointBending {
  Length outer_proximal, inner_proximal, inner_distal, outer_distal;
  Force total;                // on both inner rollers together
  bool across_plate = false;  // false: pushed along z (plate normal); true: along y (plate edge)
  bool operator==(const FourPointBending&) const = default;
};

// One load case: the sum of its parts acts at once. Signs in construct axes (DEVELOPERS.md): x distal,
// z from the bone's axis to the plate, y completing a right-handed set.
struct LoadCase {
  std::string name;
  Support support = Support::ball_joints;
  Length ball_distance;  // of each ball beyond the bone's end, along x
  Length ball_offset_y;  // of the load line from the end sections' centres
  Length ball_offset_z;
  Force axial_compression;  // along the line of the balls, or along x at the free end
  Force transverse_y;       // at the distal end; cantilever only
  Force transverse_z;
  Moment bending_y;                            // end moments about y: positive closes the far cortex
  Moment bending_z;                            // end moments about z
  Moment torsion;                              // about x, on the distal end
  std::optional<FourPointBending> four_point;  // takes the place of all the parts above
  std::optional<double> cycles_per_day;        // how often it is applied; absent: it is no part of a patient's day
  double spread = 0.25;                        // standard deviation of its size over the size
};

}  // namespace gapstrain::models
