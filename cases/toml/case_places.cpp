#include "cases/toml/case_places.h"

namespace gapstrain::cases {

namespace {

// "screw[2].hole" -> "screw[2]" -> "screw" -> "".
std::string_view enclosing(std::string_view path) {
  const auto cut = path.find_last_of(".[");
  return cut == std::string_view::npos ? std::string_view{} : path.substr(0, cut);
}

}  // namespace

void CasePlaces::add(const std::string& path, Place place) { places_[path] = place; }

void CasePlaces::alias(const std::string& construct_path, const std::string& file_path) {
  if (construct_path != file_path) aliases_[construct_path] = file_path;
}

void CasePlaces::stand_in(const std::string& construct_path, const std::string& file_path) {
  stand_ins_[construct_path] = file_path;
}

CasePlaces::Located CasePlaces::find(std::string_view path) const {
  std::string written(path);
  // The longest aliased beginning counts, and only once: construct and file may use the same path for different
  // parts.
  for (auto part = path; !part.empty(); part = enclosing(part)) {
    const auto alias = aliases_.find(part);
    if (alias == aliases_.end()) continue;
    written = alias->second + std::string(path.substr(part.size()));
    break;
  }
  const bool is_written = places_.contains(written) && !stand_ins_.contains(path);
  for (auto part = path; !is_written && !part.empty(); part = enclosing(part)) {
    const auto other = stand_ins_.find(part);
    if (other == stand_ins_.end()) continue;
    written = other->second;
    break;
  }
  for (std::string_view part = written; !part.empty(); part = enclosing(part)) {
    const auto place = places_.find(part);
    if (place != places_.end()) return {place->first, place->second};
  }
  return {std::string(path), Place{}};
}

}  // namespace gapstrain::cases
