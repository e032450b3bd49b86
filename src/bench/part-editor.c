/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "bench/part-editor.h"
#include "bench/cut-fields.h"
#include "bench/drafting.h"
#include "bench/edit-panel.h"
#include "bench/form.h"

#include <glib/gi18n-lib.h>

struct _SpelchPartEditor
{
  GtkWidget parent_instance;
  SpelchDrafting drafting;
  GtkWidget *panel; /* NULL until it is looked at, as the form in it */
  SpelchForm *form;
  SpelchPart *part; /* as the form shows it */
};

G_DEFINE_FINAL_TYPE (SpelchPartEditor, spelch_part_editor, GTK_TYPE_WIDGET)

enum
{
  SIGNAL_DONE,
  N_SIGNALS
};
static guint signals[N_SIGNALS];

static void
form_edited (SpelchForm *form, gpointer draft, const char *field, SpelchPartEditor *self)
{
  g_autofree char *name = g_strdup_printf (_ ("change “%s” of the part"), field);
  spelch_drafting_enter (&self->drafting, spelch_part_drafted (self->part, draft), name, NULL);
}

static void
form_drafted (SpelchForm *form, gpointer draft, SpelchPartEditor *self)
{
  spelch_drafting_show (&self->drafting, spelch_part_drafted (self->part, draft), _ ("change the part"));
}

static void
form_dropped (SpelchForm *form, SpelchPartEditor *self)
{
  spelch_drafting_drop (&self->drafting);
}

static void
set_part (SpelchPartEditor *self, SpelchPart *part)
{
  SpelchPart *before = self->part;
  self->part = part == NULL ? NULL : spelch_part_ref (part);
  g_clear_pointer (&before, spelch_part_unref);
}

static void
panel_done (SpelchPartEditor *self)
{
  spelch_drafting_drop (&self->drafting);
  g_signal_emit (self, signals[SIGNAL_DONE], 0);
}

static void
ensure_form (SpelchPartEditor *self)
{
  if (self->form != NULL)
    return;
  self->panel = GTK_WIDGET (spelch_edit_panel_new ());
  self->form = spelch_form_new (SPELCH_PART_FIELDS, SPELCH_N_PART_FIELDS, sizeof (SpelchPartDraft),
                                spelch_part_draft_fault, &self->part);
  spelch_edit_panel_set_title (SPELCH_EDIT_PANEL (self->panel), _ ("The part"));
  spelch_edit_panel_set_form (SPELCH_EDIT_PANEL (self->panel), GTK_WIDGET (self->form));
  gtk_widget_set_parent (self->panel, GTK_WIDGET (self));
  g_signal_connect_swapped (self->panel, "done", G_CALLBACK (panel_done), self);
  g_signal_connect (self->form, "edited", G_CALLBACK (form_edited), self);
  g_signal_connect (self->form, "drafted", G_CALLBACK (form_drafted), self);
  g_signal_connect (self->form, "dropped", G_CALLBACK (form_dropped), self);
}

static void
follow (SpelchPartEditor *self)
{
  SpelchSession *session = self->drafting.session;
  SpelchPart *part = spelch_session_get_part (session);
  if (part == NULL)
    return;
  ensure_form (self);
  set_part (self, part);
  SpelchPartDraft draft = spelch_part_draft (part);
  spelch_form_set_numbers (self->form, spelch_session_get_numbers (session));
  spelch_form_show (self->form, part->id, &draft);
}

static void
session_changed (SpelchSession *session, guint change, SpelchPartEditor *self)
{
  bool concerned = gtk_widget_get_mapped (GTK_WIDGET (self)) && change != SPELCH_CHANGE_PLAN;
  if (!concerned || spelch_session_in_gesture (session))
    return;
  spelch_drafting_is_under_way (&self->drafting);
  follow (self);
}

void
spelch_part_editor_begin (SpelchPartEditor *self, const char *member)
{
  follow (self);
  if (self->form != NULL)
    spelch_form_focus (self->form, member);
}

void
spelch_part_editor_set_session (SpelchPartEditor *self, SpelchSession *session)
{
  self->drafting.session = session;
  g_signal_connect_object (session, "changed", G_CALLBACK (session_changed), self, 0);
}

/* ---- Object ---- */

static void
spelch_part_editor_dispose (GObject *object)
{
  SpelchPartEditor *self = SPELCH_PART_EDITOR (object);
  if (self->form != NULL)
    g_signal_handlers_disconnect_by_data (self->form, self);
  self->form = NULL;
  g_clear_pointer (&self->panel, gtk_widget_unparent);
  set_part (self, NULL);
  G_OBJECT_CLASS (spelch_part_editor_parent_class)->dispose (object);
}

static void
spelch_part_editor_class_init (SpelchPartEditorClass *klass)
{
  GtkWidgetClass *widget_class = GTK_WIDGET_CLASS (klass);
  G_OBJECT_CLASS (klass)->dispose = spelch_part_editor_dispose;
  signals[SIGNAL_DONE] = g_signal_new ("done", SPELCH_TYPE_PART_EDITOR, G_SIGNAL_RUN_LAST, 0, NULL, NULL,
                                       NULL, G_TYPE_NONE, 0);
  gtk_widget_class_set_layout_manager_type (widget_class, GTK_TYPE_BIN_LAYOUT);
  gtk_widget_class_set_accessible_role (widget_class, GTK_ACCESSIBLE_ROLE_GROUP);
}

static void
spelch_part_editor_init (SpelchPartEditor *self)
{
}
