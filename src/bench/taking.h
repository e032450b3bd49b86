/* SPDX-License-Identifier: GPL-3.0-or-later
 *
 * Taking: a bit, board or machine taken off its shelf for the part that is looked at. A part keeps copies of
 * its own, so that what a shop changes later reaches it only by being taken again.
 */
#pragma once

#include "bench/shelves.h"
#include "files/list-file.h"

#include <gtk/gtk.h>

G_BEGIN_DECLS

/* Makes the part of @item, or on it, or its current cut with it, as an edit that can be undone. A bit that
 * the cut has already leaves what is held as it is. @item is a SpelchBit, SpelchBoard or SpelchMachine by
 * @kind. */
void spelch_take (SpelchSession *session, SpelchListKind kind, gconstpointer item);

/* The same for the part on the bench, whose window then comes to the fore; a sentence, not to be freed, where
 * it can't be taken or is as it is. */
const char *spelch_take_to_bench (GtkApplication *application, SpelchShelves *shelves, SpelchListKind kind,
                                  gconstpointer item);

G_END_DECLS
