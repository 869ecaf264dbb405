#include "cases/outputs/studies/limit_on_chart.h"

#include "cases/figures/figure_words.h"

namespace gapstrain::cases {

viz::Limit limit_on_chart(const std::string& finding, const std::optional<double>& least,
                          const std::optional<double>& most) {
  const double scale = words_of(finding).scale;
  const char* name = least && most ? "wanted" : least ? "at least" : "at most";
  return {name, (least ? *least : *most) * scale, (most ? *most : *least) * scale};
}

}  // namespace gapstrain::cases
