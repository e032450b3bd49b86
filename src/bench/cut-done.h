/* SPDX-License-Identifier: GPL-3.0-or-later
 *
 * Cut done: what there is to do on the bench once a cut is made: its way goes onto the wear of the bit, in
 * the part and in the drawer, and what came out is written into the shop log.
 */
#pragma once

#include "bench/shelves.h"

#include <gtk/gtk.h>

G_BEGIN_DECLS

#define SPELCH_TYPE_CUT_DONE (spelch_cut_done_get_type ())
G_DECLARE_FINAL_TYPE (SpelchCutDone, spelch_cut_done, SPELCH, CUT_DONE, GObject)

/* Adds win.cut-done and win.record to @window, which outlives it. The drawer follows when the part's step is
 * undone or done again. */
SpelchCutDone *spelch_cut_done_new (GtkApplicationWindow *window, SpelchSession *session,
                                    SpelchShelves *shelves);

G_END_DECLS
