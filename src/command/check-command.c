/* SPDX-License-Identifier: GPL-3.0-or-later
 *
 * spelch check: says whether a part file, a shop log, another list, an exercise or a lesson can be read, what
 * is wrong with it if not, and which of its members aren't read.
 */
#include "command/asked.h"
#include "command/check-practice.h"
#include "command/commands.h"
#include "command/unread-list.h"

#include "files/exercise-file.h"
#include "files/file-io.h"
#include "files/json-text.h"
#include "files/lesson-file.h"
#include "files/list-file.h"
#include "files/part-file.h"
#include "files/practice-log.h"
#include "files/unread.h"

#include <glib/gi18n.h>

/* A file as it was read. */
typedef struct
{
  char *name, *text; /* no text: it can't be read, and the reader of parts says why */
  gsize length;
} Checked;

static void
checked_clear (Checked *checked)
{
  g_free (checked->name);
  g_free (checked->text);
}
G_DEFINE_AUTO_CLEANUP_CLEAR_FUNC (Checked, checked_clear)

static Checked
read_text (const SpelchAsked *asked)
{
  g_autoptr (GFile) file = g_file_new_for_commandline_arg (asked->file);
  Checked checked = { .name = spelch_file_name (file) };
  checked.text = spelch_file_read (file, &checked.length, NULL, NULL);
  return checked;
}

/* NULL when it isn't JSON; what can't be read at all is left to the reader of parts. */
static JsonNode *
root_of (const Checked *checked)
{
  return checked->text != NULL ? spelch_json_parse (checked->text, checked->length, checked->name, NULL)
                               : NULL;
}

/* ---- Lists and parts ---- */

static void
print_json (SpelchWriter *writer)
{
  g_autofree char *text = spelch_writer_end (writer);
  g_print ("%s", text);
}

static int
check_list (const SpelchAsked *asked, const Checked *checked, SpelchListKind kind)
{
  g_autoptr (GError) error = NULL;
  g_autoptr (GArray) items
      = spelch_list_from_json (kind, checked->text, checked->length, checked->name, NULL, &error);
  g_autoptr (GPtrArray) unread = spelch_list_unread (kind, checked->text, checked->length, checked->name);
  if (items == NULL)
    return spelch_unread_refuse (unread, error, asked->json);
  if (asked->json)
    {
      SpelchWriter *writer = spelch_writer_new (NULL);
      spelch_writer_text (writer, "kind", spelch_list_member (kind));
      spelch_writer_number (writer, "format_version", SPELCH_FORMAT_VERSION);
      spelch_writer_number (writer, "entries", items->len);
      spelch_unread_write (writer, unread);
      print_json (writer);
      return SPELCH_EXIT_DONE;
    }
  g_print (
      g_dngettext (GETTEXT_PACKAGE, "%s: in order, %u entry.\n", "%s: in order, %u entries.\n", items->len),
      asked->file, items->len);
  spelch_unread_print (unread);
  return SPELCH_EXIT_DONE;
}

static void
print_part (const SpelchAsked *asked, const SpelchPart *part, const GPtrArray *unread)
{
  g_autofree char *cuts
      = g_strdup_printf (g_dngettext (GETTEXT_PACKAGE, "%u cut", "%u cuts", part->n_cuts), part->n_cuts);
  g_autofree char *bits
      = g_strdup_printf (g_dngettext (GETTEXT_PACKAGE, "%u bit", "%u bits", part->n_bits), part->n_bits);
  /* Translators: the file's name, "6 cuts" and "8 bits". */
  g_print (_ ("%s: in order, %s, %s.\n"), asked->file, cuts, bits);
  if (part->read_only)
    g_print ("%s\n", _ ("It was written by a newer program and can be read but not saved."));
  spelch_unread_print (unread);
}

static int
check_part (const SpelchAsked *asked, const Checked *checked)
{
  g_autoptr (GError) error = NULL;
  g_autoptr (SpelchPart) part = spelch_asked_part (asked, &error);
  g_autoptr (GPtrArray) unread = checked->text != NULL
                                     ? spelch_part_unread (checked->text, checked->length, checked->name)
                                     : spelch_unread_list_new ();
  if (part == NULL)
    return spelch_unread_refuse (unread, error, asked->json);
  if (!asked->json)
    {
      print_part (asked, part, unread);
      return SPELCH_EXIT_DONE;
    }
  SpelchWriter *writer = spelch_writer_new (NULL);
  spelch_writer_text (writer, "kind", "part");
  spelch_writer_number (writer, "format_version", part->file_version);
  spelch_writer_number (writer, "cuts", part->n_cuts);
  spelch_writer_number (writer, "bits", part->n_bits);
  spelch_writer_flag (writer, "read_only", part->read_only);
  spelch_unread_write (writer, unread);
  print_json (writer);
  return SPELCH_EXIT_DONE;
}

int
spelch_command_check (int argc, char **argv)
{
  g_auto (SpelchAsked) asked = { 0 };
  g_autoptr (GError) error = NULL;
  bool helped = false;
  if (!spelch_asked_read (&asked, "check",
                          _ ("Says whether a part file, a shop log or another list, an exercise or a lesson "
                             "can be read, and what is "
                             "wrong if not."),
                          SPELCH_ASKING_CHECK, argc, argv, &helped, &error))
    return spelch_command_fail (error->message, SPELCH_EXIT_BAD_INPUT);
  if (helped)
    return SPELCH_EXIT_DONE;
  g_auto (Checked) checked = read_text (&asked);
  SpelchListKind kind;
  g_autoptr (JsonNode) root = root_of (&checked);
  if (root != NULL && spelch_exercise_is (json_node_get_object (root)))
    return spelch_check_exercise (checked.text, checked.length, checked.name, asked.json);
  if (root != NULL && spelch_lesson_is (json_node_get_object (root)))
    return spelch_check_lesson (checked.text, checked.length, checked.name, asked.json);
  if (root != NULL && spelch_practice_log_is (json_node_get_object (root)))
    {
      g_autoptr (GFile) file = g_file_new_for_commandline_arg (asked.file);
      return spelch_check_practice_log (file, checked.name, asked.json);
    }
  bool is_list = root != NULL && spelch_list_kind_of (json_node_get_object (root), &kind);
  return is_list ? check_list (&asked, &checked, kind) : check_part (&asked, &checked);
}
