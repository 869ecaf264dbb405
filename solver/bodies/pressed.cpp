#include "solver/bodies/pressed.h"

#include "solver/bodies/contact_on_links.h"

#include <algorithm>
#include <utility>

namespace gapstrain::solver {

namespace {

// Which rows have a given force.
std::vector<char> driven_rows(const System& system, const Setting& setting) {
  std::vector<char> is_driven(static_cast<std::size_t>(system.rows()), 0);
  for (const auto& driven : setting.driven) is_driven[static_cast<std::size_t>(driven.row)] = 1;
  return is_driven;
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
                           const std::vector<char>& is_driven, const Eigen::VectorXd& forces,
                           const Eigen::VectorXd& deformations) {
  Eigen::VectorXd initial = setting.initial;
  const auto take_up = [&](int index, const auto& takes) {
    const Link& link = system.links()[static_cast<std::size_t>(index)];
    const Eigen::Index first = system.first_row(index);
    const Eigen::VectorXd stretch = system.stretch(index, forces);
    for (Eigen::Index k = 0; k < link.size(); ++k)
      if (takes(first + k)) initial(first + k) = deformations(first + k) - stretch(k);
  };
  for (const int link : setting.links)
    take_up(link, [&](Eigen::Index row) { return is_driven[static_cast<std::size_t>(row)] != 0; });
  for (const auto& pair : pairs) take_up(pair.tangent, [](Eigen::Index) { return true; });
  return initial;
}

}  // namespace

// Hands give way to contact where they are soft: they take up the place that contact found, until they pull no
// more.
PressedForces find_forces(const System& system, const std::vector<ContactPair>& pairs, const Setting& setting,
                          const System::LoadAlone& load, const RowFactor* factor) {
  constexpr int most_rounds = 30;
  constexpr double negligible = 1e-10;  // pull over the largest force
  Rows rows = system.rows_of(setting.links);
  Eigen::VectorXd known;
  if (!setting.driven.empty()) {
    const auto is_driven = driven_rows(system, setting);
    std::erase_if(rows, [&](Eigen::Index row) { return is_driven[static_cast<std::size_t>(row)] != 0; });
    known = Eigen::VectorXd::Zero(system.rows());
    for (const auto& driven : setting.driven) known(driven.row) = driven.force;
  }
  LinksInPlace links(system, std::move(rows), load, setting.initial, known, setting.hands, factor);
  ContactOnLinks contact(system, pairs, setting.friction, links);
  std::vector<char> closed = setting.closed;
  PressedForces found;
  for (int round = 0; round < most_rounds; ++round) {
    found = contact.find(closed);
    closed = found.closed;
    if (!links.is_free() || std::find(closed.begin(), closed.end(), 1) == closed.end()) return found;
    if (links.soft_pull(found.amplitudes).norm() <= negligible * found.forces.cwiseAbs().maxCoeff()) break;
    links.let_hands_give_way(found.amplitudes);
  }
  found.free_motions = still_free(system, pairs, links.rows(), found);
  return found;
}

PressedState press(const System& system, const std::vector<ContactPair>& pairs, const Setting& setting,
                   const PortLoads& loads) {
  PressedState state{find_forces(system, pairs, setting, system.alone(loads)), {}, {}};
  std::vector<int> active = setting.links;
  for (std::size_t pair = 0; pair < pairs.size(); ++pair) {
    if (state.closed[pair] != 0) active.push_back(pairs[pair].normal);
    if (state.rubs[pair] != 0) active.push_back(pairs[pair].tangent);
  }
  state.solution = system.compose(active, state.forces, state.amplitudes, loads, setting.initial);
  state.initial = carried_on(system, pairs, setting, driven_rows(system, setting), state.forces,
                             system.deformations(state.solution));
  for (std::size_t l = 0; l < active.size(); ++l)
    state.solution.initial[l] =
        state.initial.segment(system.first_row(active[l]), state.solution.initial[l].size());
  return state;
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
