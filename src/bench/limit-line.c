/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "bench/limit-line.h"
#include "bench/limit-places.h"
#include "bench/text-size.h"
#include "plan/words.h"

#include <glib/gi18n-lib.h>
#include <math.h>

#define LEAST_SHARE 0.05 /* what uses less says nothing */
#define NAME_SIZE   0.92 /* of the widget's text */
#define TICK        6
#define GAP         8

struct _SpelchLimitLine
{
  GtkWidget parent_instance;
  guint n;
  SpelchLimit limits[SPELCH_N_LIMITS];
};

G_DEFINE_FINAL_TYPE (SpelchLimitLine, spelch_limit_line, GTK_TYPE_WIDGET)

static int
row_height (SpelchLimitLine *self)
{
  return (int)ceil (spelch_text_pixels (GTK_WIDGET (self)) * 1.5);
}

static double
axis_y (SpelchLimitLine *self)
{
  return 2 * row_height (self) + TICK + 0.5;
}

static void
spelch_limit_line_measure (GtkWidget *widget, GtkOrientation orientation, int for_size, int *minimum,
                           int *natural, int *minimum_baseline, int *natural_baseline)
{
  SpelchLimitLine *self = SPELCH_LIMIT_LINE (widget);
  if (orientation == GTK_ORIENTATION_HORIZONTAL)
    *minimum = *natural = 120;
  else
    *minimum = *natural = (int)axis_y (self) + TICK + 2 * row_height (self) + 2;
}

/* ---- Drawing ---- */

static PangoLayout *
name_layout (SpelchLimitLine *self, const char *name, bool strong)
{
  PangoLayout *layout = gtk_widget_create_pango_layout (GTK_WIDGET (self), name);
  PangoAttrList *attributes = pango_attr_list_new ();
  pango_attr_list_insert (attributes, pango_attr_scale_new (NAME_SIZE));
  if (strong)
    pango_attr_list_insert (attributes, pango_attr_weight_new (PANGO_WEIGHT_SEMIBOLD));
  pango_layout_set_attributes (layout, attributes);
  pango_attr_list_unref (attributes);
  return layout;
}

static double
row_top (SpelchLimitLine *self, int row)
{
  double height = row_height (self), axis = axis_y (self);
  double above = axis - TICK - height, below = axis + TICK;
  const double tops[SPELCH_LIMIT_ROWS] = { above, below, above - height };
  return tops[row];
}

static void
append_text (SpelchLimitLine *self, GtkSnapshot *snapshot, PangoLayout *layout, double x, double y,
             float alpha)
{
  GdkRGBA colour;
  gtk_style_context_get_color (gtk_widget_get_style_context (GTK_WIDGET (self)), &colour);
  colour.alpha *= alpha;
  gtk_snapshot_save (snapshot);
  gtk_snapshot_translate (snapshot, &GRAPHENE_POINT_INIT ((float)floor (x), (float)floor (y)));
  gtk_snapshot_append_layout (snapshot, layout, &colour);
  gtk_snapshot_restore (snapshot);
}

static void
append_line (GtkSnapshot *snapshot, const GdkRGBA *colour, double x, double y, double width, double height)
{
  gtk_snapshot_append_color (snapshot, colour,
                             &GRAPHENE_RECT_INIT ((float)x, (float)y, (float)width, (float)height));
}

static void
append_ends (SpelchLimitLine *self, GtkSnapshot *snapshot, double width)
{
  int text_width = 0;
  double y = row_top (self, 1) + row_height (self);
  g_autoptr (PangoLayout) none = name_layout (self, "0", false);
  g_autoptr (PangoLayout) all = name_layout (self, _ ("100 %"), false);
  pango_layout_get_pixel_size (all, &text_width, NULL);
  append_text (self, snapshot, none, 0, y, 0.85f);
  append_text (self, snapshot, all, width - text_width, y, 0.85f);
}

static void
append_axis (SpelchLimitLine *self, GtkSnapshot *snapshot, double width)
{
  GdkRGBA colour;
  gtk_style_context_get_color (gtk_widget_get_style_context (GTK_WIDGET (self)), &colour);
  double y = floor (axis_y (self));
  append_line (snapshot, &colour, 0, y, width, 1);
  append_line (snapshot, &colour, 0, y - 3, 1, 7);
  append_line (snapshot, &colour, width - 1, y - 3, 1, 7);
}

/* Names that are too long for the room left stand in the description only. */
static void
append_ticks (SpelchLimitLine *self, GtkSnapshot *snapshot, double width)
{
  GdkRGBA colour;
  gtk_style_context_get_color (gtk_widget_get_style_context (GTK_WIDGET (self)), &colour);
  PangoLayout *layouts[SPELCH_N_LIMITS];
  SpelchLimitPlace places[SPELCH_N_LIMITS];
  for (guint i = 0; i < self->n; i++)
    {
      int text_width = 0;
      layouts[i]
          = name_layout (self, spelch_words_limit_name (self->limits[i].kind), self->limits[i].binding);
      pango_layout_get_pixel_size (layouts[i], &text_width, NULL);
      places[i].at = CLAMP (self->limits[i].share, 0, 1) * (width - 2) + 1;
      places[i].width = text_width;
    }
  spelch_limit_places (places, self->n, width, GAP);
  for (guint i = 0; i < self->n; i++)
    {
      double thick = self->limits[i].binding ? 3 : 1.5;
      append_line (snapshot, &colour, places[i].at - thick / 2, axis_y (self) - TICK, thick, 2 * TICK);
      if (places[i].row >= 0)
        append_text (self, snapshot, layouts[i], places[i].left, row_top (self, places[i].row),
                     self->limits[i].binding ? 1 : 0.85f);
      g_object_unref (layouts[i]);
    }
}

static void
spelch_limit_line_snapshot (GtkWidget *widget, GtkSnapshot *snapshot)
{
  SpelchLimitLine *self = SPELCH_LIMIT_LINE (widget);
  double width = gtk_widget_get_width (widget);
  append_axis (self, snapshot, width);
  append_ends (self, snapshot, width);
  append_ticks (self, snapshot, width);
}

/* ---- What it shows ---- */

static void
tell (SpelchLimitLine *self)
{
  GString *words = g_string_new (NULL);
  for (guint i = 0; i < self->n; i++)
    {
      /* Translators: a limit and how much of it is used: "bending 93 %" */
      g_autofree char *one
          = g_strdup_printf (C_ ("limit", "%s %.0f %%"), spelch_words_limit_name (self->limits[i].kind),
                             self->limits[i].share * 100);
      g_string_append_printf (words, "%s%s", i == 0 ? "" : ", ", one);
    }
  gtk_accessible_update_property (GTK_ACCESSIBLE (self), GTK_ACCESSIBLE_PROPERTY_DESCRIPTION, words->str, -1);
  g_string_free (words, TRUE);
}

void
spelch_limit_line_set_plan (SpelchLimitLine *self, const SpelchPlan *plan)
{
  guint n = 0;
  SpelchLimit limits[SPELCH_N_LIMITS];
  for (guint i = 0; plan != NULL && i < plan->n_limits; i++)
    if (plan->limits[i].share >= LEAST_SHARE || plan->limits[i].binding)
      limits[n++] = plan->limits[i];
  bool same = n == self->n;
  for (guint i = 0; same && i < n; i++)
    same = limits[i].kind == self->limits[i].kind && limits[i].binding == self->limits[i].binding
           && fabs (limits[i].share - self->limits[i].share) < 0.001;
  if (same)
    return;
  self->n = n;
  for (guint i = 0; i < n; i++)
    self->limits[i] = limits[i];
  tell (self);
  gtk_widget_queue_draw (GTK_WIDGET (self));
}

static void
spelch_limit_line_class_init (SpelchLimitLineClass *klass)
{
  GtkWidgetClass *widget_class = GTK_WIDGET_CLASS (klass);
  widget_class->measure = spelch_limit_line_measure;
  widget_class->snapshot = spelch_limit_line_snapshot;
  gtk_widget_class_set_css_name (widget_class, "limitline");
  gtk_widget_class_set_accessible_role (widget_class, GTK_ACCESSIBLE_ROLE_IMG);
}

static void
spelch_limit_line_init (SpelchLimitLine *self)
{
  gtk_accessible_update_property (GTK_ACCESSIBLE (self), GTK_ACCESSIBLE_PROPERTY_LABEL,
                                  _ ("How much of each limit is used"), -1);
}
