// Gmsh's global state for the length of an object's life, and its faults as ours.
#pragma once

#include "mesh/mesh_error.h"

#include <mutex>
#include <shared_mutex>

namespace gapstrain::mesh {

// Starts Gmsh and ends it. Gmsh is not thread-safe: one session at a time in a process, used from one thread; a
// second thread's waits. @throw MeshError when this thread has one open already.
class GmshSession {
 public:
  GmshSession();
  ~GmshSession();
  GmshSession(const GmshSession&) = delete;
  GmshSession& operator=(const GmshSession&) = delete;

 private:
  std::unique_lock<std::shared_mutex> alone_;
};

// Other work of the process, by any number of threads: while it is held nothing is meshed, and while something is
// meshed it waits. Gmsh's meshes depend on where in memory things lie, and so on what allocates beside it.
class BesideMeshing {
 public:
  BesideMeshing();

 private:
  std::shared_lock<std::shared_mutex> with_others_;
};

}  // namespace gapstrain::mesh
