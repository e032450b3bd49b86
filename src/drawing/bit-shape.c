/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "drawing/bit-shape.h"

#include "drawing/lettering.h"

#include <glib.h>
#include <math.h>

/* Between two pieces of a thing broken short, and the swing of the break line. */
#define BREAK_GAP   5.0
#define BREAK_SWING 2.6

/* Land behind an edge, as a share of the way to the next one: chosen to look like a ground bit. */
#define LAND_SHARE 0.36

/* A bearing's height against its diameter. */
#define BEARING_HEIGHT 0.36

/* A collet nut against the shank. */
#define COLLET_SHARE 1.7
#define COLLET_MOST  56.0

#define MAX_SAMPLES 512

void
spelch_bit_shape_init (SpelchBitShape *shape, const SpelchBit *bit)
{
  shape->shank = bit->shank.mm;
  shape->neck = bit->neck.mm;
  shape->bearing = bit->bearing;
  shape->hollow = bit->end_cutting ? 0 : bit->end_hollow.mm;
  shape->hollow_width = bit->end_cutting ? 0 : bit->uncut_centre.mm;
}

double
spelch_bit_shape_collet_half (const SpelchBitShape *shape)
{
  double shank = shape->shank * shape->scale;

  return MIN (shank * COLLET_SHARE, shank + COLLET_MOST) / 2;
}

static double
bearing_height (const SpelchBitShape *shape)
{
  return MAX (shape->flutes.diameter * BEARING_HEIGHT * shape->scale, 3.0);
}

void
spelch_bit_shape_extent (const SpelchBitShape *shape, double *half_width, double *above, double *below)
{
  double half = MAX (shape->flutes.diameter, shape->shank) / 2 * shape->scale;

  if (shape->collet > 0)
    half = MAX (half, spelch_bit_shape_collet_half (shape));
  *half_width = half + shape->line;
  *above = shape->flute_mm * shape->scale + shape->stub + shape->collet + shape->line + BREAK_SWING;
  *below = shape->line + (shape->bearing == SPELCH_BEARING_TIP ? bearing_height (shape) + 3 : 0);
}

/* ---- Drawing ---- */

static SpelchColour
mixed (SpelchColour a, SpelchColour b)
{
  return (SpelchColour){ (a.r + b.r) / 2, (a.g + b.g) / 2, (a.b + b.b) / 2 };
}

static void
zone_colours (SpelchShearHand hand, const SpelchPalette *p, SpelchColour *edge, SpelchColour *flute)
{
  switch (hand)
    {
    case SPELCH_SHEAR_UP:
      *edge = p->up_edge;
      *flute = p->up_flute;
      break;
    case SPELCH_SHEAR_DOWN:
      *edge = p->down_edge;
      *flute = p->down_flute;
      break;
    case SPELCH_SHEAR_OVERLAP:
      *edge = mixed (p->up_edge, p->down_edge);
      *flute = mixed (p->up_flute, p->down_flute);
      break;
    case SPELCH_SHEAR_NEUTRAL:
    default:
      *edge = p->plain_edge;
      *flute = p->plain_flute;
      break;
    }
}

/* The visible part of the land from @theta to @theta + @land, when the bit is unrolled by @m turns: a ribbon.
 */
static void
add_land (cairo_t *cr, const SpelchBitShape *shape, int k, SpelchZone piece, double land, int m)
{
  double radius = shape->flutes.diameter / 2 * shape->scale;
  int samples = (int)CLAMP (ceil ((piece.to - piece.from) * shape->scale / 3.0), 1, MAX_SAMPLES);

  for (int side = 0; side < 2; side++)
    for (int j = 0; j <= samples; j++)
      {
        int i = side == 0 ? j : samples - j;
        double s = piece.from + (piece.to - piece.from) * i / samples;
        double theta
            = spelch_bit_angle (&shape->flutes, k, s, piece.from, piece.to, shape->turned) - 2 * M_PI * m;
        double x = radius * sin (CLAMP (theta + (side == 0 ? 0 : land), -M_PI_2, M_PI_2));

        cairo_line_to (cr, x, -s * shape->scale);
      }
  cairo_close_path (cr);
}

static void
draw_lands (cairo_t *cr, const SpelchBitShape *shape, SpelchZone piece, int edges, const SpelchColour *colour)
{
  double land = 2 * M_PI / edges * LAND_SHARE;

  for (int k = 0; k < edges; k++)
    {
      double a = spelch_bit_angle (&shape->flutes, k, piece.from, piece.from, piece.to, shape->turned);
      double b = spelch_bit_angle (&shape->flutes, k, piece.to, piece.from, piece.to, shape->turned);
      int first = (int)ceil ((MIN (a, b) - M_PI_2) / (2 * M_PI));
      int last = (int)floor ((MAX (a, b) + land + M_PI_2) / (2 * M_PI));

      for (int m = first; m <= last; m++)
        add_land (cr, shape, k, piece, land, m);
    }
  spelch_colour_set (cr, colour, 1.0);
  cairo_fill (cr);
}

static void
add_edges (cairo_t *cr, const SpelchBitShape *shape, SpelchZone piece, int edges)
{
  SpelchEdgePoint points[MAX_SAMPLES];

  for (int k = 0; k < edges; k++)
    {
      int n = spelch_bit_edge_points (&shape->flutes, k, piece.from, piece.to, 3.0 / shape->scale,
                                      shape->turned, points, MAX_SAMPLES);

      for (int i = 0; i < n; i++)
        {
          if (points[i].first)
            cairo_move_to (cr, points[i].x * shape->scale, -points[i].s * shape->scale);
          else
            cairo_line_to (cr, points[i].x * shape->scale, -points[i].s * shape->scale);
        }
    }
}

/* A little shade toward both silhouettes, so that the eye reads a round. */
static void
shade_round (cairo_t *cr, double half, double top)
{
  cairo_pattern_t *shade = cairo_pattern_create_linear (-half, 0, half, 0);

  cairo_pattern_add_color_stop_rgba (shade, 0.0, 0, 0, 0, 0.16);
  cairo_pattern_add_color_stop_rgba (shade, 0.22, 0, 0, 0, 0.0);
  cairo_pattern_add_color_stop_rgba (shade, 0.62, 0, 0, 0, 0.0);
  cairo_pattern_add_color_stop_rgba (shade, 1.0, 0, 0, 0, 0.2);
  cairo_rectangle (cr, -half, top, 2 * half, -top);
  cairo_set_source (cr, shade);
  cairo_fill (cr);
  cairo_pattern_destroy (shade);
}

/* Adds a break line from one side to the other at @y; on a small bit it swings less. */
static void
add_break (cairo_t *cr, double half, double y, double to_right)
{
  double swing = 2 * MIN (BREAK_SWING, half * 0.16) * to_right;

  cairo_curve_to (cr, -half / 3 * to_right, y - swing, half / 3 * to_right, y + swing, half * to_right, y);
}

/* Adds an upright piece from y0 (lower) to y1 (upper); either end may be a break line. */
static void
add_piece (cairo_t *cr, double half, double y0, bool break0, double y1, bool break1)
{
  cairo_move_to (cr, -half, y0);
  if (break0)
    add_break (cr, half, y0, 1);
  else
    cairo_line_to (cr, half, y0);
  cairo_line_to (cr, half, y1);
  if (break1)
    add_break (cr, half, y1, -1);
  else
    cairo_line_to (cr, -half, y1);
  cairo_close_path (cr);
}

/* A shank that begins with a cone of @cone and ends in a break line at y1. */
static void
add_shank (cairo_t *cr, double narrow, double half, double y0, double cone, double y1)
{
  cairo_move_to (cr, cone > 0 ? -narrow : -half, y0);
  cairo_line_to (cr, cone > 0 ? narrow : half, y0);
  cairo_line_to (cr, half, y0 - cone);
  cairo_line_to (cr, half, y1);
  add_break (cr, half, y1, -1);
  cairo_line_to (cr, -half, y0 - cone);
  cairo_close_path (cr);
}

static double
fine_line (const SpelchBitShape *shape, double share)
{
  return shape->narrow > 0 ? shape->narrow : shape->line * share;
}

static void
paint_steel (cairo_t *cr, const SpelchBitShape *shape, double half, const SpelchPalette *p)
{
  cairo_pattern_t *steel = cairo_pattern_create_linear (-half, 0, half, 0);

  cairo_pattern_add_color_stop_rgb (steel, 0.0, p->steel_dark.r, p->steel_dark.g, p->steel_dark.b);
  cairo_pattern_add_color_stop_rgb (steel, 0.35, p->steel_light.r, p->steel_light.g, p->steel_light.b);
  cairo_pattern_add_color_stop_rgb (steel, 1.0, p->steel_dark.r, p->steel_dark.g, p->steel_dark.b);
  cairo_set_source (cr, steel);
  cairo_fill_preserve (cr);
  cairo_pattern_destroy (steel);
  spelch_colour_set (cr, &p->ink, 1.0);
  cairo_set_line_width (cr, shape->line);
  cairo_stroke (cr);
}

static void
draw_flutes (cairo_t *cr, const SpelchBitShape *shape, const SpelchPalette *p)
{
  SpelchZone pieces[SPELCH_MAX_PIECES];
  double half = shape->flutes.diameter / 2 * shape->scale, top = -shape->flute_mm * shape->scale;
  bool broken = shape->flute_mm < shape->flutes.length - 1e-6;
  int n = spelch_bit_pieces (&shape->flutes, pieces);

  cairo_save (cr);
  add_piece (cr, half, 0, false, top, broken);
  cairo_clip (cr);
  for (int i = 0; i < n && pieces[i].from < shape->flute_mm; i++)
    {
      int edges = MAX (spelch_flute_edges_at (&shape->flutes, (pieces[i].from + pieces[i].to) / 2), 1);
      SpelchColour edge, flute;

      zone_colours (pieces[i].hand, p, &edge, &flute);
      spelch_colour_set (cr, &flute, 1.0);
      cairo_rectangle (cr, -half, -pieces[i].to * shape->scale - 1, 2 * half,
                       (pieces[i].to - pieces[i].from) * shape->scale + 1);
      cairo_fill (cr);
      draw_lands (cr, shape, pieces[i], edges, &edge);
      add_edges (cr, shape, pieces[i], edges);
      spelch_colour_set (cr, &p->ink, 1.0);
      cairo_set_line_width (cr, shape->narrow > 0 ? shape->line : shape->line * 4 / 3);
      cairo_set_line_join (cr, CAIRO_LINE_JOIN_ROUND);
      cairo_stroke (cr);
    }
  shade_round (cr, half, top - BREAK_SWING);
  cairo_restore (cr);

  add_piece (cr, half, 0, false, top, broken);
  spelch_colour_set (cr, &p->ink, 1.0);
  cairo_set_line_width (cr, shape->line);
  cairo_stroke (cr);
}

/* A cone between flutes and a thicker shank. */
static double
cone_height (const SpelchBitShape *shape, double narrow, double wide)
{
  return wide > narrow + 1 ? MIN ((wide - narrow) * 0.7, shape->stub * 0.4) : 0;
}

/* Shank above the flutes, over a neck where there is one; broken short unless the flutes are already. */
static void
draw_shank (cairo_t *cr, const SpelchBitShape *shape, const SpelchPalette *p)
{
  double half = shape->shank / 2 * shape->scale, y = -shape->flute_mm * shape->scale, top = y - shape->stub;
  double below = (shape->neck > 0 ? shape->neck : shape->flutes.diameter) / 2 * shape->scale;
  bool broken = shape->flute_mm < shape->flutes.length - 1e-6;
  double cut = shape->collet > 0 ? y - shape->stub * 0.6 : top;
  double neck = shape->neck > 0 ? MIN (shape->stub * 0.2, 6.0) : 0, cone = cone_height (shape, below, half);

  if (shape->stub <= 0)
    return;
  if (!broken)
    {
      if (neck > 0)
        {
          add_piece (cr, below, y, false, y - neck, false);
          paint_steel (cr, shape, below, p);
        }
      add_shank (cr, MIN (below, half), half, y - neck, cone, cut + (shape->collet > 0 ? BREAK_GAP / 2 : 0));
      paint_steel (cr, shape, half, p);
    }
  if (shape->collet > 0)
    {
      add_piece (cr, half, broken ? y - BREAK_GAP : cut - BREAK_GAP / 2, true, top, false);
      paint_steel (cr, shape, half, p);
    }
}

static void
draw_collet (cairo_t *cr, const SpelchBitShape *shape, const SpelchPalette *p)
{
  double half = spelch_bit_shape_collet_half (shape), y = -shape->flute_mm * shape->scale - shape->stub;
  double top = y - shape->collet, chamfer = MIN (7.0, half / 4);

  if (shape->collet <= 0)
    return;
  cairo_move_to (cr, -half + chamfer, y);
  cairo_line_to (cr, half - chamfer, y);
  cairo_line_to (cr, half, y - chamfer);
  cairo_line_to (cr, half, top);
  add_break (cr, half, top, -1);
  cairo_line_to (cr, -half, y - chamfer);
  cairo_close_path (cr);
  paint_steel (cr, shape, half, p);

  /* The nut's flats. */
  for (int side = -1; side <= 1; side += 2)
    {
      cairo_move_to (cr, side * half * 0.45, y - chamfer);
      cairo_line_to (cr, side * half * 0.45, top + BREAK_SWING);
    }
  cairo_move_to (cr, -half, y - chamfer);
  cairo_line_to (cr, half, y - chamfer);
  spelch_colour_set (cr, &p->ink, 0.45);
  cairo_set_line_width (cr, fine_line (shape, 0.7));
  cairo_stroke (cr);
}

static void
draw_bearing (cairo_t *cr, const SpelchBitShape *shape, const SpelchPalette *p)
{
  double half = shape->flutes.diameter / 2 * shape->scale, height = bearing_height (shape);
  double y = shape->bearing == SPELCH_BEARING_TIP ? height + 2 : -shape->flute_mm * shape->scale;

  if (shape->bearing == SPELCH_BEARING_NONE)
    return;
  add_piece (cr, half, y, false, y - height, false);
  paint_steel (cr, shape, half, p);
  for (int side = -1; side <= 1; side += 2)
    {
      cairo_move_to (cr, side * half * 0.55, y);
      cairo_line_to (cr, side * half * 0.55, y - height);
    }
  spelch_colour_set (cr, &p->ink, 0.6);
  cairo_set_line_width (cr, fine_line (shape, 0.7));
  cairo_stroke (cr);
}

/* The hollow under an end that doesn't cut to the middle. */
static void
draw_hollow (cairo_t *cr, const SpelchBitShape *shape, const SpelchPalette *p)
{
  double half = shape->hollow_width / 2 * shape->scale, height = MAX (shape->hollow, 0.3) * shape->scale;

  if (half <= 1)
    return;
  cairo_move_to (cr, -half, 0);
  cairo_line_to (cr, 0, -height);
  cairo_line_to (cr, half, 0);
  spelch_colour_set (cr, &p->ink, 1.0);
  cairo_set_line_width (cr, fine_line (shape, 0.8));
  cairo_stroke (cr);
}

void
spelch_bit_shape_draw (cairo_t *cr, const SpelchBitShape *shape, const SpelchPalette *palette)
{
  draw_shank (cr, shape, palette);
  draw_collet (cr, shape, palette);
  draw_flutes (cr, shape, palette);
  draw_bearing (cr, shape, palette);
  draw_hollow (cr, shape, palette);
}
