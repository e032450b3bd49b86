/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "drawing/colour-table.h"

#include <stdbool.h>

#define BITS   5 /* of each of red, green and blue that are told apart in counting */
#define N_BINS (1 << (3 * BITS))

typedef struct
{
  guint32 n;
  guint64 sum[3];
  gint16 nearest; /* -1: not looked for yet */
} Bin;

/* Bins order[from] to order[to - 1]. */
typedef struct
{
  guint from, to;
  guint64 n;
  guint axis; /* along which they spread most */
  double spread;
} Box;

struct _SpelchColourTable
{
  Bin bins[N_BINS];
  guint order[N_BINS];
  guint n;
  guint8 colours[SPELCH_TABLE_COLOURS][3];
};

static guint
part_of (guint bin, guint axis)
{
  return (bin >> (BITS * (2 - axis))) & ((1 << BITS) - 1);
}

static guint
bin_of (guint32 pixel)
{
  guint r = (pixel >> 16) & 0xff, g = (pixel >> 8) & 0xff, b = pixel & 0xff, drop = 8 - BITS;

  return (r >> drop) << (2 * BITS) | (g >> drop) << BITS | b >> drop;
}

SpelchColourTable *
spelch_colour_table_new (void)
{
  SpelchColourTable *table = g_new0 (SpelchColourTable, 1);

  for (guint i = 0; i < N_BINS; i++)
    table->bins[i].nearest = -1;
  return table;
}

void
spelch_colour_table_free (SpelchColourTable *table)
{
  g_free (table);
}

static const guint32 *
row_of (cairo_surface_t *picture, int y)
{
  gsize stride = (gsize)cairo_image_surface_get_stride (picture);
  return (const guint32 *)(const void *)(cairo_image_surface_get_data (picture) + (gsize)y * stride);
}

void
spelch_colour_table_count (SpelchColourTable *table, cairo_surface_t *picture)
{
  int width = cairo_image_surface_get_width (picture), height = cairo_image_surface_get_height (picture);

  cairo_surface_flush (picture);
  for (int y = 0; y < height; y++)
    {
      const guint32 *row = row_of (picture, y);

      for (int x = 0; x < width; x++)
        {
          Bin *bin = &table->bins[bin_of (row[x])];

          bin->n++;
          for (guint axis = 0; axis < 3; axis++)
            bin->sum[axis] += (row[x] >> (8 * (2 - axis))) & 0xff;
        }
    }
}

/* ---- Choosing ---- */

static Box
measure (const SpelchColourTable *table, guint from, guint to)
{
  Box box = { from, to, 0, 0, 0 };

  for (guint axis = 0; axis < 3; axis++)
    {
      double sum = 0, squares = 0, n = 0;

      for (guint i = from; i < to; i++)
        {
          double at = part_of (table->order[i], axis), weight = table->bins[table->order[i]].n;

          n += weight;
          sum += weight * at;
          squares += weight * at * at;
        }
      box.n = (guint64)n;
      if (squares - sum * sum / n > box.spread)
        {
          box.spread = squares - sum * sum / n;
          box.axis = axis;
        }
    }
  return box;
}

static int
compare_along (gconstpointer a, gconstpointer b, gpointer axis)
{
  return (int)part_of (*(const guint *)a, GPOINTER_TO_UINT (axis))
         - (int)part_of (*(const guint *)b, GPOINTER_TO_UINT (axis));
}

/* Where a box is halved, so that both halves have about as many pixels. */
static guint
median (SpelchColourTable *table, const Box *box)
{
  guint64 half = 0;

  g_qsort_with_data (&table->order[box->from], (int)(box->to - box->from), sizeof table->order[0],
                     compare_along, GUINT_TO_POINTER (box->axis));
  for (guint i = box->from; i + 1 < box->to; i++)
    {
      half += table->bins[table->order[i]].n;
      if (2 * half >= box->n)
        return i + 1;
    }
  return box->to - 1;
}

static void
mean_of (const SpelchColourTable *table, const Box *box, guint8 rgb[3])
{
  guint64 sum[3] = { 0 };

  for (guint i = box->from; i < box->to; i++)
    for (guint axis = 0; axis < 3; axis++)
      sum[axis] += table->bins[table->order[i]].sum[axis];
  for (guint axis = 0; axis < 3; axis++)
    rgb[axis] = (guint8)((sum[axis] + box->n / 2) / MAX (box->n, 1));
}

void
spelch_colour_table_choose (SpelchColourTable *table)
{
  Box boxes[SPELCH_TABLE_COLOURS];
  guint used = 0;

  for (guint i = 0; i < N_BINS; i++)
    if (table->bins[i].n > 0)
      table->order[used++] = i;
  if (used == 0)
    return;
  boxes[0] = measure (table, 0, used);
  for (table->n = 1; table->n < SPELCH_TABLE_COLOURS; table->n++)
    {
      Box *widest = &boxes[0];
      guint at, to;

      for (guint i = 1; i < table->n; i++)
        if (boxes[i].spread > widest->spread)
          widest = &boxes[i];
      if (widest->spread <= 0)
        break;
      at = median (table, widest);
      to = widest->to;
      *widest = measure (table, widest->from, at);
      boxes[table->n] = measure (table, at, to);
    }
  for (guint i = 0; i < table->n; i++)
    mean_of (table, &boxes[i], table->colours[i]);
}

void
spelch_colour_table_get (const SpelchColourTable *table, guint i, guint8 rgb[3])
{
  for (guint axis = 0; axis < 3; axis++)
    rgb[axis] = i < table->n ? table->colours[i][axis] : 0;
}

/* ---- Indexing ---- */

static gint16
look_up (const SpelchColourTable *table, guint bin)
{
  gint16 best = 0;
  int least = G_MAXINT;

  for (guint i = 0; i < table->n; i++)
    {
      int distance = 0;

      for (guint axis = 0; axis < 3; axis++)
        {
          int middle = (int)(part_of (bin, axis) << (8 - BITS)) + (1 << (7 - BITS));
          int apart
              = table->bins[bin].n > 0 ? (int)(table->bins[bin].sum[axis] / table->bins[bin].n) : middle;

          apart -= table->colours[i][axis];
          distance += apart * apart;
        }
      if (distance < least)
        {
          least = distance;
          best = (gint16)i;
        }
    }
  return best;
}

void
spelch_colour_table_index (SpelchColourTable *table, cairo_surface_t *picture, guint8 *indices)
{
  int width = cairo_image_surface_get_width (picture), height = cairo_image_surface_get_height (picture);

  cairo_surface_flush (picture);
  for (int y = 0; y < height; y++)
    {
      const guint32 *row = row_of (picture, y);

      for (int x = 0; x < width; x++)
        {
          Bin *bin = &table->bins[bin_of (row[x])];

          if (bin->nearest < 0)
            bin->nearest = look_up (table, bin_of (row[x]));
          *indices++ = (guint8)bin->nearest;
        }
    }
}
