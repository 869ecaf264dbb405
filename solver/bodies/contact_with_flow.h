// Contact while sections yield: forces between pairs and the flow of sections, both laws at once.
#pragma once

#include "solver/bodies/contact.h"
#include "solver/bodies/plastic_flow.h"

#include <Eigen/Core>

#include <vector>

namespace gapstrain::solver {

// Sections beside a contact problem. With contact forces x and flow's deformation d, a section's shares are
// flow.shares + by_force x - flow.compliance d, and misfits are misfit + compliance x + by_force^T d.
struct FlowBesideContact {
  FlowProblem flow;
  Eigen::MatrixXd by_force;  // (6n x rows of the contact problem)
};

struct YieldingContactAnswer {
  ContactAnswer contact;  // residuals are those of the contact laws with the flow
  FlowAnswer flow;        // of the shares that the contact forces leave
  int rounds = 0;
};

// Newton's method on the contact forces: flow follows them exactly, and each round solves the contact problem with
// the consistent tangent of the sections that flow added to its compliance (Simo & Hughes 1998, Computational
// inelasticity, ch. 3; from memory). Without friction it is the least of a convex function, and a line search
// makes it end. `near`: forces of all rows to start from; `flow`: what to try first.
YieldingContactAnswer solve_yielding_contact(const ContactProblem& problem, const FlowBesideContact& beside,
                                             const std::vector<char>& start, const Eigen::VectorXd& near,
                                             const FlowAnswer& flow);

}  // namespace gapstrain::solver
