/* SPDX-License-Identifier: GPL-3.0-or-later
 *
 * Board: sheet or solid stock as a stack of layers, listed from face a to face b.
 */
#pragma once

#include "shop/bit.h"
#include "shop/length.h"

#define SPELCH_MAX_LAYERS 48

typedef enum
{
  SPELCH_FACE_A,
  SPELCH_FACE_B,
} SpelchFace;
extern const SpelchCodes SPELCH_FACE_CODES; /* a, b */

/* What a layer is made of, as far as cutting it goes. */
typedef enum
{
  SPELCH_MATERIAL_SOFTWOOD,
  SPELCH_MATERIAL_HARDWOOD,
  SPELCH_MATERIAL_BIRCH_PLY,    /* a veneer of birch plywood */
  SPELCH_MATERIAL_SOFTWOOD_PLY, /* a veneer of softwood or poplar plywood */
  SPELCH_MATERIAL_PARTICLEBOARD,
  SPELCH_MATERIAL_MDF,
  SPELCH_MATERIAL_LAMINATE, /* melamine film or high-pressure laminate */
} SpelchMaterial;
extern const SpelchCodes SPELCH_MATERIAL_CODES;

/* How the grain of a layer runs. */
typedef enum
{
  SPELCH_GRAIN_NONE, /* boards of fibres or particles, laminate */
  SPELCH_GRAIN_STRAIGHT,
  SPELCH_GRAIN_FIGURED, /* curly, interlocked, burr */
  SPELCH_GRAIN_END,     /* the face itself is end grain */
} SpelchGrain;
extern const SpelchCodes SPELCH_GRAIN_CODES; /* none, straight, figured, end */

typedef struct
{
  SpelchLength thickness; /* more than 0 */
  SpelchMaterial material;
  SpelchGrain grain;
  double grain_deg; /* fibre direction, counter-clockwise seen from face a, 0 along the board's length */
  bool veneer;      /* a peeled or sliced leaf glued to what is under it (plywood's plies included) */
} SpelchLayer;

/* A plain value; copy it with =. */
typedef struct
{
  char id[SPELCH_ID_SIZE];
  char name[SPELCH_NAME_SIZE];
  guint n_layers; /* 1 to SPELCH_MAX_LAYERS */
  SpelchLayer layers[SPELCH_MAX_LAYERS];
  SpelchLength nominal;         /* thickness it is sold as; the layers sum to it within 0.01 mm */
  double tolerance_plus_mm;     /* how much thicker it may be */
  double tolerance_minus_mm;    /* how much thinner, a positive number */
  SpelchLength measured;        /* 0: not measured */
  double measured_within_mm;    /* 0: the model's default */
  char species[SPELCH_ID_SIZE]; /* id in the species table for solid wood, or another wood by its name; ""
                                   when none */
  double density_kg_m3;         /* 0: the species' or the group's */
  bool retired;                 /* kept for old parts and records, not offered any more */
} SpelchBoard;

/* The outermost layer at @face. @board has one layer at least, and owns it. */
const SpelchLayer *spelch_board_face_layer (const SpelchBoard *board, SpelchFace face);

/* An angle that is told counter-clockwise seen from face a, as it is seen from @face. Degrees. */
double spelch_angle_seen_from (SpelchFace face, double degrees);

/* The angle of a line, which points either way: in (-90, 90]. Degrees. */
double spelch_angle_of_line (double degrees);

/* Thickness to reckon with: measured when told, else nominal. mm */
double spelch_board_thickness (const SpelchBoard *board);

/* The layers as they lie with @near toward the motor, scaled to spelch_board_thickness(): only the layers
 * between the two faces stretch, never the faces (a board of one or two layers stretches whole).
 * Index 0 is the motor-side face. The returned board keeps ids and names; its faces may be swapped, its
 * `measured` is unchanged and layer thicknesses are plain numbers. When the faces swap, grain angles are
 * mirrored so that they are counter-clockwise seen from the motor. */
SpelchBoard spelch_board_toward_motor (const SpelchBoard *board, SpelchFace near);

/* What is wrong with the board as described, as a sentence naming the member, or NULL. Free with g_free(). */
char *spelch_board_fault (const SpelchBoard *board);
