#include "mesh/gmsh_session.h"

#include "mesh/gmsh_call.h"

#include <gmsh.h>

namespace gapstrain::mesh {

namespace {

std::shared_mutex& mesher() {
  static std::shared_mutex mutex;
  return mutex;
}

thread_local bool has_session = false;

}  // namespace

GmshSession::GmshSession() {
  if (has_session)
    throw MeshError("A second Gmsh session was started while one is open: a process has one at a time.");
  alone_ = std::unique_lock(mesher());
  gmsh_call("start", [] {
    gmsh::initialize(0, nullptr, false);
    gmsh::option::setNumber("General.Terminal", 0);
    gmsh::option::setNumber("General.NumThreads", 1);  // more make the mesh differ from run to run
    // Gmsh would throw on an error from inside a parallel region, which ends the process: errors are read from
    // its log instead (plane_mesher.cpp).
    gmsh::option::setNumber("General.AbortOnError", 0);
    gmsh::clear();
  });
  has_session = true;
}

GmshSession::~GmshSession() {
  try {
    gmsh::finalize();
  } catch (...) {
    // Nothing can be done about a fault while Gmsh is shut down, and nothing depends on it any more.
  }
  has_session = false;
}

BesideMeshing::BesideMeshing() : with_others_(mesher()) {}

}  // namespace gapstrain::mesh
