/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "bench/template.h"

void
spelch_template_dispose (GtkWidget *widget, GType type)
{
  GtkWidget *child = NULL;
  gtk_widget_dispose_template (widget, type);
  /* GTK 4.8 clears the fields but leaves the outermost children in place. */
  while ((child = gtk_widget_get_first_child (widget)) != NULL)
    gtk_widget_unparent (child);
}
