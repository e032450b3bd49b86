/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "drawing/lettering.h"

#include <string.h>

void
spelch_lettering_init (SpelchLettering *lettering, const char *family, double factor)
{
  cairo_font_options_t *options = cairo_font_options_create ();

  cairo_font_options_set_hint_style (options, CAIRO_HINT_STYLE_NONE);
  cairo_font_options_set_hint_metrics (options, CAIRO_HINT_METRICS_OFF);
  cairo_font_options_set_antialias (options, CAIRO_ANTIALIAS_GRAY);

  lettering->context = pango_font_map_create_context (pango_cairo_font_map_get_default ());
  pango_cairo_context_set_font_options (lettering->context, options);
  pango_cairo_context_set_resolution (lettering->context, 72.0);
  pango_context_set_round_glyph_positions (lettering->context, FALSE);
  cairo_font_options_destroy (options);

  lettering->font = pango_font_description_new ();
  pango_font_description_set_family (lettering->font, family != NULL ? family : SPELCH_FAMILY);
  lettering->factor = factor;
}

void
spelch_lettering_clear (SpelchLettering *lettering)
{
  g_clear_object (&lettering->context);
  g_clear_pointer (&lettering->font, pango_font_description_free);
}

/* Words arrive composed and need no contextual alternates; looking for them takes a third of the time of
 * setting a label. */
static void
set_attributes (PangoLayout *layout, const char *text, bool title)
{
  PangoAttrList *attributes = pango_attr_list_new ();

  pango_attr_list_insert (attributes, pango_attr_font_features_new ("calt=0,ccmp=0"));
  if (title)
    {
      const char *end = strchr (text, '\n');
      PangoAttribute *strong = pango_attr_weight_new (PANGO_WEIGHT_SEMIBOLD);

      strong->start_index = 0;
      strong->end_index = end != NULL ? (guint)(end - text) : (guint)strlen (text);
      pango_attr_list_insert (attributes, strong);
    }
  pango_layout_set_attributes (layout, attributes);
  pango_attr_list_unref (attributes);
}

PangoLayout *
spelch_lettering_set (const SpelchLettering *lettering, const char *text, double size, SpelchLetters letters,
                      double wrap, PangoAlignment align)
{
  PangoLayout *layout = pango_layout_new (lettering->context);

  pango_font_description_set_absolute_size (lettering->font, size * lettering->factor * PANGO_SCALE);
  pango_font_description_set_weight (lettering->font, letters == SPELCH_LETTERS_STRONG ? PANGO_WEIGHT_SEMIBOLD
                                                                                       : PANGO_WEIGHT_NORMAL);
  pango_layout_set_font_description (layout, lettering->font);
  pango_layout_set_alignment (layout, align);
  if (wrap > 0)
    {
      pango_layout_set_width (layout, (int)(wrap * PANGO_SCALE));
      pango_layout_set_wrap (layout, PANGO_WRAP_WORD_CHAR);
    }
  set_attributes (layout, text, letters == SPELCH_LETTERS_TITLE);
  pango_layout_set_text (layout, text, -1);
  return layout;
}

void
spelch_lettering_measure (PangoLayout *layout, double *width, double *height)
{
  PangoRectangle logical;

  pango_layout_get_extents (layout, NULL, &logical);
  *width = (double)logical.width / PANGO_SCALE;
  *height = (double)logical.height / PANGO_SCALE;
}

void
spelch_lettering_draw (cairo_t *cr, PangoLayout *layout, double x, double y, const SpelchColour *colour)
{
  PangoRectangle logical;

  /* A wrapped, right-aligned layout stands at the right of its wrapping width; what is drawn is its own box.
   */
  pango_layout_get_extents (layout, NULL, &logical);
  spelch_colour_set (cr, colour, 1.0);
  cairo_move_to (cr, x - (double)logical.x / PANGO_SCALE, y - (double)logical.y / PANGO_SCALE);
  pango_cairo_show_layout (cr, layout);
}

void
spelch_colour_set (cairo_t *cr, const SpelchColour *colour, double alpha)
{
  cairo_set_source_rgba (cr, colour->r, colour->g, colour->b, alpha);
}
