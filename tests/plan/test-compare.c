/* SPDX-License-Identifier: GPL-3.0-or-later
 *
 * Bits side by side on the demo's outline: birch plywood 18 mm with 1.3 mm faces. That an up-cut leaves the
 * motor-side face torn and a compression bit with up-shear 6.35 mm keeps it from 6.35 + 1.3 mm on: Filson,
 * Rohrbacher and Kaziunas France 2017, Design for CNC, chapter 6; the sum is geometry.
 */
#include "on-demo.h"

#include "files/shop-data.h"
#include "plan/words-compare.h"

#include <string.h>

static const SpelchNumbers MM = { SPELCH_UNIT_MM, SPELCH_INCH_FRACTION, '.' };

static GArray *
compared (Demo *demo, const char *const *ids, bool tied)
{
  const SpelchBit *bits[SPELCH_COMPARE_MOST];
  guint n = 0;
  for (; ids[n] != NULL; n++)
    bits[n] = demo_bit (ids[n]);
  return spelch_compare (spelch_shop_constants (), demo->part, demo->cut, bits, n, tied);
}

static const SpelchCompared *
column (GArray *columns, guint i)
{
  return &g_array_index (columns, SpelchCompared, i);
}

static SpelchStanding
standing (GArray *columns, guint i, SpelchRow row)
{
  return column (columns, i)->values[row].standing;
}

static const char *const FOUR[]
    = { "compression-6.35x22", "down-cut-6.35x25", "up-cut-6.35x25", "straight-6.35x25", NULL };

static void
test_standings (Demo *demo, gconstpointer unused)
{
  g_autoptr (GArray) columns = compared (demo, FOUR, false);
  g_assert_cmpuint (columns->len, ==, 4);
  for (guint i = 0; i < 4; i++)
    {
      demo_plan_with (demo, FOUR[i]);
      g_assert_cmpfloat (column (columns, i)->values[SPELCH_ROW_TIME].value, ==, demo->plan.time_s);
      g_assert_cmpfloat (column (columns, i)->values[SPELCH_ROW_FEED].value, ==, demo->plan.feed_mm_min);
    }
  g_assert_cmpint (standing (columns, 0, SPELCH_ROW_MOTOR_EDGE), ==, SPELCH_STANDING_BEST);
  g_assert_cmpint (standing (columns, 1, SPELCH_ROW_MOTOR_EDGE), ==, SPELCH_STANDING_BEST);
  g_assert_cmpint (standing (columns, 2, SPELCH_ROW_MOTOR_EDGE), ==, SPELCH_STANDING_WORST);
  /* down-shear presses, up-shear lifts, straight edges do neither */
  g_assert_cmpint (standing (columns, 1, SPELCH_ROW_SEAT), ==, SPELCH_STANDING_BEST);
  g_assert_cmpint (standing (columns, 2, SPELCH_ROW_SEAT), ==, SPELCH_STANDING_WORST);
  g_assert_cmpint (standing (columns, 3, SPELCH_ROW_SEAT), ==, SPELCH_STANDING_BETWEEN);
  /* a quicker spindle is neither better nor worse */
  for (guint i = 0; i < 4; i++)
    g_assert_cmpint (standing (columns, i, SPELCH_ROW_SPEED), ==, SPELCH_STANDING_BETWEEN);
}

static void
test_words (Demo *demo, gconstpointer unused)
{
  const char *const two[] = { "compression-6.35x22", "up-cut-6.35x25", NULL };
  g_autoptr (GArray) columns = compared (demo, two, false);
  g_auto (GStrv) differs = spelch_words_differs (columns, demo->part);
  g_assert_cmpstr (differs[0], ==, "Only “Compression 6.35 mm (1/4 in)” leaves the seen edges as accepted.");
  g_autofree char *seat = spelch_words_compared (column (columns, 1), SPELCH_ROW_SEAT, &MM);
  g_assert_true (g_str_has_prefix (seat, "lifts "));
  /* Whoever accepts a torn face has the choice. */
  demo->part->accepted_seen = 5;
  g_auto (GStrv) either = spelch_words_differs (columns, demo->part);
  g_assert_true (g_str_has_prefix (either[0], "Both leave every edge as accepted; "));
}

/* A bit that is too short may not be used, and is neither best nor worst in anything. */
static void
test_refused (Demo *demo, gconstpointer unused)
{
  const char *const two[] = { "down-cut-3.2x12", "compression-6.35x22", NULL };
  g_autoptr (GArray) columns = compared (demo, two, false);
  g_assert_cmpint (column (columns, 0)->plan.verdict, ==, SPELCH_VERDICT_DO_NOT_CUT);
  for (int row = 0; row < SPELCH_N_ROWS; row++)
    for (guint i = 0; i < 2; i++)
      g_assert_cmpint (standing (columns, i, (SpelchRow)row), ==, SPELCH_STANDING_BETWEEN);
  g_auto (GStrv) differs = spelch_words_differs (columns, demo->part);
  g_assert_cmpstr (differs[0], ==, "Only “Compression 6.35 mm (1/4 in)” may be used for this cut.");
  g_assert_null (differs[1]);
}

static void
test_tied (Demo *demo, gconstpointer unused)
{
  const char *const two[] = { "compression-6.35x22", "straight-6.35x25", NULL };
  g_autoptr (GArray) apart = compared (demo, two, false), tied = compared (demo, two, true);
  const SpelchPlan *first = &column (tied, 0)->plan, *second = &column (tied, 1)->plan;
  g_assert_cmpuint (column (apart, 1)->plan.n_passes, !=, column (apart, 0)->plan.n_passes);
  g_assert_cmpuint (second->n_passes, ==, first->n_passes);
  for (guint i = 0; i < first->n_passes; i++)
    g_assert_cmpfloat_with_epsilon (second->passes[i].tip_mm, first->passes[i].tip_mm, 1e-9);
}

/* The motor-side face comes out clean from 7.65 mm on with a compression bit, at any depth with a down-cut
 * and at none with an up-cut. */
static void
test_scan (Demo *demo, gconstpointer unused)
{
  g_autoptr (GArray) columns = compared (demo, FOUR, false);
  SpelchScan scans[3];
  for (guint i = 0; i < 3; i++)
    {
      scans[i] = spelch_compare_scan (spelch_shop_constants (), demo->part, column (columns, i));
      g_assert_cmpfloat (scans[i].step_mm, ==, 0.5);
      g_assert_cmpuint (scans[i].n, ==, 36); /* 18 mm; the overcut is less than a step */
    }
  for (guint j = 0; j < 36; j++)
    {
      double depth = 0.5 * (j + 1);
      g_assert_cmpint (scans[0].motor[j] == 1, ==, depth > 7.65);
      g_assert_cmpuint (scans[1].motor[j], ==, 1);
      g_assert_cmpuint (scans[2].motor[j], >, 1);
    }
}

#define ADD(name, function) g_test_add ("/compare/" name, Demo, NULL, demo_set_up, function, demo_tear_down)

int
main (int argc, char **argv)
{
  g_test_init (&argc, &argv, NULL);
  ADD ("standings", test_standings);
  ADD ("words", test_words);
  ADD ("refused", test_refused);
  ADD ("tied", test_tied);
  ADD ("scan", test_scan);
  return g_test_run ();
}
