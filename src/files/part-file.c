/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "files/part-file.h"

#include "files/bit-json.h"
#include "files/board-json.h"
#include "files/correction-json.h"
#include "files/cut-json.h"
#include "files/file-io.h"
#include "files/item-name.h"
#include "files/json-text.h"
#include "files/machine-json.h"
#include "files/part-json.h"
#include "files/unread.h"

#include <glib/gi18n-lib.h>
#include <string.h>

#define ITEMS_MOST   1000
#define GRADE_MOST   5
#define VERSION_MOST 1000

static const char *const PART_NEEDS[] = { "format_version", "id", "board", "machine", NULL };

/* ---- Reading ---- */

static void
read_accepted (SpelchFields *fields, SpelchPart *part)
{
  g_autoptr (SpelchFields) accepted = spelch_fields_object (fields, "accepted");
  if (accepted == NULL)
    return;
  part->accepted_seen
      = (int)spelch_fields_whole (accepted, "seen", (guint)part->accepted_seen, 1, GRADE_MOST);
  part->accepted_hidden
      = (int)spelch_fields_whole (accepted, "hidden", (guint)part->accepted_hidden, 1, GRADE_MOST);
}

static void
read_tolerances (SpelchFields *fields, SpelchTolerances *tolerances)
{
  g_autoptr (SpelchFields) members = spelch_fields_object (fields, "tolerances");
  if (members == NULL)
    return;
  tolerances->depth_mm = spelch_fields_number (members, "depth_mm", tolerances->depth_mm);
  tolerances->up_shear_mm = spelch_fields_number (members, "up_shear_mm", tolerances->up_shear_mm);
}

static void
read_holding (SpelchFields *fields, SpelchHolding *holding)
{
  g_autoptr (SpelchFields) members = spelch_fields_object (fields, "holding");
  if (members == NULL)
    return;
  holding->method
      = (SpelchHold)spelch_fields_code (members, "method", &SPELCH_HOLD_CODES, SPELCH_HOLD_UNTOLD);
  holding->area_mm2 = spelch_fields_number (members, "area_mm2", 0);
  holding->vacuum_kpa = spelch_fields_number (members, "vacuum_kpa", 0);
  holding->clamp_force_n = spelch_fields_number (members, "clamp_force_n", 0);
  holding->on_rubber = spelch_fields_flag (members, "on_rubber", false);
}

void
spelch_part_read_decisions (SpelchFields *fields, SpelchPart *part)
{
  part->length = spelch_fields_length (fields, "length");
  part->width = spelch_fields_length (fields, "width");
  read_accepted (fields, part);
  read_tolerances (fields, &part->tolerances);
  read_holding (fields, &part->holding);
}

static void
read_board_and_machine (SpelchFields *fields, SpelchPart *part)
{
  g_autoptr (SpelchFields) board = spelch_fields_object (fields, "board");
  g_autoptr (SpelchFields) machine = spelch_fields_object (fields, "machine");
  if (board != NULL)
    part->board = spelch_board_read (board);
  if (machine != NULL)
    part->machine = spelch_machine_read (machine);
}

/* From a newer program, what this one can't make sense of is left out. */
static bool
passed_over (const SpelchReading *reading, char *fault)
{
  g_autofree char *sentence = fault;
  return reading->lenient && sentence != NULL;
}

static void
read_bits (SpelchFields *fields, SpelchPart *part, const SpelchReading *reading)
{
  guint n = spelch_fields_count (fields, "bits", ITEMS_MOST);
  part->bits = g_new0 (SpelchBit, n);
  for (guint i = 0; i < n; i++)
    {
      g_autoptr (SpelchFields) item = spelch_fields_item (fields, "bits", i);
      if (item == NULL)
        continue;
      part->bits[part->n_bits] = spelch_bit_read (item);
      if (!passed_over (reading, spelch_bit_fault (&part->bits[part->n_bits])))
        part->n_bits++;
    }
}

static void
read_cuts (SpelchFields *fields, SpelchPart *part, const SpelchReading *reading)
{
  guint n = spelch_fields_count (fields, "cuts", ITEMS_MOST);
  part->cuts = g_new0 (SpelchCut, n);
  for (guint i = 0; i < n; i++)
    {
      g_autoptr (SpelchFields) item = spelch_fields_item (fields, "cuts", i);
      if (item == NULL)
        continue;
      SpelchCut cut = spelch_cut_read (item);
      if (passed_over (reading, spelch_cut_fault (&cut, &part->board)))
        continue;
      if (reading->lenient && spelch_part_find_bit (part, cut.bit) < 0)
        *cut.bit = '\0';
      part->cuts[part->n_cuts++] = cut;
    }
}

static void
read_corrections (SpelchFields *fields, SpelchPart *part, SpelchReading *reading)
{
  guint n = spelch_fields_count (fields, "corrections", ITEMS_MOST);
  part->corrections = g_new0 (SpelchCorrection, n);
  for (guint i = 0; i < n; i++)
    {
      g_autoptr (SpelchFields) item = spelch_fields_item (fields, "corrections", i);
      if (item == NULL)
        continue;
      part->corrections[part->n_corrections] = spelch_correction_read (item);
      if (!passed_over (reading, spelch_correction_fault (&part->corrections[part->n_corrections])))
        part->n_corrections++;
    }
  g_autoptr (SpelchFields) calibration = spelch_fields_object (fields, "calibration");
  if (calibration == NULL)
    return;
  part->calibration = spelch_calibration_read (calibration);
  if (*part->calibration.board == '\0')
    spelch_reading_fault (reading, g_strdup (_ ("calibration: board is empty; name the board.")));
  if (passed_over (reading, spelch_calibration_fault (&part->calibration)))
    part->calibration = (SpelchCalibration){ 0 };
}

/* A newer major version is read leniently from its version on, and can't be saved. */
static void
read_version (SpelchFields *fields, SpelchPart *part, SpelchReading *reading)
{
  guint version = spelch_fields_whole (fields, "format_version", SPELCH_FORMAT_VERSION, SPELCH_FORMAT_VERSION,
                                       VERSION_MOST);
  part->file_version = (int)version;
  part->read_only = version > SPELCH_FORMAT_VERSION;
  reading->lenient = part->read_only;
}

static SpelchPart *
read_part (JsonNode *root, SpelchReading *reading)
{
  g_autoptr (SpelchFields) fields = spelch_fields_root (reading, root);
  SpelchPart *part = spelch_part_new ();
  spelch_fields_need (fields, PART_NEEDS);
  read_version (fields, part, reading);
  spelch_item_read_name (fields, part->id, part->name);
  spelch_fields_text (fields, "note", part->note, sizeof part->note);
  spelch_part_read_decisions (fields, part);
  read_board_and_machine (fields, part);
  read_bits (fields, part, reading);
  read_cuts (fields, part, reading);
  read_corrections (fields, part, reading);
  return part;
}

SpelchPart *
spelch_part_from_json (const char *text, gsize length, const char *name, GError **error)
{
  g_autoptr (JsonNode) root = spelch_json_parse (text, length, name, error);
  if (root == NULL)
    return NULL;
  g_autoptr (GHashTable) unknown = g_hash_table_new_full (g_str_hash, g_str_equal, g_free, g_free);
  SpelchReading reading = { .name = name, .unknown = unknown };
  g_autoptr (SpelchPart) part = read_part (root, &reading);
  if (reading.error == NULL)
    {
      reading.lenient = false;
      spelch_reading_fault (&reading, spelch_part_fault (part));
    }
  if (reading.error != NULL)
    {
      g_propagate_error (error, reading.error);
      return NULL;
    }
  if (g_hash_table_size (unknown) > 0)
    part->unknown = g_steal_pointer (&unknown);
  return g_steal_pointer (&part);
}

GPtrArray *
spelch_part_unread (const char *text, gsize length, const char *name)
{
  g_autoptr (JsonNode) root = spelch_json_parse (text, length, name, NULL);
  GPtrArray *unread = spelch_unread_list_new ();
  SpelchReading reading = { .name = name, .unread = unread };
  if (root != NULL)
    spelch_part_unref (read_part (root, &reading));
  g_clear_error (&reading.error);
  return unread;
}

/* ---- Writing ---- */

static void
write_decisions (SpelchWriter *writer, const SpelchPart *part)
{
  spelch_writer_open (writer, "accepted", NULL);
  spelch_writer_number (writer, "seen", part->accepted_seen);
  spelch_writer_number (writer, "hidden", part->accepted_hidden);
  spelch_writer_close (writer);
  spelch_writer_open (writer, "tolerances", NULL);
  spelch_writer_number (writer, "depth_mm", part->tolerances.depth_mm);
  spelch_writer_number (writer, "up_shear_mm", part->tolerances.up_shear_mm);
  spelch_writer_close (writer);
}

static void
write_holding (SpelchWriter *writer, const SpelchHolding *holding)
{
  spelch_writer_open (writer, "holding", NULL);
  spelch_writer_code (writer, "method", &SPELCH_HOLD_CODES, (int)holding->method);
  spelch_writer_number_told (writer, "area_mm2", holding->area_mm2);
  spelch_writer_number_told (writer, "vacuum_kpa", holding->vacuum_kpa);
  spelch_writer_number_told (writer, "clamp_force_n", holding->clamp_force_n);
  spelch_writer_flag_told (writer, "on_rubber", holding->on_rubber);
  spelch_writer_close (writer);
}

static void
write_board_and_machine (SpelchWriter *writer, const SpelchPart *part)
{
  spelch_writer_open (writer, "board", part->board.id);
  spelch_board_write (writer, &part->board);
  spelch_writer_close (writer);
  spelch_writer_open (writer, "machine", part->machine.id);
  spelch_machine_write (writer, &part->machine);
  spelch_writer_close (writer);
}

static void
write_bits (SpelchWriter *writer, const SpelchPart *part)
{
  spelch_writer_open_list (writer, "bits");
  for (guint i = 0; i < part->n_bits; i++)
    {
      spelch_writer_open_item (writer, part->bits[i].id, false);
      spelch_bit_write (writer, &part->bits[i]);
      spelch_writer_close (writer);
    }
  spelch_writer_close (writer);
}

static void
write_cuts (SpelchWriter *writer, const SpelchPart *part)
{
  spelch_writer_open_list (writer, "cuts");
  for (guint i = 0; i < part->n_cuts; i++)
    {
      spelch_writer_open_item (writer, part->cuts[i].id, false);
      spelch_cut_write (writer, &part->cuts[i]);
      spelch_writer_close (writer);
    }
  spelch_writer_close (writer);
}

static void
write_corrections (SpelchWriter *writer, const SpelchPart *part)
{
  if (part->n_corrections > 0)
    {
      spelch_writer_open_list (writer, "corrections");
      for (guint i = 0; i < part->n_corrections; i++)
        {
          spelch_writer_open_item (writer, NULL, false);
          spelch_correction_write (writer, &part->corrections[i]);
          spelch_writer_close (writer);
        }
      spelch_writer_close (writer);
    }
  if (*part->calibration.board == '\0')
    return;
  spelch_writer_open (writer, "calibration", NULL);
  spelch_calibration_write (writer, &part->calibration);
  spelch_writer_close (writer);
}

char *
spelch_part_to_json (const SpelchPart *part)
{
  SpelchWriter *writer = spelch_writer_new (part->unknown);
  spelch_writer_number (writer, "format_version", MAX (part->file_version, SPELCH_FORMAT_VERSION));
  spelch_item_write_name (writer, part->id, part->name);
  spelch_writer_text_told (writer, "note", part->note);
  spelch_writer_length_told (writer, "length", &part->length);
  spelch_writer_length_told (writer, "width", &part->width);
  write_decisions (writer, part);
  write_holding (writer, &part->holding);
  write_board_and_machine (writer, part);
  write_bits (writer, part);
  write_cuts (writer, part);
  write_corrections (writer, part);
  return spelch_writer_end (writer);
}

/* ---- Files ---- */

SpelchPart *
spelch_part_load (GFile *file, char **etag, GError **error)
{
  g_autofree char *name = spelch_file_name (file);
  g_autofree char *tag = NULL;
  gsize length;
  g_autofree char *text = spelch_file_read (file, &length, &tag, error);
  SpelchPart *part = text == NULL ? NULL : spelch_part_from_json (text, length, name, error);
  if (part != NULL && etag != NULL)
    *etag = g_steal_pointer (&tag);
  return part;
}

bool
spelch_part_save (const SpelchPart *part, GFile *file, const char *etag, char **new_etag, GError **error)
{
  if (part->read_only)
    {
      g_autofree char *name = spelch_file_name (file);
      g_set_error (
          error, SPELCH_FILE_ERROR, SPELCH_FILE_ERROR_READ_ONLY,
          _ ("%s comes from a newer Spelch (format_version %d; this one writes %d) and isn't saved, so that "
             "nothing in it is lost. Use the newer program to change it."),
          name, part->file_version, SPELCH_FORMAT_VERSION);
      return false;
    }
  g_autofree char *text = spelch_part_to_json (part);
  return spelch_file_save (file, text, etag, new_etag, error);
}
