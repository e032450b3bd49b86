/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "bench/live-text.h"
#include "bench/telling.h"
#include "bench/text-size.h"
#include "drawing/lettering.h"

#include <glib/gi18n-lib.h>
#include <math.h>
#include <stdbool.h>

#define GLYPH_EM     1.15
#define GLYPH_GAP_EM 0.75

/* Pixels. */
typedef struct
{
  int line, ascent, character;
} SpelchTextMetrics;

struct _SpelchLiveText
{
  GtkWidget parent_instance;
  PangoLayout *layout;
  SpelchTextMetrics metrics; /* of its font; 0 until they are asked for */
  char *text;
  char *caption;
  guint lines;  /* kept free */
  guint grown;  /* lines needed so far */
  int grown_at; /* in that width */
  guint width_chars;
  float xalign;
  bool hanging;
  bool middle;
  SpelchGlyphKind glyph;
};

G_DEFINE_FINAL_TYPE (SpelchLiveText, spelch_live_text, GTK_TYPE_WIDGET)

enum
{
  PROP_LINES = 1,
  PROP_XALIGN,
  PROP_WIDTH_CHARS,
  PROP_CAPTION,
  PROP_HANGING,
  PROP_MIDDLE,
  N_PROPS
};
static GParamSpec *props[N_PROPS];

/* Lines after the first begin where its text does, after the bullet. */
static void
hang (SpelchLiveText *self)
{
  int width = 0;
  if (self->hanging)
    {
      g_autoptr (PangoLayout) bullet = gtk_widget_create_pango_layout (GTK_WIDGET (self), "• ");
      pango_layout_get_size (bullet, &width, NULL);
    }
  pango_layout_set_indent (self->layout, -width);
}

static PangoLayout *
ensure_layout (SpelchLiveText *self)
{
  if (self->layout == NULL)
    {
      g_autofree char *kept = spelch_lettering_keep_units (self->text, true);
      self->layout = gtk_widget_create_pango_layout (GTK_WIDGET (self), kept);
      pango_layout_set_wrap (self->layout, PANGO_WRAP_WORD_CHAR);
      spelch_lettering_plainly (self->layout);
      pango_layout_set_alignment (self->layout, self->xalign > 0.5f ? PANGO_ALIGN_RIGHT : PANGO_ALIGN_LEFT);
      hang (self);
    }
  return self->layout;
}

static guint
lines_at (SpelchLiveText *self, int width)
{
  PangoLayout *layout = ensure_layout (self);
  pango_layout_set_width (layout, width > 0 ? width * PANGO_SCALE : -1);
  return (guint)MAX (pango_layout_get_line_count (layout), 1);
}

/* Kept, since a widget is measured several times before it is first shown. */
static SpelchTextMetrics
text_metrics (SpelchLiveText *self)
{
  if (self->metrics.line > 0)
    return self->metrics;
  PangoContext *context = gtk_widget_get_pango_context (GTK_WIDGET (self));
  PangoFontMetrics *metrics = pango_context_get_metrics (context, NULL, NULL);
  self->metrics = (SpelchTextMetrics){
    PANGO_PIXELS_CEIL (pango_font_metrics_get_height (metrics)),
    PANGO_PIXELS_CEIL (pango_font_metrics_get_ascent (metrics)),
    PANGO_PIXELS_CEIL (MAX (pango_font_metrics_get_approximate_char_width (metrics),
                            pango_font_metrics_get_approximate_digit_width (metrics))),
  };
  pango_font_metrics_unref (metrics);
  return self->metrics;
}

static void
spelch_live_text_measure (GtkWidget *widget, GtkOrientation orientation, int for_size, int *minimum,
                          int *natural, int *minimum_baseline, int *natural_baseline)
{
  SpelchLiveText *self = SPELCH_LIVE_TEXT (widget);
  SpelchTextMetrics metrics = text_metrics (self);
  if (orientation == GTK_ORIENTATION_HORIZONTAL)
    {
      *minimum = *natural = (int)self->width_chars * metrics.character;
      return;
    }
  guint lines = for_size > 0 && for_size != self->grown_at ? self->lines : MAX (self->lines, self->grown);
  if (for_size > 0)
    lines = MAX (lines, lines_at (self, for_size));
  *minimum = *natural = (int)lines * metrics.line;
  *minimum_baseline = *natural_baseline = metrics.ascent;
}

static void
spelch_live_text_size_allocate (GtkWidget *widget, int width, int height, int baseline)
{
  SpelchLiveText *self = SPELCH_LIVE_TEXT (widget);
  self->grown = MAX (width == self->grown_at ? self->grown : 0, lines_at (self, width));
  self->grown_at = width;
}

static bool
is_mirrored (SpelchLiveText *self)
{
  return gtk_widget_get_direction (GTK_WIDGET (self)) == GTK_TEXT_DIR_RTL;
}

/* How far a sign pushes a text that begins where lines begin. */
static double
glyph_room (SpelchLiveText *self)
{
  double em = spelch_text_pixels (GTK_WIDGET (self));
  bool pushes = self->glyph != SPELCH_GLYPH_NONE && self->xalign <= 0.5f;
  return pushes ? ceil (em * GLYPH_EM) + floor (em * GLYPH_GAP_EM) : 0;
}

/* How far below its top the text of a widget begins that has room for more lines, or more height. */
static int
room_above (SpelchLiveText *self)
{
  int height = 0;
  if (!self->middle)
    return 0;
  pango_layout_get_pixel_size (self->layout, NULL, &height);
  return MAX ((gtk_widget_get_height (GTK_WIDGET (self)) - height) / 2, 0);
}

/* Where a sign stands: just before the text in reading order, and inside the widget. */
static double
before_text (SpelchLiveText *self, double em, double size)
{
  PangoRectangle text;
  pango_layout_get_pixel_extents (self->layout, NULL, &text);
  return MAX (text.x - em * GLYPH_GAP_EM - size, -glyph_room (self));
}

static double
after_text (SpelchLiveText *self, double em, double size)
{
  PangoRectangle text;
  double right = gtk_widget_get_width (GTK_WIDGET (self)) + glyph_room (self);
  pango_layout_get_pixel_extents (self->layout, NULL, &text);
  return MIN (text.x + text.width + em * GLYPH_GAP_EM, right - size);
}

static void
append_glyph (SpelchLiveText *self, GtkSnapshot *snapshot, const GdkRGBA *colour)
{
  double em = spelch_text_pixels (GTK_WIDGET (self)), size = ceil (em * GLYPH_EM);
  double x = floor (is_mirrored (self) ? after_text (self, em, size) : before_text (self, em, size));
  PangoRectangle text;
  pango_layout_get_pixel_extents (self->layout, NULL, &text);
  double y = floor (MAX ((text.height - size) / 2, 0));
  cairo_t *cr = gtk_snapshot_append_cairo (
      snapshot, &GRAPHENE_RECT_INIT ((float)x, (float)y, (float)size, (float)size));
  gdk_cairo_set_source_rgba (cr, colour);
  cairo_translate (cr, x, y);
  spelch_glyph_draw (cr, self->glyph, size);
  cairo_destroy (cr);
}

static void
spelch_live_text_snapshot (GtkWidget *widget, GtkSnapshot *snapshot)
{
  SpelchLiveText *self = SPELCH_LIVE_TEXT (widget);
  GdkRGBA colour;
  gtk_style_context_get_color (gtk_widget_get_style_context (widget), &colour);
  lines_at (self, gtk_widget_get_width (widget));
  gtk_snapshot_save (snapshot);
  gtk_snapshot_translate (
      snapshot, &GRAPHENE_POINT_INIT ((float)(is_mirrored (self) ? -glyph_room (self) : glyph_room (self)),
                                      (float)room_above (self)));
  gtk_snapshot_append_layout (snapshot, self->layout, &colour);
  if (self->glyph != SPELCH_GLYPH_NONE)
    append_glyph (self, snapshot, &colour);
  gtk_snapshot_restore (snapshot);
}

static void
spelch_live_text_css_changed (GtkWidget *widget, GtkCssStyleChange *change)
{
  SpelchLiveText *self = SPELCH_LIVE_TEXT (widget);
  GTK_WIDGET_CLASS (spelch_live_text_parent_class)->css_changed (widget, change);
  self->metrics = (SpelchTextMetrics){ 0 };
  if (self->layout == NULL)
    return;
  pango_layout_context_changed (self->layout);
  hang (self);
}

static void
tell (SpelchLiveText *self)
{
  g_autofree char *both = self->caption == NULL ? g_strdup (self->text)
                                                : g_strdup_printf (_ ("%s: %s"), self->caption, self->text);
  spelch_tell_soon (GTK_WIDGET (self), GTK_ACCESSIBLE_PROPERTY_LABEL, both);
}

const char *
spelch_live_text_get_text (SpelchLiveText *self)
{
  return self->text;
}

void
spelch_live_text_set_text (SpelchLiveText *self, const char *text)
{
  if (text == NULL)
    text = "";
  if (g_str_equal (self->text, text))
    return;
  g_free (self->text);
  self->text = g_strdup (text);
  g_autofree char *kept = spelch_lettering_keep_units (text, true);
  pango_layout_set_text (ensure_layout (self), kept, -1);
  tell (self);
  int width = gtk_widget_get_width (GTK_WIDGET (self));
  if (width > 0 && lines_at (self, width) > MAX (self->lines, self->grown))
    gtk_widget_queue_resize (GTK_WIDGET (self));
  else
    gtk_widget_queue_draw (GTK_WIDGET (self));
}

void
spelch_live_text_set_caption (SpelchLiveText *self, const char *caption)
{
  g_free (self->caption);
  self->caption = g_strdup (caption);
  tell (self);
}

void
spelch_live_text_set_glyph (SpelchLiveText *self, SpelchGlyphKind kind)
{
  if (self->glyph == kind)
    return;
  self->glyph = kind;
  gtk_widget_queue_draw (GTK_WIDGET (self));
}

void
spelch_live_text_settle (SpelchLiveText *self)
{
  int width = gtk_widget_get_width (GTK_WIDGET (self));
  guint needed = width > 0 ? MAX (lines_at (self, width), self->lines) : self->lines;
  if (self->grown <= needed)
    return;
  self->grown = needed;
  gtk_widget_queue_resize (GTK_WIDGET (self));
}

void
spelch_live_text_forget (SpelchLiveText *self)
{
  self->grown = 0;
  gtk_widget_queue_resize (GTK_WIDGET (self));
}

static void
spelch_live_text_get_property (GObject *object, guint id, GValue *value, GParamSpec *pspec)
{
  SpelchLiveText *self = SPELCH_LIVE_TEXT (object);
  switch (id)
    {
    case PROP_LINES:
      g_value_set_uint (value, self->lines);
      break;
    case PROP_XALIGN:
      g_value_set_float (value, self->xalign);
      break;
    case PROP_WIDTH_CHARS:
      g_value_set_uint (value, self->width_chars);
      break;
    case PROP_CAPTION:
      g_value_set_string (value, self->caption);
      break;
    case PROP_HANGING:
      g_value_set_boolean (value, self->hanging);
      break;
    case PROP_MIDDLE:
      g_value_set_boolean (value, self->middle);
      break;
    default:
      G_OBJECT_WARN_INVALID_PROPERTY_ID (object, id, pspec);
    }
}

static void
spelch_live_text_set_property (GObject *object, guint id, const GValue *value, GParamSpec *pspec)
{
  SpelchLiveText *self = SPELCH_LIVE_TEXT (object);
  switch (id)
    {
    case PROP_LINES:
      if (self->lines != g_value_get_uint (value))
        gtk_widget_queue_resize (GTK_WIDGET (self));
      self->lines = g_value_get_uint (value);
      break;
    case PROP_XALIGN:
      self->xalign = g_value_get_float (value);
      break;
    case PROP_WIDTH_CHARS:
      if (self->width_chars != g_value_get_uint (value))
        gtk_widget_queue_resize (GTK_WIDGET (self));
      self->width_chars = g_value_get_uint (value);
      break;
    case PROP_CAPTION:
      spelch_live_text_set_caption (self, g_value_get_string (value));
      break;
    case PROP_HANGING:
      if (self->hanging == g_value_get_boolean (value))
        break;
      self->hanging = g_value_get_boolean (value);
      if (self->layout != NULL)
        hang (self);
      break;
    case PROP_MIDDLE:
      self->middle = g_value_get_boolean (value);
      gtk_widget_queue_draw (GTK_WIDGET (self));
      break;
    default:
      G_OBJECT_WARN_INVALID_PROPERTY_ID (object, id, pspec);
    }
}

static void
spelch_live_text_finalize (GObject *object)
{
  SpelchLiveText *self = SPELCH_LIVE_TEXT (object);
  g_clear_object (&self->layout);
  g_free (self->text);
  g_free (self->caption);
  G_OBJECT_CLASS (spelch_live_text_parent_class)->finalize (object);
}

static GtkSizeRequestMode
spelch_live_text_get_request_mode (GtkWidget *widget)
{
  return GTK_SIZE_REQUEST_HEIGHT_FOR_WIDTH;
}

static void
spelch_live_text_class_init (SpelchLiveTextClass *klass)
{
  GObjectClass *object_class = G_OBJECT_CLASS (klass);
  GtkWidgetClass *widget_class = GTK_WIDGET_CLASS (klass);
  object_class->get_property = spelch_live_text_get_property;
  object_class->set_property = spelch_live_text_set_property;
  object_class->finalize = spelch_live_text_finalize;
  widget_class->get_request_mode = spelch_live_text_get_request_mode;
  widget_class->measure = spelch_live_text_measure;
  widget_class->size_allocate = spelch_live_text_size_allocate;
  widget_class->snapshot = spelch_live_text_snapshot;
  widget_class->css_changed = spelch_live_text_css_changed;

  GParamFlags flags = G_PARAM_READWRITE | G_PARAM_STATIC_STRINGS;
  props[PROP_LINES] = g_param_spec_uint ("lines", NULL, NULL, 1, 20, 1, flags);
  props[PROP_XALIGN] = g_param_spec_float ("xalign", NULL, NULL, 0, 1, 0, flags);
  props[PROP_WIDTH_CHARS] = g_param_spec_uint ("width-chars", NULL, NULL, 1, 200, 4, flags);
  props[PROP_CAPTION] = g_param_spec_string ("caption", NULL, NULL, NULL, flags);
  props[PROP_HANGING] = g_param_spec_boolean ("hanging", NULL, NULL, FALSE, flags);
  props[PROP_MIDDLE] = g_param_spec_boolean ("middle", NULL, NULL, FALSE, flags);
  g_object_class_install_properties (object_class, N_PROPS, props);

  gtk_widget_class_set_css_name (widget_class, "livetext");
  gtk_widget_class_set_accessible_role (widget_class, GTK_ACCESSIBLE_ROLE_LABEL);
}

static void
spelch_live_text_init (SpelchLiveText *self)
{
  self->text = g_strdup ("");
  self->lines = 1;
  self->width_chars = 4;
}
