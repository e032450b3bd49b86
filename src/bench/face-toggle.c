/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "bench/face-toggle.h"
#include "bench/part-edits.h"
#include "bench/telling.h"
#include "bench/tooltip.h"

#include <glib/gi18n-lib.h>

struct _SpelchFaceToggle
{
  GtkToggleButton parent_instance;
  SpelchSession *session;
  SpelchSide side;
  bool following;
};

G_DEFINE_FINAL_TYPE (SpelchFaceToggle, spelch_face_toggle, GTK_TYPE_TOGGLE_BUTTON)

static const SpelchCut *
cut_of (SpelchFaceToggle *self)
{
  const SpelchPart *part = spelch_session_get_part (self->session);
  guint index = spelch_session_get_cut_index (self->session);
  return part != NULL && index < part->n_cuts ? &part->cuts[index] : NULL;
}

static SpelchFace
face_of (SpelchFaceToggle *self, const SpelchCut *cut)
{
  return self->side == SPELCH_SIDE_MOTOR ? cut->way_up : spelch_face_other (cut->way_up);
}

/* A whole sentence each, for the sake of translations. */
static char *
name_of (SpelchFaceToggle *self, const SpelchCut *cut)
{
  const char *face = spelch_code_of (&SPELCH_FACE_CODES, (int)face_of (self, cut));
  bool motor = self->side == SPELCH_SIDE_MOTOR, seen = spelch_cut_sees (cut, face_of (self, cut));
  if (motor)
    return g_strdup_printf (seen ? _ ("Face %s, motor side: seen when finished")
                                 : _ ("Face %s, motor side: hidden when finished"),
                            face);
  return g_strdup_printf (seen ? _ ("Face %s, far side: seen when finished")
                               : _ ("Face %s, far side: hidden when finished"),
                          face);
}

static void
follow (SpelchFaceToggle *self)
{
  const SpelchCut *cut = cut_of (self);
  gtk_widget_set_visible (GTK_WIDGET (self), spelch_session_get_plan (self->session) != NULL);
  if (cut == NULL)
    return;
  bool seen = spelch_cut_sees (cut, face_of (self, cut));
  g_autofree char *name = name_of (self, cut);
  self->following = true;
  gtk_toggle_button_set_active (GTK_TOGGLE_BUTTON (self), seen);
  self->following = false;
  spelch_tooltip_set (GTK_WIDGET (self), seen ? _ ("Seen when finished: click to change")
                                              : _ ("Hidden when finished: click to change"));
  spelch_tell_soon (GTK_WIDGET (self), GTK_ACCESSIBLE_PROPERTY_LABEL, name);
}

static void
toggled (SpelchFaceToggle *self)
{
  const SpelchCut *cut = cut_of (self);
  if (self->following || cut == NULL)
    return;
  SpelchFace face = face_of (self, cut);
  bool seen = spelch_cut_sees (cut, face);
  g_autofree char *name = g_strdup_printf (seen ? _ ("hide face %s") : _ ("show face %s"),
                                           spelch_code_of (&SPELCH_FACE_CODES, (int)face));
  guint index = spelch_session_get_cut_index (self->session);
  spelch_session_edit (self->session, spelch_edit_seen (spelch_session_get_part (self->session), index, face),
                       name, NULL);
  follow (self); /* also when it was refused */
}

static void
session_settled (SpelchSession *session, guint change, SpelchFaceToggle *self)
{
  if (change & ~(guint)SPELCH_CHANGE_PLAN)
    follow (self);
}

static void
spelch_face_toggle_class_init (SpelchFaceToggleClass *klass)
{
}

static void
spelch_face_toggle_init (SpelchFaceToggle *self)
{
  gtk_widget_add_css_class (GTK_WIDGET (self), "face");
  gtk_widget_set_cursor_from_name (GTK_WIDGET (self), "pointer");
  g_signal_connect (self, "toggled", G_CALLBACK (toggled), NULL);
}

GtkWidget *
spelch_face_toggle_new (SpelchSession *session, SpelchSide side)
{
  SpelchFaceToggle *self = g_object_new (SPELCH_TYPE_FACE_TOGGLE, NULL);
  self->session = session;
  self->side = side;
  g_signal_connect_object (session, "settled", G_CALLBACK (session_settled), self, 0);
  follow (self);
  return GTK_WIDGET (self);
}
