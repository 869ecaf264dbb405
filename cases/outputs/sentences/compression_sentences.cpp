#include "cases/outputs/sentences/compression_sentences.h"

#include "cases/outputs/sentences/fracture_remark.h"
#include "cases/text/columns.h"

#include <fmt/format.h>
#include <fmt/ranges.h>

#include <algorithm>

namespace gapstrain::cases {

namespace {

constexpr std::size_t longest_quote = 50;  // of a step or a load within a sentence

std::string number_of(const std::vector<models::StepFindings>& steps, std::size_t step) {
  return fmt::format("{} {} {:.0f} N", step + 1, clip(steps[step].text, longest_quote),
                     steps[step].face.force.value());
}

// From the last step before anything presses on; `left_out` of the steps between the first and the last of these
// are not told.
std::string step_by_step(const std::vector<models::StepFindings>& steps, std::size_t left_out) {
  std::size_t first = 0;
  while (first + 1 < steps.size() && !(steps[first + 1].face.force.value() > 0.0)) ++first;
  if (steps[first].face.force.value() > 0.0) first = 0;
  std::vector<std::string> told;
  const std::size_t count = steps.size() - first;
  const std::size_t keep_before = count > left_out + 2 ? (count - left_out) / 2 : 1;
  for (std::size_t k = 0; k < count; ++k) {
    const bool is_left_out = k >= keep_before && k < keep_before + left_out && k + 1 < count;
    if (!is_left_out)
      told.push_back(number_of(steps, first + k));
    else if (k == keep_before)
      told.push_back("...");
  }
  return fmt::format("Force across the fracture after each step: {}.", fmt::join(told, "; "));
}

std::string steps_sentence(const models::CompressionFindings& compression, std::size_t most_columns) {
  std::size_t left_out = 0;
  while (left_out + 2 < compression.steps.size() &&
         columns(step_by_step(compression.steps, left_out)) > most_columns)
    ++left_out;
  return step_by_step(compression.steps, left_out);
}

std::string left_sentence(const models::Findings& findings, std::size_t most_columns) {
  std::string text;
  std::size_t told = 0;
  for (const auto& load : findings.loads) {
    if (!load.force_left) continue;
    const std::string more =
        fmt::format("{}\"{}\" {:.0f} N ({:.0f} %{})", text.empty() ? "" : ", ", clip(load.load, longest_quote),
                    load.face.force.value(), 100 * *load.force_left, load.gapes ? ", GAPES" : "");
    if (!text.empty() && columns(text + more) > most_columns) break;
    text += more;
    ++told;
  }
  if (told == 0) return "";
  const auto all = static_cast<std::size_t>(std::count_if(findings.loads.begin(), findings.loads.end(),
                                                          [](const auto& l) { return bool(l.force_left); }));
  return fmt::format("Left under load: {}{}.", text, told < all ? fmt::format(", {} more", all - told) : "");
}

}  // namespace

std::vector<std::string> order_sentences(const models::Findings& findings) {
  const auto& order = findings.compression.order;
  if (!order) return {};
  std::string better;
  if (!order->better_order.empty()) better = fmt::format(": {}", fmt::join(order->better_order, ", "));
  return {
      fmt::format("{} was in before {} pressed: {:.0f} N press the fracture; the better order gives {:.0f} N{}.",
                  clip(order->early, longest_quote), clip(order->pressing, longest_quote), order->reached.value(),
                  order->possible.value(), clip(better, 160))};
}

std::vector<std::string> compression_sentences(const models::Findings& findings, std::size_t most_columns) {
  const auto& compression = findings.compression;
  const bool presses = std::any_of(compression.steps.begin(), compression.steps.end(),
                                   [](const auto& step) { return step.face.force.value() > 0.0; });
  if (!presses) return {};
  std::vector<std::string> sentences{steps_sentence(compression, most_columns)};
  if (const auto left = left_sentence(findings, most_columns); !left.empty()) sentences.push_back(left);
  std::string asides;
  if (compression.frictionless)
    asides = fmt::format(
        "With surfaces that slide freely {:.0f} N{}.", compression.frictionless->value(),
        compression.sticking ? fmt::format(", that do not slide {:.0f} N", compression.sticking->value()) : "");
  if (compression.prebend) {
    const auto& enough = compression.prebend->sufficient;
    asides += fmt::format("{}Sufficient prebend: {:.2g} mm (near {:.2g}, far {:.2g} MPa; most even at {:.2g} mm).",
                          asides.empty() ? "" : " ", enough.height.value(), enough.near.value(),
                          enough.far.value(), compression.prebend->most_even.height.value());
  }
  if (!asides.empty()) sentences.push_back(asides);
  return sentences;
}

}  // namespace gapstrain::cases
