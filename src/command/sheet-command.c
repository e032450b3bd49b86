/* SPDX-License-Identifier: GPL-3.0-or-later
 *
 * spelch sheet: the pages to work from at the machine, as PDF, SVG or PNG.
 */
#include "command/asked.h"
#include "command/commands.h"
#include "command/drawer.h"

#include "drawing/picture-file.h"
#include "drawing/sheet-file.h"
#include "files/file-io.h"
#include "files/shop-data.h"

#include <glib/gi18n.h>
#include <string.h>

static char *
name_of (const char *path)
{
  g_autoptr (GFile) file = g_file_new_for_commandline_arg (path);
  return spelch_file_name (file);
}

/* The part's file with another ending, in the folder one works in. */
static char *
output_of (const SpelchAsked *asked)
{
  if (asked->output != NULL)
    return g_strdup (asked->output);
  g_autofree char *name = g_path_get_basename (asked->file);
  char *ending = strrchr (name, '.');
  if (ending != NULL && ending != name)
    *ending = '\0';
  return g_strconcat (name, ".pdf", NULL);
}

static int
write_sheet (const SpelchAsked *asked, const SpelchQuestions *questions, const SpelchWork *work,
             SpelchPaper paper)
{
  g_autoptr (GError) error = NULL;
  g_autoptr (GDateTime) when = spelch_sheet_moment ();
  g_autofree char *date = g_date_time_format (when, "%Y-%m-%d");
  g_autofree char *file = name_of (asked->file);
  g_autofree char *revision = spelch_sheet_revision (questions->part);
  g_autofree char *output = output_of (asked);
  g_autoptr (GFile) target = g_file_new_for_commandline_arg (output);
  if (!spelch_picture_file_knows (output))
    return spelch_command_fail (_ ("The file to write must end in .svg, .png or .pdf."),
                                SPELCH_EXIT_BAD_INPUT);
  const SpelchSheetOf of = { .work = work,
                             .constants = spelch_shop_constants (),
                             .numbers = questions->numbers,
                             .paper = paper,
                             .file = file,
                             .revision = revision,
                             .date = date };
  g_autoptr (SpelchSheet) sheet = spelch_sheet_new (&of);
  if (!spelch_sheet_save (sheet, target, when, &error))
    return spelch_command_fail (error->message, SPELCH_EXIT_NOT_WRITTEN);
  for (guint i = 0; i < work->n; i++)
    if (spelch_task_stops (&work->tasks[i]))
      return SPELCH_EXIT_DO_NOT_CUT;
  return SPELCH_EXIT_DONE;
}

static bool
paper_of (const SpelchAsked *asked, SpelchPaper *paper)
{
  int code = SPELCH_PAPER_A4;
  bool known = asked->paper == NULL || spelch_code_read (&SPELCH_PAPER_CODES, asked->paper, &code);
  *paper = (SpelchPaper)code;
  return known;
}

int
spelch_command_sheet (int argc, char **argv)
{
  g_auto (SpelchAsked) asked = { 0 };
  g_auto (SpelchQuestions) questions = { 0 };
  int status = SPELCH_EXIT_DONE;
  SpelchPaper paper;
  g_autoptr (GError) error = NULL;
  if (!spelch_asked_open (&asked, "sheet",
                          _ ("Writes the bench sheet: a cover, and a page for each cut, to work from at the "
                             "machine."),
                          SPELCH_ASKING_SHEET, argc, argv, &questions, &status))
    return status;
  if (!paper_of (&asked, &paper))
    {
      g_autofree char *sentence = g_strdup_printf (_ ("--paper is “%s”; write a4 or letter."), asked.paper);
      return spelch_command_fail (sentence, SPELCH_EXIT_BAD_INPUT);
    }
  g_autoptr (GArray) drawer = spelch_drawer_open (&asked, questions.part, &error);
  if (drawer == NULL
      || !spelch_asked_put_log (&asked, questions.part, (const SpelchBit *)(const void *)drawer->data,
                                drawer->len, &error))
    return spelch_command_fail (error->message, SPELCH_EXIT_BAD_INPUT);
  g_autoptr (SpelchWork) work = spelch_work_find (spelch_shop_constants (), questions.part,
                                                  asked.cuts != NULL ? questions.cuts : NULL,
                                                  (const SpelchBit *)(const void *)drawer->data, drawer->len);
  return write_sheet (&asked, &questions, work, paper);
}
