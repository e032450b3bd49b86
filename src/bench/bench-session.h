/* SPDX-License-Identifier: GPL-3.0-or-later
 *
 * Session: what the window is about, without any widget: the part, the cut looked at, the bit tried on it and
 * the plan of the two, with undo, redo and the file it came from. Parts are immutable; undo is a list of
 * earlier ones. Everything shown is read from here, every edit goes through here, and the plan is made once
 * for each change.
 */
#pragma once

#include "bench/shelf.h"
#include "plan/plan.h"
#include "plan/words.h"
#include "shop/part.h"

#include <gio/gio.h>

G_BEGIN_DECLS

/* What a "changed" signal is about; more than one may be set. */
typedef enum
{
  SPELCH_CHANGE_PLAN = 1 << 0,    /* the plan, its bit or the pass shown */
  SPELCH_CHANGE_PART = 1 << 1,    /* the part's values */
  SPELCH_CHANGE_CUT = 1 << 2,     /* another cut is looked at */
  SPELCH_CHANGE_HISTORY = 1 << 3, /* undo, redo, the file, whether anything is unsaved */
  SPELCH_CHANGE_NUMBERS = 1 << 4, /* how numbers are written */
  SPELCH_CHANGE_OPENED = 1 << 5,  /* a whole other part */
  SPELCH_CHANGE_BITS = 1 << 6,    /* the bits there are to choose from */
} SpelchSessionChange;

#define SPELCH_TYPE_SESSION (spelch_session_get_type ())
G_DECLARE_FINAL_TYPE (SpelchSession, spelch_session, SPELCH, SESSION, GObject)

/* Signals: "changed" (SpelchSessionChange as guint) at once; "settled" (SpelchSessionChange as guint, all
 * since the last one) when no drag is under way and the window has been painted, for views that may follow
 * later; "said" (const char *): a passing remark, such as why an edit was refused.
 * @constants must outlive the session. It has no part until one is opened. */
SpelchSession *spelch_session_new (const SpelchConstants *constants);

/* Looks at @part (a reference is taken), which came from @file (NULL: none yet) with @etag. Undo and redo
 * are forgotten. With @unsaved the part isn't as it stands in the file (recovered after a crash). */
void spelch_session_open (SpelchSession *self, SpelchPart *part, GFile *file, const char *etag, bool unsaved);

/* All NULL until a part is open; plan, cut and bit also while a part has no cuts. The cut is as
 * planned: what is held belongs to its accepted bit and is left out for another. Owned by the session; the
 * part is valid until the next change unless a reference is taken. */
SpelchPart *spelch_session_get_part (SpelchSession *self);
const SpelchCut *spelch_session_get_cut (SpelchSession *self);
const SpelchPlan *spelch_session_get_plan (SpelchSession *self);
const SpelchBit *spelch_session_get_bit (SpelchSession *self); /* the plan's: tried, accepted or suggested */
const SpelchConstants *spelch_session_get_constants (SpelchSession *self);

/* The plan of the same cut with the board's other face toward the motor. False for blind cuts, which are made
 * from the face they lie in. */
bool spelch_session_plan_other_way (SpelchSession *self, SpelchPlan *plan, SpelchCut *cut);

/* The cut looked at, by its place in the part, from 0. Showing another commits what is being changed and
 * begins at its first pass; what isn't there changes nothing. */
guint spelch_session_get_cut_index (SpelchSession *self);
void spelch_session_show_cut (SpelchSession *self, guint index);

/* Bits to choose from: the part's own, then those of the drawer, without retired ones, whose ids the part
 * doesn't use. The drawer is the starter set until another is given. */
void spelch_session_set_drawer (SpelchSession *self, SpelchShelf *bits);
guint spelch_session_count_bits (SpelchSession *self);
const SpelchBit *spelch_session_get_nth_bit (SpelchSession *self, guint n);

/* All of them in a row. Free with g_free(). */
SpelchBit *spelch_session_copy_bits (SpelchSession *self);

/* The bit the current cut has accepted, or NULL. */
const SpelchBit *spelch_session_get_accepted (SpelchSession *self);

/* Tries a bit without accepting it; NULL goes back. */
void spelch_session_try_bit (SpelchSession *self, const SpelchBit *bit);

/* The pass at whose depth the bit is shown, from 1. */
guint spelch_session_get_shown_pass (SpelchSession *self);
void spelch_session_show_pass (SpelchSession *self, guint pass);

/* Whether somebody is asked what comes out: then nobody tells it, neither the drawing nor its marks. */
bool spelch_session_is_asked (SpelchSession *self);
void spelch_session_set_asked (SpelchSession *self, bool asked);

/* What has changed settles now, before the window is painted, unless a drag is under way. */
void spelch_session_settle (SpelchSession *self);

/* How numbers are written here. Owned by the session. */
const SpelchNumbers *spelch_session_get_numbers (SpelchSession *self);
void spelch_session_set_numbers (SpelchSession *self, const SpelchNumbers *numbers);

/* Takes @part (ownership passes) as the part's next state. @name is what undo will say ("move pass 2").
 * Outside a gesture it becomes one entry of the history, merged with the entry before when both carry the
 * same @merge and follow within a second. Inside a gesture it replaces what the gesture made so far. False,
 * with a remark said, when the part is read-only or the new one is faulty. */
bool spelch_session_edit (SpelchSession *self, SpelchPart *part, const char *name, const char *merge);

/* Why the part can't be edited or saved, as a sentence; NULL when it can. */
const char *spelch_session_why_locked (SpelchSession *self);

/* A gesture is any number of edits that are undone as one. Begin, then commit (keep) or cancel (as before).
 */
void spelch_session_begin (SpelchSession *self);
void spelch_session_commit (SpelchSession *self);
void spelch_session_cancel (SpelchSession *self);
bool spelch_session_in_gesture (SpelchSession *self);

/* What undo and redo would do, or NULL; owned by the session. */
const char *spelch_session_undo_name (SpelchSession *self);
const char *spelch_session_redo_name (SpelchSession *self);

/* Whether @part is what is looked at, or undo or redo comes to it. */
bool spelch_session_remembers (SpelchSession *self, const SpelchPart *part);
void spelch_session_undo (SpelchSession *self);
void spelch_session_redo (SpelchSession *self);

/* Whether the part isn't as it stands in its file, and that file: owned by the session, NULL when there is
 * none yet. */
bool spelch_session_is_unsaved (SpelchSession *self);
GFile *spelch_session_get_file (SpelchSession *self);

/* What tells whether the file has changed since it was read or saved; NULL: not known. */
const char *spelch_session_get_etag (SpelchSession *self);

/* Saves to @file (NULL: where it came from; then a change on disk is noticed). On failure nothing changes. */
bool spelch_session_save (SpelchSession *self, GFile *file, GError **error);

/* Whether something else stands in the file than was read or saved last. A file that is gone can be saved
 * again. */
bool spelch_session_is_overtaken (SpelchSession *self);

/* What stands in the file now may be saved over. */
void spelch_session_overrule (SpelchSession *self);

/* Takes @part, as the file was read again with @etag: a step that can be undone. */
void spelch_session_reload (SpelchSession *self, SpelchPart *part, const char *etag);

/* Makes a passing remark. */
void spelch_session_say (SpelchSession *self, const char *sentence);

G_END_DECLS
