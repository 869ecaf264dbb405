#include "models/stress/plate_sections.h"

#include <Eigen/Geometry>
#include <Eigen/LU>

#include <algorithm>

namespace gapstrain::models {

namespace {

struct PortForce {
  double along = 0.0;
  Eigen::Vector3d place;
  Eigen::Vector3d force, moment;  // on the plate, about `place`
};

std::vector<PortForce> forces_on_plate(const Assembly& assembly, const solver::Solution& solution) {
  std::vector<PortForce> forces;
  const Eigen::VectorXd& all = solution.port_forces[only_plate_body].col(0);
  for (const auto& port : only(assembly.plate_ports)) {
    const bool has_moment = port.motions > 3;
    PortForce entry{port.along, port.centre, all.segment<3>(port.column), Eigen::Vector3d::Zero()};
    if (has_moment) entry.moment = all.segment<3>(port.column + 3);
    if (!entry.force.isZero(0.0) || !entry.moment.isZero(0.0)) forces.push_back(entry);
  }
  return forces;
}

// Values at the nodes read anywhere on the flat plate: linear in the triangle halves of the cell that holds the
// place; over a hole, the nearest node's.
class CentreLine {
 public:
  explicit CentreLine(const PlateMesh& plate) : places_(plate.along_across) {
    const auto add = [&](int a, int b, int c) {
      const double low = std::min({places_(a, 1), places_(b, 1), places_(c, 1)});
      const double high = std::max({places_(a, 1), places_(b, 1), places_(c, 1)});
      if (low <= tolerance && high >= -tolerance) triangles_.push_back({a, b, c});
    };
    for (const auto& quad : plate.mesh->quads) {
      add(quad[0], quad[1], quad[2]);
      add(quad[0], quad[2], quad[3]);
    }
    for (const auto& triangle : plate.mesh->triangles) add(triangle[0], triangle[1], triangle[2]);
  }

  Eigen::Vector3d at(double along, const Eigen::MatrixX3d& values) const {
    const Eigen::Vector2d place(along, 0.0);
    for (const auto& [a, b, c] : triangles_) {
      Eigen::Matrix3d corners;
      corners << places_(a, 0), places_(b, 0), places_(c, 0), places_(a, 1), places_(b, 1), places_(c, 1), 1.0,
          1.0, 1.0;
      const Eigen::Vector3d shares = corners.inverse() * place.homogeneous();
      if (shares.minCoeff() >= -tolerance)
        return (shares(0) * values.row(a) + shares(1) * values.row(b) + shares(2) * values.row(c)).transpose();
    }
    Eigen::Index nearest = 0;
    (places_.rowwise() - place.transpose()).rowwise().squaredNorm().minCoeff(&nearest);
    return values.row(nearest).transpose();
  }

 private:
  static constexpr double tolerance = 1e-9;
  const Eigen::MatrixX2d& places_;
  std::vector<mesh::Triangle> triangles_;
};

}  // namespace

std::vector<PlateStation> plate_stations(const Assembly& assembly, const solver::Solution& solution,
                                         const BodyStress& stress) {
  constexpr int steps = 160;
  constexpr double beside_jump = 1e-6;  // mm
  const double length = only(assembly.construct.plates).length.value();
  const auto forces = forces_on_plate(assembly, solution);
  std::vector<double> places;
  for (int step = 0; step <= steps; ++step) places.push_back(length * step / steps);
  for (const auto& hole : only(assembly.construct.plates).holes) {
    places.push_back(hole.position.value() - beside_jump);
    places.push_back(hole.position.value() + beside_jump);
  }
  std::sort(places.begin(), places.end());

  const CentreLine centre_line(only(assembly.plates).mesh);
  std::vector<PlateStation> stations;
  for (const double along : places) {
    const mesh::SurfacePoint section = only(assembly.plates).shape->mid_surface(along, 0.0);
    const Eigen::Vector3d across = Eigen::Vector3d::UnitY();
    const Eigen::Vector3d tangent = across.cross(section.normal);
    // The part towards proximal is in balance: what the section passes on to it is minus the forces' sum.
    Eigen::Vector3d force = Eigen::Vector3d::Zero(), moment = Eigen::Vector3d::Zero();
    for (const auto& port : forces) {
      if (port.along > along) continue;
      force -= port.force;
      moment -= port.moment + (port.place - section.position).cross(port.force);
    }
    PlateStation station;
    station.along = along * mm;
    station.normal = force.dot(tangent) * newton;
    station.shear_y = force.dot(across) * newton;
    station.shear_z = force.dot(section.normal) * newton;
    station.torsion = moment.dot(tangent) * newton_mm;
    station.bending_flat = moment.dot(across) * newton_mm;
    station.bending_edge = moment.dot(section.normal) * newton_mm;
    const Eigen::Vector3d top = centre_line.at(along, stress.top), bottom = centre_line.at(along, stress.bottom);
    station.surface_top = top(0) * mpa;
    station.surface_bottom = bottom(0) * mpa;
    station.surface_shear_top = top(2) * mpa;
    station.surface_shear_bottom = bottom(2) * mpa;
    stations.push_back(station);
  }
  return stations;
}

}  // namespace gapstrain::models
