#include "solver/bodies/links_in_place.h"

#include <algorithm>
#include <utility>

namespace gapstrain::solver {

LinksInPlace::LinksInPlace(const System& system, Rows rows, const System::LoadAlone& load,
                           const Eigen::VectorXd& initial, const Eigen::VectorXd& known, const Hands& hands,
                           const RowFactor* factor)
    : system_(system),
      rows_(std::move(rows)),
      known_(known),
      elimination_(factor != nullptr ? Elimination(*factor, hands)
                                     : Elimination(system.flexibility()(rows_, rows_),
                                                   system.rigid()(rows_, Eigen::all), hands)) {
  right_ = load.deformations - initial;
  rigid_load_ = load.resultants;
  if (known.size() > 0) {
    right_ -= system.flexibility() * known;
    rigid_load_ -= system.rigid().transpose() * known;
  }
  alone_ = elimination_.solve(right_(rows_), rigid_load_);
}

void LinksInPlace::let_hands_give_way(const Eigen::VectorXd& amplitudes) {
  elimination_.give_way(amplitudes);
  alone_ = elimination_.solve(right_(rows_), rigid_load_);
}

namespace {

// Whether rows follow one upon another.
bool is_run(const Rows& rows) {
  return !rows.empty() && rows.back() - rows.front() + 1 == static_cast<Eigen::Index>(rows.size()) &&
         std::is_sorted(rows.begin(), rows.end());
}

}  // namespace

Eigen::VectorXd LinksInPlace::misfit_of(const Rows& rows, const Rows& carrying, const Eigen::VectorXd& forces,
                                        const Eigen::VectorXd& amplitudes) const {
  Eigen::VectorXd misfit = right_(rows) + system_.rigid()(rows, Eigen::all) * amplitudes;
  const Eigen::MatrixXd& flexibility = system_.flexibility();
  const bool in_one_run = is_run(rows);
  for (std::size_t k = 0; k < carrying.size(); ++k) {
    const double force = forces(static_cast<Eigen::Index>(k));
    if (in_one_run)
      misfit -= force * flexibility.col(carrying[k]).segment(rows.front(), misfit.size());
    else
      misfit -= force * flexibility.col(carrying[k])(rows);
  }
  return misfit;
}

Eigen::VectorXd LinksInPlace::misfit(const Rows& rows) const {
  return misfit_of(rows, rows_, alone_.forces, alone_.amplitudes);
}

Elimination::Columns LinksInPlace::columns(const Rows& rows) const {
  return elimination_.columns(system_.flexibility()(rows_, rows), system_.rigid()(rows, Eigen::all));
}

Elimination::Columns LinksInPlace::columns_coupled_by(const Eigen::MatrixXd& coupling) const {
  return elimination_.columns(coupling, Eigen::MatrixXd::Zero(coupling.cols(), system_.rigid().cols()));
}

Eigen::MatrixXd LinksInPlace::compliance(const Rows& rows, const Elimination::Columns& of_rows,
                                         const Rows& columns, const Elimination::Columns& of_columns) const {
  return Elimination::compliance(system_.flexibility()(rows, columns), of_rows, of_columns);
}

LinksInPlace::Carried LinksInPlace::carried(const Rows& rows, const Eigen::VectorXd& push,
                                            const Eigen::VectorXd& more) const {
  Elimination::Answer inner = alone_;
  if (!rows.empty() || more.size() > 0) {
    Eigen::VectorXd right = right_(rows_) + system_.flexibility()(rows_, rows) * push;
    if (more.size() > 0) right -= more(rows_);
    inner = elimination_.solve(right, rigid_load_ + system_.rigid()(rows, Eigen::all).transpose() * push);
  }
  Carried carried;
  carried.forces = known_.size() > 0 ? known_ : Eigen::VectorXd::Zero(system_.rows());
  carried.forces(rows_) = inner.forces.col(0);
  carried.forces(rows) = -push;
  carried.amplitudes = inner.amplitudes;
  return carried;
}

Eigen::VectorXd LinksInPlace::misfit(const Rows& rows, const Rows& pushed, const Carried& carried,
                                     const Eigen::VectorXd& more) const {
  Rows carrying = rows_;
  carrying.insert(carrying.end(), pushed.begin(), pushed.end());
  Eigen::VectorXd misfit = misfit_of(rows, carrying, carried.forces(carrying), carried.amplitudes);
  if (more.size() > 0) misfit -= more(rows);
  return misfit;
}

}  // namespace gapstrain::solver
