#include "cases/new_case/new_case_screen.h"

#include "cases/cautions.h"
#include "cases/text/columns.h"

#include <fmt/format.h>

#include <cmath>

namespace gapstrain::cases {

namespace {

constexpr std::size_t screen_width = 100;

std::string wrapped(const std::string& text, std::size_t indent = 2) {
  std::string lines;
  for (const auto& line : wrap(text, screen_width, indent)) lines += line + '\n';
  return lines;
}

// A name, a figure and what is to be said of it, in columns.
std::string row(const std::string& name, const std::string& figure, const std::string& said) {
  constexpr std::size_t start = 34;
  std::string lines = fmt::format("{} {:>10}  ", pad(name, start - 13), figure);
  const auto rest = wrap(said, screen_width - start, 0);
  for (std::size_t i = 0; i < rest.size(); ++i) lines += (i == 0 ? "" : std::string(start, ' ')) + rest[i] + '\n';
  return lines;
}

std::string size_row(const std::string& name, const models::BoneSize& size) {
  return row(name, fmt::format("{:.4g} mm", size.value.value()),
             size.guess ? fmt::format("ESTIMATE, {:.3g} to {:.3g} mm. {}",
                                      size.value.value() * (1.0 - size.guess->spread),
                                      size.value.value() * (1.0 + size.guess->spread), size.guess->measure)
                        : "measured");
}

std::string sizes_text(const NewRequest& request, const models::Draft& draft) {
  std::string text = size_row("Length", draft.sizes.length);
  if (draft.request.stations.empty())
    text += size_row("Mediolateral width", draft.sizes.width_mediolateral) +
            size_row("Craniocaudal width", draft.sizes.width_craniocaudal) +
            size_row("Cortex", draft.sizes.cortex);
  else
    text += row("Stations", fmt::format("{}", draft.request.stations.size()), "measured");
  if (request.magnification)
    text += row("Magnification", fmt::format("{:.1f} %", 100.0 * *request.magnification),
                "all measured lengths are divided by it");
  return text;
}

std::string plate_line(const models::Draft& draft) {
  const models::StartingPlate& plate = draft.plate;
  return wrapped(fmt::format(
      "Plate, generic: {} holes, {:.4g} x {:.3g} x {:.2g} mm; screws {} in holes {} and {}{}.", plate.holes,
      plate.length.value(), plate.width.value(), plate.thickness.value(), plate.screw_size.designation,
      fmt::join(plate.proximal.rbegin(), plate.proximal.rend(), ", "), fmt::join(plate.distal, ", "),
      plate.compression_hole > 0 ? fmt::format("; hole {} presses", plate.compression_hole) : ""));
}

std::string loads_table(const models::Draft& draft) {
  std::string text =
      "Load      axial N  bending N m  torsion N m  a day  (middle of published ranges; sources in the file)\n";
  for (const auto& gait : draft.loads) {
    const models::LoadCase& load = gait.load;
    text += fmt::format("{} {:>6.0f} {:>12.2f} {:>12.2f} {:>6.0f}\n", pad(load.name, 10),
                        load.axial_compression.value(),
                        std::abs((load.axial_compression * load.ball_offset_z).value()) / 1000.0,
                        load.torsion.value() / 1000.0, *load.cycles_per_day);
  }
  return text;
}

std::string strain_text(const models::IntactStrain& trot) {
  const models::PublishedRange& range = models::published_trot_strain();
  const bool inside = trot.principal >= range.low && trot.principal <= range.high;
  const char* place = inside ? "within" : trot.principal < range.low ? "BELOW" : "ABOVE";
  return wrapped(
      fmt::format("The intact bone at the trot: {:.0f} microstrain, {} the published {:.0f} to {:.0f} ({}).{}",
                  1e6 * trot.principal, place, 1e6 * range.low, 1e6 * range.high, range.source,
                  inside ? "" : " Sizes or loads may be off: measure the widths and the cortex first."));
}

}  // namespace

std::string new_case_screen(const NewRequest& request, const models::Draft& draft,
                            const models::IntactStrain& trot, const std::vector<std::string>& found,
                            const std::string& file) {
  std::string text;
  for (const auto& paragraph : found) text += wrapped(paragraph);
  text += "\n" + request.name + "\n\n" + sizes_text(request, draft) + "\n" + plate_line(draft) +
          fmt::format("Union expected after {:.0f} to {:.0f} weeks.\n", draft.healing.weeks_from,
                      draft.healing.weeks_to) +
          "\n" + loads_table(draft) + "\n" + strain_text(trot) + "\n";
  for (const auto& caution : draft.cautions) text += wrapped("- " + caution);
  text += "\n";
  for (const auto caution : cautions) text += wrapped(std::string(caution));
  return text + fmt::format("Written: {}\nNext: gapstrain analyse {}\n", file, file);
}

}  // namespace gapstrain::cases
