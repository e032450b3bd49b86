/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "bench/edge-row.h"
#include "bench/live-text.h"
#include "bench/mark-words.h"
#include "bench/template.h"

#include <glib/gi18n-lib.h>

struct _SpelchEdgeRow
{
  GtkWidget parent_instance;
  SpelchLiveText *face;
  SpelchLiveText *grade;
  SpelchLiveText *reason;
  GtkToggleButton *why;
  GtkBox *reasons;

  SpelchSession *session; /* the one followed last */
  SpelchSide side;
};

G_DEFINE_FINAL_TYPE (SpelchEdgeRow, spelch_edge_row, GTK_TYPE_WIDGET)

static SpelchLiveText *
nth_reason (SpelchEdgeRow *self, guint n)
{
  GtkWidget *child = gtk_widget_get_first_child (GTK_WIDGET (self->reasons));
  for (guint i = 0; child != NULL && i < n; i++)
    child = gtk_widget_get_next_sibling (child);
  if (child == NULL)
    {
      child = g_object_new (SPELCH_TYPE_LIVE_TEXT, "lines", 1, "width-chars", 12, NULL);
      gtk_box_append (self->reasons, child);
    }
  return SPELCH_LIVE_TEXT (child);
}

static void
show_reasons (SpelchEdgeRow *self)
{
  const SpelchPlan *plan = self->session == NULL ? NULL : spelch_session_get_plan (self->session);
  bool open = gtk_toggle_button_get_active (self->why) && plan != NULL;
  gtk_widget_set_visible (GTK_WIDGET (self->reasons), open);
  if (!open)
    return;
  g_auto (GStrv) why = spelch_words_edge_why (plan, self->side, spelch_session_get_numbers (self->session));
  guint n = g_strv_length (why);
  for (guint i = 0; i < n; i++)
    {
      SpelchLiveText *text = nth_reason (self, i);
      g_autofree char *item = g_strdup_printf ("• %s", why[i]);
      spelch_live_text_set_text (text, item);
      gtk_widget_set_visible (GTK_WIDGET (text), TRUE);
    }
  GtkWidget *rest = gtk_widget_get_first_child (GTK_WIDGET (self->reasons));
  for (guint i = 0; rest != NULL; i++, rest = gtk_widget_get_next_sibling (rest))
    if (i >= n)
      gtk_widget_set_visible (rest, FALSE);
}

void
spelch_edge_row_settle (SpelchEdgeRow *self)
{
  spelch_live_text_settle (self->reason);
  GtkWidget *child = gtk_widget_get_first_child (GTK_WIDGET (self->reasons));
  for (; child != NULL; child = gtk_widget_get_next_sibling (child))
    spelch_live_text_settle (SPELCH_LIVE_TEXT (child));
}

void
spelch_edge_row_follow (SpelchEdgeRow *self, SpelchSession *session, SpelchSide side)
{
  const SpelchPlan *plan = spelch_session_get_plan (session);
  self->session = session;
  self->side = side;
  if (plan == NULL)
    return;
  const SpelchEdge *edge = spelch_plan_worst (plan, side);
  g_autofree char *face = spelch_words_face (plan, spelch_session_get_cut (session), side);
  g_autofree char *reason = spelch_words_edge_reason (plan, side, spelch_session_get_numbers (session));
  spelch_live_text_set_text (self->face, face);
  spelch_live_text_set_glyph (self->grade, spelch_glyph_of_grade (edge == NULL ? 0 : edge->grade));
  spelch_live_text_set_caption (self->grade, face);
  spelch_live_text_set_text (self->grade, spelch_mark_grade (spelch_session_get_part (session), plan, side));
  spelch_live_text_set_text (self->reason, reason);
  gtk_widget_set_sensitive (GTK_WIDGET (self->why), edge != NULL);
  show_reasons (self);
}

static void
spelch_edge_row_dispose (GObject *object)
{
  spelch_template_dispose (GTK_WIDGET (object), SPELCH_TYPE_EDGE_ROW);
  G_OBJECT_CLASS (spelch_edge_row_parent_class)->dispose (object);
}

static void
spelch_edge_row_class_init (SpelchEdgeRowClass *klass)
{
  GtkWidgetClass *widget_class = GTK_WIDGET_CLASS (klass);
  G_OBJECT_CLASS (klass)->dispose = spelch_edge_row_dispose;
  g_type_ensure (SPELCH_TYPE_LIVE_TEXT);
  gtk_widget_class_set_template_from_resource (widget_class, "/org/spelch/Spelch/ui/edge-row.ui");
  gtk_widget_class_bind_template_child (widget_class, SpelchEdgeRow, face);
  gtk_widget_class_bind_template_child (widget_class, SpelchEdgeRow, grade);
  gtk_widget_class_bind_template_child (widget_class, SpelchEdgeRow, reason);
  gtk_widget_class_bind_template_child (widget_class, SpelchEdgeRow, why);
  gtk_widget_class_bind_template_child (widget_class, SpelchEdgeRow, reasons);
  gtk_widget_class_bind_template_callback (widget_class, show_reasons);
  gtk_widget_class_set_css_name (widget_class, "edgerow");
  gtk_widget_class_set_accessible_role (widget_class, GTK_ACCESSIBLE_ROLE_GROUP);
  gtk_widget_class_set_layout_manager_type (widget_class, GTK_TYPE_BIN_LAYOUT);
}

static void
spelch_edge_row_init (SpelchEdgeRow *self)
{
  gtk_widget_init_template (GTK_WIDGET (self));
}
