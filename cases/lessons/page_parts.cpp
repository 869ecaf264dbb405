#include "cases/lessons/page_parts.h"

namespace gapstrain::cases {

const std::vector<PagePart>& page_parts() {
  static const std::vector<PagePart> parts{
      {"picture", "the picture", "views"},           {"holes", "the plate's holes", "strip-frame"},
      {"change", "what the last change did", "now"}, {"loads", "the loads", "loads"},
      {"tissue", "what fills the gap", "tissue"},    {"side by side", "the table of both states", "kept"},
      {"margins", "the margins", "margins"},         {"gap", "strain round the gap", "gap"},
      {"plate", "stress along the plate", "plate"},  {"steps", "the steps of the operation", "steps"},
      {"rules", "the rules of the trade", "rules"},  {"figures", "all figures", "figures"}};
  return parts;
}

std::vector<std::string> names_of_page_parts() {
  std::vector<std::string> names;
  for (const auto& part : page_parts()) names.push_back(part.name);
  return names;
}

}  // namespace gapstrain::cases
