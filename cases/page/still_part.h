// What a page shows where scripts are off: all figures as text, and still pictures.
#pragma once

#include "cases/page/page_file.h"

#include <string>

namespace gapstrain::cases {

std::string still_part(const PageContent& content);

}  // namespace gapstrain::cases
