#include "solver/bodies/sections_on_links.h"

#include <algorithm>
#include <utility>

namespace gapstrain::solver {

SectionsOnLinks::SectionsOnLinks(const System& system, const LinksInPlace& links,
                                 const std::vector<YieldSection>& sections, const Eigen::VectorXd& flow_before)
    : system_(system), links_(links), sections_(sections), flow_before_(flow_before), is_in_(sections.size(), 0) {}

Eigen::VectorXd SectionsOnLinks::shares(std::size_t section, const Eigen::VectorXd& forces) const {
  return sections_[section].resultants(forces).cwiseQuotient(sections_[section].full);
}

// Shares of sections by the forces of rows: (6 sections x rows).
Eigen::MatrixXd SectionsOnLinks::reading(const Rows& rows, const std::vector<std::size_t>& sections) const {
  std::vector<Eigen::Index> place(static_cast<std::size_t>(system_.rows()), -1);
  for (std::size_t r = 0; r < rows.size(); ++r)
    place[static_cast<std::size_t>(rows[r])] = static_cast<Eigen::Index>(r);
  Eigen::MatrixXd all = Eigen::MatrixXd::Zero(static_cast<Eigen::Index>(6 * sections.size()),
                                              static_cast<Eigen::Index>(rows.size()));
  Eigen::Index first = 0;
  for (const std::size_t k : sections) {
    const YieldSection& section = sections_[k];
    for (std::size_t r = 0; r < section.rows.size(); ++r)
      if (const Eigen::Index at = place[static_cast<std::size_t>(section.rows[r])]; at >= 0)
        all.block<6, 1>(first, at) =
            section.of_forces.col(static_cast<Eigen::Index>(r)).cwiseQuotient(section.full);
    first += 6;
  }
  return all;
}

bool SectionsOnLinks::take_in(const Eigen::VectorXd& forces) {
  constexpr double near = 0.7, beyond = 1e-8;  // shares of strength
  std::vector<std::size_t> joining;
  bool flows = false;
  for (std::size_t k = 0; k < sections_.size(); ++k) {
    if (is_in_[k] != 0) continue;
    const double strength = sections_[k].curve.at(flow_before_(static_cast<Eigen::Index>(k))).share;
    const double asked = demand(shares(k, forces)).value;
    if (asked > near * strength) joining.push_back(k);
    flows = flows || asked > (1.0 + beyond) * strength;
  }
  if (!flows) return false;
  for (const std::size_t k : joining) is_in_[k] = 1;
  in_.insert(in_.end(), joining.begin(), joining.end());

  // A section's deformation pushes on the links as a further row does that is coupled to them by its reading.
  const auto count = static_cast<Eigen::Index>(6 * in_.size());
  const Rows& rows = links_.rows();
  columns_ = links_.columns_coupled_by(-reading(rows, in_).transpose());
  compliance_ = -Elimination::compliance(Eigen::MatrixXd::Zero(count, count), columns_, columns_);
  compliance_ = (0.5 * (compliance_ + compliance_.transpose())).eval();
  const Eigen::Index before = answer_.flow.size(), joined = static_cast<Eigen::Index>(in_.size()) - before;
  answer_.flow.conservativeResize(before + joined);
  answer_.flow.tail(joined).setZero();
  answer_.deformation.conservativeResize(count);
  answer_.deformation.tail(6 * joined).setZero();
  answer_.shares.conservativeResize(count);
  for (Eigen::Index k = before; k < before + joined; ++k)
    answer_.shares.segment<6>(6 * k) = shares(in_[static_cast<std::size_t>(k)], forces);
  return true;
}

FlowBesideContact SectionsOnLinks::beside(const Rows& rows, const Elimination::Columns& columns) const {
  FlowBesideContact beside;
  beside.by_force = -reading(rows, in_);
  if (!rows.empty()) beside.by_force = Elimination::compliance(beside.by_force, columns_, columns);
  beside.flow.compliance = compliance_;
  beside.flow.shares.resize(static_cast<Eigen::Index>(6 * in_.size()));
  beside.flow.flow_before.resize(static_cast<Eigen::Index>(in_.size()));
  const Eigen::VectorXd forces = links_.carried({}, Eigen::VectorXd(0)).forces;
  Eigen::Index k = 0;
  for (const std::size_t section : in_) {
    beside.flow.sections.push_back(&sections_[section]);
    beside.flow.shares.segment<6>(6 * k) = shares(section, forces);
    beside.flow.flow_before(k++) = flow_before_(static_cast<Eigen::Index>(section));
  }
  return beside;
}

Eigen::VectorXd SectionsOnLinks::flow() const {
  Eigen::VectorXd all = Eigen::VectorXd::Zero(static_cast<Eigen::Index>(sections_.size()));
  for (std::size_t k = 0; k < in_.size(); ++k)
    all(static_cast<Eigen::Index>(in_[k])) = answer_.flow(static_cast<Eigen::Index>(k));
  return all;
}

Eigen::MatrixXd SectionsOnLinks::deformed() const {
  Eigen::MatrixXd all = Eigen::MatrixXd::Zero(6, static_cast<Eigen::Index>(sections_.size()));
  for (std::size_t k = 0; k < in_.size(); ++k)
    all.col(static_cast<Eigen::Index>(in_[k])) =
        answer_.deformation.segment<6>(static_cast<Eigen::Index>(6 * k)).cwiseQuotient(sections_[in_[k]].full);
  return all;
}

Eigen::VectorXd SectionsOnLinks::bends() const {
  Eigen::VectorXd initial = Eigen::VectorXd::Zero(system_.rows());
  const Eigen::MatrixXd all = deformed();
  for (const std::size_t k : in_) {
    const auto column = all.col(static_cast<Eigen::Index>(k));
    if (!column.isZero(0.0)) initial(sections_[k].rows) += sections_[k].of_forces.transpose() * column;
  }
  return initial;
}

}  // namespace gapstrain::solver
