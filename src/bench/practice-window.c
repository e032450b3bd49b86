/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "bench/practice-window.h"
#include "bench/columns.h"
#include "bench/practice-list.h"
#include "bench/practice-paper.h"
#include "bench/practice-question.h"
#include "bench/template.h"
#include "bench/word-help.h"
#include "files/shop-data.h"

#include <glib/gi18n-lib.h>

#define WIDTH  1200
#define HEIGHT 800

struct _SpelchPracticeWindow
{
  GtkApplicationWindow parent_instance;
  SpelchAppearance *appearance;
  SpelchPreferred *preferred;
  SpelchPractice *practice;
  SpelchNumbers numbers;
  bool warned;    /* that closing loses answers which can't be written */
  bool following; /* fields are being filled, not typed into */

  GtkToggleButton *list_button;
  GtkMenuButton *words_button;
  GtkWidget *said_bar;
  GtkLabel *said;
  GtkEntry *learner, *seed;
  GtkLabel *complaint;
  SpelchColumns *columns;
  SpelchPracticeQuestion *question;
};

G_DEFINE_FINAL_TYPE (SpelchPracticeWindow, spelch_practice_window, GTK_TYPE_APPLICATION_WINDOW)

static void
say (GtkWindow *window, const char *sentence)
{
  SpelchPracticeWindow *self = SPELCH_PRACTICE_WINDOW (window);
  gtk_label_set_text (self->said, sentence);
  gtk_widget_set_visible (self->said_bar, *sentence != '\0');
}

static void
close_said (SpelchPracticeWindow *self)
{
  say (GTK_WINDOW (self), "");
}

static void
practice_said (SpelchPracticeWindow *self, const char *sentence)
{
  say (GTK_WINDOW (self), sentence);
}

/* What couldn't be read of the person's own exercises. */
static void
say_problems (SpelchPracticeWindow *self)
{
  const GPtrArray *problems = spelch_practice_get_problems (self->practice);
  GString *all = g_string_new (NULL);
  for (guint i = 0; i < problems->len; i++)
    g_string_append_printf (all, "%s%s", i == 0 ? "" : "\n", (const char *)problems->pdata[i]);
  if (all->len > 0)
    say (GTK_WINDOW (self), all->str);
  g_string_free (all, TRUE);
}

/* ---- Learner and seed ---- */

static void
complain (SpelchPracticeWindow *self, GtkEntry *entry, const char *words)
{
  gtk_label_set_text (self->complaint, words);
  gtk_widget_set_visible (GTK_WIDGET (self->complaint), *words != '\0');
  if (*words != '\0')
    gtk_widget_add_css_class (GTK_WIDGET (entry), "wrong");
  else
    gtk_widget_remove_css_class (GTK_WIDGET (entry), "wrong");
  gtk_accessible_update_state (GTK_ACCESSIBLE (entry), GTK_ACCESSIBLE_STATE_INVALID,
                               *words != '\0' ? GTK_ACCESSIBLE_INVALID_TRUE : GTK_ACCESSIBLE_INVALID_FALSE,
                               -1);
}

static void
take_learner (SpelchPracticeWindow *self)
{
  g_autofree char *complaint = NULL;
  if (self->following || self->practice == NULL)
    return;
  bool taken = spelch_practice_set_learner (self->practice,
                                            gtk_editable_get_text (GTK_EDITABLE (self->learner)), &complaint);
  complain (self, self->learner, taken ? "" : complaint);
  SpelchPreferences next = *spelch_preferred_get (self->preferred);
  if (!taken || g_str_equal (next.learner, spelch_practice_get_learner (self->practice)))
    return;
  g_strlcpy (next.learner, spelch_practice_get_learner (self->practice), sizeof next.learner);
  spelch_preferred_set (self->preferred, &next);
}

/* Half a name is nobody's, so that it is taken when it is finished. */
static void
follow_learner (SpelchPracticeWindow *self)
{
  GtkEventController *focus = gtk_event_controller_focus_new ();
  g_signal_connect_swapped (focus, "leave", G_CALLBACK (take_learner), self);
  gtk_widget_add_controller (GTK_WIDGET (self->learner), focus);
}

static void
take_seed (SpelchPracticeWindow *self)
{
  guint64 seed = 0;
  const char *typed = gtk_editable_get_text (GTK_EDITABLE (self->seed));
  if (self->following)
    return;
  g_autofree char *stripped = g_strstrip (g_strdup (typed));
  if (!g_ascii_string_to_unsigned (stripped, 10, 0, SPELCH_SEED_MOST, &seed, NULL))
    {
      g_autofree char *words = g_strdup_printf (
          _ ("“%s” isn't the number of a draw; write a whole number from 0 to %d."), typed, SPELCH_SEED_MOST);
      complain (self, self->seed, words);
      return;
    }
  complain (self, self->seed, "");
  if (seed != spelch_practice_get_seed (self->practice))
    spelch_practice_set_seed (self->practice, (guint32)seed);
}

static void
draw_others (SpelchPracticeWindow *self)
{
  spelch_practice_draw_others (self->practice);
}

static void
show_seed (SpelchPracticeWindow *self)
{
  g_autofree char *seed = g_strdup_printf ("%u", spelch_practice_get_seed (self->practice));
  self->following = true;
  if (!g_str_equal (gtk_editable_get_text (GTK_EDITABLE (self->seed)), seed))
    gtk_editable_set_text (GTK_EDITABLE (self->seed), seed);
  self->following = false;
  complain (self, self->seed, "");
}

/* ---- Actions ---- */

static SpelchPracticePaper
paper_of (SpelchPracticeWindow *self, bool answers)
{
  GAction *action = g_action_map_lookup_action (G_ACTION_MAP (self), "sheet-of");
  g_autoptr (GVariant) state = g_action_get_state (action);
  int of = SPELCH_SHEET_LEVEL;
  spelch_code_read (&SPELCH_SHEET_OF_CODES, g_variant_get_string (state, NULL), &of);
  return (SpelchPracticePaper){ .window = GTK_WINDOW (self),
                                .practice = self->practice,
                                .numbers = self->numbers,
                                .of = (SpelchSheetOf)of,
                                .answers = answers,
                                .say = say };
}

static void
do_print (GSimpleAction *action, GVariant *answers, gpointer data)
{
  SpelchPracticePaper paper = paper_of (data, g_variant_get_boolean (answers));
  spelch_practice_print (&paper);
}

static void
do_save_sheet (GSimpleAction *action, GVariant *answers, gpointer data)
{
  SpelchPracticePaper paper = paper_of (data, g_variant_get_boolean (answers));
  spelch_practice_save_sheet (&paper);
}

static void
do_export (GSimpleAction *action, GVariant *everyone, gpointer data)
{
  SpelchPracticePaper paper = paper_of (data, false);
  spelch_practice_export (&paper, g_variant_get_boolean (everyone));
}

static void
do_undo (GSimpleAction *action, GVariant *parameter, gpointer data)
{
  spelch_practice_question_undo (SPELCH_PRACTICE_WINDOW (data)->question);
}

static void
do_redo (GSimpleAction *action, GVariant *parameter, gpointer data)
{
  spelch_practice_question_redo (SPELCH_PRACTICE_WINDOW (data)->question);
}

static void
do_words (GSimpleAction *action, GVariant *parameter, gpointer data)
{
  gtk_menu_button_popup (SPELCH_PRACTICE_WINDOW (data)->words_button);
}

static void
do_close (GSimpleAction *action, GVariant *parameter, gpointer data)
{
  gtk_window_close (data);
}

static const GActionEntry ACTIONS[] = {
  { .name = "practice-print", .parameter_type = "b", .activate = do_print },
  { .name = "practice-save-sheet", .parameter_type = "b", .activate = do_save_sheet },
  { .name = "practice-export", .parameter_type = "b", .activate = do_export },
  { .name = "sheet-of", .parameter_type = "s", .state = "'level'" },
  { .name = "undo", .activate = do_undo },
  { .name = "redo", .activate = do_redo },
  { .name = "words", .activate = do_words },
  { .name = "close", .activate = do_close },
};

/* ---- Keys ---- */

/* 1 to 9, or A to I, for the choices, where nothing is typed into. */
static gboolean
key_pressed (GtkEventControllerKey *keys, guint key, guint code, GdkModifierType state,
             SpelchPracticeWindow *self)
{
  guint lower = gdk_keyval_to_lower (key);
  GtkPopover *words = gtk_menu_button_get_popover (self->words_button);
  if ((state & (GDK_CONTROL_MASK | GDK_ALT_MASK | GDK_SUPER_MASK)) != 0
      || (words != NULL && gtk_widget_get_visible (GTK_WIDGET (words))))
    return GDK_EVENT_PROPAGATE;
  if (key >= GDK_KEY_1 && key <= GDK_KEY_9)
    return spelch_practice_question_choose (self->question, key - GDK_KEY_1);
  if (key >= GDK_KEY_KP_1 && key <= GDK_KEY_KP_9)
    return spelch_practice_question_choose (self->question, key - GDK_KEY_KP_1);
  if (lower >= GDK_KEY_a && lower <= GDK_KEY_i)
    return spelch_practice_question_choose (self->question, lower - GDK_KEY_a);
  return GDK_EVENT_PROPAGATE;
}

/* ---- Following ---- */

static void
list_chosen (SpelchPracticeWindow *self)
{
  gtk_toggle_button_set_active (self->list_button, FALSE);
  spelch_practice_question_focus (self->question);
}

static void
folded_changed (SpelchPracticeWindow *self)
{
  gboolean folded = FALSE;
  if (self->columns == NULL)
    return;
  g_object_get (self->columns, "left-folded", &folded, NULL);
  gtk_widget_set_visible (GTK_WIDGET (self->list_button), folded);
}

static void
look_changed (SpelchPracticeWindow *self)
{
  spelch_practice_question_set_look (self->question, spelch_appearance_get_look (self->appearance));
}

static void
preferences_changed (SpelchPracticeWindow *self)
{
  SpelchNumbers numbers = spelch_preferences_numbers (spelch_preferred_get (self->preferred));
  bool same = numbers.unit == self->numbers.unit && numbers.inch_style == self->numbers.inch_style
              && numbers.feed_unit == self->numbers.feed_unit
              && numbers.decimal_sign == self->numbers.decimal_sign;
  if (same)
    return; /* a choice that is made already stays */
  self->numbers = numbers;
  spelch_practice_question_set_numbers (self->question, &numbers);
}

static void
became_active (SpelchPracticeWindow *self)
{
  if (gtk_window_is_active (GTK_WINDOW (self)) && self->practice != NULL)
    spelch_practice_look (self->practice);
}

/* Answers that can't be written are told of once more before they are lost. */
static gboolean
spelch_practice_window_close_request (GtkWindow *window)
{
  SpelchPracticeWindow *self = SPELCH_PRACTICE_WINDOW (window);
  take_learner (self);
  spelch_practice_look (self->practice);
  guint waiting = spelch_practice_count_waiting (self->practice);
  if (waiting == 0 || self->warned)
    return GTK_WINDOW_CLASS (spelch_practice_window_parent_class)->close_request (window);
  g_autofree char *before = g_strdup (gtk_label_get_text (self->said));
  g_autofree char *words = g_strdup_printf (
      g_dngettext (GETTEXT_PACKAGE,
                   "%u answer isn't kept yet. Export it from “Sheets and answers”, or close the window "
                   "again to lose it.",
                   "%u answers aren't kept yet. Export them from “Sheets and answers”, or close the window "
                   "again to lose them.",
                   waiting),
      waiting);
  g_autofree char *both = g_strjoin (*before == '\0' ? "" : "\n", before, words, NULL);
  self->warned = true;
  say (window, both);
  return TRUE;
}

/* ---- Object ---- */

static void
spelch_practice_window_dispose (GObject *object)
{
  SpelchPracticeWindow *self = SPELCH_PRACTICE_WINDOW (object);
  if (self->practice != NULL)
    g_signal_handlers_disconnect_by_data (self->practice, self);
  self->columns = NULL;
  spelch_template_empty_menus (GTK_WIDGET (object));
  gtk_widget_dispose_template (GTK_WIDGET (object), SPELCH_TYPE_PRACTICE_WINDOW);
  g_clear_object (&self->practice);
  g_clear_object (&self->preferred);
  g_clear_object (&self->appearance);
  G_OBJECT_CLASS (spelch_practice_window_parent_class)->dispose (object);
}

static void
spelch_practice_window_class_init (SpelchPracticeWindowClass *klass)
{
  GtkWidgetClass *widget_class = GTK_WIDGET_CLASS (klass);
  G_OBJECT_CLASS (klass)->dispose = spelch_practice_window_dispose;
  GTK_WINDOW_CLASS (klass)->close_request = spelch_practice_window_close_request;
  g_type_ensure (SPELCH_TYPE_COLUMNS);
  gtk_widget_class_set_template_from_resource (widget_class, "/org/spelch/Spelch/ui/practice-window.ui");
  gtk_widget_class_bind_template_child (widget_class, SpelchPracticeWindow, list_button);
  gtk_widget_class_bind_template_child (widget_class, SpelchPracticeWindow, words_button);
  gtk_widget_class_bind_template_child (widget_class, SpelchPracticeWindow, said_bar);
  gtk_widget_class_bind_template_child (widget_class, SpelchPracticeWindow, said);
  gtk_widget_class_bind_template_child (widget_class, SpelchPracticeWindow, learner);
  gtk_widget_class_bind_template_child (widget_class, SpelchPracticeWindow, seed);
  gtk_widget_class_bind_template_child (widget_class, SpelchPracticeWindow, complaint);
  gtk_widget_class_bind_template_child (widget_class, SpelchPracticeWindow, columns);
  gtk_widget_class_bind_template_callback (widget_class, close_said);
  gtk_widget_class_bind_template_callback (widget_class, take_learner);
  gtk_widget_class_bind_template_callback (widget_class, take_seed);
  gtk_widget_class_bind_template_callback (widget_class, draw_others);
  gtk_widget_class_bind_template_callback (widget_class, folded_changed);
  gtk_widget_class_bind_template_callback (widget_class, became_active);
}

static void
spelch_practice_window_init (SpelchPracticeWindow *self)
{
  GtkEventController *keys = gtk_event_controller_key_new ();
  gtk_widget_init_template (GTK_WIDGET (self));
  follow_learner (self);
  g_action_map_add_action_entries (G_ACTION_MAP (self), ACTIONS, G_N_ELEMENTS (ACTIONS), self);
  g_signal_connect (keys, "key-pressed", G_CALLBACK (key_pressed), self);
  gtk_widget_add_controller (GTK_WIDGET (self), keys);
}

/* The name that was there last; a first one, so that no answer is ever without. */
static void
begin_learner (SpelchPracticeWindow *self)
{
  const char *last = spelch_preferred_get (self->preferred)->learner;
  g_autofree char *complaint = NULL;
  if (*last == '\0' || !spelch_practice_set_learner (self->practice, last, &complaint))
    {
      g_clear_pointer (&complaint, g_free);
      spelch_practice_set_learner (self->practice, _ ("Learner"), &complaint);
    }
  self->following = true;
  gtk_editable_set_text (GTK_EDITABLE (self->learner), spelch_practice_get_learner (self->practice));
  self->following = false;
}

static SpelchPracticeWindow *
window_new (GtkApplication *application, SpelchAppearance *appearance, SpelchPreferred *preferred)
{
  SpelchPracticeWindow *self = g_object_new (SPELCH_TYPE_PRACTICE_WINDOW, "application", application, NULL);
  g_autofree char *folder = spelch_exercises_folder ();
  g_autoptr (GFile) log = spelch_practice_log_own ();
  self->appearance = g_object_ref (appearance);
  self->preferred = g_object_ref (preferred);
  self->practice = spelch_practice_new (spelch_shop_constants (), folder, log);
  begin_learner (self);
  spelch_practice_look (self->practice);
  spelch_practice_begin (self->practice);
  SpelchPracticeList *list = spelch_practice_list_new (self->practice);
  self->question = spelch_practice_question_new (self->practice, spelch_shop_constants ());
  spelch_word_help_set (self->words_button, GTK_WIDGET (self->question));
  spelch_word_help_add_tips (GTK_WIDGET (self->question));
  g_object_set (self->columns, "centre", self->question, "left", list, NULL); /* the list is drawn over */
  g_signal_connect_swapped (list, "chosen", G_CALLBACK (list_chosen), self);
  g_signal_connect_swapped (self->practice, "said", G_CALLBACK (practice_said), self);
  g_signal_connect_swapped (self->practice, "changed", G_CALLBACK (show_seed), self);
  g_signal_connect_object (appearance, "changed", G_CALLBACK (look_changed), self, G_CONNECT_SWAPPED);
  g_signal_connect_object (preferred, "changed", G_CALLBACK (preferences_changed), self, G_CONNECT_SWAPPED);
  gtk_window_set_default_size (GTK_WINDOW (self), WIDTH, HEIGHT);
  self->numbers = spelch_preferences_numbers (spelch_preferred_get (preferred));
  spelch_practice_question_set_numbers (self->question, &self->numbers);
  look_changed (self);
  show_seed (self);
  say_problems (self);
  return self;
}

void
spelch_practice_window_present (GtkApplication *application, SpelchAppearance *appearance,
                                SpelchPreferred *preferred)
{
  for (GList *l = gtk_application_get_windows (application); l != NULL; l = l->next)
    if (SPELCH_IS_PRACTICE_WINDOW (l->data))
      {
        gtk_window_present (l->data);
        return;
      }
  SpelchPracticeWindow *window = window_new (application, appearance, preferred);
  gtk_window_present (GTK_WINDOW (window));
  spelch_practice_question_focus (window->question);
}
