/* SPDX-License-Identifier: GPL-3.0-or-later
 *
 * Cut menu: the kinds of cut to add.
 */
#pragma once

#include <gio/gio.h>

/* Its items call win.add-cut. A new reference. */
GMenuModel *spelch_cut_menu_new (void);
