#include "cases/outputs/sentences/margins_text.h"

#include "cases/cautions.h"
#include "cases/text/columns.h"
#include "cases/text/digits.h"

#include <fmt/format.h>

#include <algorithm>

namespace gapstrain::cases {

namespace {

std::string margin_text(const models::Margin& margin) {
  std::string text = beside(three_digits(margin.factor),
                            fmt::format("{}{}{}. {}", margin.part, margin.factor < 1.0 ? ": IT FAILS" : "",
                                        margin.indicative ? " (indicative only)" : "", margin.sentence));
  if (!margin.assumed.empty()) text += beside("", "Assumed: " + margin.assumed + ".");
  return text + beside("", "Source: " + margin.source + ".");
}

}  // namespace

std::string margins_text(const std::vector<models::Margin>& margins, const std::vector<std::string>& left_out) {
  std::string text = "Strength over demand, worst first: below 1 a part fails.\n\n";
  for (const auto& margin : margins) text += margin_text(margin);
  if (!left_out.empty()) text += "\nWithout a margin:\n";
  const auto add = [&](const std::string& paragraph) {
    for (const auto& line : wrap(paragraph, screen_columns, 2)) text += line + "\n";
  };
  for (const auto& reason : left_out) add("- " + reason);
  text += "\n";
  for (const auto caution : cautions) add(std::string(caution));
  return text;
}

std::string margins_sentence(const std::vector<models::Margin>& margins) {
  constexpr std::size_t most = 4;
  const auto worst = models::worst_of_each_kind(margins);
  std::vector<std::string> texts;
  for (std::size_t i = 0; i < std::min(most, worst.size()); ++i)
    texts.push_back(fmt::format("{} {}{}", worst[i].part, two_digits(worst[i].factor),
                                worst[i].indicative ? " (indicative)" : ""));
  return fmt::format("In hand (strength over demand): {}{}.", fmt::join(texts, "; "),
                     worst.size() > most ? "; the others more, see margins.txt" : "");
}

}  // namespace gapstrain::cases
