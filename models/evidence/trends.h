// Statements of published bench tests, each with the criterion that our model of the test is held to, and what the
// model gives.
#pragma once

#include "models/evidence/benches.h"

#include <functional>
#include <optional>
#include <string>
#include <string_view>
#include <vector>

namespace gapstrain::models {

enum class Evidence {
  seen,         // in a public copy of the source's abstract or text
  from_memory,  // quoted without the source at hand: a starting value
};

enum class Agreement { agrees, disagrees, not_comparable };

// A ratio of two figures of our models, or another plain number. Bounds are the criterion, written down from the
// statement alone; without them the number is for the reader only.
struct Measure {
  std::string name;
  double value = 0.0;
  std::optional<double> least = {}, most = {};

  bool holds() const { return (!least || value >= *least) && (!most || value <= *most); }
};

// What a source says and how our models are asked about it.
struct Trend {
  std::string topic, source;
  Evidence evidence = Evidence::seen;
  std::string statement;
  std::vector<std::string_view> models;                   // see bench_models.h
  std::function<std::vector<Measure>(Benches&)> measure;  // empty: nothing of ours answers to it
  std::string if_agrees, otherwise;  // why; empty where that verdict was not met when this was written
};

// By topic, in the order of the table.
const std::vector<Trend>& published_trends();

struct TrendFinding {
  std::vector<Measure> measures;
  Agreement verdict = Agreement::not_comparable;
  std::string why;
};

// Found out one after another, those of one model together; `benches` keep no model that is not asked about any
// more. not_comparable without bounds to hold measures to, and where an outcome asked for fails its own checks;
// agrees when all bounds hold. In the order of `trends`. @throw as `assemble` and ConstructSolver
std::vector<TrendFinding> find_out(const std::vector<const Trend*>& trends, Benches& benches);

// Of a trend whose measures are known. `doubts`: checks that the outcomes behind them fail.
TrendFinding judge(const Trend& trend, std::vector<Measure> measures, const std::vector<std::string>& doubts);

}  // namespace gapstrain::models
