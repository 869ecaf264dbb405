// How much of an outcome's variance each factor accounts for: I. M. Sobol's indices, from a SaltelliDesign.
#pragma once

#include <Eigen/Core>

#include <cstdint>
#include <vector>

namespace gapstrain::models {

// An estimate and the 2.5th and 97.5th percentile of it over bootstrap resamples of the base points (G. E. B.
// Archer, A. Saltelli and I. M. Sobol, J. Stat. Comput. Simul. 58 (1997) 99-120). Resampling knows nothing of the
// even spread of a Sobol' sequence, so the interval is wide: it holds the true index more often than 95 times in
// 100. Estimates near 0 may be below it.
struct IndexEstimate {
  double value = 0.0, low = 0.0, high = 0.0;
};

struct SobolIndex {
  IndexEstimate first;  // the share of variance that goes if this factor alone is known
  IndexEstimate total;  // the share that is left if all other factors are known
};

struct SobolIndices {
  std::vector<SobolIndex> factors;  // none of fewer than two base points or if A and B's outcomes are all the same
  double mean = 0.0, variance = 0.0;  // of the outcome, over the rows A and B
  Eigen::Index base_points = 0;       // counted
  Eigen::Index missing = 0;           // base points left out because one of their rows has no outcome
};

// `outcomes`: in the order of a SaltelliDesign of so many factors; NaN where a run has none. The estimator of the
// first order is (b) of table 2 of A. Saltelli et al., Comput. Phys. Commun. 181 (2010) 259-270, about the mean;
// of the total that of M. J. W. Jansen, Comput. Phys. Commun. 117 (1999) 35-43. Throws std::invalid_argument if
// the outcomes are not factors + 2 for each base point, or one is infinite.
SobolIndices sobol_indices(const Eigen::VectorXd& outcomes, Eigen::Index factors, std::uint64_t bootstrap_seed,
                           Eigen::Index resamples = 1000);

}  // namespace gapstrain::models
