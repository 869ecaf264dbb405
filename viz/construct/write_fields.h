// The solution as VTK XML files that any reader of that format opens.
#pragma once

#include "models/findings/fields.h"
#include "viz/drawing/picture_frame.h"

#include <filesystem>
#include <string>
#include <vector>

namespace gapstrain::viz {

// One unstructured grid (.vtu) per body with displacements, rotations and stresses at its nodes, and one polydata
// (.vtp) with the screws, named STEM_plate.vtu and so on, into an existing folder. Units in the arrays' names.
// The metadata are field data, an array of texts a name. Returns the paths written. @throw
// std::filesystem::filesystem_error with the path.
std::vector<std::filesystem::path> write_fields(const models::LoadFields& fields, const Metadata& metadata,
                                                const std::filesystem::path& folder, const std::string& stem);

}  // namespace gapstrain::viz
