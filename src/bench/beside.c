/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "bench/beside.h"
#include "bench/text-size.h"

#include <stdbool.h>

#define GAP          24
#define SECOND_LEAST 25   /* ems wide, to stand beside the first */
#define SECOND_SHARE 0.40 /* of the whole, where there is more room */

struct _SpelchBeside
{
  GtkWidget parent_instance;
  GtkWidget *first, *second;
};

G_DEFINE_FINAL_TYPE (SpelchBeside, spelch_beside, GTK_TYPE_WIDGET)

static int
measured (GtkWidget *child, GtkOrientation orientation, int for_size)
{
  int least = 0;
  if (gtk_widget_get_visible (child))
    gtk_widget_measure (child, orientation, for_size, &least, NULL, NULL, NULL);
  return least;
}

/* Of the second, in a whole that wide; 0: below the first, or not there. */
static int
second_width (SpelchBeside *self, int width)
{
  int least = (int)(SECOND_LEAST * spelch_text_pixels (GTK_WIDGET (self)));
  int first = measured (self->first, GTK_ORIENTATION_HORIZONTAL, -1);
  least = MAX (least, measured (self->second, GTK_ORIENTATION_HORIZONTAL, -1));
  bool both = gtk_widget_get_visible (self->first) && gtk_widget_get_visible (self->second);
  if (!both || width < first + GAP + least)
    return 0;
  return CLAMP ((int)(width * SECOND_SHARE), least, width - GAP - first);
}

static void
spelch_beside_measure (GtkWidget *widget, GtkOrientation orientation, int for_size, int *minimum,
                       int *natural, int *minimum_baseline, int *natural_baseline)
{
  SpelchBeside *self = SPELCH_BESIDE (widget);
  if (orientation == GTK_ORIENTATION_HORIZONTAL)
    {
      *minimum = *natural
          = MAX (measured (self->first, orientation, -1), measured (self->second, orientation, -1));
      return;
    }
  int width = for_size < 0 ? measured (widget, GTK_ORIENTATION_HORIZONTAL, -1) : for_size;
  int second = second_width (self, width);
  int first_high = measured (self->first, orientation, second > 0 ? width - GAP - second : width);
  int second_high = measured (self->second, orientation, second > 0 ? second : width);
  int gap = first_high > 0 && second_high > 0 ? GAP : 0;
  *minimum = *natural = second > 0 ? MAX (first_high, second_high) : first_high + gap + second_high;
}

static void
place (GtkWidget *child, int x, int y, int width, int height)
{
  if (gtk_widget_get_visible (child))
    gtk_widget_size_allocate (child, &(GtkAllocation){ x, y, width, height }, -1);
}

static void
spelch_beside_size_allocate (GtkWidget *widget, int width, int height, int baseline)
{
  SpelchBeside *self = SPELCH_BESIDE (widget);
  bool mirrored = gtk_widget_get_direction (widget) == GTK_TEXT_DIR_RTL;
  int second = second_width (self, width), first = width - GAP - second;
  if (second > 0)
    {
      place (self->first, mirrored ? second + GAP : 0, 0, first, height);
      place (self->second, mirrored ? 0 : first + GAP, 0, second, height);
      return;
    }
  int second_high = measured (self->second, GTK_ORIENTATION_VERTICAL, width);
  int below = second_high > 0 ? second_high + GAP : 0;
  int first_high = MAX (height - below, measured (self->first, GTK_ORIENTATION_VERTICAL, width));
  place (self->second, 0, 0, width, second_high);
  place (self->first, 0, below, width, first_high);
}

static GtkSizeRequestMode
spelch_beside_get_request_mode (GtkWidget *widget)
{
  return GTK_SIZE_REQUEST_HEIGHT_FOR_WIDTH;
}

static void
spelch_beside_dispose (GObject *object)
{
  SpelchBeside *self = SPELCH_BESIDE (object);
  g_clear_pointer (&self->first, gtk_widget_unparent);
  g_clear_pointer (&self->second, gtk_widget_unparent);
  G_OBJECT_CLASS (spelch_beside_parent_class)->dispose (object);
}

static void
spelch_beside_class_init (SpelchBesideClass *klass)
{
  GtkWidgetClass *widget_class = GTK_WIDGET_CLASS (klass);
  G_OBJECT_CLASS (klass)->dispose = spelch_beside_dispose;
  widget_class->measure = spelch_beside_measure;
  widget_class->size_allocate = spelch_beside_size_allocate;
  widget_class->get_request_mode = spelch_beside_get_request_mode;
  gtk_widget_class_set_css_name (widget_class, "beside");
  gtk_widget_class_set_accessible_role (widget_class, GTK_ACCESSIBLE_ROLE_GROUP);
}

static void
spelch_beside_init (SpelchBeside *self)
{
}

GtkWidget *
spelch_beside_new (GtkWidget *first, GtkWidget *second)
{
  SpelchBeside *self = g_object_new (SPELCH_TYPE_BESIDE, NULL);
  self->first = first;
  self->second = second;
  gtk_widget_set_parent (second, GTK_WIDGET (self)); /* the keyboard comes to it first */
  gtk_widget_set_parent (first, GTK_WIDGET (self));
  return GTK_WIDGET (self);
}
