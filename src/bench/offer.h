/* SPDX-License-Identifier: GPL-3.0-or-later
 *
 * Offer: a bar over the bench that asks one question which can wait, with an answer that does something and
 * one that doesn't. Closing it leaves the question open.
 */
#pragma once

#include <gtk/gtk.h>
#include <stdbool.h>

G_BEGIN_DECLS

#define SPELCH_TYPE_OFFER (spelch_offer_get_type ())
G_DECLARE_FINAL_TYPE (SpelchOffer, spelch_offer, SPELCH, OFFER, GtkWidget)

typedef enum
{
  SPELCH_ANSWER_YES,
  SPELCH_ANSWER_NO,
  SPELCH_ANSWER_LATER,
} SpelchAnswer;

/* Signal "answered" (SpelchAnswer as guint): by then the bar is closed. */

/* Asks @words; a question that stands is replaced. */
void spelch_offer_ask (SpelchOffer *self, const char *words, const char *yes, const char *no);

/* The question has become pointless. */
void spelch_offer_withdraw (SpelchOffer *self);

G_END_DECLS
