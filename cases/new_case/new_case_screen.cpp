#include "cases/new_case/new_case_screen.h"

#include "cases/cautions.h"
#include "cases/text/columns.h"

#include <fmt/format.h>
#include <fmt/ranges.h>

#include <algorithm>
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

// What was tried, figures first.
std::string sizing_text(const SizedDraft& sized) {
  if (!sized.sizing) return wrapped("A pressed fracture's plate follows simple rules: no others were tried.");
  std::string text;
  for (const auto& line : sizing_table(sized)) text += line + '\n';
  return sized.sizing->taken ? text + wrapped(sizing_reason(*sized.sizing)) : text;
}

std::string loads_table(const models::Draft& draft) {
  std::string text =
      "Load      axial N  bending N m  torsion N m  a day  (middle of their bands; sources in the file)\n";
  for (const auto& gait : draft.loads) {
    const models::LoadCase& load = gait.load;
    text += fmt::format("{} {:>6.0f} {:>12.2f} {:>12.2f} {:>6.0f}\n", pad(load.name, 10),
                        load.axial_compression.value(), gait.bending.middle / 1000.0,
                        load.torsion.value() / 1000.0, *load.cycles_per_day);
  }
  return text;
}

double shown(const models::StrainCheck& check, double value) {
  return models::is_angle(check.measured.kind) ? value : 1e6 * value;
}

std::string check_line(const models::StrainCheck& check) {
  const models::MeasuredStrain& measured = check.measured;
  const models::Against against = check.against();
  const char* const place = against == models::Against::inside  ? "inside"
                            : against == models::Against::below ? "BELOW"
                                                                : "ABOVE";
  return wrapped(fmt::format("{}, {}{}: found {:.0f}, published {:.0f} to {:.0f}{}: {}",
                             models::name_of(measured.kind), models::name_of(measured.activity),
                             measured.paw_force && !models::is_angle(measured.kind)
                                 ? fmt::format(" scaled to {} of the weight", *measured.paw_force)
                                 : "",
                             shown(check, check.found), shown(check, measured.low), shown(check, measured.high),
                             models::is_angle(measured.kind) ? " degrees" : "", place));
}

std::string strain_row(std::string_view gait, const models::IntactStrain& strain) {
  const auto extreme = [](const models::IntactStrain::Extreme& of) {
    return fmt::format("{:>6.0f} at {:>2.0f} deg", 1e6 * of.principal, (of.to_shaft / models::degree).value());
  };
  return fmt::format("{} {}  {} {:>7.0f}\n", pad(gait, 12), extreme(strain.tension), extreme(strain.compression),
                     1e6 * strain.shear);
}

// What lies outside comes first.
std::string strain_text(const NewRequest& request, const IntactFindings& intact) {
  const models::Patient& patient = request.draft.patient;
  std::string outside, inside;
  std::vector<std::string_view> sources;  // each once
  for (const auto& check : intact.checks) {
    (check.against() == models::Against::inside ? inside : outside) += check_line(check);
    if (std::find(sources.begin(), sources.end(), check.measured.source) == sources.end())
      sources.push_back(check.measured.source);
  }
  std::string text;
  if (!outside.empty())
    text += wrapped(
        "THE INTACT BONE IS NOT STRAINED AS MEASURED under these loads: they, sizes or the stiffness of bone may "
        "be "
        "off. Measure the widths and the cortex first.");
  text += outside +
          "Intact bone        tension       compression   shear  (largest, microstrain; angle to the shaft)\n" +
          strain_row("walk", intact.walk) + strain_row("trot", intact.trot) + inside;
  if (intact.checks.empty())
    return text +
           wrapped(patient.species == models::Species::cat
                       ? "No strain of a cat's bone was found published: nothing to hold it against."
                       : fmt::format("No strain of a dog's {} was found published: nothing to hold it against.",
                                     models::name_of(patient.bone)));
  return text + wrapped(fmt::format("Published: {}.", fmt::join(sources, "; ")));
}

}  // namespace

std::string new_case_screen(const NewRequest& request, const SizedDraft& sized, const IntactFindings& intact,
                            const std::vector<std::string>& found, const std::string& file) {
  const models::Draft& draft = sized.draft;
  std::string text;
  for (const auto& paragraph : found) text += wrapped(paragraph);
  text += "\n" + request.name + "\n\n" + sizes_text(request, draft) + "\n" + plate_line(draft) +
          sizing_text(sized) +
          fmt::format("Union expected after {:.0f} to {:.0f} weeks.\n", draft.healing.weeks_from,
                      draft.healing.weeks_to) +
          "\n" + loads_table(draft) + "\n" + strain_text(request, intact) + "\n";
  for (const auto& caution : draft.cautions) text += wrapped("- " + caution);
  text += "\n";
  for (const auto caution : cautions) text += wrapped(std::string(caution));
  return text + fmt::format("Written: {}\nNext: gapstrain analyse {}\n", file, file);
}

}  // namespace gapstrain::cases
