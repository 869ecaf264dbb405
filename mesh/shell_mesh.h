// A shell mesh as a plain constant value: nodes on the mid-surface, one director and thickness per node.
#pragma once

#include <Eigen/Core>

#include <array>
#include <map>
#include <string>
#include <vector>

namespace gapstrain::mesh {

using Quad = std::array<int, 4>;
using Triangle = std::array<int, 3>;

// Node lists by name; rims and edges in order along their curve.
using Groups = std::map<std::string, std::vector<int>>;

struct ShellMesh {
  Eigen::MatrixX3d nodes;      // (n x 3) mid-surface, mm
  Eigen::MatrixX3d directors;  // (n x 3) unit normals, shared by all cells on a node
  Eigen::VectorXd thickness;   // (n) along the director, mm
  std::vector<Quad> quads;     // counter-clockwise seen from the director's tip
  std::vector<Triangle> triangles;
  Groups groups;
};

// The same in a plane, before it is bent or rolled up.
struct FlatMesh {
  Eigen::MatrixX2d nodes;  // (n x 2), mm
  std::vector<Quad> quads;
  std::vector<Triangle> triangles;
  Groups groups;
};

}  // namespace gapstrain::mesh
