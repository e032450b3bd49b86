/* SPDX-License-Identifier: GPL-3.0-or-later
 *
 * Setting out as JSON: the member `setting_out` of a planned cut, described in docs/command-line.md.
 */
#pragma once

#include "command/plan-json.h"
#include "files/json-writer.h"

/* Writes the member into the object that is open. */
void spelch_setting_out_json (SpelchWriter *writer, const SpelchPart *part, const SpelchPlanned *planned);
