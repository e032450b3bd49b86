/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "bench/side-by-side-window.h"
#include "bench/escape.h"
#include "bench/one-window.h"
#include "bench/page.h"
#include "bench/paragraph.h"
#include "bench/side-column.h"
#include "bench/text-size.h"
#include "bench/undo-buttons.h"
#include "drawing/side-by-side.h"
#include "plan/words-compare.h"
#include "files/file-io.h"

#include <glib/gi18n-lib.h>

#define WIDTH  1360
#define HEIGHT 860
#define BODY   13.0 /* pixels of text */

struct _SpelchSideWindow
{
  GtkApplicationWindow parent_instance;
  SpelchSession *session;
  SpelchAppearance *appearance;
  SpelchPicks picks;
  bool tied;
  char *cut;                    /* id of the cut the picks are for */
  SpelchComparison *comparison; /* NULL: there is nothing to compare */
  SpelchSideColumn *columns[SPELCH_COMPARE_MOST];
  SpelchSideDrawings drawings;
  GtkStringList *names;
  GtkLabel *row_names[SPELCH_N_ROWS];

  GtkWidget *undo;
  GtkWidget *redo;
  GtkLabel *about;
  GtkWidget *said_bar;
  GtkLabel *said;
  GtkStack *pages;
  GtkLabel *nothing;
  GtkBox *differs;
  GtkGrid *grid;
  GtkWidget *ways;
  GtkCheckButton *tie;
  GtkWidget *add;
};

G_DEFINE_FINAL_TYPE (SpelchSideWindow, spelch_side_window, GTK_TYPE_APPLICATION_WINDOW)

/* ---- Showing ---- */

static void
say (GtkWindow *window, const char *sentence)
{
  SpelchSideWindow *self = SPELCH_SIDE_WINDOW (window);
  if (self->said == NULL)
    return; /* closed meanwhile */
  gtk_label_set_text (self->said, sentence);
  gtk_widget_set_visible (self->said_bar, sentence[0] != '\0');
}

static void
close_said (SpelchSideWindow *self)
{
  say (GTK_WINDOW (self), "");
}

static GtkWidget *
nth_child (GtkBox *box, guint n)
{
  GtkWidget *child = gtk_widget_get_first_child (GTK_WIDGET (box));
  for (guint i = 0; child != NULL && i < n; i++)
    child = gtk_widget_get_next_sibling (child);
  return child;
}

/* What sets the bits apart: the first sentence stands out. */
static void
show_differs (SpelchSideWindow *self)
{
  g_auto (GStrv) sentences = spelch_words_differs (self->comparison->columns, self->comparison->part);
  guint n = g_strv_length (sentences);
  for (guint i = 0; i < n || nth_child (self->differs, i) != NULL; i++)
    {
      GtkWidget *label = nth_child (self->differs, i);
      if (label == NULL)
        {
          label = spelch_paragraph_new (NULL, i == 0 ? "part" : "soft");
          gtk_box_append (self->differs, label);
        }
      gtk_label_set_text (GTK_LABEL (label), i < n ? sentences[i] : "");
      gtk_widget_set_visible (label, i < n);
    }
}

static guint
name_bits (SpelchSideWindow *self)
{
  guint n = spelch_session_count_bits (self->session);
  GListModel *list = G_LIST_MODEL (self->names);
  g_autofree const char **names = g_new0 (const char *, n + 1);
  bool same = g_list_model_get_n_items (list) == n;
  for (guint i = 0; i < n; i++)
    {
      names[i] = spelch_session_get_nth_bit (self->session, i)->name;
      same = same && g_str_equal (gtk_string_list_get_string (self->names, i), names[i]);
    }
  if (!same)
    gtk_string_list_splice (self->names, 0, g_list_model_get_n_items (list), names);
  return n;
}

static guint
find_name (SpelchSideWindow *self, const char *id)
{
  for (guint i = 0; i < spelch_session_count_bits (self->session); i++)
    if (g_str_equal (spelch_session_get_nth_bit (self->session, i)->id, id))
      return i;
  return GTK_INVALID_LIST_POSITION;
}

static void
show_columns (SpelchSideWindow *self)
{
  SpelchSideManner manner = { .numbers = spelch_session_get_numbers (self->session),
                              .look = spelch_appearance_get_look (self->appearance),
                              .text = CLAMP (spelch_text_pixels (GTK_WIDGET (self->grid)) / BODY, 1, 2) };
  for (guint i = 0; i < SPELCH_COMPARE_MOST; i++)
    spelch_side_column_hold (self->columns[i], true);
  guint n = name_bits (self);
  g_clear_pointer (&self->drawings.scenes, spelch_side_scenes_free);
  for (guint i = 0; i < SPELCH_COMPARE_MOST; i++)
    spelch_side_column_show (
        self->columns[i], self->comparison,
        i < self->picks.n ? find_name (self, self->picks.ids[i]) : GTK_INVALID_LIST_POSITION, &manner);
  for (guint i = 0; i < SPELCH_COMPARE_MOST; i++)
    spelch_side_column_hold (self->columns[i], false);
  gtk_widget_set_sensitive (self->add, self->picks.n < MIN (SPELCH_COMPARE_MOST, n));
}

static void
show_row_names (SpelchSideWindow *self)
{
  for (int row = 0; row < SPELCH_N_ROWS; row++)
    {
      g_autofree char *name = spelch_words_row_of (self->comparison->columns, (SpelchRow)row);
      gtk_label_set_text (self->row_names[row], name);
      gtk_widget_set_visible (GTK_WIDGET (self->row_names[row]),
                              spelch_compare_tells (self->comparison->columns, (SpelchRow)row));
    }
}

static void
show_title (SpelchSideWindow *self)
{
  const SpelchPart *part = spelch_session_get_part (self->session);
  const SpelchCut *cut = self->comparison == NULL ? NULL : &self->comparison->cut;
  g_autofree char *title = g_strdup_printf (_ ("Side by side – %s"), part == NULL ? "" : part->name);
  g_autofree char *about
      = cut == NULL ? g_strdup ("") : g_strdup_printf ("%s, %s", cut->name, part->board.name);
  gtk_window_set_title (GTK_WINDOW (self), title);
  gtk_label_set_text (self->about, about);
}

static void
enable (SpelchSideWindow *self, const char *name, bool enabled)
{
  g_simple_action_set_enabled (G_SIMPLE_ACTION (g_action_map_lookup_action (G_ACTION_MAP (self), name)),
                               enabled);
}

/* Makes the comparison anew and shows it. */
static void
compare (SpelchSideWindow *self)
{
  const SpelchPart *part = spelch_session_get_part (self->session);
  guint index = spelch_session_get_cut_index (self->session);
  const char *cut = part != NULL && index < part->n_cuts ? part->cuts[index].id : NULL;
  if (g_strcmp0 (cut, self->cut) != 0)
    self->picks.n = 0;
  g_free (self->cut);
  self->cut = g_strdup (cut);
  g_clear_pointer (&self->comparison, spelch_comparison_unref);
  self->comparison = spelch_comparison_new (self->session, &self->picks, self->tied);
  bool any = self->comparison != NULL;
  gtk_stack_set_visible_child_name (self->pages, any ? "compared" : "nothing");
  gtk_label_set_text (self->nothing, cut == NULL
                                         ? _ ("There is no cut to compare bits for. Add one on the bench.")
                                         : _ ("It takes two bits to compare. Add one to the Bit drawer."));
  enable (self, "print", any);
  enable (self, "export-picture", any);
  show_title (self);
  show_columns (self);
  if (!any)
    return;
  show_differs (self);
  show_row_names (self);
}

static void
show_history (SpelchSideWindow *self)
{
  spelch_undo_buttons_follow (G_ACTION_MAP (self), self->undo, self->redo,
                              spelch_session_undo_name (self->session),
                              spelch_session_redo_name (self->session));
}

static void
session_settled (SpelchSession *session, guint change, SpelchSideWindow *self)
{
  if (change & SPELCH_CHANGE_OPENED)
    self->picks.n = 0;
  if (change & (SPELCH_CHANGE_HISTORY | SPELCH_CHANGE_OPENED | SPELCH_CHANGE_CUT))
    show_history (self);
  if (change
      & (SPELCH_CHANGE_PART | SPELCH_CHANGE_CUT | SPELCH_CHANGE_OPENED | SPELCH_CHANGE_BITS
         | SPELCH_CHANGE_NUMBERS))
    compare (self);
}

static void
session_said (SpelchSession *session, const char *sentence, SpelchSideWindow *self)
{
  say (GTK_WINDOW (self), sentence);
}

static void
look_changed (SpelchSideWindow *self)
{
  show_columns (self);
}

/* ---- Acting ---- */

static guint
column_of (SpelchSideWindow *self, SpelchSideColumn *column)
{
  guint i = 0;
  while (i + 1 < SPELCH_COMPARE_MOST && self->columns[i] != column)
    i++;
  return i;
}

static void
picked (SpelchSideColumn *column, guint name, SpelchSideWindow *self)
{
  const SpelchBit *bit = spelch_session_get_nth_bit (self->session, name);
  if (bit == NULL)
    return;
  spelch_picks_put (&self->picks, column_of (self, column), bit->id);
  compare (self);
}

static void
taken_away (SpelchSideColumn *column, SpelchSideWindow *self)
{
  spelch_picks_take_away (&self->picks, column_of (self, column));
  compare (self);
}

static void
used (SpelchSideColumn *column, SpelchSideWindow *self)
{
  close_said (self);
  spelch_comparison_use (self->comparison, column_of (self, column), self->session);
}

static void
add_clicked (SpelchSideWindow *self)
{
  if (spelch_picks_add (&self->picks, self->session))
    compare (self);
}

static void
tie_toggled (SpelchSideWindow *self)
{
  self->tied = gtk_check_button_get_active (self->tie);
  compare (self);
}

/* What is drawn on a page. */
typedef struct
{
  SpelchComparison *comparison;
  SpelchView view;
} Drawn;

static void
draw_page (cairo_t *cr, gconstpointer data)
{
  const Drawn *drawn = data;
  spelch_comparison_draw (drawn->comparison, cr, &drawn->view);
}

static void
drawn_free (gpointer data)
{
  Drawn *drawn = data;
  spelch_comparison_unref (drawn->comparison);
  g_free (drawn);
}

static void
leave (SpelchSideWindow *self, SpelchLook look,
       void (*way) (const SpelchPage *page, GtkWindow *window, SpelchPageSay say))
{
  if (self->comparison == NULL)
    return;
  Drawn *drawn = g_new0 (Drawn, 1);
  drawn->comparison = spelch_comparison_ref (self->comparison);
  drawn->view = (SpelchView){ .width = SPELCH_SIDE_BY_SIDE_WIDTH,
                              .height = SPELCH_SIDE_BY_SIDE_HEIGHT,
                              .text = 1,
                              .look = look,
                              .numbers = *spelch_session_get_numbers (self->session),
                              .family = SPELCH_FAMILY };
  const SpelchComparison *all = self->comparison;
  g_autofree char *part = spelch_file_stem (all->part->name, _ ("part"));
  g_autofree char *cut = spelch_file_stem (all->cut.name, all->cut.id);
  g_autofree char *name = g_strdup_printf ("%s, %s", part, cut);
  close_said (self);
  way (&(SpelchPage){ .title = _ ("Side by side"),
                      .name = name,
                      .width = drawn->view.width,
                      .height = drawn->view.height,
                      .draw = draw_page,
                      .data = drawn,
                      .free_data = drawn_free },
       GTK_WINDOW (self), say);
}

static void
do_print (GSimpleAction *action, GVariant *parameter, gpointer data)
{
  leave (data, SPELCH_LOOK_PAPER, spelch_page_print);
}

static void
do_export (GSimpleAction *action, GVariant *parameter, gpointer data)
{
  leave (data, SPELCH_LOOK_LIGHT, spelch_page_export);
}

static void
do_undo (GSimpleAction *action, GVariant *parameter, gpointer data)
{
  spelch_session_undo (SPELCH_SIDE_WINDOW (data)->session);
}

static void
do_redo (GSimpleAction *action, GVariant *parameter, gpointer data)
{
  spelch_session_redo (SPELCH_SIDE_WINDOW (data)->session);
}

static void
do_close (GSimpleAction *action, GVariant *parameter, gpointer data)
{
  gtk_window_close (data);
}

static const GActionEntry ACTIONS[] = {
  { .name = "undo", .activate = do_undo },   { .name = "redo", .activate = do_redo },
  { .name = "print", .activate = do_print }, { .name = "export-picture", .activate = do_export },
  { .name = "close", .activate = do_close },
};

/* ---- Object ---- */

static GtkLabel *
add_row_name (SpelchSideWindow *self, int row, const char *words, const char *css_class)
{
  GtkWidget *label = gtk_label_new (words);
  gtk_label_set_xalign (GTK_LABEL (label), 0);
  gtk_widget_add_css_class (label, "soft");
  gtk_widget_add_css_class (label, css_class);
  gtk_grid_attach (self->grid, label, 0, row, 1, 1);
  return GTK_LABEL (label);
}

/* Words that may take more lines. */
static void
add_words (SpelchSideWindow *self, int row, const char *words, const char *css_class)
{
  GtkLabel *label = add_row_name (self, row, words, css_class);
  gtk_label_set_wrap (label, TRUE);
  gtk_label_set_max_width_chars (label, 20);
  gtk_label_set_yalign (label, 0);
}

static void
fill_grid (SpelchSideWindow *self)
{
  g_autoptr (GtkSizeGroup) widths = gtk_size_group_new (GTK_SIZE_GROUP_HORIZONTAL);
  self->names = gtk_string_list_new (NULL);
  gtk_grid_attach (self->grid, self->ways, 0, SPELCH_SIDE_SCENE, 1, 1);
  for (int row = 0; row < SPELCH_N_ROWS; row++)
    self->row_names[row] = add_row_name (self, SPELCH_SIDE_VALUES + row, "", "cell");
  add_words (self, SPELCH_SIDE_CHART, _ ("By depth of the first pass, with everything exact"), "chart");
  add_words (self, SPELCH_SIDE_USE,
             _ ("●\u00a0best in the row, ○\u00a0worst. Forces, power and heat are estimates."), "note");
  for (guint i = 0; i < SPELCH_COMPARE_MOST; i++)
    {
      self->columns[i] = spelch_side_column_new (self->grid, i, widths, self->names, &self->drawings);
      g_signal_connect (self->columns[i], "picked", G_CALLBACK (picked), self);
      g_signal_connect (self->columns[i], "used", G_CALLBACK (used), self);
      g_signal_connect (self->columns[i], "taken-away", G_CALLBACK (taken_away), self);
    }
}

static void
spelch_side_window_dispose (GObject *object)
{
  SpelchSideWindow *self = SPELCH_SIDE_WINDOW (object);
  for (guint i = 0; i < SPELCH_COMPARE_MOST; i++)
    if (self->columns[i] != NULL)
      {
        g_signal_handlers_disconnect_by_data (self->columns[i], self);
        g_object_run_dispose (G_OBJECT (self->columns[i]));
        g_clear_object (&self->columns[i]);
      }
  gtk_widget_dispose_template (GTK_WIDGET (object), SPELCH_TYPE_SIDE_WINDOW);
  g_clear_pointer (&self->drawings.scenes, spelch_side_scenes_free);
  g_clear_pointer (&self->comparison, spelch_comparison_unref);
  g_clear_pointer (&self->cut, g_free);
  g_clear_object (&self->names);
  g_clear_object (&self->session);
  g_clear_object (&self->appearance);
  G_OBJECT_CLASS (spelch_side_window_parent_class)->dispose (object);
}

static void
spelch_side_window_class_init (SpelchSideWindowClass *klass)
{
  GtkWidgetClass *widget_class = GTK_WIDGET_CLASS (klass);
  G_OBJECT_CLASS (klass)->dispose = spelch_side_window_dispose;
  gtk_widget_class_set_template_from_resource (widget_class, "/org/spelch/Spelch/ui/side-by-side-window.ui");
  gtk_widget_class_bind_template_child (widget_class, SpelchSideWindow, undo);
  gtk_widget_class_bind_template_child (widget_class, SpelchSideWindow, redo);
  gtk_widget_class_bind_template_child (widget_class, SpelchSideWindow, about);
  gtk_widget_class_bind_template_child (widget_class, SpelchSideWindow, said_bar);
  gtk_widget_class_bind_template_child (widget_class, SpelchSideWindow, said);
  gtk_widget_class_bind_template_child (widget_class, SpelchSideWindow, pages);
  gtk_widget_class_bind_template_child (widget_class, SpelchSideWindow, nothing);
  gtk_widget_class_bind_template_child (widget_class, SpelchSideWindow, differs);
  gtk_widget_class_bind_template_child (widget_class, SpelchSideWindow, grid);
  gtk_widget_class_bind_template_child (widget_class, SpelchSideWindow, ways);
  gtk_widget_class_bind_template_child (widget_class, SpelchSideWindow, tie);
  gtk_widget_class_bind_template_child (widget_class, SpelchSideWindow, add);
  gtk_widget_class_bind_template_callback (widget_class, close_said);
  gtk_widget_class_bind_template_callback (widget_class, add_clicked);
  gtk_widget_class_bind_template_callback (widget_class, tie_toggled);
}

static void
spelch_side_window_init (SpelchSideWindow *self)
{
  gtk_widget_init_template (GTK_WIDGET (self));
  g_action_map_add_action_entries (G_ACTION_MAP (self), ACTIONS, G_N_ELEMENTS (ACTIONS), self);
}

static GtkWindow *
window_new (GtkWindow *bench, SpelchSession *session, SpelchAppearance *appearance)
{
  SpelchSideWindow *self
      = g_object_new (SPELCH_TYPE_SIDE_WINDOW, "application", gtk_window_get_application (bench), NULL);
  self->session = g_object_ref (session);
  self->appearance = g_object_ref (appearance);
  gtk_window_set_default_size (GTK_WINDOW (self), WIDTH, HEIGHT);
  fill_grid (self);
  spelch_escape_closes (GTK_WINDOW (self));
  g_signal_connect_object (session, "settled", G_CALLBACK (session_settled), self, 0);
  g_signal_connect_object (session, "said", G_CALLBACK (session_said), self, 0);
  g_signal_connect_object (appearance, "changed", G_CALLBACK (look_changed), self, G_CONNECT_SWAPPED);
  show_history (self);
  compare (self);
  return GTK_WINDOW (self);
}

void
spelch_side_window_add_action (GtkApplicationWindow *bench, SpelchSession *session,
                               SpelchAppearance *appearance)
{
  spelch_one_window_add_action (bench, "side-by-side", session, appearance, window_new);
}
