/* SPDX-License-Identifier: GPL-3.0-or-later
 *
 * Words of sources: what the model's file says of a work beside its name, in the reader's language. Names of
 * works stay as they are cited.
 */
#pragma once

#include <stdbool.h>

/* @source as data/model.json has it, in the reader's language; @source itself where it is no more than the
 * name of a work. Not to be freed. */
const char *spelch_words_source (const char *source);

/* Whether more than the name of a work is said there, so that it is translated. */
bool spelch_words_source_is_told (const char *source);

/* Whether it names no work at all: then the class of evidence says all. */
bool spelch_words_source_is_nobodys (const char *source);
