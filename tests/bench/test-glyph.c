/* SPDX-License-Identifier: GPL-3.0-or-later
 *
 * The signs beside verdicts: a tick promises that the edge comes out clean, so a plan that must not be cut
 * shows none, whatever its grade, and its bit's tile says why instead.
 */
#include "bench/glyph.h"
#include "files/shop-data.h"
#include "plan/words.h"

#include <string.h>

#define SIZE 16

/* Whether drawing it leaves anything. */
static bool
paints (SpelchGlyphKind kind)
{
  cairo_surface_t *surface = cairo_image_surface_create (CAIRO_FORMAT_A8, SIZE, SIZE);
  cairo_t *cr = cairo_create (surface);
  spelch_glyph_draw (cr, kind, SIZE);
  cairo_destroy (cr);
  cairo_surface_flush (surface);
  const unsigned char *pixels = cairo_image_surface_get_data (surface);
  gsize length = (gsize)cairo_image_surface_get_stride (surface) * SIZE;
  bool any = false;
  for (gsize i = 0; i < length; i++)
    any = any || pixels[i] != 0;
  cairo_surface_destroy (surface);
  return any;
}

static void
test_painted (void)
{
  g_assert_true (paints (SPELCH_GLYPH_TICK));
  g_assert_true (paints (SPELCH_GLYPH_SPLINTER));
  g_assert_false (paints (SPELCH_GLYPH_NONE));
}

typedef struct
{
  guint ticked, withheld, torn;
} Seen;

static void
look_at (const SpelchPart *part, const SpelchCut *cut, const SpelchBit *bit, Seen *seen)
{
  SpelchPlan plan;
  spelch_plan_make (spelch_shop_constants (), part, cut, bit, &plan);
  bool stopped = plan.verdict == SPELCH_VERDICT_DO_NOT_CUT;
  const char *caption = spelch_words_bit_caption (part, cut, bit, &plan);
  if (stopped)
    g_assert_cmpstr (caption, !=, "");
  for (int side = SPELCH_SIDE_MOTOR; side <= SPELCH_SIDE_FAR; side++)
    {
      const SpelchEdge *edge = spelch_plan_worst (&plan, (SpelchSide)side);
      SpelchGlyphKind kind = spelch_glyph_of_edge (&plan, (SpelchSide)side);
      bool clean = edge != NULL && edge->grade == 1;
      g_assert_true ((kind == SPELCH_GLYPH_TICK) == (clean && !stopped));
      g_assert_true (!stopped || !clean || !paints (kind));
      if (edge != NULL && edge->grade >= 4) /* what tears is told, cut or not */
        g_assert_cmpint (kind, ==, SPELCH_GLYPH_SPLINTER);
      seen->ticked += kind == SPELCH_GLYPH_TICK;
      seen->withheld += stopped && clean;
      seen->torn += stopped && kind == SPELCH_GLYPH_SPLINTER;
    }
}

/* Every starter bit in every cut of the demo, as it stands and with a speed held that is over most marks. */
static void
test_no_tick_on_what_must_not_be_cut (void)
{
  guint n_bits = 0;
  const SpelchBit *bits = spelch_shop_bits (&n_bits);
  const double speeds[] = { 0, 40000 };
  Seen seen = { 0 };
  for (guint s = 0; s < G_N_ELEMENTS (speeds); s++)
    {
      g_autoptr (SpelchPart) part = spelch_shop_demo ();
      for (guint c = 0; c < part->n_cuts; c++)
        for (guint b = 0; b < n_bits; b++)
          {
            SpelchCut cut = part->cuts[c];
            cut.held = (SpelchHeld){ .speed_rpm = speeds[s] };
            look_at (part, &cut, &bits[b], &seen);
          }
    }
  g_test_message ("%u ticked, %u withheld, %u torn and stopped", seen.ticked, seen.withheld, seen.torn);
  g_assert_cmpuint (seen.ticked, >, 0);
  g_assert_cmpuint (seen.withheld, >, 0);
  g_assert_cmpuint (seen.torn, >, 0);
}

/* The very plan that is ticked loses its ticks by a stop, and nothing else of its grade. */
static void
test_stop_takes_tick (void)
{
  g_autoptr (SpelchPart) part = spelch_shop_demo ();
  SpelchCut cut = part->cuts[0];
  SpelchBit bit = part->bits[spelch_part_find_bit (part, cut.bit)];
  SpelchPlan plan;
  spelch_plan_make (spelch_shop_constants (), part, &cut, &bit, &plan);
  g_assert_cmpint (spelch_glyph_of_edge (&plan, SPELCH_SIDE_MOTOR), ==, SPELCH_GLYPH_TICK);
  g_assert_cmpint (spelch_glyph_of_edge (&plan, SPELCH_SIDE_FAR), ==, SPELCH_GLYPH_TICK);
  bit.hand = SPELCH_HAND_LEFT; /* would cut backward on this spindle */
  spelch_plan_make (spelch_shop_constants (), part, &cut, &bit, &plan);
  g_assert_true (spelch_plan_has_stop (&plan, SPELCH_STOP_HAND));
  g_assert_cmpint (spelch_plan_worst (&plan, SPELCH_SIDE_MOTOR)->grade, ==, 1);
  g_assert_cmpint (spelch_glyph_of_edge (&plan, SPELCH_SIDE_MOTOR), ==, SPELCH_GLYPH_NONE);
  g_assert_cmpint (spelch_glyph_of_edge (&plan, SPELCH_SIDE_FAR), ==, SPELCH_GLYPH_NONE);
  g_assert_cmpstr (spelch_words_bit_caption (part, &cut, &bit, &plan), ==, "do not cut");
}

int
main (int argc, char **argv)
{
  g_test_init (&argc, &argv, NULL);
  g_test_add_func ("/bench/glyph/painted", test_painted);
  g_test_add_func ("/bench/glyph/no-tick-on-what-must-not-be-cut", test_no_tick_on_what_must_not_be_cut);
  g_test_add_func ("/bench/glyph/stop-takes-tick", test_stop_takes_tick);
  return g_test_run ();
}
