#include "cases/lessons/figure_reference.h"

namespace gapstrain::cases {

namespace {

std::optional<ScenePart> part_of(std::string_view word) {
  if (word == "beside") return ScenePart::beside;
  if (word == "answer") return ScenePart::answer;
  return std::nullopt;
}

// "2", "beside", "2 answer".
std::optional<StateReference> state_of(std::string_view text) {
  if (const auto part = part_of(text)) return StateReference{std::nullopt, *part};
  if (text.empty() || text[0] < '1' || text[0] > '9') return std::nullopt;
  StateReference state{text[0] - '0', ScenePart::own};
  text.remove_prefix(1);
  if (text.empty()) return state;
  const auto part = text[0] == ' ' ? part_of(text.substr(1)) : std::nullopt;
  if (!part) return std::nullopt;
  state.part = *part;
  return state;
}

}  // namespace

FigureReference read_reference(std::string_view text) {
  FigureReference reference;
  if (const auto at = text.rfind('@'); at != std::string_view::npos) {
    const std::string_view states = text.substr(at + 1);
    const auto slash = states.find('/');
    const auto of = state_of(states.substr(0, slash));
    const auto over = slash == std::string_view::npos ? std::nullopt : state_of(states.substr(slash + 1));
    if (of && (over || slash == std::string_view::npos)) {
      reference.of = of;
      reference.over = over;
      text = text.substr(0, at);
    }
  }
  const auto colon = text.find(':');
  reference.figure = std::string(text.substr(0, colon));
  if (colon != std::string_view::npos) reference.load = std::string(text.substr(colon + 1));
  return reference;
}

}  // namespace gapstrain::cases
