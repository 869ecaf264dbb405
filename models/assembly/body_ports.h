// Where a construct's bodies can be held, loaded and read.
#pragma once

#include "models/assembly/meshes.h"
#include "models/geometry/plate_shape.h"
#include "models/parts/construct.h"
#include "solver/bodies/port.h"

#include <map>
#include <string>
#include <vector>

namespace gapstrain::models {

// Where a port's motions are among those of its body's ports side by side.
struct PortColumns {
  std::string name;
  Eigen::Vector3d centre;  // mm
  Eigen::Index column = 0, motions = 0;
};

// Ports of one body under names.
class PortList {
 public:
  void add(const PortColumns& columns);
  bool has(const std::string& name) const { return index_.contains(name); }
  const PortColumns& named(const std::string& name) const { return columns_[index_.at(name)]; }
  Eigen::Index column(const std::string& name) const { return named(name).column; }
  const std::vector<PortColumns>& columns() const { return columns_; }  // by column

 private:
  std::vector<PortColumns> columns_;
  std::map<std::string, std::size_t> index_;
};

// The rim of hole number `hole` (from 1): six motions and six strains (solver/bodies/port.h).
solver::Port hole_port(const solver::Shell& shell, const Plate& plate, const PlateShape& shape, int hole);

// The patch of cortex that a shaft passes: six motions.
solver::Port spot_port(const solver::Shell& bone, const std::string& spot, const Eigen::Vector3d& centre,
                       double radius);

// A whole section of the bone, as a pot or a saddle holds it: six motions.
solver::Port ring_port(const solver::Shell& bone, const std::string& group, const Eigen::Vector3d& centre);

// Motion of a fracture edge at mid-cortex: u + theta x (mid-cortex - node). (3 nodes x 6n)
solver::SparseMatrix edge_motion_rows(const solver::Shell& bone, const FractureEdge& edge);

// Nodes of a plate where its stress is looked at: those of all rims and those between the holes on either side of
// the fracture, where the peak is likely, then every fourth other one. `fracture`: its place along the plate, mm.
struct PlateSample {
  std::vector<int> nodes;
  std::size_t likely = 0;  // how many of them come first
};
PlateSample sample_plate(const PlateMesh& mesh, const Plate& plate, double fracture);

}  // namespace gapstrain::models
