/* SPDX-License-Identifier: GPL-3.0-or-later
 *
 * Reasons: what speaks for and against a choice, read off the numbers of its plan.
 */
#pragma once

#include "plan/choose.h"

/* Fills the reasons of @choice, whose plan and grades are there. @quickest: time, s, of the quickest choice
 * that is as good otherwise. */
void spelch_reasons_find (const SpelchConstants *constants, const SpelchPart *part, double quickest,
                          SpelchChoice *choice);
