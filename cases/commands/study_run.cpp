#include "cases/commands/study_run.h"

#include <fmt/format.h>

#include <optional>

namespace gapstrain::cases {

Status run_study(const StudyRun& run, const StudyOptions& options, Ranks& ranks) {
  const Part part = options.part.empty() ? Part{} : parse_part(options.part);
  std::string name = options.out.empty() ? run.default_folder : options.out;
  if (options.out.empty() && part.of > 1) name += fmt::format("-{}-of-{}", part.number, part.of);
  std::optional<StudyFolder> folder;
  if (ranks.rank() == 0) folder.emplace(name, Study{run.command, run.fingerprint, run.rows, part}, run.heading);
  const auto made =
      make_missing_rows(folder ? &*folder : nullptr, {run.block, run.hire, options.threads, options.quiet}, ranks);
  if (ranks.rank() != 0) return Status::done;
  if (!made.complete) {
    fmt::print(stderr, "interrupted; the same command goes on where it stopped, in {}\n", name);
    return Status::interrupted;
  }
  if (part.of == 1) return run.finish(*folder);
  if (!options.quiet)
    fmt::print("Part {} is complete: {}\nWhen all parts are: gapstrain merge\n", part_text(part), name);
  return Status::done;
}

}  // namespace gapstrain::cases
