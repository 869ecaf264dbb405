// A case and the variants of it that a page is made ready for.
#pragma once

#include "cases/answers/case_json.h"
#include "cases/reader/read_case.h"

#include <string>
#include <vector>

namespace gapstrain::cases {

struct PageVariant {
  std::string label;  // "as entered", "plate.standoff = 2 mm"
  Json changes;       // of the case
  models::Construct construct;
  std::vector<models::Screw> candidates;
};

struct PageCase {
  CaseFile entered;
  Json tables;                        // the whole case without [[candidate]]
  std::vector<PageVariant> variants;  // the first one as entered
};

// `vary`: "plate.standoff=1mm,2mm" and such, one variant a value. @throw CaseError
PageCase read_page_case(const std::string& file, const std::vector<std::string>& vary);

}  // namespace gapstrain::cases
