// What each part has in hand, as a text.
#pragma once

#include "cases/outputs/sentences/rest_stands.h"
#include "models/margins/margins.h"

#include <string>
#include <vector>

namespace gapstrain::cases {

// The worst of each kind, then all margins, a line each; the former in full, with assumptions and sources as
// numbered notes; why others are left out. Lines of at most screen_columns, with line ends.
// @pre the margins are the construct's
std::string margins_text(const models::Construct& construct, const std::vector<models::Margin>& margins,
                         const std::vector<models::LeftOutMargin>& left_out);

// "In hand (strength over demand): screw S7, fatigue 1.4; plate, yield 2.9": of each kind the worst, of these
// the least four.
std::string margins_sentence(const std::vector<models::Margin>& margins, const RestStands& rest = in_files);

}  // namespace gapstrain::cases
