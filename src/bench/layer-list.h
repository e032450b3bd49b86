/* SPDX-License-Identifier: GPL-3.0-or-later
 *
 * Layer list: the layers of a board in their order, from face a to face b: dragged or moved by keys, added
 * and removed; the one that is chosen is edited in a form below. A make-up lays them all at once.
 */
#pragma once

#include "plan/words.h"
#include "shop/board.h"

#include <gtk/gtk.h>

G_BEGIN_DECLS

#define SPELCH_TYPE_LAYER_LIST (spelch_layer_list_get_type ())
G_DECLARE_FINAL_TYPE (SpelchLayerList, spelch_layer_list, SPELCH, LAYER_LIST, GtkWidget)

/* Signals as a form has: "edited" (SpelchBoard as gpointer, what was changed as const char *), "drafted". */
SpelchLayerList *spelch_layer_list_new (void);

/* Shows @board, of which a copy is kept. */
void spelch_layer_list_show (SpelchLayerList *self, const SpelchBoard *board, const SpelchNumbers *numbers);

G_END_DECLS
