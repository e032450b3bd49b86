/* SPDX-License-Identifier: GPL-3.0-or-later
 *
 * The depth rule: a scale from the motor-side face, and beside it the clean window of each face as a band.
 */
#include "drawing/scene-private.h"

#include <math.h>

#define RULE_SIZE 11.5

/* Ticks every `small` mm, a number at every `every`-th of them. */
typedef struct
{
  double small;
  int every;
} Ticks;

/* Numbers stand well apart, or where that left the nought alone as near as they can be read. */
static Ticks
choose_ticks (const SpelchScene *scene)
{
  static const Ticks MM[] = { { 0.5, 2 }, { 1, 5 }, { 1, 10 }, { 2, 5 }, { 5, 2 }, { 5, 4 }, { 10, 5 } };
  static const Ticks INCH[]
      = { { 1 / 16.0, 4 }, { 1 / 16.0, 8 }, { 1 / 8.0, 4 }, { 1 / 8.0, 8 }, { 1 / 4.0, 4 }, { 1, 2 } };
  static const double APART[] = { 34, 18 };
  bool inches = scene->view.numbers.unit == SPELCH_UNIT_INCH;
  const Ticks *table = inches ? INCH : MM;
  int n = inches ? (int)G_N_ELEMENTS (INCH) : (int)G_N_ELEMENTS (MM);
  double unit = inches ? SPELCH_MM_PER_INCH : 1.0;

  for (guint pass = 0; pass < G_N_ELEMENTS (APART); pass++)
    for (int i = 0; i < n; i++)
      {
        Ticks ticks = { table[i].small * unit, table[i].every };
        double step = ticks.small * scene->frame.scale;

        if (step >= 4.5 && step * ticks.every >= APART[pass] * scene->view.text
            && ticks.small * ticks.every <= scene->frame.rule_mm)
          return ticks;
      }
  return (Ticks){ table[n - 1].small * unit, table[n - 1].every };
}

/* A number of the rule: whole or half millimetres, inches as the numbers are written. */
static char *
tick_text (const SpelchScene *scene, double mm)
{
  double inches = mm / SPELCH_MM_PER_INCH;
  int whole = (int)floor (inches + 1e-9), sixteenths = (int)lround ((inches - whole) * 16), below = 16;

  if (scene->view.numbers.unit == SPELCH_UNIT_MM)
    return g_strdup_printf ("%d", (int)lround (mm));
  if (scene->view.numbers.inch_style == SPELCH_INCH_DECIMAL)
    {
      char text[G_ASCII_DTOSTR_BUF_SIZE];

      g_ascii_formatd (text, sizeof text, sixteenths == 0 ? "%.0f" : "%.2f", inches);
      return g_strdelimit (g_strdup (text), ".", scene->view.numbers.decimal_sign);
    }
  while (sixteenths > 0 && sixteenths % 2 == 0)
    {
      sixteenths /= 2;
      below /= 2;
    }
  if (sixteenths == 0)
    return g_strdup_printf ("%d", whole);
  if (whole == 0)
    return g_strdup_printf ("%d/%d", sixteenths, below);
  return g_strdup_printf ("%d %d/%d", whole, sixteenths, below);
}

static void
draw_number (cairo_t *cr, const SpelchScene *scene, double mm, double y)
{
  g_autofree char *text = tick_text (scene, mm);
  g_autoptr (PangoLayout) layout
      = spelch_lettering_set (scene->lettering, text, RULE_SIZE, SPELCH_LETTERS_PLAIN, 0, PANGO_ALIGN_LEFT);
  double width, height;

  spelch_lettering_measure (layout, &width, &height);
  spelch_lettering_draw (cr, layout, scene->frame.rule_x - 6 - width, y - height / 2,
                         &scene->palette->ink_soft);
}

static void
draw_ticks (cairo_t *cr, const SpelchScene *scene)
{
  const SpelchFrame *f = &scene->frame;
  Ticks ticks = choose_ticks (scene);
  double deepest = f->rule_mm;
  double y0 = f->near_y - f->turn * 10, y1 = spelch_scene_y (scene, deepest) + f->turn * 8;

  cairo_move_to (cr, f->rule_x, y0);
  cairo_line_to (cr, f->rule_x, y1);
  for (int i = 0; i * ticks.small <= deepest; i++)
    {
      double y = spelch_scene_y (scene, i * ticks.small);

      cairo_move_to (cr, f->rule_x, y);
      cairo_line_to (cr, f->rule_x + (i % ticks.every == 0 ? 9 : 4), y);
    }
  spelch_scene_set_line (scene, cr, SPELCH_LINE_RULE);
  spelch_colour_set (cr, &scene->palette->ink_soft, 1.0);
  cairo_stroke (cr);
  for (int i = 0; i * ticks.small <= deepest; i += ticks.every)
    draw_number (cr, scene, i * ticks.small, spelch_scene_y (scene, i * ticks.small));
}

static void
add_band (cairo_t *cr, const SpelchScene *scene, int column, double from, double to)
{
  double y0 = spelch_scene_y (scene, CLAMP (from, 0, scene->frame.rule_mm));
  double y1 = spelch_scene_y (scene, CLAMP (to, 0, scene->frame.rule_mm));
  SpelchRect rect
      = { scene->frame.band_x[column], MIN (y0, y1), scene->frame.band_width, MAX (fabs (y1 - y0), 2.0) };

  spelch_add_round (cr, rect, 2.0);
}

/* One face's window: outlined where the face is clean with everything exact, solid where that holds over the
 * tolerances, a dotted empty rail where no depth will do. */
static void
draw_band (cairo_t *cr, const SpelchScene *scene, int column, const SpelchRange *just,
           const SpelchRange *sure)
{
  static const double DOTS[] = { 1.5, 3.0 };

  if (just->empty)
    {
      add_band (cr, scene, column, 0, scene->plan.through_depth);
      cairo_set_dash (cr, DOTS, 2, 0);
    }
  else
    add_band (cr, scene, column, just->from, just->to);
  spelch_colour_set (cr, &scene->palette->window_just, 1.0);
  cairo_set_line_width (cr, scene->view.on_paper ? SPELCH_PAPER_NARROW : just->empty ? 1.0 : 1.2);
  cairo_stroke (cr);
  cairo_set_dash (cr, NULL, 0, 0);
  if (sure->empty)
    return;
  add_band (cr, scene, column, sure->from, sure->to);
  spelch_colour_set (cr, &scene->palette->window_sure, 1.0);
  cairo_fill (cr);
}

void
spelch_scene_draw_rule (const SpelchScene *scene, cairo_t *cr)
{
  const SpelchWindows *w = &scene->plan.windows;

  draw_ticks (cr, scene);
  if (scene->view.asking)
    return;
  draw_band (cr, scene, 0, &w->nominal.first_pass, &w->robust.first_pass);
  if (w->far_applies)
    draw_band (cr, scene, 1, &w->nominal.last_tip, &w->robust.last_tip);
}
