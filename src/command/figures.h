/* SPDX-License-Identifier: GPL-3.0-or-later
 *
 * Figures: how the command line writes figures for other programs.
 */
#pragma once

#include "files/json-writer.h"
#include "plan/words.h"
#include "shop/part.h"

/* How sentences inside JSON write numbers, whatever the locale. */
extern const SpelchNumbers SPELCH_FIGURE_NUMBERS;

/* @value to nine figures: enough for any use; spares readers the noise of the last bits. */
double spelch_figure_tidy (double value);

/* Tidied. */
void spelch_figure_write (SpelchWriter *writer, const char *member, double value);

/* The same, or null where the figure doesn't apply. */
void spelch_figure_write_if (SpelchWriter *writer, const char *member, bool applies, double value);

/* Begins an answer about a part: the versions of format and model, and the part's id. spelch_writer_end()
 * ends it. */
SpelchWriter *spelch_figures_begin (const SpelchPart *part);

/* Of what and on what it is cut: board, thickness in mm, machine and datum. */
void spelch_figures_work (SpelchWriter *writer, const SpelchPart *part);
