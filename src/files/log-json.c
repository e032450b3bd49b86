/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "files/log-json.h"

#define GRADE_MOST 5

static const char *const NEEDED[]
    = { "id", "date", "board", "bit", "kind", "face", "way_up", "predicted_grade", NULL };

/* ---- Reading ---- */

static void
read_what (SpelchFields *fields, SpelchLogEntry *entry)
{
  spelch_fields_text (fields, "id", entry->id, sizeof entry->id);
  spelch_fields_text (fields, "date", entry->date, sizeof entry->date);
  spelch_fields_text (fields, "board", entry->board, sizeof entry->board);
  spelch_fields_text (fields, "bit", entry->bit, sizeof entry->bit);
  spelch_fields_text (fields, "machine", entry->machine, sizeof entry->machine);
  entry->kind
      = (SpelchCutKind)spelch_fields_code (fields, "kind", &SPELCH_CUT_KIND_CODES, SPELCH_CUT_OUTLINE);
  entry->piece
      = (SpelchPiece)spelch_fields_code (fields, "piece", &SPELCH_PIECE_CODES, SPELCH_PIECE_FINISHED);
  entry->face = (SpelchFace)spelch_fields_code (fields, "face", &SPELCH_FACE_CODES, SPELCH_FACE_A);
  entry->way_up = (SpelchFace)spelch_fields_code (fields, "way_up", &SPELCH_FACE_CODES, SPELCH_FACE_A);
}

static void
read_inputs (SpelchFields *fields, SpelchLogEntry *entry)
{
  entry->n_passes = spelch_fields_lengths (fields, "passes", entry->passes, SPELCH_MAX_PASSES);
  entry->overcut = spelch_fields_length (fields, "overcut");
  entry->speed_rpm = spelch_fields_number (fields, "speed_rpm", 0);
  entry->feed_mm_min = spelch_fields_number (fields, "feed_mm_min", 0);
}

static void
read_foretold (SpelchFields *fields, SpelchLogEntry *entry)
{
  entry->predicted = (int)spelch_fields_whole (fields, "predicted_grade", 0, 1, GRADE_MOST);
  entry->clear_known = spelch_fields_told (fields, "clear_of_turn_over_mm");
  entry->clear_mm = spelch_fields_number (fields, "clear_of_turn_over_mm", 0);
  entry->power_w = spelch_fields_number (fields, "predicted_power_w", 0);
  spelch_fields_text (fields, "model_version", entry->model_version, sizeof entry->model_version);
  spelch_fields_text (fields, "revision", entry->revision, sizeof entry->revision);
}

static void
read_outcome (SpelchFields *fields, SpelchLogEntry *entry)
{
  entry->as_predicted = spelch_fields_flag (fields, "as_predicted", false);
  entry->grade = (int)spelch_fields_whole (fields, "grade", 0, 1, GRADE_MOST);
  entry->burnt = spelch_fields_flag (fields, "burnt", false);
  entry->chattered = spelch_fields_flag (fields, "chattered", false);
  entry->clogged = spelch_fields_flag (fields, "clogged", false);
  entry->moved = spelch_fields_flag (fields, "moved", false);
  spelch_fields_text (fields, "note", entry->note, sizeof entry->note);
  entry->load_w = spelch_fields_number (fields, "spindle_load_w", 0);
  entry->load_percent = spelch_fields_number (fields, "spindle_load_percent", 0);
  entry->rated_w = spelch_fields_number (fields, "rated_w", 0);
}

SpelchLogEntry
spelch_log_entry_read (SpelchFields *fields)
{
  SpelchLogEntry entry = { 0 };
  spelch_fields_need (fields, NEEDED);
  read_what (fields, &entry);
  read_inputs (fields, &entry);
  read_foretold (fields, &entry);
  read_outcome (fields, &entry);
  return entry;
}

/* ---- Writing ---- */

static void
write_cut (SpelchWriter *writer, const SpelchLogEntry *entry)
{
  spelch_writer_text (writer, "id", entry->id);
  spelch_writer_text (writer, "date", entry->date);
  spelch_writer_text (writer, "board", entry->board);
  spelch_writer_text (writer, "bit", entry->bit);
  spelch_writer_text_told (writer, "machine", entry->machine);
  spelch_writer_code (writer, "kind", &SPELCH_CUT_KIND_CODES, (int)entry->kind);
  spelch_writer_code_told (writer, "piece", &SPELCH_PIECE_CODES, (int)entry->piece, SPELCH_PIECE_FINISHED);
  spelch_writer_code (writer, "face", &SPELCH_FACE_CODES, (int)entry->face);
  spelch_writer_code (writer, "way_up", &SPELCH_FACE_CODES, (int)entry->way_up);
  spelch_writer_lengths_told (writer, "passes", entry->passes, entry->n_passes);
  spelch_writer_length_told (writer, "overcut", &entry->overcut);
  spelch_writer_number_told (writer, "speed_rpm", entry->speed_rpm);
  spelch_writer_number_told (writer, "feed_mm_min", entry->feed_mm_min);
}

static void
write_outcome (SpelchWriter *writer, const SpelchLogEntry *entry)
{
  spelch_writer_flag_told (writer, "as_predicted", entry->as_predicted);
  spelch_writer_number_told (writer, "grade", entry->grade);
  spelch_writer_flag_told (writer, "burnt", entry->burnt);
  spelch_writer_flag_told (writer, "chattered", entry->chattered);
  spelch_writer_flag_told (writer, "clogged", entry->clogged);
  spelch_writer_flag_told (writer, "moved", entry->moved);
  spelch_writer_text_told (writer, "note", entry->note);
  spelch_writer_number_told (writer, "spindle_load_w", entry->load_w);
  spelch_writer_number_told (writer, "spindle_load_percent", entry->load_percent);
  spelch_writer_number_told (writer, "rated_w", entry->rated_w);
}

void
spelch_log_entry_write (SpelchWriter *writer, const SpelchLogEntry *entry)
{
  write_cut (writer, entry);
  spelch_writer_number (writer, "predicted_grade", entry->predicted);
  if (entry->clear_known)
    spelch_writer_number (writer, "clear_of_turn_over_mm", entry->clear_mm);
  spelch_writer_number_told (writer, "predicted_power_w", entry->power_w);
  spelch_writer_text_told (writer, "model_version", entry->model_version);
  spelch_writer_text_told (writer, "revision", entry->revision);
  write_outcome (writer, entry);
}
