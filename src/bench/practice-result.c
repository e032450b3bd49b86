/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "bench/practice-result.h"
#include "bench/glyph.h"
#include "bench/why-row.h"
#include "bench/whys.h"
#include "files/shop-data.h"
#include "plan/words-posed.h"

#include <glib/gi18n-lib.h>
#include <string.h>

#define WHYS_MOST 3

struct _SpelchPracticeResult
{
  GtkWidget parent_instance;
  GtkBox *box;
  SpelchGlyph *sign;
  GtkLabel *verdict;
  GtkLabel *said, *comes;
  GtkLabel *wrong;
  GtkBox *reasons;
  SpelchWhyRow *whys[WHYS_MOST];
  GtkLabel *titles[WHYS_MOST];
  SpelchAbout abouts[WHYS_MOST];
  SpelchSession *session;
};

G_DEFINE_FINAL_TYPE (SpelchPracticeResult, spelch_practice_result, GTK_TYPE_WIDGET)

static GtkLabel *
label_new (const char *css_class)
{
  GtkWidget *label = gtk_label_new (NULL);
  gtk_label_set_wrap (GTK_LABEL (label), TRUE);
  gtk_label_set_xalign (GTK_LABEL (label), 0);
  gtk_label_set_selectable (GTK_LABEL (label), FALSE);
  gtk_widget_add_css_class (label, css_class);
  return GTK_LABEL (label);
}

/* ---- The chains of reasons ---- */

/* What a kind of question is about; their number. */
static guint
abouts_of (const SpelchPosed *posed, SpelchAbout *abouts)
{
  static const SpelchAbout ABOUTS[][WHYS_MOST] = {
    [SPELCH_ASKS_TEARS] = { SPELCH_ABOUT_MOTOR_EDGE, SPELCH_ABOUT_FAR_EDGE, SPELCH_N_ABOUTS },
    [SPELCH_ASKS_FIRST_PASS] = { SPELCH_ABOUT_MOTOR_EDGE, SPELCH_ABOUT_PASSES, SPELCH_N_ABOUTS },
    [SPELCH_ASKS_BIT] = { SPELCH_ABOUT_MOTOR_EDGE, SPELCH_ABOUT_FAR_EDGE, SPELCH_ABOUT_FEED },
    [SPELCH_ASKS_WAY_UP] = { SPELCH_ABOUT_MOTOR_EDGE, SPELCH_ABOUT_FAR_EDGE, SPELCH_N_ABOUTS },
    [SPELCH_ASKS_LIMIT] = { SPELCH_ABOUT_FEED, SPELCH_ABOUT_LIMITS, SPELCH_N_ABOUTS },
    [SPELCH_ASKS_HOLD] = { SPELCH_ABOUT_SEAT, SPELCH_N_ABOUTS, SPELCH_N_ABOUTS },
  };
  SPELCH_TABLE_HAS (ABOUTS, SPELCH_N_ASKS);
  guint n = 0;
  for (guint i = 0; i < WHYS_MOST; i++)
    if (ABOUTS[posed->exercise->asks][i] != SPELCH_N_ABOUTS)
      abouts[n++] = ABOUTS[posed->exercise->asks][i];
  return n;
}

static void
why_toggled (SpelchWhyRow *row, SpelchPracticeResult *self)
{
  if (!spelch_why_row_is_open (row))
    return;
  for (guint i = 0; i < WHYS_MOST; i++)
    if (self->whys[i] == row && self->session != NULL && spelch_session_get_plan (self->session) != NULL)
      spelch_whys_tell (self->abouts[i], self->session, row);
}

static void
show_whys (SpelchPracticeResult *self, const SpelchPosed *posed)
{
  guint n = abouts_of (posed, self->abouts);
  for (guint i = 0; i < WHYS_MOST; i++)
    {
      bool there = i < n && spelch_whys_has (self->abouts[i], self->session);
      gtk_widget_set_visible (GTK_WIDGET (self->whys[i]), there);
      spelch_why_row_set_open (self->whys[i], false);
      if (!there)
        continue;
      g_autofree char *title = spelch_whys_title (self->abouts[i], self->session);
      gtk_label_set_text (self->titles[i], title);
      spelch_why_row_set_title (self->whys[i], title);
    }
}

/* ---- What is said ---- */

/* @words without the first @part that is in it. Takes @words. */
static char *
without (char *words, const char *part)
{
  char *at = strstr (words, part);
  if (at == NULL)
    return words;
  char *rest = g_strdup_printf ("%.*s%s", (int)(at - words), words, at + strlen (part));
  g_free (words);
  return rest;
}

/* Why the answer is wrong, and why the right one is right; a sentence that is both stands there once. */
static void
show_reasons (SpelchPracticeResult *self, const SpelchPosed *posed, const SpelchGiven *given,
              const SpelchNumbers *numbers)
{
  g_auto (GStrv) why = spelch_words_posed_why (posed, spelch_shop_constant_source, numbers);
  g_autofree char *wrong = spelch_words_posed_wrong (posed, given, numbers);
  char *own = g_strdup (wrong);
  for (guint i = 0; why[i] != NULL; i++)
    own = without (own, why[i]);
  bool is_own = *g_strstrip (own) != '\0';
  g_free (own);
  gtk_label_set_text (self->wrong, wrong);
  gtk_widget_set_visible (GTK_WIDGET (self->wrong), is_own);
  for (GtkWidget *old = gtk_widget_get_first_child (GTK_WIDGET (self->reasons)); old != NULL;
       old = gtk_widget_get_first_child (GTK_WIDGET (self->reasons)))
    gtk_box_remove (self->reasons, old);
  for (guint i = 0; why[i] != NULL; i++)
    {
      if (is_own && strstr (wrong, why[i]) != NULL)
        continue;
      GtkLabel *line = label_new ("plain");
      gtk_label_set_text (line, why[i]);
      gtk_box_append (self->reasons, GTK_WIDGET (line));
    }
}

void
spelch_practice_result_show (SpelchPracticeResult *self, const SpelchPosed *posed, const SpelchGiven *given,
                             SpelchSession *session, const SpelchNumbers *numbers)
{
  g_autofree char *said = spelch_words_given (posed, given, numbers);
  g_autofree char *comes = spelch_words_posed_right (posed, numbers);
  g_set_object (&self->session, session);
  spelch_glyph_set_kind (self->sign, given->right ? SPELCH_GLYPH_TICK : SPELCH_GLYPH_CROSS);
  gtk_label_set_text (self->verdict, given->right ? _ ("That is right.") : _ ("That isn't what comes out."));
  gtk_label_set_text (self->said, said);
  gtk_label_set_text (self->comes, comes);
  show_reasons (self, posed, given, numbers);
  show_whys (self, posed);
}

/* ---- Object ---- */

static void
spelch_practice_result_dispose (GObject *object)
{
  SpelchPracticeResult *self = SPELCH_PRACTICE_RESULT (object);
  if (self->box != NULL)
    gtk_widget_unparent (GTK_WIDGET (self->box));
  self->box = NULL;
  g_clear_object (&self->session);
  G_OBJECT_CLASS (spelch_practice_result_parent_class)->dispose (object);
}

static void
spelch_practice_result_class_init (SpelchPracticeResultClass *klass)
{
  GtkWidgetClass *widget_class = GTK_WIDGET_CLASS (klass);
  G_OBJECT_CLASS (klass)->dispose = spelch_practice_result_dispose;
  gtk_widget_class_set_css_name (widget_class, "practiceresult");
  gtk_widget_class_set_layout_manager_type (widget_class, GTK_TYPE_BIN_LAYOUT);
  gtk_widget_class_set_accessible_role (widget_class, GTK_ACCESSIBLE_ROLE_GROUP);
}

/* One of the two that stand beside one another. */
static GtkLabel *
add_side (GtkBox *sides, const char *caption)
{
  GtkWidget *side = gtk_box_new (GTK_ORIENTATION_VERTICAL, 2);
  GtkLabel *name = label_new ("heading"), *words = label_new ("strong");
  gtk_label_set_text (name, caption);
  gtk_widget_set_hexpand (side, TRUE);
  gtk_box_append (GTK_BOX (side), GTK_WIDGET (name));
  gtk_box_append (GTK_BOX (side), GTK_WIDGET (words));
  gtk_widget_add_css_class (side, "side");
  gtk_box_append (sides, side);
  gtk_accessible_update_relation (GTK_ACCESSIBLE (words), GTK_ACCESSIBLE_RELATION_DESCRIBED_BY, name, NULL,
                                  -1);
  return words;
}

static void
add_whys (SpelchPracticeResult *self)
{
  for (guint i = 0; i < WHYS_MOST; i++)
    {
      self->titles[i] = label_new ("soft");
      self->whys[i] = g_object_new (SPELCH_TYPE_WHY_ROW, "child", self->titles[i], NULL);
      g_signal_connect (self->whys[i], "toggled", G_CALLBACK (why_toggled), self);
      gtk_box_append (self->box, GTK_WIDGET (self->whys[i]));
    }
}

static void
spelch_practice_result_init (SpelchPracticeResult *self)
{
  GtkWidget *head = gtk_box_new (GTK_ORIENTATION_HORIZONTAL, 8);
  GtkWidget *sides = gtk_box_new (GTK_ORIENTATION_HORIZONTAL, 12);
  self->box = GTK_BOX (gtk_box_new (GTK_ORIENTATION_VERTICAL, 10));
  self->sign = g_object_new (SPELCH_TYPE_GLYPH, "valign", GTK_ALIGN_CENTER, NULL);
  self->verdict = label_new ("pass");
  gtk_box_append (GTK_BOX (head), GTK_WIDGET (self->sign));
  gtk_box_append (GTK_BOX (head), GTK_WIDGET (self->verdict));
  gtk_box_set_homogeneous (GTK_BOX (sides), TRUE);
  self->said = add_side (GTK_BOX (sides), _ ("You said"));
  self->comes = add_side (GTK_BOX (sides), _ ("It comes out"));
  self->wrong = label_new ("plain");
  self->reasons = GTK_BOX (gtk_box_new (GTK_ORIENTATION_VERTICAL, 6));
  gtk_box_append (self->box, head);
  gtk_box_append (self->box, sides);
  gtk_box_append (self->box, GTK_WIDGET (self->wrong));
  gtk_box_append (self->box, GTK_WIDGET (self->reasons));
  add_whys (self);
  gtk_widget_set_parent (GTK_WIDGET (self->box), GTK_WIDGET (self));
}

SpelchPracticeResult *
spelch_practice_result_new (void)
{
  return g_object_new (SPELCH_TYPE_PRACTICE_RESULT, NULL);
}
