/* SPDX-License-Identifier: GPL-3.0-or-later
 *
 * The chain of reasons of an edge carries its own case's numbers: over random cases one input after the other
 * is changed, and what is said changes exactly when the verdict or a number in it does.
 */
#include "trial.h"

#include "chance.h"

#include "plan/words.h"

#include <math.h>

static const SpelchNumbers MM = { SPELCH_UNIT_MM, SPELCH_INCH_FRACTION, '.' };

/* ---- Inputs, each changed by itself ---- */

typedef void (*Change) (Trial *t);

#define SCALED(name, length, by)                                                                             \
  static void name (Trial *t)                                                                                \
  {                                                                                                          \
    length = spelch_length_mm (length.mm * (by));                                                            \
  }

SCALED (diameter, t->bit.diameter, 0.9)
SCALED (cutting_length, t->bit.cutting_length, 1.1)
SCALED (up_shear, t->bit.up_shear, 0.8)
SCALED (overlap, t->bit.overlap, 1.5)
SCALED (depth, t->cut.depth, 0.9)
SCALED (width, t->cut.width, 1.2)
SCALED (face_layer, t->part->board.layers[0].thickness, 1.02)
SCALED (measured, t->part->board.measured, 0.99)
SCALED (first_pass, t->cut.held.passes[0], 1.1)
SCALED (overcut, t->cut.held.overcut, 1.4)

#define CHANGED(name, what)                                                                                  \
  static void name (Trial *t)                                                                                \
  {                                                                                                          \
    what;                                                                                                    \
  }

CHANGED (wear, t->bit.wear = (SpelchWear)((t->bit.wear + 1) % 4))
CHANGED (edges, t->bit.edges = t->bit.edges % 4 + 1)
CHANGED (helix, t->bit.helix_deg *= 0.9)
CHANGED (rake, t->bit.rake_deg += 3)
CHANGED (price, t->bit.price += 10)
CHANGED (up_or_down, t->bit.kind = t->bit.kind == SPELCH_BIT_UP_CUT     ? SPELCH_BIT_DOWN_CUT
                                   : t->bit.kind == SPELCH_BIT_DOWN_CUT ? SPELCH_BIT_UP_CUT
                                                                        : t->bit.kind)
CHANGED (way_up, t->cut.way_up = spelch_face_other (t->cut.way_up))
CHANGED (path, t->cut.path_deg += 20)
CHANGED (end, t->cut.end = (SpelchEnd)((t->cut.end + 1) % 3))
CHANGED (kept, t->cut.kept = (SpelchWall)((t->cut.kept + 1) % 3))
CHANGED (seen, t->cut.seen_a = !t->cut.seen_a)
CHANGED (quantity, t->cut.quantity += 1)
CHANGED (backer, t->cut.backer = spelch_length_mm (t->cut.backer.mm > 0 ? 0 : 6))
CHANGED (speed, t->cut.held.speed_rpm *= 0.8)
CHANGED (feed, t->cut.held.feed_mm_min *= 1.3)
CHANGED (spoilboard, t->part->machine.spoilboard = (SpelchSpoilboard)!t->part->machine.spoilboard)
CHANGED (power, t->part->machine.power_w *= 1.5)
CHANGED (material,
         t->part->board.layers[0].material
         = (SpelchMaterial)((t->part->board.layers[0].material + 1) % (SPELCH_MATERIAL_LAMINATE + 1)))
CHANGED (grain, t->part->board.layers[0].grain = (SpelchGrain)((t->part->board.layers[0].grain + 1) % 4))
CHANGED (grain_deg, t->part->board.layers[0].grain_deg += 30)
CHANGED (area, t->part->holding.area_mm2 *= 0.5)
CHANGED (accepted, t->part->accepted_hidden = t->part->accepted_hidden % 5 + 1)

static const Change changes[]
    = { diameter,   cutting_length, up_shear, overlap,  depth, width,     face_layer, measured,
        first_pass, overcut,        wear,     edges,    helix, rake,      price,      up_or_down,
        way_up,     path,           end,      kept,     seen,  quantity,  backer,     speed,
        feed,       spoilboard,     power,    material, grain, grain_deg, area,       accepted };

/* ---- What is said, and what it is said of ---- */

/* The chain without the sentence on the window, which has tests of its own. */
static char *
said (const SpelchPlan *plan, const SpelchEdge *edge)
{
  g_auto (GStrv) why = spelch_words_arris_why (plan, edge, &MM);
  guint n = g_strv_length (why);
  g_clear_pointer (&why[n - 1], g_free);
  return g_strjoinv ("\n", why);
}

/* The verdict and the numbers, to the places that are shown, read off the plan. */
static char *
numbers (const SpelchPlan *plan, const SpelchEdge *edge)
{
  GString *text = g_string_new (NULL);
  bool motor = edge->side == SPELCH_SIDE_MOTOR;
  if (plan->slow && motor)
    g_string_append_printf (text, "slow %.1f;", plan->cutting_speed);
  if (edge->grade == 0)
    return g_string_free (text, FALSE);
  g_string_append_printf (text, "%d pass %d %.2f-%.2f finishing %d;", edge->grade, edge->pass,
                          edge->span_from + 1e-9, edge->span_to + 1e-9, edge->on_finishing);
  g_string_append_printf (text, "laminate %d veneer %d;", spelch_plan_is_laminate (plan, edge->side),
                          motor ? plan->near_is_veneer : plan->far_is_veneer);
  if (plan->bit_kind == SPELCH_BIT_COMPRESSION)
    g_string_append_printf (text, "turns over %.2f;", plan->flutes.turn_over + 1e-9);
  for (guint i = 0; i < edge->n_terms; i++)
    {
      const SpelchTerm *term = &edge->terms[i];
      g_string_append_printf (text, "%d: %d %d %s;", term->kind, term->points, term->founding.evidence,
                              term->founding.source);
      if (term->kind == SPELCH_TERM_SHEAR && term->points > 0)
        g_string_append_printf (text, "%d;", edge->by_entry_mm > 0 ? -1 : edge->load == SPELCH_LOAD_NEUTRAL);
      if (term->kind == SPELCH_TERM_CHIP)
        g_string_append_printf (text, "%.2f;", edge->chip_mm);
      if (term->kind == SPELCH_TERM_WEAR)
        g_string_append_printf (text, "%.1f;", plan->blunting);
    }
  return g_string_free (text, FALSE);
}

static void
compare (const SpelchPlan *before, const SpelchPlan *after, guint e)
{
  g_autofree char *old_words = said (before, &before->edges[e]), *new_words = said (after, &after->edges[e]);
  g_autofree char *old_numbers = numbers (before, &before->edges[e]);
  g_autofree char *new_numbers = numbers (after, &after->edges[e]);
  bool words_alike = g_str_equal (old_words, new_words);
  if (words_alike != g_str_equal (old_numbers, new_numbers))
    g_test_message ("%s\n%s\nnow\n%s\n%s", old_numbers, old_words, new_numbers, new_words);
  g_assert_true (words_alike == g_str_equal (old_numbers, new_numbers));
}

static void
check_why (Trial *t)
{
  t->cut.held.speed_rpm = 1000 * g_rand_int_range (t->random, 8, 25);
  t->cut.held.feed_mm_min = round (chance_between (t->random, 300, 9000));
  t->cut.held.n_passes = 1;
  t->cut.held.passes[0] = spelch_length_mm (spelch_board_thickness (&t->part->board) * 0.4);
  t->cut.held.overcut_held = true;
  t->cut.held.overcut = spelch_length_mm (0.3);
  trial_plan (t, &t->plan);
  t->counts = t->plan.n_passes > 0;
  for (gsize i = 0; i < G_N_ELEMENTS (changes); i++)
    {
      Trial other = *t;
      other.part = spelch_part_copy (t->part);
      changes[i](&other);
      trial_plan (&other, &other.plan);
      spelch_part_unref (other.part);
      for (guint e = 0; other.plan.n_passes > 0 && e < MIN (t->plan.n_edges, other.plan.n_edges); e++)
        compare (&t->plan, &other.plan, e);
      if (g_test_failed ())
        {
          g_test_message ("change %" G_GSIZE_FORMAT, i);
          return;
        }
    }
}

static void
test_why (void)
{
  trial_run (20260801, 0.01, 2, check_why);
}

int
main (int argc, char **argv)
{
  g_test_init (&argc, &argv, NULL);
  g_test_set_nonfatal_assertions ();
  g_test_add_func ("/why/changes-with-its-numbers", test_why);
  return g_test_run ();
}
