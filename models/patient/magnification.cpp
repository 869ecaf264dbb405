#include "models/patient/magnification.h"

#include "models/patient/patient.h"

#include <fmt/format.h>

#include <cmath>
#include <numbers>

namespace gapstrain::models {

Magnification magnification(Length marker_true, Length marker_seen) {
  constexpr double most = 1.5;
  constexpr double reading = 0.2;  // mm, of one edge
  constexpr double out_of_plane = 20.0 / 1000.0;
  const double real = marker_true.value(), seen = marker_seen.value();
  if (!(real > 0.0 && std::isfinite(real) && seen > 0.0 && std::isfinite(seen)))
    throw PatientError(
        Subject::marker,
        fmt::format(
            "The marker is {:.4g} mm long and seen as {:.4g} mm; both must be above 0 mm. Measure the marker "
            "with a caliper, and its image on the radiograph.",
            real, seen));
  if (seen < real)
    throw PatientError(
        Subject::marker,
        fmt::format(
            "The marker of {:.4g} mm is seen as {:.4g} mm, smaller than it is; a radiograph magnifies. Exchange "
            "the two if they were swapped, measure the marker's image again, or leave the marker out if the "
            "image is calibrated already.",
            real, seen));
  if (seen > most * real)
    throw PatientError(
        Subject::marker,
        fmt::format("The marker of {:.4g} mm is seen as {:.4g} mm, a magnification of {:.0f} %; allowed is up to "
                    "{:.0f} %. Measure the marker and its image again, in the same unit.",
                    real, seen, 100.0 * seen / real, 100.0 * most));
  return {seen / real, std::hypot(reading * std::numbers::sqrt2 / seen, out_of_plane)};
}

Length true_length(Length seen, const Magnification& magnification) { return seen / magnification.factor; }

}  // namespace gapstrain::models
