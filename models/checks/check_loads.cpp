#include "models/checks/checks.h"

#include <fmt/format.h>

#include <array>
#include <utility>

namespace gapstrain::models {

namespace {

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

void check_ends(const LoadCase& load, const std::string& where, ProblemList& problems) {
  if (is_zero(load)) {
    problems.error(
        where,
        fmt::format("The load \"{}\" is zero in all its parts; give at least one force or moment.", load.name));
    return;
  }
  if (load.support != Support::ball_joints) return;
  for (const auto& [key, force] :
       {std::pair{".transverse_y", load.transverse_y}, {".transverse_z", load.transverse_z}})
    if (force != 0.0 * newton)
      problems.error(where + key,
                     fmt::format("The load \"{}\" pushes the distal end sideways with {}, where a ball "
                                 "joint holds it; use supports = \"cantilever\" or leave it out.",
                                 load.name, text(force)));
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
  if (problems.finite(table + ".force", "The force on the inner rollers", test.total) &&
      test.total == 0.0 * newton)
    problems.error(table + ".force",
                   fmt::format("The four-point bending of the load \"{}\" has no force; give the "
                               "force on both inner rollers together.",
                               load.name));

  struct Roller {
    const char *key, *name;
    Length place;
  };
  const std::array<Roller, 4> rollers{{{".outer_proximal", "outer proximal", test.outer_proximal},
                                       {".inner_proximal", "inner proximal", test.inner_proximal},
                                       {".inner_distal", "inner distal", test.inner_distal},
                                       {".outer_distal", "outer distal", test.outer_distal}}};
  const Fracture& fracture = only(construct.fractures);
  if (!(construct.bone.length > 0.0 * mm)) return;  // reported of the bone
  for (std::size_t i = 0; i < rollers.size(); ++i) {
    const Roller& roller = rollers[i];
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

void check_loads(const Construct& construct, ProblemList& problems) {
  if (construct.loads.empty())
    problems.error("load", "There is no load, so there is nothing to answer; give at least one load case.");
  for (std::size_t i = 0; i < construct.loads.size(); ++i) {
    const LoadCase& load = construct.loads[i];
    const std::string where = fmt::format("load[{}]", i);
    if (!check_numbers(load, where, problems)) continue;
    if (load.four_point)
      check_four_point(load, where, construct, problems);
    else
      check_ends(load, where, problems);
  }
}

}  // namespace gapstrain::models
