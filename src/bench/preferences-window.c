/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "bench/preferences-window.h"
#include "bench/escape.h"
#include "bench/text-size.h"
#include "bench/form.h"

#include <glib/gi18n-lib.h>
#include <stddef.h>

#define WIDTH   500
#define BODY    13 /* pixels of text at that width */
#define HEIGHT  560
#define MARGIN  24
#define MOST_MM 5.0

static const char *const UNITS[] = { N_ ("Millimetres"), N_ ("Inches"), NULL };
static const char *const INCHES[] = { N_ ("Fractions"), N_ ("Decimals"), NULL };
static const char *const FEEDS[] = {
  N_ ("As lengths are: mm/min or in/min"), N_ ("mm/min"), N_ ("m/min"), N_ ("in/min"), N_ ("ft/min"), NULL
};
static const char *const LOOKS[]
    = { N_ ("As the system"), N_ ("Light"), N_ ("Dark"), N_ ("High contrast"), NULL };
static const char *const GRADES[]
    = { N_ ("1, clean"),           N_ ("2, nearly clean"), N_ ("3, fuzzy or nicked"),
        N_ ("4, torn or chipped"), N_ ("5, badly torn"),   NULL };

#define AT(member) G_STRUCT_OFFSET (SpelchPreferences, member)

static const SpelchField FIELDS[] = {
  { SPELCH_FIELD_HEADING, NULL, N_ ("Numbers") },
  { SPELCH_FIELD_CHOICE, "unit", N_ ("Lengths"), AT (unit), .choices = UNITS },
  { SPELCH_FIELD_CHOICE, "inch_style", N_ ("Inches as"), AT (inch_style), .choices = INCHES },
  { SPELCH_FIELD_CHOICE, "feed_unit", N_ ("Feeds"), AT (feed_unit), .choices = FEEDS },
  { SPELCH_FIELD_HEADING, NULL, N_ ("Looks") },
  { SPELCH_FIELD_CHOICE, "appearance", N_ ("Appearance"), AT (appearance), .choices = LOOKS },
  { SPELCH_FIELD_FLAG, "reduced_motion", N_ ("Reduced motion"), AT (reduced_motion) },
  { SPELCH_FIELD_HEADING, NULL, N_ ("New parts") },
  { SPELCH_FIELD_CHOICE, "accepted_seen", N_ ("Worst grade on seen edges"), AT (accepted_seen),
    .choices = GRADES },
  { SPELCH_FIELD_CHOICE, "accepted_hidden", N_ ("Worst grade on hidden edges"), AT (accepted_hidden),
    .choices = GRADES },
  { SPELCH_FIELD_NUMBER, "depth_mm", N_ ("Depth is set within"), AT (tolerances.depth_mm), .unit = N_ ("mm"),
    .hint = N_ ("How far a depth set at the machine may be off, plus or minus.") },
  { SPELCH_FIELD_NUMBER, "up_shear_mm", N_ ("Up-shear is marked within"), AT (tolerances.up_shear_mm),
    .unit = N_ ("mm"), .hint = N_ ("How far a compression bit's turn-over may be from where it is marked.") },
};

/* In the form a grade is the number of a choice, which counts from 0. */
static SpelchPreferences
to_form (const SpelchPreferences *preferences)
{
  SpelchPreferences value = *preferences;
  value.accepted_seen--;
  value.accepted_hidden--;
  return value;
}

static SpelchPreferences
from_form (const SpelchPreferences *value)
{
  SpelchPreferences preferences = *value;
  preferences.accepted_seen++;
  preferences.accepted_hidden++;
  return preferences;
}

static char *
fault (gconstpointer value, gpointer data)
{
  const SpelchTolerances *tolerances = &((const SpelchPreferences *)value)->tolerances;
  if (!(tolerances->depth_mm >= 0 && tolerances->depth_mm <= MOST_MM))
    return g_strdup (_ ("depth_mm: from 0 to 5 mm."));
  if (!(tolerances->up_shear_mm >= 0 && tolerances->up_shear_mm <= MOST_MM))
    return g_strdup (_ ("up_shear_mm: from 0 to 5 mm."));
  return NULL;
}

static void
edited (SpelchPreferred *preferred, gconstpointer value, const char *field, SpelchForm *form)
{
  SpelchPreferences next = from_form (value);
  next.hints_done = spelch_preferred_get (preferred)->hints_done;
  spelch_preferred_set (preferred, &next);
}

static void
show_values (SpelchPreferred *preferred, SpelchForm *form)
{
  SpelchPreferences value = to_form (spelch_preferred_get (preferred));
  SpelchNumbers numbers = spelch_preferences_numbers (&value);
  spelch_form_set_numbers (form, &numbers);
  spelch_form_show (form, "preferences", &value);
}

void
spelch_preferences_window_show (GtkWindow *parent, SpelchPreferred *preferred)
{
  SpelchForm *form = spelch_form_new (FIELDS, G_N_ELEMENTS (FIELDS), sizeof (SpelchPreferences), fault, NULL);
  GtkWidget *window = gtk_window_new ();
  GtkWidget *scroller = gtk_scrolled_window_new ();
  gtk_widget_add_css_class (window, "bench");
  gtk_widget_set_margin_start (GTK_WIDGET (form), MARGIN);
  gtk_widget_set_margin_end (GTK_WIDGET (form), MARGIN);
  gtk_widget_set_margin_top (GTK_WIDGET (form), MARGIN);
  gtk_widget_set_margin_bottom (GTK_WIDGET (form), MARGIN);
  gtk_scrolled_window_set_policy (GTK_SCROLLED_WINDOW (scroller), GTK_POLICY_NEVER, GTK_POLICY_AUTOMATIC);
  gtk_scrolled_window_set_child (GTK_SCROLLED_WINDOW (scroller), GTK_WIDGET (form));
  gtk_window_set_child (GTK_WINDOW (window), scroller);
  gtk_window_set_title (GTK_WINDOW (window), _ ("Preferences"));
  /* Wide enough for large text too; what is too high scrolls. */
  double text = MAX (spelch_text_pixels (GTK_WIDGET (parent)) / BODY, 1);
  gtk_window_set_default_size (GTK_WINDOW (window), (int)(WIDTH * text), HEIGHT);
  gtk_window_set_transient_for (GTK_WINDOW (window), parent);
  spelch_escape_closes (GTK_WINDOW (window));
  show_values (preferred, form);
  g_signal_connect_object (form, "edited", G_CALLBACK (edited), preferred, G_CONNECT_SWAPPED);
  g_signal_connect_object (preferred, "changed", G_CALLBACK (show_values), form, 0);
  gtk_window_present (GTK_WINDOW (window));
}
