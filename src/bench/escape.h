/* SPDX-License-Identifier: GPL-3.0-or-later
 *
 * Escape: closes a window beside the bench.
 */
#pragma once

#include <gtk/gtk.h>

void spelch_escape_closes (GtkWindow *window);
