/* SPDX-License-Identifier: GPL-3.0-or-later
 *
 * Files: the window's dialogues about files: opening, saving, and asking about unsaved work before it would
 * be left.
 */
#pragma once

#include "bench/bench-window.h"

/* Called when what was open may be left. */
typedef void (*SpelchGoAhead) (SpelchBenchWindow *window, gpointer data);

/* Asks whether to save when anything is unsaved, then goes ahead, or not. @free_data frees @data afterwards
 * in any case (may be NULL). */
void spelch_files_ask (SpelchBenchWindow *window, SpelchGoAhead go_ahead, gpointer data,
                       GDestroyNotify free_data);

/* The same where more is asked about before anything is left: what isn't to be saved is still kept aside when
 * it goes ahead. */
void spelch_files_ask_first (SpelchBenchWindow *window, SpelchGoAhead go_ahead, gpointer data,
                             GDestroyNotify free_data);

/* Each asks by a dialogue what it must know: about unsaved work, a name, a file that has changed meanwhile. A
 * failure is said in the window, and nothing is lost. */
void spelch_files_choose_and_open (SpelchBenchWindow *window);
void spelch_files_save (SpelchBenchWindow *window);
void spelch_files_save_as (SpelchBenchWindow *window);

/* Opens @file in the window, or shows the one where it is open already. Unsaved work is asked about first. */
void spelch_files_open (SpelchBenchWindow *window, GFile *file);

/* Opens @file in a window of its own, unless @window is untouched or it is open already. */
void spelch_files_open_apart (SpelchBenchWindow *window, GFile *file);

/* Files of parts dropped on @window are opened: the first in it, as spelch_files_open() does, more of them in
 * windows of their own. */
void spelch_files_take_drops (SpelchBenchWindow *window);

/* Opens what was left behind: where its file is open already and nothing is unsaved, else in @window when it
 * is untouched, else in a window of its own. Takes @left over. */
void spelch_files_take_up (SpelchBenchWindow *window, SpelchLeftBehind *left);

/* Reads the window's file again, as a step that can be undone; or complains. */
bool spelch_files_reload (SpelchBenchWindow *window);
