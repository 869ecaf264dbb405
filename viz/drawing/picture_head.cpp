#include "viz/drawing/picture_head.h"

#include "viz/drawing/ruler.h"
#include "viz/drawing/sheet.h"
#include "viz/drawing/text_fit.h"

#include <fmt/format.h>

#include <algorithm>

namespace gapstrain::viz {

namespace {

constexpr std::size_t most_alarms = 8, most_lines = 2;  // lines of each
constexpr double above_subject = 28.0, subject_height = 40.0;
constexpr double above_banner = 16.0, frame_width = 8.0, padding = 20.0, line_height = 42.0, after_kind = 18.0;
constexpr double text_width = picture_width - 2.0 * sheet::margin;
constexpr double inner_width = text_width - 2.0 * (frame_width + padding);
constexpr TextStyle subject_style{.upright = Upright::top, .bold = true};
constexpr TextStyle kind_style{.upright = Upright::top, .bold = true}, text_style{.upright = Upright::top};

}  // namespace

PictureHead::PictureHead(const PictureFrame& frame) {
  Ruler measure;
  Canvas& ruler = measure.canvas();
  subject_ = shortened(ruler, frame.subject,
                       fitted(ruler, frame.subject, subject_style, text_width, letter::small), text_width);
  const std::size_t shown = frame.alarms.size() > most_alarms ? most_alarms - 1 : frame.alarms.size();
  for (std::size_t a = 0; a < shown; ++a) {
    const std::string& alarm = frame.alarms[a];
    const auto colon = alarm.find(": ");
    Alarm own{colon == std::string::npos ? "" : alarm.substr(0, colon + 1), {}};
    const std::string text = colon == std::string::npos ? alarm : alarm.substr(colon + 2);
    kinds_width_ =
        std::max(kinds_width_, own.kind.empty() ? 0.0 : ruler.text_size(own.kind, kind_style).x() + after_kind);
    own.lines.push_back(text);
    alarms_.push_back(std::move(own));
  }
  for (auto& alarm : alarms_)
    alarm.lines = wrapped(ruler, alarm.lines.front(), text_style, inner_width - kinds_width_, most_lines);
  if (shown < frame.alarms.size())
    alarms_.push_back({"", {fmt::format("\u2026 and {} more", frame.alarms.size() - shown)}});
}

double PictureHead::height() const {
  double height = subject_.empty() ? 0.0 : above_subject + subject_height;
  if (alarms_.empty()) return height;
  std::size_t lines = 0;
  for (const auto& alarm : alarms_) lines += alarm.lines.size();
  return height + above_banner + 2.0 * (frame_width + padding) + line_height * static_cast<double>(lines);
}

void PictureHead::draw(Canvas& canvas, double top) const {
  double y = top;
  if (!subject_.empty()) {
    y -= above_subject;
    canvas.text({sheet::margin, y}, subject_, fitted(canvas, subject_, subject_style, text_width, letter::small));
    y -= subject_height;
  }
  if (alarms_.empty()) return;
  y -= above_banner;
  const double half = 0.5 * frame_width;
  canvas.frame({sheet::margin + half, top - height() + half, picture_width - sheet::margin - half, y - half},
               {.width = frame_width});
  y -= frame_width + padding;
  const double left = sheet::margin + frame_width + padding;
  for (const auto& alarm : alarms_) {
    canvas.text({left, y}, alarm.kind, kind_style);
    for (const auto& line : alarm.lines) {
      canvas.text({left + kinds_width_, y}, line, text_style);
      y -= line_height;
    }
  }
}

}  // namespace gapstrain::viz
