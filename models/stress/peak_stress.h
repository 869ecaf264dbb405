// Largest von Mises stress of a plate, read off port forces: for thousands of constructs on the same bodies.
#pragma once

#include "models/assembly/assembly.h"
#include "models/findings/findings.h"

#include <Eigen/Core>

#include <memory>
#include <optional>
#include <vector>

namespace gapstrain::models {

// Where the plate is looked at. Its surface carries no load, so stress is highest at an edge: at the rim of an
// empty hole over the fracture, if there is one. Where screws fill the holes on either side it may lie anywhere
// between them. The likely places are all rims and that span; the sample is a quarter of the rest. How often that
// is not enough stands in tests/models/layouts/test_construct_solver.cpp.
enum class PlatePlaces { likely, likely_and_sample };

// The stress rows in single precision, to find where it is highest, and there in double precision once more.
class PeakStress {
 public:
  PeakStress(const Assembly& assembly, PlatePlaces places)
      : PeakStress(only(assembly.plates).mesh, only(assembly.plates).sample, assembly.bodies[only_plate_body],
                   places) {}
  // For all constructs on these bodies, whatever their plate's modulus.
  PeakStress(const PreparedBodies& prepared, PlatePlaces places)
      : PeakStress(only(prepared.plates).mesh, only(prepared.plates).sample, prepared.bodies[only_plate_body],
                   places) {}

  // What carries the plate in some states, a column each.
  struct PlateForces {
    Eigen::MatrixXd port_forces;  // (motions x states)
    Eigen::MatrixXd amplitudes;   // (6 x states)
  };

  struct Peak {
    double von_mises = 0.0;   // MPa
    std::optional<int> hole;  // 1-based, of the rim it is on
    // The cycle of the largest equivalent amplitude by Goodman; of a metal with a fatigue
    // strength.
    std::optional<StressCycle> cycle;
  };
  // One a state. `at_rest`: the construct as it was made, one column; the cycle is between that and the state.
  std::vector<Peak> find(const PlateForces& loaded, const PlateForces& at_rest, const Metal& metal) const;
  // Without cycles.
  std::vector<Peak> find(const PlateForces& states) const;

 private:
  PeakStress(const PlateMesh& mesh, const PlateSample& sample, const BuiltBody& plate, PlatePlaces places);
  Eigen::MatrixXf stresses(const Eigen::MatrixXd& port_forces) const;
  Eigen::Vector3d exact(const PlateForces& states, Eigen::Index state, Eigen::Index node, Eigen::Index face) const;
  Peak peak_of(const PlateForces& states, Eigen::Index state, const Eigen::MatrixXf& stress) const;
  StressCycle worst_cycle(const PlateForces& loaded, Eigen::Index state, const Eigen::MatrixXf& stress,
                          const PlateForces& at_rest, const Eigen::MatrixXf& rest, const Metal& metal) const;

  std::shared_ptr<const solver::Condensed> plate_;
  Eigen::Index nodes_;     // of the sample's first ones
  Eigen::MatrixXf rows_;   // three stresses a face one after another, each of all nodes (6 nodes x motions)
  std::vector<int> hole_;  // of each node: 1-based, 0 off the rims
};

}  // namespace gapstrain::models
