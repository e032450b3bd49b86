/* SPDX-License-Identifier: GPL-3.0-or-later
 *
 * Words: what a plan says to people, in complete translatable sentences with this case's numbers. All strings
 * returned are newly allocated unless said otherwise; free with g_free().
 */
#pragma once

#include "plan/plan.h"

/* How feeds are written. */
typedef enum
{
  SPELCH_FEED_AS_LENGTHS, /* mm/min beside millimetres, in/min beside inches */
  SPELCH_FEED_MM_MIN,
  SPELCH_FEED_M_MIN,
  SPELCH_FEED_IN_MIN,
  SPELCH_FEED_FT_MIN,
} SpelchFeedUnit;

/* How numbers are written. */
typedef struct
{
  SpelchUnit unit;
  SpelchInchStyle inch_style;
  char decimal_sign; /* '.' or ',' */
  SpelchFeedUnit feed_unit;
} SpelchNumbers;

/* A length in the chosen unit with its unit: "18.3 mm", "23/32 in"; to a tenth of a millimetre, or to half of
 * one where it is just that: a quarter of an inch is 6.35 mm. */
char *spelch_words_length (const SpelchNumbers *numbers, double mm);

/* The same to a hundredth, for what isn't set but is: "6.35 mm". */
char *spelch_words_exactly (const SpelchNumbers *numbers, double mm);

/* The same for a depth that must be reached, or must not be passed: rounded up, or down, to what is shown. */
char *spelch_words_at_least (const SpelchNumbers *numbers, double mm);
char *spelch_words_at_most (const SpelchNumbers *numbers, double mm);

/* Whether a depth between the two can be shown without rounding it out of them. */
bool spelch_words_fits (const SpelchNumbers *numbers, double from, double to);

/* A feed: "5 400 mm/min", "5.4 m/min", "213 in/min", "17.7 ft/min". */
char *spelch_words_feed (const SpelchNumbers *numbers, double mm_min);

/* A whole number with thin spaces between groups of three: "18 000". */
char *spelch_words_count (double value);

/* A force or power that is only estimated, to ones and from a hundred on to tens. */
char *spelch_words_rough (double value);

/* A plain number with @decimals decimals and the decimal sign of @numbers. */
char *spelch_words_decimal (const SpelchNumbers *numbers, double value, int decimals);

/* A share, 1 the whole, as a number of per cent; 9 900 at the most. */
int spelch_words_per_cent (double share);

/* How many times a force is held, "1.9", without a word: rounded down, to a tenth, or to a whole from ten on,
 * so that nothing seems to hold that doesn't. */
char *spelch_words_times (const SpelchNumbers *numbers, double factor);

/* A time: "1 min 52 s". */
char *spelch_words_time (double seconds);

/* "clean", "nearly clean", "fuzzy grain", "torn grain", "badly torn"; of laminate "nicked", "chipped", "badly
 * chipped"; of a board without grain "fuzzy", "very fuzzy", "badly fuzzy". Not to be freed. */
const char *spelch_words_grade (int grade, SpelchFacing facing);

/* A class of evidence: "measured", "from memory", "by analogy", "geometry", "shop practice". Not to be freed.
 */
const char *spelch_words_evidence (SpelchEvidence evidence);

/* "Show face, motor side", "Hidden face, far side", "Show face 1, motor side". */
char *spelch_words_face (const SpelchPlan *plan, const SpelchCut *cut, SpelchSide side);

/* The same without its side: "Show face", "Show face 2". */
char *spelch_words_face_alone (const SpelchPlan *plan, const SpelchCut *cut, SpelchSide side);

/* One or two plain sentences beside the verdict of a face: the deciding reason, and what to do about it. */
char *spelch_words_edge_reason (const SpelchPlan *plan, SpelchSide side, const SpelchNumbers *numbers);

/* The whole chain of reasons of a face, most important first; each ends with its class of evidence and, where
 * there is one, the work it stands on. A NULL-terminated array; free with g_strfreev(). */
char **spelch_words_edge_why (const SpelchPlan *plan, SpelchSide side, const SpelchNumbers *numbers);

/* The same without what would open a window: what is, not what might be. */
char **spelch_words_edge_reckoning (const SpelchPlan *plan, SpelchSide side, const SpelchNumbers *numbers);

/* The whole chain for one arris, whichever wall it is on. */
char **spelch_words_arris_why (const SpelchPlan *plan, const SpelchEdge *edge, const SpelchNumbers *numbers);

/* What would open the window of a face; "" when it is open. */
char *spelch_words_opener (const SpelchPlan *plan, SpelchSide side, const SpelchNumbers *numbers);

/* The window in a sentence: where it begins, or why there is none and what opens it. */
char *spelch_words_window (const SpelchPlan *plan, SpelchSide side, const SpelchNumbers *numbers);

/* "Bit bending sets the feed, 93 % used;" and "next, room for chips, 71 %." */
char *spelch_words_limit (const SpelchPlan *plan);
char *spelch_words_limit_next (const SpelchPlan *plan);

/* A limit of @plan at the head of a sentence, "Bit bending", and within one, "the grade of the seen edge"; a
 * highest feed is the machine's or that of hands, and what gives way is the bit or, where it gives more, the
 * machine. Not to be freed. */
const char *spelch_words_limit_subject (SpelchLimitKind kind, const SpelchPlan *plan);
const char *spelch_words_limit_in_full (SpelchLimitKind kind, const SpelchPlan *plan);

/* Short name of a limit for its tick: "bending". Not to be freed. */
const char *spelch_words_limit_name (SpelchLimitKind kind, const SpelchPlan *plan);

/* "Lifts about 3 N (1 to 6)", and a sentence on what follows from it. */
char *spelch_words_seat (const SpelchPlan *plan);
char *spelch_words_seat_advice (const SpelchPlan *plan, const SpelchPart *part, const SpelchNumbers *numbers);

/* How well the work is held, in a few words: "23.7 times the bit's force, 9.0 at worst"; "" where it isn't
 * known. */
char *spelch_words_hold (const SpelchPlan *plan, const SpelchNumbers *numbers);

/* How long the edge lasts, in a few words: "about 460 m of such cuts", "dull"; "" where it isn't known. */
char *spelch_words_life (const SpelchPlan *plan, const SpelchNumbers *numbers);

/* "Four tabs hold 2.6 times the force against them at the least." and, where that isn't enough, what would
 * be; "" without tabs. */
char *spelch_words_tabs (const SpelchPlan *plan, const SpelchNumbers *numbers);

/* "Your log: 3 readings of the spindle's load put the forces in this board at 1.12 times the tables'; their
 * band stays as wide (shop practice)."; "" without a calibration. */
char *spelch_words_calibration (const SpelchPlan *plan, const SpelchNumbers *numbers);

/* "Dull after about 240 m of such cuts; one piece costs 0.31 in wear." Without a price only the
 * length; "" where nothing is known. */
char *spelch_words_upkeep (const SpelchPlan *plan, const SpelchNumbers *numbers);

/* "plunge, in the waste", "ramp at 3°, along the line". */
char *spelch_words_entry (const SpelchPlan *plan, const SpelchNumbers *numbers);

/* What the pass plan is for and what to mind, in one to three sentences: a scoring pass, an onion skin, a
 * finishing pass, what tabs leave; "" where the passes say all. */
char *spelch_words_pass_plan (const SpelchPlan *plan, const SpelchNumbers *numbers);

/* "9.2 mm, then 18.3 mm"; long lists: "4 passes to 18.3 mm". */
char *spelch_words_passes (const SpelchPlan *plan, const SpelchNumbers *numbers);

/* How the cut is set out on board and machine, a sentence for each thing to do or to know, in the order of
 * work. A NULL-terminated array; free with g_strfreev(). */
char **spelch_words_setting_out (const SpelchPlan *plan, const SpelchPart *part, const SpelchCut *cut,
                                 const SpelchNumbers *numbers);

/* A stop or an open question in a sentence. */
char *spelch_words_stop (const SpelchStop *stop, const SpelchNumbers *numbers);

/* What hangs on a question about the bit, with the plan's numbers; "" for the other questions, of which a
 * chain of reasons tells. Free with g_free(). */
char *spelch_words_asked_why (const SpelchPlan *plan, const SpelchStop *stop, const SpelchNumbers *numbers);

/* The board and machine: "Birch plywood 18 mm on the gantry, motor above, zero on the bed." */
char *spelch_words_setting (const SpelchPart *part, const SpelchNumbers *numbers);

/* One line about a cut: "through, 2 passes", "9 mm deep, 18 mm wide". */
char *spelch_words_cut (const SpelchCut *cut, const SpelchPlan *plan, const SpelchNumbers *numbers);

/* What to say under a bit in the drawer: "best", "tears show face", "too short", "too wide", "tip too
 * long"...; "" when nothing stands out. Not to be freed. */
const char *spelch_words_bit_caption (const SpelchPart *part, const SpelchCut *cut, const SpelchBit *bit,
                                      const SpelchPlan *plan);
