/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "bench/recent.h"

#include <glib/gi18n-lib.h>
#include <stdbool.h>

#define MOST      8
#define MIME_TYPE "application/x-spelch"

static const char *
our_name (void)
{
  return g_get_application_name ();
}

void
spelch_recent_add (GFile *file, const char *name)
{
  g_autofree char *uri = g_file_get_uri (file);
  g_autofree char *command = g_strconcat (g_get_prgname (), " %u", NULL);
  char *groups[] = { NULL };
  const GtkRecentData data = { .display_name = (char *)name,
                               .mime_type = (char *)MIME_TYPE,
                               .app_name = (char *)our_name (),
                               .app_exec = command,
                               .groups = groups };
  gtk_recent_manager_add_full (gtk_recent_manager_get_default (), uri, &data);
}

static bool
is_ours (GtkRecentInfo *info)
{
  return gtk_recent_info_has_application (info, our_name ()) && gtk_recent_info_exists (info);
}

static int
by_time (gconstpointer a, gconstpointer b)
{
  return g_date_time_compare (gtk_recent_info_get_modified ((GtkRecentInfo *)b),
                              gtk_recent_info_get_modified ((GtkRecentInfo *)a));
}

/* "A shelf (shelf.spelch)", with nothing taken for a mnemonic. */
static char *
label_of (GtkRecentInfo *info)
{
  g_autoptr (GFile) file = g_file_new_for_uri (gtk_recent_info_get_uri (info));
  g_autofree char *base = g_file_get_basename (file);
  g_autofree char *shown = g_filename_display_name (base);
  g_autoptr (GString) label = g_string_new (gtk_recent_info_get_display_name (info));
  g_string_append_printf (label, " (%s)", shown);
  g_string_replace (label, "_", "__", 0);
  return g_string_free (g_steal_pointer (&label), FALSE);
}

static void
fill (GMenu *menu)
{
  GList *items = gtk_recent_manager_get_items (gtk_recent_manager_get_default ());
  g_autoptr (GMenu) names = g_menu_new ();
  g_menu_remove_all (menu);
  items = g_list_sort (items, by_time);
  for (GList *item = items; item != NULL; item = item->next)
    {
      if (!is_ours (item->data) || g_menu_model_get_n_items (G_MENU_MODEL (names)) == MOST)
        continue;
      g_autofree char *label = label_of (item->data);
      g_autoptr (GMenuItem) entry = g_menu_item_new (label, NULL);
      g_menu_item_set_action_and_target (entry, "app.open-recent", "s", gtk_recent_info_get_uri (item->data));
      g_menu_append_item (names, entry);
    }
  g_list_free_full (items, (GDestroyNotify)gtk_recent_info_unref);
  g_menu_append_section (menu, NULL, G_MENU_MODEL (names));
  g_autoptr (GMenu) clear = g_menu_new ();
  g_menu_append (clear, _ ("_Clear this list"), "app.clear-recent");
  g_menu_append_section (menu, NULL, G_MENU_MODEL (clear));
}

GMenuModel *
spelch_recent_menu (void)
{
  GMenu *menu = g_menu_new ();
  g_signal_connect_object (gtk_recent_manager_get_default (), "changed", G_CALLBACK (fill), menu,
                           G_CONNECT_SWAPPED);
  fill (menu);
  return G_MENU_MODEL (menu);
}

void
spelch_recent_clear (void)
{
  GtkRecentManager *manager = gtk_recent_manager_get_default ();
  GList *items = gtk_recent_manager_get_items (manager);
  for (GList *item = items; item != NULL; item = item->next)
    if (gtk_recent_info_has_application (item->data, our_name ()))
      gtk_recent_manager_remove_item (manager, gtk_recent_info_get_uri (item->data), NULL);
  g_list_free_full (items, (GDestroyNotify)gtk_recent_info_unref);
}
