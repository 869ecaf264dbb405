// Parts of the page that a scene may point at.
#pragma once

#include <string>
#include <vector>

namespace gapstrain::cases {

struct PagePart {
  std::string name;   // as a lesson file has it
  std::string label;  // for people
  std::string id;     // of the element in cases/page/interface/page.html
};

const std::vector<PagePart>& page_parts();
std::vector<std::string> names_of_page_parts();

}  // namespace gapstrain::cases
