/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "shop/machine.h"

#include "shop/fault.h"

#include <glib/gi18n-lib.h>
#include <math.h>

#define SPEED_STEP_RPM 1000.0

static const char *const machine_kinds[] = {
  [SPELCH_MACHINE_GANTRY] = "gantry",
  [SPELCH_MACHINE_TABLE] = "table",
  [SPELCH_MACHINE_HAND] = "hand-held",
};
const SpelchCodes SPELCH_MACHINE_KIND_CODES
    = { N_ ("kind of machine"), machine_kinds, G_N_ELEMENTS (machine_kinds) };

static const char *const datums[] = {
  [SPELCH_DATUM_FACE] = "face",
  [SPELCH_DATUM_BED] = "bed",
};
const SpelchCodes SPELCH_DATUM_CODES = { N_ ("datum"), datums, G_N_ELEMENTS (datums) };

static const char *const spoilboards[] = {
  [SPELCH_SPOILBOARD_FRESH] = "fresh",
  [SPELCH_SPOILBOARD_CUT_HERE_BEFORE] = "cut-here-before",
  [SPELCH_SPOILBOARD_UNTOLD] = "untold",
};
const SpelchCodes SPELCH_SPOILBOARD_CODES
    = { N_ ("state of the spoilboard"), spoilboards, G_N_ELEMENTS (spoilboards) };

bool
spelch_machine_motor_below (const SpelchMachine *machine)
{
  return machine->kind == SPELCH_MACHINE_TABLE;
}

SpelchDatum
spelch_machine_datum (const SpelchMachine *machine)
{
  return machine->kind == SPELCH_MACHINE_GANTRY ? machine->datum : SPELCH_DATUM_FACE;
}

double
spelch_machine_speed (const SpelchMachine *machine, guint i)
{
  if (machine->n_steps > 0)
    return i < machine->n_steps ? machine->steps_rpm[i] : 0;
  double span = machine->rpm_max - machine->rpm_min;
  if (!isfinite (span) || span < 0)
    return 0;
  double last = ceil (span / SPEED_STEP_RPM);
  if (i > last)
    return 0;
  return i == last ? machine->rpm_max : machine->rpm_min + i * SPEED_STEP_RPM;
}

static char *
fault_of_words (const SpelchMachine *machine)
{
  return spelch_fault_id ("id", machine->id, false)
             ?: spelch_fault_text ("name", machine->name, sizeof machine->name)
             ?: spelch_fault_code ("kind", &SPELCH_MACHINE_KIND_CODES, (int)machine->kind)
             ?: spelch_fault_code ("datum", &SPELCH_DATUM_CODES, (int)machine->datum)
             ?: spelch_fault_code ("spoilboard", &SPELCH_SPOILBOARD_CODES, (int)machine->spoilboard);
}

static char *
fault_of_bounds (const SpelchMachine *machine)
{
  const SpelchBounds bounds[] = {
    { "rpm_min", "rpm", machine->rpm_min, 100, 100000 },
    { "rpm_max", "rpm", machine->rpm_max, 100, 100000 },
    { "steps_rpm", "", machine->n_steps, 0, SPELCH_MAX_STEPS },
    { "power_w", "W", machine->power_w, 10, 50000 },
    { "rated_rpm", "rpm", machine->rated_rpm, 100, 100000, true },
    { "max_feed_mm_min", "mm/min", machine->max_feed_mm_min, 10, 200000, true },
    { "collets", "", machine->n_collets, 0, SPELCH_MAX_STEPS },
    { "overcut_allowed_mm", "mm", machine->overcut_allowed_mm, 0, 50 },
    { "flatness_mm", "mm", machine->flatness_mm, 0, 5 },
    { "stiffness_n_mm", "N/mm", machine->stiffness_n_mm, 1, 1e6 },
    { "base_thickness", "mm", machine->base_thickness.mm, 0, 100 },
    { "base_radius", "mm", machine->base_radius.mm, 0, 500 },
    { "guide_bushes", "", machine->n_bushes, 0, SPELCH_MAX_STEPS },
    { "mass_kg", "kg", machine->mass_kg, 0, 100 },
  };
  return spelch_fault_bounds (bounds, G_N_ELEMENTS (bounds));
}

static char *
fault_of_list (const char *list, const SpelchLength *lengths, guint n, double most)
{
  char *fault = NULL;
  for (guint i = 0; fault == NULL && i < n; i++)
    {
      g_autofree char *member = g_strdup_printf ("%s[%u]", list, i);
      fault = spelch_fault_bounds (&(SpelchBounds){ member, "mm", lengths[i].mm, 1, most }, 1);
    }
  return fault;
}

static char *
fault_of_steps (const SpelchMachine *machine)
{
  char *fault = NULL;
  double least = machine->rpm_min;
  for (guint i = 0; fault == NULL && i < machine->n_steps; i++)
    {
      g_autofree char *member = g_strdup_printf ("steps_rpm[%u]", i);
      fault = spelch_fault_bounds (
          &(SpelchBounds){ member, "rpm", machine->steps_rpm[i], least, machine->rpm_max }, 1);
      least = machine->steps_rpm[i];
    }
  return fault;
}

static char *
fault_of_speeds (const SpelchMachine *machine)
{
  if (machine->rpm_min <= machine->rpm_max)
    return fault_of_steps (machine);
  g_autofree char *least = spelch_fault_number (machine->rpm_min, "rpm");
  g_autofree char *most = spelch_fault_number (machine->rpm_max, "rpm");
  return g_strdup_printf (_ ("rpm_min (%s) is more than rpm_max (%s)."), least, most);
}

static char *
fault_of_gantry (const SpelchMachine *machine)
{
  if (machine->kind != SPELCH_MACHINE_GANTRY)
    return NULL;
  if (machine->max_feed_mm_min == 0)
    return g_strdup (_ ("max_feed_mm_min is missing; a gantry router needs its highest feed."));
  if (machine->base_thickness.mm == 0)
    return NULL;
  g_autofree char *base = spelch_fault_number (machine->base_thickness.mm, "mm");
  return g_strdup_printf (_ ("base_thickness (%s) must be 0 on a gantry router, which has no base."), base);
}

char *
spelch_machine_fault (const SpelchMachine *machine)
{
  return fault_of_words (machine)
             ?: fault_of_bounds (machine)
             ?: fault_of_list ("collets", machine->collets, machine->n_collets, 30)
             ?: fault_of_list ("guide_bushes", machine->bushes, machine->n_bushes, 150)
             ?: fault_of_speeds (machine)
             ?: fault_of_gantry (machine);
}
