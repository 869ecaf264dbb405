#include "models/words/load_words.h"

#include "models/parts/words.h"

#include <fmt/format.h>

#include <utility>

namespace gapstrain::models {

namespace {

template <class Quantity>
void add_part(std::vector<std::string>& parts, const char* key, Quantity size, const char* unit) {
  if (size.value() != 0.0) parts.push_back(fmt::format("{} {:.4g} {}", key, size.value(), unit));
}

std::string text_of(const Point& point) {
  return fmt::format("({:.4g}, {:.4g}, {:.4g}) mm", point.x.value(), point.y.value(), point.z.value());
}

}  // namespace

std::vector<std::string> acting_parts(const LoadCase& load) {
  std::vector<std::string> parts;
  if (load.four_point) add_part(parts, "four_point.force", load.four_point->total, "N");
  add_part(parts, "axial", load.axial_compression, "N");
  add_part(parts, "transverse_y", load.transverse_y, "N");
  add_part(parts, "transverse_z", load.transverse_z, "N");
  add_part(parts, "bending_y", load.bending_y, "N mm");
  add_part(parts, "bending_z", load.bending_z, "N mm");
  add_part(parts, "torsion", load.torsion, "N mm");
  for (std::size_t k = 0; k < load.forces.size(); ++k) {
    const auto& [position, around, force] = load.forces[k];
    parts.push_back(fmt::format("force[{}] ({:.4g}, {:.4g}, {:.4g}) N at {:.4g} mm, {:.4g} deg round", k,
                                force.x.value(), force.y.value(), force.z.value(), position.value(),
                                in_degrees(around)));
  }
  return parts;
}

std::string supports_text(const LoadCase& load) {
  if (load.four_point) {
    const FourPointBending& test = *load.four_point;
    return fmt::format("rollers at {:.4g}, {:.4g}, {:.4g} and {:.4g} mm, on the {}", test.outer_proximal.value(),
                       test.inner_proximal.value(), test.inner_distal.value(), test.outer_distal.value(),
                       test.across_plate ? "edge" : "flat");
  }
  const auto side = [&](BoneEnd end) {
    return fmt::format("{} {}", name_of(end), name_of(load.supports.at(end).hold));
  };
  std::string ends = side(BoneEnd::proximal) + ", " + side(BoneEnd::distal);
  if (!load.line) return ends;
  return fmt::format("{}; load line from {} to {}", ends, text_of(load.line->from), text_of(load.line->to));
}

}  // namespace gapstrain::models
