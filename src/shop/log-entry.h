/* SPDX-License-Identifier: GPL-3.0-or-later
 *
 * Log entry: what came out at one edge of a cut, beside what was foretold; a line of the shop log. What is
 * foretold is kept as the model says it without the log's own corrections, so that entries can be compared
 * whenever they were written.
 */
#pragma once

#include "shop/cut.h"

#define SPELCH_NOTE_SIZE 512

/* What was cut. */
typedef enum
{
  SPELCH_PIECE_FINISHED,
  SPELCH_PIECE_TEST_STRIP, /* of the same board, cut to see how it comes out */
} SpelchPiece;
extern const SpelchCodes SPELCH_PIECE_CODES; /* finished, test-strip */

/* A plain value; copy it with =. */
typedef struct
{
  char id[SPELCH_ID_SIZE]; /* unique in the log */
  char date[SPELCH_DATE_SIZE];
  char board[SPELCH_ID_SIZE], bit[SPELCH_ID_SIZE];
  char machine[SPELCH_ID_SIZE]; /* "" when not told */
  SpelchCutKind kind;
  SpelchPiece piece;
  SpelchFace face;   /* the edge that was looked at */
  SpelchFace way_up; /* the face toward the motor */

  /* what it was cut with */
  guint n_passes; /* all of them; 0: not told */
  SpelchLength passes[SPELCH_MAX_PASSES];
  SpelchLength overcut;          /* of the last one beyond the far face; below 0: short of it */
  double speed_rpm, feed_mm_min; /* 0: not told */

  /* what was foretold, without the log's corrections */
  int predicted;    /* grade, 1 to 5 */
  bool clear_known; /* a compression bit, and the grade took the face for pressed in */
  double clear_mm;  /* how far the face layer was from where the shear turns over */
  double power_w;   /* middle of the band; 0: not told */
  char model_version[SPELCH_VERSION_SIZE];
  char revision[SPELCH_ID_SIZE]; /* of the part's file; free text */

  /* what came out */
  bool as_predicted;
  int grade; /* 1 to 5; 0 when as predicted */
  bool burnt, chattered, clogged, moved;
  char note[SPELCH_NOTE_SIZE];
  double load_w, load_percent; /* what the cut took of the spindle: one of them, or 0; per cent of @rated_w */
  double rated_w;
} SpelchLogEntry;

/* Whether the edge lay on the motor side. */
bool spelch_log_entry_at_motor (const SpelchLogEntry *entry);

/* The grade that came out, 1 to 5. */
int spelch_log_entry_grade (const SpelchLogEntry *entry);

/* What the cut took of the spindle, W; 0 when it wasn't read. */
double spelch_log_entry_load (const SpelchLogEntry *entry);

/* What is wrong with the entry as told, as a sentence naming the member, or NULL. Free with g_free(). */
char *spelch_log_entry_fault (const SpelchLogEntry *entry);
