/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "bench/glyph.h"
#include "bench/text-size.h"

#include <stdbool.h>

#define SIZE_EM 1.25

struct _SpelchGlyph
{
  GtkWidget parent_instance;
  SpelchGlyphKind kind;
};

G_DEFINE_FINAL_TYPE (SpelchGlyph, spelch_glyph, GTK_TYPE_WIDGET)

SpelchGlyphKind
spelch_glyph_of_grade (int grade)
{
  if (grade <= 0)
    return SPELCH_GLYPH_NONE;
  if (grade == 1)
    return SPELCH_GLYPH_TICK;
  return grade <= 3 ? SPELCH_GLYPH_FRAYED : SPELCH_GLYPH_SPLINTER;
}

SpelchGlyphKind
spelch_glyph_of_edge (const SpelchPlan *plan, SpelchSide side)
{
  const SpelchEdge *edge = spelch_plan_worst (plan, side);
  SpelchGlyphKind kind = spelch_glyph_of_grade (edge == NULL ? 0 : edge->grade);
  bool allowed = plan->verdict != SPELCH_VERDICT_DO_NOT_CUT;
  return allowed || kind != SPELCH_GLYPH_TICK ? kind : SPELCH_GLYPH_NONE;
}

static void
draw_tick (cairo_t *cr)
{
  cairo_set_line_width (cr, 0.12);
  cairo_move_to (cr, 0.12, 0.55);
  cairo_line_to (cr, 0.38, 0.82);
  cairo_line_to (cr, 0.90, 0.18);
  cairo_stroke (cr);
}

static void
draw_cross (cairo_t *cr)
{
  cairo_set_line_width (cr, 0.12);
  cairo_move_to (cr, 0.2, 0.2);
  cairo_line_to (cr, 0.8, 0.8);
  cairo_move_to (cr, 0.8, 0.2);
  cairo_line_to (cr, 0.2, 0.8);
  cairo_stroke (cr);
}

/* Fibres standing up from an edge; @height 0 to 1. */
static void
draw_splinter (cairo_t *cr, double height, int fibres)
{
  double step = 0.96 / fibres;
  cairo_set_line_width (cr, 0.08);
  for (int i = 0; i < fibres; i++)
    {
      double x = 0.02 + i * step;
      double top = 0.88 - height * (i % 2 == 0 ? 0.55 : 0.78);
      cairo_move_to (cr, x, 0.88);
      cairo_line_to (cr, x + step * 0.62, top);
      cairo_line_to (cr, x + step * 0.92, 0.88);
    }
  cairo_move_to (cr, 0.0, 0.88);
  cairo_line_to (cr, 1.0, 0.88);
  cairo_stroke (cr);
}

static void
draw_pin (cairo_t *cr)
{
  cairo_arc (cr, 0.5, 0.32, 0.22, 0, 2 * G_PI);
  cairo_fill (cr);
  cairo_set_line_width (cr, 0.12);
  cairo_move_to (cr, 0.5, 0.5);
  cairo_line_to (cr, 0.5, 0.96);
  cairo_stroke (cr);
}

static void
draw_chevron (cairo_t *cr, bool down)
{
  const double x[] = { 0.36, 0.64, 0.36 }, y[] = { 0.22, 0.5, 0.78 };
  cairo_set_line_width (cr, 0.1);
  for (int i = 0; i < 3; i++)
    cairo_line_to (cr, down ? y[i] : x[i], down ? x[i] : y[i]);
  cairo_stroke (cr);
}

void
spelch_glyph_draw (cairo_t *cr, SpelchGlyphKind kind, double size)
{
  cairo_save (cr);
  cairo_scale (cr, size, size);
  cairo_set_line_cap (cr, CAIRO_LINE_CAP_ROUND);
  cairo_set_line_join (cr, CAIRO_LINE_JOIN_ROUND);
  switch ((int)kind)
    {
    case SPELCH_GLYPH_TICK:
      draw_tick (cr);
      break;
    case SPELCH_GLYPH_CROSS:
      draw_cross (cr);
      break;
    case SPELCH_GLYPH_FRAYED:
      draw_splinter (cr, 0.45, 4);
      break;
    case SPELCH_GLYPH_SPLINTER:
      draw_splinter (cr, 1.0, 3);
      break;
    case SPELCH_GLYPH_PIN:
      draw_pin (cr);
      break;
    case SPELCH_GLYPH_MORE:
    case SPELCH_GLYPH_LESS:
      draw_chevron (cr, kind == SPELCH_GLYPH_LESS);
      break;
    default:
      break;
    }
  cairo_restore (cr);
}

static void
spelch_glyph_measure (GtkWidget *widget, GtkOrientation orientation, int for_size, int *minimum, int *natural,
                      int *minimum_baseline, int *natural_baseline)
{
  *minimum = *natural = (int)(spelch_text_pixels (widget) * SIZE_EM);
}

static void
spelch_glyph_snapshot (GtkWidget *widget, GtkSnapshot *snapshot)
{
  SpelchGlyph *self = SPELCH_GLYPH (widget);
  if (self->kind == SPELCH_GLYPH_NONE)
    return;
  float width = (float)gtk_widget_get_width (widget), height = (float)gtk_widget_get_height (widget);
  GdkRGBA colour;
  gtk_style_context_get_color (gtk_widget_get_style_context (widget), &colour);
  cairo_t *cr = gtk_snapshot_append_cairo (snapshot, &GRAPHENE_RECT_INIT (0, 0, width, height));
  gdk_cairo_set_source_rgba (cr, &colour);
  double size = MIN (width, height);
  if (self->kind == SPELCH_GLYPH_MORE && gtk_widget_get_direction (widget) == GTK_TEXT_DIR_RTL)
    {
      cairo_translate (cr, width, 0);
      cairo_scale (cr, -1, 1);
    }
  cairo_translate (cr, ((double)width - size) / 2, ((double)height - size) / 2);
  spelch_glyph_draw (cr, self->kind, size);
  cairo_destroy (cr);
}

void
spelch_glyph_set_kind (SpelchGlyph *self, SpelchGlyphKind kind)
{
  if (self->kind == kind)
    return;
  self->kind = kind;
  gtk_widget_queue_draw (GTK_WIDGET (self));
}

static void
spelch_glyph_class_init (SpelchGlyphClass *klass)
{
  GtkWidgetClass *widget_class = GTK_WIDGET_CLASS (klass);
  widget_class->measure = spelch_glyph_measure;
  widget_class->snapshot = spelch_glyph_snapshot;
  gtk_widget_class_set_css_name (widget_class, "glyph");
  /* The word beside it says the same. */
  gtk_widget_class_set_accessible_role (widget_class, GTK_ACCESSIBLE_ROLE_PRESENTATION);
}

static void
spelch_glyph_init (SpelchGlyph *self)
{
}
