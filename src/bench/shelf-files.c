/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "bench/shelf-files.h"
#include "bench/dialogue.h"
#include "files/bit-csv.h"
#include "files/file-io.h"

#include <glib/gi18n-lib.h>
#include <string.h>

#define TABLE_SUFFIX ".csv"
#define LIST_SUFFIX  ".json"

static bool
is_table (SpelchShelf *shelf, GFile *file)
{
  g_autofree char *name = spelch_file_name (file);
  g_autofree char *lower = g_ascii_strdown (name, -1);
  return spelch_shelf_get_kind (shelf) == SPELCH_LIST_BITS && g_str_has_suffix (lower, TABLE_SUFFIX);
}

/* ---- Import ---- */

static gpointer
nth (GArray *items, gsize size, guint i)
{
  return items->data + size * i;
}

static bool
same_item (SpelchListKind kind, gconstpointer a, gconstpointer b)
{
  gsize size = spelch_list_item_size (kind);
  g_autoptr (GArray) one = g_array_append_vals (g_array_new (FALSE, TRUE, (guint)size), a, 1);
  g_autoptr (GArray) other = g_array_append_vals (g_array_new (FALSE, TRUE, (guint)size), b, 1);
  g_autofree char *text = spelch_list_to_json (kind, one, NULL);
  g_autofree char *against = spelch_list_to_json (kind, other, NULL);
  return g_str_equal (text, against);
}

/* Those of @read that aren't on the shelf yet, with ids of their own there. */
static GArray *
fresh_ones (SpelchShelf *shelf, GArray *read)
{
  SpelchListKind kind = spelch_shelf_get_kind (shelf);
  gsize size = spelch_list_item_size (kind);
  GArray *fresh = g_array_new (FALSE, TRUE, (guint)size);
  g_autoptr (GHashTable) taken = g_hash_table_new_full (g_str_hash, g_str_equal, g_free, NULL);
  for (guint i = 0; i < read->len; i++)
    g_hash_table_add (taken, g_strdup (nth (read, size, i)));
  for (guint i = 0; i < read->len; i++)
    {
      g_autofree gpointer item = g_memdup2 (nth (read, size, i), size);
      gconstpointer there = spelch_shelf_find (shelf, item);
      if (there != NULL && same_item (kind, there, item))
        continue;
      if (there != NULL || ((const char *)item)[0] == '\0')
        {
          g_autofree char *name = spelch_shelf_item_known_as (spelch_shelf_kind (kind), item);
          g_autofree char *wished = g_strdup (name);
          g_autofree char *id = spelch_shelf_make_id (shelf, wished);
          for (guint n = 2; g_hash_table_contains (taken, id); n++)
            {
              g_free (wished);
              g_free (id);
              wished = g_strdup_printf ("%s %u", name, n);
              id = spelch_shelf_make_id (shelf, wished);
            }
          g_hash_table_add (taken, g_strdup (id));
          spelch_shelf_item_call (spelch_shelf_kind (kind), item, id, name);
        }
      g_array_append_vals (fresh, item, 1);
    }
  return fresh;
}

static char *
take_items (SpelchShelf *shelf, GArray *read, const char *name)
{
  g_autoptr (GArray) fresh = fresh_ones (shelf, read);
  g_autofree char *what = g_strdup_printf (_ ("import of “%s”"), name);
  if (fresh->len > 0 && !spelch_shelf_put_all (shelf, fresh, what))
    return g_strdup (spelch_shelf_get_trouble (shelf) != NULL ? spelch_shelf_get_trouble (shelf) : "");
  g_autofree char *taken = g_strdup_printf (g_dngettext (GETTEXT_PACKAGE, "%u entry came in from “%s”.",
                                                         "%u entries came in from “%s”.", fresh->len),
                                            fresh->len, name);
  guint there = read->len - fresh->len;
  if (there == 0)
    return g_steal_pointer (&taken);
  g_autofree char *known = g_strdup_printf (
      g_dngettext (GETTEXT_PACKAGE, "%u lay there already.", "%u lay there already.", there), there);
  return g_strdup_printf ("%s %s", taken, known);
}

static char *
take_table (SpelchShelf *shelf, const char *text, gsize length, const char *name)
{
  g_autoptr (SpelchBitTable) table = spelch_bits_from_csv (text, length);
  g_autofree char *taken = take_items (shelf, table->bits, name);
  GString *report = g_string_new (taken);
  if (table->bits->len < table->n_rows)
    g_string_append_printf (report,
                            g_dngettext (GETTEXT_PACKAGE, " %u of the table's %u line could be read.",
                                         " %u of the table's %u lines could be read.", table->n_rows),
                            table->bits->len, table->n_rows);
  for (guint i = 0; i < table->problems->len; i++)
    g_string_append_printf (report, "\n%s", (const char *)g_ptr_array_index (table->problems, i));
  return g_string_free (report, FALSE);
}

char *
spelch_shelf_files_take (SpelchShelf *shelf, GFile *file)
{
  g_autoptr (GError) error = NULL;
  gsize length = 0;
  g_autofree char *name = spelch_file_name (file);
  g_autofree char *text = spelch_file_read (file, &length, NULL, &error);
  if (text == NULL)
    return g_strdup (error->message);
  if (is_table (shelf, file))
    return take_table (shelf, text, length, name);
  g_autoptr (GArray) read
      = spelch_list_from_json (spelch_shelf_get_kind (shelf), text, length, name, NULL, &error);
  if (read == NULL)
    return g_strdup_printf (_ ("%s Nothing was taken from it."), error->message);
  return take_items (shelf, read, name);
}

/* ---- Export ---- */

char *
spelch_shelf_files_write (SpelchShelf *shelf, GFile *file, char separator)
{
  g_autoptr (GError) error = NULL;
  GArray *items = spelch_shelf_get_items (shelf);
  g_autofree char *name = spelch_file_name (file);
  g_autofree char *text = is_table (shelf, file)
                              ? spelch_bits_to_csv (items, separator)
                              : spelch_list_to_json (spelch_shelf_get_kind (shelf), items, NULL);
  if (!spelch_file_save (file, text, NULL, NULL, &error))
    return g_strdup (error->message);
  return g_strdup_printf (g_dngettext (GETTEXT_PACKAGE, "%u entry was written to “%s”.",
                                       "%u entries were written to “%s”.", items->len),
                          items->len, name);
}

/* ---- Asking ---- */

static GtkFileFilter *
filter_new (const char *name, const char *pattern)
{
  GtkFileFilter *filter = gtk_file_filter_new ();
  gtk_file_filter_set_name (filter, name);
  gtk_file_filter_add_pattern (filter, pattern);
  return filter;
}

static GtkFileChooserNative *
chooser_new (SpelchShelfWindow *window, GtkFileChooserAction action, const char *title, const char *accept)
{
  GtkFileChooserNative *chooser
      = gtk_file_chooser_native_new (title, GTK_WINDOW (window), action, accept, _ ("_Cancel"));
  gtk_native_dialog_set_modal (GTK_NATIVE_DIALOG (chooser), TRUE);
  return chooser;
}

/* The file to write: its ending says how, and where a table is chosen it gets that of one. The chooser asked
 * about the name as it was typed, so another file of the new name stays: NULL then. */
static GFile *
file_to_write (GtkFileChooser *chooser)
{
  GFile *file = gtk_file_chooser_get_file (chooser);
  g_autofree char *name = g_file_get_basename (file);
  bool table = gtk_file_chooser_get_filter (chooser) == g_object_get_data (G_OBJECT (chooser), "table");
  if (!table || g_str_has_suffix (name, TABLE_SUFFIX))
    return file;
  if (g_str_has_suffix (name, LIST_SUFFIX))
    name[strlen (name) - strlen (LIST_SUFFIX)] = '\0';
  g_autofree char *ending = g_strconcat (name, TABLE_SUFFIX, NULL);
  g_autoptr (GFile) folder = g_file_get_parent (file);
  g_object_unref (file);
  GFile *other = g_file_get_child (folder, ending);
  if (g_file_query_exists (other, NULL))
    g_clear_object (&other);
  return other;
}

static char *
write_chosen (SpelchShelfWindow *window, GtkFileChooser *chooser)
{
  g_autoptr (GFile) file = file_to_write (chooser);
  if (file == NULL)
    return g_strdup (_ ("There is a table of that name already. Nothing was written; choose another name, or "
                        "type this one with its ending “.csv” to write over it."));
  return spelch_shelf_files_write (spelch_shelf_window_get_shelf (window), file,
                                   spelch_shelf_window_get_separator (window));
}

static char *
take_chosen (SpelchShelfWindow *window, GtkFileChooser *chooser)
{
  g_autoptr (GFile) file = gtk_file_chooser_get_file (chooser);
  SpelchShelf *shelf = spelch_shelf_window_get_shelf (window);
  g_autoptr (GHashTable) before = g_hash_table_new_full (g_str_hash, g_str_equal, g_free, NULL);
  for (guint i = 0; i < spelch_shelf_count (shelf); i++)
    g_hash_table_add (before, g_strdup (spelch_shelf_get_nth (shelf, i)));
  char *said = spelch_shelf_files_take (shelf, file);
  for (guint i = 0; i < spelch_shelf_count (shelf); i++)
    if (!g_hash_table_contains (before, spelch_shelf_get_nth (shelf, i)))
      {
        spelch_shelf_window_show (window, spelch_shelf_get_nth (shelf, i));
        break;
      }
  return said;
}

static void
answered (GtkNativeDialog *dialog, int response, SpelchShelfWindow *window)
{
  GtkFileChooser *chooser = GTK_FILE_CHOOSER (dialog);
  if (response == GTK_RESPONSE_ACCEPT)
    {
      bool opens = gtk_file_chooser_get_action (chooser) == GTK_FILE_CHOOSER_ACTION_OPEN;
      g_autofree char *said = opens ? take_chosen (window, chooser) : write_chosen (window, chooser);
      spelch_shelf_window_say (window, said);
    }
  spelch_dialogue_end_native (dialog);
}

void
spelch_shelf_files_import (SpelchShelfWindow *window)
{
  GtkFileChooserNative *chooser
      = chooser_new (window, GTK_FILE_CHOOSER_ACTION_OPEN, _ ("Import a list"), _ ("_Import"));
  bool bits = spelch_shelf_window_get_kind (window) == SPELCH_LIST_BITS;
  g_autoptr (GtkFileFilter) lists = filter_new (bits ? _ ("Lists and tables") : _ ("Lists"), "*" LIST_SUFFIX);
  if (bits)
    gtk_file_filter_add_pattern (lists, "*" TABLE_SUFFIX);
  gtk_file_chooser_add_filter (GTK_FILE_CHOOSER (chooser), lists);
  g_signal_connect (chooser, "response", G_CALLBACK (answered), window);
  gtk_native_dialog_show (GTK_NATIVE_DIALOG (chooser));
}

void
spelch_shelf_files_export (SpelchShelfWindow *window)
{
  GtkFileChooserNative *chooser
      = chooser_new (window, GTK_FILE_CHOOSER_ACTION_SAVE, _ ("Export the list"), _ ("_Export"));
  g_autoptr (GtkFileFilter) list = filter_new (_ ("List (JSON)"), "*" LIST_SUFFIX);
  g_autofree char *name
      = g_strconcat (spelch_list_member (spelch_shelf_window_get_kind (window)), LIST_SUFFIX, NULL);
  gtk_file_chooser_add_filter (GTK_FILE_CHOOSER (chooser), list);
  gtk_file_chooser_set_current_name (GTK_FILE_CHOOSER (chooser), name);
  if (spelch_shelf_window_get_kind (window) == SPELCH_LIST_BITS)
    {
      GtkFileFilter *table = filter_new (_ ("Table for a spreadsheet (CSV)"), "*" TABLE_SUFFIX);
      gtk_file_chooser_add_filter (GTK_FILE_CHOOSER (chooser), table);
      g_object_set_data_full (G_OBJECT (chooser), "table", table, g_object_unref);
    }
  g_signal_connect (chooser, "response", G_CALLBACK (answered), window);
  gtk_native_dialog_show (GTK_NATIVE_DIALOG (chooser));
}
