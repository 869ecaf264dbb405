#include "cases/reader/read_case.h"
#include "cases/reader/read_parts.h"

#include "models/layouts/hole_choices.h"
#include "models/parts/tightening.h"

#include <fmt/format.h>

#include <algorithm>

namespace gapstrain::cases {

namespace {

template <class Condition>
std::vector<std::string> labels(const models::Construct& construct, Condition condition) {
  std::vector<std::string> found;
  for (const auto& screw : construct.screws)
    if (condition(screw)) found.push_back(screw.label);
  return found;
}

bool has_default_preload(const models::Screw& screw) {
  return models::is_tightened(screw) && !screw.preload && !screw.insertion_torque;
}

bool has_default_slide(const models::Screw& screw) {
  return screw.kind == models::ScrewKind::compression && !screw.slide;
}

std::string slide_sentence(const models::Construct& construct) {
  std::vector<std::string> slides;
  for (const auto& screw : construct.screws)
    if (has_default_slide(screw))
      slides.push_back(fmt::format("{} {:.3g} mm", screw.label, models::tightened_slide(screw).value()));
  return fmt::format(
      "No slide is given for compression screws: by the size of the thread {} are taken (customary, "
      "from memory), or what the slot leaves.",
      fmt::join(slides, ", "));
}

void add_friction(const Section& contact, const models::Contact& values, std::vector<std::string>& sentences) {
  if (values.friction != models::FrictionLaw::coulomb) return;
  std::vector<std::string> taken;
  if (!contact.has("plate_on_bone"))
    taken.push_back(fmt::format("{:.3g} of the plate on bone (after Hayes & Perren 1972)", values.plate_on_bone));
  if (!contact.has("bone_on_bone")) taken.push_back(fmt::format("{:.3g} of bone on bone", values.bone_on_bone));
  if (!taken.empty())
    sentences.push_back(fmt::format("Friction coefficients that the case does not give are taken from memory: {}.",
                                    fmt::join(taken, ", ")));
}

}  // namespace

std::vector<std::string> assumptions_of(const Section& file, const models::Construct& construct) {
  std::vector<std::string> sentences;
  if (!file.has("load"))
    sentences.push_back(
        "The case names no load: axial 100 N, bending 1 N m and torsion 1 N m are assumed. Their sizes are round "
        "numbers, not a patient's; figures grow in proportion as long as nothing closes or opens.");
  if (labels(construct, models::is_tightened).empty()) return sentences;

  if (!file.has("step"))
    sentences.push_back(
        "The case lists no steps: every screw is inserted and tightened before the next one, in the order of the "
        "file.");
  if (const auto screws = labels(construct, has_default_preload); !screws.empty())
    sentences.push_back(
        fmt::format("No preload or torque is given for {}: half the pull-out strength of the cortices that the "
                    "thread holds in is taken (a choice of this program, no source).",
                    fmt::join(screws, ", ")));
  if (!labels(construct, has_default_slide).empty()) sentences.push_back(slide_sentence(construct));
  if (!file.section("plate").has("standoff") && only(construct.plates).standoff == 0.0 * models::mm)
    sentences.push_back(
        "No standoff is given: 0 mm is taken, because ball-headed screws press the plate onto the bone.");
  add_friction(file.section("contact"), construct.contact, sentences);
  return sentences;
}

std::vector<std::string> assumptions_of_candidates(const models::Construct& construct,
                                                   const std::vector<models::Screw>& ready) {
  std::vector<std::string> sentences;
  for (const auto& [label, distance] : models::screws_beside_patches(construct, ready))
    sentences.push_back(
        fmt::format("Screw {} passes the bone {:.2g} mm beside the patch of the mesh that it shares with another "
                    "kind of screw: how "
                    "far the wall gives way is taken from there.",
                    label, distance.value()));
  return sentences;
}

}  // namespace gapstrain::cases
