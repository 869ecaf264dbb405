// The part of findings.json on what each part has in hand.
#pragma once

#include "cases/files/json_value.h"
#include "models/margins/margins.h"

#include <vector>

namespace gapstrain::cases {

// In the order given: part, load, factor, sentence, assumed (may be empty), source, indicative.
// @pre the margins are the construct's
Json margins_json(const models::Construct& construct, const std::vector<models::Margin>& margins);

// Why others have none.
Json left_out_json(const std::vector<models::LeftOutMargin>& left_out);

}  // namespace gapstrain::cases
