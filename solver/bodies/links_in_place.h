// Rows of the links in place, with given forces on some others: what they carry, and what the remaining rows of
// the system see of them.
#pragma once

#include "solver/bodies/elimination.h"
#include "solver/bodies/system.h"

#include <Eigen/Core>

#include <vector>

namespace gapstrain::solver {

using Rows = std::vector<Eigen::Index>;

class LinksInPlace {
 public:
  // `known`: given forces (all rows; without any: empty). `factor`: of just these rows, or null; borrowed.
  LinksInPlace(const System& system, Rows rows, const System::LoadAlone& load, const Eigen::VectorXd& initial,
               const Eigen::VectorXd& known, const Hands& hands, const RowFactor* factor = nullptr);

  const Rows& rows() const { return rows_; }

  void let_hands_give_way(const Eigen::VectorXd& amplitudes);

  bool is_free() const { return elimination_.free_motions().cols() > 0; }
  const Eigen::MatrixXd& free_motions() const { return elimination_.free_motions(); }
  Eigen::VectorXd pull(const Eigen::VectorXd& amplitudes) const { return elimination_.pull(amplitudes); }
  Eigen::VectorXd soft_pull(const Eigen::VectorXd& amplitudes) const { return elimination_.soft_pull(amplitudes); }

  // Misfits of further rows while nothing pushes on them.
  Eigen::VectorXd misfit(const Rows& rows) const;

  // How the push that `columns` belong to changes the misfits of further rows.
  Elimination::Columns columns(const Rows& rows) const;
  Eigen::MatrixXd compliance(const Rows& rows, const Elimination::Columns& of_rows, const Rows& columns,
                             const Elimination::Columns& of_columns) const;

  // The same of what pushes on these rows by the columns of `coupling`.
  Elimination::Columns columns_coupled_by(const Eigen::MatrixXd& coupling) const;

  // Forces in all rows, and rigid amplitudes, with a push on further rows (minus their link force), and with more
  // initial deformation of all rows (none: empty).
  struct Carried {
    Eigen::VectorXd forces, amplitudes;
  };
  Carried carried(const Rows& rows, const Eigen::VectorXd& push, const Eigen::VectorXd& more = {}) const;

  // Misfits of further rows then.
  Eigen::VectorXd misfit(const Rows& rows, const Rows& pushed, const Carried& carried,
                         const Eigen::VectorXd& more = {}) const;

 private:
  Eigen::VectorXd misfit_of(const Rows& rows, const Rows& carrying, const Eigen::VectorXd& forces,
                            const Eigen::VectorXd& amplitudes) const;

  const System& system_;
  Rows rows_;
  const Eigen::VectorXd& known_;
  Elimination elimination_;
  Eigen::VectorXd right_, rigid_load_;
  Elimination::Answer alone_;
};

}  // namespace gapstrain::solver
