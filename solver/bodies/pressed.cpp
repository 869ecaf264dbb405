#include "solver/bodies/pressed.h"

#include "solver/bodies/contact.h"

#include <algorithm>
#include <cmath>
#include <utility>

namespace gapstrain::solver {

namespace {

using Rows = std::vector<Eigen::Index>;

// Forces on all rows, rigid amplitudes, and what is known of the pairs.
struct Found {
  Eigen::VectorXd forces, amplitudes;
  ContactAnswer contact;
  std::vector<int> rubbing;  // pairs whose tractions `contact` holds
  Eigen::VectorXd pull;
  Eigen::MatrixXd free_motions;
};

Rows tangent_rows(const System& system, const std::vector<ContactPair>& pairs, const std::vector<int>& rubbing) {
  Rows rows;
  for (const int pair : rubbing)
    for (const Eigen::Index k : {0, 1})
      rows.push_back(system.first_row(pairs[static_cast<std::size_t>(pair)].tangent) + k);
  return rows;
}

// Rows of links in place, with given forces on some others: what the remaining rows of the system see of them.
class LinksInPlace {
 public:
  LinksInPlace(const System& system, Rows rows, const System::LoadAlone& load, const Eigen::VectorXd& initial,
               const Eigen::VectorXd& known, const Hands& hands)
      : system_(system),
        rows_(std::move(rows)),
        known_(known),
        elimination_(system.flexibility()(rows_, rows_), system.rigid()(rows_, Eigen::all), hands) {
    right_ = load.deformations - initial - system.flexibility() * known;
    rigid_load_ = load.resultants - system.rigid().transpose() * known;
    alone_ = elimination_.solve(right_(rows_), rigid_load_);
  }

  void move_hands(const Eigen::VectorXd& at) {
    elimination_.move_hands(at);
    alone_ = elimination_.solve(right_(rows_), rigid_load_);
  }

  bool is_free() const { return elimination_.free_motions().cols() > 0; }
  const Eigen::MatrixXd& free_motions() const { return elimination_.free_motions(); }
  Eigen::VectorXd pull(const Eigen::VectorXd& amplitudes) const { return elimination_.pull(amplitudes); }

  // Misfits of further rows while nothing pushes on them.
  Eigen::VectorXd misfit(const Rows& rows) const {
    return right_(rows) - system_.flexibility()(rows, rows_) * alone_.forces +
           system_.rigid()(rows, Eigen::all) * alone_.amplitudes;
  }

  Elimination::Columns columns(const Rows& rows) const {
    return elimination_.columns(system_.flexibility()(rows_, rows), system_.rigid()(rows, Eigen::all));
  }

  Eigen::MatrixXd compliance(const Rows& rows, const Elimination::Columns& of_rows, const Rows& columns,
                             const Elimination::Columns& of_columns) const {
    return Elimination::compliance(system_.flexibility()(rows, columns), of_rows, of_columns);
  }

  // With a push on further rows (minus their link force).
  void answer(const Rows& rows, const Eigen::VectorXd& push, Found& found) const {
    const Eigen::VectorXd right = right_(rows_) + system_.flexibility()(rows_, rows) * push;
    const auto inner =
        elimination_.solve(right, rigid_load_ + system_.rigid()(rows, Eigen::all).transpose() * push);
    found.forces = known_;
    found.forces(rows_) = inner.forces;
    found.forces(rows) = -push;
    found.amplitudes = inner.amplitudes;
  }

 private:
  const System& system_;
  Rows rows_;
  const Eigen::VectorXd& known_;
  Elimination elimination_;
  Eigen::VectorXd right_, rigid_load_;
  Elimination::Answer alone_;
};

// Contact on the links in place. Pairs take tractions as they turn out to close: few of all pairs do, and a
// traction costs two rows. What the pairs see of the links is worked out once; hands may move.
class ContactOnLinks {
 public:
  ContactOnLinks(const System& system, const std::vector<ContactPair>& pairs, const Eigen::VectorXd& friction,
                 LinksInPlace& links)
      : system_(system), pairs_(pairs), friction_(friction), links_(links) {
    for (const auto& pair : pairs) normals_.push_back(system.first_row(pair.normal));
  }

  Found find(const std::vector<char>& start) {
    Found found;
    const Eigen::VectorXd normal_misfit = links_.misfit(normals_);
    if (pairs_.empty() || normal_misfit.minCoeff() >= 0.0) {  // nothing touches
      found.contact.closed.assign(pairs_.size(), 0);
      found.contact.pressure = Eigen::VectorXd::Zero(normal_misfit.size());
      finish({}, Eigen::VectorXd(0), found);
      return found;
    }
    if (normal_compliance_.size() == 0) {
      normal_columns_ = links_.columns(normals_);
      normal_compliance_ = links_.compliance(normals_, normal_columns_, normals_, normal_columns_);
      problem_.compliance = normal_compliance_;
    }
    std::vector<char> closed = start;
    do {
      const Rows tangents = tangent_rows(system_, pairs_, problem_.rubbing);
      problem_.misfit.resize(normal_misfit.size() + static_cast<Eigen::Index>(tangents.size()));
      problem_.misfit << normal_misfit, links_.misfit(tangents);
      if (push_.size() > 0) {  // pairs that rub only from now on have no traction yet
        const Eigen::Index known = push_.size();
        push_.conservativeResize(problem_.misfit.size());
        push_.tail(push_.size() - known).setZero();
      }
      found.contact = solve_contact(problem_, closed, push_);
      closed = found.contact.closed;
      push_.resize(problem_.misfit.size());
      push_ << found.contact.pressure, found.contact.traction;
    } while (add_rubbing(found.contact));

    Rows rows = normals_;
    const Rows tangents = tangent_rows(system_, pairs_, problem_.rubbing);
    rows.insert(rows.end(), tangents.begin(), tangents.end());
    finish(rows, push_, found);
    return found;
  }

 private:
  void finish(const Rows& rows, const Eigen::VectorXd& push, Found& found) const {
    links_.answer(rows, push, found);
    found.pull = links_.pull(found.amplitudes);
    found.free_motions = links_.free_motions();
    found.rubbing = problem_.rubbing;
  }

  // Gives tractions to closed pairs with friction that have none yet; whether there were any.
  bool add_rubbing(const ContactAnswer& answer) {
    auto& rubbing = problem_.rubbing;
    const std::size_t before = rubbing.size();
    for (std::size_t pair = 0; pair < answer.closed.size(); ++pair)
      if (answer.closed[pair] != 0 && friction_(static_cast<Eigen::Index>(pair)) > 0.0 &&
          std::find(rubbing.begin(), rubbing.end(), static_cast<int>(pair)) == rubbing.end())
        rubbing.push_back(static_cast<int>(pair));
    if (rubbing.size() == before) return false;

    const Rows tangents = tangent_rows(system_, pairs_, rubbing);
    const auto columns = links_.columns(tangents);
    const auto c = normal_compliance_.rows(), t = static_cast<Eigen::Index>(tangents.size());
    problem_.compliance.resize(c + t, c + t);
    problem_.compliance.topLeftCorner(c, c) = normal_compliance_;
    problem_.compliance.topRightCorner(c, t) = links_.compliance(normals_, normal_columns_, tangents, columns);
    problem_.compliance.bottomLeftCorner(t, c) = problem_.compliance.topRightCorner(c, t).transpose();
    problem_.compliance.bottomRightCorner(t, t) = links_.compliance(tangents, columns, tangents, columns);
    problem_.friction = friction_(rubbing);
    return true;
  }

  const System& system_;
  const std::vector<ContactPair>& pairs_;
  const Eigen::VectorXd& friction_;
  LinksInPlace& links_;
  Rows normals_;
  Elimination::Columns normal_columns_;
  Eigen::MatrixXd normal_compliance_;
  ContactProblem problem_;
  Eigen::VectorXd push_;  // the last answer, once there is one
};

// Motions that neither links nor what touches resists.
Eigen::MatrixXd still_free(const System& system, const std::vector<ContactPair>& pairs, Rows rows,
                           const Found& found) {
  for (std::size_t pair = 0; pair < pairs.size(); ++pair)
    if (found.contact.closed[pair] != 0) rows.push_back(system.first_row(pairs[pair].normal));
  for (const int pair : found.rubbing)
    if (found.contact.closed[static_cast<std::size_t>(pair)] != 0)
      for (const Eigen::Index row : tangent_rows(system, pairs, {pair})) rows.push_back(row);
  return Elimination(system.flexibility()(rows, rows), system.rigid()(rows, Eigen::all)).free_motions();
}

// Hands give way to contact: they take up the place that contact found, until they pull no more.
Found find(const System& system, const std::vector<ContactPair>& pairs, const Setting& setting,
           const System::LoadAlone& load, const Rows& rows, const Eigen::VectorXd& known) {
  constexpr int rounds = 30;
  constexpr double negligible = 1e-10;  // pull over the largest force
  LinksInPlace links(system, rows, load, setting.initial, known, setting.hands);
  ContactOnLinks contact(system, pairs, setting.friction, links);
  std::vector<char> closed = setting.closed;
  Found found;
  for (int round = 0; round < rounds; ++round) {
    found = contact.find(closed);
    closed = found.contact.closed;
    if (!links.is_free() || std::find(closed.begin(), closed.end(), 1) == closed.end()) return found;
    if (found.pull.norm() <= negligible * found.forces.cwiseAbs().maxCoeff()) break;
    links.move_hands(found.amplitudes);
  }
  found.free_motions = still_free(system, pairs, rows, found);
  return found;
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
    const Eigen::VectorXd stretch = link.flexibility * forces.segment(first, link.size());
    for (Eigen::Index k = 0; k < link.size(); ++k)
      if (takes(first + k)) initial(first + k) = deformations(first + k) - stretch(k);
  };
  for (const int link : setting.links)
    take_up(link, [&](Eigen::Index row) { return is_driven[static_cast<std::size_t>(row)] != 0; });
  for (const auto& pair : pairs) take_up(pair.tangent, [](Eigen::Index) { return true; });
  return initial;
}

}  // namespace

PressedState press(const System& system, const std::vector<ContactPair>& pairs, const Setting& setting,
                   const PortLoads& loads) {
  const auto load = system.alone(loads);
  Eigen::VectorXd known = Eigen::VectorXd::Zero(system.rows());
  std::vector<char> is_driven(static_cast<std::size_t>(system.rows()), 0);
  for (const auto& driven : setting.driven) {
    known(driven.row) = driven.force;
    is_driven[static_cast<std::size_t>(driven.row)] = 1;
  }
  Rows rows;
  for (const Eigen::Index row : system.rows_of(setting.links))
    if (is_driven[static_cast<std::size_t>(row)] == 0) rows.push_back(row);

  const Found found = find(system, pairs, setting, load, rows, known);

  PressedState state;
  std::vector<int> active = setting.links;
  const auto count = static_cast<Eigen::Index>(pairs.size());
  state.closed = found.contact.closed;
  state.slides.assign(pairs.size(), 0);
  state.pressure = found.contact.pressure;
  state.gap = Eigen::VectorXd::Zero(count);
  state.traction = Eigen::MatrixX2d::Zero(count, 2);
  for (std::size_t pair = 0; pair < pairs.size(); ++pair)
    if (state.closed[pair] != 0) active.push_back(pairs[pair].normal);
  for (std::size_t k = 0; k < found.rubbing.size(); ++k) {
    const auto pair = static_cast<std::size_t>(found.rubbing[k]);
    if (state.closed[pair] == 0) continue;
    active.push_back(pairs[pair].tangent);
    state.slides[pair] = found.contact.slips[k];
  }
  state.solution = system.compose(active, found.forces, found.amplitudes, loads, setting.initial);
  const Eigen::VectorXd deformations = system.deformations(state.solution);
  for (std::size_t pair = 0; pair < pairs.size(); ++pair) {
    const auto p = static_cast<Eigen::Index>(pair);
    const Eigen::Index normal = system.first_row(pairs[pair].normal);
    if (state.closed[pair] == 0)
      state.gap(p) = deformations(normal) - setting.initial(normal);
    else
      state.traction.row(p) = -found.forces.segment<2>(system.first_row(pairs[pair].tangent)).transpose();
  }
  state.initial = carried_on(system, pairs, setting, is_driven, found.forces, deformations);
  for (std::size_t l = 0; l < active.size(); ++l)
    state.solution.initial[l] =
        state.initial.segment(system.first_row(active[l]), state.solution.initial[l].size());
  state.complementarity = found.contact.complementarity;
  state.friction_residual = found.contact.friction_residual;
  state.pull = found.pull;
  state.free_motions = found.free_motions;
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
