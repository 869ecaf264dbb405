#include "cases/study/sweep_rows.h"

#include "cases/figures/outcome_table.h"
#include "cases/study/sweep_table.h"
#include "mesh/gmsh_session.h"
#include "models/assembly/assembly.h"
#include "models/checks/screw_fault.h"
#include "models/layouts/solver_at_bounds.h"
#include "models/measures/solve.h"

#include <algorithm>
#include <new>

namespace gapstrain::cases {

namespace {

constexpr std::size_t most_rows_a_block = 16, geometries_kept = 4;

// All listed settings of a variable, or two of its distribution.
std::vector<Setting> probes_of(const Variable& variable) {
  if (const auto* listed = std::get_if<std::vector<Setting>>(&variable.takes)) return *listed;
  return {at_probability(variable, 0.1), at_probability(variable, 0.9)};
}

// The base case with one variable set; nothing where that makes no construct.
std::optional<models::Construct> with_setting(const StudyFile& study, const Variable& variable,
                                              const Setting& setting) {
  try {
    Table tree = study.base_tree;
    for (const auto& path : variable.paths) set_value(tree, path, setting.value);
    return read_case_tree(study.base.file, study.base.text, tree).construct;
  } catch (const CaseError&) {
    return std::nullopt;
  }
}

std::string first_line(const std::string& text) { return text.substr(0, text.find('\n')); }

class SweepWorker : public Worker {
 public:
  explicit SweepWorker(SweepRows& rows) : rows_(rows) {}
  std::string make(std::size_t first, std::size_t count) override {
    std::string lines;
    for (std::size_t row = first; row < first + count; ++row) lines += rows_.row(row);
    return lines;
  }

 private:
  SweepRows& rows_;
};

}  // namespace

SweepRows::SweepRows(const StudyFile& study)
    : study_(study),
      loads_(study.base.construct.loads.size()),
      screws_(study.base.construct.screws),
      bodies_(study.base.construct, geometries_kept) {
  const models::Construct& base = study.base.construct;
  // Which holes are filled is no matter of geometry: bodies are made ready for the screws of all rows.
  for (const auto& variable : study.variables) {
    names_.push_back(variable_column(variable));
    if (!variable.paths.front().steps.front().name.starts_with("screw")) continue;
    if (!std::holds_alternative<std::vector<Setting>>(variable.takes)) continue;
    for (const auto& setting : probes_of(variable))
      if (const auto construct = with_setting(study, variable, setting))
        models::add_places(screws_, construct->screws);
  }
  for (const auto& variable : study.variables) {
    char changes = 0;
    for (const auto& setting : probes_of(variable)) {
      const auto construct = with_setting(study, variable, setting);
      if (construct &&
          !models::have_same_bodies(base, candidates_for(base), *construct, candidates_for(*construct)))
        changes = 1;
    }
    changes_bodies_.push_back(changes);
  }
  if (const auto* grid = std::get_if<Grid>(&study.design)) {
    for (std::size_t k = grid->lengths.size(); k-- > 0 && changes_bodies_[k] == 0;) run_ *= grid->lengths[k];
  } else if (std::none_of(changes_bodies_.begin(), changes_bodies_.end(),
                          [](char changes) { return changes != 0; })) {
    run_ = study.rows();
  }
}

std::string SweepRows::heading() const { return outcome_heading(names_, loads_); }

std::size_t SweepRows::block(std::size_t row) const {
  const std::size_t left = run_ - row % run_;
  return std::min(left, most_rows_a_block);
}

std::unique_ptr<Worker> SweepRows::hire() { return std::make_unique<SweepWorker>(*this); }

std::vector<models::Screw> SweepRows::candidates_for(const models::Construct& construct) const {
  std::vector<models::Screw> accepted = construct.screws, candidates;
  for (const auto& screw : screws_) {
    if (models::has_place(construct.screws, screw)) continue;
    accepted.push_back(screw);
    if (models::fault_of_last(construct, accepted)) accepted.pop_back();
  }
  for (const auto& screw : screws_)
    if (models::has_place(accepted, screw)) candidates.push_back(screw);
  models::add_places(candidates, accepted);
  return candidates;
}

std::shared_ptr<const models::PreparedBodies> SweepRows::bodies_of_base() {
  const models::Construct& base = study_.base.construct;
  return bodies_.get(base, candidates_for(base))->prepared;
}

std::string SweepRows::row(std::size_t row) {
  std::vector<std::string> inputs;
  for (const auto& setting : study_.settings(row)) inputs.push_back(setting.text);
  const auto failed = [&](const std::string& reason) { return failed_row(inputs, loads_, reason); };
  try {
    const models::Construct construct = study_.at(row).construct;
    const auto candidates = candidates_for(construct);
    const auto bodies = bodies_.get(construct, candidates);
    const mesh::BesideMeshing no_meshing_meanwhile;
    const models::Assembly assembly = models::assemble(bodies->prepared, construct, candidates);
    const auto soft = models::assemble_soft(bodies->prepared, construct, candidates);
    models::SolverAtBounds solver(assembly, soft ? &*soft : nullptr, bodies->peak);
    return outcome_row(inputs, solver.solve(models::chosen_screws(assembly, construct.screws)));
  } catch (const CaseError& error) {
    return failed(first_line(error.what()));
  } catch (const std::bad_alloc&) {
    throw;                                 // not the construct's fault
  } catch (const std::exception& error) {  // meshing, factoring, a part that nothing holds
    return failed(error.what());
  }
}

}  // namespace gapstrain::cases
