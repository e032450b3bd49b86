/* SPDX-License-Identifier: GPL-3.0-or-later
 *
 * Side column: one bit of a comparison as widgets in a column of a grid: its name, to be exchanged, the
 * drawing, its numbers, its chart, and what to do with it.
 */
#pragma once

#include "bench/comparison.h"
#include "drawing/side-scenes.h"

#include <gtk/gtk.h>

G_BEGIN_DECLS

/* Rows of the grid, from the top. */
enum
{
  SPELCH_SIDE_BIT,
  SPELCH_SIDE_DEPTHS,
  SPELCH_SIDE_SCENE,
  SPELCH_SIDE_REFUSAL,
  SPELCH_SIDE_VALUES,
  SPELCH_SIDE_CHART = SPELCH_SIDE_VALUES + SPELCH_N_ROWS,
  SPELCH_SIDE_USE,
};

#define SPELCH_TYPE_SIDE_COLUMN (spelch_side_column_get_type ())
G_DECLARE_FINAL_TYPE (SpelchSideColumn, spelch_side_column, SPELCH, SIDE_COLUMN, GObject)

/* The drawings of all columns, which are laid out together; the owner begins with zeros, and frees the scenes
 * whenever the comparison or its manner is another. */
typedef struct
{
  SpelchSideScenes *scenes;
  int width, height;
} SpelchSideDrawings;

/* Signals: "picked" (guint, which of the names), "used", "taken-away". Puts its widgets, hidden yet, into the
 * grid's column behind that of the rows' names; those of all columns become as wide as @widths. @names lists
 * the bits to choose from; it and @drawings are shared by the columns. */
SpelchSideColumn *spelch_side_column_new (GtkGrid *grid, guint column, GtkSizeGroup *widths,
                                          GtkStringList *names, SpelchSideDrawings *drawings);

/* How a comparison is shown. */
typedef struct
{
  const SpelchNumbers *numbers;
  SpelchLook look;
  double text; /* relative to a 13 px body */
} SpelchSideManner;

/* Shows this column of @comparison, or nothing where it has fewer. @pick: which of the names its bit is. */
void spelch_side_column_show (SpelchSideColumn *self, SpelchComparison *comparison, guint pick,
                              const SpelchSideManner *manner);

/* Names are about to change, or have done so: until they are shown again no choice is taken for one. */
void spelch_side_column_hold (SpelchSideColumn *self, bool hold);

G_END_DECLS
