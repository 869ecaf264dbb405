// The rules of the trade held against one choice of screws after another on the same bone and plate.
#pragma once

#include "models/rules/rules_subject.h"

#include <memory>
#include <vector>

namespace gapstrain::models {

class LayoutReview {
 public:
  // `candidates`: screws that may be chosen. @pre check(construct) reports no error with any choice of them
  LayoutReview(const Construct& construct, std::vector<Screw> candidates);

  // Whether each rule is broken, in the order of rule_names, by the construct with these of the candidates.
  std::vector<bool> broken(const std::vector<int>& chosen);

 private:
  Construct construct_;  // with the screws asked about last
  std::vector<Screw> candidates_;
  std::shared_ptr<const RuleSite> site_;
  std::vector<SeatedScrew> seated_;  // the candidates
};

}  // namespace gapstrain::models
