/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "files/correction-json.h"

#define CUTS_MOST 10000

static const char *const CORRECTION_NEEDS[] = { "board", "bit", "last", NULL };
static const char *const CALIBRATION_NEEDS[] = { "board", "factor", "readings", NULL };

/* ---- Reading ---- */

static SpelchLearnt
read_learnt (SpelchFields *fields, const char *side)
{
  g_autoptr (SpelchFields) members = spelch_fields_object (fields, side);
  SpelchLearnt learnt = { 0 };
  if (members == NULL)
    return learnt;
  learnt.points = spelch_fields_integer (members, "points", 0, -1, 1);
  learnt.points_cuts = spelch_fields_whole (members, "points_cuts", 0, 0, CUTS_MOST);
  learnt.window_mm = spelch_fields_number (members, "window_mm", 0);
  learnt.window_cuts = spelch_fields_whole (members, "window_cuts", 0, 0, CUTS_MOST);
  return learnt;
}

SpelchCorrection
spelch_correction_read (SpelchFields *fields)
{
  SpelchCorrection correction = { 0 };
  spelch_fields_need (fields, CORRECTION_NEEDS);
  spelch_fields_text (fields, "board", correction.board, sizeof correction.board);
  spelch_fields_text (fields, "bit", correction.bit, sizeof correction.bit);
  spelch_fields_text (fields, "last", correction.last, sizeof correction.last);
  correction.off = spelch_fields_flag (fields, "off", false);
  correction.motor = read_learnt (fields, "motor");
  correction.far = read_learnt (fields, "far");
  return correction;
}

SpelchCalibration
spelch_calibration_read (SpelchFields *fields)
{
  SpelchCalibration calibration = { 0 };
  spelch_fields_need (fields, CALIBRATION_NEEDS);
  spelch_fields_text (fields, "board", calibration.board, sizeof calibration.board);
  calibration.off = spelch_fields_flag (fields, "off", false);
  calibration.factor = spelch_fields_number (fields, "factor", 0);
  calibration.readings = spelch_fields_whole (fields, "readings", 0, 1, CUTS_MOST);
  return calibration;
}

/* ---- Writing ---- */

static void
write_learnt (SpelchWriter *writer, const char *side, const SpelchLearnt *learnt)
{
  bool told
      = learnt->points != 0 || learnt->points_cuts != 0 || learnt->window_mm > 0 || learnt->window_cuts != 0;
  if (!told && !spelch_writer_keeps (writer, side))
    return;
  spelch_writer_open (writer, side, NULL);
  spelch_writer_number_told (writer, "points", learnt->points);
  spelch_writer_number_told (writer, "points_cuts", learnt->points_cuts);
  spelch_writer_number_told (writer, "window_mm", learnt->window_mm);
  spelch_writer_number_told (writer, "window_cuts", learnt->window_cuts);
  spelch_writer_close (writer);
}

void
spelch_correction_write (SpelchWriter *writer, const SpelchCorrection *correction)
{
  spelch_writer_text (writer, "board", correction->board);
  spelch_writer_text (writer, "bit", correction->bit);
  spelch_writer_text (writer, "last", correction->last);
  spelch_writer_flag_told (writer, "off", correction->off);
  write_learnt (writer, "motor", &correction->motor);
  write_learnt (writer, "far", &correction->far);
}

void
spelch_calibration_write (SpelchWriter *writer, const SpelchCalibration *calibration)
{
  spelch_writer_text (writer, "board", calibration->board);
  spelch_writer_flag_told (writer, "off", calibration->off);
  spelch_writer_number (writer, "factor", calibration->factor);
  spelch_writer_number (writer, "readings", calibration->readings);
}
