/* SPDX-License-Identifier: GPL-3.0-or-later
 *
 * Log lesson: what the shop log teaches about one bit in one board, and whether the part on the bench goes by
 * it, which can be switched off there.
 */
#pragma once

#include "bench/shelves.h"

#include <gtk/gtk.h>

G_BEGIN_DECLS

#define SPELCH_TYPE_LOG_LESSON (spelch_log_lesson_get_type ())
G_DECLARE_FINAL_TYPE (SpelchLogLesson, spelch_log_lesson, SPELCH, LOG_LESSON, GtkWidget)

SpelchLogLesson *spelch_log_lesson_new (SpelchShelves *shelves);

/* Ids of what it is about; it follows the shelves and the part on the bench from then on. */
void spelch_log_lesson_show (SpelchLogLesson *self, const char *board, const char *bit,
                             const SpelchNumbers *numbers);

G_END_DECLS
