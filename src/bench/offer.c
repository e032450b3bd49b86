/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "bench/offer.h"
#include "bench/template.h"

struct _SpelchOffer
{
  GtkWidget parent_instance;
  GtkLabel *words;
  GtkButton *yes;
  GtkButton *no;
};

G_DEFINE_FINAL_TYPE (SpelchOffer, spelch_offer, GTK_TYPE_WIDGET)

enum
{
  SIGNAL_ANSWERED,
  N_SIGNALS
};
static guint signals[N_SIGNALS];

void
spelch_offer_ask (SpelchOffer *self, const char *words, const char *yes, const char *no)
{
  gtk_label_set_text (self->words, words);
  gtk_button_set_label (self->yes, yes);
  gtk_button_set_label (self->no, no);
  gtk_widget_set_visible (GTK_WIDGET (self), TRUE);
}

void
spelch_offer_withdraw (SpelchOffer *self)
{
  gtk_widget_set_visible (GTK_WIDGET (self), FALSE);
}

static void
answered (SpelchOffer *self, int response)
{
  SpelchAnswer answer = response == GTK_RESPONSE_ACCEPT   ? SPELCH_ANSWER_YES
                        : response == GTK_RESPONSE_REJECT ? SPELCH_ANSWER_NO
                                                          : SPELCH_ANSWER_LATER;
  spelch_offer_withdraw (self);
  g_signal_emit (self, signals[SIGNAL_ANSWERED], 0, (guint)answer);
}

static void
spelch_offer_dispose (GObject *object)
{
  spelch_template_dispose (GTK_WIDGET (object), SPELCH_TYPE_OFFER);
  G_OBJECT_CLASS (spelch_offer_parent_class)->dispose (object);
}

static void
spelch_offer_class_init (SpelchOfferClass *klass)
{
  GtkWidgetClass *widget_class = GTK_WIDGET_CLASS (klass);
  G_OBJECT_CLASS (klass)->dispose = spelch_offer_dispose;
  gtk_widget_class_set_layout_manager_type (widget_class, GTK_TYPE_BIN_LAYOUT);
  gtk_widget_class_set_template_from_resource (widget_class, "/org/spelch/Spelch/ui/offer.ui");
  gtk_widget_class_bind_template_child (widget_class, SpelchOffer, words);
  gtk_widget_class_bind_template_child (widget_class, SpelchOffer, yes);
  gtk_widget_class_bind_template_child (widget_class, SpelchOffer, no);
  gtk_widget_class_bind_template_callback (widget_class, answered);
  signals[SIGNAL_ANSWERED] = g_signal_new ("answered", SPELCH_TYPE_OFFER, G_SIGNAL_RUN_LAST, 0, NULL, NULL,
                                           NULL, G_TYPE_NONE, 1, G_TYPE_UINT);
}

static void
spelch_offer_init (SpelchOffer *self)
{
  gtk_widget_init_template (GTK_WIDGET (self));
}
