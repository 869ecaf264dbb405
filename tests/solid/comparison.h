// Figures of ours beside those of an independent calculation or a published formula.
#pragma once

#include <string>
#include <vector>

namespace gapstrain::tests {

struct Comparison {
  std::string group;  // heading of the table
  std::string figure;
  std::string unit;
  double ours = 0.0;
  double reference = 0.0;
  double scale = 0.0;  // what the difference is measured against; the reference itself unless stated
  double below = 0.0;  // allowed share below and above
  double above = 0.0;

  double difference() const { return (ours - reference) / scale; }
  bool holds() const { return difference() >= -below && difference() <= above; }
};

// Same tolerance both ways, against the reference itself.
Comparison compare(std::string group, std::string figure, std::string unit, double ours, double reference,
                   double tolerance);

}  // namespace gapstrain::tests
