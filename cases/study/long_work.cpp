#include "cases/study/long_work.h"

#include <cassert>

namespace gapstrain::cases {

Outcome make_missing_rows(StudyFolder* folder, const LongWork& work, Ranks& ranks, Progress& progress) {
  assert((folder != nullptr) == (ranks.rank() == 0));
  const auto stop = [&] { return progress.interrupted(); };
  const std::size_t threads = threads_of_a_rank(work.threads, ranks);
  if (folder == nullptr) return make_rows({0, 0, work.block, work.hire}, threads, ranks, {}, stop);

  const RowRange missing = folder->missing();
  const std::size_t to_make = missing.end - missing.first, all = folder->rows() + to_make;
  const auto write = [&, made = std::size_t{0}](std::string_view lines, std::size_t rows) mutable {
    folder->append(lines, rows);
    progress.count(folder->rows(), all, made += rows, to_make);
  };
  const Outcome outcome =
      make_rows({missing.first, missing.end, work.block, work.hire}, threads, ranks, write, stop);
  if (outcome.complete && !folder->complete()) folder->finish();
  return outcome;
}

}  // namespace gapstrain::cases
