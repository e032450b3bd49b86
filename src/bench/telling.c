/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "bench/telling.h"

#define WAIT_MS 80

typedef struct
{
  GtkAccessible *accessible; /* which owns this */
  GtkAccessibleProperty property;
  char *text;
  char *told;
  guint waiting; /* source */
} SpelchTelling;

static void
telling_free (gpointer data)
{
  SpelchTelling *telling = data;
  g_clear_handle_id (&telling->waiting, g_source_remove);
  g_free (telling->text);
  g_free (telling->told);
  g_free (telling);
}

static gboolean
tell (gpointer data)
{
  SpelchTelling *telling = data;
  telling->waiting = 0;
  if (g_strcmp0 (telling->text, telling->told) == 0)
    return G_SOURCE_REMOVE;
  g_free (telling->told);
  telling->told = g_strdup (telling->text);
  gtk_accessible_update_property (telling->accessible, telling->property, telling->told, -1);
  return G_SOURCE_REMOVE;
}

static SpelchTelling *
telling_of (GtkWidget *widget, GtkAccessibleProperty property)
{
  const char *key = property == GTK_ACCESSIBLE_PROPERTY_LABEL ? "spelch-label" : "spelch-description";
  SpelchTelling *telling = g_object_get_data (G_OBJECT (widget), key);
  if (telling != NULL)
    return telling;
  telling = g_new0 (SpelchTelling, 1);
  telling->accessible = GTK_ACCESSIBLE (widget);
  telling->property = property;
  g_object_set_data_full (G_OBJECT (widget), key, telling, telling_free);
  return telling;
}

void
spelch_tell_soon (GtkWidget *widget, GtkAccessibleProperty property, const char *text)
{
  SpelchTelling *telling = telling_of (widget, property);
  if (g_strcmp0 (telling->text, text) == 0)
    return;
  g_free (telling->text);
  telling->text = g_strdup (text);
  if (telling->waiting == 0)
    telling->waiting = g_timeout_add (WAIT_MS, tell, telling);
}
