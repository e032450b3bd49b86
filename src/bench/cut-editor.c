/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "bench/cut-editor.h"
#include "bench/bit-words.h"
#include "bench/cut-fields.h"
#include "bench/drafting.h"
#include "bench/edit-panel.h"
#include "bench/form.h"
#include "bench/path-dial.h"

#include <glib/gi18n-lib.h>

struct _SpelchCutEditor
{
  GtkWidget parent_instance;
  SpelchDrafting drafting;
  SpelchLook look;
  GtkWidget *panel; /* NULL until it is looked at */
  SpelchForm *form; /* NULL until it is looked at */
  SpelchPathDial *dial;
  SpelchField *fields;
  GStrv scorers; /* names of the bits to score with */
  SpelchCutChoices choices;
};

G_DEFINE_FINAL_TYPE (SpelchCutEditor, spelch_cut_editor, GTK_TYPE_WIDGET)

enum
{
  SIGNAL_DONE,
  N_SIGNALS
};
static guint signals[N_SIGNALS];

/* ---- Into the session ---- */

static void
take_in (SpelchCutEditor *self, const SpelchCutDraft *draft, const char *field)
{
  const SpelchCut *cut = &self->choices.part->cuts[self->choices.index];
  g_autofree char *name = g_strdup_printf (_ ("change “%s” of “%s”"), field, cut->name);
  spelch_drafting_enter (&self->drafting, spelch_cut_drafted_part (draft, &self->choices), name, NULL);
}

static void
show_draft (SpelchCutEditor *self, const SpelchCutDraft *draft)
{
  const SpelchCut *cut = &self->choices.part->cuts[self->choices.index];
  g_autofree char *name = g_strdup_printf (_ ("change “%s”"), cut->name);
  spelch_drafting_show (&self->drafting, spelch_cut_drafted_part (draft, &self->choices), name);
}

static void
form_edited (SpelchForm *form, gpointer draft, const char *field, SpelchCutEditor *self)
{
  take_in (self, draft, field);
}

static void
form_drafted (SpelchForm *form, gpointer draft, SpelchCutEditor *self)
{
  show_draft (self, draft);
}

static void
form_dropped (SpelchForm *form, SpelchCutEditor *self)
{
  spelch_drafting_drop (&self->drafting);
}

static void
dial_turned (SpelchPathDial *dial, double degrees, gboolean done, SpelchCutEditor *self)
{
  const SpelchCut *cut = &self->choices.part->cuts[self->choices.index];
  SpelchCutDraft draft = spelch_cut_draft (cut, &self->choices);
  draft.cut.path_deg = degrees;
  if (!done)
    {
      show_draft (self, &draft);
      return;
    }
  g_autofree char *name = g_strdup_printf (_ ("turn the path of “%s”"), cut->name);
  g_autofree char *merge = g_strdup_printf ("path.%s", cut->id);
  spelch_drafting_enter (&self->drafting, spelch_cut_drafted_part (&draft, &self->choices), name, merge);
}

static void
dial_dropped (SpelchPathDial *dial, SpelchCutEditor *self)
{
  spelch_drafting_drop (&self->drafting);
}

/* ---- The form ---- */

static void
make_form (SpelchCutEditor *self, GStrv scorers)
{
  guint n = 0;
  g_autofree SpelchField *before = self->fields;
  g_auto (GStrv) names_before = self->scorers;
  self->scorers = scorers;
  self->fields = spelch_cut_fields ((const char *const *)self->scorers, &n);
  self->form
      = spelch_form_new (self->fields, n, sizeof (SpelchCutDraft), spelch_cut_draft_fault, &self->choices);
  self->dial = spelch_path_dial_new ();
  spelch_form_put_under (self->form, "path_deg", GTK_WIDGET (self->dial));
  g_signal_connect (self->form, "edited", G_CALLBACK (form_edited), self);
  g_signal_connect (self->form, "drafted", G_CALLBACK (form_drafted), self);
  g_signal_connect (self->form, "dropped", G_CALLBACK (form_dropped), self);
  g_signal_connect (self->dial, "turned", G_CALLBACK (dial_turned), self);
  g_signal_connect (self->dial, "dropped", G_CALLBACK (dial_dropped), self);
  spelch_edit_panel_set_form (SPELCH_EDIT_PANEL (self->panel), GTK_WIDGET (self->form));
}

static GStrv
name_scorers (SpelchCutEditor *self)
{
  g_autoptr (GStrvBuilder) names = g_strv_builder_new ();
  char sign = spelch_session_get_numbers (self->drafting.session)->decimal_sign;
  g_strv_builder_add (names, _ ("choose a bit"));
  for (guint i = 0; i < self->choices.n_bits; i++)
    {
      g_autofree char *name = spelch_bit_short_name (&self->choices.bits[i], sign);
      g_strv_builder_add (names, name);
    }
  return g_strv_builder_end (names);
}

/* Another set of bits to choose from makes another form; the same one keeps what is unfinished in it. */
static void
ensure_form (SpelchCutEditor *self)
{
  SpelchSession *session = self->drafting.session;
  g_free (self->choices.bits);
  self->choices.bits = spelch_session_copy_bits (session);
  self->choices.n_bits = spelch_session_count_bits (session);
  g_auto (GStrv) scorers = name_scorers (self);
  if (self->form != NULL && g_strv_equal ((const char *const *)scorers, (const char *const *)self->scorers))
    return;
  make_form (self, g_steal_pointer (&scorers));
}

/* ---- Following the session ---- */

static void
set_part (SpelchCutEditor *self, SpelchPart *part)
{
  SpelchPart *before = self->choices.part;
  self->choices.part = part == NULL ? NULL : spelch_part_ref (part);
  g_clear_pointer (&before, spelch_part_unref);
}

static void
panel_done (SpelchCutEditor *self)
{
  spelch_drafting_drop (&self->drafting);
  g_signal_emit (self, signals[SIGNAL_DONE], 0);
}

static void
ensure_panel (SpelchCutEditor *self)
{
  if (self->panel != NULL)
    return;
  self->panel = GTK_WIDGET (spelch_edit_panel_new ());
  gtk_widget_set_parent (self->panel, GTK_WIDGET (self));
  g_signal_connect_swapped (self->panel, "done", G_CALLBACK (panel_done), self);
}

static void
follow (SpelchCutEditor *self)
{
  SpelchSession *session = self->drafting.session;
  SpelchPart *part = spelch_session_get_part (session);
  if (part == NULL || part->n_cuts == 0)
    {
      set_part (self, NULL);
      g_signal_emit (self, signals[SIGNAL_DONE], 0);
      return;
    }
  set_part (self, part);
  self->choices.index = spelch_session_get_cut_index (session);
  ensure_panel (self);
  ensure_form (self);
  const SpelchCut *cut = &part->cuts[self->choices.index];
  SpelchCutDraft draft = spelch_cut_draft (cut, &self->choices);
  g_autofree char *title = g_strdup_printf (_ ("Cut %u of %u"), self->choices.index + 1, part->n_cuts);
  spelch_edit_panel_set_title (SPELCH_EDIT_PANEL (self->panel), title);
  spelch_form_set_numbers (self->form, spelch_session_get_numbers (session));
  spelch_form_show (self->form, cut->id, &draft);
  spelch_path_dial_show (self->dial, part, cut, spelch_palette (self->look));
}

/* While it is typed, the session shows what the form says, not the other way round; the dial follows always.
 */
static void
session_changed (SpelchSession *session, guint change, SpelchCutEditor *self)
{
  if (!gtk_widget_get_mapped (GTK_WIDGET (self)) || change == SPELCH_CHANGE_PLAN)
    return;
  if (!spelch_session_in_gesture (session))
    {
      spelch_drafting_is_under_way (&self->drafting);
      follow (self);
      return;
    }
  const SpelchPart *part = spelch_session_get_part (session);
  guint index = spelch_session_get_cut_index (session);
  if (self->dial != NULL && index < part->n_cuts)
    spelch_path_dial_show (self->dial, part, &part->cuts[index], spelch_palette (self->look));
}

void
spelch_cut_editor_begin (SpelchCutEditor *self, const char *member)
{
  follow (self);
  if (self->form != NULL)
    spelch_form_focus (self->form, member);
}

void
spelch_cut_editor_set_session (SpelchCutEditor *self, SpelchSession *session)
{
  self->drafting.session = session;
  g_signal_connect_object (session, "changed", G_CALLBACK (session_changed), self, 0);
}

void
spelch_cut_editor_set_look (SpelchCutEditor *self, SpelchLook look)
{
  self->look = look;
  if (gtk_widget_get_mapped (GTK_WIDGET (self)))
    follow (self);
}

/* ---- Object ---- */

static void
spelch_cut_editor_dispose (GObject *object)
{
  SpelchCutEditor *self = SPELCH_CUT_EDITOR (object);
  if (self->form != NULL)
    g_signal_handlers_disconnect_by_data (self->form, self);
  self->form = NULL;
  self->dial = NULL;
  g_clear_pointer (&self->panel, gtk_widget_unparent);
  set_part (self, NULL);
  G_OBJECT_CLASS (spelch_cut_editor_parent_class)->dispose (object);
}

static void
spelch_cut_editor_finalize (GObject *object)
{
  SpelchCutEditor *self = SPELCH_CUT_EDITOR (object);
  g_free (self->fields);
  g_free (self->choices.bits);
  g_strfreev (self->scorers);
  G_OBJECT_CLASS (spelch_cut_editor_parent_class)->finalize (object);
}

static void
spelch_cut_editor_class_init (SpelchCutEditorClass *klass)
{
  GtkWidgetClass *widget_class = GTK_WIDGET_CLASS (klass);
  G_OBJECT_CLASS (klass)->dispose = spelch_cut_editor_dispose;
  G_OBJECT_CLASS (klass)->finalize = spelch_cut_editor_finalize;
  signals[SIGNAL_DONE]
      = g_signal_new ("done", SPELCH_TYPE_CUT_EDITOR, G_SIGNAL_RUN_LAST, 0, NULL, NULL, NULL, G_TYPE_NONE, 0);
  gtk_widget_class_set_layout_manager_type (widget_class, GTK_TYPE_BIN_LAYOUT);
  gtk_widget_class_set_accessible_role (widget_class, GTK_ACCESSIBLE_ROLE_GROUP);
}

static void
spelch_cut_editor_init (SpelchCutEditor *self)
{
}
