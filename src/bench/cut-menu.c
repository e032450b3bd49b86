/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "bench/cut-menu.h"
#include "bench/part-edits.h"

GMenuModel *
spelch_cut_menu_new (void)
{
  GMenu *menu = g_menu_new ();
  for (guint kind = 0; kind < SPELCH_CUT_KIND_CODES.n; kind++)
    {
      g_autoptr (GMenuItem) item = g_menu_item_new (spelch_cut_kind_name ((SpelchCutKind)kind), NULL);
      g_menu_item_set_action_and_target (item, "win.add-cut", "s",
                                         spelch_code_of (&SPELCH_CUT_KIND_CODES, (int)kind));
      g_menu_append_item (menu, item);
    }
  return G_MENU_MODEL (menu);
}
