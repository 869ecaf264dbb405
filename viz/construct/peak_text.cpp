#include "viz/construct/peak_text.h"

#include <fmt/format.h>

namespace gapstrain::viz {

std::string face_text(models::PlateFace face) {
  switch (face) {
    case models::PlateFace::top:
      return "top face";
    case models::PlateFace::bottom:
      return "bottom face";
    case models::PlateFace::middle:
      break;
  }
  return "mid-thickness";
}

std::string peak_text(const models::PlatePeak& peak) {
  const std::string place = peak.hole ? fmt::format("hole {}", *peak.hole)
                                      : fmt::format("{:.1f} mm along the plate", peak.along.value());
  // Three figures, as many as the model can carry.
  const double stress = peak.von_mises.value();
  const int decimals = stress >= 100.0 ? 0 : stress >= 10.0 ? 1 : 2;
  return fmt::format("{:.{}f} MPa, {}, {}", stress, decimals, place, face_text(peak.face));
}

}  // namespace gapstrain::viz
