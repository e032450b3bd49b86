/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "bench/text-size.h"

#define BODY_PIXELS 13 /* text size of 1 in a drawing */

double
spelch_text_pixels (GtkWidget *widget)
{
  PangoContext *context = gtk_widget_get_pango_context (widget);
  const PangoFontDescription *font = pango_context_get_font_description (context);
  double size = (double)pango_font_description_get_size (font) / PANGO_SCALE;
  double dpi = pango_cairo_context_get_resolution (context);
  if (!pango_font_description_get_size_is_absolute (font))
    size *= (dpi > 0 ? dpi : 96) / 72;
  return MAX (size, 6);
}

double
spelch_text_factor (GtkWidget *widget)
{
  return CLAMP (spelch_text_pixels (widget) / BODY_PIXELS, 1, 2);
}

const char *
spelch_text_family (GtkWidget *widget)
{
  PangoContext *context = gtk_widget_get_pango_context (widget);
  return pango_font_description_get_family (pango_context_get_font_description (context));
}

void
spelch_text_keep_lettering (GtkWidget *widget, SpelchLettering **lettering)
{
  double factor = spelch_text_factor (widget);
  const char *family = spelch_text_family (widget);
  if (*lettering != NULL && spelch_lettering_suits (*lettering, family, factor))
    return;
  g_clear_pointer (lettering, spelch_lettering_unref);
  *lettering = spelch_lettering_new (family, factor);
}
