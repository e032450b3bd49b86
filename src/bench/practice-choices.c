/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "bench/practice-choices.h"
#include "bench/paragraph.h"
#include "plan/words-posed.h"

#include <glib/gi18n-lib.h>

struct _SpelchPracticeChoices
{
  GtkWidget parent_instance;
  GtkBox *box;
  GtkWidget *depth_row;
  GtkEntry *depth;
  GtkWidget *rows[SPELCH_CHOICES_MOST]; /* GtkCheckButton */
  guint n;
  bool by_depth;
  bool following; /* the field is being filled, not typed into */
  SpelchNumbers numbers;
  char codes[SPELCH_CHOICES_MOST][SPELCH_ID_SIZE];
};

G_DEFINE_FINAL_TYPE (SpelchPracticeChoices, spelch_practice_choices, GTK_TYPE_WIDGET)

enum
{
  SIGNAL_TYPED,
  SIGNAL_CHOSEN,
  N_SIGNALS
};
static guint signals[N_SIGNALS];

static int
chosen (SpelchPracticeChoices *self)
{
  for (guint i = 0; i < self->n; i++)
    if (gtk_check_button_get_active (GTK_CHECK_BUTTON (self->rows[i])))
      return (int)i;
  return -1;
}

static void
tell_chosen (SpelchPracticeChoices *self)
{
  if (!self->following)
    g_signal_emit (self, signals[SIGNAL_CHOSEN], 0);
}

/* ---- Depths ---- */

static bool
read_depth (SpelchPracticeChoices *self, SpelchLength *depth, GError **error)
{
  return spelch_length_parse (gtk_editable_get_text (GTK_EDITABLE (self->depth)), self->numbers.unit, depth,
                              error);
}

/* "No depth will do" and a depth exclude each other. */
static void
untick (SpelchPracticeChoices *self)
{
  self->following = true;
  for (guint i = 0; i < self->n && self->by_depth; i++)
    gtk_check_button_set_active (GTK_CHECK_BUTTON (self->rows[i]), FALSE);
  self->following = false;
}

static void
depth_typed (SpelchPracticeChoices *self)
{
  SpelchLength depth;
  if (self->following)
    return;
  untick (self);
  if (read_depth (self, &depth, NULL) && depth.mm > 0)
    g_signal_emit (self, signals[SIGNAL_TYPED], 0, depth.mm);
  tell_chosen (self);
}

static void
fill_depth (SpelchPracticeChoices *self, const char *words)
{
  self->following = true;
  gtk_editable_set_text (GTK_EDITABLE (self->depth), words);
  self->following = false;
}

void
spelch_practice_choices_set_depth (SpelchPracticeChoices *self, double depth_mm)
{
  g_autofree char *words = spelch_words_length (&self->numbers, depth_mm);
  untick (self);
  fill_depth (self, words);
  tell_chosen (self);
}

static void
toggled (GtkCheckButton *row, SpelchPracticeChoices *self)
{
  if (self->following)
    return;
  if (self->by_depth && gtk_check_button_get_active (row))
    fill_depth (self, "");
  tell_chosen (self);
}

/* ---- Choices ---- */

static GtkWidget *
row_new (SpelchPracticeChoices *self, guint i, const char *words, const char *meaning)
{
  const char letter[] = { (char)('A' + i), '\0' };
  GtkWidget *row
      = g_object_new (GTK_TYPE_CHECK_BUTTON, "accessible-role",
                      self->by_depth ? GTK_ACCESSIBLE_ROLE_CHECKBOX : GTK_ACCESSIBLE_ROLE_RADIO, NULL);
  GtkWidget *sides = gtk_box_new (GTK_ORIENTATION_HORIZONTAL, 10);
  GtkWidget *name = gtk_label_new (letter), *label = spelch_paragraph_new (words, "plain");
  GtkWidget *means = spelch_paragraph_new (meaning, "means");
  GtkWidget *lines = gtk_box_new (GTK_ORIENTATION_VERTICAL, 0);
  g_autofree char *spoken = g_strdup_printf (_ ("%s: %s"), letter, words);
  gtk_widget_add_css_class (name, "strong");
  gtk_widget_set_valign (name, GTK_ALIGN_START);
  gtk_widget_set_visible (name, !self->by_depth);
  gtk_widget_set_hexpand (label, TRUE);
  gtk_widget_set_visible (means, *meaning != '\0');
  gtk_box_append (GTK_BOX (lines), label);
  gtk_box_append (GTK_BOX (lines), means);
  gtk_box_append (GTK_BOX (sides), name);
  gtk_box_append (GTK_BOX (sides), lines);
  gtk_check_button_set_child (GTK_CHECK_BUTTON (row), sides);
  if (i > 0 && !self->by_depth)
    gtk_check_button_set_group (GTK_CHECK_BUTTON (row), GTK_CHECK_BUTTON (self->rows[0]));
  gtk_accessible_update_property (GTK_ACCESSIBLE (row), GTK_ACCESSIBLE_PROPERTY_LABEL,
                                  self->by_depth ? words : spoken, -1);
  if (*meaning != '\0')
    gtk_accessible_update_property (GTK_ACCESSIBLE (row), GTK_ACCESSIBLE_PROPERTY_DESCRIPTION, meaning, -1);
  gtk_widget_add_css_class (row, "choice");
  g_signal_connect (row, "toggled", G_CALLBACK (toggled), self);
  return row;
}

void
spelch_practice_choices_show (SpelchPracticeChoices *self, const SpelchPosed *posed,
                              const SpelchNumbers *numbers)
{
  for (guint i = 0; i < self->n; i++)
    gtk_box_remove (self->box, self->rows[i]);
  self->n = 0;
  self->numbers = *numbers;
  self->by_depth = posed->by_depth;
  gtk_widget_set_visible (self->depth_row, posed->by_depth);
  fill_depth (self, "");
  for (guint i = 0; i < posed->n_choices; i++)
    {
      g_autofree char *words = spelch_words_posed_choice (posed, i, numbers);
      self->rows[i] = row_new (self, i, words, spelch_words_posed_meaning (posed, i));
      g_strlcpy (self->codes[i], posed->choices[i], SPELCH_ID_SIZE);
      gtk_box_append (self->box, self->rows[i]);
      self->n++;
    }
}

bool
spelch_practice_choices_choose (SpelchPracticeChoices *self, guint i)
{
  if (i >= self->n || self->by_depth)
    return false;
  gtk_check_button_set_active (GTK_CHECK_BUTTON (self->rows[i]), TRUE);
  gtk_widget_grab_focus (self->rows[i]);
  return true;
}

char *
spelch_practice_choices_get_answer (SpelchPracticeChoices *self)
{
  SpelchLength depth;
  int i = chosen (self);
  if (i >= 0)
    return g_strdup (self->codes[i]);
  if (!self->by_depth || !read_depth (self, &depth, NULL) || depth.mm <= 0)
    return NULL;
  return g_strdup (gtk_editable_get_text (GTK_EDITABLE (self->depth)));
}

char *
spelch_practice_choices_complaint (SpelchPracticeChoices *self)
{
  g_autoptr (GError) error = NULL;
  SpelchLength depth;
  const char *typed = gtk_editable_get_text (GTK_EDITABLE (self->depth));
  if (chosen (self) >= 0)
    return g_strdup ("");
  if (!self->by_depth)
    return g_strdup (_ ("Choose what you expect first; a guess will do."));
  if (*typed == '\0')
    return g_strdup (_ ("Drag the bit to the depth you expect first, or type it; a guess will do."));
  if (!read_depth (self, &depth, &error))
    return g_strdup (error->message);
  return g_strdup (depth.mm > 0 ? "" : _ ("A pass has to go deeper than that."));
}

void
spelch_practice_choices_focus (SpelchPracticeChoices *self)
{
  if (self->by_depth)
    gtk_widget_grab_focus (GTK_WIDGET (self->depth));
  else if (self->n > 0)
    gtk_widget_grab_focus (self->rows[MAX (chosen (self), 0)]);
}

/* ---- Object ---- */

static void
spelch_practice_choices_dispose (GObject *object)
{
  SpelchPracticeChoices *self = SPELCH_PRACTICE_CHOICES (object);
  self->n = 0;
  if (self->box != NULL)
    gtk_widget_unparent (GTK_WIDGET (self->box));
  self->box = NULL;
  G_OBJECT_CLASS (spelch_practice_choices_parent_class)->dispose (object);
}

static void
spelch_practice_choices_class_init (SpelchPracticeChoicesClass *klass)
{
  GtkWidgetClass *widget_class = GTK_WIDGET_CLASS (klass);
  G_OBJECT_CLASS (klass)->dispose = spelch_practice_choices_dispose;
  signals[SIGNAL_TYPED] = g_signal_new ("typed", SPELCH_TYPE_PRACTICE_CHOICES, G_SIGNAL_RUN_LAST, 0, NULL,
                                        NULL, NULL, G_TYPE_NONE, 1, G_TYPE_DOUBLE);
  signals[SIGNAL_CHOSEN] = g_signal_new ("chosen", SPELCH_TYPE_PRACTICE_CHOICES, G_SIGNAL_RUN_LAST, 0, NULL,
                                         NULL, NULL, G_TYPE_NONE, 0);
  gtk_widget_class_set_css_name (widget_class, "practicechoices");
  gtk_widget_class_set_layout_manager_type (widget_class, GTK_TYPE_BIN_LAYOUT);
  gtk_widget_class_set_accessible_role (widget_class, GTK_ACCESSIBLE_ROLE_GROUP);
}

static GtkWidget *
depth_row_new (SpelchPracticeChoices *self)
{
  GtkWidget *row = gtk_box_new (GTK_ORIENTATION_HORIZONTAL, 10);
  GtkWidget *label = gtk_label_new_with_mnemonic (_ ("_Depth of the first pass"));
  self->depth = GTK_ENTRY (gtk_entry_new ());
  gtk_editable_set_width_chars (GTK_EDITABLE (self->depth), 10);
  gtk_editable_set_max_width_chars (GTK_EDITABLE (self->depth), 12);
  gtk_entry_set_activates_default (self->depth, TRUE);
  gtk_label_set_mnemonic_widget (GTK_LABEL (label), GTK_WIDGET (self->depth));
  gtk_label_set_wrap (GTK_LABEL (label), TRUE);
  gtk_label_set_xalign (GTK_LABEL (label), 0);
  g_signal_connect_swapped (self->depth, "changed", G_CALLBACK (depth_typed), self);
  gtk_box_append (GTK_BOX (row), label);
  gtk_box_append (GTK_BOX (row), GTK_WIDGET (self->depth));
  return row;
}

static void
spelch_practice_choices_init (SpelchPracticeChoices *self)
{
  self->box = GTK_BOX (gtk_box_new (GTK_ORIENTATION_VERTICAL, 6));
  self->depth_row = depth_row_new (self);
  gtk_box_append (self->box, self->depth_row);
  gtk_widget_set_parent (GTK_WIDGET (self->box), GTK_WIDGET (self));
}

SpelchPracticeChoices *
spelch_practice_choices_new (void)
{
  return g_object_new (SPELCH_TYPE_PRACTICE_CHOICES, NULL);
}
