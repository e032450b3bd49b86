/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "bench/shelf-window.h"
#include "bench/copy-offer.h"
#include "bench/form.h"
#include "bench/kept-picture.h"
#include "bench/paragraph.h"
#include "bench/shelf-files.h"
#include "bench/shelf-list.h"
#include "bench/taking.h"
#include "bench/template.h"
#include "bench/undo-buttons.h"

#include <glib/gi18n-lib.h>
#include <string.h>

#define WIDTH        1000
#define HEIGHT       720
#define LARGE_WIDTH  320
#define LARGE_HEIGHT 200

struct _SpelchShelfWindow
{
  GtkApplicationWindow parent_instance;
  const SpelchShelfKind *kind;
  SpelchShelves *shelves;
  SpelchShelf *shelf;
  SpelchAppearance *appearance;
  SpelchNumbers numbers;
  SpelchForm *form;
  GtkWidget *more;
  char *shown;    /* id */
  gpointer draft; /* what the picture shows */

  GtkLabel *title;
  GtkWidget *undo, *redo;
  GtkWidget *retire, *delete, *take, *copy_words;
  SpelchShelfList *list;
  GtkWidget *right;
  GtkWidget *frame;
  SpelchKeptPicture *picture;
  GtkLabel *caption;
  GtkBox *fields;
  GtkWidget *said_bar;
  GtkLabel *said;
};

G_DEFINE_FINAL_TYPE (SpelchShelfWindow, spelch_shelf_window, GTK_TYPE_APPLICATION_WINDOW)

SpelchListKind
spelch_shelf_window_get_kind (SpelchShelfWindow *self)
{
  return self->kind->list;
}

SpelchShelf *
spelch_shelf_window_get_shelf (SpelchShelfWindow *self)
{
  return self->shelf;
}

char
spelch_shelf_window_get_separator (SpelchShelfWindow *self)
{
  return self->numbers.decimal_sign == ',' ? ';' : ',';
}

void
spelch_shelf_window_say (SpelchShelfWindow *self, const char *words)
{
  gtk_label_set_text (self->said, words);
  gtk_widget_set_visible (self->said_bar, words[0] != '\0');
}

static void
close_said (SpelchShelfWindow *self)
{
  spelch_shelf_window_say (self, "");
}

static gconstpointer
current (SpelchShelfWindow *self)
{
  return self->shown == NULL ? NULL : spelch_shelf_find (self->shelf, self->shown);
}

static const SpelchPalette *
palette_of (SpelchShelfWindow *self)
{
  return spelch_palette (spelch_appearance_get_look (self->appearance));
}

/* ---- The chosen entry ---- */

static void
draw_large (cairo_t *cr, double width, double height, gpointer data)
{
  SpelchShelfWindow *self = data;
  if (self->shown != NULL && self->kind->draw_large != NULL)
    self->kind->draw_large (cr, self->draft, width, height, palette_of (self));
}

static void
show_draft (SpelchShelfWindow *self, gconstpointer draft)
{
  memcpy (self->draft, draft, spelch_list_item_size (self->kind->list));
  g_autofree char *line = self->kind->line (draft, self->shelves, &self->numbers);
  spelch_paragraph_set (self->caption, line);
  g_autofree char *words = g_strdup_printf (_ ("Picture of %s"), line);
  gtk_accessible_update_property (GTK_ACCESSIBLE (self->frame), GTK_ACCESSIBLE_PROPERTY_LABEL, words, -1);
  spelch_kept_picture_changed (self->picture);
}

static void
enable (SpelchShelfWindow *self, const char *name, bool enabled)
{
  g_simple_action_set_enabled (G_SIMPLE_ACTION (g_action_map_lookup_action (G_ACTION_MAP (self), name)),
                               enabled);
}

static void
show_what_may_be_done (SpelchShelfWindow *self)
{
  gconstpointer item = current (self);
  bool retired = item != NULL && spelch_shelf_item_is_retired (self->kind, item);
  g_autofree char *use = item == NULL ? NULL : spelch_shelves_use (self->shelves, self->kind->list, item);
  gtk_button_set_label (GTK_BUTTON (self->retire), retired ? _ ("Bring back") : _ ("Retire"));
  gtk_widget_set_visible (self->retire, self->kind->retired > 0);
  gtk_widget_set_tooltip_text (self->delete, use);
  enable (self, "shelf-take", self->kind->take != NULL && item != NULL && !retired);
  enable (self, "shelf-duplicate", item != NULL);
  enable (self, "shelf-retire", item != NULL);
  enable (self, "shelf-delete", item != NULL && use == NULL);
}

/* The part on the bench keeps its own copy, which what is changed here doesn't reach by itself. */
static void
show_whose_copy (SpelchShelfWindow *self)
{
  bool differs
      = spelch_copy_differs (spelch_shelves_get_session (self->shelves), self->kind->list, current (self));
  gtk_widget_set_visible (self->copy_words, differs);
  if (differs)
    gtk_widget_add_css_class (self->take, "suggested-action");
  else
    gtk_widget_remove_css_class (self->take, "suggested-action");
}

static void
show_current (SpelchShelfWindow *self)
{
  gconstpointer item = current (self);
  gtk_widget_set_visible (self->right, item != NULL);
  show_what_may_be_done (self);
  if (item == NULL)
    return;
  if (self->kind->furnish != NULL)
    self->kind->furnish (self->form, self->shelves, item);
  spelch_form_show (self->form, item, item);
  show_whose_copy (self);
  if (self->more != NULL)
    self->kind->more_show (self->more, item, &self->numbers);
  show_draft (self, item);
}

static void
choose (SpelchShelfWindow *self, const char *id)
{
  char *chosen = g_strdup (id);
  g_free (self->shown);
  self->shown = chosen;
  show_current (self);
}

static void
row_chosen (SpelchShelfWindow *self, const char *id, SpelchShelfList *list)
{
  choose (self, id);
}

/* ---- Following the shelf ---- */

static void
show_list (SpelchShelfWindow *self)
{
  spelch_shelf_list_show (self->list, &self->numbers, palette_of (self));
}

static void
shelf_changed (SpelchShelfWindow *self)
{
  spelch_undo_buttons_follow (G_ACTION_MAP (self), self->undo, self->redo,
                              spelch_shelf_get_undo_name (self->shelf),
                              spelch_shelf_get_redo_name (self->shelf));
  show_list (self);
  choose (self, spelch_shelf_list_select (self->list, self->shown));
}

static void
look_changed (SpelchShelfWindow *self)
{
  show_list (self);
  show_current (self);
}

/* ---- Editing ---- */

static void
edited (GtkWidget *editor, gconstpointer value, const char *what, SpelchShelfWindow *self)
{
  gconstpointer before = current (self);
  if (before == NULL)
    return;
  gsize size = spelch_list_item_size (self->kind->list);
  g_autofree gpointer after = g_memdup2 (value, size);
  self->kind->settle (before, after);
  g_autofree char *known_as = spelch_shelf_item_known_as (self->kind, before);
  g_autofree char *name = g_strdup_printf (_ ("change of “%s” of “%s”"), what, known_as);
  if (spelch_shelf_put (self->shelf, after, name))
    return;
  show_current (self); /* as it still is */
}

static void
drafted (GtkWidget *editor, gconstpointer value, SpelchShelfWindow *self)
{
  gconstpointer before = current (self);
  if (before == NULL)
    return;
  g_autofree gpointer draft = g_memdup2 (value, spelch_list_item_size (self->kind->list));
  self->kind->settle (before, draft);
  show_draft (self, draft);
}

static char *
fault_of (gconstpointer value, gpointer data)
{
  SpelchShelfWindow *self = data;
  gconstpointer before = current (self);
  if (before == NULL)
    return NULL;
  g_autofree gpointer after = g_memdup2 (value, spelch_list_item_size (self->kind->list));
  self->kind->settle (before, after);
  if (self->kind->known_as == NULL && spelch_shelf_item_name (after)[0] == '\0')
    return g_strdup (_ ("name is missing; everything needs one to be told apart."));
  return spelch_list_item_fault (self->kind->list, after);
}

static const char *
first_member (SpelchShelfWindow *self)
{
  guint i = 0;
  while (self->kind->fields[i].member == NULL)
    i++;
  return self->kind->fields[i].member;
}

static void
put_new (SpelchShelfWindow *self, gpointer item, const char *name, const char *format)
{
  g_autofree char *id = spelch_shelf_make_id (self->shelf, name);
  g_autofree char *what = g_strdup_printf (format, name);
  spelch_shelf_item_call (self->kind, item, id, name);
  g_autofree char *before = g_strdup (self->shown);
  g_free (self->shown);
  self->shown = g_strdup (id);
  spelch_shelf_list_show_all (self->list);
  if (spelch_shelf_put (self->shelf, item, what))
    spelch_form_focus (self->form, first_member (self));
  else
    choose (self, before);
}

static void
do_add (GSimpleAction *action, GVariant *parameter, gpointer data)
{
  SpelchShelfWindow *self = data;
  g_autofree gpointer item = g_malloc0 (spelch_list_item_size (self->kind->list));
  self->kind->begin (item, self->shelves);
  /* Translators: how undo calls it; %s is a name */
  put_new (self, item, _ (self->kind->fresh_name), _ ("adding “%s”"));
}

void
spelch_shelf_window_open (SpelchShelfWindow *self)
{
  gtk_window_present (GTK_WINDOW (self));
  spelch_shelf_list_focus (self->list);
}

void
spelch_shelf_window_begin_own (SpelchShelfWindow *self)
{
  for (guint i = 0; i < spelch_shelf_count (self->shelf); i++)
    {
      gconstpointer item = spelch_shelf_get_nth (self->shelf, i);
      if (self->kind->known_as != NULL
          || !g_str_equal (spelch_shelf_item_name (item), _ (self->kind->fresh_name)))
        continue;
      spelch_shelf_list_show_all (self->list);
      choose (self, spelch_shelf_list_select (self->list, item));
      spelch_form_focus (self->form, first_member (self));
      return;
    }
  do_add (NULL, NULL, self);
}

void
spelch_shelf_window_show (SpelchShelfWindow *self, const char *id)
{
  spelch_shelf_list_show_all (self->list);
  choose (self, spelch_shelf_list_select (self->list, id));
}

void
spelch_shelf_window_show_item (SpelchShelfWindow *self, gconstpointer item, const char *member)
{
  const char *name = spelch_shelf_item_name (item);
  g_autofree char *id = g_strdup (item);
  close_said (self);
  if (spelch_shelf_find (self->shelf, id) == NULL)
    {
      g_autofree char *what = g_strdup_printf (_ ("adding “%s”"), name);
      g_autofree char *said
          = g_strdup_printf (_ ("“%s” came with the part and is kept here now, too."), name);
      if (!spelch_shelf_put (self->shelf, item, what))
        return;
      spelch_shelf_window_say (self, said);
    }
  spelch_shelf_window_show (self, id);
  spelch_form_focus (self->form, member);
}

static void
do_duplicate (GSimpleAction *action, GVariant *parameter, gpointer data)
{
  SpelchShelfWindow *self = data;
  gconstpointer item = current (self);
  if (item == NULL)
    return;
  g_autofree gpointer twin = g_memdup2 (item, spelch_list_item_size (self->kind->list));
  g_autofree char *known_as = spelch_shelf_item_known_as (self->kind, item);
  g_autofree char *name = g_strdup_printf (_ ("%s (copy)"), known_as);
  put_new (self, twin, name, _ ("adding “%s”"));
}

static void
do_take (GSimpleAction *action, GVariant *parameter, gpointer data)
{
  SpelchShelfWindow *self = data;
  const char *refused = spelch_take_to_bench (gtk_window_get_application (GTK_WINDOW (self)), self->shelves,
                                              self->kind->list, current (self));
  spelch_shelf_window_say (self, refused == NULL ? "" : refused);
}

static void
do_retire (GSimpleAction *action, GVariant *parameter, gpointer data)
{
  SpelchShelfWindow *self = data;
  gconstpointer item = current (self);
  if (item == NULL)
    return;
  bool retired = spelch_shelf_item_is_retired (self->kind, item);
  g_return_if_fail (self->kind->retired > 0);
  g_autofree gpointer after = g_memdup2 (item, spelch_list_item_size (self->kind->list));
  *(bool *)(gpointer)((char *)after + self->kind->retired) = !retired;
  g_autofree char *what = g_strdup_printf (retired ? _ ("bringing “%s” back") : _ ("retiring “%s”"),
                                           spelch_shelf_item_name (item));
  spelch_shelf_put (self->shelf, after, what);
}

static void
do_delete (GSimpleAction *action, GVariant *parameter, gpointer data)
{
  SpelchShelfWindow *self = data;
  gconstpointer item = current (self);
  g_autofree char *use = item == NULL ? NULL : spelch_shelves_use (self->shelves, self->kind->list, item);
  if (item == NULL || use != NULL)
    {
      spelch_shelf_window_say (self, use == NULL ? "" : use);
      return;
    }
  g_autofree char *known_as = spelch_shelf_item_known_as (self->kind, item);
  g_autofree char *what = g_strdup_printf (_ ("deleting “%s”"), known_as);
  g_autofree char *id = g_strdup (item);
  spelch_shelf_remove (self->shelf, id, what);
}

static void
do_undo (GSimpleAction *action, GVariant *parameter, gpointer data)
{
  spelch_shelf_undo (SPELCH_SHELF_WINDOW (data)->shelf);
}

static void
do_redo (GSimpleAction *action, GVariant *parameter, gpointer data)
{
  spelch_shelf_redo (SPELCH_SHELF_WINDOW (data)->shelf);
}

static void
do_find (GSimpleAction *action, GVariant *parameter, gpointer data)
{
  spelch_shelf_list_find (SPELCH_SHELF_WINDOW (data)->list);
}

static void
do_import (GSimpleAction *action, GVariant *parameter, gpointer data)
{
  spelch_shelf_files_import (data);
}

static void
do_export (GSimpleAction *action, GVariant *parameter, gpointer data)
{
  spelch_shelf_files_export (data);
}

static void
do_close (GSimpleAction *action, GVariant *parameter, gpointer data)
{
  gtk_window_close (data);
}

static const GActionEntry ACTIONS[] = {
  { .name = "undo", .activate = do_undo },           { .name = "redo", .activate = do_redo },
  { .name = "shelf-add", .activate = do_add },       { .name = "shelf-duplicate", .activate = do_duplicate },
  { .name = "shelf-retire", .activate = do_retire }, { .name = "shelf-delete", .activate = do_delete },
  { .name = "shelf-find", .activate = do_find },     { .name = "shelf-take", .activate = do_take },
  { .name = "shelf-import", .activate = do_import }, { .name = "shelf-export", .activate = do_export },
  { .name = "close", .activate = do_close },
};

/* ---- Object ---- */

static void
spelch_shelf_window_dispose (GObject *object)
{
  SpelchShelfWindow *self = SPELCH_SHELF_WINDOW (object);
  if (self->picture != NULL)
    spelch_kept_picture_set_draw (self->picture, NULL, NULL);
  spelch_template_empty_menus (GTK_WIDGET (object));
  gtk_widget_dispose_template (GTK_WIDGET (object), SPELCH_TYPE_SHELF_WINDOW);
  self->form = NULL;
  self->more = NULL;
  g_clear_object (&self->shelves);
  g_clear_object (&self->appearance);
  G_OBJECT_CLASS (spelch_shelf_window_parent_class)->dispose (object);
}

static void
spelch_shelf_window_finalize (GObject *object)
{
  SpelchShelfWindow *self = SPELCH_SHELF_WINDOW (object);
  g_free (self->shown);
  g_free (self->draft);
  G_OBJECT_CLASS (spelch_shelf_window_parent_class)->finalize (object);
}

static void
spelch_shelf_window_class_init (SpelchShelfWindowClass *klass)
{
  GtkWidgetClass *widget_class = GTK_WIDGET_CLASS (klass);
  G_OBJECT_CLASS (klass)->dispose = spelch_shelf_window_dispose;
  G_OBJECT_CLASS (klass)->finalize = spelch_shelf_window_finalize;
  g_type_ensure (SPELCH_TYPE_KEPT_PICTURE);
  g_type_ensure (SPELCH_TYPE_SHELF_LIST);
  gtk_widget_class_set_template_from_resource (widget_class, "/org/spelch/Spelch/ui/shelf-window.ui");
  gtk_widget_class_bind_template_child (widget_class, SpelchShelfWindow, title);
  gtk_widget_class_bind_template_child (widget_class, SpelchShelfWindow, undo);
  gtk_widget_class_bind_template_child (widget_class, SpelchShelfWindow, redo);
  gtk_widget_class_bind_template_child (widget_class, SpelchShelfWindow, retire);
  gtk_widget_class_bind_template_child (widget_class, SpelchShelfWindow, take);
  gtk_widget_class_bind_template_child (widget_class, SpelchShelfWindow, copy_words);
  gtk_widget_class_bind_template_callback (widget_class, show_whose_copy);
  gtk_widget_class_bind_template_child (widget_class, SpelchShelfWindow, delete);
  gtk_widget_class_bind_template_child (widget_class, SpelchShelfWindow, list);
  gtk_widget_class_bind_template_child (widget_class, SpelchShelfWindow, right);
  gtk_widget_class_bind_template_child (widget_class, SpelchShelfWindow, frame);
  gtk_widget_class_bind_template_child (widget_class, SpelchShelfWindow, picture);
  gtk_widget_class_bind_template_child (widget_class, SpelchShelfWindow, caption);
  gtk_widget_class_bind_template_child (widget_class, SpelchShelfWindow, fields);
  gtk_widget_class_bind_template_child (widget_class, SpelchShelfWindow, said_bar);
  gtk_widget_class_bind_template_child (widget_class, SpelchShelfWindow, said);
  gtk_widget_class_bind_template_callback (widget_class, row_chosen);
  gtk_widget_class_bind_template_callback (widget_class, close_said);
}

static void
spelch_shelf_window_init (SpelchShelfWindow *self)
{
  gtk_widget_init_template (GTK_WIDGET (self));
  g_action_map_add_action_entries (G_ACTION_MAP (self), ACTIONS, G_N_ELEMENTS (ACTIONS), self);
  self->numbers = (SpelchNumbers){ .unit = SPELCH_UNIT_MM, .decimal_sign = '.' };
}

static void
make_editors (SpelchShelfWindow *self)
{
  gsize size = spelch_list_item_size (self->kind->list);
  self->draft = g_malloc0 (size);
  self->form = spelch_form_new (self->kind->fields, self->kind->n_fields, size, fault_of, self);
  g_signal_connect (self->form, "edited", G_CALLBACK (edited), self);
  g_signal_connect (self->form, "drafted", G_CALLBACK (drafted), self);
  gtk_box_append (self->fields, GTK_WIDGET (self->form));
  if (self->kind->more_new == NULL)
    return;
  self->more = self->kind->more_new (self->shelves);
  if (g_signal_lookup ("edited", G_OBJECT_TYPE (self->more)) != 0)
    {
      g_signal_connect (self->more, "edited", G_CALLBACK (edited), self);
      g_signal_connect (self->more, "drafted", G_CALLBACK (drafted), self);
    }
  gtk_box_insert_child_after (self->fields, self->more,
                              self->kind->more_first ? NULL : GTK_WIDGET (self->form));
}

static void
connect_all (SpelchShelfWindow *self)
{
  gtk_widget_set_visible (self->frame, self->kind->draw_large != NULL);
  gtk_widget_set_visible (GTK_WIDGET (self->caption), self->kind->draw_large != NULL);
  if (self->kind->furnish != NULL)
    for (int other = 0; other < SPELCH_LIST_LOG; other++)
      g_signal_connect_object (spelch_shelves_get (self->shelves, (SpelchListKind)other), "changed",
                               G_CALLBACK (look_changed), self, G_CONNECT_SWAPPED);
  spelch_kept_picture_set_size (self->picture, LARGE_WIDTH, LARGE_HEIGHT);
  spelch_kept_picture_set_draw (self->picture, draw_large, self);
  g_signal_connect_object (self->shelf, "changed", G_CALLBACK (shelf_changed), self, G_CONNECT_SWAPPED);
  g_signal_connect_object (self->shelf, "said", G_CALLBACK (spelch_shelf_window_say), self,
                           G_CONNECT_SWAPPED);
  g_signal_connect_object (self->appearance, "changed", G_CALLBACK (look_changed), self, G_CONNECT_SWAPPED);
}

void
spelch_shelf_window_set_numbers (SpelchShelfWindow *self, const SpelchNumbers *numbers)
{
  self->numbers = *numbers;
  spelch_form_set_numbers (self->form, numbers);
  show_list (self);
  show_current (self);
}

/* What the part looked at is made of or with; "" where there is none. Not to be freed. */
static const char *
in_use (SpelchShelfWindow *self)
{
  SpelchSession *session = spelch_shelves_get_session (self->shelves);
  const SpelchPart *part = session == NULL ? NULL : spelch_session_get_part (session);
  if (part == NULL)
    return "";
  const SpelchBit *bit = spelch_session_get_accepted (session);
  switch (self->kind->list)
    {
    case SPELCH_LIST_BITS:
      return bit == NULL ? "" : bit->id;
    case SPELCH_LIST_BOARDS:
      return part->board.id;
    case SPELCH_LIST_MACHINES:
      return part->machine.id;
    case SPELCH_LIST_LOG:
    default:
      return "";
    }
}

SpelchShelfWindow *
spelch_shelf_window_new (GtkApplication *application, SpelchShelves *shelves, SpelchListKind kind,
                         SpelchAppearance *appearance)
{
  SpelchShelfWindow *self = g_object_new (SPELCH_TYPE_SHELF_WINDOW, "application", application, NULL);
  self->kind = spelch_shelf_kind (kind);
  self->shelves = g_object_ref (shelves);
  self->shelf = spelch_shelves_get (shelves, kind);
  self->appearance = g_object_ref (appearance);
  gtk_window_set_title (GTK_WINDOW (self), _ (self->kind->title));
  gtk_label_set_text (self->title, _ (self->kind->title));
  gtk_window_set_default_size (GTK_WINDOW (self), WIDTH, HEIGHT);
  spelch_shelf_list_set_shelves (self->list, self->shelves, self->kind);
  gtk_widget_set_visible (self->take, self->kind->take != NULL);
  if (self->kind->take != NULL)
    gtk_button_set_label (GTK_BUTTON (self->take), _ (self->kind->take));
  make_editors (self);
  connect_all (self);
  self->shown = g_strdup (in_use (self));
  shelf_changed (self);
  const char *trouble = spelch_shelf_get_trouble (self->shelf);
  spelch_shelf_window_say (self, trouble == NULL ? "" : trouble);
  return self;
}
