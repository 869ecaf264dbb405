// Spots of plate and bone that may touch, as pairs of point ports.
#pragma once

#include "models/assembly/meshes.h"
#include "models/geometry/bone_shape.h"
#include "models/geometry/plate_shape.h"
#include "models/parts/construct.h"
#include "solver/bodies/link.h"
#include "solver/bodies/port.h"

#include <functional>
#include <string>
#include <vector>

namespace gapstrain::models {

// A spot of the plate's underside over the bone.
struct UndersideSpot {
  solver::Port plate, bone;
  std::size_t on_plate = 0, fragment = 0;
  double along = 0.0;      // on the plate
  double area = 0.0;       // of the underside, mm^2
  double gap = 0.0;        // with the plate as contoured, before any prebend, mm
  Eigen::Vector3d normal;  // from the bone to the plate
};

// Spots of one plate in two lines, a quarter of the width off the centre line, clear of holes and of the fracture.
// Across its width a plate's underside is taken as hollowed to the bone, so both lines have the centre line's gap.
// `shells`: of all bodies by their numbers.
std::vector<UndersideSpot> underside_spots(const Construct& construct, std::size_t plate,
                                           const PlateShape& plate_shape, const BoneShape& bone_shape,
                                           const std::vector<solver::Shell>& shells);

// Height of a prebent plate's underside over its bed at a place of the plate.
double prebend_height(const Plate& plate, double fracture_along, double along, Length prebend);

// Where a spot's point port is among its body's motions.
struct SpotPlace {
  std::size_t body = 0;
  Eigen::Index column = 0;  // of a point port's three motions
};

// The two links of a pair (solver/bodies/pressed.h): second side's motion against the first one's, along `normal`
// and across it. The surface's own give is that of 0.05 mm of bone over the spot's area.
struct PairLinks {
  solver::Link normal, tangent;
};
// `ends_along`: ends of a link along these directions (3 x k).
using EndsAlong = std::function<std::vector<solver::LinkEnd>(const Eigen::MatrixXd& directions)>;
PairLinks pair_links(const std::string& name, const EndsAlong& ends_along, const Eigen::Vector3d& normal,
                     double gap, double area, const CorticalBone& cortex);

}  // namespace gapstrain::models
