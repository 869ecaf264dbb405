#include "models/preparation/prepare_bodies.h"

#include "models/assembly/body_numbers.h"
#include "models/preparation/fragment_meshes.h"
#include "models/preparation/memory_need.h"
#include "models/preparation/plate_mesh.h"
#include "solver/bodies/stress.h"
#include "solver/host/side_by_side.h"

#include <fmt/format.h>

#include <utility>

namespace gapstrain::models {

namespace {

using solver::Shell;
using Progress = std::function<void(const std::string&)>;

// Names for people; "plate", "proximal fragment" and "distal fragment" where there are no more.
std::string name_of_body(const Construct& construct, std::size_t body) {
  const std::size_t plates = construct.plates.size();
  if (body < plates) return plates == 1 ? "plate" : fmt::format("plate {}", body + 1);
  const std::size_t fragment = body - plates, last = construct.fractures.size();
  if (fragment == 0) return "proximal fragment";
  if (fragment == last) return "distal fragment";
  return last == 2 ? "middle fragment" : fmt::format("middle fragment {}", fragment);
}

// What is read off a body: see LaidPlate and Assembly.
std::vector<solver::SparseMatrix> probes_of(const PreparedBodies& prepared, const Shell& shell, std::size_t body) {
  std::vector<solver::SparseMatrix> probes;
  if (is_plate(prepared.construct, body)) {
    for (const double face : {1.0, -1.0})
      probes.push_back(solver::node_stress_rows(shell, prepared.plates[body].sample.nodes, face));
    return probes;
  }
  const Fragment& fragment = prepared.fragments[body - prepared.plates.size()];
  for (const auto* edge : {&fragment.proximal_edge, &fragment.distal_edge})
    if (*edge) probes.push_back(edge_motion_rows(shell, **edge));
  return probes;
}

void mesh_all(PreparedBodies& prepared, const Progress& stage) {
  const Construct& construct = prepared.construct;
  const mesh::GmshSession session;
  stage(construct.plates.size() == 1 ? "meshing the plate" : "meshing the plates");
  for (std::size_t p = 0; p < construct.plates.size(); ++p) {
    LaidPlate& plate = prepared.plates[p];
    plate.mesh = mesh_plate(session, construct.plates[p], *plate.shape, construct.mesh);
    plate.sample = sample_plate(plate.mesh, construct.plates[p],
                                plate.shape->along_at(only(construct.fractures).position.value()));
  }
  stage("meshing the bone");
  prepared.fragments =
      mesh_fragments(session, construct, *prepared.bone_shape, prepared.wishes.screws, prepared.wishes.rollers);
}

void find_spots(PreparedBodies& prepared, const std::vector<Shell>& shells) {
  const Construct& construct = prepared.construct;
  PortWishes& wishes = prepared.wishes;
  for (std::size_t k = 0; k < construct.fractures.size(); ++k) {
    auto spots = gap_spots(k, shells[body_of_fragment(construct, k)], *prepared.fragments[k].distal_edge,
                           shells[body_of_fragment(construct, k + 1)], *prepared.fragments[k + 1].proximal_edge,
                           construct.fractures[k].obliquity.value());
    for (auto& spot : spots) wishes.gap.push_back(std::move(spot));
  }
  for (std::size_t p = 0; p < construct.plates.size(); ++p) {
    auto spots = underside_spots(construct, p, *prepared.plates[p].shape, *prepared.bone_shape, shells);
    for (auto& spot : spots) wishes.underside.push_back(std::move(spot));
  }
  for (const auto& hold : construct.temporary)
    if (hold.kind != HoldKind::wire)
      wishes.clamps.push_back(
          clamp_tips(hold, construct, *prepared.plates[hold.plate].shape, *prepared.bone_shape, shells));
}

BuiltBody build(std::string name, const Shell& shell, const std::vector<NamedPort>& named,
                const std::vector<solver::SparseMatrix>& probes) {
  std::vector<solver::Port> ports;
  for (const auto& entry : named) ports.push_back(entry.port);
  BuiltBody built;
  built.name = std::move(name);
  built.body = std::make_shared<const solver::Body>(shell);
  built.ports = std::make_shared<const solver::Ports>(solver::join_ports(shell.unknowns(), ports));
  built.condensed = std::make_shared<const solver::Condensed>(built.body->condense(*built.ports, probes));
  return built;
}

}  // namespace

std::shared_ptr<const PreparedBodies> prepare_bodies(const Construct& construct,
                                                     const std::vector<Screw>& candidates,
                                                     const Progress& progress) {
  const auto stage = [&](const std::string& text) {
    if (progress) progress(text);
  };
  require_memory(construct, candidates.size());
  auto prepared = std::make_shared<PreparedBodies>(lay_out(construct, candidates));
  mesh_all(*prepared, stage);

  const mesh::BesideMeshing no_meshing_meanwhile;
  stage("factoring the bodies");
  const std::vector<Shell> shells = shells_of(*prepared);
  find_spots(*prepared, shells);
  const auto ports =
      make_ports(prepared->wishes, construct, shapes_of(prepared->plates), *prepared->bone_shape, shells);
  prepared->ports = PortBook(ports);
  solver::side_by_side(shells.size(), [&](std::size_t b) {
    prepared->bodies[b] =
        build(name_of_body(construct, b), shells[b], ports[b], probes_of(*prepared, shells[b], b));
  });
  return prepared;
}

Assembly assemble(const Construct& construct, const std::vector<Screw>& candidates, const Progress& progress) {
  return assemble(prepare_bodies(construct, candidates, progress), construct, candidates);
}

}  // namespace gapstrain::models
