/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "drawing/palette.h"

#include <glib.h>
#include <math.h>

#define HEX(rgb)                                                                                             \
  {                                                                                                          \
    (double)(((rgb) >> 16) & 0xff) / 255.0, (double)(((rgb) >> 8) & 0xff) / 255.0,                           \
        (double)((rgb)&0xff) / 255.0                                                                         \
  }

static const SpelchPalette LIGHT = {
  .ground = HEX (0xfbfaf7),
  .ink = HEX (0x22262b),
  .ink_soft = HEX (0x5b636d),
  .line_soft = HEX (0xc9ced4),
  .up_ink = HEX (0xa94c14),
  .down_ink = HEX (0x1f5f8b),
  .up_edge = HEX (0xd3c7c2),
  .up_flute = HEX (0x948b8a),
  .down_edge = HEX (0xbbc9d4),
  .down_flute = HEX (0x7c8d9c),
  .plain_edge = HEX (0xd9dde2),
  .plain_flute = HEX (0x8e969f),
  .steel_dark = HEX (0x8b929a),
  .steel_light = HEX (0xf0f2f4),
  .long_grain = HEX (0xe7c998),
  .long_grain_line = HEX (0xb98b4e),
  .end_grain = HEX (0xd6ae74),
  .end_grain_pore = HEX (0x8c6231),
  .fibreboard = HEX (0xd9c29c),
  .fibreboard_speck = HEX (0x94784f),
  .laminate = HEX (0x5f6c76),
  .layer_line = HEX (0x9a6e3a),
  .rest = HEX (0xdccfb8),
  .rest_speck = HEX (0x9c8b74),
  .splinter = HEX (0xe7c998),
  .label_ground = HEX (0xfbfaf7),
  .window_sure = HEX (0x4a5560),
  .window_just = HEX (0x5b636d),
};

/* Lines are light here, so steel and wood are kept dark enough for them to stand out at 3 : 1. */
static const SpelchPalette DARK = {
  .ground = HEX (0x1d2023),
  .ink = HEX (0xeceae5),
  .ink_soft = HEX (0xaeb5bd),
  .line_soft = HEX (0x42484f),
  .up_ink = HEX (0xf2a06a),
  .down_ink = HEX (0x8cc3ee),
  .up_edge = HEX (0x80675c),
  .up_flute = HEX (0x4d3e38),
  .down_edge = HEX (0x5d7486),
  .down_flute = HEX (0x37454f),
  .plain_edge = HEX (0x6b737b),
  .plain_flute = HEX (0x42484e),
  .steel_dark = HEX (0x444b52),
  .steel_light = HEX (0x7a828a),
  .long_grain = HEX (0x85683f),
  .long_grain_line = HEX (0x5c4526),
  .end_grain = HEX (0x6d5331),
  .end_grain_pore = HEX (0x3d2c15),
  .fibreboard = HEX (0x6f6048),
  .fibreboard_speck = HEX (0x43392a),
  .laminate = HEX (0xb4bec7),
  .layer_line = HEX (0x46341c),
  .rest = HEX (0x3c3830),
  .rest_speck = HEX (0x5d564a),
  .splinter = HEX (0x9a7a4c),
  .label_ground = HEX (0x1d2023),
  .window_sure = HEX (0xaeb5bd),
  .window_just = HEX (0x939ba4),
};

static const SpelchPalette HIGH_CONTRAST = {
  .ground = HEX (0xffffff),
  .ink = HEX (0x000000),
  .ink_soft = HEX (0x2a2e33),
  .line_soft = HEX (0x767d85),
  .up_ink = HEX (0x842f00),
  .down_ink = HEX (0x00406e),
  .up_edge = HEX (0xf2d9cb),
  .up_flute = HEX (0x9a8378),
  .down_edge = HEX (0xd3e4f1),
  .down_flute = HEX (0x7891a5),
  .plain_edge = HEX (0xf0f2f4),
  .plain_flute = HEX (0x8f979f),
  .steel_dark = HEX (0x8b929a),
  .steel_light = HEX (0xffffff),
  .long_grain = HEX (0xf7e3bd),
  .long_grain_line = HEX (0x7f5520),
  .end_grain = HEX (0xe3bd80),
  .end_grain_pore = HEX (0x4d2f0a),
  .fibreboard = HEX (0xe8d8b8),
  .fibreboard_speck = HEX (0x5e4720),
  .laminate = HEX (0x2f3a43),
  .layer_line = HEX (0x4d2f0a),
  .rest = HEX (0xede6d8),
  .rest_speck = HEX (0x6f6350),
  .splinter = HEX (0xffeec9),
  .label_ground = HEX (0xffffff),
  .window_sure = HEX (0x1c252d),
  .window_just = HEX (0x1c252d),
};

/* Pale fills: they spare toner, and lines and words carry the drawing. */
static const SpelchPalette PAPER = {
  .ground = HEX (0xffffff),
  .ink = HEX (0x15181b),
  .ink_soft = HEX (0x4d545c),
  .line_soft = HEX (0xbcc2c8),
  .up_ink = HEX (0x9c4410),
  .down_ink = HEX (0x1a5580),
  .up_edge = HEX (0xede2dd),
  .up_flute = HEX (0xb3a49d),
  .down_edge = HEX (0xdfe9f1),
  .down_flute = HEX (0x9fb1c0),
  .plain_edge = HEX (0xeef0f2),
  .plain_flute = HEX (0xb0b6bc),
  .steel_dark = HEX (0xaeb4ba),
  .steel_light = HEX (0xffffff),
  .long_grain = HEX (0xf6ead1),
  .long_grain_line = HEX (0xb08a52),
  .end_grain = HEX (0xead6b0),
  .end_grain_pore = HEX (0x86602f),
  .fibreboard = HEX (0xefe5d1),
  .fibreboard_speck = HEX (0x96804f),
  .laminate = HEX (0x59646d),
  .layer_line = HEX (0x8c642f),
  .rest = HEX (0xf2ede3),
  .rest_speck = HEX (0xa99c87),
  .splinter = HEX (0xf6ead1),
  .label_ground = HEX (0xffffff),
  .window_sure = HEX (0x3c464f),
  .window_just = HEX (0x4d545c),
};

const SpelchPalette *
spelch_palette (SpelchLook look)
{
  switch (look)
    {
    case SPELCH_LOOK_DARK:
      return &DARK;
    case SPELCH_LOOK_HIGH_CONTRAST:
      return &HIGH_CONTRAST;
    case SPELCH_LOOK_PAPER:
      return &PAPER;
    case SPELCH_LOOK_LIGHT:
    default:
      return &LIGHT;
    }
}

/* sRGB to linear light, as WCAG 2.2 defines relative luminance. */
static double
linear (double channel)
{
  double c = CLAMP (channel, 0.0, 1.0);

  return c <= 0.04045 ? c / 12.92 : pow ((c + 0.055) / 1.055, 2.4);
}

static double
luminance (SpelchColour colour)
{
  return 0.2126 * linear (colour.r) + 0.7152 * linear (colour.g) + 0.0722 * linear (colour.b);
}

double
spelch_palette_contrast (SpelchColour a, SpelchColour b)
{
  double la = luminance (a), lb = luminance (b);

  return (MAX (la, lb) + 0.05) / (MIN (la, lb) + 0.05);
}
