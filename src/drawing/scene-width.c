/* SPDX-License-Identifier: GPL-3.0-or-later
 *
 * On a page, the width of the cut, dimensioned after ISO 129-1 beyond its floor, where the bit doesn't stand:
 * between the walls where there is room for it, else with arrows from outside and the width beside them. It
 * slides away from the floor to where nothing else is.
 */
#include "drawing/scene-private.h"

#include <glib/gi18n-lib.h>
#include <math.h>

#define SIZE       12.0
#define OFF        7.0 /* from the floor to the dimension line, at least */
#define PAD        2.0 /* of the ground under the words */
#define CLEAR      2.0 /* of an extension line, from what it begins at */
#define OVERSHOOT  4.0 /* and beyond the dimension line */
#define ARROW      9.0
#define ARROW_HALF 1.6
#define TAIL       7.0 /* of an arrow that points in from outside */

/* An outline, or an edge that is trimmed, is as wide as its bit: that is no size of the part's. */
bool
spelch_scene_has_width (const SpelchScene *scene)
{
  bool bare = scene->cut.kind == SPELCH_CUT_OUTLINE || scene->cut.kind == SPELCH_CUT_TRIM;
  return scene->opening.n > 0 && !bare;
}

static char *
width_text (const SpelchScene *scene)
{
  g_autofree char *width = spelch_words_exactly (&scene->view.numbers, scene->opening.width_mm);
  /* Translators: of a round hole, its diameter. */
  return scene->cut.kind == SPELCH_CUT_HOLE ? g_strdup_printf (_ ("Ø %s"), width) : g_steal_pointer (&width);
}

/* The deepest floor, or the far face where the cut goes through. */
static double
floor_y (const SpelchScene *scene)
{
  double deepest = scene->plan.through ? scene->plan.thickness : 0;
  for (guint i = 0; i < scene->opening.n; i++)
    deepest = MAX (deepest, scene->opening.spans[i].depth);
  return spelch_scene_y (scene, deepest);
}

/* Words over the line, or beside it; and an arrow on either side where they stand outside. */
static SpelchRect
all_of (const SpelchWidth *width, double high)
{
  double left = width->inside ? width->x0 : width->x0 - ARROW - TAIL;
  double right = width->inside ? width->x1 : width->x1 + ARROW + TAIL + 3 + width->box.width + PAD;
  double tall = width->inside ? high + 2 + OVERSHOOT : MAX (high, 2 * OVERSHOOT);
  return (SpelchRect){ left, 0, right - left, tall };
}

static void
place_words (SpelchWidth *width, SpelchRect all)
{
  double high = width->box.height;
  width->y = width->inside ? all.y + high + 2 : all.y + all.height / 2;
  width->box.x
      = width->inside ? (width->x0 + width->x1 - width->box.width) / 2 : width->x1 + ARROW + TAIL + 3;
  width->box.y = width->inside ? all.y : width->y - high / 2;
}

SpelchRect
spelch_width_line (const SpelchWidth *width)
{
  double reach = width->inside ? 0 : ARROW + TAIL;
  return width->layout == NULL ? (SpelchRect){ 0, 0, 0, 0 }
                               : (SpelchRect){ width->x0 - reach, width->y - ARROW_HALF,
                                               width->x1 - width->x0 + 2 * reach, 2 * ARROW_HALF };
}

SpelchRect
spelch_width_extension (const SpelchWidth *width, bool left)
{
  double x = left ? width->x0 : width->x1;
  return width->layout == NULL
             ? (SpelchRect){ 0, 0, 0, 0 }
             : (SpelchRect){ x - 1, MIN (width->from, width->y), 2, fabs (width->y - width->from) };
}

void
spelch_scene_lay_out_width (SpelchScene *scene)
{
  SpelchWidth *width = &scene->width;
  const SpelchFrame *f = &scene->frame;
  double half = (scene->opening.right - scene->opening.left) / 2 * f->scale, high;
  if (!spelch_scene_has_width (scene))
    return;
  g_autofree char *text = width_text (scene);
  width->layout
      = spelch_lettering_set (scene->lettering, text, SIZE, SPELCH_LETTERS_PLAIN, 0, PANGO_ALIGN_LEFT);
  spelch_lettering_measure (width->layout, &width->box.width, &width->box.height);
  high = width->box.height;
  width->x0 = f->origin_x - half;
  width->x1 = f->origin_x + half;
  width->from = floor_y (scene);
  width->inside = 2 * half >= MAX (width->box.width + 2 * PAD + 2, 2 * ARROW + 8);
  SpelchRect all = all_of (width, high);
  double beyond = f->turn > 0 ? scene->view.height - 2 - all.height : 2;
  all.y = f->turn > 0 ? width->from + OFF : width->from - OFF - all.height;
  if (!spelch_placer_slide (&scene->placer, &all, MIN (all.y, beyond), MAX (all.y, beyond)))
    {
      g_clear_object (&width->layout);
      return;
    }
  place_words (width, all);
  spelch_placer_take (&scene->placer, spelch_width_extension (width, true));
  spelch_placer_take (&scene->placer, spelch_width_extension (width, false));
}

/* ---- Drawing ---- */

/* A filled arrow whose tip is at (x, y). */
static void
add_arrow (cairo_t *cr, double x, double y, bool points_right)
{
  double back = points_right ? -ARROW : ARROW;
  cairo_move_to (cr, x, y);
  cairo_line_to (cr, x + back, y - ARROW_HALF);
  cairo_line_to (cr, x + back, y + ARROW_HALF);
  cairo_close_path (cr);
}

static void
add_lines (cairo_t *cr, const SpelchScene *scene, const SpelchWidth *width)
{
  double turn = scene->frame.turn, end = width->y + turn * OVERSHOOT;
  SpelchRect line = spelch_width_line (width);
  cairo_move_to (cr, width->x0, width->from + turn * CLEAR);
  cairo_line_to (cr, width->x0, end);
  cairo_move_to (cr, width->x1, width->from + turn * CLEAR);
  cairo_line_to (cr, width->x1, end);
  cairo_move_to (cr, line.x, width->y);
  cairo_line_to (cr, line.x + line.width, width->y);
}

void
spelch_scene_draw_width (const SpelchScene *scene, cairo_t *cr)
{
  const SpelchWidth *width = &scene->width;
  if (width->layout == NULL)
    return;
  cairo_rectangle (cr, width->box.x - PAD, width->box.y, width->box.width + 2 * PAD, width->box.height);
  spelch_colour_set (cr, &scene->palette->ground, 1.0);
  cairo_fill (cr);
  spelch_colour_set (cr, &scene->palette->ink, 1.0);
  add_lines (cr, scene, width);
  cairo_stroke (cr);
  add_arrow (cr, width->x0, width->y, !width->inside);
  add_arrow (cr, width->x1, width->y, width->inside);
  cairo_fill (cr);
  spelch_lettering_draw (cr, width->layout, width->box.x, width->box.y, &scene->palette->ink);
}
