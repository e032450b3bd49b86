/* SPDX-License-Identifier: GPL-3.0-or-later
 *
 * Draws the plots of docs/model.md into the folder named, from the program's own functions and constants:
 * `ninja docs-plots` runs it.
 */
#include "files/shop-data.h"
#include "mechanics/bending.h"
#include "mechanics/chip-room.h"
#include "mechanics/chip.h"
#include "mechanics/force.h"
#include "plan/plan.h"

#include <cairo-svg.h>
#include <math.h>

#define WIDTH  640
#define HEIGHT 340
#define LEFT   64
#define RIGHT  150
#define TOP    20
#define BOTTOM 48

#define POINTS 361

typedef struct
{
  const char *name;
  double y[POINTS];
  double band; /* drawn so much above and below, as a share */
  bool dashed; /* a limit, or a second look at the same */
} Series;

typedef struct
{
  const char *file, *x_name, *y_name;
  double x_from, x_to, x_step, y_to, y_step;
  guint n_series;
  Series series[6];
} Plot;

/* Told apart without colour too: by the names at their ends. */
static const double INKS[][3] = { { 0, 0.27, 0.55 },    { 0.70, 0.25, 0 },    { 0, 0.45, 0.30 },
                                  { 0.35, 0.35, 0.35 }, { 0.35, 0.35, 0.35 }, { 0.35, 0.35, 0.35 } };

static double
x_at (const Plot *plot, double x)
{
  return LEFT + (x - plot->x_from) / (plot->x_to - plot->x_from) * (WIDTH - LEFT - RIGHT);
}

static double
y_at (const Plot *plot, double y)
{
  return HEIGHT - BOTTOM - CLAMP (y / plot->y_to, 0, 1) * (HEIGHT - TOP - BOTTOM);
}

static double
x_of (const Plot *plot, int i)
{
  return plot->x_from + (plot->x_to - plot->x_from) * i / (POINTS - 1);
}

/* @where: 0 the text begins at x, 0.5 stands in the middle of it, 1 ends there. */
static void
write_text (cairo_t *cr, double x, double y, double where, const char *text)
{
  cairo_text_extents_t size;
  cairo_text_extents (cr, text, &size);
  cairo_move_to (cr, x - where * size.x_advance, y);
  cairo_show_text (cr, text);
}

static void
draw_scales (cairo_t *cr, const Plot *plot)
{
  char text[G_ASCII_DTOSTR_BUF_SIZE];
  cairo_set_line_width (cr, 0.5);
  for (double x = plot->x_from; x <= plot->x_to + 1e-9; x += plot->x_step)
    {
      cairo_set_source_rgb (cr, 0.8, 0.8, 0.8);
      cairo_move_to (cr, x_at (plot, x), y_at (plot, 0));
      cairo_line_to (cr, x_at (plot, x), TOP);
      cairo_stroke (cr);
      cairo_set_source_rgb (cr, 0.1, 0.1, 0.1);
      write_text (cr, x_at (plot, x), HEIGHT - BOTTOM + 16, 0.5,
                  g_ascii_formatd (text, sizeof text, "%g", x));
    }
  for (double y = 0; y <= plot->y_to + 1e-9; y += plot->y_step)
    {
      cairo_set_source_rgb (cr, 0.8, 0.8, 0.8);
      cairo_move_to (cr, LEFT, y_at (plot, y));
      cairo_line_to (cr, WIDTH - RIGHT, y_at (plot, y));
      cairo_stroke (cr);
      cairo_set_source_rgb (cr, 0.1, 0.1, 0.1);
      write_text (cr, LEFT - 6, y_at (plot, y) + 4, 1, g_ascii_formatd (text, sizeof text, "%g", y));
    }
  write_text (cr, (LEFT + WIDTH - RIGHT) / 2.0, HEIGHT - 12, 0.5, plot->x_name);
  cairo_save (cr);
  cairo_translate (cr, 16, (TOP + HEIGHT - BOTTOM) / 2.0);
  cairo_rotate (cr, -G_PI / 2);
  write_text (cr, 0, 0, 0.5, plot->y_name);
  cairo_restore (cr);
}

static void
draw_band (cairo_t *cr, const Plot *plot, const Series *series, const double *ink)
{
  cairo_new_path (cr);
  for (int i = 0; i < POINTS; i++)
    cairo_line_to (cr, x_at (plot, x_of (plot, i)), y_at (plot, series->y[i] * (1 + series->band)));
  for (int i = POINTS - 1; i >= 0; i--)
    cairo_line_to (cr, x_at (plot, x_of (plot, i)), y_at (plot, series->y[i] * (1 - series->band)));
  cairo_set_source_rgba (cr, ink[0], ink[1], ink[2], 0.12);
  cairo_fill (cr);
}

static void
draw_series (cairo_t *cr, const Plot *plot, const Series *series, const double *ink)
{
  const double dash[] = { 5, 4 };
  if (series->band > 0)
    draw_band (cr, plot, series, ink);
  cairo_set_source_rgb (cr, ink[0], ink[1], ink[2]);
  cairo_set_line_width (cr, series->dashed ? 1 : 1.8);
  cairo_set_dash (cr, dash, series->dashed ? 2 : 0, 0);
  cairo_new_path (cr);
  for (int i = 0; i < POINTS; i++)
    cairo_line_to (cr, x_at (plot, x_of (plot, i)), y_at (plot, series->y[i]));
  cairo_stroke (cr);
  cairo_set_dash (cr, dash, 0, 0);
}

/* Names stand at the right ends of their lines, pushed up where they would collide. */
static void
draw_names (cairo_t *cr, const Plot *plot)
{
  double taken[G_N_ELEMENTS (plot->series)];
  for (guint i = 0; i < plot->n_series; i++)
    {
      double y = y_at (plot, plot->series[i].y[POINTS - 1]) + 2;
      for (guint j = 0; j < i; j++)
        for (guint k = 0; k < i; k++)
          if (fabs (taken[k] - y) < 13)
            y = taken[k] - 13;
      taken[i] = y;
      cairo_set_source_rgb (cr, INKS[i][0], INKS[i][1], INKS[i][2]);
      write_text (cr, WIDTH - RIGHT + 6, y, 0, plot->series[i].name);
    }
}

static void
draw_plot (const Plot *plot, const char *folder)
{
  g_autofree char *path = g_build_filename (folder, plot->file, NULL);
  cairo_surface_t *surface = cairo_svg_surface_create (path, WIDTH, HEIGHT);
  cairo_t *cr = cairo_create (surface);
  cairo_set_source_rgb (cr, 1, 1, 1);
  cairo_paint (cr);
  cairo_select_font_face (cr, "DejaVu Sans", CAIRO_FONT_SLANT_NORMAL, CAIRO_FONT_WEIGHT_NORMAL);
  cairo_set_font_size (cr, 11);
  draw_scales (cr, plot);
  for (guint i = 0; i < plot->n_series; i++)
    draw_series (cr, plot, &plot->series[i], INKS[i]);
  draw_names (cr, plot);
  cairo_destroy (cr);
  cairo_surface_destroy (surface);
}

static Series *
add_series (Plot *plot, const char *name, bool dashed)
{
  Series *series = &plot->series[plot->n_series++];
  *series = (Series){ .name = name, .dashed = dashed };
  return series;
}

static void
add_line (Plot *plot, const char *name, double value)
{
  Series *series = add_series (plot, name, true);
  for (int i = 0; i < POINTS; i++)
    series->y[i] = value;
}

/* ---- The plots ---- */

static void
grade_by_first_pass (const char *folder)
{
  Plot plot
      = { "plot-grade.svg", "first pass, mm", "grade of the edge (1 clean, 5 badly torn)", 2, 18, 2, 5, 1,
          .n_series = 0 };
  g_autoptr (SpelchPart) part = spelch_shop_demo ();
  Series *near = add_series (&plot, "show face, motor side", false);
  Series *far = add_series (&plot, "hidden face, far side", true);
  for (int i = 0; i < POINTS; i++)
    {
      SpelchCut cut = part->cuts[0];
      SpelchPlan plan;
      cut.held.n_passes = 1;
      cut.held.passes[0] = spelch_length_mm (x_of (&plot, i));
      cut.held.speed_rpm = 18000;
      cut.held.feed_mm_min = 3600;
      spelch_plan_make (spelch_shop_constants (), part, &cut, &part->bits[0], &plan);
      near->y[i] = spelch_plan_worst (&plan, SPELCH_SIDE_MOTOR)->grade;
      far->y[i] = spelch_plan_worst (&plan, SPELCH_SIDE_FAR)->grade;
    }
  draw_plot (&plot, folder);
}

/* 8 mm, two edges in use, half the diameter wide, 18 mm of MDF at 0.2 mm a tooth. */
static SpelchForceCase
mdf_cut (double helix_deg, double turn_over)
{
  const SpelchConstants *k = spelch_shop_constants ();
  const SpelchForcePair *mdf = &k->force[SPELCH_MATERIAL_MDF].slot;
  SpelchForceCase force = { .engaged = 4,
                            .blunting = k->blunting_sharp,
                            .friction = k->friction,
                            .rake = k->rake_default * G_PI / 180,
                            .edge_radial_share = k->edge_radial_share,
                            .lift_down_share = k->lift_down_share,
                            .n_slices = 1 };
  force.flutes = (SpelchFlutes){ 8, helix_deg * G_PI / 180, turn_over, 0, 32, 2, 2 };
  force.slices[0] = (SpelchSlice){ 0, 18, mdf->a, mdf->b };
  return force;
}

static void
force_over_turn (const char *folder)
{
  Plot plot = { "plot-force.svg",
                "turn of the bit, degrees",
                "sideways force, N (estimate, with its band)",
                0,
                360,
                60,
                250,
                50,
                .n_series = 0 };
  const struct
  {
    const char *name;
    double helix, turn_over;
  } bits[] = { { "straight", 0, 0 }, { "up-cut, 30°", 30, 32 }, { "compression, 30°", 30, 8 } };
  for (gsize bit = 0; bit < G_N_ELEMENTS (bits); bit++)
    {
      SpelchForceCase force = mdf_cut (bits[bit].helix, bits[bit].turn_over);
      Series *series = add_series (&plot, bits[bit].name, false);
      series->band = spelch_shop_constants ()->band_panel;
      for (int i = 0; i < POINTS; i++)
        {
          SpelchForceParts still, moving;
          spelch_force_at (&force, x_of (&plot, i) * G_PI / 180, &still, &moving);
          series->y[i] = hypot (still.along + 0.2 * moving.along, still.across + 0.2 * moving.across);
          plot.y_to = fmax (plot.y_to, 50 * ceil (series->y[i] * (1 + series->band) / 50));
        }
    }
  draw_plot (&plot, folder);
}

static void
chip_by_feed (const char *folder)
{
  const SpelchConstants *k = spelch_shop_constants ();
  Plot plot = { "plot-chip.svg",
                "feed, mm/min (8 mm, two edges, 18 000 rpm)",
                "thickest chip, mm",
                0,
                10000,
                2000,
                0.4,
                0.1,
                .n_series = 0 };
  Series *slot = add_series (&plot, "slot", false), *narrow = add_series (&plot, "1 mm wide", false);
  for (int i = 0; i < POINTS; i++)
    {
      double feed_per_tooth = spelch_chip_feed_per_tooth (x_of (&plot, i), 18000, 2);
      slot->y[i] = spelch_chip_max (feed_per_tooth, 8, 8);
      narrow->y[i] = spelch_chip_max (feed_per_tooth, 8, 1);
    }
  add_line (&plot, "most for 8 mm", k->chip_cap * 8);
  add_line (&plot, "splits ahead: 1 point", k->chip_points_one);
  add_line (&plot, "2 points", k->chip_points_two);
  draw_plot (&plot, folder);
}

static void
heat_by_feed (const char *folder)
{
  const SpelchConstants *k = spelch_shop_constants ();
  Plot plot = { "plot-heat.svg",
                "feed, mm/min (8 mm slot in MDF, two edges, 18 000 rpm)",
                "heat on the wall, mJ/mm² (estimate)",
                0,
                10000,
                2000,
                4000,
                1000,
                .n_series = 0 };
  const struct
  {
    const char *name;
    double blunting, clearing;
  } states[] = { { "sharp, up-cut", k->blunting_sharp, k->clearing_up },
                 { "dull, up-cut", k->blunting_dull, k->clearing_up },
                 { "sharp, down-cut", k->blunting_sharp, k->clearing_down } };
  for (gsize s = 0; s < G_N_ELEMENTS (states); s++)
    {
      Series *series = add_series (&plot, states[s].name, false);
      for (int i = 0; i < POINTS; i++)
        {
          double feed_per_tooth = spelch_chip_feed_per_tooth (fmax (x_of (&plot, i), 1), 18000, 2);
          double edge = states[s].blunting * k->force[SPELCH_MATERIAL_MDF].slot.a;
          series->y[i] = spelch_wall_heat (edge, spelch_chip_arc (8, 8), feed_per_tooth, states[s].clearing);
        }
    }
  add_line (&plot, "caution", k->heat_caution);
  add_line (&plot, "burns", k->heat_burns);
  draw_plot (&plot, folder);
}

static void
deflection_by_stick_out (const char *folder)
{
  const SpelchConstants *k = spelch_shop_constants ();
  Plot plot = { "plot-deflection.svg",
                "stick-out, mm (carbide, 25 mm of flutes, 50 N at 5 mm above the tip)",
                "deflection at the tip, mm",
                25,
                60,
                5,
                0.4,
                0.1,
                .n_series = 0 };
  const double diameters[] = { 6, 8, 12 };
  const char *const names[] = { "6 mm", "8 mm", "12 mm" };
  for (gsize d = 0; d < G_N_ELEMENTS (diameters); d++)
    {
      Series *series = add_series (&plot, names[d], false);
      for (int i = 0; i < POINTS; i++)
        {
          SpelchCantilever bit = { x_of (&plot, i),    25,  k->fluted_diameter * diameters[d], diameters[d],
                                   k->modulus_carbide, 1500 };
          series->y[i] = 50 * spelch_bending_give (&bit, 5);
        }
    }
  add_line (&plot, "limit for grade 1", k->deflection_grade_1);
  add_line (&plot, "limit for grade 2", k->deflection_grade_2);
  add_line (&plot, "limit for grade 3", k->deflection_grade_3);
  draw_plot (&plot, folder);
}

int
main (int argc, char **argv)
{
  const char *folder = argc == 2 ? argv[1] : ".";
  grade_by_first_pass (folder);
  force_over_turn (folder);
  chip_by_feed (folder);
  heat_by_feed (folder);
  deflection_by_stick_out (folder);
  return 0;
}
