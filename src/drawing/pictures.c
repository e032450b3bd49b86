/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "drawing/pictures.h"

#include "drawing/bit-shape.h"
#include "drawing/grain.h"
#include "drawing/lettering.h"

#include <math.h>

void
spelch_picture_bit (cairo_t *cr, const SpelchBit *bit, double x, double y, double scale, double shank_mm,
                    bool turned_over, double turned, const SpelchPalette *palette)
{
  SpelchBitShape shape = { .flutes = spelch_plan_flutes (bit),
                           .scale = scale,
                           .stub = shank_mm * scale,
                           .turned = turned,
                           .line = 1.0 };

  shape.flute_mm = shape.flutes.length;
  spelch_bit_shape_init (&shape, bit);
  cairo_save (cr);
  cairo_translate (cr, x, y);
  if (turned_over)
    cairo_scale (cr, -1, -1);
  spelch_bit_shape_draw (cr, &shape, palette);
  cairo_restore (cr);
}

/* ---- The cut as a section ---- */

#define MARGIN     1.0
#define OUTLINE    1.1
#define GLUE_LINE  0.7
#define LEAST_SKIN 1.2
#define WIDEST     0.62 /* of the picture, that an opening takes */
#define NARROWEST  3.0

/* The board as drawn, and what is taken out of it; picture units from the board's near left corner. */
typedef struct
{
  double scale, width, thickness;
  double from, to, depth;
} Section;

static Section
section_of (const SpelchPart *part, const SpelchCut *cut, double bit_diameter, double width, double height)
{
  double thickness = spelch_board_thickness (&part->board);
  bool one_wall = spelch_cut_has_one_wall (cut);
  Section s = { .width = width - 2 * MARGIN, .thickness = height - 2 * MARGIN };
  double opening;

  s.scale = s.thickness / MAX (thickness, 0.1);
  opening = cut->kind == SPELCH_CUT_OUTLINE || spelch_cut_width (cut) <= 0 ? bit_diameter
                                                                           : spelch_cut_width (cut);
  opening = CLAMP (opening * s.scale, NARROWEST, s.width * WIDEST);
  s.depth = cut->through ? s.thickness : CLAMP (cut->depth.mm * s.scale, 1.0, s.thickness);
  s.from = one_wall ? s.width - opening : (s.width - opening) / 2;
  s.to = s.from + opening;
  if (one_wall && cut->kept == SPELCH_WALL_RIGHT)
    {
      s.from = 0;
      s.to = opening;
    }
  return s;
}

/* The outline of what is left. */
static void
add_section (cairo_t *cr, const Section *s)
{
  bool through = s->depth >= s->thickness - 1e-6;

  if (through)
    {
      if (s->from > 0.5)
        cairo_rectangle (cr, 0, 0, s->from, s->thickness);
      if (s->to < s->width - 0.5)
        cairo_rectangle (cr, s->to, 0, s->width - s->to, s->thickness);
      return;
    }
  cairo_move_to (cr, 0, s->from > 0.5 ? 0 : s->depth);
  if (s->from > 0.5)
    {
      cairo_line_to (cr, s->from, 0);
      cairo_line_to (cr, s->from, s->depth);
    }
  cairo_line_to (cr, s->to, s->depth);
  if (s->to < s->width - 0.5)
    {
      cairo_line_to (cr, s->to, 0);
      cairo_line_to (cr, s->width, 0);
    }
  cairo_line_to (cr, s->width, s->thickness);
  cairo_line_to (cr, 0, s->thickness);
  cairo_close_path (cr);
}

static void
fill_layers (cairo_t *cr, const SpelchBoard *board, const Section *s, const SpelchPalette *palette)
{
  double depth = 0;

  for (guint i = 0; i < board->n_layers; i++)
    {
      const SpelchLayer *layer = &board->layers[i];
      double y0 = depth * s->scale, y1 = (depth + layer->thickness.mm) * s->scale;

      if (layer->material == SPELCH_MATERIAL_LAMINATE && y1 - y0 < LEAST_SKIN)
        {
          y0 = i + 1 == board->n_layers ? y1 - LEAST_SKIN : y0;
          y1 = y0 + LEAST_SKIN;
        }
      spelch_colour_set (cr, spelch_grain_colour (layer, M_PI_2, palette), 1.0);
      cairo_rectangle (cr, 0, y0, s->width, y1 - y0 + 0.5);
      cairo_fill (cr);
      depth += layer->thickness.mm;
    }
  depth = 0;
  for (guint i = 0; i + 1 < board->n_layers; i++)
    {
      depth += board->layers[i].thickness.mm;
      if (board->layers[i].material == SPELCH_MATERIAL_LAMINATE
          || board->layers[i + 1].material == SPELCH_MATERIAL_LAMINATE)
        continue;
      cairo_move_to (cr, 0, depth * s->scale);
      cairo_line_to (cr, s->width, depth * s->scale);
    }
  spelch_colour_set (cr, &palette->layer_line, 1.0);
  cairo_set_line_width (cr, GLUE_LINE);
  cairo_stroke (cr);
}

void
spelch_picture_opening (const SpelchPart *part, const SpelchCut *cut, double bit_diameter, double width,
                        double height, double *from, double *to, double *depth)
{
  Section section = section_of (part, cut, bit_diameter, width, height);
  *from = MARGIN + section.from;
  *to = MARGIN + section.to;
  *depth = section.depth;
}

void
spelch_picture_cut (cairo_t *cr, const SpelchPart *part, const SpelchCut *cut, double bit_diameter,
                    double width, double height, const SpelchPalette *palette)
{
  Section section = section_of (part, cut, bit_diameter, width, height);
  SpelchBoard board = spelch_board_toward_motor (&part->board, cut->way_up);

  if (section.width < 2 || section.thickness < 2)
    return;
  cairo_save (cr);
  cairo_translate (cr, MARGIN, MARGIN);
  if (spelch_machine_motor_below (&part->machine))
    {
      cairo_translate (cr, section.width, section.thickness);
      cairo_scale (cr, -1, -1);
    }
  cairo_save (cr);
  add_section (cr, &section);
  cairo_clip (cr);
  fill_layers (cr, &board, &section, palette);
  cairo_restore (cr);
  add_section (cr, &section);
  spelch_colour_set (cr, &palette->ink, 1.0);
  cairo_set_line_width (cr, OUTLINE);
  cairo_set_line_join (cr, CAIRO_LINE_JOIN_MITER);
  cairo_stroke (cr);
  cairo_restore (cr);
}
