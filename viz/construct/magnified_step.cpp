#include "viz/construct/magnified_step.h"

#include <algorithm>
#include <functional>
#include <limits>
#include <numeric>

namespace gapstrain::viz {

namespace {

double mean_x(const models::ShellField& shell) { return shell.mesh->nodes.col(0).mean(); }

// The bones from proximal to distal.
std::vector<const models::ShellField*> bones_of(const std::vector<models::ShellField>& shells) {
  std::vector<const models::ShellField*> bones;
  for (const auto& shell : shells)
    if (shell.kind == models::BodyKind::bone) bones.push_back(&shell);
  std::sort(bones.begin(), bones.end(), [](const auto* a, const auto* b) { return mean_x(*a) < mean_x(*b); });
  return bones;
}

// Mean x of every closed edge of a tube.
std::vector<double> edge_places(const mesh::ShellMesh& mesh) {
  const auto edges = boundary_edges(mesh);
  std::vector<int> loop(static_cast<std::size_t>(mesh.nodes.rows()));
  std::iota(loop.begin(), loop.end(), 0);
  const std::function<int(int)> root = [&](int node) {
    int& above = loop[static_cast<std::size_t>(node)];
    if (above != node) above = root(above);
    return above;
  };
  for (const auto& [a, b] : edges) loop[static_cast<std::size_t>(root(a))] = root(b);
  std::vector<double> places;
  std::vector<int> roots, counts;
  for (const auto& edge : edges) {  // every node of a loop begins one of its edges
    const int own = root(edge[0]);
    const auto at = std::find(roots.begin(), roots.end(), own) - roots.begin();
    if (at == std::ssize(roots)) {
      roots.push_back(own);
      counts.push_back(0);
      places.push_back(0.0);
    }
    places[static_cast<std::size_t>(at)] += mesh.nodes(edge[0], 0);
    ++counts[static_cast<std::size_t>(at)];
  }
  for (std::size_t l = 0; l < places.size(); ++l) places[l] /= counts[l];
  return places;
}

// What magnifying by `factor` adds to the place of the nearest part.
class Addition {
 public:
  Addition(const std::vector<models::ShellField>& shells, const std::vector<Eigen::Vector3d>& shifts,
           double factor)
      : shells_(shells), shifts_(shifts), factor_(factor) {}

  Eigen::Vector3d at(const Eigen::Vector3d& place) const {
    double nearest = std::numeric_limits<double>::max();
    Eigen::Vector3d addition = Eigen::Vector3d::Zero();
    for (std::size_t s = 0; s < shells_.size(); ++s) {
      Eigen::Index node = 0;
      const double distance =
          (shells_[s].mesh->nodes.rowwise() - place.transpose()).rowwise().squaredNorm().minCoeff(&node);
      if (distance >= nearest) continue;
      nearest = distance;
      addition = shifts_[s] + (factor_ - 1.0) * shells_[s].displacements.row(node).transpose();
    }
    return addition;
  }

 private:
  const std::vector<models::ShellField>& shells_;
  const std::vector<Eigen::Vector3d>& shifts_;
  double factor_;
};

}  // namespace

double gap_at_rest(const std::vector<models::ShellField>& shells) {
  const auto bones = bones_of(shells);
  if (bones.size() != 2) return 0.0;
  const auto proximal = edge_places(*bones[0]->mesh), distal = edge_places(*bones[1]->mesh);
  if (proximal.empty() || distal.empty()) return 0.0;
  const double gap =
      *std::min_element(distal.begin(), distal.end()) - *std::max_element(proximal.begin(), proximal.end());
  return std::max(gap, 0.0);
}

MagnifiedStep magnify(const models::StepFields& step, double factor) {
  const auto bones = bones_of(step.shells);
  const Eigen::Vector3d half = 0.5 * (factor - 1.0) * gap_at_rest(step.shells) * Eigen::Vector3d::UnitX();
  MagnifiedStep result;
  std::vector<Eigen::Vector3d> shifts;
  for (const auto& shell : step.shells) {
    Eigen::Vector3d shift = Eigen::Vector3d::Zero();
    if (bones.size() == 2 && &shell == bones[0]) shift = -half;
    if (bones.size() == 2 && &shell == bones[1]) shift = half;
    shifts.push_back(shift);
    FacePoints faces = deformed_faces(*shell.mesh, shell.displacements, shell.rotations, factor);
    for (auto* face : {&faces.top, &faces.bottom}) face->rowwise() += shift.transpose();
    result.faces.push_back(std::move(faces));
  }
  const Addition addition(step.shells, shifts, factor);
  for (auto screw : step.screws) {
    if (screw.axis.empty()) continue;
    const Eigen::Vector3d ride = addition.at(screw.axis.front());
    screw.displacements.resize(screw.axis.size(), Eigen::Vector3d::Zero());
    screw.stress.resize(screw.axis.size(), 0.0);
    for (std::size_t i = 0; i < screw.axis.size(); ++i) screw.axis[i] += screw.displacements[i] + ride;
    std::fill(screw.displacements.begin(), screw.displacements.end(), Eigen::Vector3d::Zero());
    result.screws.push_back(std::move(screw));
  }
  for (auto hold : step.holds) {
    hold.from += addition.at(hold.from);
    hold.to += addition.at(hold.to);
    result.holds.push_back(std::move(hold));
  }
  return result;
}

}  // namespace gapstrain::viz
