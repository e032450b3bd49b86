/* SPDX-License-Identifier: GPL-3.0-or-later
 *
 * spelch check: says whether a part file can be read, and what is wrong with it if not.
 */
#include "command/asked.h"
#include "command/commands.h"

#include <glib/gi18n.h>

int
spelch_command_check (int argc, char **argv)
{
  g_auto (SpelchAsked) asked = { 0 };
  g_autoptr (GError) error = NULL;
  bool helped = false;
  if (!spelch_asked_read (&asked, "check",
                          _ ("Says whether a part file can be read, and what is wrong with it if not."),
                          SPELCH_ASKING_PLAN, argc, argv, &helped, &error))
    return spelch_command_fail (error->message, SPELCH_EXIT_BAD_INPUT);
  if (helped)
    return SPELCH_EXIT_DONE;
  g_autoptr (SpelchPart) part = spelch_asked_part (&asked, &error);
  if (part == NULL)
    return spelch_command_fail (error->message, SPELCH_EXIT_BAD_INPUT);
  if (asked.json)
    g_print ("{\n  \"format_version\": %d,\n  \"cuts\": %u,\n  \"bits\": %u,\n  \"read_only\": %s\n}\n",
             part->file_version, part->n_cuts, part->n_bits, part->read_only ? "true" : "false");
  else
    g_print (_ ("%s: in order, %u cuts, %u bits.\n"), asked.file, part->n_cuts, part->n_bits);
  if (part->read_only && !asked.json)
    g_print ("%s\n", _ ("It was written by a newer program and can be read but not saved."));
  return SPELCH_EXIT_DONE;
}
