/* SPDX-License-Identifier: GPL-3.0-or-later
 *
 * Sheet file: a bench sheet as PDF, with title, outline and text that can be selected, or as SVG or PNG, a
 * file for each page: OUT-1.svg, OUT-2.svg. The file's name decides.
 */
#pragma once

#include "drawing/sheet.h"

#include <gio/gio.h>

#define SPELCH_SHEET_DPI 150.0 /* of PNG */

/* Eight digits that change with anything the part says. g_free() it. */
char *spelch_sheet_revision (const SpelchPart *part);

/* Now, or the moment that SOURCE_DATE_EPOCH in the environment sets, for files that must come out the same
 * each time. g_date_time_unref() it. */
GDateTime *spelch_sheet_moment (void);

/* Writes it; @when is the moment it tells as its making. Every page is drawn first, and a file that can't be
 * written leaves the old one whole: false with a SPELCH_FILE_ERROR. */
bool spelch_sheet_save (const SpelchSheet *sheet, GFile *file, GDateTime *when, GError **error);
