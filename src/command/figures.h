/* SPDX-License-Identifier: GPL-3.0-or-later
 *
 * Figures: how the command line writes figures for other programs.
 */
#pragma once

#include "files/json-writer.h"
#include "plan/words.h"

/* How sentences inside JSON write numbers, whatever the locale. */
extern const SpelchNumbers SPELCH_FIGURE_NUMBERS;

/* @value to nine figures: enough for any use; spares readers the noise of the last bits. */
double spelch_figure_tidy (double value);

void spelch_figure_write (SpelchWriter *writer, const char *member, double value);

/* null where the figure doesn't apply. */
void spelch_figure_write_if (SpelchWriter *writer, const char *member, bool applies, double value);
