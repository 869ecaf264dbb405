// What the trade, case files and outputs call the choices among parts.
#pragma once

#include "models/parts/bone.h"
#include "models/parts/loading.h"
#include "models/parts/screw.h"

#include <optional>
#include <string>
#include <string_view>
#include <vector>

namespace gapstrain::models {

std::string name_of(ScrewKind kind);  // "locking"
std::string name_of(Aspect aspect);   // "cranial"
std::string name_of(Side side);       // "left"
std::string name_of(EndHold hold);    // "guided"
std::string name_of(BoneEnd end);     // "distal"

// "S1", "S1 and S2", "S1, S2 and S3"
std::string listed(const std::vector<std::string>& names, std::string_view last = "and");

// Nothing for another word.
std::optional<ScrewKind> find_screw_kind(std::string_view name);
std::vector<std::string> screw_kind_names();
std::optional<EndHold> find_end_hold(std::string_view name);
std::vector<std::string> end_hold_names();

}  // namespace gapstrain::models
