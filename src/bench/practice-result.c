/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "bench/practice-result.h"
#include "bench/glyph.h"
#include "bench/paragraph.h"
#include "files/shop-data.h"
#include "plan/words-posed.h"

#include <glib/gi18n-lib.h>

/* One of the two parts: an answer under its caption, and sentences about it. */
typedef struct
{
  GtkBox *box;
  GtkLabel *caption, *answer;
  GtkBox *lines;
} Part;

struct _SpelchPracticeResult
{
  GtkWidget parent_instance;
  GtkBox *box;
  SpelchGlyph *sign;
  GtkLabel *verdict;
  Part own, right;
  GtkExpander *reckoning;
  GtkBox *reckoned;
};

G_DEFINE_FINAL_TYPE (SpelchPracticeResult, spelch_practice_result, GTK_TYPE_WIDGET)

/* ---- What is said ---- */

static void
clear (GtkBox *lines)
{
  for (GtkWidget *old = gtk_widget_get_first_child (GTK_WIDGET (lines)); old != NULL;
       old = gtk_widget_get_first_child (GTK_WIDGET (lines)))
    gtk_box_remove (lines, old);
}

static void
add_line (GtkBox *lines, const char *words, const char *css_class)
{
  gtk_box_append (lines, spelch_paragraph_new (words, css_class));
}

/* What was answered, and what comes of it; once only where it is right. */
static void
show_own (SpelchPracticeResult *self, const SpelchPosed *posed, const SpelchGiven *given,
          const SpelchNumbers *numbers)
{
  g_autofree char *said = spelch_words_given (posed, given, numbers);
  g_autofree char *wrong = spelch_words_posed_wrong (posed, given, numbers);
  spelch_paragraph_set (self->own.answer, said);
  clear (self->own.lines);
  if (*wrong != '\0')
    add_line (self->own.lines, wrong, "plain");
}

/* What is right, and why. */
static void
show_right (SpelchPracticeResult *self, const SpelchPosed *posed, const SpelchGiven *given,
            const SpelchNumbers *numbers)
{
  g_autofree char *right = spelch_words_posed_right (posed, numbers);
  g_auto (GStrv) why = spelch_words_posed_why (posed, numbers);
  bool same = given->right && given->choice >= 0;
  gtk_label_set_text (self->right.caption, same ? _ ("Why") : _ ("Right is"));
  spelch_paragraph_set (self->right.answer, right);
  gtk_widget_set_visible (GTK_WIDGET (self->right.answer), !same);
  clear (self->right.lines);
  for (guint i = 0; why[i] != NULL; i++)
    add_line (self->right.lines, why[i], "plain");
}

static void
show_reckoning (SpelchPracticeResult *self, const SpelchPosed *posed, const SpelchNumbers *numbers)
{
  g_auto (GStrv) sentences = spelch_words_posed_reckoning (posed, spelch_shop_constant_source, numbers);
  gtk_expander_set_expanded (self->reckoning, FALSE);
  gtk_widget_set_visible (GTK_WIDGET (self->reckoning), sentences[0] != NULL);
  clear (self->reckoned);
  for (guint i = 0; sentences[i] != NULL; i++)
    add_line (self->reckoned, sentences[i], "soft");
}

void
spelch_practice_result_show (SpelchPracticeResult *self, const SpelchPosed *posed, const SpelchGiven *given,
                             const SpelchNumbers *numbers)
{
  spelch_glyph_set_kind (self->sign, given->right ? SPELCH_GLYPH_TICK : SPELCH_GLYPH_CROSS);
  gtk_label_set_text (self->verdict, given->right ? _ ("That is right.") : _ ("That isn't what comes out."));
  show_own (self, posed, given, numbers);
  show_right (self, posed, given, numbers);
  show_reckoning (self, posed, numbers);
}

/* ---- Object ---- */

static void
spelch_practice_result_dispose (GObject *object)
{
  SpelchPracticeResult *self = SPELCH_PRACTICE_RESULT (object);
  if (self->box != NULL)
    gtk_widget_unparent (GTK_WIDGET (self->box));
  self->box = NULL;
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

/* They are told apart by a rule at their side, and by their captions. */
static void
add_part (SpelchPracticeResult *self, Part *part, const char *caption)
{
  part->box = GTK_BOX (gtk_box_new (GTK_ORIENTATION_VERTICAL, 4));
  part->caption = GTK_LABEL (spelch_paragraph_new (NULL, "heading"));
  part->answer = GTK_LABEL (spelch_paragraph_new (NULL, "strong"));
  part->lines = GTK_BOX (gtk_box_new (GTK_ORIENTATION_VERTICAL, 4));
  gtk_label_set_text (part->caption, caption);
  gtk_box_append (part->box, GTK_WIDGET (part->caption));
  gtk_box_append (part->box, GTK_WIDGET (part->answer));
  gtk_box_append (part->box, GTK_WIDGET (part->lines));
  gtk_widget_add_css_class (GTK_WIDGET (part->box), "side");
  gtk_box_append (self->box, GTK_WIDGET (part->box));
  gtk_accessible_update_relation (GTK_ACCESSIBLE (part->answer), GTK_ACCESSIBLE_RELATION_DESCRIBED_BY,
                                  part->caption, NULL, -1);
}

static void
spelch_practice_result_init (SpelchPracticeResult *self)
{
  GtkWidget *head = gtk_box_new (GTK_ORIENTATION_HORIZONTAL, 8);
  self->box = GTK_BOX (gtk_box_new (GTK_ORIENTATION_VERTICAL, 10));
  self->sign = g_object_new (SPELCH_TYPE_GLYPH, "valign", GTK_ALIGN_CENTER, NULL);
  self->verdict = GTK_LABEL (spelch_paragraph_new (NULL, "pass"));
  gtk_box_append (GTK_BOX (head), GTK_WIDGET (self->sign));
  gtk_box_append (GTK_BOX (head), GTK_WIDGET (self->verdict));
  gtk_box_append (self->box, head);
  add_part (self, &self->own, _ ("You said"));
  add_part (self, &self->right, _ ("Right is"));
  self->reckoning = GTK_EXPANDER (gtk_expander_new (_ ("Show the reckoning")));
  self->reckoned = GTK_BOX (gtk_box_new (GTK_ORIENTATION_VERTICAL, 4));
  gtk_widget_set_margin_top (GTK_WIDGET (self->reckoned), 6);
  gtk_expander_set_child (self->reckoning, GTK_WIDGET (self->reckoned));
  gtk_accessible_update_property (GTK_ACCESSIBLE (self->reckoning), GTK_ACCESSIBLE_PROPERTY_LABEL,
                                  _ ("Show the reckoning"), -1);
  gtk_box_append (self->box, GTK_WIDGET (self->reckoning));
  gtk_widget_set_parent (GTK_WIDGET (self->box), GTK_WIDGET (self));
}

SpelchPracticeResult *
spelch_practice_result_new (void)
{
  return g_object_new (SPELCH_TYPE_PRACTICE_RESULT, NULL);
}
