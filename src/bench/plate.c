/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "bench/plate.h"

struct _SpelchPlate
{
  GtkWidget parent_instance;
  GtkWidget *child;
};

G_DEFINE_FINAL_TYPE (SpelchPlate, spelch_plate, GTK_TYPE_WIDGET)

enum
{
  PROP_CHILD = 1,
  N_PROPS
};
static GParamSpec *props[N_PROPS];

static void
spelch_plate_snapshot (GtkWidget *widget, GtkSnapshot *snapshot)
{
  SpelchPlate *self = SPELCH_PLATE (widget);
  if (self->child == NULL)
    return;
  GtkSnapshot *content = gtk_snapshot_new ();
  gtk_widget_snapshot_child (widget, self->child, content);
  g_autoptr (GskRenderNode) node = gtk_snapshot_free_to_node (content);
  if (node == NULL)
    return;
  graphene_rect_t bounds;
  gsk_render_node_get_bounds (node, &bounds);
  cairo_t *cr = gtk_snapshot_append_cairo (snapshot, &bounds);
  gsk_render_node_draw (node, cr);
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
