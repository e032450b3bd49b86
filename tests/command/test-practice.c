/* SPDX-License-Identifier: GPL-3.0-or-later
 *
 * spelch practice and spelch check on exercises: what is asked gives nothing away, answers are graded and
 * kept, a table is graded anew, sheets are written, and what is asked amiss is told in a sentence.
 */
#include "running.h"

#include <glib/gstdio.h>
#include <string.h>

/* A file of that name to write to, which isn't there yet. */
static char *
place_for (const char *name)
{
  g_autofree char *own = g_strdup_printf ("spelch-test-practice-%s", name);
  char *path = g_build_filename (g_get_tmp_dir (), own, NULL);
  g_remove (path);
  return path;
}

static char *
exercise_file (const char *name)
{
  return g_build_filename (g_getenv ("SPELCH_DATA"), "exercises", name, NULL);
}

static void
test_list (void)
{
  g_auto (Running) text = running ("practice", NULL);
  g_auto (Running) json = running ("practice", "--list", "--json", "--asks", "hold", NULL);
  g_autoptr (JsonParser) parser = json_parser_new ();
  JsonArray *exercises = json_object_get_array_member (running_object (parser, json.out), "exercises");
  g_assert_cmpint (text.status, ==, 0);
  g_assert_nonnull (strstr (text.out, "tears-up-cut-ply"));
  g_assert_cmpuint (json_array_get_length (exercises), >=, 4);
  for (guint i = 0; i < json_array_get_length (exercises); i++)
    g_assert_cmpstr (json_object_get_string_member (json_array_get_object_element (exercises, i), "asks"), ==,
                     "hold");
}

/* The same seed asks the same, another one something else; the question holds no answer. */
static void
test_asks (void)
{
  g_auto (Running) one = running ("practice", "--show", "first-pass-plywood", "--seed", "3", "--json", NULL);
  g_auto (Running) same = running ("practice", "--show", "first-pass-plywood", "--seed", "3", "--json", NULL);
  g_auto (Running) other
      = running ("practice", "--show", "first-pass-plywood", "--seed", "4", "--json", NULL);
  static const char *const GIVEN_AWAY[] = { "right", "depth_from_mm", "decides", "why" };
  g_autoptr (JsonParser) parser = json_parser_new ();
  JsonObject *question = running_object (parser, one.out);
  g_assert_cmpstr (one.out, ==, same.out);
  g_assert_cmpstr (one.out, !=, other.out);
  for (guint i = 0; i < G_N_ELEMENTS (GIVEN_AWAY); i++)
    g_assert_false (json_object_has_member (question, GIVEN_AWAY[i]));
  g_assert_true (json_object_get_boolean_member (question, "by_depth"));
  g_assert_cmpuint (json_array_get_length (json_object_get_array_member (question, "facts")), >, 3);
}

static void
test_answers (void)
{
  g_auto (Running) wrong
      = running ("practice", "--show", "tears-up-cut-ply", "--seed", "3", "--answer", "far", "--json", NULL);
  g_auto (Running) right
      = running ("practice", "--show", "tears-up-cut-ply", "--seed", "3", "--answer", "motor", NULL);
  g_auto (Running) next = running ("practice", "--show", "tears-down-cut-ply", "--seed", "3", "--follow-up",
                                   "--answer", "both", NULL);
  g_autoptr (JsonParser) parser = json_parser_new ();
  JsonObject *graded = running_object (parser, wrong.out);
  g_assert_false (json_object_get_boolean_member (graded, "right"));
  g_assert_cmpstr (json_object_get_string_member (graded, "right_answer"), ==, "motor");
  g_assert_cmpstr (json_object_get_string_member (graded, "wrong_because"), !=, "");
  g_assert_nonnull (strstr (right.out, "\nRight.\n"));
  g_assert_nonnull (strstr (next.out, "\nRight.\n"));
  g_assert_nonnull (strstr (next.out, "Cutting edge: dull instead of "));
  g_assert_null (strstr (next.out, "So the passes change too: ")); /* they are held */
  g_auto (Running) follow
      = running ("practice", "--show", "tears-blunt-mdf", "--seed", "3", "--follow-up", NULL);
  g_assert_nonnull (
      strstr (follow.out, "So the passes change too: ")); /* a sharp bit goes deeper at a time */
}

static void
refused (const char *const *words, const char *said)
{
  g_auto (Running) ran = running_words (words);
  g_test_message ("%s", ran.err);
  g_assert_cmpint (ran.status, ==, 2);
  g_assert_nonnull (strstr (ran.err, said));
}

static void
test_refused (void)
{
  refused ((const char *const[]){ "practice", "--show", "nothing", NULL }, "“nothing”");
  refused ((const char *const[]){ "practice", "--only", "hold-tabs,nothing", NULL }, "“nothing”");
  refused ((const char *const[]){ "practice", "--asks", "why", NULL }, "tears, first-pass");
  refused ((const char *const[]){ "practice", "--level", "9", NULL }, "1 to 5");
  refused ((const char *const[]){ "practice", "--seed", "-1", NULL }, "0 to 999999");
  refused ((const char *const[]){ "practice", "--answer", "far", NULL }, "--show ID");
  refused ((const char *const[]){ "practice", "--show", "hold-tabs", "--answer", "tabs", NULL }, "--seed N");
  refused (
      (const char *const[]){ "practice", "--show", "hold-tabs", "--seed", "1", "--answer", "maybe", NULL },
      "“maybe”");
  refused ((const char *const[]){ "practice", "--show", "first-pass-dado", "--seed", "1", "--answer", "deep",
                                  NULL },
           "isn't a depth");
  refused ((const char *const[]){ "practice", "--paper", "a5", "--sheet", "x.pdf", NULL }, "a4 or letter");
  refused ((const char *const[]){ "practice", "--units", "ells", NULL }, "mm or in");
  refused ((const char *const[]){ "practice", "/nowhere/at-all.json", NULL }, "at-all.json");
  refused ((const char *const[]){ "practice", "--regrade", "/nowhere/at-all.csv", NULL }, "at-all.csv");
}

static void
test_kept (void)
{
  g_autofree char *log = place_for ("log.json"), *table = place_for ("table.csv");
  g_auto (Running) ada = running ("practice", "--show", "tears-up-cut-ply", "--seed", "3", "--answer",
                                  "motor", "--learner", "Ada", "--log", log, NULL);
  g_auto (Running) bo = running ("practice", "--show", "first-pass-plywood", "--seed", "3", "--answer", "9",
                                 "--learner", "=Bo", "--log", log, NULL);
  g_auto (Running) all = running ("practice", "--progress", "--log", log, "-o", table, NULL);
  g_auto (Running) own = running ("practice", "--progress", "--log", log, "--learner", "Ada", NULL);
  g_autofree char *text = NULL;
  g_assert_cmpint (ada.status + bo.status + all.status + own.status, ==, 0);
  g_assert_true (g_file_get_contents (table, &text, NULL, NULL));
  g_assert_nonnull (strstr (text, "Ada,tears-up-cut-ply,3,no,motor,yes,"));
  g_assert_nonnull (strstr (text, "'=Bo,first-pass-plywood,3,no,9.00 mm,no,"));
  g_assert_null (strstr (own.out, "Bo"));
  /* What was kept comes out of grading it anew as it went in. */
  g_auto (Running) anew = running ("practice", "--regrade", table, NULL);
  g_assert_cmpint (anew.status, ==, 0);
  g_assert_nonnull (strstr (anew.err, "2 answers: 1 right, 0 graded otherwise than before, 0 not graded."));
  g_assert_nonnull (strstr (anew.out, ",9.5 mm,"));
  g_auto (Running) of_log = running ("practice", "--regrade", log, NULL);
  g_assert_cmpstr (of_log.out, ==, anew.out);
  g_auto (Running) checked = running ("check", log, NULL);
  g_assert_cmpint (checked.status, ==, 0);
  g_assert_nonnull (strstr (checked.out, "in order, 2 answers."));
  g_remove (log);
  g_remove (table);
}

/* What is no table: the sentence names the file and the line, and what has to stand there. */
static void
test_no_table (void)
{
  static const struct
  {
    const char *text, *says;
  } CASES[] = {
    { "Names of class 7b\nAda\nBo\n", "Line 1: no column is called \"learner\"; " },
    { "learner,exercise,answer\nAda,tears-up-cut-ply,far\n", "Line 1: no column is called \"seed\"; " },
    { "{\"a\": 1}", "Line 1: no column is called \"learner\"; " },
    { "", "The table is empty." },
    { "\xff\xfe", "The table isn't UTF-8 text; save it as such." },
  };
  g_autofree char *table = place_for ("no-table.csv");
  for (guint i = 0; i < G_N_ELEMENTS (CASES); i++)
    {
      g_autofree char *wanted = g_strconcat ("no-table.csv: ", CASES[i].says, NULL);
      g_assert_true (g_file_set_contents (table, CASES[i].text, -1, NULL));
      g_auto (Running) ran = running ("practice", "--regrade", table, NULL);
      g_assert_cmpint (ran.status, ==, 2);
      g_assert_nonnull (strstr (ran.err, wanted));
      g_assert_cmpstr (ran.out, ==, "");
      if (strstr (wanted, "Line 1") != NULL)
        g_assert_nonnull (strstr (ran.err, "learner, exercise, seed and answer at the least."));
    }
  g_remove (table);
}

static void
test_regraded (void)
{
  g_autofree char *table = place_for ("typed.csv");
  const char *const typed
      = "learner,exercise,seed,answer,right\nAda,tears-up-cut-ply,3,far,yes\n"
        "Bo,gone,3,far,no\nCy,tears-up-cut-ply,3,sideways,no\nDi,tears-up-cut-ply,x,far,no\n";
  g_assert_true (g_file_set_contents (table, typed, -1, NULL));
  g_auto (Running) ran = running ("practice", "--regrade", table, NULL);
  g_assert_cmpint (ran.status, ==, 2); /* a line couldn't be read */
  g_assert_nonnull (strstr (ran.err, "typed.csv: Line 5: seed is \"x\""));
  g_assert_nonnull (strstr (ran.err, "3 answers: 0 right, 1 graded otherwise than before, 2 not graded."));
  g_assert_nonnull (strstr (ran.out, "Ada,tears-up-cut-ply,3,no,far,no,,1.0,motor,was graded right"));
  g_assert_nonnull (strstr (ran.out, "there is no such exercise"));
  g_assert_nonnull (strstr (ran.out, "the answer isn't understood"));
  g_remove (table);
}

static void
test_sheets (void)
{
  for (int answers = 0; answers < 2; answers++)
    {
      g_autofree char *sheet = place_for ("sheet.pdf"), *pdf = NULL;
      gsize length = 0;
      g_auto (Running) ran = running ("practice", "--sheet", sheet, "--seed", "7", "--level", "1", "--paper",
                                      "letter", answers == 1 ? "--answers" : NULL, NULL);
      g_assert_cmpint (ran.status, ==, 0);
      g_assert_nonnull (strstr (ran.out, "seed 7"));
      g_assert_true (g_file_get_contents (sheet, &pdf, &length, NULL));
      g_assert_true (length > 1000 && memcmp (pdf, "%PDF", 4) == 0);
      g_remove (sheet);
    }
  g_auto (Running) nowhere = running ("practice", "--sheet", "/nowhere/at-all.pdf", NULL);
  g_assert_cmpint (nowhere.status, ==, 3);
}

/* ---- spelch check ---- */

static void
test_check (void)
{
  g_autofree char *good = exercise_file ("hold-tabs.json"), *text = NULL, *file = place_for ("check.json");
  g_auto (Running) fine = running ("check", good, NULL);
  g_assert_cmpint (fine.status, ==, 0);
  g_assert_nonnull (strstr (fine.out, "one right answer"));
  /* Drawn so wide that the first pass is deep enough in some draws: the answer comes too close to another. */
  g_autofree char *shallow = exercise_file ("tears-too-shallow.json");
  g_assert_true (g_file_get_contents (shallow, &text, NULL, NULL));
  g_auto (GStrv) halves = g_strsplit (text, "\"6.5 mm\"", 2);
  g_autofree char *wide = g_strjoinv ("\"9 mm\"", halves);
  g_assert_true (g_file_set_contents (file, wide, -1, NULL));
  g_auto (Running) unsound = running ("check", file, NULL);
  g_auto (Running) json = running ("check", file, "--json", NULL);
  g_autoptr (JsonParser) parser = json_parser_new ();
  JsonObject *found = running_object (parser, json.out);
  g_assert_cmpint (unsound.status, ==, 2);
  g_assert_nonnull (strstr (unsound.out, "With seed "));
  g_assert_nonnull (strstr (unsound.out, "first-pass="));
  g_assert_cmpstr (json_object_get_string_member (found, "kind"), ==, "exercise");
  g_assert_cmpint (json_object_get_int_member (found, "doubts"), >, 0);
  g_remove (file);
}

static void
test_check_lesson (void)
{
  g_autofree char *good = g_build_filename (g_getenv ("SPELCH_DATA"), "lessons", "first-lesson.json", NULL);
  g_autofree char *text = NULL, *file = place_for ("lesson.json");
  g_auto (Running) fine = running ("check", good, NULL);
  g_assert_cmpint (fine.status, ==, 0);
  g_assert_true (g_file_get_contents (good, &text, NULL, NULL));
  g_auto (GStrv) halves = g_strsplit (text, "hold-tabs", 2);
  g_autofree char *gone = g_strjoinv ("hold-nothing", halves);
  g_assert_true (g_file_set_contents (file, gone, -1, NULL));
  g_auto (Running) missing = running ("check", file, NULL);
  g_assert_cmpint (missing.status, ==, 2);
  g_assert_nonnull (strstr (missing.err, "steps[8]: there is no exercise “hold-nothing”"));
  g_remove (file);
}

int
main (int argc, char **argv)
{
  g_test_init (&argc, &argv, NULL);
  g_test_add_func ("/practice-command/list", test_list);
  g_test_add_func ("/practice-command/asks", test_asks);
  g_test_add_func ("/practice-command/answers", test_answers);
  g_test_add_func ("/practice-command/refused", test_refused);
  g_test_add_func ("/practice-command/kept", test_kept);
  g_test_add_func ("/practice-command/regraded", test_regraded);
  g_test_add_func ("/practice-command/no-table", test_no_table);
  g_test_add_func ("/practice-command/sheets", test_sheets);
  g_test_add_func ("/practice-command/check", test_check);
  g_test_add_func ("/practice-command/check-lesson", test_check_lesson);
  return g_test_run ();
}
