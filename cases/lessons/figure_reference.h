// A figure of one of a lesson's states by name: "peak_stress", "gap_strain:axial 200 N@2 beside",
// "peak_stress@3/2".
#pragma once

#include <optional>
#include <string>
#include <string_view>

namespace gapstrain::cases {

enum class ScenePart { own, beside, answer };

// Of a lesson's states one; no scene: the scene in which the reference stands.
struct StateReference {
  std::optional<int> scene;  // from 1
  ScenePart part = ScenePart::own;
};

struct FigureReference {
  std::string figure;
  std::optional<std::string> load;     // else the worst of all
  std::optional<StateReference> of;    // else the scene's own state
  std::optional<StateReference> over;  // given: how many times as large as there
};

// Whether there are such a figure, load and states is not looked at. What does not read as a state after the last
// "@" belongs to the load's name.
FigureReference read_reference(std::string_view text);

}  // namespace gapstrain::cases
