// Largest von Mises stress of a plate, read off port forces: for thousands of constructs on the same bodies.
#pragma once

#include "models/build/assembly.h"

#include <Eigen/Core>

#include <memory>
#include <optional>
#include <vector>

namespace gapstrain::models {

// Where the plate is looked at. Its surface carries no load, so stress is highest at an edge, and it was at a
// hole's rim in all of 303 random layouts of two plates that were looked at all over; the sample is a quarter of
// the rest.
enum class PlatePlaces { rims, rims_and_sample };

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
  PeakStress(const PlateMesh& mesh, const std::vector<int>& sample, const BuiltBody& plate, PlatePlaces places);

  std::shared_ptr<const solver::Condensed> plate_;
  Eigen::Index nodes_;     // of the sample's first ones
  Eigen::MatrixXf rows_;   // three stresses a face one after another, each of all nodes (6 nodes x motions)
  std::vector<int> hole_;  // of each node: 1-based, 0 off the rims
};

}  // namespace gapstrain::models
