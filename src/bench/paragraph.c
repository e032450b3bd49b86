/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "bench/paragraph.h"
#include "drawing/lettering.h"

void
spelch_paragraph_set (GtkLabel *label, const char *words)
{
  g_autofree char *kept = spelch_lettering_keep_units (words != NULL ? words : "", false);
  gtk_label_set_text (label, kept);
  /* What is read out needs no signs for the breaking of lines. */
  if (words != NULL)
    gtk_accessible_update_property (GTK_ACCESSIBLE (label), GTK_ACCESSIBLE_PROPERTY_LABEL, words, -1);
}

GtkWidget *
spelch_paragraph_new (const char *words, const char *css_class)
{
  GtkWidget *label = gtk_label_new (NULL);
  spelch_paragraph_set (GTK_LABEL (label), words);
  gtk_label_set_wrap (GTK_LABEL (label), TRUE);
  gtk_label_set_xalign (GTK_LABEL (label), 0);
  gtk_widget_add_css_class (label, css_class);
  return label;
}
