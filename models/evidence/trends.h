// Statements of published bench tests, each with what is known of its set-up, what is guessed, the criterion that
// our model of the test is held to, and what the model gives.
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

enum class Agreement {
  agrees,          // in every set-up
  hangs_on_guess,  // in some of the set-ups that the paper leaves open
  disagrees,       // in none
  not_comparable
};

// A ratio of two figures of our models, or another plain number. Bounds are the criterion, written down from the
// statement alone; without them the number is for the reader only.
struct Measure {
  std::string name;
  double value = 0.0;
  std::optional<double> least = {}, most = {};

  bool is_bounded() const { return least || most; }
  bool holds() const { return (!least || value >= *least) && (!most || value <= *most); }
};

// One way to rebuild a test. How ends are held changes the stiffness over a gap by up to six times (MacLeod et al.
// 2018, Bone Joint Res 7:111), and papers seldom say it where it can be seen: what they leave open is tried in
// more ways than one, chosen before anything was run.
struct SetUp {
  std::string name;
  std::function<std::vector<Measure>(Benches&)> measure;
};

// What a source says and how our models are asked about it.
struct Trend {
  std::string topic, source;
  Evidence evidence = Evidence::seen;
  std::string statement;
  std::string known, guessed;             // of the set-up
  std::string criterion;                  // where the bounds are from
  std::vector<std::string_view> models;   // see bench_models.h
  std::vector<SetUp> set_ups;             // empty: nothing of ours answers to it
  std::string if_agrees, otherwise = {};  // why; empty where that verdict was not met when this was written
};

// By topic, in the order of the table.
const std::vector<Trend>& published_trends();

struct SetUpFinding {
  std::string set_up;
  std::vector<Measure> measures;
  bool holds() const;  // all bounds
};

struct TrendFinding {
  std::vector<SetUpFinding> set_ups;
  Agreement verdict = Agreement::not_comparable;
  std::string why;
};

// Found out one after another, those of one model together; `benches` keep no model that is not asked about any
// more. not_comparable without bounds to hold measures to, and where an outcome asked for fails its own checks. In
// the order of `trends`. @throw as `assemble` and ConstructSolver
std::vector<TrendFinding> find_out(const std::vector<const Trend*>& trends, Benches& benches);

// Of a trend whose measures are known. `doubts`: checks that the outcomes behind them fail.
TrendFinding judge(const Trend& trend, std::vector<SetUpFinding> set_ups, const std::vector<std::string>& doubts);

}  // namespace gapstrain::models
