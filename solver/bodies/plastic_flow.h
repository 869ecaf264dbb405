// Which sections flow, and by how much: closest-point return of all of them at once.
#pragma once

#include "solver/bodies/yield_section.h"

#include <Eigen/Core>

#include <vector>

namespace gapstrain::solver {

// Resultants over the full ones, and plastic deformation times them (N mm): six a section, one section after
// another.
struct FlowProblem {
  std::vector<const YieldSection*> sections;
  Eigen::VectorXd shares;       // (6n) without any further flow
  Eigen::MatrixXd compliance;   // (6n x 6n): how much deformation takes off them, symmetric, semi-definite
  Eigen::VectorXd flow_before;  // (n)
};

struct FlowAnswer {
  Eigen::VectorXd flow;         // (n), none negative
  Eigen::VectorXd deformation;  // (6n)
  Eigen::VectorXd shares;       // (6n)
  double residual = 0.0;        // largest of: demand over what a section bears, less than it where it flows
};

// The flow p = flow * gradient of the demand at the end, with shares - compliance p on or within what each section
// then bears (implicit: J. C. Simo and T. J. R. Hughes 1998, Computational inelasticity, ch. 3; from memory). The
// answer is the least of a convex function of p, so going from section to section reaches it; Newton's method on
// those that flow takes over where it can.
// `near`: an answer that is tried first; may be empty.
FlowAnswer find_flow(const FlowProblem& problem, const FlowAnswer& near = {});

// How the deformation of an answer changes with the problem's shares while what flows goes on flowing: symmetric,
// semi-definite (6n x 6n), the consistent tangent.
Eigen::MatrixXd flow_tangent(const FlowProblem& problem, const FlowAnswer& answer);

}  // namespace gapstrain::solver
