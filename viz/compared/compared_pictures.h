// Pictures that hold two to four constructs against each other, as PNG files: on common scales, so that what looks
// more is more. White ground, legible at A5, colour-blind-safe. Each is written beside its target and renamed.
// @throw std::filesystem::filesystem_error with the path when a file cannot be written.
// @throw std::invalid_argument with fewer than two or more than four constructs.
#pragma once

#include "models/findings/fields.h"
#include "models/findings/findings.h"
#include "viz/drawing/display.h"

#include <filesystem>
#include <string>
#include <vector>

namespace gapstrain::viz {

// A construct under one load. Both must outlive the call.
struct ComparedConstruct {
  std::string name;
  const models::LoadFields* fields =
      nullptr;  // of both bones and the plate; not looked at by draw_gap_strain_compared
  const models::LoadFindings* findings = nullptr;
};

// Each as draw_construct shows it, one under another since bones are long: one colour range, view, scale of length
// and deformation factor (of the one that moves most), proximal ends of the bones one above another.
void draw_side_by_side(const Display&, const std::vector<ComparedConstruct>& constructs,
                       const std::filesystem::path& file);

// Axial strain round the fracture edge of each, healing windows shaded. Where one of them is closed all round, so
// that its strain has no meaning, axial motion of all in mm.
void draw_gap_strain_compared(const Display&, const std::vector<ComparedConstruct>& constructs,
                              const std::filesystem::path& file);

}  // namespace gapstrain::viz
