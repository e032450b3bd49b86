/* SPDX-License-Identifier: GPL-3.0-or-later
 *
 * Escape: closes a window beside the bench.
 */
#pragma once

#include <gtk/gtk.h>

/* By Escape, unless what has the focus there takes the key for itself. */
void spelch_escape_closes (GtkWindow *window);
