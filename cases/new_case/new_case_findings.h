// What the analysis of a drafted case found, told before all else.
#pragma once

#include "models/assessment/assess.h"
#include "models/patient/load_doubt.h"

#include <string>
#include <vector>

namespace gapstrain::cases {

// Paragraphs: what the verdict hangs on, why it is not to be trusted, what FAILS, or that it holds; what it has in
// hand; the rules it keeps and breaks. @pre assessed on the first day
std::vector<std::string> draft_findings(const models::Construct& construct, const models::Assessment& assessment,
                                        const models::Patient& patient, const models::LoadDoubts& doubts);

// "HOLDS, BUT THIS HANGS ON torsion ...", or that no load within its band turns the verdict; empty where there is
// no verdict.
std::string doubt_sentences(const models::Patient& patient, const models::LoadDoubts& doubts);

// In the place of those where there is no answer.
std::vector<std::string> draft_without_findings(const std::string& reason);

}  // namespace gapstrain::cases
