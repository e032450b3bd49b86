/* SPDX-License-Identifier: GPL-3.0-or-later
 *
 * Unread list: members that a file has and the program doesn't read, as spelch check tells of them.
 */
#pragma once

#include "files/json-writer.h"

/* @unread is a list of SpelchUnread. As the member "unread" of an object, or a sentence on each line. */
void spelch_unread_write (SpelchWriter *writer, const GPtrArray *unread);
void spelch_unread_print (const GPtrArray *unread);

/* Says why a file is refused and gives the exit status. A misspelt member may well be what is wrong, so those
 * that aren't read are told of beside the fault, unless JSON was asked for. */
int spelch_unread_refuse (const GPtrArray *unread, const GError *error, gboolean json);
