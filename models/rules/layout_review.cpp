#include "models/rules/layout_review.h"

#include <utility>

namespace gapstrain::models {

LayoutReview::LayoutReview(const Construct& construct, std::vector<Screw> candidates)
    : construct_(construct),
      candidates_(std::move(candidates)),
      site_(std::make_shared<const RuleSite>(construct)) {
  for (const Screw& screw : candidates_) seated_.push_back(seat(screw, construct_, *site_));
}

std::vector<bool> LayoutReview::broken(const std::vector<int>& chosen) {
  construct_.screws.resize(chosen.size());
  std::vector<SeatedScrew> screws;
  for (std::size_t k = 0; k < chosen.size(); ++k) {
    const auto index = static_cast<std::size_t>(chosen[k]);
    construct_.screws[k] = candidates_[index];
    screws.push_back(seated_[index]);
  }
  const RuleSubject subject(construct_, site_, std::move(screws));
  std::vector<bool> broken;
  for (const Rule& rule : all_rules()) broken.push_back(rule.judge(subject).verdict == Verdict::broken);
  return broken;
}

}  // namespace gapstrain::models
