/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "reference-force.h"

#include <glib.h>
#include <math.h>

double
reference_between (double from, double to)
{
  return g_test_rand_double_range (from, to);
}

static SpelchFlutes
random_flutes (void)
{
  SpelchFlutes flutes = { 0 };
  int kind = g_test_rand_int_range (0, 5);
  flutes.diameter = reference_between (3, 25);
  flutes.length = reference_between (10, 50);
  flutes.helix = kind == 0 ? 0 : reference_between (0.02, G_PI / 4);
  flutes.edges_up = flutes.edges_down = g_test_rand_int_range (1, 5);
  flutes.turn_over = kind == 1 ? flutes.length : kind == 2 ? 0 : reference_between (0.1, 0.9) * flutes.length;
  if (kind == 4)
    flutes.edges_down = g_test_rand_int_range (1, 5);
  return flutes;
}

SpelchForceCase
reference_random_case (void)
{
  SpelchForceCase force = { 0 };
  double s = 0;
  force.flutes = random_flutes ();
  force.engaged
      = force.flutes.diameter * (g_test_rand_int_range (0, 3) == 0 ? 1 : reference_between (0.02, 1));
  force.climb = g_test_rand_int_range (0, 2) == 1;
  force.blunting = reference_between (1, 1.6);
  force.friction = reference_between (0, 0.6);
  force.rake = reference_between (0, G_PI / 6);
  force.edge_radial_share = reference_between (0.3, 1);
  force.lift_down_share = 0.5;
  force.n_slices = g_test_rand_int_range (1, 7);
  for (int i = 0; i < force.n_slices; i++)
    {
      double height = reference_between (0.1, 1) * force.flutes.length / force.n_slices;
      force.slices[i]
          = (SpelchSlice){ s, s + height, reference_between (1.5, 6.5), reference_between (12, 45) };
      s += height;
    }
  return force;
}

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
  switch ((int)place->part)
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
      gsl_integration_qagp (&function, points, n, 1e-9, 1e-9, REFERENCE_INTERVALS, space, &part, &error);
      sum += part;
    }
  return sum;
}

double
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

static double
over_turn (double phi, void *data)
{
  const Place *place = data;
  return force_per_mm (place, phi, (place->slice->s0 + place->slice->s1) / 2);
}

/* Mean over a turn: each mm of an edge spends the same share of it in the wood, wherever it trails. */
double
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
          gsl_integration_qag (&function, from, to, 1e-9, 1e-9, REFERENCE_INTERVALS, GSL_INTEG_GAUSS31, space,
                               &mean, &error);
          sum += mean / (2 * G_PI) * (slice.s1 - slice.s0)
                 * reference_edges (&force->flutes, (slice.s0 + slice.s1) / 2);
        }
    }
  return sum;
}

double
reference_scale (const SpelchForceCase *force, double feed_per_tooth)
{
  double sum = 0;
  for (int i = 0; i < force->n_slices; i++)
    {
      const SpelchSlice *slice = &force->slices[i];
      sum += (slice->s1 - slice->s0) * (force->blunting * slice->a + slice->b * feed_per_tooth);
    }
  return sum;
}

bool
reference_on_the_brink (const SpelchForceCase *force, double turned)
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
