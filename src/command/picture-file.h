/* SPDX-License-Identifier: GPL-3.0-or-later
 *
 * Picture file: what the command line draws, written as SVG, PNG or PDF by the ending of the file's name.
 */
#pragma once

#include "command/asked.h"

#include "drawing/scene.h"

typedef void (*SpelchPictureFileDraw) (cairo_t *cr, gconstpointer data);

/* The size, look and numbers asked for; @width and @height where no size was. */
bool spelch_picture_file_view (const SpelchAsked *asked, int width, int height, SpelchView *view,
                               GError **error);

/* Draws and writes it, and gives an exit status; says what went wrong on standard error. An old picture stays
 * whole when that fails. */
int spelch_picture_file_write (const char *output, const SpelchView *view, SpelchPictureFileDraw draw,
                               gconstpointer data);
