/* SPDX-License-Identifier: GPL-3.0-or-later
 *
 * spelch practice: asks what a cut will do, grades answers and says why.
 */
#include "command/asked.h"
#include "command/commands.h"
#include "command/practice-asked.h"
#include "command/practice-marks.h"
#include "command/practice-sheet.h"
#include "command/practice-show.h"

#include "files/practice-data.h"
#include "files/shop-data.h"

#include <glib/gi18n.h>

/* Prints @text and frees it. */
static int
print (char *text)
{
  g_print ("%s", text);
  g_free (text);
  return SPELCH_EXIT_DONE;
}

static int
ask (const SpelchPracticeAsked *asked)
{
  SpelchExercise *exercise = spelch_exercises_find (asked->exercises, asked->show);
  if (exercise == NULL)
    return spelch_command_fail (_ ("--only, --asks or --level leave out the exercise that --show names."),
                                SPELCH_EXIT_BAD_INPUT);
  if (asked->follow_up && !exercise->follow_up.told)
    return spelch_command_fail (_ ("This exercise has no follow-up."), SPELCH_EXIT_BAD_INPUT);
  g_autoptr (SpelchPosed) posed
      = spelch_posed_new (spelch_shop_constants (), exercise, asked->drawn_by, asked->follow_up);
  SpelchGiven given = { 0 };
  if (asked->answer != NULL)
    given = spelch_posed_grade (posed, asked->answer, asked->numbers.unit);
  if (asked->answer != NULL && !given.understood)
    {
      g_autofree char *sentence = g_strdup_printf (
          posed->by_depth ? _ ("--answer “%s” isn't a depth; write one such as “8.5 mm”, or none.")
                          : _ ("--answer “%s” isn't among the choices; write the word in front of one."),
          asked->answer);
      return spelch_command_fail (sentence, SPELCH_EXIT_BAD_INPUT);
    }
  const SpelchGiven *answered = asked->answer != NULL ? &given : NULL;
  int status = answered != NULL ? spelch_practice_keep (asked, posed, answered) : SPELCH_EXIT_DONE;
  if (status != SPELCH_EXIT_DONE)
    return status;
  return print (asked->json ? spelch_practice_json (posed, answered)
                            : spelch_practice_text (posed, answered, asked->reckoning, &asked->numbers));
}

int
spelch_command_practice (int argc, char **argv)
{
  g_auto (SpelchPracticeAsked) asked = { 0 };
  int status = SPELCH_EXIT_DONE;
  if (!spelch_practice_asked_read (&asked, argc, argv, &status))
    return status;
  if (asked.show != NULL)
    return ask (&asked);
  if (asked.sheet != NULL)
    return spelch_practice_sheet (&asked);
  if (asked.progress)
    return spelch_practice_progress (&asked);
  if (asked.regrade != NULL)
    return spelch_practice_regrade (&asked);
  return print (asked.json ? spelch_practice_list_json (&asked) : spelch_practice_list_text (&asked));
}
