#include "solver/native/single_threaded_blas.h"

#include <dlfcn.h>

#include <mutex>

namespace gapstrain::solver {

void keep_blas_single_threaded() {
  static std::once_flag once;
  std::call_once(once, [] {
    // CHOLMOD brings the system's BLAS in, whichever it is; the function is looked up, not linked.
    using SetThreads = void (*)(int);
    if (const auto set_threads = reinterpret_cast<SetThreads>(dlsym(RTLD_DEFAULT, "openblas_set_num_threads")))
      set_threads(1);
  });
}

}  // namespace gapstrain::solver
