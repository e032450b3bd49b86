/* SPDX-License-Identifier: GPL-3.0-or-later
 *
 * spelch check: says whether a part file or a shop log can be read, and what is wrong with it if not.
 */
#include "command/asked.h"
#include "command/commands.h"

#include "files/file-io.h"
#include "files/json-text.h"
#include "files/log-file.h"

#include <glib/gi18n.h>

/* Whether the file's outermost object has a log. What can't be read at all is left to the reader of parts,
 * which says why. */
static bool
holds_log (GFile *file)
{
  gsize length = 0;
  g_autofree char *text = spelch_file_read (file, &length, NULL, NULL);
  g_autoptr (JsonNode) root = text != NULL ? spelch_json_parse (text, length, "", NULL) : NULL;
  return root != NULL && json_object_has_member (json_node_get_object (root), "log");
}

static int
check_log (GFile *file, const SpelchAsked *asked)
{
  g_autoptr (GError) error = NULL;
  g_autoptr (SpelchLog) log = spelch_log_load (file, NULL, &error);
  if (log == NULL)
    return spelch_command_fail (error->message, SPELCH_EXIT_BAD_INPUT);
  if (asked->json)
    g_print ("{\n  \"kind\": \"log\",\n  \"format_version\": 1,\n  \"entries\": %u\n}\n", log->entries->len);
  else
    g_print (g_dngettext (GETTEXT_PACKAGE, "%s: in order, %u entry.\n", "%s: in order, %u entries.\n",
                          log->entries->len),
             asked->file, log->entries->len);
  return SPELCH_EXIT_DONE;
}

static int
check_part (const SpelchAsked *asked)
{
  g_autoptr (GError) error = NULL;
  g_autoptr (SpelchPart) part = spelch_asked_part (asked, &error);
  if (part == NULL)
    return spelch_command_fail (error->message, SPELCH_EXIT_BAD_INPUT);
  if (asked->json)
    g_print ("{\n  \"kind\": \"part\",\n  \"format_version\": %d,\n  \"cuts\": %u,\n  \"bits\": %u,\n"
             "  \"read_only\": %s\n}\n",
             part->file_version, part->n_cuts, part->n_bits, part->read_only ? "true" : "false");
  else
    g_print (_ ("%s: in order, %u cuts, %u bits.\n"), asked->file, part->n_cuts, part->n_bits);
  if (part->read_only && !asked->json)
    g_print ("%s\n", _ ("It was written by a newer program and can be read but not saved."));
  return SPELCH_EXIT_DONE;
}

int
spelch_command_check (int argc, char **argv)
{
  g_auto (SpelchAsked) asked = { 0 };
  g_autoptr (GError) error = NULL;
  bool helped = false;
  if (!spelch_asked_read (
          &asked, "check",
          _ ("Says whether a part file or a shop log can be read, and what is wrong with it if not."),
          SPELCH_ASKING_PLAN, argc, argv, &helped, &error))
    return spelch_command_fail (error->message, SPELCH_EXIT_BAD_INPUT);
  if (helped)
    return SPELCH_EXIT_DONE;
  g_autoptr (GFile) file = g_file_new_for_commandline_arg (asked.file);
  return holds_log (file) ? check_log (file, &asked) : check_part (&asked);
}
