// The perforated bar as faces for the plane mesher. Private to mesh/.
#pragma once

#include "mesh/perforated_plate.h"
#include "mesh/plane_mesher.h"

namespace gapstrain::mesh {

struct PlateOutline {
  PlaneOutline plane;
  SizeField size;
  Groups groups;  // of points of the outline
};

// @throw MeshError as mesh_perforated_plate does.
PlateOutline outline_plate(const PerforatedPlate& plate);

}  // namespace gapstrain::mesh
