#include "models/evidence/bench_models.h"

#include "models/evidence/bench_loads.h"
#include "models/evidence/bench_sizes.h"

#include <fmt/format.h>

#include <algorithm>
#include <cassert>
#include <optional>

namespace gapstrain::models {

namespace {

bool is_in_shaft(int hole, const BenchSizes& sizes) { return hole - 0.5 < sizes.before_fracture; }

bool has_ball_head(int hole, const BenchSizes& sizes) {
  return sizes.screws == BenchScrews::cortical ||
         (sizes.screws == BenchScrews::cortical_shaft && is_in_shaft(hole, sizes));
}

bool is_in_one_cortex(int hole, const BenchSizes& sizes) {
  const auto is_innermost = [&] {
    const int next = is_in_shaft(hole, sizes) ? hole + 1 : hole - 1;
    return is_in_shaft(next, sizes) != is_in_shaft(hole, sizes) || !has_bone_under(sizes, next);
  };
  switch (sizes.screws) {
    case BenchScrews::near_cortex:
      return true;
    case BenchScrews::near_cortex_innermost:
      return is_innermost();
    case BenchScrews::near_cortex_shaft:
      return is_in_shaft(hole, sizes);
    case BenchScrews::locking:
    case BenchScrews::cortical:
    case BenchScrews::cortical_shaft:
      break;
  }
  return false;
}

std::string dimensions_of(const BenchSizes& sizes) {
  const bool has_hard = sizes.hard_moment > 0.0;
  const bool has_ball_heads = sizes.screws == BenchScrews::cortical || sizes.screws == BenchScrews::cortical_shaft;
  return fmt::format(
      "in place of {}, tube {:g} mm across, wall {:g}, {:g} long, {:g} GPa; plate {:g} x {:g}, {} holes {:g} "
      "apart, "
      "{:g} GPa, {:g} off the bone; {}screws, core {:g}{}; gap {:g}; axial {:g} N{}, moments {:g} N m{}",
      sizes.stands_for, sizes.tube.outer, sizes.tube.wall, sizes.tube.length, sizes.tube.modulus / 1e3,
      sizes.bar.width, sizes.bar.thickness, sizes.bar.holes, sizes.bar.pitch, sizes.bar.modulus / 1e3,
      sizes.standoff, has_ball_heads ? "" : "locking ", sizes.bar.core,
      has_ball_heads ? fmt::format(", ball heads {:g} N", sizes.preload) : std::string{}, sizes.gap, sizes.axial,
      sizes.line_aside > 0.0 ? fmt::format(" (line aside: {:g} off)", sizes.line_aside) : std::string{},
      sizes.moment / 1e3, has_hard ? fmt::format(", hard {:g} N m", sizes.hard_moment / 1e3) : std::string{});
}

Screw screw_in(int hole, const BenchSizes& sizes, const Metal& metal) {
  Screw screw;
  screw.label = fmt::format("S{}", hole);
  screw.hole = hole;
  screw.size = {"bench", 1.15 * sizes.bar.core * mm, sizes.bar.core * mm, 0.3 * sizes.bar.core * mm, "invented"};
  screw.material = metal;
  if (is_in_one_cortex(hole, sizes)) screw.cortices = 1;
  if (has_ball_head(hole, sizes)) {
    screw.kind = ScrewKind::cortical;
    screw.preload = sizes.preload * newton;
  }
  return screw;
}

BenchModel build(const BenchSizes& sizes, double refinement) {
  BenchModel model{std::string(sizes.name), dimensions_of(sizes), {}};
  Construct& construct = model.construct;
  construct.name = model.name;
  construct.mesh.refinement = refinement;
  Bone& bone = construct.bone;
  bone.name = "tube";
  bone.length = sizes.tube.length * mm;
  bone.stations = {
      {0.5 * bone.length, sizes.tube.outer * mm, sizes.tube.outer * mm, sizes.tube.wall * mm, 0.0 * mm, 0.0 * mm}};
  bone.cortex = isotropic_cortex("bench", sizes.tube.modulus * mpa, 0.3, "invented, of the class the paper names");

  Plate& plate = only(construct.plates);
  plate.length = sizes.bar.holes * sizes.bar.pitch * mm;
  plate.sections = {{0.0 * mm, sizes.bar.width * mm, sizes.bar.thickness * mm}};
  for (int k = 0; k < sizes.bar.holes; ++k)
    plate.holes.push_back(
        {(k + 0.5) * sizes.bar.pitch * mm, HoleShape::round, sizes.bar.hole * mm, sizes.bar.hole * mm});
  plate.material = {"bench", sizes.bar.modulus * mpa, 0.3, std::nullopt, "handbook value, from memory"};
  plate.proximal_end = 0.5 * (bone.length - plate.length);
  plate.standoff = sizes.standoff * mm;

  only(construct.fractures).position = plate.proximal_end + sizes.before_fracture * sizes.bar.pitch * mm;
  only(construct.fractures).gap = sizes.gap * mm;
  construct.loads = bench_loads(sizes);
  for (int hole = 1; hole <= sizes.bar.holes; ++hole)
    if (has_bone_under(sizes, hole)) construct.screws.push_back(screw_in(hole, sizes, plate.material));
  number_screws(construct.screws);
  return model;
}

}  // namespace

std::vector<std::string_view> bench_model_names() {
  std::vector<std::string_view> names;
  for (const auto& sizes : bench_sizes()) names.push_back(sizes.name);
  return names;
}

BenchModel bench_model(std::string_view name, double refinement) {
  const auto& models = bench_sizes();
  const auto found = std::find_if(models.begin(), models.end(), [&](const auto& m) { return m.name == name; });
  assert(found != models.end());
  return build(*found, refinement);
}

}  // namespace gapstrain::models
