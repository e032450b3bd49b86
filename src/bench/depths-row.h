/* SPDX-License-Identifier: GPL-3.0-or-later
 *
 * Depths row: an entry field for each quantity under the drawing. What there is to say about them goes to the
 * remark over the foot of the drawing.
 */
#pragma once

#include "bench/quantity.h"
#include "bench/remark.h"

G_BEGIN_DECLS

#define SPELCH_TYPE_DEPTHS_ROW (spelch_depths_row_get_type ())
G_DECLARE_FINAL_TYPE (SpelchDepthsRow, spelch_depths_row, SPELCH, DEPTHS_ROW, GtkWidget)

/* @quantities: SpelchQuantity, in the order they stand in. @session and @remark must outlive the row; once.
 */
void spelch_depths_row_set_session (SpelchDepthsRow *self, SpelchSession *session, GListModel *quantities,
                                    SpelchRemark *remark);

G_END_DECLS
