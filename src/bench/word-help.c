/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "bench/word-help.h"
#include "bench/paragraph.h"
#include "plan/trade-words.h"

#include <glib/gi18n-lib.h>
#include <stdbool.h>

#define WIDTH       340
#define HEIGHT_MOST 420

/* ---- The list ---- */

typedef struct
{
  GtkMenuButton *button;
  GtkWidget *shown;
  GtkListBox *list;  /* NULL until it is opened */
  GtkWidget *before; /* what had the keyboard when it was opened */
} List;

static void
list_free (gpointer data)
{
  List *self = data;
  g_clear_weak_pointer (&self->before);
  g_object_unref (self->shown);
  g_free (self);
}

#define DRAWN "spelch-words-drawn"

void
spelch_word_help_set_drawn (GtkWidget *widget, SpelchWordsDrawn drawn)
{
  g_object_set_data (G_OBJECT (widget), DRAWN, (gpointer)drawn);
}

static void
gather (GtkWidget *widget, GString *text)
{
  SpelchWordsDrawn drawn = (SpelchWordsDrawn)g_object_get_data (G_OBJECT (widget), DRAWN);
  if (GTK_IS_LABEL (widget) && gtk_widget_get_mapped (widget))
    g_string_append_printf (text, "%s\n", gtk_label_get_text (GTK_LABEL (widget)));
  if (drawn != NULL && gtk_widget_get_mapped (widget))
    drawn (widget, text);
  for (GtkWidget *child = gtk_widget_get_first_child (widget); child != NULL;
       child = gtk_widget_get_next_sibling (child))
    gather (child, text);
}

/* A row takes the keyboard, so that it is read out and a long list can be gone through. */
static GtkWidget *
row_new (guint word)
{
  GtkWidget *row = gtk_list_box_row_new (), *box = gtk_box_new (GTK_ORIENTATION_VERTICAL, 1);
  const char *meaning = spelch_trade_word_meaning (word);
  g_autofree char *name = spelch_trade_word_name (word);
  g_autofree char *spoken = g_strdup_printf (_ ("%s: %s"), name, meaning);
  gtk_box_append (GTK_BOX (box), spelch_paragraph_new (name, "strong"));
  gtk_box_append (GTK_BOX (box), spelch_paragraph_new (meaning, "soft"));
  gtk_list_box_row_set_child (GTK_LIST_BOX_ROW (row), box);
  gtk_list_box_row_set_activatable (GTK_LIST_BOX_ROW (row), FALSE);
  gtk_accessible_update_property (GTK_ACCESSIBLE (row), GTK_ACCESSIBLE_PROPERTY_LABEL, spoken, -1);
  return row;
}

/* Back to where one was, not to the button. */
static void
closed (List *self)
{
  if (self->before != NULL && gtk_widget_get_mapped (self->before))
    gtk_widget_grab_focus (self->before);
}

static void
make_popover (List *self)
{
  GtkWidget *popover = gtk_popover_new (), *scroller = gtk_scrolled_window_new ();
  GtkWidget *list = gtk_list_box_new ();
  gtk_list_box_set_selection_mode (GTK_LIST_BOX (list), GTK_SELECTION_NONE);
  gtk_list_box_set_placeholder (GTK_LIST_BOX (list),
                                spelch_paragraph_new (_ ("No word of the trade stands here now."), "soft"));
  gtk_accessible_update_property (GTK_ACCESSIBLE (list), GTK_ACCESSIBLE_PROPERTY_LABEL,
                                  _ ("Words that stand here, and what they mean"), -1);
  gtk_scrolled_window_set_policy (GTK_SCROLLED_WINDOW (scroller), GTK_POLICY_NEVER, GTK_POLICY_AUTOMATIC);
  gtk_scrolled_window_set_overlay_scrolling (GTK_SCROLLED_WINDOW (scroller),
                                             FALSE); /* that there is more shows */
  gtk_scrolled_window_set_propagate_natural_height (GTK_SCROLLED_WINDOW (scroller), TRUE);
  gtk_scrolled_window_set_max_content_height (GTK_SCROLLED_WINDOW (scroller), HEIGHT_MOST);
  gtk_scrolled_window_set_child (GTK_SCROLLED_WINDOW (scroller), list);
  gtk_widget_set_size_request (scroller, WIDTH, -1);
  gtk_widget_add_css_class (popover, "words");
  gtk_popover_set_child (GTK_POPOVER (popover), scroller);
  g_signal_connect_swapped (popover, "closed", G_CALLBACK (closed), self);
  gtk_menu_button_set_popover (self->button, popover);
  self->list = GTK_LIST_BOX (list);
}

/* As it is opened: by what is in sight then. */
static void
fill (GtkMenuButton *button, gpointer data)
{
  List *self = data;
  GtkRoot *root = gtk_widget_get_root (GTK_WIDGET (button));
  g_autoptr (GString) text = g_string_new (NULL);
  if (self->list == NULL)
    make_popover (self);
  for (GtkListBoxRow *row = gtk_list_box_get_row_at_index (self->list, 0); row != NULL;
       row = gtk_list_box_get_row_at_index (self->list, 0))
    gtk_list_box_remove (self->list, GTK_WIDGET (row));
  gather (self->shown, text);
  g_autoptr (GArray) words = spelch_trade_words_in (text->str);
  for (guint i = 0; i < words->len; i++)
    gtk_list_box_append (self->list, row_new (g_array_index (words, guint, i)));
  g_set_weak_pointer (&self->before, gtk_root_get_focus (root));
}

void
spelch_word_help_set (GtkMenuButton *button, GtkWidget *shown)
{
  List *self = g_new0 (List, 1);
  self->button = button;
  self->shown = g_object_ref (shown);
  gtk_menu_button_set_create_popup_func (button, fill, self, list_free);
}

/* ---- Tooltips ---- */

/* The mention of a word at a place of a label, given in its own coordinates. */
static bool
mention_at (GtkLabel *label, double x, double y, SpelchTradeMention *found)
{
  int left, top, index, trailing;
  gtk_label_get_layout_offsets (label, &left, &top);
  if (!pango_layout_xy_to_index (gtk_label_get_layout (label), (int)((x - left) * PANGO_SCALE),
                                 (int)((y - top) * PANGO_SCALE), &index, &trailing))
    return false;
  g_autoptr (GArray) mentions
      = spelch_trade_words_find (pango_layout_get_text (gtk_label_get_layout (label)));
  for (guint i = 0; i < mentions->len; i++)
    {
      *found = g_array_index (mentions, SpelchTradeMention, i);
      if (found->from <= (gsize)index && (gsize)index < found->to)
        return true;
    }
  return false;
}

static gboolean
tell (GtkWidget *shown, int x, int y, gboolean by_keyboard, GtkTooltip *tooltip)
{
  GtkWidget *under = by_keyboard ? NULL : gtk_widget_pick (shown, x, y, GTK_PICK_DEFAULT);
  SpelchTradeMention mention;
  double at_x, at_y;
  if (!GTK_IS_LABEL (under) || !gtk_widget_translate_coordinates (shown, under, x, y, &at_x, &at_y)
      || !mention_at (GTK_LABEL (under), at_x, at_y, &mention))
    return FALSE;
  g_autofree char *name = spelch_trade_word_name (mention.word);
  g_autofree char *words = g_strdup_printf (_ ("%s: %s"), name, spelch_trade_word_meaning (mention.word));
  gtk_tooltip_set_text (tooltip, words);
  return TRUE;
}

void
spelch_word_help_add_tips (GtkWidget *shown)
{
  g_signal_connect (shown, "query-tooltip", G_CALLBACK (tell), NULL);
  gtk_widget_set_has_tooltip (shown, TRUE);
}
