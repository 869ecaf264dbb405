// A page's bodies, its state as entered and its pictures, made.
#pragma once

#include "cases/page/page_file.h"
#include "cases/page/page_variants.h"
#include "cases/progress/time_left.h"
#include "models/measures/analyse.h"

#include <string>
#include <vector>

namespace gapstrain::cases {

std::vector<Stage> page_plan(const PageCase& page, bool with_pictures);

// The same of a page of bodies that are there, without the writing of its file.
std::vector<Stage> page_plan_of_bodies(std::size_t variants, bool with_pictures);

// `date`: of the run. @throw ModelError, what models::prepare_bodies throws
PageContent make_page(const PageCase& page, bool with_pictures, const std::string& date,
                      const models::Progress& progress);

}  // namespace gapstrain::cases
