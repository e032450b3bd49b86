/* SPDX-License-Identifier: GPL-3.0-or-later
 *
 * Kept picture: a widget that shows a small drawing, rasterised once and kept until told that it changed.
 */
#pragma once

#include <gtk/gtk.h>

G_BEGIN_DECLS

/* Draws into a picture of width x height (widget units). */
typedef void (*SpelchPictureDraw) (cairo_t *cr, double width, double height, gpointer data);

#define SPELCH_TYPE_KEPT_PICTURE (spelch_kept_picture_get_type ())
G_DECLARE_FINAL_TYPE (SpelchKeptPicture, spelch_kept_picture, SPELCH, KEPT_PICTURE, GtkWidget)

/* @draw is called with @data when the picture is needed; @data must outlive the widget or be cleared with
 * NULL. */
void spelch_kept_picture_set_draw (SpelchKeptPicture *self, SpelchPictureDraw draw, gpointer data);

/* Size in widget units. */
void spelch_kept_picture_set_size (SpelchKeptPicture *self, int width, int height);

/* The picture is another one now. */
void spelch_kept_picture_changed (SpelchKeptPicture *self);

G_END_DECLS
