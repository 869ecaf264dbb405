#include "cases/toml/key.h"

#include <fmt/format.h>

namespace gapstrain::cases {

bool is_table(const Key& key) { return key.kind == Kind::table || key.kind == Kind::tables; }

bool has_range(const Key& key) { return !key.range.least.empty(); }

std::string range_text(const Key& key) {
  const auto& [least, most, most_means] = key.range;
  return most_means.empty() ? fmt::format("{} to {}", least, most)
                            : fmt::format("{} to {} (at most {})", least, most_means, most);
}

std::string join_path(std::string_view table, std::string_view name) {
  if (table.empty() || name.empty()) return fmt::format("{}{}", table, name);
  return fmt::format("{}.{}", table, name);
}

std::optional<Dimension> dimension_of(Kind kind) {
  switch (kind) {
    case Kind::length:
      return Dimension::length;
    case Kind::force:
      return Dimension::force;
    case Kind::stress:
      return Dimension::stress;
    case Kind::moment:
      return Dimension::moment;
    case Kind::angle:
      return Dimension::angle;
    case Kind::mass:
      return Dimension::mass;
    case Kind::stiffness:
      return Dimension::stiffness;
    case Kind::angular_stiffness:
      return Dimension::angular_stiffness;
    default:
      return std::nullopt;
  }
}

std::optional<Dimension> dimension_of_components(Kind kind) {
  if (kind == Kind::lengths) return Dimension::length;
  if (kind == Kind::forces) return Dimension::force;
  return std::nullopt;
}

}  // namespace gapstrain::cases
