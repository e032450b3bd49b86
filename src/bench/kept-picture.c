/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "bench/kept-picture.h"
#include "bench/word-help.h"
#include "drawing/lettering.h"

struct _SpelchKeptPicture
{
  GtkWidget parent_instance;
  SpelchPictureDraw draw;
  gpointer data;
  int width, height;
  GskRenderNode *node;
  int node_width, node_height, node_pixels;
};

G_DEFINE_FINAL_TYPE (SpelchKeptPicture, spelch_kept_picture, GTK_TYPE_WIDGET)

static GskRenderNode *
rasterise (SpelchKeptPicture *self, int width, int height, int pixels)
{
  cairo_surface_t *surface
      = cairo_image_surface_create (CAIRO_FORMAT_ARGB32, width * pixels, height * pixels);
  cairo_surface_set_device_scale (surface, pixels, pixels);
  cairo_t *cr = cairo_create (surface);
  self->draw (cr, width, height, self->data);
  cairo_destroy (cr);
  GskRenderNode *node = gsk_cairo_node_new (&GRAPHENE_RECT_INIT (0, 0, (float)width, (float)height));
  cr = gsk_cairo_node_get_draw_context (node);
  cairo_set_source_surface (cr, surface, 0, 0);
  cairo_paint (cr);
  cairo_destroy (cr);
  cairo_surface_destroy (surface);
  return node;
}

static void
words_drawn (GtkWidget *widget, GString *text)
{
  SpelchKeptPicture *self = SPELCH_KEPT_PICTURE (widget);
  if (self->draw == NULL)
    return;
  cairo_t *cr = spelch_lettering_gather (text);
  self->draw (cr, gtk_widget_get_width (widget), gtk_widget_get_height (widget), self->data);
  cairo_destroy (cr);
}

static void
spelch_kept_picture_snapshot (GtkWidget *widget, GtkSnapshot *snapshot)
{
  SpelchKeptPicture *self = SPELCH_KEPT_PICTURE (widget);
  int width = gtk_widget_get_width (widget), height = gtk_widget_get_height (widget);
  int pixels = gtk_widget_get_scale_factor (widget);
  if (self->draw == NULL || width < 1 || height < 1)
    return;
  bool same = self->node != NULL && self->node_width == width && self->node_height == height
              && self->node_pixels == pixels;
  if (!same)
    {
      g_clear_pointer (&self->node, gsk_render_node_unref);
      self->node = rasterise (self, width, height, pixels);
      self->node_width = width;
      self->node_height = height;
      self->node_pixels = pixels;
    }
  gtk_snapshot_append_node (snapshot, self->node);
}

static void
spelch_kept_picture_measure (GtkWidget *widget, GtkOrientation orientation, int for_size, int *minimum,
                             int *natural, int *minimum_baseline, int *natural_baseline)
{
  SpelchKeptPicture *self = SPELCH_KEPT_PICTURE (widget);
  *minimum = *natural = orientation == GTK_ORIENTATION_HORIZONTAL ? self->width : self->height;
}

void
spelch_kept_picture_changed (SpelchKeptPicture *self)
{
  g_clear_pointer (&self->node, gsk_render_node_unref);
  gtk_widget_queue_draw (GTK_WIDGET (self));
}

void
spelch_kept_picture_set_draw (SpelchKeptPicture *self, SpelchPictureDraw draw, gpointer data)
{
  self->draw = draw;
  self->data = data;
  spelch_kept_picture_changed (self);
}

void
spelch_kept_picture_set_size (SpelchKeptPicture *self, int width, int height)
{
  if (self->width == width && self->height == height)
    return;
  self->width = width;
  self->height = height;
  gtk_widget_queue_resize (GTK_WIDGET (self));
}

static void
spelch_kept_picture_dispose (GObject *object)
{
  SpelchKeptPicture *self = SPELCH_KEPT_PICTURE (object);
  g_clear_pointer (&self->node, gsk_render_node_unref);
  G_OBJECT_CLASS (spelch_kept_picture_parent_class)->dispose (object);
}

static void
spelch_kept_picture_class_init (SpelchKeptPictureClass *klass)
{
  GtkWidgetClass *widget_class = GTK_WIDGET_CLASS (klass);
  G_OBJECT_CLASS (klass)->dispose = spelch_kept_picture_dispose;
  widget_class->snapshot = spelch_kept_picture_snapshot;
  widget_class->measure = spelch_kept_picture_measure;
  gtk_widget_class_set_css_name (widget_class, "keptpicture");
  /* What it shows is said in words beside it. */
  gtk_widget_class_set_accessible_role (widget_class, GTK_ACCESSIBLE_ROLE_PRESENTATION);
}

static void
spelch_kept_picture_init (SpelchKeptPicture *self)
{
  spelch_word_help_set_drawn (GTK_WIDGET (self), words_drawn);
}
