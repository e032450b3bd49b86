/* SPDX-License-Identifier: GPL-3.0-or-later
 *
 * History: earlier and later states of a part, each with the name of the step that leads away from it. The
 * newest are kept, as many as fit into a bound of memory.
 */
#pragma once

#include "shop/part.h"

/* Two steps with the same merge key that follow within this time are undone together. */
#define SPELCH_HISTORY_MERGE_US G_USEC_PER_SEC

/* The newest steps can be undone that fit into so many bytes: each keeps a whole part, from 20 kB on. */
#define SPELCH_HISTORY_MOST_BYTES (32 << 20)

typedef struct _SpelchHistory SpelchHistory;

/* An empty one. */
SpelchHistory *spelch_history_new (void);
void spelch_history_free (SpelchHistory *history);
G_DEFINE_AUTOPTR_CLEANUP_FUNC (SpelchHistory, spelch_history_free)

void spelch_history_clear (SpelchHistory *history);

/* Remembers that @before, looked at in cut @cut, was changed by a step called @name at time @now_us. Forgets
 * all that could be redone. @merge may be NULL. */
void spelch_history_step (SpelchHistory *history, SpelchPart *before, guint cut, const char *name,
                          const char *merge, gint64 now_us);

/* Goes back, or forward, from @current: a new reference to the part to show, with its cut in *cut; NULL when
 * there is nothing. */
SpelchPart *spelch_history_undo (SpelchHistory *history, SpelchPart *current, guint *cut);
SpelchPart *spelch_history_redo (SpelchHistory *history, SpelchPart *current, guint *cut);

/* Whether going back or forward comes to @part. */
bool spelch_history_has (const SpelchHistory *history, const SpelchPart *part);

/* The name of the step that would be undone, or done again; NULL when there is none. */
const char *spelch_history_undo_name (const SpelchHistory *history);
const char *spelch_history_redo_name (const SpelchHistory *history);
