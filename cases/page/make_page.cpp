#include "cases/page/make_page.h"

#include "cases/answers/candidate_tables.h"
#include "cases/outputs/sentences/state_lines.h"
#include "cases/outputs/sentences/summary.h"
#include "cases/page/still_pictures.h"
#include "cases/progress/analysis_plan.h"
#include "cases/version.h"
#include "models/assembly/bodies_archive.h"
#include "models/findings/model_error.h"
#include "models/preparation/prepare_bodies.h"

#include <fmt/format.h>

#include <algorithm>
#include <sstream>

namespace gapstrain::cases {

namespace {

constexpr std::size_t most_fields = 4;  // that a page shows before its core has started

std::string archive_of(const PageVariant& variant, const models::Progress& progress) {
  std::ostringstream stream;
  models::write_bodies(stream, models::without_plate_probes(
                                   *models::prepare_bodies(variant.construct, variant.candidates, progress)));
  return std::move(stream).str();
}

}  // namespace

std::vector<Stage> page_plan(const PageCase& page, bool with_pictures) {
  std::vector<Stage> plan;
  for (const auto& variant : page.variants) plan = std::move(plan) + bodies_plan(variant.construct);
  plan = std::move(plan) + std::vector<Stage>{{"solving the case as entered", 3.0}};
  return std::move(plan) + outputs_plan(page.entered.construct, with_pictures);
}

PageContent make_page(const PageCase& page, bool with_pictures, const std::string& date,
                      const models::Progress& progress) {
  PagePack pack{page.entered.file, page.tables, version(), commit(), date, {}};
  std::vector<std::string> archives;
  for (const auto& variant : page.variants) archives.push_back(archive_of(variant, progress));
  for (std::size_t k = 0; k < archives.size(); ++k)
    pack.variants.push_back({page.variants[k].label, page.variants[k].changes,
                             candidate_tables(page.variants[k].candidates), archives[k]});
  PageContent content;
  content.title = page.entered.construct.name;
  content.date = date;
  content.pack = write_pack(pack);
  archives.clear();

  progress("solving the case as entered");
  PageSession session(content.pack);
  content.opened = session.opened();
  Json request{{"detail", "whole"}, {"race", true}, {"fields", Json::array()}};
  for (std::size_t l = 0; l < std::min(most_fields, page.entered.construct.loads.size()); ++l)
    request["fields"].push_back({{"load", l}});
  content.first = session.ask(request.dump());
  if (content.first.is_fault)
    throw models::ModelError(Json::parse(content.first.text)["error"]["text"].get<std::string>());
  const SolvedState& state = session.last();
  const auto& [analysis, assessment] = state.found();
  const CaseOrigin origin{page.entered.file, state.file().text, page.entered.assumptions, date};
  content.summary = summarise(state.construct(), analysis.findings, assessment, origin, "in this page");
  content.is_trusted = assessment.state.not_trusted.empty();
  if (with_pictures) {
    progress("drawing");
    draw_still_pictures(content, state, short_alarms_of(assessment.state));
  }
  return content;
}

}  // namespace gapstrain::cases
