// The part of findings.json on what the steps did and on faces that touch.
#pragma once

#include "cases/files/json_value.h"
#include "models/findings/findings.h"

#include <vector>

namespace gapstrain::cases {

Json face_json(const models::FaceFindings& face);
Json bent_json(const std::vector<models::BentPart>& parts);
Json compression_json(const models::CompressionFindings& compression);

}  // namespace gapstrain::cases
