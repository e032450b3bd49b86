/* SPDX-License-Identifier: GPL-3.0-or-later
 *
 * Unread members: those of a file that the program keeps but doesn't read, told to whoever asks whether the
 * file is in order, since a misspelt member looks like somebody's own.
 */
#pragma once

#include <glib.h>
#include <stdbool.h>

typedef struct
{
  char *at;       /* the object it stands in: "cuts/shelf-dado", "" for the outermost */
  char *member;   /* "depht" */
  char *nearest;  /* the member it was probably meant for, "depth"; NULL when none is close */
  char *sentence; /* where it stands, and that it is kept but not read */
} SpelchUnread;

/* A list of SpelchUnread that owns them. Free with g_ptr_array_unref(). */
GPtrArray *spelch_unread_list_new (void);

/* Tells of @member, which stands in @at and, in sentences, after @prefix ("cuts[2] 'shelf-dado': "). @known
 * are the members read there that aren't told; of equally close ones the first by letters is taken. Members
 * called "source" and "note" are meant for people anywhere and aren't told of. */
void spelch_unread_add (GPtrArray *list, const char *at, const char *prefix, const char *member,
                        const GPtrArray *known);

/* The one of @known (char *) that @member was probably meant for, or NULL: few letters differ, or only the
 * unit is missing or too much ("helix" for "helix_deg"). Large and small letters count as one, and hyphens
 * and gaps as underscores. */
const char *spelch_unread_nearest (const char *member, const GPtrArray *known);
