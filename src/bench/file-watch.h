/* SPDX-License-Identifier: GPL-3.0-or-later
 *
 * File watch: notices that another program has changed the file a session came from.
 */
#pragma once

#include "bench/bench-session.h"

G_BEGIN_DECLS

#define SPELCH_TYPE_FILE_WATCH (spelch_file_watch_get_type ())
G_DECLARE_FINAL_TYPE (SpelchFileWatch, spelch_file_watch, SPELCH, FILE_WATCH, GObject)

/* Signal "overtaken": something else stands in the file now than the session read or saved. Given soon after
 * the change, once for each. @session must outlive it. */
SpelchFileWatch *spelch_file_watch_new (SpelchSession *session);

/* Looks now: where the file is can't always be watched. */
void spelch_file_watch_look (SpelchFileWatch *self);

G_END_DECLS
