/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "bench/nothing-cut.h"
#include "bench/cut-menu.h"
#include "bench/later-menu.h"
#include "bench/template.h"

#include <glib/gi18n-lib.h>

struct _SpelchNothingCut
{
  GtkWidget parent_instance;
  GtkLabel *words;
  GtkLabel *advice;
  GtkMenuButton *first_cut;
  GtkWidget *first_bit;
};

G_DEFINE_FINAL_TYPE (SpelchNothingCut, spelch_nothing_cut, GTK_TYPE_WIDGET)

void
spelch_nothing_cut_show (SpelchNothingCut *self, bool any)
{
  gtk_label_set_text (self->words, any ? _ ("There is no bit to cut this with.")
                                       : _ ("Nothing is cut from this board yet."));
  gtk_label_set_text (
      self->advice,
      any ? _ ("Add a bit to the drawer, and it is ranked for this cut at once.")
          : _ ("If it is another board or machine, take it above. Then add what is to be cut."));
  gtk_widget_set_visible (GTK_WIDGET (self->first_cut), !any);
  gtk_widget_set_visible (self->first_bit, any);
}

static void
spelch_nothing_cut_dispose (GObject *object)
{
  spelch_template_dispose (GTK_WIDGET (object), SPELCH_TYPE_NOTHING_CUT);
  G_OBJECT_CLASS (spelch_nothing_cut_parent_class)->dispose (object);
}

static void
spelch_nothing_cut_class_init (SpelchNothingCutClass *klass)
{
  GtkWidgetClass *widget_class = GTK_WIDGET_CLASS (klass);
  G_OBJECT_CLASS (klass)->dispose = spelch_nothing_cut_dispose;
  gtk_widget_class_set_template_from_resource (widget_class, "/org/spelch/Spelch/ui/nothing-cut.ui");
  gtk_widget_class_bind_template_child (widget_class, SpelchNothingCut, words);
  gtk_widget_class_bind_template_child (widget_class, SpelchNothingCut, advice);
  gtk_widget_class_bind_template_child (widget_class, SpelchNothingCut, first_cut);
  gtk_widget_class_bind_template_child (widget_class, SpelchNothingCut, first_bit);
  gtk_widget_class_set_accessible_role (widget_class, GTK_ACCESSIBLE_ROLE_GROUP);
  gtk_widget_class_set_layout_manager_type (widget_class, GTK_TYPE_BIN_LAYOUT);
}

static void
spelch_nothing_cut_init (SpelchNothingCut *self)
{
  gtk_widget_init_template (GTK_WIDGET (self));
  g_autoptr (GMenuModel) kinds = spelch_cut_menu_new ();
  spelch_later_menu_set (self->first_cut, kinds);
}
