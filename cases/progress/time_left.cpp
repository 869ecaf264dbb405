#include "cases/progress/time_left.h"

#include <algorithm>
#include <string_view>

namespace gapstrain::cases {

namespace {

constexpr double trust_in_plan = 1.0;  // s: as much as this weighs the plan's own pace against what has passed
constexpr double overrun = 0.2;        // of its time so far, what a stage that is late is taken to need still

}  // namespace

void TimeLeft::begin(const std::string& stage, double now) {
  const auto is_told = [&](const Stage& planned) { return std::string_view(stage).starts_with(planned.name); };
  if (under_way_ && is_told(plan_[*under_way_])) return;
  const auto from = plan_.begin() + static_cast<std::ptrdiff_t>(under_way_ ? *under_way_ + 1 : 0);
  const auto next = std::find_if(from, plan_.end(), is_told);
  if (next == plan_.end()) return;
  if (under_way_ && share_ == 0.0) {
    planned_ += plan_[*under_way_].seconds;
    passed_ += now - begun_;
  }
  under_way_ = static_cast<std::size_t>(next - plan_.begin());
  begun_ = now;
  share_ = 0.0;
}

void TimeLeft::reach(double share, double now) {
  share_ = std::clamp(share, 0.0, 1.0);
  share_at_ = now;
}

double TimeLeft::pace(double now) const {
  const double so_far = (passed_ + trust_in_plan) / (planned_ + trust_in_plan);
  if (share_ > 0.0) return so_far;
  const double planned = plan_[*under_way_].seconds;  // a stage that is late says that the next will be
  return std::max(so_far, (passed_ + now - begun_ + trust_in_plan) / (planned_ + planned + trust_in_plan));
}

double TimeLeft::left_of_stage(double now, double pace) const {
  if (share_ > 0.0) return std::max(0.0, (share_at_ - begun_) * (1.0 - share_) / share_ - (now - share_at_));
  const double passed = now - begun_, expected = plan_[*under_way_].seconds * pace;
  return std::max(expected - passed, overrun * passed);
}

std::optional<double> TimeLeft::at(double now) const {
  if (!under_way_) return {};
  const double pace_now = pace(now);
  double left = left_of_stage(now, pace_now);
  for (std::size_t later = *under_way_ + 1; later < plan_.size(); ++later) left += plan_[later].seconds * pace_now;
  return left;
}

}  // namespace gapstrain::cases
