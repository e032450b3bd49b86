/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "bench/shelf.h"
#include "files/file-io.h"
#include "files/part-file.h"
#include "files/shop-data.h"

#include <glib/gi18n-lib.h>
#include <string.h>

/* What leads from the list as it is to the one before a change, or after it: only where they differ. */
typedef struct
{
  guint at, n_away; /* so many items from there make way */
  guint n_items;
  gpointer items; /* for these */
  char *what;
  guint number;
} Step;

struct _SpelchShelf
{
  GObject parent_instance;
  SpelchListKind kind;
  GFile *file; /* NULL: nothing is kept */
  char *etag;  /* of the file as it was read or written last; NULL: there is none */
  GHashTable *unknown;
  GArray *items;
  char *trouble;
  bool unreadable;
  GPtrArray *undo, *redo; /* Step */
  guint numbered;         /* changes so far */
};

G_DEFINE_FINAL_TYPE (SpelchShelf, spelch_shelf, G_TYPE_OBJECT)

enum
{
  SIGNAL_CHANGED,
  SIGNAL_SAID,
  N_SIGNALS
};
static guint signals[N_SIGNALS];

static const char *const FILE_NAMES[] = {
  [SPELCH_LIST_BITS] = "bits.json",
  [SPELCH_LIST_BOARDS] = "boards.json",
  [SPELCH_LIST_MACHINES] = "machines.json",
  [SPELCH_LIST_LOG] = "log.json",
};

static void
step_free (gpointer data)
{
  Step *step = data;
  g_free (step->items);
  g_free (step->what);
  g_free (step);
}

static void
say (SpelchShelf *self, const char *sentence)
{
  g_free (self->trouble);
  self->trouble = g_strdup (sentence);
  g_signal_emit (self, signals[SIGNAL_SAID], 0, sentence);
}

/* ---- Lists ---- */

static GArray *
new_list (SpelchShelf *self)
{
  return g_array_new (FALSE, TRUE, (guint)spelch_list_item_size (self->kind));
}

static gconstpointer
nth (SpelchShelf *self, const GArray *items, guint i)
{
  return items->data + spelch_list_item_size (self->kind) * i;
}

/* An empty array may have no data to copy from. */
static void
append (SpelchShelf *self, GArray *list, const GArray *items, guint from, guint n)
{
  if (n > 0)
    g_array_append_vals (list, nth (self, items, from), n);
}

static GArray *
copy_of (SpelchShelf *self, const GArray *items)
{
  GArray *copy = new_list (self);
  append (self, copy, items, 0, items->len);
  return copy;
}

static int
find_in (SpelchShelf *self, const GArray *items, const char *id)
{
  for (guint i = 0; i < items->len; i++)
    if (g_str_equal (nth (self, items, i), id))
      return (int)i;
  return -1;
}

static GArray *
starter_set (SpelchShelf *self)
{
  guint n = 0;
  gconstpointer first = NULL;
  if (self->kind == SPELCH_LIST_BITS)
    first = spelch_shop_bits (&n);
  else if (self->kind == SPELCH_LIST_BOARDS)
    first = spelch_shop_boards (&n);
  else if (self->kind == SPELCH_LIST_MACHINES)
    first = spelch_shop_machines (&n);
  return n == 0 ? new_list (self) : g_array_append_vals (new_list (self), first, n);
}

static GArray *
with_items (SpelchShelf *self, const GArray *items, const GArray *put)
{
  GArray *list = copy_of (self, items);
  gsize size = spelch_list_item_size (self->kind);
  for (guint i = 0; i < put->len; i++)
    {
      gconstpointer item = nth (self, put, i);
      int at = find_in (self, list, item);
      if (at >= 0)
        memcpy (list->data + size * (gsize)at, item, size);
      else
        g_array_append_vals (list, item, 1);
    }
  return list;
}

/* ---- Steps ---- */

static Step *
step_new (SpelchShelf *self, const GArray *from, const GArray *to, const char *what, guint number)
{
  gsize size = spelch_list_item_size (self->kind);
  guint shorter = MIN (from->len, to->len), begin = 0, end = 0;
  while (begin < shorter && memcmp (nth (self, from, begin), nth (self, to, begin), size) == 0)
    begin++;
  while (begin + end < shorter
         && memcmp (nth (self, from, from->len - 1 - end), nth (self, to, to->len - 1 - end), size) == 0)
    end++;
  Step *step = g_new0 (Step, 1);
  step->at = begin;
  step->n_away = from->len - begin - end;
  step->n_items = to->len - begin - end;
  step->items = step->n_items == 0 ? NULL : g_memdup2 (nth (self, to, begin), step->n_items * size);
  step->what = g_strdup (what);
  step->number = number;
  return step;
}

static GArray *
list_after (SpelchShelf *self, const Step *step)
{
  GArray *list = new_list (self);
  guint rest = step->at + step->n_away;
  append (self, list, self->items, 0, step->at);
  if (step->n_items > 0)
    g_array_append_vals (list, step->items, step->n_items);
  append (self, list, self->items, rest, self->items->len - rest);
  return list;
}

/* The oldest go, the newest stays however much it changed. A step counts as much as the one back from it. */
static void
keep_small (SpelchShelf *self, GPtrArray *steps)
{
  gsize bytes = 0, size = spelch_list_item_size (self->kind);
  guint first = steps->len;
  while (first > 0 && (first == steps->len || bytes < SPELCH_SHELF_MOST_BYTES))
    {
      const Step *step = g_ptr_array_index (steps, --first);
      bytes += sizeof *step + MAX (step->n_away, step->n_items) * size;
    }
  if (first > 0)
    g_ptr_array_remove_range (steps, 0, first);
}

/* ---- The file ---- */

/* NULL, with @error, when it can't be read; NULL without when there is none. */
static GArray *
read_file (SpelchShelf *self, GHashTable *unknown, char **etag, GError **error)
{
  gsize length = 0;
  if (self->file == NULL || !g_file_query_exists (self->file, NULL))
    return NULL;
  g_autofree char *text = spelch_file_read (self->file, &length, etag, error);
  if (text == NULL)
    return NULL;
  return spelch_list_from_json (self->kind, text, length, FILE_NAMES[self->kind], unknown, error);
}

static GHashTable *
new_unknown (void)
{
  return g_hash_table_new_full (g_str_hash, g_str_equal, g_free, g_free);
}

static void
load (SpelchShelf *self)
{
  g_autoptr (GError) error = NULL;
  g_clear_pointer (&self->etag, g_free);
  g_hash_table_remove_all (self->unknown);
  g_autoptr (GArray) read = read_file (self, self->unknown, &self->etag, &error);
  g_clear_pointer (&self->items, g_array_unref);
  /* They led from the list as it was. */
  g_ptr_array_set_size (self->undo, 0);
  g_ptr_array_set_size (self->redo, 0);
  self->items = read != NULL ? g_array_ref (read) : starter_set (self);
  self->unreadable = error != NULL;
  g_clear_pointer (&self->trouble, g_free);
  if (error != NULL)
    self->trouble = g_strdup_printf (
        self->kind == SPELCH_LIST_LOG
            ? _ ("%s Nothing can be shown or written down until that is mended.")
            : _ (
                "%s The list that came with the program is shown until that is mended; it can't be changed."),
        error->message);
}

/* Whether the file is still as this program left it. */
static bool
is_ours (SpelchShelf *self)
{
  g_autofree char *etag = spelch_file_etag (self->file);
  return g_strcmp0 (etag, self->etag) == 0;
}

static bool
keep (SpelchShelf *self, GArray *items)
{
  if (self->file == NULL)
    return true;
  g_autoptr (GError) error = NULL;
  g_autoptr (GFile) folder = g_file_get_parent (self->file);
  g_autofree char *path = g_file_get_path (folder);
  g_autofree char *text = spelch_list_to_json (self->kind, items, self->unknown);
  char *etag = NULL;
  if (strlen (text) > SPELCH_FILE_MOST)
    {
      g_autofree char *full = g_strdup_printf (_ ("%s is full: a list has at most %d bytes. Delete what "
                                                  "isn't needed, or export it and begin anew."),
                                               FILE_NAMES[self->kind], SPELCH_FILE_MOST);
      say (self, full);
      return false;
    }
  g_mkdir_with_parents (path, 0700);
  if (!spelch_file_save (self->file, text, self->etag, &etag, &error))
    {
      say (self, error->message);
      return false;
    }
  g_free (self->etag);
  self->etag = etag;
  g_clear_pointer (&self->trouble, g_free);
  return true;
}

/* ---- Changing ---- */

/* Another program (or another copy of this one) has changed the file: what it wrote is taken up before a
 * change is made. */
static bool
catch_up (SpelchShelf *self)
{
  if (self->file == NULL || is_ours (self))
    return true;
  load (self);
  if (self->unreadable)
    {
      g_signal_emit (self, signals[SIGNAL_SAID], 0, self->trouble);
      return false;
    }
  g_signal_emit (self, signals[SIGNAL_SAID], 0,
                 _ ("The list was changed elsewhere; your change is made to the list as it is now."));
  return true;
}

static void
take (SpelchShelf *self, GArray *items)
{
  g_array_ref (items);
  g_array_unref (self->items);
  self->items = items;
  g_signal_emit (self, signals[SIGNAL_CHANGED], 0);
}

/* Makes @items, which follow from the list as it is, the list. */
static bool
change_to (SpelchShelf *self, GArray *items, const char *what)
{
  if (!keep (self, items))
    return false;
  g_ptr_array_set_size (self->redo, 0);
  g_ptr_array_add (self->undo, step_new (self, items, self->items, what, ++self->numbered));
  keep_small (self, self->undo);
  take (self, items);
  return true;
}

static bool
may_change (SpelchShelf *self)
{
  if (self->unreadable)
    load (self); /* perhaps it was mended */
  if (self->unreadable)
    {
      g_signal_emit (self, signals[SIGNAL_SAID], 0, self->trouble);
      return false;
    }
  return catch_up (self);
}

bool
spelch_shelf_put_all (SpelchShelf *self, const GArray *items, const char *what)
{
  if (!may_change (self))
    return false;
  g_autoptr (GArray) list = with_items (self, self->items, items);
  return change_to (self, list, what);
}

bool
spelch_shelf_put (SpelchShelf *self, gconstpointer item, const char *what)
{
  g_autoptr (GArray) one = g_array_append_vals (new_list (self), item, 1);
  return spelch_shelf_put_all (self, one, what);
}

bool
spelch_shelf_remove (SpelchShelf *self, const char *id, const char *what)
{
  if (!may_change (self))
    return false;
  int at = find_in (self, self->items, id);
  if (at < 0)
    return true;
  g_autoptr (GArray) list = copy_of (self, self->items);
  g_array_remove_index (list, (guint)at);
  return change_to (self, list, what);
}

/* ---- Undo ---- */

static const char *
name_of (const GPtrArray *steps)
{
  return steps->len == 0 ? NULL : ((Step *)g_ptr_array_index (steps, steps->len - 1))->what;
}

static void
step_over (SpelchShelf *self, GPtrArray *from, GPtrArray *to)
{
  if (!may_change (self) || from->len == 0)
    return;
  const Step *step = g_ptr_array_index (from, from->len - 1);
  g_autoptr (GArray) items = list_after (self, step);
  if (!keep (self, items))
    return;
  g_ptr_array_add (to, step_new (self, items, self->items, step->what, step->number));
  g_ptr_array_remove_index (from, from->len - 1);
  take (self, items);
}

static int
find_step (const GPtrArray *steps, guint number)
{
  for (guint i = 0; i < steps->len; i++)
    if (((Step *)g_ptr_array_index (steps, i))->number == number)
      return (int)i;
  return -1;
}

guint
spelch_shelf_get_step (SpelchShelf *self)
{
  guint n = self->undo->len;
  return n == 0 ? 0 : ((Step *)g_ptr_array_index (self->undo, n - 1))->number;
}

SpelchStepState
spelch_shelf_step_state (SpelchShelf *self, guint step)
{
  int done = find_step (self->undo, step), undone = find_step (self->redo, step);
  if (done >= 0)
    return (guint)done + 1 == self->undo->len ? SPELCH_STEP_DONE_LAST : SPELCH_STEP_DONE;
  if (undone >= 0)
    return (guint)undone + 1 == self->redo->len ? SPELCH_STEP_UNDONE_LAST : SPELCH_STEP_UNDONE;
  return SPELCH_STEP_FORGOTTEN;
}

const char *
spelch_shelf_get_undo_name (SpelchShelf *self)
{
  return name_of (self->undo);
}

const char *
spelch_shelf_get_redo_name (SpelchShelf *self)
{
  return name_of (self->redo);
}

void
spelch_shelf_undo (SpelchShelf *self)
{
  step_over (self, self->undo, self->redo);
}

void
spelch_shelf_redo (SpelchShelf *self)
{
  step_over (self, self->redo, self->undo);
}

/* ---- Reading ---- */

SpelchListKind
spelch_shelf_get_kind (SpelchShelf *self)
{
  return self->kind;
}

GArray *
spelch_shelf_get_items (SpelchShelf *self)
{
  return self->items;
}

guint
spelch_shelf_count (SpelchShelf *self)
{
  return self->items->len;
}

gconstpointer
spelch_shelf_get_nth (SpelchShelf *self, guint n)
{
  return n < self->items->len ? nth (self, self->items, n) : NULL;
}

gconstpointer
spelch_shelf_find (SpelchShelf *self, const char *id)
{
  int at = find_in (self, self->items, id);
  return at < 0 ? NULL : nth (self, self->items, (guint)at);
}

const char *
spelch_shelf_get_trouble (SpelchShelf *self)
{
  return self->trouble;
}

/* "Für Eiche, 12 mm" gives "fur-eiche-12-mm". */
static char *
slug_of (const char *name)
{
  g_autofree char *ascii = g_str_to_ascii (name, "C");
  GString *slug = g_string_new (NULL);
  for (const char *c = ascii; *c != '\0' && slug->len < SPELCH_ID_SIZE - 8; c++)
    if (g_ascii_isalnum (*c) || (*c == '.' && slug->len > 0))
      g_string_append_c (slug, g_ascii_tolower (*c));
    else if (slug->len > 0 && slug->str[slug->len - 1] != '-')
      g_string_append_c (slug, '-');
  while (slug->len > 0 && !g_ascii_isalnum (slug->str[slug->len - 1]))
    g_string_truncate (slug, slug->len - 1);
  if (slug->len == 0)
    g_string_append (slug, "item");
  return g_string_free (slug, FALSE);
}

char *
spelch_shelf_make_id (SpelchShelf *self, const char *name)
{
  g_autofree char *slug = slug_of (name);
  char *id = g_strdup (slug);
  for (guint n = 2; find_in (self, self->items, id) >= 0; n++)
    {
      g_free (id);
      id = g_strdup_printf ("%s-%u", slug, n);
    }
  return id;
}

/* ---- Object ---- */

static void
spelch_shelf_finalize (GObject *object)
{
  SpelchShelf *self = SPELCH_SHELF (object);
  g_clear_object (&self->file);
  g_free (self->etag);
  g_free (self->trouble);
  g_hash_table_unref (self->unknown);
  g_clear_pointer (&self->items, g_array_unref);
  g_ptr_array_unref (self->undo);
  g_ptr_array_unref (self->redo);
  G_OBJECT_CLASS (spelch_shelf_parent_class)->finalize (object);
}

static void
spelch_shelf_class_init (SpelchShelfClass *klass)
{
  G_OBJECT_CLASS (klass)->finalize = spelch_shelf_finalize;
  signals[SIGNAL_CHANGED]
      = g_signal_new ("changed", SPELCH_TYPE_SHELF, G_SIGNAL_RUN_LAST, 0, NULL, NULL, NULL, G_TYPE_NONE, 0);
  signals[SIGNAL_SAID] = g_signal_new ("said", SPELCH_TYPE_SHELF, G_SIGNAL_RUN_LAST, 0, NULL, NULL, NULL,
                                       G_TYPE_NONE, 1, G_TYPE_STRING);
}

static void
spelch_shelf_init (SpelchShelf *self)
{
  self->unknown = new_unknown ();
  self->undo = g_ptr_array_new_with_free_func (step_free);
  self->redo = g_ptr_array_new_with_free_func (step_free);
}

SpelchShelf *
spelch_shelf_new (SpelchListKind kind, const char *folder)
{
  SpelchShelf *self = g_object_new (SPELCH_TYPE_SHELF, NULL);
  self->kind = kind;
  self->file = folder == NULL ? NULL : g_file_new_build_filename (folder, FILE_NAMES[kind], NULL);
  load (self);
  return self;
}
