/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "bench/whys.h"
#include "files/shop-data.h"
#include "plan/cautions.h"
#include "plan/words-log.h"
#include "plan/words-why.h"

#include <glib/gi18n-lib.h>

/* ---- Chains ---- */

static void
add_all (SpelchWhyRow *row, char **sentences)
{
  for (guint i = 0; sentences[i] != NULL; i++)
    if (sentences[i][0] != '\0')
      spelch_why_row_add (row, sentences[i]);
}

/* What is told of, from where, and to which row. */
typedef struct
{
  SpelchSession *session;
  SpelchShelf *log;
  SpelchWhyRow *row;
} Telling;

static void
tell_chain (SpelchWhyKind kind, const Telling *to, bool headed)
{
  SpelchSession *session = to->session;
  SpelchPart *part = spelch_session_get_part (session);
  const SpelchConstants *constants = spelch_session_get_constants (session);
  SpelchWhyCase of = { constants,
                       spelch_shop_constant_source,
                       part,
                       spelch_session_get_cut (session),
                       spelch_session_get_bit (session),
                       spelch_session_get_plan (session),
                       NULL,
                       spelch_shelf_get_nth (to->log, 0),
                       spelch_shelf_count (to->log) };
  /* Looked for where it is told, and not in the frames of a drag: it plans some tens of times. */
  SpelchConflict conflict = { 0 };
  if (kind == SPELCH_WHY_FEED && !spelch_session_in_gesture (session))
    conflict = spelch_conflict_find (constants, part, of.cut, of.bit, of.plan);
  if (conflict.found)
    of.conflict = &conflict;
  g_auto (GStrv) chain = spelch_words_why (kind, &of, spelch_session_get_numbers (session));
  if (headed)
    spelch_why_row_add_heading (to->row, spelch_words_why_title (kind));
  add_all (to->row, chain);
}

/* Each kind once, with its heading. */
static void
tell_once (SpelchWhyKind kind, const Telling *to, bool told[SPELCH_N_WHYS])
{
  if (kind >= SPELCH_N_WHYS || told[kind])
    return;
  told[kind] = true;
  tell_chain (kind, to, true);
}

/* What the log says of an edge that it doesn't correct yet; what it corrects is among the edge's own reasons.
 * Nothing where the part was told not to go by it. */
static void
tell_waiting (SpelchSide side, const Telling *to)
{
  const SpelchPart *part = spelch_session_get_part (to->session);
  const SpelchBit *bit = spelch_session_get_bit (to->session);
  const SpelchConstants *constants = spelch_session_get_constants (to->session);
  const SpelchLogEntry *entries = spelch_shelf_get_nth (to->log, 0);
  guint n = spelch_shelf_count (to->log);
  bool motor = side == SPELCH_SIDE_MOTOR;
  SpelchCorrection learnt;
  spelch_corrections_learn (constants, part->board.id, bit, entries, n, &learnt);
  const SpelchLearnt *here = motor ? &learnt.motor : &learnt.far;
  if (here->points_cuts > 0 || here->window_cuts > 0)
    return;
  SpelchTally tally = spelch_corrections_tally (part->board.id, bit, motor, entries, n);
  g_autofree char *words = spelch_words_log_waiting (&tally, (guint)constants->log_results, motor,
                                                     spelch_session_get_numbers (to->session));
  if (*words != '\0')
    spelch_why_row_add (to->row, words);
}

static void
tell_edge (SpelchSide side, const Telling *to)
{
  g_auto (GStrv) why = spelch_words_edge_why (spelch_session_get_plan (to->session), side,
                                              spelch_session_get_numbers (to->session));
  add_all (to->row, why);
  tell_waiting (side, to);
}

/* ---- What must not be done ---- */

/* The chain that a stop comes from; SPELCH_N_WHYS: its sentence says all. */
static SpelchWhyKind
why_stopped (SpelchStopKind kind)
{
  switch ((int)kind)
    {
    case SPELCH_STOP_SPEED_MARK:
      return SPELCH_WHY_SPINDLE;
    case SPELCH_STOP_NO_SPEED:
      return SPELCH_WHY_FEED;
    case SPELCH_STOP_STRESS:
      return SPELCH_WHY_BENDING;
    case SPELCH_STOP_TOO_SHORT:
    case SPELCH_STOP_OVERCUT:
    case SPELCH_STOP_NOT_THROUGH:
      return SPELCH_WHY_PASSES;
    case SPELCH_STOP_PLUNGE:
    case SPELCH_STOP_RAMP:
    case SPELCH_STOP_HELIX:
    case SPELCH_STOP_ENTRY:
      return SPELCH_WHY_ENTRY;
    case SPELCH_STOP_HANDS:
    case SPELCH_STOP_PUSHED_OFF:
    case SPELCH_STOP_HOLDING:
    case SPELCH_STOP_SMALL:
      return SPELCH_WHY_SEAT;
    case SPELCH_STOP_TABS:
      return SPELCH_WHY_TABS;
    case SPELCH_STOP_HEAT:
      return SPELCH_WHY_HEAT;
    default:
      return SPELCH_N_WHYS;
    }
}

static void
tell_stops (const Telling *to)
{
  const SpelchPlan *plan = spelch_session_get_plan (to->session);
  bool told[SPELCH_N_WHYS] = { false };
  for (guint i = 0; i < plan->n_stops; i++)
    tell_once (why_stopped (plan->stops[i].kind), to, told);
}

static bool
explains_stops (const SpelchPlan *plan)
{
  for (guint i = 0; i < plan->n_stops; i++)
    if (why_stopped (plan->stops[i].kind) < SPELCH_N_WHYS)
      return true;
  return false;
}

/* ---- What wasn't told ---- */

/* The chain that a question has a part in; SPELCH_N_WHYS: none. */
static SpelchWhyKind
why_asked (SpelchStopKind kind)
{
  switch ((int)kind)
    {
    case SPELCH_ASK_HOLDING:
    case SPELCH_ASK_HOLD_FORCE:
    case SPELCH_ASK_SIZE:
    case SPELCH_ASK_TABS:
    case SPELCH_ASK_SMALL:
      return SPELCH_WHY_SEAT;
    case SPELCH_ASK_STOPS:
    case SPELCH_ASK_END:
      return SPELCH_WHY_ENTRY;
    default:
      return SPELCH_N_WHYS;
    }
}

static void
tell_asks (const Telling *to)
{
  SpelchSession *session = to->session;
  SpelchWhyRow *row = to->row;
  const SpelchPlan *plan = spelch_session_get_plan (session);
  bool told[SPELCH_N_WHYS] = { false };
  for (guint i = 0; i < plan->n_stops; i++)
    {
      const SpelchStop *stop = &plan->stops[i];
      g_autofree char *why = spelch_words_asked_why (plan, stop, spelch_session_get_numbers (session));
      if (why[0] != '\0')
        spelch_why_row_add (row, why);
      if (stop->kind == SPELCH_ASK_SPOILBOARD)
        tell_edge (SPELCH_SIDE_FAR, to);
      tell_once (why_asked (stop->kind), to, told);
    }
}

/* ---- The other rows ---- */

/* The chain behind a limit. Those that have a row of their own are told here only where they set the feed. */
static SpelchWhyKind
why_limited (const SpelchLimit *limit)
{
  switch (limit->kind)
    {
    case SPELCH_LIMIT_BENDING:
    case SPELCH_LIMIT_STRESS:
      return SPELCH_WHY_BENDING;
    case SPELCH_LIMIT_POWER:
      return SPELCH_WHY_POWER;
    case SPELCH_LIMIT_ROOM:
      return SPELCH_WHY_ROOM;
    case SPELCH_LIMIT_HEAT:
      return SPELCH_WHY_HEAT;
    case SPELCH_LIMIT_CHIP:
    case SPELCH_LIMIT_EDGE:
    case SPELCH_LIMIT_MACHINE:
    case SPELCH_LIMIT_HANDS:
    case SPELCH_LIMIT_HOLDING:
    case SPELCH_N_LIMITS:
    default:
      return limit->binding ? SPELCH_WHY_FEED : SPELCH_N_WHYS;
    }
}

/* The most used first. */
static void
tell_limits (const Telling *to)
{
  const SpelchPlan *plan = spelch_session_get_plan (to->session);
  bool told[SPELCH_N_WHYS] = { false };
  for (guint i = 0; i < plan->n_limits; i++)
    tell_once (why_limited (&plan->limits[i]), to, told);
}

static void
tell_setting_out (const Telling *to)
{
  SpelchSession *session = to->session;
  SpelchWhyRow *row = to->row;
  const SpelchPlan *plan = spelch_session_get_plan (session);
  const SpelchNumbers *numbers = spelch_session_get_numbers (session);
  g_autofree char *pass_plan = spelch_words_pass_plan (plan, numbers);
  g_auto (GStrv) steps = spelch_words_setting_out (plan, spelch_session_get_part (session),
                                                   spelch_session_get_cut (session), numbers);
  if (pass_plan[0] != '\0')
    spelch_why_row_add (row, pass_plan);
  add_all (row, steps);
}

static void
tell_seat (const Telling *to)
{
  SpelchSession *session = to->session;
  SpelchWhyRow *row = to->row;
  const SpelchPlan *plan = spelch_session_get_plan (session);
  g_autofree char *calibration = spelch_words_calibration (plan, spelch_session_get_numbers (session));
  tell_chain (SPELCH_WHY_SEAT, to, false);
  if (calibration[0] != '\0')
    spelch_why_row_add (row, calibration);
  if (plan->tabs.count > 0)
    tell_chain (SPELCH_WHY_TABS, to, true);
}

static void
tell_cautions (const Telling *to)
{
  SpelchSession *session = to->session;
  SpelchWhyRow *row = to->row;
  SpelchPart *part = spelch_session_get_part (session);
  g_auto (GStrv) here
      = spelch_caution_plan (spelch_session_get_constants (session), part, spelch_session_get_plan (session));
  g_auto (GStrv) general = spelch_caution_all (part);
  add_all (row, here);
  add_all (row, general);
}

static SpelchWhyKind
why_of (SpelchAbout about)
{
  switch ((int)about)
    {
    case SPELCH_ABOUT_SPINDLE:
      return SPELCH_WHY_SPINDLE;
    case SPELCH_ABOUT_CHIP:
      return SPELCH_WHY_CHIP;
    case SPELCH_ABOUT_ENTRY:
      return SPELCH_WHY_ENTRY;
    case SPELCH_ABOUT_PASSES:
      return SPELCH_WHY_PASSES;
    case SPELCH_ABOUT_TIME:
      return SPELCH_WHY_TIME;
    case SPELCH_ABOUT_SEAT:
      return SPELCH_WHY_SEAT;
    case SPELCH_ABOUT_WEAR:
      return SPELCH_WHY_WEAR;
    default:
      return SPELCH_WHY_FEED;
    }
}

static void
tell_about (SpelchAbout about, const Telling *to)
{
  switch ((int)about)
    {
    case SPELCH_ABOUT_STOPS:
      tell_stops (to);
      break;
    case SPELCH_ABOUT_ASKS:
      tell_asks (to);
      break;
    case SPELCH_ABOUT_MOTOR_EDGE:
      tell_edge (SPELCH_SIDE_MOTOR, to);
      break;
    case SPELCH_ABOUT_FAR_EDGE:
      tell_edge (SPELCH_SIDE_FAR, to);
      break;
    case SPELCH_ABOUT_SETTING_OUT:
      tell_setting_out (to);
      break;
    case SPELCH_ABOUT_LIMITS:
      tell_limits (to);
      break;
    case SPELCH_ABOUT_SEAT:
      tell_seat (to);
      break;
    case SPELCH_ABOUT_CAUTIONS:
      tell_cautions (to);
      break;
    default:
      tell_chain (why_of (about), to, false);
    }
}

void
spelch_whys_tell (SpelchAbout about, SpelchSession *session, SpelchShelf *log, SpelchWhyRow *row)
{
  const Telling to = { session, log, row };
  spelch_why_row_begin (row);
  tell_about (about, &to);
  spelch_why_row_end (row);
}

bool
spelch_whys_has (SpelchAbout about, SpelchSession *session)
{
  const SpelchPlan *plan = spelch_session_get_plan (session);
  if (plan == NULL)
    return false;
  if (about == SPELCH_ABOUT_STOPS)
    return explains_stops (plan);
  if (about == SPELCH_ABOUT_MOTOR_EDGE || about == SPELCH_ABOUT_FAR_EDGE)
    return spelch_plan_worst (plan, about == SPELCH_ABOUT_FAR_EDGE ? SPELCH_SIDE_FAR : SPELCH_SIDE_MOTOR)
           != NULL;
  return true;
}

char *
spelch_whys_title (SpelchAbout about, SpelchSession *session)
{
  bool far = about == SPELCH_ABOUT_FAR_EDGE;
  if (about == SPELCH_ABOUT_MOTOR_EDGE || far)
    {
      g_autofree char *face
          = spelch_words_face (spelch_session_get_plan (session), spelch_session_get_cut (session),
                               far ? SPELCH_SIDE_FAR : SPELCH_SIDE_MOTOR);
      return g_strdup_printf (_ ("Why: %s"), face);
    }
  switch ((int)about)
    {
    case SPELCH_ABOUT_STOPS:
      return g_strdup (_ ("Why it must not be cut"));
    case SPELCH_ABOUT_ASKS:
      return g_strdup (_ ("What hangs on what wasn't told"));
    case SPELCH_ABOUT_SETTING_OUT:
      return g_strdup (_ ("How the cut is set out"));
    case SPELCH_ABOUT_LIMITS:
      return g_strdup (_ ("Why: What holds the feed back"));
    case SPELCH_ABOUT_CAUTIONS:
      return g_strdup (_ ("All cautions"));
    default:
      return g_strdup_printf (_ ("Why: %s"), spelch_words_why_title (why_of (about)));
    }
}
