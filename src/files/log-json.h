/* SPDX-License-Identifier: GPL-3.0-or-later
 *
 * Log entry as JSON: the members of one entry of the shop log.
 */
#pragma once

#include "files/json-fields.h"
#include "files/json-writer.h"
#include "shop/log-entry.h"

/* Reads an entry's members, what isn't told at its default. The caller asks spelch_log_entry_fault() whether
 * they fit together. */
SpelchLogEntry spelch_log_entry_read (SpelchFields *fields);

/* Writes an entry's members into the object that is open, without those at their default. */
void spelch_log_entry_write (SpelchWriter *writer, const SpelchLogEntry *entry);
