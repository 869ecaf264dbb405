// Keeps the BLAS to one thread a caller.
#pragma once

namespace gapstrain::solver {

// Bodies are factored side by side, one thread each; a BLAS that starts threads of its own under them makes both
// wait for one another. Takes effect once for the process where the BLAS in use is OpenBLAS, else does nothing.
void keep_blas_single_threaded();

}  // namespace gapstrain::solver
