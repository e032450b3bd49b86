/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "bench/columns.h"

#include <stdbool.h>

#define COMFORTABLE 1.3 /* of the middle column's least width */

enum
{
  PROP_LEFT = 1,
  PROP_CENTRE,
  PROP_RIGHT,
  N_CHILDREN,
  PROP_RIGHT_FOLDED = N_CHILDREN,
  PROP_RIGHT_DRAWN,
  PROP_LEFT_FOLDED,
  PROP_LEFT_DRAWN,
  N_PROPS
};
static GParamSpec *props[N_PROPS];

struct _SpelchColumns
{
  GtkWidget parent_instance;
  GtkWidget *children[N_CHILDREN]; /* by property */
  bool right_folded, left_folded;
  bool right_drawn, left_drawn;
  guint telling; /* idle source */
};

G_DEFINE_FINAL_TYPE (SpelchColumns, spelch_columns, GTK_TYPE_WIDGET)

typedef struct
{
  int least, wanted;
} SpelchWish;

static SpelchWish
wish (SpelchColumns *self, int column, GtkOrientation orientation, int for_size)
{
  SpelchWish wish = { 0, 0 };
  if (self->children[column] != NULL)
    gtk_widget_measure (self->children[column], orientation, for_size, &wish.least, &wish.wanted, NULL, NULL);
  return wish;
}

static void
spelch_columns_measure (GtkWidget *widget, GtkOrientation orientation, int for_size, int *minimum,
                        int *natural, int *minimum_baseline, int *natural_baseline)
{
  SpelchColumns *self = SPELCH_COLUMNS (widget);
  SpelchWish left = wish (self, PROP_LEFT, orientation, -1);
  SpelchWish centre = wish (self, PROP_CENTRE, orientation, -1);
  SpelchWish right = wish (self, PROP_RIGHT, orientation, -1);
  if (orientation == GTK_ORIENTATION_HORIZONTAL)
    {
      *minimum = MAX (centre.least, right.least);
      *natural = left.wanted + centre.wanted + right.wanted;
      return;
    }
  *minimum = MAX (left.least, MAX (centre.least, right.least));
  *natural = MAX (*minimum, centre.wanted);
}

static void
place (SpelchColumns *self, int column, int x, int width, int height)
{
  if (self->children[column] != NULL)
    gtk_widget_size_allocate (self->children[column], &(GtkAllocation){ x, 0, width, height }, -1);
}

static gboolean
tell_folded (gpointer data)
{
  SpelchColumns *self = data;
  self->telling = 0;
  g_object_notify_by_pspec (G_OBJECT (self), props[PROP_RIGHT_FOLDED]);
  g_object_notify_by_pspec (G_OBJECT (self), props[PROP_LEFT_FOLDED]);
  return G_SOURCE_REMOVE;
}

/* Whoever listens may change sizes, which mustn't happen while sizes are given out. */
static void
set_folded (SpelchColumns *self, bool left, bool right)
{
  if (left == self->left_folded && right == self->right_folded)
    return;
  self->left_folded = left;
  self->right_folded = right;
  if (self->telling == 0)
    self->telling = g_idle_add (tell_folded, self);
}

static void
show_child (SpelchColumns *self, int column, bool shown)
{
  if (self->children[column] != NULL)
    gtk_widget_set_child_visible (self->children[column], shown);
}

static void
spelch_columns_size_allocate (GtkWidget *widget, int width, int height, int baseline)
{
  SpelchColumns *self = SPELCH_COLUMNS (widget);
  SpelchWish left = wish (self, PROP_LEFT, GTK_ORIENTATION_HORIZONTAL, -1);
  SpelchWish centre = wish (self, PROP_CENTRE, GTK_ORIENTATION_HORIZONTAL, -1);
  SpelchWish right = wish (self, PROP_RIGHT, GTK_ORIENTATION_HORIZONTAL, -1);
  int comfortable = (int)(centre.least * COMFORTABLE);
  int right_width = MAX (right.wanted, right.least);
  bool fold_left = width - left.wanted - right_width < comfortable;
  bool fold_right = fold_left && width - right_width < comfortable;
  int left_width = fold_left ? 0 : left.wanted;
  int beside = fold_right ? 0 : right_width;
  int centre_width = MAX (width - left_width - beside, centre.least);
  bool mirrored = gtk_widget_get_direction (widget) == GTK_TEXT_DIR_RTL;
  show_child (self, PROP_LEFT, !fold_left || self->left_drawn);
  show_child (self, PROP_RIGHT, !fold_right || self->right_drawn);
  place (self, PROP_CENTRE, mirrored ? beside : left_width, centre_width, height);
  left_width = MIN (left.wanted, width);
  if (!fold_left || self->left_drawn)
    place (self, PROP_LEFT, mirrored ? width - left_width : 0, left_width, height);
  right_width = MIN (right_width, width);
  place (self, PROP_RIGHT, mirrored ? 0 : width - right_width, right_width, height);
  set_folded (self, fold_left, fold_right);
}

static GtkSizeRequestMode
spelch_columns_get_request_mode (GtkWidget *widget)
{
  return GTK_SIZE_REQUEST_CONSTANT_SIZE;
}

static void
spelch_columns_get_property (GObject *object, guint id, GValue *value, GParamSpec *pspec)
{
  SpelchColumns *self = SPELCH_COLUMNS (object);
  if (id == PROP_RIGHT_FOLDED)
    g_value_set_boolean (value, self->right_folded);
  else if (id == PROP_RIGHT_DRAWN)
    g_value_set_boolean (value, self->right_drawn);
  else if (id == PROP_LEFT_FOLDED)
    g_value_set_boolean (value, self->left_folded);
  else if (id == PROP_LEFT_DRAWN)
    g_value_set_boolean (value, self->left_drawn);
  else
    g_value_set_object (value, self->children[id]);
}

static void
spelch_columns_set_property (GObject *object, guint id, const GValue *value, GParamSpec *pspec)
{
  SpelchColumns *self = SPELCH_COLUMNS (object);
  if (id == PROP_RIGHT_DRAWN || id == PROP_LEFT_DRAWN)
    {
      *(id == PROP_LEFT_DRAWN ? &self->left_drawn : &self->right_drawn) = g_value_get_boolean (value);
      gtk_widget_queue_allocate (GTK_WIDGET (self));
      return;
    }
  g_clear_pointer (&self->children[id], gtk_widget_unparent);
  self->children[id] = g_value_get_object (value);
  if (self->children[id] != NULL)
    gtk_widget_set_parent (self->children[id], GTK_WIDGET (self));
}

static void
spelch_columns_dispose (GObject *object)
{
  SpelchColumns *self = SPELCH_COLUMNS (object);
  g_clear_handle_id (&self->telling, g_source_remove);
  for (int i = 0; i < N_CHILDREN; i++)
    g_clear_pointer (&self->children[i], gtk_widget_unparent);
  G_OBJECT_CLASS (spelch_columns_parent_class)->dispose (object);
}

static void
spelch_columns_class_init (SpelchColumnsClass *klass)
{
  GObjectClass *object_class = G_OBJECT_CLASS (klass);
  GtkWidgetClass *widget_class = GTK_WIDGET_CLASS (klass);
  object_class->get_property = spelch_columns_get_property;
  object_class->set_property = spelch_columns_set_property;
  object_class->dispose = spelch_columns_dispose;
  widget_class->measure = spelch_columns_measure;
  widget_class->size_allocate = spelch_columns_size_allocate;
  widget_class->get_request_mode = spelch_columns_get_request_mode;
  GParamFlags flags = G_PARAM_READWRITE | G_PARAM_STATIC_STRINGS;
  props[PROP_LEFT] = g_param_spec_object ("left", NULL, NULL, GTK_TYPE_WIDGET, flags);
  props[PROP_CENTRE] = g_param_spec_object ("centre", NULL, NULL, GTK_TYPE_WIDGET, flags);
  props[PROP_RIGHT] = g_param_spec_object ("right", NULL, NULL, GTK_TYPE_WIDGET, flags);
  props[PROP_RIGHT_FOLDED]
      = g_param_spec_boolean ("right-folded", NULL, NULL, FALSE, G_PARAM_READABLE | G_PARAM_STATIC_STRINGS);
  props[PROP_LEFT_FOLDED]
      = g_param_spec_boolean ("left-folded", NULL, NULL, FALSE, G_PARAM_READABLE | G_PARAM_STATIC_STRINGS);
  props[PROP_LEFT_DRAWN] = g_param_spec_boolean ("left-drawn", NULL, NULL, FALSE, flags);
  props[PROP_RIGHT_DRAWN] = g_param_spec_boolean ("right-drawn", NULL, NULL, FALSE, flags);
  g_object_class_install_properties (object_class, N_PROPS, props);
  gtk_widget_class_set_css_name (widget_class, "columns");
  gtk_widget_class_set_accessible_role (widget_class, GTK_ACCESSIBLE_ROLE_GROUP);
}

static void
spelch_columns_init (SpelchColumns *self)
{
}
