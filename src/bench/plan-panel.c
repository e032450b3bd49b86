/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "bench/plan-panel.h"
#include "bench/edge-row.h"
#include "bench/edits.h"
#include "bench/figure-row.h"
#include "bench/limit-line.h"
#include "bench/live-text.h"
#include "bench/plate.h"
#include "bench/speed-row.h"
#include "bench/template.h"
#include "bench/tooltip.h"
#include "bench/whys.h"
#include "plan/cautions.h"
#include "plan/words-log.h"

#include <glib/gi18n-lib.h>

struct _SpelchPlanPanel
{
  GtkWidget parent_instance;
  SpelchSession *session;
  SpelchShelf *log;
  guint scrolling; /* idle source */

  GtkWidget *told;    /* the plan */
  GtkWidget *nothing; /* what to do while there is no plan */
  GtkScrolledWindow *scroller;
  GtkWidget *stop_box;
  SpelchLiveText *stops;
  SpelchLiveText *asks;
  GtkWidget *tell_of_part, *tell_of_bit, *tell_of_machine; /* the ways to where a question is answered */
  SpelchEdgeRow *motor_edge;
  SpelchEdgeRow *far_edge;
  SpelchSpeedRow *spindle;
  SpelchSpeedRow *feed;
  GtkButton *corrected; /* what the shop log corrects; opens the feed's reasons */
  SpelchFigureRow *chip;
  SpelchFigureRow *entry;
  SpelchFigureRow *passes;
  SpelchFigureRow *time;
  SpelchFigureRow *setting_out;
  SpelchLiveText *limit;
  SpelchLiveText *limit_next;
  SpelchLimitLine *limits;
  SpelchLiveText *seat;
  SpelchLiveText *seat_advice;
  SpelchFigureRow *hold;
  SpelchFigureRow *wear;
  SpelchLiveText *strip;
  SpelchLiveText *cautions;
  SpelchWhyRow *whys[SPELCH_N_ABOUTS];
  GtkButton *done;
};

G_DEFINE_FINAL_TYPE (SpelchPlanPanel, spelch_plan_panel, GTK_TYPE_WIDGET)

/* ---- Stops and questions ---- */

static bool
is_question (SpelchStopKind kind)
{
  return kind >= SPELCH_ASK_SPEED_MARK;
}

/* The sentences of the stops, or of the questions. */
static char *
sentences (const SpelchPlan *plan, bool questions, const char *gap, const SpelchNumbers *numbers)
{
  GString *all = g_string_new (NULL);
  for (guint i = 0; i < plan->n_stops; i++)
    if (is_question (plan->stops[i].kind) == questions)
      {
        g_autofree char *sentence = spelch_words_stop (&plan->stops[i], numbers);
        g_string_append_printf (all, "%s%s", all->len == 0 ? "" : gap, sentence);
      }
  return g_string_free (all, FALSE);
}

/* Where a question is answered. */
typedef struct
{
  const char *list;   /* of a shelf; NULL: in the part's form */
  const char *member; /* NULL: not in any of these */
} Place;

static Place
answered_at (const SpelchStop *stop, const SpelchPart *part)
{
  switch ((int)stop->kind)
    {
    case SPELCH_ASK_SPEED_MARK:
      return (Place){ "bits", "max_rpm" };
    case SPELCH_ASK_OVERALL:
      return (Place){ "bits", "overall_length" };
    case SPELCH_ASK_END:
      return (Place){ "bits", "uncut_centre" };
    case SPELCH_ASK_SPOILBOARD:
      return (Place){ "machines", "spoilboard" };
    case SPELCH_ASK_HOLDING:
      return (Place){ NULL, "holding.method" };
    case SPELCH_ASK_HOLD_FORCE:
      return (Place){ NULL, part->holding.method == SPELCH_HOLD_CLAMPS ? "holding.clamp_force_n"
                                                                       : "holding.area_mm2" };
    case SPELCH_ASK_TABS:
    case SPELCH_ASK_SMALL:
      return (Place){ NULL, "holding.method" };
    case SPELCH_ASK_SIZE:
      return (Place){ NULL, part->length.mm <= 0 ? "length" : "width" };
    default:
      return (Place){ NULL, NULL };
    }
}

/* The way to the first question that is answered there. */
static void
show_way (GtkWidget *button, const char *list, const SpelchPlan *plan, const SpelchPart *part)
{
  bool shown = false;
  for (guint i = 0; i < plan->n_stops && !shown; i++)
    {
      Place place = answered_at (&plan->stops[i], part);
      if (place.member == NULL || g_strcmp0 (place.list, list) != 0 || plan->stops[i].bit != 0)
        continue;
      shown = true;
      if (list == NULL)
        gtk_actionable_set_action_target (GTK_ACTIONABLE (button), "s", place.member);
      else
        gtk_actionable_set_action_target (GTK_ACTIONABLE (button), "(ss)", list, place.member);
    }
  gtk_widget_set_visible (button, shown);
}

#define BULLET "• "

static void
show_stops (SpelchPlanPanel *self, const SpelchPart *part, const SpelchPlan *plan,
            const SpelchNumbers *numbers)
{
  g_autofree char *listed = sentences (plan, false, "\n" BULLET, numbers);
  bool several = strchr (listed, '\n') != NULL;
  g_autofree char *stops = g_strconcat (several ? BULLET : "", listed, NULL);
  g_autofree char *questions = sentences (plan, true, " ", numbers);
  /* Translators: what follows are sentences that say what to tell or to measure. */
  g_autofree char *asks = g_strdup_printf (_ ("Not checked yet: %s"), questions);
  g_object_set (self->stops, "hanging", several, NULL);
  spelch_live_text_set_text (self->stops, stops);
  spelch_live_text_set_text (self->asks, asks);
  gtk_widget_set_visible (self->stop_box, stops[0] != '\0');
  gtk_widget_set_visible (GTK_WIDGET (self->whys[SPELCH_ABOUT_ASKS]), questions[0] != '\0');
  show_way (self->tell_of_bit, "bits", plan, part);
  show_way (self->tell_of_machine, "machines", plan, part);
  show_way (self->tell_of_part, NULL, plan, part);
}

/* ---- Set the machine ---- */

/* Beside what it changes, and the way to what it changes there. */
static void
show_corrected (SpelchPlanPanel *self, const SpelchPlan *plan, const SpelchNumbers *numbers)
{
  g_autofree char *words = spelch_words_log_corrects (plan, numbers);
  if (g_strcmp0 (gtk_button_get_label (self->corrected), words) == 0)
    return;
  gtk_button_set_label (self->corrected, words);
  gtk_widget_set_visible (GTK_WIDGET (self->corrected), *words != '\0');
}

static void
corrected_clicked (SpelchPlanPanel *self)
{
  spelch_why_row_set_open (self->whys[SPELCH_ABOUT_FEED], true);
}

static void
show_speed (SpelchPlanPanel *self, const SpelchPlan *plan, const SpelchNumbers *numbers)
{
  bool solved = plan->feed_mm_min > 0;
  g_autofree char *thickness = numbers->unit == SPELCH_UNIT_INCH
                                   ? spelch_length_format (plan->chip_max, SPELCH_UNIT_INCH,
                                                           SPELCH_INCH_DECIMAL, 2, numbers->decimal_sign)
                                   : spelch_length_format (plan->chip_max, SPELCH_UNIT_MM,
                                                           numbers->inch_style, 2, numbers->decimal_sign);
  g_autofree char *time = spelch_words_time (plan->time_s);
  spelch_speed_row_follow (self->spindle);
  spelch_speed_row_follow (self->feed);
  show_corrected (self, plan, numbers);
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

/* How much there is to open; a row without anything to say goes. */
static void
show_setting_out (SpelchPlanPanel *self, const SpelchPart *part, const SpelchCut *cut, const SpelchPlan *plan,
                  const SpelchNumbers *numbers)
{
  g_auto (GStrv) sentences = spelch_words_setting_out (plan, part, cut, numbers);
  g_autofree char *pass_plan = spelch_words_pass_plan (plan, numbers);
  guint n = g_strv_length (sentences) + (pass_plan[0] != '\0' ? 1 : 0);
  g_autofree char *notes = g_strdup_printf (g_dngettext (GETTEXT_PACKAGE, "%u note", "%u notes", n), n);
  spelch_figure_row_set_value (self->setting_out, notes, false);
  gtk_widget_set_visible (GTK_WIDGET (self->whys[SPELCH_ABOUT_SETTING_OUT]), n > 0);
}

static void
let_go (SpelchPlanPanel *self, GtkWidget *row)
{
  SpelchPart *part = spelch_session_get_part (self->session);
  guint cut = spelch_session_get_cut_index (self->session);
  SpelchHeldThing thing = row == GTK_WIDGET (self->spindle) ? SPELCH_HELD_SPEED
                          : row == GTK_WIDGET (self->feed)  ? SPELCH_HELD_FEED
                          : row == GTK_WIDGET (self->entry) ? SPELCH_HELD_ENTRY
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

/* A figure with its row, which goes where the figure isn't known. */
static void
show_figure (SpelchFigureRow *figure, GtkWidget *row, const char *words)
{
  spelch_figure_row_set_value (figure, words, false);
  gtk_widget_set_visible (row, words[0] != '\0');
}

static void
show_board (SpelchPlanPanel *self, const SpelchPart *part, const SpelchPlan *plan,
            const SpelchNumbers *numbers)
{
  g_autofree char *seat = spelch_words_seat (plan);
  g_autofree char *advice = spelch_words_seat_advice (plan, part, numbers);
  g_autofree char *hold = spelch_words_hold (plan, numbers);
  g_autofree char *life = spelch_words_life (plan, numbers);
  g_autofree char *strip = spelch_caution_strip (part, numbers);
  g_auto (GStrv) own = spelch_caution_plan (spelch_session_get_constants (self->session), part, plan);
  g_autofree char *beware = g_strjoinv (" ", own);
  g_autofree char *general = spelch_caution_words (part);
  g_autofree char *cautions = g_strconcat (beware, *beware != '\0' ? "\n" : "", general, NULL);
  spelch_live_text_set_text (self->seat, seat);
  /* On a gantry the figure says it, or a stop, or a question does. */
  spelch_live_text_set_text (self->seat_advice, advice);
  gtk_widget_set_visible (GTK_WIDGET (self->seat_advice), plan->machine != SPELCH_MACHINE_GANTRY);
  show_figure (self->hold, GTK_WIDGET (self->hold), hold);
  show_figure (self->wear, GTK_WIDGET (self->whys[SPELCH_ABOUT_WEAR]), life);
  spelch_live_text_set_text (self->strip, strip);
  spelch_live_text_set_text (self->cautions, cautions);
}

/* ---- Why ---- */

static void
tell_why (SpelchPlanPanel *self, SpelchAbout about)
{
  SpelchWhyRow *row = self->whys[about];
  spelch_why_row_set_offered (row, spelch_whys_has (about, self->session));
  if (spelch_why_row_is_open (row))
    spelch_whys_tell (about, self->session, self->log, row);
}

/* The names change only when the board is turned over, or another face is seen. */
static void
name_edges (SpelchPlanPanel *self)
{
  for (int about = SPELCH_ABOUT_MOTOR_EDGE; about <= SPELCH_ABOUT_FAR_EDGE; about++)
    {
      g_autofree char *title = spelch_whys_title ((SpelchAbout)about, self->session);
      spelch_why_row_set_title (self->whys[about], title);
    }
}

/* Once it is laid out, what was opened is brought into sight, from its beginning. */
static gboolean
scroll_to_open (gpointer data)
{
  SpelchPlanPanel *self = data;
  GtkAdjustment *adjustment = gtk_scrolled_window_get_vadjustment (self->scroller);
  self->scrolling = 0;
  for (int about = 0; about < SPELCH_N_ABOUTS; about++)
    {
      GtkWidget *row = GTK_WIDGET (self->whys[about]);
      graphene_rect_t place;
      if (!spelch_why_row_is_open (self->whys[about])
          || !gtk_widget_compute_bounds (row, GTK_WIDGET (self->scroller), &place))
        continue;
      double below = (double)(place.origin.y + place.size.height) - gtk_adjustment_get_page_size (adjustment);
      if (below > 0)
        gtk_adjustment_set_value (adjustment, gtk_adjustment_get_value (adjustment)
                                                  + MIN (below, (double)place.origin.y));
    }
  return G_SOURCE_REMOVE;
}

/* Once a form that stood in its place is done with, the column shows its beginning. */
static void
spelch_plan_panel_map (GtkWidget *widget)
{
  GTK_WIDGET_CLASS (spelch_plan_panel_parent_class)->map (widget);
  gtk_adjustment_set_value (gtk_scrolled_window_get_vadjustment (SPELCH_PLAN_PANEL (widget)->scroller), 0);
}

/* One is open at a time. */
static void
why_toggled (SpelchPlanPanel *self, SpelchWhyRow *row)
{
  if (!spelch_why_row_is_open (row) || spelch_session_get_plan (self->session) == NULL)
    return;
  for (int about = 0; about < SPELCH_N_ABOUTS; about++)
    if (self->whys[about] == row)
      {
        spelch_whys_tell ((SpelchAbout)about, self->session, self->log, row);
        spelch_why_row_settle (row); /* it may have been longer when it was open last */
      }
    else
      spelch_why_row_set_open (self->whys[about], false);
  if (self->scrolling == 0)
    self->scrolling = g_idle_add_full (G_PRIORITY_LOW, scroll_to_open, self, NULL);
}

/* Where nothing else wants the key, wherever the focus is. */
static gboolean
close_open (GtkWidget *widget, GVariant *arguments, gpointer data)
{
  SpelchPlanPanel *self = SPELCH_PLAN_PANEL (widget);
  bool closed = false;
  for (int about = 0; about < SPELCH_N_ABOUTS; about++)
    if (spelch_why_row_is_open (self->whys[about]))
      {
        spelch_why_row_set_open (self->whys[about], false);
        closed = true;
      }
  return closed;
}

/* A label that another takes the place of lays the column out anew, so it waits for the end of a drag. */
static void
show_done (SpelchPlanPanel *self, SpelchSession *session)
{
  const SpelchPlan *plan = spelch_session_get_plan (session);
  if (plan == NULL)
    return;
  g_autofree char *way = spelch_words_way (spelch_session_get_numbers (session), spelch_wear_metres (plan));
  g_autofree char *label = g_strdup_printf (_ ("Done: add %s of wear"), way);
  g_autofree char *whole = g_strdup_printf (_ ("Done: add %s to the bit's wear"), way);
  if (g_strcmp0 (gtk_button_get_label (self->done), label) == 0)
    return;
  gtk_button_set_label (self->done, label);
  spelch_tooltip_set (GTK_WIDGET (self->done), whole);
}

/* Lines that only the drag, or a bit that was tried, needed are given back afterwards. */
static void
session_settled (SpelchSession *session, guint change, SpelchPlanPanel *self)
{
  SpelchLiveText *texts[]
      = { self->stops, self->asks, self->limit, self->seat, self->seat_advice, self->strip, self->cautions };
  SpelchFigureRow *figures[]
      = { self->chip, self->entry, self->passes, self->time, self->setting_out, self->hold, self->wear };
  for (guint i = 0; i < G_N_ELEMENTS (texts); i++)
    spelch_live_text_settle (texts[i]);
  for (guint i = 0; i < G_N_ELEMENTS (figures); i++)
    spelch_figure_row_settle (figures[i]);
  spelch_edge_row_settle (self->motor_edge);
  spelch_edge_row_settle (self->far_edge);
  if (spelch_session_get_plan (session) != NULL && spelch_why_row_is_open (self->whys[SPELCH_ABOUT_FEED]))
    tell_why (self, SPELCH_ABOUT_FEED); /* with what isn't looked for in a drag */
  for (int about = 0; about < SPELCH_N_ABOUTS; about++)
    spelch_why_row_settle (self->whys[about]);
  show_done (self, session);
}

static void
session_changed (SpelchSession *session, guint change, SpelchPlanPanel *self)
{
  const SpelchPlan *plan = spelch_session_get_plan (session);
  gtk_widget_set_visible (self->told, plan != NULL);
  gtk_widget_set_visible (self->nothing, plan == NULL);
  if (plan == NULL || !(change & (SPELCH_CHANGE_PLAN | SPELCH_CHANGE_NUMBERS)))
    return;
  const SpelchPart *part = spelch_session_get_part (session);
  const SpelchNumbers *numbers = spelch_session_get_numbers (session);
  const SpelchHeld *held = &spelch_session_get_cut (session)->held;
  show_stops (self, part, plan, numbers);
  spelch_edge_row_follow (self->motor_edge, session, SPELCH_SIDE_MOTOR);
  spelch_edge_row_follow (self->far_edge, session, SPELCH_SIDE_FAR);
  show_speed (self, plan, numbers);
  show_depths (self, plan, numbers, held);
  show_setting_out (self, part, spelch_session_get_cut (session), plan, numbers);
  show_limits (self, plan);
  show_board (self, part, plan, numbers);
  name_edges (self);
  for (int about = 0; about < SPELCH_N_ABOUTS; about++)
    tell_why (self, (SpelchAbout)about);
}

/* An entry that corrects nothing yet changes no plan, but is told. */
static void
log_changed (SpelchShelf *log, SpelchPlanPanel *self)
{
  for (int about = 0; spelch_session_get_plan (self->session) != NULL && about < SPELCH_N_ABOUTS; about++)
    tell_why (self, (SpelchAbout)about);
}

void
spelch_plan_panel_set_session (SpelchPlanPanel *self, SpelchSession *session, SpelchShelf *log)
{
  self->session = session;
  self->log = g_object_ref (log);
  spelch_speed_row_set_session (self->spindle, session, SPELCH_HELD_SPEED);
  spelch_speed_row_set_session (self->feed, session, SPELCH_HELD_FEED);
  for (int about = 0; about < SPELCH_N_ABOUTS; about++)
    if (about != SPELCH_ABOUT_MOTOR_EDGE && about != SPELCH_ABOUT_FAR_EDGE)
      {
        g_autofree char *title = spelch_whys_title ((SpelchAbout)about, session);
        spelch_why_row_set_title (self->whys[about], title);
      }
  g_signal_connect_object (session, "changed", G_CALLBACK (session_changed), self, 0);
  g_signal_connect_object (session, "settled", G_CALLBACK (session_settled), self, 0);
  g_signal_connect_object (log, "changed", G_CALLBACK (log_changed), self, 0);
  session_changed (session, SPELCH_CHANGE_PLAN, self);
}

static void
spelch_plan_panel_dispose (GObject *object)
{
  g_clear_handle_id (&SPELCH_PLAN_PANEL (object)->scrolling, g_source_remove);
  g_clear_object (&SPELCH_PLAN_PANEL (object)->log);
  spelch_template_dispose (GTK_WIDGET (object), SPELCH_TYPE_PLAN_PANEL);
  G_OBJECT_CLASS (spelch_plan_panel_parent_class)->dispose (object);
}

static void
bind_children (GtkWidgetClass *widget_class)
{
  gtk_widget_class_bind_template_child (widget_class, SpelchPlanPanel, nothing);
  gtk_widget_class_bind_template_child (widget_class, SpelchPlanPanel, told);
  gtk_widget_class_bind_template_child (widget_class, SpelchPlanPanel, scroller);
  gtk_widget_class_bind_template_child (widget_class, SpelchPlanPanel, stop_box);
  gtk_widget_class_bind_template_child (widget_class, SpelchPlanPanel, stops);
  gtk_widget_class_bind_template_child (widget_class, SpelchPlanPanel, asks);
  gtk_widget_class_bind_template_child (widget_class, SpelchPlanPanel, tell_of_part);
  gtk_widget_class_bind_template_child (widget_class, SpelchPlanPanel, tell_of_bit);
  gtk_widget_class_bind_template_child (widget_class, SpelchPlanPanel, tell_of_machine);
  gtk_widget_class_bind_template_child (widget_class, SpelchPlanPanel, motor_edge);
  gtk_widget_class_bind_template_child (widget_class, SpelchPlanPanel, far_edge);
  gtk_widget_class_bind_template_child (widget_class, SpelchPlanPanel, spindle);
  gtk_widget_class_bind_template_child (widget_class, SpelchPlanPanel, feed);
  gtk_widget_class_bind_template_child (widget_class, SpelchPlanPanel, corrected);
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
  gtk_widget_class_bind_template_child (widget_class, SpelchPlanPanel, hold);
  gtk_widget_class_bind_template_child (widget_class, SpelchPlanPanel, wear);
  gtk_widget_class_bind_template_child (widget_class, SpelchPlanPanel, strip);
  gtk_widget_class_bind_template_child (widget_class, SpelchPlanPanel, cautions);
  gtk_widget_class_bind_template_child (widget_class, SpelchPlanPanel, done);
}

/* Rows by what they are about, as the template names them. */
static const char *const WHY_NAMES[] = {
  [SPELCH_ABOUT_STOPS] = "why_stops",       [SPELCH_ABOUT_MOTOR_EDGE] = "why_motor_edge",
  [SPELCH_ABOUT_FAR_EDGE] = "why_far_edge", [SPELCH_ABOUT_SPINDLE] = "why_spindle",
  [SPELCH_ABOUT_FEED] = "why_feed",         [SPELCH_ABOUT_CHIP] = "why_chip",
  [SPELCH_ABOUT_ENTRY] = "why_entry",       [SPELCH_ABOUT_PASSES] = "why_passes",
  [SPELCH_ABOUT_TIME] = "why_time",         [SPELCH_ABOUT_SETTING_OUT] = "why_setting_out",
  [SPELCH_ABOUT_LIMITS] = "why_limits",     [SPELCH_ABOUT_SEAT] = "why_seat",
  [SPELCH_ABOUT_ASKS] = "why_asks",         [SPELCH_ABOUT_WEAR] = "why_wear",
  [SPELCH_ABOUT_CAUTIONS] = "why_cautions",
};
SPELCH_TABLE_HAS (WHY_NAMES, SPELCH_N_ABOUTS);

static void
bind_whys (GtkWidgetClass *widget_class)
{
  for (int about = 0; about < SPELCH_N_ABOUTS; about++)
    gtk_widget_class_bind_template_child_full (widget_class, WHY_NAMES[about], FALSE,
                                               (gssize)G_STRUCT_OFFSET (SpelchPlanPanel, whys)
                                                   + about * (gssize)sizeof (SpelchWhyRow *));
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
  g_type_ensure (SPELCH_TYPE_SPEED_ROW);
  g_type_ensure (SPELCH_TYPE_WHY_ROW);
  gtk_widget_class_set_template_from_resource (widget_class, "/org/spelch/Spelch/ui/plan-panel.ui");
  widget_class->map = spelch_plan_panel_map;
  bind_children (widget_class);
  bind_whys (widget_class);
  gtk_widget_class_bind_template_callback (widget_class, corrected_clicked);
  gtk_widget_class_bind_template_callback (widget_class, let_go);
  gtk_widget_class_bind_template_callback (widget_class, why_toggled);
  gtk_widget_class_set_css_name (widget_class, "planpanel");
  gtk_widget_class_set_accessible_role (widget_class, GTK_ACCESSIBLE_ROLE_GROUP);
  gtk_widget_class_set_layout_manager_type (widget_class, GTK_TYPE_BIN_LAYOUT);
}

static void
spelch_plan_panel_init (SpelchPlanPanel *self)
{
  gtk_widget_init_template (GTK_WIDGET (self));
  GtkEventController *keys = gtk_shortcut_controller_new ();
  gtk_shortcut_controller_set_scope (GTK_SHORTCUT_CONTROLLER (keys), GTK_SHORTCUT_SCOPE_GLOBAL);
  gtk_shortcut_controller_add_shortcut (GTK_SHORTCUT_CONTROLLER (keys),
                                        gtk_shortcut_new (gtk_keyval_trigger_new (GDK_KEY_Escape, 0),
                                                          gtk_callback_action_new (close_open, NULL, NULL)));
  gtk_widget_add_controller (GTK_WIDGET (self), keys);
}
