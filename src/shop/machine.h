/* SPDX-License-Identifier: GPL-3.0-or-later
 *
 * Machine: what turns and carries the bit, and what the board rests on.
 */
#pragma once

#include "shop/bit.h"
#include "shop/length.h"

#define SPELCH_MAX_STEPS 12

typedef enum
{
  SPELCH_MACHINE_GANTRY, /* motor above, board on a bed with a spoilboard */
  SPELCH_MACHINE_TABLE,  /* router table: motor below, near face on the table */
  SPELCH_MACHINE_HAND,   /* hand-held router: motor above, base on the near face */
} SpelchMachineKind;
extern const SpelchCodes SPELCH_MACHINE_KIND_CODES; /* gantry, table, hand-held */

typedef enum
{
  SPELCH_DATUM_FACE, /* depths are set from the motor-side face */
  SPELCH_DATUM_BED,  /* depths are set from what the board rests on */
} SpelchDatum;
extern const SpelchCodes SPELCH_DATUM_CODES; /* face, bed */

typedef enum
{
  SPELCH_SPOILBOARD_FRESH,
  SPELCH_SPOILBOARD_CUT_HERE_BEFORE,
  SPELCH_SPOILBOARD_UNTOLD, /* backs nothing, and is asked about where it would */
} SpelchSpoilboard;
extern const SpelchCodes SPELCH_SPOILBOARD_CODES; /* fresh, cut-here-before, untold */

/* A plain value; copy it with =. */
typedef struct
{
  char id[SPELCH_ID_SIZE];
  char name[SPELCH_NAME_SIZE];
  SpelchMachineKind kind;
  double rpm_min, rpm_max; /* continuous range; both set even when there are steps */
  guint n_steps;           /* dial steps; 0: continuous */
  double steps_rpm[SPELCH_MAX_STEPS];
  double power_w;         /* as rated */
  bool power_is_input;    /* rated in electrical input watts, as router motors are */
  double rated_rpm;       /* speed at which the rated power is reached; 0: rpm_max */
  double max_feed_mm_min; /* 0 for hand feed: the model's limits hold */
  guint n_collets;
  SpelchLength collets[SPELCH_MAX_STEPS];
  SpelchDatum datum;         /* a table or hand-held router is always `face` */
  double overcut_allowed_mm; /* how deep the spoilboard may be cut */
  SpelchSpoilboard spoilboard;
  double flatness_mm;          /* of bed or table, plus or minus */
  double stiffness_n_mm;       /* of the whole machine at the collet */
  SpelchLength base_thickness; /* router base or table insert the bit passes through; 0 on a gantry */
  SpelchLength base_radius;    /* hand-held: edge of base to spindle axis */
  guint n_bushes;
  SpelchLength bushes[SPELCH_MAX_STEPS]; /* hand-held: guide bushes at hand, outside diameters */
  double mass_kg;                        /* hand-held: what the hands carry */
  bool retired;                          /* kept for old parts and records, not offered any more */
} SpelchMachine;

/* True when the motor is under the board. */
bool spelch_machine_motor_below (const SpelchMachine *machine);

/* Where depths are set from: a table or hand-held router always sets them from the face. */
SpelchDatum spelch_machine_datum (const SpelchMachine *machine);

/* The @i-th speed to consider, rpm: the dial steps, or the range in steps of 1000 rpm with both ends; 0 past
 * the end. */
double spelch_machine_speed (const SpelchMachine *machine, guint i);

/* What is wrong with the machine as described, as a sentence naming the member, or NULL. Free with g_free().
 */
char *spelch_machine_fault (const SpelchMachine *machine);
