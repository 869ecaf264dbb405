// What the tests of meshes ask of a mesh.
#pragma once

#include "mesh/quality.h"
#include "mesh/shell_mesh.h"

#include <map>
#include <string>
#include <utility>

namespace gapstrain::mesh {

// The flat mesh in space, z = 0, director +z, thickness 1 mm.
ShellMesh as_shell(const FlatMesh& flat);

// The flat mesh on a round tube of that perimeter, so that cells across the seam are whole again.
ShellMesh as_tube(const FlatMesh& flat, double perimeter);

// How many cells share each edge, by its sorted nodes.
std::map<std::pair<int, int>, int> edge_uses(const FlatMesh& mesh);

// Number of edges that bound one cell only. Fails the running test if any edge bounds more than two.
int boundary_edges(const FlatMesh& mesh);

// Of cells in a plane, folded ones counting as negative, mm^2.
double area(const FlatMesh& mesh);

// Bit for bit, cells and groups too.
bool is_same(const FlatMesh& a, const FlatMesh& b);

// "stem7" (GCC 12 warns of its own operator+ when strings are added here).
std::string numbered(std::string stem, int number);

// At least 20 degrees and 0.2, no cell folded.
void require_good_shape(const ShellMesh& mesh);

}  // namespace gapstrain::mesh
