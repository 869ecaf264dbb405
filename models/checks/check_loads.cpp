#include "models/checks/checks.h"
#include "models/parts/load_parts.h"
#include "models/parts/words.h"

#include <Eigen/Eigenvalues>

#include <fmt/format.h>

#include <algorithm>
#include <array>
#include <cmath>
#include <utility>

namespace gapstrain::models {

namespace {

bool check_line(const LoadCase& load, const std::string& where, ProblemList& problems) {
  const LoadLine& line = *load.line;
  bool is_good = true;
  for (const auto& [key, point] : {std::pair{".line_from", line.from}, {".line_to", line.to}})
    for (const auto& [axis, value] : {std::pair{"x", point.x}, {"y", point.y}, {"z", point.z}})
      is_good &= problems.finite(where + key, fmt::format("The {} of a point of the load line", axis), value);
  if (!is_good) return false;
  if (!(line.to.x > line.from.x)) {
    problems.error(
        where + ".line_to",
        fmt::format("The load line of \"{}\" runs from x = {} to x = {}; it must run towards the distal "
                    "end: line_to lies distal of line_from.",
                    load.name, text(line.from.x), text(line.to.x)));
    return false;
  }
  const Length none = 0.0 * mm;
  if (load.ball_distance != none || load.ball_offset_y != none || load.ball_offset_z != none) {
    problems.error(where + ".line_from",
                   fmt::format("The load line of \"{}\" is given by two points and by ball_distance or offsets as "
                               "well; leave out one of the two.",
                               load.name));
    return false;
  }
  return true;
}

bool check_flexibility(const LoadCase& load, BoneEnd end, const std::string& where, ProblemList& problems) {
  const EndSupport& support = load.supports.at(end);
  if (support.hold != EndHold::elastic) return true;
  const auto refuse = [&](const std::string& fault) {
    problems.error(
        fmt::format("{}.{}_spring", where, name_of(end)),
        fmt::format("The spring that holds the {} end under \"{}\" {}.", name_of(end), load.name, fault));
    return false;
  };
  using Matrix = Eigen::Matrix<double, 6, 6, Eigen::RowMajor>;
  const Matrix rows = Eigen::Map<const Matrix>(support.flexibility.rows.data());
  if (!rows.allFinite()) return refuse("has a flexibility that is no ordinary number");
  const double largest = rows.cwiseAbs().maxCoeff();
  if (!(largest > 0.0)) return refuse(fmt::format("is rigid in all motions; write {} = \"held\"", name_of(end)));
  // Rows and columns of one size, so that mm and rad may be held against each other.
  const Eigen::Matrix<double, 6, 1> size =
      rows.diagonal().cwiseAbs().cwiseSqrt().unaryExpr([](double s) { return s > 0.0 ? s : 1.0; });
  const Matrix scaled = size.cwiseInverse().asDiagonal() * rows * size.cwiseInverse().asDiagonal();
  if (!scaled.isApprox(scaled.transpose(), 1e-6))
    return refuse("has a flexibility that is not symmetric: entry (i, j) must equal entry (j, i)");
  if (Eigen::SelfAdjointEigenSolver<Matrix>(scaled).eigenvalues().minCoeff() < -1e-9)
    return refuse(
        "would give work away: its flexibility must not be negative in any direction; entries on the "
        "diagonal are 0 or more, those beside it no larger than they allow");
  return true;
}

bool check_forces(const LoadCase& load, const std::string& where, ProblemList& problems) {
  bool is_good = true;
  for (std::size_t k = 0; k < load.forces.size(); ++k) {
    const auto& [position, around, force] = load.forces[k];
    const std::string table = fmt::format("{}.force[{}]", where, k);
    is_good &= problems.finite(table + ".position", "The force's place along the bone", position);
    is_good &= problems.finite(table + ".around", "The force's place round the bone", around);
    bool is_finite = true;
    for (const auto& [axis, value] : {std::pair{"x", force.x}, {"y", force.y}, {"z", force.z}})
      is_finite &= problems.finite(table + ".force", fmt::format("The force's part along {}", axis), value);
    if (is_finite && force == ForceVector{}) {
      problems.error(table + ".force", fmt::format("A force of the load \"{}\" is zero in all its parts; give at "
                                                   "least one, or leave the force out.",
                                                   load.name));
      is_good = false;
    }
    is_good &= is_finite;
  }
  return is_good;
}

// Ends of a part's band over the value entered, which lies between them.
bool check_bands(const LoadCase& load, const std::string& where, ProblemList& problems) {
  constexpr double farthest = 100.0;  // either way: what is less known than that is not known at all
  bool is_good = true;
  for (const LoadPart part : load_parts) {
    const auto& [low, high] = band_of(load, part);
    const std::string key = fmt::format("{}.{}", where, key_of_band(part));
    if (low == 1.0 && high == 1.0) continue;
    if (!(low >= 1.0 / farthest && low <= 1.0 && high >= 1.0 && high <= farthest)) {
      problems.error(key, fmt::format("The band of the {} of the load \"{}\" goes from {:.4g} to {:.4g} times the "
                                      "value entered; it begins at {:.4g} to 1 and ends at 1 to {:.4g}, for "
                                      "that value lies in it.",
                                      name_of(part), load.name, low, high, 1.0 / farthest, farthest));
      is_good = false;
    } else if (!has_part(load, part)) {
      problems.error(key, fmt::format("The load \"{}\" has a band for its {}, but no {} of its own that could be "
                                      "larger or smaller{}; remove the band.",
                                      load.name, name_of(part), name_of(part),
                                      load.line ? ": two points give a line, which sets both at once" : ""));
      is_good = false;
    }
  }
  return is_good;
}

bool check_numbers(const LoadCase& load, const std::string& where, ProblemList& problems) {
  bool is_good = problems.not_negative(where + ".ball_distance", "The distance of the balls from the bone's ends",
                                       load.ball_distance);
  is_good &= problems.finite(where + ".ball_offset_y", "The load line's offset along y", load.ball_offset_y);
  is_good &= problems.finite(where + ".ball_offset_z", "The load line's offset along z", load.ball_offset_z);
  is_good &= problems.finite(where + ".axial", "The axial load", load.axial_compression);
  is_good &= problems.finite(where + ".transverse_y", "The transverse load along y", load.transverse_y);
  is_good &= problems.finite(where + ".transverse_z", "The transverse load along z", load.transverse_z);
  is_good &= problems.finite(where + ".bending_y", "The bending moment about y", load.bending_y);
  is_good &= problems.finite(where + ".bending_z", "The bending moment about z", load.bending_z);
  is_good &= problems.finite(where + ".torsion", "The torsion", load.torsion);
  if (load.line) is_good &= check_line(load, where, problems);
  is_good &= check_flexibility(load, BoneEnd::proximal, where, problems);
  is_good &= check_flexibility(load, BoneEnd::distal, where, problems);
  is_good &= check_forces(load, where, problems);
  is_good &= check_bands(load, where, problems);
  if (load.cycles_per_day && !(*load.cycles_per_day > 0.0 && *load.cycles_per_day <= 1e6)) {
    problems.error(
        where + ".cycles_per_day",
        fmt::format("The load \"{}\" comes {:.4g} times a day; allowed is more than none, up to 1e6. Leave "
                    "the key out for a load that is no part of the patient's day.",
                    load.name, *load.cycles_per_day));
    is_good = false;
  }
  if (!(load.spread >= 0.0 && load.spread <= 1.0)) {
    problems.error(where + ".spread",
                   fmt::format("The spread of the load \"{}\" is {:.4g} of its size; allowed is 0 to 1.",
                               load.name, load.spread));
    is_good = false;
  }
  return is_good;
}

bool is_zero(const LoadCase& load) {
  const Force no_force = 0.0 * newton;
  const Moment no_moment = 0.0 * newton_mm;
  return load.axial_compression == no_force && load.transverse_y == no_force && load.transverse_z == no_force &&
         load.bending_y == no_moment && load.bending_z == no_moment && load.torsion == no_moment;
}

std::string holds_it(EndHold hold) {
  return hold == EndHold::ball     ? "a ball joint holds it"
         : hold == EndHold::guided ? "its guide holds it"
                                   : "it is held";
}

std::string ends_text(const EndSupports& supports) {
  return fmt::format("the proximal end is \"{}\", the distal one \"{}\"", name_of(supports.proximal.hold),
                     name_of(supports.distal.hold));
}

// What a support takes before it comes to the bone.
void check_against_supports(const LoadCase& load, const std::string& where, ProblemList& problems) {
  const EndSupports& supports = load.supports;
  const BoneEnd loaded = other(base_of(supports));
  const EndHold hold = supports.at(loaded).hold;
  if (hold == EndHold::held && load.axial_compression != 0.0 * newton)
    problems.error(where + ".axial",
                   fmt::format("The load \"{}\" presses on the ends with {}, which are both held; let one of them "
                               "be \"guided\", \"ball\", \"elastic\" or \"free\".",
                               load.name, text(load.axial_compression)));
  if (hold != EndHold::free && hold != EndHold::elastic)
    for (const auto& [key, force] :
         {std::pair{".transverse_y", load.transverse_y}, {".transverse_z", load.transverse_z}})
      if (force != 0.0 * newton)
        problems.error(where + key,
                       fmt::format("The load \"{}\" pushes the {} end sideways with {}, where {}; use supports = "
                                   "\"cantilever\" or leave it out.",
                                   load.name, name_of(loaded), text(force), holds_it(hold)));
  const auto takes = [&](auto one) { return one(supports, BoneEnd::proximal) || one(supports, BoneEnd::distal); };
  const Moment none = 0.0 * newton_mm;
  const auto refuse = [&](const char* key, const char* what, const char* motion, Moment moment) {
    problems.error(where + key,
                   fmt::format("The load \"{}\" {} the bone by its ends with {}, but neither can {}: {}; let one "
                               "be \"ball\" or \"free\", or leave it out.",
                               load.name, what, text(moment), motion, ends_text(supports)));
  };
  if (!takes(takes_bending))
    for (const auto& [key, moment] : {std::pair{".bending_y", load.bending_y}, {".bending_z", load.bending_z}})
      if (moment != none) refuse(key, "bends", "turn", moment);
  if (!takes(takes_torsion) && load.torsion != none) refuse(".torsion", "twists", "turn", load.torsion);
}

void check_ends(const LoadCase& load, const std::string& where, ProblemList& problems) {
  if (is_zero(load) && load.forces.empty()) {
    problems.error(
        where,
        fmt::format("The load \"{}\" is zero in all its parts; give at least one force or moment.", load.name));
    return;
  }
  check_against_supports(load, where, problems);
}

void check_four_point(const LoadCase& load, const std::string& where, const Construct& construct,
                      ProblemList& problems) {
  const FourPointBending& test = *load.four_point;
  const std::string table = where + ".four_point";
  if (!is_zero(load))
    problems.error(table,
                   fmt::format("The load \"{}\" has four-point bending together with loads at the ends; make "
                               "them two load cases.",
                               load.name));
  if (load.line || !(load.supports == ball_joints() || load.supports == cantilever()))
    problems.error(table,
                   fmt::format("The load \"{}\" has four-point bending, whose rollers hold the bone, together "
                               "with supports or a load line of its ends; make them two load cases.",
                               load.name));
  if (problems.finite(table + ".force", "The force on the inner rollers", test.total) &&
      test.total == 0.0 * newton)
    problems.error(table + ".force",
                   fmt::format("The four-point bending of the load \"{}\" has no force; give the "
                               "force on both inner rollers together.",
                               load.name));

  struct NamedRoller {
    const char *key, *name;
    Length place;
  };
  const std::array<NamedRoller, 4> rollers{{{".outer_proximal", "outer proximal", test.outer_proximal},
                                            {".inner_proximal", "inner proximal", test.inner_proximal},
                                            {".inner_distal", "inner distal", test.inner_distal},
                                            {".outer_distal", "outer distal", test.outer_distal}}};
  const Fracture& fracture = only(construct.fractures);
  if (!(construct.bone.length > 0.0 * mm)) return;  // reported of the bone
  for (std::size_t i = 0; i < rollers.size(); ++i) {
    const NamedRoller& roller = rollers[i];
    if (!problems.within(table + roller.key, fmt::format("The {} roller's place along the bone", roller.name),
                         roller.place, 0.0 * mm, construct.bone.length))
      return;
    if (i > 0 && !(roller.place > rollers[i - 1].place)) {
      problems.error(
          table + roller.key,
          fmt::format("The {} roller lies at {}, not beyond the {} one at {}; from proximal to distal they "
                      "are outer, inner, inner, outer.",
                      roller.name, text(roller.place), rollers[i - 1].name, text(rollers[i - 1].place)));
      return;
    }
    if (roller.place > fracture.position - 0.5 * fracture.gap &&
        roller.place < fracture.position + 0.5 * fracture.gap)
      problems.error(table + roller.key,
                     fmt::format("The {} roller at {} stands over the fracture gap, where there is "
                                 "no bone; move it onto a fragment.",
                                 roller.name, text(roller.place)));
  }
}

}  // namespace

std::string path_of_load(std::size_t index) { return fmt::format("load[{}]", index); }

void check_loads(const Construct& construct, ProblemList& problems) {
  if (construct.loads.empty())
    problems.error("load", "There is no load, so there is nothing to answer; give at least one load case.");
  for (std::size_t i = 0; i < construct.loads.size(); ++i) {
    const LoadCase& load = construct.loads[i];
    const std::string where = path_of_load(i);
    if (!check_numbers(load, where, problems)) continue;
    if (load.four_point)
      check_four_point(load, where, construct, problems);
    else
      check_ends(load, where, problems);
  }
}

}  // namespace gapstrain::models
