// The pictures of one analysis, as PNG files: white ground, legible at A5, colour-blind-safe, units on every
// scale. Each is written beside its target and renamed.
// @throw std::filesystem::filesystem_error with the path when a file cannot be written.
#pragma once

#include "models/findings/fields.h"
#include "models/findings/findings.h"
#include "viz/drawing/display.h"

#include <filesystem>
#include <vector>

namespace gapstrain::viz {

// The construct under a load, deformed (factor printed), plate and screws coloured by von Mises stress, bone
// translucent, fracture gap in view.
void draw_construct(const Display&, const models::LoadFields& fields, const models::LoadFindings& findings,
                    const std::filesystem::path& file);

// Close view of the plate's hottest hole, with its place, face and stress written.
void draw_hottest_hole(const Display&, const models::LoadFields& fields, const models::LoadFindings& findings,
                       const std::filesystem::path& file);

// Axial and shear strain round the fracture edge of every load, healing windows shaded; where the faces touch
// there is none.
void draw_gap_strain(const Display&, const models::Findings& findings, const std::filesystem::path& file);

// Pressure of the fracture's faces round the bone after the last step and under every load, mean of both points
// through the wall; below it the opening of what the faces leave open.
void draw_face_pressure(const Display&, const models::Findings& findings, const std::filesystem::path& file);

// A small picture a step, from the side: what is in, how the fracture stands (motion and gap magnified, factor
// printed), and the force across it on a common scale. Of more than twelve steps the first, the last and those
// that change the force most. @pre there is a step; as many findings as fields.
void draw_steps(const Display&, const models::CompressionFindings& findings,
                const std::vector<models::StepFields>& steps, const std::filesystem::path& file);

// Pressure at the near and the far cortex, and its unevenness, over the height of the plate's prebend; the
// sufficient one marked.
void draw_prebend(const Display&, const models::PrebendFindings& findings, const std::filesystem::path& file);

// Section force, moment and surface stress along the plate under a load, holes and screws marked.
void draw_along_plate(const Display&, const models::LoadFindings& findings, const std::filesystem::path& file);

}  // namespace gapstrain::viz
