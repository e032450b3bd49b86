/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "bench/tooltip.h"

void
spelch_tooltip_set (GtkWidget *widget, const char *words)
{
  if (g_strcmp0 (gtk_widget_get_tooltip_text (widget), words) == 0)
    return;
  if (gtk_widget_get_mapped (widget) || !gtk_widget_get_visible (widget))
    {
      gtk_widget_set_tooltip_text (widget, words);
      return;
    }
  gtk_widget_set_visible (widget, FALSE);
  gtk_widget_set_tooltip_text (widget, words);
  gtk_widget_set_visible (widget, TRUE);
}
