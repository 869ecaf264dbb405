#include "cases/answers/drawing_json.h"

#include "models/assembly/body_numbers.h"

#include <algorithm>

namespace gapstrain::cases {

namespace {

void append(std::vector<float>& numbers, const Eigen::MatrixX3d& rows) {
  for (Eigen::Index row = 0; row < rows.rows(); ++row)
    for (Eigen::Index k = 0; k < 3; ++k) numbers.push_back(static_cast<float>(rows(row, k)));
}

// Two triangles a quadrilateral, seen counter-clockwise from outside.
void append_triangles(std::vector<std::uint32_t>& indices, const mesh::ShellMesh& mesh, std::uint32_t first) {
  const auto add = [&](int node) { indices.push_back(first + static_cast<std::uint32_t>(node)); };
  for (const auto& [a, b, c, d] : mesh.quads)
    for (const int node : {a, b, c, a, c, d}) add(node);
  for (const auto& triangle : mesh.triangles)
    for (const int node : triangle) add(node);
}

Json points_json(const std::vector<Eigen::Vector3d>& points) {
  Json json = Json::array();
  for (const auto& point : points) json.push_back(point_json(point));
  return json;
}

Json screws_json(const std::vector<models::ScrewField>& screws, bool of_step) {
  Json json = Json::array();
  for (const auto& screw : screws) {
    json.push_back({{"label", screw.label},
                    {"hole", screw.hole},
                    {"core_radius_mm", screw.core_radius},
                    {"head_radius_mm", screw.head_radius},
                    {"axis", points_json(screw.axis)},
                    {"motion", points_json(screw.displacements)},
                    {"stress_mpa", screw.stress}});
    if (of_step) json.back()["worked_on"] = screw.is_worked_on;
  }
  return json;
}

// Adds `positions` and `displacement_mm`.
void put_motions(Json& json, const std::vector<models::ShellField>& shells, ByteBlock& bytes) {
  std::vector<float> motions;
  double largest = 0.0;
  for (const auto& shell : shells) {
    append(motions, shell.displacements);
    largest = std::max(largest, shell.displacements.rowwise().norm().maxCoeff());
  }
  json["positions"] = bytes.add(motions);
  json["displacement_mm"] = largest;
}

}  // namespace

Json bodies_json(const models::PreparedBodies& prepared, ByteBlock& bytes) {
  Json json{{"bodies", Json::array()}};
  std::vector<float> positions, normals, thickness;
  std::vector<std::uint32_t> indices;
  for (std::size_t b = 0; b < prepared.bodies.size(); ++b) {
    const bool plate = models::is_plate(prepared.construct, b);
    const mesh::ShellMesh& mesh =
        plate ? *prepared.plates[b].mesh.mesh : *prepared.fragments[b - prepared.plates.size()].mesh;
    const std::size_t first_vertex = thickness.size(), first_index = indices.size();
    append(positions, mesh.nodes);
    append(normals, mesh.directors);
    for (const double t : mesh.thickness) thickness.push_back(static_cast<float>(t));
    append_triangles(indices, mesh, static_cast<std::uint32_t>(first_vertex));
    json["bodies"].push_back({{"name", prepared.bodies[b].name},
                              {"kind", plate ? "plate" : "bone"},
                              {"first_vertex", first_vertex},
                              {"vertices", mesh.nodes.rows()},
                              {"first_index", first_index},
                              {"indices", indices.size() - first_index}});
  }
  json["positions"] = bytes.add(positions);
  json["normals"] = bytes.add(normals);
  json["thickness"] = bytes.add(thickness);
  json["indices"] = bytes.add(indices);
  return json;
}

Json field_json(const models::LoadFields& fields, ByteBlock& bytes) {
  Json json{{"name", fields.load}};
  put_motions(json, fields.shells, bytes);
  std::vector<float> colours;
  double peak = 0.0;
  for (const auto& shell : fields.shells) {
    const Eigen::VectorXd largest = shell.von_mises_top.cwiseMax(shell.von_mises_bottom);
    for (const double stress : largest) colours.push_back(static_cast<float>(stress));
    peak = std::max(peak, largest.maxCoeff());
  }
  json["colours"] = bytes.add(colours);
  json["peak_mpa"] = peak;
  json["screws"] = screws_json(fields.screws, false);
  return json;
}

Json field_json(const models::StepFields& fields, ByteBlock& bytes) {
  Json json{{"name", fields.text}};
  put_motions(json, fields.shells, bytes);
  json["screws"] = screws_json(fields.screws, true);
  json["holds"] = Json::array();
  for (const auto& hold : fields.holds)
    json["holds"].push_back({{"label", hold.label}, {"from", point_json(hold.from)}, {"to", point_json(hold.to)}});
  json["force_n"] = fields.force;
  return json;
}

}  // namespace gapstrain::cases
