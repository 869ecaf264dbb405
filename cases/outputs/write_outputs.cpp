#include "cases/outputs/write_outputs.h"

#include "cases/outputs/csv_tables.h"
#include "cases/outputs/file_names.h"
#include "cases/outputs/findings_json.h"
#include "cases/outputs/margins_text.h"
#include "cases/outputs/plan_text.h"
#include "cases/outputs/race_charts.h"
#include "cases/outputs/race_csv.h"
#include "cases/outputs/review_text.h"
#include "viz/display.h"
#include "viz/pictures.h"
#include "viz/review_pictures.h"
#include "viz/write_fields.h"

#include <algorithm>
#include <cassert>

namespace gapstrain::cases {

namespace fs = std::filesystem;

namespace {

// Steps that only lock screws, with nothing pressed or held, make no picture worth looking at.
bool steps_tell(const models::CompressionFindings& compression) {
  return std::any_of(compression.steps.begin(), compression.steps.end(),
                     [](const auto& step) { return step.face.force.value() > 0.0 || !step.held.empty(); });
}

bool faces_touch(const models::Findings& findings) {
  const auto touches = [](const auto& state) { return state.face.touching > 0.0; };
  return std::any_of(findings.compression.steps.begin(), findings.compression.steps.end(), touches) ||
         std::any_of(findings.loads.begin(), findings.loads.end(), touches);
}

void draw_assessment(const viz::Display& display, const models::Construct& construct,
                     const models::Assessment& assessment, const fs::path& folder) {
  viz::draw_plan(display, construct, assessment.plan, folder / "plan.png");
  viz::MarginChart margins{
      construct.name, "strength over demand, the worst part of each kind under its worst load", {}};
  for (const auto& margin : models::worst_of_each_kind(assessment.margins))
    margins.bars.push_back({margin.part, margin.factor, margin.indicative});
  if (!margins.bars.empty()) viz::draw_margins(display, margins, folder / "margins.png");
  if (assessment.race) draw_race(display, *assessment.race, *assessment.history, construct.name, folder);
}

void draw_pictures(const models::Construct& construct, const models::AssessedConstruct& assessed,
                   const fs::path& folder, const models::Progress& progress) {
  const viz::Display display;
  const models::Analysis& analysis = assessed.analysis;
  draw_assessment(display, construct, assessed.assessment, folder);
  const auto& all = analysis.findings;
  const auto& compression = all.compression;
  viz::draw_gap_strain(display, all, folder / "gap_strain.png");
  if (steps_tell(compression) && compression.steps.size() == analysis.fields.steps.size())
    viz::draw_steps(display, compression, analysis.fields.steps, folder / "steps.png");
  if (faces_touch(all)) viz::draw_face_pressure(display, all, folder / "face_pressure.png");
  if (compression.prebend) viz::draw_prebend(display, *compression.prebend, folder / "prebend.png");
  for (std::size_t i = 0; i < analysis.fields.loads.size(); ++i) {
    const auto& fields = analysis.fields.loads[i];
    const auto& findings = analysis.findings.loads[i];
    if (progress) progress("drawing \"" + fields.load + "\"");
    const std::string stem = load_stem(i, fields.load);
    viz::draw_construct(display, fields, findings, folder / (stem + "_construct.png"));
    viz::draw_hottest_hole(display, fields, findings, folder / (stem + "_hottest_hole.png"));
    viz::draw_along_plate(display, findings, folder / (stem + "_along_plate.png"));
  }
}

fs::path make_folder(OutputFolder& folder, const char* name) {
  const fs::path path = folder.workspace() / name;
  std::error_code fault;
  fs::create_directory(path, fault);
  if (fault) throw OutputError("the folder " + path.string() + " cannot be made: " + fault.message());
  return path;
}

}  // namespace

WrittenOutputs write_outputs(OutputFolder& folder, const models::Construct& construct,
                             const models::AssessedConstruct& assessed, const CaseOrigin& origin,
                             bool with_pictures, const models::Progress& progress) {
  const auto& [analysis, assessment] = assessed;
  const auto& findings = analysis.findings;
  assert(findings.loads.size() == analysis.fields.loads.size());
  if (progress) progress("writing files");
  folder.write("case.toml", origin.text);
  folder.write("gap_strain.csv", gap_strain_csv(findings));
  folder.write("steps.csv", steps_csv(findings));
  folder.write("face.csv", face_csv(findings));
  if (findings.compression.prebend) folder.write("prebend.csv", prebend_csv(*findings.compression.prebend));
  folder.write("plate.csv", plate_csv(findings));
  folder.write("screws.csv", screws_csv(findings));
  folder.write("screw_shafts.csv", screw_shafts_csv(findings));
  folder.write("working_length.csv", working_length_csv(findings));
  folder.write("margins.txt", margins_text(assessment.margins, assessment.margins_left_out));
  folder.write("review.txt", review_text(assessment.review));
  folder.write("plan.txt", plan_text(assessment.plan, findings.construct, origin.file));
  if (assessment.race) folder.write("race.csv", race_csv(*assessment.race, *assessment.history));
  const fs::path fields = make_folder(folder, "fields");
  for (std::size_t i = 0; i < analysis.fields.loads.size(); ++i)
    viz::write_fields(analysis.fields.loads[i], fields, load_stem(i, analysis.fields.loads[i].load));

  WrittenOutputs written;
  if (with_pictures) {
    try {
      draw_pictures(construct, assessed, make_folder(folder, "pictures"), progress);
    } catch (const viz::DisplayError& error) {
      written.pictures_missing = error.what();
    }
  }
  auto files = folder.files();
  files.emplace_back("findings.json");
  std::sort(files.begin(), files.end());
  auto json = make_findings_json(findings, assessment, origin, files);
  folder.write("findings.json", json.text);
  written.not_finite = std::move(json.not_finite);
  return written;
}

}  // namespace gapstrain::cases
