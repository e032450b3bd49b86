/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "bench/cut-card.h"
#include "bench/kept-picture.h"
#include "drawing/pictures.h"

#define PICTURE_WIDTH  180
#define PICTURE_HEIGHT 34

struct _SpelchCutCard
{
  GtkListBoxRow parent_instance;
  SpelchKeptPicture *picture;
  GtkLabel *title;
  GtkLabel *line;

  SpelchPart *part;
  guint index;
  double bit_diameter; /* mm; 0 while the cut has no bit */
  const SpelchPalette *palette;
};

G_DEFINE_FINAL_TYPE (SpelchCutCard, spelch_cut_card, GTK_TYPE_LIST_BOX_ROW)

static void
draw (cairo_t *cr, double width, double height, gpointer data)
{
  SpelchCutCard *self = data;
  if (self->part == NULL || self->index >= self->part->n_cuts)
    return;
  spelch_picture_cut (cr, self->part, &self->part->cuts[self->index], self->bit_diameter, width, height,
                      self->palette);
}

static void
set_part (SpelchCutCard *self, SpelchPart *part)
{
  SpelchPart *kept = spelch_part_ref (part);
  g_clear_pointer (&self->part, spelch_part_unref);
  self->part = kept;
}

void
spelch_cut_card_follow (SpelchCutCard *self, SpelchSession *session, guint index,
                        const SpelchPalette *palette)
{
  set_part (self, spelch_session_get_part (session));
  const SpelchCut *cut = &self->part->cuts[index];
  int bit = spelch_part_find_bit (self->part, cut->bit);
  SpelchPlan plan;
  if (bit >= 0)
    spelch_plan_make (spelch_session_get_constants (session), self->part, cut, &self->part->bits[bit], &plan);
  g_autofree char *line
      = spelch_words_cut (cut, bit < 0 ? NULL : &plan, spelch_session_get_numbers (session));
  self->index = index;
  self->palette = palette;
  self->bit_diameter = bit < 0 ? 0 : spelch_bit_diameter_now (&self->part->bits[bit]);
  gtk_label_set_text (self->title, cut->name);
  gtk_label_set_text (self->line, line);
  spelch_kept_picture_changed (self->picture);
  g_autofree char *name = g_strdup_printf ("%s, %s", cut->name, line);
  gtk_accessible_update_property (GTK_ACCESSIBLE (self), GTK_ACCESSIBLE_PROPERTY_LABEL, name, -1);
}

static void
spelch_cut_card_dispose (GObject *object)
{
  SpelchCutCard *self = SPELCH_CUT_CARD (object);
  gtk_widget_dispose_template (GTK_WIDGET (object), SPELCH_TYPE_CUT_CARD);
  g_clear_pointer (&self->part, spelch_part_unref);
  G_OBJECT_CLASS (spelch_cut_card_parent_class)->dispose (object);
}

static void
spelch_cut_card_class_init (SpelchCutCardClass *klass)
{
  GtkWidgetClass *widget_class = GTK_WIDGET_CLASS (klass);
  G_OBJECT_CLASS (klass)->dispose = spelch_cut_card_dispose;
  g_type_ensure (SPELCH_TYPE_KEPT_PICTURE);
  gtk_widget_class_set_template_from_resource (widget_class, "/org/spelch/Spelch/ui/cut-card.ui");
  gtk_widget_class_bind_template_child (widget_class, SpelchCutCard, picture);
  gtk_widget_class_bind_template_child (widget_class, SpelchCutCard, title);
  gtk_widget_class_bind_template_child (widget_class, SpelchCutCard, line);
}

static void
spelch_cut_card_init (SpelchCutCard *self)
{
  gtk_widget_init_template (GTK_WIDGET (self));
  spelch_kept_picture_set_size (self->picture, PICTURE_WIDTH, PICTURE_HEIGHT);
  spelch_kept_picture_set_draw (self->picture, draw, self);
}
