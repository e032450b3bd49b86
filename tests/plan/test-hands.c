/* SPDX-License-Identifier: GPL-3.0-or-later
 *
 * What isn't done by hand: bits that lift the work off a table, climb cuts, outlines led by nothing, small
 * pieces; and a cut longer than its piece.
 */
#include "on-demo.h"

#include "files/shop-data.h"
#include "plan/cautions.h"
#include "plan/choose.h"
#include "plan/words.h"

#include <string.h>

static const SpelchNumbers MM = { SPELCH_UNIT_MM, SPELCH_INCH_FRACTION, '.' };

/* Common practice, no source: a down-cut on a router table lifts the work off it, and hands don't hold it. */
static void
test_pushed_off (Demo *demo, gconstpointer unused)
{
  demo_take_machine (demo, "router-table");
  demo_take_cut (demo, "shelf-dado");
  demo->part->holding.method = SPELCH_HOLD_HANDS;
  demo_plan_with (demo, "down-cut-6.35x25");
  g_assert_true (demo_has_stop (demo, SPELCH_STOP_PUSHED_OFF));
  g_assert_cmpint (demo->plan.verdict, ==, SPELCH_VERDICT_DO_NOT_CUT);
  demo_plan_with (demo, "up-cut-6.35x25");
  g_assert_false (demo_has_stop (demo, SPELCH_STOP_PUSHED_OFF));
  demo->part->holding.method = SPELCH_HOLD_CLAMPS;
  demo_plan_with (demo, "down-cut-6.35x25");
  g_assert_false (demo_has_stop (demo, SPELCH_STOP_PUSHED_OFF));
}

/* Common practice, no source: at a router table hands feed the work and nothing holds it down unless that is
 * told. So what is recommended with nothing told is what is recommended for hands, with the question besides,
 * and no bit that lifts the work off is. */
static void
test_untold_at_table (Demo *demo, gconstpointer unused)
{
  const char *const cuts[] = { "shelf-dado", "back-rabbet", "cable-slot" };
  guint n, lifted = 0;
  const SpelchBit *bits = spelch_shop_bits (&n);
  demo_take_machine (demo, "router-table");
  for (guint i = 0; i < G_N_ELEMENTS (cuts); i++)
    {
      demo_take_cut (demo, cuts[i]);
      demo->part->holding.method = SPELCH_HOLD_UNTOLD;
      g_autoptr (GPtrArray) untold
          = spelch_choose_rank (spelch_shop_constants (), demo->part, demo->cut, bits, n);
      demo->part->holding.method = SPELCH_HOLD_HANDS;
      g_autoptr (GPtrArray) hands
          = spelch_choose_rank (spelch_shop_constants (), demo->part, demo->cut, bits, n);
      const SpelchChoice *best = spelch_choose_best (untold);
      g_assert_nonnull (best);
      g_assert_false (best->plan.seats[0].apart);
      g_assert_true (spelch_plan_has_stop (&best->plan, SPELCH_ASK_HOLDING));
      g_assert_cmpint (best->plan.verdict, ==, SPELCH_VERDICT_NOT_CHECKED);
      g_assert_cmpuint (best->bit, ==, spelch_choose_best (hands)->bit);
      g_assert_cmpint (spelch_choose_best (hands)->plan.verdict, !=, SPELCH_VERDICT_DO_NOT_CUT);
      for (guint j = 0; j < untold->len; j++)
        {
          const SpelchChoice *choice = untold->pdata[j];
          bool apart = choice->plan.n_seats > 0 && choice->plan.seats[0].apart;
          lifted += apart;
          g_assert_true (!apart || choice->plan.verdict == SPELCH_VERDICT_DO_NOT_CUT);
        }
    }
  g_assert_cmpuint (lifted, >, 3);
  demo->part->holding.method = SPELCH_HOLD_UNTOLD;
  demo_plan_with (demo, "down-cut-6.35x25");
  for (guint i = 0; i < demo->plan.n_stops; i++)
    if (demo->plan.stops[i].kind == SPELCH_STOP_PUSHED_OFF)
      {
        g_autofree char *words = spelch_words_stop (&demo->plan.stops[i], &MM);
        g_assert_true (g_str_has_prefix (words, "Use featherboards and say so, or an up-cut bit: "));
      }
  demo->part->holding.method = SPELCH_HOLD_CLAMPS;
  demo_plan_with (demo, "down-cut-6.35x25");
  g_assert_false (demo_has_stop (demo, SPELCH_STOP_PUSHED_OFF));
}

/* Common practice, no source: a piece shorter than about 300 mm or narrower than about 100 isn't fed past the
 * bit of a router table with bare hands, nor held so under a router; a sled or clamps hold it. A size that
 * isn't told stops nothing. */
static void
test_small_piece (Demo *demo, gconstpointer unused)
{
  const struct
  {
    const char *machine;
    double length, width;
    SpelchHold hold;
    bool stops, asks;
    const char *says;
  } rows[] = {
    { "router-table", 80, 50, SPELCH_HOLD_HANDS, true, false,
      ": 80 mm by 50 mm is too small to be fed past" },
    { "router-table", 80, 50, SPELCH_HOLD_UNTOLD, true, false, ": 80 mm by 50 mm is too small to be fed" },
    { "router-table", 80, 50, SPELCH_HOLD_CLAMPS, false, false, NULL },
    { "router-table", 720, 90, SPELCH_HOLD_HANDS, true, false, ": 720 mm by 90 mm is too small" },
    { "router-table", 290, 200, SPELCH_HOLD_HANDS, true, false, ": 290 mm by 200 mm is too small" },
    { "router-table", 200, 400, SPELCH_HOLD_HANDS, false, false, NULL },
    { "router-table", 300, 100, SPELCH_HOLD_HANDS, false, false, NULL },
    { "router-table", 200, 0, SPELCH_HOLD_HANDS, true, false, ": 200 mm long is too small" },
    { "router-table", 0, 60, SPELCH_HOLD_HANDS, true, false, ": 60 mm wide is too small" },
    { "router-table", 0, 0, SPELCH_HOLD_HANDS, false, false, NULL },
    { "plunge-router", 80, 50, SPELCH_HOLD_HANDS, true, false, ": 80 mm by 50 mm is too small to be held" },
    { "plunge-router", 80, 50, SPELCH_HOLD_UNTOLD, false, true, "Say how the piece is clamped: 80 mm by 50" },
    { "plunge-router", 80, 50, SPELCH_HOLD_SCREWS, false, false, NULL },
    { "medium-gantry", 80, 50, SPELCH_HOLD_CLAMPS, false, false, NULL },
  };
  demo_take_cut (demo, "back-rabbet");
  demo->cut->length = spelch_length_mm (40);
  for (guint i = 0; i < G_N_ELEMENTS (rows); i++)
    {
      demo_take_machine (demo, rows[i].machine);
      demo->part->length = spelch_length_mm (rows[i].length);
      demo->part->width = spelch_length_mm (rows[i].width);
      demo->part->holding.method = rows[i].hold;
      demo_plan_with (demo, "up-cut-6.35x25");
      g_assert_true (demo_has_stop (demo, SPELCH_STOP_SMALL) == rows[i].stops);
      g_assert_true (demo_has_stop (demo, SPELCH_ASK_SMALL) == rows[i].asks);
      g_assert_true (!rows[i].stops || demo->plan.verdict == SPELCH_VERDICT_DO_NOT_CUT);
      for (guint j = 0; j < demo->plan.n_stops; j++)
        {
          SpelchStopKind kind = demo->plan.stops[j].kind;
          g_autofree char *words = spelch_words_stop (&demo->plan.stops[j], &MM);
          if (kind == SPELCH_STOP_SMALL || kind == SPELCH_ASK_SMALL)
            g_assert_nonnull (strstr (words, rows[i].says));
        }
    }
}

/* Geometry: across a piece of 80 by 50 no straight cut is longer than 50, nor along it than 80, nor at 45
 * degrees than 50 times the root of 2. What isn't told bounds nothing, and a way all round isn't straight. */
static void
test_longer_than_piece (Demo *demo, gconstpointer unused)
{
  const struct
  {
    double path_deg, cut, most;
    bool asks;
  } rows[] = { { 90, 180, 50, true }, { 90, 50, 50, false },     { 0, 80, 80, false },    { 0, 81, 80, true },
               { 180, 81, 80, true }, { 45, 70, 70.711, false }, { 45, 72, 70.711, true } };
  demo_take_cut (demo, "back-rabbet");
  demo->part->length = spelch_length_mm (80);
  demo->part->width = spelch_length_mm (50);
  for (guint i = 0; i < G_N_ELEMENTS (rows); i++)
    {
      demo->cut->path_deg = rows[i].path_deg;
      demo->cut->length = spelch_length_mm (rows[i].cut);
      demo_plan_with (demo, "up-cut-6.35x25");
      g_assert_true (demo_has_stop (demo, SPELCH_ASK_LENGTH) == rows[i].asks);
      for (guint j = 0; j < demo->plan.n_stops; j++)
        if (demo->plan.stops[j].kind == SPELCH_ASK_LENGTH)
          g_assert_cmpfloat_with_epsilon (demo->plan.stops[j].limit, rows[i].most, 0.001);
    }
  demo->part->width = spelch_length_mm (0);
  demo->cut->path_deg = 90;
  demo->cut->length = spelch_length_mm (180);
  demo_plan_with (demo, "up-cut-6.35x25");
  g_assert_false (demo_has_stop (demo, SPELCH_ASK_LENGTH));
  demo->part->width = spelch_length_mm (50);
  demo_plan_with (demo, "up-cut-6.35x25");
  g_assert_true (demo_has_stop (demo, SPELCH_ASK_LENGTH));
  demo->cut->every_direction = true;
  demo_plan_with (demo, "up-cut-6.35x25");
  g_assert_false (demo_has_stop (demo, SPELCH_ASK_LENGTH));
}

/* Common practice, no source: by hand the bit is fed against its rotation; a full slot has a wall of each. */
static void
test_climb (Demo *demo, gconstpointer unused)
{
  const struct
  {
    const char *machine, *cut;
    SpelchWall kept;
    bool stops;
  } rows[] = { { "plunge-router", "back-rabbet", SPELCH_WALL_RIGHT, true },
               { "router-table", "back-rabbet", SPELCH_WALL_RIGHT, true },
               { "medium-gantry", "back-rabbet", SPELCH_WALL_RIGHT, false },
               { "plunge-router", "back-rabbet", SPELCH_WALL_LEFT, false },
               { "plunge-router", "outline", SPELCH_WALL_RIGHT, false } };
  for (guint i = 0; i < G_N_ELEMENTS (rows); i++)
    {
      demo_take_machine (demo, rows[i].machine);
      demo_take_cut (demo, rows[i].cut);
      demo->cut->kept = rows[i].kept;
      demo_plan_with (demo, "up-cut-6.35x25");
      g_assert_true (demo_has_stop (demo, SPELCH_STOP_CLIMB) == rows[i].stops);
    }
  /* widening the slot at its right wall is a climb cut */
  demo->cut->width = spelch_length_mm (9);
  demo_plan_with (demo, "up-cut-6.35x25");
  g_assert_true (demo_has_stop (demo, SPELCH_STOP_CLIMB));
  demo->cut->kept = SPELCH_WALL_LEFT;
  demo_plan_with (demo, "up-cut-6.35x25");
  g_assert_false (demo_has_stop (demo, SPELCH_STOP_CLIMB));
  demo->cut->kept = SPELCH_WALL_RIGHT;
  demo->cut->width = spelch_length_mm (0);
  /* taking the allowance off the right wall of the slot is a climb cut again */
  demo->cut->held.allowance_held = true;
  demo->cut->held.allowance = spelch_length_mm (0.5);
  demo_plan_with (demo, "up-cut-6.35x25");
  g_assert_true (demo_has_stop (demo, SPELCH_STOP_CLIMB));
}

/* Common practice, no source: on a router table the work is led, by a fence, a pin or a pattern, and a piece
 * that is cut out whole is led by none of them. Trimming the edge of one that was sawn out is. */
static void
test_freehand (Demo *demo, gconstpointer unused)
{
  const struct
  {
    const char *machine, *cut;
    SpelchCutKind kind;
    bool stops;
  } rows[] = { { "router-table", "outline", SPELCH_CUT_OUTLINE, true },
               { "medium-gantry", "outline", SPELCH_CUT_OUTLINE, false },
               { "plunge-router", "outline", SPELCH_CUT_OUTLINE, false },
               { "router-table", "outline", SPELCH_CUT_TRIM, false },
               { "router-table", "back-rabbet", SPELCH_CUT_RABBET, false },
               { "router-table", "shelf-dado", SPELCH_CUT_DADO, false } };
  for (guint i = 0; i < G_N_ELEMENTS (rows); i++)
    {
      demo_take_machine (demo, rows[i].machine);
      demo_take_cut (demo, rows[i].cut);
      demo->cut->kind = rows[i].kind;
      demo->cut->width = spelch_length_mm (rows[i].kind == SPELCH_CUT_TRIM ? 2 : demo->cut->width.mm);
      demo->cut->kept = rows[i].kind == SPELCH_CUT_TRIM ? SPELCH_WALL_LEFT : demo->cut->kept;
      demo->cut->tabs.count = 0;
      demo_plan_with (demo, "up-cut-6.35x25");
      g_assert_true (demo_has_stop (demo, SPELCH_STOP_FREEHAND) == rows[i].stops);
      if (rows[i].stops)
        g_assert_cmpint (demo->plan.stops[0].kind, ==, SPELCH_STOP_FREEHAND);
      if (rows[i].stops)
        g_assert_cmpint (demo->plan.verdict, ==, SPELCH_VERDICT_DO_NOT_CUT);
    }
}

/* Common practice, no source: who cuts right through with a held router lays a scrap board under the line or
 * leaves a gap, and looks that nothing else is there. How far the bit comes out is the overcut, d - T. */
static void
test_below (Demo *demo, gconstpointer unused)
{
  const struct
  {
    const char *machine, *cut;
    double backer;
    const char *says; /* NULL: nothing about it */
  } rows[] = {
    { "plunge-router", "outline", 0,
      "Lay a scrap board under the line, or leave a gap beneath it, and see that "
      "nothing else lies there: the bit comes out 0.7 mm below the board." },
    { "plunge-router", "outline", 9,
      "See that nothing but the backer lies under the line: the bit runs 0.7 mm "
      "below the board." },
    { "plunge-router", "shelf-dado", 0, NULL },
    { "medium-gantry", "outline", 0, NULL },
    { "router-table", "outline", 0, NULL },
  };
  for (guint i = 0; i < G_N_ELEMENTS (rows); i++)
    {
      demo_take_machine (demo, rows[i].machine);
      demo_take_cut (demo, rows[i].cut);
      demo->cut->backer = spelch_length_mm (rows[i].backer);
      demo->cut->held.overcut_held = true;
      demo->cut->held.overcut = spelch_length_mm (0.7);
      demo_plan_with (demo, "up-cut-6.35x25");
      g_auto (GStrv) steps = spelch_words_setting_out (&demo->plan, demo->part, demo->cut, &MM);
      g_auto (GStrv) beware = spelch_caution_plan (spelch_shop_constants (), demo->part, &demo->plan);
      g_autofree char *all = g_strjoinv (" ", steps);
      g_autofree char *cautions = g_strjoinv (" ", beware);
      g_assert_true (rows[i].says == NULL || strstr (all, rows[i].says) != NULL);
      g_assert_true ((strstr (all, "under the line") != NULL) == (rows[i].says != NULL));
      g_assert_true ((strstr (cautions, "The bit comes out below the board") != NULL)
                     == (rows[i].says != NULL));
    }
}

#define ADD(name, function) g_test_add ("/hands/" name, Demo, NULL, demo_set_up, function, demo_tear_down)

int
main (int argc, char **argv)
{
  g_test_init (&argc, &argv, NULL);
  ADD ("pushed-off", test_pushed_off);
  ADD ("untold-at-table", test_untold_at_table);
  ADD ("small-piece", test_small_piece);
  ADD ("longer-than-piece", test_longer_than_piece);
  ADD ("climb", test_climb);
  ADD ("freehand", test_freehand);
  ADD ("below", test_below);
  return g_test_run ();
}
