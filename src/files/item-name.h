/* SPDX-License-Identifier: GPL-3.0-or-later
 *
 * Item name: how bits, boards, machines, cuts and parts are called in files. An item without a name goes by
 * its id.
 */
#pragma once

#include "files/json-fields.h"
#include "files/json-writer.h"
#include "shop/bit.h"

/* The members "id" and "name"; a name like the id isn't written. */
void spelch_item_read_name (SpelchFields *fields, char id[SPELCH_ID_SIZE], char name[SPELCH_NAME_SIZE]);
void spelch_item_write_name (SpelchWriter *writer, const char *id, const char *name);
