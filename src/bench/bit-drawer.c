/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "bench/bit-drawer.h"
#include "bench/tooltip.h"
#include "bench/bit-ranking.h"
#include "bench/bit-strip.h"
#include "bench/edits.h"
#include "plan/words-choose.h"
#include "bench/template.h"

#include <glib/gi18n-lib.h>

#define PICTURE_HEIGHT 88
#define MARGINS        6
#define SHANK_MM       4
#define MOST_SCALE     2.4 /* pixels per millimetre */
#define HOVER_WAIT_MS  180 /* the pointer only passing over tries nothing */
#define WHEEL_STEP     90  /* pixels a click of the wheel moves the drawer: about a bit */
#define LOOK_WAIT_MS   150 /* what to look for takes some tens of milliseconds: not after each of many keys */

struct _SpelchBitDrawer
{
  GtkWidget parent_instance;
  GtkLabel *advice;
  GtkScrolledWindow *scroller;
  GtkBox *tiles;
  GtkWidget *before, *after; /* room for the bits without tiles */
  SpelchBitStrip strip;
  SpelchBitRanking *ranking; /* of the bits as they stand; NULL: not known yet */
  GCancellable *asking;      /* for it */
  double scale;
  SpelchSession *session;
  SpelchLook look;
  SpelchBitTile *pointed; /* under the pointer, not owned */
  guint hover;            /* source waiting to try it */
  GtkLabel *wanted;
  guint looking;               /* source waiting to say what to look for */
  char sought[SPELCH_ID_SIZE]; /* the bit last brought into sight: the one taken, else the best */
  bool sought_taken;
  guint sight; /* tick callback waiting for the layout, to bring it into sight */
  guint ticks; /* since then */
};

G_DEFINE_FINAL_TYPE (SpelchBitDrawer, spelch_bit_drawer, GTK_TYPE_WIDGET)

enum
{
  SIGNAL_REMARKED,
  N_SIGNALS
};
static guint signals[N_SIGNALS];

/* ---- Accepting and trying ---- */

static void
accept_bit (SpelchBitDrawer *self, const SpelchBit *bit)
{
  const SpelchBit *accepted = spelch_session_get_accepted (self->session);
  const SpelchBit chosen = *bit; /* the edit may move the part's bits */
  g_clear_handle_id (&self->hover, g_source_remove);
  if (spelch_session_get_cut (self->session) == NULL)
    return;
  if (accepted == NULL || !g_str_equal (accepted->id, chosen.id))
    {
      g_autofree char *name = g_strdup_printf (_ ("choose “%s”"), chosen.name);
      SpelchPart *part = spelch_session_get_part (self->session);
      guint cut = spelch_session_get_cut_index (self->session);
      spelch_session_edit (self->session, spelch_edit_bit (part, cut, &chosen), name, NULL);
    }
  spelch_session_try_bit (self->session, NULL);
}

void
spelch_bit_drawer_accept (SpelchBitDrawer *self, const char *id)
{
  for (guint i = 0; i < spelch_session_count_bits (self->session); i++)
    {
      const SpelchBit *bit = spelch_session_get_nth_bit (self->session, i);
      if (g_str_equal (bit->id, id))
        {
          accept_bit (self, bit);
          return;
        }
    }
}

static void
tile_clicked (SpelchBitTile *tile, SpelchBitDrawer *self)
{
  accept_bit (self, spelch_bit_tile_get_bit (tile));
}

static void
leave_bits (SpelchBitDrawer *self)
{
  if (!gtk_widget_get_mapped (GTK_WIDGET (self)))
    return; /* the window is closing, and its other pieces are gone */
  g_signal_emit (self, signals[SIGNAL_REMARKED], 0, "");
  spelch_session_try_bit (self->session, NULL);
}

static void
try_bit (SpelchBitDrawer *self, SpelchBitTile *tile)
{
  const SpelchBit *bit = spelch_bit_tile_get_bit (tile);
  const SpelchBit *accepted = spelch_session_get_accepted (self->session);
  bool is_accepted = accepted != NULL && g_str_equal (accepted->id, bit->id);
  spelch_session_try_bit (self->session, is_accepted ? NULL : bit);
  g_signal_emit (self, signals[SIGNAL_REMARKED], 0, spelch_bit_tile_get_words (tile));
}

static void
tile_focused (GtkEventController *focus, SpelchBitDrawer *self)
{
  GtkWidget *tile = gtk_event_controller_get_widget (focus);
  /* A click focuses too, but goes on to accept; the keyboard makes the focus visible. */
  if (gtk_window_get_focus_visible (GTK_WINDOW (gtk_widget_get_root (tile))))
    try_bit (self, SPELCH_BIT_TILE (tile));
}

static gboolean
try_pointed (gpointer data)
{
  SpelchBitDrawer *self = data;
  self->hover = 0;
  if (self->pointed != NULL)
    try_bit (self, self->pointed);
  return G_SOURCE_REMOVE;
}

static void
pointer_entered (GtkEventController *motion, double x, double y, SpelchBitDrawer *self)
{
  self->pointed = SPELCH_BIT_TILE (gtk_event_controller_get_widget (motion));
  g_clear_handle_id (&self->hover, g_source_remove);
  self->hover = g_timeout_add (HOVER_WAIT_MS, try_pointed, self);
}

static void
pointer_left (GtkEventController *motion, SpelchBitDrawer *self)
{
  self->pointed = NULL;
  g_clear_handle_id (&self->hover, g_source_remove);
  leave_bits (self);
}

/* ---- Keys ---- */

static gboolean
key_pressed (GtkEventControllerKey *keys, guint key, guint code, GdkModifierType state, SpelchBitDrawer *self)
{
  GtkWidget *focus = gtk_widget_get_focus_child (GTK_WIDGET (self->tiles));
  bool forward = key == GDK_KEY_Right || key == GDK_KEY_Down;
  bool back = key == GDK_KEY_Left || key == GDK_KEY_Up;
  if (key == GDK_KEY_Escape)
    {
      leave_bits (self);
      return GDK_EVENT_STOP;
    }
  if (focus == NULL || !(forward || back))
    return GDK_EVENT_PROPAGATE;
  GtkWidget *next = forward ? gtk_widget_get_next_sibling (focus) : gtk_widget_get_prev_sibling (focus);
  if (next != NULL)
    gtk_widget_grab_focus (next);
  return GDK_EVENT_STOP;
}

/* The wheel turns the drawer sideways: there is nothing above or below the bits. */
static gboolean
wheel_turned (GtkEventControllerScroll *wheel, double dx, double dy, SpelchBitDrawer *self)
{
  GtkAdjustment *adjustment = gtk_scrolled_window_get_hadjustment (self->scroller);
  if (dx != 0 || dy == 0)
    return GDK_EVENT_PROPAGATE;
  bool by_pixels = gtk_event_controller_scroll_get_unit (wheel) == GDK_SCROLL_UNIT_SURFACE;
  gtk_adjustment_set_value (adjustment,
                            gtk_adjustment_get_value (adjustment) + dy * (by_pixels ? 1 : WHEEL_STEP));
  return GDK_EVENT_STOP;
}

/* ---- Following ---- */

static SpelchBitTile *
make_tile (gpointer data)
{
  SpelchBitDrawer *self = data;
  SpelchBitTile *tile = spelch_bit_tile_new ();
  g_signal_connect (tile, "clicked", G_CALLBACK (tile_clicked), self);
  GtkEventController *focus = gtk_event_controller_focus_new ();
  g_signal_connect (focus, "enter", G_CALLBACK (tile_focused), self);
  gtk_widget_add_controller (GTK_WIDGET (tile), focus);
  GtkEventController *motion = gtk_event_controller_motion_new ();
  g_signal_connect (motion, "enter", G_CALLBACK (pointer_entered), self);
  g_signal_connect (motion, "leave", G_CALLBACK (pointer_left), self);
  gtk_widget_add_controller (GTK_WIDGET (tile), motion);
  return tile;
}

/* One scale for all: the longest bit just fits. */
static double
drawer_scale (SpelchBitDrawer *self)
{
  double longest = 1;
  for (guint i = 0; i < spelch_session_count_bits (self->session); i++)
    longest = MAX (longest, spelch_session_get_nth_bit (self->session, i)->cutting_length.mm);
  return MIN (MOST_SCALE, (PICTURE_HEIGHT - MARGINS) / (longest + SHANK_MM));
}

static void
show_tile (SpelchBitTile *tile, guint place, gpointer data)
{
  SpelchBitDrawer *self = data;
  const SpelchBit *bit = spelch_session_get_nth_bit (self->session, place);
  const SpelchBit *accepted = spelch_session_get_accepted (self->session);
  const SpelchBitRanking *ranking = self->ranking;
  if (bit == NULL)
    return;
  bool said = ranking != NULL && place < ranking->n && ranking->captions[place] != NULL;
  spelch_bit_tile_set_scale (tile, self->scale, PICTURE_HEIGHT, SHANK_MM);
  spelch_bit_tile_set_bit (tile, bit, spelch_palette (self->look),
                           spelch_session_get_numbers (self->session)->decimal_sign);
  spelch_bit_tile_set_caption (tile, said ? ranking->captions[place] : "",
                               said ? ranking->reasons[place] : NULL);
  spelch_bit_tile_set_accepted (tile, accepted != NULL && g_str_equal (accepted->id, bit->id));
}

static void
show_bits (SpelchBitDrawer *self)
{
  self->pointed = NULL;
  self->scale = drawer_scale (self);
  spelch_bit_strip_set_count (&self->strip, spelch_session_count_bits (self->session));
}

/* ---- What to look for ---- */

static void
say_wanted (SpelchBitDrawer *self, const char *words)
{
  if (g_strcmp0 (gtk_label_get_text (self->wanted), words) != 0)
    gtk_label_set_text (self->wanted, words);
  gtk_widget_set_visible (GTK_WIDGET (self->wanted), words[0] != '\0');
}

static gboolean
look (gpointer data)
{
  SpelchBitDrawer *self = data;
  SpelchPart *part = spelch_session_get_part (self->session);
  guint index = spelch_session_get_cut_index (self->session);
  self->looking = 0;
  if (part == NULL || index >= part->n_cuts || spelch_session_in_gesture (self->session))
    return G_SOURCE_REMOVE; /* the end of a drag comes here again */
  const SpelchCut *cut = &part->cuts[index];
  SpelchWanted wanted = spelch_wanted_find (spelch_session_get_constants (self->session), part, cut);
  g_autofree SpelchBit *bits = spelch_session_copy_bits (self->session);
  spelch_wanted_try (spelch_session_get_constants (self->session), part, cut, bits,
                     spelch_session_count_bits (self->session), &wanted);
  g_auto (GStrv) sentences = spelch_words_wanted (&wanted, cut, spelch_session_get_numbers (self->session));
  g_autofree char *found = g_strjoinv (" ", sentences);
  bool as_it_is = spelch_wanted_serves_as_it_is (&wanted);
  /* Translators: what follows are sentences that say which bits would do, or what to change first. */
  g_autofree char *words
      = g_strdup_printf (as_it_is ? _ ("No bit here leaves the edges as accepted. What to look for: %s")
                                  : _ ("No bit here leaves the edges as accepted. %s"),
                         found);
  say_wanted (self, words);
  return G_SOURCE_REMOVE;
}

/* Where no bit at hand, either way up, does what is accepted. */
static void
look_where_none_serves (SpelchBitDrawer *self, bool served)
{
  g_clear_handle_id (&self->looking, g_source_remove);
  if (!served)
    self->looking = g_timeout_add (LOOK_WAIT_MS, look, self);
  else
    say_wanted (self, "");
}

/* ---- Into sight ---- */

static gboolean
bring_into_sight (GtkWidget *widget, GdkFrameClock *clock, gpointer data)
{
  SpelchBitDrawer *self = SPELCH_BIT_DRAWER (widget);
  if (self->ticks++ == 0)
    return G_SOURCE_CONTINUE; /* this frame still lays out what has changed */
  self->sight = 0;
  for (guint i = 0; i < spelch_session_count_bits (self->session); i++)
    if (g_str_equal (spelch_session_get_nth_bit (self->session, i)->id, self->sought))
      spelch_bit_strip_seek (&self->strip, i);
  return G_SOURCE_REMOVE;
}

/* The bit that is drawn: only when it is another one, so that a drawer pushed along by hand stays there. */
static void
seek (SpelchBitDrawer *self, const SpelchBit *best)
{
  const SpelchBit *accepted = spelch_session_get_accepted (self->session);
  const SpelchBit *bit = accepted != NULL ? accepted : best;
  const char *id = bit == NULL ? "" : bit->id;
  if (g_str_equal (id, self->sought) && self->sought_taken == (accepted != NULL))
    return;
  g_strlcpy (self->sought, id, sizeof self->sought);
  self->sought_taken = accepted != NULL;
  self->ticks = 0;
  if (self->sight == 0)
    self->sight = gtk_widget_add_tick_callback (GTK_WIDGET (self), bring_into_sight, NULL, NULL);
}

/* ---- Captions ---- */

static void
forget_ranking (SpelchBitDrawer *self)
{
  if (self->asking != NULL)
    g_cancellable_cancel (self->asking);
  g_clear_object (&self->asking);
  g_clear_pointer (&self->ranking, spelch_bit_ranking_free);
}

static void
take_ranking (SpelchBitRanking *ranking, gpointer data)
{
  SpelchBitDrawer *self = data;
  self->ranking = ranking;
  if (ranking == NULL)
    return;
  look_where_none_serves (self, ranking->served);
  seek (self, ranking->first < 0 ? NULL : spelch_session_get_nth_bit (self->session, (guint)ranking->first));
  if (ranking->n == self->strip.n)
    spelch_bit_strip_show (&self->strip);
}

/* What is said about each bit, as the board lies. */
static void
rank (SpelchBitDrawer *self)
{
  forget_ranking (self);
  if (spelch_session_get_accepted (self->session) != NULL)
    seek (self, NULL); /* not only when a long ranking is over */
  self->asking = g_cancellable_new ();
  spelch_bit_ranking_make (self->session, self->asking, take_ranking, self);
}

/* Until a bit is chosen it says that what is drawn is only a suggestion. */
static void
show_advice (SpelchBitDrawer *self)
{
  bool chosen = spelch_session_get_accepted (self->session) != NULL;
  const char *words = chosen ? "" : _ ("None is chosen yet; the best one is drawn. Click one to take it.");
  gtk_label_set_text (self->advice, words);
  spelch_tooltip_set (GTK_WIDGET (self->advice), chosen ? NULL : words); /* it may be cut short */
}

static void
session_settled (SpelchSession *session, guint change, SpelchBitDrawer *self)
{
  if (change & (SPELCH_CHANGE_PART | SPELCH_CHANGE_CUT))
    show_advice (self);
  if (change & (SPELCH_CHANGE_PART | SPELCH_CHANGE_BITS | SPELCH_CHANGE_CUT | SPELCH_CHANGE_NUMBERS))
    rank (self);
  if (change & (SPELCH_CHANGE_PART | SPELCH_CHANGE_BITS))
    show_bits (self);
}

void
spelch_bit_drawer_set_session (SpelchBitDrawer *self, SpelchSession *session)
{
  self->session = session;
  g_signal_connect_object (session, "settled", G_CALLBACK (session_settled), self, 0);
}

void
spelch_bit_drawer_set_look (SpelchBitDrawer *self, SpelchLook look)
{
  self->look = look;
  if (self->session != NULL)
    spelch_bit_strip_show (&self->strip);
}

/* ---- Object ---- */

static void
spelch_bit_drawer_dispose (GObject *object)
{
  SpelchBitDrawer *self = SPELCH_BIT_DRAWER (object);
  g_clear_handle_id (&self->hover, g_source_remove);
  g_clear_handle_id (&self->looking, g_source_remove);
  forget_ranking (self);
  spelch_bit_strip_end (&self->strip);
  spelch_template_dispose (GTK_WIDGET (object), SPELCH_TYPE_BIT_DRAWER);
  G_OBJECT_CLASS (spelch_bit_drawer_parent_class)->dispose (object);
}

static void
spelch_bit_drawer_class_init (SpelchBitDrawerClass *klass)
{
  GtkWidgetClass *widget_class = GTK_WIDGET_CLASS (klass);
  G_OBJECT_CLASS (klass)->dispose = spelch_bit_drawer_dispose;
  signals[SIGNAL_REMARKED] = g_signal_new ("remarked", SPELCH_TYPE_BIT_DRAWER, G_SIGNAL_RUN_LAST, 0, NULL,
                                           NULL, NULL, G_TYPE_NONE, 1, G_TYPE_STRING);
  gtk_widget_class_set_template_from_resource (widget_class, "/org/spelch/Spelch/ui/bit-drawer.ui");
  gtk_widget_class_bind_template_child (widget_class, SpelchBitDrawer, advice);
  gtk_widget_class_bind_template_child (widget_class, SpelchBitDrawer, scroller);
  gtk_widget_class_bind_template_child (widget_class, SpelchBitDrawer, tiles);
  gtk_widget_class_bind_template_child (widget_class, SpelchBitDrawer, before);
  gtk_widget_class_bind_template_child (widget_class, SpelchBitDrawer, after);
  gtk_widget_class_bind_template_child (widget_class, SpelchBitDrawer, wanted);
  gtk_widget_class_set_css_name (widget_class, "bitdrawer");
  gtk_widget_class_set_accessible_role (widget_class, GTK_ACCESSIBLE_ROLE_GROUP);
  gtk_widget_class_set_layout_manager_type (widget_class, GTK_TYPE_BIN_LAYOUT);
}

static void
spelch_bit_drawer_init (SpelchBitDrawer *self)
{
  gtk_widget_init_template (GTK_WIDGET (self));
  self->strip = (SpelchBitStrip){ .scroller = self->scroller,
                                  .tiles = self->tiles,
                                  .before = self->before,
                                  .after = self->after,
                                  .make = make_tile,
                                  .show = show_tile,
                                  .data = self };
  spelch_bit_strip_begin (&self->strip);
  GtkEventController *keys = gtk_event_controller_key_new ();
  gtk_event_controller_set_propagation_phase (keys, GTK_PHASE_CAPTURE);
  g_signal_connect (keys, "key-pressed", G_CALLBACK (key_pressed), self);
  gtk_widget_add_controller (GTK_WIDGET (self->tiles), keys);
  GtkEventController *focus = gtk_event_controller_focus_new ();
  g_signal_connect_swapped (focus, "leave", G_CALLBACK (leave_bits), self);
  gtk_widget_add_controller (GTK_WIDGET (self->tiles), focus);
  GtkEventController *wheel = gtk_event_controller_scroll_new (GTK_EVENT_CONTROLLER_SCROLL_BOTH_AXES);
  gtk_event_controller_set_propagation_phase (wheel, GTK_PHASE_CAPTURE);
  g_signal_connect (wheel, "scroll", G_CALLBACK (wheel_turned), self);
  gtk_widget_add_controller (GTK_WIDGET (self->scroller), wheel);
}
