/* SPDX-License-Identifier: GPL-3.0-or-later
 *
 * What the shop log changes is told beside every figure that it changes, with the entries it stands on; what
 * it doesn't change yet is told as well.
 */
#include "files/shop-data.h"
#include "on-demo.h"
#include "plan/corrections.h"
#include "plan/words-log.h"
#include "plan/words-why.h"

#include <string.h>

static const SpelchNumbers PLAIN = { SPELCH_UNIT_MM, SPELCH_INCH_DECIMAL, '.' };

static void
assert_waiting (const SpelchLogEntry *entries, guint n, const char *said)
{
  SpelchTally tally
      = spelch_corrections_tally ("birch-ply-18", demo_bit ("down-cut-6.35x25"), false, entries, n);
  g_autofree char *words = spelch_words_log_waiting (&tally, 2, false, &PLAIN);
  g_assert_cmpstr (words, ==, said);
}

/* What an edge is told of entries that correct nothing yet. */
static void
test_words_waiting (void)
{
  const SpelchLogEntry entries[] = {
    demo_entry ("2026-05-01", SPELCH_FACE_B, 3, 4),
    demo_entry ("2026-05-02", SPELCH_FACE_B, 3, 3),
    demo_entry ("2026-05-03", SPELCH_FACE_B, 3, 3),
  };
  assert_waiting (entries, 0, "");
  assert_waiting (entries, 1,
                  "Your log on this edge so far: 1 worse than reckoned. That is 1 of the 2 entries that must "
                  "agree, and outnumber those against, before the grade is corrected.");
  assert_waiting (entries, 2,
                  "Your log on this edge so far: 1 worse than reckoned, 1 as reckoned. That is 1 of the 2 "
                  "entries that must agree, and outnumber those against, before the grade is corrected.");
  assert_waiting (entries + 1, 2, "The far side came out as reckoned in 2 cuts, so nothing is corrected.");
}

static char *
why (const Demo *demo, SpelchWhyKind kind, const SpelchLogEntry *entries, guint n)
{
  const SpelchWhyCase of = { spelch_shop_constants (),
                             spelch_shop_constant_source,
                             demo->part,
                             demo->cut,
                             demo_bit ("compression-6.35x22"),
                             &demo->plan,
                             NULL,
                             entries,
                             n };
  g_auto (GStrv) chain = spelch_words_why (kind, &of, &PLAIN);
  return g_strjoinv ("\n", chain);
}

static void
assert_why (const Demo *demo, SpelchWhyKind kind, const SpelchLogEntry *entries, guint n, const char *what,
            bool said)
{
  g_autofree char *words = why (demo, kind, entries, n);
  if ((strstr (words, what) != NULL) != said)
    g_test_message ("“%s” is %sin\n%s", what, said ? "not " : "", words);
  g_assert_cmpint (strstr (words, what) != NULL, ==, said);
}

static char *
in_words (const char *format, double before, double now)
{
  g_autofree char *was = spelch_words_feed (&PLAIN, before), *is = spelch_words_feed (&PLAIN, now);
  return g_strdup_printf (format, was, is);
}

/* What a figure would be without the log is what it is once the log is switched off. */
static void
test_told_beside (Demo *demo, gconstpointer unused)
{
  SpelchLogEntry reading = demo_entry ("2026-05-31", SPELCH_FACE_A, 1, 1);
  reading.power_w = 310;
  reading.load_w = 930;
  demo->part->machine.power_w = 1200; /* so that a spindle's load is what limits the feed */
  demo_plan_with (demo, "compression-6.35x22");
  const SpelchPlan without = demo->plan;
  for (SpelchWhyKind kind = 0; kind < SPELCH_N_WHYS; kind++)
    assert_why (demo, kind, &reading, 1, "log's entries", false);
  g_autofree char *nothing = spelch_words_log_corrects (&without, &PLAIN);
  g_assert_cmpstr (nothing, ==, "");

  spelch_corrections_calibrate ("birch-ply-18", &reading, 1, &demo->part->calibration);
  demo_plan_with (demo, "compression-6.35x22");
  const SpelchPlan *with = &demo->plan;
  g_assert_cmpfloat (with->feed_mm_min, <, without.feed_mm_min);
  g_autofree char *lowers
      = in_words ("The log's entries lower the feed from %s to %s.", without.feed_mm_min, with->feed_mm_min);
  assert_why (demo, SPELCH_WHY_FEED, &reading, 1, lowers, true);
  assert_why (demo, SPELCH_WHY_FEED, &reading, 1,
              "The reading: 930 W on 2026-05-31, where the tables' forces would have taken 310 W.", true);
  assert_why (demo, SPELCH_WHY_FEED, NULL, 0, lowers, true);
  assert_why (demo, SPELCH_WHY_FEED, NULL, 0, "The reading:", false);
  assert_why (demo, SPELCH_WHY_CHIP, NULL, 0, "Without the log's entries the largest chip would be", true);
  assert_why (demo, SPELCH_WHY_TIME, NULL, 0, "Without the log's entries the cut would take", true);
  assert_why (demo, SPELCH_WHY_WEAR, NULL, 0, "Without the log's entries the edge would be good for about ",
              true);
  assert_why (demo, SPELCH_WHY_SPINDLE, NULL, 0, "Without the log's entries",
              with->speed_rpm != without.speed_rpm);
  g_autofree char *line = spelch_words_log_corrects (with, &PLAIN);
  g_assert_cmpstr (line, ==, "Your log corrects the forces: 3.00 times");

  /* The part goes by an earlier state of the log: no reading is named for it. */
  demo->part->calibration.factor = 0.5;
  demo_plan_with (demo, "compression-6.35x22");
  assert_why (demo, SPELCH_WHY_FEED, &reading, 1, "The reading:", false);
  g_assert_cmpfloat (with->feed_mm_min, >, without.feed_mm_min);
  g_autofree char *raises
      = in_words ("The log's entries raise the feed from %s to %s.", without.feed_mm_min, with->feed_mm_min);
  assert_why (demo, SPELCH_WHY_FEED, &reading, 1, raises, true);
}

int
main (int argc, char **argv)
{
  g_test_init (&argc, &argv, NULL);
  g_test_add_func ("/why-log/waiting", test_words_waiting);
  g_test_add ("/why-log/told-beside", Demo, NULL, demo_set_up, test_told_beside, demo_tear_down);
  return g_test_run ();
}
