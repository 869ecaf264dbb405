// The screws of a plan as a table.
#pragma once

#include "viz/plan/plan_screws.h"

#include <vector>

namespace gapstrain::viz {

// Pixels the table takes with all its rows.
double plan_table_height(std::size_t screws);

// As many rows as there is room for, the rest counted.
void draw_plan_table(Canvas& canvas, double top, const std::vector<models::OrderedScrew>& screws);

}  // namespace gapstrain::viz
