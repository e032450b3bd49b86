/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "bench/plan-panel.h"
#include "bench/edge-row.h"
#include "bench/edits.h"
#include "bench/figure-row.h"
#include "bench/limit-line.h"
#include "bench/live-text.h"
#include "bench/plate.h"
#include "bench/template.h"
#include "plan/cautions.h"

#include <glib/gi18n-lib.h>

struct _SpelchPlanPanel
{
  GtkWidget parent_instance;
  SpelchSession *session;

  GtkWidget *stop_box;
  SpelchLiveText *stops;
  GtkWidget *ask_box;
  SpelchLiveText *asks;
  SpelchEdgeRow *motor_edge;
  SpelchEdgeRow *far_edge;
  SpelchFigureRow *spindle;
  SpelchFigureRow *feed;
  SpelchFigureRow *chip;
  SpelchFigureRow *entry;
  SpelchFigureRow *passes;
  SpelchFigureRow *time;
  SpelchLiveText *setting_out;
  SpelchLiveText *limit;
  SpelchLiveText *limit_next;
  SpelchLimitLine *limits;
  SpelchLiveText *seat;
  SpelchLiveText *seat_advice;
  SpelchLiveText *strip;
  SpelchLiveText *cautions;
};

G_DEFINE_FINAL_TYPE (SpelchPlanPanel, spelch_plan_panel, GTK_TYPE_WIDGET)

/* ---- Stops and questions ---- */

static bool
is_question (SpelchStopKind kind)
{
  return kind >= SPELCH_ASK_SPEED_MARK;
}

/* The sentences of the stops, or of the questions, a line each. */
static char *
sentences (const SpelchPlan *plan, bool questions, const SpelchNumbers *numbers)
{
  GString *all = g_string_new (NULL);
  for (guint i = 0; i < plan->n_stops; i++)
    if (is_question (plan->stops[i].kind) == questions)
      {
        g_autofree char *sentence = spelch_words_stop (&plan->stops[i], numbers);
        g_string_append_printf (all, "%s%s", all->len == 0 ? "" : "\n", sentence);
      }
  return g_string_free (all, FALSE);
}

static void
show_stops (SpelchPlanPanel *self, const SpelchPlan *plan, const SpelchNumbers *numbers)
{
  g_autofree char *stops = sentences (plan, false, numbers);
  g_autofree char *asks = sentences (plan, true, numbers);
  spelch_live_text_set_text (self->stops, stops);
  spelch_live_text_set_text (self->asks, asks);
  gtk_widget_set_visible (self->stop_box, stops[0] != '\0');
  gtk_widget_set_visible (self->ask_box, asks[0] != '\0');
}

/* ---- Set the machine ---- */

/* The sentences that say something, one after the other. */
static char *
joined (const char *const *sentences, guint n)
{
  GString *text = g_string_new (NULL);
  for (guint i = 0; i < n; i++)
    if (*sentences[i] != '\0')
      g_string_append_printf (text, "%s%s", text->len > 0 ? " " : "", sentences[i]);
  return g_string_free (text, FALSE);
}

static void
show_speed (SpelchPlanPanel *self, const SpelchPlan *plan, const SpelchNumbers *numbers,
            const SpelchHeld *held)
{
  bool solved = plan->feed_mm_min > 0;
  g_autofree char *count = spelch_words_count (plan->speed_rpm);
  g_autofree char *speed = g_strdup_printf (_ ("%s rpm"), count);
  g_autofree char *feed = spelch_words_feed (numbers, plan->feed_mm_min);
  g_autofree char *thickness = numbers->unit == SPELCH_UNIT_INCH
                                   ? spelch_length_format (plan->chip_max, SPELCH_UNIT_INCH,
                                                           SPELCH_INCH_DECIMAL, 2, numbers->decimal_sign)
                                   : spelch_length_format (plan->chip_max, SPELCH_UNIT_MM,
                                                           numbers->inch_style, 2, numbers->decimal_sign);
  g_autofree char *time = spelch_words_time (plan->time_s);
  spelch_figure_row_set_value (self->spindle, solved ? speed : "–", held->speed_rpm > 0);
  spelch_figure_row_set_value (self->feed, solved ? feed : "–", held->feed_mm_min > 0);
  spelch_figure_row_set_value (self->chip, solved ? thickness : "–", false);
  spelch_figure_row_set_value (self->time, solved ? time : "–", false);
}

static void
show_depths (SpelchPlanPanel *self, const SpelchPlan *plan, const SpelchNumbers *numbers,
             const SpelchHeld *held)
{
  g_autofree char *entry = spelch_words_entry (plan, numbers);
  g_autofree char *passes = spelch_words_passes (plan, numbers);
  spelch_figure_row_set_value (self->entry, entry, held->entry_held);
  spelch_figure_row_set_value (self->passes, passes,
                               spelch_held_has_passes (held) || held->overcut_held || held->allowance_held);
}

static void
show_setting_out (SpelchPlanPanel *self, const SpelchPart *part, const SpelchCut *cut, const SpelchPlan *plan,
                  const SpelchNumbers *numbers)
{
  g_auto (GStrv) sentences = spelch_words_setting_out (plan, part, cut, numbers);
  g_autofree char *steps = g_strjoinv (" ", sentences);
  g_autofree char *pass_plan = spelch_words_pass_plan (plan, numbers);
  const char *const words[] = { pass_plan, steps };
  g_autofree char *all = joined (words, G_N_ELEMENTS (words));
  spelch_live_text_set_text (self->setting_out, all);
  gtk_widget_set_visible (GTK_WIDGET (self->setting_out), all[0] != '\0');
}

static void
let_go (SpelchPlanPanel *self, SpelchFigureRow *row)
{
  SpelchPart *part = spelch_session_get_part (self->session);
  guint cut = spelch_session_get_cut_index (self->session);
  SpelchHeldThing thing = row == self->spindle ? SPELCH_HELD_SPEED
                          : row == self->feed  ? SPELCH_HELD_FEED
                          : row == self->entry ? SPELCH_HELD_ENTRY
                                               : SPELCH_HELD_DEPTHS;
  const char *const names[] = { [SPELCH_HELD_DEPTHS] = _ ("let the depths go"),
                                [SPELCH_HELD_SPEED] = _ ("let the spindle speed go"),
                                [SPELCH_HELD_FEED] = _ ("let the feed go"),
                                [SPELCH_HELD_ENTRY] = _ ("let the entry go") };
  spelch_session_edit (self->session, spelch_edit_let_go (part, cut, thing), names[thing], NULL);
}

/* ---- The rest ---- */

static void
show_limits (SpelchPlanPanel *self, const SpelchPlan *plan)
{
  g_autofree char *limit = spelch_words_limit (plan);
  g_autofree char *next = spelch_words_limit_next (plan);
  spelch_live_text_set_text (self->limit, limit);
  spelch_live_text_set_text (self->limit_next, next);
  spelch_limit_line_set_plan (self->limits, plan);
}

static void
show_board (SpelchPlanPanel *self, const SpelchPart *part, const SpelchPlan *plan,
            const SpelchNumbers *numbers)
{
  g_autofree char *seat = spelch_words_seat (plan);
  g_autofree char *seat_advice = spelch_words_seat_advice (plan, part, numbers);
  g_autofree char *tabs = spelch_words_tabs (plan, numbers);
  g_autofree char *upkeep = spelch_words_upkeep (plan, numbers);
  g_autofree char *calibration = spelch_words_calibration (plan, numbers);
  const char *const sentences[] = { tabs, seat_advice, upkeep, calibration };
  g_autofree char *advice = joined (sentences, G_N_ELEMENTS (sentences));
  g_autofree char *strip = spelch_caution_strip (part, numbers);
  g_autofree char *cautions = spelch_caution_words (part);
  spelch_live_text_set_text (self->seat, seat);
  spelch_live_text_set_text (self->seat_advice, advice);
  spelch_live_text_set_text (self->strip, strip);
  spelch_live_text_set_text (self->cautions, cautions);
}

/* Lines that only the drag, or a bit that was tried, needed are given back afterwards. */
static void
session_settled (SpelchSession *session, guint change, SpelchPlanPanel *self)
{
  SpelchLiveText *texts[] = { self->stops, self->asks,        self->setting_out, self->limit,
                              self->seat,  self->seat_advice, self->strip,       self->cautions };
  for (guint i = 0; i < G_N_ELEMENTS (texts); i++)
    spelch_live_text_settle (texts[i]);
  spelch_edge_row_settle (self->motor_edge);
  spelch_edge_row_settle (self->far_edge);
}

static void
session_changed (SpelchSession *session, guint change, SpelchPlanPanel *self)
{
  const SpelchPlan *plan = spelch_session_get_plan (session);
  gtk_widget_set_visible (gtk_widget_get_first_child (GTK_WIDGET (self)), plan != NULL);
  if (plan == NULL || !(change & (SPELCH_CHANGE_PLAN | SPELCH_CHANGE_NUMBERS)))
    return;
  const SpelchPart *part = spelch_session_get_part (session);
  const SpelchNumbers *numbers = spelch_session_get_numbers (session);
  const SpelchHeld *held = &spelch_session_get_cut (session)->held;
  show_stops (self, plan, numbers);
  spelch_edge_row_follow (self->motor_edge, session, SPELCH_SIDE_MOTOR);
  spelch_edge_row_follow (self->far_edge, session, SPELCH_SIDE_FAR);
  show_speed (self, plan, numbers, held);
  show_depths (self, plan, numbers, held);
  show_setting_out (self, part, spelch_session_get_cut (session), plan, numbers);
  show_limits (self, plan);
  show_board (self, part, plan, numbers);
}

void
spelch_plan_panel_set_session (SpelchPlanPanel *self, SpelchSession *session)
{
  self->session = session;
  g_signal_connect_object (session, "changed", G_CALLBACK (session_changed), self, 0);
  g_signal_connect_object (session, "settled", G_CALLBACK (session_settled), self, 0);
  session_changed (session, SPELCH_CHANGE_PLAN, self);
}

static void
spelch_plan_panel_dispose (GObject *object)
{
  spelch_template_dispose (GTK_WIDGET (object), SPELCH_TYPE_PLAN_PANEL);
  G_OBJECT_CLASS (spelch_plan_panel_parent_class)->dispose (object);
}

static void
bind_children (GtkWidgetClass *widget_class)
{
  gtk_widget_class_bind_template_child (widget_class, SpelchPlanPanel, stop_box);
  gtk_widget_class_bind_template_child (widget_class, SpelchPlanPanel, stops);
  gtk_widget_class_bind_template_child (widget_class, SpelchPlanPanel, ask_box);
  gtk_widget_class_bind_template_child (widget_class, SpelchPlanPanel, asks);
  gtk_widget_class_bind_template_child (widget_class, SpelchPlanPanel, motor_edge);
  gtk_widget_class_bind_template_child (widget_class, SpelchPlanPanel, far_edge);
  gtk_widget_class_bind_template_child (widget_class, SpelchPlanPanel, spindle);
  gtk_widget_class_bind_template_child (widget_class, SpelchPlanPanel, feed);
  gtk_widget_class_bind_template_child (widget_class, SpelchPlanPanel, chip);
  gtk_widget_class_bind_template_child (widget_class, SpelchPlanPanel, entry);
  gtk_widget_class_bind_template_child (widget_class, SpelchPlanPanel, passes);
  gtk_widget_class_bind_template_child (widget_class, SpelchPlanPanel, time);
  gtk_widget_class_bind_template_child (widget_class, SpelchPlanPanel, setting_out);
  gtk_widget_class_bind_template_child (widget_class, SpelchPlanPanel, limit);
  gtk_widget_class_bind_template_child (widget_class, SpelchPlanPanel, limit_next);
  gtk_widget_class_bind_template_child (widget_class, SpelchPlanPanel, limits);
  gtk_widget_class_bind_template_child (widget_class, SpelchPlanPanel, seat);
  gtk_widget_class_bind_template_child (widget_class, SpelchPlanPanel, seat_advice);
  gtk_widget_class_bind_template_child (widget_class, SpelchPlanPanel, strip);
  gtk_widget_class_bind_template_child (widget_class, SpelchPlanPanel, cautions);
}

static void
spelch_plan_panel_class_init (SpelchPlanPanelClass *klass)
{
  GtkWidgetClass *widget_class = GTK_WIDGET_CLASS (klass);
  G_OBJECT_CLASS (klass)->dispose = spelch_plan_panel_dispose;
  g_type_ensure (SPELCH_TYPE_EDGE_ROW);
  g_type_ensure (SPELCH_TYPE_FIGURE_ROW);
  g_type_ensure (SPELCH_TYPE_LIMIT_LINE);
  g_type_ensure (SPELCH_TYPE_LIVE_TEXT);
  g_type_ensure (SPELCH_TYPE_PLATE);
  gtk_widget_class_set_template_from_resource (widget_class, "/org/spelch/Spelch/ui/plan-panel.ui");
  bind_children (widget_class);
  gtk_widget_class_bind_template_callback (widget_class, let_go);
  gtk_widget_class_set_css_name (widget_class, "planpanel");
  gtk_widget_class_set_accessible_role (widget_class, GTK_ACCESSIBLE_ROLE_GROUP);
  gtk_widget_class_set_layout_manager_type (widget_class, GTK_TYPE_BIN_LAYOUT);
}

static void
spelch_plan_panel_init (SpelchPlanPanel *self)
{
  gtk_widget_init_template (GTK_WIDGET (self));
}
