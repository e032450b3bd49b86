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

void
spelch_offered_forget (SpelchOffered *offered)
{
  g_clear_pointer (&offered->places, g_array_unref);
}

static void
look_up (SpelchOffered *offered, const SpelchPart *part, SpelchShelf *drawer)
{
  guint n_shop = 0;
  const SpelchBit *shop = drawer_bits (drawer, &n_shop);
  if (offered->places != NULL && offered->part == part && offered->shop == shop && offered->n_shop == n_shop)
    return;
  spelch_offered_forget (offered);
  offered->part = part;
  offered->shop = shop;
  offered->n_shop = n_shop;
  offered->places = g_array_new (FALSE, FALSE, sizeof (guint));
  for (guint i = 0; i < n_shop; i++)
    if (is_offered (part, &shop[i]))
      g_array_append_val (offered->places, i);
}

guint
spelch_offered_count (SpelchOffered *offered, const SpelchPart *part, SpelchShelf *drawer)
{
  look_up (offered, part, drawer);
  return (part == NULL ? 0 : part->n_bits) + offered->places->len;
}

const SpelchBit *
spelch_offered_nth (SpelchOffered *offered, const SpelchPart *part, SpelchShelf *drawer, guint n)
{
  guint n_own = part == NULL ? 0 : part->n_bits;
  look_up (offered, part, drawer);
  if (n < n_own)
    return &part->bits[n];
  n -= n_own;
  return n < offered->places->len ? &offered->shop[g_array_index (offered->places, guint, n)] : NULL;
}
