#include "models/checks/checks.h"

#include <fmt/format.h>

#include <algorithm>
#include <cmath>
#include <numbers>

namespace gapstrain::models {

namespace {

// Shell theory of a thick tube: at a mean radius of twice the wall the local stiffness is off by 6 to 10 per cent
// against 3-D elasticity (Michell's solution for ovalisation), and grows fast below.
constexpr double least_radius_over_wall = 2.0;
constexpr double thin_wall_share = 0.05;  // of the mean width; common practice, no source

bool check_station_sizes(const BoneStation& station, const std::string& where, ProblemList& problems) {
  bool is_good =
      problems.positive(where + ".width_mediolateral", "The mediolateral width", station.width_mediolateral);
  is_good &=
      problems.positive(where + ".width_craniocaudal", "The craniocaudal width", station.width_craniocaudal);
  is_good &= problems.positive(where + ".cortex", "The cortex", station.cortex);
  is_good &= problems.finite(where + ".bow_lateral", "The bow towards lateral", station.bow_lateral);
  is_good &= problems.finite(where + ".bow_cranial", "The bow towards cranial", station.bow_cranial);
  return is_good;
}

void check_wall(const BoneStation& station, const std::string& where, ProblemList& problems) {
  const Length narrow = std::min(station.width_mediolateral, station.width_craniocaudal);
  const Length wide = std::max(station.width_mediolateral, station.width_craniocaudal);
  const Length tightest = narrow * narrow / (2.0 * wide);  // radius of curvature at the long axis' ends
  if (station.cortex >= 0.5 * narrow) {
    problems.error(
        where + ".cortex",
        fmt::format("The cortex is {} thick, which leaves no canal in a bone {} wide; measure both again: "
                    "the cortex must be below half the width.",
                    text(station.cortex), text(narrow)));
    return;
  }
  if (station.cortex >= tightest) {
    problems.error(
        where + ".cortex",
        fmt::format("The cortex is {} thick, more than a bone {} by {} is rounded at its sharp sides "
                    "(radius {}); a shell cannot show that. Enter a thinner cortex or a rounder section.",
                    text(station.cortex), text(wide), text(narrow), text(tightest)));
    return;
  }
  const Length mean_width = 0.5 * (narrow + wide);
  const double radius_over_wall = (0.5 * (mean_width - station.cortex) / station.cortex).value();
  if (radius_over_wall < least_radius_over_wall)
    problems.warning(
        where + ".cortex",
        fmt::format("The cortex is {} thick in a bone {} wide; the mean radius is only {:.2f} times the "
                    "wall, and below 2 the shell model's local figures become coarse.",
                    text(station.cortex), text(mean_width), radius_over_wall));
  if (station.cortex < thin_wall_share * mean_width)
    problems.warning(where + ".cortex", fmt::format("The cortex is {} thick, below 5 % of the bone's width of {}; "
                                                    "measure it again.",
                                                    text(station.cortex), text(mean_width)));
}

// Compares with the law of a femur; other long bones stay within a factor of two.
void compare_size(const std::string& where, std::string_view subject, Length found, double expected, Mass mass,
                  ProblemList& problems) {
  if (!(found > 0.0 * mm)) return;  // reported of the part itself
  if (found.value() > 2.0 * expected || found.value() < 0.5 * expected)
    problems.warning(where,
                     fmt::format("{} is {}, but a body mass of {:.4g} kg suggests about {:.3g} mm; check the "
                                 "measure, its unit and the body mass.",
                                 subject, text(found), mass.value(), expected));
}

}  // namespace

void check_bone(const Bone& bone, ProblemList& problems) {
  const bool has_length = problems.positive("bone.length", "The bone's length", bone.length);
  if (bone.stations.empty())
    problems.error("bone.station", "The bone has no station; give its width and cortex at one place at least.");
  for (std::size_t i = 0; i < bone.stations.size(); ++i) {
    const BoneStation& station = bone.stations[i];
    const std::string where = fmt::format("bone.station[{}]", i);
    if (check_station_sizes(station, where, problems)) check_wall(station, where, problems);
    if (!problems.finite(where + ".position", "The station's position", station.position) || !has_length) continue;
    problems.within(where + ".position", "The station's position along the bone", station.position, 0.0 * mm,
                    bone.length);
    if (i > 0 && station.position <= bone.stations[i - 1].position)
      problems.error(
          where + ".position",
          fmt::format("The station's position is {}, not beyond the one before it at {}; list the stations "
                      "from proximal to distal.",
                      text(station.position), text(bone.stations[i - 1].position)));
  }
}

void check_body_mass(const Construct& construct, ProblemList& problems) {
  if (!construct.body_mass) return;
  const Mass mass = *construct.body_mass;
  if (!(std::isfinite(mass.value()) && mass.value() > 0.0)) {
    problems.error("body_mass", fmt::format("The body mass is {:.4g} kg; it must be above 0 kg.", mass.value()));
    return;
  }
  // Exponents: R. McN. Alexander et al., J. Zool. 189 (1979) 305-314. Factors: fitted to femora of dogs and cats
  // from memory, within 15 %.
  compare_size("bone.length", "The bone's length", construct.bone.length, 60.0 * std::pow(mass.value(), 0.35),
               mass, problems);
  const auto& stations = construct.bone.stations;
  if (stations.empty()) return;
  Length sum = 0.0 * mm;
  for (const BoneStation& station : stations)
    sum += 0.5 * (station.width_mediolateral + station.width_craniocaudal);
  compare_size("bone", "The bone's mean width", sum / static_cast<double>(stations.size()),
               4.6 * std::pow(mass.value(), 0.36), mass, problems);
}

void check_bone_surface(const Bone& bone, const BoneShape& shape, ProblemList& problems) {
  constexpr int samples = 200;
  for (int i = 0; i <= samples; ++i) {
    const double x = bone.length.value() * i / samples;
    const BoneSection here = shape.section(x);
    if (here.wall >= here.outer().smallest_radius_of_curvature()) {
      problems.error(
          "bone.station",
          fmt::format("Between its stations, at {:.4g} mm, the bone is {:.4g} by {:.4g} mm with a cortex of "
                      "{:.4g} mm, too thick for its sharp sides; add a station measured there.",
                      x, 2.0 * here.semi_y, 2.0 * here.semi_z, here.wall));
      return;
    }
    // Neighbouring sections are square to the axis: where it bends with a radius below the bone's they would
    // cross.
    const double step = bone.length.value() / samples;
    const double bend = (shape.section(x + step).tangent - here.tangent).norm() / step;
    if (bend * std::max(here.semi_y, here.semi_z) > 0.5 || here.tangent.x() < std::numbers::sqrt2 / 2.0) {
      problems.error(
          "bone.station",
          fmt::format("The bow turns the bone too sharply near {:.4g} mm; check the stations' bow_lateral "
                      "and bow_cranial, which are offsets from the line between the bone's ends.",
                      x));
      return;
    }
  }
}

}  // namespace gapstrain::models
