#include "cases/reader/key.h"

#include <fmt/format.h>

namespace gapstrain::cases {

bool is_table(const Key& key) { return key.kind == Kind::table || key.kind == Kind::tables; }

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
    default:
      return std::nullopt;
  }
}

}  // namespace gapstrain::cases
