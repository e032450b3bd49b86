/* SPDX-License-Identifier: GPL-3.0-or-later
 *
 * Bit: a cylindrical router bit with a flat end, as it lies in the drawer.
 */
#pragma once

#include "shop/codes.h"
#include "shop/length.h"

#define SPELCH_ID_SIZE      64
#define SPELCH_NAME_SIZE    128
#define SPELCH_DATE_SIZE    11 /* a day as ISO 8601 writes it: 2026-05-31 */
#define SPELCH_VERSION_SIZE 16 /* a version of the model */

typedef enum
{
  SPELCH_BIT_STRAIGHT,
  SPELCH_BIT_UP_CUT,
  SPELCH_BIT_DOWN_CUT,
  SPELCH_BIT_COMPRESSION,
} SpelchBitKind;
#define SPELCH_N_BIT_KINDS (SPELCH_BIT_COMPRESSION + 1)
extern const SpelchCodes SPELCH_BIT_KIND_CODES; /* straight, up-cut, down-cut, compression */

typedef enum
{
  SPELCH_HAND_RIGHT, /* right-hand cut: turns clockwise seen from the motor */
  SPELCH_HAND_LEFT,
} SpelchHand;
extern const SpelchCodes SPELCH_HAND_CODES; /* right, left */

typedef enum
{
  SPELCH_TOOL_CARBIDE, /* tungsten carbide */
  SPELCH_TOOL_HSS,     /* high-speed steel */
  SPELCH_TOOL_STEEL,   /* plain steel; only as a body carrying brazed edges */
} SpelchToolMaterial;
extern const SpelchCodes SPELCH_TOOL_MATERIAL_CODES; /* carbide, hss, steel */

typedef enum
{
  SPELCH_BEARING_NONE,
  SPELCH_BEARING_SHANK,
  SPELCH_BEARING_TIP,
} SpelchBearing;
extern const SpelchCodes SPELCH_BEARING_CODES; /* none, shank, tip */

/* How the edge cuts today. */
typedef enum
{
  SPELCH_WEAR_NEW,
  SPELCH_WEAR_SHARP,
  SPELCH_WEAR_WORN,
  SPELCH_WEAR_DULL,
} SpelchWear;
extern const SpelchCodes SPELCH_WEAR_CODES; /* new, sharp, worn, dull */

/* What ended the life of an edge. */
typedef enum
{
  SPELCH_RENEWAL_SHARPENED,
  SPELCH_RENEWAL_REPLACED, /* by another bit of the same make */
} SpelchRenewalKind;
extern const SpelchCodes SPELCH_RENEWAL_CODES; /* sharpened, replaced */

typedef struct
{
  char date[SPELCH_DATE_SIZE];
  SpelchRenewalKind kind;
  double metres_cut; /* by the edge until then */
} SpelchRenewal;

#define SPELCH_MAX_RENEWALS 24

/* A plain value; copy it with =. */
typedef struct
{
  char id[SPELCH_ID_SIZE];     /* lower-case letters, digits, '.', hyphens */
  char name[SPELCH_NAME_SIZE]; /* any language */
  SpelchBitKind kind;
  SpelchLength diameter;       /* 1 to 60 mm */
  SpelchLength shank;          /* 1 to 30 mm */
  SpelchLength cutting_length; /* L_c, from the tip */
  SpelchLength overall_length;
  SpelchLength up_shear; /* L_u from the tip, compression only; 0 for the others */
  SpelchLength overlap;  /* w, height about L_u where both hands cut; 0 when not told */
  SpelchLength neck;     /* diameter between cutting length and shank; 0: the shank goes on at once */
  int edges;             /* cutting edges at a height (above the turn-over for a compression bit), 1 to 6 */
  int edges_up;          /* edges in the up-shear zone of a compression bit; 0: as @edges */
  double helix_deg;      /* from the axis, 0 to 60 */
  double rake_deg;       /* 0: not told, the model's default is used */
  SpelchHand hand;
  SpelchToolMaterial edge_material;
  SpelchToolMaterial body_material;
  bool coated;
  bool end_cutting;          /* may plunge */
  SpelchLength uncut_centre; /* diameter under the end that no edge reaches; 0 when end_cutting */
  SpelchLength end_hollow;   /* height of the hollow there */
  SpelchBearing bearing;
  double max_rpm;    /* highest speed marked on the tool; 0: unmarked */
  bool hand_feed;    /* marked for feeding by hand (MAN) */
  double price;      /* in whatever money the shop uses; 0: not told */
  double metres_cut; /* since new or sharpened */
  SpelchWear wear;
  char sharpened[SPELCH_DATE_SIZE]; /* the day it was last sharpened; "" when not told */
  SpelchLength sharpened_diameter;  /* after sharpening; 0: as marked */
  SpelchLength sharpened_up_shear;  /* after sharpening; 0: as marked */
  guint n_renewals;                 /* oldest first */
  SpelchRenewal renewals[SPELCH_MAX_RENEWALS];
  bool retired; /* kept for old parts and records, not offered any more */
} SpelchBit;

/* The diameter, and the up-shear length, the bit has today: as sharpened when that is known. mm */
double spelch_bit_diameter_now (const SpelchBit *bit);
double spelch_bit_up_shear_now (const SpelchBit *bit);

/* The day its edge was made new last, by sharpening or by replacing it; "" when not told. Owned by @bit. */
const char *spelch_bit_edge_since (const SpelchBit *bit);

/* The bit on that day with its edge made new: no metres cut, what the old edge cut in its renewals (the
 * oldest of which goes when there are too many), sharp or new. What was measured after an earlier sharpening
 * is forgotten. @date is a day. */
SpelchBit spelch_bit_renew (const SpelchBit *bit, SpelchRenewalKind kind, const char *date);

/* The bit with @metres more on its edge; fewer when below 0, but never less than none. */
SpelchBit spelch_bit_wear_on (const SpelchBit *bit, double metres);

/* What is wrong with the bit as described, as a sentence naming the member, or NULL. Free with g_free().
 * Checks ranges, and that an up-shear length stands only on a compression bit and inside its cutting length.
 */
char *spelch_bit_fault (const SpelchBit *bit);
