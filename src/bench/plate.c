/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "bench/plate.h"
#include "bench/canvas.h"

#include <stdbool.h>

/* What the child looked like, and its picture. */
typedef struct
{
  GskRenderNode *node;
  SpelchCanvas canvas;
  graphene_rect_t bounds; /* of both, whole units */
  int pixels;             /* a unit */
} SpelchPlatePicture;

struct _SpelchPlate
{
  GtkWidget parent_instance;
  GtkWidget *child;
  SpelchPlatePicture picture;
};

G_DEFINE_FINAL_TYPE (SpelchPlate, spelch_plate, GTK_TYPE_WIDGET)

enum
{
  PROP_CHILD = 1,
  N_PROPS
};
static GParamSpec *props[N_PROPS];

/* ---- What differs ---- */

/* What a node that only moves another one moves it by; false where it does more, or is no such node. */
static bool
find_move (GskRenderNode *node, graphene_point_t *by)
{
  if (gsk_render_node_get_node_type (node) != GSK_TRANSFORM_NODE)
    return false;
  GskTransform *transform = gsk_transform_node_get_transform (node);
  if (gsk_transform_get_category (transform) < GSK_TRANSFORM_CATEGORY_2D_TRANSLATE)
    return false;
  gsk_transform_to_translate (transform, &by->x, &by->y);
  return true;
}

/* Where a node that stands `at` a place draws, in whole units. */
static cairo_rectangle_int_t
whole_bounds (GskRenderNode *node, graphene_point_t at)
{
  graphene_rect_t bounds;
  gsk_render_node_get_bounds (node, &bounds);
  graphene_rect_offset (&bounds, at.x, at.y);
  graphene_rect_round_extents (&bounds, &bounds);
  return (cairo_rectangle_int_t){ (int)bounds.origin.x, (int)bounds.origin.y, (int)bounds.size.width,
                                  (int)bounds.size.height };
}

static void
add_bounds (cairo_region_t *region, GskRenderNode *node, graphene_point_t at)
{
  cairo_rectangle_int_t bounds = whole_bounds (node, at);
  cairo_region_union_rectangle (region, &bounds);
}

/* Adds to `region` where two nodes that stand `at` a place look different. */
static void
add_difference (cairo_region_t *region, GskRenderNode *was, GskRenderNode *is, graphene_point_t at)
{
  graphene_point_t was_by, is_by;
  if (was == is)
    return;
  if (gsk_render_node_get_node_type (was) == GSK_CONTAINER_NODE
      && gsk_render_node_get_node_type (is) == GSK_CONTAINER_NODE
      && gsk_container_node_get_n_children (was) == gsk_container_node_get_n_children (is))
    {
      for (guint i = 0; i < gsk_container_node_get_n_children (is); i++)
        add_difference (region, gsk_container_node_get_child (was, i), gsk_container_node_get_child (is, i),
                        at);
    }
  else if (find_move (was, &was_by) && find_move (is, &is_by) && graphene_point_equal (&was_by, &is_by))
    add_difference (region, gsk_transform_node_get_child (was), gsk_transform_node_get_child (is),
                    GRAPHENE_POINT_INIT (at.x + is_by.x, at.y + is_by.y));
  else
    {
      add_bounds (region, was, at);
      add_bounds (region, is, at);
    }
}

/* ---- Drawing ---- */

/* Draws what meets the region, and nothing else of a long column. */
static void
draw_within (GskRenderNode *node, cairo_t *cr, const cairo_region_t *region, graphene_point_t at)
{
  graphene_point_t by;
  if (gsk_render_node_get_node_type (node) == GSK_CONTAINER_NODE)
    {
      for (guint i = 0; i < gsk_container_node_get_n_children (node); i++)
        draw_within (gsk_container_node_get_child (node, i), cr, region, at);
      return;
    }
  if (find_move (node, &by))
    {
      draw_within (gsk_transform_node_get_child (node), cr, region,
                   GRAPHENE_POINT_INIT (at.x + by.x, at.y + by.y));
      return;
    }
  cairo_rectangle_int_t own = whole_bounds (node, at);
  if (cairo_region_contains_rectangle (region, &own) == CAIRO_REGION_OVERLAP_OUT)
    return;
  cairo_save (cr);
  cairo_translate (cr, at.x, at.y);
  gsk_render_node_draw (node, cr);
  cairo_restore (cr);
}

static void
redraw (SpelchPlatePicture *picture, const cairo_region_t *region)
{
  cairo_t *cr = spelch_canvas_draw (&picture->canvas);
  cairo_translate (cr, -picture->bounds.origin.x, -picture->bounds.origin.y);
  gdk_cairo_region (cr, region);
  cairo_clip (cr);
  cairo_set_operator (cr, CAIRO_OPERATOR_CLEAR);
  cairo_paint (cr);
  cairo_set_operator (cr, CAIRO_OPERATOR_OVER);
  draw_within (picture->node, cr, region, GRAPHENE_POINT_INIT (0, 0));
  cairo_destroy (cr);
}

static void
clear_picture (SpelchPlatePicture *picture)
{
  g_clear_pointer (&picture->node, gsk_render_node_unref);
  spelch_canvas_clear (&picture->canvas);
}

/* Takes over `node`. */
static void
renew (SpelchPlatePicture *picture, GskRenderNode *node, int pixels)
{
  graphene_rect_t bounds;
  cairo_region_t *region = cairo_region_create ();
  gsk_render_node_get_bounds (node, &bounds);
  graphene_rect_round_extents (&bounds, &bounds);
  if (picture->node != NULL && picture->pixels == pixels && graphene_rect_equal (&bounds, &picture->bounds))
    add_difference (region, picture->node, node, GRAPHENE_POINT_INIT (0, 0));
  else
    {
      spelch_canvas_clear (&picture->canvas);
      picture->canvas
          = spelch_canvas_new (CAIRO_FORMAT_ARGB32, (int)bounds.size.width, (int)bounds.size.height, pixels);
      add_bounds (region, node, GRAPHENE_POINT_INIT (0, 0));
    }
  g_clear_pointer (&picture->node, gsk_render_node_unref);
  picture->node = node;
  picture->bounds = bounds;
  picture->pixels = pixels;
  redraw (picture, region);
  cairo_region_destroy (region);
}

static void
spelch_plate_snapshot (GtkWidget *widget, GtkSnapshot *snapshot)
{
  SpelchPlate *self = SPELCH_PLATE (widget);
  if (self->child == NULL)
    return;
  GtkSnapshot *content = gtk_snapshot_new ();
  gtk_widget_snapshot_child (widget, self->child, content);
  GskRenderNode *node = gtk_snapshot_free_to_node (content);
  if (node == NULL)
    {
      clear_picture (&self->picture);
      return;
    }
  renew (&self->picture, node, gtk_widget_get_scale_factor (widget));
  cairo_t *cr = gtk_snapshot_append_cairo (snapshot, &self->picture.bounds);
  cairo_set_source_surface (cr, self->picture.canvas.shown, self->picture.bounds.origin.x,
                            self->picture.bounds.origin.y);
  cairo_paint (cr);
  cairo_destroy (cr);
}

static void
spelch_plate_get_property (GObject *object, guint id, GValue *value, GParamSpec *pspec)
{
  g_value_set_object (value, SPELCH_PLATE (object)->child);
}

static void
spelch_plate_set_property (GObject *object, guint id, const GValue *value, GParamSpec *pspec)
{
  SpelchPlate *self = SPELCH_PLATE (object);
  g_clear_pointer (&self->child, gtk_widget_unparent);
  self->child = g_value_get_object (value);
  if (self->child != NULL)
    gtk_widget_set_parent (self->child, GTK_WIDGET (self));
}

static void
spelch_plate_dispose (GObject *object)
{
  SpelchPlate *self = SPELCH_PLATE (object);
  g_clear_pointer (&self->child, gtk_widget_unparent);
  clear_picture (&self->picture);
  G_OBJECT_CLASS (spelch_plate_parent_class)->dispose (object);
}

static void
spelch_plate_class_init (SpelchPlateClass *klass)
{
  GObjectClass *object_class = G_OBJECT_CLASS (klass);
  GtkWidgetClass *widget_class = GTK_WIDGET_CLASS (klass);
  object_class->get_property = spelch_plate_get_property;
  object_class->set_property = spelch_plate_set_property;
  object_class->dispose = spelch_plate_dispose;
  widget_class->snapshot = spelch_plate_snapshot;
  props[PROP_CHILD] = g_param_spec_object ("child", NULL, NULL, GTK_TYPE_WIDGET,
                                           G_PARAM_READWRITE | G_PARAM_STATIC_STRINGS);
  g_object_class_install_properties (object_class, N_PROPS, props);
  gtk_widget_class_set_layout_manager_type (widget_class, GTK_TYPE_BIN_LAYOUT);
  gtk_widget_class_set_css_name (widget_class, "plate");
  gtk_widget_class_set_accessible_role (widget_class, GTK_ACCESSIBLE_ROLE_GROUP);
}

static void
spelch_plate_init (SpelchPlate *self)
{
}
