/* SPDX-License-Identifier: GPL-3.0-or-later
 *
 * Picture file: a drawing written as SVG, PNG or PDF, by the ending of the file's name.
 */
#pragma once

#include <cairo.h>
#include <gio/gio.h>
#include <stdbool.h>

typedef void (*SpelchPictureFileDraw) (cairo_t *cr, gconstpointer data);

/* Whether the ending of a file's name says how to write it. */
bool spelch_picture_file_knows (const char *name);

/* Draws a picture of @width x @height, pixels or points, and writes it. The name is one that
 * spelch_picture_file_knows(). An old picture stays whole when that fails; the error is a SPELCH_FILE_ERROR.
 */
bool spelch_picture_file_save (GFile *file, double width, double height, SpelchPictureFileDraw draw,
                               gconstpointer data, GError **error);
