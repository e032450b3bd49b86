/* SPDX-License-Identifier: GPL-3.0-or-later
 *
 * Grade chart: how either face would come out at every depth of the first pass. Depth runs across, the better
 * grade stands higher; the motor-side face has a whole line, the far one a broken one. Where every face is
 * clean the ground is shaded, and the first pass as it is planned is marked. A chart is plain geometry until
 * it is drawn.
 */
#pragma once

#include "drawing/scene.h"
#include "plan/compare.h"

typedef struct
{
  double x, y;
} SpelchChartPoint;

typedef struct _SpelchGradeChart SpelchGradeChart;

/* On the whole of @view's width and height; of the rest of @view its look, numbers, family and text count.
 * @one and @scan are copied as far as needed. Free with spelch_grade_chart_free(). */
SpelchGradeChart *spelch_grade_chart_new (const SpelchCompared *one, const SpelchScan *scan,
                                          const SpelchView *view);
void spelch_grade_chart_free (SpelchGradeChart *chart);
G_DEFINE_AUTOPTR_CLEANUP_FUNC (SpelchGradeChart, spelch_grade_chart_free)

/* Where the lines are drawn; the words stand around it. */
SpelchRect spelch_grade_chart_plot (const SpelchGradeChart *chart);

/* Picture coordinates of a depth of the first pass, mm, and of a grade. */
double spelch_grade_chart_x (const SpelchGradeChart *chart, double depth_mm);
double spelch_grade_chart_y (const SpelchGradeChart *chart, double grade);

/* The corners of a face's line, from the left; NULL where that face isn't cut. Between two depths that were
 * tried the worse grade holds. Owned by the chart. */
const SpelchChartPoint *spelch_grade_chart_line (const SpelchGradeChart *chart, SpelchSide side, guint *n);

/* The shaded depths, mm: the longest stretch at which each face that is cut comes out clean. False when there
 * is none. */
bool spelch_grade_chart_clean (const SpelchGradeChart *chart, double *from, double *to);

/* Where it was laid out, in the coordinates of @cr. */
void spelch_grade_chart_draw (SpelchGradeChart *chart, cairo_t *cr);

/* The height at which it reads well, for text of that size relative to a 13 px body. */
double spelch_grade_chart_height (double text);
