// The pictures of one analysis, as PNG files: white ground, legible at A5, colour-blind-safe, units on every
// scale. Each is written beside its target and renamed.
// @throw std::filesystem::filesystem_error with the path when a file cannot be written.
#pragma once

#include "models/findings/fields.h"
#include "models/findings/findings.h"
#include "viz/display.h"

#include <filesystem>

namespace gapstrain::viz {

// The construct under a load, deformed (factor printed), plate and screws coloured by von Mises stress, bone
// translucent, fracture gap in view.
void draw_construct(const Display&, const models::LoadFields& fields, const models::LoadFindings& findings,
                    const std::filesystem::path& png);

// Close view of the plate's hottest hole, with its place, face and stress written.
void draw_hottest_hole(const Display&, const models::LoadFields& fields, const models::LoadFindings& findings,
                       const std::filesystem::path& png);

// Axial and shear strain round the fracture edge of every load, healing windows shaded.
void draw_gap_strain(const Display&, const models::Findings& findings, const std::filesystem::path& png);

// Section force, moment and surface stress along the plate under a load, holes and screws marked.
void draw_along_plate(const Display&, const models::LoadFindings& findings, const std::filesystem::path& png);

}  // namespace gapstrain::viz
