#include "cases/study/study_design.h"

#include <fmt/format.h>

#include <cassert>
#include <stdexcept>

namespace gapstrain::cases {

namespace {

const std::vector<Setting>* list_of(const Variable& variable) {
  return std::get_if<std::vector<Setting>>(&variable.takes);
}

std::vector<Setting> combination(const Grid& grid, const std::vector<Variable>& variables, std::size_t row) {
  std::vector<Setting> settings(variables.size());
  for (std::size_t i = variables.size(); i-- > 0; row /= grid.lengths[i])
    settings[i] = list_of(variables[i])->at(row % grid.lengths[i]);
  return settings;
}

template <class Design>
std::vector<Setting> sample(const Design& design, const std::vector<Variable>& variables, std::size_t row) {
  const Eigen::VectorXd point = design.point(static_cast<Eigen::Index>(row));
  std::vector<Setting> settings;
  for (std::size_t i = 0; i < variables.size(); ++i)
    settings.push_back(at_probability(variables[i], point[static_cast<Eigen::Index>(i)]));
  return settings;
}

std::optional<StudyDesign> read_grid(const Section& design, const std::vector<Section>& varies,
                                     const std::vector<Variable>& variables) {
  for (const auto* key : {"points", "seed"})
    if (design.has(key))
      design.complain(key,
                      "a grid has no such key: its rows follow from the [[vary]]; remove it, or name another "
                      "`kind`");
  Grid grid;
  std::size_t rows = 1;
  for (const auto& variable : variables) {
    const auto* list = list_of(variable);
    if (list == nullptr) continue;
    grid.lengths.push_back(list->size());
    if (rows > static_cast<std::size_t>(models::Design::most_points) / list->size()) {
      varies.back().complain(
          "", fmt::format("the combinations are more than {}; take fewer values, or samples: [design] "
                          "with kind = \"sobol\" and points",
                          models::Design::most_points));
      return std::nullopt;
    }
    rows *= list->size();
  }
  return grid.lengths.size() == variables.size() ? std::optional<StudyDesign>(grid) : std::nullopt;
}

// A distribution has no end of values for a grid to run through.
void refuse_distributions(const std::vector<Section>& varies) {
  for (const auto& vary : varies)
    if (vary.has("distribution"))
      vary.complain("distribution",
                    "a grid runs through lists and ranges only; for samples add [design] with "
                    "kind = \"latin-hypercube\", \"sobol\", \"monte-carlo\" or \"saltelli\", and points");
}

StudyDesign make_samples(const std::string& kind, Eigen::Index points, Eigen::Index factors, std::uint64_t seed) {
  if (kind == "saltelli") return models::SaltelliDesign(points, factors, seed);
  const auto sampling = kind == "sobol"             ? models::DesignKind::sobol
                        : kind == "latin-hypercube" ? models::DesignKind::latin_hypercube
                                                    : models::DesignKind::random;
  return models::Design(sampling, points, factors, seed);
}

}  // namespace

std::size_t rows_of(const StudyDesign& design) {
  if (const auto* grid = std::get_if<Grid>(&design)) {
    std::size_t rows = 1;
    for (const auto length : grid->lengths) rows *= length;
    return rows;
  }
  const auto* samples = std::get_if<models::Design>(&design);
  return static_cast<std::size_t>(samples != nullptr ? samples->points()
                                                     : std::get<models::SaltelliDesign>(design).points());
}

std::vector<Setting> settings_of(const StudyDesign& design, const std::vector<Variable>& variables,
                                 std::size_t row) {
  assert(row < rows_of(design));
  if (const auto* grid = std::get_if<Grid>(&design)) return combination(*grid, variables, row);
  if (const auto* samples = std::get_if<models::Design>(&design)) return sample(*samples, variables, row);
  return sample(std::get<models::SaltelliDesign>(design), variables, row);
}

std::optional<StudyDesign> read_design(const Section& design, const std::vector<Section>& varies,
                                       const std::vector<Variable>& variables) {
  const std::string kind = design.text("kind").value_or("");
  if (kind == "grid") {
    refuse_distributions(varies);
    return read_grid(design, varies, variables);
  }
  design.require({"points"}, "say how many samples are to be taken, such as points = 256");
  const auto points = design.count("points");
  const auto seed = design.count("seed");
  if (kind.empty() || !points || !seed || variables.empty()) return std::nullopt;
  try {
    return make_samples(kind, *points, static_cast<Eigen::Index>(variables.size()),
                        static_cast<std::uint64_t>(*seed));
  } catch (const std::invalid_argument& error) {
    design.complain("points", error.what());
    return std::nullopt;
  }
}

}  // namespace gapstrain::cases
