/* SPDX-License-Identifier: GPL-3.0-or-later
 *
 * Plan: everything the model says about one cut of a part with one bit: the passes, the entry, the grade of
 * each edge, the clean windows, speed and feed, forces, limits. Window, command line, drawing and sheet all
 * read this one value; nothing else computes.
 *
 * Depths are mm from the motor-side face ("near"); heights mm above the tip.
 */
#pragma once

#include "mechanics/flute.h"
#include "mechanics/holding.h"
#include "plan/constants.h"
#include "plan/setting-out.h"
#include "shop/part.h"

/* ---- Edges ---- */

typedef enum
{
  SPELCH_SIDE_MOTOR,
  SPELCH_SIDE_FAR,
} SpelchSide;
extern const SpelchCodes SPELCH_SIDE_CODES; /* motor, far */

typedef enum
{
  SPELCH_LOAD_NOT_CUT, /* this face isn't opened by the cut */
  SPELCH_LOAD_PRESS_IN,
  SPELCH_LOAD_NEUTRAL,
  SPELCH_LOAD_PULL_OUT,
} SpelchLoad;
extern const SpelchCodes SPELCH_LOAD_CODES; /* not-cut, press-in, neutral, pull-out */

typedef struct
{
  SpelchTermKind kind;
  int points; /* may be negative (backing, scored, log) */
  SpelchFounding founding;
} SpelchTerm;

typedef struct
{
  SpelchFace face;
  SpelchSide side;
  SpelchWall wall; /* left or right */
  bool seen;
  bool stays;     /* this wall belongs to the piece that is kept */
  int grade;      /* 1 clean .. 5 badly torn; 0 when load is not-cut */
  int line_grade; /* the grade away from the entry; differs from @grade only when the entry spoils the edge */
  int model_grade;           /* the grade without what the shop log corrects */
  SpelchLoad load;           /* worst over the passes that load the face layer */
  int pass;                  /* the pass that governs, from 1; 0 when not cut */
  double span_from, span_to; /* heights above the tip that load the face layer in that pass, mm */
  double chip_mm;            /* largest chip of the pass that decides */
  double by_entry_mm;        /* length of edge spoilt by the entry; 0: none */
  bool scored;               /* its outer part was severed before, pressed in, by the scoring bit */
  bool on_finishing;         /* judged by the finishing pass: clean only if the earlier tear is less than the
                                allowance */
  guint n_terms;
  SpelchTerm terms[SPELCH_N_TERMS];
} SpelchEdge;

/* ---- Windows ---- */

typedef struct
{
  double from, to; /* mm; meaningful when !empty */
  bool empty;
} SpelchRange;

/* Ranges of depth that keep a face from being pulled out. */
typedef struct
{
  SpelchRange first_pass; /* tip depth of pass 1, for the motor-side face */
  SpelchRange last_tip;   /* tip depth of the last pass, for the far face; empty and n/a for blind cuts */
} SpelchWindow;

/* What would open an empty window. */
typedef enum
{
  SPELCH_OPENED_BY_NOTHING_NEEDED, /* a window is open */
  SPELCH_OPENED_BY_MEASURE,        /* measure the board */
  SPELCH_OPENED_BY_BED,            /* set zero on the bed */
  SPELCH_OPENED_BY_BACKER,         /* put a backer of opened_mm under it (compression bit, thin board) */
  SPELCH_OPENED_BY_OTHER_BIT,      /* no depth helps with this kind of bit; see needs_up_shear_to */
  SPELCH_OPENED_BY_LONGER_BIT,     /* cutting length or stick-out is too short */
  SPELCH_OPENED_BY_MEASURE_AND_BED,
  SPELCH_OPENED_BY_MEASURE_AND_BACKER,
} SpelchOpenedBy;
extern const SpelchCodes SPELCH_OPENED_BY_CODES; /* nothing-needed, measure, bed, backer, other-bit,
                                                    longer-bit, measure-and-bed, measure-and-backer */

typedef struct
{
  SpelchOpenedBy by;
  double backer_mm; /* its least thickness when that opens it, else 0 */
} SpelchOpener;

typedef struct
{
  SpelchWindow nominal;     /* everything exactly as described */
  SpelchWindow robust;      /* holds over all tolerances */
  bool far_applies;         /* false for blind cuts */
  bool at_odds;             /* each face has a robust window, but no one plan lies in both */
  SpelchOpenedBy opened_by; /* for the robust window, both faces */
  double opened_mm;         /* the backer's least thickness, mm */
  SpelchOpener near, far;   /* the same for one face alone */
  double needs_overcut_mm;  /* nominal overcut that a compression bit would need in this board */
  double needs_up_shear_from, needs_up_shear_to; /* up-shear lengths with which this board would have a robust
                                                    window for both faces, mm; to 0: none */
  double depth_uncertain_mm; /* plus or minus, of a tip depth measured from the near face */
  double over_uncertain_mm;  /* plus or minus, of the overcut */
} SpelchWindows;

/* ---- Passes, entry ---- */

typedef enum
{
  SPELCH_SENSE_CONVENTIONAL,
  SPELCH_SENSE_CLIMB,
  SPELCH_SENSE_SLOT, /* full width: one wall of each */
} SpelchSense;
extern const SpelchCodes SPELCH_SENSE_CODES; /* conventional, climb, slot */

typedef struct
{
  double from_mm;           /* tip depth of the pass before; 0 for the first */
  double tip_mm;            /* tip depth */
  double side_allowance_mm; /* left on the walls; a finishing pass: taken off them */
  int tracks;               /* side by side, to reach the width */
  bool finishing;           /* full depth, takes off the allowance */
  bool held;                /* its depth was set by hand */
  guint bit;                /* 0: the bit; 1: the scoring bit */
  double speed_rpm, feed_mm_min, plunge_feed_mm_min;
} SpelchPass;

typedef struct
{
  SpelchEntryKind kind;
  bool on_line;     /* along the finished line instead of in the waste */
  bool waste;       /* there is waste to go in through */
  bool uncut_edge;  /* from the edge: of a piece whose outline is cut last, so that waste still lies there */
  double angle_deg; /* ramp or helix */
  double length_mm; /* of the ramp to the first pass's depth, or of the helix unrolled; 0: plunge, edge */
  guint legs;       /* of a ramp: how often it goes along the way, there and back; else 0 */
  double circle_mm; /* of a helix: diameter of the axis' circle; 0: the opening leaves room for none */
  bool held;
} SpelchEntry;

/* The other bit of a plan that scores with it first. */
typedef struct
{
  char bit[SPELCH_ID_SIZE], name[SPELCH_NAME_SIZE]; /* bit "": there is none */
  SpelchBitKind kind;
  SpelchFlutes flutes;
  SpelchEntry entry;
  double stick_out_mm, in_collet_mm;
  double feed_per_tooth; /* mm */
  double time_s;         /* part of the plan's */
  double path_mm;        /* part of the plan's */
} SpelchScoring;

/* ---- Numbers ---- */

typedef struct
{
  double low, mid, high;
} SpelchBand;

typedef enum
{
  SPELCH_LIMIT_CHIP,    /* chip thickness against the bit's diameter */
  SPELCH_LIMIT_EDGE,    /* a thicker chip would cost a seen edge a grade */
  SPELCH_LIMIT_BENDING, /* deflection at the tip */
  SPELCH_LIMIT_STRESS,  /* stress in the bit */
  SPELCH_LIMIT_POWER,
  SPELCH_LIMIT_MACHINE, /* highest feed of the machine */
  SPELCH_LIMIT_HANDS,   /* what hands can hold against */
  SPELCH_LIMIT_HOLDING, /* what keeps the work down on a gantry */
  SPELCH_LIMIT_ROOM,    /* room for chips in the flutes */
  SPELCH_LIMIT_HEAT,    /* wall heat, from the slow side */
  SPELCH_N_LIMITS,
} SpelchLimitKind;
extern const SpelchCodes
    SPELCH_LIMIT_CODES; /* chip, edge, bending, stress, power, machine, hands, holding, room, heat */

typedef struct
{
  SpelchLimitKind kind;
  double share;       /* used, 1 = at the limit */
  double feed_mm_min; /* at which it is reached at this speed: the most it allows, of heat the least; 0 when
                         even a standing chip exceeds it, and where it allows any feed */
  bool binding;       /* sets the feed; none does when it is held */
} SpelchLimit;

/* What holds the spindle speed where it is. */
typedef enum
{
  SPELCH_SPEED_BY_HAND,    /* it was set by hand */
  SPELCH_SPEED_BY_MARK,    /* the next speed is above the highest one marked on the bit */
  SPELCH_SPEED_BY_MACHINE, /* the machine turns no faster */
  SPELCH_SPEED_BY_HEAT,    /* at the next one the chips would be so thin that the wall burns */
  SPELCH_SPEED_BY_GAIN,    /* faster ones gain next to no feed */
} SpelchSpeedBy;
extern const SpelchCodes SPELCH_SPEED_BY_CODES; /* hand, mark, machine, heat, gain */

typedef struct
{
  SpelchSpeedBy by;
  double next_rpm;   /* the machine's next speed, or dial step; 0: it turns no faster */
  double of_mark;    /* share of the speed marked on the bit; 0: none is marked */
  double of_machine; /* share of the machine's highest speed */
} SpelchSpeedHeld;

typedef enum
{
  SPELCH_PAIR_BOARD_BED,
  SPELCH_PAIR_BOARD_TABLE,
  SPELCH_PAIR_BASE_BOARD,
  SPELCH_PAIR_BOARD_BENCH,
} SpelchPair;
extern const SpelchCodes SPELCH_PAIR_CODES; /* board-bed, board-table, base-board, board-bench */

typedef struct
{
  SpelchPair pair;
  bool apart;           /* the mean force of the pass that parts them most does part them */
  double mean_n;        /* magnitude of that mean */
  double low_n, high_n; /* its band */
  double bound_n;       /* worst over a turn, in any pass, of the force that parts them; 0: never parts */
} SpelchSeat;

/* Reasons not to cut, and questions not answered. */
typedef enum
{
  SPELCH_STOP_SPEED_MARK,   /* speed above the tool's mark */
  SPELCH_STOP_HAND,         /* left-hand-cut bit on a clockwise spindle */
  SPELCH_STOP_STRESS,       /* bit stress over its limit */
  SPELCH_STOP_COLLET,       /* too little shank in the collet */
  SPELCH_STOP_COLLET_SIZE,  /* no collet of the machine takes this shank */
  SPELCH_STOP_TOO_WIDE,     /* bit wider than the cut, or than an inside corner allows */
  SPELCH_STOP_POCKET_ROUND, /* no pocket is as wide and as little round; mm round, the least */
  SPELCH_STOP_TOO_SHORT,    /* bit doesn't reach the depth */
  SPELCH_STOP_OVERCUT,      /* tip would cut deeper into bed, backer or bench than allowed */
  SPELCH_STOP_NOT_THROUGH,  /* the last pass doesn't cut through */
  SPELCH_STOP_PLUNGE, /* bit can't plunge and no other entry is set; value 1: because it is a down-cut */
  SPELCH_STOP_RAMP,   /* ramp or helix is steeper than the bit's end allows, degrees */
  SPELCH_STOP_HELIX,  /* no circle lets the bit spiral in here */
  SPELCH_STOP_ENTRY,  /* this machine can't make such an entry; value: kind of entry, limit: of machine */
  SPELCH_STOP_HAND_FEED_MARK, /* a bit this wide must be marked for hand feed */
  SPELCH_STOP_HANDS,          /* more sideways force than hands hold */
  SPELCH_STOP_NO_SPEED,       /* no speed and feed satisfy every limit; the speed set by hand, and the nearest
                                 that the spindle turns at; or 0 */
  SPELCH_STOP_CLIMB,          /* a climb cut fed by hand */
  SPELCH_STOP_FREEHAND,       /* all round on a router table, led by nothing; value 1: what comes free is the
                                 middle of an opening, not the piece */
  SPELCH_STOP_PUSHED_OFF,     /* pushed off a router table with nothing to hold it down, N */
  SPELCH_STOP_HOLDING,        /* vacuum or clamps don't keep the work at the factor asked */
  SPELCH_STOP_TABS,           /* the tabs are too weak, times the force; limit: how many of them would do */
  SPELCH_STOP_HEAT,           /* the wall burns at the feed that is held, mJ/mm2; limit: from where on */
  SPELCH_STOP_SMALL,          /* fed or held by bare hands, and too small for that: length and width of the
                                 piece, mm, 0 where it isn't told; also: kind of machine */
  SPELCH_ASK_SPEED_MARK,      /* no speed marked on the tool: ask the maker */
  SPELCH_ASK_HOLDING,         /* say how it is held */
  SPELCH_ASK_HOLD_FORCE,      /* held in a way whose force isn't known; N needed */
  SPELCH_ASK_OVERALL,         /* overall length unknown: can't tell the length in the collet */
  SPELCH_ASK_SPOILBOARD,      /* would a fresh one back the far face? */
  SPELCH_ASK_STOPS,           /* are stop blocks set, to let the work down onto the bit? */
  SPELCH_ASK_END,             /* end of the bit unknown: can't tell how steeply it ramps */
  SPELCH_ASK_SIZE,            /* size of the piece unknown: can't tell whether it tilts */
  SPELCH_ASK_TABS,            /* clamps hold the sheet: what keeps the piece once it is cut free? value 1: the
                                 middle of an opening */
  SPELCH_ASK_SMALL,           /* how is so small a piece held? As SPELCH_STOP_SMALL */
  SPELCH_ASK_LENGTH,          /* the cut is longer than the piece in its direction: both lengths, mm */
  SPELCH_N_STOPS,
} SpelchStopKind;
extern const SpelchCodes SPELCH_STOP_CODES;

typedef struct
{
  SpelchStopKind kind;
  double value, limit; /* the numbers of this case, unit by kind */
  double also;         /* of tabs, the width in mm that as many would need; of holding, the factor with
                          everything at its worst; of a pocket, its width; of what is pushed off a table, 1
                          when it isn't told that hands hold it; of a reach, the stick-out set by hand when
                          that alone is too short; else 0 */
  guint bit;           /* 0: the bit, or the cut; 1: the scoring bit */
} SpelchStop;

typedef enum
{
  SPELCH_VERDICT_NO_OBJECTION,
  SPELCH_VERDICT_NOT_CHECKED,
  SPELCH_VERDICT_DO_NOT_CUT,
} SpelchVerdict;
extern const SpelchCodes SPELCH_VERDICT_CODES; /* no_objection, not_checked, do_not_cut */

extern const SpelchCodes SPELCH_GIVES_CODES; /* sliding, lifting, tilting */

/* Tabs against what the passes that leave them ask of them, lift counted by how much weaker they are that
 * way. */
typedef struct
{
  guint count; /* 0: there are none, or no pass can be made */
  bool alone;  /* nothing else is known to keep the piece: no vacuum that does, no screws */
  double width_mm, thickness_mm;
  double holds_n;        /* sideways, of all together, at the least */
  double needed_n;       /* to hold at the nominal factor */
  double factor;         /* nominal; 0 without force */
  double factor_worst;   /* at the bad end of every band */
  guint needs_count;     /* tabs such as these that would do; never fewer than there are */
  double needs_width_mm; /* or how wide these would have to be */
} SpelchTabHold;

#define SPELCH_MAX_EDGES 4

typedef struct
{
  /* what was asked */
  SpelchFace near;              /* the face toward the motor */
  double thickness;             /* board, mm */
  double near_layer, far_layer; /* face layers, mm */
  SpelchFacing near_facing, far_facing;
  bool near_is_veneer, far_is_veneer;
  SpelchMachineKind machine;
  SpelchBitKind bit_kind;
  double through_depth; /* thickness for a through cut, the cut's depth for a blind one */
  bool through;
  SpelchFlutes flutes;
  double blunting;
  SpelchLearnt log_motor, log_far; /* what the shop log corrects on either side; all 0 when nothing */
  double force_factor;             /* on all forces, by the shop log; 1 without */
  guint force_readings;            /* the readings it stands on; 0: none */

  SpelchVerdict verdict;
  guint n_stops;
  SpelchStop stops[SPELCH_N_STOPS];

  guint n_passes;
  SpelchPass passes[SPELCH_MAX_PASSES];
  SpelchPassPlan pass_plan;
  bool severs_face; /* scored: down through the whole face layer, not its outer part alone */
  SpelchScoring scoring;
  double skin_mm;      /* onion skin: thickness left for the last pass; else 0 */
  double overcut;      /* last tip beyond the far face; 0 for blind cuts */
  double overcut_most; /* what the machine, backer or bench allows */
  double depth_most;   /* deepest tip the bit reaches in this cut */
  double step_most;    /* deepest single step allowed, mm */
  double step_by_hand; /* and that is planned where hands feed, mm; 0: a machine does, or passes are held */
  SpelchEntry entry;
  SpelchSense sense;

  guint n_edges;
  SpelchEdge edges[SPELCH_MAX_EDGES]; /* motor-side left, right, then far left, right */
  SpelchWindows windows;

  double engaged_mm; /* a_e, widest of the passes */
  double speed_rpm, feed_mm_min, plunge_feed_mm_min;
  SpelchSpeedHeld speed_held;
  double cool_feed_mm_min; /* least that keeps the wall at the caution of its heat, at this speed */
  double feed_per_tooth, chip_max, chip_mean;     /* mm */
  double cutting_speed;                           /* m/s */
  SpelchBand power_w;                             /* of the pass that needs most */
  double tangential_mean_n, axial_mean_n, ripple; /* of that pass; axial + toward the motor */
  SpelchBand axial_n;
  double last_axial_n;                  /* mean of the last pass, + toward the motor */
  double sideways_peak_n, lift_bound_n; /* most over all passes */
  bool slow; /* the edge moves slower than the force formulas were made for: the band of forces is wider */
  guint n_seats;
  SpelchSeat seats[2];
  double hold_needed_n;    /* press on the bed that keeps the work at the nominal factor; 0: hands hold it */
  double hold_available_n; /* what vacuum or clamps and the weight give; 0: not told */
  double hold_side_n, hold_lift_n; /* what the work is held against, most of the passes: a blunter edge and
                                      harder wood counted in; lift 0 when nothing lifts */
  double hold_vacuum_n;            /* pressure times area, before what leaks; 0: not held by vacuum */
  double hold_friction;            /* of the far face on what it lies on; 0: not on a gantry */
  double weight_n;                 /* of the piece; 0: its size or density isn't told */
  double hold_factor;              /* nominal; 0: not checked */
  double hold_factor_worst;        /* at the bad end of every band; 0: not checked */
  SpelchGives hold_way;            /* how the work would give first */
  SpelchTabHold tabs;
  double deflection_mm, deflection_limit_mm, stress_mpa, stress_share;
  double deflection_machine_mm; /* part of the deflection: the machine's giving way */
  double further_pass_mm;       /* tip depth of one more pass that would bring what passes set by hand ask too
                                   much of within every limit; 0: nothing is asked too much, or none would */
  double rubbing_share, wall_heat, chip_room;
  guint n_limits;
  SpelchLimit limits[SPELCH_N_LIMITS]; /* most used first */
  double path_mm;                      /* all passes and tracks */
  double time_s;                       /* cutting, entries included, of one piece */
  double edge_path_m;                  /* way of one edge through wood, one piece */
  bool life_known;                     /* false where nothing is fed */
  double life_m_left;                  /* metres of such a cut, passes and tracks counted, until dull */
  double wear_share;                   /* of an edge's whole life, used by one piece */
  double cost;                         /* of that wear, in the shop's money; 0: no price told */
  double stick_out_mm, in_collet_mm;   /* in_collet 0 when the overall length isn't known */
  SpelchSettingOut setting_out;
  double bit_height_mm; /* router table: tip above the table, last pass; else 0 */
} SpelchPlan;

/* Plans @cut of @part with @bit. Always fills the whole of @plan with finite numbers: a plan that can't be
 * cut says so in its stops. Held values are respected, the rest is recommended. The cut and bit need not be
 * the part's own. Pure: the same input gives the same plan. Takes well under half a millisecond. */
void spelch_plan_make (const SpelchConstants *constants, const SpelchPart *part, const SpelchCut *cut,
                       const SpelchBit *bit, SpelchPlan *plan);

/* The same with a shallow pass of @scorer first, as deep as is held or as severs the face layer, whether the
 * cut holds such a pass plan or not. Each bit has its own stage: entry, speed, feed, limits. What guards bit,
 * board and hands is the worse of both, time, wear's cost and edge path are sums, and speed, feed, limits,
 * entry, stick-out and chips are those of @bit. spelch_plan_make() comes to this when the cut holds a scored
 * plan and its part has the bit for it. */
void spelch_plan_make_two (const SpelchConstants *constants, const SpelchPart *part, const SpelchCut *cut,
                           const SpelchBit *bit, const SpelchBit *scorer, SpelchPlan *plan);

/* The same in @n_passes and no other number of them, whatever comes of it, without a scoring pass; false
 * where the depth can't be divided so. */
bool spelch_plan_make_in (const SpelchConstants *constants, const SpelchPart *part, const SpelchCut *cut,
                          const SpelchBit *bit, guint n_passes, SpelchPlan *plan);

/* The edges of @bit as the mechanics see them: today's diameter and up-shear, zones, hands. */
SpelchFlutes spelch_plan_flutes (const SpelchBit *bit);

/* What the face on that side is made of; and whether that is melamine or laminate. */
SpelchFacing spelch_plan_facing (const SpelchPlan *plan, SpelchSide side);
bool spelch_plan_is_laminate (const SpelchPlan *plan, SpelchSide side);

/* The edge that speaks for a side: the worst of the walls that stay. NULL when the face isn't cut. */
const SpelchEdge *spelch_plan_worst (const SpelchPlan *plan, SpelchSide side);

/* Whether a face comes out as @part accepts it; true when it isn't cut. */
bool spelch_plan_is_accepted (const SpelchPlan *plan, const SpelchPart *part, SpelchSide side);

/* Whether the clean depth holds over all tolerances: false when the edge is clean only with everything exact.
 */
bool spelch_plan_sure (const SpelchPlan *plan, SpelchSide side);

/* Whether the tip is pushed off its line by the machine's giving way more than by the bending of the bit. */
bool spelch_plan_machine_gives (const SpelchPlan *plan);

/* Points lost or won on an edge by a term, 0 when it has none. */
int spelch_edge_points (const SpelchEdge *edge, SpelchTermKind kind);

/* The limit of that kind, or the one that sets the feed; NULL where the plan has none. */
const SpelchLimit *spelch_plan_limit (const SpelchPlan *plan, SpelchLimitKind kind);
const SpelchLimit *spelch_plan_binding (const SpelchPlan *plan);

/* Whether a reason not to cut, or a question, is among the plan's. */
bool spelch_plan_has_stop (const SpelchPlan *plan, SpelchStopKind kind);

/* Metres that the plan's cut is made with its own bit, and with the one that scores first. */
double spelch_wear_metres (const SpelchPlan *plan);
double spelch_wear_metres_scoring (const SpelchPlan *plan);
