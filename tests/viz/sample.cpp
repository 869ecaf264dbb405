#include "tests/viz/sample.h"

#include "tests/viz/sample_meshes.h"

#include <Eigen/Geometry>
#include <cmath>
#include <numbers>

namespace gapstrain::tests {

namespace {

constexpr double bone_length = 131.0, plate_height = 9.1, plate_thickness = 2.6, plate_width = 9.4;
constexpr double hole_radius = 2.05, gap_middle = 64.9;

// Motion of the cross-section at x: bending both ways and a twist, all with their matching rotations.
Eigen::Vector3d section_motion(double x) {
  const double s = x / bone_length;
  return {-0.02 * s, 0.11 * s * s, -0.42 * s * s * (1.5 - 0.5 * s)};
}

Eigen::Vector3d section_rotation(double x) {
  const double h = 1e-4;
  const Eigen::Vector3d slope = (section_motion(x + h) - section_motion(x - h)) / (2.0 * h);
  return {0.006 * x / bone_length, -slope.z(), slope.y()};
}

Eigen::Vector3d displacement(const Eigen::Vector3d& place) {
  const Eigen::Vector3d arm(0.0, place.y(), place.z());
  return section_motion(place.x()) + section_rotation(place.x()).cross(arm);
}

double hole_centre(int hole) { return sample_plate_start + (hole + 0.5) * sample_pitch; }

// High in the middle of the plate, with peaks at the sides of the holes.
double plate_stress(double x, double y) {
  const double s = (x - hole_centre(5)) / 38.0;
  const double nominal = 20.0 + 150.0 * std::exp(-s * s);
  double concentration = 1.0;
  for (int hole = 0; hole < sample_holes; ++hole) {
    const Eigen::Vector2d arm(x - hole_centre(hole), y);
    const double away = arm.norm() / hole_radius - 1.0, across = arm.y() * arm.y() / arm.squaredNorm();
    concentration += (1.7 * across - 0.7) * std::exp(-2.2 * away);
  }
  return nominal * std::max(concentration, 0.05) * (1.0 + 0.02 * y / plate_width);
}

models::ShellField shell_field(const std::string& name, models::BodyKind kind, const mesh::ShellMesh& mesh) {
  models::ShellField field;
  field.name = name;
  field.kind = kind;
  field.mesh = std::make_shared<mesh::ShellMesh>(mesh);
  const auto count = mesh.nodes.rows();
  field.displacements.resize(count, 3);
  field.rotations.resize(count, 3);
  for (auto* stress : {&field.stress_top, &field.stress_middle, &field.stress_bottom}) stress->resize(count, 3);
  for (Eigen::Index i = 0; i < count; ++i) {
    const Eigen::Vector3d place = mesh.nodes.row(i);
    field.displacements.row(i) = displacement(place);
    field.rotations.row(i) = section_rotation(place.x());
    const double s = plate_stress(place.x(), place.y()) * (kind == models::BodyKind::plate ? 1.0 : 0.1);
    field.stress_top.row(i) << s, 0.13 * s, -0.07 * s;
    field.stress_middle.row(i) << 0.2 * s, 0.03 * s, 0.01 * s;
    field.stress_bottom.row(i) << -0.81 * s, 0.09 * s, 0.05 * s;
  }
  const auto von_mises = [](const Eigen::MatrixX3d& stress) {
    const auto a = stress.col(0).array(), b = stress.col(1).array(), c = stress.col(2).array();
    return Eigen::VectorXd((a * a - a * b + b * b + 3.0 * c * c).sqrt());
  };
  field.von_mises_top = von_mises(field.stress_top);
  field.von_mises_middle = von_mises(field.stress_middle);
  field.von_mises_bottom = von_mises(field.stress_bottom);
  return field;
}

models::ScrewField screw_field(const std::string& label, int hole) {
  models::ScrewField screw{label, hole, 0.95, hole_radius, {}, {}, {}};
  const double heights[] = {10.4, 9.1, 7.8, 6.6, 5.2, -5.1, -6.5, -8.9};
  const double stress[] = {88.0, 88.0, 141.0, 127.0, 66.0, 41.0, 12.0, 0.0};
  for (std::size_t i = 0; i < std::size(heights); ++i) {
    screw.axis.emplace_back(hole_centre(hole - 1) + 0.03 * (10.4 - heights[i]), 0.0, heights[i]);
    screw.displacements.push_back(displacement(screw.axis.back()));
    screw.stress.push_back(stress[i]);
  }
  return screw;
}

models::GapPoint gap_point(double degrees, double scale) {
  using namespace models;
  const double angle = degrees * std::numbers::pi / 180.0;
  GapPoint point;
  point.around = angle * radian;
  const double axial = scale * (-0.041 - 0.037 * std::cos(angle + 2.9) - 0.004 * std::sin(2.0 * angle));
  const double shear = std::abs(scale) * (0.013 + 0.006 * std::cos(angle - 0.6));
  point.axial_strain = axial;
  point.shear_strain = shear;
  point.axial_motion = axial * sample_gap * mm;
  point.shear_motion = shear * sample_gap * mm;
  return point;
}

models::GapFindings gap_findings(double scale) {
  models::GapFindings gap;
  models::Range axial{1e9, 0.0, -1e9}, shear = axial;
  constexpr int points = 60;
  for (int k = 0; k < points; ++k) {
    gap.edge.push_back(gap_point(360.0 * k / points, scale));
    const auto extend = [](models::Range& range, double value) {
      range = {std::min(range.min, value), range.mean + value / points, std::max(range.max, value)};
    };
    extend(axial, *gap.edge.back().axial_strain);
    extend(shear, *gap.edge.back().shear_strain);
  }
  gap.axial_strain = axial;
  gap.shear_strain = shear;
  gap.near = gap_point(0.0, scale);
  gap.far = gap_point(180.0, scale);
  return gap;
}

}  // namespace

std::shared_ptr<const mesh::ShellMesh> sample_plate_mesh() {
  return std::make_shared<mesh::ShellMesh>(strip_of_holes({.holes = sample_holes,
                                                           .start = sample_plate_start,
                                                           .pitch = sample_pitch,
                                                           .width = plate_width,
                                                           .radius = hole_radius,
                                                           .height = plate_height,
                                                           .thickness = plate_thickness}));
}

models::LoadFields sample_fields(models::PlateFace hottest) {
  models::LoadFields fields;
  fields.load = "axial 100 N";
  const EllipticTube proximal{0.0, gap_middle - 0.5 * sample_gap, 5.3, 6.2, 1.7};
  const EllipticTube distal{gap_middle + 0.5 * sample_gap, bone_length, 5.3, 6.2, 1.7};
  fields.shells.push_back(shell_field("plate", models::BodyKind::plate, *sample_plate_mesh()));
  fields.shells.push_back(shell_field("proximal fragment", models::BodyKind::bone, elliptic_tube(proximal)));
  fields.shells.push_back(shell_field("distal fragment", models::BodyKind::bone, elliptic_tube(distal)));
  if (hottest == models::PlateFace::bottom) {
    auto& plate = fields.shells.front();
    std::swap(plate.von_mises_top, plate.von_mises_bottom);
    std::swap(plate.stress_top, plate.stress_bottom);
  }
  for (const int hole : {1, 2, 4, 7, 8, 10})
    fields.screws.push_back(screw_field(std::string(hole < 5 ? "P" : "D").append(std::to_string(hole)), hole));
  return fields;
}

models::LoadFindings sample_load_findings(const models::LoadFields& fields, double strain_scale) {
  using namespace models;
  LoadFindings findings;
  findings.load = fields.load;
  findings.gap = gap_findings(strain_scale);

  const ShellField& plate = fields.shells.front();
  Eigen::Index top = 0, bottom = 0;
  const double top_peak = plate.von_mises_top.maxCoeff(&top),
               bottom_peak = plate.von_mises_bottom.maxCoeff(&bottom);
  const Eigen::Vector3d place = plate.mesh->nodes.row(top_peak > bottom_peak ? top : bottom);
  auto& peak = findings.plate.peak;
  peak.von_mises = std::max(top_peak, bottom_peak) * mpa;
  peak.along = (place.x() - sample_plate_start) * mm;
  peak.across = place.y() * mm;
  peak.face = top_peak > bottom_peak ? PlateFace::top : PlateFace::bottom;
  peak.hole = 1 + static_cast<int>((place.x() - sample_plate_start) / sample_pitch);

  for (int hole = 1; hole <= sample_holes; ++hole) {
    HoleStress entry;
    entry.hole = hole;
    entry.along = (hole - 0.5) * sample_pitch * mm;
    for (const auto& screw : fields.screws) entry.filled = entry.filled || screw.hole == hole;
    findings.plate.holes.push_back(entry);
  }
  for (const auto& screw : fields.screws) {
    ScrewFindings entry;
    entry.label = screw.label;
    entry.hole = screw.hole;
    findings.screws.push_back(entry);
  }
  for (double along = 0.5; along < sample_holes * sample_pitch; along += 0.9) {
    const double bump = std::exp(-std::pow((along - 52.0) / 26.0, 2));
    PlateStation station;
    station.along = along * mm;
    station.normal = -97.0 * std::tanh(bump * 3.0) * newton;
    station.shear_z = 21.0 * std::sin(along / 9.0) * bump * newton;
    station.shear_y = -8.0 * std::cos(along / 13.0) * bump * newton;
    station.bending_flat = 1130.0 * bump * newton_mm;
    station.bending_edge = (-160.0 + 3.0 * along) * bump * newton_mm;
    station.torsion = 90.0 * std::sin(along / 17.0) * newton_mm;
    const double hole = std::cos(2.0 * std::numbers::pi * along / sample_pitch);
    station.surface_top = (113.0 + 31.0 * hole) * bump * mpa;
    station.surface_bottom = (-121.0 - 28.0 * hole) * bump * mpa;
    findings.plate.stations.push_back(station);
  }
  return findings;
}

models::Findings sample_findings() {
  models::Findings findings;
  findings.construct = "Radius, ten-hole plate, transverse fracture";
  const auto fields = sample_fields();
  const char* names[] = {"axial 100 N", "bending, plate in compression", "torsion 0.5 N m"};
  const double scales[] = {1.0, -1.9, 0.35};
  for (std::size_t l = 0; l < std::size(names); ++l) {
    findings.loads.push_back(sample_load_findings(fields, scales[l]));
    findings.loads.back().load = names[l];
  }
  return findings;
}

}  // namespace gapstrain::tests
