// A finding's limit as charts show it: a band, or a line where it has one end.
#pragma once

#include "viz/study/study_pictures.h"

#include <optional>
#include <string>

namespace gapstrain::cases {

// @pre at least one end
viz::Limit limit_on_chart(const std::string& finding, const std::optional<double>& least,
                          const std::optional<double>& most);

}  // namespace gapstrain::cases
