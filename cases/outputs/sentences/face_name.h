// A plate's faces in words.
#pragma once

#include "models/findings/findings.h"

namespace gapstrain::cases {

inline const char* face_name(models::PlateFace face) {
  return face == models::PlateFace::top ? "top" : face == models::PlateFace::middle ? "middle" : "bottom";
}

}  // namespace gapstrain::cases
