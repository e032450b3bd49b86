/* SPDX-License-Identifier: GPL-3.0-or-later
 *
 * Practice list: the lessons and the exercises by difficulty, with a tick at what this learner answered
 * right.
 */
#pragma once

#include "bench/practice.h"

#include <gtk/gtk.h>

G_BEGIN_DECLS

#define SPELCH_TYPE_PRACTICE_LIST (spelch_practice_list_get_type ())
G_DECLARE_FINAL_TYPE (SpelchPracticeList, spelch_practice_list, SPELCH, PRACTICE_LIST, GtkWidget)

/* Signal "chosen": another one is asked for. */
SpelchPracticeList *spelch_practice_list_new (SpelchPractice *practice);

G_END_DECLS
