/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "command/practice-sheet.h"

#include "command/asked.h"
#include "command/commands.h"
#include "drawing/exercise-sheet.h"
#include "files/file-io.h"
#include "files/shop-data.h"

#include <glib/gi18n.h>

/* Each exercise, and its follow-up after it. */
static GPtrArray *
pose_all (const SpelchPracticeAsked *asked)
{
  GPtrArray *posed = g_ptr_array_new_with_free_func ((GDestroyNotify)spelch_posed_free);
  for (guint i = 0; i < asked->exercises->len; i++)
    {
      SpelchExercise *exercise = asked->exercises->pdata[i];
      g_ptr_array_add (posed, spelch_posed_new (spelch_shop_constants (), exercise, asked->drawn_by, false));
      if (exercise->follow_up.told)
        g_ptr_array_add (posed, spelch_posed_new (spelch_shop_constants (), exercise, asked->drawn_by, true));
    }
  return posed;
}

/* The whole in memory first, so that a failed save leaves an old sheet alone. */
int
spelch_practice_sheet (const SpelchPracticeAsked *asked)
{
  int paper = SPELCH_PAPER_A4;
  if (asked->exercises->len == 0)
    return spelch_command_fail (_ ("There is no such exercise to put on a sheet."), SPELCH_EXIT_BAD_INPUT);
  if (asked->paper != NULL)
    spelch_code_read (&SPELCH_PAPER_CODES, asked->paper, &paper);
  SpelchExerciseSheet sheet = { .paper = (SpelchPaper)paper,
                                .answers = asked->answers,
                                .seed = asked->drawn_by,
                                .numbers = asked->numbers,
                                .languages = g_get_language_names () };
  g_autoptr (GPtrArray) posed = pose_all (asked);
  g_autoptr (GError) error = NULL;
  guint pages = 0;
  g_autoptr (GBytes) pdf
      = spelch_exercise_sheet_pdf (&sheet, (SpelchPosed *const *)posed->pdata, posed->len, &pages);
  g_autoptr (GFile) file = g_file_new_for_commandline_arg (asked->sheet);
  if (!spelch_file_save_bytes (file, g_bytes_get_data (pdf, NULL), g_bytes_get_size (pdf), &error))
    return spelch_command_fail (error->message, SPELCH_EXIT_NOT_WRITTEN);
  g_print (g_dngettext (GETTEXT_PACKAGE, "%s: %u page, seed %u.\n", "%s: %u pages, seed %u.\n", pages),
           asked->sheet, pages, asked->drawn_by);
  return SPELCH_EXIT_DONE;
}
