/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "drawing/poster.h"

#include "drawing/scene.h"
#include "plan/choose.h"

#include <glib/gi18n-lib.h>
#include <math.h>
#include <string.h>

#define MARGIN       64.0
#define GAP          30.0
#define TITLE_SIZE   54.0
#define LEAD_SIZE    24.0
#define NAME_SIZE    25.0
#define WORDS_SIZE   19.5
#define SMALL_SIZE   16.0
#define PICTURE_TOP  240.0
#define PICTURE      380.0
#define PICTURE_TEXT 0.9  /* sizes in the pictures, against the screen's */
#define FOOT         96.0 /* of two lines, above the paper's lower edge */
#define FOOT_LEAST   46.0 /* below the foot */
#define FIT_LEAST    0.7  /* of the size of words that are too long otherwise */
#define FIT_STEP     0.03
#define SHORT_TIP    0.75 /* of its diameter at most is a short tip's up-shear */

typedef struct
{
  cairo_t *cr;
  const SpelchPoster *poster;
  SpelchLettering *lettering;
  const SpelchPalette *palette;
  double fit;    /* sizes of the words under the pictures, against the usual ones */
  bool measures; /* nothing is drawn */
} Wall;

/* ---- Which bits ---- */

static bool
is_short_tip (const SpelchBit *bit)
{
  return bit->kind == SPELCH_BIT_COMPRESSION && bit->up_shear.mm < SHORT_TIP * bit->diameter.mm;
}

static bool
stands_for (const SpelchBit *bit, guint place)
{
  if (place == SPELCH_POSTER_BITS - 1)
    return is_short_tip (bit);
  return bit->kind == (SpelchBitKind)place && !is_short_tip (bit);
}

bool
spelch_poster_choose (SpelchPoster *poster, const SpelchBit *bits, guint n)
{
  double wanted = 0; /* as wide as the compression bit, which comes in fewest sizes */
  for (guint i = 0; i < n && wanted <= 0; i++)
    if (stands_for (&bits[i], SPELCH_BIT_COMPRESSION))
      wanted = bits[i].diameter.mm;
  for (guint place = 0; place < SPELCH_POSTER_BITS; place++)
    {
      const SpelchBit **best = &poster->bits[place];
      *best = NULL;
      for (guint i = 0; i < n; i++)
        if (stands_for (&bits[i], place)
            && (*best == NULL || fabs (bits[i].diameter.mm - wanted) < fabs ((*best)->diameter.mm - wanted)))
          *best = &bits[i];
      if (*best == NULL)
        return false;
    }
  return true;
}

/* ---- Words ---- */

static const char *
name_of (guint place)
{
  const char *const names[]
      = { _ ("Straight"), _ ("Up-cut"), _ ("Down-cut"), _ ("Compression"), _ ("Compression, short tip") };
  SPELCH_TABLE_HAS (names, SPELCH_POSTER_BITS);
  return names[place];
}

/* When it is taken; common practice, no source. */
static const char *
use_of (guint place)
{
  const char *const uses[] = {
    _ ("In MDF and particleboard, and where an edge is trimmed or hidden afterwards. It neither lifts the "
       "board nor "
       "presses it down."),
    _ ("For mortises and deep grooves in solid wood: it carries the chips out and runs coolest. It lifts the "
       "board: hold it "
       "well."),
    _ ("For dadoes and rabbets in plywood and veneered boards. It presses the board down, and the chips into "
       "the kerf: "
       "take less depth."),
    _ ("For cutting plywood, veneered and melamine-faced boards right through. The first pass must go deeper "
       "than its "
       "up-shear and the face ply, at once."),
    _ ("For dadoes and thin boards: so little up-shear is past the face in a shallow first pass already."),
  };
  SPELCH_TABLE_HAS (uses, SPELCH_POSTER_BITS);
  return uses[place];
}

static double
say (Wall *wall, const char *words, double size, SpelchLetters letters, double x, double y, double width,
     const SpelchColour *colour)
{
  g_autoptr (PangoLayout) layout
      = spelch_lettering_set (wall->lettering, words, size, letters, width, PANGO_ALIGN_LEFT);
  double wide, high;
  spelch_lettering_measure (layout, &wide, &high);
  if (!wall->measures)
    spelch_lettering_draw (wall->cr, layout, x, y, colour);
  return y + high;
}

/* "Motor side: clean", and why; gives where it ends. */
static double
say_side (Wall *wall, const SpelchPlan *plan, SpelchSide side, double x, double y, double width)
{
  const SpelchPoster *poster = wall->poster;
  const SpelchEdge *edge = spelch_plan_worst (plan, side);
  if (edge == NULL)
    return y;
  const char *grade = spelch_words_grade (edge->grade, spelch_plan_facing (plan, side));
  const char *format = side == SPELCH_SIDE_MOTOR ? _ ("Motor side: %s") : _ ("Far side: %s");
  g_autofree char *head = g_strdup_printf (format, grade);
  g_autofree char *why = spelch_words_edge_reason (plan, side, &poster->numbers);
  y = say (wall, head, wall->fit * WORDS_SIZE, SPELCH_LETTERS_STRONG, x, y, width, &wall->palette->ink);
  return say (wall, why, wall->fit * SMALL_SIZE, SPELCH_LETTERS_PLAIN, x, y + 2, width,
              &wall->palette->ink_soft)
         + 14;
}

/* ---- Columns ---- */

static double
column_width (void)
{
  return (SPELCH_POSTER_WIDTH - 2 * MARGIN - (SPELCH_POSTER_BITS - 1) * GAP) / SPELCH_POSTER_BITS;
}

static SpelchScene *
scene_of (const SpelchPoster *poster, const SpelchCut *cut, guint place, const SpelchPlan *plan, double scale)
{
  SpelchView view = { .width = column_width (),
                      .height = PICTURE,
                      .text = PICTURE_TEXT,
                      .look = SPELCH_LOOK_PAPER,
                      .numbers = poster->numbers,
                      .family = poster->family,
                      .shown_pass = 1,
                      .without_words = true,
                      .scale_most = scale };
  return spelch_scene_new (poster->part, cut, poster->bits[place], plan, &view);
}

static void
draw_picture (Wall *wall, const SpelchScene *scene, double x, double level)
{
  cairo_save (wall->cr);
  cairo_translate (wall->cr, x, level - spelch_scene_y (scene, 0));
  for (int layer = SPELCH_LAYER_KERF - 1; layer < SPELCH_LAYER_WORDS; layer++)
    spelch_scene_draw_layer (scene, (SpelchSceneLayer)layer, wall->cr);
  cairo_restore (wall->cr);
}

/* Why and when, under the pictures; gives where they end. */
static double
say_columns (Wall *wall, const SpelchPlan *plans, double top)
{
  double wide = column_width (), uses = 0, end = 0;
  for (guint i = 0; i < SPELCH_POSTER_BITS; i++)
    {
      double x = MARGIN + i * (wide + GAP), y = say_side (wall, &plans[i], SPELCH_SIDE_MOTOR, x, top, wide);
      uses = fmax (uses, say_side (wall, &plans[i], SPELCH_SIDE_FAR, x, y, wide) + 8);
    }
  for (guint i = 0; i < SPELCH_POSTER_BITS; i++)
    end = fmax (end, say (wall, use_of (i), wall->fit * WORDS_SIZE, SPELCH_LETTERS_PLAIN,
                          MARGIN + i * (wide + GAP), uses, wide, &wall->palette->ink));
  return end;
}

/* Words that are longer in another language are set smaller, so that they end above the foot. */
static void
fit_columns (Wall *wall, const SpelchPlan *plans, double top, double bottom)
{
  wall->measures = true;
  while (wall->fit > FIT_LEAST && say_columns (wall, plans, top) > bottom)
    wall->fit -= FIT_STEP;
  wall->measures = false;
}

static void
draw_columns (Wall *wall, double top, double bottom)
{
  const SpelchPoster *poster = wall->poster;
  SpelchCut cuts[SPELCH_POSTER_BITS];
  SpelchPlan plans[SPELCH_POSTER_BITS];
  double scale = HUGE_VAL, level = 0, wide = column_width (), words = PICTURE_TOP + PICTURE + 20;
  for (guint i = 0; i < SPELCH_POSTER_BITS; i++)
    {
      cuts[i] = spelch_choose_cut (poster->cut, poster->bits[i], poster->cut->way_up);
      spelch_plan_make (poster->constants, poster->part, &cuts[i], poster->bits[i], &plans[i]);
      g_autoptr (SpelchScene) scene = scene_of (poster, &cuts[i], i, &plans[i], 0);
      scale = fmin (scale, spelch_scene_scale (scene));
    }
  g_autoptr (GPtrArray) scenes = g_ptr_array_new_with_free_func ((GDestroyNotify)spelch_scene_free);
  for (guint i = 0; i < SPELCH_POSTER_BITS; i++)
    {
      SpelchScene *scene = scene_of (poster, &cuts[i], i, &plans[i], scale);
      level = fmax (level, spelch_scene_y (scene, 0));
      g_ptr_array_add (scenes, scene);
    }
  for (guint i = 0; i < SPELCH_POSTER_BITS; i++)
    draw_picture (wall, g_ptr_array_index (scenes, i), MARGIN + i * (wide + GAP), PICTURE_TOP + level);
  /* After the pictures, whose ground a name of two lines stands on. */
  for (guint i = 0; i < SPELCH_POSTER_BITS; i++)
    say (wall, name_of (i), NAME_SIZE, SPELCH_LETTERS_STRONG, MARGIN + i * (wide + GAP),
         fmax (PICTURE_TOP - 44, top + 16), wide, &wall->palette->ink);
  fit_columns (wall, plans, words, bottom);
  say_columns (wall, plans, words);
}

static void
draw_line (Wall *wall, double y)
{
  spelch_colour_set (wall->cr, &wall->palette->line_soft, 1);
  cairo_set_line_width (wall->cr, 1.5);
  cairo_move_to (wall->cr, MARGIN, y);
  cairo_line_to (wall->cr, SPELCH_POSTER_WIDTH - MARGIN, y);
  cairo_stroke (wall->cr);
}

static double
say_foot (Wall *wall, double y, double wide)
{
  return say (wall,
              _ ("Chevrons show which way the flutes push: up-shear toward the motor, down-shear away from "
                 "it. A flute tears the face "
                 "whose fibres it pushes out of the board, where nothing backs them. Splinters show the "
                 "grade, not a length. Try it "
                 "on a strip of the same board. Eyes, ears and lungs; plug out while changing bits; local "
                 "rules and trained people "
                 "come first."),
              SMALL_SIZE, SPELCH_LETTERS_PLAIN, MARGIN, y, wide, &wall->palette->ink_soft);
}

static double
foot_top (Wall *wall, double wide)
{
  wall->measures = true;
  double high = say_foot (wall, 0, wide);
  wall->measures = false;
  return SPELCH_POSTER_HEIGHT - fmax (FOOT, FOOT_LEAST + high);
}

void
spelch_poster_draw (cairo_t *cr, const SpelchPoster *poster)
{
  Wall wall = { cr, poster, spelch_lettering_new (poster->family, 1), spelch_palette (SPELCH_LOOK_PAPER),
                1,  false };
  double wide = SPELCH_POSTER_WIDTH - 2 * MARGIN;
  g_autofree char *setting = spelch_words_setting (poster->part, &poster->numbers);
  /* Translators: the board, and what is cut from it. */
  g_autofree char *lead
      = g_strdup_printf (_ ("%s Each bit in its first pass, as recommended for it."), setting);
  spelch_colour_set (cr, &wall.palette->ground, 1);
  cairo_paint (cr);
  say (&wall, _ ("Five kinds of bit, and what they do to both faces"), TITLE_SIZE, SPELCH_LETTERS_STRONG,
       MARGIN, MARGIN, wide, &wall.palette->ink);
  double top = say (&wall, lead, LEAD_SIZE, SPELCH_LETTERS_PLAIN, MARGIN, MARGIN + 78, wide,
                    &wall.palette->ink_soft);
  double foot = foot_top (&wall, wide);
  draw_columns (&wall, top, foot - 26);
  draw_line (&wall, foot - 12);
  say_foot (&wall, foot, wide);
  spelch_lettering_unref (wall.lettering);
}
