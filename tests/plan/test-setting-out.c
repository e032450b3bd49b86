/* SPDX-License-Identifier: GPL-3.0-or-later
 *
 * Setting out: every figure from hand arithmetic, written beside it; which way round is common practice, no
 * source, unless a check says more.
 */
#include "on-demo.h"

#include "files/shop-data.h"
#include "mechanics/force.h"
#include "plan/words.h"

#include <math.h>
#include <string.h>

static const SpelchNumbers MM = { SPELCH_UNIT_MM, SPELCH_INCH_FRACTION, '.' };
#define NEAR(a, b) g_assert_cmpfloat_with_epsilon (a, b, 1e-9)

static void
assert_says (const Demo *demo, const char *words, bool said)
{
  g_auto (GStrv) all = spelch_words_setting_out (&demo->plan, demo->part, demo->cut, &MM);
  g_autofree char *text = g_strjoinv ("\n", all);
  g_test_message ("%s", text);
  g_assert_true ((strstr (text, words) != NULL) == said);
}

static void
take_width (Demo *demo, double width)
{
  demo->cut->mating.told = false;
  demo->cut->width = spelch_length_mm (width);
}

static void
take_mating (Demo *demo, double thickness, double clearance)
{
  demo->cut->mating = (SpelchMating){ true, spelch_length_mm (thickness), spelch_length_mm (clearance) };
  demo->cut->width = spelch_length_mm (0);
}

/* 18 mm with 12.7: 5.3 beside the first, 7.4 of overlap. Twice 12.7 asks for a third track, as two would
 * touch without overlap; a twentieth of 12.7 is 0.635, so 24.765 is the widest that two cover. */
static void
test_tracks (Demo *demo, gconstpointer unused)
{
  const struct
  {
    double width;
    int tracks;
    double step;
  } rows[] = { { 12.7, 1, 0 }, { 12.704, 1, 0 },      { 12.8, 2, 0.1 },
               { 18, 2, 5.3 }, { 24.765, 2, 12.065 }, { 25.4, 3, 6.35 } };
  demo_take_cut (demo, "shelf-dado");
  for (guint i = 0; i < G_N_ELEMENTS (rows); i++)
    {
      take_width (demo, rows[i].width);
      demo_plan_with (demo, "up-cut-12.7x38");
      const SpelchSettingOut *out = &demo->plan.setting_out;
      g_assert_cmpint (out->tracks, ==, rows[i].tracks);
      g_assert_cmpint (demo->plan.passes[0].tracks, ==, rows[i].tracks);
      NEAR (out->step_over_mm, rows[i].step);
      NEAR (out->overlap_mm, rows[i].tracks > 1 ? 12.7 - rows[i].step : 0);
    }
  take_width (demo, 18);
  demo_plan_with (demo, "up-cut-12.7x38");
  assert_says (demo, "2 tracks side by side, 5.3 mm from one to the next; they overlap by 7.4 mm.", true);
}

/* A shelf measured at 12.6 with 0.1 of play: 12.7, one track of a 12.7 mm bit. At 12.5 the cut is 12.6, 0.1
 * narrower than the bit, which would leave 0.2 of play. At 17.8 there are 5.2 to take off beside one track.
 */
static void
test_fit (Demo *demo, gconstpointer unused)
{
  const struct
  {
    double thickness, clearance, left, play;
    bool too_wide;
    const char *says;
  } rows[] = {
    { 12.6, 0.1, 0, 0.1, false, "The bit is just as wide: one track will do." },
    { 12.5, 0.1, -0.1, 0.2, true, "This bit is 0.1 mm too wide: it would leave 0.2 mm of play." },
    { 12.8, -0.2, -0.1, -0.1, true, "This bit is 0.1 mm too wide." },
    { 17.8, 0.1, 5.2, -5.1, false, "One track with this bit would leave 5.2 mm to take off." },
  };
  demo_take_cut (demo, "shelf-dado");
  for (guint i = 0; i < G_N_ELEMENTS (rows); i++)
    {
      take_mating (demo, rows[i].thickness, rows[i].clearance);
      g_assert_null (spelch_cut_fault (demo->cut, &demo->part->board));
      demo_plan_with (demo, "up-cut-12.7x38");
      const SpelchSettingOut *out = &demo->plan.setting_out;
      NEAR (out->width_mm, rows[i].thickness + rows[i].clearance);
      NEAR (out->left_mm, rows[i].left);
      NEAR (out->play_mm, rows[i].play);
      g_assert_cmpint (out->tracks, ==, rows[i].left > 0 ? 2 : 1);
      g_assert_true (demo_has_stop (demo, SPELCH_STOP_TOO_WIDE) == rows[i].too_wide);
      assert_says (demo, rows[i].says, true);
    }
  take_mating (demo, 17.8, 0.1);
  demo_plan_with (demo, "up-cut-12.7x38");
  assert_says (demo, "A part of 17.8 mm with 0.1 mm of play asks for a cut 17.9 mm wide.", true);
}

/* Ground from 12.7 to 12.5 the bit no longer fills a 12.7 mm groove; a second track takes the 0.2 that are
 * left. */
static void
test_sharpened (Demo *demo, gconstpointer unused)
{
  SpelchBit bit = *demo_bit ("up-cut-12.7x38");
  demo_take_cut (demo, "shelf-dado");
  take_mating (demo, 12.6, 0.1);
  bit.sharpened_diameter = spelch_length_mm (12.5);
  demo_plan_bit (demo, &bit);
  g_assert_cmpint (demo->plan.setting_out.tracks, ==, 2);
  NEAR (demo->plan.setting_out.step_over_mm, 0.2);
  NEAR (demo->plan.setting_out.ground_off_mm, 0.2);
  assert_says (demo, "Sharpening has made the bit 0.2 mm narrower", true);
}

/* A mortise's corners take the bit's radius; one that asks for 6 mm at the most stops a 12.7 mm bit. */
static void
test_corners (Demo *demo, gconstpointer unused)
{
  demo_take_cut (demo, "rail-mortise");
  demo->cut->corner_radius = spelch_length_mm (0);
  demo_plan_with (demo, "up-cut-12.7x38");
  NEAR (demo->plan.setting_out.corner_mm, 6.35);
  g_assert_false (demo_has_stop (demo, SPELCH_STOP_TOO_WIDE));
  assert_says (demo, "radius of 6.35 mm", true);
  const struct
  {
    double radius;
    bool stops;
  } rows[] = { { 6.35, false }, { 6, true } };
  for (guint i = 0; i < G_N_ELEMENTS (rows); i++)
    {
      demo->cut->corner_radius = spelch_length_mm (rows[i].radius);
      demo_plan_with (demo, "up-cut-12.7x38");
      g_assert_true (demo_has_stop (demo, SPELCH_STOP_TOO_WIDE) == rows[i].stops);
      assert_says (demo, "radius of", false);
    }
}

/* Common practice, no source: by hand outside edges are gone round against the clock and openings with it.
 * The table shows the bit from its other end, and a climb cut goes the other way round. */
static void
test_round (Demo *demo, gconstpointer unused)
{
  const struct
  {
    const char *machine, *cut;
    SpelchWall kept;
    SpelchRound round;
    const char *says;
  } rows[] = {
    { "plunge-router", "outline", SPELCH_WALL_LEFT, SPELCH_ROUND_AGAINST_CLOCK,
      "Go round the outside against the clock, seen from above." },
    { "plunge-router", "cable-slot", SPELCH_WALL_BOTH, SPELCH_ROUND_WITH_CLOCK,
      "Go along one wall and come back along the other: with the clock, seen from above." },
    { "plunge-router", "back-rabbet", SPELCH_WALL_LEFT, SPELCH_ROUND_ALONG,
      "With the edge toward you, go from left to right." },
    { "medium-gantry", "outline", SPELCH_WALL_LEFT, SPELCH_ROUND_AGAINST_CLOCK,
      "Go round the outside against the clock, seen from above." },
    { "medium-gantry", "outline", SPELCH_WALL_RIGHT, SPELCH_ROUND_WITH_CLOCK,
      "Go round the outside with the clock, seen from above." },
    { "medium-gantry", "back-rabbet", SPELCH_WALL_RIGHT, SPELCH_ROUND_ALONG, "a climb cut" },
    { "router-table", "shelf-dado", SPELCH_WALL_BOTH, SPELCH_ROUND_ALONG,
      "Feed from right to left along the fence, against the turn of the bit." },
  };
  for (guint i = 0; i < G_N_ELEMENTS (rows); i++)
    {
      demo_take_machine (demo, rows[i].machine);
      demo_take_cut (demo, rows[i].cut);
      demo->cut->kept = rows[i].kept;
      demo_plan_with (demo, "up-cut-6.35x25");
      g_assert_cmpint (demo->plan.setting_out.round, ==, rows[i].round);
      assert_says (demo, rows[i].says, true);
    }
  /* where the wall that stays lies at the right the way is told all the same, and that the other is better */
  demo_take_machine (demo, "plunge-router");
  demo_take_cut (demo, "outline");
  demo->cut->kept = SPELCH_WALL_RIGHT;
  demo_plan_with (demo, "up-cut-6.35x25");
  g_assert_false (demo_has_stop (demo, SPELCH_STOP_CLIMB));
  assert_says (demo, "Go round the outside with the clock, seen from above.", true);
  assert_says (demo, "pushes the router off its guide: better go the other way round.", true);
  demo->cut->kept = SPELCH_WALL_LEFT;
  demo_plan_with (demo, "up-cut-6.35x25");
  assert_says (demo, "better go the other way round", false);
  demo_take_cut (demo, "shelf-dado");
  take_width (demo, 6.35);
  demo->cut->kept = SPELCH_WALL_RIGHT;
  demo_plan_with (demo, "up-cut-6.35x25");
  assert_says (demo, "with the straightedge at its left", true);
  /* on a table all round an edge, but never a whole outline */
  demo_take_machine (demo, "router-table");
  demo_take_cut (demo, "back-rabbet");
  demo->cut->every_direction = true;
  demo->cut->kept = SPELCH_WALL_LEFT;
  demo_plan_with (demo, "up-cut-6.35x25");
  g_assert_cmpint (demo->plan.setting_out.round, ==, SPELCH_ROUND_WITH_CLOCK);
  assert_says (demo, "Start from a pin", true);
  demo_take_cut (demo, "outline");
  demo_plan_with (demo, "up-cut-6.35x25");
  assert_says (demo, "", true);
  assert_says (demo, ".", false);
}

/* Why the straightedge stands at the left of a router pushed away: over a turn in a slot the wood pushes the
 * bit to the left of its travel, so the straightedge is what it leans on. The sign comes out of the forces of
 * one turn. */
static void
test_straightedge_side (Demo *demo, gconstpointer unused)
{
  SpelchTurn turn;
  SpelchForceCase force = { .flutes = { .diameter = 12.7, .length = 30, .edges_up = 2, .edges_down = 2 },
                            .engaged = 12.7,
                            .blunting = 1.2,
                            .friction = 0.4,
                            .rake = 20 * G_PI / 180,
                            .edge_radial_share = 0.5,
                            .n_slices = 1,
                            .slices = { { 0, 6, 3.8, 26 } } };
  double across = 0;
  spelch_force_turn (&force, &turn);
  for (int i = 0; i < turn.n; i++)
    across += turn.weight[i] * (turn.still[i].across + 0.1 * turn.moving[i].across);
  g_assert_cmpfloat (across, >, 0); /* left positive */
  demo_take_machine (demo, "plunge-router");
  demo_take_cut (demo, "shelf-dado");
  take_width (demo, 6.35);
  demo_plan_with (demo, "up-cut-6.35x25");
  assert_says (demo, "with the straightedge at its left: the bit draws it there", true);
}

/* Base of 85 mm, half of 12.7: 78.65. A 17 mm bush on a 12.7 mm bit: 2.15; 16 mm would be too narrow for it.
 */
static void
test_by_hand (Demo *demo, gconstpointer unused)
{
  SpelchMachine *machine = &demo->part->machine;
  demo_take_machine (demo, "plunge-router");
  machine->base_radius = spelch_length_mm (85);
  machine->n_bushes = 3;
  machine->bushes[0] = spelch_length_mm (30);
  machine->bushes[1] = spelch_length_mm (17);
  machine->bushes[2] = spelch_length_mm (16);
  demo_take_cut (demo, "shelf-dado");
  demo->cut->from_edge = spelch_length_mm (250);
  demo_plan_with (demo, "straight-12.7x32");
  const SpelchSettingOut *out = &demo->plan.setting_out;
  NEAR (out->fence_offset_mm, 78.65);
  NEAR (out->bush_mm, 17);
  NEAR (out->bush_offset_mm, 2.15);
  assert_says (demo,
               "Set the straightedge 78.65 mm from the line of each wall in turn: 85 mm of base less 6.35 "
               "mm, half the bit.",
               true);
  assert_says (demo, "Or set the edge guide 250 mm from the near side of the bit.", true);
  assert_says (
      demo,
      "With the 17 mm guide bush, make the opening in the template 2.15 mm larger than the cut all round.",
      true);
  demo->cut->held.allowance_held = true;
  demo->cut->held.allowance = spelch_length_mm (0.5);
  demo_plan_with (demo, "straight-12.7x32");
  assert_says (demo, "Until the finishing pass, keep it 0.5 mm farther off.", true);
  demo_take_cut (demo, "outline");
  demo->cut->kept = SPELCH_WALL_LEFT;
  demo_plan_with (demo, "straight-12.7x32");
  NEAR (out->fence_offset_mm, 0);
  assert_says (demo, "make the template 2.15 mm smaller than the piece all round", true);
  demo_take_cut (demo, "shelf-dado");
  machine->base_radius = spelch_length_mm (0);
  demo_plan_with (demo, "straight-12.7x32");
  assert_says (demo, "Measure from the edge of the router's base", true);
  machine->n_bushes = 0;
  demo_plan_with (demo, "straight-12.7x32");
  NEAR (out->bush_offset_mm, 0);
  assert_says (demo, "guide bush", false);
}

/* A dado 250 mm in, 18 wide: fence at 250, then at 255.3 for a 12.7 mm bit. A 9 mm rabbet: 9 mm of the bit
 * stand out. */
static void
test_on_table (Demo *demo, gconstpointer unused)
{
  demo_take_machine (demo, "router-table");
  demo_take_cut (demo, "shelf-dado");
  demo->cut->from_edge = spelch_length_mm (250);
  demo_hold_first_pass (demo, 4.5);
  demo_plan_with (demo, "straight-12.7x32");
  NEAR (demo->plan.setting_out.guide_mm, 250);
  NEAR (demo->plan.setting_out.step_over_mm, 5.3);
  NEAR (demo->plan.bit_height_mm, 9);
  assert_says (demo, "Set the fence 250 mm from the near side of the bit.", true);
  assert_says (demo, "set the fence 5.3 mm farther from the bit", true);
  assert_says (demo, "Set the bit above the table, pass by pass: 4.5 mm and 9.0 mm.", true);
  demo_take_cut (demo, "back-rabbet");
  demo_plan_with (demo, "straight-12.7x32");
  NEAR (demo->plan.setting_out.stands_out_mm, 9);
  assert_says (demo, "so that the bit stands out 9 mm from it", true);
}

/* Common practice, no source: work is never trapped between fence and bit. What is left of the rabbet when a
 * track is cut must lie on the far side of the bit from the fence, so the bit never stands out by more than
 * its diameter beyond what is gone already, and at last by the rabbet's width. 12 with a bit of 6.35: 6.35,
 * then 12; 20: two steps of 6.825 after it. An edge trimmed right through goes with each track. */
static void
test_no_strip_at_fence (Demo *demo, gconstpointer unused)
{
  demo_take_machine (demo, "router-table");
  demo_take_cut (demo, "back-rabbet");
  const SpelchSettingOut *out = &demo->plan.setting_out;
  for (double width = 3; width <= 40; width += 0.5)
    {
      take_width (demo, width);
      demo_plan_with (demo, "up-cut-6.35x25");
      double gone = 0;
      for (int i = 0; i < out->tracks; i++)
        {
          double stands_out = spelch_setting_out_stands_out (out, i);
          g_assert_cmpfloat (stands_out - out->diameter_mm, <=, gone + 1e-9);
          g_assert_cmpfloat (stands_out, >, gone);
          gone = stands_out;
        }
      NEAR (gone, width);
      NEAR (out->stands_out_mm, width);
    }
  take_width (demo, 12);
  demo_plan_with (demo, "up-cut-6.35x25");
  NEAR (spelch_setting_out_stands_out (out, 0), 6.35);
  assert_says (demo,
               "Set the fence so that the bit stands out 6.35 mm from it first, then 12 mm: the other way "
               "round a strip would run trapped between bit and fence, and taking it off would be a climb "
               "cut.",
               true);
  assert_says (demo, "so that the bit stands out 12 mm from it", false);
  take_width (demo, 17);
  demo_plan_with (demo, "up-cut-6.35x25");
  assert_says (demo, "stands out 6.35 mm from it first, then 11.68 mm, then 17 mm: ", true);
  demo->cut->kind = SPELCH_CUT_TRIM;
  demo->cut->through = true;
  take_width (demo, 12);
  demo_plan_with (demo, "up-cut-6.35x25");
  NEAR (spelch_setting_out_stands_out (out, 0), 6.35);
  NEAR (spelch_setting_out_stands_out (out, 1), 5.65);
  assert_says (demo, "stands out 6.35 mm from it first, and cut that track right through; then by 5.65 mm",
               true);
  take_width (demo, 5);
  demo_plan_with (demo, "up-cut-6.35x25");
  NEAR (spelch_setting_out_stands_out (out, 0), 5);
  assert_says (demo, "so that the bit stands out 5 mm from it.", true);
}

/* The same danger without a fence: with a held router a rabbet in tracks goes from the edge inward (common
 * practice, no source). */
static void
test_inward_by_hand (Demo *demo, gconstpointer unused)
{
  demo_take_machine (demo, "plunge-router");
  demo_take_cut (demo, "back-rabbet");
  take_width (demo, 12);
  demo_plan_with (demo, "up-cut-6.35x25");
  assert_says (demo, "Begin with the track at the board's edge and end with the one at the wall", true);
  take_width (demo, 5);
  demo_plan_with (demo, "up-cut-6.35x25");
  assert_says (demo, "Begin with the track at the board's edge", false);
  demo_take_cut (demo, "shelf-dado");
  take_width (demo, 12);
  demo_plan_with (demo, "up-cut-6.35x25");
  assert_says (demo, "Begin with the track at the board's edge", false);
}

/* A hole 12 mm deep with a 5 mm bit: 12 / 5 = 2.4, three pecks of 4 mm; by hand stages of half the diameter,
 * 12 / 2.5 = 4.8, five of 2.4. */
static void
test_pecks (Demo *demo, gconstpointer unused)
{
  demo_take_cut (demo, "peg-holes");
  demo_plan_with (demo, "up-cut-5x17");
  const SpelchSettingOut *out = &demo->plan.setting_out;
  g_assert_cmpuint (out->pecks, ==, 3);
  NEAR (out->peck_mm, 4);
  assert_says (demo, "Drill in 3 pecks of about 4.0 mm", true);
  demo_take_machine (demo, "plunge-router");
  demo_plan_with (demo, "up-cut-5x17");
  g_assert_cmpuint (out->pecks, ==, 5);
  NEAR (out->peck_mm, 2.4);
  assert_says (demo, "Plunge in 5 stages of about 2.4 mm", true);
  demo_take_cut (demo, "shelf-dado");
  demo_plan_with (demo, "up-cut-6.35x25");
  g_assert_cmpuint (out->pecks, ==, 0);
}

/* A piece of 720 x 320: four tabs in the middles of its sides, at 360, 720 + 160, 1040 + 360, 1760 + 160. Two
 * go to the long sides; six put two on each of these, a quarter of the way from their ends. */
static void
test_tab_places (Demo *demo, gconstpointer unused)
{
  const struct
  {
    guint count;
    double at[6];
  } rows[]
      = { { 4, { 360, 880, 1400, 1920 } }, { 2, { 360, 1400 } }, { 6, { 180, 540, 880, 1220, 1580, 1920 } } };
  for (guint i = 0; i < G_N_ELEMENTS (rows); i++)
    {
      demo->cut->tabs.count = rows[i].count;
      demo_plan_with (demo, "compression-6.35x22");
      const SpelchSettingOut *out = &demo->plan.setting_out;
      g_assert_cmpuint (spelch_setting_out_tabs (out), ==, rows[i].count);
      for (guint tab = 0; tab < rows[i].count; tab++)
        NEAR (spelch_setting_out_tab (out, tab), rows[i].at[tab]);
    }
  demo->cut->tabs.count = 4;
  demo_plan_with (demo, "compression-6.35x22");
  assert_says (demo,
               "at 360, 880, 1\xe2\x80\xaf"
               "400 and 1\xe2\x80\xaf"
               "920 mm from a corner, along the length first.",
               true);
}

/* Round a piece that isn't told to be a rectangle, evenly: 1000 mm, four tabs at an eighth, three eighths ...
 */
static void
test_tabs_elsewhere (Demo *demo, gconstpointer unused)
{
  demo->cut->length = spelch_length_mm (1000);
  demo->cut->tabs.count = 4;
  demo_plan_with (demo, "compression-6.35x22");
  for (guint i = 0; i < 4; i++)
    NEAR (spelch_setting_out_tab (&demo->plan.setting_out, i), 125 + 250 * i);
  assert_says (demo, "from the start", true);
  demo->cut->tabs.count = 0;
  demo_plan_with (demo, "compression-6.35x22");
  g_assert_cmpuint (spelch_setting_out_tabs (&demo->plan.setting_out), ==, 0);
  assert_says (demo, "Leave tabs", false);
}

/* Round an opening of 60 mm that is a hole, 60 pi = 188.5 mm, whatever its length says: three tabs at a
 * sixth, a half and five sixths of it. */
static void
test_tabs_in_hole (Demo *demo, gconstpointer unused)
{
  demo_take_cut (demo, "peg-holes");
  demo->cut->through = true;
  demo->cut->width = spelch_length_mm (60);
  demo->cut->tabs = (SpelchTabs){ 3, spelch_length_mm (8), spelch_length_mm (3) };
  demo_plan_with (demo, "up-cut-6.35x25");
  for (guint i = 0; i < 3; i++)
    NEAR (spelch_setting_out_tab (&demo->plan.setting_out, i), 60 * M_PI * (2 * i + 1) / 6);
  assert_says (demo, "at 31, 94 and 157 mm from the start", true);
}

/* A dado across face fibres that runs out over an edge: a scrap behind it costs nothing and spares the
 * corner. */
static void
test_exit (Demo *demo, gconstpointer unused)
{
  demo_take_cut (demo, "shelf-dado");
  demo_plan_with (demo, "up-cut-6.35x25");
  assert_says (demo, "Clamp a scrap", false); /* the outline is cut later: waste lies there still */
  demo_cut_out (demo);
  demo_plan_with (demo, "up-cut-6.35x25");
  assert_says (demo, "Clamp a scrap against the edge where the bit runs out.", true);
  demo->cut->end = SPELCH_END_BACKED;
  demo_plan_with (demo, "up-cut-6.35x25");
  assert_says (demo, "Clamp a scrap", false);
  /* A down-cut keeps the face, but not the plies of the edge. */
  demo->cut->end = SPELCH_END_EDGE;
  demo_plan_with (demo, "down-cut-6.35x25");
  assert_says (demo, "Clamp a scrap", true);
  demo->cut->end = SPELCH_END_INSIDE;
  demo_plan_with (demo, "down-cut-6.35x25");
  assert_says (demo, "Clamp a scrap", false);
}

/* Whatever the sizes: tracks reach from wall to wall and overlap by a twentieth of the bit or more, with one
 * fewer they wouldn't; tabs stand in order and on the way. */
static void
test_any_size (Demo *demo, gconstpointer unused)
{
  SpelchBit bit = *demo_bit ("up-cut-6.35x25");
  for (int i = 0; i < 2000; i++)
    {
      double d = g_test_rand_double_range (1, 25), width = d * g_test_rand_double_range (1.001, 9);
      bit.diameter = spelch_length_mm (d);
      demo_take_cut (demo, "shelf-dado");
      take_width (demo, width);
      SpelchSettingOut out
          = spelch_setting_out_find (spelch_shop_constants (), demo->part, demo->cut, &bit, 0);
      double narrowest = d + out.step_over_mm * (out.tracks - 1);
      g_assert_cmpfloat_with_epsilon (narrowest, out.width_mm, out.tracks > 1 ? 1e-6 : 0.0051);
      g_assert_cmpfloat (out.tracks > 1 ? out.overlap_mm : d, >=, 0.05 * d - 1e-6);
      g_assert_cmpfloat (d + 0.95 * d * (out.tracks - 2), <, width);
      demo_take_cut (demo, "outline");
      demo->part->length = spelch_length_mm (g_test_rand_double_range (10, 2000));
      demo->part->width = spelch_length_mm (g_test_rand_double_range (10, 2000));
      demo->cut->length = spelch_length_mm (2 * (demo->part->length.mm + demo->part->width.mm));
      demo->cut->tabs.count = (guint)g_test_rand_int_range (1, 40);
      out = spelch_setting_out_find (spelch_shop_constants (), demo->part, demo->cut, &bit, 0);
      g_assert_cmpuint (spelch_setting_out_tabs (&out), ==, demo->cut->tabs.count);
      double before = 0;
      for (guint tab = 0; tab < demo->cut->tabs.count; tab++)
        {
          double place = spelch_setting_out_tab (&out, tab);
          g_assert_cmpfloat (place, >, before);
          before = place;
        }
      g_assert_cmpfloat (before, <, demo->cut->length.mm);
    }
}

#define ADD(name, function)                                                                                  \
  g_test_add ("/setting-out/" name, Demo, NULL, demo_set_up, function, demo_tear_down)

int
main (int argc, char **argv)
{
  g_test_init (&argc, &argv, NULL);
  ADD ("tracks", test_tracks);
  ADD ("fit", test_fit);
  ADD ("sharpened", test_sharpened);
  ADD ("corners", test_corners);
  ADD ("round", test_round);
  ADD ("inward-by-hand", test_inward_by_hand);
  ADD ("straightedge-side", test_straightedge_side);
  ADD ("by-hand", test_by_hand);
  ADD ("on-table", test_on_table);
  ADD ("no-strip-at-fence", test_no_strip_at_fence);
  ADD ("pecks", test_pecks);
  ADD ("tabs", test_tab_places);
  ADD ("tabs-elsewhere", test_tabs_elsewhere);
  ADD ("tabs-in-hole", test_tabs_in_hole);
  ADD ("exit", test_exit);
  ADD ("any-size", test_any_size);
  return g_test_run ();
}
