/* SPDX-License-Identifier: GPL-3.0-or-later
 *
 * Record window: asks how the edges of the cut on the bench came out, and writes that into the shop log
 * beside what was reckoned.
 */
#pragma once

#include "bench/shelves.h"

#include <gtk/gtk.h>

/* About the cut as it is planned now; later changes on the bench don't change what is recorded. */
void spelch_record_window_show (GtkWindow *parent, SpelchSession *session, SpelchShelves *shelves);
