#include "tests/solid/perforated_bar.h"

#include "mesh/perforated_plate.h"
#include "mesh/roll_up.h"
#include "models/stress/rim_factors.h"
#include "solver/bodies/stress.h"
#include "solver/bodies/system.h"

#include <fmt/format.h>

#include <algorithm>
#include <cmath>

namespace gapstrain::tests {

namespace {

// A bar of 112 x 8 x 2.5 mm centred on x = 0 with mesh lines at the rollers.
struct Bar {
  solver::Shell shell;
  std::vector<std::vector<int>> lines;  // nodes of each cross line, by rising y
};

Bar make_bar(bool perforated, const std::vector<double>& lines) {
  const mesh::GmshSession session;
  mesh::PerforatedPlate plate;
  plate.length = 112.0;
  plate.widths = {{0.0, 8.0}};
  if (perforated)
    for (int hole = 0; hole < 10; ++hole) plate.holes.push_back({6.5 + 11.0 * hole, 3.0, 3.0});
  for (const double x : lines) plate.cross_lines.push_back(x + 56.0);
  plate.size_max = 8.0 / 7.0;  // the default of plates
  const auto flat = mesh::mesh_perforated_plate(session, plate);
  Bar bar;
  bar.shell.mesh = std::make_shared<mesh::ShellMesh>(mesh::roll_up(
      flat,
      [](double x, double y) {
        return mesh::SurfacePoint{{x - 56.0, y, 0.0}, {0.0, 0.0, 1.0}, 2.5};
      },
      0.0));
  bar.shell.material = solver::isotropic_shell(110000.0, 0.3);
  for (std::size_t k = 0; k < lines.size(); ++k)
    bar.lines.push_back(bar.shell.mesh->groups.at(fmt::format("cross:{}", k)));
  return bar;
}

// Width each node of a line stands for. Where a hole cuts the line the stretch over it stands for nothing.
std::vector<double> tributary(const mesh::ShellMesh& mesh, const std::vector<int>& line, double hole_radius) {
  std::vector<double> width(line.size(), 0.0);
  for (std::size_t k = 0; k + 1 < line.size(); ++k) {
    const double low = mesh.nodes(line[k], 1), high = mesh.nodes(line[k + 1], 1);
    if (hole_radius > 0.0 && low > -hole_radius - 1e-6 && high < hole_radius + 1e-6) continue;
    width[k] += 0.5 * (high - low);
    width[k + 1] += 0.5 * (high - low);
  }
  return width;
}

double mean_over(const mesh::ShellMesh& mesh, const std::vector<int>& line, double hole_radius,
                 const Eigen::VectorXd& displacements, int unknown) {
  const auto width = tributary(mesh, line, hole_radius);
  double sum = 0.0, total = 0.0;
  for (std::size_t k = 0; k < line.size(); ++k) {
    sum += width[k] * displacements(6 * line[k] + unknown);
    total += width[k];
  }
  return sum / total;
}

// Four-point bending: lines 0 and 3 are supports (uz held at every node), 1 and 2 carry `force` each, spread
// evenly over the width that is there.
Eigen::VectorXd bend(const Bar& bar, double force, double hole_radius_at_load) {
  const auto& mesh = *bar.shell.mesh;
  std::vector<solver::Port> ports;
  std::vector<solver::Link> links;
  const auto hold = [&](int node, const std::vector<int>& axes) {
    ports.push_back(solver::point_port(bar.shell, {node}, {1.0}, 0.0));
    Eigen::MatrixXd transfer = Eigen::MatrixXd::Zero(3, static_cast<Eigen::Index>(axes.size()));
    for (std::size_t k = 0; k < axes.size(); ++k) transfer(axes[k], static_cast<Eigen::Index>(k)) = 1.0;
    const auto count = transfer.cols();
    links.push_back({"roller",
                     {{0, static_cast<Eigen::Index>(3 * (ports.size() - 1)), transfer}},
                     Eigen::MatrixXd::Zero(count, count),
                     Eigen::VectorXd::Zero(count)});
  };
  for (std::size_t k = 0; k < bar.lines[0].size(); ++k)
    hold(bar.lines[0][k], k == 0 ? std::vector<int>{0, 1, 2} : std::vector<int>{2});
  for (std::size_t k = 0; k < bar.lines[3].size(); ++k)
    hold(bar.lines[3][k], k == 0 ? std::vector<int>{1, 2} : std::vector<int>{2});
  const std::size_t first_loaded = ports.size();
  std::vector<double> load;
  for (const std::size_t line : {1U, 2U}) {
    const auto width = tributary(mesh, bar.lines[line], hole_radius_at_load);
    double total = 0.0;
    for (const double w : width) total += w;
    for (std::size_t k = 0; k < width.size(); ++k) {
      ports.push_back(solver::point_port(bar.shell, {bar.lines[line][k]}, {1.0}, 0.0));
      load.push_back(-force * width[k] / total);
    }
  }
  const solver::Body body(bar.shell);
  const auto joined = solver::join_ports(bar.shell.unknowns(), ports);
  const auto condensed = body.condense(joined);
  const solver::System system({&condensed}, links);
  auto loads = system.no_loads(1);
  for (std::size_t k = 0; k < load.size(); ++k)
    loads[0](static_cast<Eigen::Index>(3 * (first_loaded + k) + 2), 0) = load[k];
  std::vector<int> all;
  for (std::size_t k = 0; k < links.size(); ++k) all.push_back(static_cast<int>(k));
  const auto solution = system.solve(all, loads);
  return body.displacements(joined, solution.port_forces[0], solution.amplitudes[0]);
}

// Stress (s11, s22, s12) at some nodes on one face.
Eigen::MatrixX3d stress_at(const Bar& bar, const std::vector<int>& nodes, double zeta,
                           const Eigen::VectorXd& displacements) {
  return solver::as_rows(solver::node_stress_rows(bar.shell, nodes, zeta) * displacements);
}

double shell_peak(const Bar& bar, const std::vector<int>& rim, const Eigen::VectorXd& displacements) {
  double peak = 0.0;
  for (const double zeta : {-1.0, 0.0, 1.0})
    peak = std::max(peak, solver::von_mises(stress_at(bar, rim, zeta, displacements)).maxCoeff());
  return peak;
}

double solid_peak(const Bar& bar, const std::vector<int>& rim, double centre,
                  const Eigen::VectorXd& displacements) {
  const auto along_rim = [&](double zeta) {
    const Eigen::MatrixX3d stress = stress_at(bar, rim, zeta, displacements);
    Eigen::VectorXd tangential(stress.rows());
    for (Eigen::Index k = 0; k < stress.rows(); ++k) {
      const Eigen::Vector2d arm(bar.shell.mesh->nodes(rim[static_cast<std::size_t>(k)], 0) - centre,
                                bar.shell.mesh->nodes(rim[static_cast<std::size_t>(k)], 1));
      const Eigen::Vector2d t = Eigen::Vector2d(-arm.y(), arm.x()).normalized();
      tangential(k) =
          stress(k, 0) * t.x() * t.x() + stress(k, 1) * t.y() * t.y() + 2 * stress(k, 2) * t.x() * t.y();
    }
    return tangential;
  };
  return shell_peak(bar, rim, displacements) *
         models::solid_over_shell(along_rim(1.0), along_rim(-1.0), 1.5 / 2.5, 0.3);
}

// Surface stress along x at the bar's middle, from the nodes nearest to it on both sides of y = 0.
double middle_surface_stress(const Bar& bar, const Eigen::VectorXd& displacements, double zeta) {
  const auto& line = bar.lines[4];
  const Eigen::MatrixX3d stress = stress_at(bar, line, zeta, displacements);
  std::size_t above = 0;
  while (bar.shell.mesh->nodes(line[above], 1) < -1e-9) ++above;
  const double y_above = bar.shell.mesh->nodes(line[above], 1),
               y_below = bar.shell.mesh->nodes(line[above - 1], 1);
  const double share = -y_below / (y_above - y_below);
  const auto row = static_cast<Eigen::Index>(above);
  return (1.0 - share) * stress(row - 1, 0) + share * stress(row, 0);
}

}  // namespace

std::vector<Comparison> compare_perforated_bar() {
  std::vector<Comparison> rows;
  {
    // Beam theory of four-point bending, h from roller to support, k between the rollers: deflection at the load
    // rollers P h^2 (2h + 3k) / (12 EI), so EI = (2h + 3k) K h^2 / 12 with K = P / deflection (ASTM F382, annex
    // A1).
    const std::string group = "Plain bar, four-point bending 200 N";
    const Bar bar = make_bar(false, {-44.0, -16.5, 16.5, 44.0, 0.0});
    const Eigen::VectorXd u = bend(bar, 100.0, 0.0);
    const auto& mesh = *bar.shell.mesh;
    const double deflection = mean_over(mesh, bar.lines[0], 0, u, 2) - mean_over(mesh, bar.lines[1], 0, u, 2);
    const double h = 27.5, k = 33.0;
    rows.push_back(compare(group, "bending structural stiffness", "N mm2",
                           (2 * h + 3 * k) * (200.0 / deflection) * h * h / 12.0,
                           110000.0 * 8.0 * std::pow(2.5, 3) / 12.0, 0.005));
  }
  {
    const std::string group = "Perforated plate, four-point bending 200 N";
    const Bar bar = make_bar(true, {-44.0, -16.5, 16.5, 44.0, 0.0});
    const Eigen::VectorXd u = bend(bar, 100.0, 1.5);
    const auto& mesh = *bar.shell.mesh;
    rows.push_back(compare(group, "deflection at mid-span", "mm",
                           mean_over(mesh, bar.lines[0], 0, u, 2) - mean_over(mesh, bar.lines[4], 0, u, 2),
                           2.44523, 0.02));
    rows.push_back(compare(group, "deflection at the load rollers", "mm",
                           mean_over(mesh, bar.lines[0], 0, u, 2) - mean_over(mesh, bar.lines[1], 1.5, u, 2),
                           2.05537, 0.02));
    rows.push_back(compare(group, "surface stress at mid-span, top", "MPa", middle_surface_stress(bar, u, 1.0),
                           -317.046, 0.02));
    const auto& rim = mesh.groups.at("hole:5");
    Comparison peak =
        compare(group, "peak at the hole next to mid-span, shell", "MPa", shell_peak(bar, rim, u), 804.858, 0.0);
    peak.below = 0.02;
    peak.above = 0.13;
    rows.push_back(peak);
    rows.push_back(compare(group, "the same after the three-dimensional factors", "MPa",
                           solid_peak(bar, rim, 5.5, u), 804.858, 0.04));
  }
  {
    const std::string group = "Perforated plate, tension 500 N";
    const Bar bar = make_bar(true, {-44.0, 44.0});
    const auto& mesh = *bar.shell.mesh;
    Eigen::MatrixXd forces = Eigen::MatrixXd::Zero(bar.shell.unknowns(), 1);
    for (const auto& [end, sign] : {std::pair{"end:0", -1.0}, std::pair{"end:1", 1.0}}) {
      const auto& line = mesh.groups.at(end);
      const auto width = tributary(mesh, line, 0.0);
      for (std::size_t k = 0; k < line.size(); ++k) forces(6 * line[k], 0) += sign * 500.0 * width[k] / 8.0;
    }
    const solver::Body body(bar.shell);
    const Eigen::VectorXd u = body.elastic_answer(forces);
    rows.push_back(compare(group, "elongation over 88 mm", "mm",
                           mean_over(mesh, bar.lines[1], 0, u, 0) - mean_over(mesh, bar.lines[0], 0, u, 0),
                           0.0256209, 0.02));
    Comparison peak = compare(group, "peak at the hole next to mid-span, shell, against the surface", "MPa",
                              shell_peak(bar, mesh.groups.at("hole:5"), u), 82.038, 0.0);
    peak.below = 0.02;
    peak.above = 0.13;
    rows.push_back(peak);
    rows.push_back(compare(group, "after the three-dimensional factors, against the tangential peak inside", "MPa",
                           solid_peak(bar, mesh.groups.at("hole:5"), 5.5, u), 93.8454, 0.04));
  }
  return rows;
}

}  // namespace gapstrain::tests
