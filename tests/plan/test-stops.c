/* SPDX-License-Identifier: GPL-3.0-or-later
 *
 * What is said against a cut begins with what to change, whatever is wrong, and a wall that burns is said to.
 */
#include "on-demo.h"

#include "files/shop-data.h"
#include "plan/cautions.h"
#include "plan/choose.h"
#include "plan/words-choose.h"

#include <string.h>

static const SpelchNumbers MM = { SPELCH_UNIT_MM, SPELCH_INCH_FRACTION, '.' };

/* ---- Stops ---- */

static const SpelchStop *
stop_of (const Demo *demo, SpelchStopKind kind)
{
  for (guint i = 0; i < demo->plan.n_stops; i++)
    if (demo->plan.stops[i].kind == kind)
      return &demo->plan.stops[i];
  return NULL;
}

static bool
is_advice (const char *sentence)
{
  const char *const verbs[] = { "Turn ", "Take ", "Start ", "Ramp ", "Plunge ", "Let ",
                                "Set ",  "Feed ", "Use ",   "Hold ", "Leave ",  "Saw " };
  for (guint i = 0; i < G_N_ELEMENTS (verbs); i++)
    if (g_str_has_prefix (sentence, verbs[i]))
      return true;
  return false;
}

/* Each kind, with figures that lead to each of its sentences: what to change, a colon, why. */
static void
test_begins_with_advice (void)
{
  const double figures[][3] = { { 0, 0, 0 }, { 1, 1, 1 }, { 1, 2, 0.5 }, { 2.5, 2, 0.5 }, { -0.3, 0.1, 8 } };
  for (int kind = 0; kind < SPELCH_ASK_SPEED_MARK; kind++)
    for (guint i = 0; i < G_N_ELEMENTS (figures); i++)
      {
        SpelchStop stop = { (SpelchStopKind)kind, figures[i][0], figures[i][1], figures[i][2], 0 };
        g_autofree char *sentence = spelch_words_stop (&stop, &MM);
        g_test_message ("%s", sentence);
        g_assert_true (is_advice (sentence));
        g_assert_nonnull (strstr (sentence, ": "));
        g_assert_true (g_str_has_suffix (sentence, "."));
      }
}

static void
test_sentences (void)
{
  const struct
  {
    SpelchStop stop;
    const char *sentence;
  } cases[] = {
    { { SPELCH_STOP_TOO_WIDE, 6.35, 6, 0, 0 },
      "Take a narrower bit: this one is 6.35 mm across, and the cut leaves room for 6 mm." },
    { { SPELCH_STOP_POCKET_ROUND, 80, 121, 60, 0 },
      "Set the length to the way once round the pocket, not to one of its sides: a pocket 60 mm wide is at "
      "least 121 mm round, and its length is set to 80 mm." },
    { { SPELCH_STOP_TOO_SHORT, 18.3, 10, 10, 0 },
      "Let the bit stick out further than the 10 mm set for it: the cut is 18.3 mm deep, and so it reaches "
      "10 mm." },
    { { SPELCH_STOP_TOO_SHORT, 18.3, 12, 0, 0 },
      "Take a longer bit: the cut is 18.3 mm deep, and this one reaches 12 mm." },
    { { SPELCH_STOP_NO_SPEED, 990, 900, 0, 0 },
      "Turn slower: 990 rpm are set, and the spindle turns no faster than 900 rpm." },
    { { SPELCH_STOP_NO_SPEED, 500, 900, 0, 0 },
      "Turn faster: 500 rpm are set, and the spindle turns no slower than 900 rpm." },
    { { SPELCH_STOP_NO_SPEED, 900, 900, 0, 0 },
      "Set another speed, take less depth, or another bit: at the 900 rpm set, no feed satisfies every "
      "limit." },
    { { SPELCH_STOP_NOT_THROUGH, -0.3, 0.1, 0, 0 },
      "Set the last pass deeper: it ends 0.3 mm above the far face, and needs to run 0.1 mm past it." },
    { { SPELCH_STOP_NOT_THROUGH, 0.05, 0.1, 0, 0 },
      "Set the last pass deeper: it runs 0.05 mm past the board, and needs 0.1 mm to cut through." },
    { { SPELCH_STOP_HOLDING, 1.99, 2, 0.7, 0 },
      "Hold the work harder: it is held with only 1.9 times the force against it, and it takes 2 times, and "
      "at "
      "least once with everything at its worst." },
    { { SPELCH_STOP_HOLDING, 2.6, 2, 0.96, 0 },
      "Hold the work harder: with everything at its worst it is held with only 0.9 times the force against "
      "it, "
      "and it takes at least once." },
    { { SPELCH_STOP_HOLDING, 0.04, 2, 0, 0 },
      "Hold the work harder: as it is told, it is hardly held at all against the forces of this cut." },
    { { SPELCH_STOP_HOLDING, 2.6, 2, 0.04, 0 },
      "Hold the work harder: with everything at its worst it is hardly held at all." },
    { { SPELCH_STOP_TABS, 1.15, 8, 14.02, 0 },
      "Leave 8 such tabs, or make these 14.1 mm wide: as they are, they hold only 1.1 times the force "
      "against them, and "
      "it "
      "takes 2 times, and at least once with everything at its worst." },
  };
  for (guint i = 0; i < G_N_ELEMENTS (cases); i++)
    {
      g_autofree char *sentence = spelch_words_stop (&cases[i].stop, &MM);
      g_assert_cmpstr (sentence, ==, cases[i].sentence);
    }
}

/* The stop tells the figures of the plan it is in. */
static void
test_tabs_of_plan (Demo *demo, gconstpointer unused)
{
  demo->part->holding.method = SPELCH_HOLD_CLAMPS;
  demo_plan_with (demo, "up-cut-6.35x25");
  for (guint i = 0; i < demo->plan.n_stops; i++)
    if (demo->plan.stops[i].kind == SPELCH_STOP_TABS)
      {
        g_assert_cmpfloat (demo->plan.stops[i].also, ==, demo->plan.tabs.needs_width_mm);
        g_assert_cmpfloat (demo->plan.stops[i].limit, ==, demo->plan.tabs.needs_count);
      }
  g_assert_true (demo_has_stop (demo, SPELCH_STOP_TABS));
}

/* ---- Width ---- */

/* A pocket 60 mm wide, with sharp corners, goes at least 2 x 60 mm round and a little; a round one of 35 mm
 * 35 pi = 109.96 mm, which may be told as 110. Told less, it isn't the bit that is at fault, whichever it is,
 * and a side isn't a way round. */
static void
test_side_for_way_round (Demo *demo, gconstpointer unused)
{
  const struct
  {
    double width, corners, length;
    const char *says; /* NULL: that is a way round */
  } rows[] = {
    { 60, 0, 80, "a pocket 60 mm wide is at least 121 mm round, and its length is set to 80 mm." },
    { 60, 0, 121, NULL },
    { 60, 0, 280, NULL },
    { 35, 17.5, 35, "a pocket 35 mm wide is at least 110 mm round, and its length is set to 35 mm." },
    { 35, 17.5, 110, NULL },
  };
  demo_take_cut (demo, "shelf-dado");
  demo->cut->kind = SPELCH_CUT_POCKET;
  demo->cut->start = demo->cut->end = SPELCH_END_INSIDE;
  for (guint i = 0; i < G_N_ELEMENTS (rows); i++)
    {
      demo->cut->width = spelch_length_mm (rows[i].width);
      demo->cut->corner_radius = spelch_length_mm (rows[i].corners);
      demo->cut->length = spelch_length_mm (rows[i].length);
      demo_plan_with (demo, "up-cut-6.35x25");
      const SpelchStop *stop = stop_of (demo, SPELCH_STOP_POCKET_ROUND);
      g_assert_true ((stop != NULL) == (rows[i].says != NULL));
      for (guint s = 0; s < demo->plan.n_stops; s++)
        {
          g_autofree char *sentence = spelch_words_stop (&demo->plan.stops[s], &MM);
          g_test_message ("%s", sentence);
          g_assert_null (strstr (sentence, "room for 0 mm"));
          g_assert_true (&demo->plan.stops[s] != stop || strstr (sentence, rows[i].says));
        }
    }
}

/* 3.5 mm left on either wall fill a groove of 6.5 mm: no narrower bit would help. */
static void
test_no_room (Demo *demo, gconstpointer unused)
{
  demo_take_cut (demo, "shelf-dado");
  demo->cut->width = spelch_length_mm (6.5);
  demo->cut->mating.told = false;
  demo->cut->held.allowance_held = true;
  demo->cut->held.allowance = spelch_length_mm (3.5);
  demo_plan_with (demo, "up-cut-6.35x25");
  const SpelchStop *stop = stop_of (demo, SPELCH_STOP_TOO_WIDE);
  g_assert_nonnull (stop);
  g_autofree char *sentence = spelch_words_stop (stop, &MM);
  g_assert_true (g_str_has_prefix (sentence, "Leave less on the walls for the finishing pass, "));
  demo->cut->held.allowance = spelch_length_mm (0.5);
  demo_plan_with (demo, "up-cut-6.35x25");
  stop = stop_of (demo, SPELCH_STOP_TOO_WIDE);
  g_assert_nonnull (stop);
  g_autofree char *narrower = spelch_words_stop (stop, &MM);
  g_assert_nonnull (strstr (narrower, "leaves room for 5.5 mm."));
}

/* ---- Heat ---- */

/* Wall heat is in inverse proportion to the feed: of a feed at which it just burns, a little less burns and
 * a little more is hot. */
static void
test_burns (Demo *demo, gconstpointer unused)
{
  const SpelchConstants *k = spelch_shop_constants ();
  const double shares[]
      = { 0.98, 1.02, 0.98 * k->heat_burns / k->heat_caution, 1.02 * k->heat_burns / k->heat_caution };
  demo_plan_with (demo, demo->cut->bit);
  demo->cut->held.speed_rpm = demo->plan.speed_rpm;
  double burns_at = demo->plan.wall_heat * demo->plan.feed_mm_min / k->heat_burns;
  for (guint i = 0; i < G_N_ELEMENTS (shares); i++)
    {
      demo->cut->held.feed_mm_min = burns_at * shares[i];
      demo_plan_with (demo, demo->cut->bit);
      g_auto (GStrv) beware = spelch_caution_plan (k, demo->part, &demo->plan);
      g_autofree char *all = g_strjoinv (" ", beware);
      g_test_message ("%.0f mJ/mm2: %s", demo->plan.wall_heat, all);
      g_assert_true ((strstr (all, "The wall burns") != NULL) == (i == 0));
      g_assert_true ((strstr (all, "The wall gets hot") != NULL) == (i == 1 || i == 2));
      g_assert_true (demo_has_stop (demo, SPELCH_STOP_HEAT) == (i == 0));
      SpelchChoice choice = { .plan = demo->plan };
      SpelchReason reason
          = { .kind = SPELCH_REASON_HOT, .value = demo->plan.wall_heat, .limit = k->heat_caution };
      g_autofree char *said = spelch_words_reason (&choice, &reason, &MM);
      g_assert_true (g_str_has_prefix (said, "Burns the wall") == (i == 0));
    }
}

/* So slow that it burns: that is what is said first, and one can't be told that less is wrong than is. */
static void
test_burns_most (Demo *demo, gconstpointer unused)
{
  demo->cut->held.feed_mm_min = 5;
  demo_plan_with (demo, demo->cut->bit);
  g_autofree char *first = spelch_words_limit (&demo->plan);
  g_assert_cmpint (demo->plan.verdict, ==, SPELCH_VERDICT_DO_NOT_CUT);
  g_assert_true (g_str_has_prefix (first, "Feed held by hand. Wall heat: "));
  SpelchStop little = { .kind = SPELCH_STOP_HEAT, .value = 3001, .limit = 3000 };
  g_autofree char *sentence = spelch_words_stop (&little, &MM);
  g_assert_nonnull (strstr (sentence, " 1.1 times "));
}

/* ---- Limits ---- */

/* A face that an up-cut tears whatever the passes isn't worth bending it more than is asked: with the show
 * face down it takes several passes, as it does with that face up. */
static void
test_spoilt_either_way (Demo *demo, gconstpointer unused)
{
  const SpelchFace faces[] = { SPELCH_FACE_A, SPELCH_FACE_B };
  for (guint i = 0; i < G_N_ELEMENTS (faces); i++)
    {
      demo->cut->way_up = faces[i];
      demo_plan_with (demo, "up-cut-12.7x38");
      g_assert_cmpint (demo_grade (demo, SPELCH_SIDE_MOTOR), >, demo->part->accepted_hidden);
      g_assert_cmpuint (demo->plan.n_passes, >, 1);
      g_assert_cmpfloat (demo->plan.deflection_mm, <=, demo->plan.deflection_limit_mm + 1e-6);
    }
}

/* Whose turn is next is named so that it can't be taken for anything else. */
static void
test_next (void)
{
  const struct
  {
    SpelchLimitKind kind;
    SpelchMachineKind machine;
    const char *next;
  } cases[] = { { SPELCH_LIMIT_EDGE, SPELCH_MACHINE_GANTRY, "next, the grade of the seen edge, 150 %." },
                { SPELCH_LIMIT_MACHINE, SPELCH_MACHINE_GANTRY, "next, the machine's highest feed, 150 %." },
                { SPELCH_LIMIT_MACHINE, SPELCH_MACHINE_TABLE, "next, what hands can feed evenly, 150 %." },
                { SPELCH_LIMIT_HANDS, SPELCH_MACHINE_HAND, "next, what hands can hold, 150 %." },
                { SPELCH_LIMIT_BENDING, SPELCH_MACHINE_HAND, "next, bending, 150 %." } };
  for (guint i = 0; i < G_N_ELEMENTS (cases); i++)
    {
      SpelchPlan plan = { .machine = cases[i].machine, .feed_mm_min = 3000, .n_limits = 2 };
      plan.limits[0] = (SpelchLimit){ .kind = SPELCH_LIMIT_POWER, .share = 1.6 };
      plan.limits[1] = (SpelchLimit){ .kind = cases[i].kind, .share = 1.5 };
      g_autofree char *next = spelch_words_limit_next (&plan);
      g_assert_cmpstr (next, ==, cases[i].next);
      /* where the machine gives more than the bit bends, it is named */
      plan.deflection_mm = 0.05;
      plan.deflection_machine_mm = 0.03;
      g_autofree char *given = spelch_words_limit_next (&plan);
      g_assert_cmpstr (given, ==,
                       cases[i].kind == SPELCH_LIMIT_BENDING ? "next, the machine's flex, 150 %."
                                                             : cases[i].next);
    }
}

/* A stick-out set too short is what is told of, not the bit; a bit that is too short whatever is set still
 * is. */
static void
test_set_stick_out (Demo *demo, gconstpointer unused)
{
  demo_take_cut (demo, "outline");
  demo->cut->stick_out = spelch_length_mm (10);
  demo_plan_with (demo, "up-cut-6.35x25");
  const SpelchStop *stop = stop_of (demo, SPELCH_STOP_TOO_SHORT);
  g_assert_nonnull (stop);
  g_assert_cmpfloat (stop->also, ==, 10);
  g_assert_cmpstr (spelch_words_bit_caption (demo->part, demo->cut, demo_bit ("up-cut-6.35x25"), &demo->plan),
                   ==, "stick-out short");
  demo->cut->stick_out = spelch_length_mm (0);
  demo_plan_with (demo, "up-cut-6.35x25");
  g_assert_null (stop_of (demo, SPELCH_STOP_TOO_SHORT));
  SpelchBit bit = *demo_bit ("up-cut-6.35x25");
  bit.cutting_length = spelch_length_mm (12);
  demo->cut->stick_out = spelch_length_mm (10);
  demo_plan_bit (demo, &bit);
  g_assert_cmpfloat (stop_of (demo, SPELCH_STOP_TOO_SHORT)->also, ==, 0);
}

/* A speed beyond what the spindle turns at is told of, and not the depth. */
static void
test_set_speed (Demo *demo, gconstpointer unused)
{
  demo_take_cut (demo, "outline");
  demo->cut->held.speed_rpm = 99999;
  demo_plan_with (demo, "up-cut-6.35x25");
  const SpelchStop *stop = stop_of (demo, SPELCH_STOP_NO_SPEED);
  g_assert_nonnull (stop);
  g_assert_cmpfloat (stop->value, ==, 99999);
  g_assert_cmpfloat (stop->limit, ==, demo->part->machine.rpm_max);
}

#define ADD(name, function) g_test_add ("/stops/" name, Demo, NULL, demo_set_up, function, demo_tear_down)

int
main (int argc, char **argv)
{
  g_test_init (&argc, &argv, NULL);
  g_test_add_func ("/stops/begin-with-advice", test_begins_with_advice);
  g_test_add_func ("/stops/sentences", test_sentences);
  ADD ("tabs-of-plan", test_tabs_of_plan);
  ADD ("side-for-way-round", test_side_for_way_round);
  ADD ("no-room", test_no_room);
  ADD ("burns", test_burns);
  ADD ("burns-most", test_burns_most);
  ADD ("spoilt-either-way", test_spoilt_either_way);
  ADD ("set-stick-out", test_set_stick_out);
  ADD ("set-speed", test_set_speed);
  g_test_add_func ("/stops/next", test_next);
  return g_test_run ();
}
