/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "bench/paragraph.h"

GtkWidget *
spelch_paragraph_new (const char *words, const char *css_class)
{
  GtkWidget *label = gtk_label_new (words);
  gtk_label_set_wrap (GTK_LABEL (label), TRUE);
  gtk_label_set_xalign (GTK_LABEL (label), 0);
  gtk_widget_add_css_class (label, css_class);
  return label;
}
