/* SPDX-License-Identifier: GPL-3.0-or-later
 *
 * Checks of chip thickness, cutting speed and helix lead.
 */
#include "published.h"

#include "mechanics/chip.h"
#include "mechanics/flute.h"

#include <math.h>

#define MILLING     "peripheral milling (Martellotti 1941; Koch 1964, Wood Machining Processes; from memory)"
#define SPEED_TABLE "v = pi D n, table computed from the definition (ISO 3002-1, from memory)"
#define LEAD        "helix on a cylinder (Machinery's Handbook, from memory)"

/* The worked example: a 12 mm bit, chips of 0.30 mm. */
#define EXAMPLE_D  12
#define EXAMPLE_FZ 0.30

static double
engagement_degrees (double diameter, double engaged)
{
  return spelch_chip_engagement (diameter, engaged) * 180 / G_PI;
}

static double
arc (double diameter, double engaged)
{
  return spelch_chip_arc (diameter, engaged);
}

static double
thickest (double feed_per_tooth, double engaged)
{
  return spelch_chip_max (feed_per_tooth, EXAMPLE_D, engaged);
}

static double
mean (double feed_per_tooth, double engaged)
{
  return spelch_chip_mean (feed_per_tooth, EXAMPLE_D, engaged);
}

static double
mark (double feed_per_tooth, double diameter)
{
  return spelch_chip_mark_height (feed_per_tooth, diameter);
}

/* Exact height of the ridge two circles of radius R leave when their centres are f_z apart. */
static double
mark_over_exact (double feed_per_tooth, double diameter)
{
  double radius = diameter / 2;
  double exact = radius - sqrt (radius * radius - feed_per_tooth * feed_per_tooth / 4);
  return spelch_chip_mark_height (feed_per_tooth, diameter) / exact;
}

/* Largest gap between the thickest chip and f_z sin(phi) found by walking the arc, over many widths of cut.
 */
static double
thickest_against_walk (double diameter, double unused)
{
  double worst = 0;
  for (int i = 1; i <= 40; i++)
    {
      double engaged = diameter * i / 40, end = acos (1 - 2 * engaged / diameter), most = 0;
      for (int j = 0; j <= 4000; j++)
        most = fmax (most, sin (end * j / 4000));
      worst = fmax (worst, fabs (spelch_chip_max (1, diameter, engaged) - most));
    }
  return worst;
}

static double
feed_per_tooth_of (double feed, double rpm)
{
  return spelch_chip_feed_per_tooth (feed, rpm, 3);
}

static double
feed_of (double feed_per_tooth, double rpm)
{
  return spelch_chip_feed (feed_per_tooth, rpm, 3);
}

static double
feed_for_max (double chip, double engaged)
{
  return spelch_chip_feed_for_max (chip, EXAMPLE_D, engaged);
}

/* Mean chip over the chip at half the arc, which a narrow cut makes alike: f_z sin(phi / 2). */
static double
mean_over_middle (double diameter, double engaged)
{
  double phi = acos (1 - 2 * engaged / diameter);
  return spelch_chip_mean (1, diameter, engaged) / sin (phi / 2);
}

/* Volume of the chips of a turn over that swept: edges x arc x mean chip = feed a turn x a_e. */
static double
volume_over_swept (double diameter, double engaged)
{
  double chips = 3 * spelch_chip_arc (diameter, engaged) * spelch_chip_mean (0.2, diameter, engaged);
  return chips / (3 * 0.2 * engaged);
}

static double
cutting_speed (double diameter, double rpm)
{
  return spelch_chip_cutting_speed (diameter, rpm);
}

static double
lead (double diameter, double degrees)
{
  return spelch_flute_lead (diameter, degrees * G_PI / 180);
}

/* Angle by which an edge leans over a height of b: 2 b tan(beta) / D, b = 20, as degrees. */
static double
wrap_degrees (double diameter, double degrees)
{
  SpelchFlutes flutes = { diameter, degrees * G_PI / 180, 40, 0, 40, 2, 2 };
  return spelch_flute_twist (&flutes, 20) * 180 / G_PI;
}

#define SPEED_ROW(d, n, v)                                                                                   \
  {                                                                                                          \
    "cutting speed, D " #d " mm at " #n " rpm, m/s", SPEED_TABLE, PUBLISHED_IDENTITY, v, 0.0501,             \
        cutting_speed, d, n                                                                                  \
  }

static const PublishedCheck CHECKS[] = {
  { "engagement, D 12, a_e 3, degrees", MILLING, PUBLISHED_IDENTITY, 60, 1e-9, engagement_degrees, EXAMPLE_D,
    3 },
  { "arc, D 12, a_e 3, mm", MILLING, PUBLISHED_IDENTITY, 2 * G_PI, 1e-9, arc, EXAMPLE_D, 3 },
  { "thickest chip, D 12, a_e 3, f_z 0.30, mm", MILLING, PUBLISHED_IDENTITY, 0.2598, 5e-5, thickest,
    EXAMPLE_FZ, 3 },
  { "mean chip, D 12, a_e 3, f_z 0.30, mm", MILLING, PUBLISHED_IDENTITY, 0.1432, 5e-5, mean, EXAMPLE_FZ, 3 },
  { "mean chip in a slot, D 12, f_z 0.30: 2 f_z / pi, mm", MILLING, PUBLISHED_IDENTITY, 2 * 0.30 / G_PI,
    1e-12, mean, EXAMPLE_FZ, EXAMPLE_D },
  { "thickest chip in a slot is the feed per tooth, mm", MILLING, PUBLISHED_IDENTITY, 0.30, 1e-12, thickest,
    EXAMPLE_FZ, EXAMPLE_D },
  { "thickest chip against f_z sin(phi) along the arc, 40 widths, most apart", MILLING, PUBLISHED_IDENTITY, 0,
    1e-6, thickest_against_walk, 12.7, 0 },
  { "knife mark, D 12, f_z 0.30, mm", MILLING, PUBLISHED_IDENTITY, 0.001875, 5e-7, mark, EXAMPLE_FZ,
    EXAMPLE_D },
  { "knife mark, D 127, 20 marks an inch, mm", MILLING, PUBLISHED_IDENTITY, 0.003175, 5e-7, mark, 1.27, 127 },
  { "knife mark over exact R - sqrt(R^2 - f_z^2/4), D 6, f_z 0.3", MILLING, PUBLISHED_IDENTITY, 1, 0.001,
    mark_over_exact, 0.3, 6 },
  { "knife mark over exact, D 25, f_z 0.8", MILLING, PUBLISHED_IDENTITY, 1, 0.001, mark_over_exact, 0.8, 25 },
  { "feed per tooth of 5400 mm/min, 18 000 rpm, three edges, mm",
    "f_z = v_f / (N n), ISO 3002-3, from memory", PUBLISHED_IDENTITY, 0.1, 1e-12, feed_per_tooth_of, 5400,
    18000 },
  { "feed of 0.1 mm a tooth, 18 000 rpm, three edges, mm/min", "f_z = v_f / (N n), ISO 3002-3, from memory",
    PUBLISHED_IDENTITY, 5400, 1e-9, feed_of, 0.1, 18000 },
  { "feed per tooth for a thickest chip of 0.2, D 12, a_e 1: 0.2 / (2 sqrt(11) / 12), mm", MILLING,
    PUBLISHED_IDENTITY, 0.361814, 1e-6, feed_for_max, 0.2, 1 },
  { "feed per tooth for a thickest chip of 0.2, D 12, a_e 9: past the middle, mm", MILLING,
    PUBLISHED_IDENTITY, 0.2, 1e-12, feed_for_max, 0.2, 9 },
  { "mean chip of a narrow cut over the chip at half its arc, a_e D / 100", MILLING, PUBLISHED_IDENTITY, 1,
    0.002, mean_over_middle, 12, 0.12 },
  { "chips of a turn over what is swept, D 12, a_e 3", "volume removed is volume swept", PUBLISHED_IDENTITY,
    1, 1e-12, volume_over_swept, 12, 3 },
  { "chips of a turn over what is swept, D 6, a_e 6", "volume removed is volume swept", PUBLISHED_IDENTITY, 1,
    1e-12, volume_over_swept, 6, 6 },
  SPEED_ROW (6.35, 6000, 2.0),
  SPEED_ROW (6.35, 12000, 4.0),
  SPEED_ROW (6.35, 18000, 6.0),
  SPEED_ROW (6.35, 24000, 8.0),
  SPEED_ROW (12.7, 6000, 4.0),
  SPEED_ROW (12.7, 12000, 8.0),
  SPEED_ROW (12.7, 18000, 12.0),
  SPEED_ROW (12.7, 24000, 16.0),
  SPEED_ROW (25.4, 6000, 8.0),
  SPEED_ROW (25.4, 12000, 16.0),
  SPEED_ROW (25.4, 18000, 23.9),
  SPEED_ROW (25.4, 24000, 31.9),
  SPEED_ROW (50, 6000, 15.7),
  SPEED_ROW (50, 12000, 31.4),
  SPEED_ROW (50, 18000, 47.1),
  SPEED_ROW (50, 24000, 62.8),
  SPEED_ROW (80, 6000, 25.1),
  SPEED_ROW (80, 12000, 50.3),
  SPEED_ROW (80, 18000, 75.4),
  SPEED_ROW (80, 24000, 100.5),
  { "lead, D 12.7, 45 degrees: pi D, mm", LEAD, PUBLISHED_IDENTITY, G_PI * 12.7, 1e-9, lead, 12.7, 45 },
  { "lead, D 6, 30 degrees: pi D sqrt 3, mm", LEAD, PUBLISHED_IDENTITY, 32.648, 5e-4, lead, 6, 30 },
  { "wrap over 20 mm, D 6, 30 degrees: 2 b tan(beta) / D, degrees", LEAD, PUBLISHED_IDENTITY, 220.53, 5e-3,
    wrap_degrees, 6, 30 },
};

const PublishedGroup PUBLISHED_CHIPS = { "chips", CHECKS, G_N_ELEMENTS (CHECKS) };
