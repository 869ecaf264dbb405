#include "tests/core/figures_of_case.h"

#include "cases/reader/read_case.h"
#include "models/assembly/bodies_archive.h"
#include "models/assessment/assess.h"
#include "models/catalogue/outcome_figures.h"
#include "models/layouts/construct_solver.h"

#include <fmt/format.h>

#include <fstream>
#include <numeric>

namespace gapstrain::tests {

using namespace models;  // NOLINT: this file is nothing but constructs

namespace {

void add(const std::string& before, const Outcome& outcome, std::map<std::string, double>& figures) {
  for (const auto& figure : construct_figures())
    if (const auto value = figure.read(outcome)) figures[before + std::string(figure.name)] = *value;
  for (std::size_t l = 0; l < outcome.loads.size(); ++l)
    for (const auto& figure : load_figures())
      if (const auto value = figure.read(outcome.loads[l]))
        figures[fmt::format("{}{} {}", before, l, figure.name)] = *value;
}

std::shared_ptr<const PreparedBodies> read(const std::filesystem::path& bodies, WholeBodies whole) {
  std::ifstream stream(bodies, std::ios::binary);
  return read_bodies(stream, whole);
}

}  // namespace

FiguresOfCase figures_of_case(const std::filesystem::path& case_file, const std::filesystem::path& bodies) {
  const Construct construct = cases::read_case(case_file).construct;
  FiguresOfCase figures;
  {
    const auto prepared = read(bodies, WholeBodies::left_out);
    const Assembly assembly = assemble(prepared, construct, prepared->candidates);
    const PeakStress peak(assembly, PlatePlaces::likely_and_sample);
    ConstructSolver solver(assembly, peak);
    std::vector<int> chosen(construct.screws.size());
    std::iota(chosen.begin(), chosen.end(), 0);
    add("all ", solver.solve(chosen), figures.outcome);
    chosen.erase(chosen.begin() + 1);
    add("one less ", solver.solve(chosen), figures.outcome);
  }
  const auto prepared = read(bodies, WholeBodies::factored);
  const auto [analysis, assessment] = assess(prepared, construct, prepared->candidates, true);
  for (const auto& margin : assessment.margins)
    figures.analysis[fmt::format("margin {} {}", static_cast<int>(margin.kind), static_cast<int>(margin.screw))] =
        margin.factor;
  for (const auto& load : analysis.findings.loads) {
    figures.analysis[load.load + " plate"] = load.plate.peak.von_mises.value();
    figures.analysis[load.load + " motion"] = load.gap.largest_motion.value();
    figures.analysis[load.load + " bone"] = load.bone.peak_strain;
    if (load.buckling_factor) figures.analysis[load.load + " buckling"] = *load.buckling_factor;
  }
  if (assessment.race)
    for (const auto& course : assessment.race->courses)
      figures.analysis[fmt::format("life {}", static_cast<int>(course.course))] = course.life_factor.middle;
  figures.analysis["trusted"] = analysis.findings.trust.passed() ? 1.0 : 0.0;
  return figures;
}

}  // namespace gapstrain::tests
