#include "cases/reader/study_keys.h"

namespace gapstrain::cases {

namespace {

std::vector<Key> make_study_keys() {
  using enum Need;
  const std::vector<std::string> designs{"grid", "latin-hypercube", "sobol", "monte-carlo", "saltelli"};
  const std::vector<std::string> shapes{"uniform", "normal", "lognormal", "triangular"};

  std::vector<Key> keys;
  // clang-format off
  keys = {
    {"", "case", Kind::text, required, "", "the case file that is varied, seen from this file's folder", {}},
    {"", "name", Kind::text, derived, "the file's name", "printed on tables and charts", {}},
    {"", "design", Kind::table, optional, "", "which combinations of values are analysed; absent: a grid", {}},
    {"", "vary", Kind::tables, required, "", "what is varied, each [[vary]] independently of the others",
     {}, {"1", "50"}},
    {"", "limit", Kind::tables, optional, "", "bounds on findings, to sort out the rows that keep all of them",
     {}, {"1", "50"}},
    {"", "chart", Kind::tables, optional, "", "curves of findings", {}, {"1", "50"}},

    {"design", "kind", Kind::choice, literal, "grid",
     "grid: every combination of lists and ranges, the first [[vary]] varies slowest; the others take samples: "
     "monte-carlo of independent points, latin-hypercube and sobol spread more evenly, saltelli for Sobol' indices",
     designs},
    {"design", "points", Kind::count, optional, "",
     "number of samples, needed by all but a grid; powers of two suit sobol and saltelli; saltelli makes as many rows "
     "for each as there are [[vary]], and two", {}, {"1", "1000000"}},
    {"design", "seed", Kind::count, literal, "1", "another one gives other samples", {}, {"1", "1000000"}},

    {"vary", "key", Kind::text, optional, "",
     "path of a key of the case file, lists of tables counted from 0, such as \"plate.standoff\" or \"load[0].axial\"",
     {}},
    {"vary", "keys", Kind::texts, optional, "", "in place of `key`: several keys set together to the same value", {}},
    {"vary", "name", Kind::text, derived, "the key, or the first of the keys", "heading in tables and charts", {}},
    {"vary", "values", Kind::values, optional, "",
     "one by one, each as the case file would write it; samples take them with equal chances", {}},
    {"vary", "from", Kind::measure, optional, "", "first value of a range", {}},
    {"vary", "to", Kind::measure, optional, "", "last value of a range", {}},
    {"vary", "steps", Kind::count, optional, "", "number of values of a range, both ends among them",
     {}, {"2", "1000000"}},
    {"vary", "spacing", Kind::choice, literal, "even", "of the values of a range", {"even", "logarithmic"}},
    {"vary", "distribution", Kind::choice, optional, "",
     "for samples; whole numbers are rounded", shapes},
    {"vary", "mean", Kind::measure, optional, "", "of a normal or lognormal distribution", {}},
    {"vary", "sd", Kind::measure, optional, "",
     "standard deviation of a normal or lognormal distribution, in either of the quantity itself", {}},
    {"vary", "low", Kind::measure, optional, "", "lower end of a uniform or triangular distribution", {}},
    {"vary", "mode", Kind::measure, optional, "", "peak of a triangular distribution", {}},
    {"vary", "high", Kind::measure, optional, "", "upper end of a uniform or triangular distribution", {}},
    {"vary", "least", Kind::measure, optional, "", "cuts a distribution off; the rest keeps its shape", {}},
    {"vary", "most", Kind::measure, optional, "", "likewise", {}},

    {"limit", "finding", Kind::text, required, "", "a column of the table of rows", {}},
    {"limit", "least", Kind::measure, optional, "", "the finding is not to be below; in a unit of the finding", {}},
    {"limit", "most", Kind::measure, optional, "", "the finding is not to be above", {}},

    {"chart", "x", Kind::text, required, "", "a varied name or a finding", {}},
    {"chart", "y", Kind::texts, required, "", "findings, one panel each", {}},
    {"chart", "series", Kind::text, optional, "", "a varied name, one curve for each of its values; absent: one curve", {}},
  };
  // clang-format on
  return keys;
}

}  // namespace

const KeyTable& study_keys() {
  static const KeyTable keys(make_study_keys());
  return keys;
}

}  // namespace gapstrain::cases
