/* SPDX-License-Identifier: GPL-3.0-or-later
 *
 * spelch check: says whether a part file, a shop log or another list can be read, and what is wrong with it
 * if not.
 */
#include "command/asked.h"
#include "command/commands.h"

#include "files/file-io.h"
#include "files/json-text.h"
#include "files/list-file.h"

#include <glib/gi18n.h>

/* Says of a list whether it can be read. False when the file isn't a list; what can't be read at all is left
 * to the reader of parts, which says why. */
static bool
check_list (const SpelchAsked *asked, int *status)
{
  g_autoptr (GFile) file = g_file_new_for_commandline_arg (asked->file);
  g_autofree char *name = spelch_file_name (file);
  gsize length = 0;
  g_autofree char *text = spelch_file_read (file, &length, NULL, NULL);
  g_autoptr (JsonNode) root = text != NULL ? spelch_json_parse (text, length, name, NULL) : NULL;
  g_autoptr (GError) error = NULL;
  SpelchListKind kind;
  if (root == NULL || !spelch_list_kind_of (json_node_get_object (root), &kind))
    return false;
  g_autoptr (GArray) items = spelch_list_from_json (kind, text, length, name, NULL, &error);
  *status = items != NULL ? SPELCH_EXIT_DONE : spelch_command_fail (error->message, SPELCH_EXIT_BAD_INPUT);
  if (items != NULL && asked->json)
    g_print ("{\n  \"kind\": \"%s\",\n  \"format_version\": 1,\n  \"entries\": %u\n}\n",
             spelch_list_member (kind), items->len);
  else if (items != NULL)
    g_print (
        g_dngettext (GETTEXT_PACKAGE, "%s: in order, %u entry.\n", "%s: in order, %u entries.\n", items->len),
        asked->file, items->len);
  return true;
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
          _ ("Says whether a part file, a shop log or another list can be read, and what is wrong if not."),
          SPELCH_ASKING_PLAN, argc, argv, &helped, &error))
    return spelch_command_fail (error->message, SPELCH_EXIT_BAD_INPUT);
  if (helped)
    return SPELCH_EXIT_DONE;
  int status = SPELCH_EXIT_DONE;
  return check_list (&asked, &status) ? status : check_part (&asked);
}
