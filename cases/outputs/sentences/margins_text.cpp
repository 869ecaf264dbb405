#include "cases/outputs/sentences/margins_text.h"

#include "cases/cautions.h"
#include "cases/text/columns.h"
#include "cases/text/digits.h"
#include "models/words/margin_words.h"

#include <fmt/format.h>

#include <algorithm>
#include <optional>

namespace gapstrain::cases {

namespace {

constexpr std::size_t factor_width = 8;

// What several margins share, once and by number.
class Notes {
 public:
  // The number of a note; nothing for an empty text.
  std::optional<std::size_t> number_of(const std::string& text) {
    if (text.empty()) return std::nullopt;
    const auto found = std::find(texts_.begin(), texts_.end(), text);
    if (found != texts_.end()) return static_cast<std::size_t>(found - texts_.begin()) + 1;
    texts_.push_back(text);
    return texts_.size();
  }

  std::string text() const {
    std::string all;
    for (std::size_t k = 0; k < texts_.size(); ++k) all += beside(fmt::format("[{}]", k + 1), texts_[k] + ".");
    return all;
  }

 private:
  std::vector<std::string> texts_;
};

// So wide that no part loses its kind.
std::size_t part_width(const std::vector<models::Margin>& margins) {
  std::size_t width = 40;
  for (const auto& margin : margins) width = std::max(width, columns(models::part_name(margin)) + 1);
  return std::min<std::size_t>(width, 60);
}

std::string hint_of(const models::Margin& margin) { return margin.indicative ? " (indicative only)" : ""; }

// One line: factor, part, load, verdict. A long load's name makes room for the verdict.
std::string row(const models::Margin& margin, std::size_t part_width) {
  const std::string verdict = (margin.factor < 1.0 ? "  IT FAILS" : "") + hint_of(margin);
  const std::size_t room = screen_columns - factor_width - part_width - columns(verdict);
  return pad(three_digits(margin.factor), factor_width) + pad(models::part_name(margin), part_width) +
         clip(margin.load, room) + verdict + "\n";
}

std::string details(const models::Construct& construct, const models::Margin& margin, Notes& assumptions,
                    Notes& sources) {
  std::string references;
  if (const auto number = assumptions.number_of(models::margin_assumptions(construct, margin)))
    references += fmt::format(" Assumed [{}].", *number);
  if (const auto number = sources.number_of(margin.source)) references += fmt::format(" Source [{}].", *number);
  return beside(three_digits(margin.factor),
                fmt::format("{}{}{}. {}{}", models::part_name(margin), margin.factor < 1.0 ? ": IT FAILS" : "",
                            hint_of(margin), models::margin_sentence(construct, margin), references));
}

}  // namespace

std::string margins_text(const models::Construct& construct, const std::vector<models::Margin>& margins,
                         const std::vector<models::LeftOutMargin>& left_out) {
  const auto worst = models::worst_of_each_kind(margins);
  const std::size_t width = part_width(margins);
  const std::string head = pad("factor", factor_width) + pad("part", width) + "load\n";
  std::string text =
      "Safety factors, strength over demand: below 1 a part fails.\n\nThe worst of each kind\n" + head;
  for (const auto& margin : worst) text += row(margin, width);
  text += "\nAll, the worst first\n" + head;
  for (const auto& margin : margins) text += row(margin, width);

  Notes assumptions, sources;
  text += "\nThe worst of each kind in full\n";
  for (const auto& margin : worst) text += details(construct, margin, assumptions, sources);
  for (const auto& margin : margins) {  // nothing that a factor rests on is left out
    assumptions.number_of(models::margin_assumptions(construct, margin));
    sources.number_of(margin.source);
  }
  text += "\nAssumed\n" + assumptions.text() + "\nSources\n" + sources.text();
  if (!left_out.empty()) text += "\nWithout a margin:\n";
  const auto add = [&](const std::string& paragraph) {
    for (const auto& line : wrap(paragraph, screen_columns, 2)) text += line + "\n";
  };
  for (const auto& reason : left_out) add("- " + models::left_out_sentence(reason));
  text += "\n";
  for (const auto caution : cautions) add(std::string(caution));
  return text;
}

std::string margins_sentence(const std::vector<models::Margin>& margins, const RestStands& rest) {
  constexpr std::size_t most = 4;
  const auto worst = models::worst_of_each_kind(margins);
  std::vector<std::string> texts;
  for (std::size_t i = 0; i < std::min(most, worst.size()); ++i)
    texts.push_back(fmt::format("{} {}{}", models::part_name(worst[i]), two_digits(worst[i].factor),
                                worst[i].indicative ? " (indicative)" : ""));
  return fmt::format("In hand (strength over demand): {}{}.", fmt::join(texts, "; "),
                     worst.size() > most ? fmt::format("; the others more, see {}", rest.margins) : "");
}

}  // namespace gapstrain::cases
