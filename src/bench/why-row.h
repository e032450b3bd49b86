/* SPDX-License-Identifier: GPL-3.0-or-later
 *
 * Why row: anything that is shown with a small sign beside it, which opens what is to be said about it below:
 * a chain of reasons, in sections. A click anywhere on what is shown opens and closes it too. While it is
 * closed it knows nothing and costs nothing.
 */
#pragma once

#include <gtk/gtk.h>
#include <stdbool.h>

G_BEGIN_DECLS

#define SPELCH_TYPE_WHY_ROW (spelch_why_row_get_type ())
G_DECLARE_FINAL_TYPE (SpelchWhyRow, spelch_why_row, SPELCH, WHY_ROW, GtkWidget)

/* Properties: "child": what is shown; "title": what the sign is called, "Why: Feed". Signal "toggled": a
 * person opened or closed it. */
void spelch_why_row_set_title (SpelchWhyRow *self, const char *title);

bool spelch_why_row_is_open (SpelchWhyRow *self);
void spelch_why_row_set_open (SpelchWhyRow *self, bool open);

/* Whether there is anything to open; closes it when not. */
void spelch_why_row_set_offered (SpelchWhyRow *self, bool offered);

/* What is said, in order: begin, then any number of headings and sentences, then end. What is the same as
 * before isn't laid out again. */
void spelch_why_row_begin (SpelchWhyRow *self);
void spelch_why_row_add_heading (SpelchWhyRow *self, const char *heading);
void spelch_why_row_add (SpelchWhyRow *self, const char *sentence);
void spelch_why_row_end (SpelchWhyRow *self);

/* Gives back lines that earlier, longer sentences needed. */
void spelch_why_row_settle (SpelchWhyRow *self);

G_END_DECLS
