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

void spelch_files_choose_and_open (SpelchBenchWindow *window);
void spelch_files_save (SpelchBenchWindow *window);
void spelch_files_save_as (SpelchBenchWindow *window);

/* Reads @file into the session, or complains. */
void spelch_files_load (SpelchBenchWindow *window, GFile *file);
