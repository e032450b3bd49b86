/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "bench/log-lesson.h"
#include "bench/log-edits.h"
#include "bench/template.h"
#include "files/shop-data.h"
#include "plan/words-log.h"

#include <glib/gi18n-lib.h>
#include <string.h>

struct _SpelchLogLesson
{
  GtkWidget parent_instance;
  SpelchShelves *shelves;
  SpelchSession *session; /* weak: the one on the bench */
  char *board, *bit;      /* ids; NULL: nothing is shown */
  SpelchNumbers numbers;
  bool showing;

  GtkLabel *heading;
  GtkLabel *motor, *far, *forces;
  GtkWidget *edges_row, *forces_row;
  GtkSwitch *edges_used, *forces_used;
  GtkLabel *edges_part, *forces_part;
  GtkWidget *edges_take, *forces_take;
};

G_DEFINE_FINAL_TYPE (SpelchLogLesson, spelch_log_lesson, GTK_TYPE_WIDGET)

/* ---- What it is about ---- */

static const SpelchLogEntry *
entries (SpelchLogLesson *self, guint *n)
{
  SpelchShelf *log = spelch_shelves_get (self->shelves, SPELCH_LIST_LOG);
  *n = spelch_shelf_count (log);
  return spelch_shelf_get_nth (log, 0);
}

static SpelchPart *
part_of (SpelchLogLesson *self)
{
  return self->session == NULL ? NULL : spelch_session_get_part (self->session);
}

/* As it lies in the drawer, else as the part has it; at the least its id. */
static SpelchBit
bit_of (SpelchLogLesson *self)
{
  const SpelchBit *shelved
      = spelch_shelf_find (spelch_shelves_get (self->shelves, SPELCH_LIST_BITS), self->bit);
  const SpelchPart *part = part_of (self);
  int own = part == NULL ? -1 : spelch_part_find_bit (part, self->bit);
  SpelchBit bit = { 0 };
  g_strlcpy (bit.id, self->bit, sizeof bit.id);
  return shelved != NULL ? *shelved : own >= 0 ? part->bits[own] : bit;
}

/* ---- Showing ---- */

static void
say (GtkLabel *label, const char *words)
{
  gtk_label_set_text (label, words);
  gtk_widget_set_visible (GTK_WIDGET (label), words[0] != '\0');
}

static void
show_side (SpelchLogLesson *self, GtkLabel *label, const SpelchBit *bit, const SpelchLearnt *learnt,
           bool motor)
{
  guint n = 0;
  const SpelchLogEntry *all = entries (self, &n);
  SpelchTally tally = spelch_corrections_tally (self->board, bit, motor, all, n);
  g_autofree char *words = spelch_words_log_side (&tally, learnt, motor, &self->numbers);
  say (label, words);
}

static void
show_forces (SpelchLogLesson *self)
{
  guint n = 0;
  const SpelchLogEntry *all = entries (self, &n);
  SpelchCalibration calibration;
  bool any = spelch_corrections_calibrate (self->board, all, n, &calibration);
  g_autofree char *words = any ? spelch_words_log_forces (&calibration, &self->numbers) : g_strdup ("");
  say (self->forces, words);
}

static char *
words_of_part (SpelchLogState state, const char *name)
{
  switch (state)
    {
    case SPELCH_LOG_NOT_TAKEN:
      return g_strdup_printf (_ ("The part “%s” doesn't go by it yet."), name);
    case SPELCH_LOG_OLD:
      return g_strdup_printf (_ ("The part “%s” goes by what the log said earlier."), name);
    case SPELCH_LOG_TAKEN:
      return g_strdup_printf (_ ("The part “%s” goes by it."), name);
    case SPELCH_LOG_OFF:
      return g_strdup_printf (_ ("In the part “%s” it is switched off."), name);
    case SPELCH_LOG_OTHER_BOARD:
      return g_strdup_printf (_ ("The part “%s” on the bench is cut from another board."), name);
    case SPELCH_LOG_NOTHING:
    default:
      return g_strdup ("");
    }
}

static bool
edges_are_held (SpelchLogLesson *self, const SpelchPart *part)
{
  int at = spelch_part_find_correction (part, self->board, self->bit);
  return at >= 0 && !part->corrections[at].off;
}

static bool
forces_are_held (SpelchLogLesson *self, const SpelchPart *part)
{
  return strcmp (part->calibration.board, self->board) == 0 && !part->calibration.off;
}

static void
show_edges_in_part (SpelchLogLesson *self, const SpelchBit *bit)
{
  guint n = 0;
  const SpelchLogEntry *all = entries (self, &n);
  const SpelchPart *part = part_of (self);
  SpelchLogState state = part == NULL
                             ? SPELCH_LOG_NOTHING
                             : spelch_log_state (spelch_shop_constants (), part, self->board, bit, all, n);
  g_autofree char *words = words_of_part (state, part == NULL ? "" : part->name);
  gtk_label_set_text (self->edges_part, words);
  gtk_widget_set_visible (self->edges_row, state != SPELCH_LOG_NOTHING);
  gtk_widget_set_visible (GTK_WIDGET (self->edges_used), state > SPELCH_LOG_NOTHING);
  gtk_widget_set_visible (self->edges_take, state == SPELCH_LOG_OLD);
  gtk_switch_set_active (self->edges_used, part != NULL && edges_are_held (self, part));
}

static void
show_forces_in_part (SpelchLogLesson *self)
{
  guint n = 0;
  const SpelchLogEntry *all = entries (self, &n);
  const SpelchPart *part = part_of (self);
  SpelchLogState state
      = part == NULL ? SPELCH_LOG_NOTHING : spelch_log_state_of_forces (part, self->board, all, n);
  g_autofree char *words = words_of_part (state, part == NULL ? "" : part->name);
  gtk_label_set_text (self->forces_part, words);
  gtk_widget_set_visible (self->forces_row, state > SPELCH_LOG_NOTHING);
  gtk_widget_set_visible (self->forces_take, state == SPELCH_LOG_OLD);
  gtk_switch_set_active (self->forces_used, part != NULL && forces_are_held (self, part));
}

static void
show (SpelchLogLesson *self)
{
  if (self->bit == NULL)
    return;
  guint n = 0;
  const SpelchLogEntry *all = entries (self, &n);
  SpelchBit bit = bit_of (self);
  SpelchCorrection learnt;
  spelch_corrections_learn (spelch_shop_constants (), self->board, &bit, all, n, &learnt);
  g_autofree char *heading
      = g_strdup_printf (_ ("What your log teaches about %s in %s"),
                         spelch_shelves_name (self->shelves, SPELCH_LIST_BITS, self->bit),
                         spelch_shelves_name (self->shelves, SPELCH_LIST_BOARDS, self->board));
  self->showing = true;
  gtk_label_set_text (self->heading, heading);
  gtk_accessible_update_property (GTK_ACCESSIBLE (self), GTK_ACCESSIBLE_PROPERTY_LABEL, heading, -1);
  show_side (self, self->motor, &bit, &learnt.motor, true);
  show_side (self, self->far, &bit, &learnt.far, false);
  show_forces (self);
  show_edges_in_part (self, &bit);
  show_forces_in_part (self);
  self->showing = false;
}

/* ---- Following ---- */

static void
session_settled (SpelchSession *session, guint change, SpelchLogLesson *self)
{
  if (session == self->session && change & (SPELCH_CHANGE_PART | SPELCH_CHANGE_OPENED))
    show (self);
}

static void
follow_session (SpelchLogLesson *self)
{
  SpelchSession *session = spelch_shelves_get_session (self->shelves);
  if (session == self->session)
    return;
  if (self->session != NULL)
    g_signal_handlers_disconnect_by_func (self->session, session_settled, self);
  g_set_weak_pointer (&self->session, session);
  if (session != NULL)
    g_signal_connect_object (session, "settled", G_CALLBACK (session_settled), self, 0);
}

static void
session_came_to_the_fore (SpelchLogLesson *self)
{
  follow_session (self);
  show (self);
}

void
spelch_log_lesson_show (SpelchLogLesson *self, const char *board, const char *bit,
                        const SpelchNumbers *numbers)
{
  char *shown_board = g_strdup (board), *shown_bit = g_strdup (bit);
  g_free (self->board);
  g_free (self->bit);
  self->board = shown_board;
  self->bit = shown_bit;
  self->numbers = *numbers;
  session_came_to_the_fore (self);
}

/* ---- The part ---- */

/* What undo calls it. Free with g_free(). */
static char *
name_of_edit (SpelchLogLesson *self, bool on, bool forces)
{
  const char *of = forces ? spelch_shelves_name (self->shelves, SPELCH_LIST_BOARDS, self->board)
                          : spelch_shelves_name (self->shelves, SPELCH_LIST_BITS, self->bit);
  return g_strdup_printf (on ? _ ("go by the log for “%s”") : _ ("switch the log off for “%s”"), of);
}

/* Shows what became of it, also where the part couldn't be changed. */
static void
edit (SpelchLogLesson *self, SpelchPart *next, bool on, bool forces)
{
  g_autofree char *name = name_of_edit (self, on, forces);
  spelch_session_edit (self->session, next, name, NULL);
  show (self);
}

static void
take_edges (SpelchLogLesson *self)
{
  guint n = 0;
  const SpelchLogEntry *all = entries (self, &n);
  SpelchBit bit = bit_of (self);
  if (part_of (self) != NULL)
    edit (self, spelch_edit_take_edges (spelch_shop_constants (), part_of (self), &bit, all, n), true, false);
}

static void
take_forces (SpelchLogLesson *self)
{
  guint n = 0;
  const SpelchLogEntry *all = entries (self, &n);
  if (part_of (self) != NULL)
    edit (self, spelch_edit_take_forces (part_of (self), all, n), true, true);
}

static void
edges_switched (SpelchLogLesson *self)
{
  SpelchPart *part = part_of (self);
  bool on = gtk_switch_get_active (self->edges_used);
  if (self->showing || part == NULL || on == edges_are_held (self, part))
    return;
  if (on && spelch_part_find_correction (part, self->board, self->bit) < 0)
    take_edges (self);
  else
    edit (self, spelch_edit_switch_edges (part, self->board, self->bit, !on), on, false);
}

static void
forces_switched (SpelchLogLesson *self)
{
  SpelchPart *part = part_of (self);
  bool on = gtk_switch_get_active (self->forces_used);
  if (self->showing || part == NULL || on == forces_are_held (self, part))
    return;
  if (on && strcmp (part->calibration.board, self->board) != 0)
    take_forces (self);
  else
    edit (self, spelch_edit_switch_forces (part, !on), on, true);
}

/* ---- Object ---- */

static void
spelch_log_lesson_dispose (GObject *object)
{
  SpelchLogLesson *self = SPELCH_LOG_LESSON (object);
  self->showing = true;
  g_clear_weak_pointer (&self->session);
  spelch_template_dispose (GTK_WIDGET (object), SPELCH_TYPE_LOG_LESSON);
  g_clear_object (&self->shelves);
  G_OBJECT_CLASS (spelch_log_lesson_parent_class)->dispose (object);
}

static void
spelch_log_lesson_finalize (GObject *object)
{
  SpelchLogLesson *self = SPELCH_LOG_LESSON (object);
  g_free (self->board);
  g_free (self->bit);
  G_OBJECT_CLASS (spelch_log_lesson_parent_class)->finalize (object);
}

static void
spelch_log_lesson_class_init (SpelchLogLessonClass *klass)
{
  GtkWidgetClass *widget_class = GTK_WIDGET_CLASS (klass);
  G_OBJECT_CLASS (klass)->dispose = spelch_log_lesson_dispose;
  G_OBJECT_CLASS (klass)->finalize = spelch_log_lesson_finalize;
  gtk_widget_class_set_template_from_resource (widget_class, "/org/spelch/Spelch/ui/log-lesson.ui");
  gtk_widget_class_bind_template_child (widget_class, SpelchLogLesson, heading);
  gtk_widget_class_bind_template_child (widget_class, SpelchLogLesson, motor);
  gtk_widget_class_bind_template_child (widget_class, SpelchLogLesson, far);
  gtk_widget_class_bind_template_child (widget_class, SpelchLogLesson, forces);
  gtk_widget_class_bind_template_child (widget_class, SpelchLogLesson, edges_row);
  gtk_widget_class_bind_template_child (widget_class, SpelchLogLesson, edges_used);
  gtk_widget_class_bind_template_child (widget_class, SpelchLogLesson, edges_part);
  gtk_widget_class_bind_template_child (widget_class, SpelchLogLesson, edges_take);
  gtk_widget_class_bind_template_child (widget_class, SpelchLogLesson, forces_row);
  gtk_widget_class_bind_template_child (widget_class, SpelchLogLesson, forces_used);
  gtk_widget_class_bind_template_child (widget_class, SpelchLogLesson, forces_part);
  gtk_widget_class_bind_template_child (widget_class, SpelchLogLesson, forces_take);
  gtk_widget_class_bind_template_callback (widget_class, edges_switched);
  gtk_widget_class_bind_template_callback (widget_class, forces_switched);
  gtk_widget_class_bind_template_callback (widget_class, take_edges);
  gtk_widget_class_bind_template_callback (widget_class, take_forces);
  gtk_widget_class_set_css_name (widget_class, "loglesson");
  gtk_widget_class_set_accessible_role (widget_class, GTK_ACCESSIBLE_ROLE_GROUP);
  gtk_widget_class_set_layout_manager_type (widget_class, GTK_TYPE_BIN_LAYOUT);
}

static void
spelch_log_lesson_init (SpelchLogLesson *self)
{
  gtk_widget_init_template (GTK_WIDGET (self));
  self->numbers = (SpelchNumbers){ .unit = SPELCH_UNIT_MM, .decimal_sign = '.' };
}

SpelchLogLesson *
spelch_log_lesson_new (SpelchShelves *shelves)
{
  SpelchLogLesson *self = g_object_new (SPELCH_TYPE_LOG_LESSON, NULL);
  self->shelves = g_object_ref (shelves);
  g_signal_connect_object (shelves, "looked-at", G_CALLBACK (session_came_to_the_fore), self,
                           G_CONNECT_SWAPPED);
  for (int kind = SPELCH_LIST_BITS; kind <= SPELCH_LIST_LOG; kind++)
    g_signal_connect_object (spelch_shelves_get (shelves, (SpelchListKind)kind), "changed", G_CALLBACK (show),
                             self, G_CONNECT_SWAPPED);
  return self;
}
