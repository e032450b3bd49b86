/* SPDX-License-Identifier: GPL-3.0-or-later
 *
 * Copy offer: when a bit, board or machine is changed on its shelf and the part looked at has a copy of it,
 * the part keeps its copy as it was, and a bar asks whether to take it as it is now.
 */
#pragma once

#include "bench/offer.h"
#include "bench/shelves.h"

G_BEGIN_DECLS

/* Asks by @offer from now on, for as long as it lives. Metres cut, and a thickness measured, are no change
 * worth asking about. */
void spelch_copy_offer_attach (SpelchOffer *offer, SpelchSession *session, SpelchShelves *shelves);

/* Whether the part has a copy of @item, which is on its shelf, that differs from it in more than that.
 */
bool spelch_copy_differs (SpelchSession *session, SpelchListKind kind, gconstpointer item);

G_END_DECLS
