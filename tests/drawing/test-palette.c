/* SPDX-License-Identifier: GPL-3.0-or-later
 *
 * Colours on the ground they really stand on: text at 4.5 : 1 (WCAG 2.2, SC 1.4.3) and graphics at 3 : 1
 * (SC 1.4.11). The formula itself is checked in tests/published.
 */
#include "drawing/palette.h"

#include <glib.h>

/* The least opaque ground behind words, as drawn. */
#define GROUND_OPACITY 0.92

static SpelchColour
over (SpelchColour top, SpelchColour below, double alpha)
{
  return (SpelchColour){ top.r * alpha + below.r * (1 - alpha), top.g * alpha + below.g * (1 - alpha),
                         top.b * alpha + below.b * (1 - alpha) };
}

static void
assert_contrast (const char *what, SpelchLook look, SpelchColour a, SpelchColour b, double least)
{
  double contrast = spelch_palette_contrast (a, b);

  if (contrast < least)
    g_error ("%s in look %d: %.2f", what, look, contrast);
}

static void
test_words (void)
{
  for (int look = SPELCH_LOOK_LIGHT; look <= SPELCH_LOOK_PAPER; look++)
    {
      const SpelchPalette *p = spelch_palette ((SpelchLook)look);
      const SpelchColour behind[]
          = { p->long_grain, p->end_grain, p->fibreboard, p->rest, p->laminate, p->end_grain_pore, p->ink };

      assert_contrast ("ink on ground", (SpelchLook)look, p->ink, p->ground, 4.5);
      assert_contrast ("soft ink on ground", (SpelchLook)look, p->ink_soft, p->ground, 4.5);
      assert_contrast ("up ink on ground", (SpelchLook)look, p->up_ink, p->ground, 4.5);
      assert_contrast ("down ink on ground", (SpelchLook)look, p->down_ink, p->ground, 4.5);
      assert_contrast ("ink on bed or table", (SpelchLook)look, p->ink, p->rest, 4.5);
      for (guint i = 0; i < G_N_ELEMENTS (behind); i++)
        {
          SpelchColour ground = over (p->label_ground, behind[i], GROUND_OPACITY);

          /* Ink behind a label is a thin line only. */
          if (i + 1 == G_N_ELEMENTS (behind))
            continue;
          assert_contrast ("ink on a label", (SpelchLook)look, p->ink, ground, 4.5);
          assert_contrast ("soft ink on a label", (SpelchLook)look, p->ink_soft, ground, 4.5);
          assert_contrast ("up ink on a label", (SpelchLook)look, p->up_ink, ground, 4.5);
          assert_contrast ("down ink on a label", (SpelchLook)look, p->down_ink, ground, 4.5);
        }
    }
}

/* Outlines, edges and splinters are told from what they lie on by their ink lines. */
static void
test_lines (void)
{
  for (int look = SPELCH_LOOK_LIGHT; look <= SPELCH_LOOK_PAPER; look++)
    {
      const SpelchPalette *p = spelch_palette ((SpelchLook)look);
      const SpelchColour under[]
          = { p->ground,     p->long_grain,  p->end_grain,  p->fibreboard, p->rest,
              p->splinter,   p->up_edge,     p->up_flute,   p->down_edge,  p->down_flute,
              p->plain_edge, p->plain_flute, p->steel_dark, p->steel_light };

      for (guint i = 0; i < G_N_ELEMENTS (under); i++)
        assert_contrast ("a line", (SpelchLook)look, p->ink, under[i], 3.0);
      assert_contrast ("a sure window", (SpelchLook)look, p->window_sure, p->ground, 3.0);
      assert_contrast ("a window's outline", (SpelchLook)look, p->window_just, p->ground, 3.0);
      assert_contrast ("the rule", (SpelchLook)look, p->ink_soft, p->ground, 3.0);
    }
}

/* Up- and down-shear differ in lightness or hue only; chevrons and words carry the difference too. What must
 * not happen is that they look the same. */
static void
test_directions_differ (void)
{
  for (int look = SPELCH_LOOK_LIGHT; look <= SPELCH_LOOK_PAPER; look++)
    {
      const SpelchPalette *p = spelch_palette ((SpelchLook)look);
      /* Blue against red is what tells them apart for red-blind and green-blind eyes as well. */
      double up = p->up_ink.b - p->up_ink.r, down = p->down_ink.b - p->down_ink.r;

      g_assert_cmpfloat (down - up, >, 0.3);
      g_assert_cmpfloat (p->up_flute.r - p->up_flute.b, >, p->down_flute.r - p->down_flute.b);
    }
}

int
main (int argc, char **argv)
{
  g_test_init (&argc, &argv, NULL);
  g_test_add_func ("/palette/words", test_words);
  g_test_add_func ("/palette/lines", test_lines);
  g_test_add_func ("/palette/directions-differ", test_directions_differ);
  return g_test_run ();
}
