// The dense problem of links in place, solved for any right-hand side: see system.h for the equations.
#pragma once

#include "solver/bodies/row_factor.h"

#include <Eigen/Cholesky>
#include <Eigen/Core>

#include <memory>
#include <optional>

namespace gapstrain::solver {

// Springs on those rigid motions that no link resists, as a hand holds a part until something else does. They pull
// towards the amplitudes `at` and leave every resisted motion alone. Hands give way to what is `soft`, and hold
// the rest of a part firmly.
struct Hands {
  double stiffness = 0.01;  // N/mm, of what is soft
  Eigen::VectorXd at;       // (6 bodies)
  std::optional<Eigen::MatrixXd> soft =
      std::nullopt;      // amplitudes (6 bodies x count), orthonormal; none: all is soft
  double firm = 1000.0;  // N/mm, of the rest: about what a forceps on a bone gives (ours, no source)
};

class Elimination {
 public:
  // `flexibility`: S of the links' rows (k x k); `rigid`: D = B^T G of them (k x 6 bodies).
  // @throw std::invalid_argument when rigid links are redundant on one and the same port.
  Elimination(const Eigen::MatrixXd& flexibility, const Eigen::MatrixXd& rigid, std::optional<Hands> hands = {});

  // The same of rows that are factored already, by somebody who outlives this.
  explicit Elimination(const RowFactor& factor, std::optional<Hands> hands = {});

  // Motions that the links leave free: (6 bodies x free motions), each of length 1; without columns when they hold
  // all bodies.
  const Eigen::MatrixXd& free_motions() const { return free_; }

  struct Answer {
    Eigen::MatrixXd forces;      // s (k x cases)
    Eigen::MatrixXd amplitudes;  // a (6 bodies x cases)
  };

  // S s - D a = right, D^T s + H (a - at) = rigid_load, H the hands'. @pre no free motion, or hands.
  Answer solve(const Eigen::MatrixXd& right, const Eigen::MatrixXd& rigid_load) const;

  // Where hands that give way to these amplitudes then are: there, but where they are firm.
  void give_way(const Eigen::VectorXd& amplitudes);

  // Of the hands on rigid amplitudes (6 bodies x 6 bodies), N/mm.
  Eigen::MatrixXd springs() const;

  // What the hands pull with at these amplitudes: resultants on the bodies (6 bodies), N; all of it, and what of
  // it is soft.
  Eigen::VectorXd pull(const Eigen::VectorXd& amplitudes) const;
  Eigen::VectorXd soft_pull(const Eigen::VectorXd& amplitudes) const;

  // For further rows c, coupled to these by S_sc (k x c) and with D_c (c x 6 bodies), `own` = S_cc: the compliance
  // that they see, own - S_cs s + D_c a of unit forces on them. Split in two so that blocks can be had one by one.
  struct Columns {
    Eigen::MatrixXd reduced;  // L^-1 S_sc
    Eigen::MatrixXd rigid;    // D_c^T - D^T S^-1 S_sc
    Eigen::MatrixXd held;     // (A + H)^-1 of the former
  };
  Columns columns(const Eigen::MatrixXd& coupling, const Eigen::MatrixXd& rigid) const;
  static Eigen::MatrixXd compliance(const Eigen::MatrixXd& own, const Columns& rows, const Columns& columns);

 private:
  void find_free_motions();
  void take_hold();
  Eigen::MatrixXd hold(const Eigen::MatrixXd& rigid_load) const;  // (A + H)^-1

  std::unique_ptr<const RowFactor> own_;
  const RowFactor* factor_;
  Eigen::LLT<Eigen::MatrixXd> held_;  // A, when it holds all bodies firmly
  Eigen::MatrixXd vectors_;           // of A, when it may not
  Eigen::VectorXd inverse_values_;
  Eigen::MatrixXd free_;
  Eigen::MatrixXd grip_;  // of the hands on the free motions
  Eigen::LLT<Eigen::MatrixXd> grip_factor_;
  std::optional<Hands> hands_;
};

}  // namespace gapstrain::solver
