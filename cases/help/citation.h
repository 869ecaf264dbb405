// How to cite the program, with what its method rests on.
#pragma once

#include <string>

namespace gapstrain::cases {

// In 100 columns, for people.
std::string citation_text();

// BibTeX, the program and a @misc for each source.
std::string citation_bibtex();

// A CITATION.cff of the Citation File Format 1.2.0.
std::string citation_cff();

}  // namespace gapstrain::cases
