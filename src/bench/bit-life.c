/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "bench/bit-life.h"
#include "bench/form.h"
#include "bench/log-edits.h"
#include "bench/log-fields.h"
#include "bench/template.h"
#include "plan/words-log.h"
#include "shop/day.h"

#include <glib/gi18n-lib.h>
#include <string.h>

struct _SpelchBitLife
{
  GtkWidget parent_instance;
  SpelchShelves *shelves;
  SpelchBit bit;
  SpelchNumbers numbers;
  SpelchRenewing renewing;
  SpelchForm *form;

  GtkLabel *now;
  GtkLabel *earlier;
  GtkWidget *asked;
  GtkBox *place;
  GtkLabel *question;
};

G_DEFINE_FINAL_TYPE (SpelchBitLife, spelch_bit_life, GTK_TYPE_WIDGET)

static bool
is_sharpened (gconstpointer value)
{
  return ((const SpelchRenewing *)value)->kind == SPELCH_RENEWAL_SHARPENED;
}

static bool
turns_over (gconstpointer value)
{
  return is_sharpened (value) && ((const SpelchRenewing *)value)->compression;
}

static bool
is_on_the_bench (gconstpointer value)
{
  return ((const SpelchRenewing *)value)->on_the_bench;
}

#define AT(member) G_STRUCT_OFFSET (SpelchRenewing, member)

static const SpelchField FIELDS[] = {
  { SPELCH_FIELD_TEXT, "renewed_on", N_ ("On the day"), AT (date), SPELCH_DATE_SIZE, .is_past = true,
    .hint = N_ ("A day: 2026-05-31.") },
  { SPELCH_FIELD_LENGTH, "sharpened_diameter", N_ ("Diameter measured"), AT (diameter),
    .none = N_ ("as marked"), .applies = is_sharpened },
  { SPELCH_FIELD_LENGTH, "sharpened_up_shear", N_ ("Up-shear measured"), AT (up_shear),
    .none = N_ ("as marked"), .applies = turns_over },
  { SPELCH_FIELD_FLAG, "in_part", N_ ("In the part on the bench too"), AT (in_part),
    .applies = is_on_the_bench },
};

/* ---- Showing ---- */

static void
show_now (SpelchBitLife *self)
{
  g_autofree char *words = spelch_words_edge_now (&self->bit, &self->numbers);
  g_autofree char *earlier = spelch_words_edges_before (&self->bit, &self->numbers);
  gtk_label_set_text (self->now, words);
  gtk_label_set_text (self->earlier, earlier);
  gtk_widget_set_visible (GTK_WIDGET (self->earlier), earlier[0] != '\0');
}

static void
put_away (SpelchBitLife *self)
{
  gtk_widget_set_visible (self->asked, FALSE);
}

void
spelch_bit_life_show (SpelchBitLife *self, const SpelchBit *bit, const SpelchNumbers *numbers)
{
  if (strcmp (bit->id, self->bit.id) != 0)
    put_away (self);
  self->bit = *bit;
  self->numbers = *numbers;
  spelch_form_set_numbers (self->form, numbers);
  show_now (self);
}

/* ---- Renewing ---- */

static SpelchSession *
session_with_bit (SpelchBitLife *self)
{
  SpelchSession *session = spelch_shelves_get_session (self->shelves);
  const SpelchPart *part = session == NULL ? NULL : spelch_session_get_part (session);
  return part != NULL && spelch_part_find_bit (part, self->bit.id) >= 0 ? session : NULL;
}

/* What has just appeared can be scrolled to once it has its place, in the frame after. It is the last thing
 * there, so the end is shown. */
static gboolean
focus_when_placed (GtkWidget *widget, GdkFrameClock *clock, gpointer data)
{
  SpelchBitLife *self = SPELCH_BIT_LIFE (widget);
  if (gtk_widget_get_height (self->asked) == 0)
    return G_SOURCE_CONTINUE;
  GtkWidget *scroller = gtk_widget_get_ancestor (widget, GTK_TYPE_SCROLLED_WINDOW);
  GtkAdjustment *place
      = scroller == NULL ? NULL : gtk_scrolled_window_get_vadjustment (GTK_SCROLLED_WINDOW (scroller));
  if (place != NULL)
    gtk_adjustment_set_value (place, gtk_adjustment_get_upper (place) - gtk_adjustment_get_page_size (place));
  spelch_form_focus (self->form, "renewed_on");
  return G_SOURCE_REMOVE;
}

static void
ask (SpelchBitLife *self, SpelchRenewalKind kind)
{
  bool on_the_bench = session_with_bit (self) != NULL;
  self->renewing = (SpelchRenewing){ .kind = kind,
                                     .compression = self->bit.kind == SPELCH_BIT_COMPRESSION,
                                     .on_the_bench = on_the_bench,
                                     .in_part = on_the_bench };
  spelch_day_today (self->renewing.date);
  gtk_label_set_text (self->question, kind == SPELCH_RENEWAL_SHARPENED
                                          ? _ ("Sharpened: its metres begin anew, and what the log taught of "
                                               "the old edge no longer counts.")
                                          : _ ("Replaced by another like it: its metres begin anew, and what "
                                               "the log taught of the old one no longer counts."));
  g_autofree char *id
      = g_strdup_printf ("%s %s", self->bit.id, spelch_code_of (&SPELCH_RENEWAL_CODES, (int)kind));
  spelch_form_show (self->form, id, &self->renewing);
  gtk_widget_set_visible (self->asked, TRUE);
  gtk_widget_add_tick_callback (GTK_WIDGET (self), focus_when_placed, NULL, NULL);
}

static void
sharpened_clicked (SpelchBitLife *self)
{
  ask (self, SPELCH_RENEWAL_SHARPENED);
}

static void
replaced_clicked (SpelchBitLife *self)
{
  ask (self, SPELCH_RENEWAL_REPLACED);
}

static char *
fault_of (gconstpointer value, gpointer data)
{
  return spelch_renewing_fault (value, &SPELCH_BIT_LIFE (data)->bit);
}

static void
edited (SpelchForm *form, gconstpointer value, const char *field, SpelchBitLife *self)
{
  self->renewing = *(const SpelchRenewing *)value;
  g_autofree char *id = g_strdup_printf ("%s %s", self->bit.id,
                                         spelch_code_of (&SPELCH_RENEWAL_CODES, (int)self->renewing.kind));
  spelch_form_show (form, id, value);
}

static void
take_clicked (SpelchBitLife *self)
{
  bool sharpened = self->renewing.kind == SPELCH_RENEWAL_SHARPENED;
  SpelchSession *session = self->renewing.in_part ? session_with_bit (self) : NULL;
  SpelchShelf *drawer = spelch_shelves_get (self->shelves, SPELCH_LIST_BITS);
  if (spelch_form_is_unfinished (self->form))
    return; /* what is wrong stands beside it */
  g_autofree char *fault = spelch_renewing_fault (&self->renewing, &self->bit);
  if (fault != NULL)
    return;
  /* Both go by what is shown, which changes with the drawer. */
  SpelchBit renewed = spelch_bit_renewed (&self->bit, &self->renewing);
  const SpelchRenewing renewing = self->renewing;
  g_autofree char *what
      = g_strdup_printf (sharpened ? _ ("sharpening “%s”") : _ ("replacing “%s”"), self->bit.name);
  if (!spelch_shelf_put (drawer, &renewed, what))
    return; /* the window says why, and what was typed stays */
  put_away (self);
  if (session != NULL)
    spelch_session_edit (
        session, spelch_edit_renew (spelch_session_get_part (session), renewed.id, &renewing), what, NULL);
}

/* ---- Object ---- */

static void
spelch_bit_life_dispose (GObject *object)
{
  SpelchBitLife *self = SPELCH_BIT_LIFE (object);
  spelch_template_dispose (GTK_WIDGET (object), SPELCH_TYPE_BIT_LIFE);
  g_clear_object (&self->shelves);
  G_OBJECT_CLASS (spelch_bit_life_parent_class)->dispose (object);
}

static void
spelch_bit_life_class_init (SpelchBitLifeClass *klass)
{
  GtkWidgetClass *widget_class = GTK_WIDGET_CLASS (klass);
  G_OBJECT_CLASS (klass)->dispose = spelch_bit_life_dispose;
  gtk_widget_class_set_template_from_resource (widget_class, "/org/spelch/Spelch/ui/bit-life.ui");
  gtk_widget_class_bind_template_child (widget_class, SpelchBitLife, now);
  gtk_widget_class_bind_template_child (widget_class, SpelchBitLife, earlier);
  gtk_widget_class_bind_template_child (widget_class, SpelchBitLife, asked);
  gtk_widget_class_bind_template_child (widget_class, SpelchBitLife, place);
  gtk_widget_class_bind_template_child (widget_class, SpelchBitLife, question);
  gtk_widget_class_bind_template_callback (widget_class, sharpened_clicked);
  gtk_widget_class_bind_template_callback (widget_class, replaced_clicked);
  gtk_widget_class_bind_template_callback (widget_class, take_clicked);
  gtk_widget_class_bind_template_callback (widget_class, put_away);
  gtk_widget_class_set_css_name (widget_class, "bitlife");
  gtk_widget_class_set_accessible_role (widget_class, GTK_ACCESSIBLE_ROLE_GROUP);
  gtk_widget_class_set_layout_manager_type (widget_class, GTK_TYPE_BIN_LAYOUT);
}

static void
spelch_bit_life_init (SpelchBitLife *self)
{
  gtk_widget_init_template (GTK_WIDGET (self));
  self->numbers = (SpelchNumbers){ .unit = SPELCH_UNIT_MM, .decimal_sign = '.' };
  self->form = spelch_form_new (FIELDS, G_N_ELEMENTS (FIELDS), sizeof (SpelchRenewing), fault_of, self);
  g_signal_connect (self->form, "edited", G_CALLBACK (edited), self);
  gtk_box_append (self->place, GTK_WIDGET (self->form));
}

SpelchBitLife *
spelch_bit_life_new (SpelchShelves *shelves)
{
  SpelchBitLife *self = g_object_new (SPELCH_TYPE_BIT_LIFE, NULL);
  self->shelves = g_object_ref (shelves);
  return self;
}
