/* SPDX-License-Identifier: GPL-3.0-or-later
 *
 * Slow motion as numbers: the force over a turn is that of the mechanics and has the plan's mean, chips are
 * as thick as the plan's and go the way the shear sends them, splinters come when their face is opened, and
 * whatever is changed about bit or cut changes what is seen.
 */
#include "chance.h"
#include "on-demo.h"

#include "files/shop-data.h"
#include "mechanics/chip-flow.h"
#include "mechanics/chip.h"
#include "plan/loads.h"
#include "plan/motion.h"
#include "plan/words-motion.h"

#include <math.h>
#include <string.h>

#define ROUNDS 150

static SpelchMotion *
motion_of (const Demo *demo, const SpelchBit *bit)
{
  return spelch_motion_new (spelch_shop_constants (), demo->part, demo->cut, bit, &demo->plan);
}

static SpelchMotion *
motion_with (Demo *demo, const char *id)
{
  demo_plan_with (demo, id);
  return motion_of (demo, demo_bit (id));
}

/* ---- Forces ---- */

/* The loads that plans are made with, found anew. */
static void
loads_of (const SpelchPart *part, const SpelchCut *cut, const SpelchBit *bit, const SpelchPlan *plan,
          guint pass, SpelchLoads *loads)
{
  SpelchCase c;
  spelch_case_prepare (&c, spelch_shop_constants (), part, cut, bit);
  spelch_loads_find (&c, &plan->passes[pass], plan->stick_out_mm, loads);
}

static void
assert_trace (const SpelchMotionPass *pass, const SpelchLoads *loads, double feed_per_tooth)
{
  double sum = 0, size = 1e-9, factor = spelch_shop_constants ()->band_axial;
  for (int i = 0; i < SPELCH_TRACE_POINTS; i++)
    {
      double turned = 2 * G_PI * i / (SPELCH_TRACE_POINTS - 1);
      SpelchForceParts still, moving;
      spelch_force_at (&loads->force, turned, &still, &moving);
      g_assert_cmpfloat_with_epsilon (pass->trace[i], still.axial + feed_per_tooth * moving.axial, 1e-9);
      SpelchBand band = spelch_motion_axial (pass, turned);
      g_assert_cmpfloat (band.mid, ==, pass->trace[i]);
      g_assert_cmpfloat_with_epsilon (band.mid >= 0 ? band.high : band.low, factor * band.mid, 1e-9);
      g_assert_cmpfloat_with_epsilon (band.mid >= 0 ? band.low : band.high, band.mid / factor, 1e-9);
      sum += i > 0 ? pass->trace[i] : 0;
      size = fmax (size, fabs (pass->trace[i]));
    }
  g_assert_cmpfloat (fabs (sum / (SPELCH_TRACE_POINTS - 1) - pass->axial.mid), <=, 0.01 * size);
  g_assert_cmpfloat_with_epsilon (pass->axial.mid, feed_per_tooth * loads->moving.axial, 1e-9);
}

/* What the bench says of the board is the pass that lifts most, or presses least. */
static void
assert_worst (const SpelchMotion *motion, const SpelchSeat *seat)
{
  double most = -HUGE_VAL;
  for (guint i = 0; i < motion->n_passes; i++)
    most = fmax (most, motion->passes[i].axial.mid);
  g_assert_cmpfloat_with_epsilon (seat->apart ? seat->mean_n : -seat->mean_n, most, 1e-9);
}

/* Whatever is cut with whatever bit: force by force as the mechanics say, the mean the plan's. */
static void
test_forces (void)
{
  g_autoptr (GRand) random = g_rand_new_with_seed (4117);
  g_autofree SpelchLoads *loads = g_new (SpelchLoads, 1);
  int moving = 0;
  for (int round = 0; round < ROUNDS; round++)
    {
      g_autoptr (SpelchPart) part = chance_part (random);
      SpelchCut cut = chance_cut (random, part);
      SpelchBit bit = chance_bit (random);
      SpelchPlan plan;
      spelch_plan_make (spelch_shop_constants (), part, &cut, &bit, &plan);
      g_autofree SpelchMotion *motion = spelch_motion_new (spelch_shop_constants (), part, &cut, &bit, &plan);
      g_assert_true (motion->n_passes == 0 || motion->n_passes == plan.n_passes);
      moving += motion->n_passes > 0;
      for (guint i = 0; i < motion->n_passes; i++)
        {
          loads_of (part, &cut, &bit, &plan, i, loads);
          assert_trace (&motion->passes[i], loads, plan.feed_per_tooth);
          g_assert_cmpfloat_with_epsilon (
              motion->passes[i].chip_max,
              spelch_chip_max (plan.feed_per_tooth, plan.flutes.diameter, loads->engaged), 1e-12);
          g_assert_cmpfloat_with_epsilon (
              motion->passes[i].tooth_s * motion->passes[i].teeth * plan.speed_rpm, 60, 1e-9);
        }
      if (motion->n_passes > 0)
        g_assert_cmpfloat_with_epsilon (motion->passes[motion->n_passes - 1].axial.mid, plan.last_axial_n,
                                        1e-9);
      if (motion->n_passes > 0 && plan.machine == SPELCH_MACHINE_GANTRY)
        assert_worst (motion, &plan.seats[0]);
    }
  g_assert_cmpint (moving, >, ROUNDS / 2);
}

/* An up-cut lifts, a down-cut presses, a straight bit does neither; a compression bit nets upward in a step
 * under twice its up-shear, and downward in a deeper one (model, section 4). */
static void
test_signs (Demo *demo, gconstpointer unused)
{
  g_autofree SpelchMotion *up = motion_with (demo, "up-cut-6.35x25");
  g_autofree SpelchMotion *down = motion_with (demo, "down-cut-6.35x25");
  g_autofree SpelchMotion *straight = motion_with (demo, "straight-6.35x25");
  for (int i = 0; i < SPELCH_TRACE_POINTS; i++)
    {
      g_assert_cmpfloat (up->passes[0].trace[i], >=, 0);
      g_assert_cmpfloat (down->passes[0].trace[i], <=, 0);
      g_assert_cmpfloat (straight->passes[0].trace[i], ==, 0);
    }
  g_assert_cmpfloat (up->passes[0].axial.mid, >, 0.1);
  g_assert_cmpfloat (down->passes[0].axial.mid, <, -0.1);
  double up_shear = demo_bit ("compression-6.35x22")->up_shear.mm;
  for (int deep = 0; deep < 2; deep++)
    {
      demo_hold_first_pass (demo, up_shear * (deep ? 2.4 : 1.6));
      g_autofree SpelchMotion *both = motion_with (demo, "compression-6.35x22");
      double mean = both->passes[0].axial.mid, least = 0, most = 0;
      g_assert_cmpint (mean > 0, ==, !deep);
      for (int i = 0; i < SPELCH_TRACE_POINTS; i++)
        {
          least = fmin (least, both->passes[0].trace[i]);
          most = fmax (most, both->passes[0].trace[i]);
        }
      g_assert_cmpfloat (most - least, >, 0);
    }
}

/* ---- Chips ---- */

static const char *const KINDS[]
    = { "up-cut-6.35x25", "down-cut-6.35x25", "straight-6.35x25", "compression-6.35x22" };

/* Seen chips go on, from one instant to the next, the way the shear at their edge sends them. */
static void
test_chip_directions (Demo *demo, gconstpointer unused)
{
  for (guint kind = 0; kind < G_N_ELEMENTS (KINDS); kind++)
    {
      g_autofree SpelchMotion *motion = motion_with (demo, KINDS[kind]);
      g_autofree SpelchMotionFrame *now = g_new (SpelchMotionFrame, 1), *next = g_new (SpelchMotionFrame, 1);
      const SpelchMotionPass *pass = &motion->passes[0];
      const SpelchFlutes *flutes = &pass->force.flutes;
      int ups = 0, downs = 0, stays = 0;
      for (double turned = 0; turned < spelch_motion_length (pass); turned += 0.21)
        {
          spelch_motion_at (motion, 0, turned, now);
          spelch_motion_at (motion, 0, turned + 0.05, next);
          for (guint i = 0; i < now->n_chips; i++)
            for (guint j = 0; j < next->n_chips; j++)
              {
                const SpelchMotionChip *a = &now->chips[i], *b = &next->chips[j];
                if (a->seed != b->seed || a->rests || b->rests)
                  continue;
                double rise = a->depth - b->depth;
                g_assert_cmpint (a->hand, ==, b->hand);
                g_assert_cmpfloat (rise * a->hand, >=, -1e-9);
                ups += rise > 1e-6;
                downs += rise < -1e-6;
                stays += a->hand == 0;
                if (a->rise != 0 && b->rise != 0 && a->depth > 0 && b->depth > 0)
                  g_assert_cmpfloat_with_epsilon (
                      rise, 0.05 * spelch_chip_flow_speed (flutes, pass->depth - a->depth), 1e-6);
              }
        }
      g_assert_cmpint (ups > 0, ==, kind == 0 || kind == 3);
      g_assert_cmpint (downs > 0, ==, kind == 1 || kind == 3);
      g_assert_cmpint (stays > 0, ==, kind == 2);
    }
}

/* In a compression bit both hands' chips meet at the turn-over and none passes it; a down-cut's lie at the
 * tip; an up-cut's come out above the face. */
static void
test_chip_ends (Demo *demo, gconstpointer unused)
{
  bool above[G_N_ELEMENTS (KINDS)] = { false }, rested[G_N_ELEMENTS (KINDS)] = { false };
  for (guint kind = 0; kind < G_N_ELEMENTS (KINDS); kind++)
    {
      g_autofree SpelchMotion *motion = motion_with (demo, KINDS[kind]);
      g_autofree SpelchMotionFrame *frame = g_new (SpelchMotionFrame, 1);
      const SpelchMotionPass *pass = &motion->passes[0];
      double turn_over = pass->depth - pass->force.flutes.turn_over,
             pile = 1e-9 + pass->chip_room * pass->depth;
      for (double turned = 0; turned < spelch_motion_length (pass); turned += 0.1)
        {
          spelch_motion_at (motion, 0, turned, frame);
          for (guint i = 0; i < frame->n_chips; i++)
            {
              const SpelchMotionChip *chip = &frame->chips[i];
              above[kind] |= chip->depth < 0;
              rested[kind] |= chip->rests;
              g_assert_true (isfinite (chip->across) && isfinite (chip->depth));
              g_assert_true (chip->strength >= 0 && chip->strength <= 1);
              g_assert_cmpfloat (chip->depth, <=, pass->depth + 1e-9);
              if (kind == 3 && !chip->rests && chip->hand > 0)
                g_assert_cmpfloat (chip->depth, >=, turn_over - 1e-9);
              if (kind == 3 && !chip->rests && chip->hand < 0)
                g_assert_cmpfloat (chip->depth, <=, turn_over + 1e-9);
              if (kind == 1 && chip->rests)
                g_assert_cmpfloat (chip->depth, >=, pass->depth - pile);
            }
        }
    }
  g_assert_true (above[0] && !above[1] && !above[2] && !above[3]);
  g_assert_true (!rested[0] && rested[1] && rested[2] && rested[3]);
}

/* More chips are seen, and for longer, where they fill the flutes more. */
static void
test_packing (Demo *demo, gconstpointer unused)
{
  demo_plan_with (demo, "down-cut-6.35x25");
  g_autofree SpelchMotion *motion = motion_of (demo, demo_bit ("down-cut-6.35x25"));
  g_autofree SpelchMotionFrame *frame = g_new (SpelchMotionFrame, 1);
  guint before = 0;
  for (double room = 0.1; room <= 1; room += 0.3)
    {
      guint most = 0;
      motion->passes[0].chip_room = room;
      for (double turned = 0; turned < spelch_motion_length (&motion->passes[0]); turned += 0.4)
        {
          spelch_motion_at (motion, 0, turned, frame);
          most = MAX (most, frame->n_chips);
        }
      g_assert_cmpuint (most, >, before);
      g_assert_cmpuint (most, <, SPELCH_MOST_CHIPS);
      before = most;
    }
}

/* An edge at the tip takes a chip that grows and thins as sin(angle), at most the plan's. */
static void
test_teeth (Demo *demo, gconstpointer unused)
{
  g_autofree SpelchMotion *motion = motion_with (demo, "up-cut-6.35x25");
  g_autofree SpelchMotionFrame *frame = g_new (SpelchMotionFrame, 1);
  double most = 0;
  for (double turned = 0; turned < 2 * G_PI; turned += 0.01)
    {
      spelch_motion_at (motion, 0, turned, frame);
      g_assert_cmpuint (frame->n_teeth, ==, (guint)demo->plan.flutes.edges_up);
      for (guint k = 0; k < frame->n_teeth; k++)
        {
          const SpelchMotionTooth *tooth = &frame->teeth[k];
          g_assert_cmpint (tooth->cutting, ==, tooth->angle > 0 && tooth->angle < G_PI);
          g_assert_cmpfloat_with_epsilon (
              tooth->thickness, tooth->cutting ? demo->plan.feed_per_tooth * sin (tooth->angle) : 0, 1e-12);
          most = fmax (most, tooth->thickness);
        }
    }
  g_assert_cmpfloat_with_epsilon (most, motion->passes[0].chip_max, 1e-4);
}

/* ---- Splinters ---- */

/* None before its face's pass, none before an edge has passed its wall there, and then they stay. */
static void
test_opened (Demo *demo, gconstpointer unused)
{
  demo_hold_first_pass (demo, 5);
  g_autofree SpelchMotion *motion = motion_with (demo, "compression-6.35x22");
  g_autofree SpelchMotionFrame *frame = g_new (SpelchMotionFrame, 1);
  double pitch = 2 * G_PI / demo->plan.flutes.edges_down;
  g_assert_cmpuint (motion->n_passes, >=, 2);
  for (guint i = 0; i < motion->n_edges; i++)
    {
      double before = 0;
      const SpelchEdge *edge = &motion->edges[i];
      if (edge->grade < 1)
        continue;
      for (guint pass = 0; pass < motion->n_passes; pass++)
        for (double turned = 0; turned < spelch_motion_length (&motion->passes[pass]); turned += 0.1)
          {
            spelch_motion_at (motion, pass, turned, frame);
            g_assert_cmpfloat (frame->opened[i], >=, before);
            before = frame->opened[i];
            if ((int)pass + 1 < edge->pass || ((int)pass + 1 == edge->pass && turned == 0))
              g_assert_cmpfloat (before, ==, 0);
            if ((int)pass + 1 == edge->pass && turned > pitch + 1)
              g_assert_cmpfloat (before, ==, 1);
          }
    }
}

/* ---- Words ---- */

static void
assert_words (char *words, const char *wanted)
{
  g_assert_cmpstr (words, ==, wanted);
  g_free (words);
}

/* A force carries its band, the smaller size first, and says what it does to the board on this machine. */
static void
test_words (Demo *demo, gconstpointer unused)
{
  static const SpelchNumbers MM = { SPELCH_UNIT_MM, SPELCH_INCH_FRACTION, '.' };
  static const char *const CHIPS[]
      = { "Chips go up the flutes and out.", "Chips go down into the kerf.",
          "Chips stay at their height, thrown back into the kerf.",
          "Chips go up the flutes below the turn-over and down above it, and meet "
          "in the kerf." };
  const SpelchBand lifts = { 1.55, 3.1, 6.2 }, presses = { -60, -30, -15 }, neither = { 0, 0, 0 };
  assert_words (spelch_words_motion_force (&lifts, SPELCH_MACHINE_GANTRY, &MM), "lifts 3.1 N (1.6 to 6.2)");
  assert_words (spelch_words_motion_force (&presses, SPELCH_MACHINE_GANTRY, &MM), "presses 30 N (15 to 60)");
  assert_words (spelch_words_motion_force (&lifts, SPELCH_MACHINE_TABLE, &MM),
                "draws to the table 3.1 N (1.6 to 6.2)");
  assert_words (spelch_words_motion_force (&presses, SPELCH_MACHINE_TABLE, &MM),
                "pushes off the table 30 N (15 to 60)");
  assert_words (spelch_words_motion_force (&neither, SPELCH_MACHINE_GANTRY, &MM),
                "neither lifts nor presses");
  assert_words (spelch_words_motion_speed (1.0 / 600, 1, false, &MM),
                "1/600 of real time, one tooth a second");
  assert_words (spelch_words_motion_speed (1.0 / 300, 2.5, false, &MM),
                "1/300 of real time, 2.5 teeth a second");
  assert_words (spelch_words_motion_speed (1, 600, true, &MM),
                "real time, 600 teeth a second, drawn evenly blurred");
  for (guint kind = 0; kind < G_N_ELEMENTS (KINDS); kind++)
    {
      g_autofree SpelchMotion *motion = motion_with (demo, KINDS[kind]);
      assert_words (spelch_words_motion_chips (&motion->passes[0]), CHIPS[kind]);
    }
  g_autofree SpelchMotion *full = motion_with (demo, "down-cut-6.35x25");
  full->passes[0].chip_room = 0.977;
  assert_words (spelch_words_motion_room (&full->passes[0]), "They fill 98 % of the flutes’ room.");
  full->passes[0].chip_room = 1.2;
  assert_words (spelch_words_motion_room (&full->passes[0]),
                "They would fill 120 % of the flutes’ room: they jam.");
  full->passes[0].chip_room = 0;
  assert_words (spelch_words_motion_room (&full->passes[0]),
                "The cut is open at a side, so they fall out freely.");
  demo_hold_first_pass (demo, 14);
  g_autofree SpelchMotion *shallow = motion_with (demo, "compression-6.35x22");
  assert_words (spelch_words_motion_chips (&shallow->passes[1]),
                "Chips go up the flutes as far as the turn-over.");
  assert_words (spelch_words_motion_pass (shallow, 0, &MM), "Pass 1 of 2, to 14.0 mm");
  g_autofree char *extent = spelch_words_motion_extent (&shallow->passes[0]);
  g_assert_true (g_str_has_prefix (extent, "4 turns of the bit are shown; the whole pass takes "));
  /* The passes' times, entries left out, are at most the plan's. */
  double whole = 0;
  for (guint i = 0; i < shallow->n_passes; i++)
    whole += shallow->passes[i].cutting_s;
  g_assert_cmpfloat (whole, >, 0);
  g_assert_cmpfloat (whole, <=, demo->plan.time_s + 1e-6);
}

/* ---- What changes it ---- */

/* A sum over what is seen at some instants of a pass. */
static double
fingerprint (const SpelchMotion *motion, guint pass)
{
  g_autofree SpelchMotionFrame *frame = g_new (SpelchMotionFrame, 1);
  double sum = 0;
  for (double turned = 0.3; turned < 14; turned += 1.1)
    {
      spelch_motion_at (motion, pass, turned, frame);
      sum += frame->axial.mid * turned;
      for (guint i = 0; i < frame->n_chips; i++)
        sum += frame->chips[i].across * turned + frame->chips[i].depth;
      for (guint k = 0; k < frame->n_teeth; k++)
        sum += frame->teeth[k].thickness * turned;
    }
  return sum;
}

/* Everything else kept: the hand, the helix, the flutes, the feed, the pass. */
static void
test_changes (Demo *demo, gconstpointer unused)
{
  SpelchBit bits[4];
  double prints[6];
  demo->cut->held.speed_rpm = 18000;
  demo->cut->held.feed_mm_min = 3000;
  demo_hold_first_pass (demo, 9);
  for (guint i = 0; i < G_N_ELEMENTS (bits); i++)
    bits[i] = *demo_bit ("up-cut-6.35x25");
  bits[1].kind = SPELCH_BIT_DOWN_CUT;
  bits[2].helix_deg -= 5;
  bits[3].edges += 1;
  for (guint i = 0; i < G_N_ELEMENTS (bits); i++)
    {
      demo_plan_bit (demo, &bits[i]);
      g_autofree SpelchMotion *motion = motion_of (demo, &bits[i]);
      g_autofree SpelchMotion *again = motion_of (demo, &bits[i]);
      g_assert_cmpuint (motion->n_passes, ==, 2);
      prints[i] = fingerprint (motion, 0);
      g_assert_cmpfloat (prints[i], ==, fingerprint (again, 0));
      if (i == 0)
        prints[5] = fingerprint (motion, 1);
    }
  demo->cut->held.feed_mm_min = 2400;
  demo_plan_bit (demo, &bits[0]);
  g_autofree SpelchMotion *slower = motion_of (demo, &bits[0]);
  prints[4] = fingerprint (slower, 0);
  for (guint i = 0; i < G_N_ELEMENTS (prints); i++)
    for (guint j = 0; j < i; j++)
      g_assert_cmpfloat (fabs (prints[i] - prints[j]), >, 1e-3);
}

/* A scored plan shows the scoring bit's pass with that bit's forces. */
static void
test_scored (Demo *demo, gconstpointer unused)
{
  const SpelchBit *up = demo_bit ("up-cut-6.35x25"), *down = demo_bit ("down-cut-6.35x25");
  demo->part->bits[demo->part->n_bits - 1] = *down;
  spelch_plan_make_two (spelch_shop_constants (), demo->part, demo->cut, up, down, &demo->plan);
  g_autofree SpelchMotion *motion = motion_of (demo, up);
  g_assert_cmpuint (motion->n_passes, ==, demo->plan.n_passes);
  g_assert_cmpuint (motion->passes[0].bit, ==, 1);
  g_assert_cmpfloat (motion->passes[0].axial.mid, <, 0);
  g_assert_cmpfloat (motion->passes[1].axial.mid, >, 0);
  g_assert_cmpfloat_with_epsilon (motion->passes[0].feed_per_tooth, demo->plan.scoring.feed_per_tooth, 1e-12);
}

/* Nothing that can be fed is nothing that moves; and any angle gives a frame. */
static void
test_nothing (Demo *demo, gconstpointer unused)
{
  g_autofree SpelchMotionFrame *frame = g_new (SpelchMotionFrame, 1);
  g_autofree SpelchMotion *motion = motion_with (demo, "compression-6.35x22");
  spelch_motion_at (motion, 99, NAN, frame);
  g_assert_cmpuint (frame->pass, ==, motion->n_passes - 1);
  g_assert_cmpfloat (frame->turned, ==, 0);
  spelch_motion_at (motion, 0, 1e9, frame);
  g_assert_cmpfloat (frame->turned, ==, spelch_motion_length (&motion->passes[0]));
  demo->plan.n_passes = 0;
  g_autofree SpelchMotion *none = motion_of (demo, demo_bit ("compression-6.35x22"));
  spelch_motion_at (none, 0, 1, frame);
  g_assert_cmpuint (none->n_passes + frame->n_chips + frame->n_teeth, ==, 0);
}

int
main (int argc, char **argv)
{
  g_test_init (&argc, &argv, NULL);
  g_test_add_func ("/motion/forces", test_forces);
#define ADD(name, function) g_test_add ("/motion/" name, Demo, NULL, demo_set_up, function, demo_tear_down)
  ADD ("signs", test_signs);
  ADD ("chip-directions", test_chip_directions);
  ADD ("chip-ends", test_chip_ends);
  ADD ("packing", test_packing);
  ADD ("teeth", test_teeth);
  ADD ("opened", test_opened);
  ADD ("words", test_words);
  ADD ("changes", test_changes);
  ADD ("scored", test_scored);
  ADD ("nothing", test_nothing);
  return g_test_run ();
}
