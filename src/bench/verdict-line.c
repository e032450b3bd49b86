/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "bench/verdict-line.h"
#include "bench/live-text.h"
#include "bench/mark-words.h"

#include <glib/gi18n-lib.h>

struct _SpelchVerdictLine
{
  GtkWidget parent_instance;
  SpelchLiveText *sides[2]; /* by SpelchSide */
  bool wanted, planned;
};

G_DEFINE_FINAL_TYPE (SpelchVerdictLine, spelch_verdict_line, GTK_TYPE_WIDGET)

static void
show_side (SpelchVerdictLine *self, SpelchSession *session, SpelchSide side)
{
  const SpelchPlan *plan = spelch_session_get_plan (session);
  g_autofree char *face = spelch_mark_face (plan, spelch_session_get_cut (session), side);
  const char *grade = spelch_mark_grade (spelch_session_get_part (session), plan, side);
  /* Translators: a face of the board and how its edge comes out: "show face badly torn" */
  g_autofree char *words = g_strdup_printf (C_ ("face and its grade", "%s %s"), face, grade);
  bool stopped = plan->verdict == SPELCH_VERDICT_DO_NOT_CUT;
  g_autofree char *all = stopped && side == SPELCH_SIDE_MOTOR ? g_strdup_printf (_ ("Do not cut: %s"), words)
                                                              : g_strdup (words);
  spelch_live_text_set_text (self->sides[side], all);
  spelch_live_text_set_glyph (self->sides[side], spelch_glyph_of_edge (plan, side));
}

static void
show_or_hide (SpelchVerdictLine *self)
{
  gtk_widget_set_visible (GTK_WIDGET (self), self->wanted && self->planned);
}

void
spelch_verdict_line_set_wanted (SpelchVerdictLine *self, bool wanted)
{
  self->wanted = wanted;
  show_or_hide (self);
}

static void
session_changed (SpelchSession *session, guint change, SpelchVerdictLine *self)
{
  self->planned = spelch_session_get_plan (session) != NULL;
  show_or_hide (self);
  if (!self->planned)
    return;
  show_side (self, session, SPELCH_SIDE_MOTOR);
  show_side (self, session, SPELCH_SIDE_FAR);
}

void
spelch_verdict_line_set_session (SpelchVerdictLine *self, SpelchSession *session)
{
  g_signal_connect_object (session, "changed", G_CALLBACK (session_changed), self, 0);
  session_changed (session, SPELCH_CHANGE_OPENED, self);
}

static void
spelch_verdict_line_dispose (GObject *object)
{
  SpelchVerdictLine *self = SPELCH_VERDICT_LINE (object);
  for (int side = 0; side < 2; side++)
    if (self->sides[side] != NULL)
      gtk_widget_unparent (GTK_WIDGET (g_steal_pointer (&self->sides[side])));
  G_OBJECT_CLASS (spelch_verdict_line_parent_class)->dispose (object);
}

static void
spelch_verdict_line_class_init (SpelchVerdictLineClass *klass)
{
  GtkWidgetClass *widget_class = GTK_WIDGET_CLASS (klass);
  G_OBJECT_CLASS (klass)->dispose = spelch_verdict_line_dispose;
  gtk_widget_class_set_layout_manager_type (widget_class, GTK_TYPE_BOX_LAYOUT);
  gtk_widget_class_set_css_name (widget_class, "verdictline");
  gtk_widget_class_set_accessible_role (widget_class, GTK_ACCESSIBLE_ROLE_GROUP);
}

static void
spelch_verdict_line_init (SpelchVerdictLine *self)
{
  for (int side = 0; side < 2; side++)
    {
      self->sides[side] = g_object_new (SPELCH_TYPE_LIVE_TEXT, "width-chars", 22, "hexpand", TRUE, NULL);
      gtk_widget_add_css_class (GTK_WIDGET (self->sides[side]), "strong");
      gtk_widget_set_parent (GTK_WIDGET (self->sides[side]), GTK_WIDGET (self));
    }
}
