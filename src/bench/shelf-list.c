/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "bench/shelf-list.h"
#include "bench/shelf-row.h"
#include "bench/template.h"

#include <glib/gi18n-lib.h>
#include <string.h>

#define ROW_PICTURE_MM 60 /* the least span drawn, so that small things don't look huge */

/* What is let through. */
typedef struct
{
  GtkDropDown *choice;
  char **ids; /* by choice, the first "" for all; ended by NULL */
} Filter;

struct _SpelchShelfList
{
  GtkWidget parent_instance;
  const SpelchShelfKind *kind;
  SpelchShelves *shelves;
  SpelchShelf *shelf;
  char *searched; /* case-folded */
  Filter filters[SPELCH_SHELF_FILTERS];
  bool syncing;
  guint sight; /* tick callback waiting for the layout, to bring the chosen row into sight */
  guint ticks; /* since then */

  GtkSearchEntry *search;
  GtkDropDown *order;
  GtkBox *filter_box;
  GtkListBox *list;
  GtkLabel *empty;
};

G_DEFINE_FINAL_TYPE (SpelchShelfList, spelch_shelf_list, GTK_TYPE_WIDGET)

enum
{
  SIGNAL_CHOSEN,
  N_SIGNALS
};
static guint signals[N_SIGNALS];

/* ---- Filters ---- */

static const char *
id_of (SpelchShelfList *self, gconstpointer item, guint filter)
{
  return (const char *)item + self->kind->filters[filter].offset;
}

static const char *
let_through (const Filter *filter)
{
  guint selected = gtk_drop_down_get_selected (filter->choice);
  return filter->ids == NULL || selected == GTK_INVALID_LIST_POSITION ? "" : filter->ids[selected];
}

static void show_why_empty (SpelchShelfList *self);

static void
filter_changed (SpelchShelfList *self)
{
  if (self->syncing)
    return;
  gtk_list_box_invalidate_filter (self->list);
  show_why_empty (self);
}

/* All, and what the entries tell of, in the order in which it is met. */
static void
fill_filter (SpelchShelfList *self, guint i)
{
  Filter *filter = &self->filters[i];
  const SpelchShelfFilter *by = &self->kind->filters[i];
  g_autofree char *chosen = g_strdup (let_through (filter));
  g_autoptr (GPtrArray) ids = g_ptr_array_new ();
  g_autoptr (GtkStringList) names = gtk_string_list_new (NULL);
  g_ptr_array_add (ids, g_strdup (""));
  gtk_string_list_append (names, _ (by->all));
  for (guint n = 0; n < spelch_shelf_count (self->shelf); n++)
    {
      const char *id = id_of (self, spelch_shelf_get_nth (self->shelf, n), i);
      if (g_ptr_array_find_with_equal_func (ids, id, g_str_equal, NULL))
        continue;
      g_ptr_array_add (ids, g_strdup (id));
      gtk_string_list_append (names, spelch_shelves_name (self->shelves, by->of, id));
    }
  guint at = 0;
  if (!g_ptr_array_find_with_equal_func (ids, chosen, g_str_equal, &at))
    at = 0;
  g_ptr_array_add (ids, NULL);
  g_strfreev (filter->ids);
  filter->ids = (char **)g_ptr_array_free (g_steal_pointer (&ids), FALSE);
  gtk_drop_down_set_model (filter->choice, G_LIST_MODEL (names));
  gtk_drop_down_set_selected (filter->choice, at);
}

static void
add_filters (SpelchShelfList *self)
{
  for (guint i = 0; i < self->kind->n_filters; i++)
    {
      GtkWidget *choice = gtk_drop_down_new (NULL, NULL);
      gtk_widget_set_hexpand (choice, TRUE);
      gtk_accessible_update_property (GTK_ACCESSIBLE (choice), GTK_ACCESSIBLE_PROPERTY_LABEL,
                                      _ (self->kind->filters[i].label), -1);
      g_signal_connect_swapped (choice, "notify::selected", G_CALLBACK (filter_changed), self);
      gtk_box_append (self->filter_box, choice);
      self->filters[i].choice = GTK_DROP_DOWN (choice);
    }
  gtk_widget_set_visible (GTK_WIDGET (self->filter_box), self->kind->n_filters > 0);
}

/* ---- Rows ---- */

static double
scale_of_rows (SpelchShelfList *self)
{
  double longest = ROW_PICTURE_MM;
  if (self->kind->span_mm == NULL)
    return 1;
  for (guint i = 0; i < spelch_shelf_count (self->shelf); i++)
    longest = MAX (longest, self->kind->span_mm (spelch_shelf_get_nth (self->shelf, i)));
  return (SPELCH_SHELF_PICTURE_WIDTH - 4) / longest;
}

static GtkListBoxRow *
row_of (SpelchShelfList *self, const char *id)
{
  for (GtkWidget *row = gtk_widget_get_first_child (GTK_WIDGET (self->list)); row != NULL;
       row = gtk_widget_get_next_sibling (row))
    if (SPELCH_IS_SHELF_ROW (row) && g_strcmp0 (spelch_shelf_row_get_item (SPELCH_SHELF_ROW (row)), id) == 0)
      return GTK_LIST_BOX_ROW (row);
  return NULL;
}

static void
drop_gone_rows (SpelchShelfList *self)
{
  GtkWidget *next;
  for (GtkWidget *row = gtk_widget_get_first_child (GTK_WIDGET (self->list)); row != NULL; row = next)
    {
      next = gtk_widget_get_next_sibling (row);
      if (SPELCH_IS_SHELF_ROW (row)
          && spelch_shelf_find (self->shelf, spelch_shelf_row_get_item (SPELCH_SHELF_ROW (row))) == NULL)
        gtk_list_box_remove (self->list, row);
    }
}

void
spelch_shelf_list_show (SpelchShelfList *self, const SpelchNumbers *numbers, const SpelchPalette *palette)
{
  double scale = scale_of_rows (self);
  self->syncing = true;
  drop_gone_rows (self);
  for (guint i = 0; i < spelch_shelf_count (self->shelf); i++)
    {
      gconstpointer item = spelch_shelf_get_nth (self->shelf, i);
      GtkListBoxRow *row = row_of (self, item);
      bool fresh = row == NULL;
      if (fresh)
        row = GTK_LIST_BOX_ROW (spelch_shelf_row_new (self->kind, self->shelves));
      spelch_shelf_row_show (SPELCH_SHELF_ROW (row), item, scale, numbers, palette);
      if (fresh)
        gtk_list_box_append (self->list, GTK_WIDGET (row));
    }
  for (guint i = 0; i < self->kind->n_filters; i++)
    fill_filter (self, i);
  gtk_list_box_invalidate_sort (self->list);
  gtk_list_box_invalidate_filter (self->list);
  self->syncing = false;
  show_why_empty (self);
}

static int
compare (GtkListBoxRow *a, GtkListBoxRow *b, gpointer data)
{
  SpelchShelfList *self = data;
  gconstpointer first = spelch_shelf_row_get_item (SPELCH_SHELF_ROW (a));
  gconstpointer second = spelch_shelf_row_get_item (SPELCH_SHELF_ROW (b));
  guint order = gtk_drop_down_get_selected (self->order);
  if (order == GTK_INVALID_LIST_POSITION)
    order = 0;
  bool by_name = order == 0 && self->kind->known_as == NULL;
  double by = by_name ? 0 : self->kind->measure (first, order) - self->kind->measure (second, order);
  if (by != 0)
    return by < 0 ? -1 : 1;
  int named = strcmp (spelch_shelf_row_get_key (SPELCH_SHELF_ROW (a)),
                      spelch_shelf_row_get_key (SPELCH_SHELF_ROW (b)));
  return named != 0 ? named : strcmp (first, second);
}

static gboolean
matches (GtkListBoxRow *row, gpointer data)
{
  SpelchShelfList *self = data;
  gconstpointer item = spelch_shelf_row_get_item (SPELCH_SHELF_ROW (row));
  for (guint i = 0; i < self->kind->n_filters; i++)
    {
      const char *wanted = let_through (&self->filters[i]);
      if (wanted[0] != '\0' && strcmp (wanted, id_of (self, item, i)) != 0)
        return FALSE;
    }
  return self->searched == NULL || spelch_shelf_row_matches (SPELCH_SHELF_ROW (row), self->searched);
}

/* ---- Choosing ---- */

static GtkListBoxRow *
first_row_shown (SpelchShelfList *self)
{
  for (int i = 0;; i++)
    {
      GtkListBoxRow *row = gtk_list_box_get_row_at_index (self->list, i);
      if (row == NULL || matches (row, self))
        return row;
    }
}

/* What to do while the list shows nothing. */
static void
show_why_empty (SpelchShelfList *self)
{
  const char *typed = gtk_editable_get_text (GTK_EDITABLE (self->search));
  g_autofree char *no_match
      = typed[0] == '\0'
            ? g_strdup (_ ("Nothing here is let through. Choose another filter above."))
            : g_strdup_printf (_ ("Nothing here matches “%s”. Search for a word of the name, for a "
                                  "kind or a size, or empty the field to see all."),
                               typed);
  gtk_widget_set_visible (GTK_WIDGET (self->empty), first_row_shown (self) == NULL); /* else it is read out */
  gtk_label_set_text (self->empty, spelch_shelf_count (self->shelf) == 0 ? _ (self->kind->empty) : no_match);
}

static gboolean
bring_into_sight (GtkWidget *widget, GdkFrameClock *clock, gpointer data)
{
  SpelchShelfList *self = SPELCH_SHELF_LIST (widget);
  if (self->ticks++ == 0)
    return G_SOURCE_CONTINUE; /* this frame still lays out what has changed */
  self->sight = 0;
  GtkListBoxRow *row = gtk_list_box_get_selected_row (self->list);
  graphene_rect_t place;
  if (row == NULL || !gtk_widget_compute_bounds (GTK_WIDGET (row), GTK_WIDGET (self->list), &place))
    return G_SOURCE_REMOVE;
  double top = (double)place.origin.y;
  gtk_adjustment_clamp_page (gtk_list_box_get_adjustment (self->list), top, top + (double)place.size.height);
  return G_SOURCE_REMOVE;
}

const char *
spelch_shelf_list_select (SpelchShelfList *self, const char *id)
{
  GtkListBoxRow *row = row_of (self, id);
  if (row == NULL)
    row = first_row_shown (self);
  self->syncing = true;
  gtk_list_box_select_row (self->list, row);
  self->syncing = false;
  self->ticks = 0;
  if (self->sight == 0)
    self->sight = gtk_widget_add_tick_callback (GTK_WIDGET (self), bring_into_sight, NULL, NULL);
  return row == NULL ? NULL : spelch_shelf_row_get_item (SPELCH_SHELF_ROW (row));
}

static void
row_selected (SpelchShelfList *self, GtkListBoxRow *row)
{
  if (row != NULL && !self->syncing)
    g_signal_emit (self, signals[SIGNAL_CHOSEN], 0, spelch_shelf_row_get_item (SPELCH_SHELF_ROW (row)));
}

static void
search_changed (SpelchShelfList *self)
{
  g_free (self->searched);
  self->searched = g_utf8_casefold (gtk_editable_get_text (GTK_EDITABLE (self->search)), -1);
  gtk_list_box_invalidate_filter (self->list);
  if (self->kind != NULL)
    show_why_empty (self);
}

static void
order_changed (SpelchShelfList *self)
{
  if (self->kind != NULL)
    gtk_list_box_invalidate_sort (self->list);
}

void
spelch_shelf_list_find (SpelchShelfList *self)
{
  gtk_widget_grab_focus (GTK_WIDGET (self->search));
}

void
spelch_shelf_list_focus (SpelchShelfList *self)
{
  GtkListBoxRow *row = gtk_list_box_get_selected_row (self->list);
  gtk_widget_grab_focus (row != NULL ? GTK_WIDGET (row) : GTK_WIDGET (self->search));
}

void
spelch_shelf_list_show_all (SpelchShelfList *self)
{
  gtk_editable_set_text (GTK_EDITABLE (self->search), "");
  for (guint i = 0; i < self->kind->n_filters; i++)
    gtk_drop_down_set_selected (self->filters[i].choice, 0);
}

/* ---- Object ---- */

static void
spelch_shelf_list_dispose (GObject *object)
{
  SpelchShelfList *self = SPELCH_SHELF_LIST (object);
  self->syncing = true; /* nothing is chosen by taking the list apart */
  spelch_template_dispose (GTK_WIDGET (object), SPELCH_TYPE_SHELF_LIST);
  g_clear_object (&self->shelves);
  G_OBJECT_CLASS (spelch_shelf_list_parent_class)->dispose (object);
}

static void
spelch_shelf_list_finalize (GObject *object)
{
  SpelchShelfList *self = SPELCH_SHELF_LIST (object);
  for (guint i = 0; i < SPELCH_SHELF_FILTERS; i++)
    g_strfreev (self->filters[i].ids);
  g_free (self->searched);
  G_OBJECT_CLASS (spelch_shelf_list_parent_class)->finalize (object);
}

static void
spelch_shelf_list_class_init (SpelchShelfListClass *klass)
{
  GtkWidgetClass *widget_class = GTK_WIDGET_CLASS (klass);
  G_OBJECT_CLASS (klass)->dispose = spelch_shelf_list_dispose;
  G_OBJECT_CLASS (klass)->finalize = spelch_shelf_list_finalize;
  signals[SIGNAL_CHOSEN] = g_signal_new ("chosen", SPELCH_TYPE_SHELF_LIST, G_SIGNAL_RUN_LAST, 0, NULL, NULL,
                                         NULL, G_TYPE_NONE, 1, G_TYPE_STRING);
  gtk_widget_class_set_template_from_resource (widget_class, "/org/spelch/Spelch/ui/shelf-list.ui");
  gtk_widget_class_bind_template_child (widget_class, SpelchShelfList, search);
  gtk_widget_class_bind_template_child (widget_class, SpelchShelfList, order);
  gtk_widget_class_bind_template_child (widget_class, SpelchShelfList, filter_box);
  gtk_widget_class_bind_template_child (widget_class, SpelchShelfList, list);
  gtk_widget_class_bind_template_child (widget_class, SpelchShelfList, empty);
  gtk_widget_class_bind_template_callback (widget_class, row_selected);
  gtk_widget_class_bind_template_callback (widget_class, search_changed);
  gtk_widget_class_bind_template_callback (widget_class, order_changed);
  gtk_widget_class_set_layout_manager_type (widget_class, GTK_TYPE_BIN_LAYOUT);
  gtk_widget_class_set_css_name (widget_class, "shelflist");
}

static void
spelch_shelf_list_init (SpelchShelfList *self)
{
  gtk_widget_init_template (GTK_WIDGET (self));
}

static void
fill_orders (SpelchShelfList *self)
{
  g_autoptr (GtkStringList) orders = gtk_string_list_new (NULL);
  for (const char *const *order = self->kind->orders; *order != NULL; order++)
    gtk_string_list_append (orders, _ (*order));
  gtk_drop_down_set_model (self->order, G_LIST_MODEL (orders));
}

void
spelch_shelf_list_set_shelves (SpelchShelfList *self, SpelchShelves *shelves, const SpelchShelfKind *kind)
{
  self->kind = kind;
  self->shelves = g_object_ref (shelves);
  self->shelf = spelch_shelves_get (shelves, kind->list);
  fill_orders (self);
  add_filters (self);
  gtk_list_box_set_sort_func (self->list, compare, self, NULL);
  gtk_list_box_set_filter_func (self->list, matches, self, NULL);
}
