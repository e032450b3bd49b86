/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "bench/cautions.h"

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
      _ ("Protect eyes, ears and lungs. Power off and plug out while changing bits; shank "
         "well into the collet."),
      machine_words (part->machine.kind),
      _ ("The maker's instructions, local rules and trained people come first."));
}
