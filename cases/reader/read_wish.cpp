#include "cases/reader/read_wish.h"

#include "cases/text/words.h"
#include "models/catalogue/outcome_figures.h"

#include <fmt/format.h>

namespace gapstrain::cases {

namespace {

std::string unknown(const std::string& name) {
  const auto names = models::figure_names();
  return fmt::format("found \"{}\"{}; findings are {}", name, did_you_mean(name, names), fmt::join(names, ", "));
}

}  // namespace

std::optional<models::FigureWish> read_wish(const Section& section, std::string_view key, std::size_t index,
                                            const std::string& text) {
  const auto blank = text.find(' ');
  const std::string way = text.substr(0, blank);
  if (blank == std::string::npos || (way != "least" && way != "most")) {
    section.complain(key, index,
                     fmt::format("found \"{}\"; write \"least\" or \"most\" and a finding, such as \"least "
                                 "peak_stress\"",
                                 text));
    return std::nullopt;
  }
  const std::string name = text.substr(blank + 1);
  if (models::find_figure(name)) return models::FigureWish{name, way == "most"};
  section.complain(key, index, unknown(name));
  return std::nullopt;
}

}  // namespace gapstrain::cases
