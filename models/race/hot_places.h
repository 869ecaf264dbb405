// The places of a plate with the shortest fatigue lives, and their stress in any number of states.
#pragma once

#include "models/assembly/assembly.h"
#include "models/race/stress_history.h"

#include <Eigen/Core>

#include <vector>

namespace gapstrain::models {

// A node of the plate's mesh on one of its faces.
struct PlateNode {
  int node = 0;
  PlateFace face = PlateFace::top;
  bool operator==(const PlateNode&) const = default;
};

// The worst few of each state by the reversed amplitude between rest and state, from the whole stress field; no
// two of a state within half a millimetre. The worst of each state is always among them. The wall's middle bears
// less than one of its faces and is left out. `at_rest`, `loaded`: forces on the plate's ports, (motions),
// (motions x states). @pre the metal has fatigue strength
std::vector<PlateNode> find_hot_nodes(const Assembly& assembly, const Eigen::VectorXd& at_rest,
                                      const Eigen::MatrixXd& loaded);

std::vector<HotPlace> places_of(const Assembly& assembly, const std::vector<PlateNode>& nodes);

// Stress at a few nodes straight from the forces on the plate's ports: exact, and a product of small matrices.
class PlaceStress {
 public:
  PlaceStress(const Assembly& assembly, const std::vector<PlateNode>& nodes);
  // (3 x nodes): s11, s22, s12 of each, MPa.
  Eigen::Matrix3Xd read(const Eigen::VectorXd& port_forces) const;

 private:
  Eigen::MatrixXd rows_;  // (3 nodes x motions)
};

}  // namespace gapstrain::models
