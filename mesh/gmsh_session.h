// Gmsh's global state for the length of an object's life, and its faults as ours.
#pragma once

#include <stdexcept>
#include <string>

namespace gapstrain::mesh {

// Every fault of meshing, in one sentence.
struct MeshError : std::runtime_error {
  using std::runtime_error::runtime_error;
};

// Starts Gmsh and ends it. Gmsh is not thread-safe: one session at a time in a process, used from one thread.
class GmshSession {
 public:
  GmshSession();
  ~GmshSession();
  GmshSession(const GmshSession&) = delete;
  GmshSession& operator=(const GmshSession&) = delete;
};

}  // namespace gapstrain::mesh
