#include "cases/study/long_work.h"

#include "cases/study/interrupt.h"
#include "cases/study/progress.h"

#include <cassert>

namespace gapstrain::cases {

Outcome make_missing_rows(StudyFolder* folder, const LongWork& work, Ranks& ranks) {
  assert((folder != nullptr) == (ranks.rank() == 0));
  const Interrupt interrupt;
  const auto stop = [&] { return interrupt.asked(); };
  const std::size_t threads = threads_of_a_rank(work.threads, ranks);
  if (folder == nullptr) return make_rows({0, 0, work.block, work.hire}, threads, ranks, {}, stop);

  const RowRange missing = folder->missing();
  RowProgress progress(folder->rows(), folder->rows() + missing.end - missing.first, work.quiet);
  const auto write = [&](std::string_view lines, std::size_t rows) {
    folder->append(lines, rows);
    progress.add(rows);
  };
  const Outcome outcome =
      make_rows({missing.first, missing.end, work.block, work.hire}, threads, ranks, write, stop);
  if (outcome.complete && !folder->complete()) folder->finish();
  return outcome;
}

}  // namespace gapstrain::cases
