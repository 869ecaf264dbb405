#include "models/measures/limits.h"

#include "models/measures/compression.h"
#include "models/measures/face_pressure.h"
#include "models/measures/screw_forces.h"
#include "models/parts/tightening.h"

#include <fmt/format.h>

#include <algorithm>
#include <set>

namespace gapstrain::models {

namespace {

using Sentences = std::vector<std::string>;

constexpr double slip_worth_saying = 0.01;  // mm

// Each screw once, at the state in which it is worst used.
Sentences overloaded_screws(const Assembly& assembly, const StepState& made,
                            const std::vector<ConstructState>& loaded, const std::vector<LoadFindings>& loads) {
  Sentences sentences;
  std::set<std::string> said;
  const auto look = [&](const ConstructState& state, const std::string& when) {
    for (const auto& held : measure_held(assembly, made, state)) {
      const bool pulls_out = held.of_pull_out.value_or(0.0) > 1.0, yields = held.of_yield.value_or(0.0) > 1.0;
      if ((!pulls_out && !yields) || !said.insert(held.label).second) continue;
      const bool pull_out_first = held.of_pull_out.value_or(0.0) >= held.of_yield.value_or(0.0);
      sentences.push_back(
          fmt::format("{} carries {:.0f} N {}: {:.2g} times {}.", held.label, held.axial.value(), when,
                      pull_out_first ? *held.of_pull_out : *held.of_yield,
                      pull_out_first ? "what pulls its thread out of the bone" : "what makes its core yield"));
    }
  };
  look(made, "once it is tightened");
  for (std::size_t l = 0; l < loaded.size(); ++l) look(loaded[l], fmt::format("under \"{}\"", loads[l].load));
  return sentences;
}

// Shafts that the steps alone, or a load, bend or stretch past their yield; each screw once, at its worst.
Sentences bent_screws(const Assembly& assembly, const StepState& made, const std::vector<LoadFindings>& loads) {
  Sentences sentences;
  const auto at_rest = measure_screws(assembly, made.screws, made.pressed.solution);
  for (const auto& screw : at_rest) {
    const bool is_ball = std::any_of(made.tightened.begin(), made.tightened.end(), [&](int index) {
      return assembly.screws[static_cast<std::size_t>(index)].planned.screw.label == screw.label;
    });
    if (is_ball && screw.factor_to_yield.value_or(2.0) < 1.0)
      sentences.push_back(
          fmt::format("{}'s shaft is strained to {:.2g} times its yield by the steps alone: it would "
                      "bend for good and press less than this calculation says.",
                      screw.label, 1.0 / *screw.factor_to_yield));
  }
  for (std::size_t k = 0; k < made.screws.size(); ++k) {
    if (at_rest[k].factor_to_yield.value_or(2.0) < 1.0) continue;
    const std::string& label = at_rest[k].label;
    const LoadFindings* worst = nullptr;
    double factor = 1.0;
    for (const auto& load : loads)
      for (const auto& screw : load.screws)
        if (screw.label == label && screw.factor_to_yield.value_or(2.0) < factor) {
          factor = *screw.factor_to_yield;
          worst = &load;
        }
    if (worst != nullptr)
      sentences.push_back(fmt::format("{}'s shaft is strained to {:.2g} times its yield under \"{}\".", label,
                                      1.0 / factor, worst->load));
  }
  return sentences;
}

Sentences lost_preloads(const Assembly& assembly, const StepState& made, const std::vector<ConstructState>& loaded,
                        const std::vector<LoadFindings>& loads) {
  Sentences sentences;
  std::set<std::string> said;
  for (std::size_t l = 0; l < loaded.size(); ++l)
    for (const auto& held : measure_held(assembly, made, loaded[l]))
      if (held.of_pull_out && held.axial <= 0.0 * newton && said.insert(held.label).second)
        sentences.push_back(
            fmt::format("{} loses its preload under \"{}\": its head would lift off its seat, which "
                        "this calculation does not follow.",
                        held.label, loads[l].load));
  return sentences;
}

Sentences gaping(const std::vector<LoadFindings>& loads) {
  Sentences sentences;
  for (const auto& load : loads) {
    if (!load.gapes) continue;
    Length widest;
    for (const auto& point : load.face.points) widest = std::max(widest, point.opening);
    sentences.push_back(
        fmt::format("The fracture gapes under \"{}\": {:.0f} % of its face still touches, and it opens "
                    "by up to {:.2g} mm.",
                    load.load, 100.0 * load.face.touching, widest.value()));
  }
  return sentences;
}

Sentences slipping(const Assembly& assembly, const StepState& made, const std::vector<ConstructState>& loaded,
                   const std::vector<LoadFindings>& loads) {
  Sentences sentences;
  if (made.tightened.empty()) return sentences;
  for (std::size_t l = 0; l < loaded.size(); ++l)
    for (const std::size_t fragment : {0U, 1U}) {
      const double slip = underside_slip(assembly, made, loaded[l], fragment).value();
      if (slip < slip_worth_saying || loads[l].friction_use.value_or(0.0) < 0.9) continue;
      sentences.push_back(
          fmt::format("The plate slips by {:.2g} mm on the {} under \"{}\": friction there is used up, "
                      "and the screws' shafts carry the rest.",
                      slip, assembly.bodies[proximal_body + fragment].name, loads[l].load));
    }
  return sentences;
}

Sentences used_slots(const Assembly& assembly, const StepState& made) {
  Sentences sentences;
  for (const int index : made.screws) {
    const Screw& screw = assembly.screws[static_cast<std::size_t>(index)].planned.screw;
    if (screw.kind != ScrewKind::compression) continue;
    const double asked = tightened_slide(screw).value();
    const double done = std::abs(assembly.screws[static_cast<std::size_t>(index)].planned.slide);
    if (done < asked - 1e-9)
      sentences.push_back(
          fmt::format("{} uses up its slot: {:.2g} mm of travel were asked for, hole {} leaves {:.2g} "
                      "mm.",
                      screw.label, asked, screw.hole, done));
  }
  return sentences;
}

Sentences left_in(const Assembly& assembly, const StepState& made) {
  Sentences sentences;
  for (const int index : made.holds)
    sentences.push_back(fmt::format("{} is still in after the last step and carries load with the rest.",
                                    assembly.holds[static_cast<std::size_t>(index)].hold.label));
  return sentences;
}

}  // namespace

std::vector<std::string> find_limits(const Assembly& assembly, const StepState& made,
                                     const std::vector<ConstructState>& loaded,
                                     const std::vector<LoadFindings>& loads) {
  Sentences all;
  for (const auto& sentences :
       {overloaded_screws(assembly, made, loaded, loads), bent_screws(assembly, made, loads),
        lost_preloads(assembly, made, loaded, loads), gaping(loads), slipping(assembly, made, loaded, loads),
        used_slots(assembly, made), left_in(assembly, made)})
    all.insert(all.end(), sentences.begin(), sentences.end());
  return all;
}

}  // namespace gapstrain::models
