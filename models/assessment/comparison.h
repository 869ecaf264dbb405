// Constructs for one patient against each other: figures side by side, the widest difference first, races and
// least margins. What that comes to is said in words by models/words/comparison_words.h.
#pragma once

#include "models/assessment/assess.h"
#include "models/assessment/least_margins.h"
#include "models/catalogue/figure_entry.h"

#include <limits>
#include <optional>
#include <string>
#include <vector>

namespace gapstrain::models {

struct ComparedFigure {
  std::string name, unit;                                 // no unit: a ratio or a count
  std::optional<bool> high_is_better;                     // nothing: neither way, it depends on the fracture
  std::vector<std::optional<double>> values;              // one a construct
  double model_error = 0.0;                               // share of a value that the model itself may be off by
  double most = std::numeric_limits<double>::infinity();  // beyond it figures are as good as alike
  std::vector<bool> trusted = {};      // one a construct; empty: all. Those that are not are held against no other
  const FigureEntry* entry = nullptr;  // the catalogue's

  bool is_trusted(std::size_t construct) const { return trusted.empty() || trusted[construct]; }
  // Largest over smallest magnitude; nothing unless two trusted constructs have it, infinite next to 0.
  std::optional<double> ratio() const;
  // Whether the difference is more than the model error of both.
  bool is_told_apart() const;
  // The trusted construct that does best; nothing when neither way is better, none is told apart, or one of them
  // has no figure.
  std::optional<std::size_t> best() const;
};

struct ConstructPair {
  std::size_t first = 0, second = 0;
  std::vector<RaceComparison> races;  // a course each; empty when one of them has no race
};

struct Comparison {
  std::vector<ComparedFigure> figures;  // told apart first, the widest difference first
  std::vector<ConstructPair> pairs;     // the first construct against each of the others, and so on
  LeastMargins least_margins;
};

// How two constructs are for different patients: what differs, such as "bone", "set of loads".
std::vector<std::string> patient_differences(const Construct& first, const Construct& second);

// @pre two or more, as many names as constructs
Comparison compare(const std::vector<Construct>& constructs, const std::vector<AssessedConstruct>& assessed);

}  // namespace gapstrain::models
