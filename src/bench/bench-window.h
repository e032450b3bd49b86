/* SPDX-License-Identifier: GPL-3.0-or-later
 *
 * Window: the bench. Cuts at the left, the drawing with its depths and the bit drawer in the middle, the plan
 * at the right, the part's name, undo and the menu above. It only puts the pieces together; the session holds
 * the state.
 */
#pragma once

#include "bench/appearance.h"
#include "bench/bench-session.h"
#include "bench/preferred.h"
#include "bench/recovery.h"
#include "bench/shelves.h"

#include <gtk/gtk.h>

G_BEGIN_DECLS

#define SPELCH_TYPE_BENCH_WINDOW (spelch_bench_window_get_type ())
G_DECLARE_FINAL_TYPE (SpelchBenchWindow, spelch_bench_window, SPELCH, BENCH_WINDOW, GtkApplicationWindow)

/* Unsaved work is kept aside in @state_folder. */
SpelchBenchWindow *spelch_bench_window_new (GtkApplication *application, SpelchAppearance *appearance,
                                            SpelchShelves *shelves, SpelchPreferred *preferred,
                                            const char *state_folder);

/* Whether nothing of the person's own is in it. */
bool spelch_bench_window_is_untouched (SpelchBenchWindow *self);

/* Opens the demo part. */
void spelch_bench_window_open_demo (SpelchBenchWindow *self);

/* Closes it, leaving what is unsaved, which was asked about. */
void spelch_bench_window_close_unasked (SpelchBenchWindow *self);

/* For bench-files.c. */
SpelchSession *spelch_bench_window_get_session (SpelchBenchWindow *self);
SpelchRecovery *spelch_bench_window_get_recovery (SpelchBenchWindow *self);
/* Shows @sentence in the bar for what went wrong; NULL: nothing did, and the bar goes. */
void spelch_bench_window_complain (SpelchBenchWindow *self, const char *sentence);

/* Asks about each SpelchLeftBehind of @left_behind (a reference is taken). */
void spelch_bench_window_offer_recovery (SpelchBenchWindow *self, GPtrArray *left_behind);

G_END_DECLS
