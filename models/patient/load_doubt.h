// Whether a construct's standing hangs on what is least known of its loads, and where it would turn.
#pragma once

#include "models/assessment/result_state.h"
#include "models/patient/gait.h"

#include <functional>
#include <optional>
#include <utility>
#include <vector>

namespace gapstrain::models {

// The standing at sizes of one part of the load over the size taken.
struct TurningPoint {
  double low = 1.0, high = 1.0;  // of its band
  Standing at_low = Standing::holds, taken = Standing::holds, at_high = Standing::holds;
  // Where it is found to have turned, and the next size towards 1 where it has not; nothing: it never does.
  std::optional<double> turned, not_yet;
};

// Asked at both ends of the band and, between an end that turns and 1, `halvings` times more, on the end nearer to
// 1 by ratio. Standings that are not to be trusted turn nothing.
TurningPoint find_turning_point(Standing taken, double low, double high, int halvings,
                                const std::function<Standing(double factor)>& standing_at);

struct PartDoubt {
  LoadPart part = LoadPart::torsion;
  LoadEvidence evidence = LoadEvidence::none;
  TurningPoint turning{};
};

struct SideDoubt {
  TensionSide side;
  Standing standing = Standing::holds;
};

// All parts as many times as large.
struct SizeDoubt {
  double factor = 1.0;
  Standing standing = Standing::holds;
};

struct LoadDoubts {
  Standing taken = Standing::holds;
  std::vector<PartDoubt> parts{};            // weakest evidence first
  std::vector<SideDoubt> other_sides{};      // that are left open, with bending as large
  std::optional<SizeDoubt> small_patient{};  // by more_muscle_force; nothing: not a small one
  std::vector<PartDoubt> turning_parts() const;
  std::vector<SideDoubt> turning_sides() const;
  bool turns_by_size() const;  // the small patient's
  bool is_open() const;        // any of it turns the standing
  bool are_all_known() const;  // no size or side was without an answer to trust
};

// Of a construct whose loads are all a patient's limb's. Each part by itself, the others at their middle.
// `standing_of`: of the construct with other loads; asked twice a part, twice more where it turns, once a side.
LoadDoubts doubt_loads(const Patient& patient, const Construct& construct, Standing taken,
                       const std::function<Standing(const Construct&)>& standing_of);

}  // namespace gapstrain::models
