/* SPDX-License-Identifier: GPL-3.0-or-later
 *
 * Sound: whether an exercise has just one clear answer whatever is drawn, and its follow-up too.
 */
#pragma once

#include "plan/posed.h"

typedef struct
{
  guint draws;       /* different ones among those tried */
  guint n_doubts;    /* seeds at which something is wrong; the rest is about the first of them */
  guint32 seed;      /* it */
  bool in_follow_up; /* it is about the follow-up */
  bool meant;        /* the follow-up's answer changes though it is meant to stay, or the other way round */
  const char *doubt; /* else a code as spelch_posed_is_clear() gives it; never freed */
} SpelchSound;

/* Tries the seeds from 1 to @seeds. What is drawn alike is tried once. */
SpelchSound spelch_posed_sound (const SpelchConstants *constants, SpelchExercise *exercise, guint seeds);

/* What is drawn by a seed, and is alike for seeds that draw the same: "thickness=17.8 feed=4000". Free with
 * g_free(). */
char *spelch_posed_drawn (const SpelchExercise *exercise, guint32 seed);
