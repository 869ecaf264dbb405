#include "models/catalogue/figure_entry.h"

namespace gapstrain::models {

double model_error_of(ErrorOf kind) {
  switch (kind) {
    case ErrorOf::stress:
      return model_error_of_stress;
    case ErrorOf::stiffness:
      return model_error_of_stiffness;
    case ErrorOf::life:
      return model_error_of_life;
    case ErrorOf::nothing:
      break;
  }
  return 0.0;
}

}  // namespace gapstrain::models
