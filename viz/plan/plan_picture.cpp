#include "models/parts/words.h"
#include "models/words/plan_words.h"
#include "viz/drawing/picture_head.h"
#include "viz/drawing/sheet.h"
#include "viz/drawing/text_fit.h"
#include "viz/drawing/window.h"
#include "viz/plan/plan_side_view.h"
#include "viz/plan/plan_table.h"
#include "viz/plan/review_pictures.h"

#include <fmt/format.h>

#include <algorithm>

namespace gapstrain::viz {

namespace {

constexpr int page_height = 2828;  // A4 upright at the pictures' width
constexpr double between_parts = 34.0;

std::string plate_text(const models::Plan& plan) {
  return fmt::format("Plate of {} hole{}, {} x {} x {} mm{}{}, on the {} side, {} mm from the bone's proximal end",
                     plan.holes, plan.holes == 1 ? "" : "s", length_text(plan.plate_length),
                     length_text(plan.plate_width), length_text(plan.plate_thickness),
                     plan.metal.empty() ? "" : ", ", plan.metal, models::name_of(plan.aspect),
                     length_text(plan.proximal_end));
}

struct Item {
  std::string mark, text;
};

double line_height_of(int size) { return 1.28 * size; }

// Each item in as many lines as it takes at a size.
std::vector<std::vector<std::string>> lines_of(Canvas& canvas, const std::vector<Item>& items, int size,
                                               double width) {
  std::vector<std::vector<std::string>> lines;
  for (const auto& item : items)
    lines.push_back(wrapped(canvas, item.text, {.size = size}, width, item.text.size() + 1));
  return lines;
}

// A list under its name, at the largest size at which all of it has room; what has none is counted. Its lower end.
double draw_list(Canvas& canvas, const Rect& room, const std::string& name, const std::vector<Item>& items) {
  constexpr double name_height = 60.0, indent = 60.0;
  constexpr int smallest = 22;
  canvas.text({room.left, room.top}, name, {.upright = Upright::top, .bold = true});
  const double most = room.height() - name_height;
  int size = letter::body;
  auto lines = lines_of(canvas, items, size, room.width() - indent);
  const auto needed = [&] {
    std::size_t count = 0;
    for (const auto& item : lines) count += item.size();
    return line_height_of(size) * static_cast<double>(count);
  };
  while (size > smallest && needed() > most) {
    size -= 2;
    lines = lines_of(canvas, items, size, room.width() - indent);
  }
  const bool all_fit = needed() <= most;
  const double low = room.bottom + (all_fit ? 0.0 : line_height_of(size));
  double y = room.top - name_height;
  for (std::size_t i = 0; i < lines.size(); ++i) {
    if (y - line_height_of(size) * static_cast<double>(lines[i].size()) < low - 1e-6) {
      canvas.text({room.left + indent, y}, fmt::format("and {} more", lines.size() - i),
                  {.size = size, .colour = ink::quiet_text, .upright = Upright::top});
      return y - line_height_of(size);
    }
    canvas.text({room.left, y}, items[i].mark, {.size = size, .colour = ink::quiet_text, .upright = Upright::top});
    for (const auto& line : lines[i]) {
      canvas.text({room.left + indent, y}, line, {.size = size, .upright = Upright::top});
      y -= line_height_of(size);
    }
  }
  return y;
}

// Lines to write on, over what is left of the page.
void draw_lines_to_write_on(Canvas& canvas, const Rect& room) {
  constexpr double apart = 88.0;
  canvas.text({room.left, room.top}, "By hand", {.upright = Upright::top, .bold = true});
  for (double y = room.top - 40.0 - apart; y >= room.bottom; y -= apart)
    canvas.line({room.left, y}, {room.right, y}, {.colour = ink::leader, .width = 2.0});
}

// Where the fracture lies, on the bone and on the plate.
std::string fracture_text(const models::Construct& construct, const PlanSideView& view) {
  const double place = only(construct.fractures).position.value();
  int before = 0;
  for (const auto& hole : only(construct.plates).holes)
    if (view.plate.x_at(hole.position.value()) < place) ++before;
  const auto holes = static_cast<int>(only(construct.plates).holes.size());
  const std::string on_plate = before == 0       ? "proximal to hole 1"
                               : before == holes ? fmt::format("distal to hole {}", holes)
                                                 : fmt::format("between holes {} and {}", before, before + 1);
  return fmt::format("{} mm from the bone's proximal end, {}", length_text(only(construct.fractures).position),
                     on_plate);
}

std::vector<Item> numbered(const std::vector<std::string>& texts) {
  std::vector<Item> items;
  for (const auto& text : texts) items.push_back({fmt::format("{}.", items.size() + 1), text});
  return items;
}

std::vector<Item> bulleted(const std::vector<std::string>& texts) {
  std::vector<Item> items;
  for (const auto& text : texts) items.push_back({"•", text});
  return items;
}

// Names with their values, as many rows as they take. Their height.
double draw_facts(Canvas& canvas, double top, const PlanFacts& facts) {
  constexpr double apart = 60.0, row_height = 42.0;
  constexpr TextStyle name_style{.size = letter::small, .colour = ink::quiet_text, .upright = Upright::top};
  constexpr TextStyle value_style{.size = letter::small, .upright = Upright::top, .bold = true};
  Pixel place(sheet::margin, top);
  for (const auto& [name, value] : facts) {
    const std::string beginning = name + ": ";
    const double name_width = canvas.text_size(beginning, name_style).x();
    const double width = name_width + canvas.text_size(value, value_style).x();
    if (place.x() > sheet::margin && place.x() + width > picture_width - sheet::margin)
      place = {sheet::margin, place.y() - row_height};
    canvas.text(place, beginning, name_style);
    const double room = picture_width - sheet::margin - place.x() - name_width;
    canvas.text(place + Pixel(name_width, 0.0), shortened(canvas, value, value_style, room), value_style);
    place.x() += width + apart;
  }
  return top - place.y() + row_height;
}

}  // namespace

void draw_plan(const Display& display, const models::Construct& construct, const models::Plan& plan,
               const PlanFacts& facts, const std::filesystem::path& file) {
  const PlanSideView view = plan_side_view(construct, plan);
  PlanFacts all{{"Fracture", fracture_text(construct, view)}};
  all.insert(all.end(), facts.begin(), facts.end());

  const double height = page_height - PictureHead(display.frame()).height();
  Window window(display, height);
  window.draw([&](Canvas& canvas) {
    draw_head(canvas, height, "Plan", plate_text(plan));
    double y = height - sheet::head_height;
    y -= draw_facts(canvas, y, all) + between_parts;
    draw_plan_side_view(canvas, y, view);
    y -= view.height() + between_parts;
    draw_plan_table(canvas, y, plan.screws);
    y -= plan_table_height(plan.screws.size()) + between_parts;
    const double bottom = sheet::caution_height + 20.0;
    constexpr double steps_right = 660.0, notes_left = 720.0, least_to_write_on = 330.0;
    const double lists_bottom = std::min(bottom + least_to_write_on, y - 300.0);
    const double lists_end =
        std::min(draw_list(canvas, {sheet::margin, lists_bottom, steps_right, y}, "Steps", numbered(plan.steps)),
                 draw_list(canvas, {notes_left, lists_bottom, picture_width - sheet::margin, y}, "To mind",
                           bulleted(models::note_sentences(plan.notes))));
    draw_lines_to_write_on(canvas,
                           {sheet::margin, bottom, picture_width - sheet::margin, lists_end - between_parts});
    draw_caution(canvas);
  });
  window.write(file);
}

}  // namespace gapstrain::viz
