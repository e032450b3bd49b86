/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "plan/words.h"

#include <glib/gi18n-lib.h>
#include <math.h>
#include <string.h>

#define THIN_SPACE "\xe2\x80\xaf" /* narrow no-break space */

char *
spelch_words_length (const SpelchNumbers *numbers, double mm)
{
  bool half_a_tenth = fabs (remainder (mm, 0.1)) > 0.05 - 1e-6 && numbers->unit == SPELCH_UNIT_MM;
  return spelch_length_format (mm, numbers->unit, numbers->inch_style, half_a_tenth ? 2 : 1,
                               numbers->decimal_sign);
}

char *
spelch_words_exactly (const SpelchNumbers *numbers, double mm)
{
  SpelchLength length = spelch_length_mm (mm);
  return spelch_length_show (&length, numbers->unit, numbers->inch_style, numbers->decimal_sign);
}

/* What a shown length is rounded to: a tenth, or a 64th of an inch. */
static double
shown_step (const SpelchNumbers *numbers)
{
  return numbers->unit == SPELCH_UNIT_INCH ? SPELCH_MM_PER_INCH / 64 : 0.1;
}

char *
spelch_words_at_least (const SpelchNumbers *numbers, double mm)
{
  double step = shown_step (numbers);
  return spelch_words_length (numbers, ceil (mm / step - 1e-6) * step);
}

char *
spelch_words_at_most (const SpelchNumbers *numbers, double mm)
{
  double step = shown_step (numbers);
  return spelch_words_length (numbers, floor (mm / step + 1e-6) * step);
}

bool
spelch_words_fits (const SpelchNumbers *numbers, double from, double to)
{
  double step = shown_step (numbers);
  return ceil (from / step - 1e-6) <= floor (to / step + 1e-6);
}

char *
spelch_words_count (double value)
{
  g_autofree char *digits = g_strdup_printf ("%.0f", fabs (value));
  GString *grouped = g_string_new (value <= -0.5 ? "\xe2\x88\x92" : "");
  gsize n = strlen (digits);
  for (gsize i = 0; i < n; i++)
    {
      if (i > 0 && (n - i) % 3 == 0)
        g_string_append (grouped, THIN_SPACE);
      g_string_append_c (grouped, digits[i]);
    }
  return g_string_free (grouped, FALSE);
}

char *
spelch_words_decimal (const SpelchNumbers *numbers, double value, int decimals)
{
  char format[8], buffer[G_ASCII_DTOSTR_BUF_SIZE];
  g_snprintf (format, sizeof format, "%%.%df", decimals);
  g_ascii_formatd (buffer, sizeof buffer, format, value);
  return g_strdelimit (g_strdup (buffer), ".", numbers->decimal_sign);
}

int
spelch_words_per_cent (double share)
{
  return (int)round (fmin (share, 99) * 100);
}

#define EXACT_TIMES 10 /* beyond, the forces aren't known to a tenth of themselves */

char *
spelch_words_times (const SpelchNumbers *numbers, double factor)
{
  if (factor >= EXACT_TIMES)
    return spelch_words_count (floor (factor + 1e-6));
  return spelch_words_decimal (numbers, floor (factor * 10 + 1e-6) / 10, 1);
}

char *
spelch_words_rough (double value)
{
  double step = fabs (value) >= 100 ? 10 : 1;
  return spelch_words_count (round (value / step) * step);
}

char *
spelch_words_feed (const SpelchNumbers *numbers, double mm_min)
{
  SpelchFeedUnit as_lengths = numbers->unit == SPELCH_UNIT_INCH ? SPELCH_FEED_IN_MIN : SPELCH_FEED_MM_MIN;
  SpelchFeedUnit unit = numbers->feed_unit == SPELCH_FEED_AS_LENGTHS ? as_lengths : numbers->feed_unit;
  const double inches = mm_min / SPELCH_MM_PER_INCH;
  const bool coarse = unit == SPELCH_FEED_M_MIN || unit == SPELCH_FEED_FT_MIN;
  const double large = unit == SPELCH_FEED_M_MIN ? mm_min / 1000 : inches / 12;
  g_autofree char *count = coarse ? spelch_words_decimal (numbers, large, large < 1 ? 2 : 1)
                                  : spelch_words_count (unit == SPELCH_FEED_IN_MIN ? inches : mm_min);
  switch (unit)
    {
    case SPELCH_FEED_IN_MIN:
      return g_strdup_printf (_ ("%s in/min"), count);
    case SPELCH_FEED_FT_MIN:
      return g_strdup_printf (_ ("%s ft/min"), count);
    case SPELCH_FEED_M_MIN:
      return g_strdup_printf (_ ("%s m/min"), count);
    case SPELCH_FEED_AS_LENGTHS:
    case SPELCH_FEED_MM_MIN:
    default:
      return g_strdup_printf (_ ("%s mm/min"), count);
    }
}

char *
spelch_words_time (double seconds)
{
  int whole = (int)fmin (round (seconds), 1e8);
  if (whole < 60)
    return g_strdup_printf (_ ("%d s"), whole);
  if (whole < 3600 && whole % 60 == 0)
    return g_strdup_printf (_ ("%d min"), whole / 60);
  if (whole < 3600)
    return g_strdup_printf (_ ("%d min %d s"), whole / 60, whole % 60);
  return g_strdup_printf (_ ("%d h %d min"), whole / 3600, whole % 3600 / 60);
}

const char *
spelch_words_grade (int grade, SpelchFacing facing)
{
  bool laminate = facing == SPELCH_FACING_LAMINATE, board = facing == SPELCH_FACING_BOARD;
  switch (grade)
    {
    case 1:
      return _ ("clean");
    case 2:
      return _ ("nearly clean");
    case 3:
      return laminate ? _ ("nicked") : board ? _ ("fuzzy") : _ ("fuzzy grain");
    case 4:
      return laminate ? _ ("chipped") : board ? _ ("very fuzzy") : _ ("torn grain");
    case 5:
      return laminate ? _ ("badly chipped") : board ? _ ("badly fuzzy") : _ ("badly torn");
    default:
      return _ ("not cut here");
    }
}

const char *
spelch_words_evidence (SpelchEvidence evidence)
{
  switch (evidence)
    {
    case SPELCH_EVIDENCE_MEASURED:
      return _ ("measured");
    case SPELCH_EVIDENCE_MEMORY:
      return _ ("from memory");
    case SPELCH_EVIDENCE_ANALOGY:
      return _ ("by analogy");
    case SPELCH_EVIDENCE_GEOMETRY:
      return _ ("geometry");
    case SPELCH_EVIDENCE_PRACTICE:
    default:
      return _ ("shop practice");
    }
}

const char *
spelch_words_limit_name (SpelchLimitKind kind, const SpelchPlan *plan)
{
  switch (kind)
    {
    case SPELCH_LIMIT_CHIP:
      return _ ("chip");
    case SPELCH_LIMIT_EDGE:
      return _ ("edge");
    case SPELCH_LIMIT_BENDING:
      /* Translators: a limit, in a word or two: how far the machine gives way */
      return spelch_plan_machine_gives (plan) ? _ ("machine's flex") : _ ("bending");
    case SPELCH_LIMIT_STRESS:
      return _ ("strength");
    case SPELCH_LIMIT_POWER:
      return _ ("power");
    case SPELCH_LIMIT_MACHINE:
      /* Translators: a limit, in a word or two: how fast hands can feed evenly */
      return plan->machine == SPELCH_MACHINE_GANTRY ? _ ("machine") : _ ("hand feed");
    case SPELCH_LIMIT_HANDS:
      return _ ("hands");
    case SPELCH_LIMIT_HOLDING:
      return _ ("holding");
    case SPELCH_LIMIT_ROOM:
      return _ ("chip room");
    case SPELCH_LIMIT_HEAT:
      return _ ("heat");
    case SPELCH_N_LIMITS:
    default:
      return "";
    }
}

const char *
spelch_words_limit_subject (SpelchLimitKind kind, const SpelchPlan *plan)
{
  switch (kind)
    {
    case SPELCH_LIMIT_CHIP:
      return _ ("Chip thickness for this diameter");
    case SPELCH_LIMIT_EDGE:
      return _ ("The grade of the seen edge");
    case SPELCH_LIMIT_BENDING:
      return spelch_plan_machine_gives (plan) ? _ ("The machine's flex") : _ ("Bit bending");
    case SPELCH_LIMIT_STRESS:
      return _ ("Bit strength");
    case SPELCH_LIMIT_POWER:
      return _ ("Motor power");
    case SPELCH_LIMIT_MACHINE:
      return plan->machine == SPELCH_MACHINE_GANTRY ? _ ("The machine's highest feed")
                                                    : _ ("What hands can feed evenly");
    case SPELCH_LIMIT_HANDS:
      return _ ("What hands can hold");
    case SPELCH_LIMIT_HOLDING:
      return _ ("What keeps the work down");
    case SPELCH_LIMIT_ROOM:
      return _ ("Room for chips");
    case SPELCH_LIMIT_HEAT:
      return _ ("Wall heat");
    case SPELCH_N_LIMITS:
    default:
      return "";
    }
}

const char *
spelch_words_limit_in_full (SpelchLimitKind kind, const SpelchPlan *plan)
{
  switch (kind)
    {
    case SPELCH_LIMIT_CHIP:
      return _ ("the chip thickness for this diameter");
    case SPELCH_LIMIT_EDGE:
      return _ ("the grade of the seen edge");
    case SPELCH_LIMIT_BENDING:
      return spelch_plan_machine_gives (plan) ? _ ("the machine's flex") : _ ("the bending of the bit");
    case SPELCH_LIMIT_STRESS:
      return _ ("the strength of the bit");
    case SPELCH_LIMIT_POWER:
      return _ ("the spindle's power");
    case SPELCH_LIMIT_MACHINE:
      return plan->machine == SPELCH_MACHINE_GANTRY ? _ ("the machine's highest feed")
                                                    : _ ("what hands can feed evenly");
    case SPELCH_LIMIT_HANDS:
      return _ ("what hands can hold");
    case SPELCH_LIMIT_HOLDING:
      return _ ("the holding of the work");
    case SPELCH_LIMIT_ROOM:
      return _ ("the room for chips");
    case SPELCH_LIMIT_HEAT:
      return _ ("the heat of the wall");
    case SPELCH_N_LIMITS:
    default:
      return "";
    }
}

/* The limit that sets the feed; the one used most when the feed is held, or when none fits, and heat, which
 * asks for more feed, only where it is too much. */
static const SpelchLimit *
leading_limit (const SpelchPlan *plan)
{
  const SpelchLimit *most = NULL;
  for (guint i = 0; i < plan->n_limits; i++)
    {
      if (plan->limits[i].binding && plan->feed_mm_min > 0)
        return &plan->limits[i];
      if (most == NULL && (plan->limits[i].kind != SPELCH_LIMIT_HEAT || plan->limits[i].share > 1.005))
        most = &plan->limits[i];
    }
  return most;
}

char *
spelch_words_limit (const SpelchPlan *plan)
{
  const SpelchLimit *limit = leading_limit (plan);
  if (limit == NULL)
    return g_strdup (_ ("No speed and feed fit this cut."));
  int used = spelch_words_per_cent (limit->share);
  bool over = limit->share > 1.005;
  if (plan->feed_mm_min <= 0)
    return g_strdup_printf (_ ("%s is at %d %% even at the slowest feed: none fits;"),
                            spelch_words_limit_subject (limit->kind, plan), used);
  if (!limit->binding)
    return g_strdup_printf (over ? _ ("Feed held by hand. %s: %d %%, over its limit;")
                                 : _ ("Feed held by hand. %s: %d %% used;"),
                            spelch_words_limit_subject (limit->kind, plan), used);
  return g_strdup_printf (!over                       ? _ ("%s sets the feed, %d %% used;")
                          : plan->further_pass_mm > 0 ? _ ("%s is over its limit, %d %%: add a further pass;")
                                                      : _ ("%s is over its limit, %d %%: take less depth;"),
                          spelch_words_limit_subject (limit->kind, plan), used);
}

/* Short, where the name alone can't be taken for anything else. */
static const char *
next_name (const SpelchPlan *plan, SpelchLimitKind kind)
{
  bool bends = kind == SPELCH_LIMIT_BENDING && !spelch_plan_machine_gives (plan);
  bool alone = bends || kind == SPELCH_LIMIT_POWER || kind == SPELCH_LIMIT_HOLDING
               || kind == SPELCH_LIMIT_ROOM || kind == SPELCH_LIMIT_HEAT;
  return alone ? spelch_words_limit_name (kind, plan) : spelch_words_limit_in_full (kind, plan);
}

char *
spelch_words_limit_next (const SpelchPlan *plan)
{
  const SpelchLimit *leading = leading_limit (plan);
  for (guint i = 0; i < plan->n_limits; i++)
    {
      const SpelchLimit *next = &plan->limits[i];
      if (next == leading)
        continue;
      if (next->share >= EXACT_TIMES)
        return g_strdup_printf (_ ("next, %s, far over its limit."), next_name (plan, next->kind));
      return g_strdup_printf (_ ("next, %s, %d %%."), next_name (plan, next->kind),
                              spelch_words_per_cent (next->share));
    }
  return g_strdup ("");
}

char *
spelch_words_entry (const SpelchPlan *plan, const SpelchNumbers *numbers)
{
  g_autofree char *angle
      = spelch_words_decimal (numbers, plan->entry.angle_deg, plan->entry.angle_deg < 2 ? 1 : 0);
  bool on_line = plan->entry.on_line;
  switch (plan->entry.kind)
    {
    case SPELCH_ENTRY_PLUNGE:
      return g_strdup (on_line ? _ ("plunge") : _ ("plunge, in the waste"));
    case SPELCH_ENTRY_RAMP:
      return g_strdup_printf (on_line ? _ ("ramp at %s°, along the line") : _ ("ramp at %s°, in the waste"),
                              angle);
    case SPELCH_ENTRY_HELIX:
      return g_strdup_printf (on_line ? _ ("spiral in at %s°") : _ ("spiral in at %s°, in the waste"), angle);
    case SPELCH_ENTRY_EDGE:
      return g_strdup (plan->entry.uncut_edge ? _ ("from the board's edge, through the waste")
                                              : _ ("from the board's edge"));
    case SPELCH_ENTRY_DRILLED:
      return g_strdup (_ ("into a drilled hole"));
    case SPELCH_ENTRY_LOWERED:
      return g_strdup (_ ("let down onto the bit, between stop blocks"));
    case SPELCH_ENTRY_STAGED:
    default:
      return g_strdup (_ ("plunge in short stages"));
    }
}

static const char *
machine_word (SpelchMachineKind kind)
{
  switch (kind)
    {
    case SPELCH_MACHINE_GANTRY:
      return _ ("on the gantry");
    case SPELCH_MACHINE_TABLE:
      return _ ("on the router table");
    case SPELCH_MACHINE_HAND:
    default:
      return _ ("with the hand-held router");
    }
}

char *
spelch_words_setting (const SpelchPart *part, const SpelchNumbers *numbers)
{
  bool below = spelch_machine_motor_below (&part->machine);
  bool bed = spelch_machine_datum (&part->machine) == SPELCH_DATUM_BED;
  g_autofree char *thick = spelch_words_length (numbers, spelch_board_thickness (&part->board));
  return g_strdup_printf (_ ("%s, %s thick, %s, %s, %s."), part->board.name, thick,
                          machine_word (part->machine.kind), below ? _ ("motor below") : _ ("motor above"),
                          bed ? _ ("zero on the bed") : _ ("zero on the face"));
}

static char *
size_words (const SpelchCut *cut, const SpelchPlan *plan, const SpelchNumbers *numbers)
{
  g_autofree char *depth = spelch_words_length (numbers, cut->depth.mm);
  g_autofree char *width = spelch_words_length (numbers, spelch_cut_width (cut));
  if (cut->kind == SPELCH_CUT_HOLE)
    return cut->through ? g_strdup_printf (_ ("%s across, through"), width)
                        : g_strdup_printf (_ ("%s across, %s deep"), width, depth);
  if (cut->through && plan == NULL)
    return g_strdup (_ ("through"));
  if (cut->through)
    return g_strdup_printf (
        g_dngettext (GETTEXT_PACKAGE, "through, %u pass", "through, %u passes", plan->n_passes),
        plan->n_passes);
  return g_strdup_printf (_ ("%s deep, %s wide"), depth, width);
}

char *
spelch_words_cut (const SpelchCut *cut, const SpelchPlan *plan, const SpelchNumbers *numbers)
{
  g_autofree char *size = size_words (cut, plan, numbers);
  /* Translators: %s is the size of a cut that doesn't go through: "6.0 mm deep, 9.0 mm wide" */
  return !cut->through && cut->way_up == SPELCH_FACE_B ? g_strdup_printf (_ ("%s, in face b"), size)
                                                       : g_steal_pointer (&size);
}

char *
spelch_words_calibration (const SpelchPlan *plan, const SpelchNumbers *numbers)
{
  g_autofree char *factor = spelch_words_decimal (numbers, plan->force_factor, 2);
  if (plan->force_readings == 0)
    return g_strdup ("");
  return g_strdup_printf (
      g_dngettext (GETTEXT_PACKAGE,
                   "Your log: %u reading of the spindle's load puts the forces in this board at %s times the "
                   "tables'; their band stays as wide (shop practice).",
                   "Your log: %u readings of the spindle's load put the forces in this board at %s times the "
                   "tables'; their band stays as wide (shop practice).",
                   plan->force_readings),
      plan->force_readings, factor);
}
