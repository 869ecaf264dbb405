// How the parts of a construct are written to and read from an archive of cereal: each names all of its members,
// and a structured binding that misses one does not compile. Private to the archive of bodies.
#pragma once

#include "models/parts/construct.h"

#include <cereal/types/array.hpp>
#include <cereal/types/optional.hpp>
#include <cereal/types/string.hpp>
#include <cereal/types/vector.hpp>

#include <cstdint>

namespace cereal {

template <class Archive, class Unit>
void save(Archive& archive, const boost::units::quantity<Unit, double>& quantity) {
  archive(quantity.value());
}
template <class Archive, class Unit>
void load(Archive& archive, boost::units::quantity<Unit, double>& quantity) {
  double value = 0.0;
  archive(value);
  quantity = boost::units::quantity<Unit, double>::from_value(value);
}

}  // namespace cereal

namespace gapstrain::models {

// A size or an index, in 64 bits whatever the machine's own are.
template <class Archive, class Number>
void archive_index(Archive& archive, Number& number) {
  auto wide = static_cast<std::int64_t>(number);
  archive(wide);
  number = static_cast<Number>(wide);
}

template <class Archive>
void serialize(Archive& archive, FatigueStrength& strength) {
  auto& [low, middle, high, source] = strength;
  archive(low, middle, high, source);
}

template <class Archive>
void serialize(Archive& archive, Metal& metal) {
  auto& [name, modulus, poissons_ratio, yield, source, ultimate, fatigue] = metal;
  archive(name, modulus, poissons_ratio, yield, source, ultimate, fatigue);
}

template <class Archive>
void serialize(Archive& archive, CorticalBone& cortex) {
  auto& [name, modulus_l, modulus_t, ratio_lt, shear_lt, shear_lr, shear_tr, yield_strain, source] = cortex;
  archive(name, modulus_l, modulus_t, ratio_lt, shear_lt, shear_lr, shear_tr, yield_strain, source);
}

template <class Archive>
void serialize(Archive& archive, Tissue& tissue) {
  auto& [name, modulus, poissons_ratio, source] = tissue;
  archive(name, modulus, poissons_ratio, source);
}

template <class Archive>
void serialize(Archive& archive, BoneStation& station) {
  auto& [position, mediolateral, craniocaudal, cortex, bow_lateral, bow_cranial] = station;
  archive(position, mediolateral, craniocaudal, cortex, bow_lateral, bow_cranial);
}

template <class Archive>
void serialize(Archive& archive, Bone& bone) {
  auto& [name, side, length, stations, cortex] = bone;
  archive(name, side, length, stations, cortex);
}

template <class Archive>
void serialize(Archive& archive, PlateHole& hole) {
  auto& [position, shape, diameter, slot_length] = hole;
  archive(position, shape, diameter, slot_length);
}

template <class Archive>
void serialize(Archive& archive, PlateSection& section) {
  auto& [position, width, thickness] = section;
  archive(position, width, thickness);
}

template <class Archive>
void serialize(Archive& archive, Plate& plate) {
  auto& [length, sections, holes, material, aspect, end, standoff, contour, prebend, angle_limit, finish] = plate;
  archive(length, sections, holes, material, aspect, end, standoff, contour, prebend, angle_limit, finish);
}

template <class Archive>
void serialize(Archive& archive, ScrewSize& size) {
  auto& [designation, thread, core, pitch, source, pilot_drill, root_radius] = size;
  archive(designation, thread, core, pitch, source, pilot_drill, root_radius);
}

template <class Archive>
void serialize(Archive& archive, FreeEntry& entry) {
  auto& [position, around] = entry;
  archive(position, around);
}

template <class Archive>
void serialize(Archive& archive, Screw& screw) {
  auto& [label, hole, plate, entry, kind, size, material, cortices, tilt_along, tilt_across, preload, torque,
         slide, id, interface] = screw;
  archive(label, hole, entry, kind, size, material, cortices, tilt_along, tilt_across, preload, torque, slide, id,
          interface);
  archive_index(archive, plate);
}

template <class Archive>
void serialize(Archive& archive, TemporaryHold& hold) {
  auto& [label, kind, hole, diameter, along, force, plate] = hold;
  archive(label, kind, hole, diameter, along, force);
  archive_index(archive, plate);
}

template <class Archive>
void serialize(Archive& archive, Step& step) {
  auto& [place, insert, tighten, remove, tissue] = step;
  archive(place, insert, tighten, remove, tissue);
}

template <class Archive>
void serialize(Archive& archive, Contact& contact) {
  auto& [friction, plate_on_bone, bone_on_bone] = contact;
  archive(friction, plate_on_bone, bone_on_bone);
}

template <class Archive>
void serialize(Archive& archive, Fracture& fracture) {
  auto& [position, gap, obliquity, direction, tissue, pattern] = fracture;
  archive(position, gap, obliquity, direction, tissue, pattern);
}

template <class Archive>
void serialize(Archive& archive, FourPointBending& bending) {
  auto& [outer_proximal, inner_proximal, inner_distal, outer_distal, total, across_plate] = bending;
  archive(outer_proximal, inner_proximal, inner_distal, outer_distal, total, across_plate);
}

template <class Archive>
void serialize(Archive& archive, EndSupport& support) {
  auto& [hold, flexibility] = support;
  auto& [rows] = flexibility;
  archive(hold, rows);
}

template <class Archive>
void serialize(Archive& archive, EndSupports& supports) {
  auto& [proximal, distal] = supports;
  archive(proximal, distal);
}

template <class Archive>
void serialize(Archive& archive, Point& point) {
  auto& [x, y, z] = point;
  archive(x, y, z);
}

template <class Archive>
void serialize(Archive& archive, ForceVector& force) {
  auto& [x, y, z] = force;
  archive(x, y, z);
}

template <class Archive>
void serialize(Archive& archive, LoadLine& line) {
  auto& [from, to] = line;
  archive(from, to);
}

template <class Archive>
void serialize(Archive& archive, SurfaceForce& applied) {
  auto& [position, around, force] = applied;
  archive(position, around, force);
}

template <class Archive>
void serialize(Archive& archive, PartBand& band) {
  auto& [low, high] = band;
  archive(low, high);
}

template <class Archive>
void serialize(Archive& archive, LoadCase& load) {
  auto& [name, supports, distance, offset_y, offset_z, line, axial, transverse_y, transverse_z, bending_y,
         bending_z, torsion, four_point, forces, cycles_per_day, spread, axial_band, bending_band, torsion_band] =
      load;
  archive(name, supports, distance, offset_y, offset_z, line, axial, transverse_y, transverse_z, bending_y,
          bending_z, torsion, four_point, forces, cycles_per_day, spread, axial_band, bending_band, torsion_band);
}

template <class Archive>
void serialize(Archive& archive, MeshDensity& mesh) {
  auto& [refinement, rim_elements] = mesh;
  archive(refinement, rim_elements);
}

template <class Archive>
void serialize(Archive& archive, FigureLimit& limit) {
  auto& [figure, least, most] = limit;
  archive(figure, least, most);
}

template <class Archive>
void serialize(Archive& archive, FigureWish& wish) {
  auto& [figure, most] = wish;
  archive(figure, most);
}

template <class Archive>
void serialize(Archive& archive, LayoutRules& rules) {
  auto& [least_per_fragment, most_per_fragment, most_in_all, kinds, barred, filled, limits, rank_by, front] =
      rules;
  archive(least_per_fragment, most_per_fragment, most_in_all, kinds, barred, filled, limits, rank_by, front);
}

template <class Archive>
void serialize(Archive& archive, ProtectedTime& time) {
  auto& [until_week, share, without] = time;
  archive(until_week, share, without);
}

template <class Archive>
void serialize(Archive& archive, Healing& healing) {
  auto& [weeks_from, weeks_to, at_first, at_union, activity_factor, protection] = healing;
  archive(weeks_from, weeks_to, at_first, at_union, activity_factor, protection);
}

template <class Archive>
void serialize(Archive& archive, Stock& stock) {
  auto& [screw_step, screw_allowance] = stock;
  archive(screw_step, screw_allowance);
}

template <class Archive>
void serialize(Archive& archive, InterfaceStage& stage) {
  auto& [week, stiffness] = stage;
  archive(week, stiffness);
}

template <class Archive>
void serialize(Archive& archive, Construct& construct) {
  auto& [name, body_mass, bone, plates, screws, temporary, steps, contact, metal_law, screw_interface,
         interface_course, second_order, fractures, loads, mesh, layouts, healing, stock, estimated] = construct;
  archive(name, body_mass, bone, plates, screws, temporary, steps, contact, metal_law, screw_interface,
          interface_course, second_order, fractures, loads, mesh, layouts, healing, stock, estimated);
}

}  // namespace gapstrain::models
