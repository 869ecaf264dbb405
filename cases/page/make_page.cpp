#include "cases/page/make_page.h"

#include "cases/answers/candidate_tables.h"
#include "cases/answers/opened_answer.h"
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
constexpr const char *solving_for_page = "solving the states that the page opens with",
                     *drawing_for_page = "drawing the page's pictures";

std::string archive_of(const models::PreparedBodies& prepared) {
  std::ostringstream stream;
  models::write_bodies(stream, models::without_plate_probes(prepared));
  return std::move(stream).str();
}

// With the fields of its first loads, `most` of them.
Answer whole_state(PageSession& session, const PageState& state, std::size_t most) {
  Json request{{"changes", state.changes},
               {"variant", state.variant},
               {"detail", "whole"},
               {"race", true},
               {"fields", Json::array()}};
  for (std::size_t l = 0; l < std::min(most, state.loads); ++l) request["fields"].push_back({{"load", l}});
  Answer answer = session.ask(request.dump());
  if (answer.is_fault) throw models::ModelError(Json::parse(answer.text)["error"]["text"].get<std::string>());
  return answer;
}

}  // namespace

std::vector<Stage> page_plan(const PageCase& page, bool with_pictures) {
  std::vector<Stage> plan;
  for (const auto& variant : page.variants) plan = std::move(plan) + bodies_plan(variant.construct);
  plan = std::move(plan) + page_plan_of_bodies(page.variants.size(), with_pictures);
  plan.push_back({"writing files", 1.0});
  return plan;
}

std::vector<Stage> page_plan_of_bodies(std::size_t variants, bool with_pictures) {
  std::vector<Stage> plan{{solving_for_page, 3.0 * static_cast<double>(variants)}};
  if (with_pictures) plan.push_back({drawing_for_page, 3.0});
  return plan;
}

PageContent make_page(const PageCase& page, bool with_pictures, const std::string& date,
                      const models::Progress& progress) {
  PagePack pack{page.entered.file, page.tables, version(), commit(), date, {}};
  std::vector<std::string> archives;
  Json parts = Json::array();  // of each variant, where it has other holes, another gap
  for (const auto& variant : page.variants) {
    const auto prepared = variant.prepared
                              ? variant.prepared
                              : models::prepare_bodies(variant.construct, variant.candidates, progress);
    archives.push_back(archive_of(*prepared));
    put_parts(parts.emplace_back(Json::object()), *prepared);
  }
  for (std::size_t k = 0; k < archives.size(); ++k)
    pack.variants.push_back({page.variants[k].label, page.variants[k].changes,
                             candidate_tables(page.variants[k].candidates), archives[k]});
  PageContent content;
  content.title = page.entered.construct.name;
  content.date = date;
  content.pack = write_pack(pack);
  archives.clear();

  progress(solving_for_page);
  PageSession session(content.pack);
  content.opened = session.opened();
  if (page.variants.size() > 1) {
    Json opened = Json::parse(content.opened.text);
    opened["parts"] = parts;
    content.opened.text = opened.dump(-1, ' ', false, Json::error_handler_t::replace);
  }
  if (page.are_side_by_side)
    for (std::size_t k = 1; k < page.variants.size(); ++k)
      content.beside.push_back(
          whole_state(session, {Json::object(), k, page.variants[k].construct.loads.size()}, 1));
  content.first = whole_state(session, page.first, most_fields);
  const SolvedState& state = session.last();
  const auto& [analysis, assessment] = state.found();
  const CaseOrigin origin{page.entered.file, state.file().text, page.entered.assumptions, date};
  content.summary = summarise(state.construct(), analysis.findings, assessment, origin, "in this page");
  content.is_trusted = assessment.state.not_trusted.empty();
  if (with_pictures) {
    progress(drawing_for_page);
    draw_still_pictures(content, state, short_alarms_of(assessment.state, in_page));
  }
  return content;
}

}  // namespace gapstrain::cases
