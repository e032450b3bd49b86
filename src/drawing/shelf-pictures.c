/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "drawing/shelf-pictures.h"
#include "drawing/grain.h"
#include "drawing/lettering.h"
#include "drawing/pictures.h"

#include <math.h>

#define LEAST_SKIN 1.2 /* a laminate that would be thinner couldn't be seen */
#define OUTLINE    1.1

void
spelch_picture_bit_lying (cairo_t *cr, const SpelchBit *bit, double x, double y, double scale,
                          double shank_mm, const SpelchPalette *palette)
{
  cairo_save (cr);
  cairo_translate (cr, x, y);
  cairo_rotate (cr, M_PI_2);
  spelch_picture_bit (cr, bit, 0, 0, scale, shank_mm, false, 0, palette);
  cairo_restore (cr);
}

/* ---- Board ---- */

static double
half_way (double share)
{
  return share > 0.5 ? 1 - share : share;
}

static void
draw_layer (cairo_t *cr, const SpelchBoard *board, guint i, const double top_bottom[2],
            const double shares[2], double width, const SpelchPalette *palette)
{
  const SpelchLayer *layer = &board->layers[i];
  double y0 = top_bottom[0], y1 = top_bottom[1];
  double across = fabs (remainder (layer->grain_deg, 180)) * M_PI / 180;
  if (layer->material == SPELCH_MATERIAL_LAMINATE && y1 - y0 < LEAST_SKIN)
    {
      y0 = i + 1 == board->n_layers ? y1 - LEAST_SKIN : y0;
      y1 = y0 + LEAST_SKIN;
    }
  spelch_grain_draw (cr, layer, i, across, 0, y0, width, y1,
                     (double[]){ half_way (shares[0]), half_way (shares[1]) }, palette);
}

void
spelch_picture_board (cairo_t *cr, const SpelchBoard *board, double x, double y, double width, double scale,
                      const SpelchPalette *palette)
{
  double all = 0, depth = 0;
  for (guint i = 0; i < board->n_layers; i++)
    all += board->layers[i].thickness.mm;
  if (!(all > 0) || !(scale > 0))
    return;
  cairo_save (cr);
  cairo_translate (cr, x, y);
  for (guint i = 0; i < board->n_layers; i++)
    {
      double below = depth + board->layers[i].thickness.mm;
      draw_layer (cr, board, i, (double[]){ depth * scale, below * scale },
                  (double[]){ depth / all, below / all }, width, palette);
      depth = below;
      if (i + 1 == board->n_layers)
        continue;
      cairo_move_to (cr, 0, depth * scale);
      cairo_line_to (cr, width, depth * scale);
      spelch_colour_set (cr, &palette->layer_line, 1.0);
      cairo_set_line_width (cr, 0.7);
      cairo_stroke (cr);
    }
  cairo_rectangle (cr, 0, 0, width, all * scale);
  spelch_colour_set (cr, &palette->ink, 1.0);
  cairo_set_line_width (cr, OUTLINE);
  cairo_stroke (cr);
  cairo_restore (cr);
}

/* ---- Machine ---- */

/* A block centred on @x. */
static void
block (cairo_t *cr, double x, double y, double width, double height, const SpelchColour *fill,
       const SpelchPalette *palette)
{
  cairo_rectangle (cr, x - width / 2, y, width, height);
  spelch_colour_set (cr, fill, 1.0);
  cairo_fill_preserve (cr);
  spelch_colour_set (cr, &palette->ink, 1.0);
  cairo_set_line_width (cr, OUTLINE);
  cairo_stroke (cr);
}

/* Motor, collet and bit, going down from (x, 0) to the depth of @tip. */
static void
spindle (cairo_t *cr, double x, double h, double tip, const SpelchPalette *palette)
{
  double motor = h * 0.62;
  block (cr, x, OUTLINE, motor, h * 0.34, &palette->steel_light, palette);
  block (cr, x, h * 0.34, motor * 0.42, h * 0.12, &palette->steel_dark, palette);
  block (cr, x, h * 0.46, motor * 0.14, tip - h * 0.46, &palette->plain_edge, palette);
}

static void
gantry (cairo_t *cr, double width, double h, const SpelchPalette *palette)
{
  block (cr, width / 2, h * 0.58, width * 0.7, h * 0.16, &palette->fibreboard, palette);
  block (cr, width / 2, h * 0.74, width * 0.96, h * 0.1, &palette->rest, palette);
  block (cr, width / 2, h * 0.84, width * 0.96, h * 0.14, &palette->steel_light, palette);
  spindle (cr, width / 2, h, h * 0.76, palette);
}

/* The base stands on the board and the bit passes through it. */
static void
by_hand (cairo_t *cr, double width, double h, const SpelchPalette *palette)
{
  double base = width * 0.5;
  block (cr, width / 2, h * 0.66, width * 0.96, h * 0.2, &palette->fibreboard, palette);
  block (cr, width / 2 - base * 0.36, h * 0.59, base * 0.5, h * 0.07, &palette->rest, palette);
  block (cr, width / 2 + base * 0.36, h * 0.59, base * 0.5, h * 0.07, &palette->rest, palette);
  /* The handles stand out from the motor on arms. */
  block (cr, width / 2, h * 0.19, base * 1.12, h * 0.06, &palette->steel_light, palette);
  for (int side = -1; side <= 1; side += 2)
    block (cr, width / 2 + side * base * 0.56, h * 0.14, h * 0.1, h * 0.16, &palette->steel_dark, palette);
  spindle (cr, width / 2, h, h * 0.78, palette);
}

/* As a router by hand, turned over: the motor below, the board on the table. */
static void
table (cairo_t *cr, double width, double h, const SpelchPalette *palette)
{
  cairo_translate (cr, width, h);
  cairo_rotate (cr, M_PI);
  block (cr, width / 2, h * 0.66, width * 0.6, h * 0.18, &palette->fibreboard, palette);
  block (cr, width * 0.25 - h * 0.07, h * 0.54, width * 0.46, h * 0.12, &palette->rest, palette);
  block (cr, width * 0.75 + h * 0.07, h * 0.54, width * 0.46, h * 0.12, &palette->rest, palette);
  spindle (cr, width / 2, h, h * 0.76, palette);
}

void
spelch_picture_machine (cairo_t *cr, const SpelchMachine *machine, double width, double height,
                        const SpelchPalette *palette)
{
  if (width < 4 || height < 4)
    return;
  cairo_save (cr);
  if (machine->kind == SPELCH_MACHINE_TABLE)
    table (cr, width, height, palette);
  else if (machine->kind == SPELCH_MACHINE_HAND)
    by_hand (cr, width, height, palette);
  else
    gantry (cr, width, height, palette);
  cairo_restore (cr);
}
