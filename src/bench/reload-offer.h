/* SPDX-License-Identifier: GPL-3.0-or-later
 *
 * Reload offer: when another program has changed the file that a window's part came from, it is read again,
 * or, with unsaved changes in the window, a bar asks whether to.
 */
#pragma once

#include "bench/bench-window.h"
#include "bench/offer.h"

/* Watches the file, and asks by @offer, for as long as that lives; @offer is in @window. */
void spelch_reload_offer_attach (SpelchOffer *offer, SpelchBenchWindow *window);
