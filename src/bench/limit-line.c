/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "bench/limit-line.h"
#include "bench/limit-places.h"
#include "bench/telling.h"
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
  const char *called[SPELCH_N_LIMITS];    /* by kind: some names depend on the plan */
  PangoLayout *names[SPELCH_N_LIMITS][2]; /* of a limit, plain and strong; NULL until needed */
  PangoLayout *ends[2];
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

/* The same few names are drawn in every frame of a drag. */
static PangoLayout *
kept_layout (SpelchLimitLine *self, PangoLayout **kept, const char *name, bool strong)
{
  if (*kept == NULL)
    *kept = name_layout (self, name, strong);
  return *kept;
}

static void
drop_layouts (SpelchLimitLine *self)
{
  for (guint i = 0; i < SPELCH_N_LIMITS; i++)
    for (guint strong = 0; strong < 2; strong++)
      g_clear_object (&self->names[i][strong]);
  g_clear_object (&self->ends[0]);
  g_clear_object (&self->ends[1]);
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
append_text (SpelchLimitLine *self, GtkSnapshot *snapshot, PangoLayout *layout, double x, double y)
{
  GdkRGBA colour;
  gtk_style_context_get_color (gtk_widget_get_style_context (GTK_WIDGET (self)), &colour);
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
  PangoLayout *none = kept_layout (self, &self->ends[0], "0", false);
  PangoLayout *all = kept_layout (self, &self->ends[1], _ ("100 %"), false);
  pango_layout_get_pixel_size (all, &text_width, NULL);
  append_text (self, snapshot, none, 0, y);
  append_text (self, snapshot, all, width - text_width, y);
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
      const SpelchLimit *limit = &self->limits[i];
      layouts[i] = kept_layout (self, &self->names[limit->kind][limit->binding], self->called[limit->kind],
                                limit->binding);
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
        append_text (self, snapshot, layouts[i], places[i].left, row_top (self, places[i].row));
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
      g_autofree char *one = g_strdup_printf (C_ ("limit", "%s %.0f %%"), self->called[self->limits[i].kind],
                                              self->limits[i].share * 100);
      g_string_append_printf (words, "%s%s", i == 0 ? "" : ", ", one);
    }
  spelch_tell_soon (GTK_WIDGET (self), GTK_ACCESSIBLE_PROPERTY_DESCRIPTION, words->str);
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
  for (int kind = 0; plan != NULL && kind < SPELCH_N_LIMITS; kind++)
    {
      const char *called = spelch_words_limit_name ((SpelchLimitKind)kind, plan);
      if (called == self->called[kind])
        continue;
      self->called[kind] = called;
      for (guint strong = 0; strong < 2; strong++)
        g_clear_object (&self->names[kind][strong]);
      same = false;
    }
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
spelch_limit_line_css_changed (GtkWidget *widget, GtkCssStyleChange *change)
{
  GTK_WIDGET_CLASS (spelch_limit_line_parent_class)->css_changed (widget, change);
  drop_layouts (SPELCH_LIMIT_LINE (widget));
}

static void
spelch_limit_line_dispose (GObject *object)
{
  drop_layouts (SPELCH_LIMIT_LINE (object));
  G_OBJECT_CLASS (spelch_limit_line_parent_class)->dispose (object);
}

static void
spelch_limit_line_class_init (SpelchLimitLineClass *klass)
{
  G_OBJECT_CLASS (klass)->dispose = spelch_limit_line_dispose;
  GtkWidgetClass *widget_class = GTK_WIDGET_CLASS (klass);
  widget_class->measure = spelch_limit_line_measure;
  widget_class->snapshot = spelch_limit_line_snapshot;
  widget_class->css_changed = spelch_limit_line_css_changed;
  gtk_widget_class_set_css_name (widget_class, "limitline");
  gtk_widget_class_set_accessible_role (widget_class, GTK_ACCESSIBLE_ROLE_IMG);
}

static void
spelch_limit_line_init (SpelchLimitLine *self)
{
  gtk_accessible_update_property (GTK_ACCESSIBLE (self), GTK_ACCESSIBLE_PROPERTY_LABEL,
                                  _ ("How much of each limit is used"), -1);
}
