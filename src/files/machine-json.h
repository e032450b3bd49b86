/* SPDX-License-Identifier: GPL-3.0-or-later
 *
 * Machine as JSON: the members of one machine, the same in a part, among the machines and in the starter set.
 */
#pragma once

#include "files/json-fields.h"
#include "files/json-writer.h"
#include "shop/machine.h"

/* Reads a machine's members, what isn't told at its default. The caller asks spelch_machine_fault() whether
 * they fit. */
SpelchMachine spelch_machine_read (SpelchFields *fields);

/* Writes a machine's members into the object that is open, without those at their default. */
void spelch_machine_write (SpelchWriter *writer, const SpelchMachine *machine);
