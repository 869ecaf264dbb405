// The whole solution as arrays, for pictures and for files. mm, N, MPa, rad; construct axes.
#pragma once

#include "mesh/shell_mesh.h"

#include <Eigen/Core>

#include <memory>
#include <string>
#include <vector>

namespace gapstrain::models {

enum class BodyKind { plate, bone };

struct ShellField {
  std::string name;  // "plate", "proximal fragment", "distal fragment"
  BodyKind kind = BodyKind::bone;
  std::shared_ptr<const mesh::ShellMesh> mesh;
  Eigen::MatrixX3d displacements;                                     // (n x 3)
  Eigen::MatrixX3d rotations;                                         // (n x 3)
  Eigen::VectorXd von_mises_top, von_mises_middle, von_mises_bottom;  // (n) at the nodes; top: director's side
  Eigen::MatrixX3d stress_top, stress_middle, stress_bottom;          // (n x 3) s11, s22, s12 in material axes
};

struct ScrewField {
  std::string label;
  int hole = 0;
  double core_radius = 0.0, head_radius = 0.0;
  std::vector<Eigen::Vector3d> axis;           // from the plate's top face to the tip
  std::vector<Eigen::Vector3d> displacements;  // of those points
  std::vector<double> stress;                  // largest fibre stress at those points
  bool is_worked_on = false;                   // in a step: goes in or is tightened in it
};

struct LoadFields {
  std::string load;
  std::vector<ShellField> shells;
  std::vector<ScrewField> screws;
};

// A wire or clamp as a line between its ends, at rest.
struct HoldField {
  std::string label;
  Eigen::Vector3d from, to;
};

// The construct at the end of one step, unloaded. Of a shell only the mesh and its displacements must be filled;
// rotations and stress may be empty.
struct StepFields {
  std::string text;                // such as "insert and tighten S4"
  std::vector<ScrewField> screws;  // that are in
  std::vector<HoldField> holds;    // that are in
  std::vector<ShellField> shells;
  double force = 0.0;  // across the fracture, square to the cut
};

struct Fields {
  std::vector<LoadFields> loads;
  std::vector<StepFields> steps;
};

}  // namespace gapstrain::models
