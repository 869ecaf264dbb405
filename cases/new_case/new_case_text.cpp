#include "cases/new_case/new_case_text.h"

#include "cases/cautions.h"
#include "cases/text/columns.h"
#include "models/parts/words.h"

#include <fmt/format.h>

#include <algorithm>
#include <cmath>

namespace gapstrain::cases {

namespace {

constexpr std::size_t text_columns = 115;

std::string comment(const std::string& text, std::size_t indent = 0) {
  std::string lines;
  for (const auto& line : wrap(text, text_columns - 2, indent)) lines += "# " + line + '\n';
  return lines;
}

std::string item(const std::string& text) { return comment("- " + text, 2); }

std::string quoted(const std::string& text) {
  std::string result = "\"";
  for (const char c : text) {
    if (c == '"' || c == '\\') result += '\\';
    result += c;
  }
  return result + '"';
}

std::string key(std::string_view name, const std::string& value) { return fmt::format("{} = {}\n", name, value); }
// Rounding to a micrometre drops what binary fractions leave at the end.
std::string in_mm(models::Length value) {
  return fmt::format("\"{:.6g} mm\"", std::round(1000.0 * value.value()) / 1000.0 + 0.0);
}

std::string told(const models::BoneSize& size, const NewRequest& request, const std::string& name) {
  if (size.guess)
    return comment(fmt::format("ESTIMATE, {} {:.4g} mm within {:.0f} %: {}. {}", name, size.value.value(),
                               100.0 * size.guess->spread, size.guess->source, size.guess->measure));
  return comment(request.magnification
                     ? fmt::format("Measured {}: {:.4g} mm in the image over a magnification of {:.3f}.", name,
                                   size.value.value() * *request.magnification, *request.magnification)
                     : fmt::format("Measured {}, without a marker to correct it by.", name));
}

std::string head(const NewRequest& request, const models::Draft& draft) {
  std::string text = comment(
      "Written by gapstrain new: a case to begin from, not a plan. Read it through, put measured "
      "figures in the place of estimated ones, and the implants at hand in the place of the generic "
      "ones below.");
  for (const auto caution : cautions) text += comment(std::string(caution));
  text += "#\n" + comment("What this case does not know:");
  for (const auto& caution : draft.cautions) text += item(caution);
  text += key("name", quoted(request.name));
  text += key("body_mass", fmt::format("\"{:.6g} kg\"", draft.request.patient.mass.value()));
  std::vector<std::string> estimated;
  for (const auto estimate : draft.estimated) estimated.push_back(quoted(std::string(models::key_of(estimate))));
  return text + comment("What was not measured, or is not the real one; take out what has been put right.") +
         key("estimated", fmt::format("[{}]", fmt::join(estimated, ", ")));
}

std::string bone_text(const NewRequest& request, const models::Draft& draft) {
  const auto& sizes = draft.sizes;
  std::string text = "\n[bone]\n";
  text += key("name", quoted(draft.bone.name));
  if (!request.side.empty()) text += key("side", quoted(request.side));
  text += told(sizes.length, request, "length");
  text += key("length", in_mm(draft.bone.length));
  text += key("material", quoted(draft.bone.cortex.name));
  if (draft.request.stations.empty()) {
    text +=
        "\n" + comment(
                   "One section stands for the whole shaft. More of these tables, by rising position, let it "
                   "taper; bow_cranial and bow_lateral are its offsets from the line between the bone's ends.");
    text += told(sizes.width_mediolateral, request, "mediolateral width");
    text += told(sizes.width_craniocaudal, request, "craniocaudal width");
    text += told(sizes.cortex, request, "cortex");
  } else {
    text += "\n" + comment(request.magnification
                               ? fmt::format("Measured sections, corrected by a magnification of {:.3f}; add "
                                             "bow_cranial and bow_lateral.",
                                             *request.magnification)
                               : "Measured sections, without a marker to correct them by; add bow_cranial and "
                                 "bow_lateral.");
  }
  for (const auto& station : draft.bone.stations) {
    text += &station == &draft.bone.stations.front() ? "[[bone.station]]\n" : "\n[[bone.station]]\n";
    text += key("position", in_mm(station.position)) +
            key("width_mediolateral", in_mm(station.width_mediolateral)) +
            key("width_craniocaudal", in_mm(station.width_craniocaudal)) + key("cortex", in_mm(station.cortex));
  }
  return text;
}

std::string fracture_text(const NewRequest& request, const models::Draft& draft) {
  const models::Draft& d = draft;
  const bool simple = d.fracture.pattern == models::FracturePattern::simple;
  const std::string corrected = request.magnification ? "Measured, corrected for magnification." : "Measured.";
  std::string text = "\n[fracture]\n";
  text += comment(d.request.fracture_position ? corrected
                                              : "ASSUMED, the bone's middle: measure it from the proximal end.");
  text += key("position", in_mm(d.fracture.position));
  if (d.request.gap)
    text += comment(corrected);
  else
    text += comment(
        d.request.treatment == models::Treatment::compression
            ? "ASSUMED: what is left between the fragments once they are reduced by hand."
            : "ASSUMED: the most that a bridged simple fracture should be left with (healing is poorer beyond "
              "2 mm, Claes et al. 1997, J Orthop Res 15:577).");
  text += key("gap", in_mm(d.fracture.gap));
  text += key("obliquity", fmt::format("\"{:.4g} deg\"", (d.fracture.obliquity / models::degree).value()));
  if (d.fracture.obliquity > 0.0 * models::degree)
    text += comment(
                "ASSUMED: the cut reaches furthest distally on the plate's side; round the bone towards +y, see "
                "gapstrain keys.") +
            key("direction", "\"0 deg\"");
  return text + key("pattern", simple ? "\"simple\"" : "\"comminuted\"");
}

std::string plate_text(const models::StartingPlate& plate) {
  std::string text = "\n" + comment("A generic plate, sizes invented or from memory: enter the one at hand.");
  for (const auto& reason : plate.reasons) text += item(reason);
  text += "[plate]\n";
  text += key("length", in_mm(plate.length)) + key("width", in_mm(plate.width)) +
          key("thickness", in_mm(plate.thickness)) + key("holes", fmt::format("{}", plate.holes)) +
          key("pitch", in_mm(plate.pitch));
  if (plate.middle_spacing > plate.pitch) text += key("middle_spacing", in_mm(plate.middle_spacing));
  text += key("hole_diameter", in_mm(plate.hole_diameter));
  if (plate.slot_length > plate.hole_diameter) text += key("slot_length", in_mm(plate.slot_length));
  return text + key("material", quoted(plate.material.name)) +
         key("aspect", quoted(models::name_of(plate.aspect))) + key("proximal_end", in_mm(plate.proximal_end)) +
         key("standoff", in_mm(plate.standoff)) +
         (plate.prebend > 0.0 * models::mm
              ? comment(
                    "So that the far cortex is pressed too: 1 to 2 mm over the fracture (surgical textbooks, from "
                    "memory). It may bend a small plate for good; analyse names a sufficient prebend.") +
                    key("prebend", in_mm(plate.prebend))
              : "");
}

std::string screw_table(const std::string& holes) { return "\n[[screw]]\n" + holes; }

std::string hole_list(const std::vector<int>& holes) { return fmt::format("[{}]", fmt::join(holes, ", ")); }

std::vector<int> rising(std::vector<int> holes) {
  std::sort(holes.begin(), holes.end());
  return holes;
}

// By designation where there is one; else by three lengths, which stand with each screw.
std::string own_size(const models::ScrewSize& size) {
  if (models::find_screw_size(size.designation)) return {};
  return key("thread_diameter", in_mm(size.thread_diameter)) + key("core_diameter", in_mm(size.core_diameter)) +
         key("pitch", in_mm(size.pitch));
}

std::string bridging_screws(const models::StartingPlate& plate) {
  const models::ScrewSize& size = plate.screw_size;
  const std::string own = own_size(size);
  return "\n" + (own.empty() ? "" : item(fmt::format("The screw: {}, {}.", size.designation, size.source))) +
         "[screws]\nkind = \"locking\"\n" + (own.empty() ? key("size", quoted(size.designation)) : "") +
         screw_table(key("holes", hole_list(rising(plate.proximal))) + own) +
         screw_table(key("holes", hole_list(rising(plate.distal))) + own);
}

// A neutral screw beside the fracture fixes the plate to the proximal fragment, then the compression screw beside
// it on the other side presses; whatever holds the sliding fragment before that would block it.
std::string compressing_screws(const models::StartingPlate& plate) {
  std::vector<int> neutral = plate.proximal;
  for (const int hole : plate.distal)
    if (hole != plate.compression_hole) neutral.push_back(hole);
  std::string text =
      "\n[screws]\n" + comment("Tightened to half the pull-out strength of their cortices.") +
      "kind = \"cortical\"\n" + key("size", quoted(plate.screw_size.designation)) +
      screw_table(key("holes", hole_list(rising(neutral)))) +
      screw_table(key("hole", fmt::format("{}", plate.compression_hole)) + "kind = \"compression\"\n" +
                  comment("As far as the gap is open and 0.05 mm more: in the calculation nothing else "
                          "gives way, and the full travel would bend the screw.") +
                  key("slide", in_mm(plate.slide)));
  std::vector<int> order{plate.proximal.front(), plate.proximal.back(), plate.compression_hole,
                         plate.distal.back()};
  for (const auto* holes : {&plate.proximal, &plate.distal})
    for (const int hole : *holes)
      if (std::find(order.begin(), order.end(), hole) == order.end()) order.push_back(hole);
  std::vector<int> once;  // with two screws in a fragment, ends and insides are the same
  text +=
      "\n" + comment(
                 "The proximal fragment first, then the compression screw, which slides the distal one towards "
                 "it, then the rest.");
  for (const int hole : order) {
    if (std::find(once.begin(), once.end(), hole) != once.end()) continue;
    text += (once.empty() ? "" : "\n") + fmt::format("[[step]]\nscrew = \"S{}\"\n", hole);
    once.push_back(hole);
  }
  return text;
}

std::string offset_key(const char* name, models::Length offset) {
  return offset == 0.0 * models::mm ? "" : key(name, fmt::format("\"{:.3g} mm\"", offset.value()));
}

std::string band_keys(const models::LoadCase& load) {
  std::string text;
  for (const models::LoadPart part : models::load_parts)
    if (const models::PartBand& band = models::band_of(load, part); models::is_open(band))
      text += key(models::key_of_band(part), fmt::format("[{:.3g}, {:.3g}]", band.low, band.high));
  return text;
}

std::string load_sections(const models::Draft& draft) {
  std::string text =
      "\n" +
      comment(
          "Loads of the limb: middles of published or, where it says so, of assumed bands. All parts are taken "
          "to peak at once. The race takes each part's size from its band, over the one entered, for all loads "
          "alike. A load beyond them (a jump, a fall, a stamp) is not among them. Bending holds the "
          "bow of the bone already: take a bow that you enter off the ball offsets.");
  for (const auto& gait : draft.loads) {
    const auto& said = draft.loads.front().sources;  // with the first load; of the others only what differs
    if (&gait != &draft.loads.front()) text += "\n";
    for (const auto& source : gait.sources)
      if (&gait == &draft.loads.front() || std::find(said.begin(), said.end(), source) == said.end())
        text += item(source);
    const models::LoadCase& load = gait.load;
    text += "[[load]]\n" + key("name", quoted(load.name)) +
            key("axial", fmt::format("\"{:.4g} N\"", load.axial_compression.value())) +
            offset_key("ball_offset_y", load.ball_offset_y) + offset_key("ball_offset_z", load.ball_offset_z) +
            key("torsion", fmt::format("\"{:.3g} N m\"", load.torsion.value() / 1000.0)) +
            key("cycles_per_day", fmt::format("{:.0f}", *load.cycles_per_day)) +
            key("spread", fmt::format("{:.2f}", load.spread)) + band_keys(load);
  }
  return text;
}

// For whoever is sure of it: nothing of it is taken.
std::string protection_text(const models::UnionTime& healing) {
  const auto time = [](double until_week, double share) {
    return fmt::format("# [[healing.protection]]\n# until_week = {:.2g}\n# share = {}\n# without = [\"trot\"]\n",
                       until_week, share);
  };
  return comment(
             "Protected walking is not counted on: operated dogs bore as much after a week as before (see the "
             "cycles). Where it is kept to, take the marks off: a cage first, then short walks on a leash (common "
             "practice, no source; weeks and shares are a choice of this program).") +
         time(std::min(2.0, 0.25 * healing.weeks_from), 0.1) + time(std::min(6.0, 0.5 * healing.weeks_from), 0.5);
}

std::string healing_text(const models::Draft& draft) {
  std::string source = draft.healing.source;
  source.front() = 'T';
  const double thread = draft.plate.hole_diameter.value();
  return "\n" +
         comment(source + (draft.request.age_in_months
                               ? "."
                               : ". ASSUMED, for the age was not given: --age \"7 months\" puts in its own.")) +
         fmt::format("[healing]\nweeks_from = {:.0f}\nweeks_to = {:.0f}\n", draft.healing.weeks_from,
                     draft.healing.weeks_to) +
         protection_text(draft.healing) + "\n" + comment("Common practice, no source.") +
         fmt::format("[stock]\nscrew_step = \"{} mm\"\n", thread < 2.7 ? 1 : 2);
}

}  // namespace

std::string new_case_text(const NewRequest& request, const models::Draft& draft,
                          const std::vector<std::string>& found) {
  std::string text = comment("What its own analysis found as it was written; gapstrain analyse finds it anew:");
  for (const auto& paragraph : found) text += item(paragraph);
  return text + "#\n" + new_case_text(request, draft);
}

std::string new_case_text(const NewRequest& request, const models::Draft& draft) {
  const bool compress = draft.plate.compression_hole > 0;
  return head(request, draft) + bone_text(request, draft) + fracture_text(request, draft) +
         plate_text(draft.plate) + (compress ? compressing_screws(draft.plate) : bridging_screws(draft.plate)) +
         load_sections(draft) + healing_text(draft);
}

}  // namespace gapstrain::cases
