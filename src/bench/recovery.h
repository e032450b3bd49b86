/* SPDX-License-Identifier: GPL-3.0-or-later
 *
 * Recovery: unsaved work kept aside while it is worked on, so that a crash or a power cut loses at most a
 * second of it. The copy is removed when the work is saved, or thrown away by its owner.
 */
#pragma once

#include "bench/bench-session.h"

G_BEGIN_DECLS

/* A change is kept within this time. */
#define SPELCH_RECOVERY_WAIT_MS 700

#define SPELCH_TYPE_RECOVERY (spelch_recovery_get_type ())
G_DECLARE_FINAL_TYPE (SpelchRecovery, spelch_recovery, SPELCH, RECOVERY, GObject)

/* Keeps the unsaved work of @session in @folder (the program's state folder). */
SpelchRecovery *spelch_recovery_new (SpelchSession *session, const char *folder);

/* What an earlier run left behind: the part (a new reference) and the file it belongs to (NULL: none), or
 * NULL. It is set aside, so that this run's work doesn't overwrite it before the person has answered. */
SpelchPart *spelch_recovery_find (SpelchRecovery *self, GFile **file);

/* What was left behind has been taken up or thrown away. */
void spelch_recovery_answered (SpelchRecovery *self);

/* Removes what is kept. */
void spelch_recovery_forget (SpelchRecovery *self);

G_END_DECLS
