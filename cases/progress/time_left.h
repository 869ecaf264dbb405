// How long work of several stages will still take, from what its stages are expected to take.
#pragma once

#include <optional>
#include <string>
#include <vector>

namespace gapstrain::cases {

struct Stage {
  std::string name;
  double seconds = 0.0;  // expected on the machine of DEVELOPERS.md; only the shares matter once some have passed
};

// Times are seconds since the start. Knows no clock.
class TimeLeft {
 public:
  explicit TimeLeft(std::vector<Stage> plan) : plan_(std::move(plan)) {}

  // The next stage of the plan whose name the given one begins with. One that is not in the plan, or is under way,
  // changes nothing.
  void begin(const std::string& stage, double now);

  // How much of the stage under way is done, from 0 to 1: from then on its own rate counts, not the plan's.
  void reach(double share, double now);

  // Never negative; nothing as long as no stage of the plan has begun.
  std::optional<double> at(double now) const;

 private:
  double pace(double now) const;
  double left_of_stage(double now, double pace) const;

  std::vector<Stage> plan_;
  std::optional<std::size_t> under_way_;
  double begun_ = 0.0, share_ = 0.0, share_at_ = 0.0;
  double planned_ = 0.0, passed_ = 0.0;  // of the stages that are over and had no rate of their own
};

}  // namespace gapstrain::cases
