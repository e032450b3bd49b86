/* SPDX-License-Identifier: GPL-3.0-or-later
 *
 * Board as JSON: the members of one board, the same in a part, among the boards and in the starter set.
 */
#pragma once

#include "files/json-fields.h"
#include "files/json-writer.h"
#include "shop/board.h"

/* Reads a board's members, what isn't told at its default. The caller asks spelch_board_fault() whether they
 * fit. */
SpelchBoard spelch_board_read (SpelchFields *fields);

/* Writes a board's members into the object that is open, each layer on a line, without those at their
 * default. */
void spelch_board_write (SpelchWriter *writer, const SpelchBoard *board);
