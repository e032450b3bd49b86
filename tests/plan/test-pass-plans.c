/* SPDX-License-Identifier: GPL-3.0-or-later
 *
 * Pass plans: a scoring pass with another bit, an onion skin, a finishing pass, full depth and steps. Depths
 * and grades are worked out here by hand from the demo's board: 13 plies, the faces 1.3 mm, 18.0 mm in all.
 */
#include "on-demo.h"

#include "files/shop-data.h"
#include "plan/loads.h"
#include "plan/words.h"

#include <math.h>
#include <string.h>

static const SpelchNumbers MM = { SPELCH_UNIT_MM, SPELCH_INCH_FRACTION, '.' };

static void
hold (Demo *demo, SpelchPassPlan plan)
{
  demo->cut->held.plan_held = true;
  demo->cut->held.plan = plan;
}

static void
plan_two (Demo *demo, const SpelchBit *bit, const SpelchBit *scorer)
{
  spelch_plan_make_two (spelch_shop_constants (), demo->part, demo->cut, bit, scorer, &demo->plan);
}

/* The face ply is 1.3 mm; the tip may stand 0.25 mm less deep than set from the bed: 0.10 set, 0.05 bed, 0.10
 * board. 1.55 mm, in tenths 1.6. The down-cut presses the whole ply in, the up-cut draws the back in: both
 * clean, where the up-cut alone tears the face (common practice, no source). */
static void
test_scored (Demo *demo, gconstpointer unused)
{
  demo_plan_with (demo, "up-cut-6.35x25");
  g_assert_cmpint (demo_grade (demo, SPELCH_SIDE_MOTOR), >=, 4);
  plan_two (demo, demo_bit ("up-cut-6.35x25"), demo_bit ("down-cut-6.35x25"));
  const SpelchPlan *plan = &demo->plan;
  g_assert_cmpint (plan->pass_plan, ==, SPELCH_PASS_PLAN_SCORED);
  g_assert_true (plan->severs_face);
  g_assert_cmpuint (plan->passes[0].bit, ==, 1);
  g_assert_cmpfloat_with_epsilon (plan->passes[0].tip_mm, 1.6, 1e-9);
  g_assert_cmpuint (plan->passes[1].bit, ==, 0);
  g_assert_cmpfloat_with_epsilon (plan->passes[1].from_mm, 1.6, 1e-9);
  g_assert_cmpint (demo_grade (demo, SPELCH_SIDE_MOTOR), ==, 1);
  g_assert_cmpint (demo_grade (demo, SPELCH_SIDE_FAR), ==, 1);
  g_assert_cmpint (spelch_plan_worst (plan, SPELCH_SIDE_MOTOR)->pass, ==, 1);
  g_assert_cmpint (spelch_plan_worst (plan, SPELCH_SIDE_FAR)->pass, ==, (int)plan->n_passes);
  g_assert_cmpfloat_with_epsilon (plan->windows.nominal.first_pass.from, 1.3, 1e-9);
  g_assert_cmpfloat_with_epsilon (plan->windows.robust.first_pass.from, 1.55, 1e-9);
  g_assert_true (spelch_plan_sure (plan, SPELCH_SIDE_MOTOR));
  g_autofree char *sentence = spelch_words_pass_plan (plan, &MM);
  g_assert_nonnull (strstr (sentence, "1.6 mm"));
  g_assert_nonnull (strstr (sentence, "whole face layer"));
}

/* 0.8 of 1.3 mm severed: pulled out 2, severed before 1 fewer, and the grain can cost no more than the one
 * that is left: 1 + 2 - 1 + 1 = 3. */
static void
test_partly_scored (Demo *demo, gconstpointer unused)
{
  demo->cut->held.score = spelch_length_mm (0.8);
  plan_two (demo, demo_bit ("up-cut-6.35x25"), demo_bit ("down-cut-6.35x25"));
  const SpelchEdge *edge = spelch_plan_worst (&demo->plan, SPELCH_SIDE_MOTOR);
  g_assert_false (demo->plan.severs_face);
  g_assert_cmpint (edge->load, ==, SPELCH_LOAD_PULL_OUT);
  g_assert_cmpint (spelch_edge_points (edge, SPELCH_TERM_SCORED), ==, -1);
  g_assert_cmpint (edge->grade, ==, 3);
  g_autofree char *reason = spelch_words_edge_reason (&demo->plan, SPELCH_SIDE_MOTOR, &MM);
  g_assert_nonnull (strstr (reason, "only the outer part"));
  g_assert_nonnull (strstr (reason, "1.6 mm"));
}

/* A straight bit costs 1 point on plywood, a severed outer part takes it away again, and never more: 1. On
 * MDF nothing is to be mended. */
static void
test_scored_not_under_zero (Demo *demo, gconstpointer unused)
{
  demo->cut->held.score = spelch_length_mm (0.8);
  plan_two (demo, demo_bit ("straight-8x25"), demo_bit ("down-cut-6.35x25"));
  const SpelchEdge *edge = spelch_plan_worst (&demo->plan, SPELCH_SIDE_MOTOR);
  g_assert_cmpint (spelch_edge_points (edge, SPELCH_TERM_SCORED), ==, -1);
  g_assert_cmpint (edge->grade, ==, 1);
  demo_take_board (demo, "mdf-18");
  plan_two (demo, demo_bit ("straight-8x25"), demo_bit ("down-cut-6.35x25"));
  edge = spelch_plan_worst (&demo->plan, SPELCH_SIDE_MOTOR);
  g_assert_cmpint (spelch_edge_points (edge, SPELCH_TERM_SCORED), ==, 0);
}

/* In a shallow pass a compression bit cuts with its up-shear: it tears what it was to sever. */
static void
test_compression_cannot_score (Demo *demo, gconstpointer unused)
{
  const double depths[] = { 0.8, 1.6 };
  for (guint i = 0; i < G_N_ELEMENTS (depths); i++)
    {
      demo->cut->held.score = spelch_length_mm (depths[i]);
      plan_two (demo, demo_bit ("up-cut-6.35x25"), demo_bit ("compression-6.35x22"));
      const SpelchEdge *edge = spelch_plan_worst (&demo->plan, SPELCH_SIDE_MOTOR);
      g_assert_cmpint (edge->load, ==, SPELCH_LOAD_PULL_OUT);
      g_assert_cmpint (spelch_edge_points (edge, SPELCH_TERM_SCORED), ==, 0);
      g_assert_cmpint (edge->grade, >=, 4);
    }
  g_autofree char *sentence = spelch_words_pass_plan (&demo->plan, &MM);
  g_assert_nonnull (strstr (sentence, "doesn't score"));
}

/* Each bit has speed, feed and entry of its own. The down-cut ramps in at 1.5 degrees over 2080 mm, so at its
 * feed it takes (2080 + 1.6 / tan 1.5) / feed; what there is to guard is the worse of both stages. */
static void
test_stages_join (Demo *demo, gconstpointer unused)
{
  SpelchPlan *plan = &demo->plan;
  demo_plan_with (demo, "down-cut-6.35x25");
  plan_two (demo, demo_bit ("up-cut-6.35x25"), demo_bit ("down-cut-6.35x25"));
  double way = 2080 + 1.6 / tan (1.5 * M_PI / 180);
  g_assert_cmpint (plan->scoring.entry.kind, ==, SPELCH_ENTRY_RAMP);
  g_assert_cmpint (plan->entry.kind, ==, SPELCH_ENTRY_PLUNGE);
  g_assert_cmpfloat_with_epsilon (plan->scoring.time_s, way / plan->passes[0].feed_mm_min * 60, 1e-6);
  g_assert_cmpfloat_with_epsilon (plan->path_mm, 2080.0 * plan->n_passes, 1e-6);
  /* A down-cut presses its chips into the groove, an up-cut carries them out: it is fed more slowly. */
  g_assert_cmpfloat (plan->passes[0].feed_mm_min, <, plan->passes[1].feed_mm_min);
  g_assert_cmpfloat (plan->feed_mm_min, ==, plan->passes[1].feed_mm_min);
  double rest = 0;
  for (guint i = 1; i < plan->n_passes; i++)
    rest += 2080 / plan->passes[i].feed_mm_min * 60;
  g_assert_cmpfloat (plan->time_s, >, plan->scoring.time_s + rest);
}

/* What is wrong with the scoring bit is wrong with the plan, and says which bit it is. */
static void
test_scoring_bit_checked (Demo *demo, gconstpointer unused)
{
  SpelchBit left = *demo_bit ("down-cut-6.35x25");
  left.hand = SPELCH_HAND_LEFT;
  plan_two (demo, demo_bit ("up-cut-6.35x25"), &left);
  g_assert_cmpint (demo->plan.verdict, ==, SPELCH_VERDICT_DO_NOT_CUT);
  for (guint i = 0; i < demo->plan.n_stops; i++)
    if (demo->plan.stops[i].kind == SPELCH_STOP_HAND)
      {
        g_autofree char *sentence = spelch_words_stop (&demo->plan.stops[i], &MM);
        g_assert_cmpuint (demo->plan.stops[i].bit, ==, 1);
        g_assert_true (g_str_has_prefix (sentence, "With the scoring bit"));
      }
  g_assert_true (demo_has_stop (demo, SPELCH_STOP_HAND));
  plan_two (demo, &left, demo_bit ("down-cut-6.35x25"));
  g_assert_true (demo_has_stop (demo, SPELCH_STOP_HAND));
}

/* A narrower bit needs two tracks to make room for an 8 mm one. */
static void
test_narrow_scorer (Demo *demo, gconstpointer unused)
{
  plan_two (demo, demo_bit ("up-cut-8x32"), demo_bit ("down-cut-6.35x25"));
  g_assert_cmpint (demo->plan.passes[0].tracks, ==, 2);
  plan_two (demo, demo_bit ("up-cut-6.35x25"), demo_bit ("down-cut-6.35x25"));
  g_assert_cmpint (demo->plan.passes[0].tracks, ==, 1);
}

/* Held in the file, with the bit among the part's; without that bit there is no scoring. */
static void
test_held (Demo *demo, gconstpointer unused)
{
  hold (demo, SPELCH_PASS_PLAN_SCORED);
  demo_plan_with (demo, "up-cut-6.35x25");
  g_assert_cmpstr (demo->plan.scoring.bit, ==, "");
  spelch_part_put_bit (demo->part, demo_bit ("down-cut-6.35x25"));
  g_strlcpy (demo->cut->held.score_bit, "down-cut-6.35x25", SPELCH_ID_SIZE);
  demo_plan_with (demo, "up-cut-6.35x25");
  g_assert_cmpstr (demo->plan.scoring.bit, ==, "down-cut-6.35x25");
  g_assert_cmpint (demo_grade (demo, SPELCH_SIDE_MOTOR), ==, 1);
}

/* The pass before the last stops 0.5 mm above the far face, at 17.5; the last loads the heights from the
 * overcut to 0.5 above it. With 6.35 mm of up-shear that is all up: clean, and it lifts. */
static void
test_skin (Demo *demo, gconstpointer unused)
{
  hold (demo, SPELCH_PASS_PLAN_SKIN);
  demo_plan_with (demo, "compression-6.35x22");
  const SpelchPlan *plan = &demo->plan;
  const SpelchPass *last = &plan->passes[plan->n_passes - 1];
  g_assert_cmpint (plan->pass_plan, ==, SPELCH_PASS_PLAN_SKIN);
  g_assert_cmpfloat (plan->skin_mm, ==, 0.5);
  g_assert_cmpfloat_with_epsilon (last->from_mm, 17.5, 1e-9);
  g_assert_cmpfloat_with_epsilon (last->tip_mm, 18 + plan->overcut, 1e-9);
  g_assert_cmpint (demo_grade (demo, SPELCH_SIDE_FAR), ==, 1);
  g_assert_cmpint (demo_grade (demo, SPELCH_SIDE_MOTOR), ==, 1);
  g_assert_cmpfloat (plan->last_axial_n, >, 0);
  g_autofree char *sentence = spelch_words_pass_plan (plan, &MM);
  g_assert_nonnull (strstr (sentence, "skin of 0.5 mm"));
  g_assert_nonnull (strstr (sentence, "up-shear alone: clean, but it lifts"));
}

/* o + s: with 0.3 mm of overcut and 0.5 mm of skin, 0.8 mm of up-shear serve and 0.7 don't. */
static void
test_skin_up_shear (Demo *demo, gconstpointer unused)
{
  SpelchBit bit = *demo_bit ("compression-6.35x22");
  hold (demo, SPELCH_PASS_PLAN_SKIN);
  demo->cut->held.overcut_held = true;
  demo->cut->held.overcut = spelch_length_mm (0.3);
  const double up_shear[] = { 0.81, 0.79 };
  for (guint i = 0; i < 2; i++)
    {
      bit.up_shear = spelch_length_mm (up_shear[i]);
      demo_plan_bit (demo, &bit);
      const SpelchEdge *edge = spelch_plan_worst (&demo->plan, SPELCH_SIDE_FAR);
      g_autofree char *sentence = spelch_words_pass_plan (&demo->plan, &MM);
      g_assert_cmpint (edge->load, ==, i == 0 ? SPELCH_LOAD_PRESS_IN : SPELCH_LOAD_PULL_OUT);
      g_assert_true ((strstr (sentence, "up-shear alone: clean") != NULL) == (i == 0));
    }
}

/* Held at 1 mm; a blind cut has no far face to leave a skin at. */
static void
test_skin_held (Demo *demo, gconstpointer unused)
{
  hold (demo, SPELCH_PASS_PLAN_SKIN);
  demo->cut->held.skin = spelch_length_mm (1);
  demo_plan_with (demo, "down-cut-6.35x25");
  g_assert_cmpfloat_with_epsilon (demo->plan.passes[demo->plan.n_passes - 1].from_mm, 17, 1e-9);
  demo_take_cut (demo, "shelf-dado");
  hold (demo, SPELCH_PASS_PLAN_SKIN);
  demo_plan_with (demo, "down-cut-6.35x25");
  g_assert_cmpfloat (demo->plan.skin_mm, ==, 0);
  g_assert_cmpfloat_with_epsilon (demo->plan.passes[demo->plan.n_passes - 1].tip_mm, 9, 1e-9);
}

/* A 4 mm bit takes steps of 8 mm, so its 8 mm of up-shear never clear the 1.3 mm of face ply in the first
 * pass: torn. A last pass at full depth stands at 18.3, far beyond 8 + 1.3: clean, if the tear is smaller
 * than the 0.5 mm left. */
static void
test_finished (Demo *demo, gconstpointer unused)
{
  SpelchBit bit = *demo_bit ("compression-6.35x22");
  bit.diameter = spelch_length_mm (4);
  bit.up_shear = spelch_length_mm (8);
  demo_plan_bit (demo, &bit);
  g_assert_cmpint (spelch_plan_worst (&demo->plan, SPELCH_SIDE_MOTOR)->load, ==, SPELCH_LOAD_PULL_OUT);
  hold (demo, SPELCH_PASS_PLAN_FINISHED);
  demo_plan_bit (demo, &bit);
  const SpelchEdge *edge = spelch_plan_worst (&demo->plan, SPELCH_SIDE_MOTOR);
  const SpelchPass *last = &demo->plan.passes[demo->plan.n_passes - 1];
  g_assert_true (last->finishing && edge->on_finishing);
  g_assert_cmpfloat (last->side_allowance_mm, ==, 0.5);
  g_assert_cmpfloat (last->from_mm, ==, 0);
  g_assert_cmpint (edge->grade, ==, 1);
  g_autofree char *sentence = spelch_words_pass_plan (&demo->plan, &MM);
  g_assert_nonnull (strstr (sentence, "0.5 mm off the finished line"));
  g_assert_nonnull (strstr (sentence, "smaller than that"));
}

/* Along a straight wall the finishing pass takes 0.5 mm, in an inside corner it cuts as in a slot. */
static void
test_finishing_corner (Demo *demo, gconstpointer unused)
{
  const SpelchPass pass = { .tip_mm = 18.3, .side_allowance_mm = 0.5, .tracks = 1, .finishing = true };
  SpelchCase c;
  SpelchLoads loads;
  for (int i = 0; i < 2; i++)
    {
      demo->cut->corner_radius = spelch_length_mm (i == 0 ? 0 : 10);
      spelch_case_prepare (&c, spelch_shop_constants (), demo->part, demo->cut,
                           demo_bit ("compression-6.35x22"));
      spelch_loads_find (&c, &pass, 25, &loads);
      g_assert_cmpfloat_with_epsilon (loads.engaged, i == 0 ? 0.5 : 6.35, 1e-9);
    }
}

/* All at once, or two passes at least, whatever would be quicker; 6.35 mm and more take 18.3 mm at once when
 * they cut so long. */
static void
test_full_and_stepped (Demo *demo, gconstpointer unused)
{
  hold (demo, SPELCH_PASS_PLAN_FULL);
  demo_plan_with (demo, "compression-12x42");
  g_assert_cmpuint (demo->plan.n_passes, ==, 1);
  g_assert_cmpint (demo->plan.pass_plan, ==, SPELCH_PASS_PLAN_FULL);
  hold (demo, SPELCH_PASS_PLAN_STEPPED);
  demo_plan_with (demo, "compression-12x42");
  g_assert_cmpuint (demo->plan.n_passes, >=, 2);
  g_assert_cmpint (demo->plan.pass_plan, ==, SPELCH_PASS_PLAN_STEPPED);
}

/* Every way of dividing the depth, with every bit of the starter set, in every board and cut: passes go down
 * without gaps to where the cut ends, there are no more than there is room for, and every number is finite.
 */
static void
assert_whole (const Demo *demo)
{
  const SpelchPlan *plan = &demo->plan;
  double above = 0;
  g_assert_cmpuint (plan->n_passes, <=, SPELCH_MAX_PASSES);
  for (guint i = 0; i < plan->n_passes; i++)
    {
      const SpelchPass *pass = &plan->passes[i];
      g_assert_cmpfloat (pass->from_mm, ==, pass->finishing ? 0 : above);
      g_assert_true (pass->finishing || pass->tip_mm > above);
      g_assert_true (isfinite (pass->speed_rpm) && isfinite (pass->feed_mm_min));
      above = pass->tip_mm;
    }
  if (plan->n_passes > 0)
    g_assert_cmpfloat_with_epsilon (above, plan->through_depth + plan->overcut, 1e-9);
  const double figures[] = { plan->time_s,        plan->path_mm,     plan->edge_path_m,  plan->cost,
                             plan->life_m_left,   plan->power_w.mid, plan->axial_mean_n, plan->last_axial_n,
                             plan->hold_needed_n, plan->hold_factor, plan->stress_mpa,   plan->wall_heat };
  for (guint i = 0; i < G_N_ELEMENTS (figures); i++)
    g_assert_true (isfinite (figures[i]));
  for (guint i = 0; i < plan->n_edges; i++)
    g_assert_true (plan->edges[i].pass <= (int)plan->n_passes && plan->edges[i].grade <= 5);
}

static void
test_all (Demo *demo, gconstpointer unused)
{
  guint n_bits, n_boards, whole = 0;
  const SpelchBit *bits = spelch_shop_bits (&n_bits);
  const SpelchBoard *boards = spelch_shop_boards (&n_boards);
  spelch_part_put_bit (demo->part, demo_bit ("down-cut-6.35x25"));
  for (guint board = 0; board < n_boards; board++)
    for (guint cut = 0; cut < demo->part->n_cuts; cut++)
      for (int kind = SPELCH_PASS_PLAN_FULL; kind <= SPELCH_PASS_PLAN_SKIN; kind++)
        {
          demo_take_board (demo, boards[board].id);
          demo_take_cut (demo, demo->part->cuts[cut].id);
          hold (demo, (SpelchPassPlan)kind);
          g_strlcpy (demo->cut->held.score_bit, "down-cut-6.35x25", SPELCH_ID_SIZE);
          for (guint i = 0; i < n_bits; i++)
            {
              demo_plan_bit (demo, &bits[i]);
              assert_whole (demo);
              whole += demo->plan.n_passes > 0;
            }
        }
  g_assert_cmpuint (whole, >, 1000);
}

#define ADD(name, function)                                                                                  \
  g_test_add ("/pass-plans/" name, Demo, NULL, demo_set_up, function, demo_tear_down)

int
main (int argc, char **argv)
{
  g_test_init (&argc, &argv, NULL);
  ADD ("scored/whole-layer", test_scored);
  ADD ("scored/outer-part", test_partly_scored);
  ADD ("scored/not-under-zero", test_scored_not_under_zero);
  ADD ("scored/compression-cannot", test_compression_cannot_score);
  ADD ("scored/stages", test_stages_join);
  ADD ("scored/checked", test_scoring_bit_checked);
  ADD ("scored/narrow", test_narrow_scorer);
  ADD ("scored/held", test_held);
  ADD ("skin/lifts", test_skin);
  ADD ("skin/up-shear", test_skin_up_shear);
  ADD ("skin/held", test_skin_held);
  ADD ("finished/thin-bit", test_finished);
  ADD ("finished/corner", test_finishing_corner);
  ADD ("all", test_all);
  ADD ("full-and-stepped", test_full_and_stepped);
  return g_test_run ();
}
