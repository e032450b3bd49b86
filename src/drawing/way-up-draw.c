/* SPDX-License-Identifier: GPL-3.0-or-later
 *
 * Drawing the way up, on its grid: what the board rests on, the board, its grain, the way, motor and bit.
 */
#include "drawing/grain.h"
#include "drawing/way-up-private.h"

#include <math.h>

static void
ink (const SpelchWayUp *w, cairo_t *cr, double line)
{
  spelch_colour_set (cr, &w->palette->ink, 1);
  cairo_set_line_width (cr, line / w->scale);
}

static void
fill_and_line (const SpelchWayUp *w, cairo_t *cr, const SpelchColour *colour, double line)
{
  spelch_colour_set (cr, colour, 1);
  cairo_fill_preserve (cr);
  ink (w, cr, line);
  cairo_stroke (cr);
}

static void
line_to_face (const SpelchWayUp *w, cairo_t *cr, double s, double t)
{
  double x, y;
  spelch_way_up_on_face (w, s, t, &x, &y);
  cairo_line_to (cr, x, y);
}

static void
add_top (const SpelchWayUp *w, cairo_t *cr, double beyond)
{
  cairo_new_path (cr);
  line_to_face (w, cr, -beyond, -beyond);
  line_to_face (w, cr, 1 + beyond, -beyond);
  line_to_face (w, cr, 1 + beyond, 1 + beyond);
  line_to_face (w, cr, -beyond, 1 + beyond);
  cairo_close_path (cr);
}

/* The front and the right side of a slab whose upper face is lower by @down. */
static void
draw_slab (const SpelchWayUp *w, cairo_t *cr, double beyond, double down, double high,
           const SpelchColour *top, const SpelchColour *front, double line)
{
  double x0, y0, x1, y1, x2, y2;
  spelch_way_up_on_face (w, -beyond, -beyond, &x0, &y0);
  spelch_way_up_on_face (w, 1 + beyond, -beyond, &x1, &y1);
  spelch_way_up_on_face (w, 1 + beyond, 1 + beyond, &x2, &y2);
  cairo_save (cr);
  cairo_translate (cr, 0, down);
  add_top (w, cr, beyond);
  fill_and_line (w, cr, top, line);
  cairo_move_to (cr, x0, y0);
  cairo_line_to (cr, x1, y1);
  cairo_line_to (cr, x1, y1 + high);
  cairo_line_to (cr, x0, y0 + high);
  cairo_close_path (cr);
  fill_and_line (w, cr, front, line);
  cairo_move_to (cr, x1, y1);
  cairo_line_to (cr, x2, y2);
  cairo_line_to (cr, x2, y2 + high);
  cairo_line_to (cr, x1, y1 + high);
  cairo_close_path (cr);
  fill_and_line (w, cr, front, line);
  cairo_restore (cr);
}

static void
draw_grain (const SpelchWayUp *w, cairo_t *cr)
{
  double across = w->facts.grain_deg + 90; /* off the grain */
  if (!w->facts.has_grain)
    return;
  cairo_save (cr);
  add_top (w, cr, 0);
  cairo_clip (cr);
  for (int i = -12; i <= 12; i++)
    {
      double a = across * G_PI / 180, g = w->facts.grain_deg * G_PI / 180, off = i * 1.9;
      double shift = 6 * (spelch_grain_chance (3, (guint)(i + 40), 1) - 0.5);
      for (int piece = -3; piece < 3; piece++)
        {
          double from = piece * 11 + shift, to = from + 8.5;
          for (int end = 0; end < 2; end++)
            {
              double d = end ? to : from;
              line_to_face (w, cr, 0.5 + (off * cos (a) + d * cos (g)) / LONG,
                            0.5 + (off * sin (a) + d * sin (g)) / DEEP);
            }
          cairo_new_sub_path (cr);
        }
    }
  spelch_colour_set (cr, &w->palette->long_grain_line, 1);
  cairo_set_line_width (cr, NARROW / w->scale);
  cairo_stroke (cr);
  cairo_restore (cr);
}

static void
add_arrow (cairo_t *cr, double x, double y, double angle, double size)
{
  for (int side = -1; side <= 1; side += 2)
    {
      cairo_move_to (cr, x, y);
      cairo_line_to (cr, x - size * cos (angle + side * 0.42), y - size * sin (angle + side * 0.42));
    }
}

/* White under a line, so that it stands out from what it crosses. */
static void
stroke_clear (const SpelchWayUp *w, cairo_t *cr, double line)
{
  cairo_set_line_cap (cr, CAIRO_LINE_CAP_ROUND);
  cairo_set_line_join (cr, CAIRO_LINE_JOIN_ROUND);
  spelch_colour_set (cr, &w->palette->ground, 1);
  cairo_set_line_width (cr, (line + 0.7) / w->scale);
  cairo_stroke_preserve (cr);
  ink (w, cr, line);
  cairo_stroke (cr);
}

/* Both ends of the grain, at the face's front left. */
static void
draw_grain_arrow (const SpelchWayUp *w, cairo_t *cr)
{
  double ends[2][2], a = w->facts.grain_deg * G_PI / 180, half = 3.0;
  if (!w->facts.has_grain)
    return;
  for (int i = 0; i < 2; i++)
    {
      double d = i == 0 ? -half : half;
      spelch_way_up_on_face (w, 0.88 + d * cos (a) / LONG, 0.74 + d * sin (a) / DEEP, &ends[i][0],
                             &ends[i][1]);
    }
  double angle = atan2 (ends[1][1] - ends[0][1], ends[1][0] - ends[0][0]);
  cairo_move_to (cr, ends[0][0], ends[0][1]);
  cairo_line_to (cr, ends[1][0], ends[1][1]);
  add_arrow (cr, ends[1][0], ends[1][1], angle, 1.7);
  add_arrow (cr, ends[0][0], ends[0][1], angle + G_PI, 1.7);
  stroke_clear (w, cr, 0.25);
}

/* A way round: an ellipse lying on the face, its arrow at the front. */
static void
draw_round (const SpelchWayUp *w, cairo_t *cr)
{
  double across = spelch_way_up_way_reach (w), deep = across * LONG / DEEP;
  double last[2] = { 0 }, before[2] = { 0 };
  /* Seen from above the clock runs from back to right to front. */
  double sense = w->facts.round_clock ? -1 : 1;
  cairo_new_path (cr);
  for (int i = 0; i <= 60; i++)
    {
      double a = -G_PI / 2 + sense * (0.35 + i / 60.0 * (2 * G_PI - 0.5)), c = cos (a), s = sin (a);
      double square = w->kind == SPELCH_CUT_HOLE ? 1 : 0.5; /* a round-cornered way otherwise */
      before[0] = last[0];
      before[1] = last[1];
      spelch_way_up_on_face (w, MIDDLE + across * copysign (pow (fabs (c), square), c),
                             0.5 + deep * copysign (pow (fabs (s), square), s), &last[0], &last[1]);
      cairo_line_to (cr, last[0], last[1]);
    }
  add_arrow (cr, last[0], last[1], atan2 (last[1] - before[1], last[0] - before[0]), 2.6);
  stroke_clear (w, cr, 0.5);
}

static void
draw_straight (const SpelchWayUp *w, cairo_t *cr)
{
  double x0, y0, x1, y1;
  spelch_way_up_straight_end (w, 180, &x0, &y0);
  spelch_way_up_straight_end (w, 0, &x1, &y1);
  cairo_new_path (cr);
  cairo_move_to (cr, x0, y0);
  cairo_line_to (cr, x1, y1);
  add_arrow (cr, x1, y1, atan2 (y1 - y0, x1 - x0), 2.6);
  stroke_clear (w, cr, 0.5);
}

/* The joiner's face mark, lying on the upper face; on the lower one it is hidden, and dashed. */
static void
draw_face_marks (const SpelchWayUp *w, cairo_t *cr)
{
  static const double HIDDEN[] = { 1.0, 0.8 };
  if (w->facts.mark_up)
    {
      cairo_new_path (cr);
      line_to_face (w, cr, 0.82, 0.08);
      line_to_face (w, cr, 0.88, 0.40);
      line_to_face (w, cr, 0.94, 0.08);
      stroke_clear (w, cr, 0.4);
    }
  if (w->facts.mark_down)
    {
      double x, y;
      spelch_way_up_on_face (w, 0.06, 0, &x, &y);
      cairo_new_path (cr);
      cairo_move_to (cr, x, y + THICK + REST + 0.8 + 4.2);
      cairo_line_to (cr, x + 2, y + THICK + REST + 0.8);
      cairo_line_to (cr, x + 4, y + THICK + REST + 0.8 + 4.2);
      cairo_set_dash (cr, HIDDEN, 2, 0);
      stroke_clear (w, cr, 0.35);
      cairo_set_dash (cr, NULL, 0, 0);
    }
}

/* Round the bit: over the board when the motor is above, on it when it is below. */
static void
draw_turn (const SpelchWayUp *w, cairo_t *cr, double x, double y)
{
  double rx = TURN_WIDE, ry = 2.1, sense = w->facts.turns_clock ? 1 : -1, last[2] = { 0 }, before[2] = { 0 };
  cairo_new_path (cr);
  /* The front half is drawn, a little more than that: y down, so the clock runs with growing angles. */
  for (int i = 0; i <= 40; i++)
    {
      double a = G_PI / 2 - sense * 2.2 + sense * i / 40.0 * 4.4;
      before[0] = last[0];
      before[1] = last[1];
      last[0] = x + rx * cos (a);
      last[1] = y + ry * sin (a);
      cairo_line_to (cr, last[0], last[1]);
    }
  add_arrow (cr, last[0], last[1], atan2 (last[1] - before[1], last[0] - before[0]), 2.2);
  stroke_clear (w, cr, 0.4);
}

static void
draw_motor_box (const SpelchWayUp *w, cairo_t *cr, double x, double top, double high)
{
  cairo_rectangle (cr, x - MOTOR / 2, top, MOTOR, high);
  fill_and_line (w, cr, &w->palette->steel_dark, WIDE);
  for (int i = 1; i < 5; i++)
    {
      cairo_move_to (cr, x - MOTOR / 2 + 1.2, top + high * i / 5);
      cairo_line_to (cr, x + MOTOR / 2 - 1.2, top + high * i / 5);
    }
  ink (w, cr, NARROW);
  cairo_stroke (cr);
}

static void
draw_bit (const SpelchWayUp *w, cairo_t *cr, double x, double from, double to)
{
  cairo_rectangle (cr, x - 1.3, from, 2.6, to - from);
  fill_and_line (w, cr, &w->palette->steel_light, 0.25);
  for (double y = from + 1; y + 2 < to; y += 2.2)
    {
      cairo_move_to (cr, x - 1.3, y + 1.6);
      cairo_line_to (cr, x + 1.3, y);
    }
  ink (w, cr, NARROW);
  cairo_stroke (cr);
}

/* A motor on a beam, or a router on its base. */
static void
draw_above (const SpelchWayUp *w, cairo_t *cr)
{
  double x, y;
  spelch_way_up_from_middle (w, 0, 0, &x, &y);
  if (w->machine == SPELCH_MACHINE_HAND)
    {
      cairo_save (cr);
      cairo_translate (cr, x, y - 5);
      cairo_scale (cr, 1, 0.4);
      cairo_arc (cr, 0, 0, 9, 0, 2 * G_PI);
      cairo_restore (cr);
      fill_and_line (w, cr, &w->palette->ground, 0.25);
    }
  else
    {
      cairo_rectangle (cr, 2, 2.6, GRID_WIDE - 6, 3);
      fill_and_line (w, cr, &w->palette->rest, 0.25);
    }
  draw_bit (w, cr, x, 11, y + 0.6);
  draw_motor_box (w, cr, x, 1, 10);
  for (int side = -1; side <= 1 && w->machine == SPELCH_MACHINE_HAND; side += 2)
    {
      cairo_arc (cr, x + side * (MOTOR / 2 + 2), 8, 1.9, 0, 2 * G_PI);
      fill_and_line (w, cr, &w->palette->steel_dark, 0.25);
    }
  draw_turn (w, cr, x, TURN_Y);
}

/* Hidden under table and board, so dashed. */
static void
draw_below (const SpelchWayUp *w, cairo_t *cr)
{
  static const double HIDDEN[] = { 1.2, 0.9 };
  double x, y;
  spelch_way_up_from_middle (w, 0, 0, &x, &y);
  draw_motor_box (w, cr, x, 39.5, 10);
  cairo_rectangle (cr, x - 1.3, y, 2.6, 39.5 - y);
  ink (w, cr, 0.25);
  cairo_set_dash (cr, HIDDEN, 2, 0);
  cairo_stroke (cr);
  cairo_set_dash (cr, NULL, 0, 0);
  draw_turn (w, cr, x, y);
}

/* Behind the board on a router table, where the way is straight. */
static void
draw_fence (const SpelchWayUp *w, cairo_t *cr)
{
  double x0, y0, x1, y1;
  spelch_way_up_on_face (w, -0.10, 1.02, &x0, &y0);
  spelch_way_up_on_face (w, 1.08, 1.02, &x1, &y1);
  cairo_rectangle (cr, x0, y0 - 4, x1 - x0, 4 + THICK);
  fill_and_line (w, cr, &w->palette->rest, 0.25);
}

static void
draw_leaders (const SpelchWayUp *w, cairo_t *cr)
{
  for (int i = 0; i < SPELCH_N_WAY_UPS; i++)
    {
      const SpelchAimedLabel *label = &w->labels[i];
      double y = label->box.y + label->box.height / 2;
      cairo_move_to (cr, label->box.x - 0.6, y);
      cairo_line_to (cr, label->box.x - ELBOW, y);
      cairo_line_to (cr, label->x, label->y);
      spelch_colour_set (cr, &w->palette->ink_soft, 1);
      cairo_set_line_width (cr, NARROW);
      cairo_stroke (cr);
      cairo_arc (cr, label->x, label->y, 0.45, 0, 2 * G_PI);
      cairo_fill (cr);
      spelch_lettering_draw (cr, label->layout, label->box.x, label->box.y, &w->palette->ink);
    }
}

void
spelch_way_up_draw (const SpelchWayUp *w, cairo_t *cr)
{
  const SpelchPalette *p = w->palette;
  bool table = w->machine == SPELCH_MACHINE_TABLE;
  cairo_save (cr);
  cairo_translate (cr, w->rect.x, w->rect.y);
  cairo_scale (cr, w->scale, w->scale);
  cairo_set_line_join (cr, CAIRO_LINE_JOIN_ROUND);
  draw_slab (w, cr, table ? 0.10 : 0.06, THICK, REST, &p->rest, &p->rest, 0.25);
  if (table && !w->facts.goes_round)
    draw_fence (w, cr);
  draw_slab (w, cr, 0, 0, THICK, &p->long_grain, &p->end_grain, WIDE);
  draw_grain (w, cr);
  draw_grain_arrow (w, cr);
  draw_face_marks (w, cr);
  if (w->facts.goes_round)
    draw_round (w, cr);
  else
    draw_straight (w, cr);
  if (table)
    draw_below (w, cr);
  else
    draw_above (w, cr);
  cairo_restore (cr);
  cairo_save (cr);
  draw_leaders (w, cr);
  cairo_restore (cr);
}
