// What a page shows where scripts are off: the whole report as text, tables and still pictures.
#pragma once

#include "cases/page/page_file.h"

#include <string>

namespace gapstrain::cases {

// From the answer down to the case and the program. A cell with a figure says where it stands in findings.json:
// `data-at`, a JSON pointer (RFC 6901), `data-scale` the factor it is shown with; `data-figure` and `data-load`
// where the catalogue names it.
std::string still_part(const PageContent& content);

}  // namespace gapstrain::cases
