#include "models/checks/checks.h"

#include <fmt/format.h>

#include <cmath>

namespace gapstrain::models {

namespace {

struct TiltLimit {
  std::string_view head;
  Angle largest;
};

// Variable-angle locking holes 10 to 15 degrees, ball heads 25 degrees along the plate and 7 across: customary,
// from memory. Ball heads are held to 25 in all. Beside the plate the bone is the limit: a choice of this program.
TiltLimit tilt_limit(const Screw& screw) {
  if (screw.kind == ScrewKind::locking) return {"a locking head", 15.0 * degree};
  if (screw.entry) return {"a head beside the plate", 60.0 * degree};
  return {"a ball head", 25.0 * degree};
}

bool check_interface(double stiffness, const std::string& where, const std::string& what, ProblemList& problems) {
  if (stiffness >= least_interface && stiffness <= bonded_interface) return true;
  problems.error(where,
                 fmt::format("The local stiffness in bone of {} is {:g} of that of a bonded screw; allowed is "
                             "{:g} to 1.",
                             what, stiffness, least_interface));
  return false;
}

bool check_size(const Screw& screw, const std::string& where, ProblemList& problems) {
  const std::string name = name_of(screw);
  bool is_good = problems.positive(where + ".thread_diameter", fmt::format("The thread diameter of {}", name),
                                   screw.size.thread_diameter);
  is_good &= problems.positive(where + ".core_diameter", fmt::format("The core diameter of {}", name),
                               screw.size.core_diameter);
  is_good &= problems.positive(where + ".pitch", fmt::format("The pitch of {}", name), screw.size.pitch);
  if (is_good && screw.size.core_diameter > screw.size.thread_diameter) {
    problems.error(where + ".core_diameter",
                   fmt::format("The core diameter of {} is {}, above its thread's {}; exchange the two.", name,
                               text(screw.size.core_diameter), text(screw.size.thread_diameter)));
    return false;
  }
  if (screw.size.root_radius)
    is_good &= problems.positive(where + ".root_radius", fmt::format("The root radius of {}'s thread", name),
                                 *screw.size.root_radius);
  return screw.interface ? check_interface(*screw.interface, where + ".interface",
                                           fmt::format("the screw {}", name), problems) &&
                               is_good
                         : is_good;
}

bool check_tilt(const Screw& screw, const std::string& where, ProblemList& problems) {
  const std::string name = name_of(screw);
  if (!problems.finite(where + ".tilt_along", fmt::format("The tilt of {} along the plate", name),
                       screw.tilt_along) ||
      !problems.finite(where + ".tilt_across", fmt::format("The tilt of {} across the plate", name),
                       screw.tilt_across))
    return false;
  const double along = screw.tilt_along.value(), across = screw.tilt_across.value();
  const double quarter_turn = 90.0 * degree.value();
  const bool is_forward = std::abs(along) < quarter_turn && std::abs(across) < quarter_turn;
  const Angle tilt = is_forward ? std::atan(std::hypot(std::tan(along), std::tan(across))) * radian
                                : std::max(std::abs(along), std::abs(across)) * radian;
  const TiltLimit limit = tilt_limit(screw);
  if (tilt <= limit.largest * (1.0 + 1e-9)) return true;
  problems.error(
      where + (std::abs(along) >= std::abs(across) ? ".tilt_along" : ".tilt_across"),
      fmt::format("The screw {} is tilted by {} in all; {} allows at most {}. Turn it back towards square "
                  "to the {}.",
                  name, text(tilt), limit.head, text(limit.largest), screw.entry ? "bone" : "plate"));
  return false;
}

bool check_cortices(const Screw& screw, const std::string& where, ProblemList& problems) {
  if (screw.cortices != 1 && screw.cortices != 2) {
    problems.error(where + ".cortices",
                   fmt::format("The screw {} has {} cortices; allowed are 1 (ends in the canal) "
                               "and 2 (passes the far cortex).",
                               name_of(screw), screw.cortices));
    return false;
  }
  if (screw.kind == ScrewKind::lag && screw.cortices == 1) {
    problems.error(where + ".cortices",
                   fmt::format("The lag screw {} ends in the canal, but its thread holds in the far "
                               "cortex; give it 2 cortices.",
                               name_of(screw)));
    return false;
  }
  return true;
}

void check_interface_course(const Construct& construct, ProblemList& problems) {
  InterfaceStage before{0.0, construct.screw_interface};
  for (std::size_t k = 0; k < construct.interface_course.size(); ++k) {
    const InterfaceStage& stage = construct.interface_course[k];
    const std::string where = fmt::format("screws.interface_course[{}]", k);
    check_interface(stage.stiffness, where + ".interface", "the screws", problems);
    if (!(stage.week > before.week))
      problems.error(where + ".week",
                     fmt::format("Week {:.4g} does not come after week {:.4g}, the one before it "
                                 "in the course; order stages by rising weeks, the first one after "
                                 "the day of the operation.",
                                 stage.week, before.week));
    if (stage.stiffness > before.stiffness)
      problems.error(
          where + ".interface",
          fmt::format("Screws are said to sit firmer in bone by week {:.4g} ({:g} of the bonded stiffness) "
                      "than before ({:g}); a course can only soften or stay.",
                      stage.week, stage.stiffness, before.stiffness));
    before = stage;
  }
}

}  // namespace

std::string path_of_screw(std::size_t index) { return fmt::format("screw[{}]", index); }

std::string name_of(const Screw& screw) {
  if (!screw.label.empty()) return fmt::format("\"{}\"", screw.label);
  return screw.entry ? "beside the plate" : fmt::format("in hole {}", screw.hole);
}

std::vector<bool> check_screws(const Construct& construct, ProblemList& problems) {
  std::vector<bool> can_be_placed;
  if (construct.screws.empty())
    problems.error("screw",
                   "There is no screw, so nothing holds the plate to the bone; add at least two a fragment.");
  const bool is_interface_good =
      check_interface(construct.screw_interface, "screws.interface", "the screws", problems);
  check_interface_course(construct, problems);
  for (std::size_t i = 0; i < construct.screws.size(); ++i) {
    const Screw& screw = construct.screws[i];
    const std::string where = path_of_screw(i);
    bool is_good = check_size(screw, where, problems) && is_interface_good;
    is_good = check_tilt(screw, where, problems) && is_good;
    is_good = is_good && check_seat(construct, i, problems);
    check_metal(screw.material, where + ".material", problems);
    check_tightening(screw, where, problems);
    is_good = check_cortices(screw, where, problems) && is_good;
    can_be_placed.push_back(is_good);
  }
  return can_be_placed;
}

}  // namespace gapstrain::models
