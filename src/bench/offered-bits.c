/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "bench/offered-bits.h"
#include "files/shop-data.h"

static bool
is_offered (const SpelchPart *part, const SpelchBit *bit)
{
  return !bit->retired && (part == NULL || spelch_part_find_bit (part, bit->id) < 0);
}

static const SpelchBit *
drawer_bits (SpelchShelf *drawer, guint *n)
{
  if (drawer == NULL)
    return spelch_shop_bits (n);
  *n = spelch_shelf_count (drawer);
  return spelch_shelf_get_nth (drawer, 0);
}

guint
spelch_offered_count (const SpelchPart *part, SpelchShelf *drawer)
{
  guint n_shop = 0, n = part == NULL ? 0 : part->n_bits;
  const SpelchBit *shop = drawer_bits (drawer, &n_shop);
  for (guint i = 0; i < n_shop; i++)
    if (is_offered (part, &shop[i]))
      n++;
  return n;
}

const SpelchBit *
spelch_offered_nth (const SpelchPart *part, SpelchShelf *drawer, guint n)
{
  guint n_shop = 0, n_own = part == NULL ? 0 : part->n_bits;
  const SpelchBit *shop = drawer_bits (drawer, &n_shop);
  if (n < n_own)
    return &part->bits[n];
  n -= n_own;
  for (guint i = 0; i < n_shop; i++)
    if (is_offered (part, &shop[i]) && n-- == 0)
      return &shop[i];
  return NULL;
}
