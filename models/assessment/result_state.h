// What must be known of a result before any of its figures is used. Every output carries it.
#pragma once

#include "models/findings/findings.h"
#include "models/margins/margins.h"
#include "models/parts/construct.h"

#include <cstddef>
#include <optional>
#include <string>
#include <variant>
#include <vector>

namespace gapstrain::models {

enum class Standing {
  holds,       // no known margin is below 1, and healing is likely to win
  fails,       // at least one is, or an implant breaks before union in most samples
  not_trusted  // a check of the solution failed: its figures may be anything
};

// When a part fails.
struct FailureTime {
  enum class Kind {
    at_first_load,          // a static limit
    in_race,                // from the 5th to the 95th percentile of the race's samples
    before_union,           // in a race, beyond the time that it follows
    before_union_unhealed,  // likewise, as the gap is on the first day
    before_cycles_asked,    // of fatigue without a race
    as_screws_soften        // from a week on, by the case's course of how bone holds its screws
  };
  Kind kind = Kind::at_first_load;
  std::optional<double> from{},
      to{};  // weeks, in_race; `to` is left out beyond five years. as_screws_soften: `from`
};

// A race that is lost though the margins hold: scatter, or tissue that does not form in time.
struct LostRace {
  bool by_screws = false;            // else by the plate
  double breaks_before_union = 0.0;  // share of the samples
};

struct Failure {
  std::variant<Margin, LostRace> what;
  FailureTime when{};

  const Margin* margin() const { return std::get_if<Margin>(&what); }
  // Under which; empty: over all of a day's.
  std::string load() const;
  // Strength over demand; nothing when the race alone says so.
  std::optional<double> factor() const;
};

// Figures that came out as no finite number.
struct NotFinite {
  std::size_t figures = 0;
  std::string first;  // its place in findings.json
};

// Why a result is not to be trusted. @pre a check that was not passed
using Doubt = std::variant<Check, NotFinite>;

// What is known of a construct on its first day, no race in it.
struct FirstDay {
  Standing standing = Standing::holds;
  std::optional<Margin> least{};       // margin; nothing when none is known
  std::optional<double> gap_strain{};  // along the bone, largest magnitude under any load; where it has a meaning
};

// The first day with one local stiffness of screws in bone over that of bonded ones.
struct InterfaceBound {
  double stiffness = bonded_interface;
  FirstDay day;
};

// With the gap as on the first day, once screws have softened in bone so far.
struct InterfaceWeek {
  double week = 0.0;
  InterfaceBound bound;
};

enum class BoundsVerdict {
  holds_at_both,
  hangs_on_it,  // it holds at one bound and fails at the other
  fails_at_both,
  unknown  // one of them is not to be trusted
};

// Threads bonded to bone are a bound; the softest that is to be reckoned with is another.
struct InterfaceBounds {
  double taken = bonded_interface;  // the construct's own
  InterfaceBound bonded, soft;
  BoundsVerdict verdict() const;
  // The lesser of both, as a factor; nothing where one of them is not known.
  std::optional<double> least_margin() const;
  // Whether the soft bound fails, or is not known, where the construct as taken holds.
  bool warns(Standing taken_stands) const;
};

// A load whose figures hold for the construct as it is deformed.
struct LoadOnBent {
  std::string load;
  double load_ratio = 0.0, amplification = 1.0;  // see SecondOrderFindings
};

// A load whose turns are followed as large.
struct LoadTurned {
  std::string load;
  Angle turn, within;  // see LargeTurnFindings
};

// Values; words are made of them by models/words/state_words.h.
struct ResultState {
  std::vector<Doubt> not_trusted{};        // empty: all checks are passed
  std::vector<Failure> fails{};            // worst first, one a kind
  std::vector<PassedLimit> limits{};       // that the steps or a load pass without breaking anything, worst first
  std::vector<Estimate> estimated{};       // sizes that were not measured
  std::vector<LoadOnBent> second_order{};  // loads whose figures have second-order effects in them
  std::vector<LoadTurned> turned{};        // loads whose figures have large turns in them
  // How it stands at both bounds of screws in bone; nothing where that was not asked.
  std::optional<InterfaceBounds> interface {};
  std::vector<InterfaceWeek> softening{};  // by the stages of the case's course, the first day first; empty: none
  Standing standing() const;               // as the construct is taken
};

struct Assessment;
// Of margins, race and findings. @pre findings and assessment are the construct's
ResultState state_of(const Construct& construct, const Findings& findings, const Assessment& assessment);

// Of a case before anything is calculated: only what was estimated is known.
ResultState state_of_case(const Construct& construct);

// Why the findings are not to be trusted.
std::vector<Doubt> failed_checks(const Trust& trust);

}  // namespace gapstrain::models
