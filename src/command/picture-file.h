/* SPDX-License-Identifier: GPL-3.0-or-later
 *
 * Picture file: what the command line draws, as it was asked for, and written to the file that was named.
 */
#pragma once

#include "command/asked.h"

#include "drawing/picture-file.h"
#include "drawing/scene.h"

/* The size, look and numbers asked for; @width and @height where no size was. */
bool spelch_picture_file_view (const SpelchAsked *asked, int width, int height, SpelchView *view,
                               GError **error);

/* Draws and writes it, and gives an exit status; says what went wrong on standard error. An old picture stays
 * whole when that fails. */
int spelch_picture_file_write (const char *output, const SpelchView *view, SpelchPictureFileDraw draw,
                               gconstpointer data);
