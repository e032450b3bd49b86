/* SPDX-License-Identifier: GPL-3.0-or-later
 *
 * Whys: what stands behind each row of the right-hand column: which chains of reasons are told when it is
 * opened, with the numbers of the session's plan.
 */
#pragma once

#include "bench/bench-session.h"
#include "bench/why-row.h"

G_BEGIN_DECLS

/* What a row is about, from top to bottom. */
typedef enum
{
  SPELCH_ABOUT_STOPS, /* what must not be done */
  SPELCH_ABOUT_ASKS,  /* what wasn't told, and what depends on it */
  SPELCH_ABOUT_MOTOR_EDGE,
  SPELCH_ABOUT_FAR_EDGE,
  SPELCH_ABOUT_SPINDLE,
  SPELCH_ABOUT_FEED,
  SPELCH_ABOUT_CHIP,
  SPELCH_ABOUT_ENTRY,
  SPELCH_ABOUT_PASSES,
  SPELCH_ABOUT_TIME,
  SPELCH_ABOUT_SETTING_OUT, /* how the cut is set out */
  SPELCH_ABOUT_LIMITS,      /* what holds the feed back, limit by limit */
  SPELCH_ABOUT_SEAT,        /* lift, press, what holds against it, tabs */
  SPELCH_ABOUT_WEAR,
  SPELCH_ABOUT_CAUTIONS, /* all of them */
  SPELCH_N_ABOUTS,
} SpelchAbout;

/* Whether there is anything to tell. */
bool spelch_whys_has (SpelchAbout about, SpelchSession *session);

/* Tells it to @row, which is open, with what @log, the shop's, has to do with it. The session must have a
 * plan. */
void spelch_whys_tell (SpelchAbout about, SpelchSession *session, SpelchShelf *log, SpelchWhyRow *row);

/* What the row's sign is called: "Why: Feed". Free with g_free(). */
char *spelch_whys_title (SpelchAbout about, SpelchSession *session);

G_END_DECLS
