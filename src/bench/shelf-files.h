/* SPDX-License-Identifier: GPL-3.0-or-later
 *
 * Shelf files: lists brought into a shop's list from files, and written out of it.
 */
#pragma once

#include "bench/shelf-window.h"

/* Asks for a file and takes its entries into the list as one change. What lies there already is left, an
 * entry that differs from one with its id comes in as a further one; how many of each is said. */
void spelch_shelf_files_import (SpelchShelfWindow *window);

/* Asks where to, and writes the whole list there, retired entries too. Bits go into a file named .csv as a
 * table. */
void spelch_shelf_files_export (SpelchShelfWindow *window);

/* Without asking. @separator: of a table, ',' or ';'. The sentences on what became of it are free with
 * g_free(). */
char *spelch_shelf_files_take (SpelchShelf *shelf, GFile *file);
char *spelch_shelf_files_write (SpelchShelf *shelf, GFile *file, char separator);
