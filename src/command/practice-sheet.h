/* SPDX-License-Identifier: GPL-3.0-or-later
 *
 * Practice sheet: questions, or their answers, as a PDF to print.
 */
#pragma once

#include "command/practice-asked.h"

/* Writes the sheet that was asked for and gives the exit status. */
int spelch_practice_sheet (const SpelchPracticeAsked *asked);
