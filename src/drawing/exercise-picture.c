/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "drawing/exercise-picture.h"

#include "drawing/from-above.h"
#include "drawing/pictures.h"
#include "drawing/scene.h"

#include <glib/gi18n-lib.h>
#include <math.h>

#define LETTER_SIZE 9.0
#define LETTER_ROOM 14.0 /* under the bits */
#define WORD_SIZE   8.5
#define WORD_ROOM   14.0 /* over the board, or under it, for which side the motor is on */
#define ARROW       9.0
#define GAP_MM      7.0
#define STUB_MM     7.0 /* of shank */
#define BOARD_MM    26.0
#define UNDER_MM    7.0   /* of spoilboard under the board */
#define GROOVE_MM   2.5   /* an earlier cut in it */
#define ASIDE_MM    14.0  /* of board beside the cut */
#define WIDE        420.0 /* at which a side view is drawn in full size */
#define LEAST_SHARE 0.40  /* of full size, that it is drawn in */
#define LEAST_WORDS 0.55  /* of their size, that letters keep */
#define MARGIN      1.0   /* as spelch_picture_cut() leaves */
#define EDGE        4.0   /* around everything: lines and what is broken off have a width */
#define SCALE_MOST  6.0   /* units per mm: a thin board isn't drawn like a beam */

typedef struct
{
  guint n;
  const SpelchBit *bits[SPELCH_BITS_MOST];
  double scale, board_mm, thickness;
  double left, top, bottom; /* of the board and the bits, without letters */
  double under;             /* of spoilboard that is drawn, mm */
  bool lettered, below;     /* the motor is below */
} Picture;

static void
take (Picture *picture, const SpelchPart *part, const char *id)
{
  int i = spelch_part_find_bit (part, id);
  if (i >= 0 && picture->n < SPELCH_BITS_MOST)
    picture->bits[picture->n++] = &part->bits[i];
}

static double
tall_mm (const SpelchBit *bit)
{
  return bit->cutting_length.mm + STUB_MM;
}

static double
wide_mm (const SpelchBit *bit)
{
  return fmax (spelch_bit_diameter_now (bit), bit->shank.mm);
}

/* A question that is about the spoilboard shows it. */
static bool
shows_spoilboard (const SpelchPosed *posed)
{
  const SpelchPart *part = posed->part;
  bool about
      = posed->exercise->follow_up.told && posed->exercise->follow_up.change.what == SPELCH_CHANGE_SPOILBOARD;
  return part->machine.kind == SPELCH_MACHINE_GANTRY && part->cuts[0].through && part->cuts[0].backer.mm <= 0
         && (about || part->machine.spoilboard == SPELCH_SPOILBOARD_CUT_HERE_BEFORE);
}

static Picture
lay_out (const SpelchPosed *posed, double width, double height)
{
  const SpelchPart *part = posed->part;
  const SpelchCut *cut = &part->cuts[0];
  Picture picture = { .lettered = posed->exercise->asks == SPELCH_ASKS_BIT,
                      .below = spelch_machine_motor_below (&part->machine),
                      .under = shows_spoilboard (posed) ? UNDER_MM : 0,
                      .thickness = spelch_board_thickness (&part->board) };
  for (guint i = 0; picture.lettered && i < posed->n_choices; i++)
    take (&picture, part, posed->choices[i]);
  if (!picture.lettered)
    take (&picture, part, cut->bit);
  double opening = spelch_cut_width (cut);
  if (opening <= 0 && picture.n > 0)
    opening = spelch_bit_diameter_now (picture.bits[0]);
  picture.board_mm = fmax (BOARD_MM, fmin (opening, BOARD_MM) + 2 * ASIDE_MM);
  double tall = picture.thickness, wide = picture.board_mm;
  for (guint i = 0; i < picture.n; i++)
    {
      tall = fmax (tall, tall_mm (picture.bits[i]));
      wide += GAP_MM + wide_mm (picture.bits[i]);
    }
  tall += picture.under;
  double letters = picture.lettered ? LETTER_ROOM : 0, room = height - letters - 2 * EDGE;
  picture.scale = fmin (fmin (room / tall, (width - 2 * EDGE - 2 * MARGIN) / wide), SCALE_MOST);
  picture.scale = fmax (picture.scale, 0);
  picture.left = fmax ((width - wide * picture.scale - 2 * MARGIN) / 2, EDGE);
  picture.top = fmax ((height - letters - tall * picture.scale) / 2, EDGE);
  picture.bottom = picture.top + (tall - picture.under) * picture.scale;
  return picture;
}

static void
draw_letter (cairo_t *cr, guint i, double x, double y, const SpelchPalette *palette,
             SpelchLettering *lettering)
{
  const char letter[] = { (char)('A' + i), '\0' };
  double wide, high;
  g_autoptr (PangoLayout) layout
      = spelch_lettering_set (lettering, letter, LETTER_SIZE, SPELCH_LETTERS_STRONG, 0, PANGO_ALIGN_LEFT);
  spelch_lettering_measure (layout, &wide, &high);
  spelch_lettering_draw (cr, layout, x - wide / 2, y, &palette->ink);
}

/* Where the answer is neither a bit, nor a depth, nor a way up, the side view shows how everything lies. */
static bool
shows_side_view (const SpelchPosed *posed)
{
  SpelchAsks asks = posed->exercise->asks;
  return posed->plan.n_passes > 0
         && (asks == SPELCH_ASKS_TEARS || asks == SPELCH_ASKS_LIMIT || asks == SPELCH_ASKS_HOLD);
}

static void
draw_side_view (cairo_t *cr, const SpelchPosed *posed, double width, double height, SpelchLook look,
                SpelchLettering *lettering)
{
  const SpelchPart *part = posed->part;
  int bit = spelch_part_find_bit (part, part->cuts[0].bit);
  double share
      = CLAMP (width / WIDE, LEAST_SHARE, 1); /* lines and room about the board get smaller with it */
  SpelchView view = { .width = width / share,
                      .height = height / share,
                      .text = fmax (LEAST_WORDS / share, 1),
                      .look = look,
                      .numbers = { SPELCH_UNIT_MM, SPELCH_INCH_FRACTION, '.' },
                      .lettering = lettering,
                      .shown_pass = 1,
                      .without_words = true,
                      .asking = true };
  if (bit < 0)
    return;
  g_autoptr (SpelchScene) scene
      = spelch_scene_new (part, &part->cuts[0], &part->bits[bit], &posed->plan, &view);
  cairo_save (cr);
  cairo_rectangle (cr, 0, 0, width, height);
  cairo_clip (cr);
  cairo_scale (cr, share, share);
  spelch_scene_draw (scene, cr);
  cairo_restore (cr);
}

/* What is taken off at an edge is dashed: without it the board would look whole. */
static void
draw_taken_off (cairo_t *cr, const SpelchPosed *posed, const Picture *p, double bit_wide,
                const SpelchPalette *palette)
{
  static const double DASH[] = { 4, 3 };
  const SpelchPart *part = posed->part;
  const SpelchCut *cut = &part->cuts[0];
  double from, to, depth, wide = p->board_mm * p->scale + 2 * MARGIN, tall = p->thickness * p->scale;
  if (cut->kind != SPELCH_CUT_TRIM && cut->kind != SPELCH_CUT_RABBET)
    return;
  spelch_picture_opening (part, cut, bit_wide, wide, tall + 2 * MARGIN, &from, &to, &depth);
  cairo_save (cr);
  if (p->below)
    {
      cairo_translate (cr, wide, tall + 2 * MARGIN);
      cairo_scale (cr, -1, -1);
    }
  cairo_rectangle (cr, from, MARGIN, to - from, depth);
  spelch_colour_set (cr, &palette->ink_soft, 1);
  cairo_set_line_width (cr, 1);
  cairo_set_dash (cr, DASH, 2, 0);
  cairo_stroke (cr);
  cairo_restore (cr);
}

/* An arrow toward the motor and its words, beside the face at @y, where there is room for them. */
static void
draw_motor_side (cairo_t *cr, const Picture *p, double room, double y, const SpelchPalette *palette,
                 SpelchLettering *lettering)
{
  double wide, high, turn = p->below ? -1 : 1, x = p->left + ARROW / 2, board = p->board_mm * p->scale;
  g_autoptr (PangoLayout) layout = spelch_lettering_set (lettering, _ ("motor side"), WORD_SIZE,
                                                         SPELCH_LETTERS_PLAIN, 0, PANGO_ALIGN_LEFT);
  spelch_lettering_measure (layout, &wide, &high);
  if (room < WORD_ROOM || wide + ARROW + 2 > board)
    return;
  double middle = y - turn * WORD_ROOM / 2, head = middle - turn * ARROW / 2;
  cairo_move_to (cr, x, middle + turn * ARROW / 2);
  cairo_line_to (cr, x, head);
  cairo_move_to (cr, x - ARROW / 3, head + turn * ARROW / 3);
  cairo_line_to (cr, x, head);
  cairo_line_to (cr, x + ARROW / 3, head + turn * ARROW / 3);
  spelch_colour_set (cr, &palette->ink_soft, 1);
  cairo_set_line_width (cr, 1);
  cairo_stroke (cr);
  spelch_lettering_draw (cr, layout, x + ARROW / 2 + 3, middle - high / 2, &palette->ink_soft);
}

/* What the board lies on, with the groove that an earlier cut left there. */
static void
draw_spoilboard (cairo_t *cr, const SpelchPosed *posed, const Picture *p, double bit_wide,
                 const SpelchPalette *palette)
{
  const SpelchPart *part = posed->part;
  double wide = p->board_mm * p->scale, thick = p->thickness * p->scale, from, to, depth;
  double left = p->left + MARGIN, deep = GROOVE_MM * p->scale;
  bool grooved = part->machine.spoilboard == SPELCH_SPOILBOARD_CUT_HERE_BEFORE;
  if (p->under <= 0)
    return;
  spelch_picture_opening (part, &part->cuts[0], bit_wide, wide + 2 * MARGIN, thick + 2 * MARGIN, &from, &to,
                          &depth);
  from = CLAMP (p->left + from, left, left + wide);
  to = CLAMP (p->left + to, left, left + wide);
  cairo_move_to (cr, left, p->bottom);
  if (grooved)
    {
      cairo_line_to (cr, from, p->bottom);
      cairo_line_to (cr, from, p->bottom + deep);
      cairo_line_to (cr, to, p->bottom + deep);
      cairo_line_to (cr, to, p->bottom);
    }
  cairo_line_to (cr, left + wide, p->bottom);
  cairo_line_to (cr, left + wide, p->bottom + p->under * p->scale);
  cairo_line_to (cr, left, p->bottom + p->under * p->scale);
  cairo_close_path (cr);
  spelch_colour_set (cr, &palette->rest, 1);
  cairo_fill_preserve (cr);
  spelch_colour_set (cr, &palette->ink_soft, 1);
  cairo_set_line_width (cr, 1);
  cairo_stroke (cr);
}

static void
draw_bits (cairo_t *cr, const Picture *p, const SpelchPalette *palette, SpelchLettering *lettering)
{
  double x = p->left + p->board_mm * p->scale + 2 * MARGIN;
  for (guint i = 0; i < p->n; i++)
    {
      double wide = wide_mm (p->bits[i]) * p->scale;
      x += GAP_MM * p->scale + wide / 2;
      spelch_picture_bit (cr, p->bits[i], x, p->below ? p->top : p->bottom, p->scale, STUB_MM, p->below, 0,
                          palette);
      if (p->lettered)
        draw_letter (cr, i, x, p->bottom + 1, palette, lettering);
      x += wide / 2;
    }
}

void
spelch_exercise_picture_draw (cairo_t *cr, const SpelchPosed *posed, double width, double height,
                              SpelchLook look, SpelchLettering *lettering)
{
  if (shows_side_view (posed))
    {
      draw_side_view (cr, posed, width, height, look, lettering);
      return;
    }
  Picture p = lay_out (posed, width, height);
  const SpelchPalette *palette = spelch_palette (look);
  const SpelchPart *part = posed->part;
  double thick = p.thickness * p.scale, bit_wide = p.n > 0 ? spelch_bit_diameter_now (p.bits[0]) : 0;
  double board_top = p.below ? p.top : p.bottom - thick, near = p.below ? board_top + thick : board_top;
  if (p.scale <= 0)
    return;
  draw_spoilboard (cr, posed, &p, bit_wide, palette);
  cairo_save (cr);
  cairo_translate (cr, p.left, board_top - MARGIN);
  spelch_picture_cut (cr, part, &part->cuts[0], bit_wide, p.board_mm * p.scale + 2 * MARGIN,
                      thick + 2 * MARGIN, palette);
  draw_taken_off (cr, posed, &p, bit_wide, palette);
  cairo_restore (cr);
  draw_motor_side (cr, &p, p.below ? height - near : near, near, palette, lettering);
  draw_bits (cr, &p, palette, lettering);
}

/* ---- From above ---- */

/* How an edge of solid wood comes out follows from how the cut lies to its fibres. */
static bool
grain_decides (const SpelchPosed *posed)
{
  const SpelchBoard *board = &posed->part->board;
  const SpelchLayer *layer = &board->layers[0];
  SpelchAsks asks = posed->exercise->asks;
  return (asks == SPELCH_ASKS_TEARS || asks == SPELCH_ASKS_WAY_UP) && board->n_layers == 1
         && layer->material != SPELCH_MATERIAL_MDF && layer->material != SPELCH_MATERIAL_PARTICLEBOARD
         && layer->material != SPELCH_MATERIAL_LAMINATE && layer->grain != SPELCH_GRAIN_END;
}

bool
spelch_exercise_picture_has_above (const SpelchPosed *posed)
{
  const SpelchPart *part = posed->part;
  return (posed->exercise->asks == SPELCH_ASKS_HOLD || grain_decides (posed)) && posed->plan.n_passes > 0
         && spelch_part_find_bit (part, part->cuts[0].bit) >= 0;
}

/* Where the grain is asked about, what holds the board is left out. */
static SpelchFromAbove *
from_above (const SpelchPosed *posed, double width, double height, double size, SpelchLook look,
            const SpelchNumbers *numbers, SpelchLettering *lettering)
{
  g_autoptr (SpelchPart) part = spelch_part_copy (posed->part);
  const SpelchBit *bit = &part->bits[spelch_part_find_bit (part, part->cuts[0].bit)];
  if (posed->exercise->asks != SPELCH_ASKS_HOLD)
    part->holding.method = SPELCH_HOLD_UNTOLD;
  return spelch_from_above_new (part, &part->cuts[0], bit, &posed->plan, (SpelchRect){ 0, 0, width, height },
                                size, numbers, lettering, spelch_palette (look));
}

void
spelch_exercise_picture_draw_above (cairo_t *cr, const SpelchPosed *posed, double width, double height,
                                    double size, SpelchLook look, const SpelchNumbers *numbers,
                                    SpelchLettering *lettering)
{
  g_return_if_fail (spelch_exercise_picture_has_above (posed));
  g_autoptr (SpelchFromAbove) above = from_above (posed, width, height, size, look, numbers, lettering);
  spelch_from_above_draw (above, cr);
}

char *
spelch_exercise_picture_describe_above (const SpelchPosed *posed, const SpelchNumbers *numbers)
{
  g_return_val_if_fail (spelch_exercise_picture_has_above (posed), NULL);
  SpelchLettering *lettering = spelch_lettering_new (NULL, 1);
  SpelchFromAbove *above = from_above (posed, 400, 240, 12, SPELCH_LOOK_PAPER, numbers, lettering);
  char *words = spelch_from_above_describe (above);
  spelch_from_above_free (above);
  spelch_lettering_unref (lettering);
  return words;
}
