// Largest von Mises stress of a plate, read off port forces: for thousands of constructs on the same bodies.
#pragma once

#include "models/build/assembly.h"

#include <Eigen/Core>

#include <memory>
#include <optional>
#include <vector>

namespace gapstrain::models {

// Where the plate is looked at. Its surface carries no load, so stress is highest at an edge: at the rim of an
// empty hole over the fracture, if there is one. Where screws fill the holes on either side it may lie anywhere
// between them. The likely places are all rims and that span; the sample is a quarter of the rest. How often that
// is not enough stands in tests/models/studies/test_construct_solver.cpp.
enum class PlatePlaces { likely, likely_and_sample };

// The stress rows in single precision, to find where it is highest, and there in double precision once more.
class PeakStress {
 public:
  PeakStress(const Assembly& assembly, PlatePlaces places)
      : PeakStress(assembly.plate_mesh, assembly.plate_sample, assembly.bodies[plate_body], places) {}
  // For all constructs on these bodies, whatever their plate's modulus.
  PeakStress(const PreparedBodies& prepared, PlatePlaces places)
      : PeakStress(prepared.plate_mesh, prepared.plate_sample, prepared.bodies[plate_body], places) {}

  struct Peak {
    double von_mises = 0.0;   // MPa
    std::optional<int> hole;  // 1-based, of the rim it is on
  };
  // `port_forces`: on the plate (motions x loads); `amplitudes`: of the plate (6 x loads). One a load.
  std::vector<Peak> find(const Eigen::MatrixXd& port_forces, const Eigen::MatrixXd& amplitudes) const;

 private:
  PeakStress(const PlateMesh& mesh, const PlateSample& sample, const BuiltBody& plate, PlatePlaces places);

  std::shared_ptr<const solver::Condensed> plate_;
  Eigen::Index nodes_;     // of the sample's first ones
  Eigen::MatrixXf rows_;   // three stresses a face one after another, each of all nodes (6 nodes x motions)
  std::vector<int> hole_;  // of each node: 1-based, 0 off the rims
};

}  // namespace gapstrain::models
