#include "solver/bodies/pressed.h"

#include "solver/bodies/contact_on_links.h"

#include <algorithm>
#include <utility>

namespace gapstrain::solver {

namespace {

bool has_given_force(const Setting& setting, Eigen::Index row) {
  return std::any_of(setting.driven.begin(), setting.driven.end(),
                     [&](const DrivenRow& driven) { return driven.row == row; });
}

// Of the links but those of given force.
Rows rows_without_given(const System& system, const Setting& setting) {
  Rows rows = system.rows_of(setting.links);
  std::erase_if(rows, [&](Eigen::Index row) { return has_given_force(setting, row); });
  return rows;
}

// Of all rows; empty without any.
Eigen::VectorXd given_forces(const System& system, const Setting& setting) {
  if (setting.driven.empty()) return {};
  Eigen::VectorXd known = Eigen::VectorXd::Zero(system.rows());
  for (const auto& driven : setting.driven) known(driven.row) = driven.force;
  return known;
}

// Motions that neither links nor what touches resists.
Eigen::MatrixXd still_free(const System& system, const std::vector<ContactPair>& pairs, Rows rows,
                           const PressedForces& found) {
  for (std::size_t pair = 0; pair < pairs.size(); ++pair) {
    if (found.closed[pair] != 0) rows.push_back(system.first_row(pairs[pair].normal));
    if (found.rubs[pair] == 0) continue;
    const Eigen::Index first = system.first_row(pairs[pair].tangent);
    rows.insert(rows.end(), {first, first + 1});
  }
  return Elimination(system.flexibility()(rows, rows), system.rigid()(rows, Eigen::all)).free_motions();
}

// From which deformation everything carries from now on: rows of given force, and pairs sideways, from where they
// would carry what they carry. For a pair that sticks that is where it was.
Eigen::VectorXd carried_on(const System& system, const std::vector<ContactPair>& pairs, const Setting& setting,
                           Eigen::VectorXd initial, const Eigen::VectorXd& forces,
                           const Eigen::VectorXd& deformations) {
  const auto take_up = [&](int index, const auto& takes) {
    const Link& link = system.links()[static_cast<std::size_t>(index)];
    const Eigen::Index first = system.first_row(index);
    const Eigen::VectorXd stretch = system.stretch(index, forces);
    for (Eigen::Index k = 0; k < link.size(); ++k)
      if (takes(first + k)) initial(first + k) = deformations(first + k) - stretch(k);
  };
  for (const int link : setting.links)
    take_up(link, [&](Eigen::Index row) { return has_given_force(setting, row); });
  for (const auto& pair : pairs) take_up(pair.tangent, [](Eigen::Index) { return true; });
  return initial;
}

// Links in place, and what takes part beside them.
class Pressing {
 public:
  Pressing(const System& system, const std::vector<ContactPair>& pairs, const Setting& setting,
           const System::LoadAlone& load, const RowFactor* factor)
      : system_(system),
        pairs_(pairs),
        known_(given_forces(system, setting)),
        links_(system, rows_without_given(system, setting), load, setting.initial, known_, setting.hands, factor),
        contact_(system, pairs, setting.friction, links_) {}

  const LinksInPlace& links() const { return links_; }
  ContactOnLinks& contact() { return contact_; }

  // Hands give way to contact where they are soft: they take up the place that contact found, until they pull no
  // more.
  PressedForces find(std::vector<char> closed) {
    constexpr int most_rounds = 30;
    constexpr double negligible = 1e-10;  // pull over the largest force
    // Friction that found no answer is not trusted wherever the hands then are; while sections yield each round of
    // looking for one is dear.
    constexpr double no_answer = 1e-5;
    PressedForces found;
    for (int round = 0; round < most_rounds; ++round) {
      found = contact_.find(closed);
      closed = found.closed;
      if (!links_.is_free() || std::find(closed.begin(), closed.end(), 1) == closed.end()) return found;
      if (contact_.yields() && found.friction_residual > no_answer) break;
      if (links_.soft_pull(found.amplitudes).norm() <= negligible * found.forces.cwiseAbs().maxCoeff()) break;
      links_.let_hands_give_way(found.amplitudes);
    }
    found.free_motions = still_free(system_, pairs_, links_.rows(), found);
    return found;
  }

 private:
  const System& system_;
  const std::vector<ContactPair>& pairs_;
  Eigen::VectorXd known_;
  LinksInPlace links_;
  ContactOnLinks contact_;
};

// The state of an answer; `initial`: e0 of all rows that it was found with.
PressedState state_of(const System& system, const std::vector<ContactPair>& pairs, const Setting& setting,
                      const PortLoads& loads, const Eigen::VectorXd& initial, PressedForces found) {
  PressedState state{std::move(found), {}, {}};
  std::vector<int> active = setting.links;
  for (std::size_t pair = 0; pair < pairs.size(); ++pair) {
    if (state.closed[pair] != 0) active.push_back(pairs[pair].normal);
    if (state.rubs[pair] != 0) active.push_back(pairs[pair].tangent);
  }
  state.solution = system.compose(active, state.forces, state.amplitudes, loads, initial);
  state.initial = carried_on(system, pairs, setting, initial, state.forces, system.deformations(state.solution));
  for (std::size_t l = 0; l < active.size(); ++l)
    state.solution.initial[l] =
        state.initial.segment(system.first_row(active[l]), state.solution.initial[l].size());
  return state;
}

}  // namespace

PressedForces find_forces(const System& system, const std::vector<ContactPair>& pairs, const Setting& setting,
                          const System::LoadAlone& load, const RowFactor* factor) {
  return Pressing(system, pairs, setting, load, factor).find(setting.closed);
}

PressedState press(const System& system, const std::vector<ContactPair>& pairs, const Setting& setting,
                   const PortLoads& loads) {
  return state_of(system, pairs, setting, loads, setting.initial,
                  find_forces(system, pairs, setting, system.alone(loads)));
}

FlowedState press_with_flow(const System& system, const std::vector<ContactPair>& pairs,
                            const std::vector<YieldSection>& sections, const Setting& setting,
                            const PortLoads& loads, const Eigen::VectorXd& flow_before,
                            const PressedForces& near) {
  Pressing pressing(system, pairs, setting, system.alone(loads), nullptr);
  SectionsOnLinks flowing(system, pressing.links(), sections, flow_before);
  pressing.contact().let_flow(flowing, near);
  PressedForces found = pressing.find(near.closed);
  return {state_of(system, pairs, setting, loads, setting.initial + flowing.bends(), std::move(found)),
          flowing.flow(), flowing.deformed()};
}

std::vector<int> frozen_links(const System& system, const std::vector<ContactPair>& pairs, const Setting& setting,
                              const PressedState& state) {
  std::vector<int> links;
  for (const int link : setting.links) {
    const Eigen::Index first = system.first_row(link),
                       size = system.links()[static_cast<std::size_t>(link)].size();
    const bool is_given = std::any_of(setting.driven.begin(), setting.driven.end(), [&](const DrivenRow& driven) {
      return driven.row >= first && driven.row < first + size;
    });
    if (!is_given) links.push_back(link);
  }
  for (std::size_t pair = 0; pair < pairs.size(); ++pair) {
    if (state.closed[pair] == 0) continue;
    links.push_back(pairs[pair].normal);
    if (setting.friction(static_cast<Eigen::Index>(pair)) > 0.0 && state.slides[pair] == 0)
      links.push_back(pairs[pair].tangent);
  }
  return links;
}

}  // namespace gapstrain::solver
