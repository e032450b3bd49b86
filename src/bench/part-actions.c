/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "bench/part-actions.h"
#include "bench/part-edits.h"
#include "files/shop-data.h"

#include <glib/gi18n-lib.h>

static const SpelchCut *
current (SpelchPartActions *actions)
{
  const SpelchPart *part = spelch_session_get_part (actions->session);
  guint index = spelch_session_get_cut_index (actions->session);
  return part != NULL && index < part->n_cuts ? &part->cuts[index] : NULL;
}

static void
show_page (SpelchPartActions *actions, const char *page)
{
  gtk_stack_set_visible_child_name (actions->pages, page);
}

/* ---- Cuts ---- */

static void
add_cut (GSimpleAction *action, GVariant *kind_code, gpointer data)
{
  SpelchPartActions *actions = data;
  const SpelchPart *part = spelch_session_get_part (actions->session);
  int kind = 0;
  if (part == NULL
      || !spelch_code_read (&SPELCH_CUT_KIND_CODES, g_variant_get_string (kind_code, NULL), &kind))
    return;
  SpelchCut cut = spelch_cut_start (part, (SpelchCutKind)kind);
  if (spelch_session_get_numbers (actions->session)->unit == SPELCH_UNIT_INCH)
    spelch_cut_round_to_inches (part, &cut);
  g_autofree char *name = g_strdup_printf (_ ("add “%s”"), cut.name);
  guint at = part->n_cuts;
  if (!spelch_session_edit (actions->session, spelch_edit_add_cut (part, &cut, at), name, NULL))
    return;
  spelch_session_show_cut (actions->session, at);
  show_page (actions, "cut");
  spelch_cut_editor_begin (actions->cut_editor, "name");
}

static void
change_cut (GSimpleAction *action, GVariant *parameter, gpointer data)
{
  SpelchPartActions *actions = data;
  if (current (actions) == NULL)
    return;
  show_page (actions, "cut");
  spelch_cut_editor_begin (actions->cut_editor, "name");
}

static void
duplicate_cut (GSimpleAction *action, GVariant *parameter, gpointer data)
{
  SpelchPartActions *actions = data;
  const SpelchCut *cut = current (actions);
  if (cut == NULL)
    return;
  guint index = spelch_session_get_cut_index (actions->session);
  g_autofree char *name = g_strdup_printf (_ ("duplicate “%s”"), cut->name);
  SpelchPart *part = spelch_session_get_part (actions->session);
  if (spelch_session_edit (actions->session, spelch_edit_duplicate_cut (part, index), name, NULL))
    spelch_session_show_cut (actions->session, index + 1);
}

static void
delete_cut (GSimpleAction *action, GVariant *parameter, gpointer data)
{
  SpelchPartActions *actions = data;
  const SpelchCut *cut = current (actions);
  if (cut == NULL)
    return;
  guint index = spelch_session_get_cut_index (actions->session);
  g_autofree char *name = g_strdup_printf (_ ("delete “%s”"), cut->name);
  SpelchPart *part = spelch_session_get_part (actions->session);
  spelch_session_edit (actions->session, spelch_edit_delete_cut (part, index), name, NULL);
}

void
spelch_part_actions_move (SpelchSession *session, guint from, guint to)
{
  SpelchPart *part = spelch_session_get_part (session);
  if (part == NULL || from >= part->n_cuts || to >= part->n_cuts || from == to)
    return;
  g_autofree char *name = g_strdup_printf (_ ("move “%s”"), part->cuts[from].name);
  if (spelch_session_edit (session, spelch_edit_move_cut (part, from, to), name, NULL))
    spelch_session_show_cut (session, to);
}

static void
move_cut (SpelchPartActions *actions, int by)
{
  int from = (int)spelch_session_get_cut_index (actions->session);
  if (from + by >= 0)
    spelch_part_actions_move (actions->session, (guint)from, (guint)(from + by));
}

static void
move_cut_up (GSimpleAction *action, GVariant *parameter, gpointer data)
{
  move_cut (data, -1);
}

static void
move_cut_down (GSimpleAction *action, GVariant *parameter, gpointer data)
{
  move_cut (data, 1);
}

/* ---- The part ---- */

static void
change_part (GSimpleAction *action, GVariant *parameter, gpointer data)
{
  SpelchPartActions *actions = data;
  show_page (actions, "part");
  spelch_part_editor_begin (actions->part_editor, g_variant_get_string (parameter, NULL));
}

SpelchPart *
spelch_part_actions_new_part (SpelchPartActions *actions)
{
  const SpelchPart *open = spelch_session_get_part (actions->session);
  guint n = 0;
  const SpelchBoard *board = open != NULL ? &open->board : spelch_shop_boards (&n);
  const SpelchMachine *machine = open != NULL ? &open->machine : spelch_shop_machines (&n);
  SpelchPart *part = spelch_part_from_nothing (_ ("New part"), board, machine);
  spelch_preferences_seed (spelch_preferred_get (actions->preferred), part);
  return part;
}

/* ---- Adding them ---- */

static void
editor_done (SpelchPartActions *actions)
{
  show_page (actions, "plan");
  gtk_widget_child_focus (actions->list, GTK_DIR_TAB_FORWARD);
}

void
spelch_part_actions_follow (SpelchPartActions *actions, GActionMap *window)
{
  static const char *const of_a_cut[]
      = { "change-cut", "duplicate-cut", "delete-cut", "move-cut-up", "move-cut-down" };
  const SpelchPart *part = spelch_session_get_part (actions->session);
  guint index = spelch_session_get_cut_index (actions->session), n = part == NULL ? 0 : part->n_cuts;
  const bool makes_sense[] = { n > 0, n > 0, n > 0, index > 0, index + 1 < n };
  for (guint i = 0; i < G_N_ELEMENTS (of_a_cut); i++)
    {
      GAction *action = g_action_map_lookup_action (window, of_a_cut[i]);
      g_simple_action_set_enabled (G_SIMPLE_ACTION (action), makes_sense[i]);
    }
}

void
spelch_part_actions_add (SpelchPartActions *actions, GActionMap *window)
{
  static const GActionEntry ENTRIES[] = {
    { .name = "add-cut", .parameter_type = "s", .activate = add_cut },
    { .name = "change-cut", .activate = change_cut },
    { .name = "duplicate-cut", .activate = duplicate_cut },
    { .name = "delete-cut", .activate = delete_cut },
    { .name = "move-cut-up", .activate = move_cut_up },
    { .name = "move-cut-down", .activate = move_cut_down },
    { .name = "change-part", .parameter_type = "s", .activate = change_part },
  };
  g_action_map_add_action_entries (window, ENTRIES, G_N_ELEMENTS (ENTRIES), actions);
  g_signal_connect_swapped (actions->cut_editor, "done", G_CALLBACK (editor_done), actions);
  g_signal_connect_swapped (actions->part_editor, "done", G_CALLBACK (editor_done), actions);
}
