/* SPDX-License-Identifier: GPL-3.0-or-later
 *
 * Practice log: the answers learners gave, and how far they are in lessons, kept on this computer as a JSON
 * file, {"format_version": 1, "practice": [...], "lessons": [...]}, read and saved so that nothing in it is
 * lost.
 */
#pragma once

#include "shop/attempt.h"
#include "shop/lesson-place.h"

#include <gio/gio.h>
#include <json-glib/json-glib.h>

typedef struct
{
  GArray *attempts;    /* of SpelchAttempt, the oldest first */
  GArray *places;      /* of SpelchLessonPlace */
  GHashTable *unknown; /* members this program doesn't know: path -> JSON text */
} SpelchPracticeLog;

/* One without answers. */
SpelchPracticeLog *spelch_practice_log_new (void);
void spelch_practice_log_free (SpelchPracticeLog *log);
G_DEFINE_AUTOPTR_CLEANUP_FUNC (SpelchPracticeLog, spelch_practice_log_free)

/* Where a person's own is kept, in the user's data folder. A new reference. */
GFile *spelch_practice_log_own (void);

/* Whether a file with that outermost object is a practice log. */
gboolean spelch_practice_log_is (JsonObject *root);

/* Reads a log; an empty one where there is no file yet. @etag gets what saving needs to notice a change on
 * disk (may be NULL). NULL and SPELCH_FILE_ERROR on failure, with a sentence naming file, member and value.
 */
SpelchPracticeLog *spelch_practice_log_load (GFile *file, char **etag, GError **error);

/* Adds an answer at the end of the file, which is read first: another program may have added some meanwhile.
 * The old file is whole until the new one is; folders that aren't there are made. */
gboolean spelch_practice_log_add (GFile *file, const SpelchAttempt *attempt, GError **error);

/* The same for a learner's place in a lesson, instead of the one before. */
gboolean spelch_practice_log_put_place (GFile *file, const SpelchLessonPlace *place, GError **error);
