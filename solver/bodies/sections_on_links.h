// Sections that yield, as seen with links in place. Only those near yield take part; the others are looked at
// afterwards.
#pragma once

#include "solver/bodies/contact_with_flow.h"
#include "solver/bodies/links_in_place.h"
#include "solver/bodies/yield_section.h"

#include <Eigen/Core>

#include <cstddef>
#include <vector>

namespace gapstrain::solver {

class SectionsOnLinks {
 public:
  // `flow_before`: of each section. All of it is borrowed.
  SectionsOnLinks(const System& system, const LinksInPlace& links, const std::vector<YieldSection>& sections,
                  const Eigen::VectorXd& flow_before);

  // Where one that takes no part would flow under these forces of all rows, all that are near it join. Whether any
  // did.
  bool take_in(const Eigen::VectorXd& forces);
  bool empty() const { return in_.empty(); }

  // Beside contact on further rows, which see the links as `columns`.
  FlowBesideContact beside(const Rows& rows, const Elimination::Columns& columns) const;

  // The flow at hand.
  const FlowAnswer& answer() const { return answer_; }
  void flow_to(FlowAnswer answer) { answer_ = std::move(answer); }

  // What it adds to the initial deformation of all rows.
  Eigen::VectorXd bends() const;

  // Of all sections: flow, and deformation in their axes (6 x sections).
  Eigen::VectorXd flow() const;
  Eigen::MatrixXd deformed() const;

 private:
  Eigen::VectorXd shares(std::size_t section, const Eigen::VectorXd& forces) const;
  Eigen::MatrixXd reading(const Rows& rows, const std::vector<std::size_t>& sections) const;

  const System& system_;
  const LinksInPlace& links_;
  const std::vector<YieldSection>& sections_;
  const Eigen::VectorXd& flow_before_;
  std::vector<std::size_t> in_;
  std::vector<char> is_in_;  // of all
  Elimination::Columns columns_;
  Eigen::MatrixXd compliance_;  // of those in, by shares
  FlowAnswer answer_;
};

}  // namespace gapstrain::solver
