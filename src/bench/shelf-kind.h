/* SPDX-License-Identifier: GPL-3.0-or-later
 *
 * Shelf kind: what the window of a shop's list must know of bits, of boards or of machines: the fields of its
 * form, how the list is sorted, the line and the pictures that tell one entry from another.
 */
#pragma once

#include "bench/field.h"
#include "drawing/palette.h"
#include "files/list-file.h"

#include <cairo.h>
#include <gtk/gtk.h>

typedef struct
{
  SpelchListKind list;
  const char *title; /* marked with N_(), as are the other words */
  const char *fresh_name;
  const char *empty; /* what to do while there is nothing */
  const SpelchField *fields;
  guint n_fields;
  gsize retired;                                       /* offset of the flag */
  const char *const *orders;                           /* names of ways to sort, ended by NULL */
  double (*measure) (gconstpointer item, guint order); /* what order > 0 sorts by; order 0 is by name */
  void (*begin) (gpointer item); /* fills in an entry that is added; id and name are set */
  /* Brings other members in line with what was changed by hand since @before, so that one change doesn't
   * need another first. */
  void (*settle) (gconstpointer before, gpointer after);
  char *(*line) (gconstpointer item, const SpelchNumbers *numbers); /* the decisive sizes */
  double (*span_mm) (gconstpointer item); /* the longest one of the list gives the scale; NULL: none */
  int (*row_height) (gconstpointer item, double scale);
  void (*draw_row) (cairo_t *cr, gconstpointer item, double width, double height, double scale,
                    const SpelchPalette *palette);
  void (*draw_large) (cairo_t *cr, gconstpointer item, double width, double height,
                      const SpelchPalette *palette);
  /* A further editor under the form, or NULL. It has the signals of a form. */
  GtkWidget *(*more_new) (void);
  void (*more_show) (GtkWidget *more, gconstpointer item, const SpelchNumbers *numbers);
} SpelchShelfKind;

extern const SpelchShelfKind SPELCH_SHELF_BITS, SPELCH_SHELF_BOARDS, SPELCH_SHELF_MACHINES;

const SpelchShelfKind *spelch_shelf_kind (SpelchListKind list);

/* Every item begins with its id and then its name. */
const char *spelch_shelf_item_name (gconstpointer item);
void spelch_shelf_item_set_name (gpointer item, const char *id, const char *name);

bool spelch_shelf_item_is_retired (const SpelchShelfKind *kind, gconstpointer item);

#define SPELCH_SHELF_PICTURE_WIDTH 150 /* of a row */
