/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "files/machine-json.h"

#include "files/item-name.h"

static const char *const NEEDED[] = { "id", "kind", "rpm_min", "rpm_max", "power_w", "stiffness_n_mm", NULL };

static void
read_motor (SpelchFields *fields, SpelchMachine *machine)
{
  machine->rpm_min = spelch_fields_number (fields, "rpm_min", 0);
  machine->rpm_max = spelch_fields_number (fields, "rpm_max", 0);
  machine->n_steps = spelch_fields_numbers (fields, "steps_rpm", machine->steps_rpm, SPELCH_MAX_STEPS);
  machine->power_w = spelch_fields_number (fields, "power_w", 0);
  machine->power_is_input = spelch_fields_flag (fields, "power_is_input", false);
  machine->rated_rpm = spelch_fields_number (fields, "rated_rpm", 0);
  machine->max_feed_mm_min = spelch_fields_number (fields, "max_feed_mm_min", 0);
  machine->n_collets = spelch_fields_lengths (fields, "collets", machine->collets, SPELCH_MAX_STEPS);
}

/* A spoilboard that nobody said is fresh doesn't count as backing. */
static void
read_bed (SpelchFields *fields, SpelchMachine *machine)
{
  machine->datum = (SpelchDatum)spelch_fields_code (fields, "datum", &SPELCH_DATUM_CODES, SPELCH_DATUM_FACE);
  machine->overcut_allowed_mm = spelch_fields_number (fields, "overcut_allowed_mm", 0);
  machine->spoilboard = (SpelchSpoilboard)spelch_fields_code (fields, "spoilboard", &SPELCH_SPOILBOARD_CODES,
                                                              SPELCH_SPOILBOARD_UNTOLD);
  machine->flatness_mm = spelch_fields_number (fields, "flatness_mm", 0);
}

SpelchMachine
spelch_machine_read (SpelchFields *fields)
{
  SpelchMachine machine = { 0 };
  spelch_fields_need (fields, NEEDED);
  spelch_item_read_name (fields, machine.id, machine.name);
  machine.kind = (SpelchMachineKind)spelch_fields_code (fields, "kind", &SPELCH_MACHINE_KIND_CODES,
                                                        SPELCH_MACHINE_GANTRY);
  read_motor (fields, &machine);
  read_bed (fields, &machine);
  machine.stiffness_n_mm = spelch_fields_number (fields, "stiffness_n_mm", 0);
  machine.base_thickness = spelch_fields_length (fields, "base_thickness");
  machine.base_radius = spelch_fields_length (fields, "base_radius");
  machine.n_bushes = spelch_fields_lengths (fields, "guide_bushes", machine.bushes, SPELCH_MAX_STEPS);
  machine.mass_kg = spelch_fields_number (fields, "mass_kg", 0);
  machine.retired = spelch_fields_flag (fields, "retired", false);
  return machine;
}

void
spelch_machine_write (SpelchWriter *writer, const SpelchMachine *machine)
{
  spelch_item_write_name (writer, machine->id, machine->name);
  spelch_writer_code (writer, "kind", &SPELCH_MACHINE_KIND_CODES, (int)machine->kind);
  spelch_writer_number (writer, "rpm_min", machine->rpm_min);
  spelch_writer_number (writer, "rpm_max", machine->rpm_max);
  spelch_writer_numbers_told (writer, "steps_rpm", machine->steps_rpm, machine->n_steps);
  spelch_writer_number (writer, "power_w", machine->power_w);
  spelch_writer_flag_told (writer, "power_is_input", machine->power_is_input);
  spelch_writer_number_told (writer, "rated_rpm", machine->rated_rpm);
  spelch_writer_number_told (writer, "max_feed_mm_min", machine->max_feed_mm_min);
  spelch_writer_lengths_told (writer, "collets", machine->collets, machine->n_collets);
  spelch_writer_code_told (writer, "datum", &SPELCH_DATUM_CODES, (int)machine->datum, SPELCH_DATUM_FACE);
  spelch_writer_number_told (writer, "overcut_allowed_mm", machine->overcut_allowed_mm);
  spelch_writer_code_told (writer, "spoilboard", &SPELCH_SPOILBOARD_CODES, (int)machine->spoilboard,
                           SPELCH_SPOILBOARD_UNTOLD);
  spelch_writer_number_told (writer, "flatness_mm", machine->flatness_mm);
  spelch_writer_number (writer, "stiffness_n_mm", machine->stiffness_n_mm);
  spelch_writer_length_told (writer, "base_thickness", &machine->base_thickness);
  spelch_writer_length_told (writer, "base_radius", &machine->base_radius);
  spelch_writer_lengths_told (writer, "guide_bushes", machine->bushes, machine->n_bushes);
  spelch_writer_number_told (writer, "mass_kg", machine->mass_kg);
  spelch_writer_flag_told (writer, "retired", machine->retired);
}
