/* SPDX-License-Identifier: GPL-3.0-or-later
 *
 * The closed forms of the forces against numerical integration by GSL, over 10 000 random bits, boards and
 * cuts (a twentieth of them under sanitizers), and how much quicker they are.
 */
#include "../processor-time.h"
#include "published.h"

#include "reference-force.h"

#include <math.h>

#ifdef __SANITIZE_ADDRESS__
#define SHARE 0.05
#else
#define SHARE 1
#endif

#define GSL "numerical integration by GSL, adaptive Gauss-Kronrod"

static double
part_of (const SpelchForceParts *parts, Part part)
{
  const double values[N_PARTS]
      = { parts->along, parts->across, parts->axial, parts->lift, parts->press, parts->tangential };
  return values[part];
}

static double
library_instant (const SpelchForceCase *force, double feed_per_tooth, double turned, Part part)
{
  SpelchForceParts still, moving;
  spelch_force_at (force, turned, &still, &moving);
  return part_of (&still, part) + feed_per_tooth * part_of (&moving, part);
}

/* Largest gap at @n random instants of random bits, boards and cuts, relative to the force of a full edge. */
static double
instants_against_integral (double n, double part)
{
  gsl_integration_workspace *space = gsl_integration_workspace_alloc (REFERENCE_INTERVALS);
  double worst = 0;
  for (int i = 0; i < n * SHARE; i++)
    {
      SpelchForceCase force = reference_random_case ();
      double feed_per_tooth = reference_between (0.03, 0.5), turned = reference_between (0, 2 * G_PI);
      double reference, ours;
      if (reference_on_the_brink (&force, turned))
        continue;
      reference = reference_instant (&force, feed_per_tooth, turned, (Part)part, space);
      ours = library_instant (&force, feed_per_tooth, turned, (Part)part);
      worst = fmax (worst, fabs (ours - reference) / reference_scale (&force, feed_per_tooth));
    }
  gsl_integration_workspace_free (space);
  return worst;
}

static double
means_against_integral (double n, double part)
{
  gsl_integration_workspace *space = gsl_integration_workspace_alloc (REFERENCE_INTERVALS);
  double worst = 0;
  for (int i = 0; i < n * SHARE; i++)
    {
      SpelchForceCase force = reference_random_case ();
      double feed_per_tooth = reference_between (0.03, 0.5);
      SpelchForceMeans means = spelch_force_means (&force, feed_per_tooth);
      double reference = reference_mean (&force, feed_per_tooth, (Part)part, space);
      double ours = (Part)part == AXIAL ? means.axial : means.tangential;
      worst = fmax (worst, fabs (ours - reference) / reference_scale (&force, feed_per_tooth));
    }
  gsl_integration_workspace_free (space);
  return worst;
}

typedef struct
{
  const SpelchForceCase *force;
  double feed_per_tooth;
  Part part;
} Turning;

static double
library_over_turn (double turned, void *data)
{
  const Turning *turning = data;
  return library_instant (turning->force, turning->feed_per_tooth, turned, turning->part);
}

/* The instants integrated over a turn must give the means, though neither sum knows of the other. */
static double
turns_against_means (double n, double part)
{
  gsl_integration_cquad_workspace *space = gsl_integration_cquad_workspace_alloc (REFERENCE_INTERVALS);
  double worst = 0;
  for (int i = 0; i < n * SHARE; i++)
    {
      SpelchForceCase force = reference_random_case ();
      double feed_per_tooth = reference_between (0.03, 0.5), sum = 0, error = 0;
      double scale = reference_scale (&force, feed_per_tooth);
      Turning turning = { &force, feed_per_tooth, (Part)part };
      gsl_function function = { library_over_turn, &turning };
      SpelchForceMeans means = spelch_force_means (&force, feed_per_tooth);
      double ours = (Part)part == AXIAL ? means.axial : means.tangential;
      if (force.flutes.helix < 0.05)
        continue;
      gsl_integration_cquad (&function, 0, 2 * G_PI, 1e-8 * scale, 0, space, &sum, &error, NULL);
      worst = fmax (worst, fabs (ours - sum / (2 * G_PI)) / scale);
    }
  gsl_integration_cquad_workspace_free (space);
  return worst;
}

/* Power is mean tangential force times cutting speed. */
static double
power_against_force (double n, double unused)
{
  double worst = 0;
  for (int i = 0; i < n * SHARE; i++)
    {
      SpelchForceCase force = reference_random_case ();
      SpelchForceMeans means = spelch_force_means (&force, 0.2);
      double speed = G_PI * force.flutes.diameter * 300 / 1000; /* m/s at 300 turns a second */
      worst = fmax (worst, fabs (means.power_per_speed * 300 / (means.tangential * speed) - 1));
    }
  return worst;
}

/* The bit that cuts with every zone's hand changed has its mean axial force turned round. */
static double
swapped_hands (double n, double unused)
{
  double worst = 0;
  for (int i = 0; i < n * SHARE; i++)
    {
      SpelchForceCase force = reference_random_case ();
      double up, down;
      force.flutes.turn_over = force.flutes.length;
      force.flutes.edges_down = force.flutes.edges_up;
      up = spelch_force_means (&force, 0.2).axial;
      force.flutes.turn_over = 0;
      down = spelch_force_means (&force, 0.2).axial;
      worst = fmax (worst, fabs (up + down));
    }
  return worst;
}

/* What one hand lifts, the other presses: bounds over a turn of a bit in one material and of its mirror
 * image. */
static double
swapped_bounds (double n, double unused)
{
  double worst = 0;
  for (int i = 0; i < n * SHARE; i++)
    {
      SpelchForceCase force = reference_random_case ();
      SpelchFlutes *flutes = &force.flutes;
      SpelchTurn turn;
      double lift, press;
      force.n_slices = 1;
      flutes->edges_down = flutes->edges_up;
      flutes->turn_over = flutes->length;
      spelch_force_turn (&force, &turn);
      lift = spelch_force_peaks (&turn, 0.2).lift_peak;
      flutes->turn_over = 0;
      spelch_force_turn (&force, &turn);
      press = spelch_force_peaks (&turn, 0.2).press_peak;
      worst = fmax (worst, fabs (lift / press - 1));
    }
  return worst;
}

/* The feed found for a limit keeps the sampled peak within it, and uses it up unless capped. */
static double
feed_for_peak_misses (double n, double unused)
{
  double worst = 0;
  for (int i = 0; i < n * SHARE; i++)
    {
      SpelchForceCase force = reference_random_case ();
      SpelchTurn turn;
      double limit, feed;
      spelch_force_turn (&force, &turn);
      limit = spelch_force_peaks (&turn, 0).sideways_peak * reference_between (1.01, 3);
      feed = spelch_force_feed_for_peak (&turn, limit, 10);
      if (feed < 10)
        worst = fmax (worst, fabs (spelch_force_peaks (&turn, feed).sideways_peak / limit - 1));
      else
        g_assert_cmpfloat (spelch_force_peaks (&turn, feed).sideways_peak, <=, limit);
    }
  return worst;
}

/* ---- How much quicker ---- */

#define TIMED_CASES  40
#define TIMED_ROUNDS 200

/* The time GSL takes for all parts of the force at an instant over that of the closed forms for the same. */
static double
speed_ratio (void)
{
  gsl_integration_workspace *space = gsl_integration_workspace_alloc (REFERENCE_INTERVALS);
  SpelchForceCase forces[TIMED_CASES];
  double sum = 0, start, ours;
  for (int i = 0; i < TIMED_CASES; i++)
    forces[i] = reference_random_case ();
  start = processor_ms ();
  for (int i = 0; i < TIMED_CASES * TIMED_ROUNDS; i++)
    {
      SpelchForceParts still, moving;
      spelch_force_at (&forces[i % TIMED_CASES], 0.01 * i, &still, &moving);
      sum += still.along + moving.across;
    }
  ours = (processor_ms () - start) / TIMED_ROUNDS;
  start = processor_ms ();
  for (int i = 0; i < TIMED_CASES; i++)
    for (int part = 0; part < N_PARTS; part++)
      sum += reference_instant (&forces[i], 0.2, 1, (Part)part, space);
  gsl_integration_workspace_free (space);
  g_assert_true (isfinite (sum));
  return (processor_ms () - start) / ours;
}

/* 1 when the closed forms are at least so many times quicker. */
static double
quicker (double times, double unused)
{
  double ratio = speed_ratio ();
  g_test_message ("closed forms are %.0f times quicker than integration", ratio);
  return ratio >= times;
}

static const PublishedCheck CHECKS[] = {
  { "force along the feed at an instant, 10 000 random cases, most apart", GSL, PUBLISHED_IDENTITY, 0, 1e-6,
    instants_against_integral, 10000, ALONG },
  { "force across the feed at an instant, 10 000 random cases, most apart", GSL, PUBLISHED_IDENTITY, 0, 1e-6,
    instants_against_integral, 10000, ACROSS },
  { "axial force at an instant, 10 000 random cases, most apart", GSL, PUBLISHED_IDENTITY, 0, 1e-6,
    instants_against_integral, 10000, AXIAL },
  { "bound of the lift at an instant, 10 000 random cases, most apart", GSL, PUBLISHED_IDENTITY, 0, 1e-6,
    instants_against_integral, 10000, LIFT },
  { "bound of the press at an instant, 10 000 random cases, most apart", GSL, PUBLISHED_IDENTITY, 0, 1e-6,
    instants_against_integral, 10000, PRESS },
  { "tangential force at an instant, 10 000 random cases, most apart", GSL, PUBLISHED_IDENTITY, 0, 1e-6,
    instants_against_integral, 10000, TANGENTIAL },
  { "mean tangential force over a turn, 10 000 random cases, most apart", GSL, PUBLISHED_IDENTITY, 0, 1e-6,
    means_against_integral, 10000, TANGENTIAL },
  { "mean axial force over a turn, 10 000 random cases, most apart", GSL, PUBLISHED_IDENTITY, 0, 1e-6,
    means_against_integral, 10000, AXIAL },
  { "tangential instants over a turn against the mean, 60 random cases", GSL, PUBLISHED_IDENTITY, 0, 1e-6,
    turns_against_means, 60, TANGENTIAL },
  { "axial instants over a turn against the mean, 60 random cases", GSL, PUBLISHED_IDENTITY, 0, 1e-6,
    turns_against_means, 60, AXIAL },
  { "power over mean force times cutting speed, 300 random cases, most apart", "P = F v", PUBLISHED_IDENTITY,
    0, 1e-9, power_against_force, 300, 0 },
  { "mean axial force with every hand swapped turns its sign, 300 random cases, N", "symmetry",
    PUBLISHED_IDENTITY, 0, 1e-9, swapped_hands, 300, 0 },
  { "bound of the lift, and of the press with the hand swapped, 300 random cases, most apart", "symmetry",
    PUBLISHED_IDENTITY, 0, 1e-6, swapped_bounds, 300, 0 },
  { "feed for a peak of sideways force uses the limit up, 300 random cases", "definition", PUBLISHED_IDENTITY,
    0, 1e-9, feed_for_peak_misses, 300, 0 },
  { "closed forms at least 50 times quicker than integrating all parts of the force (1: yes)", GSL,
    PUBLISHED_IDENTITY, 1, 0, quicker, 50, 0 },
};

const PublishedGroup PUBLISHED_INTEGRALS = { "integrals", CHECKS, G_N_ELEMENTS (CHECKS) };
