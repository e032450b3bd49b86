/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "command/figures.h"
#include "files/part-file.h"

const SpelchNumbers SPELCH_FIGURE_NUMBERS = { SPELCH_UNIT_MM, SPELCH_INCH_DECIMAL, '.' };

double
spelch_figure_tidy (double value)
{
  char digits[G_ASCII_DTOSTR_BUF_SIZE];
  return g_ascii_strtod (g_ascii_formatd (digits, sizeof digits, "%.9g", value), NULL);
}

void
spelch_figure_write (SpelchWriter *writer, const char *member, double value)
{
  spelch_writer_number (writer, member, spelch_figure_tidy (value));
}

void
spelch_figure_write_if (SpelchWriter *writer, const char *member, bool applies, double value)
{
  if (applies)
    spelch_figure_write (writer, member, value);
  else
    spelch_writer_null (writer, member);
}

SpelchWriter *
spelch_figures_begin (const SpelchPart *part)
{
  SpelchWriter *writer = spelch_writer_new (NULL);
  spelch_writer_number (writer, "format_version", SPELCH_FORMAT_VERSION);
  spelch_writer_text (writer, "model_version", SPELCH_MODEL_VERSION);
  spelch_writer_text (writer, "part", part->id);
  return writer;
}

void
spelch_figures_work (SpelchWriter *writer, const SpelchPart *part)
{
  spelch_writer_text (writer, "board", part->board.id);
  spelch_figure_write (writer, "thickness_mm", spelch_board_thickness (&part->board));
  spelch_writer_text (writer, "machine", part->machine.id);
  spelch_writer_code (writer, "datum", &SPELCH_DATUM_CODES, (int)spelch_machine_datum (&part->machine));
}
