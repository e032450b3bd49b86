/* SPDX-License-Identifier: GPL-3.0-or-later
 *
 * Limit line: what holds the feed back, as named ticks on one line from 0 to 100 % used.
 */
#pragma once

#include "plan/plan.h"

#include <gtk/gtk.h>

G_BEGIN_DECLS

#define SPELCH_TYPE_LIMIT_LINE (spelch_limit_line_get_type ())
G_DECLARE_FINAL_TYPE (SpelchLimitLine, spelch_limit_line, SPELCH, LIMIT_LINE, GtkWidget)

/* NULL shows an empty line. */
void spelch_limit_line_set_plan (SpelchLimitLine *self, const SpelchPlan *plan);

G_END_DECLS
