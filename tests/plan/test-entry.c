/* SPDX-License-Identifier: GPL-3.0-or-later
 *
 * Entries by machine: what each can do, what it takes, and what is asked. Which entry belongs to which
 * machine is common practice, no source.
 */
#include "on-demo.h"

#include "plan/words.h"

#include <math.h>
#include <string.h>

static const SpelchNumbers MM = { SPELCH_UNIT_MM, SPELCH_INCH_FRACTION, '.' };

static void
hold_entry (Demo *demo, SpelchEntryKind kind)
{
  demo->cut->held.entry_held = true;
  demo->cut->held.entry = kind;
}

static void
assert_says (const Demo *demo, const char *words)
{
  g_auto (GStrv) all = spelch_words_setting_out (&demo->plan, demo->part, demo->cut, &MM);
  g_autofree char *text = g_strjoinv ("\n", all);
  g_test_message ("%s", text);
  g_assert_nonnull (strstr (text, words));
}

/* Every entry on every machine: what can't be done there is a stop with a sentence, whoever asked for it. */
static void
test_suits (Demo *demo, gconstpointer unused)
{
  static const char *const machines[] = { "medium-gantry", "router-table", "plunge-router" };
  static const char *const can[]
      = { [SPELCH_ENTRY_PLUNGE] = "g h", [SPELCH_ENTRY_RAMP] = "g  ",    [SPELCH_ENTRY_HELIX] = "g  ",
          [SPELCH_ENTRY_EDGE] = "gth",   [SPELCH_ENTRY_DRILLED] = "gth", [SPELCH_ENTRY_STAGED] = "g h",
          [SPELCH_ENTRY_LOWERED] = " t " };
  for (guint machine = 0; machine < 3; machine++)
    for (guint entry = 0; entry < G_N_ELEMENTS (can); entry++)
      {
        demo_take_machine (demo, machines[machine]);
        demo_take_cut (demo, "cable-slot");
        hold_entry (demo, (SpelchEntryKind)entry);
        demo_plan_with (demo, "up-cut-6.35x25");
        g_assert_true (demo_has_stop (demo, SPELCH_STOP_ENTRY) == (can[entry][machine] == ' '));
        if (can[entry][machine] == ' ')
          g_assert_cmpint (demo->plan.verdict, ==, SPELCH_VERDICT_DO_NOT_CUT);
      }
}

/* Work is let down onto the bit of a table only between stop blocks: whether they are set is asked, never
 * assumed. A down-cut can't go in so, as it can't plunge. */
static void
test_lowered (Demo *demo, gconstpointer unused)
{
  demo_take_machine (demo, "router-table");
  demo_take_cut (demo, "cable-slot");
  hold_entry (demo, SPELCH_ENTRY_LOWERED);
  demo->cut->tabs.count = 0;
  demo->part->holding.method = SPELCH_HOLD_HANDS;
  demo_plan_with (demo, "up-cut-6.35x25");
  g_assert_true (demo_has_stop (demo, SPELCH_ASK_STOPS));
  g_assert_cmpint (demo->plan.verdict, ==, SPELCH_VERDICT_NOT_CHECKED);
  assert_says (demo, "Set stop blocks at both ends");
  demo->cut->held.entry_stops = true;
  demo_plan_with (demo, "up-cut-6.35x25");
  g_assert_false (demo_has_stop (demo, SPELCH_ASK_STOPS));
  g_assert_cmpint (demo->plan.verdict, ==, SPELCH_VERDICT_NO_OBJECTION);
  demo_plan_with (demo, "down-cut-6.35x25");
  g_assert_true (demo_has_stop (demo, SPELCH_STOP_PLUNGE));
}

/* A hole as wide as the bit leaves no other way on a table. */
static void
test_hole_on_table (Demo *demo, gconstpointer unused)
{
  demo_take_machine (demo, "router-table");
  demo_take_cut (demo, "peg-holes");
  demo_plan_with (demo, "up-cut-5x17");
  g_assert_cmpint (demo->plan.entry.kind, ==, SPELCH_ENTRY_LOWERED);
  g_assert_true (demo_has_stop (demo, SPELCH_ASK_STOPS));
}

/* A down-cut by hand inside a face: a drilled hole as wide as the bit, or another bit. */
static void
test_drilled (Demo *demo, gconstpointer unused)
{
  demo_take_machine (demo, "plunge-router");
  demo_take_cut (demo, "cable-slot");
  demo_plan_with (demo, "down-cut-6.35x25");
  g_assert_cmpint (demo->plan.entry.kind, ==, SPELCH_ENTRY_DRILLED);
  assert_says (demo, "Drill a hole of 6.4 mm or more to start from, or go in with another bit.");
}

/* A ramp of 1.5 degrees to 9 mm is 9 / tan 1.5 = 343.7 mm long; the way in a mortise 60 mm long leaves the
 * bit 60 - 6.35 = 53.65: seven times along it. */
static void
test_ramp_legs (Demo *demo, gconstpointer unused)
{
  demo_take_cut (demo, "rail-mortise");
  demo->cut->depth = spelch_length_mm (9);
  demo->cut->held.passes_held = true;
  demo_plan_with (demo, "down-cut-6.35x25");
  g_assert_cmpint (demo->plan.entry.kind, ==, SPELCH_ENTRY_RAMP);
  g_assert_cmpfloat_with_epsilon (demo->plan.entry.length_mm, 343.7, 0.05);
  g_assert_cmpuint (demo->plan.entry.legs, ==, 7);
  assert_says (demo, "The ramp is 343.7 mm long: there and back, 7 times along the way.");
  demo->cut->length = spelch_length_mm (400);
  demo_plan_with (demo, "down-cut-6.35x25");
  g_assert_cmpuint (demo->plan.entry.legs, ==, 1);
  assert_says (demo, "The ramp is 343.7 mm long.");
}

/* The straight bit's uncut centre is 2.5 mm. In a hole of 20 mm there is room for a circle of 20 - 12.7
 * = 7.3, so one between 2.5 and 7.3: 4.9. In one of 14 mm, 1.3, the uncut part would run on the bottom. In
 * one of 60 mm the circle is bound by the bit, or a post would stay: between 2.5 and 12.7, 7.6. */
static void
test_circle (Demo *demo, gconstpointer unused)
{
  const struct
  {
    double hole, circle;
  } rows[] = { { 20, 4.9 }, { 14, 0 }, { 60, 7.6 } };
  demo_take_cut (demo, "peg-holes");
  for (guint i = 0; i < G_N_ELEMENTS (rows); i++)
    {
      demo->cut->width = spelch_length_mm (rows[i].hole);
      hold_entry (demo, SPELCH_ENTRY_HELIX);
      demo_plan_with (demo, "straight-12.7x32");
      g_assert_cmpfloat_with_epsilon (demo->plan.entry.circle_mm, rows[i].circle, 1e-9);
      g_assert_true (demo_has_stop (demo, SPELCH_STOP_HELIX) == (rows[i].circle == 0));
      demo->cut->held.entry_held = false;
      demo_plan_with (demo, "straight-12.7x32");
      g_assert_cmpint (demo->plan.entry.kind, ==,
                       rows[i].circle > 0 ? SPELCH_ENTRY_HELIX : SPELCH_ENTRY_DRILLED);
    }
}

/* A fresh spoilboard spares the far face of a down-cut a point; whether it is fresh is asked where that
 * counts, and not of an up-cut, which presses that face in, nor over a backer. */
static void
test_spoilboard (Demo *demo, gconstpointer unused)
{
  const struct
  {
    SpelchSpoilboard spoilboard;
    const char *bit;
    double backer;
    bool asks;
    int backing;
  } rows[] = { { SPELCH_SPOILBOARD_FRESH, "down-cut-6.35x25", 0, false, -1 },
               { SPELCH_SPOILBOARD_CUT_HERE_BEFORE, "down-cut-6.35x25", 0, false, 0 },
               { SPELCH_SPOILBOARD_UNTOLD, "down-cut-6.35x25", 0, true, 0 },
               { SPELCH_SPOILBOARD_UNTOLD, "down-cut-6.35x25", 6, false, -1 },
               { SPELCH_SPOILBOARD_UNTOLD, "up-cut-6.35x25", 0, false, 0 } };
  for (guint i = 0; i < G_N_ELEMENTS (rows); i++)
    {
      demo->part->machine.spoilboard = rows[i].spoilboard;
      demo->cut->backer = spelch_length_mm (rows[i].backer);
      demo_plan_with (demo, rows[i].bit);
      g_assert_true (demo_has_stop (demo, SPELCH_ASK_SPOILBOARD) == rows[i].asks);
      g_assert_cmpint (
          spelch_edge_points (spelch_plan_worst (&demo->plan, SPELCH_SIDE_FAR), SPELCH_TERM_BACKING), ==,
          rows[i].backing);
    }
}

/* The plunge goes at a share of the feed (0.3, shop practice), to the nearest 10. */
static void
test_plunge_feed (Demo *demo, gconstpointer unused)
{
  demo->cut->held.feed_mm_min = 3450;
  demo_plan_with (demo, "compression-6.35x22");
  g_assert_cmpfloat_with_epsilon (demo->plan.plunge_feed_mm_min, 1040, 1e-9);
}

/* An outline is cut after all else (test-order.c), so that a piece's edge isn't there before it: what comes
 * in over that edge comes through the waste beside it. */
static void
test_uncut_edge (Demo *demo, gconstpointer unused)
{
  demo_take_cut (demo, "back-rabbet");
  demo_plan_with (demo, "up-cut-6.35x25");
  g_assert_cmpint (demo->plan.entry.kind, ==, SPELCH_ENTRY_EDGE);
  g_autofree char *before = spelch_words_entry (&demo->plan, &MM);
  g_assert_cmpstr (before, ==, "from the board's edge, through the waste");
  for (guint i = 0; i < demo->part->n_cuts; i++)
    if (demo->part->cuts[i].kind == SPELCH_CUT_OUTLINE)
      {
        demo->part->cuts[i].kind = SPELCH_CUT_TRIM;
        demo->part->cuts[i].width = spelch_length_mm (2);
      }
  demo_plan_with (demo, "up-cut-6.35x25");
  g_autofree char *after = spelch_words_entry (&demo->plan, &MM);
  g_assert_cmpstr (after, ==, "from the board's edge");
}

#define ADD(name, function) g_test_add ("/entry/" name, Demo, NULL, demo_set_up, function, demo_tear_down)

int
main (int argc, char **argv)
{
  g_test_init (&argc, &argv, NULL);
  ADD ("suits", test_suits);
  ADD ("lowered", test_lowered);
  ADD ("hole-on-table", test_hole_on_table);
  ADD ("drilled", test_drilled);
  ADD ("ramp-legs", test_ramp_legs);
  ADD ("circle", test_circle);
  ADD ("spoilboard", test_spoilboard);
  ADD ("plunge-feed", test_plunge_feed);
  ADD ("uncut-edge", test_uncut_edge);
  return g_test_run ();
}
