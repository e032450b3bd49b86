/* SPDX-License-Identifier: GPL-3.0-or-later
 *
 * Colours on the ground they really stand on: text at 4.5 : 1 (WCAG 2.2, SC 1.4.3) and graphics at 3 : 1
 * (SC 1.4.11). The formula itself is checked in tests/published.
 */
#include "drawing/palette.h"

#include <glib.h>
#include <math.h>

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

/* ---- For eyes that lack a kind of cone ----
 *
 * Machado, Oliveira and Fernandes 2009, IEEE Transactions on Visualization and Computer Graphics 15(6),
 * complete lack of one kind, on linear RGB. The figures are from memory; that grey stays grey, each row
 * summing to 1, is checked. */

typedef struct
{
  const char *name;
  double m[3][3];
} Eyes;

static const Eyes EYES[] = {
  { "red-blind",
    { { 0.152286, 1.052583, -0.204868 },
      { 0.114503, 0.786281, 0.099216 },
      { -0.003882, -0.048116, 1.051998 } } },
  { "green-blind",
    { { 0.367322, 0.860646, -0.227968 },
      { 0.280085, 0.672501, 0.047413 },
      { -0.011820, 0.042940, 0.968881 } } },
  { "blue-blind",
    { { 1.255528, -0.076749, -0.178779 },
      { -0.078411, 0.930809, 0.147602 },
      { 0.004733, 0.691367, 0.303900 } } },
};

static double
to_linear (double c)
{
  return c <= 0.04045 ? c / 12.92 : pow ((c + 0.055) / 1.055, 2.4);
}

static double
to_srgb (double l)
{
  double c = CLAMP (l, 0, 1);

  return c <= 0.0031308 ? c * 12.92 : 1.055 * pow (c, 1 / 2.4) - 0.055;
}

static SpelchColour
seen_by (const Eyes *eyes, SpelchColour colour)
{
  const double in[3] = { to_linear (colour.r), to_linear (colour.g), to_linear (colour.b) };
  double out[3] = { 0 };

  for (int i = 0; i < 3; i++)
    for (int j = 0; j < 3; j++)
      out[i] += eyes->m[i][j] * in[j];
  return (SpelchColour){ to_srgb (out[0]), to_srgb (out[1]), to_srgb (out[2]) };
}

static double
lab_part (double t)
{
  return t > 216.0 / 24389 ? cbrt (t) : (24389.0 / 27 * t + 16) / 116;
}

/* CIE 1976 difference for the white of sRGB, D65 (IEC 61966-2-1; formulas and white point from memory). */
static double
difference (SpelchColour a, SpelchColour b)
{
  const SpelchColour both[2] = { a, b };
  double lab[2][3];

  for (int i = 0; i < 2; i++)
    {
      double r = to_linear (both[i].r), g = to_linear (both[i].g), u = to_linear (both[i].b);
      double x = lab_part ((0.4124 * r + 0.3576 * g + 0.1805 * u) / 0.9505);
      double y = lab_part (0.2126 * r + 0.7152 * g + 0.0722 * u);
      double z = lab_part ((0.0193 * r + 0.1192 * g + 0.9505 * u) / 1.089);

      lab[i][0] = 116 * y - 16;
      lab[i][1] = 500 * (x - y);
      lab[i][2] = 200 * (y - z);
    }
  return sqrt (pow (lab[0][0] - lab[1][0], 2) + pow (lab[0][1] - lab[1][1], 2)
               + pow (lab[0][2] - lab[1][2], 2));
}

/* A difference of some 2 is just seen side by side; ten times that is told apart at a glance. */
#define AT_A_GLANCE 20.0

static void
test_every_eye (void)
{
  for (guint e = 0; e < G_N_ELEMENTS (EYES); e++)
    {
      for (int row = 0; row < 3; row++)
        g_assert_cmpfloat_with_epsilon (EYES[e].m[row][0] + EYES[e].m[row][1] + EYES[e].m[row][2], 1, 2e-6);
      for (int look = SPELCH_LOOK_LIGHT; look <= SPELCH_LOOK_PAPER; look++)
        {
          const SpelchPalette *p = spelch_palette ((SpelchLook)look);
          SpelchColour ground = seen_by (&EYES[e], p->ground);
          SpelchColour up = seen_by (&EYES[e], p->up_ink), down = seen_by (&EYES[e], p->down_ink);
          double apart = difference (up, down);

          g_test_message ("%s, look %d: up and down differ by %.0f", EYES[e].name, look, apart);
          g_assert_cmpfloat (apart, >=, AT_A_GLANCE);
          assert_contrast (EYES[e].name, (SpelchLook)look, up, ground, 4.5);
          assert_contrast (EYES[e].name, (SpelchLook)look, down, ground, 4.5);
          assert_contrast (EYES[e].name, (SpelchLook)look, seen_by (&EYES[e], p->ink_soft), ground, 4.5);
          assert_contrast (EYES[e].name, (SpelchLook)look, seen_by (&EYES[e], p->ink), ground, 4.5);
        }
    }
}

int
main (int argc, char **argv)
{
  g_test_init (&argc, &argv, NULL);
  g_test_add_func ("/palette/words", test_words);
  g_test_add_func ("/palette/lines", test_lines);
  g_test_add_func ("/palette/directions-differ", test_directions_differ);
  g_test_add_func ("/palette/every-eye", test_every_eye);
  return g_test_run ();
}
