/* SPDX-License-Identifier: GPL-3.0-or-later
 *
 * Part actions: the window's actions on the part and its list of cuts, and the right-hand column they show:
 * the plan, or the form of the cut or the part.
 */
#pragma once

#include "bench/bench-session.h"
#include "bench/cut-editor.h"
#include "bench/part-editor.h"
#include "bench/preferred.h"

#include <gtk/gtk.h>

/* The pages of @pages are called "plan", "cut" and "part". */
typedef struct
{
  SpelchSession *session;
  GtkStack *pages;
  SpelchCutEditor *cut_editor;
  SpelchPartEditor *part_editor;
  SpelchPreferred *preferred; /* seed new parts, and only those */
  GtkWidget *list;            /* takes the focus when a form is done with */
} SpelchPartActions;

/* Adds to @window: add-cut (kind as its code), change-cut, duplicate-cut, delete-cut, move-cut-up,
 * move-cut-down, change-part. @actions must outlive @window. */
void spelch_part_actions_add (SpelchPartActions *actions, GActionMap *window);

/* The actions that make no sense now are switched off. */
void spelch_part_actions_follow (SpelchPartActions *actions, GActionMap *window);

/* A part from nothing, with the board and machine of the one open, and grades and tolerances as preferred. A
 * reference count of one. */
SpelchPart *spelch_part_actions_new_part (SpelchPartActions *actions);

/* Puts the cut at @from where the one at @to is, as an edit. */
void spelch_part_actions_move (SpelchSession *session, guint from, guint to);
