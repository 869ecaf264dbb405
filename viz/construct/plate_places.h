// Places on the plate's mesh that the pictures point at.
#pragma once

#include "models/findings/fields.h"
#include "models/findings/findings.h"

#include <vector>

namespace gapstrain::viz {

// The plate among the bodies. @throw std::invalid_argument when there is none.
const models::ShellField& plate_of(const models::LoadFields& fields);

struct HolePlace {
  int number = 0;                // 1-based
  Eigen::Vector3d centre;        // mm, on the undeformed mid-surface
  Eigen::Vector3d displacement;  // mean of the rim's
  double radius = 0.0;           // mean of the rim's, mm
};

// Of every group "hole:K" of the plate's mesh, by rising number.
std::vector<HolePlace> hole_places(const models::ShellField& plate);

// Node of the largest von Mises stress on a face.
int hottest_node(const models::ShellField& plate, models::PlateFace face);

// Of both faces and the middle.
double largest_von_mises(const models::ShellField& plate);

double largest_displacement(const models::LoadFields& fields);

}  // namespace gapstrain::viz
