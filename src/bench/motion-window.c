/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "bench/motion-window.h"
#include "bench/escape.h"
#include "bench/frame-meter.h"
#include "bench/later-menu.h"
#include "bench/motion-film.h"
#include "bench/motion-view.h"
#include "bench/one-window.h"
#include "bench/telling.h"
#include "plan/words-motion.h"

#include <glib/gi18n-lib.h>
#include <math.h>

#define WIDTH       1100
#define HEIGHT      820
#define SPEED_WIDE  240
#define PASS_WIDE   210
#define ICON_WIDE   34
#define ABOUT_CHARS 60
#define FOLLOW_EACH 0.1 /* of a tooth that the slider lags behind while it plays, at most */

struct _SpelchMotionWindow
{
  GtkApplicationWindow parent_instance;
  SpelchSession *session;
  SpelchAppearance *appearance;
  SpelchMotionView *view;
  SpelchMotionFilm *film;
  GtkButton *play;
  GtkWidget *back, *on;
  GtkRange *place; /* in teeth */
  GtkLabel *tooth;
  GtkDropDown *passes;
  GtkRange *speed; /* tenth power of real time */
  GtkLabel *how_slow;
  GtkLabel *about;
  GtkWidget *controls; /* all that needs something that moves */
  GtkWidget *nothing;
  bool showing;    /* the controls follow the view now, not the other way round */
  double marked_s; /* of a tooth, for which the speed has its marks */
};

G_DEFINE_FINAL_TYPE (SpelchMotionWindow, spelch_motion_window, GTK_TYPE_APPLICATION_WINDOW)

/* ---- What the controls show ---- */

static void
show_place (SpelchMotionWindow *self, const SpelchMotionPass *pass, const SpelchMotionClock *clock)
{
  double tooth = spelch_motion_tooth (pass), teeth = spelch_motion_length (pass) / tooth,
         at = clock->turned / tooth;
  GtkAdjustment *adjustment = gtk_range_get_adjustment (self->place);
  if (gtk_adjustment_get_upper (adjustment) != teeth)
    gtk_range_set_range (self->place, 0, teeth);
  bool lags = fabs (gtk_range_get_value (self->place) - at) >= FOLLOW_EACH;
  if (!clock->playing || lags)
    gtk_range_set_value (self->place, at);
  guint n = (guint)MIN (floor (at + 1e-6) + 1, teeth);
  guint turn = (guint)floor ((n - 1) * tooth / (2 * G_PI) + 1e-6) + 1;
  /* Translators: "Tooth 5 of 8, turn 3": each time that an edge goes through the wood. */
  g_autofree char *words = g_strdup_printf (_ ("Tooth %u of %.0f, turn %u"), n, teeth, turn);
  if (g_strcmp0 (words, gtk_label_get_text (self->tooth)) != 0)
    gtk_label_set_text (self->tooth, words);
}

/* Marks at one tooth a second, and where it begins to blur. */
static void
show_speed_marks (SpelchMotionWindow *self, double tooth_s)
{
  GtkScale *scale = GTK_SCALE (self->speed);
  double one = log10 (fmin (tooth_s, 1)), slowest = fmin (log10 (SPELCH_CLOCK_SLOWEST), one);
  if (tooth_s == self->marked_s)
    return;
  self->marked_s = tooth_s;
  gtk_scale_clear_marks (scale);
  gtk_range_set_range (self->speed, slowest, 0);
  gtk_scale_add_mark (scale, one, GTK_POS_BOTTOM, NULL);
  gtk_scale_add_mark (scale, fmin (log10 (tooth_s * SPELCH_CLOCK_MOST_TEETH), 0), GTK_POS_BOTTOM, NULL);
}

static void
show_speed (SpelchMotionWindow *self, const SpelchMotionPass *pass, const SpelchMotionClock *clock)
{
  double ratio = spelch_motion_clock_ratio (clock), teeth = spelch_motion_clock_teeth (clock);
  bool blurred = teeth > SPELCH_CLOCK_MOST_TEETH * (1 + 1e-6);
  g_autofree char *words
      = clock->reduced
            ? g_strdup (_ ("Motion is reduced: it goes in steps, one tooth a second"))
            : spelch_words_motion_speed (ratio, teeth, blurred, spelch_session_get_numbers (self->session));
  show_speed_marks (self, pass->tooth_s);
  gtk_range_set_value (self->speed, log10 (ratio));
  gtk_widget_set_sensitive (GTK_WIDGET (self->speed), !clock->reduced);
  if (g_strcmp0 (words, gtk_label_get_text (self->how_slow)) == 0)
    return;
  /* The slider's own number says nothing to anyone. */
  g_autofree char *name = g_strdup_printf ("%s, %s", _ ("Speed"), words);
  gtk_label_set_text (self->how_slow, words);
  spelch_tell_soon (GTK_WIDGET (self->speed), GTK_ACCESSIBLE_PROPERTY_LABEL, name);
}

static void
show_play (SpelchMotionWindow *self, bool playing)
{
  const char *words = playing ? _ ("Pause") : _ ("Play");
  if (g_strcmp0 (words, gtk_button_get_label (self->play)) != 0)
    gtk_button_set_label (self->play, words);
}

static void
view_moved (SpelchMotionView *view, SpelchMotionWindow *self)
{
  const SpelchMotion *motion = spelch_motion_view_get_motion (view);
  const SpelchMotionClock *clock = spelch_motion_view_get_clock (view);
  if (motion == NULL || self->showing)
    return;
  const SpelchMotionPass *pass = &motion->passes[clock->pass];
  self->showing = true;
  show_play (self, clock->playing);
  show_place (self, pass, clock);
  show_speed (self, pass, clock);
  if (gtk_drop_down_get_selected (self->passes) != clock->pass)
    gtk_drop_down_set_selected (self->passes, clock->pass);
  self->showing = false;
}

static void
fill_passes (SpelchMotionWindow *self, const SpelchMotion *motion)
{
  g_autoptr (GtkStringList) names = gtk_string_list_new (NULL);
  for (guint i = 0; i < motion->n_passes; i++)
    {
      g_autofree char *name
          = spelch_words_motion_pass (motion, i, spelch_session_get_numbers (self->session));
      gtk_string_list_append (names, name);
    }
  self->showing = true;
  gtk_drop_down_set_model (self->passes, G_LIST_MODEL (names));
  self->showing = false;
}

static void
show_cut (SpelchMotionWindow *self)
{
  const SpelchCut *cut = spelch_session_get_cut (self->session);
  g_autofree char *title
      = cut == NULL ? g_strdup (_ ("Slow motion")) : g_strdup_printf (_ ("%s – slow motion"), cut->name);
  const SpelchBit *bit = spelch_session_get_bit (self->session);
  g_autofree char *about
      = cut == NULL || bit == NULL ? g_strdup ("") : g_strdup_printf ("%s, %s", cut->name, bit->name);
  spelch_motion_view_show (self->view, self->session);
  const SpelchMotion *motion = spelch_motion_view_get_motion (self->view);
  gtk_window_set_title (GTK_WINDOW (self), title);
  gtk_label_set_text (self->about, about);
  gtk_widget_set_sensitive (self->controls, motion != NULL);
  gtk_widget_set_visible (self->nothing, motion == NULL);
  if (motion == NULL)
    {
      show_play (self, false);
      return;
    }
  fill_passes (self, motion);
  view_moved (self->view, self);
}

/* ---- What they do ---- */

static void
play_clicked (GtkButton *button, SpelchMotionWindow *self)
{
  spelch_motion_view_play (self->view, !spelch_motion_view_get_clock (self->view)->playing);
}

static void
back_clicked (GtkButton *button, SpelchMotionWindow *self)
{
  spelch_motion_view_step (self->view, -1);
}

static void
on_clicked (GtkButton *button, SpelchMotionWindow *self)
{
  spelch_motion_view_step (self->view, 1);
}

static void
place_changed (GtkRange *range, SpelchMotionWindow *self)
{
  const SpelchMotion *motion = spelch_motion_view_get_motion (self->view);
  guint pass = spelch_motion_view_get_clock (self->view)->pass;
  if (!self->showing && motion != NULL)
    spelch_motion_view_seek (self->view, pass,
                             gtk_range_get_value (range) * spelch_motion_tooth (&motion->passes[pass]));
}

static void
pass_selected (GtkDropDown *passes, GParamSpec *spec, SpelchMotionWindow *self)
{
  guint pass = gtk_drop_down_get_selected (passes);
  if (!self->showing && pass != GTK_INVALID_LIST_POSITION)
    spelch_motion_view_seek (self->view, pass, 0);
}

/* Near one tooth a second it is just that. */
static void
speed_changed (GtkRange *range, SpelchMotionWindow *self)
{
  double power = gtk_range_get_value (range);
  bool near = fabs (power - log10 (fmin (self->marked_s, 1))) < 0.02;
  if (!self->showing)
    spelch_motion_view_set_ratio (self->view, near ? 0 : pow (10, power));
}

static void
save (SpelchMotionWindow *self, bool animation)
{
  spelch_motion_view_play (self->view, false);
  spelch_motion_film_save (self->film, self->session, spelch_motion_view_get_clock (self->view)->pass,
                           spelch_appearance_get_look (self->appearance), animation);
}

static void
do_save_animation (GSimpleAction *action, GVariant *parameter, gpointer data)
{
  save (data, true);
}

static void
do_save_pictures (GSimpleAction *action, GVariant *parameter, gpointer data)
{
  save (data, false);
}

static void
do_close (GSimpleAction *action, GVariant *parameter, gpointer data)
{
  gtk_window_close (data);
}

static const GActionEntry ACTIONS[] = {
  { .name = "save-animation", .activate = do_save_animation },
  { .name = "save-pictures", .activate = do_save_pictures },
  { .name = "close", .activate = do_close },
};

/* ---- Building ---- */

static GtkWidget *
icon_button (const char *icon, const char *name, GCallback clicked, SpelchMotionWindow *self)
{
  GtkWidget *button = gtk_button_new_from_icon_name (icon);
  gtk_widget_set_tooltip_text (button, name);
  gtk_widget_set_size_request (button, ICON_WIDE, -1);
  gtk_accessible_update_property (GTK_ACCESSIBLE (button), GTK_ACCESSIBLE_PROPERTY_LABEL, name, -1);
  g_signal_connect (button, "clicked", clicked, self);
  return button;
}

static GtkRange *
scale (const char *name, GCallback changed, SpelchMotionWindow *self)
{
  GtkWidget *widget = gtk_scale_new (GTK_ORIENTATION_HORIZONTAL, NULL);
  gtk_scale_set_draw_value (GTK_SCALE (widget), FALSE);
  gtk_accessible_update_property (GTK_ACCESSIBLE (widget), GTK_ACCESSIBLE_PROPERTY_LABEL, name, -1);
  g_signal_connect (widget, "value-changed", changed, self);
  return GTK_RANGE (widget);
}

static GtkWidget *
make_playing (SpelchMotionWindow *self)
{
  GtkWidget *row = gtk_box_new (GTK_ORIENTATION_HORIZONTAL, 8);
  self->play = GTK_BUTTON (gtk_button_new_with_label (_ ("Play")));
  gtk_widget_set_size_request (GTK_WIDGET (self->play), 84, -1);
  self->back = icon_button ("go-previous-symbolic", _ ("Back one tooth"), G_CALLBACK (back_clicked), self);
  self->on = icon_button ("go-next-symbolic", _ ("On one tooth"), G_CALLBACK (on_clicked), self);
  self->place = scale (_ ("Tooth"), G_CALLBACK (place_changed), self);
  self->tooth = GTK_LABEL (gtk_label_new (NULL));
  self->passes = GTK_DROP_DOWN (gtk_drop_down_new (NULL, NULL));
  gtk_range_set_increments (self->place, 0.1, 1);
  gtk_widget_set_size_request (GTK_WIDGET (self->passes), PASS_WIDE, -1);
  gtk_widget_set_hexpand (GTK_WIDGET (self->place), TRUE);
  gtk_label_set_width_chars (self->tooth, 14);
  gtk_label_set_xalign (self->tooth, 0);
  gtk_widget_add_css_class (GTK_WIDGET (self->tooth), "figures");
  gtk_accessible_update_property (GTK_ACCESSIBLE (self->passes), GTK_ACCESSIBLE_PROPERTY_LABEL, _ ("Pass"),
                                  -1);
  g_signal_connect (self->play, "clicked", G_CALLBACK (play_clicked), self);
  g_signal_connect (self->passes, "notify::selected", G_CALLBACK (pass_selected), self);
  gtk_box_append (GTK_BOX (row), GTK_WIDGET (self->play));
  gtk_box_append (GTK_BOX (row), self->back);
  gtk_box_append (GTK_BOX (row), self->on);
  gtk_box_append (GTK_BOX (row), GTK_WIDGET (self->place));
  gtk_box_append (GTK_BOX (row), GTK_WIDGET (self->tooth));
  gtk_box_append (GTK_BOX (row), GTK_WIDGET (self->passes));
  return row;
}

static GtkWidget *
save_button (void)
{
  GtkWidget *button = gtk_menu_button_new ();
  g_autoptr (GMenu) menu = g_menu_new ();
  g_menu_append (menu, _ ("As an _animation…"), "win.save-animation");
  g_menu_append (menu, _ ("As a series of _pictures…"), "win.save-pictures");
  gtk_menu_button_set_label (GTK_MENU_BUTTON (button), _ ("Save"));
  spelch_later_menu_set (GTK_MENU_BUTTON (button), G_MENU_MODEL (menu));
  gtk_widget_set_valign (button, GTK_ALIGN_CENTER);
  return button;
}

static GtkWidget *
make_speed (SpelchMotionWindow *self)
{
  GtkWidget *row = gtk_box_new (GTK_ORIENTATION_HORIZONTAL, 8);
  GtkWidget *name = gtk_label_new (_ ("Speed"));
  self->speed = scale (_ ("Speed"), G_CALLBACK (speed_changed), self);
  self->how_slow = GTK_LABEL (gtk_label_new (NULL));
  gtk_range_set_range (self->speed, log10 (SPELCH_CLOCK_SLOWEST), 0);
  gtk_range_set_increments (self->speed, 0.05, 0.25);
  gtk_widget_set_size_request (GTK_WIDGET (self->speed), SPEED_WIDE, -1);
  gtk_widget_set_hexpand (GTK_WIDGET (self->how_slow), TRUE);
  gtk_label_set_xalign (self->how_slow, 0);
  gtk_label_set_wrap (self->how_slow, TRUE);
  gtk_box_append (GTK_BOX (row), name);
  gtk_box_append (GTK_BOX (row), GTK_WIDGET (self->speed));
  gtk_box_append (GTK_BOX (row), GTK_WIDGET (self->how_slow));
  gtk_box_append (GTK_BOX (row), save_button ());
  return row;
}

static GtkWidget *
make_bar (SpelchMotionWindow *self)
{
  GtkWidget *bar = gtk_header_bar_new (), *nothing = gtk_box_new (GTK_ORIENTATION_HORIZONTAL, 0);
  GtkWidget *name = gtk_label_new (_ ("Slow motion"));
  self->about = GTK_LABEL (gtk_label_new (NULL));
  gtk_widget_set_visible (nothing, FALSE);
  gtk_header_bar_set_title_widget (GTK_HEADER_BAR (bar), nothing);
  gtk_label_set_ellipsize (self->about, PANGO_ELLIPSIZE_END);
  gtk_label_set_max_width_chars (self->about, ABOUT_CHARS);
  gtk_widget_add_css_class (name, "part");
  gtk_widget_add_css_class (GTK_WIDGET (self->about), "soft");
  gtk_header_bar_pack_start (GTK_HEADER_BAR (bar), name);
  gtk_header_bar_pack_start (GTK_HEADER_BAR (bar), GTK_WIDGET (self->about));
  return bar;
}

static GtkWidget *
make_foot (SpelchMotionWindow *self)
{
  GtkWidget *foot = gtk_box_new (GTK_ORIENTATION_VERTICAL, 6);
  self->controls = gtk_box_new (GTK_ORIENTATION_VERTICAL, 6);
  self->film = spelch_motion_film_new ();
  gtk_box_append (GTK_BOX (self->controls), make_playing (self));
  gtk_box_append (GTK_BOX (self->controls), make_speed (self));
  gtk_box_append (GTK_BOX (foot), self->controls);
  gtk_box_append (GTK_BOX (foot), GTK_WIDGET (self->film));
  gtk_widget_add_css_class (foot, "foot");
  return foot;
}

/* ---- Object ---- */

static void
look_changed (SpelchMotionWindow *self)
{
  spelch_motion_view_set_look (self->view, spelch_appearance_get_look (self->appearance));
}

static void
session_settled (SpelchMotionWindow *self)
{
  show_cut (self);
}

static void
spelch_motion_window_realize (GtkWidget *widget)
{
  GTK_WIDGET_CLASS (spelch_motion_window_parent_class)->realize (widget);
  spelch_frame_meter_attach (widget, "-motion");
}

static void
spelch_motion_window_dispose (GObject *object)
{
  SpelchMotionWindow *self = SPELCH_MOTION_WINDOW (object);
  g_clear_object (&self->session);
  g_clear_object (&self->appearance);
  G_OBJECT_CLASS (spelch_motion_window_parent_class)->dispose (object);
}

static void
spelch_motion_window_class_init (SpelchMotionWindowClass *klass)
{
  G_OBJECT_CLASS (klass)->dispose = spelch_motion_window_dispose;
  GTK_WIDGET_CLASS (klass)->realize = spelch_motion_window_realize;
}

static void
spelch_motion_window_init (SpelchMotionWindow *self)
{
  GtkWidget *all = gtk_box_new (GTK_ORIENTATION_VERTICAL, 0);
  self->view = spelch_motion_view_new ();
  self->nothing
      = gtk_label_new (_ ("No pass can be cut as this is set, so there is nothing to show in motion."));
  gtk_label_set_wrap (GTK_LABEL (self->nothing), TRUE);
  gtk_widget_set_margin_top (self->nothing, 24);
  gtk_widget_set_margin_start (self->nothing, 24);
  gtk_widget_set_margin_end (self->nothing, 24);
  gtk_widget_set_vexpand (GTK_WIDGET (self->view), TRUE);
  gtk_box_append (GTK_BOX (all), self->nothing);
  gtk_box_append (GTK_BOX (all), GTK_WIDGET (self->view));
  gtk_box_append (GTK_BOX (all), make_foot (self));
  gtk_widget_add_css_class (GTK_WIDGET (self), "bench");
  gtk_widget_add_css_class (GTK_WIDGET (self), "motion");
  gtk_window_set_titlebar (GTK_WINDOW (self), make_bar (self));
  gtk_window_set_child (GTK_WINDOW (self), all);
  gtk_window_set_default_size (GTK_WINDOW (self), WIDTH, HEIGHT);
  g_action_map_add_action_entries (G_ACTION_MAP (self), ACTIONS, G_N_ELEMENTS (ACTIONS), self);
  g_signal_connect (self->view, "moved", G_CALLBACK (view_moved), self);
  spelch_escape_closes (GTK_WINDOW (self));
}

static GtkWindow *
window_new (GtkWindow *bench, SpelchSession *session, SpelchAppearance *appearance)
{
  SpelchMotionWindow *self
      = g_object_new (SPELCH_TYPE_MOTION_WINDOW, "application", gtk_window_get_application (bench), NULL);
  self->session = g_object_ref (session);
  self->appearance = g_object_ref (appearance);
  gtk_window_set_transient_for (GTK_WINDOW (self), bench);
  g_signal_connect_object (session, "settled", G_CALLBACK (session_settled), self, G_CONNECT_SWAPPED);
  g_signal_connect_object (appearance, "changed", G_CALLBACK (look_changed), self, G_CONNECT_SWAPPED);
  look_changed (self);
  show_cut (self);
  gtk_widget_grab_focus (GTK_WIDGET (self->view));
  return GTK_WINDOW (self);
}

/* ---- Opening it ---- */

static void
follow_plan (SpelchSession *session, guint change, GSimpleAction *action)
{
  g_simple_action_set_enabled (action, spelch_session_get_plan (session) != NULL);
}

void
spelch_motion_window_add_action (GtkApplicationWindow *bench, SpelchSession *session,
                                 SpelchAppearance *appearance)
{
  GSimpleAction *action
      = spelch_one_window_add_action (bench, "slow-motion", session, appearance, window_new);
  g_signal_connect_object (session, "settled", G_CALLBACK (follow_plan), action, 0);
  follow_plan (session, 0, action);
}
