/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "bench/text-size.h"

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
