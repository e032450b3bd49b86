/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "bench/practice-question.h"
#include "bench/beside.h"
#include "bench/paragraph.h"
#include "bench/practice-choices.h"
#include "bench/practice-result.h"
#include "bench/practice-view.h"
#include "plan/words-posed.h"

#include <glib/gi18n-lib.h>
#include <math.h>

#define WIDTH                                                                                                \
  600 /* wanted at the least; then a list beside it is folded away, so that drawing and choices have room */

#define FRAMES_TO_LAY_OUT 2
#define ABOVE_RESULT      12 /* left free over it, pixels */

struct _SpelchPracticeQuestion
{
  GtkWidget parent_instance;
  SpelchPractice *practice;
  SpelchNumbers numbers;
  SpelchLook look;

  GtkWidget *all;
  GtkScrolledWindow *scroller;
  GtkLabel *heading, *title, *telling, *lead, *changed, *means, *question;
  SpelchPracticeView *view;
  GtkGrid *facts;
  GtkBox *drawing, *answering; /* under one of which the facts stand */
  GtkWidget *answers;          /* hint and choices */
  GtkExpander *hint;
  GtkLabel *hint_words;
  SpelchPracticeChoices *choices;
  SpelchPracticeResult *result;
  GtkLabel *remark;
  GtkWidget *again, *back, *answer, *follow_up, *next;
  GtkLabel *follow_up_words;
  guint bringing, frames; /* the result into view, once it is laid out */
};

G_DEFINE_FINAL_TYPE (SpelchPracticeQuestion, spelch_practice_question, GTK_TYPE_WIDGET)

static void
show_words (GtkLabel *label, const char *words)
{
  spelch_paragraph_set (label, words);
  gtk_widget_set_visible (GTK_WIDGET (label), *words != '\0');
}

static void
remark (SpelchPracticeQuestion *self, const char *words)
{
  show_words (self->remark, words);
}

/* ---- What is shown ---- */

static bool
is_telling (SpelchPracticeQuestion *self)
{
  SpelchStage stage = spelch_practice_get_stage (self->practice);
  return stage == SPELCH_STAGE_TELLING || stage == SPELCH_STAGE_CLOSING;
}

/* "A first lesson: step 2 of 9", or "Difficulty 2: Which face tears?". */
static char *
heading_words (SpelchPracticeQuestion *self, const SpelchPosed *posed)
{
  const SpelchLesson *lesson = spelch_practice_get_lesson (self->practice);
  if (lesson == NULL)
    return g_strdup_printf (_ ("Difficulty %u: %s"), posed->exercise->level,
                            spelch_words_asks (posed->exercise->asks));
  const char *title = spelch_by_language (&lesson->title, g_get_language_names ());
  guint step = spelch_practice_get_step (self->practice);
  if (step >= lesson->n_steps)
    return g_strdup (title);
  return g_strdup_printf (_ ("%s: step %u of %u"), title, step + 1, lesson->n_steps);
}

static char *
title_words (SpelchPracticeQuestion *self, const SpelchPosed *posed)
{
  const char *title = spelch_by_language (&posed->exercise->title, g_get_language_names ());
  if (spelch_practice_get_stage (self->practice) == SPELCH_STAGE_CLOSING)
    return g_strdup (_ ("That is the end of the lesson"));
  if (!posed->follow_up)
    return g_strdup (title);
  /* TRANSLATORS: an exercise's title, of which the second is a question: "Which way up in MDF? One thing
   * changes" */
  return g_strdup_printf (
      g_str_has_suffix (title, "?") ? _ ("%s One thing changes") : _ ("%s: one thing changes"), title);
}

static const char *
telling_words (SpelchPracticeQuestion *self)
{
  const SpelchLesson *lesson = spelch_practice_get_lesson (self->practice);
  SpelchStage stage = spelch_practice_get_stage (self->practice);
  if (lesson == NULL || !is_telling (self))
    return "";
  return spelch_by_language (stage == SPELCH_STAGE_CLOSING
                                 ? &lesson->closing
                                 : &lesson->steps[spelch_practice_get_step (self->practice)].telling,
                             g_get_language_names ());
}

static void
show_text (SpelchPracticeQuestion *self, const SpelchPosed *posed)
{
  bool telling = is_telling (self);
  g_autofree char *heading = heading_words (self, posed);
  g_autofree char *title = title_words (self, posed);
  g_autofree char *lead = spelch_words_lead (posed, g_get_language_names (), &self->numbers);
  g_autofree char *changed = spelch_words_changed (posed, &self->numbers);
  g_autofree char *question = spelch_words_question (posed, &self->numbers);
  show_words (self->heading, heading);
  show_words (self->title, title);
  show_words (self->telling, telling_words (self));
  show_words (self->lead, telling ? "" : lead);
  show_words (self->changed, telling ? "" : changed);
  show_words (self->means, telling ? "" : spelch_words_changed_means (posed));
  show_words (self->question, telling ? "" : question);
}

static void
add_fact (SpelchPracticeQuestion *self, int row, const SpelchFact *fact)
{
  const char *texts[] = { fact->label, fact->value };
  for (int column = 0; column < 2; column++)
    {
      GtkWidget *label = spelch_paragraph_new (texts[column], column == 0 ? "soft" : "plain");
      gtk_widget_set_valign (label, GTK_ALIGN_START);
      gtk_widget_set_hexpand (label, column == 1);
      gtk_grid_attach (self->facts, label, column, row, 1, 1);
    }
}

/* Under the drawing where the choices are many, so that all of both are in sight. */
static void
place_facts (SpelchPracticeQuestion *self, GtkBox *under)
{
  GtkWidget *facts = GTK_WIDGET (self->facts), *before = gtk_widget_get_parent (facts);
  if (before == GTK_WIDGET (under))
    return;
  g_object_ref (facts);
  gtk_box_remove (GTK_BOX (before), facts);
  gtk_box_append (under, facts);
  g_object_unref (facts);
}

static void
show_facts (SpelchPracticeQuestion *self, const SpelchPosed *posed)
{
  g_autoptr (GArray) facts = spelch_words_facts (posed, &self->numbers);
  for (GtkWidget *old = gtk_widget_get_first_child (GTK_WIDGET (self->facts)); old != NULL;
       old = gtk_widget_get_first_child (GTK_WIDGET (self->facts)))
    gtk_grid_remove (self->facts, old);
  for (guint i = 0; i < facts->len; i++)
    add_fact (self, (int)i, &g_array_index (facts, SpelchFact, i));
  gtk_widget_set_visible (GTK_WIDGET (self->facts), !is_telling (self));
  place_facts (self, posed->exercise->asks == SPELCH_ASKS_LIMIT ? self->drawing : self->answering);
}

static void
show_hint (SpelchPracticeQuestion *self, const SpelchPosed *posed)
{
  const char *hint = spelch_by_language (&posed->exercise->hint, g_get_language_names ());
  gtk_expander_set_expanded (self->hint, FALSE);
  gtk_label_set_text (self->hint_words, hint);
  gtk_widget_set_visible (GTK_WIDGET (self->hint), *hint != '\0' && !posed->follow_up);
}

static void
show_buttons (SpelchPracticeQuestion *self)
{
  SpelchStage stage = spelch_practice_get_stage (self->practice);
  const SpelchPosed *follow_up = spelch_practice_get_follow_up (self->practice);
  bool lesson = spelch_practice_get_lesson (self->practice) != NULL;
  g_autofree char *changed
      = follow_up == NULL ? g_strdup ("") : spelch_words_changed (follow_up, &self->numbers);
  gtk_widget_set_visible (self->answer, stage == SPELCH_STAGE_ASKED);
  gtk_widget_set_visible (self->follow_up, follow_up != NULL);
  show_words (self->follow_up_words, changed);
  gtk_accessible_update_property (GTK_ACCESSIBLE (self->follow_up), GTK_ACCESSIBLE_PROPERTY_DESCRIPTION,
                                  changed, -1);
  gtk_button_set_label (GTK_BUTTON (self->next), stage == SPELCH_STAGE_TELLING   ? _ ("To the question")
                                                 : stage == SPELCH_STAGE_CLOSING ? _ ("To the exercises")
                                                 : stage == SPELCH_STAGE_ASKED   ? _ ("Pass it over")
                                                 : lesson                        ? _ ("Go on")
                                                                                 : _ ("Next"));
  gtk_widget_set_visible (self->next, spelch_practice_has_next (self->practice));
  gtk_widget_set_visible (self->back, spelch_practice_has_back (self->practice));
  gtk_widget_set_visible (self->again, lesson && spelch_practice_has_back (self->practice));
}

GtkWidget *
spelch_practice_question_get_default (SpelchPracticeQuestion *self)
{
  return spelch_practice_get_stage (self->practice) == SPELCH_STAGE_ASKED ? self->answer
         : gtk_widget_get_visible (self->follow_up)                       ? self->follow_up
                                                                          : self->next;
}

void
spelch_practice_question_focus (SpelchPracticeQuestion *self)
{
  GtkWidget *button = spelch_practice_question_get_default (self);
  if (spelch_practice_get_stage (self->practice) == SPELCH_STAGE_ASKED)
    spelch_practice_choices_focus (self->choices);
  else if (gtk_widget_get_visible (button))
    gtk_widget_grab_focus (button);
}

static void
make_default (SpelchPracticeQuestion *self)
{
  GtkRoot *root = gtk_widget_get_root (GTK_WIDGET (self));
  GtkWidget *button = spelch_practice_question_get_default (self);
  GtkWidget *buttons[] = { self->answer, self->follow_up, self->next };
  for (guint i = 0; i < G_N_ELEMENTS (buttons); i++)
    if (buttons[i] == button)
      gtk_widget_add_css_class (buttons[i], "first");
    else
      gtk_widget_remove_css_class (buttons[i], "first");
  if (GTK_IS_WINDOW (root))
    gtk_window_set_default_widget (GTK_WINDOW (root), button);
}

static void
show (SpelchPracticeQuestion *self)
{
  const SpelchPosed *posed = spelch_practice_get_posed (self->practice);
  const SpelchGiven *given = spelch_practice_get_given (self->practice);
  SpelchStage stage = spelch_practice_get_stage (self->practice);
  gtk_widget_set_visible (self->all, posed != NULL);
  if (posed == NULL)
    return;
  show_text (self, posed);
  show_facts (self, posed);
  show_hint (self, posed);
  spelch_practice_choices_show (self->choices, posed, &self->numbers);
  spelch_practice_view_show (self->view, posed, given);
  gtk_widget_set_visible (self->answers, stage == SPELCH_STAGE_ASKED);
  gtk_widget_set_visible (GTK_WIDGET (self->view), stage != SPELCH_STAGE_CLOSING);
  gtk_widget_set_visible (GTK_WIDGET (self->result), given != NULL);
  if (given != NULL)
    spelch_practice_result_show (self->result, posed, given, &self->numbers);
  show_buttons (self);
  make_default (self);
  remark (self, "");
}

/* The result stands where the choices stood, which may have been scrolled to; its head is what is read first.
 */
static gboolean
bring_result (GtkWidget *widget, GdkFrameClock *clock, gpointer data)
{
  SpelchPracticeQuestion *self = SPELCH_PRACTICE_QUESTION (widget);
  GtkAdjustment *down = gtk_scrolled_window_get_vadjustment (self->scroller);
  GtkWidget *body = gtk_viewport_get_child (GTK_VIEWPORT (gtk_scrolled_window_get_child (self->scroller)));
  graphene_rect_t place;
  if (++self->frames < FRAMES_TO_LAY_OUT)
    return G_SOURCE_CONTINUE;
  if (gtk_widget_get_mapped (GTK_WIDGET (self->result))
      && gtk_widget_compute_bounds (GTK_WIDGET (self->result), body, &place))
    {
      double top = place.origin.y - ABOVE_RESULT, bottom = place.origin.y + place.size.height;
      gtk_adjustment_clamp_page (down, top, bottom);
      gtk_adjustment_set_value (down, fmin (gtk_adjustment_get_value (down), top));
    }
  self->bringing = 0;
  return G_SOURCE_REMOVE;
}

static void
practice_changed (SpelchPracticeQuestion *self)
{
  GtkAdjustment *down = gtk_scrolled_window_get_vadjustment (self->scroller);
  show (self);
  if (spelch_practice_get_given (self->practice) == NULL)
    gtk_adjustment_set_value (down, 0);
  else
    {
      self->frames = 0;
      if (self->bringing == 0)
        self->bringing = gtk_widget_add_tick_callback (GTK_WIDGET (self), bring_result, NULL, NULL);
    }
  spelch_practice_question_focus (self);
}

void
spelch_practice_question_set_look (SpelchPracticeQuestion *self, SpelchLook look)
{
  spelch_practice_view_set_look (self->view, look);
}

void
spelch_practice_question_set_numbers (SpelchPracticeQuestion *self, const SpelchNumbers *numbers)
{
  self->numbers = *numbers;
  spelch_session_set_numbers (spelch_practice_view_get_session (self->view), numbers);
  show (self);
}

/* ---- What is done ---- */

static void
answer_clicked (SpelchPracticeQuestion *self)
{
  g_autofree char *answer = spelch_practice_choices_get_answer (self->choices);
  if (answer != NULL && spelch_practice_answer (self->practice, answer, self->numbers.unit))
    return;
  g_autofree char *complaint = spelch_practice_choices_complaint (self->choices);
  remark (self, complaint);
  spelch_practice_choices_focus (self->choices);
}

static void
follow_up_clicked (SpelchPracticeQuestion *self)
{
  spelch_practice_ask_follow_up (self->practice);
}

static void
next_clicked (SpelchPracticeQuestion *self)
{
  spelch_practice_next (self->practice);
}

static void
back_clicked (SpelchPracticeQuestion *self)
{
  spelch_practice_back (self->practice);
}

static void
again_clicked (SpelchPracticeQuestion *self)
{
  spelch_practice_begin_again (self->practice);
}

static void
depth_typed (SpelchPracticeQuestion *self, double depth_mm)
{
  spelch_practice_view_set_depth (self->view, depth_mm);
}

static void
depth_dragged (SpelchPracticeQuestion *self, double depth_mm)
{
  spelch_practice_choices_set_depth (self->choices, depth_mm);
}

static void
answer_chosen (SpelchPracticeQuestion *self)
{
  remark (self, "");
}

static void
session_said (SpelchPracticeQuestion *self, const char *words)
{
  remark (self, words);
}

bool
spelch_practice_question_choose (SpelchPracticeQuestion *self, guint i)
{
  return spelch_practice_get_stage (self->practice) == SPELCH_STAGE_ASKED
         && spelch_practice_choices_choose (self->choices, i);
}

void
spelch_practice_question_undo (SpelchPracticeQuestion *self)
{
  spelch_session_undo (spelch_practice_view_get_session (self->view));
}

void
spelch_practice_question_redo (SpelchPracticeQuestion *self)
{
  spelch_session_redo (spelch_practice_view_get_session (self->view));
}

/* Enter means the button that leads on, unless it is on another button or on a fold. */
static gboolean
enter_pressed (GtkEventControllerKey *keys, guint key, guint code, GdkModifierType state,
               SpelchPracticeQuestion *self)
{
  GtkRoot *root = gtk_widget_get_root (GTK_WIDGET (self));
  GtkWidget *focus = root == NULL ? NULL : gtk_root_get_focus (root);
  bool enter = key == GDK_KEY_Return || key == GDK_KEY_KP_Enter || key == GDK_KEY_ISO_Enter;
  GtkWidget *button = spelch_practice_question_get_default (self);
  if (!enter || (state & (GDK_CONTROL_MASK | GDK_ALT_MASK)) != 0 || focus == NULL || GTK_IS_BUTTON (focus)
      || GTK_IS_EXPANDER (focus) || !gtk_widget_get_visible (button))
    return GDK_EVENT_PROPAGATE;
  gtk_widget_activate (button);
  return GDK_EVENT_STOP;
}

/* ---- Object ---- */

static void
spelch_practice_question_dispose (GObject *object)
{
  SpelchPracticeQuestion *self = SPELCH_PRACTICE_QUESTION (object);
  if (self->practice != NULL)
    g_signal_handlers_disconnect_by_data (self->practice, self);
  if (self->view != NULL)
    g_signal_handlers_disconnect_by_data (spelch_practice_view_get_session (self->view), self);
  self->view = NULL;
  g_clear_pointer (&self->all, gtk_widget_unparent);
  g_clear_object (&self->practice);
  G_OBJECT_CLASS (spelch_practice_question_parent_class)->dispose (object);
}

static void
spelch_practice_question_class_init (SpelchPracticeQuestionClass *klass)
{
  GtkWidgetClass *widget_class = GTK_WIDGET_CLASS (klass);
  G_OBJECT_CLASS (klass)->dispose = spelch_practice_question_dispose;
  gtk_widget_class_set_css_name (widget_class, "practicequestion");
  gtk_widget_class_set_layout_manager_type (widget_class, GTK_TYPE_BIN_LAYOUT);
  gtk_widget_class_set_accessible_role (widget_class, GTK_ACCESSIBLE_ROLE_GROUP);
}

static GtkLabel *
add_label (GtkBox *box, const char *css_class)
{
  GtkWidget *label = spelch_paragraph_new (NULL, css_class);
  gtk_box_append (box, label);
  return GTK_LABEL (label);
}

static GtkWidget *
make_answers (SpelchPracticeQuestion *self)
{
  GtkWidget *box = gtk_box_new (GTK_ORIENTATION_VERTICAL, 12);
  self->choices = spelch_practice_choices_new ();
  self->hint = GTK_EXPANDER (gtk_expander_new (_ ("A hint")));
  self->hint_words = GTK_LABEL (gtk_label_new (NULL));
  gtk_label_set_wrap (self->hint_words, TRUE);
  gtk_label_set_xalign (self->hint_words, 0);
  gtk_expander_set_child (self->hint, GTK_WIDGET (self->hint_words));
  gtk_box_append (GTK_BOX (box), GTK_WIDGET (self->choices));
  gtk_box_append (GTK_BOX (box), GTK_WIDGET (self->hint));
  g_signal_connect_swapped (self->choices, "typed", G_CALLBACK (depth_typed), self);
  g_signal_connect_swapped (self->choices, "chosen", G_CALLBACK (answer_chosen), self);
  return box;
}

static GtkWidget *
add_button (SpelchPracticeQuestion *self, GtkBox *box, const char *label, GCallback clicked)
{
  GtkWidget *button = gtk_button_new_with_label (label);
  gtk_widget_set_valign (button, GTK_ALIGN_CENTER);
  gtk_box_append (box, button);
  g_signal_connect_swapped (button, "clicked", clicked, self);
  return button;
}

/* Where one is, and, apart from what leads on, the way back to a lesson's beginning. */
static GtkWidget *
make_head (SpelchPracticeQuestion *self)
{
  GtkWidget *head = gtk_box_new (GTK_ORIENTATION_HORIZONTAL, 10);
  self->heading = add_label (GTK_BOX (head), "heading");
  gtk_widget_set_hexpand (GTK_WIDGET (self->heading), TRUE);
  self->again = add_button (self, GTK_BOX (head), _ ("Begin again"), G_CALLBACK (again_clicked));
  gtk_widget_add_css_class (self->again, "quiet");
  return head;
}

static GtkWidget *
make_body (SpelchPracticeQuestion *self, const SpelchConstants *constants)
{
  GtkWidget *body = gtk_box_new (GTK_ORIENTATION_VERTICAL, 10);
  GtkWidget *drawing = gtk_box_new (GTK_ORIENTATION_VERTICAL, 12);
  GtkWidget *answering = gtk_box_new (GTK_ORIENTATION_VERTICAL, 12);
  gtk_box_append (GTK_BOX (body), make_head (self));
  self->title = add_label (GTK_BOX (body), "pass");
  self->lead = add_label (GTK_BOX (body), "lead");
  self->changed = add_label (GTK_BOX (body), "asking");
  self->means = add_label (GTK_BOX (body), "lead");
  self->question = add_label (GTK_BOX (body), "asking");
  self->view = spelch_practice_view_new (constants);
  self->drawing = GTK_BOX (drawing);
  self->answering = GTK_BOX (answering);
  self->facts = GTK_GRID (gtk_grid_new ());
  gtk_grid_set_column_spacing (self->facts, 16);
  gtk_grid_set_row_spacing (self->facts, 3);
  gtk_box_append (GTK_BOX (drawing), GTK_WIDGET (self->view));
  self->telling = add_label (GTK_BOX (answering), "lead");
  self->answers = make_answers (self);
  self->result = spelch_practice_result_new ();
  gtk_box_append (GTK_BOX (answering), self->answers);
  gtk_box_append (GTK_BOX (answering), GTK_WIDGET (self->result));
  gtk_box_append (GTK_BOX (answering), GTK_WIDGET (self->facts));
  GtkWidget *beside = spelch_beside_new (drawing, answering);
  gtk_widget_set_vexpand (beside, TRUE);
  gtk_box_append (GTK_BOX (body), beside);
  gtk_widget_add_css_class (body, "body");
  g_signal_connect_swapped (self->view, "dragged", G_CALLBACK (depth_dragged), self);
  g_signal_connect_swapped (spelch_practice_view_get_session (self->view), "said", G_CALLBACK (session_said),
                            self);
  return body;
}

static GtkWidget *
make_foot (SpelchPracticeQuestion *self)
{
  GtkWidget *foot = gtk_box_new (GTK_ORIENTATION_VERTICAL, 6);
  GtkWidget *row = gtk_box_new (GTK_ORIENTATION_HORIZONTAL, 10);
  self->remark = add_label (GTK_BOX (foot), "strong");
  self->back = add_button (self, GTK_BOX (row), _ ("Back"), G_CALLBACK (back_clicked));
  self->follow_up_words = add_label (GTK_BOX (row), "soft");
  gtk_widget_set_hexpand (GTK_WIDGET (self->follow_up_words), TRUE);
  gtk_widget_set_valign (GTK_WIDGET (self->follow_up_words), GTK_ALIGN_CENTER);
  gtk_label_set_xalign (self->follow_up_words, 1);
  gtk_label_set_natural_wrap_mode (self->follow_up_words, GTK_NATURAL_WRAP_NONE);
  self->follow_up
      = add_button (self, GTK_BOX (row), _ ("Now one thing changes"), G_CALLBACK (follow_up_clicked));
  self->answer = add_button (self, GTK_BOX (row), _ ("That is my answer"), G_CALLBACK (answer_clicked));
  self->next = add_button (self, GTK_BOX (row), _ ("Next"), G_CALLBACK (next_clicked));
  gtk_widget_set_halign (row, GTK_ALIGN_END);
  gtk_box_append (GTK_BOX (foot), row);
  gtk_widget_add_css_class (foot, "foot");
  return foot;
}

static void
spelch_practice_question_init (SpelchPracticeQuestion *self)
{
  self->numbers.decimal_sign = '.';
}

SpelchPracticeQuestion *
spelch_practice_question_new (SpelchPractice *practice, const SpelchConstants *constants)
{
  SpelchPracticeQuestion *self = g_object_new (SPELCH_TYPE_PRACTICE_QUESTION, NULL);
  GtkEventController *keys = gtk_event_controller_key_new ();
  self->practice = g_object_ref (practice);
  self->all = gtk_box_new (GTK_ORIENTATION_VERTICAL, 0);
  self->scroller = GTK_SCROLLED_WINDOW (gtk_scrolled_window_new ());
  gtk_scrolled_window_set_policy (self->scroller, GTK_POLICY_NEVER, GTK_POLICY_AUTOMATIC);
  gtk_scrolled_window_set_overlay_scrolling (self->scroller, FALSE); /* that there is more shows */
  gtk_scrolled_window_set_child (self->scroller, make_body (self, constants));
  gtk_widget_set_vexpand (GTK_WIDGET (self->scroller), TRUE);
  gtk_box_append (GTK_BOX (self->all), GTK_WIDGET (self->scroller));
  gtk_box_append (GTK_BOX (self->all), make_foot (self));
  gtk_widget_set_size_request (self->all, WIDTH, -1);
  gtk_widget_set_parent (self->all, GTK_WIDGET (self));
  gtk_event_controller_set_propagation_phase (keys, GTK_PHASE_CAPTURE);
  g_signal_connect (keys, "key-pressed", G_CALLBACK (enter_pressed), self);
  gtk_widget_add_controller (GTK_WIDGET (self), keys);
  g_signal_connect_swapped (practice, "changed", G_CALLBACK (practice_changed), self);
  show (self);
  return self;
}
