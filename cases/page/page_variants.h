// A case and the variants of it that a page is made ready for.
#pragma once

#include "cases/answers/case_json.h"
#include "cases/reader/read_case.h"
#include "models/assembly/prepared_bodies.h"

#include <memory>
#include <string>
#include <vector>

namespace gapstrain::cases {

struct PageVariant {
  std::string label;  // "as entered", "plate.standoff = 2 mm"
  Json changes;       // of the case
  models::Construct construct;
  std::vector<models::Screw> candidates;
  std::shared_ptr<const models::PreparedBodies> prepared{};  // null: they are still to be made
};

// A state of a page's case.
struct PageState {
  Json changes = Json::object();  // of the variant's case
  std::size_t variant = 0;
  std::size_t loads = 0;  // how many it has
};

struct PageCase {
  CaseFile entered;
  Json tables;                        // the whole case without [[candidate]]
  std::vector<PageVariant> variants;  // the first one as entered
  bool are_side_by_side = false;      // all variants are shown when the page opens
  Json candidates;                    // the case's [[candidate]] tables; null where it has none
  PageState first;                    // that the page opens with
};

// The screws that a page's bodies of this case are made ready for.
std::vector<models::Screw> screws_for_page(const CaseFile& file);

// `vary`: "plate.standoff=1mm,2mm" and such, one variant a value. @throw CaseError
PageCase read_page_case(const std::string& file, const std::vector<std::string>& vary);

// A case on the bodies that a run has solved it on, for a page with the same figures.
PageCase page_case_on(const CaseFile& file, std::shared_ptr<const models::PreparedBodies> prepared);

// Of changed tables. `tables`: the whole case.
PageCase page_case_on(const CaseFile& file, const Table& tables,
                      std::shared_ptr<const models::PreparedBodies> prepared);

// Several cases as variants of the first one, by their names, to be shown side by side. @pre at least one
PageCase compared_page(const std::vector<CaseFile>& files,
                       const std::vector<std::shared_ptr<const models::PreparedBodies>>& prepared);

}  // namespace gapstrain::cases
