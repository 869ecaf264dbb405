// The tables of a case file as parts. What a reader finds wrong it reports through its section; its result is then
// incomplete and must not be used.
#pragma once

#include "cases/toml/section.h"
#include "models/parts/construct.h"

#include <optional>
#include <string>
#include <string_view>
#include <vector>

namespace gapstrain::cases {

// `section`: the table that the function is named after.
models::Bone read_bone(const Section& section, Reading& reading);
// Without a standoff where its default hangs on the screws, see default_standoff.
models::Plate read_plate(const Section& section, const models::Fracture& fracture, Reading& reading);
models::Length default_standoff(const std::vector<models::Screw>& screws);
// `defaults`: the table [screws].
std::vector<models::Screw> read_screws(const Section& file, const Section& defaults, const models::Plate& plate,
                                       Reading& reading);
// Of [[candidate]]: what else the mesh is made ready for. No ids.
std::vector<models::Screw> read_candidates(const Section& file, const Section& defaults,
                                           const models::Plate& plate, Reading& reading);

// Local stiffness of screws in bone, of [screws] or of one [[screw]]; nothing when it is absent or was reported.
std::optional<double> read_interface(const Section& section);
// `first`: on the day of the operation.
std::vector<models::InterfaceStage> read_interface_course(const Section& screws, double first);

// Absent table: nothing. What it leaves out is as in usual_layouts.
std::optional<models::LayoutRules> read_layouts(const Section& layouts, const std::vector<models::Screw>& screws);
// The rules for a case that has none: the kinds of its own screws, at least two a fragment.
models::LayoutRules usual_layouts(const std::vector<models::Screw>& screws);

std::vector<models::TemporaryHold> read_temporary(const Section& file);
std::vector<models::Step> read_steps(const Section& file, const std::vector<models::Screw>& screws,
                                     Reading& reading);
models::Contact read_contact(const Section& section);
models::Fracture read_fracture(const Section& section, const models::Bone& bone);
std::optional<models::Healing> read_healing(const Section& section);  // absent table: nothing
models::Stock read_stock(const Section& section);
std::vector<models::LoadCase> read_loads(const Section& file, const models::Plate& plate);
models::Aspect aspect_named(std::string_view name);  // another word: cranial

// Three bench loads for a case that names none: axial 100 N, bending 1 N m, torsion 1 N m. Their sizes are round
// numbers.
std::vector<models::LoadCase> bench_loads();

// What the reader took where the case is silent and the figures depend on it, in sentences.
std::vector<std::string> assumptions_of(const Section& file, const models::Construct& construct);

}  // namespace gapstrain::cases
