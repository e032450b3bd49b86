/* SPDX-License-Identifier: GPL-3.0-or-later
 *
 * Questions posed and answered: what is right by hand, how answers are graded, and which questions have no
 * clear answer.
 */
#include "files/exercise-file.h"
#include "files/shop-data.h"
#include "plan/posed-sound.h"
#include "plan/words-plain.h"
#include "plan/words-posed.h"

#include <string.h>

static const SpelchNumbers MM = { SPELCH_UNIT_MM, SPELCH_INCH_FRACTION, '.' };

#define HEAD "{\"format_version\": 1, \"id\": \"t\", \"title\": \"T\", "
#define OUTLINE                                                                                              \
  "\"cut\": {\"id\": \"c\", \"kind\": \"outline\", \"way_up\": \"a\", \"length\": 2000, \"kept\": "          \
  "\"left\", "                                                                                               \
  "\"seen\": [\"a\"]"
#define HELD "\"length\": 700, \"width\": 300, \"holding\": {\"method\": \"vacuum\", \"area_mm2\": 200000}, "

static SpelchExercise *
exercise_of (const char *text)
{
  g_autoptr (GError) error = NULL;
  SpelchExercise *exercise = spelch_exercise_from_json (text, strlen (text), "t.json", &error);
  g_assert_no_error (error);
  return exercise;
}

static SpelchPosed *
pose (const char *text)
{
  g_autoptr (SpelchExercise) exercise = exercise_of (text);
  return spelch_posed_new (spelch_shop_constants (), exercise, 1, false);
}

static SpelchPosed *
pose_first_pass (void)
{
  return pose (
      HEAD "\"asks\": \"first-pass\", \"board\": \"birch-ply-18\", \"machine\": \"medium-gantry\", \"bits\": "
           "[\"compression-6.35x22\"], " HELD OUTLINE ", \"bit\": \"compression-6.35x22\"}}");
}

static bool
is_right (const SpelchPosed *posed, const char *answer)
{
  SpelchGiven given = spelch_posed_grade (posed, answer, SPELCH_UNIT_MM);
  g_assert_true (given.understood);
  return given.right;
}

/* By hand: 6.35 mm of up-shear and a ply of 1.3 mm make 7.65 mm; the up-shear is known to 0.4 mm, depths are
 * set to 0.1 mm from a bed flat to 0.05 mm, and the board isn't measured: by EN 315 it may be 0.94 mm
 * thinner. */
static void
test_first_pass (void)
{
  g_autoptr (SpelchPosed) posed = pose_first_pass ();
  g_assert_cmpfloat_with_epsilon (posed->just.from, 7.65, 1e-9);
  g_assert_cmpfloat_with_epsilon (posed->depths.from, 7.65 + 0.4 + 0.1 + 0.05 + 0.94, 1e-6);
  g_assert_false (is_right (posed, "7.6"));
  g_assert_false (is_right (posed, "8.5 mm"));
  g_assert_true (is_right (posed, "9.2"));
  g_assert_true (is_right (posed, "9,2 mm"));
  g_assert_true (is_right (posed, "1/2 in"));
  g_assert_false (is_right (posed, "30"));
  g_assert_false (is_right (posed, "none"));
  g_assert_false (spelch_posed_grade (posed, "deep", SPELCH_UNIT_MM).understood);
  g_assert_false (spelch_posed_grade (posed, "-3", SPELCH_UNIT_MM).understood);
  g_assert_true (spelch_posed_grade (posed, "0.5", SPELCH_UNIT_INCH).right);
}

static char *
wrong (const SpelchPosed *posed, const char *answer)
{
  SpelchGiven given = spelch_posed_grade (posed, answer, SPELCH_UNIT_MM);
  return spelch_words_posed_wrong (posed, &given, &MM);
}

/* Each way of being wrong has its own words, with this case's numbers. */
static void
test_wrong_depths (void)
{
  g_autoptr (SpelchPosed) posed = pose_first_pass ();
  g_autofree char *shallow = wrong (posed, "5"), *just = wrong (posed, "8.5"), *deep = wrong (posed, "30");
  g_autofree char *none = wrong (posed, "none"), *right = wrong (posed, "10");
  g_assert_nonnull (strstr (shallow, "3.7 mm")); /* 5 - 1.3 */
  g_assert_nonnull (strstr (shallow, "6.35 mm"));
  g_assert_nonnull (strstr (just, "8.5 mm would do with everything exact"));
  g_assert_nonnull (strstr (just, "9.2 mm is sure"));
  g_assert_nonnull (strstr (deep, "too deep"));
  g_assert_nonnull (strstr (none, "There is one"));
  g_assert_cmpstr (right, ==, "");
}

/* Common practice, no source: up-cut tears the face it lifts, down-cut the one it pushes out. */
static void
test_tears (void)
{
  static const char *const ROWS[][2] = { { "up-cut-6.35x25", "motor" }, { "down-cut-6.35x25", "far" } };
  for (guint i = 0; i < G_N_ELEMENTS (ROWS); i++)
    {
      g_autofree char *text = g_strdup_printf (
          HEAD "\"asks\": \"tears\", \"board\": \"birch-ply-18\", \"machine\": \"medium-gantry\", \"bits\": "
               "[\"%s\"], " HELD OUTLINE ", \"bit\": \"%s\"}}",
          ROWS[i][0], ROWS[i][0]);
      g_autoptr (SpelchPosed) posed = pose (text);
      g_assert_cmpstr (posed->choices[posed->right], ==, ROWS[i][1]);
      g_assert_true (is_right (posed, ROWS[i][1]));
      g_assert_false (is_right (posed, "both"));
      g_assert_true (spelch_posed_is_clear (posed, NULL));
    }
}

/* A blind cut opens one face: two answers, and no talk of a far side. */
static void
test_blind (void)
{
  g_autoptr (SpelchPosed) posed = pose (
      HEAD "\"asks\": \"tears\", \"board\": \"birch-ply-18\", \"machine\": \"medium-gantry\", \"bits\": "
           "[\"up-cut-6.35x25\"], " HELD "\"cut\": {\"id\": \"c\", \"kind\": \"dado\", \"way_up\": \"a\", "
           "\"depth\": 6, \"width\": 18, \"length\": 300, \"path_deg\": 90, \"seen\": [\"a\"], \"bit\": "
           "\"up-cut-6.35x25\"}}");
  g_assert_cmpuint (posed->n_choices, ==, 2);
  g_assert_cmpint (spelch_posed_find (posed, "far"), ==, -1);
  g_assert_true (is_right (posed, "motor"));
}

/* The bits are offered in an order that goes round with the seed, and the same one is right in each. */
static void
test_order_of_bits (void)
{
  g_autoptr (SpelchExercise) exercise = exercise_of (
      HEAD "\"asks\": \"bit\", \"board\": \"birch-ply-18\", \"machine\": \"medium-gantry\", \"bits\": "
           "[\"down-cut-6.35x25\", \"up-cut-6.35x25\", \"straight-6.35x25\"], " HELD
           "\"cut\": {\"id\": \"c\", \"kind\": \"dado\", \"way_up\": \"a\", \"depth\": 6, \"width\": 18, "
           "\"length\": 300, "
           "\"path_deg\": 90, \"seen\": [\"a\"]}}");
  guint places = 0;
  for (guint32 seed = 0; seed < 3; seed++)
    {
      g_autoptr (SpelchPosed) posed = spelch_posed_new (spelch_shop_constants (), exercise, seed, false);
      g_assert_cmpstr (posed->choices[posed->right], ==, "down-cut-6.35x25");
      places |= 1u << posed->right;
    }
  g_assert_cmpuint (places, ==, 7);
}

/* ---- Plain words ---- */

static char *
why_of (const SpelchPosed *posed)
{
  g_auto (GStrv) why = spelch_words_posed_why (posed, &MM);
  return g_strjoinv (" ", why);
}

/* MDF has neither plies nor grain, so turning it over changes nothing: one reason, said once. With a dull bit
 * the reason is another one. */
static void
test_way_up_in_mdf (void)
{
  static const char *const ROWS[][3]
      = { { "new", "either", "no plies and no grain" }, { "dull", "neither", "is dull" } };
  for (guint i = 0; i < G_N_ELEMENTS (ROWS); i++)
    {
      g_autofree char *text = g_strdup_printf (
          HEAD "\"asks\": \"way-up\", \"board\": \"mdf-18\", \"machine\": \"medium-gantry\", \"bits\": "
               "[\"straight-12.7x32\"], " HELD OUTLINE
               ", \"bit\": \"straight-12.7x32\"}, \"vary\": [{\"what\": \"wear\", \"one_of\": [\"%s\"]}]}",
          ROWS[i][0]);
      g_autoptr (SpelchPosed) posed = pose (text);
      g_autofree char *why = why_of (posed);
      g_assert_cmpstr (posed->choices[posed->right], ==, ROWS[i][1]);
      g_assert_nonnull (strstr (why, ROWS[i][2]));
      g_assert_nonnull (strstr (why, "Whichever face"));
    }
}

/* A groove takes away what holds the far face, which is said where it comes in and where it decides. */
static void
test_groove (void)
{
  g_autoptr (SpelchExercise) exercise = exercise_of (
      HEAD
      "\"asks\": \"tears\", \"board\": \"birch-ply-18\", \"machine\": \"medium-gantry\", \"bits\": "
      "[\"down-cut-6.35x25\"], " HELD OUTLINE
      ", \"bit\": \"down-cut-6.35x25\"}, \"vary\": [{\"what\": \"spoilboard\", \"one_of\": [\"fresh\"]}], "
      "\"follow_up\": {\"what\": \"spoilboard\", \"is\": \"cut-here-before\", \"same\": true}}");
  g_autoptr (SpelchPosed) fresh = spelch_posed_new (spelch_shop_constants (), exercise, 1, false);
  g_autoptr (SpelchPosed) cut = spelch_posed_new (spelch_shop_constants (), exercise, 1, true);
  g_autofree char *before = why_of (fresh), *after = why_of (cut);
  const char *groove = spelch_words_plain_groove ();
  g_assert_cmpstr (spelch_words_changed_means (fresh), ==, "");
  g_assert_cmpstr (spelch_words_changed_means (cut), ==, groove);
  g_assert_null (strstr (before, groove));
  g_assert_nonnull (strstr (after, groove));
}

/* By hand: 9.81 N to the kilogram, 4.448 N to the pound (NIST SP 811, from memory). */
static void
test_weights (void)
{
  static const SpelchNumbers INCH = { SPELCH_UNIT_INCH, SPELCH_INCH_FRACTION, '.' };
  static const struct
  {
    double newtons;
    const char *kg, *lb;
  } ROWS[] = { { 98.1, "10 kg", "22 lb" }, { 570, "58 kg", "130 lb" }, { 8, "0.8 kg", "1.8 lb" } };
  for (guint i = 0; i < G_N_ELEMENTS (ROWS); i++)
    {
      g_autofree char *kg = spelch_words_plain_weight (ROWS[i].newtons, &MM);
      g_autofree char *lb = spelch_words_plain_weight (ROWS[i].newtons, &INCH);
      g_assert_cmpstr (kg, ==, ROWS[i].kg);
      g_assert_cmpstr (lb, ==, ROWS[i].lb);
    }
}

/* Each limit that can be answered says what it means at the machine, and no two say the same. */
static void
test_limits_mean (void)
{
  g_autoptr (GHashTable) said = g_hash_table_new (g_str_hash, g_str_equal);
  const SpelchPlan gantry = { .machine = SPELCH_MACHINE_GANTRY }, hand = { .machine = SPELCH_MACHINE_HAND };
  const SpelchPlan gives = { .deflection_mm = 0.05, .deflection_machine_mm = 0.03 };
  for (int kind = 0; kind < SPELCH_N_LIMITS; kind++)
    {
      const char *words = spelch_words_plain_limit ((SpelchLimitKind)kind, &gantry);
      g_assert_true (g_str_has_suffix (words, "."));
      g_assert_true (g_hash_table_add (said, (gpointer)words));
    }
  g_assert_cmpstr (spelch_words_plain_limit (SPELCH_LIMIT_MACHINE, &hand), !=,
                   spelch_words_plain_limit (SPELCH_LIMIT_MACHINE, &gantry));
  g_assert_true (g_hash_table_add (said, (gpointer)spelch_words_plain_limit (SPELCH_LIMIT_BENDING, &gives)));
}

/* What nobody set is what the plan recommends, never 0. */
static void
test_changed_speed (void)
{
  g_autoptr (SpelchExercise) exercise = exercise_of (
      HEAD "\"asks\": \"limit\", \"board\": \"mdf-18\", \"machine\": \"medium-gantry\", \"bits\": "
           "[\"straight-12.7x32\"], " HELD OUTLINE ", \"bit\": \"straight-12.7x32\"}, "
           "\"follow_up\": {\"what\": \"speed\", \"is\": 10000, \"same\": true}}");
  g_autoptr (SpelchPosed) first = spelch_posed_new (spelch_shop_constants (), exercise, 1, false);
  g_autoptr (SpelchPosed) next = spelch_posed_new (spelch_shop_constants (), exercise, 1, true);
  g_autofree char *changed = spelch_words_changed (next, &MM);
  g_autofree char *was = spelch_words_count (first->plan.speed_rpm);
  g_autofree char *expected = g_strdup_printf (" instead of %s rpm.", was);
  g_assert_cmpfloat (first->plan.speed_rpm, >, 0);
  g_assert_nonnull (strstr (changed, expected)); /* the passes that follow are told after it */
}

/* ---- Questions without a clear answer ---- */

static void
doubt_is (const char *text, const char *doubt)
{
  g_autoptr (SpelchPosed) posed = pose (text);
  const char *found = NULL;
  g_assert_false (spelch_posed_is_clear (posed, &found));
  g_assert_cmpstr (found, ==, doubt);
  g_assert_cmpstr (spelch_words_doubt (found), !=, "");
}

static void
test_doubts (void)
{
  /* Every depth keeps a face that a down-cut presses in. */
  doubt_is (
      HEAD "\"asks\": \"first-pass\", \"board\": \"birch-ply-18\", \"machine\": \"medium-gantry\", \"bits\": "
           "[\"down-cut-6.35x25\"], " HELD OUTLINE ", \"bit\": \"down-cut-6.35x25\"}}",
      "shallow");
  /* The first pass stands a hair deeper than what is just deep enough. */
  doubt_is (HEAD
            "\"asks\": \"tears\", \"board\": \"birch-ply-18\", \"machine\": \"medium-gantry\", \"bits\": "
            "[\"compression-6.35x22\"], " HELD OUTLINE
            ", \"bit\": \"compression-6.35x22\", \"held\": {\"passes\": [7.7]}}}",
            "close");
  /* Two straight bits alike in all but the name. */
  doubt_is (
      HEAD
      "\"asks\": \"bit\", \"board\": \"mdf-18\", \"machine\": \"medium-gantry\", \"bits\": "
      "[\"straight-12.7x32\", {\"id\": \"twin\", \"kind\": \"straight\", \"diameter\": "
      "\"1/2 in\", \"shank\": \"1/2 in\", \"cutting_length\": 32, \"overall_length\": \"3 in\", \"edges\": "
      "2, "
      "\"body_material\": \"steel\", \"uncut_centre\": 2.5, \"end_hollow\": 1, \"max_rpm\": 24000}], " HELD
          OUTLINE "}}",
      "close");
  /* Nothing keeps the work down. */
  doubt_is (HEAD
            "\"asks\": \"limit\", \"board\": \"oak-20\", \"machine\": \"medium-gantry\", \"bits\": "
            "[\"straight-12.7x32\"], \"length\": 700, \"width\": 300, \"holding\": {\"method\": \"vacuum\", "
            "\"area_mm2\": 100}, " OUTLINE ", \"bit\": \"straight-12.7x32\"}}",
            "stopped");
}

/* Which seed it was, and that the follow-up's answer isn't meant so. */
static void
test_sound (void)
{
  const char *const text
      = HEAD "\"asks\": \"tears\", \"board\": \"birch-ply-18\", \"machine\": \"medium-gantry\", \"bits\": "
             "[\"up-cut-6.35x25\"], " HELD OUTLINE
             ", \"bit\": \"up-cut-6.35x25\"}, \"vary\": [{\"what\": \"thickness\", "
             "\"from\": 17.8, \"to\": 18.2, \"step\": 0.2}], \"follow_up\": {\"what\": \"thickness\", "
             "\"by\": 0.1%s}}";
  g_autofree char *other = g_strdup_printf (text, ""), *same = g_strdup_printf (text, ", \"same\": true");
  g_autoptr (SpelchExercise) unsaid = exercise_of (other), said = exercise_of (same);
  SpelchSound wrong_sound = spelch_posed_sound (spelch_shop_constants (), unsaid, 100);
  SpelchSound right_sound = spelch_posed_sound (spelch_shop_constants (), said, 100);
  g_assert_cmpuint (wrong_sound.draws, ==, 3);
  g_assert_cmpuint (wrong_sound.n_doubts, ==, 3);
  g_assert_true (wrong_sound.in_follow_up && wrong_sound.meant);
  g_assert_cmpuint (right_sound.n_doubts, ==, 0);
}

static void
test_lead (void)
{
  g_autoptr (SpelchExercise) exercise = exercise_of (
      HEAD "\"asks\": \"tears\", \"lead\": \"{thickness} and {spoilboard}, {nothing}{\", \"board\": "
           "\"birch-ply-18\", "
           "\"machine\": \"medium-gantry\", \"bits\": [\"up-cut-6.35x25\"], " HELD OUTLINE
           ", \"bit\": \"up-cut-6.35x25\"}, \"vary\": [{\"what\": \"thickness\", \"one_of\": [17.8]}]}");
  g_autoptr (SpelchPosed) posed = spelch_posed_new (spelch_shop_constants (), exercise, 1, false);
  const char *const english[] = { "en", NULL };
  const SpelchNumbers comma = { SPELCH_UNIT_MM, SPELCH_INCH_FRACTION, ',' };
  g_autofree char *lead = spelch_words_lead (posed, english, &comma);
  g_assert_cmpstr (lead, ==, "17,8 mm and a fresh spoilboard, {nothing}{");
}

int
main (int argc, char **argv)
{
  g_test_init (&argc, &argv, NULL);
  g_test_add_func ("/posed/first-pass", test_first_pass);
  g_test_add_func ("/posed/wrong-depths", test_wrong_depths);
  g_test_add_func ("/posed/tears", test_tears);
  g_test_add_func ("/posed/blind", test_blind);
  g_test_add_func ("/posed/order-of-bits", test_order_of_bits);
  g_test_add_func ("/posed/way-up-in-mdf", test_way_up_in_mdf);
  g_test_add_func ("/posed/groove", test_groove);
  g_test_add_func ("/posed/weights", test_weights);
  g_test_add_func ("/posed/limits-mean", test_limits_mean);
  g_test_add_func ("/posed/changed-speed", test_changed_speed);
  g_test_add_func ("/posed/doubts", test_doubts);
  g_test_add_func ("/posed/sound", test_sound);
  g_test_add_func ("/posed/lead", test_lead);
  return g_test_run ();
}
