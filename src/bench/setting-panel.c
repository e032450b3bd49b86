/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "bench/setting-panel.h"
#include "bench/edits.h"
#include "bench/later-menu.h"
#include "bench/live-text.h"
#include "bench/mark-words.h"
#include "bench/shelf-kind.h"
#include "bench/taking.h"
#include "bench/template.h"

#include <glib/gi18n-lib.h>
#include <math.h>

#define BETWEEN    3   /* rows */
#define BESIDE     16  /* things in a row */
#define PASS_SHARE 0.9 /* of the width that as many letters of average width have */

struct _SpelchSettingPanel
{
  GtkWidget parent_instance;
  SpelchLiveText *setting;
  GtkWidget *menus;
  SpelchLiveText *pass;
  GtkWidget *turn;
  GtkMenuButton *boards;
  GtkWidget *own_board;
  GtkMenuButton *machines;
  SpelchLiveText *other_way;
  SpelchSession *session;
  SpelchShelves *shelves;
};

G_DEFINE_FINAL_TYPE (SpelchSettingPanel, spelch_setting_panel, GTK_TYPE_WIDGET)

/* ---- Actions ---- */

static void
turn_over (GtkWidget *widget, const char *action, GVariant *parameter)
{
  SpelchSettingPanel *self = SPELCH_SETTING_PANEL (widget);
  SpelchPart *part = spelch_session_get_part (self->session);
  guint cut = spelch_session_get_cut_index (self->session);
  if (spelch_session_get_cut (self->session) != NULL)
    spelch_session_edit (self->session, spelch_edit_turn_over (part, cut), _ ("turn the board over"), NULL);
}

static void
take (GtkWidget *widget, SpelchListKind kind, GVariant *id)
{
  SpelchSettingPanel *self = SPELCH_SETTING_PANEL (widget);
  SpelchShelf *shelf = spelch_shelves_get (self->shelves, kind);
  spelch_take (self->session, kind, spelch_shelf_find (shelf, g_variant_get_string (id, NULL)));
}

static void
take_machine (GtkWidget *widget, const char *action, GVariant *parameter)
{
  take (widget, SPELCH_LIST_MACHINES, parameter);
}

static void
take_board (GtkWidget *widget, const char *action, GVariant *parameter)
{
  take (widget, SPELCH_LIST_BOARDS, parameter);
}

/* ---- Menus ---- */

/* What isn't retired on the shelf, and the way to it. */
static void
fill_menu (SpelchSettingPanel *self, SpelchListKind kind, GtkMenuButton *button, const char *action,
           const char *own, const char *all)
{
  const SpelchShelfKind *description = spelch_shelf_kind (kind);
  SpelchShelf *shelf = spelch_shelves_get (self->shelves, kind);
  g_autoptr (GMenu) menu = g_menu_new (), choices = g_menu_new (), further = g_menu_new ();
  for (guint i = 0; i < spelch_shelf_count (shelf); i++)
    {
      gconstpointer entry = spelch_shelf_get_nth (shelf, i);
      if (spelch_shelf_item_is_retired (description, entry))
        continue;
      g_autoptr (GMenuItem) item = g_menu_item_new (spelch_shelf_item_name (entry), NULL);
      g_menu_item_set_action_and_target (item, action, "s", (const char *)entry);
      g_menu_append_item (choices, item);
    }
  g_autoptr (GMenuItem) begin = g_menu_item_new (own, NULL), way = g_menu_item_new (all, NULL);
  g_menu_item_set_action_and_target (begin, "app.own", "s", spelch_list_member (kind));
  g_menu_item_set_action_and_target (way, "app.shelf", "s", spelch_list_member (kind));
  g_menu_append_item (further, begin);
  g_menu_append_item (further, way);
  g_menu_append_section (menu, NULL, G_MENU_MODEL (choices));
  g_menu_append_section (menu, NULL, G_MENU_MODEL (further));
  spelch_later_menu_set (button, G_MENU_MODEL (menu));
}

static void
fill_menus (SpelchSettingPanel *self)
{
  fill_menu (self, SPELCH_LIST_MACHINES, self->machines, "setting.machine", _ ("Your own machine…"),
             _ ("All machines…"));
  fill_menu (self, SPELCH_LIST_BOARDS, self->boards, "setting.board", _ ("Your own board…"),
             _ ("All boards…"));
}

/* ---- Following ---- */

static int
grade_of (const SpelchPlan *plan, SpelchSide side)
{
  const SpelchEdge *edge = spelch_plan_worst (plan, side);
  return edge == NULL ? 0 : edge->grade;
}

/* The side to tell of: the face that will be seen; of two alike, the worse. */
static SpelchSide
telling_side (const SpelchPlan *plan, const SpelchCut *cut)
{
  bool near_seen = spelch_cut_sees (cut, plan->near);
  bool far_seen = spelch_cut_sees (cut, spelch_face_other (plan->near));
  if (near_seen != far_seen)
    return near_seen ? SPELCH_SIDE_MOTOR : SPELCH_SIDE_FAR;
  return grade_of (plan, SPELCH_SIDE_MOTOR) >= grade_of (plan, SPELCH_SIDE_FAR) ? SPELCH_SIDE_MOTOR
                                                                                : SPELCH_SIDE_FAR;
}

static char *
other_way_words (SpelchSettingPanel *self)
{
  SpelchPlan plan;
  SpelchCut cut;
  if (!spelch_session_plan_other_way (self->session, &plan, &cut))
    return g_strdup (_ ("a blind cut is made from its own face; Change says which"));
  if (plan.verdict == SPELCH_VERDICT_DO_NOT_CUT)
    return g_strdup (_ ("other way up: do not cut"));
  const SpelchPart *part = spelch_session_get_part (self->session);
  SpelchSide side = telling_side (&plan, &cut);
  const char *grade = spelch_mark_grade (part, &plan, side);
  if (grade_of (&plan, SPELCH_SIDE_MOTOR) == grade_of (&plan, SPELCH_SIDE_FAR))
    return g_strdup_printf (_ ("other way up: both %s"), grade);
  g_autofree char *face = spelch_mark_face (&plan, &cut, side);
  return g_strdup_printf (_ ("other way up: %s %s"), face, grade);
}

static void
show_pass (SpelchSettingPanel *self, const SpelchPlan *plan)
{
  guint shown = spelch_session_get_shown_pass (self->session);
  g_autofree char *pass = plan->n_passes == 0 ? g_strdup (_ ("No pass"))
                                              : g_strdup_printf (_ ("Pass %u of %u"), shown, plan->n_passes);
  g_autofree char *other = other_way_words (self);
  guint chars = (guint)ceil (PASS_SHARE * (double)g_utf8_strlen (pass, -1)), had;
  g_object_get (self->pass, "width-chars", &had, NULL);
  if (had != chars)
    g_object_set (self->pass, "width-chars", chars, NULL);
  spelch_live_text_set_text (self->pass, pass);
  spelch_live_text_set_text (self->other_way, other);
  gtk_widget_action_set_enabled (GTK_WIDGET (self), "setting.turn-over", plan->through);
}

static void
forget_heights (SpelchSettingPanel *self)
{
  spelch_live_text_forget (self->setting);
  spelch_live_text_forget (self->pass);
  spelch_live_text_forget (self->other_way);
}

static void
session_changed (SpelchSession *session, guint change, SpelchSettingPanel *self)
{
  const SpelchPart *part = spelch_session_get_part (session);
  const SpelchPlan *plan = spelch_session_get_plan (session);
  if (part == NULL)
    return;
  g_autofree char *setting = spelch_words_setting (part, spelch_session_get_numbers (session));
  bool other = !g_str_equal (spelch_live_text_get_text (self->setting), setting);
  spelch_live_text_set_text (self->setting, setting);
  /* The drawing asks for heights at widths it hasn't yet: what was measured of the sentence before is void.
   */
  if (other && !spelch_session_in_gesture (session))
    forget_heights (self);
  gtk_widget_set_visible (GTK_WIDGET (self->pass), plan != NULL);
  gtk_widget_set_visible (self->turn, plan != NULL);
  if (plan != NULL)
    show_pass (self, plan);
  if (change & (SPELCH_CHANGE_CUT | SPELCH_CHANGE_OPENED))
    spelch_live_text_settle (self->setting);
}

/* ---- Layout: the sentence, and below it the rest, in as few rows as there is room for ---- */

#define N_BELOW 3

typedef struct
{
  int x, y, width, height;
} SpelchPlace;

static int
wanted (GtkWidget *child, GtkOrientation orientation, int for_size)
{
  int natural = 0;
  gtk_widget_measure (child, orientation, for_size, NULL, &natural, NULL, NULL);
  return natural;
}

static void
below (SpelchSettingPanel *self, GtkWidget *children[N_BELOW])
{
  children[0] = self->menus;
  children[1] = GTK_WIDGET (self->pass);
  children[2] = self->turn;
}

/* In a row each stands at half its height. */
static void
centre (SpelchPlace *places, int from, int to, int row)
{
  for (int i = from; i < to; i++)
    places[i].y += (row - places[i].height) / 2;
}

/* Where what stands below the sentence goes, counted from the sentence's lower left; gives the height. */
static int
arrange (SpelchSettingPanel *self, int width, SpelchPlace places[N_BELOW])
{
  GtkWidget *children[N_BELOW];
  int x = 0, y = BETWEEN, row = 0, first = 0;
  below (self, children);
  for (int i = 0; i < N_BELOW; i++)
    {
      int own = wanted (children[i], GTK_ORIENTATION_HORIZONTAL, -1);
      if (i > first && x + own > width)
        {
          centre (places, first, i, row);
          y += row + BETWEEN;
          x = row = 0;
          first = i;
        }
      places[i] = (SpelchPlace){ x, y, own, wanted (children[i], GTK_ORIENTATION_VERTICAL, -1) };
      row = MAX (row, places[i].height);
      x += own + BESIDE;
    }
  centre (places, first, N_BELOW, row);
  places[N_BELOW - 1].width = width - places[N_BELOW - 1].x;
  return y + row;
}

static void
spelch_setting_panel_measure (GtkWidget *widget, GtkOrientation orientation, int for_size, int *minimum,
                              int *natural, int *minimum_baseline, int *natural_baseline)
{
  SpelchSettingPanel *self = SPELCH_SETTING_PANEL (widget);
  GtkWidget *children[N_BELOW];
  SpelchPlace places[N_BELOW];
  int least = wanted (GTK_WIDGET (self->setting), GTK_ORIENTATION_HORIZONTAL, -1);
  below (self, children);
  for (int i = 0; i < N_BELOW; i++)
    least = MAX (least, wanted (children[i], GTK_ORIENTATION_HORIZONTAL, -1));
  if (orientation == GTK_ORIENTATION_VERTICAL)
    {
      int width = MAX (for_size, least);
      least = wanted (GTK_WIDGET (self->setting), GTK_ORIENTATION_VERTICAL, width)
              + arrange (self, width, places);
    }
  *minimum = *natural = least;
}

static void
spelch_setting_panel_size_allocate (GtkWidget *widget, int width, int height, int baseline)
{
  SpelchSettingPanel *self = SPELCH_SETTING_PANEL (widget);
  GtkWidget *children[N_BELOW];
  SpelchPlace places[N_BELOW];
  bool mirrored = gtk_widget_get_direction (widget) == GTK_TEXT_DIR_RTL;
  int sentence = wanted (GTK_WIDGET (self->setting), GTK_ORIENTATION_VERTICAL, width);
  gtk_widget_size_allocate (GTK_WIDGET (self->setting), &(GtkAllocation){ 0, 0, width, sentence }, -1);
  below (self, children);
  arrange (self, width, places);
  for (int i = 0; i < N_BELOW; i++)
    {
      int x = mirrored ? width - places[i].x - places[i].width : places[i].x;
      gtk_widget_size_allocate (
          children[i], &(GtkAllocation){ x, sentence + places[i].y, places[i].width, places[i].height }, -1);
    }
}

static GtkSizeRequestMode
spelch_setting_panel_get_request_mode (GtkWidget *widget)
{
  return GTK_SIZE_REQUEST_HEIGHT_FOR_WIDTH;
}

/* ---- Object ---- */

static void
spelch_setting_panel_dispose (GObject *object)
{
  g_clear_object (&SPELCH_SETTING_PANEL (object)->shelves);
  spelch_template_dispose (GTK_WIDGET (object), SPELCH_TYPE_SETTING_PANEL);
  G_OBJECT_CLASS (spelch_setting_panel_parent_class)->dispose (object);
}

static void
spelch_setting_panel_class_init (SpelchSettingPanelClass *klass)
{
  GtkWidgetClass *widget_class = GTK_WIDGET_CLASS (klass);
  G_OBJECT_CLASS (klass)->dispose = spelch_setting_panel_dispose;
  widget_class->measure = spelch_setting_panel_measure;
  widget_class->size_allocate = spelch_setting_panel_size_allocate;
  widget_class->get_request_mode = spelch_setting_panel_get_request_mode;
  g_type_ensure (SPELCH_TYPE_LIVE_TEXT);
  gtk_widget_class_set_template_from_resource (widget_class, "/org/spelch/Spelch/ui/setting-panel.ui");
  gtk_widget_class_bind_template_child (widget_class, SpelchSettingPanel, setting);
  gtk_widget_class_bind_template_child (widget_class, SpelchSettingPanel, menus);
  gtk_widget_class_bind_template_child (widget_class, SpelchSettingPanel, pass);
  gtk_widget_class_bind_template_child (widget_class, SpelchSettingPanel, turn);
  gtk_widget_class_bind_template_child (widget_class, SpelchSettingPanel, boards);
  gtk_widget_class_bind_template_child (widget_class, SpelchSettingPanel, own_board);
  gtk_widget_class_bind_template_child (widget_class, SpelchSettingPanel, machines);
  gtk_widget_class_bind_template_child (widget_class, SpelchSettingPanel, other_way);
  gtk_widget_class_install_action (widget_class, "setting.turn-over", NULL, turn_over);
  gtk_widget_class_install_action (widget_class, "setting.machine", "s", take_machine);
  gtk_widget_class_install_action (widget_class, "setting.board", "s", take_board);
  gtk_widget_class_set_css_name (widget_class, "settingpanel");
  gtk_widget_class_set_accessible_role (widget_class, GTK_ACCESSIBLE_ROLE_GROUP);
}

static void
spelch_setting_panel_init (SpelchSettingPanel *self)
{
  gtk_widget_init_template (GTK_WIDGET (self));
}

SpelchSettingPanel *
spelch_setting_panel_new (SpelchSession *session, SpelchShelves *shelves)
{
  SpelchSettingPanel *self = g_object_new (SPELCH_TYPE_SETTING_PANEL, NULL);
  self->session = session;
  self->shelves = g_object_ref (shelves);
  fill_menus (self);
  for (int kind = SPELCH_LIST_BOARDS; kind <= SPELCH_LIST_MACHINES; kind++)
    g_signal_connect_object (spelch_shelves_get (shelves, (SpelchListKind)kind), "changed",
                             G_CALLBACK (fill_menus), self, G_CONNECT_SWAPPED);
  g_signal_connect_object (session, "changed", G_CALLBACK (session_changed), self, 0);
  session_changed (session, SPELCH_CHANGE_OPENED, self);
  return self;
}

GtkWidget *
spelch_setting_panel_get_own_board (SpelchSettingPanel *self)
{
  return self->own_board;
}
