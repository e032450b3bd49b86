/* SPDX-License-Identifier: GPL-3.0-or-later
 *
 * Drafting: a form's way into the session. What is typed is shown in the drawing at once, as a gesture; what
 * is entered becomes one step of undo; what is dropped leaves no trace.
 */
#pragma once

#include "bench/bench-session.h"

typedef struct
{
  SpelchSession *session;
  bool under_way;
} SpelchDrafting;

/* Shows @part (ownership passes) while it is typed. @name: what undo says should the gesture end otherwise.
 */
void spelch_drafting_show (SpelchDrafting *drafting, SpelchPart *part, const char *name);

/* Takes @part (ownership passes) as one step called @name; merged as in spelch_session_edit(). */
void spelch_drafting_enter (SpelchDrafting *drafting, SpelchPart *part, const char *name, const char *merge);

/* As it was before anything was typed. */
void spelch_drafting_drop (SpelchDrafting *drafting);

/* Whether what the session shows is what is typed. Notices when the gesture was ended elsewhere. */
bool spelch_drafting_is_under_way (SpelchDrafting *drafting);
