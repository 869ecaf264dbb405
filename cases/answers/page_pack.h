// What the core of a page is opened with: a case, and bodies made ready for it and for its variants.
#pragma once

#include "cases/answers/case_json.h"

#include <string>
#include <string_view>
#include <vector>

namespace gapstrain::cases {

struct PackedVariant {
  std::string label;          // "as entered", "plate.standoff = 2 mm"
  Json changes;               // of the case, by which it differs
  Json candidates;            // [[candidate]] tables that its bodies were made ready for
  std::string_view bodies{};  // an archive (models/assembly/bodies_archive.h); borrowed
};

struct PagePack {
  std::string file;                     // the case's
  Json entered;                         // the whole case, as tables
  std::string version, commit, date{};  // of the program that made the bodies
  std::vector<PackedVariant> variants;  // at least one
};

std::string write_pack(const PagePack& pack);

// The bodies point into `bytes`. @throw RequestError
PagePack read_pack(std::string_view bytes);

}  // namespace gapstrain::cases
