#include "cases/reader/case_keys.h"
#include "cases/reader/read_parts.h"

#include "models/parts/words.h"

#include <fmt/format.h>

namespace gapstrain::cases {

namespace {

// Where a value of a screw stands: in its own table, else in [screws].
const Section& holder(const Section& screw, const Section& defaults, std::string_view key) {
  return !screw.has(key) && defaults.has(key) ? defaults : screw;
}

models::ScrewSize read_own_size(const Section& screw) {
  screw.require({"thread_diameter", "core_diameter", "pitch"}, "an own thread needs all three lengths");
  models::ScrewSize size{"own", screw.get<models::Length>("thread_diameter"),
                         screw.get<models::Length>("core_diameter"), screw.get<models::Length>("pitch"),
                         "case file"};
  return size;
}

models::ScrewSize read_size(const Section& screw, const Section& defaults) {
  if (screw.has_any({"thread_diameter", "core_diameter", "pitch"})) {
    if (screw.has("size")) screw.complain("size", "given together with an own thread; remove one of them");
    return read_own_size(screw);
  }
  const Section& section = holder(screw, defaults, "size");
  if (!section.has("size"))
    screw.complain("size",
                   "missing; name a size here or in [screws], or give thread_diameter, core_diameter and pitch");
  return models::find_screw_size(section.text("size").value_or("")).value_or(models::ScrewSize{});
}

models::ScrewKind read_kind(const Section& screw, const Section& defaults) {
  const std::string kind = holder(screw, defaults, "kind").text("kind").value_or("");
  return models::find_screw_kind(kind).value_or(models::ScrewKind::locking);
}

// Of [screws] a preload or torque goes to screws that are tightened and say neither themselves.
void read_tightening(const Section& section, const Section& defaults, models::Screw& screw) {
  const bool is_own = section.has_any({"preload", "torque"});
  const Section& from = is_own || !models::is_tightened(screw) ? section : defaults;
  if (!from.present()) return;
  screw.preload = from.find<models::Force>("preload");
  screw.insertion_torque = from.find<models::Moment>("torque");
}

std::optional<double> named_interface(const std::string& name) {
  if (name == "bonded") return models::bonded_interface;
  if (name == "mean") return models::mean_interface;
  if (name == "soft") return models::soft_interface;
  return std::nullopt;
}

models::Screw read_screw(const Section& section, const Section& defaults, const models::Plate& plate) {
  models::Screw screw;
  screw.kind = read_kind(section, defaults);
  screw.size = read_size(section, defaults);
  const Section& metal = holder(section, defaults, "material");
  screw.material = models::find_metal(metal.text("material").value_or("")).value_or(plate.material);
  screw.cortices = holder(section, defaults, "cortices").count("cortices").value_or(screw.cortices);
  screw.tilt_along = section.get<models::Angle>("tilt_along");
  screw.tilt_across = section.get<models::Angle>("tilt_across");
  read_tightening(section, defaults, screw);
  screw.slide = section.find<models::Length>("slide");
  if (const auto root = holder(section, defaults, "root_radius").find<models::Length>("root_radius"))
    screw.size.root_radius = root;
  screw.interface = read_interface(section);
  return screw;
}

// Beside the plate, in place of a hole.
models::FreeEntry read_entry(const Section& section) {
  for (const auto* key : {"hole", "holes"})
    if (section.has(key))
      section.complain(key, "given together with `position`, which is beside the plate; remove one");
  section.require({"position", "around"}, "an entry beside the plate needs both `position` and `around`");
  return {section.get<models::Length>("position"), section.get<models::Angle>("around")};
}

std::vector<int> read_holes(const Section& section) {
  if (section.has("hole") && section.has("holes"))
    section.complain("holes", "given together with `hole`; remove one of them");
  if (section.has("holes")) return section.counts("holes");
  if (!section.has("hole"))
    section.complain("hole",
                     "missing; give the number of the plate hole, or several as `holes`; a lag screw beside "
                     "the plate has `position` and `around` instead");
  return {section.count("hole").value_or(0)};
}

// Screw `index` of the list is the `number`th of `section`; what that leaves out stands perhaps in [screws].
void note_places(CasePlaces& places, const std::string& list, std::size_t index, std::size_t number,
                 const Section& section, const Section& defaults) {
  const std::string path = fmt::format("{}[{}]", list, index);
  places.alias(path, section.path());
  if (section.has("holes")) places.stand_in(path, fmt::format("{}[{}]", section.path_of("holes"), number));
  if (!holder(section, defaults, "material").has("material")) places.alias(path + ".material", "plate.metal");
  if (section.has("core_diameter")) places.alias(path + ".size", section.path_of("core_diameter"));
  for (const auto* key : {"size", "kind", "material", "cortices", "preload", "torque", "root_radius"}) {
    const Section& from = holder(section, defaults, key);
    if (from.has(key)) places.alias(fmt::format("{}.{}", path, key), from.path_of(key));
  }
}

// `list`: the key of the tables.
std::vector<models::Screw> read_list(const Section& file, const std::string& list, const Section& defaults,
                                     const models::Plate& plate, Reading& reading) {
  std::vector<models::Screw> screws;
  int beside_plate = 0;
  for (const auto& section : file.sections(list)) {
    models::Screw screw = read_screw(section, defaults, plate);
    const auto label = list == "screw" ? section.text("label") : std::nullopt;
    if (section.has("position") || section.has("around")) {
      note_places(reading.places, list, screws.size(), 0, section, defaults);
      screw.entry = read_entry(section);
      screw.label = label.value_or(fmt::format("L{}", ++beside_plate));
      screws.push_back(screw);
      continue;
    }
    const auto holes = read_holes(section);
    for (std::size_t i = 0; i < holes.size(); ++i) {
      note_places(reading.places, list, screws.size(), i, section, defaults);
      screw.hole = holes[i];
      screw.label = label && holes.size() == 1 ? *label : fmt::format("{}{}", label.value_or("S"), holes[i]);
      screws.push_back(screw);
    }
  }
  if (file.has(list))
    if (const auto fault = fault_of_number_of_tables(screws.size(), *case_keys().find("", list)))
      file.complain(list, *fault);
  return screws;
}

}  // namespace

std::optional<double> read_interface(const Section& section) {
  const auto value = section.measure("interface");
  if (!value) return std::nullopt;
  std::optional<double> stiffness;
  if (const auto* name = std::get_if<std::string>(&value->content))
    stiffness = named_interface(*name);
  else if (const auto* whole = std::get_if<std::int64_t>(&value->content))
    stiffness = static_cast<double>(*whole);
  else
    stiffness = std::get<double>(value->content);
  if (stiffness && *stiffness >= models::least_interface && *stiffness <= models::bonded_interface)
    return stiffness;
  section.complain(
      "interface",
      fmt::format("allowed are \"bonded\", \"mean\", \"soft\" and a number from {:g} to 1 without quotes: "
                  "the local stiffness of a screw in bone over that of a bonded one",
                  models::least_interface));
  return std::nullopt;
}

std::vector<models::InterfaceStage> read_interface_course(const Section& screws, double first) {
  std::vector<models::InterfaceStage> course;
  if (!screws.present()) return course;
  for (const auto& stage : screws.sections("interface_course"))
    course.push_back({stage.get<double>("week"), read_interface(stage).value_or(first)});
  return course;
}

std::vector<models::Screw> read_screws(const Section& file, const Section& defaults, const models::Plate& plate,
                                       Reading& reading) {
  auto screws = read_list(file, "screw", defaults, plate, reading);
  number_screws(screws);
  return screws;
}

std::vector<models::Screw> read_candidates(const Section& file, const Section& defaults,
                                           const models::Plate& plate, Reading& reading) {
  return read_list(file, "candidate", defaults, plate, reading);
}

}  // namespace gapstrain::cases
