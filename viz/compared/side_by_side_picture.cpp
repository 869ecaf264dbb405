#include "viz/compared/compared_pictures.h"
#include "viz/compared/compared_sheet.h"
#include "viz/construct/construct_scene.h"
#include "viz/construct/peak_text.h"
#include "viz/construct/plate_places.h"
#include "viz/construct/screw_surface.h"
#include "viz/drawing/text_fit.h"

#include <fmt/format.h>

#include <algorithm>
#include <cmath>
#include <limits>
#include <utility>

namespace gapstrain::viz {

namespace {

constexpr double most_scenes_height = 1500.0;  // of all bodies together, pixels
constexpr double label_room = 100.0;           // above and below each construct's bodies, for a row of labels
constexpr double name_height = 112.0;          // of the two lines over a scene

double proximal_end(const models::LoadFields& fields) {
  double end = std::numeric_limits<double>::max();
  for (const auto& shell : fields.shells)
    if (shell.kind == models::BodyKind::bone) end = std::min(end, shell.mesh->nodes.col(0).minCoeff());
  return end;
}

// Rows that the screws' labels will take, by a guess at their width that is rather too wide.
int label_rows(const ConstructScene& scene, const Projection& view) {
  constexpr double letter_width = 18.0, between = 12.0;
  std::vector<std::pair<double, double>> labels;  // middle and width, pixels
  for (const auto& screw : scene.fields->screws)
    labels.emplace_back(view.pixel(deformed_point(screw, screw.axis.size() - 1, scene.factor)).x(),
                        letter_width * static_cast<double>(screw.label.size()) + between);
  std::sort(labels.begin(), labels.end());
  std::vector<double> ends;  // of the last label in each row
  for (const auto& [middle, width] : labels) {
    const double left = middle - 0.5 * width;
    const auto row = std::find_if(ends.begin(), ends.end(), [&](double end) { return end <= left; });
    (row == ends.end() ? ends.emplace_back() : *row) = left + width;
  }
  return std::max<int>(static_cast<int>(ends.size()), 1);
}

// One scene under another, each seen alike.
struct Stack {
  std::vector<Rect> areas;
  std::vector<Projection> views;
  double foot = 0.0;  // under the last scene
  int height = 0;
};

Stack stack(const std::vector<ConstructScene>& scenes) {
  const Projection plain = three_quarter_view();
  std::vector<Rect> reached;
  std::vector<double> ends;
  double before = 0.0, beyond = 0.0, highest = 1e-6;  // of the proximal ends, mm
  for (const auto& scene : scenes) {
    reached.push_back(reach(plain, scene.points));
    ends.push_back(plain.pixel({proximal_end(*scene.fields), 0.0, 0.0}).x());
    before = std::max(before, ends.back() - reached.back().left);
    beyond = std::max(beyond, reached.back().right - ends.back());
    highest = std::max(highest, reached.back().height());
  }
  const double pixels_per_mm = std::min((picture_width - 2.0 * sheet::margin) / std::max(before + beyond, 1e-6),
                                        most_scenes_height / static_cast<double>(scenes.size()) / highest);

  Stack stack;
  stack.foot = sheet::caution_height + sheet::legend_height + sheet::row_of_directions;
  double bottom = stack.foot;
  for (std::size_t s = scenes.size(); s-- > 0;) {
    Projection view = plain;
    view.pixels_per_mm = pixels_per_mm;
    const double height = std::ceil(reached[s].height() * pixels_per_mm + 2.0 * label_room);
    bottom += 34.0 * (label_rows(scenes[s], view) - 1);
    stack.areas.insert(stack.areas.begin(), {0.0, bottom, picture_width, bottom + height});
    view.target = (ends[s] + 0.5 * (beyond - before)) * view.right + reached[s].centre().y() * view.up;
    view.at = stack.areas.front().centre();
    stack.views.insert(stack.views.begin(), view);
    bottom += height + name_height;
  }
  stack.height = static_cast<int>(bottom + sheet::head_height);
  return stack;
}

void draw_name(Canvas& canvas, double top, const ComparedConstruct& construct, bool with_load) {
  const double width = picture_width - 2.0 * sheet::margin;
  canvas.line({sheet::margin, top}, {picture_width - sheet::margin, top}, {.colour = ink::grid, .width = 3.0});
  const TextStyle bold{.upright = Upright::top, .bold = true};
  const TextStyle name = fitted(canvas, construct.name, bold, width, letter::small);
  canvas.text({sheet::margin, top - 16.0}, shortened(canvas, construct.name, name, width), name);
  std::string text =
      fmt::format("plate peak {}; largest displacement {:.3g} mm", peak_text(construct.findings->plate.peak),
                  largest_displacement(*construct.fields));
  if (with_load) text = construct.findings->load + ": " + text;
  const TextStyle quiet{.colour = ink::quiet_text, .upright = Upright::top};
  canvas.text({sheet::margin, top - 62.0}, text, fitted(canvas, text, quiet, width));
}

}  // namespace

void draw_side_by_side(const Display& display, const std::vector<ComparedConstruct>& constructs,
                       const std::filesystem::path& file) {
  check_compared(constructs);
  double factor = std::numeric_limits<double>::max();
  for (const auto& construct : constructs) factor = std::min(factor, deformation_factor(*construct.fields));
  std::vector<ConstructScene> scenes;
  ScaleMark largest;
  for (const auto& construct : constructs) {
    scenes.push_back(construct_scene(*construct.fields, factor));
    if (const auto& own = scenes.back().largest; own.value > largest.value)
      largest = {own.value, fmt::format("{}, {}", own.name, construct.name.substr(0, construct.name.find(':')))};
  }
  const ColourRange range = colour_range(largest.value);
  const auto load = common_load(constructs);

  const Stack stacked = stack(scenes);
  Window window(display, stacked.height);
  for (std::size_t s = 0; s < scenes.size(); ++s) {
    window.open_scene(stacked.areas[s], stacked.views[s]);
    add_construct(window, scenes[s], stacked.views[s], range);
  }
  window.draw([&](Canvas& canvas) {
    draw_head(canvas, stacked.height, load.value_or("Constructs compared"),
              fmt::format("{} constructs on the same scales of length, stress and deformation; {}",
                          constructs.size(), deformation_text(factor)));
    for (std::size_t s = 0; s < scenes.size(); ++s) {
      draw_name(canvas, stacked.areas[s].top + name_height, constructs[s], !load);
      label_construct(canvas, scenes[s], stacked.views[s]);
    }
    draw_directions_and_length(canvas, stacked.foot - 34.0, stacked.views.front());
    draw_stress_legend(canvas, stacked.foot - 78.0, range, largest);
    draw_caution(canvas);
  });
  window.write(file);
}

}  // namespace gapstrain::viz
