/* SPDX-License-Identifier: GPL-3.0-or-later
 *
 * Correction: what the shop log has taught: about a bit in a board, and about how hard a board cuts. They are
 * members of the part, so that the same file gives the same plan anywhere.
 */
#pragma once

#include "shop/bit.h"

#define SPELCH_WINDOW_MOST_MM 1.0 /* by which a turn-over may count as nearer */
#define SPELCH_FACTOR_LEAST   0.2 /* further from the tables a reading isn't believed */
#define SPELCH_FACTOR_MOST    5.0

/* About the edges of one side of the board. */
typedef struct
{
  int points;        /* added to the shear points: -1, 0 or 1 */
  guint points_cuts; /* the cuts it stands on */
  double window_mm;  /* how much nearer to the face the turn-over counts than it is marked; 0 to 1 */
  guint window_cuts;
} SpelchLearnt;

/* About a bit in a board. A plain value; copy it with =. */
typedef struct
{
  char board[SPELCH_ID_SIZE], bit[SPELCH_ID_SIZE];
  char last[SPELCH_DATE_SIZE]; /* the day of the last cut it stands on */
  bool off;
  SpelchLearnt motor, far; /* the motor side, the far side */
} SpelchCorrection;

/* How hard a board cuts, by readings of the spindle's load. A plain value; copy it with =. */
typedef struct
{
  char board[SPELCH_ID_SIZE]; /* "": there is none */
  bool off;
  double factor; /* on the forces of the tables */
  guint readings;
} SpelchCalibration;

/* Whether the correction counts for @bit: it is for that bit, isn't switched off, and the bit hasn't been
 * sharpened or replaced since, or on the day of, the last cut it stands on. */
bool spelch_correction_holds (const SpelchCorrection *correction, const SpelchBit *bit);

/* What is wrong with one of them, as a sentence naming the member, or NULL. Free with g_free(). */
char *spelch_correction_fault (const SpelchCorrection *correction);
char *spelch_calibration_fault (const SpelchCalibration *calibration);
