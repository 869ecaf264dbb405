#include "cases/reader/read_parts.h"

#include <fmt/format.h>

#include <algorithm>

namespace gapstrain::cases {

namespace {

models::Metal read_metal(const Section& plate) {
  const Section own = plate.section("metal");
  if (plate.has("material") && plate.has("metal"))
    plate.complain("material", "given together with [plate.metal]; remove one of them");
  if (own.present()) {
    models::Metal metal{"own", own.get<models::Stress>("youngs_modulus"), own.get<double>("poissons_ratio"),
                        own.find<models::Stress>("yield_strength"), own.text("source").value_or("")};
    metal.ultimate_strength = own.find<models::Stress>("ultimate_strength");
    if (own.has("ultimate_strength") != own.has("fatigue_strength"))
      own.complain(own.has("ultimate_strength") ? "ultimate_strength" : "fatigue_strength",
                   "needs the other of ultimate_strength and fatigue_strength; give both or neither");
    if (const auto strength = own.find<models::Stress>("fatigue_strength"))
      metal.fatigue_strength =
          models::FatigueStrength{0.85 * *strength, *strength, 1.15 * *strength, metal.source};
    return metal;
  }
  if (!plate.has_any({"material", "metal"}))
    plate.complain("material", "missing; name a metal or give its constants in [plate.metal]");
  return models::find_metal(plate.text("material").value_or("")).value_or(models::Metal{});
}

std::vector<models::PlateSection> read_sections(const Section& plate, CasePlaces& places) {
  if (!plate.has("section")) {
    plate.require({"width", "thickness"},
                  "give width and thickness, or both along the plate as [[plate.section]]");
    places.alias("plate.section[0]", "plate");
    return {{models::Length{}, plate.get<models::Length>("width"), plate.get<models::Length>("thickness")}};
  }
  for (const auto* key : {"width", "thickness"})
    if (plate.has(key)) plate.complain(key, "given together with [[plate.section]]; remove one of them");
  std::vector<models::PlateSection> sections;
  for (const auto& section : plate.sections("section"))
    sections.push_back({section.get<models::Length>("position"), section.get<models::Length>("width"),
                        section.get<models::Length>("thickness")});
  return sections;
}

std::vector<models::PlateHole> read_listed_holes(const Section& plate) {
  for (const auto* key : {"holes", "pitch", "middle_spacing", "first_hole", "hole_diameter", "slot_length"})
    if (plate.has(key))
      plate.complain(key, "belongs to a row of holes, but [[plate.hole]] lists them; remove one");
  std::vector<models::PlateHole> holes;
  for (const auto& section : plate.sections("hole")) {
    models::PlateHole hole;
    const bool slot = section.text("shape") == "slot";
    hole.position = section.get<models::Length>("position");
    hole.shape = slot ? models::HoleShape::slot : models::HoleShape::round;
    hole.diameter = section.get<models::Length>("diameter");
    if (slot) section.require({"slot_length"}, "a slot needs its overall length along the plate");
    hole.slot_length = section.find<models::Length>("slot_length").value_or(hole.diameter);
    holes.push_back(hole);
  }
  return holes;
}

std::vector<models::PlateHole> read_row_of_holes(const Section& plate, models::Length length, CasePlaces& places) {
  if (!plate.has("holes")) {
    plate.complain("holes",
                   "missing; give the number of holes with pitch and hole_diameter, or [[plate.hole]] one by one");
    return {};
  }
  plate.require({"pitch", "hole_diameter"}, "a row of holes needs pitch and hole_diameter");
  const int count = plate.count("holes").value_or(0);
  if (plate.has("middle_spacing") && count % 2 != 0)
    plate.complain("middle_spacing", fmt::format("there are no two middle holes among {}; give an even number of "
                                                 "`holes` or remove it",
                                                 count));
  const auto pitch = plate.get<models::Length>("pitch");
  const auto middle = plate.find<models::Length>("middle_spacing").value_or(pitch);
  const auto diameter = plate.get<models::Length>("hole_diameter");
  const auto slot_length = plate.find<models::Length>("slot_length");
  const auto shape = slot_length ? models::HoleShape::slot : models::HoleShape::round;
  const double steps = count - 1;
  const auto span = steps * pitch + (middle - pitch);
  const auto first = plate.find<models::Length>("first_hole").value_or(0.5 * (length - span));
  std::vector<models::PlateHole> holes;
  for (int i = 0; i < count; ++i) {
    const std::string path = fmt::format("plate.hole[{}]", i);
    places.alias(path, plate.path_of("holes"));
    places.alias(path + ".diameter", plate.path_of("hole_diameter"));
    places.alias(path + ".slot_length", plate.path_of("slot_length"));
    places.alias(path + ".position", plate.path_of("pitch"));
    const bool distal_half = count % 2 == 0 && i >= count / 2;
    const auto position =
        first + static_cast<double>(i) * pitch + (distal_half ? middle - pitch : models::Length{});
    holes.push_back({position, shape, diameter, slot_length.value_or(diameter)});
  }
  return holes;
}

}  // namespace

models::Aspect aspect_named(std::string_view name) {
  if (name == "caudal" || name == "posterior") return models::Aspect::caudal;
  if (name == "medial") return models::Aspect::medial;
  if (name == "lateral") return models::Aspect::lateral;
  return models::Aspect::cranial;
}

models::Plate read_plate(const Section& section, const models::Fracture& fracture, Reading& reading) {
  models::Plate plate;
  if (!section.present()) return plate;
  plate.length = section.get<models::Length>("length");
  plate.sections = read_sections(section, reading.places);
  plate.holes =
      section.has("hole") ? read_listed_holes(section) : read_row_of_holes(section, plate.length, reading.places);
  plate.material = read_metal(section);
  plate.aspect = aspect_named(section.text("aspect").value_or(""));
  plate.proximal_end =
      section.find<models::Length>("proximal_end").value_or(fracture.position - 0.5 * plate.length);
  plate.standoff = section.get<models::Length>("standoff");
  plate.prebend = section.get<models::Length>("prebend");
  plate.angle_limit = section.get<models::Angle>("angle_limit");
  plate.finish_factor = section.get<double>("finish_factor");
  plate.contour =
      section.text("contour") == "straight" ? models::Contour::straight : models::Contour::follows_bone;
  return plate;
}

models::Length default_standoff(const std::vector<models::Screw>& screws) {
  const bool is_pressed_on = std::any_of(screws.begin(), screws.end(), [](const models::Screw& screw) {
    return models::is_tightened(screw) && !screw.entry;
  });
  return (is_pressed_on ? 0.0 : 1.0) * models::mm;
}

}  // namespace gapstrain::cases
