/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "bench/practice-list.h"
#include "bench/glyph.h"
#include "bench/paragraph.h"
#include "plan/words-posed.h"

#include <glib/gi18n-lib.h>

#define WIDTH 250

struct _SpelchPracticeList
{
  GtkWidget parent_instance;
  SpelchPractice *practice;
  GtkWidget *all;
  GtkScrolledWindow *scrolled;
  GtkListBox *list;
  GtkLabel *progress;
  bool following; /* the selection follows what is asked */
};

G_DEFINE_FINAL_TYPE (SpelchPracticeList, spelch_practice_list, GTK_TYPE_WIDGET)

enum
{
  SIGNAL_CHOSEN,
  N_SIGNALS
};
static guint signals[N_SIGNALS];

/* What a row stands for, and what in it changes. */
typedef struct
{
  const SpelchExercise *exercise; /* or */
  const SpelchLesson *lesson;
  SpelchGlyph *sign;
  GtkLabel *yet; /* the words beside a sign that alone would say little; how far one is */
  char *words;
} Row;

static void
row_free (gpointer data)
{
  g_free (((Row *)data)->words);
  g_free (data);
}

static Row *
row_of (gpointer widget)
{
  return g_object_get_data (widget, "row");
}

static void
add_row (SpelchPracticeList *self, const SpelchExercise *exercise, const SpelchLesson *lesson,
         const char *title, const char *line)
{
  Row *row = g_new0 (Row, 1);
  GtkWidget *widget = gtk_list_box_row_new ();
  GtkWidget *sides = gtk_box_new (GTK_ORIENTATION_HORIZONTAL, 8);
  GtkWidget *words = gtk_box_new (GTK_ORIENTATION_VERTICAL, 1);
  row->exercise = exercise;
  row->lesson = lesson;
  row->sign = g_object_new (SPELCH_TYPE_GLYPH, "valign", GTK_ALIGN_CENTER, NULL);
  row->words = g_strdup_printf ("%s, %s", title, line);
  gtk_box_append (GTK_BOX (words), spelch_paragraph_new (title, "title"));
  gtk_box_append (GTK_BOX (words), spelch_paragraph_new (line, "soft"));
  row->yet = GTK_LABEL (spelch_paragraph_new ("", "soft"));
  gtk_box_append (GTK_BOX (words), GTK_WIDGET (row->yet));
  gtk_widget_set_hexpand (words, TRUE);
  gtk_box_append (GTK_BOX (sides), words);
  gtk_box_append (GTK_BOX (sides), GTK_WIDGET (row->sign));
  gtk_list_box_row_set_child (GTK_LIST_BOX_ROW (widget), sides);
  g_object_set_data_full (G_OBJECT (widget), "row", row, row_free);
  gtk_list_box_append (self->list, widget);
}

static void
fill (SpelchPracticeList *self)
{
  const GPtrArray *lessons = spelch_practice_get_lessons (self->practice);
  const GPtrArray *exercises = spelch_practice_get_exercises (self->practice);
  const char *const *languages = g_get_language_names ();
  for (guint i = 0; i < lessons->len; i++)
    {
      const SpelchLesson *lesson = lessons->pdata[i];
      g_autofree char *line = g_strdup_printf (
          g_dngettext (GETTEXT_PACKAGE, "About %u minute", "About %u minutes", lesson->minutes),
          lesson->minutes);
      add_row (self, NULL, lesson, spelch_by_language (&lesson->title, languages),
               lesson->minutes > 0 ? line : _ ("A lesson"));
    }
  for (guint i = 0; i < exercises->len; i++)
    {
      const SpelchExercise *exercise = exercises->pdata[i];
      add_row (self, exercise, NULL, spelch_by_language (&exercise->title, languages),
               spelch_words_asks (exercise->asks));
    }
}

/* A heading over the lessons and over each difficulty. */
static void
set_header (GtkListBoxRow *widget, GtkListBoxRow *before, gpointer data)
{
  const Row *row = row_of (widget), *above = before == NULL ? NULL : row_of (before);
  bool first = above == NULL
               || (row->exercise != NULL
                   && (above->exercise == NULL || above->exercise->level != row->exercise->level));
  g_autofree char *level
      = row->exercise == NULL ? NULL : g_strdup_printf (_ ("Difficulty %u"), row->exercise->level);
  gtk_list_box_row_set_header (
      widget, first ? spelch_paragraph_new (level == NULL ? _ ("Guided") : level, "heading") : NULL);
}

/* ---- Following ---- */

static void
show_marks (SpelchPracticeList *self)
{
  const GPtrArray *exercises = spelch_practice_get_exercises (self->practice);
  for (GtkWidget *widget = gtk_widget_get_first_child (GTK_WIDGET (self->list)); widget != NULL;
       widget = gtk_widget_get_next_sibling (widget))
    {
      Row *row = GTK_IS_LIST_BOX_ROW (widget) ? row_of (widget) : NULL;
      if (row == NULL)
        continue;
      SpelchProgress progress = { 0 };
      bool finished = row->lesson != NULL && spelch_practice_has_finished (self->practice, row->lesson);
      if (row->exercise != NULL)
        progress = spelch_practice_get_progress (self->practice, row->exercise->id);
      guint left_at = row->lesson == NULL ? 0 : spelch_practice_get_left_at (self->practice, row->lesson);
      bool right = finished || progress.last_right, wrong = !right && progress.tried > 0;
      g_autofree char *far
          = left_at > 0 ? g_strdup_printf (_ ("Goes on at step %u of %u"), left_at, row->lesson->n_steps)
                        : g_strdup (wrong ? _ ("Answered, not yet right") : "");
      g_autofree char *words = left_at > 0           ? g_strdup_printf ("%s, %s", row->words, far)
                               : finished            ? g_strdup_printf (_ ("%s, finished"), row->words)
                               : progress.last_right ? g_strdup_printf (_ ("%s, answered right"), row->words)
                               : progress.tried > 0  ? g_strdup_printf (_ ("%s, not right yet"), row->words)
                                                     : g_strdup (row->words);
      spelch_glyph_set_kind (row->sign, right   ? SPELCH_GLYPH_TICK
                                        : wrong ? SPELCH_GLYPH_CROSS
                                                : SPELCH_GLYPH_NONE);
      gtk_label_set_text (row->yet, far);
      gtk_widget_set_visible (GTK_WIDGET (row->yet), *far != '\0');
      gtk_accessible_update_property (GTK_ACCESSIBLE (widget), GTK_ACCESSIBLE_PROPERTY_LABEL, words, -1);
    }
  guint right = spelch_practice_count_right (self->practice);
  g_autofree char *count = g_strdup_printf (
      g_dngettext (GETTEXT_PACKAGE, "%u of %u answered right", "%u of %u answered right", right), right,
      exercises->len);
  gtk_label_set_text (self->progress, count);
}

/* Scrolls to a row that was chosen elsewhere. */
static void
show_row (SpelchPracticeList *self, GtkWidget *row)
{
  GtkAdjustment *down = gtk_scrolled_window_get_vadjustment (self->scrolled);
  graphene_rect_t place;
  if (gtk_widget_compute_bounds (row, GTK_WIDGET (self->list), &place))
    gtk_adjustment_clamp_page (down, (double)place.origin.y, (double)(place.origin.y + place.size.height));
}

static void
show_selected (SpelchPracticeList *self)
{
  const SpelchPosed *posed = spelch_practice_get_posed (self->practice);
  const SpelchLesson *lesson = spelch_practice_get_lesson (self->practice);
  self->following = true;
  for (GtkWidget *widget = gtk_widget_get_first_child (GTK_WIDGET (self->list)); widget != NULL;
       widget = gtk_widget_get_next_sibling (widget))
    {
      Row *row = GTK_IS_LIST_BOX_ROW (widget) ? row_of (widget) : NULL;
      bool meant
          = row != NULL
            && (lesson != NULL ? row->lesson == lesson : posed != NULL && row->exercise == posed->exercise);
      if (!meant)
        continue;
      gtk_list_box_select_row (self->list, GTK_LIST_BOX_ROW (widget));
      show_row (self, widget);
    }
  self->following = false;
}

static void
activated (SpelchPracticeList *self, GtkListBoxRow *widget)
{
  const Row *row = row_of (widget);
  if (self->following)
    return;
  if (row->lesson != NULL)
    spelch_practice_take_up_lesson (self->practice, row->lesson);
  else
    spelch_practice_ask (self->practice, row->exercise->id);
  g_signal_emit (self, signals[SIGNAL_CHOSEN], 0);
}

/* ---- Object ---- */

static void
spelch_practice_list_dispose (GObject *object)
{
  SpelchPracticeList *self = SPELCH_PRACTICE_LIST (object);
  if (self->practice != NULL)
    g_signal_handlers_disconnect_by_data (self->practice, self);
  g_clear_pointer (&self->all, gtk_widget_unparent);
  g_clear_object (&self->practice);
  G_OBJECT_CLASS (spelch_practice_list_parent_class)->dispose (object);
}

static void
spelch_practice_list_class_init (SpelchPracticeListClass *klass)
{
  GtkWidgetClass *widget_class = GTK_WIDGET_CLASS (klass);
  G_OBJECT_CLASS (klass)->dispose = spelch_practice_list_dispose;
  signals[SIGNAL_CHOSEN] = g_signal_new ("chosen", SPELCH_TYPE_PRACTICE_LIST, G_SIGNAL_RUN_LAST, 0, NULL,
                                         NULL, NULL, G_TYPE_NONE, 0);
  gtk_widget_class_set_css_name (widget_class, "practicelist");
  gtk_widget_class_set_layout_manager_type (widget_class, GTK_TYPE_BIN_LAYOUT);
  gtk_widget_class_set_accessible_role (widget_class, GTK_ACCESSIBLE_ROLE_GROUP);
}

static void
spelch_practice_list_init (SpelchPracticeList *self)
{
}

SpelchPracticeList *
spelch_practice_list_new (SpelchPractice *practice)
{
  SpelchPracticeList *self = g_object_new (SPELCH_TYPE_PRACTICE_LIST, NULL);
  GtkWidget *scrolled = gtk_scrolled_window_new ();
  self->scrolled = GTK_SCROLLED_WINDOW (scrolled);
  self->practice = g_object_ref (practice);
  self->all = gtk_box_new (GTK_ORIENTATION_VERTICAL, 0);
  self->list = GTK_LIST_BOX (gtk_list_box_new ());
  self->progress = GTK_LABEL (spelch_paragraph_new ("", "soft"));
  gtk_widget_add_css_class (GTK_WIDGET (self->progress), "progress");
  gtk_list_box_set_selection_mode (self->list, GTK_SELECTION_BROWSE);
  gtk_list_box_set_header_func (self->list, set_header, NULL, NULL);
  gtk_accessible_update_property (GTK_ACCESSIBLE (self->list), GTK_ACCESSIBLE_PROPERTY_LABEL,
                                  _ ("Lessons and exercises"), -1);
  gtk_scrolled_window_set_policy (self->scrolled, GTK_POLICY_NEVER, GTK_POLICY_AUTOMATIC);
  gtk_scrolled_window_set_child (self->scrolled, GTK_WIDGET (self->list));
  gtk_widget_set_vexpand (scrolled, TRUE);
  gtk_widget_set_size_request (scrolled, WIDTH, -1);
  gtk_box_append (GTK_BOX (self->all), scrolled);
  gtk_box_append (GTK_BOX (self->all), GTK_WIDGET (self->progress));
  gtk_widget_set_parent (self->all, GTK_WIDGET (self));
  fill (self);
  show_marks (self);
  show_selected (self);
  g_signal_connect_swapped (self->list, "row-activated", G_CALLBACK (activated), self);
  g_signal_connect_swapped (practice, "kept", G_CALLBACK (show_marks), self);
  g_signal_connect_swapped (practice, "changed", G_CALLBACK (show_selected), self);
  return self;
}
