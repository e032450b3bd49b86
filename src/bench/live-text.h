/* SPDX-License-Identifier: GPL-3.0-or-later
 *
 * Live text: a text that changes while something is dragged. It keeps room for a number of lines, keeps its
 * layout and only repaints itself, so that two dozen of them changing in a frame cost no relayout of the
 * window. It asks for more room only when a text needs more lines than it ever had.
 */
#pragma once

#include "bench/glyph.h"

#include <gtk/gtk.h>

G_BEGIN_DECLS

#define SPELCH_TYPE_LIVE_TEXT (spelch_live_text_get_type ())
G_DECLARE_FINAL_TYPE (SpelchLiveText, spelch_live_text, SPELCH, LIVE_TEXT, GtkWidget)

/* Properties (also for templates): "lines" kept free (1), "xalign" (0 to 1), "width-chars" wanted at the
 * least, "caption" spoken before the text ("Feed"), "hanging": it begins with a bullet, "• ", and its further
 * lines are set in by that, "middle": what needs less than the height it has stands in the middle of it. */

/* Owned by it, and only valid until it is set again. */
const char *spelch_live_text_get_text (SpelchLiveText *self);

/* Both are copied; nothing happens where they are as before. */
void spelch_live_text_set_text (SpelchLiveText *self, const char *text);
void spelch_live_text_set_caption (SpelchLiveText *self, const char *caption);

/* Draws a sign just before a text of one line. */
void spelch_live_text_set_glyph (SpelchLiveText *self, SpelchGlyphKind kind);

/* Gives back lines that an earlier, longer text needed. */
void spelch_live_text_settle (SpelchLiveText *self);

/* Lets it take just the lines it needs at the width it is given next. */
void spelch_live_text_forget (SpelchLiveText *self);

G_END_DECLS
