/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "mechanics/force.h"

#include "mechanics/chip.h"

#include <math.h>
#include <stdlib.h>
#include <string.h>

/* A stretch of one edge in one material and one hand. */
typedef struct
{
  double s0, s1, a, b;
  int sign;
  int edges;
  double twist0, twist1; /* of the helix at its ends, rad */
} Stretch;

#define MAX_STRETCHES (SPELCH_MAX_SLICES + 1)

/* Splits the slices at the turn-over. Where a zone has more edges than the other, each takes a thinner chip:
 * its cutting part shrinks in that proportion, so that one feed per tooth (of the zone with fewer edges)
 * serves for all. */
static int
stretches_of (const SpelchForceCase *force, Stretch out[MAX_STRETCHES])
{
  int n = 0;
  int fewest = spelch_flute_fewest_edges (&force->flutes);
  for (int i = 0; i < force->n_slices; i++)
    {
      const SpelchSlice *slice = &force->slices[i];
      double turn = force->flutes.turn_over;
      bool split = turn > slice->s0 && turn < slice->s1 && turn < force->flutes.length;
      double cuts[3] = { slice->s0, split ? turn : slice->s1, slice->s1 };
      for (int j = 0; j < (split ? 2 : 1); j++)
        {
          double middle = (cuts[j] + cuts[j + 1]) / 2;
          int edges = spelch_flute_edges_at (&force->flutes, middle);
          out[n++] = (Stretch){ cuts[j],
                                cuts[j + 1],
                                force->blunting * slice->a,
                                slice->b * fewest / edges,
                                spelch_flute_sign_at (&force->flutes, middle),
                                edges,
                                spelch_flute_twist (&force->flutes, cuts[j]),
                                spelch_flute_twist (&force->flutes, cuts[j + 1]) };
        }
    }
  return n;
}

double
spelch_force_axial_ratio (double helix, double rake, double friction)
{
  double angle = atan (friction), t = tan (helix);
  return t * (cos (angle - rake) - sin (angle)) / (cos (angle - rake) + t * t * sin (angle));
}

SpelchForceMeans
spelch_force_means (const SpelchForceCase *force, double feed_per_tooth)
{
  SpelchForceMeans means = { 0, 0, 0 };
  Stretch stretches[MAX_STRETCHES];
  int n = stretches_of (force, stretches);
  double arc = spelch_chip_arc (force->flutes.diameter, force->engaged);
  double engaged = fmin (force->engaged, force->flutes.diameter);
  double ratio = spelch_force_axial_ratio (force->flutes.helix, force->rake, force->friction);
  for (int i = 0; i < n; i++)
    {
      const Stretch *e = &stretches[i];
      double height = e->s1 - e->s0;
      double work = height * e->edges * (e->a * arc + e->b * feed_per_tooth * engaged); /* N mm a turn */
      means.power_per_speed += work / 1000;
      means.tangential += work / (M_PI * force->flutes.diameter);
      means.axial += e->sign * ratio * e->b * height * e->edges * feed_per_tooth * engaged
                     / (M_PI * force->flutes.diameter);
    }
  return means;
}

/* What multiplies the sums of one stretch. */
typedef struct
{
  double radial_edge;    /* c */
  double radial_cutting; /* tan (friction angle - rake) */
  double axial;          /* r_a */
  double helix;          /* tan beta */
  double lift_down;
} Shares;

/* An angle with its sine and cosine, which take longer to find than all else: where one stretch ends the next
 * begins, and most begin or end where the wood does. */
typedef struct
{
  double phi, sine, cosine;
} Angle;

static Angle
angle_at (double phi)
{
  return (Angle){ phi, sin (phi), cos (phi) };
}

/* The ends of the arc added before. */
typedef struct
{
  Angle p, q;
} Ends;

static Angle
known_or_new (const Ends *before, double phi)
{
  if (before->p.phi == phi)
    return before->p;
  return before->q.phi == phi ? before->q : angle_at (phi);
}

/* Adds weight times the integrals over phi from p to q of one stretch. */
static void
add_arc (const Stretch *e, const Shares *k, double p, double q, double weight, Ends *ends,
         SpelchForceParts *still, SpelchForceParts *moving)
{
  *ends = (Ends){ known_or_new (ends, p), known_or_new (ends, q) };
  double sp = ends->p.sine, cp = ends->p.cosine, sq = ends->q.sine, cq = ends->q.cosine;
  double sines = cp - cq;                               /* of sin */
  double cosines = sq - sp;                             /* of cos */
  double crossed = (sq * sq - sp * sp) / 2;             /* of sin cos */
  double squares = ((q - p) - (sq * cq - sp * cp)) / 2; /* of sin^2 */
  double a = weight * e->a, b = weight * e->b;

  still->along += -a * cosines - k->radial_edge * a * sines;
  still->across += a * sines - k->radial_edge * a * cosines;
  still->tangential += a * (q - p);
  moving->along += -b * crossed - k->radial_cutting * b * squares;
  moving->across += b * squares - k->radial_cutting * b * crossed;
  moving->tangential += b * sines;
  moving->axial += e->sign * k->axial * b * sines;
  if (e->sign > 0)
    {
      still->lift += k->helix * a * (q - p);
      moving->lift += k->helix * b * sines;
      moving->press -= k->lift_down * k->axial * b * sines;
    }
  else if (e->sign < 0)
    {
      still->press += k->helix * a * (q - p);
      moving->press += k->helix * b * sines;
      moving->lift -= k->lift_down * k->axial * b * sines;
    }
}

/* As fmax () and fmin () of numbers, without the call. */
static double
larger (double a, double b)
{
  return a > b ? a : b;
}

static double
smaller (double a, double b)
{
  return a < b ? a : b;
}

/* Adds one edge of a stretch whose angle runs from phi0 at s0 to phi1 at s1. */
static void
add_edge (const Stretch *e, const Shares *k, double phi0, double phi1, double from, double to, Ends *ends,
          SpelchForceParts *still, SpelchForceParts *moving)
{
  double low = smaller (phi0, phi1), high = larger (phi0, phi1);
  double height = e->s1 - e->s0;
  double shift = 2 * M_PI * floor (low / (2 * M_PI));
  low -= shift;
  high -= shift;
  if (high - low < 1e-9)
    {
      if (low > from && low < to)
        {
          /* Upright edge: the whole height stands at one angle. A tiny arc keeps one set of formulas. */
          double half = 1e-5;
          add_arc (e, k, low - half, low + half, height / (2 * half), ends, still, moving);
        }
      return;
    }
  for (; from < high; from += 2 * M_PI, to += 2 * M_PI)
    {
      double p = larger (low, from), q = smaller (high, to);
      if (q > p)
        {
          double weight = height / (high - low);
          double turns = 2 * M_PI * floor (p / (2 * M_PI));
          add_arc (e, k, p - turns, q - turns, weight, ends, still, moving);
        }
    }
}

/* All that doesn't change over a turn. */
typedef struct
{
  int n;
  Stretch stretches[MAX_STRETCHES];
  Shares shares;
  double from, to; /* angles between which an edge is in the wood, rad */
} Engagement;

static void
engage (const SpelchForceCase *force, Engagement *e)
{
  double reach = spelch_chip_engagement (force->flutes.diameter, force->engaged);
  e->n = stretches_of (force, e->stretches);
  e->from = force->climb ? M_PI - reach : 0;
  e->to = e->from + reach;
  e->shares = (Shares){ force->edge_radial_share, tan (atan (force->friction) - force->rake),
                        spelch_force_axial_ratio (force->flutes.helix, force->rake, force->friction),
                        tan (force->flutes.helix), force->lift_down_share };
}

static void
forces_at (const Engagement *e, double turned, SpelchForceParts *still, SpelchForceParts *moving)
{
  memset (still, 0, sizeof *still);
  memset (moving, 0, sizeof *moving);
  Ends ends = { { 0, 0, 1 }, { 0, 0, 1 } };
  for (int i = 0; i < e->n; i++)
    for (int edge = 0; edge < e->stretches[i].edges; edge++)
      {
        const Stretch *stretch = &e->stretches[i];
        double base = turned - 2 * M_PI * edge / stretch->edges;
        add_edge (stretch, &e->shares, base - stretch->twist0, base - stretch->twist1, e->from, e->to, &ends,
                  still, moving);
      }
}

void
spelch_force_at (const SpelchForceCase *force, double turned, SpelchForceParts *still,
                 SpelchForceParts *moving)
{
  Engagement e;
  engage (force, &e);
  forces_at (&e, turned, still, moving);
}

/* ---- Where in the turn to look ---- */

/* Between two instants at which an end of a stretch enters or leaves the wood the forces are smooth; their
 * peaks mostly stand at such instants. */
#define MAX_EVENTS 72
#define STEP       0.14 /* rad, at most, between samples where the wood is cut */
#define FEW        2    /* samples between two events at least, even */
#define SOME       4    /* the same where there is room for them, even */
#define INSIDE     1e-6 /* how far inside its interval, of its length, an upright edge is looked at */

_Static_assert(MAX_EVENTS *FEW + 45 <= SPELCH_TURN_SAMPLES, "a turn of 2 pi must find room");

static int
by_size (const void *a, const void *b)
{
  double x = *(const double *)a, y = *(const double *)b;
  return (x > y) - (x < y);
}

/* Leaves the first of events that are closer than @apart. */
static int
thin (double *events, int n, double apart)
{
  int kept = 0;
  for (int i = 0; i < n; i++)
    if (kept == 0 || events[i] - events[kept - 1] > apart)
      events[kept++] = events[i];
  return kept;
}

static double
within (double angle, double span)
{
  double left = angle - span * floor (angle / span);
  return left < span ? left : 0;
}

/* The instants, in order, rad of the bit's turning, 0 to @span. Where a board has so many layers that there
 * is no room for all, those that stand closest together are told once. */
static int
find_events (const Engagement *e, double span, double out[MAX_EVENTS])
{
  double events[4 * MAX_STRETCHES * SPELCH_MAX_TEETH];
  int n = 0;
  for (int i = 0; i < e->n; i++)
    {
      const Stretch *stretch = &e->stretches[i];
      double pitch = 2 * M_PI / stretch->edges;
      bool joins = i > 0 && e->stretches[i - 1].edges == stretch->edges
                   && e->stretches[i - 1].twist1 == stretch->twist0;
      for (double turned = 0; turned < span - pitch / 2; turned += pitch)
        for (int end = joins ? 1 : 0; end < 2; end++)
          {
            double twist = turned + (end == 0 ? stretch->twist0 : stretch->twist1);
            events[n++] = within (e->from + twist, span);
            events[n++] = within (e->to + twist, span);
          }
    }
  qsort (events, (size_t)n, sizeof *events, by_size);
  n = thin (events, n, 1e-9);
  for (double apart = span / 1000; n > MAX_EVENTS; apart *= 1.5)
    n = thin (events, n, apart);
  memcpy (out, events, (size_t)n * sizeof *events);
  return n;
}

static bool
is_idle (const SpelchForceParts *still, const SpelchForceParts *moving)
{
  return still->tangential == 0 && moving->tangential == 0;
}

static void
add_sample (const Engagement *e, double turned, double weight, SpelchTurn *turn)
{
  forces_at (e, turned, &turn->still[turn->n], &turn->moving[turn->n]);
  turn->turned[turn->n] = turned;
  turn->weight[turn->n] = weight / turn->span;
  turn->n++;
}

/* Adds @steps samples from @from on, for a stretch of the turn of @length rad. The middle comes first: what
 * is idle there is idle all along. Upright edges come and go all at once, so that both ends are looked at,
 * from inside; elsewhere the end is the next one's beginning, and its half of a step is left in @carry. */
static void
add_interval (const Engagement *e, double from, double length, int steps, bool upright, double *carry,
              SpelchTurn *turn)
{
  double step = length / steps;
  add_sample (e, from + length / 2, step, turn);
  if (is_idle (&turn->still[turn->n - 1], &turn->moving[turn->n - 1]))
    {
      turn->weight[turn->n - 1] = (length + *carry) / turn->span;
      *carry = 0;
      return;
    }
  add_sample (e, from + (upright ? length * INSIDE : 0), step / 2 + *carry, turn);
  for (int i = 1; i < steps; i++)
    if (2 * i != steps)
      add_sample (e, from + i * step, step, turn);
  if (upright)
    add_sample (e, from + length * (1 - INSIDE), step / 2, turn);
  *carry = upright ? 0 : step / 2;
}

static int
even_steps (double length, int least)
{
  int steps = 2 * (int)ceil (length / (2 * STEP));
  return steps > least ? steps : least;
}

void
spelch_force_turn (const SpelchForceCase *force, SpelchTurn *turn)
{
  Engagement e;
  double events[MAX_EVENTS], carry = 0;
  engage (force, &e);
  bool equal = force->flutes.edges_up == force->flutes.edges_down;
  bool upright = force->flutes.helix < 1e-9;
  turn->n = 0;
  turn->span = equal ? 2 * M_PI / force->flutes.edges_down : 2 * M_PI;
  int n = find_events (&e, turn->span, events);
  int least = n * (upright ? SOME + 1 : SOME) + 45 <= SPELCH_TURN_SAMPLES ? SOME : FEW;
  for (int i = 0; i < n; i++)
    {
      double to = i + 1 < n ? events[i + 1] : events[0] + turn->span;
      add_interval (&e, events[i], to - events[i], even_steps (to - events[i], least), upright, &carry, turn);
    }
  if (n > 0)
    turn->weight[0] += carry / turn->span;
}

SpelchForcePeaks
spelch_force_peaks (const SpelchTurn *turn, double feed_per_tooth)
{
  double most = 0, least = HUGE_VAL, mean = 0, lift = -HUGE_VAL, press = -HUGE_VAL;
  if (turn->n == 0)
    return (SpelchForcePeaks){ 0, 0, 0, 0 };
  for (int i = 0; i < turn->n; i++)
    {
      double along = turn->still[i].along + feed_per_tooth * turn->moving[i].along;
      double across = turn->still[i].across + feed_per_tooth * turn->moving[i].across;
      double side = sqrt (along * along + across * across);
      most = larger (most, side);
      least = smaller (least, side);
      mean += turn->weight[i] * side;
      lift = larger (lift, turn->still[i].lift + feed_per_tooth * turn->moving[i].lift);
      press = larger (press, turn->still[i].press + feed_per_tooth * turn->moving[i].press);
    }
  return (SpelchForcePeaks){ most, mean > 0 ? (most - least) / mean : 0, lift, press };
}

double
spelch_force_feed_for_peak (const SpelchTurn *turn, double limit, double most)
{
  double feed = most;
  for (int i = 0; i < turn->n; i++)
    {
      const SpelchForceParts *e = &turn->still[i], *m = &turn->moving[i];
      double a = m->along * m->along + m->across * m->across;
      double b = e->along * m->along + e->across * m->across;
      double c = e->along * e->along + e->across * e->across - limit * limit;
      if (c >= 0)
        return 0;
      if (a > 0)
        feed = fmin (feed, (-b + sqrt (b * b - a * c)) / a);
    }
  return fmax (feed, 0);
}
