/* SPDX-License-Identifier: GPL-3.0-or-later
 *
 * Shelf kind: what the window of a shop's list must know of bits, of boards, of machines or of the log's
 * entries: the fields of its form, how the list is sorted, the line and the pictures that tell one entry from
 * another.
 */
#pragma once

#include "bench/form.h"
#include "bench/shelves.h"
#include "drawing/palette.h"
#include "files/list-file.h"

#include <cairo.h>
#include <gtk/gtk.h>

#define SPELCH_SHELF_FILTERS 2

/* Entries can be narrowed down to those that tell of one other thing. */
typedef struct
{
  const char *label, *all; /* "Boards shown", "Every board"; marked with N_() */
  SpelchListKind of;       /* where that thing lies */
  gsize offset;            /* of its id in the entry */
} SpelchShelfFilter;

typedef struct
{
  SpelchListKind list;
  const char *title; /* marked with N_(), as are the other words */
  const char *fresh_name;
  const char *take;  /* what takes an entry for the part; NULL: nothing does */
  const char *empty; /* what to do while there is nothing */
  const SpelchField *fields;
  guint n_fields;
  gsize retired;                                       /* offset of the flag; 0: they don't retire */
  const char *const *orders;                           /* names of ways to sort, ended by NULL */
  double (*measure) (gconstpointer item, guint order); /* what order > 0 sorts by; 0 is by name where
                                                          there is one */
  SpelchShelfFilter filters[SPELCH_SHELF_FILTERS];
  guint n_filters;
  /* For what has no name of its own: what undo calls it, and the title of its row. NULL: its name. */
  char *(*known_as) (gconstpointer item);
  char *(*title_of) (gconstpointer item, SpelchShelves *shelves);
  /* Tells the form what there is to pick for an item; NULL: nothing is picked. */
  void (*furnish) (SpelchForm *form, SpelchShelves *shelves, gconstpointer item);
  void (*begin) (gpointer item,
                 SpelchShelves *shelves); /* fills in an entry that is added, but id and name */
  /* Brings other members in line with what was changed by hand since @before, so that one change doesn't
   * need another first. */
  void (*settle) (gconstpointer before, gpointer after);
  /* The decisive sizes. */
  char *(*line) (gconstpointer item, SpelchShelves *shelves, const SpelchNumbers *numbers);
  double (*span_mm) (gconstpointer item); /* the longest one of the list gives the scale; NULL: none */
  /* Without pictures all of these are NULL. */
  int (*row_height) (gconstpointer item, double scale);
  void (*draw_row) (cairo_t *cr, gconstpointer item, double width, double height, double scale,
                    const SpelchPalette *palette);
  void (*draw_large) (cairo_t *cr, gconstpointer item, double width, double height,
                      const SpelchPalette *palette);
  /* Something further under the form, or over it, or NULL. An editor has the signals of a form. */
  GtkWidget *(*more_new) (SpelchShelves *shelves);
  bool more_first;
  void (*more_show) (GtkWidget *more, gconstpointer item, const SpelchNumbers *numbers);
} SpelchShelfKind;

extern const SpelchShelfKind SPELCH_SHELF_BITS, SPELCH_SHELF_BOARDS, SPELCH_SHELF_MACHINES, SPELCH_SHELF_LOG;

/* Static. */
const SpelchShelfKind *spelch_shelf_kind (SpelchListKind list);

/* Bits, boards and machines begin with their id and then their name. */
const char *spelch_shelf_item_name (gconstpointer item);

/* Gives an item its id and, where it has one, its name. */
void spelch_shelf_item_call (const SpelchShelfKind *kind, gpointer item, const char *id, const char *name);

/* What undo calls it, and the title of its row. Free with g_free(). */
char *spelch_shelf_item_known_as (const SpelchShelfKind *kind, gconstpointer item);
char *spelch_shelf_item_title (const SpelchShelfKind *kind, gconstpointer item, SpelchShelves *shelves);

bool spelch_shelf_item_is_retired (const SpelchShelfKind *kind, gconstpointer item);

#define SPELCH_SHELF_PICTURE_WIDTH 150 /* of a row */
