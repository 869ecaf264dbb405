#include "solver/bodies/contact_on_links.h"

#include <algorithm>

namespace gapstrain::solver {

namespace {

void append_columns(Eigen::MatrixXd& matrix, const Eigen::MatrixXd& more) {
  const Eigen::Index before = matrix.cols();
  matrix.conservativeResize(more.rows(), before + more.cols());
  matrix.rightCols(more.cols()) = more;
}

}  // namespace

ContactOnLinks::ContactOnLinks(const System& system, const std::vector<ContactPair>& pairs,
                               const Eigen::VectorXd& friction, const LinksInPlace& links)
    : system_(system), pairs_(pairs), friction_(friction), links_(links), is_in_(pairs.size(), 0) {
  for (const auto& pair : pairs) normals_.push_back(system.first_row(pair.normal));
}

// Rows that join see the links, and are seen by the rows that joined before.
void ContactOnLinks::join(const Rows& rows) {
  const auto more = links_.columns(rows);
  joined_.insert(joined_.end(), rows.begin(), rows.end());
  append_columns(columns_.reduced, more.reduced);
  append_columns(columns_.rigid, more.rigid);
  append_columns(columns_.held, more.held);
  const Eigen::MatrixXd seen = links_.compliance(joined_, columns_, rows, more);
  const Eigen::Index before = compliance_.rows(), count = seen.cols();
  compliance_.conservativeResize(before + count, before + count);
  compliance_.rightCols(count) = seen;
  compliance_.bottomLeftCorner(count, before) = seen.topRows(before).transpose();
  push_.conservativeResize(before + count);
  push_.tail(count).setZero();
}

void ContactOnLinks::take_in(const std::vector<int>& pairs) {
  if (pairs.empty()) return;
  Rows rows;
  for (const int pair : pairs) {
    normal_at_.push_back(static_cast<int>(joined_.size() + rows.size()));
    rows.push_back(normals_[static_cast<std::size_t>(pair)]);
    in_.push_back(pair);
    is_in_[static_cast<std::size_t>(pair)] = 1;
  }
  join(rows);
}

// Gives tractions to closed pairs with friction that have none yet; whether there were any. Few pairs close, and a
// traction costs two rows.
bool ContactOnLinks::let_rub(const ContactAnswer& answer) {
  Rows rows;
  for (std::size_t k = 0; k < in_.size(); ++k) {
    const int place = static_cast<int>(k);
    if (answer.closed[k] == 0 || !(friction_(in_[k]) > 0.0) ||
        std::find(rubbing_.begin(), rubbing_.end(), place) != rubbing_.end())
      continue;
    rubbing_.push_back(place);
    tangent_at_.push_back(static_cast<int>(joined_.size() + rows.size()));
    const Eigen::Index first = system_.first_row(pairs_[static_cast<std::size_t>(in_[k])].tangent);
    rows.insert(rows.end(), {first, first + 1});
  }
  if (rows.empty()) return false;
  join(rows);
  return true;
}

void ContactOnLinks::let_flow(SectionsOnLinks& sections, const PressedForces& near) {
  sections_ = &sections;
  sections.take_in(near.forces);
  std::vector<int> closed;
  for (std::size_t pair = 0; pair < pairs_.size(); ++pair)
    if (near.closed[pair] != 0) closed.push_back(static_cast<int>(pair));
  take_in(closed);
  ContactAnswer touching;
  touching.closed.assign(in_.size(), 1);
  let_rub(touching);
  for (std::size_t k = 0; k < in_.size(); ++k) push_(normal_at_[k]) = near.pressure(in_[k]);
  for (std::size_t k = 0; k < rubbing_.size(); ++k)
    push_.segment<2>(tangent_at_[k]) = near.traction.row(in_[static_cast<std::size_t>(rubbing_[k])]).transpose();
}

ContactAnswer ContactOnLinks::solve(const std::vector<char>& start) {
  std::vector<int> order = normal_at_;
  for (const int first : tangent_at_) {
    order.push_back(first);
    order.push_back(first + 1);
  }
  const Eigen::VectorXd misfit = links_.misfit(joined_);
  ContactProblem problem{compliance_(order, order), misfit(order), rubbing_, Eigen::VectorXd(rubbing_.size())};
  for (std::size_t k = 0; k < rubbing_.size(); ++k)
    problem.friction(static_cast<Eigen::Index>(k)) = friction_(in_[static_cast<std::size_t>(rubbing_[k])]);
  const Eigen::VectorXd near = push_.isZero(0.0) ? Eigen::VectorXd() : Eigen::VectorXd(push_(order));
  ContactAnswer answer;
  if (sections_ == nullptr || sections_->empty()) {
    answer = solve_contact(problem, start, near);
  } else {
    FlowBesideContact beside = sections_->beside(joined_, columns_);
    beside.by_force = beside.by_force(Eigen::all, order).eval();
    auto found = solve_yielding_contact(problem, beside, start, near, sections_->answer());
    sections_->flow_to(std::move(found.flow));
    answer = std::move(found.contact);
  }
  const Eigen::Index pairs = answer.pressure.size();
  for (std::size_t k = 0; k < order.size(); ++k) {
    const auto row = static_cast<Eigen::Index>(k);
    push_(order[k]) = row < pairs ? answer.pressure(row) : answer.traction(row - pairs);
  }
  return answer;
}

PressedForces ContactOnLinks::pressed(const LinksInPlace::Carried& carried, const Eigen::VectorXd& gaps,
                                      const ContactAnswer& answer) const {
  const auto count = static_cast<Eigen::Index>(pairs_.size());
  PressedForces found;
  found.forces = carried.forces;
  found.amplitudes = carried.amplitudes;
  found.pressure = Eigen::VectorXd::Zero(count);
  found.gap = gaps;
  found.traction = Eigen::MatrixX2d::Zero(count, 2);
  found.closed.assign(pairs_.size(), 0);
  found.rubs = found.slides = found.closed;
  for (std::size_t k = 0; k < in_.size(); ++k) {
    const auto pair = static_cast<std::size_t>(in_[k]);
    found.pressure(in_[k]) = answer.pressure(static_cast<Eigen::Index>(k));
    found.closed[pair] = answer.closed[k];
    if (answer.closed[k] != 0) found.gap(in_[k]) = 0.0;
  }
  for (std::size_t k = 0; k < rubbing_.size(); ++k) {
    const auto place = static_cast<std::size_t>(rubbing_[k]);
    const auto pair = static_cast<std::size_t>(in_[place]);
    if (answer.closed[place] == 0) continue;
    found.rubs[pair] = 1;
    found.slides[pair] = answer.slips[k];
    found.traction.row(in_[place]) = answer.traction.segment<2>(static_cast<Eigen::Index>(2 * k)).transpose();
  }
  found.complementarity = answer.complementarity;
  found.friction_residual = answer.friction_residual;
  found.pull = links_.pull(found.amplitudes);
  found.free_motions = links_.free_motions();
  return found;
}

PressedForces ContactOnLinks::find(const std::vector<char>& start) {
  const auto overlapping = [&](const Eigen::VectorXd& gaps) {
    std::vector<int> pairs;
    for (std::size_t pair = 0; pair < pairs_.size(); ++pair)
      if (is_in_[pair] == 0 && gaps(static_cast<Eigen::Index>(pair)) < 0.0)
        pairs.push_back(static_cast<int>(pair));
    return pairs;
  };
  Eigen::VectorXd gaps = links_.misfit(normals_);
  std::vector<int> meeting = overlapping(gaps);
  if (meeting.empty() && in_.empty() && sections_ == nullptr)
    return pressed(links_.carried({}, Eigen::VectorXd(0)), gaps, {});
  for (std::size_t pair = 0; pair < start.size(); ++pair)
    if (start[pair] != 0 && is_in_[pair] == 0 && gaps(static_cast<Eigen::Index>(pair)) >= 0.0)
      meeting.push_back(static_cast<int>(pair));

  take_in(meeting);
  std::vector<char> closed;
  for (const int pair : in_) closed.push_back(start.empty() ? 1 : start[static_cast<std::size_t>(pair)]);
  while (true) {
    ContactAnswer answer;
    do {
      answer = solve(closed);
      closed = answer.closed;
    } while (let_rub(answer));
    const Eigen::VectorXd bends = sections_ != nullptr ? sections_->bends() : Eigen::VectorXd();
    const auto carried = links_.carried(joined_, push_, bends);
    gaps = links_.misfit(normals_, joined_, carried, bends);
    const bool more_flow = sections_ != nullptr && sections_->take_in(carried.forces);
    meeting = overlapping(gaps);
    if (meeting.empty() && !more_flow) return pressed(carried, gaps, answer);
    take_in(meeting);
    closed.resize(in_.size(), 1);
  }
}

}  // namespace gapstrain::solver
