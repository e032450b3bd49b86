/* SPDX-License-Identifier: GPL-3.0-or-later
 *
 * Practice data: the exercises and lessons that come with the program, built into the library, and those a
 * teacher keeps in a folder.
 */
#pragma once

#include "shop/exercise.h"
#include "shop/lesson.h"

/* SpelchExercise *, the easiest first, then by what they ask and by id. Belongs to the library and must not
 * be changed. */
const GPtrArray *spelch_shop_exercises (void);

/* SpelchLesson *, by id. Belongs to the library and must not be changed. */
const GPtrArray *spelch_shop_lessons (void);

/* An empty list of exercises that owns a reference to each; puts one in its place by difficulty, instead of
 * one that has its id. */
GPtrArray *spelch_exercises_new (void);
void spelch_exercises_put (GPtrArray *exercises, SpelchExercise *exercise);

/* The exercise with that id, or NULL; owned by the list. */
SpelchExercise *spelch_exercises_find (const GPtrArray *exercises, const char *id);

/* Puts every exercise of a folder, its files *.json, into the list. A sentence for each that can't be read
 * goes into @problems (char *, may be NULL). Nothing when the folder isn't there. */
void spelch_exercises_read_folder (GPtrArray *exercises, const char *folder, GPtrArray *problems);

/* All there are: those that come with the program and the person's own. A sentence for each of the latter
 * that can't be read goes into @problems (char *, may be NULL). Free with g_ptr_array_unref(). */
GPtrArray *spelch_exercises_all (GPtrArray *problems);

/* Where a person's own exercises are kept, in the user's data folder: ".../spelch/exercises". Free with
 * g_free(). */
char *spelch_exercises_folder (void);
