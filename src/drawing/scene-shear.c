/* SPDX-License-Identifier: GPL-3.0-or-later
 *
 * The shear layer: where the shear turns over, chevrons that point the way it pushes, and the words beside
 * them.
 */
#include "drawing/scene-private.h"

#include <glib/gi18n-lib.h>
#include <math.h>
#include <string.h>

#define CHEVRON_HALF      6.0
#define CHEVRON_RISE      5.0
#define CHEVRON_LINE      2.0
#define CHEVRON_PITCH     15.2
#define COLUMN_HALF       11.0
#define COLUMN_ROUND      6.0
#define WORD_SIZE         12.0
#define WORD_PAD          4.0
#define GROUND_OPACITY    0.92
#define DOTTED_PAST       44.0 /* how far the turn-over line runs past the bit */
#define DOTTED_PAST_PAPER 16.0
#define LEAST_PAPER       58.0
#define FACE_CLEAR        2.0 /* between the line of a face and the ground of the chevrons */

static double
y_of_height (const SpelchScene *scene, double s)
{
  return scene->tip_y - scene->frame.turn * s * scene->frame.scale;
}

/* Zones as far as they're drawn. */
static int
drawn_zones (const SpelchScene *scene, SpelchZone zones[3])
{
  int n = spelch_bit_zones (&scene->plan.flutes, zones);

  while (n > 0 && zones[n - 1].from >= scene->frame.flute_mm)
    n--;
  if (n > 0)
    zones[n - 1].to = MIN (zones[n - 1].to, scene->frame.flute_mm);
  return n;
}

bool
spelch_scene_is_straight (const SpelchScene *scene)
{
  return spelch_flute_hand_at (&scene->plan.flutes, scene->plan.flutes.length / 2) == SPELCH_SHEAR_NEUTRAL;
}

static bool
has_turn_over (const SpelchScene *scene)
{
  const SpelchFlutes *flutes = &scene->plan.flutes;

  return !spelch_scene_is_straight (scene) && flutes->turn_over > 0
         && flutes->turn_over < MIN (flutes->length, scene->frame.flute_mm);
}

static double
dotted_past (const SpelchScene *scene)
{
  return scene->view.on_paper ? DOTTED_PAST_PAPER : DOTTED_PAST;
}

static void
turn_over_line (const SpelchScene *scene, double *x0, double *x1, double *y)
{
  double half = scene->plan.flutes.diameter / 2 * scene->frame.scale;

  *x0 = scene->chevron_x - COLUMN_HALF - 9;
  *x1 = scene->axis_x + half + dotted_past (scene);
  *y = y_of_height (scene, scene->plan.flutes.turn_over);
}

/* ---- Laying out ---- */

#define REACH_MORE   60.0 /* that words are moved on, times the text size, where there is no room nearer */
#define INSIDE_LEAST 70.0 /* width of words that end with the board, times the text size */

/* Left of the chevrons, or right of the bit: where words may stand, and how wide they may be. */
typedef struct
{
  double x; /* their edge that is nearer to the bit */
  double room;
  bool at_left;
} Side;

static Side
side_of (const SpelchScene *scene, bool at_left)
{
  double half = scene->plan.flutes.diameter / 2 * scene->frame.scale;
  double least = spelch_scene_narrowness (scene) > 0 ? 0 : 80 * scene->view.text;
  double left = scene->chevron_x - COLUMN_HALF - 3, right = scene->axis_x + half + dotted_past (scene) + 2;

  if (at_left)
    return (Side){ left, MAX (left - scene->frame.left - 2 * WORD_PAD, least), true };
  /* The dimension of the thickness stands right of the board. */
  if (scene->view.on_paper)
    return (Side){ right, MAX (scene->frame.right - right - 2 * WORD_PAD - 2, LEAST_PAPER), false };
  return (Side){ right, MAX (scene->view.width - right - 2 * WORD_PAD - 4, least), false };
}

/* Words that would stand one under another are left out rather. */
static int
most_lines (const char *text)
{
  return strchr (text, '\n') != NULL ? 3 : 2;
}

/* Heights in the picture: where words would best have their middle, how far up and down they may stand, and
 * from where to where what they tell of is drawn. */
typedef struct
{
  double middle, high, low, own_high, own_low;
} Reach;

/* Sets words on a side and slides them to the free place nearest to the middle. Left of the bit are the
 * chevrons: words about some of them keep their middle beside these, since they would seem to tell of the
 * others. */
static bool
try_side (SpelchScene *scene, SpelchLabelId id, const char *text, SpelchLetters letters,
          const SpelchColour *colour, Side side, Reach reach)
{
  SpelchLabel *label
      = spelch_scene_label (scene, id, SPELCH_LAYER_SHEAR, g_strdup (text), WORD_SIZE, letters, side.room,
                            side.at_left ? PANGO_ALIGN_RIGHT : PANGO_ALIGN_LEFT, colour);
  SpelchRect outer;

  label->pad = WORD_PAD;
  outer = spelch_label_outer (label);
  if (!scene->view.on_paper
      && (!spelch_label_in_lines (label->layout, most_lines (text))
          || outer.width > side.room + 3 * WORD_PAD))
    return false;
  outer.x = side.at_left ? side.x - outer.width : side.x;
  outer.y = reach.middle - outer.height / 2;
  double high = reach.high, low = reach.low;
  if (side.at_left && !scene->view.on_paper)
    {
      high = MAX (high, reach.own_high - outer.height / 2);
      low = MIN (low, reach.own_low + outer.height / 2);
    }
  if (!spelch_placer_slide (&scene->placer, &outer, high, low - outer.height))
    return false;
  label->box.x = outer.x + WORD_PAD;
  label->box.y = outer.y + WORD_PAD;
  return true;
}

/* In a narrow picture words about the bit stay off what the board lies on. */
static void
keep_off_rest (const SpelchScene *scene, double *top, double *bottom)
{
  const SpelchFrame *f = &scene->frame;
  if (spelch_scene_narrowness (scene) <= 0)
    return;
  if (f->turn > 0)
    *bottom = MIN (*bottom, f->far_y);
  else
    *top = MAX (*top, f->far_y);
}

/* Right of the bit in lines that end with the board rather than across its end, where they can. */
static bool
try_inside (SpelchScene *scene, SpelchLabelId id, const char *text, SpelchLetters letters,
            const SpelchColour *colour, Side side, Reach reach)
{
  double room = scene->frame.board_right - side.x - 2 * WORD_PAD - 2;
  if (side.at_left || scene->view.on_paper || room >= side.room || room < INSIDE_LEAST * scene->view.text)
    return false;
  side.room = room;
  return try_side (scene, id, text, letters, colour, side, reach);
}

static void
place_words (SpelchScene *scene, SpelchLabelId id, const char *text, SpelchLetters letters,
             const SpelchColour *colour, bool left_first, Reach reach)
{
  for (int i = 0; i < 4; i++)
    {
      double more = i < 2 ? 0 : REACH_MORE * scene->view.text;
      Reach tried = reach;
      tried.high -= more;
      tried.low += more;
      keep_off_rest (scene, &tried.high, &tried.low);
      Side side = side_of (scene, left_first == (i % 2 == 0));
      if (try_inside (scene, id, text, letters, colour, side, tried)
          || try_side (scene, id, text, letters, colour, side, tried))
        return;
    }
  spelch_scene_drop_label (scene, id);
}

/* That of a compression bit lifts the near face's fibres out, or draws the far one's in, by where it stands.
 */
static const char *
up_words (const SpelchScene *scene)
{
  bool both = scene->plan.bit_kind == SPELCH_BIT_COMPRESSION;
  return both ? _ ("toward the motor") : _ ("lifts fibres out");
}

/* Words beside the middle of a zone. */
static void
lay_out_zone (SpelchScene *scene, SpelchLabelId id, SpelchZone zone)
{
  const SpelchPalette *p = scene->palette;
  double y0 = y_of_height (scene, zone.from), y1 = y_of_height (scene, zone.to),
         slack = 30 * scene->view.text;
  bool up = zone.hand == SPELCH_SHEAR_UP, neutral = zone.hand == SPELCH_SHEAR_NEUTRAL;
  g_autofree char *text = neutral ? g_strdup (_ ("no shear"))
                          : up    ? g_strdup_printf ("%s\n%s", _ ("up-shear"), up_words (scene))
                                  : g_strdup_printf ("%s\n%s", _ ("down-shear"), _ ("presses fibres in"));

  place_words (
      scene, id, text, neutral ? SPELCH_LETTERS_PLAIN : SPELCH_LETTERS_TITLE,
      neutral ? &p->ink_soft
      : up    ? &p->up_ink
              : &p->down_ink,
      true, (Reach){ (y0 + y1) / 2, MIN (y0, y1) - slack, MAX (y0, y1) + slack, MIN (y0, y1), MAX (y0, y1) });
}

/* Of a height that is drawn as a line: anywhere near it. */
static Reach
within (double y, double reach)
{
  return (Reach){ y, y - reach, y + reach, y - reach, y + reach };
}

static void
lay_out_turn_over (SpelchScene *scene)
{
  g_autofree char *length = spelch_scene_length (scene, scene->plan.flutes.turn_over);
  g_autofree char *height = spelch_label_unbroken (length);
  /* Translators: %s is a length, the height above the tip at which a compression bit's shear changes
   * direction. */
  g_autofree char *text = g_strdup_printf (_ ("shear turns over %s up"), height);
  double y = y_of_height (scene, scene->plan.flutes.turn_over), reach = 90 * scene->view.text;

  place_words (scene, SPELCH_LABEL_TURN_OVER, text, SPELCH_LETTERS_PLAIN, &scene->palette->ink, false,
               within (y, reach));
}

/* Tabs stand elsewhere along the path; only the last pass leaves them. */
static void
lay_out_tabs (SpelchScene *scene)
{
  const SpelchTabs *tabs = &scene->cut.tabs;
  double top = spelch_scene_y (scene, scene->plan.thickness - tabs->thickness.mm),
         reach = 90 * scene->view.text;
  g_autofree char *thickness = spelch_scene_length (scene, tabs->thickness.mm);
  /* Translators: number and thickness of the tabs that hold a part in its sheet. */
  g_autofree char *text
      = g_strdup_printf (g_dngettext (GETTEXT_PACKAGE, "%u tab, %s thick", "%u tabs, %s thick", tabs->count),
                         tabs->count, thickness);

  if (spelch_scene_shows_tabs (scene))
    place_words (scene, SPELCH_LABEL_TABS, text, SPELCH_LETTERS_PLAIN, &scene->palette->ink, false,
                 within (top, reach));
}

/* Words about both zones that found room only one the wrong way over the other would say the contrary: those
 * of the zone farther from the tip go. */
static void
drop_upside_down (SpelchScene *scene, int words)
{
  const SpelchLabel *lower = &scene->labels[SPELCH_LABEL_LOWER_SHEAR],
                    *upper = &scene->labels[SPELCH_LABEL_UPPER_SHEAR];
  if (words == 2 && lower->layout != NULL && upper->layout != NULL
      && scene->frame.turn * (upper->box.y - lower->box.y) > 0)
    spelch_scene_drop_label (scene, SPELCH_LABEL_UPPER_SHEAR);
}

void
spelch_scene_lay_out_shear (SpelchScene *scene)
{
  static const SpelchLabelId IDS[] = { SPELCH_LABEL_LOWER_SHEAR, SPELCH_LABEL_UPPER_SHEAR };
  SpelchZone zones[3];
  int n = drawn_zones (scene, zones), words = 0;
  double y0 = y_of_height (scene, 0), y1 = y_of_height (scene, n > 0 ? zones[n - 1].to : 0);

  scene->chevrons
      = (SpelchRect){ scene->chevron_x - COLUMN_HALF, MIN (y0, y1), 2 * COLUMN_HALF, fabs (y1 - y0) };
  if (spelch_scene_is_straight (scene))
    scene->chevrons = (SpelchRect){ 0, 0, 0, 0 };
  spelch_placer_take (&scene->placer, scene->chevrons);
  spelch_scene_take_faces (scene);
  if (!scene->view.on_paper)
    spelch_placer_take (&scene->placer, spelch_scene_shortening (scene));
  for (int i = 0; i < n; i++)
    if (zones[i].hand != SPELCH_SHEAR_OVERLAP && words < 2)
      lay_out_zone (scene, IDS[words++], zones[i]);
  drop_upside_down (scene, words);
  if (has_turn_over (scene))
    lay_out_turn_over (scene);
  lay_out_tabs (scene);
}

/* ---- Drawing ---- */

static void
add_chevron (cairo_t *cr, double x, double y, double points)
{
  cairo_move_to (cr, x - CHEVRON_HALF, y + points * CHEVRON_RISE / 2);
  cairo_line_to (cr, x, y - points * CHEVRON_RISE / 2);
  cairo_line_to (cr, x + CHEVRON_HALF, y + points * CHEVRON_RISE / 2);
}

/* Not astride the line of a face, as far as the column goes. */
static double
beside_faces (const SpelchScene *scene, double y)
{
  const double faces[] = { scene->frame.near_y, scene->frame.far_y };
  double least = CHEVRON_RISE / 2 + FACE_CLEAR + CHEVRON_LINE / 2;
  double top = scene->chevrons.y + CHEVRON_RISE / 2 + CHEVRON_LINE / 2;
  double bottom = top + scene->chevrons.height - CHEVRON_RISE - CHEVRON_LINE;
  for (guint i = 0; i < G_N_ELEMENTS (faces) && bottom > top; i++)
    if (fabs (y - faces[i]) < least)
      return CLAMP (faces[i] + (y < faces[i] ? -least : least), MIN (top, y), MAX (bottom, y));
  return y;
}

/* Chevrons of one direction in every zone that has it. @up: toward the motor. */
static void
draw_chevrons (cairo_t *cr, const SpelchScene *scene, const SpelchZone *zones, int n, bool up)
{
  double points = scene->frame.turn * (up ? 1 : -1);

  for (int i = 0; i < n; i++)
    {
      double y0 = y_of_height (scene, zones[i].from), way = y_of_height (scene, zones[i].to) - y0;
      bool overlap = zones[i].hand == SPELCH_SHEAR_OVERLAP;
      int count = overlap ? 1 : (int)floor (fabs (way) / CHEVRON_PITCH);

      if (!overlap && (zones[i].hand == SPELCH_SHEAR_UP) != up)
        continue;
      if (count == 0 && fabs (way) >= 8)
        count = 1;
      for (int c = 0; c < count; c++)
        /* In an overlap both stand tip to tip: a lozenge. */
        add_chevron (cr, scene->chevron_x,
                     beside_faces (scene, y0 + way * (c + 0.5) / count)
                         - (overlap ? points * CHEVRON_RISE * 0.6 : 0),
                     points);
    }
  spelch_colour_set (cr, up ? &scene->palette->up_ink : &scene->palette->down_ink, 1.0);
  cairo_set_line_width (cr, CHEVRON_LINE);
  cairo_set_line_cap (cr, CAIRO_LINE_CAP_ROUND);
  cairo_set_line_join (cr, CAIRO_LINE_JOIN_ROUND);
  cairo_stroke (cr);
}

/* In pieces, so that the lines of the faces stay in sight. */
static void
draw_column (cairo_t *cr, const SpelchScene *scene)
{
  const SpelchFrame *f = &scene->frame;
  double top = scene->chevrons.y, bottom = top + scene->chevrons.height;
  double lines[3] = { MIN (f->near_y, f->far_y), MAX (f->near_y, f->far_y), bottom };
  for (int i = 0; i < 3; i++)
    {
      double end = i < 2 ? MIN (lines[i] - FACE_CLEAR, bottom) : bottom;
      if (end - top > 1)
        {
          SpelchRect piece = { scene->chevrons.x, top, scene->chevrons.width, end - top };
          spelch_add_round (cr, piece, COLUMN_ROUND);
        }
      top = i < 2 ? MAX (top, lines[i] + FACE_CLEAR) : top;
    }
  spelch_colour_set (cr, &scene->palette->label_ground, GROUND_OPACITY);
  cairo_fill (cr);
}

void
spelch_scene_draw_shear (const SpelchScene *scene, cairo_t *cr)
{
  static const double DOTS[] = { 2, 3 };
  SpelchZone zones[3];
  int n = drawn_zones (scene, zones);

  cairo_save (cr);
  draw_column (cr, scene);
  if (!spelch_scene_is_straight (scene))
    {
      draw_chevrons (cr, scene, zones, n, true);
      draw_chevrons (cr, scene, zones, n, false);
    }
  if (has_turn_over (scene))
    {
      double x0, x1, y;

      turn_over_line (scene, &x0, &x1, &y);
      cairo_move_to (cr, x0, y);
      cairo_line_to (cr, x1, y);
      spelch_colour_set (cr, &scene->palette->ink, 1.0);
      cairo_set_line_width (cr, scene->view.on_paper ? SPELCH_PAPER_NARROW : 1.0);
      cairo_set_line_cap (cr, CAIRO_LINE_CAP_BUTT);
      cairo_set_dash (cr, DOTS, 2, 0);
      cairo_stroke (cr);
    }
  cairo_restore (cr);
  spelch_scene_draw_labels (scene, SPELCH_LAYER_SHEAR, cr);
}

SpelchRect
spelch_scene_shear_bounds (const SpelchScene *scene)
{
  SpelchRect all = spelch_rect_union (scene->chevrons, spelch_scene_label_bounds (scene, SPELCH_LAYER_SHEAR));

  if (has_turn_over (scene))
    {
      double x0, x1, y;

      turn_over_line (scene, &x0, &x1, &y);
      all = spelch_rect_union (all, (SpelchRect){ x0, y - 1, x1 - x0, 2 });
    }
  return all;
}
