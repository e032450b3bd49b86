/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "command/drawer.h"

#include "files/file-io.h"
#include "files/list-file.h"
#include "files/shop-data.h"

static GArray *
read_drawer (const char *path, GError **error)
{
  g_autoptr (GFile) file = g_file_new_for_commandline_arg (path);
  g_autofree char *name = spelch_file_name (file);
  gsize length = 0;
  g_autofree char *text = spelch_file_read (file, &length, NULL, error);
  return text != NULL ? spelch_list_from_json (SPELCH_LIST_BITS, text, length, name, NULL, error) : NULL;
}

/* The part's own bits, and those of the starter set that it has no copy of. */
static GArray *
default_drawer (const SpelchPart *part)
{
  guint n;
  const SpelchBit *starter = spelch_shop_bits (&n);
  GArray *bits = g_array_new (FALSE, FALSE, sizeof (SpelchBit));
  if (part->n_bits > 0)
    g_array_append_vals (bits, part->bits, part->n_bits);
  for (guint i = 0; i < n; i++)
    if (spelch_part_find_bit (part, starter[i].id) < 0)
      g_array_append_val (bits, starter[i]);
  return bits;
}

GArray *
spelch_drawer_open (const SpelchAsked *asked, const SpelchPart *part, GError **error)
{
  return asked->drawer != NULL ? read_drawer (asked->drawer, error) : default_drawer (part);
}
