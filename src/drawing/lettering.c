/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "drawing/lettering.h"

#include <math.h>
#include <string.h>

#define MOST_KEPT 256 /* layouts; a drag over every depth would gather them without end */
#define UNIT_MOST 3   /* letters of "mm", and of "min" */

struct _SpelchLettering
{
  grefcount references;
  PangoContext *context;
  PangoFontDescription *font;
  char *family;
  double factor;
  GHashTable *kept; /* how and what -> PangoLayout */
};

SpelchLettering *
spelch_lettering_new (const char *family, double factor)
{
  SpelchLettering *lettering = g_new0 (SpelchLettering, 1);
  cairo_font_options_t *options = cairo_font_options_create ();

  cairo_font_options_set_hint_style (options, CAIRO_HINT_STYLE_NONE);
  cairo_font_options_set_hint_metrics (options, CAIRO_HINT_METRICS_OFF);
  cairo_font_options_set_antialias (options, CAIRO_ANTIALIAS_GRAY);

  g_ref_count_init (&lettering->references);
  lettering->context = pango_font_map_create_context (pango_cairo_font_map_get_default ());
  pango_cairo_context_set_font_options (lettering->context, options);
  pango_cairo_context_set_resolution (lettering->context, 72.0);
  pango_context_set_round_glyph_positions (lettering->context, FALSE);
  cairo_font_options_destroy (options);

  lettering->family = g_strdup (family != NULL ? family : SPELCH_FAMILY);
  lettering->font = pango_font_description_new ();
  pango_font_description_set_family (lettering->font, lettering->family);
  lettering->factor = factor;
  lettering->kept = g_hash_table_new_full (g_str_hash, g_str_equal, g_free, g_object_unref);
  return lettering;
}

SpelchLettering *
spelch_lettering_ref (SpelchLettering *lettering)
{
  g_ref_count_inc (&lettering->references);
  return lettering;
}

void
spelch_lettering_unref (SpelchLettering *lettering)
{
  if (!g_ref_count_dec (&lettering->references))
    return;
  g_hash_table_unref (lettering->kept);
  g_object_unref (lettering->context);
  pango_font_description_free (lettering->font);
  g_free (lettering->family);
  g_free (lettering);
}

bool
spelch_lettering_suits (const SpelchLettering *lettering, const char *family, double factor)
{
  return factor == lettering->factor
         && g_str_equal (lettering->family, family != NULL ? family : SPELCH_FAMILY);
}

#define PLAINLY "calt=0,ccmp=0" /* see spelch_lettering_plainly() */

void
spelch_lettering_plainly (PangoLayout *layout)
{
  PangoAttrList *attributes = pango_attr_list_new ();

  pango_attr_list_insert (attributes, pango_attr_font_features_new (PLAINLY));
  pango_layout_set_attributes (layout, attributes);
  pango_attr_list_unref (attributes);
}

/* "mm/min" stays on its line: Unicode would let it break after the stroke. */
static void
keep_units (PangoAttrList *attributes, const char *text)
{
  for (const char *stroke = strchr (text, '/'); stroke != NULL; stroke = strchr (stroke + 1, '/'))
    {
      const char *begin = stroke, *end = stroke + 1;
      while (begin > text && g_ascii_isalpha (begin[-1]))
        begin--;
      while (g_ascii_isalpha (*end))
        end++;
      if (begin == stroke || stroke - begin > UNIT_MOST || end == stroke + 1 || end - stroke > UNIT_MOST + 1)
        continue;
      PangoAttribute *kept = pango_attr_allow_breaks_new (FALSE);
      kept->start_index = (guint)(begin - text);
      kept->end_index = (guint)(end - text);
      pango_attr_list_insert (attributes, kept);
    }
}

static void
set_attributes (PangoLayout *layout, const char *text, bool title)
{
  PangoAttrList *attributes = pango_attr_list_new ();

  pango_attr_list_insert (attributes, pango_attr_font_features_new (PLAINLY));
  keep_units (attributes, text);
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

static PangoLayout *
set_anew (const SpelchLettering *lettering, const char *text, double size, SpelchLetters letters, double wrap,
          PangoAlignment align)
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

#define NO_BREAK "\u00a0"
#define JOINER   "\u2060"

static const char *const UNITS[]
    = { "mm", "m", "in", "ft", "mm/min", "m/min", "in/min", "ft/min", "rpm", "U/min", "tr/min", "min",
        "s",  "h", "N",  "W",  "kW",     "kPa",   "MPa",    "kg",     "lb",  "%",     "°",      "mJ/mm²" };

/* The unit that @words begin with, or NULL. */
static const char *
unit_at (const char *words)
{
  for (guint i = 0; i < G_N_ELEMENTS (UNITS); i++)
    {
      gsize length = strlen (UNITS[i]);
      if (strncmp (words, UNITS[i], length) == 0 && !g_ascii_isalnum (words[length]) && words[length] != '/')
        return UNITS[i];
    }
  return NULL;
}

char *
spelch_lettering_keep_units (const char *text, bool looked_at)
{
  GString *kept = g_string_new (NULL);
  for (const char *c = text; *c != '\0'; c++)
    {
      const char *unit = *c == ' ' && c > text && g_ascii_isdigit (c[-1]) ? unit_at (c + 1) : NULL;
      if (unit == NULL)
        {
          g_string_append_c (kept, *c);
          continue;
        }
      g_string_append (kept, NO_BREAK);
      for (const char *u = unit; *u != '\0'; u++)
        {
          g_string_append_c (kept, *u);
          if (*u == '/' && looked_at)
            g_string_append (kept, JOINER);
        }
      c += strlen (unit);
    }
  return g_string_free (kept, FALSE);
}

PangoLayout *
spelch_lettering_set (SpelchLettering *lettering, const char *text, double size, SpelchLetters letters,
                      double wrap, PangoAlignment align)
{
  g_autofree char *how = g_strdup_printf ("%d %d %d %d %s", (int)round (size * PANGO_SCALE), (int)letters,
                                          (int)(wrap * PANGO_SCALE), (int)align, text);
  PangoLayout *layout = g_hash_table_lookup (lettering->kept, how);

  if (layout != NULL)
    return g_object_ref (layout);
  if (g_hash_table_size (lettering->kept) >= MOST_KEPT)
    g_hash_table_remove_all (lettering->kept);
  layout = set_anew (lettering, text, size, letters, wrap, align);
  g_hash_table_insert (lettering->kept, g_steal_pointer (&how), g_object_ref (layout));
  return layout;
}

double
spelch_lettering_longest (SpelchLettering *lettering, const char *text, double size, SpelchLetters letters)
{
  g_auto (GStrv) words = g_strsplit_set (text, " \n", -1);
  SpelchLetters wide = letters == SPELCH_LETTERS_PLAIN ? SPELCH_LETTERS_PLAIN : SPELCH_LETTERS_STRONG;
  double longest = 0, width, height;

  for (guint i = 0; words[i] != NULL; i++)
    {
      g_autoptr (PangoLayout) word
          = spelch_lettering_set (lettering, words[i], size, wide, 0, PANGO_ALIGN_LEFT);
      spelch_lettering_measure (word, &width, &height);
      longest = MAX (longest, width);
    }
  return longest;
}

void
spelch_lettering_measure (PangoLayout *layout, double *width, double *height)
{
  PangoRectangle logical;

  pango_layout_get_extents (layout, NULL, &logical);
  *width = (double)logical.width / PANGO_SCALE;
  *height = (double)logical.height / PANGO_SCALE;
}

static const cairo_user_data_key_t GATHERED;

cairo_t *
spelch_lettering_gather (GString *text)
{
  cairo_surface_t *surface = cairo_recording_surface_create (CAIRO_CONTENT_COLOR_ALPHA, NULL);
  cairo_t *cr = cairo_create (surface);
  cairo_surface_destroy (surface);
  cairo_set_user_data (cr, &GATHERED, text, NULL);
  return cr;
}

void
spelch_lettering_draw (cairo_t *cr, PangoLayout *layout, double x, double y, const SpelchColour *colour)
{
  PangoRectangle logical;
  GString *gathered = cairo_get_user_data (cr, &GATHERED);

  if (gathered != NULL)
    g_string_append_printf (gathered, "%s\n", pango_layout_get_text (layout));
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
