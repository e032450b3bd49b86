/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "plan/cautions.h"

#include <glib/gi18n-lib.h>

#define STRIP_MM   150
#define STRIP_INCH 6

char *
spelch_caution_strip (const SpelchPart *part, const SpelchNumbers *numbers)
{
  bool inches = numbers->unit == SPELCH_UNIT_INCH;
  g_autofree char *length
      = inches ? g_strdup_printf (_ ("%d in"), STRIP_INCH) : g_strdup_printf (_ ("%d mm"), STRIP_MM);
  return g_strdup_printf (_ ("Cut a %s test strip of the same board first and look at both edges."), length);
}

static const char *
machine_words (SpelchMachineKind kind)
{
  switch (kind)
    {
    case SPELCH_MACHINE_TABLE:
      return _ (
          "Feed against the rotation, small pieces in a carrier; never trap work between fence and bit.");
    case SPELCH_MACHINE_HAND:
      return _ ("Feed against the rotation, both hands on the router; wait until the bit stands still.");
    case SPELCH_MACHINE_GANTRY:
    default:
      return _ ("Keep hands away, and stay with the machine.");
    }
}

char *
spelch_caution_words (const SpelchPart *part)
{
  return g_strdup_printf (
      "%s %s %s",
      _ ("Protect eyes, ears and lungs. Switch off and pull the plug before changing bits; shank "
         "well into the collet."),
      machine_words (part->machine.kind),
      _ ("The maker's instructions, local rules and trained people come first."));
}

#define GRAVITY 9.80665 /* m/s2 */

/* Whether the bit pulls the work toward the motor, and so is itself pulled away from it. */
static bool
is_drawn_out (const SpelchPlan *plan)
{
  for (guint i = 0; i < plan->n_seats; i++)
    {
      const SpelchSeat *seat = &plan->seats[i];
      bool far_side = seat->pair == SPELCH_PAIR_BOARD_BED || seat->pair == SPELCH_PAIR_BOARD_BENCH;
      if (seat->mean_n > 0.5 && seat->apart == far_side)
        return true;
    }
  return false;
}

/* With how much the router may be lifted off the board; 0: hardly. */
static double
router_lift (const SpelchPlan *plan)
{
  for (guint i = 0; i < plan->n_seats; i++)
    if (plan->seats[i].pair == SPELCH_PAIR_BASE_BOARD && plan->seats[i].bound_n > 0.5)
      return plan->seats[i].bound_n;
  return 0;
}

/* A router that nobody weighed may be a light one. NULL where there is nothing to say. */
static char *
lift_caution (const SpelchMachine *machine, const SpelchPlan *plan)
{
  double lift = router_lift (plan);
  g_autofree char *count = spelch_words_count (lift);
  if (lift <= machine->mass_kg * GRAVITY / 2)
    return NULL;
  if (machine->mass_kg > 0)
    return g_strdup (_ ("At its worst within a turn the bit may lift the router by more than half "
                        "its weight: press it down, and take "
                        "less depth."));
  return g_strdup_printf (
      _ ("At its worst within a turn the bit may lift the router with %s N, and what it weighs isn't "
         "told. Press it down; if it is a light one, take less depth."),
      count);
}

char **
spelch_caution_plan (const SpelchConstants *constants, const SpelchPart *part, const SpelchPlan *plan)
{
  g_autoptr (GStrvBuilder) all = g_strv_builder_new ();
  if (is_drawn_out (plan))
    g_strv_builder_add (
        all,
        _ ("The cut draws the bit out of the collet: clean collet and shank, tighten well, and check that it "
           "hasn't moved."));
  g_autofree char *lift = lift_caution (&part->machine, plan);
  if (lift != NULL)
    g_strv_builder_add (all, lift);
  if (plan->machine == SPELCH_MACHINE_HAND && plan->through && plan->n_passes > 0)
    g_strv_builder_add (all,
                        _ ("The bit comes out below the board: before you start, see that no bench, clamp, "
                           "cable or hand is under the line."));
  if (plan->wall_heat >= constants->heat_burns)
    g_strv_builder_add (all,
                        _ ("The wall burns: feed quicker, or turn slower. Hot chips can set the dust bin on "
                           "fire; look into it afterwards."));
  else if (plan->wall_heat > constants->heat_caution)
    g_strv_builder_add (all, _ ("The wall gets hot: hot chips can set the dust bin on fire. Look into it "
                                "afterwards."));
  return g_strv_builder_end (all);
}

char **
spelch_caution_all (const SpelchPart *part)
{
  g_autoptr (GStrvBuilder) all = g_strv_builder_new ();
  SpelchMachineKind kind = part->machine.kind;
  g_strv_builder_add_many (
      all, _ ("Protect eyes, ears and lungs: wood dust is a carcinogen (IARC Group 1). Draw it off."),
      _ ("Switch off and pull the plug before changing bits; at least 20 mm and two diameters of shank in "
         "the "
         "collet."),
      _ ("Never turn faster than the speed marked on the bit."),
      _ ("The bit touches nothing when it starts; wait until it stands still before you lift it or reach "
         "in."),
      _ ("No gloves, loose sleeves or loose hair near the bit; keep hands away from it."),
      _ ("Hot chips can set a dust bin on fire: empty it, and look into it after work."), NULL);
  if (kind != SPELCH_MACHINE_GANTRY)
    g_strv_builder_add_many (
        all, _ ("Feed against the rotation of the bit."),
        _ ("Small pieces go in a carrier; what is too small to hold far from the bit is cut "
           "from a larger piece."),
        NULL);
  if (kind == SPELCH_MACHINE_TABLE)
    g_strv_builder_add_many (all, _ ("Never trap work between fence and bit."),
                             _ ("Work against a fence, or a starting pin with a bearing."), NULL);
  if (kind == SPELCH_MACHINE_HAND)
    g_strv_builder_add (all, _ ("Clamp the work, and keep both hands on the router."));
  if (kind == SPELCH_MACHINE_GANTRY)
    g_strv_builder_add (all, _ ("Stay with the machine while it runs."));
  g_strv_builder_add_many (
      all, _ ("Learners work under supervision."),
      _ ("The maker's instructions for tool and machine, local rules and trained people come "
         "first; ask one when in doubt."),
      NULL);
  return g_strv_builder_end (all);
}
