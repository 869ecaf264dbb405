#include "tests/viz/sample_steps.h"

#include "tests/viz/sample.h"

#include <cmath>
#include <numbers>

namespace gapstrain::tests {

namespace {

using namespace gapstrain::models;

constexpr double opening_per_pressure = 0.011;  // mm/MPa

struct SampleStep {
  const char* text;
  double near, far;               // MPa; far negative: open
  double travel;                  // mm, in all
  std::vector<const char*> in;    // screws
  std::vector<const char*> held;  // wires and clamps
};

const std::vector<SampleStep> steps{
    {"place wire W1", 0.0, -40.0, 0.0, {}, {"W1"}},
    {"insert P1 and P4", 0.0, -40.0, 0.0, {"P1", "P4"}, {"W1"}},
    {"insert and tighten D7 in the slot of hole 7", 13.7, -5.1, -1.3, {"P1", "P4", "D7"}, {"W1"}},
    {"take out W1", 17.9, -6.3, -1.31, {"P1", "P4", "D7"}, {}},
    {"insert D8 and D10", 17.2, -6.2, -1.31, {"P1", "P4", "D7", "D8", "D10"}, {}},
    {"insert P2", 17.1, -6.2, -1.31, {"P1", "P2", "P4", "D7", "D8", "D10"}, {}}};

bool holds(const std::vector<const char*>& labels, const std::string& label) {
  for (const char* one : labels)
    if (label == one) return true;
  return false;
}

// The distal fragment travels along the bone and turns so that its far cortex stays open.
Eigen::Vector3d distal_motion(const Eigen::Vector3d& place, const SampleStep& step) {
  const double open = step.travel < 0.0 ? -step.far * opening_per_pressure : 0.0;
  const double turn = open / 12.4;
  return {step.travel + turn * (6.2 - place.z()), 0.0, turn * (place.x() - 64.9)};
}

}  // namespace

FaceFindings sample_face(double near, double far) {
  FaceFindings face;
  constexpr int places = 48;
  int touching = 0;
  for (int k = 0; k < places; ++k)
    for (const bool outer : {true, false}) {
      const double angle = 2.0 * std::numbers::pi * (k + 0.5) / places;
      const double pressure =
          0.5 * (near + far) + 0.5 * (near - far) * std::cos(angle - 0.06) * (outer ? 1.07 : 0.94);
      FacePoint point;
      point.around = angle * radian;
      point.outer = outer;
      point.pressure = std::max(pressure, 0.0) * mpa;
      point.opening = std::max(-pressure, 0.0) * opening_per_pressure * mm;
      point.slip = (pressure > 0.0 ? 0.0031 : 0.0) * mm;
      touching += pressure > 0.0 ? 1 : 0;
      face.force += std::max(pressure, 0.0) * 0.62 * newton;
      face.points.push_back(point);
      if (point.pressure > face.peak) face.peak = point.pressure;
    }
  face.touching = touching / (2.0 * places);
  face.near = std::max(near, 0.0) * mpa;
  face.far = std::max(far, 0.0) * mpa;
  face.largest_slip = 0.0031 * mm;
  return face;
}

CompressionFindings sample_compression() {
  CompressionFindings compression;
  double before = 0.0;
  for (const auto& step : steps) {
    StepFindings findings;
    findings.text = step.text;
    if (step.near > 0.0) findings.face = sample_face(step.near, step.far);
    findings.travel = (step.travel - before) * mm;
    findings.travel_in_all = step.travel * mm;
    if (holds(step.in, "D7")) findings.held.push_back({"D7", 437.0 * newton, 0.41, 0.29});
    before = step.travel;
    compression.steps.push_back(findings);
  }
  return compression;
}

std::vector<StepFields> sample_step_fields() {
  const auto findings = sample_compression();
  std::vector<StepFields> all;
  for (std::size_t s = 0; s < steps.size(); ++s) {
    const auto loaded = sample_fields();
    StepFields fields;
    fields.text = steps[s].text;
    fields.force = findings.steps[s].face.force.value();
    for (const auto& shell : loaded.shells) {
      ShellField at_rest;
      at_rest.name = shell.name;
      at_rest.kind = shell.kind;
      at_rest.mesh = shell.mesh;
      at_rest.displacements = Eigen::MatrixX3d::Zero(shell.mesh->nodes.rows(), 3);
      if (shell.name == "distal fragment")
        for (Eigen::Index i = 0; i < shell.mesh->nodes.rows(); ++i)
          at_rest.displacements.row(i) = distal_motion(shell.mesh->nodes.row(i), steps[s]);
      fields.shells.push_back(at_rest);
    }
    for (auto screw : loaded.screws) {
      if (!holds(steps[s].in, screw.label)) continue;
      // Only the screw in the slot moved after it was put in.
      for (std::size_t i = 0; i < screw.axis.size(); ++i)
        screw.displacements[i] =
            screw.label == "D7" ? distal_motion(screw.axis[i], steps[s]) : Eigen::Vector3d::Zero();
      screw.is_worked_on = s == 0 || !holds(steps[s - 1].in, screw.label);
      fields.screws.push_back(screw);
    }
    if (holds(steps[s].held, "W1")) fields.holds.push_back({"W1", {106.0, 0.0, 24.0}, {106.0, 0.0, -9.0}});
    all.push_back(fields);
  }
  return all;
}

PrebendFindings sample_prebend() {
  PrebendFindings prebend;
  for (const double height : {0.0, 0.4, 0.8, 1.2, 1.6, 2.0}) {
    PrebendPoint point;
    point.height = height * mm;
    point.force = (812.0 - 31.0 * height) * newton;
    point.near = (9.7 - 4.8 * height + 0.3 * height * height) * mpa;
    point.far = std::max(0.0, 4.3 * height - 1.3) * mpa;
    point.touching = std::min(1.0, 0.37 + 0.52 * height);
    point.unevenness = 0.19 + 0.9 * std::abs(1.23 - height);
    prebend.curve.push_back(point);
  }
  prebend.most_even = prebend.sufficient = prebend.curve[3];
  return prebend;
}

}  // namespace gapstrain::tests
