#include "mesh/gmsh_session.h"

#include "mesh/gmsh_call.h"

#include <gmsh.h>
#include <atomic>

namespace gapstrain::mesh {

namespace {

std::atomic<bool> session_open = false;

}  // namespace

GmshSession::GmshSession() {
  if (session_open.exchange(true))
    throw MeshError("A second Gmsh session was started while one is open: a process has one at a time.");
  try {
    gmsh_call("start", [] {
      gmsh::initialize(0, nullptr, false);
      gmsh::option::setNumber("General.Terminal", 0);
      gmsh::option::setNumber("General.NumThreads", 1);  // more make the mesh differ from run to run
      // Gmsh would throw on an error from inside a parallel region, which ends the process: errors are read from
      // its log instead (plane_mesher.cpp).
      gmsh::option::setNumber("General.AbortOnError", 0);
      gmsh::clear();
    });
  } catch (...) {
    session_open = false;
    throw;
  }
}

GmshSession::~GmshSession() {
  try {
    gmsh::finalize();
  } catch (...) {
    // Nothing can be done about a fault while Gmsh is shut down, and nothing depends on it any more.
  }
  session_open = false;
}

}  // namespace gapstrain::mesh
