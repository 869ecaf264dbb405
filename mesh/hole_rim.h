// The rim of a round or slotted hole as a curve by arc length. Private to mesh/.
#pragma once

#include "mesh/perforated_plate.h"
#include "mesh/size_field.h"

#include <vector>

namespace gapstrain::mesh {

// Arc length t runs counter-clockwise from the rim's end towards +x.
class HoleRim {
 public:
  HoleRim(const Hole& hole, int round_elements);

  double length() const;                                       // mm
  double edge_length() const { return length() / elements_; }  // mm
  int elements() const { return elements_; }                   // even
  Capsule capsule() const;                                     // what the rim bounds
  double half_length() const { return flat_ + radius_; }       // along the bar, mm
  double centre() const { return centre_; }
  Eigen::Vector2d point(double t) const;
  double upper_crossing(
      double x) const;  // t where the upper half of the rim is at x; the lower is at length() - t
  // Arc lengths of the nodes, an even number of edges between neighbouring `stops` (rising, all of them nodes) and
  // elements() in all, of lengths as equal as that allows. With no stops from 0. The last entry is one turn past
  // the first. One list for each piece between stops, both ends included.
  std::vector<std::vector<double>> divide(const std::vector<double>& stops) const;

 private:
  double centre_, radius_, flat_;  // flat_: half the length of the straight sides
  int elements_;
};

}  // namespace gapstrain::mesh
