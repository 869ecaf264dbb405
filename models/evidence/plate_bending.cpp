#include "models/evidence/plate_bending.h"

#include "mesh/gmsh_session.h"
#include "models/assembly/yield_curve.h"
#include "models/geometry/bone_shape.h"
#include "models/geometry/plate_shape.h"
#include "models/preparation/plate_mesh.h"
#include "solver/bodies/body.h"
#include "solver/bodies/port.h"
#include "solver/bodies/shell.h"
#include "solver/bodies/yielding.h"

#include <algorithm>
#include <array>
#include <cmath>
#include <memory>
#include <utility>
#include <vector>

namespace gapstrain::models {

namespace {

// Flat: on a straight bone it has nothing to follow.
PlateShape flat_shape(const Plate& plate) {
  Bone bone;
  bone.length = plate.length;
  bone.stations = {{.position = 0.5 * plate.length,
                    .width_mediolateral = 10.0 * mm,
                    .width_craniocaudal = 10.0 * mm,
                    .cortex = 2.0 * mm,
                    .bow_lateral = {},
                    .bow_cranial = {}}};
  Plate alone = plate;
  alone.contour = Contour::straight;
  alone.proximal_end = 0.0 * mm;
  alone.prebend = 0.0 * mm;
  return PlateShape(alone, BoneShape(bone, plate.aspect));
}

// Middles of the pieces over whose length no hole is: before the first hole, between holes, behind the last one.
std::vector<double> lands(const Plate& plate) {
  std::vector<double> middles;
  double from = 0.0;
  for (const auto& hole : plate.holes) {
    const double centre = hole.position.value(), half = 0.5 * hole.slot_length.value();
    middles.push_back(0.5 * (from + centre - half));
    from = centre + half;
  }
  middles.push_back(0.5 * (from + plate.length.value()));
  return middles;
}

// Outer, inner, inner and outer roller, along the plate.
std::optional<std::array<double, 4>> roller_places_of(const Plate& plate) {
  const std::size_t holes = plate.holes.size(), between = holes % 2 == 0 ? 2 : 3;
  if (holes < 4) return std::nullopt;
  const auto places = lands(plate);
  const std::size_t inner = (holes - between) / 2, outer = inner >= 2 ? 1 : 0;
  return std::array{places[outer], places[inner], places[holes - inner], places[holes - outer]};
}

// Of a hole or slot across the plate at that place.
double open_width(const Plate& plate, double along) {
  double open = 0.0;
  for (const auto& hole : plate.holes) {
    const double radius = 0.5 * hole.diameter.value();
    const double straight = std::max(0.5 * hole.slot_length.value() - radius, 0.0);
    const double off = std::max(std::abs(along - hole.position.value()) - straight, 0.0);
    if (off < radius) open = 2.0 * std::sqrt(radius * radius - off * off);
  }
  return open;
}

// A line load across the plate at `along`, over its left (-1), its right (1) or all of its width (0): a mean of
// the nodes near it, with its weight centred on the line.
solver::Port line_port(const solver::Shell& shell, const PlateMesh& mesh, double along, double width, int side) {
  const double reach = width / 5.0;
  std::vector<int> nodes;
  std::vector<double> weights;
  double sum = 0.0, first = 0.0, second = 0.0;
  for (Eigen::Index node = 0; node < mesh.along_across.rows(); ++node) {
    const double off = mesh.along_across(node, 0) - along;
    if (std::abs(off) >= reach || side * mesh.along_across(node, 1) < 0.0) continue;
    const double weight = 1.0 - std::abs(off) / reach;
    nodes.push_back(static_cast<int>(node));
    weights.push_back(weight);
    sum += weight;
    first += weight * off;
    second += weight * off * off;
  }
  const double tilt = -first / second, scale = 1.0 / (sum + tilt * first);
  for (std::size_t k = 0; k < nodes.size(); ++k)
    weights[k] *= scale * (1.0 + tilt * (mesh.along_across(nodes[k], 0) - along));
  return solver::point_port(shell, nodes, weights, 0.0);
}

class BendingTest {
 public:
  BendingTest(const Plate& plate, const PlateShape& shape, const solver::Shell& shell, const PlateMesh& mesh,
              const std::array<double, 4>& rollers) {
    std::vector<solver::Port> ports;
    const auto add = [&](double along, int side) {
      places_.push_back(along);
      ports.push_back(line_port(shell, mesh, along, shape.width(along), side));
    };
    // Two halves of the first roller keep the plate from rolling over.
    add(rollers[0], -1);
    add(rollers[0], 1);
    for (const std::size_t k : {1, 2, 3}) add(rollers[k], 0);
    const solver::Body body(shell);
    plate_ = body.condense(solver::join_ports(shell.unknowns(), ports));
    const auto hold = [&](std::size_t port, const std::vector<Eigen::Index>& axes) {
      Eigen::MatrixXd transfer = Eigen::MatrixXd::Zero(3, static_cast<Eigen::Index>(axes.size()));
      for (std::size_t k = 0; k < axes.size(); ++k) transfer(axes[k], static_cast<Eigen::Index>(k)) = 1.0;
      setting_.links.push_back(static_cast<int>(links_.size()));
      links_.push_back({"roller",
                        {{0, static_cast<Eigen::Index>(3 * port), transfer}},
                        Eigen::MatrixXd::Zero(transfer.cols(), transfer.cols()),
                        Eigen::VectorXd::Zero(transfer.cols())});
    };
    hold(0, {0, 1, 2});
    hold(1, {2});
    hold(4, {1, 2});
    hold(2, {2});
    hold(3, {2});
    system_ = std::make_unique<solver::System>(std::vector<const solver::Condensed*>{&plate_}, links_);
    if (plate.material.yield_strength) add_sections(plate, shape, rollers);
    setting_.initial = Eigen::VectorXd::Zero(system_->rows());
    setting_.hands.at = Eigen::VectorXd::Zero(6);
    pressing_ = {system_->first_row(3), system_->first_row(4)};
  }

  // Displacement of the loading rollers, mm.
  double displacement(double load) const {
    solver::Setting setting = setting_;
    for (const Eigen::Index row : pressing_) setting.driven.push_back({row, 0.5 * load});
    const auto state = solver::press_yielding(*system_, {}, sections_, setting, system_->no_loads(1),
                                              solver::Yielded::none(sections_.size()));
    Eigen::VectorXd deformations = system_->deformations(state.pressed.solution);
    for (std::size_t k = 0; k < sections_.size(); ++k)
      deformations(sections_[k].rows) -=
          sections_[k].of_forces.transpose() * state.yielded.deformed.col(static_cast<Eigen::Index>(k));
    return -0.5 * (deformations(pressing_[0]) + deformations(pressing_[1]));
  }

  // Smallest full moment of a section, N mm; 0 without any.
  double least_moment() const {
    double least = 0.0;
    for (const auto& section : sections_)
      if (least == 0.0 || section.full(4) < least) least = section.full(4);
    return least;
  }

 private:
  // Slices of the plate between the outer rollers, each with the metal beside its hole. A slice reads the moment
  // of all forces beyond it, and bends what lies there upward.
  void add_sections(const Plate& plate, const PlateShape& shape, const std::array<double, 4>& rollers) {
    constexpr double longest = 0.25;  // mm
    const double span = rollers[3] - rollers[0];
    const int slices = static_cast<int>(std::ceil(span / longest));
    const double length = span / slices;
    for (int slice = 0; slice < slices; ++slice) {
      const double along = rollers[0] + (slice + 0.5) * length, thickness = shape.thickness(along);
      const double metal = shape.width(along) - open_width(plate, along);
      const double moment = plate.material.yield_strength->value() * metal * thickness * thickness / 4.0;
      solver::YieldSection section;
      section.name = "plate";
      section.full.setConstant(1e12);
      section.full(4) = moment;
      section.curve = bending_curve({{solver::BarSection::rectangle, length, thickness, moment}}, plate.material);
      std::vector<double> arms;
      for (std::size_t k = 0; k < links_.size(); ++k) {
        const auto& end = links_[k].ends.front();
        const double arm = places_[static_cast<std::size_t>(end.column / 3)] - along;
        for (Eigen::Index row = 0; row < end.transfer.cols(); ++row) {
          if (arm <= 0.0 || end.transfer(2, row) == 0.0) continue;
          section.rows.push_back(system_->first_row(static_cast<int>(k)) + row);
          arms.push_back(arm);
        }
      }
      section.of_forces = Eigen::MatrixXd::Zero(6, static_cast<Eigen::Index>(arms.size()));
      section.of_forces.row(4) = Eigen::Map<const Eigen::RowVectorXd>(arms.data(), section.of_forces.cols());
      sections_.push_back(std::move(section));
    }
  }

  solver::Condensed plate_;
  std::vector<solver::Link> links_;
  std::unique_ptr<solver::System> system_;
  std::vector<double> places_;  // of the ports, along the plate
  std::vector<solver::YieldSection> sections_;
  solver::Setting setting_;
  std::array<Eigen::Index, 2> pressing_{};
};

}  // namespace

std::optional<PlateBending> bend_plate(const Plate& plate, const MeshDensity& density) {
  const auto rollers = roller_places_of(plate);
  if (!rollers) return std::nullopt;
  const PlateShape shape = flat_shape(plate);
  PlateMesh mesh;
  {
    const mesh::GmshSession session;
    mesh = mesh_plate(session, plate, shape, density);
  }
  const solver::Shell shell{
      mesh.mesh, solver::isotropic_shell(plate.material.youngs_modulus.value(), plate.material.poissons_ratio)};
  const mesh::BesideMeshing no_meshing_meanwhile;
  const BendingTest test(plate, shape, shell, mesh, *rollers);

  PlateBending found;
  found.inner_span = (*rollers)[2] - (*rollers)[1];
  found.arm = 0.5 * ((*rollers)[1] - (*rollers)[0] + (*rollers)[3] - (*rollers)[2]);
  found.stiffness = 1.0 / test.displacement(1.0);
  found.structural_stiffness =
      (2.0 * found.arm + 3.0 * found.inner_span) * found.stiffness * found.arm * found.arm / 12.0;
  const double moment = test.least_moment();
  if (moment == 0.0) return found;
  const double offset = 0.002 * found.inner_span;
  double low = 0.0, high = 2.0 * moment / found.arm;
  const auto beyond = [&](double load) { return test.displacement(load) - load / found.stiffness > offset; };
  while (!beyond(high)) high *= 1.5;
  while (high - low > 1e-5 * high) {
    const double middle = 0.5 * (low + high);
    (beyond(middle) ? high : low) = middle;
  }
  found.proof_load = high;
  found.strength = 0.5 * high * found.arm;
  return found;
}

}  // namespace gapstrain::models
