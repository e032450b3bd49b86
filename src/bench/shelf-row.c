/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "bench/shelf-row.h"
#include "bench/kept-picture.h"
#include "bench/paragraph.h"

#include <glib/gi18n-lib.h>
#include <string.h>

#define LEAST_HEIGHT 28

struct _SpelchShelfRow
{
  GtkListBoxRow parent_instance;
  const SpelchShelfKind *kind;
  SpelchShelves *shelves; /* outlives the row */
  const SpelchPalette *palette;
  SpelchKeptPicture *picture;
  GtkLabel *name, *line, *retired;
  gpointer item;
  char *folded; /* all words, for searching */
  char *key;    /* for sorting by name */
  double scale;
};

G_DEFINE_FINAL_TYPE (SpelchShelfRow, spelch_shelf_row, GTK_TYPE_LIST_BOX_ROW)

static void
draw (cairo_t *cr, double width, double height, gpointer data)
{
  SpelchShelfRow *self = data;
  if (self->palette != NULL)
    self->kind->draw_row (cr, self->item, width, height, self->scale, self->palette);
}

void
spelch_shelf_row_show (SpelchShelfRow *self, gconstpointer item, double scale, const SpelchNumbers *numbers,
                       const SpelchPalette *palette)
{
  bool retired = spelch_shelf_item_is_retired (self->kind, item);
  g_autofree char *title = spelch_shelf_item_title (self->kind, item, self->shelves);
  g_autofree char *line = self->kind->line (item, self->shelves, numbers);
  memcpy (self->item, item, spelch_list_item_size (self->kind->list));
  self->scale = scale;
  self->palette = palette;
  spelch_paragraph_set (self->name, title);
  spelch_paragraph_set (self->line, line);
  gtk_widget_set_visible (GTK_WIDGET (self->retired), retired);
  g_autofree char *words
      = g_strdup_printf ("%s, %s%s%s", title, line, retired ? ", " : "", retired ? _ ("retired") : "");
  gtk_accessible_update_property (GTK_ACCESSIBLE (self), GTK_ACCESSIBLE_PROPERTY_LABEL, words, -1);
  g_free (self->folded);
  self->folded = g_utf8_casefold (words, -1);
  g_free (self->key);
  self->key = g_utf8_collate_key_for_filename (title, -1);
  if (self->kind->draw_row == NULL)
    return;
  spelch_kept_picture_set_size (self->picture, SPELCH_SHELF_PICTURE_WIDTH,
                                MAX (self->kind->row_height (item, scale), LEAST_HEIGHT));
  spelch_kept_picture_changed (self->picture);
}

gconstpointer
spelch_shelf_row_get_item (SpelchShelfRow *self)
{
  return self->item;
}

const char *
spelch_shelf_row_get_key (SpelchShelfRow *self)
{
  return self->key;
}

bool
spelch_shelf_row_matches (SpelchShelfRow *self, const char *words)
{
  return self->folded == NULL || strstr (self->folded, words) != NULL;
}

static GtkLabel *
add_label (GtkWidget *box, const char *css_class)
{
  GtkWidget *label = spelch_paragraph_new (NULL, css_class);
  gtk_label_set_max_width_chars (GTK_LABEL (label), 30);
  gtk_box_append (GTK_BOX (box), label);
  return GTK_LABEL (label);
}

static void
spelch_shelf_row_dispose (GObject *object)
{
  SpelchShelfRow *self = SPELCH_SHELF_ROW (object);
  if (self->picture != NULL)
    spelch_kept_picture_set_draw (self->picture, NULL, NULL);
  self->picture = NULL;
  G_OBJECT_CLASS (spelch_shelf_row_parent_class)->dispose (object);
}

static void
spelch_shelf_row_finalize (GObject *object)
{
  SpelchShelfRow *self = SPELCH_SHELF_ROW (object);
  g_free (self->item);
  g_free (self->folded);
  g_free (self->key);
  G_OBJECT_CLASS (spelch_shelf_row_parent_class)->finalize (object);
}

static void
spelch_shelf_row_class_init (SpelchShelfRowClass *klass)
{
  G_OBJECT_CLASS (klass)->dispose = spelch_shelf_row_dispose;
  G_OBJECT_CLASS (klass)->finalize = spelch_shelf_row_finalize;
}

static void
spelch_shelf_row_init (SpelchShelfRow *self)
{
  GtkWidget *sides = gtk_box_new (GTK_ORIENTATION_HORIZONTAL, 12);
  GtkWidget *words = gtk_box_new (GTK_ORIENTATION_VERTICAL, 1);
  self->picture = g_object_new (SPELCH_TYPE_KEPT_PICTURE, "valign", GTK_ALIGN_CENTER, NULL);
  spelch_kept_picture_set_draw (self->picture, draw, self);
  gtk_box_append (GTK_BOX (sides), GTK_WIDGET (self->picture));
  gtk_box_append (GTK_BOX (sides), words);
  gtk_widget_set_valign (words, GTK_ALIGN_CENTER);
  self->name = add_label (words, "title");
  self->line = add_label (words, "soft");
  self->retired = add_label (words, "soft");
  gtk_label_set_text (self->retired, _ ("retired"));
  gtk_list_box_row_set_child (GTK_LIST_BOX_ROW (self), sides);
}

SpelchShelfRow *
spelch_shelf_row_new (const SpelchShelfKind *kind, SpelchShelves *shelves)
{
  SpelchShelfRow *self = g_object_new (SPELCH_TYPE_SHELF_ROW, NULL);
  self->kind = kind;
  self->shelves = shelves;
  gtk_widget_set_visible (GTK_WIDGET (self->picture), kind->draw_row != NULL);
  self->item = g_malloc0 (spelch_list_item_size (kind->list));
  return self;
}
