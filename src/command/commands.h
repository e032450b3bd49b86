/* SPDX-License-Identifier: GPL-3.0-or-later
 *
 * Commands: each takes the words after its name (argv[0] is the name) and gives an exit status. None needs a
 * display.
 */
#pragma once

int spelch_command_plan (int argc, char **argv);
int spelch_command_rank (int argc, char **argv);
int spelch_command_compare (int argc, char **argv);
int spelch_command_draw (int argc, char **argv);
int spelch_command_sheet (int argc, char **argv);
int spelch_command_check (int argc, char **argv);
int spelch_command_practice (int argc, char **argv);

/* Prints an error on standard error, in one line, and gives the status for it. */
int spelch_command_fail (const char *sentence, int status);
