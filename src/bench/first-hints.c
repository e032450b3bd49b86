/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "bench/first-hints.h"
#include "bench/template.h"
#include "bench/tooltip.h"

#include <glib/gi18n-lib.h>

#define PULL_TO_MM     6.0
#define PULL_TO_INCHES (15 / 64.0)
#define PULL_NEAR_MM   0.05 /* a drag needn't meet it exactly */
#define CLEAN          1    /* grade */

/* What is done so far, as the preference counts it. */
typedef enum
{
  HINT_PULL_UP,
  HINT_PUSH_BACK,
  HINT_TURN_OVER,
  HINT_OWN_BOARD, /* not in the line, but beside the board's name */
  HINTS_OVER,
} SpelchFirstHint;

struct _SpelchFirstHints
{
  GtkWidget parent_instance;
  GtkLabel *count;
  GtkLabel *words;
  GtkWidget *own_board;
  SpelchSession *session;
  SpelchPreferred *preferred;
  bool is_demo;
  guint done; /* SpelchFirstHint; the preference follows when nothing is dragged */
  SpelchFace way_up;
  char *board; /* id */
};

G_DEFINE_FINAL_TYPE (SpelchFirstHints, spelch_first_hints, GTK_TYPE_WIDGET)

/* ---- What to do ---- */

static double
pull_to_mm (SpelchFirstHints *self)
{
  return spelch_session_get_numbers (self->session)->unit == SPELCH_UNIT_INCH
             ? PULL_TO_INCHES * SPELCH_MM_PER_INCH
             : PULL_TO_MM;
}

static char *
words_of (SpelchFirstHints *self)
{
  const SpelchNumbers *numbers = spelch_session_get_numbers (self->session);
  int decimals = numbers->unit == SPELCH_UNIT_INCH ? 1 : 0;
  g_autofree char *depth = spelch_length_format (pull_to_mm (self), numbers->unit, numbers->inch_style,
                                                 decimals, numbers->decimal_sign);
  switch (self->done)
    {
    case HINT_PULL_UP:
      /* Translators: %s is a depth, "6 mm" */
      return g_strdup_printf (_ ("Pull the bit up to %s and watch the show face"), depth);
    case HINT_PUSH_BACK:
      return g_strdup (_ ("Now push it back until it is clean"));
    case HINT_TURN_OVER:
      return g_strdup (_ ("Turn the board over"));
    default:
      return g_strdup ("");
    }
}

static const char *
keys_of (SpelchFirstHints *self)
{
  switch (self->done)
    {
    case HINT_PULL_UP:
      return _ ("Drag the bit or its mark, or press the Up key with the mark “Pass 1” focused.");
    case HINT_PUSH_BACK:
      return _ ("Drag the bit or its mark, or press the Down key with the mark “Pass 1” focused.");
    case HINT_TURN_OVER:
      return _ ("Press the button “Turn over”.");
    default:
      return "";
    }
}

static void
show (SpelchFirstHints *self)
{
  bool in_line = self->is_demo && self->done < HINT_OWN_BOARD;
  g_autofree char *words = words_of (self);
  /* Translators: which hint of how many, "1 of 3" */
  g_autofree char *count = g_strdup_printf (_ ("%u of %u"), self->done + 1, (guint)HINT_OWN_BOARD);
  gtk_widget_set_visible (GTK_WIDGET (self), in_line);
  gtk_widget_set_visible (self->own_board, self->is_demo && self->done == HINT_OWN_BOARD);
  gtk_label_set_text (self->words, words);
  gtk_label_set_text (self->count, in_line ? count : "");
  spelch_tooltip_set (GTK_WIDGET (self), keys_of (self));
}

/* ---- Whether it was done ---- */

static bool
seen_is_clean (const SpelchPlan *plan, const SpelchCut *cut)
{
  for (int side = SPELCH_SIDE_MOTOR; side <= SPELCH_SIDE_FAR; side++)
    {
      SpelchFace face = side == SPELCH_SIDE_MOTOR ? plan->near : spelch_face_other (plan->near);
      const SpelchEdge *edge = spelch_plan_worst (plan, (SpelchSide)side);
      if (spelch_cut_sees (cut, face) && edge != NULL && edge->grade > CLEAN)
        return false;
    }
  return true;
}

static bool
was_followed (SpelchFirstHints *self)
{
  const SpelchPlan *plan = spelch_session_get_plan (self->session);
  const SpelchCut *cut = spelch_session_get_cut (self->session);
  if (plan == NULL || plan->n_passes == 0)
    return false;
  switch (self->done)
    {
    case HINT_PULL_UP:
      return plan->passes[0].tip_mm <= pull_to_mm (self) + PULL_NEAR_MM;
    case HINT_PUSH_BACK:
      return seen_is_clean (plan, cut);
    case HINT_TURN_OVER:
      return cut->way_up != self->way_up;
    case HINT_OWN_BOARD:
      return g_strcmp0 (spelch_session_get_part (self->session)->board.id, self->board) != 0;
    default:
      return false;
    }
}

/* ---- Following ---- */

static void
remember (SpelchFirstHints *self)
{
  const SpelchCut *cut = spelch_session_get_cut (self->session);
  self->way_up = cut == NULL ? SPELCH_FACE_A : cut->way_up;
  g_free (self->board);
  self->board = g_strdup (spelch_session_get_part (self->session)->board.id);
}

static void
keep (SpelchFirstHints *self)
{
  SpelchPreferences next = *spelch_preferred_get (self->preferred);
  if (next.hints_done == self->done)
    return;
  next.hints_done = self->done;
  spelch_preferred_set (self->preferred, &next);
}

static void
session_changed (SpelchSession *session, guint change, SpelchFirstHints *self)
{
  if (change & SPELCH_CHANGE_OPENED)
    self->is_demo = false;
  if (change & (SPELCH_CHANGE_OPENED | SPELCH_CHANGE_NUMBERS))
    show (self);
  if (!self->is_demo || self->done == HINTS_OVER)
    return;
  if (change & SPELCH_CHANGE_CUT)
    remember (self);
  if (!was_followed (self))
    return;
  self->done++;
  remember (self);
  show (self);
}

/* The preference is written to disk: not while something is dragged. */
static void
session_settled (SpelchSession *session, guint change, SpelchFirstHints *self)
{
  if (self->is_demo)
    keep (self);
}

static void
preferred_changed (SpelchFirstHints *self)
{
  self->done = MIN (spelch_preferred_get (self->preferred)->hints_done, (guint)HINTS_OVER);
  show (self);
}

static void
put_away (SpelchFirstHints *self)
{
  self->done = HINTS_OVER;
  keep (self);
  show (self);
}

void
spelch_first_hints_begin (SpelchFirstHints *self)
{
  self->is_demo = true;
  remember (self);
  preferred_changed (self);
}

void
spelch_first_hints_set_session (SpelchFirstHints *self, SpelchSession *session, SpelchPreferred *preferred,
                                GtkWidget *own_board)
{
  self->session = session;
  self->preferred = preferred;
  self->own_board = own_board;
  g_signal_connect_object (session, "changed", G_CALLBACK (session_changed), self, 0);
  g_signal_connect_object (session, "settled", G_CALLBACK (session_settled), self, 0);
  g_signal_connect_object (preferred, "changed", G_CALLBACK (preferred_changed), self, G_CONNECT_SWAPPED);
  g_signal_connect_object (own_board, "clicked", G_CALLBACK (put_away), self, G_CONNECT_SWAPPED);
  preferred_changed (self);
}

/* ---- Object ---- */

static void
spelch_first_hints_dispose (GObject *object)
{
  spelch_template_dispose (GTK_WIDGET (object), SPELCH_TYPE_FIRST_HINTS);
  G_OBJECT_CLASS (spelch_first_hints_parent_class)->dispose (object);
}

static void
spelch_first_hints_finalize (GObject *object)
{
  g_free (SPELCH_FIRST_HINTS (object)->board);
  G_OBJECT_CLASS (spelch_first_hints_parent_class)->finalize (object);
}

static void
spelch_first_hints_class_init (SpelchFirstHintsClass *klass)
{
  GtkWidgetClass *widget_class = GTK_WIDGET_CLASS (klass);
  G_OBJECT_CLASS (klass)->dispose = spelch_first_hints_dispose;
  G_OBJECT_CLASS (klass)->finalize = spelch_first_hints_finalize;
  gtk_widget_class_set_template_from_resource (widget_class, "/org/spelch/Spelch/ui/first-hints.ui");
  gtk_widget_class_bind_template_child (widget_class, SpelchFirstHints, count);
  gtk_widget_class_bind_template_child (widget_class, SpelchFirstHints, words);
  gtk_widget_class_bind_template_callback (widget_class, put_away);
  gtk_widget_class_set_css_name (widget_class, "firsthints");
  gtk_widget_class_set_accessible_role (widget_class, GTK_ACCESSIBLE_ROLE_GROUP);
  gtk_widget_class_set_layout_manager_type (widget_class, GTK_TYPE_BIN_LAYOUT);
}

static void
spelch_first_hints_init (SpelchFirstHints *self)
{
  gtk_widget_init_template (GTK_WIDGET (self));
}
