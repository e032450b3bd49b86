/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "drawing/splinter.h"

#include "drawing/grain.h"
#include "drawing/lettering.h"

#include <math.h>

#define CRISP_LINE  2.6
#define CRISP_ALONG 26.0
#define CRISP_DOWN  9.0
#define OUTLINE     0.9

/* How a grade looks; picture units. */
typedef struct
{
  guint fibres;
  double height, reach;             /* of the fibres, over the face */
  double notch_along, notch_inward; /* broken out of the arris */
} Look;

/* By grade, from 2. */
static const Look LOOKS[] = {
  { 2, 6.0, 11.0, 0, 0 },
  { 4, 10.0, 20.0, 6.0, 4.5 },
  { 6, 15.0, 27.0, 12.0, 9.0 },
  { 8, 20.0, 36.0, 19.0, 15.0 },
};

static const Look *
look_of (int grade)
{
  return &LOOKS[CLAMP (grade, 2, 5) - 2];
}

static double
between (double from, double to, guint seed, guint i, guint what)
{
  return from + (to - from) * spelch_grain_chance (seed, i, what);
}

static void
paint (cairo_t *cr, const SpelchColour *fill, const SpelchPalette *palette)
{
  spelch_colour_set (cr, fill, 1.0);
  cairo_fill_preserve (cr);
  spelch_colour_set (cr, &palette->ink, 1.0);
  cairo_set_line_width (cr, OUTLINE);
  cairo_set_line_join (cr, CAIRO_LINE_JOIN_ROUND);
  cairo_stroke (cr);
}

/* What broke out of the arris, shown as ground, with a ragged edge. */
static void
draw_notch (cairo_t *cr, const Look *look, const SpelchPalette *palette)
{
  static const double EDGE[][2] = { { 1, 0 },       { 0.76, 0.13 }, { 0.66, 0.09 }, { 0.46, 0.34 },
                                    { 0.36, 0.30 }, { 0.16, 0.66 }, { 0.10, 0.62 }, { 0, 1 } };
  double along = look->notch_along, inward = look->notch_inward;

  if (along <= 0)
    return;
  cairo_move_to (cr, 0, -1);
  cairo_line_to (cr, along, -1);
  for (guint i = 0; i < G_N_ELEMENTS (EDGE); i++)
    cairo_line_to (cr, along * EDGE[i][0], inward * EDGE[i][1]);
  cairo_line_to (cr, 0, inward);
  spelch_colour_set (cr, &palette->ground, 1.0);
  cairo_fill (cr);
  for (guint i = 0; i < G_N_ELEMENTS (EDGE); i++)
    cairo_line_to (cr, along * EDGE[i][0], inward * EDGE[i][1]);
  spelch_colour_set (cr, &palette->ink, 1.0);
  cairo_set_line_width (cr, OUTLINE);
  cairo_set_line_join (cr, CAIRO_LINE_JOIN_ROUND);
  cairo_stroke (cr);
}

/* A fibre still held by its foot, its free end lifted and curling toward the kerf. */
static void
add_fibre (cairo_t *cr, double foot, double half, double height, double lean)
{
  double tip = foot - lean;

  cairo_move_to (cr, foot - half, 0.6);
  cairo_curve_to (cr, foot - half - 0.05 * lean, -0.30 * height, foot - 0.55 * lean - 0.7 * half,
                  -0.72 * height, tip, -height);
  cairo_curve_to (cr, foot - 0.42 * lean + 0.5 * half, -0.62 * height, foot + 0.8 * half, -0.30 * height,
                  foot + half, 0.6);
  cairo_close_path (cr);
}

static void
draw_fibres (cairo_t *cr, const Look *look, guint seed, double thickness, const SpelchPalette *palette)
{
  /* From the outermost inwards, so that those at the arris stand in front. */
  for (guint i = look->fibres; i-- > 0;)
    {
      double share = CLAMP ((i + between (0.1, 0.9, seed, i, 2)) / look->fibres, 0, 1);
      double foot = 2.5 + share * (look->reach - 3.5);
      double height = look->height * (1 - 0.45 * share) * between (0.5, 1.0, seed, i, 3);
      double lean = height * between (-0.05, 1.15, seed, i, 4);

      add_fibre (cr, foot, thickness * between (1.2, 2.5, seed, i, 5) * (0.6 + 0.4 * look->height / 20),
                 height, lean);
      paint (cr, &palette->splinter, palette);
    }
}

/* The lower edge of what broke out of a laminate, from outside to the arris: teeth. */
static void
add_teeth (cairo_t *cr, const Look *look, guint seed)
{
  guint teeth = look->fibres + 1;
  double along = look->reach * 0.8, deep = 1.5 + look->height * 0.32, step = along / teeth;

  cairo_line_to (cr, along, 0);
  for (guint i = 0; i < teeth; i++)
    {
      double at = along - step * i, depth = 0.8 + deep * (1 - 0.7 * at / along);

      cairo_line_to (cr, at - step * between (0.25, 0.6, seed, i, 6), depth * between (0.7, 1.1, seed, i, 7));
      cairo_line_to (cr, at - step, depth * between (0.3, 0.6, seed, i, 8));
    }
  cairo_line_to (cr, 0, deep * 1.3);
}

static void
draw_flake (cairo_t *cr, double x, double y, double size, double turn, const SpelchPalette *palette)
{
  static const double CORNERS[][2] = { { 0, 1.0 }, { 1.9, 0.7 }, { 3.0, 0.9 }, { 4.6, 0.55 } };

  for (guint i = 0; i < G_N_ELEMENTS (CORNERS); i++)
    cairo_line_to (cr, x + size * CORNERS[i][1] * cos (turn + CORNERS[i][0]),
                   y + size * CORNERS[i][1] * sin (turn + CORNERS[i][0]));
  cairo_close_path (cr);
  paint (cr, &palette->laminate, palette);
}

/* A laminate breaks in angles: teeth out of the skin, and flakes thrown off it. */
static void
draw_chips (cairo_t *cr, const Look *look, guint seed, const SpelchPalette *palette)
{
  guint flakes = (look->fibres * 3 + 3) / 4;

  cairo_move_to (cr, 0, -1);
  cairo_line_to (cr, look->reach * 0.8, -1);
  add_teeth (cr, look, seed);
  spelch_colour_set (cr, &palette->ground, 1.0);
  cairo_fill (cr);
  add_teeth (cr, look, seed);
  spelch_colour_set (cr, &palette->ink, 1.0);
  cairo_set_line_width (cr, OUTLINE);
  cairo_set_line_join (cr, CAIRO_LINE_JOIN_ROUND);
  cairo_stroke (cr);
  for (guint i = 0; i < flakes; i++)
    {
      double x = (i + between (0.2, 0.8, seed, i, 9)) / flakes * look->reach;
      double size = 1.6 + look->height * 0.15 * between (0.5, 1, seed, i, 10);
      double y = -size - 1.5 - look->height * 0.5 * between (0, 1, seed, i, 11) * (1 - 0.5 * x / look->reach);

      draw_flake (cr, x, y, size, between (0, 2 * M_PI, seed, i, 12), palette);
    }
}

static void
draw_crisp (cairo_t *cr, const SpelchPalette *palette)
{
  cairo_move_to (cr, CRISP_ALONG, 0);
  cairo_line_to (cr, 0, 0);
  cairo_line_to (cr, 0, CRISP_DOWN);
  spelch_colour_set (cr, &palette->ink, 1.0);
  cairo_set_line_width (cr, CRISP_LINE);
  cairo_set_line_join (cr, CAIRO_LINE_JOIN_MITER);
  cairo_stroke (cr);
}

void
spelch_splinter_draw (cairo_t *cr, SpelchArrisKind kind, int grade, guint seed, const SpelchPalette *palette)
{
  if (grade <= 1)
    {
      draw_crisp (cr, palette);
      return;
    }
  if (kind == SPELCH_ARRIS_LAMINATE)
    {
      draw_chips (cr, look_of (grade), seed, palette);
      return;
    }
  draw_notch (cr, look_of (grade), palette);
  draw_fibres (cr, look_of (grade), seed, kind == SPELCH_ARRIS_FUZZ ? 0.45 : 1.0, palette);
}

void
spelch_splinter_extent (int grade, double *along, double *over, double *out, double *in)
{
  const Look *look = look_of (grade);

  if (grade <= 1)
    {
      *along = CRISP_ALONG + 1;
      *over = *out = CRISP_LINE / 2 + 0.5;
      *in = CRISP_DOWN + 1;
      return;
    }
  *along = look->reach + 4;
  *over = 1.15 * look->height + 1; /* a fibre at the arris may lean that far */
  *out = MAX (look->height, 2 * (1.6 + 0.16 * look->height) + 1.5 + 0.5 * look->height) + 1;
  *in = MAX (look->notch_inward, 1.3 * (1.5 + 0.32 * look->height)) + 1;
}
