/* SPDX-License-Identifier: GPL-3.0-or-later
 *
 * Constants: every number of the model that isn't geometry, read from data/model.json, where each stands with
 * its source and class of evidence. Nothing in the program repeats a value from there.
 */
#pragma once

#include "shop/board.h"
#include "shop/codes.h"

#include <glib.h>

#define SPELCH_MODEL_VERSION "1.0"

typedef enum
{
  SPELCH_EVIDENCE_MEASURED, /* published measurement on the same material */
  SPELCH_EVIDENCE_MEMORY,   /* the same, but the work is recalled, not read */
  SPELCH_EVIDENCE_ANALOGY,  /* published measurement on another material */
  SPELCH_EVIDENCE_GEOMETRY, /* follows from shape alone */
  SPELCH_EVIDENCE_PRACTICE, /* shop practice, no source */
} SpelchEvidence;
extern const SpelchCodes SPELCH_EVIDENCE_CODES; /* measured, memory, analogy, geometry, practice */

/* What adds points to an edge's grade, or takes them off. */
typedef enum
{
  SPELCH_TERM_SHEAR,
  SPELCH_TERM_BACKING,
  SPELCH_TERM_SCORED,
  SPELCH_TERM_GRAIN,
  SPELCH_TERM_EXIT_CORNER,
  SPELCH_TERM_CHIP,
  SPELCH_TERM_WEAR,
  SPELCH_TERM_LOG, /* what the shop log adds to the shear */
  SPELCH_N_TERMS,
} SpelchTermKind;
extern const SpelchCodes SPELCH_TERM_CODES; /* shear, backing, scored, grain, exit-corner, chip, wear, log */

/* What a face is of: how well a term is founded depends on it. */
typedef enum
{
  SPELCH_STOCK_PLYWOOD, /* and veneer on whatever board */
  SPELCH_STOCK_FIGURED, /* and end grain */
  SPELCH_STOCK_STRAIGHT,
  SPELCH_STOCK_LAMINATE,
  SPELCH_STOCK_BOARD, /* MDF, particleboard without a skin */
  SPELCH_N_STOCKS,
} SpelchStock;
extern const SpelchCodes SPELCH_STOCK_CODES; /* plywood, figured, straight, laminate, board */

/* What a term stands on. */
typedef struct
{
  SpelchEvidence evidence;
  const char *source; /* never freed */
} SpelchFounding;

/* X (member, id in data/model.json) */
#define SPELCH_CONSTANTS(X)                                                                                  \
  X (blunting_new, "blunting-new")                                                                           \
  X (blunting_sharp, "blunting-sharp")                                                                       \
  X (blunting_worn, "blunting-worn")                                                                         \
  X (blunting_dull, "blunting-dull")                                                                         \
  X (wear_points_one, "wear-points-one") /* blunting above which a grade point is lost */                    \
  X (wear_points_two, "wear-points-two")                                                                     \
  X (chip_points_one, "chip-points-one") /* largest chip, mm */                                              \
  X (chip_points_two, "chip-points-two")                                                                     \
  X (grain_bad_from, "grain-bad-from") /* degrees */                                                         \
  X (grain_bad_to, "grain-bad-to")                                                                           \
  X (backing_points, "backing-points")                                                                       \
  X (scored_points, "scored-points")                                                                         \
  X (exit_corner_points, "exit-corner-points")                                                               \
  X (log_results, "log-results") /* that agree before the shop log corrects */                               \
  X (log_points, "log-points")                                                                               \
  X (log_window_most, "log-window-most") /* mm */                                                            \
  X (friction, "friction-wood-steel")                                                                        \
  X (rake_default, "rake-default") /* degrees */                                                             \
  X (rake_slope, "rake-slope")     /* per degree */                                                          \
  X (edge_radial_share, "edge-radial-share")                                                                 \
  X (lift_down_share, "lift-down-share")                                                                     \
  X (band_panel, "band-panel")                                                                               \
  X (band_solid, "band-solid")                                                                               \
  X (band_axial, "band-axial") /* factor */                                                                  \
  X (band_slow, "band-slow")                                                                                 \
  X (slow_cutting, "slow-cutting") /* m/s */                                                                 \
  X (design_panel, "design-panel")                                                                           \
  X (design_solid, "design-solid")                                                                           \
  X (density_band, "density-band")                                                                           \
  X (density_softwood, "density-softwood")                                                                   \
  X (density_hardwood, "density-hardwood")                                                                   \
  X (density_hardwood_as_softwood, "density-hardwood-as-softwood")                                           \
  X (chip_cap, "chip-cap") /* of D */                                                                        \
  X (efficiency_spindle, "efficiency-spindle")                                                               \
  X (efficiency_router, "efficiency-router")                                                                 \
  X (fluted_diameter, "fluted-diameter") /* of D */                                                          \
  X (modulus_carbide, "modulus-carbide") /* MPa */                                                           \
  X (modulus_steel, "modulus-steel")                                                                         \
  X (stress_carbide, "stress-carbide") /* MPa allowed */                                                     \
  X (stress_hss, "stress-hss")                                                                               \
  X (stress_steel, "stress-steel")                                                                           \
  X (deflection_grade_1, "deflection-grade-1") /* mm */                                                      \
  X (deflection_grade_2, "deflection-grade-2")                                                               \
  X (deflection_grade_3, "deflection-grade-3")                                                               \
  X (slender_below, "slender-below") /* mm of diameter */                                                    \
  X (slender_step, "slender-step")   /* of D */                                                              \
  X (flute_share_1, "flute-share-1")                                                                         \
  X (flute_share_2, "flute-share-2")                                                                         \
  X (flute_share_3, "flute-share-3")                                                                         \
  X (bulking_wood, "bulking-wood")                                                                           \
  X (bulking_board, "bulking-board")                                                                         \
  X (clearing_up, "clearing-up")                                                                             \
  X (clearing_straight, "clearing-straight")                                                                 \
  X (clearing_down, "clearing-down")                                                                         \
  X (heat_caution, "heat-caution") /* mJ/mm2 */                                                              \
  X (heat_burns, "heat-burns")                                                                               \
  X (ramp_default, "ramp-default") /* degrees */                                                             \
  X (ramp_down_cut, "ramp-down-cut")                                                                         \
  X (arris_depth, "arris-depth") /* mm of an unfaced board that decide how its arris comes out */            \
  X (finishing_allowance, "finishing-allowance") /* mm on each wall */                                       \
  X (skin_left, "skin-left")                     /* mm */                                                    \
  X (bit_change, "bit-change")                   /* s */                                                     \
  X (cuts_through, "cuts-through")               /* least overcut, mm */                                     \
  X (backer_spare, "backer-spare")               /* mm */                                                    \
  X (clearance_base, "clearance-base")           /* mm between collet and base or insert */                  \
  X (tolerance_depth, "tolerance-depth")                                                                     \
  X (tolerance_up_shear, "tolerance-up-shear")                                                               \
  X (tolerance_measured, "tolerance-measured")                                                               \
  X (collet_least, "collet-least")         /* mm of shank in the collet */                                   \
  X (collet_diameters, "collet-diameters") /* shank diameters in the collet */                               \
  X (hand_force_trim, "hand-force-trim")   /* N */                                                           \
  X (hand_force_router, "hand-force-router")                                                                 \
  X (trim_router_mass, "trim-router-mass") /* kg, up to which a hand-held router counts as a trim router */  \
  X (hand_feed_max, "hand-feed-max")       /* mm/min */                                                      \
  X (table_feed_max, "table-feed-max")                                                                       \
  X (hand_feed_mark, "hand-feed-mark") /* mm of diameter from which MAN marking is needed */                 \
  X (small_length, "small-length")     /* mm of a piece, under which hands stay off it */                    \
  X (small_width, "small-width")                                                                             \
  X (hand_step, "hand-step")                           /* of D */                                            \
  X (track_overlap, "track-overlap")                   /* of D */                                            \
  X (bush_spare, "bush-spare")                         /* mm, of a guide bush over the bit */                \
  X (peck_depth, "peck-depth")                         /* of D */                                            \
  X (stage_depth, "stage-depth")                       /* of D */                                            \
  X (plunge_share, "plunge-share")                     /* plunge feed as a share of the feed */              \
  X (hold_friction_raw, "hold-friction-raw")           /* raw wood on board */                               \
  X (hold_friction_laminate, "hold-friction-laminate") /* laminate face down */                              \
  X (hold_friction_rubber, "hold-friction-rubber")     /* on a rubber mat */                                 \
  X (hold_friction_low, "hold-friction-low")           /* share of it to count on at worst */                \
  X (hold_factor, "hold-factor")                       /* least nominal factor */                            \
  X (vacuum_default, "vacuum-default")                 /* kPa */                                             \
  X (vacuum_leak, "vacuum-leak")             /* share that reaches the work through a spoilboard */          \
  X (tab_shear_plywood, "tab-shear-plywood") /* MPa, sideways */                                             \
  X (tab_shear_board, "tab-shear-board")                                                                     \
  X (tab_lift_wood, "tab-lift-wood") /* MPa, upward */                                                       \
  X (tab_lift_board, "tab-lift-board")                                                                       \
  X (tab_scatter_solid, "tab-scatter-solid")                                                                 \
  X (tab_scatter_panel, "tab-scatter-panel")                                                                 \
  X (tab_quantile, "tab-quantile")     /* standard deviations under the mean */                              \
  X (shear_hardwood, "shear-hardwood") /* MPa times specific gravity to a power */                           \
  X (shear_hardwood_power, "shear-hardwood-power")                                                           \
  X (shear_softwood, "shear-softwood")                                                                       \
  X (shear_softwood_power, "shear-softwood-power")                                                           \
  X (life_softwood, "life-softwood") /* m of edge path, uncoated carbide */                                  \
  X (life_hardwood, "life-hardwood")                                                                         \
  X (life_birch_ply, "life-birch-ply")                                                                       \
  X (life_softwood_ply, "life-softwood-ply")                                                                 \
  X (life_particleboard, "life-particleboard")                                                               \
  X (life_mdf, "life-mdf")                                                                                   \
  X (life_laminate, "life-laminate")                                                                         \
  X (life_hss, "life-hss")               /* of carbide's */                                                  \
  X (life_coated, "life-coated")         /* of uncoated carbide's */                                         \
  X (life_gone_sharp, "life-gone-sharp") /* share gone once new has become sharp in use */                   \
  X (speed_spare, "speed-spare")         /* share of the best feed given up for a slower spindle */

/* Edge and cutting force constants of a material group. */
typedef struct
{
  double a; /* N/mm, edge part, sharp */
  double b; /* MPa, cutting part */
} SpelchForcePair;

typedef struct
{
  SpelchForcePair along, across, slot; /* panels have three equal rows */
} SpelchMaterialForce;

/* Shear points of a face material: press-in, neutral, pull-out. */
typedef struct
{
  int press_in, neutral, pull_out;
} SpelchShearPoints;

typedef enum
{
  SPELCH_FACING_PLY,      /* plywood, veneer, figured wood, end grain */
  SPELCH_FACING_STRAIGHT, /* straight-grained solid wood */
  SPELCH_FACING_LAMINATE,
  SPELCH_FACING_BOARD, /* MDF, particleboard without a skin */
  SPELCH_N_FACINGS,
} SpelchFacing;

/* What a species weighs and bears, at 12 % moisture. */
typedef struct
{
  char id[SPELCH_ID_SIZE];
  double density_kg_m3;
  double shear_mpa; /* along the grain, mean; 0: no figure */
} SpelchDensity;

typedef struct
{
#define X(member, id) double member;
  SPELCH_CONSTANTS (X)
#undef X
  SpelchMaterialForce force[SPELCH_MATERIAL_LAMINATE + 1];
  SpelchShearPoints shear[SPELCH_N_FACINGS];
  SpelchFounding founding[SPELCH_N_TERMS][SPELCH_N_STOCKS];
  guint n_densities;
  const SpelchDensity *densities; /* of the species table, kept by whoever read it */
} SpelchConstants;
