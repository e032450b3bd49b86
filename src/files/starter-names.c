/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "files/starter-names.h"

#include <glib/gi18n-lib.h>
#include <string.h>

static const char *const NAMES[] = {
  N_ ("Birch plywood 6.5 mm"),
  N_ ("Birch plywood 9 mm"),
  N_ ("Birch plywood 12 mm"),
  N_ ("Birch plywood 15 mm"),
  N_ ("Birch plywood 18 mm"),
  N_ ("Birch plywood 21 mm"),
  N_ ("Birch plywood 24 mm"),
  N_ ("Oak-veneered poplar plywood 18 mm"),
  N_ ("Melamine-faced particleboard 18 mm"),
  N_ ("Melamine-faced particleboard 19 mm"),
  N_ ("Melamine-faced MDF 18 mm"),
  N_ ("MDF 16 mm"),
  N_ ("MDF 18 mm"),
  N_ ("MDF 19 mm"),
  N_ ("MDF 22 mm"),
  N_ ("MDF 25 mm"),
  N_ ("Particleboard 18 mm"),
  N_ ("Softwood plywood 18 mm"),
  N_ ("Oak, straight-grained, 20 mm"),
  N_ ("Maple, figured, 20 mm"),
  N_ ("Pine 20 mm"),
  N_ ("Maple, end grain up, 40 mm"),
  N_ ("Light gantry router"),
  N_ ("Medium gantry router"),
  N_ ("Heavy gantry router"),
  N_ ("Router table"),
  N_ ("Trim router, hand-held"),
  N_ ("Larger router, hand-held"),
  N_ ("Compression 6.35 mm (1/4 in)"),
  N_ ("Compression 12.7 mm (1/2 in)"),
  N_ ("Compression, short tip, 9.53 mm (3/8 in)"),
  N_ ("Compression, one edge, 6 mm"),
  N_ ("Compression 8 mm"),
  N_ ("Compression, short tip, 10 mm"),
  N_ ("Compression 12 mm"),
  N_ ("Down-cut 3.18 mm (1/8 in)"),
  N_ ("Down-cut 6.35 mm (1/4 in)"),
  N_ ("Down-cut 6 mm"),
  N_ ("Down-cut 9.53 mm (3/8 in)"),
  N_ ("Down-cut 10 mm"),
  N_ ("Up-cut, one edge, 3 mm"),
  N_ ("Up-cut 3.18 mm (1/8 in)"),
  N_ ("Up-cut 4 mm"),
  N_ ("Up-cut 4.76 mm (3/16 in)"),
  N_ ("Up-cut 5 mm"),
  N_ ("Up-cut 6.35 mm (1/4 in)"),
  N_ ("Up-cut 8 mm"),
  N_ ("Up-cut 12.7 mm (1/2 in)"),
  N_ ("Straight 6.35 mm (1/4 in)"),
  N_ ("Straight, one edge, high-speed steel, 8 mm"),
  N_ ("Straight 12 mm"),
  N_ ("Straight 12.7 mm (1/2 in)"),
  N_ ("Straight 16 mm"),
  N_ ("Straight 18 mm"),
  N_ ("Straight 19.05 mm (3/4 in)"),
  N_ ("Straight 20 mm"),
  N_ ("Hall cabinet, left side"),
  N_ ("Invented: no such cabinet, shop or order exists. The side of a low cabinet for the hall of a "
      "training workshop; face a looks into the cabinet and is seen, face b stands against a wall. "
      "The vacuum and its area are invented too."),
  N_ ("Outline"),
  N_ ("Dadoes for the shelves"),
  N_ ("Rabbet for the back"),
  N_ ("Mortises for the hanging rail"),
  N_ ("Holes for the shelf pegs"),
  N_ ("Slot for the cable"),
};

const char *const *
spelch_starter_names (guint *n)
{
  *n = G_N_ELEMENTS (NAMES);
  return NAMES;
}

void
spelch_starter_name (char *name, gsize size)
{
  /* The empty message stands for the catalogue's head. */
  if (*name == '\0')
    return;
  const char *spoken = _ (name);
  if (spoken != name && strlen (spoken) < size)
    g_strlcpy (name, spoken, size);
}
