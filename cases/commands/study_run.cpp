#include "cases/commands/study_run.h"

#include <fmt/format.h>

#include <optional>

namespace gapstrain::cases {

Status interrupted_work(const std::string& folder) {
  fmt::print(stderr, "interrupted; the same command goes on where it stopped, in {}\n", folder);
  return Status::interrupted;
}

Status run_study(const StudyRun& run, const StudyOptions& options, Ranks& ranks, Progress& progress) {
  const Part part = options.part.empty() ? Part{} : parse_part(options.part);
  std::string name = options.out.empty() ? run.default_folder : options.out;
  if (options.out.empty() && part.of > 1) name += fmt::format("-{}-of-{}", part.number, part.of);
  std::optional<StudyFolder> folder;
  if (ranks.rank() == 0)
    folder.emplace(name, Study{run.command, run.fingerprint, run.rows, part, run.estimated}, run.heading);
  const auto stopped = [&] {
    progress.end();
    return interrupted_work(name);
  };
  const auto made =
      make_missing_rows(folder ? &*folder : nullptr, {run.block, run.hire, options.threads}, ranks, progress);
  if (ranks.rank() != 0) return Status::done;
  if (!made.complete) return stopped();
  if (part.of == 1) try {
      return run.finish(*folder);
    } catch (const Interrupted&) {
      return stopped();
    }
  progress.end();
  if (!options.quiet)
    fmt::print("Part {} is complete: {}\nWhen all parts are: gapstrain merge\n", part_text(part), name);
  return Status::done;
}

}  // namespace gapstrain::cases
