#include "cases/lessons/reference_fault.h"

#include "cases/text/words.h"
#include "models/catalogue/outcome_figures.h"

#include <fmt/format.h>

#include <algorithm>

namespace gapstrain::cases {

namespace {

std::optional<std::string> fault_of_figure(const FigureReference& reference) {
  if (!models::find_figure(reference.figure)) {
    const auto names = models::figure_names();
    const auto nearest = nearest_word(reference.figure, names);
    return fmt::format("no figure is called \"{}\"; {}", visible(reference.figure),
                       nearest ? fmt::format("did you mean \"{}\"?", *nearest) : "known: gapstrain keys --rows");
  }
  const auto& of_loads = models::load_figures();
  const bool has_load =
      std::any_of(of_loads.begin(), of_loads.end(), [&](const auto& one) { return one.name == reference.figure; });
  if (reference.load && !has_load)
    return fmt::format("\"{}\" is a figure of the construct and has no load", reference.figure);
  return std::nullopt;
}

std::optional<std::string> fault_of_state(const FigureReference& reference, const StateReference& state,
                                          const std::vector<Scene>& scenes, std::size_t scene) {
  const SceneState* found = find_state(scenes, scene, state);
  if (found == nullptr) {
    const std::size_t number = state.scene ? static_cast<std::size_t>(*state.scene) : scene + 1;
    if (number > scenes.size())
      return fmt::format("there is no scene {}; the lesson has {}", number, scenes.size());
    return fmt::format("scene {} has no {}", number,
                       state.part == ScenePart::beside ? "state beside it" : "state as its answer");
  }
  const auto& loads = found->loads;
  if (reference.load && std::find(loads.begin(), loads.end(), *reference.load) == loads.end())
    return fmt::format("no load of that state is called \"{}\"{}; its loads: {}", visible(*reference.load),
                       did_you_mean(*reference.load, loads), join_or(loads));
  return std::nullopt;
}

}  // namespace

std::optional<std::string> fault_of_reference(const std::string& text, const std::vector<Scene>& scenes,
                                              std::size_t scene) {
  const FigureReference reference = read_reference(text);
  if (auto fault = fault_of_figure(reference)) return fault;
  if (auto fault = fault_of_state(reference, reference.of.value_or(StateReference{}), scenes, scene)) return fault;
  return reference.over ? fault_of_state(reference, *reference.over, scenes, scene) : std::nullopt;
}

std::optional<std::string> fault_of_shown_figure(const std::string& text, const std::vector<Scene>& scenes,
                                                 std::size_t scene) {
  if (read_reference(text).of)
    return "the page shows it of the construct at hand; leave out what follows the \"@\"";
  return fault_of_reference(text, scenes, scene);
}

}  // namespace gapstrain::cases
