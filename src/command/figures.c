/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "command/figures.h"

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
