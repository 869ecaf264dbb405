#include "models/preparation/memory_need.h"

#include <fmt/format.h>
#include <malloc.h>
#include <sys/resource.h>

#include <algorithm>
#include <cmath>
#include <fstream>
#include <limits>
#include <numbers>
#include <string>

namespace gapstrain::models {

namespace {

constexpr double growth = 0.22;  // of edge lengths away from rims, as the meshes take it
constexpr double unknowns_a_node = 6.0;
// Meshes grade more gently than the integrals below: of the five examples at refinement 1, and one of them at
// 0.5, 1.5 and 2, the integrals give 0.60 to 0.79 of the nodes made.
constexpr double nodes_made = 1.45;
// At the peak, factors and port columns together: 5.8 to 7.5 kB measured on the same eight, of 25 000 to 157 000
// unknowns.
constexpr double bytes_an_unknown = 8e3;
constexpr double gigabyte = 1e9;

// Nodes beside a ring of `elements` edges of `size` each, that a sheet of edges `size_max` has there on top of its
// own: the integral of 1 / size^2 over the ring's surroundings, where size grows by `growth` a mm.
double nodes_round_ring(double elements, double size, double size_max) {
  if (size >= size_max) return 0.0;
  const double radius = elements * size / (2.0 * std::numbers::pi);
  const double reach = (size_max - size) / growth;
  const double all = 2.0 * std::numbers::pi / (growth * growth) *
                     ((radius * growth - size) * (1.0 / size - 1.0 / size_max) + std::log(size_max / size));
  const double own = std::numbers::pi * (std::pow(radius + reach, 2) - radius * radius) / (size_max * size_max);
  return all - own;
}

double plate_nodes(const Construct& construct) {
  const Plate& plate = only(construct.plates);
  const double refinement = construct.mesh.refinement;
  double narrowest = std::numeric_limits<double>::max(), widest = 0.0;
  for (const PlateSection& section : plate.sections) {
    narrowest = std::min(narrowest, section.width.value());
    widest = std::max(widest, section.width.value());
  }
  const double size_max = narrowest / (7.0 * refinement);
  const double rim = construct.mesh.rim_elements * refinement;
  double nodes = plate.length.value() * 0.5 * (narrowest + widest) / (size_max * size_max);
  for (const PlateHole& hole : plate.holes) {
    const double edge =
        (std::numbers::pi * hole.diameter.value() + 2.0 * (hole.slot_length - hole.diameter).value()) / rim;
    nodes += nodes_round_ring(rim, edge, size_max);
  }
  return nodes;
}

double bone_nodes(const Construct& construct, std::size_t screws) {
  const Bone& bone = construct.bone;
  const double refinement = construct.mesh.refinement;
  double width = 0.0;
  for (const BoneStation& station : bone.stations)
    width += 0.5 * (station.width_mediolateral + station.width_craniocaudal - 2.0 * station.cortex).value();
  const double perimeter = std::numbers::pi * width / static_cast<double>(bone.stations.size());
  const double size_max = perimeter / (24.0 * refinement), size_cut = perimeter / (36.0 * refinement);
  const double along_cut = 2.0 * perimeter * (1.0 / size_cut - 1.0 / size_max) / growth;
  double nodes = perimeter * bone.length.value() / (size_max * size_max) + along_cut / size_max;
  if (construct.screws.empty()) return nodes;
  const double core = construct.screws.front().size.core_diameter.value();
  const double ring = 16.0 * refinement;
  return nodes +
         2.0 * static_cast<double>(screws) * nodes_round_ring(ring, std::numbers::pi * core / ring, size_max);
}

// The first number in a file, or one without end: a limit file may hold "max".
double number_in(const std::string& file) {
  double number = 0.0;
  return std::ifstream(file) >> number ? number : std::numeric_limits<double>::infinity();
}

double available_on_machine() {
  std::ifstream file("/proc/meminfo");
  std::string name, unit;
  double kilobytes = 0.0;
  while (file >> name >> kilobytes && std::getline(file, unit))
    if (name == "MemAvailable:") return 1024.0 * kilobytes;
  return std::numeric_limits<double>::infinity();
}

// Of the virtual address space, of which the program takes some before it begins.
double left_of_limit() {
  rlimit limit{};
  if (getrlimit(RLIMIT_AS, &limit) != 0 || limit.rlim_cur == RLIM_INFINITY)
    return std::numeric_limits<double>::infinity();
  constexpr double page = 4096.0;
  // OpenBLAS maps 128 MiB for each thread that multiplies, and tries for ever when it cannot: three bodies and us.
  constexpr double blas_buffers = 4.0 * 134.3e6, stacks = 16.0 * 8.4e6;
  return static_cast<double>(limit.rlim_cur) - page * number_in("/proc/self/statm") - blas_buffers - stacks;
}

}  // namespace

MemoryNeed memory_need(const Construct& construct, std::size_t screws) {
  const double nodes = nodes_made * (plate_nodes(construct) + bone_nodes(construct, screws));
  return {unknowns_a_node * nodes, bytes_an_unknown * unknowns_a_node * nodes};
}

double free_memory() {
  const double group = number_in("/sys/fs/cgroup/memory.max") - number_in("/sys/fs/cgroup/memory.current");
  return std::max(0.0, std::min({available_on_machine(), std::isnan(group) ? available_on_machine() : group,
                                 left_of_limit()}));
}

void require_memory(const Construct& construct, std::size_t screws) {
  // Under a limit threads share what they allocate from: each would map 64 MiB for itself, most of it never used.
  if (std::isfinite(left_of_limit())) mallopt(M_ARENA_MAX, 1);
  const MemoryNeed need = memory_need(construct, screws);
  const double free = free_memory();
  if (need.bytes <= free) return;
  throw TooLargeError(fmt::format(
      "this case is too fine for this machine: its mesh has some {:.2g} million unknowns and needs {:.2g} GB of "
      "memory, of which {:.2g} GB are free. Take a smaller mesh.refinement (now {:.3g}), or fewer loads and holes",
      need.unknowns / 1e6, need.bytes / gigabyte, free / gigabyte, construct.mesh.refinement));
}

}  // namespace gapstrain::models
