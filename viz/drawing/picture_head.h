// What stands on top of every picture: whose it is, and a banner when its result fails, is not to be trusted or
// rests on estimates.
#pragma once

#include "viz/drawing/canvas.h"
#include "viz/drawing/picture_frame.h"

#include <string>
#include <vector>

namespace gapstrain::viz {

// The words carry the banner, not a colour: black on white in a heavy frame.
class PictureHead {
 public:
  explicit PictureHead(const PictureFrame& frame);

  double height() const;  // 0 with neither subject nor alarm
  void draw(Canvas& canvas, double top) const;

 private:
  std::string subject_;
  struct Alarm {
    std::string kind;  // up to the first colon
    std::vector<std::string> lines;
  };
  std::vector<Alarm> alarms_;
  double kinds_width_ = 0.0;
};

}  // namespace gapstrain::viz
