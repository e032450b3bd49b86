/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "bench/bench-window.h"
#include "bench/bench-application.h"
#include "bench/bench-files.h"
#include "bench/bit-drawer.h"
#include "bench/columns.h"
#include "bench/copy-offer.h"
#include "bench/cut-done.h"
#include "bench/cut-editor.h"
#include "bench/cut-list.h"
#include "bench/depths-row.h"
#include "bench/first-hints.h"
#include "bench/frame-meter.h"
#include "bench/later-menu.h"
#include "bench/motion-window.h"
#include "bench/nothing-cut.h"
#include "bench/offer.h"
#include "bench/part-actions.h"
#include "bench/part-editor.h"
#include "bench/plan-panel.h"
#include "bench/recent.h"
#include "bench/reload-offer.h"
#include "bench/setting-panel.h"
#include "bench/sheet-window.h"
#include "bench/side-by-side-window.h"
#include "bench/side-view.h"
#include "bench/template.h"
#include "bench/text-size.h"
#include "bench/undo-buttons.h"
#include "bench/verdict-line.h"
#include "files/shop-data.h"

#include <glib/gi18n-lib.h>

#define WIDTH          1360
#define HEIGHT         860
#define PART_NAME_ROOM 400 /* px, counting a letter as an em */

struct _SpelchBenchWindow
{
  GtkApplicationWindow parent_instance;
  SpelchSession *session;
  GListModel *quantities;
  SpelchAppearance *appearance;
  SpelchRecovery *recovery;
  SpelchPreferred *preferred;
  GPtrArray *left_behind; /* SpelchLeftBehind, to be offered; may be NULL */
  bool closing;           /* what is unsaved was asked about */

  GtkLabel *part_name;
  GtkMenuButton *cut_menu;
  GtkWidget *undo;
  GtkWidget *redo;
  GtkInfoBar *error_bar;
  GtkLabel *error_words;
  SpelchOffer *recovery_offer;
  SpelchOffer *reload_offer;
  SpelchOffer *copy_offer;
  GtkMenuButton *menu_button;
  GMenuModel *menu;
  GMenu *recent;
  SpelchCutList *cuts;
  SpelchFirstHints *first_hints;
  SpelchSideView *side_view;
  SpelchRemark *remark;
  SpelchDepthsRow *depths;
  SpelchBitDrawer *drawer;
  SpelchPlanPanel *plan;
  SpelchVerdictLine *verdicts;
  SpelchColumns *columns;
  GtkStack *pages;
  SpelchCutEditor *cut_editor;
  SpelchPartEditor *part_editor;
  GtkToggleButton *plan_button;
  SpelchNothingCut *nothing_cut;
  SpelchPartActions part_actions;
  SpelchCutDone *cut_done;
};

G_DEFINE_FINAL_TYPE (SpelchBenchWindow, spelch_bench_window, GTK_TYPE_APPLICATION_WINDOW)

SpelchSession *
spelch_bench_window_get_session (SpelchBenchWindow *self)
{
  return self->session;
}

SpelchRecovery *
spelch_bench_window_get_recovery (SpelchBenchWindow *self)
{
  return self->recovery;
}

/* ---- Bars ---- */

void
spelch_bench_window_complain (SpelchBenchWindow *self, const char *sentence)
{
  gtk_label_set_text (self->error_words, sentence == NULL ? "" : sentence);
  gtk_info_bar_set_revealed (self->error_bar, sentence != NULL);
}

static void
error_answered (SpelchBenchWindow *self)
{
  spelch_bench_window_complain (self, NULL);
}

static void
offer_next (SpelchBenchWindow *self)
{
  if (self->left_behind == NULL || self->left_behind->len == 0)
    return;
  const SpelchLeftBehind *left = g_ptr_array_index (self->left_behind, 0);
  g_autofree char *words = g_strdup_printf (
      _ ("Spelch ended with unsaved changes to “%s”. Take them up again?"), left->part->name);
  spelch_offer_ask (self->recovery_offer, words, _ ("Take them up"), _ ("Throw them away"));
}

void
spelch_bench_window_offer_recovery (SpelchBenchWindow *self, GPtrArray *left_behind)
{
  self->left_behind = g_ptr_array_ref (left_behind);
  offer_next (self);
}

static void
recovery_answered (SpelchBenchWindow *self, guint answer, SpelchOffer *offer)
{
  if (self->left_behind == NULL || self->left_behind->len == 0)
    return;
  g_autoptr (SpelchLeftBehind) left = g_ptr_array_steal_index (self->left_behind, 0);
  if (answer == SPELCH_ANSWER_YES)
    spelch_files_take_up (self, g_steal_pointer (&left));
  else if (answer == SPELCH_ANSWER_NO)
    spelch_left_behind_throw_away (left);
  offer_next (self); /* what is closed without an answer is asked about at the next start */
}

/* ---- Actions ---- */

static void
do_undo (GSimpleAction *action, GVariant *parameter, gpointer data)
{
  spelch_session_undo (SPELCH_BENCH_WINDOW (data)->session);
}

static void
do_redo (GSimpleAction *action, GVariant *parameter, gpointer data)
{
  spelch_session_redo (SPELCH_BENCH_WINDOW (data)->session);
}

static void
do_open (GSimpleAction *action, GVariant *parameter, gpointer data)
{
  spelch_files_choose_and_open (data);
}

static void
open_new (SpelchBenchWindow *self, gpointer data)
{
  g_autoptr (SpelchPart) part = spelch_part_actions_new_part (&self->part_actions);
  spelch_session_open (self->session, part, NULL, NULL, false);
  spelch_bench_window_complain (self, NULL);
}

static void
do_new_part (GSimpleAction *action, GVariant *parameter, gpointer data)
{
  spelch_files_ask (data, open_new, NULL, NULL);
}

static void
do_save (GSimpleAction *action, GVariant *parameter, gpointer data)
{
  spelch_files_save (data);
}

static void
do_save_as (GSimpleAction *action, GVariant *parameter, gpointer data)
{
  spelch_files_save_as (data);
}

static void
do_show_cut (GSimpleAction *action, GVariant *state, gpointer data)
{
  SpelchBenchWindow *self = data;
  g_simple_action_set_state (action, state);
  spelch_session_show_cut (self->session, (guint)g_variant_get_int32 (state));
}

static void
do_new_window (GSimpleAction *action, GVariant *parameter, gpointer data)
{
  SpelchBenchWindow *self = data;
  GtkApplication *application = gtk_window_get_application (data);
  g_autoptr (SpelchPart) part = spelch_part_actions_new_part (&self->part_actions);
  SpelchBenchWindow *window = spelch_application_add_window (SPELCH_APPLICATION (application), part);
  gtk_window_present (GTK_WINDOW (window));
}

static void
do_close (GSimpleAction *action, GVariant *parameter, gpointer data)
{
  gtk_window_close (data);
}

static const GActionEntry ACTIONS[] = {
  { .name = "undo", .activate = do_undo },
  { .name = "redo", .activate = do_redo },
  { .name = "open", .activate = do_open },
  { .name = "new-part", .activate = do_new_part },
  { .name = "save", .activate = do_save },
  { .name = "save-as", .activate = do_save_as },
  { .name = "cut", .parameter_type = "i", .state = "0", .change_state = do_show_cut },
  { .name = "new-window", .activate = do_new_window },
  { .name = "close", .activate = do_close },
};

static void
set_state (SpelchBenchWindow *self, const char *name, GVariant *state)
{
  GAction *action = g_action_map_lookup_action (G_ACTION_MAP (self), name);
  g_simple_action_set_state (G_SIMPLE_ACTION (action), state);
}

/* ---- Following the session ---- */

static void
show_history (SpelchBenchWindow *self)
{
  spelch_undo_buttons_follow (G_ACTION_MAP (self), self->undo, self->redo,
                              spelch_session_undo_name (self->session),
                              spelch_session_redo_name (self->session));
}

static void
show_names (SpelchBenchWindow *self)
{
  const SpelchPart *part = spelch_session_get_part (self->session);
  const SpelchCut *cut = spelch_session_get_cut (self->session);
  if (part == NULL)
    return;
  bool unsaved = spelch_session_is_unsaved (self->session);
  g_autofree char *name = g_strdup_printf ("%s%s", part->name, unsaved ? " •" : "");
  g_autofree char *title = g_strdup_printf (_ ("%s – Spelch"), name);
  gtk_label_set_text (self->part_name, name);
  /* The bar would shorten any name although there is room. */
  double room = PART_NAME_ROOM / spelch_text_pixels (GTK_WIDGET (self->part_name));
  bool is_long = (double)g_utf8_strlen (name, -1) > room;
  gtk_label_set_ellipsize (self->part_name, is_long ? PANGO_ELLIPSIZE_END : PANGO_ELLIPSIZE_NONE);
  gtk_window_set_title (GTK_WINDOW (self), title);
  gtk_menu_button_set_label (self->cut_menu, cut == NULL ? _ ("no cuts") : cut->name);
  set_state (self, "cut", g_variant_new_int32 ((gint32)spelch_session_get_cut_index (self->session)));
}

static void
fill_cut_menu (SpelchBenchWindow *self)
{
  const SpelchPart *part = spelch_session_get_part (self->session);
  g_autoptr (GMenu) menu = g_menu_new ();
  for (guint i = 0; part != NULL && i < part->n_cuts; i++)
    {
      g_autoptr (GMenuItem) item = g_menu_item_new (part->cuts[i].name, NULL);
      g_menu_item_set_action_and_target (item, "win.cut", "i", (gint32)i);
      g_menu_append_item (menu, item);
    }
  spelch_later_menu_set (self->cut_menu, G_MENU_MODEL (menu));
}

static void
show_whether_planned (SpelchBenchWindow *self)
{
  bool planned = spelch_session_get_plan (self->session) != NULL;
  spelch_nothing_cut_show (self->nothing_cut, spelch_session_get_part (self->session)->n_cuts > 0);
  gtk_widget_set_visible (GTK_WIDGET (self->nothing_cut), !planned);
  gtk_widget_set_visible (GTK_WIDGET (self->drawer), planned);
  gtk_widget_set_visible (GTK_WIDGET (self->depths), planned);
}

static void
session_changed (SpelchSession *session, guint change, SpelchBenchWindow *self)
{
  if (change & (SPELCH_CHANGE_HISTORY | SPELCH_CHANGE_CUT))
    {
      show_history (self);
      show_names (self);
    }
  if (change & (SPELCH_CHANGE_OPENED | SPELCH_CHANGE_HISTORY))
    fill_cut_menu (self);
  /* Cuts neither come nor go in a drag. */
  bool dragged = spelch_session_in_gesture (session) && !(change & SPELCH_CHANGE_CUT);
  if (!dragged && change & (SPELCH_CHANGE_PART | SPELCH_CHANGE_CUT))
    spelch_part_actions_follow (&self->part_actions, G_ACTION_MAP (self));
  if (!dragged && change & (SPELCH_CHANGE_PART | SPELCH_CHANGE_CUT | SPELCH_CHANGE_BITS)
      && spelch_session_get_part (session) != NULL)
    show_whether_planned (self);
}

/* The verdicts stand over the drawing while the plan isn't in sight; a form is drawn over a narrow window. */
static void
pages_turned (SpelchBenchWindow *self)
{
  gboolean folded = FALSE;
  if (self->columns == NULL || self->pages == NULL)
    return; /* the window is being built, or taken apart */
  g_object_get (self->columns, "right-folded", &folded, NULL);
  bool editing = g_strcmp0 (gtk_stack_get_visible_child_name (self->pages), "plan") != 0;
  spelch_verdict_line_set_wanted (self->verdicts, folded || editing);
  if (editing && folded)
    gtk_toggle_button_set_active (self->plan_button, TRUE);
}

static void
look_changed (SpelchBenchWindow *self)
{
  SpelchLook look = spelch_appearance_get_look (self->appearance);
  spelch_side_view_set_look (self->side_view, look);
  spelch_cut_list_set_look (self->cuts, look);
  spelch_cut_editor_set_look (self->cut_editor, look);
  spelch_bit_drawer_set_look (self->drawer, look);
}

static void
bit_dropped (SpelchBenchWindow *self, const char *id, SpelchSideView *view)
{
  spelch_bit_drawer_accept (self->drawer, id);
}

static void
bit_remarked (SpelchBenchWindow *self, const char *words, SpelchBitDrawer *drawer)
{
  if (self->remark != NULL) /* else the window is closing */
    spelch_remark_say (self->remark, words, false);
}

/* ---- Opening and closing ---- */

bool
spelch_bench_window_is_untouched (SpelchBenchWindow *self)
{
  return spelch_session_get_file (self->session) == NULL && !spelch_session_is_unsaved (self->session);
}

void
spelch_bench_window_open_demo (SpelchBenchWindow *self)
{
  g_autoptr (SpelchPart) demo = spelch_shop_demo ();
  spelch_session_open (self->session, demo, NULL, NULL, false);
  spelch_first_hints_begin (self->first_hints);
  spelch_session_settle (self->session); /* so that the first frame shows everything in its place */
}

static void
close_now (SpelchBenchWindow *self, gpointer data)
{
  self->closing = true;
  gtk_window_close (GTK_WINDOW (self));
}

void
spelch_bench_window_close_unasked (SpelchBenchWindow *self)
{
  if (spelch_session_is_unsaved (self->session))
    spelch_recovery_forget (self->recovery);
  close_now (self, NULL);
}

static gboolean
spelch_bench_window_close_request (GtkWindow *window)
{
  SpelchBenchWindow *self = SPELCH_BENCH_WINDOW (window);
  if (!self->closing && spelch_session_is_unsaved (self->session))
    {
      spelch_files_ask (self, close_now, NULL, NULL);
      return TRUE;
    }
  return GTK_WINDOW_CLASS (spelch_bench_window_parent_class)->close_request (window);
}

/* ---- Object ---- */

static void
spelch_bench_window_realize (GtkWidget *widget)
{
  GTK_WIDGET_CLASS (spelch_bench_window_parent_class)->realize (widget);
  spelch_frame_meter_attach (widget, "");
}

static void
spelch_bench_window_dispose (GObject *object)
{
  SpelchBenchWindow *self = SPELCH_BENCH_WINDOW (object);
  if (self->appearance != NULL)
    g_signal_handlers_disconnect_by_data (self->appearance, self);
  if (self->preferred != NULL)
    g_signal_handlers_disconnect_by_data (self->preferred, self);
  spelch_template_empty_menus (GTK_WIDGET (object));
  gtk_widget_dispose_template (GTK_WIDGET (object), SPELCH_TYPE_BENCH_WINDOW);
  g_clear_object (&self->cut_done);
  g_clear_object (&self->recovery);
  g_clear_object (&self->quantities);
  g_clear_object (&self->session);
  g_clear_object (&self->appearance);
  g_clear_object (&self->preferred);
  g_clear_pointer (&self->left_behind, g_ptr_array_unref);
  G_OBJECT_CLASS (spelch_bench_window_parent_class)->dispose (object);
}

static void
bind_children (GtkWidgetClass *widget_class)
{
  gtk_widget_class_bind_template_child (widget_class, SpelchBenchWindow, part_name);
  gtk_widget_class_bind_template_child (widget_class, SpelchBenchWindow, cut_menu);
  gtk_widget_class_bind_template_child (widget_class, SpelchBenchWindow, undo);
  gtk_widget_class_bind_template_child (widget_class, SpelchBenchWindow, redo);
  gtk_widget_class_bind_template_child (widget_class, SpelchBenchWindow, error_bar);
  gtk_widget_class_bind_template_child (widget_class, SpelchBenchWindow, error_words);
  gtk_widget_class_bind_template_child (widget_class, SpelchBenchWindow, recovery_offer);
  gtk_widget_class_bind_template_child (widget_class, SpelchBenchWindow, reload_offer);
  gtk_widget_class_bind_template_child (widget_class, SpelchBenchWindow, copy_offer);
  gtk_widget_class_bind_template_child (widget_class, SpelchBenchWindow, menu_button);
  gtk_widget_class_bind_template_child (widget_class, SpelchBenchWindow, menu);
  gtk_widget_class_bind_template_child (widget_class, SpelchBenchWindow, recent);
  gtk_widget_class_bind_template_child (widget_class, SpelchBenchWindow, cuts);
  gtk_widget_class_bind_template_child (widget_class, SpelchBenchWindow, first_hints);
  gtk_widget_class_bind_template_child (widget_class, SpelchBenchWindow, side_view);
  gtk_widget_class_bind_template_child (widget_class, SpelchBenchWindow, remark);
  gtk_widget_class_bind_template_child (widget_class, SpelchBenchWindow, depths);
  gtk_widget_class_bind_template_child (widget_class, SpelchBenchWindow, drawer);
  gtk_widget_class_bind_template_child (widget_class, SpelchBenchWindow, plan);
  gtk_widget_class_bind_template_child (widget_class, SpelchBenchWindow, verdicts);
  gtk_widget_class_bind_template_child (widget_class, SpelchBenchWindow, columns);
  gtk_widget_class_bind_template_child (widget_class, SpelchBenchWindow, pages);
  gtk_widget_class_bind_template_child (widget_class, SpelchBenchWindow, cut_editor);
  gtk_widget_class_bind_template_child (widget_class, SpelchBenchWindow, part_editor);
  gtk_widget_class_bind_template_child (widget_class, SpelchBenchWindow, plan_button);
  gtk_widget_class_bind_template_child (widget_class, SpelchBenchWindow, nothing_cut);
  gtk_widget_class_bind_template_callback (widget_class, error_answered);
  gtk_widget_class_bind_template_callback (widget_class, recovery_answered);
  gtk_widget_class_bind_template_callback (widget_class, bit_dropped);
  gtk_widget_class_bind_template_callback (widget_class, bit_remarked);
  gtk_widget_class_bind_template_callback (widget_class, pages_turned);
}

static void
spelch_bench_window_class_init (SpelchBenchWindowClass *klass)
{
  GtkWidgetClass *widget_class = GTK_WIDGET_CLASS (klass);
  G_OBJECT_CLASS (klass)->dispose = spelch_bench_window_dispose;
  widget_class->realize = spelch_bench_window_realize;
  GTK_WINDOW_CLASS (klass)->close_request = spelch_bench_window_close_request;
  g_type_ensure (SPELCH_TYPE_COLUMNS);
  g_type_ensure (SPELCH_TYPE_CUT_EDITOR);
  g_type_ensure (SPELCH_TYPE_CUT_LIST);
  g_type_ensure (SPELCH_TYPE_FIRST_HINTS);
  g_type_ensure (SPELCH_TYPE_NOTHING_CUT);
  g_type_ensure (SPELCH_TYPE_OFFER);
  g_type_ensure (SPELCH_TYPE_PART_EDITOR);
  g_type_ensure (SPELCH_TYPE_SIDE_VIEW);
  g_type_ensure (SPELCH_TYPE_REMARK);
  g_type_ensure (SPELCH_TYPE_DEPTHS_ROW);
  g_type_ensure (SPELCH_TYPE_BIT_DRAWER);
  g_type_ensure (SPELCH_TYPE_PLAN_PANEL);
  g_type_ensure (SPELCH_TYPE_VERDICT_LINE);
  gtk_widget_class_set_template_from_resource (widget_class, "/org/spelch/Spelch/ui/bench-window.ui");
  bind_children (widget_class);
}

static void
spelch_bench_window_init (SpelchBenchWindow *self)
{
  gtk_widget_init_template (GTK_WIDGET (self));
  spelch_later_menu_set (self->menu_button, self->menu);
  g_action_map_add_action_entries (G_ACTION_MAP (self), ACTIONS, G_N_ELEMENTS (ACTIONS), self);
  self->session = spelch_session_new (spelch_shop_constants ());
}

static void
show_preferences (SpelchBenchWindow *self)
{
  SpelchNumbers numbers = spelch_preferences_numbers (spelch_preferred_get (self->preferred));
  spelch_session_set_numbers (self->session, &numbers);
}

/* The quantities first: the other views read them. The drawing asks how high its corner is. */
static void
connect_views (SpelchBenchWindow *self, SpelchShelves *shelves)
{
  self->quantities = spelch_quantities_new (self->session);
  SpelchSettingPanel *setting = spelch_setting_panel_new (self->session, shelves);
  spelch_side_view_set_corner (self->side_view, GTK_WIDGET (setting));
  spelch_side_view_set_session (self->side_view, self->session, self->quantities);
  spelch_first_hints_set_session (self->first_hints, self->session, self->preferred,
                                  spelch_setting_panel_get_own_board (setting));
  spelch_depths_row_set_session (self->depths, self->session, self->quantities, self->remark);
  spelch_cut_list_set_session (self->cuts, self->session);
  spelch_bit_drawer_set_session (self->drawer, self->session);
  spelch_plan_panel_set_session (self->plan, self->session, spelch_shelves_get (shelves, SPELCH_LIST_LOG));
  spelch_verdict_line_set_session (self->verdicts, self->session);
  spelch_cut_editor_set_session (self->cut_editor, self->session);
  spelch_part_editor_set_session (self->part_editor, self->session);
  g_signal_connect_object (self->session, "changed", G_CALLBACK (session_changed), self, 0);
}

static void
add_part_actions (SpelchBenchWindow *self)
{
  self->part_actions = (SpelchPartActions){ .session = self->session,
                                            .pages = self->pages,
                                            .cut_editor = self->cut_editor,
                                            .part_editor = self->part_editor,
                                            .preferred = self->preferred,
                                            .list = GTK_WIDGET (self->cuts) };
  spelch_part_actions_add (&self->part_actions, G_ACTION_MAP (self));
}

SpelchBenchWindow *
spelch_bench_window_new (GtkApplication *application, SpelchAppearance *appearance, SpelchShelves *shelves,
                         SpelchPreferred *preferred, const char *state_folder)
{
  SpelchBenchWindow *self = g_object_new (SPELCH_TYPE_BENCH_WINDOW, "application", application, NULL);
  g_autoptr (GMenuModel) recent = spelch_recent_menu ();
  self->appearance = g_object_ref (appearance);
  self->preferred = g_object_ref (preferred);
  self->recovery = spelch_recovery_new (self->session, state_folder);
  spelch_copy_offer_attach (self->copy_offer, self->session, shelves);
  spelch_reload_offer_attach (self->reload_offer, self);
  gtk_window_set_default_size (GTK_WINDOW (self), WIDTH, HEIGHT);
  g_menu_append_section (self->recent, NULL, recent);
  show_preferences (self);
  spelch_shelves_add_session (shelves, self->session);
  spelch_session_set_drawer (self->session, spelch_shelves_get (shelves, SPELCH_LIST_BITS));
  self->cut_done = spelch_cut_done_new (GTK_APPLICATION_WINDOW (self), self->session, shelves);
  spelch_side_window_add_action (GTK_APPLICATION_WINDOW (self), self->session, appearance);
  spelch_motion_window_add_action (GTK_APPLICATION_WINDOW (self), self->session, appearance);
  spelch_sheet_window_add_action (GTK_APPLICATION_WINDOW (self), self->session);
  add_part_actions (self);
  connect_views (self, shelves);
  spelch_files_take_drops (self);
  g_signal_connect_swapped (self->recovery, "troubled", G_CALLBACK (spelch_bench_window_complain), self);
  g_signal_connect_swapped (preferred, "changed", G_CALLBACK (show_preferences), self);
  g_signal_connect_swapped (preferred, "said", G_CALLBACK (spelch_bench_window_complain), self);
  g_signal_connect_swapped (appearance, "changed", G_CALLBACK (look_changed), self);
  look_changed (self);
  return self;
}
