/* SPDX-License-Identifier: GPL-3.0-or-later
 *
 * Part: a piece to be made: its board, its machine, its bits and its cuts. A part is counted by reference and
 * never changed once shared: an edit makes a copy, changes the copy and shares that, so undo is a list of
 * earlier parts.
 */
#pragma once

#include "shop/bit.h"
#include "shop/board.h"
#include "shop/correction.h"
#include "shop/cut.h"
#include "shop/machine.h"

/* How the work is kept down. */
typedef enum
{
  SPELCH_HOLD_UNTOLD,
  SPELCH_HOLD_VACUUM,
  SPELCH_HOLD_CLAMPS,
  SPELCH_HOLD_SCREWS,
  SPELCH_HOLD_HANDS, /* pushed past a fence, or the router guided by hand over clamped work */
} SpelchHold;
extern const SpelchCodes SPELCH_HOLD_CODES; /* untold, vacuum, clamps, screws, hands */

typedef struct
{
  SpelchHold method;
  double area_mm2;      /* touching the bed; 0: not told */
  double vacuum_kpa;    /* 0: the model's default */
  double clamp_force_n; /* all clamps together */
  bool on_rubber;       /* lies on a rubber mat */
} SpelchHolding;

typedef struct
{
  double depth_mm;    /* setting a depth, plus or minus */
  double up_shear_mm; /* up-shear length as marked, plus or minus */
} SpelchTolerances;

typedef struct
{
  gatomicrefcount ref_count;
  char id[SPELCH_ID_SIZE];
  char name[SPELCH_NAME_SIZE];
  char note[512];
  SpelchLength length, width; /* of the piece */
  SpelchBoard board;
  SpelchMachine machine;
  guint n_bits;
  SpelchBit *bits; /* the part's own copies */
  guint n_cuts;
  SpelchCut *cuts;
  int accepted_seen;   /* worst grade accepted on a seen edge, 1 to 5 */
  int accepted_hidden; /* and on a hidden one */
  SpelchTolerances tolerances;
  SpelchHolding holding;
  guint n_corrections; /* what the shop log taught, of each board and bit once */
  SpelchCorrection *corrections;
  SpelchCalibration calibration; /* of the forces; for the board it names */
  GHashTable *unknown; /* path -> JSON text of members this program doesn't know; shared between copies, may
                          be NULL */
  int file_version;    /* format_version it was read from */
  bool read_only;      /* came from a newer major format */
} SpelchPart;

/* A part with no bits and no cuts, defaults elsewhere. */
SpelchPart *spelch_part_new (void);

/* A deep copy with a reference count of one, free to be changed until it is shared. */
SpelchPart *spelch_part_copy (const SpelchPart *part);

SpelchPart *spelch_part_ref (SpelchPart *part);
void spelch_part_unref (SpelchPart *part);
G_DEFINE_AUTOPTR_CLEANUP_FUNC (SpelchPart, spelch_part_unref)

/* Index of the cut or bit with that id, or -1. */
int spelch_part_find_cut (const SpelchPart *part, const char *id);
int spelch_part_find_bit (const SpelchPart *part, const char *id);

/* Whether the piece is cut out of its sheet after @cut, outlines being cut after all else: then waste still
 * lies beyond its edges. */
bool spelch_part_outline_follows (const SpelchPart *part, const SpelchCut *cut);

/* Adds a copy of @bit, or replaces the bit that has its id. Only on a part not yet shared. */
void spelch_part_put_bit (SpelchPart *part, const SpelchBit *bit);

/* Adds a copy of @cut at the end. Only on a part not yet shared. */
void spelch_part_add_cut (SpelchPart *part, const SpelchCut *cut);

/* Index of the correction about a bit in a board, or -1. */
int spelch_part_find_correction (const SpelchPart *part, const char *board, const char *bit);

/* The correction that counts for @bit in the part's board, or NULL. */
const SpelchCorrection *spelch_part_correction (const SpelchPart *part, const SpelchBit *bit);

/* The calibration that counts for the part's board, or NULL. */
const SpelchCalibration *spelch_part_calibration (const SpelchPart *part);

/* Adds a copy of @correction, or replaces the one about its board and bit; takes one away. Only on a part not
 * yet shared. */
void spelch_part_put_correction (SpelchPart *part, const SpelchCorrection *correction);
void spelch_part_drop_correction (SpelchPart *part, guint i);

/* What is wrong with the part, as a sentence naming the member ("cuts[2] 'shelf-dado': ..."), or NULL.
 * g_free() it. */
char *spelch_part_fault (const SpelchPart *part);
