/* SPDX-License-Identifier: GPL-3.0-or-later
 *
 * Fuzzer of what is written after spelch's commands. The first byte says which command, each line after it is
 * a word. Whatever they are, they are refused in a sentence, or the part asked about has no fault and its
 * cuts are planned in numbers that are numbers. Files are those of the demo; nothing is written.
 */
#include "command/asked.h"
#include "command/commands.h"
#include "command/practice-asked.h"
#include "files/part-file.h"
#include "files/shop-data.h"
#include "plan/plan.h"

#include <glib/gstdio.h>
#include <math.h>
#include <stddef.h>
#include <stdint.h>
#include <string.h>

#define MOST_WORDS 40
#define COMMANDS   6

int LLVMFuzzerTestOneInput (const uint8_t *data, size_t size);

static void
check_sentence (const char *sentence)
{
  g_assert_true (g_utf8_validate (sentence, -1, NULL));
  g_assert_cmpuint (strlen (sentence), >, 3);
}

/* As main.c has it, without a word on the screen. */
int
spelch_command_fail (const char *sentence, int status)
{
  check_sentence (sentence);
  return status;
}

static void
print_nothing (const char *text)
{
}

/* Of the demo part, so that it is told from files on the disk. Free with g_free(). */
static char *
demo_file (void)
{
  g_autofree char *name = g_strdup_printf ("spelch-fuzz-asked-%d.spelch", (int)getpid ());
  char *path = g_build_filename (g_get_tmp_dir (), name, NULL);
  g_autoptr (SpelchPart) demo = spelch_shop_demo ();
  g_autofree char *text = spelch_part_to_json (demo);
  g_assert_true (g_file_set_contents (path, text, -1, NULL));
  return path;
}

static void
check_plan (const SpelchPart *part, const SpelchCut *cut)
{
  const SpelchBit *bit = spelch_asked_bit (part, cut);
  if (bit == NULL)
    return;
  SpelchPlan plan;
  spelch_plan_make (spelch_shop_constants (), part, cut, bit, &plan);
  const double figures[] = { plan.thickness,     plan.overcut,       plan.depth_most,   plan.step_most,
                             plan.speed_rpm,     plan.feed_mm_min,   plan.chip_max,     plan.axial_mean_n,
                             plan.hold_needed_n, plan.cutting_speed, plan.lift_bound_n, plan.through_depth };
  for (guint i = 0; i < G_N_ELEMENTS (figures); i++)
    g_assert_true (isfinite (figures[i]));
  for (guint i = 0; i < plan.n_passes; i++)
    g_assert_true (isfinite (plan.passes[i].tip_mm) && plan.passes[i].tip_mm > 0);
}

static void
ask (SpelchAsking asking, int n, char **words)
{
  g_auto (SpelchAsked) asked = { 0 };
  g_autoptr (GError) error = NULL;
  bool helped = false;
  if (!spelch_asked_read (&asked, "fuzz", "Fuzz.", asking, n, words, &helped, &error))
    {
      check_sentence (error->message);
      return;
    }
  if (helped)
    return;
  /* Only what is asked is tried here; readers of files have fuzzers of their own. */
  g_clear_pointer (&asked.log, g_free);
  g_free (asked.file);
  asked.file = demo_file ();
  SpelchNumbers numbers;
  g_autoptr (SpelchPart) part = spelch_asked_part (&asked, &error);
  g_unlink (asked.file);
  if (part == NULL || !spelch_asked_numbers (&asked, &numbers, &error))
    {
      check_sentence (error->message);
      return;
    }
  g_autofree int *cuts = spelch_asked_cuts (&asked, part, &error);
  g_assert_no_error (error);
  for (int i = 0; cuts[i] >= 0; i++)
    check_plan (part, &part->cuts[cuts[i]]);
}

static void
practise (int n, char **words)
{
  g_auto (SpelchPracticeAsked) asked = { 0 };
  int status = -1;
  if (spelch_practice_asked_read (&asked, n, words, &status))
    g_assert_cmpuint (asked.drawn_by, <=, 999999);
  else
    g_assert_cmpint (status, !=, -1);
}

int
LLVMFuzzerTestOneInput (const uint8_t *data, size_t size)
{
  if (size == 0)
    return 0;
  g_setenv ("GIO_USE_VFS", "local", TRUE);
  g_set_print_handler (print_nothing);
  g_set_printerr_handler (print_nothing);
  g_autofree char *text = g_strndup ((const char *)data + 1, size - 1);
  g_auto (GStrv) lines = g_strsplit (text, "\n", MOST_WORDS);
  /* Options' parser takes words out of the array; the lines stay those to be freed. */
  char *words[MOST_WORDS + 3] = { (char *)"fuzz" };
  int n = 1, command = data[0] % COMMANDS;
  bool practice = command == COMMANDS - 1;
  for (guint i = 0; lines[i] != NULL; i++)
    if (*lines[i] != '\0' && (!practice || *lines[i] == '-')) /* files named there are read */
      words[n++] = lines[i];
  if (practice)
    practise (n, words);
  else
    {
      words[n++] = (char *)"part.spelch";
      ask ((SpelchAsking)command, n, words);
    }
  return 0;
}
