// The unrolled tube as faces for the plane mesher. Private to mesh/.
#pragma once

#include "mesh/cut_tube.h"
#include "mesh/plane_mesher.h"

#include <functional>
#include <string>
#include <utility>
#include <vector>

namespace gapstrain::mesh {

// A closed curve round the tube, x over s: an end, a section line or the cut.
struct Level {
  std::string group;
  std::function<double(double)> x;
  std::vector<int> nodes = {};  // by rising s, from the seam to its twin one perimeter on
};

// A sheet of bands between neighbouring levels, with the spots cut out as faces of their own. Its s runs from the
// seam to one perimeter on. The seam's two sides have nodes at the same x.
struct TubeOutline {
  PlaneOutline plane;
  SizeField size;
  std::vector<Level> levels;              // by rising x
  std::vector<std::vector<int>> rings;    // closed, counter-clockwise, one for each spot
  std::vector<int> band_of_face;          // band i lies between levels i and i + 1
  std::vector<int> spot_of_face;          // -1 for what is no spot
  std::vector<std::pair<int, int>> seam;  // (node, its twin one perimeter on)
};

// @throw MeshError as mesh_cut_tube does.
TubeOutline outline_tube(const UnrolledTube& tube, double seam);

}  // namespace gapstrain::mesh
