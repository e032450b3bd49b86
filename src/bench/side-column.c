/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "bench/side-column.h"
#include "bench/kept-picture.h"
#include "bench/tooltip.h"
#include "drawing/grade-chart.h"
#include "plan/words-compare.h"

#include <glib/gi18n-lib.h>

#define WIDTH        244 /* at the least, with text of 13 pixels: three stand in a window 960 wide */
#define SCENE_HEIGHT 220
#define SIDE         14 /* free beside a chart */

struct _SpelchSideColumn
{
  GObject parent_instance;
  guint column;
  bool holding;
  SpelchComparison *comparison; /* NULL: not shown */
  SpelchSideManner manner;
  SpelchNumbers numbers;
  SpelchSideDrawings *drawings; /* the owner's */

  GtkDropDown *bit;
  GtkLabel *depths;
  SpelchKeptPicture *scene; /* referenced: it draws what is ours */
  GtkLabel *refusal;
  GtkLabel *values[SPELCH_N_ROWS];
  SpelchKeptPicture *chart;
  GtkButton *use;
  GtkLabel *taken_over;
  GtkWidget *away;
  GPtrArray *cells; /* GtkWidget, not owned */
};

G_DEFINE_FINAL_TYPE (SpelchSideColumn, spelch_side_column, G_TYPE_OBJECT)

enum
{
  SIGNAL_PICKED,
  SIGNAL_USED,
  SIGNAL_TAKEN_AWAY,
  N_SIGNALS
};
static guint signals[N_SIGNALS];

/* ---- Drawings ---- */

static SpelchView
view_of (SpelchSideColumn *self, double width, double height)
{
  return (SpelchView){ .width = width,
                       .height = height,
                       .text = self->manner.text,
                       .look = self->manner.look,
                       .numbers = self->numbers,
                       .family = SPELCH_FAMILY };
}

static SpelchSideScenes *
scenes_for (SpelchSideColumn *self, int width, int height)
{
  SpelchSideDrawings *drawings = self->drawings;
  /* A grid gives some columns a pixel more than others. */
  if (drawings->scenes != NULL && ABS (drawings->width - width) <= 1 && drawings->height == height)
    return drawings->scenes;
  SpelchView view = view_of (self, width, height);
  g_clear_pointer (&drawings->scenes, spelch_side_scenes_free);
  drawings->scenes = spelch_side_scenes_new (self->comparison->part, self->comparison->columns, &view);
  drawings->width = width;
  drawings->height = height;
  return drawings->scenes;
}

static void
draw_scene (cairo_t *cr, double width, double height, gpointer data)
{
  SpelchSideColumn *self = data;
  if (self->comparison != NULL)
    spelch_side_scenes_draw (scenes_for (self, (int)width, (int)height), self->column, cr);
}

static void
draw_chart (cairo_t *cr, double width, double height, gpointer data)
{
  SpelchSideColumn *self = data;
  if (self->comparison == NULL || width <= 2 * SIDE)
    return;
  SpelchView view = view_of (self, width - 2 * SIDE, height);
  g_autoptr (SpelchGradeChart) chart = spelch_grade_chart_new (
      spelch_comparison_get (self->comparison, self->column), &self->comparison->scans[self->column], &view);
  cairo_translate (cr, SIDE, 0);
  spelch_grade_chart_draw (chart, cr);
}

/* ---- Showing ---- */

static void
tell (GtkWidget *widget, GtkAccessibleProperty property, const char *words)
{
  gtk_accessible_update_property (GTK_ACCESSIBLE (widget), property, words, -1);
}

static void
write_label (GtkLabel *label, const char *words)
{
  if (g_strcmp0 (gtk_label_get_text (label), words) != 0)
    gtk_label_set_text (label, words);
}

static void
show_value (SpelchSideColumn *self, const SpelchCompared *one, SpelchRow row)
{
  SpelchStanding standing = one->values[row].standing;
  GtkLabel *label = self->values[row];
  g_autofree char *words = spelch_words_compared (one, row, &self->numbers);
  const char *format = standing == SPELCH_STANDING_BEST    ? "● %s"
                       : standing == SPELCH_STANDING_WORST ? "○ %s"
                                                           : "%s";
  g_autofree char *shown = g_strdup_printf (format, words);
  g_autofree char *name = spelch_words_row_of (self->comparison->columns, row);
  const char *spoken = standing == SPELCH_STANDING_BEST    ? _ ("“%s”, %s: %s, best")
                       : standing == SPELCH_STANDING_WORST ? _ ("“%s”, %s: %s, worst")
                                                           : _ ("“%s”, %s: %s");
  g_autofree char *told = g_strdup_printf (spoken, one->bit->name, name, words);
  write_label (label, shown);
  tell (GTK_WIDGET (label), GTK_ACCESSIBLE_PROPERTY_LABEL, told);
  if (standing == SPELCH_STANDING_BEST)
    gtk_widget_add_css_class (GTK_WIDGET (label), "strong");
  else
    gtk_widget_remove_css_class (GTK_WIDGET (label), "strong");
  gtk_widget_set_visible (GTK_WIDGET (label), spelch_compare_tells (self->comparison->columns, row));
}

static void
show_drawings (SpelchSideColumn *self, const SpelchCompared *one)
{
  double text = self->manner.text;
  int width = (int)(WIDTH * text), height = (int)(SCENE_HEIGHT * (1 + (text - 1) / 2));
  g_autofree char *scene = g_strdup_printf (_ ("“%s” in the board"), one->bit->name);
  g_autofree char *described = NULL;
  g_autofree char *scan = spelch_words_scan (one, &self->comparison->scans[self->column], &self->numbers);
  /* TRANSLATORS: what follows are sentences: "Show face: clean from 6.0 mm." */
  g_autofree char *chart = g_strdup_printf (_ ("“%s” by depth of the first pass, with everything exact. %s"),
                                            one->bit->name, scan);
  spelch_kept_picture_set_size (self->scene, width, height);
  spelch_kept_picture_set_size (self->chart, width, (int)spelch_grade_chart_height (text));
  int drawn_width = MAX (gtk_widget_get_width (GTK_WIDGET (self->scene)), width);
  described
      = spelch_scene_describe (spelch_side_scenes_get (scenes_for (self, drawn_width, height), self->column));
  spelch_kept_picture_changed (self->scene);
  spelch_kept_picture_changed (self->chart);
  tell (GTK_WIDGET (self->scene), GTK_ACCESSIBLE_PROPERTY_LABEL, scene);
  tell (GTK_WIDGET (self->scene), GTK_ACCESSIBLE_PROPERTY_DESCRIPTION, described);
  tell (GTK_WIDGET (self->chart), GTK_ACCESSIBLE_PROPERTY_LABEL, chart);
  spelch_tooltip_set (GTK_WIDGET (self->chart), scan);
}

static void
show_refusal (SpelchSideColumn *self, const SpelchCompared *one)
{
  bool refused = !spelch_compared_may_be_cut (one);
  g_autofree char *stop = refused ? spelch_words_stop (&one->plan.stops[0], &self->numbers) : NULL;
  g_autofree char *shown = refused ? g_strdup_printf (_ ("Do not cut: %s"), stop) : g_strdup ("");
  g_autofree char *told = refused ? spelch_words_refusal (one, &self->numbers) : g_strdup ("");
  write_label (self->refusal, shown);
  tell (GTK_WIDGET (self->refusal), GTK_ACCESSIBLE_PROPERTY_LABEL, told);
  gtk_widget_set_visible (GTK_WIDGET (self->refusal), refused);
}

/* What taking the bit over to the bench would do. */
static void
show_use (SpelchSideColumn *self, const SpelchCompared *one)
{
  SpelchComparison *all = self->comparison;
  bool follows = all->follows[self->column];
  bool in_use = spelch_comparison_is_in_use (all, self->column);
  g_autofree char *passes = spelch_words_passes (&one->plan, &self->numbers);
  g_autofree char *words
      = in_use    ? g_strdup (_ ("The cut is made with it."))
        : follows ? g_strdup_printf (_ ("Holding the passes of “%s”: %s."), all->bits[0].name, passes)
                  : g_strdup (_ ("With the passes recommended for it."));
  g_autofree char *name = g_strdup_printf (_ ("Use this bit: %s"), one->bit->name);
  g_autofree char *away = g_strdup_printf (_ ("Take away: %s"), one->bit->name);
  write_label (self->depths, passes);
  write_label (self->taken_over, words);
  gtk_button_set_label (self->use, in_use ? _ ("In use") : _ ("Use this bit"));
  gtk_widget_set_sensitive (GTK_WIDGET (self->use), !in_use);
  gtk_widget_set_sensitive (self->away, all->columns->len > SPELCH_COMPARE_LEAST);
  tell (GTK_WIDGET (self->use), GTK_ACCESSIBLE_PROPERTY_LABEL, name);
  tell (GTK_WIDGET (self->use), GTK_ACCESSIBLE_PROPERTY_DESCRIPTION, words);
  tell (self->away, GTK_ACCESSIBLE_PROPERTY_LABEL, away);
}

static void
hide (SpelchSideColumn *self)
{
  for (guint i = 0; i < self->cells->len; i++)
    gtk_widget_set_visible (self->cells->pdata[i], FALSE);
}

void
spelch_side_column_hold (SpelchSideColumn *self, bool hold)
{
  self->holding = hold;
}

void
spelch_side_column_show (SpelchSideColumn *self, SpelchComparison *comparison, guint pick,
                         const SpelchSideManner *manner)
{
  g_clear_pointer (&self->comparison, spelch_comparison_unref);
  if (comparison == NULL || self->column >= comparison->columns->len)
    {
      hide (self);
      return;
    }
  self->comparison = spelch_comparison_ref (comparison);
  self->numbers = *manner->numbers;
  self->manner = *manner;
  const SpelchCompared *one = spelch_comparison_get (comparison, self->column);
  for (guint i = 0; i < self->cells->len; i++)
    gtk_widget_set_visible (self->cells->pdata[i], TRUE);
  bool held = self->holding;
  self->holding = true;
  gtk_drop_down_set_selected (self->bit, pick);
  self->holding = held;
  for (int row = 0; row < SPELCH_N_ROWS; row++)
    show_value (self, one, (SpelchRow)row);
  show_refusal (self, one);
  show_drawings (self, one);
  show_use (self, one);
}

/* ---- Making ---- */

static void
pick_changed (SpelchSideColumn *self)
{
  guint pick = gtk_drop_down_get_selected (self->bit);
  if (!self->holding && pick != GTK_INVALID_LIST_POSITION)
    g_signal_emit (self, signals[SIGNAL_PICKED], 0, pick);
}

static void
use_clicked (SpelchSideColumn *self)
{
  g_signal_emit (self, signals[SIGNAL_USED], 0);
}

static void
away_clicked (SpelchSideColumn *self)
{
  g_signal_emit (self, signals[SIGNAL_TAKEN_AWAY], 0);
}

/* A name that is too long for its column is cut short there, and whole in the list. */
static void
set_up_name (GtkSignalListItemFactory *factory, GtkListItem *item)
{
  GtkWidget *label = gtk_label_new (NULL);
  gtk_label_set_xalign (GTK_LABEL (label), 0);
  gtk_label_set_ellipsize (GTK_LABEL (label), PANGO_ELLIPSIZE_END);
  gtk_list_item_set_child (item, label);
}

static void
bind_name (GtkSignalListItemFactory *factory, GtkListItem *item)
{
  GtkStringObject *name = gtk_list_item_get_item (item);
  gtk_label_set_text (GTK_LABEL (gtk_list_item_get_child (item)), gtk_string_object_get_string (name));
}

static GtkWidget *
make_drop_down (SpelchSideColumn *self, GtkStringList *names)
{
  g_autoptr (GtkListItemFactory) factory = gtk_signal_list_item_factory_new ();
  GtkWidget *bit = gtk_drop_down_new (g_object_ref (G_LIST_MODEL (names)), NULL);
  g_autofree char *told = g_strdup_printf (_ ("Bit %u"), self->column + 1);
  g_signal_connect (factory, "setup", G_CALLBACK (set_up_name), NULL);
  g_signal_connect (factory, "bind", G_CALLBACK (bind_name), NULL);
  gtk_drop_down_set_factory (GTK_DROP_DOWN (bit), factory);
  tell (bit, GTK_ACCESSIBLE_PROPERTY_LABEL, told);
  g_signal_connect_object (bit, "notify::selected", G_CALLBACK (pick_changed), self, G_CONNECT_SWAPPED);
  return bit;
}

static GtkLabel *
make_label (const char *css_class)
{
  GtkWidget *label = gtk_label_new (NULL);
  gtk_label_set_wrap (GTK_LABEL (label), TRUE);
  gtk_label_set_justify (GTK_LABEL (label), GTK_JUSTIFY_CENTER);
  gtk_label_set_max_width_chars (GTK_LABEL (label), 28);
  gtk_widget_add_css_class (label, css_class);
  return GTK_LABEL (label);
}

static SpelchKeptPicture *
make_picture (SpelchSideColumn *self, SpelchPictureDraw draw)
{
  SpelchKeptPicture *picture
      = g_object_new (SPELCH_TYPE_KEPT_PICTURE, "accessible-role", GTK_ACCESSIBLE_ROLE_IMG, NULL);
  spelch_kept_picture_set_draw (picture, draw, self);
  return g_object_ref_sink (picture);
}

static GtkWidget *
make_foot (SpelchSideColumn *self)
{
  GtkWidget *foot = gtk_box_new (GTK_ORIENTATION_VERTICAL, 4);
  GtkWidget *buttons = gtk_box_new (GTK_ORIENTATION_HORIZONTAL, 6);
  self->use = GTK_BUTTON (gtk_button_new ());
  self->away = gtk_button_new_with_label (_ ("Take away"));
  self->taken_over = make_label ("soft");
  gtk_widget_add_css_class (GTK_WIDGET (self->taken_over), "small");
  gtk_widget_add_css_class (self->away, "quiet");
  gtk_widget_set_halign (buttons, GTK_ALIGN_CENTER);
  gtk_box_append (GTK_BOX (buttons), GTK_WIDGET (self->use));
  gtk_box_append (GTK_BOX (buttons), self->away);
  gtk_box_append (GTK_BOX (foot), buttons);
  gtk_box_append (GTK_BOX (foot), GTK_WIDGET (self->taken_over));
  g_signal_connect_object (self->use, "clicked", G_CALLBACK (use_clicked), self, G_CONNECT_SWAPPED);
  g_signal_connect_object (self->away, "clicked", G_CALLBACK (away_clicked), self, G_CONNECT_SWAPPED);
  return foot;
}

static void
attach (SpelchSideColumn *self, GtkGrid *grid, GtkWidget *cell, int row, const char *css_class)
{
  gtk_widget_add_css_class (cell, css_class);
  gtk_widget_set_hexpand (cell, TRUE);
  gtk_widget_set_visible (cell, FALSE);
  gtk_grid_attach (grid, cell, (int)self->column + 1, row, 1, 1);
  g_ptr_array_add (self->cells, cell);
}

SpelchSideColumn *
spelch_side_column_new (GtkGrid *grid, guint column, GtkSizeGroup *widths, GtkStringList *names,
                        SpelchSideDrawings *drawings)
{
  SpelchSideColumn *self = g_object_new (SPELCH_TYPE_SIDE_COLUMN, NULL);
  self->column = column;
  self->drawings = drawings;
  self->bit = GTK_DROP_DOWN (make_drop_down (self, names));
  self->depths = make_label ("soft");
  self->scene = make_picture (self, draw_scene);
  self->refusal = make_label ("strong");
  gtk_widget_set_valign (GTK_WIDGET (self->refusal), GTK_ALIGN_START);
  self->chart = make_picture (self, draw_chart);
  attach (self, grid, GTK_WIDGET (self->bit), SPELCH_SIDE_BIT, "bit");
  attach (self, grid, GTK_WIDGET (self->depths), SPELCH_SIDE_DEPTHS, "small");
  attach (self, grid, GTK_WIDGET (self->scene), SPELCH_SIDE_SCENE, "drawing");
  attach (self, grid, GTK_WIDGET (self->refusal), SPELCH_SIDE_REFUSAL, "refusal");
  for (int row = 0; row < SPELCH_N_ROWS; row++)
    {
      self->values[row] = make_label ("value");
      attach (self, grid, GTK_WIDGET (self->values[row]), SPELCH_SIDE_VALUES + row, "cell");
    }
  attach (self, grid, GTK_WIDGET (self->chart), SPELCH_SIDE_CHART, "chart");
  GtkWidget *foot = make_foot (self);
  attach (self, grid, foot, SPELCH_SIDE_USE, "use");
  gtk_size_group_add_widget (widths, GTK_WIDGET (self->bit));
  gtk_size_group_add_widget (widths, GTK_WIDGET (self->scene));
  gtk_size_group_add_widget (widths, foot);
  gtk_size_group_add_widget (widths, GTK_WIDGET (self->refusal));
  return self;
}

/* ---- Object ---- */

static void
spelch_side_column_dispose (GObject *object)
{
  SpelchSideColumn *self = SPELCH_SIDE_COLUMN (object);
  SpelchKeptPicture **pictures[] = { &self->scene, &self->chart };
  for (guint i = 0; i < G_N_ELEMENTS (pictures); i++)
    if (*pictures[i] != NULL)
      spelch_kept_picture_set_draw (*pictures[i], NULL, NULL); /* the grid may show it a moment longer */
  g_clear_object (&self->scene);
  g_clear_object (&self->chart);
  g_clear_pointer (&self->comparison, spelch_comparison_unref);
  G_OBJECT_CLASS (spelch_side_column_parent_class)->dispose (object);
}

static void
spelch_side_column_finalize (GObject *object)
{
  g_ptr_array_unref (SPELCH_SIDE_COLUMN (object)->cells);
  G_OBJECT_CLASS (spelch_side_column_parent_class)->finalize (object);
}

static void
spelch_side_column_class_init (SpelchSideColumnClass *klass)
{
  G_OBJECT_CLASS (klass)->dispose = spelch_side_column_dispose;
  G_OBJECT_CLASS (klass)->finalize = spelch_side_column_finalize;
  signals[SIGNAL_PICKED] = g_signal_new ("picked", SPELCH_TYPE_SIDE_COLUMN, G_SIGNAL_RUN_LAST, 0, NULL, NULL,
                                         NULL, G_TYPE_NONE, 1, G_TYPE_UINT);
  signals[SIGNAL_USED] = g_signal_new ("used", SPELCH_TYPE_SIDE_COLUMN, G_SIGNAL_RUN_LAST, 0, NULL, NULL,
                                       NULL, G_TYPE_NONE, 0);
  signals[SIGNAL_TAKEN_AWAY] = g_signal_new ("taken-away", SPELCH_TYPE_SIDE_COLUMN, G_SIGNAL_RUN_LAST, 0,
                                             NULL, NULL, NULL, G_TYPE_NONE, 0);
}

static void
spelch_side_column_init (SpelchSideColumn *self)
{
  self->cells = g_ptr_array_new ();
}
