/* SPDX-License-Identifier: GPL-3.0-or-later
 *
 * What is given with a question.
 */
#include "plan/words-plain.h"
#include "plan/words-posed.h"

#include <glib/gi18n-lib.h>
#include <math.h>

static void
fact_clear (gpointer data)
{
  g_free (((SpelchFact *)data)->value);
}

static void
tell (GArray *facts, const char *label, char *value)
{
  SpelchFact fact = { label, value };
  g_array_append_val (facts, fact);
}

static const SpelchBit *
bit_of (const SpelchPart *part)
{
  int i = spelch_part_find_bit (part, part->cuts[0].bit);
  return i < 0 ? NULL : &part->bits[i];
}

static char *
now_words (const SpelchPosed *posed, SpelchChangeKind what, const SpelchNumbers *numbers)
{
  SpelchChange now = spelch_change_now (what, posed->part);
  return spelch_words_change_value (&now, posed->part, numbers);
}

static const char *
cut_word (SpelchCutKind kind)
{
  switch (kind)
    {
    case SPELCH_CUT_OUTLINE:
      return _ ("outline");
    case SPELCH_CUT_DADO:
      return _ ("dado or groove");
    case SPELCH_CUT_RABBET:
      return _ ("rabbet");
    case SPELCH_CUT_POCKET:
      return _ ("pocket");
    case SPELCH_CUT_MORTISE:
      return _ ("mortise");
    case SPELCH_CUT_SLOT:
      return _ ("slot");
    case SPELCH_CUT_TRIM:
      return _ ("edge trim");
    case SPELCH_CUT_HOLE:
    default:
      return _ ("hole");
    }
}

static void
tell_cut (GArray *facts, const SpelchPosed *posed, const SpelchNumbers *numbers)
{
  const SpelchCut *cut = &posed->part->cuts[0];
  g_autofree char *size = spelch_words_cut (cut, NULL, numbers);
  tell (facts, _ ("Board"), spelch_words_setting (posed->part, numbers));
  /* TRANSLATORS: a cut and its size: "dado or groove, 9.0 mm deep, 18.0 mm wide" */
  tell (facts, _ ("The cut"), g_strdup_printf (_ ("%s, %s"), cut_word (cut->kind), size));
}

static void
tell_bit (GArray *facts, const SpelchPosed *posed, const SpelchNumbers *numbers)
{
  const SpelchBit *bit = bit_of (posed->part);
  if (bit == NULL)
    return;
  tell (facts, _ ("Bit"), spelch_words_bit (bit, numbers));
  if (posed->exercise->asks == SPELCH_ASKS_LIMIT)
    {
      tell (facts, _ ("Number of cutting edges"), spelch_words_count (bit->edges));
      tell (facts, spelch_words_change_name (SPELCH_CHANGE_STICK_OUT),
            spelch_words_length (numbers, posed->plan.stick_out_mm));
    }
  if (bit->wear >= SPELCH_WEAR_WORN)
    tell (facts, _ ("Cutting edge"), now_words (posed, SPELCH_CHANGE_WEAR, numbers));
  if (bit->overlap.mm > 0)
    tell (facts, _ ("Both hands overlap over"), spelch_words_exactly (numbers, bit->overlap.mm));
}

static void
tell_faces (GArray *facts, const SpelchPosed *posed, const SpelchNumbers *numbers)
{
  if (posed->exercise->asks != SPELCH_ASKS_WAY_UP)
    tell (facts, _ ("Toward the motor"), now_words (posed, SPELCH_CHANGE_WAY_UP, numbers));
}

static bool
has_grain (const SpelchBoard *board)
{
  SpelchGrain grain = board->layers[0].grain;
  return grain == SPELCH_GRAIN_STRAIGHT || grain == SPELCH_GRAIN_FIGURED;
}

static bool
is_solid (const SpelchLayer *layer)
{
  return !layer->veneer
         && (layer->material == SPELCH_MATERIAL_SOFTWOOD || layer->material == SPELCH_MATERIAL_HARDWOOD);
}

static void
tell_grain (GArray *facts, const SpelchPosed *posed, const SpelchNumbers *numbers)
{
  const SpelchPart *part = posed->part;
  const SpelchCut *cut = &part->cuts[0];
  if (!has_grain (&part->board))
    return;
  tell (facts, _ ("Way of the cut"), now_words (posed, SPELCH_CHANGE_PATH, numbers));
  if (!spelch_cut_every_direction (cut) && is_solid (&part->board.layers[0]))
    tell (facts, _ ("Runs out"), now_words (posed, SPELCH_CHANGE_END, numbers));
}

static void
tell_below (GArray *facts, const SpelchPosed *posed, const SpelchNumbers *numbers)
{
  const SpelchCut *cut = &posed->part->cuts[0];
  const SpelchMachine *machine = &posed->part->machine;
  g_autofree char *backer = spelch_words_length (numbers, cut->backer.mm);
  bool groove = machine->kind == SPELCH_MACHINE_GANTRY && cut->backer.mm <= 0
                && machine->spoilboard == SPELCH_SPOILBOARD_CUT_HERE_BEFORE;
  if (!cut->through)
    return;
  tell (facts, machine->kind == SPELCH_MACHINE_TABLE ? _ ("Behind the board") : _ ("Under the board"),
        cut->backer.mm > 0                       ? g_strdup_printf (_ ("a backer board, %s thick"), backer)
        : machine->kind == SPELCH_MACHINE_GANTRY ? now_words (posed, SPELCH_CHANGE_SPOILBOARD, numbers)
                                                 : g_strdup (_ ("nothing")));
  if (groove && !posed->follow_up)
    tell (facts, _ ("The groove in it"), g_strdup (spelch_words_plain_groove ()));
}

static void
tell_passes (GArray *facts, const SpelchPosed *posed, const SpelchNumbers *numbers)
{
  const SpelchPlan *plan = &posed->plan;
  if (plan->n_passes > 0)
    tell (facts, _ ("Passes"), spelch_words_passes (plan, numbers));
  if (plan->entry.on_line && plan->bit_kind == SPELCH_BIT_COMPRESSION)
    tell (facts, _ ("Goes in"), spelch_words_entry (plan, numbers));
}

static void
tell_speed (GArray *facts, const SpelchPosed *posed, const SpelchNumbers *numbers)
{
  const SpelchPlan *plan = &posed->plan;
  SpelchChange speed = { .what = SPELCH_CHANGE_SPEED, .number = plan->speed_rpm };
  tell (facts, _ ("Spindle speed"), spelch_words_change_value (&speed, posed->part, numbers));
  if (posed->exercise->asks != SPELCH_ASKS_LIMIT)
    tell (facts, _ ("Feed"), spelch_words_feed (numbers, plan->feed_mm_min));
}

static char *
hold_words (const SpelchPosed *posed, const SpelchNumbers *numbers)
{
  const SpelchHolding *holding = &posed->part->holding;
  g_autofree char *area = now_words (posed, SPELCH_CHANGE_AREA, numbers);
  g_autofree char *kpa = spelch_words_count (holding->vacuum_kpa);
  g_autofree char *force = spelch_words_count (holding->clamp_force_n);
  g_autofree char *weight = spelch_words_plain_weight (holding->clamp_force_n, numbers);
  switch (holding->method)
    {
    case SPELCH_HOLD_VACUUM:
      return holding->vacuum_kpa > 0 ? g_strdup_printf (_ ("vacuum of %s kPa on %s"), kpa, area)
                                     : g_strdup_printf (_ ("vacuum on %s"), area);
    case SPELCH_HOLD_CLAMPS:
      return holding->clamp_force_n > 0
                 ? g_strdup_printf (_ ("clamps, %s N together: as much as a weight of %s"), force, weight)
                 : g_strdup (_ ("clamps"));
    case SPELCH_HOLD_SCREWS:
      return g_strdup (_ ("screws"));
    case SPELCH_HOLD_HANDS:
      return g_strdup (_ ("hands"));
    case SPELCH_HOLD_UNTOLD:
    default:
      return g_strdup (_ ("not told"));
    }
}

/* Kilopascals say nothing to a learner; what they press with does. */
static char *
held_by (const SpelchPosed *posed, const SpelchNumbers *numbers)
{
  double press = posed->plan.hold_available_n;
  char *held = hold_words (posed, numbers);
  if (posed->part->holding.method != SPELCH_HOLD_VACUUM || press <= 0)
    return held;
  g_autofree char *weight = spelch_words_plain_weight (press, numbers), *vacuum = held;
  /* TRANSLATORS: "vacuum of 60 kPa on 70 cm²: presses as much as a weight of about 20 kg" */
  return g_strdup_printf (_ ("%s: presses as much as a weight of about %s"), vacuum, weight);
}

static void
tell_holding (GArray *facts, const SpelchPosed *posed, const SpelchNumbers *numbers)
{
  const SpelchPart *part = posed->part;
  const SpelchTabs *tabs = &part->cuts[0].tabs;
  g_autofree char *length = spelch_words_length (numbers, part->length.mm);
  g_autofree char *width = spelch_words_length (numbers, part->width.mm);
  g_autofree char *wide = spelch_words_length (numbers, tabs->width.mm);
  g_autofree char *thick = spelch_words_length (numbers, tabs->thickness.mm);
  if (part->length.mm > 0 && part->width.mm > 0)
    tell (facts, _ ("Piece"), g_strdup_printf (_ ("%s by %s"), length, width));
  tell (facts, _ ("Held by"), held_by (posed, numbers));
  if (tabs->count > 0)
    /* TRANSLATORS: tabs: how many, how wide, how thick */
    tell (facts, _ ("Tabs"), g_strdup_printf (_ ("%u, each %s wide and %s thick"), tabs->count, wide, thick));
}

/* What the bit brings against what holds the work; on a router table, which way that goes is asked for. */
static void
tell_push (GArray *facts, const SpelchPosed *posed, const SpelchNumbers *numbers)
{
  const SpelchPlan *plan = &posed->plan;
  if (plan->machine != SPELCH_MACHINE_GANTRY || plan->hold_side_n < 1)
    return;
  g_autofree char *side = spelch_words_count (round (plan->hold_side_n));
  g_autofree char *weight = spelch_words_plain_weight (plan->hold_side_n, numbers);
  g_autofree char *lift = spelch_words_count (round (plan->hold_lift_n));
  g_autofree char *lifted = spelch_words_plain_weight (plan->hold_lift_n, numbers);
  /* TRANSLATORS: forces, and what weighs as much: "up to 180 N (18 kg) sideways, 60 N (6 kg) upward" */
  tell (facts, _ ("The bit pushes with"),
        plan->hold_lift_n >= 1
            ? g_strdup_printf (_ ("up to %s N (%s) sideways, %s N (%s) upward"), side, weight, lift, lifted)
            : g_strdup_printf (_ ("up to %s N (%s) sideways"), side, weight));
}

static void
tell_accepted (GArray *facts, const SpelchPosed *posed)
{
  const SpelchPart *part = posed->part;
  SpelchFacing facing = spelch_plan_facing (&posed->plan, SPELCH_SIDE_MOTOR);
  tell (facts, _ ("Accepted"),
        g_strdup_printf (_ ("seen edges %s, hidden edges %s, or better"),
                         spelch_words_grade (part->accepted_seen, facing),
                         spelch_words_grade (part->accepted_hidden, facing)));
}

/* What sets bits apart besides the edges. */
static void
tell_room_for_bits (GArray *facts, const SpelchPosed *posed, const SpelchNumbers *numbers)
{
  const SpelchPart *part = posed->part;
  const SpelchMachine *machine = &part->machine;
  GString *collets = g_string_new (NULL);
  for (guint i = 0; i < machine->n_collets; i++)
    {
      g_autofree char *one = spelch_length_show_whole (&machine->collets[i], numbers->unit,
                                                       numbers->inch_style, numbers->decimal_sign);
      g_string_append_printf (collets, "%s%s", i == 0 ? "" : ", ", one);
    }
  if (part->cuts[0].corner_radius.mm > 0)
    {
      g_autofree char *radius = spelch_words_exactly (numbers, part->cuts[0].corner_radius.mm);
      tell (facts, _ ("Inside corners"), g_strdup_printf (_ ("%s of radius"), radius));
    }
  if (machine->kind != SPELCH_MACHINE_GANTRY)
    tell (facts, _ ("Held by"), hold_words (posed, numbers));
  if (collets->len > 0)
    tell (facts, _ ("Collets"), g_strdup (collets->str));
  g_string_free (collets, TRUE);
}

/* What it can give. */
static void
tell_machine (GArray *facts, const SpelchPosed *posed, const SpelchNumbers *numbers)
{
  const SpelchMachine *machine = &posed->part->machine;
  g_autofree char *power = spelch_words_count (machine->power_w);
  g_autofree char *feed = spelch_words_feed (numbers, machine->max_feed_mm_min);
  tell (facts, _ ("Machine"),
        machine->max_feed_mm_min > 0 ? g_strdup_printf (_ ("%s W, feeds up to %s"), power, feed)
                                     : g_strdup_printf (_ ("%s W, fed by hand"), power));
}

/* What is only known so well. */
static void
tell_tolerances (GArray *facts, const SpelchPosed *posed, const SpelchNumbers *numbers)
{
  const SpelchPart *part = posed->part;
  g_autofree char *depth = spelch_words_exactly (numbers, posed->plan.windows.depth_uncertain_mm);
  g_autofree char *up_shear = spelch_words_exactly (numbers, part->tolerances.up_shear_mm);
  g_autofree char *layer = spelch_words_exactly (numbers, posed->plan.near_layer);
  tell (facts, _ ("Face layer"), g_strdup_printf (_ ("%s thick"), layer));
  /* TRANSLATORS: what a depth and an up-shear length are known to */
  tell (facts, _ ("Known within"), g_strdup_printf (_ ("depth ±%s, up-shear ±%s"), depth, up_shear));
}

GArray *
spelch_words_facts (const SpelchPosed *posed, const SpelchNumbers *numbers)
{
  SpelchAsks asks = posed->exercise->asks;
  bool edges = asks == SPELCH_ASKS_TEARS || asks == SPELCH_ASKS_BIT || asks == SPELCH_ASKS_WAY_UP;
  bool held_feed = posed->part->cuts[0].held.feed_mm_min > 0;
  GArray *facts = g_array_new (FALSE, FALSE, sizeof (SpelchFact));
  g_array_set_clear_func (facts, fact_clear);
  tell_cut (facts, posed, numbers);
  if (asks != SPELCH_ASKS_BIT)
    tell_bit (facts, posed, numbers);
  if (edges || asks == SPELCH_ASKS_FIRST_PASS)
    tell_faces (facts, posed, numbers);
  if (edges)
    tell_grain (facts, posed, numbers);
  if (edges)
    tell_below (facts, posed, numbers);
  if (asks == SPELCH_ASKS_TEARS || asks == SPELCH_ASKS_LIMIT || asks == SPELCH_ASKS_HOLD)
    tell_passes (facts, posed, numbers);
  if (asks == SPELCH_ASKS_LIMIT || asks == SPELCH_ASKS_HOLD || (asks == SPELCH_ASKS_TEARS && held_feed))
    tell_speed (facts, posed, numbers);
  if (asks == SPELCH_ASKS_BIT)
    tell_room_for_bits (facts, posed, numbers);
  if (asks == SPELCH_ASKS_LIMIT)
    tell_machine (facts, posed, numbers);
  if (asks == SPELCH_ASKS_HOLD || asks == SPELCH_ASKS_LIMIT)
    tell_holding (facts, posed, numbers);
  if (asks == SPELCH_ASKS_HOLD)
    tell_push (facts, posed, numbers);
  if (asks == SPELCH_ASKS_BIT || asks == SPELCH_ASKS_WAY_UP)
    tell_accepted (facts, posed);
  if (asks == SPELCH_ASKS_FIRST_PASS)
    tell_tolerances (facts, posed, numbers);
  return facts;
}
