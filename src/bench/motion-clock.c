/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "bench/motion-clock.h"

#include <math.h>

#define SLACK 1e-6 /* of a tooth: a step that ends here has ended */

static const SpelchMotionPass *
pass_of (const SpelchMotionClock *clock)
{
  bool any = clock->motion != NULL && clock->motion->n_passes > 0;
  return any ? &clock->motion->passes[clock->pass] : NULL;
}

void
spelch_motion_clock_take (SpelchMotionClock *clock, const SpelchMotion *motion)
{
  guint n = motion == NULL ? 0 : motion->n_passes;
  clock->motion = motion;
  if (clock->pass >= n)
    {
      clock->pass = n == 0 ? 0 : n - 1;
      clock->turned = 0;
    }
  if (n == 0)
    clock->playing = false;
}

double
spelch_motion_clock_ratio (const SpelchMotionClock *clock)
{
  const SpelchMotionPass *pass = pass_of (clock);
  if (clock->ratio > 0 || pass == NULL)
    return clock->ratio;
  return fmin (pass->tooth_s, 1);
}

double
spelch_motion_clock_teeth (const SpelchMotionClock *clock)
{
  const SpelchMotionPass *pass = pass_of (clock);
  return pass == NULL ? 0 : spelch_motion_clock_ratio (clock) / pass->tooth_s;
}

static bool
is_too_fast (const SpelchMotionClock *clock)
{
  return !clock->reduced && spelch_motion_clock_teeth (clock) > SPELCH_CLOCK_MOST_TEETH * (1 + SLACK);
}

bool
spelch_motion_clock_is_blurred (const SpelchMotionClock *clock)
{
  return clock->playing && is_too_fast (clock);
}

static void
begin_pass (SpelchMotionClock *clock, guint pass)
{
  clock->pass = pass % clock->motion->n_passes;
  clock->turned = 0;
  clock->waited = 0;
}

/* A blurred bit has nothing to wait for but the eye. */
static bool
advance_blurred (SpelchMotionClock *clock, const SpelchMotionPass *pass, double seconds)
{
  double length = spelch_motion_length (pass);
  double stays = fmax (SPELCH_CLOCK_BLURRED_S,
                       length / spelch_motion_tooth (pass) / spelch_motion_clock_teeth (clock));
  bool begins = clock->turned < length;
  clock->turned = length;
  clock->waited += seconds;
  if (clock->waited < stays)
    return begins;
  begin_pass (clock, clock->pass + 1);
  clock->turned = spelch_motion_length (pass_of (clock));
  return true;
}

static bool
advance_stepwise (SpelchMotionClock *clock, double seconds)
{
  clock->waited += seconds;
  if (clock->waited < SPELCH_CLOCK_STEP_S)
    return false;
  double left = fmod (clock->waited, SPELCH_CLOCK_STEP_S);
  spelch_motion_clock_step (clock, 1);
  clock->playing = true;
  clock->waited = left;
  return true;
}

bool
spelch_motion_clock_advance (SpelchMotionClock *clock, double seconds)
{
  const SpelchMotionPass *pass = pass_of (clock);
  if (!clock->playing || pass == NULL || !(seconds > 0))
    return false;
  if (clock->reduced)
    return advance_stepwise (clock, seconds);
  if (is_too_fast (clock))
    return advance_blurred (clock, pass, seconds);
  clock->waited = 0;
  clock->turned += seconds * spelch_motion_clock_teeth (clock) * spelch_motion_tooth (pass);
  while (clock->turned >= spelch_motion_length (pass))
    {
      double over = clock->turned - spelch_motion_length (pass);
      begin_pass (clock, clock->pass + 1);
      pass = pass_of (clock);
      clock->turned = fmin (over, spelch_motion_length (pass) / 2);
    }
  return true;
}

void
spelch_motion_clock_step (SpelchMotionClock *clock, int teeth)
{
  const SpelchMotionPass *pass = pass_of (clock);
  clock->playing = false;
  clock->waited = 0;
  if (pass == NULL || teeth == 0)
    return;
  double tooth = spelch_motion_tooth (pass), at = clock->turned / tooth;
  double to = teeth > 0 ? floor (at + SLACK) + teeth : ceil (at - SLACK) + teeth;
  guint n = clock->motion->n_passes;
  if (to < -SLACK)
    {
      begin_pass (clock, clock->pass + n - 1);
      pass = pass_of (clock);
      clock->turned = fmax (spelch_motion_length (pass) + to * spelch_motion_tooth (pass), 0);
    }
  else if (to * tooth > spelch_motion_length (pass) * (1 - SLACK))
    begin_pass (clock, clock->pass + 1);
  else
    clock->turned = to * tooth;
}

void
spelch_motion_clock_set (SpelchMotionClock *clock, guint pass, double turned)
{
  if (pass_of (clock) == NULL)
    return;
  begin_pass (clock, MIN (pass, clock->motion->n_passes - 1));
  clock->turned = CLAMP (turned, 0, spelch_motion_length (pass_of (clock)));
}
