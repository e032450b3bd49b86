/* SPDX-License-Identifier: GPL-3.0-or-later
 *
 * Cut: one thing to be cut in a part, and what its maker has decided about it.
 */
#pragma once

#include "shop/board.h"
#include "shop/length.h"
#include "shop/machine.h"

#define SPELCH_MAX_PASSES 24

typedef enum
{
  SPELCH_CUT_OUTLINE, /* right through, all round */
  SPELCH_CUT_DADO,    /* dado or groove: two walls and a floor */
  SPELCH_CUT_RABBET,  /* one wall and a floor, at the edge */
  SPELCH_CUT_POCKET,
  SPELCH_CUT_MORTISE, /* blind or through */
  SPELCH_CUT_SLOT,    /* narrow, right through or blind, as wide as the bit or more */
  SPELCH_CUT_TRIM,    /* an edge made true, right through */
  SPELCH_CUT_HOLE,
} SpelchCutKind;
#define SPELCH_N_CUT_KINDS (SPELCH_CUT_HOLE + 1)
extern const SpelchCodes SPELCH_CUT_KIND_CODES; /* outline, dado, rabbet, pocket, mortise, slot, trim, hole */

/* What a kind of cut is, whatever its sizes. */
typedef struct
{
  bool through;         /* always right through the board */
  bool one_wall;        /* at the board's edge: what lies beyond the wall is waste */
  bool two_walls;       /* side by side, that a part may fit between */
  bool pit;             /* walls all round a floor, with inside corners */
  bool closed;          /* starts and ends within the board unless its maker says otherwise */
  bool every_direction; /* its path meets the grain at every angle */
} SpelchCutShape;

/* The shape of a kind; of what is no kind, none of these. */
SpelchCutShape spelch_cut_shape (SpelchCutKind kind);

/* The wall left or right of the travel, seen from the motor. */
typedef enum
{
  SPELCH_WALL_LEFT,
  SPELCH_WALL_RIGHT,
  SPELCH_WALL_BOTH,
} SpelchWall;
extern const SpelchCodes SPELCH_WALL_CODES; /* left, right, both */

typedef enum
{
  SPELCH_END_EDGE,   /* comes in or runs out over an edge, unbacked once the piece is cut out */
  SPELCH_END_INSIDE, /* starts or stops within the board */
  SPELCH_END_BACKED, /* runs out against a backing piece */
} SpelchEnd;
extern const SpelchCodes SPELCH_END_CODES; /* edge, inside, backed */

typedef enum
{
  SPELCH_ENTRY_PLUNGE,
  SPELCH_ENTRY_RAMP,
  SPELCH_ENTRY_HELIX,
  SPELCH_ENTRY_EDGE,    /* in from the board's edge at full pass depth */
  SPELCH_ENTRY_DRILLED, /* into a hole drilled before */
  SPELCH_ENTRY_STAGED,  /* hand-held plunge in short stages */
  SPELCH_ENTRY_LOWERED, /* router table: the work let down onto the turning bit against stop blocks */
} SpelchEntryKind;
extern const SpelchCodes SPELCH_ENTRY_KIND_CODES; /* plunge, ramp, helix, edge, drilled, staged, lowered */

typedef struct
{
  guint count; /* 0: none */
  SpelchLength width;
  SpelchLength thickness;
} SpelchTabs;

/* The part that goes into the cut, measured. The cut's width follows from it. */
typedef struct
{
  bool told;
  SpelchLength thickness;
  SpelchLength clearance; /* how much wider the cut is to be, both sides together; below 0 for a tight fit */
} SpelchMating;

/* Ways of dividing the depth of a cut. */
typedef enum
{
  SPELCH_PASS_PLAN_FULL,     /* the whole depth at once */
  SPELCH_PASS_PLAN_STEPPED,  /* one pass below the other */
  SPELCH_PASS_PLAN_SCORED,   /* a shallow pass with another bit first, then the rest */
  SPELCH_PASS_PLAN_FINISHED, /* leaving an allowance on the walls, which a last pass of full depth takes off
                              */
  SPELCH_PASS_PLAN_SKIN,     /* leaving a thin skin at the far face, which a last pass cuts */
} SpelchPassPlan;
extern const SpelchCodes SPELCH_PASS_PLAN_CODES; /* full, stepped, scored, finished, onion-skin */

/* What the maker set by hand. Everything else follows the recommendation. */
typedef struct
{
  bool passes_held; /* the passes are just these; with none, a single one */
  guint n_passes;   /* depths of the passes before the last one; some count as held too */
  SpelchLength passes[SPELCH_MAX_PASSES]; /* tip depth from the motor-side face, increasing */
  bool overcut_held;
  SpelchLength overcut; /* of the last pass of a through cut, beyond the far face */
  bool allowance_held;
  SpelchLength allowance; /* left on the walls for a finishing pass; 0: no finishing pass */
  bool plan_held;         /* the depth is divided in this way */
  SpelchPassPlan plan;
  SpelchLength score;             /* scored: depth of the scoring pass; 0: what severs the face layer */
  char score_bit[SPELCH_ID_SIZE]; /* scored: id of the part's bit that does it; "": none, so it isn't */
  SpelchLength skin;              /* onion skin: thickness left; 0: the model's default */
  double speed_rpm;               /* 0: not held */
  double feed_mm_min;             /* 0: not held */
  bool entry_held;
  SpelchEntryKind entry;
  bool entry_on_line; /* the entry runs along the finished line instead of in the waste */
  double entry_deg;   /* ramp or helix angle; 0: the model's default */
  bool entry_stops;   /* lowered: stop blocks at both ends of the way are set */
} SpelchHeld;

/* A plain value; copy it with =. */
typedef struct
{
  char id[SPELCH_ID_SIZE];
  char name[SPELCH_NAME_SIZE];
  SpelchCutKind kind;
  bool through;        /* an outline or trim is always through */
  SpelchFace way_up;   /* the face toward the motor; for a blind cut the face it lies in */
  SpelchLength depth;  /* blind cuts: floor below the face; ignored for through cuts */
  SpelchLength width;  /* between walls (dado, slot, pocket, mortise), of the step (rabbet), taken off (trim),
                          diameter (hole); 0 for an outline: one bit wide, and where @mating tells it */
  SpelchMating mating; /* of a dado, slot or mortise */
  SpelchLength from_edge; /* of a dado, slot or mortise: the board's edge that runs along it to its near wall;
                             0: not told */
  SpelchLength length;    /* of the path along the finished line, once */
  SpelchLength corner_radius; /* smallest inside corner; 0: none or any */
  bool seen_a, seen_b;        /* edge at that face will be seen */
  SpelchWall kept;            /* which walls stay */
  bool every_direction;       /* the path meets the grain at every angle (an outline or pocket always does) */
  double path_deg; /* otherwise: travel, counter-clockwise seen from face a, 0 along the board's length */
  SpelchEnd start, end;
  guint quantity; /* at least 1 */
  SpelchTabs tabs;
  SpelchLength backer;      /* thickness of a backing board under or behind the far face; 0: none */
  SpelchLength stick_out;   /* of the bit from the collet; 0: as short as the cut allows */
  char bit[SPELCH_ID_SIZE]; /* id of the accepted bit in the part; "" until one is accepted */
  SpelchHeld held;
} SpelchCut;

/* How far the walls of a pocket are apart along its other way: what its length, which is the way once round
 * it, leaves beside its width, with corners of its radius. Negative when that can't be. mm */
double spelch_cut_pocket_across (const SpelchCut *cut);

/* The shortest way once round a pocket of that width and those corners, mm. */
double spelch_cut_pocket_round (const SpelchCut *cut);

/* The same as told to people: the whole millimetre from which it is one, as people measure. */
double spelch_cut_pocket_least (const SpelchCut *cut);

/* Whether a pocket of that width and those corners can be as little round as its length says; to half a
 * millimetre, as people measure. True of any other kind. */
bool spelch_cut_goes_round (const SpelchCut *cut);

/* The face at the far side. */
SpelchFace spelch_face_other (SpelchFace face);

/* Whether the edge at @face will be seen. */
bool spelch_cut_sees (const SpelchCut *cut, SpelchFace face);

/* Whether the passes are held: some before the last one, or none on purpose. */
bool spelch_held_has_passes (const SpelchHeld *held);

/* The width between walls, mm: told, or of the part that goes in and its clearance; 0 for an outline that is
 * one bit wide. */
double spelch_cut_width (const SpelchCut *cut);

/* The way along the finished line, once, mm: its length, but once round a hole, whose diameter tells it. */
double spelch_cut_way (const SpelchCut *cut);

/* What spelch_cut_shape() says of its kind: a wall and the board's edge, as a rabbet; or two walls side by
 * side, that a part may fit between, as a dado. */
bool spelch_cut_has_one_wall (const SpelchCut *cut);
bool spelch_cut_has_two_walls (const SpelchCut *cut);

/* Whether its length is that of the way round a piece or an opening. */
bool spelch_cut_is_way_round (const SpelchCut *cut);

/* Whether the passes are divided in that way, or by an allowance held without one. */
bool spelch_held_plans (const SpelchHeld *held, SpelchPassPlan plan);

/* True where the kind has every direction, or the cut says so. */
bool spelch_cut_every_direction (const SpelchCut *cut);

/* What is wrong with the cut as described in @board, as a sentence naming the member, or NULL. Free with
 * g_free(). */
char *spelch_cut_fault (const SpelchCut *cut, const SpelchBoard *board);
