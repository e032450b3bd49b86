/* SPDX-License-Identifier: GPL-3.0-or-later
 *
 * Drawing the work from above: bed or table, board with its grain, what is cut away, tabs, what keeps it
 * down, the way, the bit, and the lines to the words.
 */
#include "drawing/from-above-private.h"
#include "drawing/grain.h"

#include <math.h>

#define OUTLINE 1.2
#define THIN    0.8
#define HATCH   7.0 /* between two lines, times the unit */

/* From here on a unit is a millimetre, up is up. */
static void
enter (const SpelchFromAbove *f, cairo_t *cr)
{
  cairo_save (cr);
  cairo_translate (cr, f->left, f->front);
  cairo_scale (cr, f->scale, -f->scale);
}

static void
stroke (const SpelchFromAbove *f, cairo_t *cr, const SpelchColour *colour, double line)
{
  spelch_colour_set (cr, colour, 1);
  cairo_set_line_width (cr, line * f->unit / f->scale);
  cairo_stroke (cr);
}

static void
fill_and_line (const SpelchFromAbove *f, cairo_t *cr, const SpelchColour *colour, double line)
{
  spelch_colour_set (cr, colour, 1);
  cairo_fill_preserve (cr);
  stroke (f, cr, &f->palette->ink, line);
}

static void
draw_bed (const SpelchFromAbove *f, cairo_t *cr)
{
  SpelchRect r = f->room;
  cairo_rectangle (cr, r.x + 0.5, r.y + 0.5, r.width - 1, r.height - 1);
  spelch_colour_set (cr, &f->palette->rest, 1);
  cairo_fill_preserve (cr);
  spelch_colour_set (cr, &f->palette->ink_soft, 1);
  cairo_set_line_width (cr, THIN * f->unit);
  cairo_stroke (cr);
}

static void
add_rect (cairo_t *cr, SpelchRect r)
{
  cairo_rectangle (cr, r.x, r.y, r.width, r.height);
}

/* Strokes along the grain, as many whatever the board's size. */
static void
draw_grain (const SpelchFromAbove *f, cairo_t *cr)
{
  SpelchRect r = { 0, 0, f->length, f->width };
  double size = hypot (r.width, r.height), a = f->facts.grain_deg * G_PI / 180, u = cos (a), v = sin (a);
  double x = r.x + r.width / 2, y = r.y + r.height / 2;
  if (!f->facts.has_grain)
    return;
  cairo_save (cr);
  add_rect (cr, r);
  cairo_clip (cr);
  for (int i = -14; i <= 14; i++)
    for (int piece = -3; piece < 3; piece++)
      {
        double off = i * size / 28, from = (piece + spelch_grain_chance (5, (guint)(i + 40), 1)) * size / 5;
        cairo_move_to (cr, x + from * u - off * v, y + from * v + off * u);
        cairo_line_to (cr, x + (from + size / 7) * u - off * v, y + (from + size / 7) * v + off * u);
      }
  stroke (f, cr, &f->palette->long_grain_line, 0.6);
  cairo_restore (cr);
}

static void
draw_board (const SpelchFromAbove *f, cairo_t *cr)
{
  SpelchRect board = spelch_from_above_board (f);
  add_rect (cr, board);
  fill_and_line (f, cr, spelch_grain_colour (&f->top, G_PI / 2, f->palette), OUTLINE);
  draw_grain (f, cr);
}

/* Hatched, as waste is on a joiner's drawing: the sheet around the piece. */
static void
draw_waste (const SpelchFromAbove *f, cairo_t *cr)
{
  SpelchRect r = spelch_from_above_board (f);
  double step = HATCH * f->unit / f->scale;
  if (!f->with_waste)
    return;
  cairo_save (cr);
  add_rect (cr, r);
  cairo_rectangle (cr, 0, 0, f->length, f->width);
  cairo_set_fill_rule (cr, CAIRO_FILL_RULE_EVEN_ODD);
  cairo_clip (cr);
  for (double x = -r.height; x < r.width; x += step)
    {
      cairo_move_to (cr, r.x + x, r.y);
      cairo_line_to (cr, r.x + x + r.height, r.y + r.height);
    }
  stroke (f, cr, &f->palette->ink_soft, 0.6);
  cairo_restore (cr);
}

static void
add_spots (cairo_t *cr, const SpelchSpot *spots, guint n, bool closed)
{
  cairo_new_path (cr);
  for (guint i = 0; i < n; i++)
    cairo_line_to (cr, spots[i].x, spots[i].y);
  if (closed && n > 0)
    cairo_close_path (cr);
}

/* What the bit takes away: where it goes right through one sees what the board lies on. */
static void
draw_opening (const SpelchFromAbove *f, cairo_t *cr)
{
  const SpelchColour *floor = f->cut.through ? &f->palette->rest : &f->palette->end_grain;
  SpelchRect board = spelch_from_above_board (f);
  cairo_save (cr);
  add_rect (cr, board);
  cairo_clip (cr);
  cairo_set_line_join (cr, CAIRO_LINE_JOIN_ROUND);
  cairo_set_line_cap (cr, f->closed ? CAIRO_LINE_CAP_ROUND : CAIRO_LINE_CAP_SQUARE);
  for (int pass = 0; pass < 2; pass++)
    {
      double more = pass == 0 ? 2 * OUTLINE * f->unit : 0;
      spelch_colour_set (cr, pass == 0 ? &f->palette->ink : floor, 1);
      if (f->n_opening > 0)
        {
          add_spots (cr, f->opening, f->n_opening, true);
          cairo_fill_preserve (cr);
          if (pass == 0)
            {
              cairo_set_line_width (cr, more / f->scale);
              cairo_stroke (cr);
            }
          cairo_new_path (cr);
        }
      if (f->closed)
        {
          add_spots (cr, f->way, f->n_way, true);
          cairo_set_line_width (cr, fmax (f->diameter, 1.5 * f->unit / f->scale) + more / f->scale);
          cairo_stroke (cr);
        }
    }
  cairo_restore (cr);
}

/* A cut from below is hidden by the board. */
static void
draw_hidden_opening (const SpelchFromAbove *f, cairo_t *cr)
{
  const double dash[] = { 5 * f->unit / f->scale, 3 * f->unit / f->scale };
  cairo_set_dash (cr, dash, 2, 0);
  add_spots (cr, f->opening, f->n_opening, true);
  stroke (f, cr, &f->palette->ink, OUTLINE);
  if (f->closed)
    {
      add_spots (cr, f->way, f->n_way, true);
      stroke (f, cr, &f->palette->ink, OUTLINE);
    }
  cairo_set_dash (cr, NULL, 0, 0);
}

static void
draw_tabs (const SpelchFromAbove *f, cairo_t *cr)
{
  double wide = f->cut.tabs.width.mm,
         deep = fmax (f->diameter, 1.5 * f->unit / f->scale) + 2 * OUTLINE * f->unit / f->scale;
  for (guint i = 0; i < f->n_tabs; i++)
    {
      cairo_save (cr);
      cairo_translate (cr, f->tabs[i].x, f->tabs[i].y);
      cairo_rotate (cr, f->tab_deg[i] * G_PI / 180);
      cairo_rectangle (cr, -wide / 2, -deep / 2, wide, deep);
      spelch_colour_set (cr, spelch_grain_colour (&f->top, G_PI / 2, f->palette), 1);
      cairo_fill (cr);
      for (int end = -1; end <= 1; end += 2)
        {
          cairo_move_to (cr, end * wide / 2, -deep / 2);
          cairo_line_to (cr, end * wide / 2, deep / 2);
        }
      cairo_restore (cr);
      stroke (f, cr, &f->palette->ink, OUTLINE);
    }
}

/* ---- What keeps it down ---- */

static void
draw_vacuum (const SpelchFromAbove *f, cairo_t *cr)
{
  const double dash[] = { 3 * f->unit / f->scale, 3 * f->unit / f->scale };
  add_rect (cr, f->holds[0]);
  cairo_set_dash (cr, dash, 2, 0);
  stroke (f, cr, &f->palette->ink, OUTLINE);
  cairo_set_dash (cr, NULL, 0, 0);
}

static void
draw_hold (const SpelchFromAbove *f, cairo_t *cr)
{
  if (f->hold == SPELCH_HOLD_VACUUM && f->n_holds > 0)
    draw_vacuum (f, cr);
  for (guint i = 0; f->hold != SPELCH_HOLD_VACUUM && i < f->n_holds; i++)
    {
      SpelchRect r = f->holds[i];
      if (f->hold == SPELCH_HOLD_CLAMPS)
        {
          add_rect (cr, r);
          fill_and_line (f, cr, &f->palette->steel_light, OUTLINE);
          cairo_arc (cr, r.x + r.width / 2, r.y + r.height / 2, fmin (r.width, r.height) * 0.28, 0, 2 * G_PI);
          fill_and_line (f, cr, &f->palette->steel_dark, THIN);
          continue;
        }
      cairo_arc (cr, r.x + r.width / 2, r.y + r.height / 2, r.width / 2, 0, 2 * G_PI);
      fill_and_line (f, cr, &f->palette->steel_light, THIN);
      cairo_move_to (cr, r.x + r.width * 0.2, r.y + r.height / 2);
      cairo_line_to (cr, r.x + r.width * 0.8, r.y + r.height / 2);
      stroke (f, cr, &f->palette->ink, OUTLINE);
    }
}

static void
draw_fence (const SpelchFromAbove *f, cairo_t *cr)
{
  double x, y, end, wide = FENCE_WIDE * fmax (f->length, f->width);
  spelch_from_above_place (f, 0, f->width, &x, &y);
  end = f->room.x + f->room.width - 1;
  x = (f->room.x + 1 - f->left) / f->scale;
  end = (end - f->left) / f->scale;
  cairo_rectangle (cr, x, f->width, end - x, wide);
  fill_and_line (f, cr, &f->palette->steel_light, OUTLINE);
}

/* ---- The way ---- */

static void
add_head (cairo_t *cr, double x, double y, double angle, double size)
{
  for (int side = -1; side <= 1; side += 2)
    {
      cairo_move_to (cr, x - size * cos (angle + side * 0.5), y - size * sin (angle + side * 0.5));
      cairo_line_to (cr, x, y);
    }
}

/* With the ground's colour under it, so that it stands out from what it crosses. */
static void
stroke_clear (const SpelchFromAbove *f, cairo_t *cr, double line)
{
  cairo_set_line_cap (cr, CAIRO_LINE_CAP_ROUND);
  cairo_set_line_join (cr, CAIRO_LINE_JOIN_ROUND);
  spelch_colour_set (cr, &f->palette->ground, 1);
  cairo_set_line_width (cr, (line + 2.4) * f->unit / f->scale);
  cairo_stroke_preserve (cr);
  stroke (f, cr, &f->palette->ink, line);
}

static double
head_size (const SpelchFromAbove *f)
{
  return fmax (ARROW_LEAST * f->unit / f->scale, fmin (f->diameter * 0.6, 9 * f->unit / f->scale));
}

/* The line that a short straight way lies on, from edge to edge: so its angle to the grain is seen. */
static void
draw_direction (const SpelchFromAbove *f, cairo_t *cr)
{
  const double dash[] = { 5 * f->unit / f->scale, 4 * f->unit / f->scale };
  double x = f->way[1].x - f->way[0].x, y = f->way[1].y - f->way[0].y, long_way = hypot (x, y);
  double far = long_way > 0 ? hypot (f->length, f->width) / long_way : 0;
  cairo_save (cr);
  add_rect (cr, (SpelchRect){ 0, 0, f->length, f->width });
  cairo_clip (cr);
  cairo_move_to (cr, f->way[0].x, f->way[0].y);
  cairo_line_to (cr, f->way[0].x - far * x, f->way[0].y - far * y);
  cairo_move_to (cr, f->way[1].x, f->way[1].y);
  cairo_line_to (cr, f->way[1].x + far * x, f->way[1].y + far * y);
  cairo_set_dash (cr, dash, 2, 0);
  stroke (f, cr, &f->palette->ink_soft, THIN);
  cairo_restore (cr);
}

/* An arrow in the middle of each stretch of a way round, else one along a straight way. */
static void
draw_way (const SpelchFromAbove *f, cairo_t *cr)
{
  double whole = spelch_from_above_way_length (f), size = head_size (f), deg;
  guint stretches = f->n_way > 8 ? 3 : f->n_way - 1;
  for (guint i = 0; f->closed && i < stretches; i++)
    {
      SpelchSpot from = f->way[f->n_way > 8 ? 0 : i], to = f->way[f->n_way > 8 ? 1 : i + 1], spot;
      double step = hypot (to.x - from.x, to.y - from.y), at = 0;
      for (guint j = 1; j <= i && f->n_way <= 8; j++)
        at += hypot (f->way[j].x - f->way[j - 1].x, f->way[j].y - f->way[j - 1].y);
      at += f->n_way > 8 ? whole * (i + 0.7) / stretches : step * 0.70;
      spot = spelch_from_above_along (f, at, &deg);
      double a = deg * G_PI / 180;
      cairo_move_to (cr, spot.x - 2.6 * size * cos (a), spot.y - 2.6 * size * sin (a));
      cairo_line_to (cr, spot.x, spot.y);
      add_head (cr, spot.x, spot.y, a, size);
      stroke_clear (f, cr, 1.5);
    }
  if (f->closed)
    return;
  if (f->facts.has_grain)
    draw_direction (f, cr);
  SpelchSpot from = spelch_from_above_along (f, f->start, &deg),
             to = spelch_from_above_along (f, f->ahead, &deg);
  cairo_move_to (cr, from.x, from.y);
  cairo_line_to (cr, to.x, to.y);
  add_head (cr, to.x, to.y, deg * G_PI / 180, 1.3 * size);
  stroke_clear (f, cr, 1.5);
}

/* The board is pushed: a broad arrow on it. */
static void
draw_push (const SpelchFromAbove *f, cairo_t *cr)
{
  double a = f->facts.feed_deg * G_PI / 180, size = 1.6 * head_size (f), half = f->length * 0.14;
  double x = f->length * 0.6, y = f->width * 0.24;
  cairo_move_to (cr, x - half * cos (a), y - half * sin (a));
  cairo_line_to (cr, x + half * cos (a), y + half * sin (a));
  add_head (cr, x + half * cos (a), y + half * sin (a), a, size);
  stroke_clear (f, cr, 2.2);
}

static void
draw_bit (const SpelchFromAbove *f, cairo_t *cr)
{
  const double dash[] = { 2 * f->unit / f->scale, 2 * f->unit / f->scale };
  double deg, radius = fmax (f->diameter / 2, 2.5 * f->unit / f->scale),
              round = radius + 5 * f->unit / f->scale;
  double sense = f->facts.turns_clock ? -1 : 1, begin = 100 * G_PI / 180, end = begin + sense * 4.6;
  SpelchSpot at = spelch_from_above_along (f, f->start, &deg);
  cairo_new_sub_path (cr);
  if (f->facts.motor_below)
    cairo_set_dash (cr, dash, 2, 0);
  cairo_arc (cr, at.x, at.y, radius, 0, 2 * G_PI);
  fill_and_line (f, cr, f->facts.motor_below ? &f->palette->rest : &f->palette->steel_light, OUTLINE);
  cairo_set_dash (cr, NULL, 0, 0);
  cairo_new_sub_path (cr);
  if (sense > 0)
    cairo_arc (cr, at.x, at.y, round, begin, end);
  else
    cairo_arc_negative (cr, at.x, at.y, round, begin, end);
  add_head (cr, at.x + round * cos (end), at.y + round * sin (end), end + sense * (G_PI / 2 - 0.25),
            ARROW_LEAST * f->unit / f->scale);
  stroke_clear (f, cr, 1.3);
}

/* ---- Words ---- */

static void
draw_labels (const SpelchFromAbove *f, cairo_t *cr)
{
  for (int i = 0; i < SPELCH_N_FROM_ABOVES; i++)
    {
      const SpelchAimedLabel *label = &f->labels[i];
      double y = label->box.y + label->box.height / 2;
      if (label->layout == NULL)
        continue;
      cairo_move_to (cr, label->box.x - 2 * f->unit, y);
      cairo_line_to (cr, label->box.x - ELBOW * f->unit, y);
      cairo_line_to (cr, label->x, label->y);
      spelch_colour_set (cr, &f->palette->ink, 1);
      cairo_set_line_width (cr, 0.7 * f->unit);
      cairo_stroke (cr);
      cairo_arc (cr, label->x, label->y, 1.6 * f->unit, 0, 2 * G_PI);
      cairo_fill (cr);
      spelch_lettering_draw (cr, label->layout, label->box.x, label->box.y, &f->palette->ink);
    }
}

static void
draw_bar (const SpelchFromAbove *f, cairo_t *cr)
{
  double wide, high, x = f->room.x + 1, end = x + f->bar_mm * f->scale;
  spelch_lettering_measure (f->bar, &wide, &high);
  double y = f->room.y + f->room.height + 4 * f->unit + high / 2;
  for (int side = 0; side < 2; side++)
    {
      cairo_move_to (cr, side ? end : x, y - 3 * f->unit);
      cairo_line_to (cr, side ? end : x, y + 3 * f->unit);
    }
  cairo_move_to (cr, x, y);
  cairo_line_to (cr, end, y);
  spelch_colour_set (cr, &f->palette->ink_soft, 1);
  cairo_set_line_width (cr, OUTLINE * f->unit);
  cairo_stroke (cr);
  spelch_lettering_draw (cr, f->bar, end + BAR_OFF * f->unit, y - high / 2, &f->palette->ink_soft);
}

void
spelch_from_above_draw (const SpelchFromAbove *f, cairo_t *cr)
{
  bool hidden = f->facts.motor_below && !f->cut.through;
  cairo_save (cr);
  draw_bed (f, cr);
  enter (f, cr);
  draw_board (f, cr);
  draw_waste (f, cr);
  if (hidden)
    draw_hidden_opening (f, cr);
  else
    draw_opening (f, cr);
  draw_tabs (f, cr);
  if (f->facts.board_moves && !f->facts.goes_round)
    draw_fence (f, cr);
  draw_hold (f, cr);
  if (f->facts.board_moves)
    draw_push (f, cr);
  else
    draw_way (f, cr);
  draw_bit (f, cr);
  cairo_restore (cr);
  draw_labels (f, cr);
  draw_bar (f, cr);
  cairo_restore (cr);
}
