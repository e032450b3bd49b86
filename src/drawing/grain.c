/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "drawing/grain.h"

#include "drawing/lettering.h"

#include <math.h>

/* Grain within 30 degrees of the line of sight shows pores, beyond 60 degrees lines, dashes between. */
#define PORES_TO   (M_PI / 6)
#define LINES_FROM (M_PI / 3)

/* A solid piece at least this thick (picture units) shows growth rings on its end grain. */
#define RINGS_FROM 24.0

typedef struct
{
  double x0, y0, x1, y1;
  guint seed;
  const SpelchPalette *palette;
} Patch;

double
spelch_grain_chance (guint a, guint b, guint c)
{
  guint h = a * 0x9e3779b1u ^ (b + 0x7f4a7c15u) * 0x85ebca6bu ^ (c + 0x165667b1u) * 0xc2b2ae35u;

  h ^= h >> 15;
  h *= 0x2c1b3c6du;
  h ^= h >> 12;
  h *= 0x297a2d39u;
  h ^= h >> 15;
  return (double)h / 4294967295.0;
}

static bool
is_fibreboard (const SpelchLayer *layer)
{
  return layer->material == SPELCH_MATERIAL_MDF || layer->material == SPELCH_MATERIAL_PARTICLEBOARD;
}

static bool
shows_pores (const SpelchLayer *layer, double angle)
{
  return layer->grain != SPELCH_GRAIN_END && angle < PORES_TO;
}

const SpelchColour *
spelch_grain_colour (const SpelchLayer *layer, double angle, const SpelchPalette *palette)
{
  if (layer->material == SPELCH_MATERIAL_LAMINATE)
    return &palette->laminate;
  if (is_fibreboard (layer))
    return &palette->fibreboard;
  return shows_pores (layer, angle) ? &palette->end_grain : &palette->long_grain;
}

/* Long grain: fine lines that wave a little; figured wood waves more. */
static void
draw_lines (cairo_t *cr, const Patch *patch, double swing, double length)
{
  double height = patch->y1 - patch->y0, amount = MIN (swing, height / 4);
  int n = (int)CLAMP (round (height / 5.2 - 0.75), height > 4 ? 1 : 0, 80);
  int steps = (int)CLAMP (ceil ((patch->x1 - patch->x0) / (length / 5)), 1, 200);

  cairo_set_line_width (cr, 0.6);
  cairo_set_line_join (cr, CAIRO_LINE_JOIN_BEVEL);
  spelch_colour_set (cr, &patch->palette->long_grain_line, 0.65);
  for (int i = 0; i < n; i++)
    {
      double y
          = patch->y0
            + height * (i + 0.75 + 0.25 * (spelch_grain_chance (patch->seed, (guint)i, 0) - 0.5)) / (n + 0.5);
      double phase = 2 * M_PI * spelch_grain_chance (patch->seed, (guint)i, 1);
      double wave = length * (0.8 + 0.4 * spelch_grain_chance (patch->seed, (guint)i, 2));

      for (int j = 0; j <= steps; j++)
        {
          double x = patch->x0 + (patch->x1 - patch->x0) * j / steps;
          double bend
              = sin (2 * M_PI * x / wave + phase) + 0.4 * sin (2 * M_PI * x / (wave * 2.7) + 2 * phase);

          cairo_line_to (cr, x, CLAMP (y + amount * bend, patch->y0 + 1, patch->y1 - 1));
        }
      cairo_stroke (cr);
    }
}

/* Marks of one kind over the whole patch, on a loose grid. A diamond reads as a dot and costs a fraction of
 * an arc; a fill for each row is several times quicker than one for all. */
static void
draw_marks (cairo_t *cr, const Patch *patch, double pitch, double looseness, double half_width,
            double half_height)
{
  int columns = (int)CLAMP ((patch->x1 - patch->x0) / pitch, 1, 400);
  int rows = (int)CLAMP (round ((patch->y1 - patch->y0 - 2) / (pitch * 0.8)), 1, 200);
  double dy = (patch->y1 - patch->y0) / rows, dx = (patch->x1 - patch->x0) / columns;

  cairo_save (cr);
  cairo_set_antialias (cr, CAIRO_ANTIALIAS_FAST);
  for (int r = 0; r < rows; r++)
    {
      guint a = patch->seed * 977u + (guint)r;

      for (int c = 0; c < columns; c++)
        {
          guint b = (guint)c;
          double x = patch->x0
                     + dx * (c + 0.5 + 0.5 * (r % 2) + looseness * (spelch_grain_chance (a, b, 3) - 0.5));
          double y = patch->y0 + dy * (r + 0.5 + looseness * (spelch_grain_chance (a, b, 4) - 0.5));
          double size = 0.75 + 0.5 * spelch_grain_chance (a, b, 5);
          double w = half_width * size, h = half_height * size;

          if (y - h < patch->y0 || y + h > patch->y1 || x > patch->x1)
            continue;
          cairo_move_to (cr, x - w, y);
          cairo_line_to (cr, x, y - h);
          cairo_line_to (cr, x + w, y);
          cairo_line_to (cr, x, y + h);
          cairo_close_path (cr);
        }
      cairo_fill (cr);
    }
  cairo_restore (cr);
}

static void
draw_pores (cairo_t *cr, const Patch *patch)
{
  spelch_colour_set (cr, &patch->palette->end_grain_pore, 0.55);
  draw_marks (cr, patch, 7.6, 0.55, 1.1, 1.1);
}

/* Grain that leaves the picture at a slant shows short strokes. */
static void
draw_dashes (cairo_t *cr, const Patch *patch)
{
  spelch_colour_set (cr, &patch->palette->end_grain_pore, 0.5);
  draw_marks (cr, patch, 11.0, 0.6, 4.2, 0.45);
}

/* The end of a thick piece: growth rings about a pith below the board. */
static void
draw_rings (cairo_t *cr, const Patch *patch)
{
  double cx = patch->x0 + (patch->x1 - patch->x0) * 0.42, cy = patch->y1 + (patch->y1 - patch->y0) * 1.5;
  double reach = hypot (patch->x1 - patch->x0, cy - patch->y0), r = cy - patch->y1;

  cairo_save (cr);
  cairo_rectangle (cr, patch->x0, patch->y0, patch->x1 - patch->x0, patch->y1 - patch->y0);
  cairo_clip (cr);
  for (guint i = 0; r < reach; i++)
    {
      cairo_new_sub_path (cr);
      cairo_arc (cr, cx, cy, r, -M_PI, 0);
      r += 9.0 + 9.0 * spelch_grain_chance (patch->seed, i, 6);
    }
  cairo_set_line_width (cr, 0.8);
  spelch_colour_set (cr, &patch->palette->end_grain_pore, 0.4);
  cairo_stroke (cr);
  cairo_restore (cr);
}

/* The face itself is end grain: fibres stand upright in the picture. */
static void
draw_upright (cairo_t *cr, const Patch *patch)
{
  int n = (int)CLAMP ((patch->x1 - patch->x0) / 6.0, 1, 400);

  for (int i = 0; i < n; i++)
    {
      double x
          = patch->x0 + (patch->x1 - patch->x0) * (i + spelch_grain_chance (patch->seed, (guint)i, 7)) / n;
      double lean = 1.6 * (spelch_grain_chance (patch->seed, (guint)i, 8) - 0.5);

      cairo_move_to (cr, x, patch->y0 + 1);
      cairo_line_to (cr, x + lean, patch->y1 - 1);
    }
  cairo_set_line_width (cr, 0.6);
  spelch_colour_set (cr, &patch->palette->long_grain_line, 0.65);
  cairo_stroke (cr);
}

static void
draw_fibres (cairo_t *cr, const Patch *patch)
{
  spelch_colour_set (cr, &patch->palette->fibreboard_speck, 0.7);
  draw_marks (cr, patch, 6.4, 0.9, 0.7, 0.7);
}

/* Particleboard: flakes lying flat, coarse in the middle and fine toward the faces. */
static void
draw_particles (cairo_t *cr, const Patch *patch, const double at_face[2])
{
  double row = 0, height = patch->y1 - patch->y0;

  spelch_colour_set (cr, &patch->palette->fibreboard_speck, 0.62);
  for (guint r = 0; row < height; r++)
    {
      double share = at_face[0] + (at_face[1] - at_face[0]) * row / MAX (height, 1);
      double depth = MIN (share, 1 - share) * 2; /* 0 at the faces, 1 in the middle */
      double size = 0.55 + 1.25 * CLAMP ((depth - 0.12) / 0.5, 0, 1);
      Patch band
          = { patch->x0,       patch->y0 + row, patch->x1, MIN (patch->y1, patch->y0 + row + 5.6 * size),
              patch->seed + r, patch->palette };

      if (band.y1 - band.y0 > 2)
        draw_marks (cr, &band, 9.0 * size, 0.9, 2.6 * size, 0.85 * size);
      row += 5.6 * size;
    }
}

static void
draw_wood (cairo_t *cr, const SpelchLayer *layer, double angle, const Patch *patch)
{
  bool figured = layer->grain == SPELCH_GRAIN_FIGURED;

  if (layer->grain == SPELCH_GRAIN_END)
    draw_upright (cr, patch);
  else if (shows_pores (layer, angle))
    {
      if (!layer->veneer && patch->y1 - patch->y0 > RINGS_FROM)
        draw_rings (cr, patch);
      draw_pores (cr, patch);
    }
  else if (angle < LINES_FROM)
    draw_dashes (cr, patch);
  else
    draw_lines (cr, patch, figured ? 2.6 : 0.55, figured ? 64.0 : 130.0);
}

void
spelch_grain_draw (cairo_t *cr, const SpelchLayer *layer, guint index, double angle, double x0, double y0,
                   double x1, double y1, const double at_face[2], const SpelchPalette *palette)
{
  Patch patch = { x0, y0, x1, y1, index * 131u + 7u, palette };

  spelch_colour_set (cr, spelch_grain_colour (layer, angle, palette), 1.0);
  cairo_rectangle (cr, x0, y0, x1 - x0, y1 - y0);
  cairo_fill (cr);
  if (y1 - y0 < 2.5 || layer->material == SPELCH_MATERIAL_LAMINATE)
    return;
  if (layer->material == SPELCH_MATERIAL_MDF)
    draw_fibres (cr, &patch);
  else if (layer->material == SPELCH_MATERIAL_PARTICLEBOARD)
    draw_particles (cr, &patch, at_face);
  else
    draw_wood (cr, layer, angle, &patch);
}
