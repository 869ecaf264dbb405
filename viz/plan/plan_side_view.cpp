#include "viz/plan/plan_side_view.h"

#include "models/parts/words.h"
#include "viz/drawing/chart.h"
#include "viz/drawing/sheet.h"
#include "viz/drawing/text_fit.h"
#include "viz/drawing/window.h"

#include <fmt/format.h>

#include <algorithm>
#include <cmath>
#include <numbers>
#include <utility>

namespace gapstrain::viz {

namespace {

constexpr double names_right = 210.0;  // of the rows' names at the left
constexpr double scene_left = 240.0, scene_right = picture_width - sheet::margin;
constexpr double most_view_height = 560.0;
constexpr double beside_plate = 0.06;  // shown beyond either end, of its length
constexpr double prebend_row = 46.0, bend_row = 84.0, hole_row = 40.0, ring_row = 56.0, heads_room = 34.0;
constexpr double above_columns = 30.0, column_row = 40.0, column_spacing = 64.0;
constexpr double direction_row = 84.0, kinds_row = 46.0;
constexpr Colour plate_colour{0.62, 0.64, 0.68}, shaft_colour{0.30, 0.31, 0.34};

double rows_above(const PlanSideView& view) {
  return (view.plan->prebend ? prebend_row : 0.0) + bend_row + hole_row + ring_row + heads_room;
}

// Where things are on the page: x and z of the construct, seen from the side.
struct Place {
  const PlanSideView& view;
  double scene_top;

  double x(double at) const {
    return 0.5 * (scene_left + scene_right) + view.pixels_per_mm * (at - 0.5 * (view.low_x + view.high_x));
  }
  Pixel pixel(double at_x, double at_z) const {
    return {x(at_x), scene_top + view.pixels_per_mm * (at_z - view.high_z)};
  }
  Pixel pixel(const Eigen::Vector3d& point) const { return pixel(point.x(), point.z()); }
};

// A strip between two lines with the same number of points, with its outline.
void draw_strip(Canvas& canvas, const std::vector<Pixel>& upper, const std::vector<Pixel>& lower,
                const Colour& colour, bool closed) {
  std::vector<Pixel> all = upper;
  all.insert(all.end(), lower.rbegin(), lower.rend());
  canvas.polygon(all, colour);
  const LineStyle edge{.width = 2.5};
  canvas.polyline(upper, edge);
  canvas.polyline(lower, edge);
  if (!closed || upper.empty()) return;
  canvas.line(upper.front(), lower.front(), edge);
  canvas.line(upper.back(), lower.back(), edge);
}

constexpr int pieces = 200;

void draw_bone(Canvas& canvas, const Place& place) {
  const PlanSideView& view = place.view;
  const double from = std::max(view.low_x, 0.0), to = std::min(view.high_x, view.bone.length());
  for (const double side : {1.0, -1.0}) {
    std::vector<Pixel> outer, inner;
    for (int i = 0; i <= pieces; ++i) {
      const auto section = view.bone.section(std::lerp(from, to, static_cast<double>(i) / pieces));
      outer.push_back(place.pixel(section.point({0.0, side * section.semi_z})));
      inner.push_back(place.pixel(section.point({0.0, side * (section.semi_z - section.wall)})));
    }
    draw_strip(canvas, outer, inner, ink::bone, false);
  }
}

// The gap over what was drawn of the bone, its edges as lines across.
void draw_fracture(Canvas& canvas, const Place& place) {
  const PlanSideView& view = place.view;
  const auto& fracture = only(view.construct->fractures);
  const auto section = view.bone.section(fracture.position.value());
  const double reach = section.semi_z + 4.0 / view.pixels_per_mm;
  const double lean = std::tan(fracture.obliquity.value()) * std::cos(fracture.direction.value());
  const double half = 0.5 * std::max(fracture.gap.value(), 7.0 / view.pixels_per_mm);
  const auto corner = [&](double up, double along) {
    return place.pixel(section.centre.x() + lean * up * reach + along * half, section.centre.z() + up * reach);
  };
  const std::vector<Pixel> gap{corner(1.0, -1.0), corner(1.0, 1.0), corner(-1.0, 1.0), corner(-1.0, -1.0)};
  canvas.polygon(gap, ink::white);
  canvas.line(gap[0], gap[3], {.width = 3.0});
  canvas.line(gap[1], gap[2], {.width = 3.0});
}

void draw_plate(Canvas& canvas, const Place& place) {
  const PlanSideView& view = place.view;
  const auto& plate = only(view.construct->plates);
  double from = 0.0;
  const auto draw_to = [&](double to) {
    std::vector<Pixel> upper, lower;
    constexpr int between_holes = 24;
    for (int i = 0; i <= between_holes; ++i) {
      const auto point = view.plate.mid_surface(std::lerp(from, to, static_cast<double>(i) / between_holes), 0.0);
      upper.push_back(place.pixel(point.position + 0.5 * point.thickness * point.normal));
      lower.push_back(place.pixel(point.position - 0.5 * point.thickness * point.normal));
    }
    draw_strip(canvas, upper, lower, plate_colour, true);
  };
  for (const auto& hole : plate.holes) {
    draw_to((hole.position - 0.5 * hole.slot_length).value());
    from = (hole.position + 0.5 * hole.slot_length).value();
  }
  draw_to(plate.length.value());
}

void draw_shafts(Canvas& canvas, const Place& place) {
  for (const auto& shaft : place.view.shafts) {
    const Pixel head = place.pixel(shaft.head), tip = place.pixel(shaft.tip), along = tip - head;
    const double length = std::max(along.norm(), 1e-6);
    const double half = std::max(0.5 * shaft.order->core.value() * place.view.pixels_per_mm, 4.0);
    const Pixel side = half / length * Pixel(-along.y(), along.x());
    const Pixel point = std::min(1.2 * half / length, 0.5) * along;
    canvas.polygon({head + side, head - side, tip - point - side, tip, tip - point + side}, shaft_colour);
  }
}

void draw_heads(Canvas& canvas, const Place& place) {
  constexpr double radius = 13.0;
  for (const auto& shaft : place.view.shafts) {
    const Pixel head = place.pixel(shaft.head) + Pixel(0.0, radius);
    const Marker shape = head_shape(shaft.order->kind);
    canvas.marker(head, shape, radius + 3.0, ink::white, false);
    canvas.marker(head, shape, radius, ink::text, shaft.beside_plate());
  }
}

void draw_row_name(Canvas& canvas, double y, const std::string& name) {
  const TextStyle style{.size = letter::small, .colour = ink::quiet_text, .upright = Upright::centre};
  canvas.text({sheet::margin, y}, name, fitted(canvas, name, style, names_right - sheet::margin));
}

// The way the plate turns, drawn more than it is so that it can be seen; level without a bend.
void draw_chevron(Canvas& canvas, const Pixel& centre, double degrees, double half_width) {
  constexpr double least = 10.0, most = 40.0, magnified = 4.0;
  const double size = std::abs(degrees) < 0.05 ? 0.0 : std::clamp(magnified * std::abs(degrees), least, most);
  const double drop = std::copysign(half_width * std::tan(0.5 * size * std::numbers::pi / 180.0), degrees);
  canvas.polyline({centre + Pixel(-half_width, -0.5 * drop), centre + Pixel(0.0, 0.5 * drop),
                   centre + Pixel(half_width, -0.5 * drop)},
                  {.width = 5.0});
}

void draw_bends(Canvas& canvas, double top, const Place& place) {
  const PlanSideView& view = place.view;
  const double text_y = top - 22.0, chevron_y = top - 58.0;
  if (view.plan->bends.empty()) {
    canvas.text({0.5 * (scene_left + scene_right), text_y}, "the plate stays straight",
                {.size = letter::small, .across = Across::centre, .upright = Upright::centre});
    return;
  }
  draw_row_name(canvas, text_y, "bend, °");
  double room = scene_right - scene_left;
  for (std::size_t b = 1; b < view.plan->bends.size(); ++b)
    room = std::min(room, view.pixels_per_mm * (view.plan->bends[b].at - view.plan->bends[b - 1].at).value());
  for (const auto& bend : view.plan->bends) {
    const double x = place.x(view.plate.x_at(bend.at.value()));
    const std::string text = degrees_text(bend.bend);
    canvas.text({x, text_y}, text,
                fitted(canvas, text,
                       {.size = letter::small, .across = Across::centre, .upright = Upright::centre, .bold = true},
                       std::max(room - 8.0, 30.0)));
    draw_chevron(canvas, {x, chevron_y}, (bend.bend / models::degree).value(),
                 std::clamp(0.36 * room, 12.0, 40.0));
  }
}

void draw_prebend(Canvas& canvas, double top, const Place& place) {
  const auto& prebend = *place.view.plan->prebend;
  const std::string text =
      fmt::format("{}° more, stands {} mm off", degrees_text(prebend.bend), length_text(prebend.height));
  const TextStyle style{.size = letter::small, .across = Across::centre, .upright = Upright::centre, .bold = true};
  const double half = 0.5 * canvas.text_size(text, style).x(),
               x = place.x(place.view.plate.x_at(prebend.at.value()));
  const double y = top - 22.0;
  draw_row_name(canvas, y, "prebend");
  canvas.text({kept_between(x, scene_left + half, scene_right - half), y}, text, style);
}

// Numbers of holes and steps, with a leader to what they are of.
void draw_numbers(Canvas& canvas, double top, const Place& place) {
  const PlanSideView& view = place.view;
  const double hole_y = top - 0.5 * hole_row, ring_y = top - hole_row - 0.5 * ring_row;
  draw_row_name(canvas, hole_y, "hole");
  draw_row_name(canvas, ring_y, "step");
  const LineStyle leader{.colour = ink::leader, .width = 2.0};
  const auto& holes = only(view.construct->plates).holes;
  for (std::size_t h = 0; h < holes.size(); ++h) {
    const auto centre = view.plate.mid_surface(holes[h].position.value(), 0.0);
    const double x = place.x(centre.position.x());
    canvas.line({x, hole_y - 20.0}, place.pixel(centre.position + 0.5 * centre.thickness * centre.normal), leader);
    canvas.text({x, hole_y}, std::to_string(h + 1),
                {.size = letter::small, .across = Across::centre, .upright = Upright::centre});
  }
  std::vector<double> places;
  for (const auto& shaft : view.shafts) places.push_back(place.x(shaft.head.x()));
  places = spread(places, 2.0 * step_ring_radius + 6.0, scene_left, scene_right);
  for (std::size_t s = 0; s < places.size(); ++s) {
    canvas.line({places[s], ring_y}, place.pixel(view.shafts[s].head), {.width = 2.0});
    draw_step_ring(canvas, {places[s], ring_y}, view.shafts[s].order->step);
  }
}

// Under each tip what is to be ordered and drilled.
void draw_columns(Canvas& canvas, double top, const Place& place) {
  const PlanSideView& view = place.view;
  std::vector<double> places;
  for (const auto& shaft : view.shafts) places.push_back(place.x(shaft.tip.x()));
  const double spacing = std::min(
      column_spacing, (scene_right - scene_left) / std::max<double>(static_cast<double>(places.size()), 1.0));
  places = spread(places, spacing, scene_left, scene_right);
  const double label_y = top - above_columns - 0.5 * column_row;
  draw_row_name(canvas, label_y, "screw");
  draw_row_name(canvas, label_y - column_row, "order, mm");
  draw_row_name(canvas, label_y - 2.0 * column_row, "drill, mm");
  for (std::size_t s = 0; s < places.size(); ++s) {
    const auto& order = *view.shafts[s].order;
    canvas.line(place.pixel(view.shafts[s].tip) - Pixel(0.0, 4.0), {places[s], label_y + 18.0},
                {.colour = ink::leader, .width = 2.0});
    const TextStyle plain{.size = letter::small, .across = Across::centre, .upright = Upright::centre};
    TextStyle bold = plain;
    bold.bold = true;
    const auto write = [&](double y, const std::string& text, const TextStyle& style) {
      const TextStyle own = fitted(canvas, text, style, spacing - 8.0, 20);
      canvas.text({places[s], y}, shortened(canvas, text, own, spacing - 4.0), own);
    };
    write(label_y, order.label, plain);
    write(label_y - column_row, order.length ? length_text(*order.length) : "?", bold);
    write(label_y - 2.0 * column_row, order.drill ? length_text(*order.drill) : "–", plain);
  }
}

void draw_kinds(Canvas& canvas, double y, const PlanSideView& view) {
  const TextStyle style{.size = letter::small, .upright = Upright::centre};
  constexpr double apart = 44.0;
  double x = sheet::margin + 14.0;
  for (const auto kind : screw_kinds) {
    if (std::none_of(view.shafts.begin(), view.shafts.end(),
                     [&](const auto& shaft) { return shaft.order->kind == kind; }))
      continue;
    canvas.marker({x, y}, head_shape(kind), 13.0, ink::text, false);
    canvas.text({x + 26.0, y}, models::name_of(kind), style);
    x += 26.0 + canvas.text_size(models::name_of(kind), style).x() + apart;
  }
  std::string rest = "double line: fracture";
  if (std::any_of(view.shafts.begin(), view.shafts.end(), [](const auto& shaft) { return shaft.beside_plate(); }))
    rest = "hollow: beside the plate;  " + rest;
  if (std::any_of(view.shafts.begin(), view.shafts.end(), [](const auto& shaft) { return !shaft.order->length; }))
    rest += ";  ?: measure before you order";
  if (!view.plan->bends.empty()) rest += ";  bend +: ends towards the bone, drawn enlarged";
  canvas.text({x, y}, rest, fitted(canvas, rest, style, picture_width - sheet::margin - x));
}

}  // namespace

double PlanSideView::height() const {
  return rows_above(*this) + scene_height() + above_columns + 3.0 * column_row + direction_row + kinds_row;
}

PlanSideView plan_side_view(const models::Construct& construct, const models::Plan& plan) {
  models::BoneShape bone(construct.bone, only(construct.plates).aspect);
  models::PlateShape plate(only(construct.plates), bone);
  PlanSideView view{&construct, &plan, std::move(bone), std::move(plate), {}, 0.0, 0.0, 0.0, 0.0, 1.0};
  const double length = only(construct.plates).length.value();
  view.low_x = view.plate.x_at(0.0) - beside_plate * length;
  view.high_x = view.plate.x_at(length) + beside_plate * length;
  view.low_z = 1e9;
  view.high_z = -1e9;
  const auto cover = [&](double z) {
    view.low_z = std::min(view.low_z, z);
    view.high_z = std::max(view.high_z, z);
  };
  for (int i = 0; i <= pieces; ++i) {
    const double share = static_cast<double>(i) / pieces;
    const auto section =
        view.bone.section(std::clamp(std::lerp(view.low_x, view.high_x, share), 0.0, view.bone.length()));
    cover(section.point({0.0, section.semi_z}).z());
    cover(section.point({0.0, -section.semi_z}).z());
    const auto point = view.plate.mid_surface(share * length, 0.0);
    cover(point.position.z() + 0.5 * point.thickness);
  }
  for (const auto& order : plan.screws) {
    const double depth = order.length.value_or(order.measured).value();
    view.shafts.push_back({&order, order.seat, order.seat + depth * order.direction});
    for (const auto* end : {&view.shafts.back().head, &view.shafts.back().tip}) {
      cover(end->z());
      view.low_x = std::min(view.low_x, end->x());
      view.high_x = std::max(view.high_x, end->x());
    }
  }
  view.pixels_per_mm = std::min((scene_right - scene_left) / (view.high_x - view.low_x),
                                most_view_height / (view.high_z - view.low_z));
  return view;
}

void draw_plan_side_view(Canvas& canvas, double top, const PlanSideView& view) {
  double y = top;
  const Place place{view, top - rows_above(view)};
  if (view.plan->prebend) {
    draw_prebend(canvas, y, place);
    y -= prebend_row;
  }
  draw_bends(canvas, y, place);
  draw_bone(canvas, place);
  draw_fracture(canvas, place);
  draw_plate(canvas, place);
  draw_shafts(canvas, place);
  draw_numbers(canvas, y - bend_row, place);
  draw_heads(canvas, place);
  y = place.scene_top - view.scene_height();
  draw_columns(canvas, y, place);
  y -= above_columns + 3.0 * column_row + 0.6 * direction_row;
  draw_bone_directions(canvas, y);
  draw_length_bar(canvas, {0.5 * picture_width, y - 8.0}, view.pixels_per_mm, 330.0, "");
  draw_kinds(canvas, y - 0.4 * direction_row - 0.5 * kinds_row, view);
}

}  // namespace gapstrain::viz
