/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "drawing/labels.h"

#include <math.h>

/* Between two labels. */
#define CLEAR 2.0

void
spelch_placer_init (SpelchPlacer *placer, SpelchRect area)
{
  placer->area = area;
  placer->n = 0;
}

bool
spelch_rect_overlap (SpelchRect a, SpelchRect b)
{
  return a.x < b.x + b.width && b.x < a.x + a.width && a.y < b.y + b.height && b.y < a.y + a.height;
}

SpelchRect
spelch_rect_union (SpelchRect a, SpelchRect b)
{
  double x0, y0;

  if (a.width <= 0 || a.height <= 0)
    return b;
  if (b.width <= 0 || b.height <= 0)
    return a;
  x0 = MIN (a.x, b.x);
  y0 = MIN (a.y, b.y);
  return (SpelchRect){ x0, y0, MAX (a.x + a.width, b.x + b.width) - x0,
                       MAX (a.y + a.height, b.y + b.height) - y0 };
}

SpelchRect
spelch_rect_whole (SpelchRect rect)
{
  double x0 = floor (rect.x), y0 = floor (rect.y);

  if (rect.width <= 0 || rect.height <= 0)
    return (SpelchRect){ 0, 0, 0, 0 };
  return (SpelchRect){ x0, y0, ceil (rect.x + rect.width) - x0, ceil (rect.y + rect.height) - y0 };
}

void
spelch_placer_take (SpelchPlacer *placer, SpelchRect rect)
{
  if (rect.width > 0 && rect.height > 0 && placer->n < SPELCH_MAX_TAKEN)
    placer->taken[placer->n++] = rect;
}

/* The taken place that @rect comes too near to, or NULL. */
static const SpelchRect *
in_the_way (const SpelchPlacer *placer, SpelchRect rect)
{
  SpelchRect wide = { rect.x - CLEAR, rect.y - CLEAR, rect.width + 2 * CLEAR, rect.height + 2 * CLEAR };

  for (guint i = 0; i < placer->n; i++)
    if (spelch_rect_overlap (wide, placer->taken[i]))
      return &placer->taken[i];
  return NULL;
}

static bool
is_inside (SpelchRect area, SpelchRect rect)
{
  return rect.x >= area.x && rect.y >= area.y && rect.x + rect.width <= area.x + area.width
         && rect.y + rect.height <= area.y + area.height;
}

/* The nearest free top from @rect on in one direction (-1 up, +1 down), or NAN when none is found before
 * @limit. */
static bool
search (const SpelchPlacer *placer, SpelchRect rect, double direction, double limit, double *top)
{
  for (guint tries = 0; tries <= placer->n; tries++)
    {
      const SpelchRect *other;

      if ((rect.y - limit) * direction > 0)
        return false;
      other = in_the_way (placer, rect);
      if (other == NULL)
        {
          *top = rect.y;
          return is_inside (placer->area, rect);
        }
      /* Half a hair further, so that rounding never leaves them touching. */
      rect.y
          = direction < 0 ? other->y - rect.height - CLEAR - 0.01 : other->y + other->height + CLEAR + 0.01;
    }
  return false;
}

bool
spelch_placer_slide (SpelchPlacer *placer, SpelchRect *rect, double highest, double lowest)
{
  SpelchRect wish = *rect;
  double up = 0, down = 0;
  bool found_up, found_down;

  highest = MAX (highest, placer->area.y);
  lowest = MIN (lowest, placer->area.y + placer->area.height - rect->height);
  if (highest > lowest)
    return false;
  wish.y = CLAMP (wish.y, highest, lowest);
  found_up = search (placer, wish, -1.0, highest, &up);
  found_down = search (placer, wish, 1.0, lowest, &down);
  if (!found_up && !found_down)
    return false;
  rect->y = found_up && (!found_down || wish.y - up <= down - wish.y) ? up : down;
  spelch_placer_take (placer, *rect);
  return true;
}

/* Places one column: labels that touch are joined into a block, and a block stands where its members on
 * average want to be (pool adjacent violators). */
static void
spread_column (const double *wished, guint n, double step, double highest, double lowest, double *tops)
{
  double *sum = g_newa (double, MAX (n, 1));
  guint *count = g_newa (guint, MAX (n, 1));
  guint blocks = 0, at = 0;

  for (guint i = 0; i < n; i++)
    {
      sum[blocks] = wished[i];
      count[blocks] = 1;
      while (blocks > 0
             && sum[blocks - 1] / count[blocks - 1] + step * count[blocks - 1] > sum[blocks] / count[blocks])
        {
          sum[blocks - 1] += sum[blocks] - step * count[blocks] * count[blocks - 1];
          count[blocks - 1] += count[blocks];
          blocks--;
        }
      blocks++;
    }
  for (guint b = 0; b < blocks; b++)
    for (guint i = 0; i < count[b]; i++)
      tops[at++] = sum[b] / count[b] + step * i;

  /* Keep inside: push down from the top, then up from the bottom. */
  for (guint i = 0; i < n; i++)
    tops[i] = MAX (tops[i], i == 0 ? highest : tops[i - 1] + step);
  for (guint i = n; i-- > 0;)
    tops[i] = MIN (tops[i], i == n - 1 ? lowest : tops[i + 1] - step);
}

void
spelch_placer_spread (const double *wished, guint n, double height, double gap, double highest, double lowest,
                      double *tops, guint *columns)
{
  double step = height + gap;
  guint per_column = (guint)MAX (1.0, floor ((lowest - highest + gap) / step));
  guint n_columns = n == 0 ? 1 : (n + per_column - 1) / per_column;

  for (guint c = 0; c < n_columns; c++)
    {
      /* Neighbours in depth go to different columns, so that each column stays near its depths. */
      double *in = g_newa (double, n), *out = g_newa (double, n);
      guint m = 0;

      for (guint i = c; i < n; i += n_columns)
        in[m++] = wished[i];
      spread_column (in, m, step, highest, lowest - height, out);
      m = 0;
      for (guint i = c; i < n; i += n_columns)
        {
          tops[i] = out[m++];
          columns[i] = c;
        }
    }
}

void
spelch_placer_spread_around (const double *wished, guint n, guint held, double height, double gap,
                             double highest, double lowest, double *tops, guint *columns)
{
  double step = height + gap, top = CLAMP (wished[held], highest, MAX (highest, lowest - height));
  double *others = g_newa0 (double, n), *placed = g_newa0 (double, n);
  guint *sides = g_newa0 (guint, n);
  guint room_above = (guint)MAX (0.0, floor ((top - highest) / step));
  guint room_below = (guint)MAX (0.0, floor ((lowest - height - top) / step));
  bool beside = room_above + room_below < n - 1; /* in columns of their own */
  /* Those that don't fit on their side of it go to the other. */
  guint above = beside ? n - 1 : MIN (MAX (held, n - 1 - MIN (room_below, n - 1)), room_above);

  for (guint i = 0, m = 0; i < n; i++)
    if (i != held)
      others[m++] = wished[i];
  spelch_placer_spread (others, above, height, gap, highest, beside ? lowest : top - gap, placed, sides);
  spelch_placer_spread (others + above, n - 1 - above, height, gap, top + step, lowest, placed + above,
                        sides + above);
  for (guint i = 0, m = 0; i < n; i++)
    {
      tops[i] = i == held ? top : placed[m];
      columns[i] = i == held ? 0 : sides[m++] + (beside ? 1 : 0);
    }
}
