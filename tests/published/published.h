/* SPDX-License-Identifier: GPL-3.0-or-later
 *
 * Published: the program's numbers beside numbers from outside it. Each check names its source and how far
 * that source can be trusted; a test walks them all, and the same list is printed as a table for the
 * documentation.
 */
#pragma once

#include <glib.h>

/* Where the outside value comes from. */
typedef enum
{
  PUBLISHED_MEASURED, /* figures printed in the source named, read there or in a copy of it */
  PUBLISHED_MEMORY,   /* the work is named, but its words were recalled, not read */
  PUBLISHED_PRACTICE, /* common practice in the trade, no source */
  PUBLISHED_IDENTITY, /* follows from geometry or a definition; derived again in the test */
} PublishedClass;

/* One check: ours (x, y) must be within tolerance of value. */
typedef struct
{
  const char *what; /* with the unit of the value */
  const char *source;
  PublishedClass kind;
  double value, tolerance;
  double (*ours) (double x, double y); /* through the library's public functions */
  double x, y;
} PublishedCheck;

typedef struct
{
  const char *name; /* lower case, one word: part of the test's path */
  const PublishedCheck *checks;
  gsize n;
} PublishedGroup;

extern const PublishedGroup PUBLISHED_CHIPS;
extern const PublishedGroup PUBLISHED_FORCES;
extern const PublishedGroup PUBLISHED_BENDING;
extern const PublishedGroup PUBLISHED_INTEGRALS;
extern const PublishedGroup PUBLISHED_SPECIES;
extern const PublishedGroup PUBLISHED_BOARDS;
extern const PublishedGroup PUBLISHED_CONSTANTS;
extern const PublishedGroup PUBLISHED_CUTS;
extern const PublishedGroup PUBLISHED_UPKEEP;
extern const PublishedGroup PUBLISHED_CONTRAST;
