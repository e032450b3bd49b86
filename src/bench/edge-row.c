/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "bench/edge-row.h"
#include "bench/live-text.h"
#include "bench/mark-words.h"
#include "bench/template.h"

struct _SpelchEdgeRow
{
  GtkWidget parent_instance;
  SpelchLiveText *face;
  SpelchLiveText *grade;
  SpelchLiveText *reason;
};

G_DEFINE_FINAL_TYPE (SpelchEdgeRow, spelch_edge_row, GTK_TYPE_WIDGET)

void
spelch_edge_row_settle (SpelchEdgeRow *self)
{
  spelch_live_text_settle (self->reason);
}

void
spelch_edge_row_follow (SpelchEdgeRow *self, SpelchSession *session, SpelchSide side)
{
  const SpelchPlan *plan = spelch_session_get_plan (session);
  if (plan == NULL)
    return;
  const SpelchEdge *edge = spelch_plan_worst (plan, side);
  g_autofree char *face = spelch_words_face (plan, spelch_session_get_cut (session), side);
  g_autofree char *reason = spelch_words_edge_reason (plan, side, spelch_session_get_numbers (session));
  spelch_live_text_set_text (self->face, face);
  spelch_live_text_set_glyph (self->grade, spelch_glyph_of_edge (plan, side));
  spelch_live_text_set_caption (self->grade, face);
  spelch_live_text_set_text (self->grade, spelch_mark_grade (spelch_session_get_part (session), plan, side));
  /* A face that isn't cut takes one line; whether it is doesn't change in a drag. */
  g_object_set (self->reason, "lines", edge == NULL ? 1 : 2, NULL);
  spelch_live_text_set_text (self->reason, reason);
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
  gtk_widget_class_set_css_name (widget_class, "edgerow");
  gtk_widget_class_set_accessible_role (widget_class, GTK_ACCESSIBLE_ROLE_GROUP);
  gtk_widget_class_set_layout_manager_type (widget_class, GTK_TYPE_BIN_LAYOUT);
}

static void
spelch_edge_row_init (SpelchEdgeRow *self)
{
  gtk_widget_init_template (GTK_WIDGET (self));
}
