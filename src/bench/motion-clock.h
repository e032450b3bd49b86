/* SPDX-License-Identifier: GPL-3.0-or-later
 *
 * Motion clock: which instant of a cut in slow motion is shown, without any widget. It plays on by time, from
 * pass to pass and round again, steps by teeth, and is set by hand. Two things are for the sake of people:
 * no more than three teeth a second are shown one by one (three flashes a second is the most that WCAG 2.2,
 * 2.3.1, allows), a quicker bit is drawn evenly blurred and its passes stay; and where motion is to be
 * reduced, it steps from tooth to tooth, once a second.
 */
#pragma once

#include "plan/motion.h"

#define SPELCH_CLOCK_MOST_TEETH 3.0          /* a second, one by one */
#define SPELCH_CLOCK_SLOWEST    (1.0 / 2000) /* of real time */
#define SPELCH_CLOCK_BLURRED_S  3.0          /* that a pass of a blurred bit is shown at the least */
#define SPELCH_CLOCK_STEP_S     1.0          /* from step to step where motion is reduced */

typedef struct
{
  const SpelchMotion *motion; /* must outlive its use; NULL: nothing to show */
  guint pass;                 /* from 0 */
  double turned;              /* rad, within the pass */
  bool playing;
  bool reduced;  /* motion is */
  double ratio;  /* of real time; 0: as slow as shows one tooth a second */
  double waited; /* s: since the last step, or since a blurred pass began */
} SpelchMotionClock;

/* Shows another motion: at the same place where there is one, else at the beginning of the last pass. */
void spelch_motion_clock_take (SpelchMotionClock *clock, const SpelchMotion *motion);

/* Of real time, and teeth a second, as they come out for the pass shown. */
double spelch_motion_clock_ratio (const SpelchMotionClock *clock);
double spelch_motion_clock_teeth (const SpelchMotionClock *clock);

/* Whether the bit is to be drawn blurred now: it plays, and too fast. */
bool spelch_motion_clock_is_blurred (const SpelchMotionClock *clock);

/* Lets @seconds go by. Whether there is something else to show. */
bool spelch_motion_clock_advance (SpelchMotionClock *clock, double seconds);

/* To the beginning of the tooth that is @teeth on, or back when below 0; over the ends of passes too. Stops
 * playing. */
void spelch_motion_clock_step (SpelchMotionClock *clock, int teeth);

/* To an instant of a pass. Playing goes on. */
void spelch_motion_clock_set (SpelchMotionClock *clock, guint pass, double turned);
