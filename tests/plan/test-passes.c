/* SPDX-License-Identifier: GPL-3.0-or-later
 *
 * Passes and entries: what a finishing pass needs, how a bit may go in, and what an entry on the finished
 * line does to the motor-side face.
 */
#include "on-demo.h"

#include "files/shop-data.h"
#include "plan/choose.h"
#include "plan/words.h"

#include <math.h>
#include <string.h>

static const SpelchNumbers MM = { SPELCH_UNIT_MM, SPELCH_INCH_FRACTION, '.' };

static void
hold_allowance (Demo *demo, double mm)
{
  demo->cut->held.allowance_held = true;
  demo->cut->held.allowance = spelch_length_mm (mm);
}

static void
hold_entry (Demo *demo, SpelchEntryKind kind, double degrees)
{
  demo->cut->held.entry_held = true;
  demo->cut->held.entry = kind;
  demo->cut->held.entry_deg = degrees;
}

/* A thin neck lets the tip go deeper than the cutting length, 14 of 18.3 mm, step by step; a finishing pass
 * has to cut all of it at once. */
static void
test_finishing_reach (Demo *demo, gconstpointer unused)
{
  SpelchBit bit = *demo_bit ("compression-6.35x22");
  bit.cutting_length = spelch_length_mm (14);
  bit.neck = spelch_length_mm (5);
  demo_plan_bit (demo, &bit);
  g_assert_false (demo_has_stop (demo, SPELCH_STOP_TOO_SHORT));
  hold_allowance (demo, 0.5);
  demo_plan_bit (demo, &bit);
  g_assert_true (demo_has_stop (demo, SPELCH_STOP_TOO_SHORT));
}

/* Along both walls of a dado, along the one kept wall of an outline. */
static void
test_finishing_walls (Demo *demo, gconstpointer unused)
{
  hold_allowance (demo, 0.5);
  demo_plan_with (demo, "down-cut-6.35x25");
  g_assert_cmpint (demo->plan.passes[demo->plan.n_passes - 1].tracks, ==, 1);
  demo_take_cut (demo, "shelf-dado");
  hold_allowance (demo, 0.5);
  demo_plan_with (demo, "down-cut-6.35x25");
  g_assert_true (demo->plan.passes[demo->plan.n_passes - 1].finishing);
  g_assert_cmpint (demo->plan.passes[demo->plan.n_passes - 1].tracks, ==, 2);
}

/* 0.5 mm left on each wall of a 13 mm mortise leave 12 mm for the bit. */
static void
test_finishing_room (Demo *demo, gconstpointer unused)
{
  demo_take_cut (demo, "rail-mortise");
  demo_plan_with (demo, "up-cut-12.7x38");
  g_assert_false (demo_has_stop (demo, SPELCH_STOP_TOO_WIDE));
  hold_allowance (demo, 0.5);
  demo_plan_with (demo, "up-cut-12.7x38");
  g_assert_true (demo_has_stop (demo, SPELCH_STOP_TOO_WIDE));
}

/* When the finishing pass speaks for the edge, a shallow first pass doesn't make it doubtful. */
static void
test_finishing_is_sure (Demo *demo, gconstpointer unused)
{
  demo_hold_first_pass (demo, 6);
  hold_allowance (demo, 0.5);
  demo_plan_with (demo, "compression-6.35x22");
  g_assert_cmpint (demo_grade (demo, SPELCH_SIDE_MOTOR), ==, 1);
  g_assert_true (spelch_plan_sure (&demo->plan, SPELCH_SIDE_MOTOR));
}

/* A hole as wide as the bit can only be plunged, and a down-cut can't do that. */
static void
test_hole (Demo *demo, gconstpointer unused)
{
  demo_take_cut (demo, "peg-holes");
  demo->cut->width = spelch_length_mm (6.35);
  demo_plan_with (demo, "up-cut-6.35x25");
  g_assert_cmpint (demo->plan.entry.kind, ==, SPELCH_ENTRY_PLUNGE);
  g_assert_false (demo_has_stop (demo, SPELCH_STOP_PLUNGE));
  demo_plan_with (demo, "down-cut-6.35x25");
  g_assert_cmpint (demo->plan.entry.kind, ==, SPELCH_ENTRY_PLUNGE);
  g_assert_true (demo_has_stop (demo, SPELCH_STOP_PLUNGE));
}

static void
test_down_cut_plunge (Demo *demo, gconstpointer unused)
{
  demo_plan_with (demo, "down-cut-6.35x25");
  g_assert_cmpint (demo->plan.entry.kind, ==, SPELCH_ENTRY_RAMP);
  g_assert_cmpfloat (demo->plan.entry.angle_deg, ==, 1.5);
  g_assert_false (demo_has_stop (demo, SPELCH_STOP_PLUNGE));
  hold_entry (demo, SPELCH_ENTRY_PLUNGE, 0);
  demo_plan_with (demo, "down-cut-6.35x25");
  g_assert_true (demo_has_stop (demo, SPELCH_STOP_PLUNGE));
}

/* Hollow 1 mm high over 2.5 mm of uncut centre: atan (1 / 2.5) = 21.8 degrees. */
static void
test_ramp_of_the_end (Demo *demo, gconstpointer unused)
{
  hold_entry (demo, SPELCH_ENTRY_RAMP, 21.7);
  demo_plan_with (demo, "straight-12.7x32");
  g_assert_false (demo_has_stop (demo, SPELCH_STOP_RAMP));
  hold_entry (demo, SPELCH_ENTRY_RAMP, 21.9);
  demo_plan_with (demo, "straight-12.7x32");
  g_assert_true (demo_has_stop (demo, SPELCH_STOP_RAMP));
}

/* A flat uncut centre rubs at any slope; one that nobody measured is asked for, not assumed. */
static void
test_end_not_hollow (Demo *demo, gconstpointer unused)
{
  SpelchBit bit = *demo_bit ("straight-12.7x32");
  bit.end_hollow = spelch_length_mm (0);
  demo_plan_bit (demo, &bit);
  g_assert_cmpint (demo->plan.entry.kind, ==, SPELCH_ENTRY_DRILLED);
  hold_entry (demo, SPELCH_ENTRY_RAMP, 3);
  demo_plan_bit (demo, &bit);
  g_assert_true (demo_has_stop (demo, SPELCH_STOP_RAMP));
  bit.uncut_centre = spelch_length_mm (0);
  demo_plan_bit (demo, &bit);
  g_assert_true (demo_has_stop (demo, SPELCH_ASK_END));
  g_assert_cmpint (demo->plan.verdict, ==, SPELCH_VERDICT_NOT_CHECKED);
}

/* In a slot as wide as the bit there is no waste: a compression bit that plunges there meets the face with
 * its up-shear over its own width. In a wider one it goes down beside the line; a down-cut may ramp anywhere.
 */
static void
test_plunge_on_line (Demo *demo, gconstpointer unused)
{
  demo_take_cut (demo, "cable-slot");
  demo_plan_with (demo, "compression-6.35x22");
  g_assert_cmpint (demo_grade (demo, SPELCH_SIDE_MOTOR), ==, 1);
  demo->cut->width = spelch_length_mm (6.35);
  demo_plan_with (demo, "compression-6.35x22");
  const SpelchEdge *edge = spelch_plan_worst (&demo->plan, SPELCH_SIDE_MOTOR);
  g_assert_cmpint (demo->plan.entry.kind, ==, SPELCH_ENTRY_PLUNGE);
  g_assert_cmpint (edge->grade, >, 1);
  g_assert_cmpint (edge->line_grade, ==, 1);
  g_assert_cmpfloat_with_epsilon (edge->by_entry_mm, 6.35, 1e-9);
  demo_plan_with (demo, "down-cut-6.35x25");
  g_assert_cmpint (demo_grade (demo, SPELCH_SIDE_MOTOR), ==, 1);
}

/* A spiral into a hole goes round its edge; it can't spoil more than that: 20 pi. */
static void
test_spiral_on_line (Demo *demo, gconstpointer unused)
{
  demo_take_cut (demo, "peg-holes");
  demo->cut->width = spelch_length_mm (20);
  demo->cut->held.entry_on_line = true;
  hold_entry (demo, SPELCH_ENTRY_HELIX, 3);
  demo_plan_with (demo, "compression-6.35x22");
  const SpelchEdge *edge = spelch_plan_worst (&demo->plan, SPELCH_SIDE_MOTOR);
  g_assert_cmpfloat_with_epsilon (edge->by_entry_mm, 20 * M_PI, 1e-9);
}

/* Entries by machine: a table takes no plunge, hands plunge in stages and never with a down-cut. */
static void
test_machines (Demo *demo, gconstpointer unused)
{
  const struct
  {
    const char *machine, *bit, *cut;
    SpelchEntryKind entry;
  } rows[] = { { "medium-gantry", "up-cut-6.35x25", "cable-slot", SPELCH_ENTRY_PLUNGE },
               { "medium-gantry", "down-cut-6.35x25", "cable-slot", SPELCH_ENTRY_RAMP },
               { "medium-gantry", "up-cut-6.35x25", "shelf-dado", SPELCH_ENTRY_EDGE },
               { "medium-gantry", "up-cut-6.35x25", "back-rabbet", SPELCH_ENTRY_EDGE },
               { "plunge-router", "up-cut-6.35x25", "cable-slot", SPELCH_ENTRY_STAGED },
               { "plunge-router", "down-cut-6.35x25", "cable-slot", SPELCH_ENTRY_DRILLED },
               { "plunge-router", "down-cut-6.35x25", "shelf-dado", SPELCH_ENTRY_EDGE },
               { "router-table", "up-cut-6.35x25", "cable-slot", SPELCH_ENTRY_DRILLED },
               { "router-table", "up-cut-6.35x25", "shelf-dado", SPELCH_ENTRY_EDGE } };
  for (guint i = 0; i < G_N_ELEMENTS (rows); i++)
    {
      demo_take_machine (demo, rows[i].machine);
      demo_take_cut (demo, rows[i].cut);
      demo_plan_with (demo, rows[i].bit);
      g_assert_cmpint (demo->plan.entry.kind, ==, rows[i].entry);
    }
}

/* Nobody takes 9 mm at once with an 8 mm bit in a router held in two hands: a pass about as deep as the bit
 * is thick is the most that is usual (common practice, no source). Under a gantry it is nothing out of the
 * way. */
static void
test_hand_step (Demo *demo, gconstpointer unused)
{
  demo_take_cut (demo, "shelf-dado");
  demo_plan_with (demo, "up-cut-8x32");
  g_assert_cmpint (demo->plan.n_passes, ==, 1);
  demo_take_machine (demo, "plunge-router");
  demo_plan_with (demo, "up-cut-8x32");
  g_assert_cmpint (demo->plan.n_passes, >, 1);
  for (guint i = 0; i < demo->plan.n_passes; i++)
    g_assert_cmpfloat (demo->plan.passes[i].tip_mm - demo->plan.passes[i].from_mm, <=, 8 + 1e-9);
  /* Whoever sets the pass has it so. */
  demo->cut->held.n_passes = 1;
  demo->cut->held.passes[0] = spelch_length_mm (9);
  demo_plan_with (demo, "up-cut-8x32");
  g_assert_cmpint (demo->plan.n_passes, ==, 1);
}

/* Common practice, no source: safety before a clean face. The near face of 1.3 mm lies in the down-shear of
 * this compression bit only from 6.35 + 1.3 deep, deeper than the bit is thick, so fed by hand it isn't kept,
 * is told why, and a bit that keeps the face all the same is recommended. A person who sets that pass has it.
 */
static void
test_hand_step_and_face (Demo *demo, gconstpointer machine)
{
  guint n;
  const SpelchBit *bits = spelch_shop_bits (&n);
  demo_take_machine (demo, machine);
  demo_take_cut (demo, "shelf-dado");
  demo_plan_with (demo, "compression-6.35x22");
  g_assert_cmpfloat (demo->plan.windows.nominal.first_pass.from, >=, 6.35 + 1.3 - 1e-9);
  for (guint i = 0; i < demo->plan.n_passes; i++)
    g_assert_cmpfloat (demo->plan.passes[i].tip_mm - demo->plan.passes[i].from_mm, <=, 6.35 + 1e-9);
  g_assert_cmpint (demo_grade (demo, SPELCH_SIDE_MOTOR), >, 1);
  g_auto (GStrv) why = spelch_words_edge_why (&demo->plan, SPELCH_SIDE_MOTOR, &MM);
  g_autofree char *said = g_strjoinv (" ", why);
  g_test_message ("%s", said);
  g_assert_nonnull (strstr (said, "But fed by hand no pass is planned deeper than the bit is thick, 6.35 mm: "
                                  "so this face isn't kept."));
  g_autoptr (GPtrArray) ranking
      = spelch_choose_rank (spelch_shop_constants (), demo->part, demo->cut, bits, n);
  for (guint i = 0; i < ranking->len; i++)
    {
      const SpelchChoice *choice = ranking->pdata[i];
      double diameter = spelch_bit_diameter_now (&bits[choice->bit]);
      for (guint pass = 0; pass < choice->plan.n_passes; pass++)
        g_assert_cmpfloat (choice->plan.passes[pass].tip_mm - choice->plan.passes[pass].from_mm, <=,
                           diameter + 1e-9);
    }
  g_assert_cmpstr (bits[spelch_choose_best (ranking)->bit].id, !=, "compression-6.35x22");
  g_assert_cmpint (spelch_choose_best (ranking)->seen, ==, 1);
  demo->cut->held.passes_held = true;
  demo_plan_with (demo, "compression-6.35x22");
  g_assert_cmpuint (demo->plan.n_passes, ==, 1);
  g_assert_cmpint (demo_grade (demo, SPELCH_SIDE_MOTOR), ==, 1);
  g_auto (GStrv) now = spelch_words_edge_why (&demo->plan, SPELCH_SIDE_MOTOR, &MM);
  g_autofree char *told = g_strjoinv (" ", now);
  g_assert_null (strstr (told, "fed by hand"));
}

#define ADD(name, function) g_test_add ("/passes/" name, Demo, NULL, demo_set_up, function, demo_tear_down)

int
main (int argc, char **argv)
{
  g_test_init (&argc, &argv, NULL);
  ADD ("finishing/reach", test_finishing_reach);
  ADD ("finishing/walls", test_finishing_walls);
  ADD ("finishing/room", test_finishing_room);
  ADD ("finishing/sure", test_finishing_is_sure);
  ADD ("entry/hole", test_hole);
  ADD ("entry/down-cut", test_down_cut_plunge);
  ADD ("entry/ramp-of-the-end", test_ramp_of_the_end);
  ADD ("entry/end-not-hollow", test_end_not_hollow);
  ADD ("entry/plunge-on-line", test_plunge_on_line);
  ADD ("entry/spiral-on-line", test_spiral_on_line);
  ADD ("entry/machines", test_machines);
  ADD ("hand-step", test_hand_step);
  g_test_add ("/passes/hand-step/face", Demo, "plunge-router", demo_set_up, test_hand_step_and_face,
              demo_tear_down);
  g_test_add ("/passes/hand-step/face-at-table", Demo, "router-table", demo_set_up, test_hand_step_and_face,
              demo_tear_down);
  return g_test_run ();
}
