#include "solver/bodies/yielding.h"

#include "solver/bodies/elimination.h"
#include "solver/bodies/plastic_flow.h"

#include <Eigen/LU>

#include <algorithm>
#include <cmath>
#include <utility>

namespace gapstrain::solver {

namespace {

constexpr double demand_tolerance = 1e-7;  // of demands

using Rows = std::vector<Eigen::Index>;

Rows rows_of_links(const System& system, const Setting& setting) {
  Rows rows = system.rows_of(setting.links);
  std::erase_if(rows, [&](Eigen::Index row) {
    return std::any_of(setting.driven.begin(), setting.driven.end(),
                       [&](const DrivenRow& driven) { return driven.row == row; });
  });
  return rows;
}

// Rows that answer a small change as they are: of the links but those of given force, of pairs that touch, and
// sideways of those that stick. What slides is taken to slide freely: only the way to the answer depends on that.
Rows rows_that_answer(const System& system, const std::vector<ContactPair>& pairs, const Setting& setting,
                      const PressedState& state) {
  Rows rows = rows_of_links(system, setting);
  for (std::size_t pair = 0; pair < pairs.size(); ++pair) {
    if (state.closed[pair] == 0) continue;
    rows.push_back(system.first_row(pairs[pair].normal));
    if (state.rubs[pair] == 0 || state.slides[pair] != 0) continue;
    const Eigen::Index first = system.first_row(pairs[pair].tangent);
    rows.insert(rows.end(), {first, first + 1});
  }
  return rows;
}

class YieldingConstruct {
 public:
  YieldingConstruct(const System& system, const std::vector<ContactPair>& pairs,
                    const std::vector<YieldSection>& sections, const Setting& setting, const PortLoads& loads,
                    const Yielded& before)
      : system_(system), pairs_(pairs), sections_(sections), setting_(setting), loads_(loads), before_(before) {
    deformation_ = Eigen::MatrixXd::Zero(6, before.flow.size());
    flow_ = Eigen::VectorXd::Zero(before.flow.size());
  }

  YieldedState find() {
    constexpr int most_rounds = 60;
    state_ = press(system_, pairs_, setting_, loads_);
    if (residual() <= demand_tolerance) return answer();
    elastic_ = state_;
    // Pairs that open, close and slide change the problem under way: a step that brings the answer no nearer is
    // followed by a shorter one, so that two sets do not take turns.
    double part = 1.0, left = 0.0;
    for (int round = 0; round < most_rounds; ++round) {
      const auto candidates = near_yield();
      const FlowAnswer found = flow_of(candidates);
      const double left_before = left;
      left = distance(candidates, found);
      if (round > 0 && left <= demand_tolerance * (1.0 + flow_.maxCoeff()) && residual() <= demand_tolerance)
        break;
      if (round > 0)
        part = left <= (1.0 - 0.1 * part) * left_before ? std::min(1.0, 1.25 * part) : std::max(0.5 * part, 0.1);
      go_towards(candidates, found, part);
      Setting tried = setting_;
      tried.initial += of_sections(deformation_);
      tried.closed = state_.closed;
      state_ = press(system_, pairs_, tried, loads_);
    }
    return answer();
  }

 private:
  double strength(std::size_t k) const {
    const auto i = static_cast<Eigen::Index>(k);
    return sections_[k].curve.at(before_.flow(i) + flow_(i)).share;
  }
  Resultants shares(std::size_t k) const {
    return sections_[k].resultants(state_.forces).cwiseQuotient(sections_[k].full);
  }

  double residual() const {
    double worst = 0.0;
    for (std::size_t k = 0; k < sections_.size(); ++k) {
      const double over = demand(shares(k)).value - strength(k);
      const double off = flow_(static_cast<Eigen::Index>(k)) > 0.0 ? std::abs(over) : over;
      if (!(off <= worst)) worst = off;  // also what is no number
    }
    return worst;
  }

  // That may flow by the next round; others join later.
  std::vector<std::size_t> near_yield() const {
    constexpr double near = 0.7;
    std::vector<std::size_t> all;
    for (std::size_t k = 0; k < sections_.size(); ++k)
      if (flow_(static_cast<Eigen::Index>(k)) > 0.0 || demand(shares(k)).value > near * strength(k))
        all.push_back(k);
    return all;
  }

  FlowAnswer flow_of(const std::vector<std::size_t>& candidates) const {
    const auto count = static_cast<Eigen::Index>(candidates.size());
    const Rows rows = rows_that_answer(system_, pairs_, setting_, state_);
    std::vector<Eigen::Index> place(static_cast<std::size_t>(system_.rows()), -1);
    for (std::size_t r = 0; r < rows.size(); ++r)
      place[static_cast<std::size_t>(rows[r])] = static_cast<Eigen::Index>(r);
    Eigen::MatrixXd reading = Eigen::MatrixXd::Zero(6 * count, static_cast<Eigen::Index>(rows.size()));
    FlowProblem problem;
    problem.shares.resize(6 * count);
    problem.flow_before.resize(count);
    Eigen::VectorXd so_far(6 * count);
    for (Eigen::Index i = 0; i < count; ++i) {
      const std::size_t k = candidates[static_cast<std::size_t>(i)];
      const YieldSection& section = sections_[k];
      for (std::size_t r = 0; r < section.rows.size(); ++r) {
        const Eigen::Index at = place[static_cast<std::size_t>(section.rows[r])];
        if (at < 0) continue;
        reading.block<6, 1>(6 * i, at) =
            section.of_forces.col(static_cast<Eigen::Index>(r)).cwiseQuotient(section.full);
      }
      problem.sections.push_back(&section);
      problem.shares.segment<6>(6 * i) = shares(k);
      problem.flow_before(i) = before_.flow(static_cast<Eigen::Index>(k));
      so_far.segment<6>(6 * i) = deformation_.col(static_cast<Eigen::Index>(k)).cwiseProduct(section.full);
    }
    // The same springs of hands as while links alone were in place.
    const Rows links = rows_of_links(system_, setting_);
    const Eigen::MatrixXd springs =
        Elimination(system_.flexibility()(links, links), system_.rigid()(links, Eigen::all), setting_.hands)
            .springs();
    const auto own = static_cast<Eigen::Index>(rows.size()), rigid = springs.rows();
    Eigen::MatrixXd whole(own + rigid, own + rigid);
    whole << system_.flexibility()(rows, rows), -system_.rigid()(rows, Eigen::all),
        system_.rigid()(rows, Eigen::all).transpose(), springs;
    Eigen::MatrixXd right = Eigen::MatrixXd::Zero(own + rigid, 6 * count);
    right.topRows(own) = reading.transpose();
    const Eigen::MatrixXd seen = reading * whole.partialPivLu().solve(right).topRows(own);
    problem.compliance = 0.5 * (seen + seen.transpose());
    problem.shares += problem.compliance * so_far;
    return find_flow(problem);
  }

  // Largest change of a section's flow up to that one, N mm.
  double distance(const std::vector<std::size_t>& candidates, const FlowAnswer& found) const {
    double largest = 0.0;
    for (std::size_t i = 0; i < candidates.size(); ++i)
      largest = std::max(largest, std::abs(found.flow(static_cast<Eigen::Index>(i)) -
                                           flow_(static_cast<Eigen::Index>(candidates[i]))));
    return largest;
  }

  // Takes a part of the way to that flow.
  void go_towards(const std::vector<std::size_t>& candidates, const FlowAnswer& found, double part) {
    for (std::size_t i = 0; i < candidates.size(); ++i) {
      const auto k = static_cast<Eigen::Index>(candidates[i]);
      const Resultants wanted = found.deformation.segment<6>(static_cast<Eigen::Index>(6 * i))
                                    .cwiseQuotient(sections_[candidates[i]].full);
      deformation_.col(k) += part * (wanted - deformation_.col(k));
      flow_(k) += part * (found.flow(static_cast<Eigen::Index>(i)) - flow_(k));
    }
  }

  Eigen::VectorXd of_sections(const Eigen::MatrixXd& deformation) const {
    Eigen::VectorXd initial = Eigen::VectorXd::Zero(system_.rows());
    for (std::size_t k = 0; k < sections_.size(); ++k) {
      const auto column = deformation.col(static_cast<Eigen::Index>(k));
      if (!column.isZero(0.0)) initial(sections_[k].rows) += sections_[k].of_forces.transpose() * column;
    }
    return initial;
  }

  YieldedState answer() {
    YieldedState result;
    result.residual = residual();
    result.yielded = before_;
    result.yielded.flow += flow_;
    result.yielded.deformed += deformation_;
    result.pressed = std::move(state_);
    result.elastic = std::move(elastic_);
    return result;
  }

  const System& system_;
  const std::vector<ContactPair>& pairs_;
  const std::vector<YieldSection>& sections_;
  const Setting& setting_;
  const PortLoads& loads_;
  const Yielded& before_;
  PressedState state_;
  std::optional<PressedState> elastic_;
  Eigen::MatrixXd deformation_;  // of this increment (6 x sections)
  Eigen::VectorXd flow_;
};

}  // namespace

Yielded Yielded::none(std::size_t sections) {
  const auto count = static_cast<Eigen::Index>(sections);
  return {Eigen::VectorXd::Zero(count), Eigen::MatrixXd::Zero(6, count)};
}

bool would_flow(const std::vector<YieldSection>& sections, const Eigen::VectorXd& forces) {
  return std::any_of(sections.begin(), sections.end(), [&](const YieldSection& section) {
    return demand(section.resultants(forces).cwiseQuotient(section.full)).value >
           section.curve.at(0.0).share + demand_tolerance;
  });
}

YieldedState press_yielding(const System& system, const std::vector<ContactPair>& pairs,
                            const std::vector<YieldSection>& sections, const Setting& setting,
                            const PortLoads& loads, const Yielded& before) {
  return YieldingConstruct(system, pairs, sections, setting, loads, before).find();
}

}  // namespace gapstrain::solver
