/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "bench/canvas.h"

#include <glib.h>

SpelchCanvas
spelch_canvas_new (cairo_format_t format, int width, int height, int pixels)
{
  static const cairo_user_data_key_t PIXELS;
  int stride = cairo_format_stride_for_width (format, MAX (width * pixels, 1));
  guchar *data = g_malloc0_n ((gsize)MAX (height * pixels, 1), (gsize)stride);
  SpelchCanvas canvas
      = { cairo_image_surface_create_for_data (data, format, width * pixels, height * pixels, stride),
          cairo_image_surface_create_for_data (data, format, width * pixels, height * pixels, stride) };
  cairo_surface_set_device_scale (canvas.drawn, pixels, pixels);
  cairo_surface_set_device_scale (canvas.shown, pixels, pixels);
  cairo_surface_set_user_data (canvas.shown, &PIXELS, data, g_free);
  return canvas;
}

/* What nodes show is copied for them before the pixels go. */
void
spelch_canvas_clear (SpelchCanvas *canvas)
{
  g_clear_pointer (&canvas->drawn, cairo_surface_destroy);
  g_clear_pointer (&canvas->shown, cairo_surface_destroy);
}

cairo_t *
spelch_canvas_draw (const SpelchCanvas *canvas)
{
  return cairo_create (canvas->drawn);
}
