// What a program of one's own needs to assess a construct: assess_case CASE.toml
#include "cases/reader/read_case.h"
#include "models/margins/part_name.h"
#include "models/preparation/from_scratch.h"

#include <cstdio>
#include <stdexcept>

using namespace gapstrain;

int main(int argc, char** argv) try {
  if (argc != 2) throw std::invalid_argument("usage: assess_case CASE.toml");
  const cases::CaseFile file = cases::read_case(argv[1]);  // throws with all that is wrong with it
  const models::AssessedConstruct assessed = models::assess(file.construct);
  const auto standing = assessed.assessment.state.standing();
  std::printf("standing: %s\n", standing == models::Standing::holds   ? "holds"
                                : standing == models::Standing::fails ? "FAILS"
                                                                      : "NOT TO BE TRUSTED");
  if (const models::Margin* least = models::least_margin(assessed.assessment.margins))
    std::printf("least margin: %.6f, %s, under \"%s\"\n", least->factor, models::part_name(*least).c_str(),
                least->load.c_str());
  for (const auto& rule : assessed.assessment.review)
    if (rule.verdict == models::Verdict::broken) std::printf("broken: %s\n", rule.rule.c_str());
  return 0;
} catch (const std::exception& fault) {
  std::fprintf(stderr, "%s\n", fault.what());
  return 1;
}
