/* SPDX-License-Identifier: GPL-3.0-or-later
 *
 * Everyday settings: feeds where a shop would have them, and which limit decides where. docs/everyday.md
 * shows both tables with what the program gives, and must have each line just so. All ranges are common
 * practice, no source.
 */
#include "on-demo.h"

#include "files/shop-data.h"

#include <string.h>

/* A slot as wide as the bit, in one pass, along a dado. */
typedef struct
{
  const char *says; /* in the tables */
  const char *machine, *board, *bit;
  double depth;
  int accepted; /* on seen edges */
  bool unseen;  /* nobody sees the edges */
  double area;  /* under vacuum, mm2; 0: as the demo has it */
} Setting;

static void
plan_setting (Demo *demo, const Setting *s)
{
  const SpelchBit *bit = demo_bit (s->bit);
  demo_take_machine (demo, s->machine);
  demo_take_board (demo, s->board);
  demo_take_cut (demo, "shelf-dado");
  demo->cut->depth = spelch_length_mm (s->depth);
  demo->cut->width = bit->diameter;
  demo->cut->held.passes_held = true;
  demo->cut->seen_a = demo->cut->seen_b = !s->unseen;
  demo->part->accepted_seen = s->accepted;
  if (s->area > 0)
    demo->part->holding.area_mm2 = s->area;
  demo_plan_bit (demo, bit);
}

static void
assert_in_page (const char *line)
{
  g_autofree char *path = g_build_filename (g_getenv ("G_TEST_SRCDIR"), "..", "docs", "everyday.md", NULL);
  g_autofree char *page = NULL;
  g_assert_true (g_file_get_contents (path, &page, NULL, NULL));
  if (strstr (page, line) == NULL)
    g_error ("docs/everyday.md lacks the line as the program gives it now: %s", line);
}

static const struct
{
  Setting setting;
  double from, to; /* m/min */
} FEEDS[] = {
  { { "oak, medium gantry, 6.35 mm up-cut, one diameter deep", "medium-gantry", "oak-20", "up-cut-6.35x25",
      6.35, 1 },
    4,
    6 },
  { { "the same in birch plywood, edges not seen", "medium-gantry", "birch-ply-18", "up-cut-6.35x25", 6.35, 1,
      true },
    6,
    10 },
  { { "the same in MDF", "medium-gantry", "mdf-18", "up-cut-6.35x25", 6.35, 1 }, 6, 12 },
  { { "oak, light gantry, 6.35 mm up-cut, 3 mm deep, grade 2 accepted", "light-gantry", "oak-20",
      "up-cut-6.35x25", 3, 2 },
    2,
    3 },
  { { "oak, larger router by hand, 12.7 mm straight, 5 mm deep", "plunge-router", "oak-20",
      "straight-12.7x32", 5, 1 },
    1,
    3 },
  { { "oak, larger router by hand, 12.7 mm straight, 6 mm deep", "plunge-router", "oak-20",
      "straight-12.7x32", 6, 1 },
    1,
    3 },
  { { "oak, trim router by hand, 6.35 mm straight, 4 mm deep", "trim-router", "oak-20", "straight-6.35x25", 4,
      1 },
    1,
    3 },
};

static void
test_feeds (Demo *demo, gconstpointer unused)
{
  for (guint i = 0; i < G_N_ELEMENTS (FEEDS); i++)
    {
      plan_setting (demo, &FEEDS[i].setting);
      double feed = demo->plan.feed_mm_min / 1000;
      g_autofree char *line = g_strdup_printf ("| %s | %.0f to %.0f | %.1f |", FEEDS[i].setting.says,
                                               FEEDS[i].from, FEEDS[i].to, feed);
      assert_in_page (line);
      g_assert_cmpfloat (feed, >=, FEEDS[i].from);
      g_assert_cmpfloat (feed, <=, FEEDS[i].to);
      g_assert_cmpfloat (demo->plan.limits[0].share, <=, 1 + 1e-6);
    }
}

/* Four diameters of a 3.2 mm bit are never cut at once in oak, even where a single pass is held and the edges
 * are long enough; the starter set's aren't. */
static void
test_slender (Demo *demo, gconstpointer unused)
{
  Setting s = { "", "medium-gantry", "oak-20", "up-cut-3.2x12", 4 * 3.175, 1 };
  plan_setting (demo, &s);
  g_assert_true (demo_has_stop (demo, SPELCH_STOP_TOO_SHORT));
  SpelchBit longer = *demo_bit ("up-cut-3.2x12");
  longer.cutting_length = spelch_length_mm (16);
  demo_plan_bit (demo, &longer);
  g_assert_cmpuint (demo->plan.n_passes, >=, 2);
  for (guint i = 0; i < demo->plan.n_passes; i++)
    g_assert_cmpfloat (demo->plan.passes[i].tip_mm - demo->plan.passes[i].from_mm, <=, 2 * 3.175 + 1e-6);
}

static const struct
{
  Setting setting;
  SpelchLimitKind decides;
} LIMITS[] = {
  { { "MDF, medium gantry, 6.35 mm up-cut, 6.35 mm deep", "medium-gantry", "mdf-18", "up-cut-6.35x25", 6.35,
      1 },
    SPELCH_LIMIT_CHIP },
  { { "birch plywood, medium gantry, 6.35 mm up-cut, 6.35 mm deep", "medium-gantry", "birch-ply-18",
      "up-cut-6.35x25", 6.35, 1 },
    SPELCH_LIMIT_EDGE },
  { { "oak, medium gantry, 6.35 mm up-cut, 6.35 mm deep", "medium-gantry", "oak-20", "up-cut-6.35x25", 6.35,
      1 },
    SPELCH_LIMIT_BENDING },
  { { "oak, medium gantry, 3 mm up-cut, 6 mm deep", "medium-gantry", "oak-20", "up-cut-3x12", 6, 1 },
    SPELCH_LIMIT_STRESS },
  { { "birch plywood, light gantry, 12 mm straight, 3 mm deep, grade 3 accepted", "light-gantry",
      "birch-ply-18", "straight-12x30", 3, 3 },
    SPELCH_LIMIT_POWER },
  { { "MDF, light gantry, 6.35 mm up-cut, 3 mm deep, grade 2 accepted", "light-gantry", "mdf-18",
      "up-cut-6.35x25", 3, 2 },
    SPELCH_LIMIT_MACHINE },
  { { "oak, router table, 8 mm compression, 9 mm deep", "router-table", "oak-20", "compression-8x28", 9, 1 },
    SPELCH_LIMIT_HANDS },
  { { "oak, medium gantry, 6.35 mm up-cut, 5 mm deep, grade 3 accepted, 200 cm2 under vacuum",
      "medium-gantry", "oak-20", "up-cut-6.35x25", 5, 3, false, 20000 },
    SPELCH_LIMIT_HOLDING },
  { { "oak, medium gantry, 6.35 mm down-cut, 6.35 mm deep", "medium-gantry", "oak-20", "down-cut-6.35x25",
      6.35, 1 },
    SPELCH_LIMIT_ROOM },
};

/* Each limit sets the feed somewhere, so none does everywhere. Heat bounds it from below: it is looked at
 * apart. */
static void
test_each_limit (Demo *demo, gconstpointer unused)
{
  double area = demo->part->holding.area_mm2;
  guint decided[SPELCH_N_LIMITS] = { 0 };
  for (guint i = 0; i < G_N_ELEMENTS (LIMITS); i++)
    {
      demo->part->holding.area_mm2 = area;
      plan_setting (demo, &LIMITS[i].setting);
      g_autofree char *line = g_strdup_printf ("| %s | %s | %.1f |", LIMITS[i].setting.says,
                                               spelch_code_of (&SPELCH_LIMIT_CODES, (int)LIMITS[i].decides),
                                               demo->plan.feed_mm_min / 1000);
      assert_in_page (line);
      for (guint l = 0; l < demo->plan.n_limits; l++)
        if (demo->plan.limits[l].binding)
          {
            g_assert_cmpint (demo->plan.limits[l].kind, ==, LIMITS[i].decides);
            g_assert_cmpfloat (demo->plan.limits[l].share, >, 0.9);
            decided[demo->plan.limits[l].kind]++;
          }
    }
  for (int kind = 0; kind < SPELCH_N_LIMITS; kind++)
    if (decided[kind] != (kind == SPELCH_LIMIT_HEAT ? 0 : 1))
      g_error ("%s sets the feed in %u settings of LIMITS", spelch_code_of (&SPELCH_LIMIT_CODES, kind),
               decided[kind]);
}

/* A light gantry in oak where only grade 1 is accepted: bending would allow next to nothing, and the feed is
 * the one that keeps the wall at its caution. */
static void
test_heat (Demo *demo, gconstpointer unused)
{
  Setting s = { "", "light-gantry", "oak-20", "up-cut-6.35x25", 3, 1 };
  plan_setting (demo, &s);
  g_autofree char *line = g_strdup_printf ("| oak, light gantry, 6.35 mm up-cut, 3 mm deep | heat | %.1f |",
                                           demo->plan.feed_mm_min / 1000);
  assert_in_page (line);
  g_assert_cmpfloat (demo->plan.limits[0].share, >, 1);
  g_assert_cmpint (demo->plan.limits[0].kind, ==, SPELCH_LIMIT_BENDING);
  g_assert_cmpfloat (demo->plan.wall_heat, >=, 1500 * (1 - 1e-6));
  g_assert_cmpfloat (demo->plan.wall_heat, <, 1500 * 1.07); /* feeds are rounded down */
}

#define ADD(name, function) g_test_add ("/everyday/" name, Demo, NULL, demo_set_up, function, demo_tear_down)

int
main (int argc, char **argv)
{
  g_test_init (&argc, &argv, NULL);
  ADD ("feeds", test_feeds);
  ADD ("slender", test_slender);
  ADD ("each-limit", test_each_limit);
  ADD ("heat", test_heat);
  return g_test_run ();
}
