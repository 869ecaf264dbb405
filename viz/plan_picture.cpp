#include "models/parts/words.h"
#include "viz/plan_side_view.h"
#include "viz/plan_table.h"
#include "viz/review_pictures.h"
#include "viz/sheet.h"
#include "viz/text_fit.h"
#include "viz/window.h"

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

double line_height(int size) { return 1.28 * size; }

// Each item in as many lines as it takes at a size.
std::vector<std::vector<std::string>> lines_of(Canvas& canvas, const std::vector<Item>& items, int size,
                                               double width) {
  std::vector<std::vector<std::string>> lines;
  for (const auto& item : items)
    lines.push_back(wrapped(canvas, item.text, {.size = size}, width, item.text.size() + 1));
  return lines;
}

// A list under its name, at the largest size at which all of it has room; what has none is counted.
void draw_list(Canvas& canvas, const Rect& room, const std::string& name, const std::vector<Item>& items) {
  constexpr double name_height = 60.0, indent = 60.0;
  constexpr int smallest = 22;
  canvas.text({room.left, room.top}, name, {.upright = Upright::top, .bold = true});
  const double most = room.height() - name_height;
  int size = letter::body;
  auto lines = lines_of(canvas, items, size, room.width() - indent);
  const auto needed = [&] {
    std::size_t count = 0;
    for (const auto& item : lines) count += item.size();
    return line_height(size) * static_cast<double>(count);
  };
  while (size > smallest && needed() > most) {
    size -= 2;
    lines = lines_of(canvas, items, size, room.width() - indent);
  }
  const bool all_fit = needed() <= most;
  const double low = room.bottom + (all_fit ? 0.0 : line_height(size));
  double y = room.top - name_height;
  for (std::size_t i = 0; i < lines.size(); ++i) {
    if (y - line_height(size) * static_cast<double>(lines[i].size()) < low - 1e-6) {
      canvas.text({room.left + indent, y}, fmt::format("and {} more", lines.size() - i),
                  {.size = size, .colour = ink::quiet_text, .upright = Upright::top});
      return;
    }
    canvas.text({room.left, y}, items[i].mark, {.size = size, .colour = ink::quiet_text, .upright = Upright::top});
    for (const auto& line : lines[i]) {
      canvas.text({room.left + indent, y}, line, {.size = size, .upright = Upright::top});
      y -= line_height(size);
    }
  }
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

}  // namespace

void draw_plan(const Display&, const models::Construct& construct, const models::Plan& plan,
               const std::filesystem::path& png) {
  const auto screws = planned_screws(construct, plan);
  const PlanSideView view = plan_side_view(construct, plan, screws);

  Window window(picture_width, page_height);
  window.draw([&](Canvas& canvas) {
    draw_head(canvas, page_height, construct.name.empty() ? "Plan" : construct.name, plate_text(plan));
    double y = page_height - sheet::head_height;
    draw_plan_side_view(canvas, y, view);
    y -= view.height() + between_parts;
    draw_plan_table(canvas, y, screws);
    y -= plan_table_height(screws.size()) + between_parts;
    const double bottom = sheet::caution_height + 20.0;
    constexpr double steps_right = 660.0, notes_left = 720.0;
    draw_list(canvas, {sheet::margin, bottom, steps_right, y}, "Steps", numbered(plan.steps));
    draw_list(canvas, {notes_left, bottom, picture_width - sheet::margin, y}, "To mind", bulleted(plan.notes));
    draw_caution(canvas);
  });
  window.write(png);
}

}  // namespace gapstrain::viz
