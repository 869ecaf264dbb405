#include "models/findings/analyse.h"

#include "models/findings/body_stress.h"
#include "models/findings/bone_strain.h"
#include "models/findings/buckling.h"
#include "models/findings/figures.h"
#include "models/findings/gap_strain.h"
#include "models/findings/make_fields.h"
#include "models/findings/plate_clearance.h"
#include "models/findings/plate_stress.h"
#include "models/findings/screw_forces.h"
#include "models/findings/solve.h"
#include "models/findings/stiffness.h"
#include "models/findings/trust.h"
#include "models/findings/working_length.h"

#include <fmt/format.h>

#include <algorithm>
#include <future>
#include <utility>

namespace gapstrain::models {

namespace {

// The construct's screws and those that its working-length variants ask for, each place once.
std::vector<Screw> candidates(const Construct& construct, const std::vector<ScrewVariant>& variants) {
  std::vector<Screw> all = construct.screws;
  for (const auto& variant : variants)
    for (const auto& screw : variant.screws)
      if (std::none_of(all.begin(), all.end(), [&](const Screw& other) { return same_place(other, screw); }))
        all.push_back(screw);
  return all;
}

}  // namespace

Analysis analyse(const Construct& construct, const Progress& progress) {
  const auto variants = working_length_variants(construct);
  const Assembly assembly = assemble(construct, candidates(construct, variants), progress);
  if (progress) progress("solving and measuring");
  const auto chosen = chosen_screws(assembly, construct.screws);

  Analysis analysis;
  Findings& findings = analysis.findings;
  findings.construct = construct.name;
  findings.figures = measure_figures(construct);
  findings.stiffness = measure_stiffness(assembly, chosen);
  for (const auto& problem : check(construct))
    if (problem.severity == Severity::warning) findings.remarks.push_back(problem.message);

  SolvedLoads solved;
  for (const auto& load : assembly.loads) solved.solutions.push_back(solve_load(assembly, chosen, load));
  solved.displacements = recover_displacements(assembly, solved.solutions);
  std::array<std::vector<BodyStress>, 3> stress;
  for (std::size_t b = 0; b < 3; ++b)
    stress[b] = read_stress(assembly.bodies[b].body->shell(), solved.displacements[b]);

  // Loads do not know of each other: they are measured side by side.
  const auto measure = [&](std::size_t l) {
    const AssembledLoad& load = assembly.loads[l];
    const solver::Solution& solution = solved.solutions[l];
    std::array<Eigen::VectorXd, 3> displacements;
    for (std::size_t b = 0; b < 3; ++b)
      displacements[b] = solved.displacements[b].col(static_cast<Eigen::Index>(l));
    LoadFindings entry;
    entry.load = load.name;
    entry.gap = measure_gap(assembly, solution);
    entry.plate = measure_plate(assembly, chosen, solution, stress[plate_body][l]);
    entry.screws = measure_screws(assembly, chosen, solution);
    entry.bone = measure_bone(assembly, chosen, {&stress[proximal_body][l], &stress[distal_body][l]});
    entry.working_length_effect = measure_working_length_effect(assembly, variants, load);
    entry.plate_clearance = measure_plate_clearance(assembly, displacements);
    entry.buckling_factor = measure_buckling(assembly, chosen, load, displacements);
    return std::pair{std::move(entry), make_fields(assembly, chosen, load.name, displacements,
                                                   {&stress[0][l], &stress[1][l], &stress[2][l]}, solution)};
  };
  std::vector<std::future<std::pair<LoadFindings, LoadFields>>> jobs;
  for (std::size_t l = 0; l < assembly.loads.size(); ++l)
    jobs.push_back(std::async(std::launch::async, measure, l));
  for (auto& job : jobs) {
    auto [entry, fields] = job.get();
    findings.loads.push_back(std::move(entry));
    analysis.fields.loads.push_back(std::move(fields));
  }
  for (const auto& load : findings.loads)
    if (load.plate_clearance && load.plate_clearance->value() < 0.0)
      findings.remarks.push_back(
          fmt::format("Under \"{}\" the plate would press {:.2g} mm into the bone; contact there is not in this "
                      "calculation, in truth the bone takes part of the plate's load.",
                      load.load, -load.plate_clearance->value()));
  findings.trust = measure_trust(assembly, solved, findings.loads);
  return analysis;
}

}  // namespace gapstrain::models
