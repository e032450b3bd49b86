/* SPDX-License-Identifier: GPL-3.0-or-later
 *
 * Tests of the cutting edges' geometry. The reference is a helix on a cylinder built here from its lead,
 * pi D / tan(beta) (textbook identity; Machinery's Handbook, from memory).
 */
#include "mechanics/flute.h"

#include <glib.h>
#include <math.h>

#define N_RANDOM 2000

static double
random_between (double from, double to)
{
  return g_test_rand_double_range (from, to);
}

/* A seeded random bit with some helix: an up-cut, a down-cut or a compression bit. */
static SpelchFlutes
random_flutes (void)
{
  SpelchFlutes flutes = { 0 };
  flutes.diameter = random_between (1, 30);
  flutes.helix = random_between (0.15, G_PI / 3);
  flutes.length = random_between (5, 60);
  switch (g_test_rand_int_range (0, 3))
    {
    case 0:
      flutes.turn_over = flutes.length;
      break;
    case 1:
      flutes.turn_over = 0;
      break;
    default:
      flutes.turn_over = random_between (0.1, 0.9) * flutes.length;
      flutes.overlap = random_between (0, 0.1) * flutes.length;
      break;
    }
  flutes.edges_up = flutes.edges_down = g_test_rand_int_range (1, 5);
  return flutes;
}

static bool
is_up_cut (const SpelchFlutes *flutes)
{
  return flutes->turn_over >= flutes->length;
}

/* Turns of the helix from the tip to @s, by the lead alone. */
static double
reference_turns (const SpelchFlutes *flutes, double s)
{
  double lead = G_PI * flutes->diameter / tan (flutes->helix);
  double rising = is_up_cut (flutes) ? s : MIN (s, flutes->turn_over);
  return rising / lead - (s - rising) / lead;
}

static void
test_lead (void)
{
  /* 45 degrees: as high as the circumference is long. */
  g_assert_cmpfloat_with_epsilon (spelch_flute_lead (12.7, G_PI / 4), G_PI * 12.7, 1e-9);
  /* 30 degrees: pi D sqrt 3. */
  g_assert_cmpfloat_with_epsilon (spelch_flute_lead (6, G_PI / 6), G_PI * 6 * sqrt (3), 1e-9);
  g_assert_cmpfloat (spelch_flute_lead (6, 0), ==, 0);
}

static void
test_edge_points (void)
{
  for (int i = 0; i < N_RANDOM; i++)
    {
      SpelchFlutes flutes = random_flutes ();
      double s = random_between (0, flutes.length), turned = random_between (0, 20);
      int k = g_test_rand_int_range (0, flutes.edges_up);
      double theta = 2 * G_PI * ((double)k / flutes.edges_up + reference_turns (&flutes, s)) - turned;
      bool front = false;
      double x = spelch_flute_edge_x (&flutes, k, s, turned, &front);

      g_assert_cmpfloat_with_epsilon (x, flutes.diameter / 2 * sin (theta), 1e-9);
      if (fabs (cos (theta)) > 1e-9)
        g_assert_true (front == (cos (theta) > 0));
    }
}

static void
test_one_lead_is_one_turn (void)
{
  for (int i = 0; i < N_RANDOM; i++)
    {
      SpelchFlutes flutes = random_flutes ();
      double lead = G_PI * flutes.diameter / tan (flutes.helix);
      double s, turned = random_between (0, 6);
      flutes.turn_over = flutes.length = 2 * lead;
      s = random_between (0, lead);
      g_assert_cmpfloat_with_epsilon (spelch_flute_edge_x (&flutes, 0, s, turned, NULL),
                                      spelch_flute_edge_x (&flutes, 0, s + lead, turned, NULL), 1e-9);
    }
}

/* Height near @s where edge 0 crosses the middle of the front when the bit has turned by @turned. */
static double
crossing_height (const SpelchFlutes *flutes, double s, double turned)
{
  double step = 1e-6;
  double x = spelch_flute_edge_x (flutes, 0, s, turned, NULL);
  double slope = (spelch_flute_edge_x (flutes, 0, s + step, turned, NULL) - x) / step;
  return s - x / slope;
}

/* Geometry, no source needed: on a spindle turning clockwise seen from the motor, the place where a
 * right-hand edge meets the wall climbs toward the motor, and a left-hand one sinks. */
static void
test_up_shear_climbs (void)
{
  for (int i = 0; i < N_RANDOM; i++)
    {
      SpelchFlutes flutes = random_flutes ();
      double s = random_between (0.05, 0.95) * flutes.length;
      double turned = spelch_flute_twist (&flutes, s);
      double before, after;
      bool front = false;
      if (fabs (s - flutes.turn_over) < 0.01)
        continue;
      g_assert_cmpfloat_with_epsilon (spelch_flute_edge_x (&flutes, 0, s, turned, &front), 0, 1e-9);
      g_assert_true (front);
      before = crossing_height (&flutes, s, turned);
      after = crossing_height (&flutes, s, turned + 1e-4);
      g_assert_cmpint (after > before ? 1 : -1, ==, spelch_flute_sign_at (&flutes, s));
    }
}

static void
test_front_moves_left (void)
{
  /* Clockwise seen from above, whoever looks from the side sees the near side go from right to left. */
  SpelchFlutes flutes = { 10, 0.5, 20, 0, 20, 2, 2 };
  double x0 = spelch_flute_edge_x (&flutes, 0, 0, 0, NULL);
  double x1 = spelch_flute_edge_x (&flutes, 0, 0, 0.1, NULL);
  g_assert_cmpfloat (x1, <, x0);
}

static void
test_edges_are_evenly_spaced (void)
{
  SpelchFlutes flutes = { 8, 0.5, 6, 0, 22, 1, 3 };
  g_assert_cmpint (spelch_flute_edges_at (&flutes, 5.9), ==, 1);
  g_assert_cmpint (spelch_flute_edges_at (&flutes, 6.1), ==, 3);
  for (int k = 0; k < 3; k++)
    g_assert_cmpfloat_with_epsilon (spelch_flute_edge_angle (&flutes, k, 10, 0.3)
                                        - spelch_flute_edge_angle (&flutes, 0, 10, 0.3),
                                    2 * G_PI * k / 3, 1e-9);
}

/* One row a height, worked out by hand from the definition of the zones. */
typedef struct
{
  SpelchFlutes flutes;
  double s;
  SpelchShearHand hand;
  int sign;
} ZoneRow;

#define DEGREES(d) ((d)*G_PI / 180)

static const ZoneRow ZONE_ROWS[] = {
  /* an up-cut and a down-cut bit, whole length and a little beyond */
  { { 6, DEGREES (30), 22, 0, 22, 2, 2 }, 0, SPELCH_SHEAR_UP, 1 },
  { { 6, DEGREES (30), 22, 0, 22, 2, 2 }, 22, SPELCH_SHEAR_UP, 1 },
  { { 6, DEGREES (30), 22, 0, 22, 2, 2 }, 25, SPELCH_SHEAR_UP, 1 },
  { { 6, DEGREES (30), 0, 0, 22, 2, 2 }, 0, SPELCH_SHEAR_DOWN, -1 },
  { { 6, DEGREES (30), 0, 0, 22, 2, 2 }, 22, SPELCH_SHEAR_DOWN, -1 },
  /* a compression bit that turns over at 6.35 without overlap */
  { { 6.35, DEGREES (30), 6.35, 0, 22, 2, 2 }, 0, SPELCH_SHEAR_UP, 1 },
  { { 6.35, DEGREES (30), 6.35, 0, 22, 2, 2 }, 6.34, SPELCH_SHEAR_UP, 1 },
  { { 6.35, DEGREES (30), 6.35, 0, 22, 2, 2 }, 6.36, SPELCH_SHEAR_DOWN, -1 },
  /* and with an overlap of 2 mm: 5.35 to 7.35 */
  { { 6.35, DEGREES (30), 6.35, 2, 22, 2, 2 }, 5.3, SPELCH_SHEAR_UP, 1 },
  { { 6.35, DEGREES (30), 6.35, 2, 22, 2, 2 }, 5.4, SPELCH_SHEAR_OVERLAP, 1 },
  { { 6.35, DEGREES (30), 6.35, 2, 22, 2, 2 }, 7.3, SPELCH_SHEAR_OVERLAP, -1 },
  { { 6.35, DEGREES (30), 6.35, 2, 22, 2, 2 }, 7.4, SPELCH_SHEAR_DOWN, -1 },
  /* less than 8 degrees of helix counts as straight, 8 and more doesn't */
  { { 6, DEGREES (7.9), 22, 0, 22, 2, 2 }, 5, SPELCH_SHEAR_NEUTRAL, 0 },
  { { 6, DEGREES (8.1), 22, 0, 22, 2, 2 }, 5, SPELCH_SHEAR_UP, 1 },
  { { 6, 0, 0, 0, 22, 2, 2 }, 5, SPELCH_SHEAR_NEUTRAL, 0 },
};

static void
test_zones (void)
{
  for (gsize i = 0; i < G_N_ELEMENTS (ZONE_ROWS); i++)
    {
      const ZoneRow *row = &ZONE_ROWS[i];
      g_assert_cmpint (spelch_flute_hand_at (&row->flutes, row->s), ==, row->hand);
      g_assert_cmpint (spelch_flute_sign_at (&row->flutes, row->s), ==, row->sign);
    }
}

static void
assert_hands (SpelchHands hands, bool up, bool down, bool neutral)
{
  g_assert_true (hands.up == up && hands.down == down && hands.neutral == neutral);
}

static void
test_touching_a_zone_is_not_cutting_with_it (void)
{
  SpelchFlutes sharp = { 6.35, DEGREES (30), 6.35, 0, 22, 2, 2 };
  SpelchFlutes overlapping = { 6.35, DEGREES (30), 6.35, 1, 22, 2, 2 };
  assert_hands (spelch_flute_hands_between (&sharp, 4, 6.35), true, false, false);
  assert_hands (spelch_flute_hands_between (&sharp, 6.35, 7.65), false, true, false);
  assert_hands (spelch_flute_hands_between (&sharp, 6.3, 6.4), true, true, false);
  assert_hands (spelch_flute_hands_between (&sharp, 5, 5), false, false, false);
  /* The overlap cuts with both hands, so a layer in it is as bad as one across the turn-over. */
  assert_hands (spelch_flute_hands_between (&overlapping, 6, 6.2), true, true, false);
  assert_hands (spelch_flute_hands_between (&overlapping, 6.85, 8), false, true, false);
  assert_hands (spelch_flute_hands_between (&overlapping, 4, 5.85), true, false, false);
}

/* What hands_between says is what hand_at says somewhere strictly between, and nothing else. */
static void
test_hands_agree_with_every_height (void)
{
  for (int i = 0; i < N_RANDOM; i++)
    {
      SpelchFlutes flutes = random_flutes ();
      double s0 = random_between (0, flutes.length), s1 = random_between (s0, flutes.length);
      SpelchHands said = spelch_flute_hands_between (&flutes, s0, s1);
      SpelchHands met = { false, false, false };
      double marks[] = { flutes.turn_over - flutes.overlap / 2, flutes.turn_over + flutes.overlap / 2 };
      if (s1 - s0 < 1e-3)
        continue;
      for (int j = 1; j < 200; j++)
        {
          SpelchShearHand hand = spelch_flute_hand_at (&flutes, s0 + (s1 - s0) * j / 200);
          met.up |= hand == SPELCH_SHEAR_UP || hand == SPELCH_SHEAR_OVERLAP;
          met.down |= hand == SPELCH_SHEAR_DOWN || hand == SPELCH_SHEAR_OVERLAP;
          met.neutral |= hand == SPELCH_SHEAR_NEUTRAL;
        }
      /* A zone thinner than the sampling may be missed by it. */
      if (MIN (fabs (s0 - marks[0]), fabs (s1 - marks[1])) < (s1 - s0) / 200
          || MIN (fabs (s0 - marks[1]), fabs (s1 - marks[0])) < (s1 - s0) / 200)
        continue;
      assert_hands (said, met.up, met.down, met.neutral);
    }
}

/* Cutting a span in two changes nothing; a longer span never has fewer hands. */
static void
test_hands_add_up (void)
{
  for (int i = 0; i < N_RANDOM; i++)
    {
      SpelchFlutes flutes = random_flutes ();
      double s0 = random_between (0, flutes.length), s2 = random_between (s0, flutes.length);
      double s1 = random_between (s0, s2);
      SpelchHands whole = spelch_flute_hands_between (&flutes, s0, s2);
      SpelchHands low = spelch_flute_hands_between (&flutes, s0, s1);
      SpelchHands high = spelch_flute_hands_between (&flutes, s1, s2);
      assert_hands (whole, low.up || high.up, low.down || high.down, low.neutral || high.neutral);
    }
}

int
main (int argc, char **argv)
{
  g_test_init (&argc, &argv, NULL);
  g_test_add_func ("/flute/lead", test_lead);
  g_test_add_func ("/flute/edge-points", test_edge_points);
  g_test_add_func ("/flute/one-lead-is-one-turn", test_one_lead_is_one_turn);
  g_test_add_func ("/flute/up-shear-climbs", test_up_shear_climbs);
  g_test_add_func ("/flute/front-moves-left", test_front_moves_left);
  g_test_add_func ("/flute/edges-are-evenly-spaced", test_edges_are_evenly_spaced);
  g_test_add_func ("/flute/zones", test_zones);
  g_test_add_func ("/flute/touching-a-zone", test_touching_a_zone_is_not_cutting_with_it);
  g_test_add_func ("/flute/hands-agree-with-every-height", test_hands_agree_with_every_height);
  g_test_add_func ("/flute/hands-add-up", test_hands_add_up);
  return g_test_run ();
}
