// A link joins ports elastically: a screw's segment, a head in its hole, tissue between two edges, a support.
#pragma once

#include <Eigen/Core>

#include <string>
#include <vector>

namespace gapstrain::solver {

// One end of a link on a port: the link's deformation gets transfer^T * (the port's motions).
struct LinkEnd {
  std::size_t body = 0;
  Eigen::Index column = 0;   // where the port's motions start among the body's
  Eigen::MatrixXd transfer;  // (port motions used x deformations), see System
};

// Law: sum over ends of transfer^T q = flexibility * s + initial, with s the link's forces (k). A zero flexibility
// is a rigid joint; an end on the ground is no end at all. `initial` is the deformation at which the link carries
// nothing: a slide, a shortening, or the gap between ports at the moment the link was put in.
struct Link {
  std::string name;
  std::vector<LinkEnd> ends;
  Eigen::MatrixXd flexibility;  // (k x k), symmetric, semi-definite
  Eigen::VectorXd initial;      // (k)

  Eigen::Index size() const { return flexibility.rows(); }
};

// A flexibility that two links have in common, such as that of a spring between the point where both end and what
// holds it: forces of each deform the other. With the links' own it is semi-definite.
struct SharedFlexibility {
  int one = 0, other = 0;       // by their positions among the links
  Eigen::MatrixXd flexibility;  // (forces of `one` x forces of `other`)
};

}  // namespace gapstrain::solver
