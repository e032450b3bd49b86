/* SPDX-License-Identifier: GPL-3.0-or-later
 *
 * Poster: five bits that stand for their kinds, and everything within the paper, in any language's length of
 * words that the pictures leave room for.
 */
#include "drawing/poster.h"
#include "files/shop-data.h"

#include <cairo.h>

static SpelchPoster
poster_of_demo (const SpelchPart *part)
{
  SpelchPoster poster = { .constants = spelch_shop_constants (),
                          .part = part,
                          .cut = &part->cuts[0],
                          .numbers = { SPELCH_UNIT_MM, SPELCH_INCH_FRACTION, '.' } };
  guint n = 0;
  const SpelchBit *bits = spelch_shop_bits (&n);
  g_assert_true (spelch_poster_choose (&poster, bits, n));
  return poster;
}

static void
test_kinds (void)
{
  g_autoptr (SpelchPart) part = spelch_shop_demo ();
  SpelchPoster poster = poster_of_demo (part);
  const SpelchBitKind kinds[] = { SPELCH_BIT_STRAIGHT, SPELCH_BIT_UP_CUT, SPELCH_BIT_DOWN_CUT,
                                  SPELCH_BIT_COMPRESSION, SPELCH_BIT_COMPRESSION };
  SPELCH_TABLE_HAS (kinds, SPELCH_POSTER_BITS);
  for (guint i = 0; i < SPELCH_POSTER_BITS; i++)
    g_assert_cmpint (poster.bits[i]->kind, ==, kinds[i]);
  /* Alike in width but for the short tip, whose up-shear is shorter though it is wider. */
  for (guint i = 1; i < SPELCH_POSTER_BITS - 1; i++)
    g_assert_cmpfloat (poster.bits[i]->diameter.mm, ==, poster.bits[0]->diameter.mm);
  g_assert_cmpfloat (poster.bits[SPELCH_POSTER_BITS - 1]->up_shear.mm, <,
                     poster.bits[SPELCH_BIT_COMPRESSION]->up_shear.mm);
  SpelchPoster without = poster;
  guint n = 0;
  g_assert_false (spelch_poster_choose (&without, spelch_shop_bits (&n), 0));
}

static void
test_within_paper (void)
{
  g_autoptr (SpelchPart) part = spelch_shop_demo ();
  SpelchPoster poster = poster_of_demo (part);
  cairo_surface_t *surface = cairo_image_surface_create (CAIRO_FORMAT_RGB24, (int)SPELCH_POSTER_WIDTH + 1,
                                                         (int)SPELCH_POSTER_HEIGHT + 1);
  cairo_t *cr = cairo_create (surface);
  spelch_poster_draw (cr, &poster);
  g_assert_cmpint (cairo_status (cr), ==, CAIRO_STATUS_SUCCESS);
  cairo_surface_flush (surface);
  /* Nothing stands in the margin of an inch less a bit: it is all of the ground's colour. */
  const guint8 *data = cairo_image_surface_get_data (surface);
  int stride = cairo_image_surface_get_stride (surface);
  guint32 ground = *(const guint32 *)(const void *)data;
  bool any = false;
  for (int y = 0; y < (int)SPELCH_POSTER_HEIGHT; y++)
    for (int x = 0; x < (int)SPELCH_POSTER_WIDTH; x++)
      {
        bool margin = x < 56 || y < 56 || x > SPELCH_POSTER_WIDTH - 56 || y > SPELCH_POSTER_HEIGHT - 40;
        bool ink = *(const guint32 *)(const void *)(data + (gsize)y * stride + 4 * (gsize)x) != ground;
        if (margin)
          g_assert_false (ink);
        any = any || ink;
      }
  g_assert_true (any);
  cairo_destroy (cr);
  cairo_surface_destroy (surface);
}

int
main (int argc, char **argv)
{
  g_test_init (&argc, &argv, NULL);
  g_test_add_func ("/poster/kinds", test_kinds);
  g_test_add_func ("/poster/within-paper", test_within_paper);
  return g_test_run ();
}
