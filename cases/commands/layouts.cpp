#include "cases/commands/layouts.h"

#include "cases/commands/study_run.h"
#include "cases/figures/outcome_table.h"
#include "cases/files/file_names.h"
#include "cases/outputs/sentences/layout_verdict.h"
#include "cases/outputs/sentences/result_head.h"
#include "cases/outputs/sentences/state_lines.h"
#include "cases/outputs/sentences/worst_things.h"
#include "cases/outputs/studies/layout_report.h"
#include "cases/page/layouts_cloud.h"
#include "cases/page/make_page.h"
#include "cases/progress/analysis_plan.h"
#include "cases/progress/progress.h"
#include "cases/reader/read_case.h"
#include "cases/reader/read_parts.h"
#include "cases/text/text_hash.h"
#include "cases/version.h"
#include "models/layouts/layouts.h"
#include "models/layouts/ready_screws.h"
#include "models/layouts/solver_at_bounds.h"
#include "models/measures/analyse.h"
#include "models/preparation/prepare_bodies.h"
#include "viz/construct/pictures.h"

#include <fmt/format.h>
#include <CLI/CLI.hpp>

#include <algorithm>
#include <fstream>
#include <map>
#include <memory>
#include <mutex>
#include <new>
#include <set>

namespace gapstrain::cases {

namespace fs = std::filesystem;

namespace {

constexpr std::size_t rows_a_block = 64;  // some 20 ms
constexpr const char* solving_layouts = "solving layouts";
const Stage looking_at_best{"looking at the best", 10.0};

std::vector<Stage> plan_of(const models::Layouts& layouts, const models::Construct& construct,
                           bool with_pictures) {
  constexpr double a_layout = 4e-4;  // s, one load, gap open, both bounds; then the rows' own rate counts
  auto plan = bodies_plan(construct);
  plan.push_back({solving_layouts, a_layout * static_cast<double>(layouts.size() * construct.loads.size())});
  if (with_pictures) plan.push_back(drawing_charts);
  plan.push_back(looking_at_best);
  return plan;
}

// "1 2 4 7 9 10".
std::string holes_text(const models::Layouts& layouts, const std::vector<int>& chosen) {
  std::set<int> holes;
  for (const int index : chosen)
    if (const int hole = layouts.candidates()[static_cast<std::size_t>(index)].hole; hole > 0) holes.insert(hole);
  return fmt::format("{}", fmt::join(holes, " "));
}

class LayoutWorker : public Worker {
 public:
  LayoutWorker(const models::Layouts& layouts, const models::Assembly& assembly, const models::Assembly* soft,
               const models::PeakStress& peak)
      : layouts_(layouts), loads_(assembly.loads.size()), solver_(assembly, soft, peak) {}

  std::string make(std::size_t first, std::size_t count) override {
    std::string lines;
    for (std::size_t row = first; row < first + count; ++row) {
      const auto chosen = layouts_.chosen(row);
      const std::vector<std::string> inputs{fmt::format("{}", row + 1), holes_text(layouts_, chosen)};
      try {
        lines += outcome_row(inputs, solver_.solve(chosen));
      } catch (const std::bad_alloc&) {
        throw;  // not the layout's fault
      } catch (const std::exception& error) {
        lines += failed_row(inputs, loads_, error.what());
      }
    }
    return lines;
  }

 private:
  const models::Layouts& layouts_;
  std::size_t loads_;
  models::SolverAtBounds solver_;
};

// The bodies, made once there is a row to work out.
class LayoutBodies {
 public:
  LayoutBodies(const models::Construct& construct, const models::Layouts& layouts,
               const models::Progress& progress)
      : LayoutBodies(construct, models::screws_to_make_ready(construct, layouts), progress) {}

  std::unique_ptr<Worker> hire(const models::Layouts& layouts) const {
    return std::make_unique<LayoutWorker>(layouts, assembly_, soft_ ? &*soft_ : nullptr, peak_);
  }

  // One layout looked at all over.
  models::Analysis analyse(const models::Layouts& layouts, std::size_t row) {
    assembly_.construct.screws.clear();
    for (const int index : layouts.chosen(row))
      assembly_.construct.screws.push_back(layouts.candidates()[static_cast<std::size_t>(index)]);
    return models::analyse(assembly_);
  }
  std::shared_ptr<const models::PreparedBodies> prepared() const { return prepared_; }

  // With the screws of the layout looked at last.
  const models::Construct& construct() const { return assembly_.construct; }

 private:
  LayoutBodies(const models::Construct& construct, const std::vector<models::Screw>& screws,
               const models::Progress& progress)
      : LayoutBodies(models::prepare_bodies(construct, screws, progress), construct, screws) {}
  LayoutBodies(const std::shared_ptr<const models::PreparedBodies>& prepared, const models::Construct& construct,
               const std::vector<models::Screw>& screws)
      : prepared_(prepared),
        assembly_(models::assemble(prepared, construct, screws)),
        soft_(models::assemble_soft(prepared, construct, screws)),
        peak_(assembly_, models::PlatePlaces::likely) {}

  std::shared_ptr<const models::PreparedBodies> prepared_;
  models::Assembly assembly_;
  std::optional<models::Assembly> soft_;
  models::PeakStress peak_;
};

// Rows as a table of their own, the heading first.
std::string some_rows(const fs::path& table, const std::vector<std::size_t>& rows) {
  std::ifstream stream(table);
  std::string line, text;
  std::getline(stream, line);
  text = line + '\n';
  std::map<std::size_t, std::string> found;
  const std::set<std::size_t> wanted(rows.begin(), rows.end());
  for (std::size_t row = 0; std::getline(stream, line); ++row)
    if (wanted.contains(row)) found[row] = line + '\n';
  for (const std::size_t row : rows) text += found.at(row);
  return text;
}

// The best and the case's own, looked at all over: whether they hold, what they break, and of the best a picture
// under its worst load.
std::string look_at_best(StudyFolder& folder, const models::Layouts& layouts, LayoutBodies& bodies,
                         const LayoutReport& report, std::optional<std::size_t> own, const viz::Display* display,
                         Progress& progress) {
  const fs::path pictures = folder.target() / "best";
  if (display != nullptr) fs::create_directories(pictures);
  std::string text = "\nLooked at all over (all margins, the whole plate, all checks, the rules of the trade):\n";
  for (std::size_t k = 0; k < report.best.size(); ++k) {
    progress.begin(fmt::format("{}, {} of {}", looking_at_best.name, k + 1, report.best.size()));
    const auto analysis = bodies.analyse(layouts, report.best[k]);
    text += layout_verdict(fmt::format("{:>6}", k + 1), bodies.construct(), analysis.findings);
    if (display == nullptr) continue;
    const auto& hottest = hottest_load(analysis.findings);
    const std::string holes = holes_text(layouts, layouts.chosen(report.best[k]));
    viz::draw_construct(*display,
                        analysis.fields.loads[static_cast<std::size_t>(&hottest - analysis.findings.loads.data())],
                        hottest, display->file(pictures / fmt::format("{:02}_{}", k + 1, file_stem(holes))));
  }
  if (own) {
    progress.begin("looking at the case's own layout");
    const auto analysis = bodies.analyse(layouts, *own);
    text += layout_verdict(" yours", bodies.construct(), analysis.findings);
  }
  return text;
}

// What the rows say, in words and pictures.
Status finish_layouts(StudyFolder& folder, const CaseFile& file, const models::Layouts& layouts,
                      const std::function<LayoutBodies&()>& bodies, const StudyOptions& options,
                      Progress& progress) {
  LayoutBodies& looking = bodies();  // the stages before the others, also when no row was missing
  const models::Construct& construct = file.construct;
  std::vector<std::string> loads;
  for (const auto& load : construct.loads) loads.push_back(load.name);
  const LayoutTitle title{construct.name, loads, layouts.own(), layouts.left_out()};
  LayoutReport report = report_layouts(folder.target(), construct, title);
  const fs::path table = folder.target() / StudyFolder::final_name;
  folder.write("front.csv", some_rows(table, report.front));
  folder.write("best.csv", some_rows(table, report.best));
  folder.write("case.toml", file.text);
  std::optional<viz::Display> display;
  if (const auto style = options.pictures.wanted())
    display.emplace(picture_frame(*style, construct.name, file.file, short_alarms_of(state_of_case(construct))));
  const viz::Display* views = display ? &*display : nullptr;
  if (views != nullptr) try {
      progress.begin(drawing_charts.name);
      draw_layout_charts(*display, folder.target(), *construct.layouts, title, report);
      views->scenes();
    } catch (const viz::DisplayError& error) {
      progress.say(fmt::format("warning: no pictures of the best: {}", error.what()));
      views = nullptr;
    }
  report.text += look_at_best(folder, layouts, looking, report, title.own, views, progress);
  folder.write("summary.txt", report.text);
  if (options.page) {
    const PageCase page = page_case_on(file, looking.prepared());
    PageContent content = make_page(page, options.pictures.wanted().has_value(), today(), progress.stages());
    content.cloud = layouts_cloud(folder.target(), page.tables, construct, layouts, report);
    folder.write("page.html", page_html(content));
  }
  progress.end();
  if (options.quiet)  // the text begins with them
    for (const auto& alarm : alarms_of(report.states)) fmt::print(stderr, "{}: {}\n", file.file, alarm);
  else
    fmt::print("{}\nWritten: {}\n", report.text, folder.target().string());
  return report.states.failed + report.states.doubtful < layouts.size() ? Status::done : Status::does_not_hold;
}

// That no choice is admissible, or too many are, is for the case to mend.
models::Layouts find_layouts(const CaseFile& file) try {
  return models::Layouts(file.construct);
} catch (const models::ModelError& error) {
  throw CaseError(file.file, {{Place{}, "layouts", error.what()}});
}

Status run_layouts(const std::string& case_file, const StudyOptions& options, Ranks& ranks) {
  if (options.page) require_page_core();
  CaseFile file = read_case(case_file);
  models::Construct& construct = file.construct;
  if (!construct.layouts) construct.layouts = usual_layouts(construct.screws);
  const bool speaks = ranks.rank() == 0;
  if (speaks) fmt::print(stderr, "{}", format_problems(file.file, file.warnings));
  const models::Layouts layouts = find_layouts(file);
  const bool with_pictures = options.pictures.wanted().has_value();
  auto plan = plan_of(layouts, construct, with_pictures);
  if (options.page) plan = std::move(plan) + page_plan_of_bodies(1, with_pictures);
  Progress progress(std::move(plan), options.quiet || !speaks);

  std::optional<LayoutBodies> bodies;
  std::once_flag made;
  const auto ready = [&]() -> LayoutBodies& {
    std::call_once(made, [&] {
      // Told only: whoever waits for rows hears an interrupt.
      bodies.emplace(construct, layouts, [&](const std::string& stage) { progress.tell(stage); });
      progress.tell(solving_layouts);
    });
    return *bodies;
  };
  const StudyRun search{
      "layouts",
      fmt::format("{:016x}", fnv1a64(fmt::format("{}\n{}", program_and_version(), file.text))),
      layouts.size(),
      keys_of(construct.estimated),
      outcome_heading({"layout", "holes"}, construct.loads.size()),
      fs::path(case_file).stem().string() + "-layouts",
      [](std::size_t) { return rows_a_block; },
      [&] { return ready().hire(layouts); },
      [&](StudyFolder& folder) { return finish_layouts(folder, file, layouts, ready, options, progress); }};
  return run_study(search, options, ranks, progress);
}

}  // namespace

void add_layouts(CLI::App& program, Job& job, Ranks& ranks) {
  CLI::App* command = program.add_subcommand(
      "layouts", "Solve every admissible choice of screws on a case's plate, and rank them");
  const auto options = std::make_shared<StudyOptions>();
  const auto case_file = std::make_shared<std::string>();
  command->add_option("case", *case_file, "The case file (TOML); its [layouts] say what is admissible")
      ->required()
      ->type_name("CASE.toml");
  add_study_options(*command, *options, "the case's name with \"-layouts\", here");
  command->footer(
      "Columns of rows.csv: gapstrain keys --rows. Interrupted or killed, the same command goes on.\n"
      "Several processes: mpirun -n N gapstrain layouts CASE.toml.\n"
      "Exit status: 0 done; 1 no layout has a result that holds; 2 bad input; 3 interrupted.");
  command->callback([&job, &ranks, options, case_file] {
    job = [&ranks, options, case_file] { return run_layouts(*case_file, *options, ranks); };
  });
}

}  // namespace gapstrain::cases
