#include "viz/construct/plate_places.h"

#include <algorithm>
#include <stdexcept>
#include <string>

namespace gapstrain::viz {

const models::ShellField& plate_of(const models::LoadFields& fields) {
  const auto plate = std::find_if(fields.shells.begin(), fields.shells.end(),
                                  [](const auto& shell) { return shell.kind == models::BodyKind::plate; });
  if (plate == fields.shells.end()) throw std::invalid_argument("there is no plate among the bodies to draw");
  return *plate;
}

std::vector<HolePlace> hole_places(const models::ShellField& plate) {
  const std::string prefix = "hole:";
  std::vector<HolePlace> holes;
  for (const auto& [name, nodes] : plate.mesh->groups) {
    if (name.compare(0, prefix.size(), prefix) != 0 || nodes.empty()) continue;
    HolePlace hole{std::stoi(name.substr(prefix.size())) + 1, Eigen::Vector3d::Zero(), Eigen::Vector3d::Zero(),
                   0.0};
    const double share = 1.0 / static_cast<double>(nodes.size());
    for (const int node : nodes) {
      hole.centre += share * plate.mesh->nodes.row(node).transpose();
      hole.displacement += share * plate.displacements.row(node).transpose();
    }
    for (const int node : nodes)
      hole.radius += share * (plate.mesh->nodes.row(node).transpose() - hole.centre).norm();
    holes.push_back(hole);
  }
  std::sort(holes.begin(), holes.end(), [](const auto& a, const auto& b) { return a.number < b.number; });
  return holes;
}

int hottest_node(const models::ShellField& plate, models::PlateFace face) {
  const Eigen::VectorXd& stress = face == models::PlateFace::top      ? plate.von_mises_top
                                  : face == models::PlateFace::bottom ? plate.von_mises_bottom
                                                                      : plate.von_mises_middle;
  Eigen::Index node = 0;
  stress.maxCoeff(&node);
  return static_cast<int>(node);
}

double largest_von_mises(const models::ShellField& plate) {
  return std::max(
      {plate.von_mises_top.maxCoeff(), plate.von_mises_middle.maxCoeff(), plate.von_mises_bottom.maxCoeff()});
}

double largest_displacement(const models::LoadFields& fields) {
  double largest = 0.0;
  for (const auto& shell : fields.shells)
    largest = std::max(largest, shell.displacements.rowwise().norm().maxCoeff());
  return largest;
}

}  // namespace gapstrain::viz
