/* SPDX-License-Identifier: GPL-3.0-or-later
 *
 * Corrections as JSON: the members of a part that the shop log taught.
 */
#pragma once

#include "files/json-fields.h"
#include "files/json-writer.h"
#include "shop/correction.h"

/* Read their members, what isn't told at its default. The caller asks whether they fit together. */
SpelchCorrection spelch_correction_read (SpelchFields *fields);
SpelchCalibration spelch_calibration_read (SpelchFields *fields);

/* Write their members into the object that is open, without those at their default. */
void spelch_correction_write (SpelchWriter *writer, const SpelchCorrection *correction);
void spelch_calibration_write (SpelchWriter *writer, const SpelchCalibration *calibration);
