/* SPDX-License-Identifier: GPL-3.0-or-later
 *
 * The closed forms of the forces against numerical integration by GSL. The reference knows nothing of the
 * library's sums: it places each edge by the lead of its helix, takes the chip as f_z sin(phi), resolves the
 * forces at each height, and integrates over height or over the turn.
 */
#include "published.h"

#include "mechanics/force.h"

#include <gsl/gsl_integration.h>
#include <math.h>

#define GSL       "numerical integration by GSL, adaptive Gauss-Kronrod"
#define INTERVALS 2000

static double
between (double from, double to)
{
  return g_test_rand_double_range (from, to);
}

static SpelchFlutes
random_flutes (void)
{
  SpelchFlutes flutes = { 0 };
  int kind = g_test_rand_int_range (0, 5);
  flutes.diameter = between (3, 25);
  flutes.length = between (10, 50);
  flutes.helix = kind == 0 ? 0 : between (0.02, G_PI / 4);
  flutes.edges_up = flutes.edges_down = g_test_rand_int_range (1, 5);
  flutes.turn_over = kind == 1 ? flutes.length : kind == 2 ? 0 : between (0.1, 0.9) * flutes.length;
  if (kind == 4)
    flutes.edges_down = g_test_rand_int_range (1, 5);
  return flutes;
}

/* A bit over one to six layers, cutting a slot or an edge, climbing or not. */
static SpelchForceCase
random_case (void)
{
  SpelchForceCase force = { 0 };
  double s = 0;
  force.flutes = random_flutes ();
  force.engaged = force.flutes.diameter * (g_test_rand_int_range (0, 3) == 0 ? 1 : between (0.02, 1));
  force.climb = g_test_rand_int_range (0, 2) == 1;
  force.blunting = between (1, 1.6);
  force.friction = between (0, 0.6);
  force.rake = between (0, G_PI / 6);
  force.edge_radial_share = between (0.3, 1);
  force.lift_down_share = 0.5;
  force.n_slices = g_test_rand_int_range (1, 7);
  for (int i = 0; i < force.n_slices; i++)
    {
      double height = between (0.1, 1) * force.flutes.length / force.n_slices;
      force.slices[i] = (SpelchSlice){ s, s + height, between (1.5, 6.5), between (12, 45) };
      s += height;
    }
  return force;
}

/* ---- The reference ---- */

static int
reference_sign (const SpelchFlutes *flutes, double s)
{
  if (flutes->helix * 180 / G_PI < 8)
    return 0;
  return s < flutes->turn_over ? 1 : -1;
}

static int
reference_edges (const SpelchFlutes *flutes, double s)
{
  return s < flutes->turn_over ? flutes->edges_up : flutes->edges_down;
}

/* The feed per tooth is that of the zone with the fewest edges; more edges share the same feed. */
static double
reference_chip_share (const SpelchFlutes *flutes, double s)
{
  int edges = reference_edges (flutes, s);
  bool two_zones = flutes->turn_over > 0 && flutes->turn_over < flutes->length;
  return two_zones ? (double)MIN (flutes->edges_up, flutes->edges_down) / edges : 1;
}

/* How far the edge at @s trails the edge's tip, rad: a turn a lead, forward below the turn-over. */
static double
reference_trail (const SpelchFlutes *flutes, double s)
{
  double lead, rising = fmin (s, flutes->turn_over);
  if (flutes->helix <= 0)
    return 0;
  lead = G_PI * flutes->diameter / tan (flutes->helix);
  return 2 * G_PI * (rising - (s - rising)) / lead;
}

typedef enum
{
  ALONG,
  ACROSS,
  AXIAL,
  LIFT,
  PRESS,
  TANGENTIAL,
  N_PARTS,
} Part;

typedef struct
{
  const SpelchForceCase *force;
  const SpelchSlice *slice;
  double feed_per_tooth, turned;
  int edge, edges;
  Part part;
} Place;

/* The oblique-cutting ratio, written out again from the transformation's three parts. */
static double
reference_axial_ratio (const SpelchForceCase *force)
{
  double beta = atan (force->friction), i = force->flutes.helix, rake = force->rake;
  double denominator = cos (beta - rake) + pow (tan (i), 2) * sin (beta);
  return (cos (beta - rake) * tan (i) - tan (i) * sin (beta)) / denominator;
}

/* N/mm at @phi from where a conventional chip begins, resolved. On the bit: the tangential force against its
 * motion, the radial one toward the axis. */
static double
force_per_mm (const Place *place, double phi, double s)
{
  const SpelchForceCase *force = place->force;
  double h = place->feed_per_tooth * reference_chip_share (&force->flutes, s) * sin (phi);
  double edge = force->blunting * place->slice->a, cutting = place->slice->b * h;
  double tangential = edge + cutting;
  double radial = force->edge_radial_share * edge + cutting * tan (atan (force->friction) - force->rake);
  int sign = reference_sign (&force->flutes, s);
  double axial = sign * reference_axial_ratio (force) * cutting;
  switch (place->part)
    {
    case ALONG:
      return -tangential * cos (phi) - radial * sin (phi);
    case ACROSS:
      return tangential * sin (phi) - radial * cos (phi);
    case AXIAL:
      return axial;
    case LIFT:
      return sign > 0 ? tan (force->flutes.helix) * tangential : force->lift_down_share * axial;
    case PRESS:
      return sign < 0 ? tan (force->flutes.helix) * tangential : -force->lift_down_share * axial;
    default:
      return tangential;
    }
}

static void
engaged_from_to (const SpelchForceCase *force, double *from, double *to)
{
  double reach = acos (fmax (1 - 2 * force->engaged / force->flutes.diameter, -1));
  *from = force->climb ? G_PI - reach : 0;
  *to = *from + reach;
}

/* Angle of the place's edge at @s, 0 to 2 pi. */
static double
angle_at (const Place *place, double s)
{
  double phi
      = place->turned - 2 * G_PI * place->edge / place->edges - reference_trail (&place->force->flutes, s);
  return phi - 2 * G_PI * floor (phi / (2 * G_PI));
}

static double
over_height (double s, void *data)
{
  const Place *place = data;
  double phi = angle_at (place, s), from, to;
  engaged_from_to (place->force, &from, &to);
  return phi > from && phi < to ? force_per_mm (place, phi, s) : 0;
}

static int
compare (const void *a, const void *b)
{
  double x = *(const double *)a, y = *(const double *)b;
  return x < y ? -1 : x > y;
}

/* Heights in s0..s1 where the edge enters or leaves the wood: the integrand jumps there. */
static gsize
jumps (const Place *place, double s0, double s1, double *points)
{
  double from, to, phi0 = place->turned - 2 * G_PI * place->edge / place->edges;
  double trail0 = reference_trail (&place->force->flutes, s0);
  double slope = (reference_trail (&place->force->flutes, s1) - trail0) / (s1 - s0);
  gsize n = 0;
  engaged_from_to (place->force, &from, &to);
  points[n++] = s0;
  for (int turn = -20; turn <= 20 && slope != 0; turn++)
    for (int j = 0; j < 2; j++)
      {
        double s = s0 + (phi0 - trail0 - (j == 0 ? from : to) - 2 * G_PI * turn) / slope;
        if (s > s0 + 1e-12 && s < s1 - 1e-12)
          points[n++] = s;
      }
  points[n++] = s1;
  qsort (points, n, sizeof *points, compare);
  return n;
}

/* One slice between s0 and s1, on one side of the turn-over: all its edges at this instant. */
static double
instant_of_span (Place *place, double s0, double s1, gsl_integration_workspace *space)
{
  double sum = 0, points[90];
  gsl_function function = { over_height, place };
  place->edges = reference_edges (&place->force->flutes, (s0 + s1) / 2);
  for (place->edge = 0; place->edge < place->edges; place->edge++)
    {
      double part = 0, error = 0;
      gsize n = jumps (place, s0, s1, points);
      gsl_integration_qagp (&function, points, n, 1e-9, 1e-9, INTERVALS, space, &part, &error);
      sum += part;
    }
  return sum;
}

static double
reference_instant (const SpelchForceCase *force, double feed_per_tooth, double turned, Part part,
                   gsl_integration_workspace *space)
{
  double sum = 0;
  for (int i = 0; i < force->n_slices; i++)
    {
      Place place = { force, &force->slices[i], feed_per_tooth, turned, 0, 0, part };
      double s0 = force->slices[i].s0, s1 = force->slices[i].s1, middle = force->flutes.turn_over;
      if (middle > s0 && middle < s1)
        sum += instant_of_span (&place, s0, middle, space) + instant_of_span (&place, middle, s1, space);
      else
        sum += instant_of_span (&place, s0, s1, space);
    }
  return sum;
}

/* ---- The comparisons ---- */

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

/* Size that gaps are measured against: every edge fully in the wood. N */
static double
scale_of (const SpelchForceCase *force, double feed_per_tooth)
{
  double sum = 0;
  for (int i = 0; i < force->n_slices; i++)
    {
      const SpelchSlice *slice = &force->slices[i];
      sum += (slice->s1 - slice->s0) * (force->blunting * slice->a + slice->b * feed_per_tooth);
    }
  return sum;
}

/* Some angles make an upright edge stand exactly where the wood begins; both answers are right there. */
static bool
on_the_brink (const SpelchForceCase *force, double turned)
{
  double from, to;
  engaged_from_to (force, &from, &to);
  for (int n = 1; n <= 4 && force->flutes.helix <= 0; n++)
    for (int edge = 0; edge < n; edge++)
      {
        Place place = { force, force->slices, 0, turned, edge, n, ALONG };
        double phi = angle_at (&place, 0);
        if (fabs (phi - from) < 1e-4 || fabs (phi - to) < 1e-4 || phi > 2 * G_PI - 1e-4)
          return true;
      }
  return false;
}

/* Largest gap at @n random instants of random bits, boards and cuts, relative to the force of a full edge. */
static double
instants_against_integral (double n, double part)
{
  gsl_integration_workspace *space = gsl_integration_workspace_alloc (INTERVALS);
  double worst = 0;
  for (int i = 0; i < n; i++)
    {
      SpelchForceCase force = random_case ();
      double feed_per_tooth = between (0.03, 0.5), turned = between (0, 2 * G_PI);
      double reference, ours;
      if (on_the_brink (&force, turned))
        continue;
      reference = reference_instant (&force, feed_per_tooth, turned, (Part)part, space);
      ours = library_instant (&force, feed_per_tooth, turned, (Part)part);
      worst = fmax (worst, fabs (ours - reference) / scale_of (&force, feed_per_tooth));
    }
  gsl_integration_workspace_free (space);
  return worst;
}

static double
over_turn (double phi, void *data)
{
  const Place *place = data;
  return force_per_mm (place, phi, (place->slice->s0 + place->slice->s1) / 2);
}

/* Mean over a turn: each mm of an edge spends the same share of it in the wood, wherever it trails. */
static double
reference_mean (const SpelchForceCase *force, double feed_per_tooth, Part part,
                gsl_integration_workspace *space)
{
  double sum = 0, from, to;
  engaged_from_to (force, &from, &to);
  for (int i = 0; i < force->n_slices; i++)
    {
      double turn = force->flutes.turn_over;
      double cuts[] = { force->slices[i].s0, CLAMP (turn, force->slices[i].s0, force->slices[i].s1),
                        force->slices[i].s1 };
      for (int j = 0; j < 2; j++)
        {
          SpelchSlice slice = force->slices[i];
          Place place = { force, &slice, feed_per_tooth, 0, 0, 0, part };
          gsl_function function = { over_turn, &place };
          double mean = 0, error = 0;
          slice.s0 = cuts[j];
          slice.s1 = cuts[j + 1];
          gsl_integration_qag (&function, from, to, 1e-9, 1e-9, INTERVALS, GSL_INTEG_GAUSS31, space, &mean,
                               &error);
          sum += mean / (2 * G_PI) * (slice.s1 - slice.s0)
                 * reference_edges (&force->flutes, (slice.s0 + slice.s1) / 2);
        }
    }
  return sum;
}

static double
means_against_integral (double n, double part)
{
  gsl_integration_workspace *space = gsl_integration_workspace_alloc (INTERVALS);
  double worst = 0;
  for (int i = 0; i < n; i++)
    {
      SpelchForceCase force = random_case ();
      double feed_per_tooth = between (0.03, 0.5);
      SpelchForceMeans means = spelch_force_means (&force, feed_per_tooth);
      double reference = reference_mean (&force, feed_per_tooth, (Part)part, space);
      double ours = (Part)part == AXIAL ? means.axial : means.tangential;
      worst = fmax (worst, fabs (ours - reference) / scale_of (&force, feed_per_tooth));
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
  gsl_integration_cquad_workspace *space = gsl_integration_cquad_workspace_alloc (INTERVALS);
  double worst = 0;
  for (int i = 0; i < n; i++)
    {
      SpelchForceCase force = random_case ();
      double feed_per_tooth = between (0.03, 0.5), sum = 0, error = 0;
      double scale = scale_of (&force, feed_per_tooth);
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
  for (int i = 0; i < n; i++)
    {
      SpelchForceCase force = random_case ();
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
  for (int i = 0; i < n; i++)
    {
      SpelchForceCase force = random_case ();
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
 * image. The wrap is a whole number of sampling steps, so that the mirror image passes through the same
 * instants. */
static double
swapped_bounds (double n, double unused)
{
  double worst = 0;
  for (int i = 0; i < n; i++)
    {
      SpelchForceCase force = random_case ();
      SpelchFlutes *flutes = &force.flutes;
      double step = 2 * G_PI / (SPELCH_TURN_SAMPLES * flutes->edges_up);
      double wrap = step * g_test_rand_int_range (1, 3 * SPELCH_TURN_SAMPLES);
      SpelchTurn turn;
      double lift, press;
      force.n_slices = 1;
      flutes->edges_down = flutes->edges_up;
      flutes->helix = atan (wrap * flutes->diameter / 2 / force.slices[0].s1);
      flutes->turn_over = flutes->length;
      spelch_force_turn (&force, &turn);
      lift = spelch_force_peaks (&turn, 0.2).lift_peak;
      flutes->turn_over = 0;
      spelch_force_turn (&force, &turn);
      press = spelch_force_peaks (&turn, 0.2).press_peak;
      worst = fmax (worst, fabs (lift - press));
    }
  return worst;
}

/* The largest part by which the sampled sideways peak falls short of the peak found in many small steps. */
static double
sampled_peak_short (double n, double least_share)
{
  double worst = 0;
  for (int i = 0; i < n; i++)
    {
      SpelchForceCase force = random_case ();
      SpelchTurn turn;
      double most = 0;
      force.n_slices = 1;
      force.engaged = fmax (force.engaged, least_share * force.flutes.diameter);
      spelch_force_turn (&force, &turn);
      for (int j = 0; j < 5000; j++)
        {
          double turned = turn.span * (j + 0.5) / 5000;
          most = fmax (most, hypot (library_instant (&force, 0.2, turned, ALONG),
                                    library_instant (&force, 0.2, turned, ACROSS)));
        }
      worst = fmax (worst, 1 - spelch_force_peaks (&turn, 0.2).sideways_peak / most);
    }
  return worst;
}

/* The feed found for a limit keeps the sampled peak within it, and uses it up unless capped. */
static double
feed_for_peak_misses (double n, double unused)
{
  double worst = 0;
  for (int i = 0; i < n; i++)
    {
      SpelchForceCase force = random_case ();
      SpelchTurn turn;
      double limit, feed;
      spelch_force_turn (&force, &turn);
      limit = spelch_force_peaks (&turn, 0).sideways_peak * between (1.01, 3);
      feed = spelch_force_feed_for_peak (&turn, limit, 10);
      if (feed < 10)
        worst = fmax (worst, fabs (spelch_force_peaks (&turn, feed).sideways_peak / limit - 1));
      else
        g_assert_cmpfloat (spelch_force_peaks (&turn, feed).sideways_peak, <=, limit);
    }
  return worst;
}

static const PublishedCheck CHECKS[] = {
  { "force along the feed at an instant, 150 random cases, most apart", GSL, PUBLISHED_IDENTITY, 0, 1e-6,
    instants_against_integral, 150, ALONG },
  { "force across the feed at an instant, 150 random cases, most apart", GSL, PUBLISHED_IDENTITY, 0, 1e-6,
    instants_against_integral, 150, ACROSS },
  { "axial force at an instant, 150 random cases, most apart", GSL, PUBLISHED_IDENTITY, 0, 1e-6,
    instants_against_integral, 150, AXIAL },
  { "bound of the lift at an instant, 150 random cases, most apart", GSL, PUBLISHED_IDENTITY, 0, 1e-6,
    instants_against_integral, 150, LIFT },
  { "bound of the press at an instant, 150 random cases, most apart", GSL, PUBLISHED_IDENTITY, 0, 1e-6,
    instants_against_integral, 150, PRESS },
  { "tangential force at an instant, 150 random cases, most apart", GSL, PUBLISHED_IDENTITY, 0, 1e-6,
    instants_against_integral, 150, TANGENTIAL },
  { "mean tangential force over a turn, 300 random cases, most apart", GSL, PUBLISHED_IDENTITY, 0, 1e-6,
    means_against_integral, 300, TANGENTIAL },
  { "mean axial force over a turn, 300 random cases, most apart", GSL, PUBLISHED_IDENTITY, 0, 1e-6,
    means_against_integral, 300, AXIAL },
  { "tangential instants over a turn against the mean, 60 random cases", GSL, PUBLISHED_IDENTITY, 0, 1e-6,
    turns_against_means, 60, TANGENTIAL },
  { "axial instants over a turn against the mean, 60 random cases", GSL, PUBLISHED_IDENTITY, 0, 1e-6,
    turns_against_means, 60, AXIAL },
  { "power over mean force times cutting speed, 300 random cases, most apart", "P = F v", PUBLISHED_IDENTITY,
    0, 1e-9, power_against_force, 300, 0 },
  { "mean axial force with every hand swapped turns its sign, 300 random cases, N", "symmetry",
    PUBLISHED_IDENTITY, 0, 1e-9, swapped_hands, 300, 0 },
  { "bound of the lift, and of the press with the hand swapped, 300 random cases, N", "symmetry",
    PUBLISHED_IDENTITY, 0, 1e-6, swapped_bounds, 300, 0 },
  { "share by which the sampled peak falls short, widths from 0.02 D, 200 random cases", "dense sampling",
    PUBLISHED_IDENTITY, 0, 0.2, sampled_peak_short, 200, 0 },
  { "the same, widths from D / 4", "dense sampling", PUBLISHED_IDENTITY, 0, 0.06, sampled_peak_short, 200,
    0.25 },
  { "feed for a peak of sideways force uses the limit up, 300 random cases", "definition", PUBLISHED_IDENTITY,
    0, 1e-9, feed_for_peak_misses, 300, 0 },
};

const PublishedGroup PUBLISHED_INTEGRALS = { "integrals", CHECKS, G_N_ELEMENTS (CHECKS) };
