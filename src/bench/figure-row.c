/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "bench/figure-row.h"
#include "bench/glyph.h"
#include "bench/live-text.h"
#include "bench/template.h"

#include <glib/gi18n-lib.h>

struct _SpelchFigureRow
{
  GtkWidget parent_instance;
  GtkLabel *title;
  GtkButton *pin;
  SpelchGlyph *pin_glyph;
  SpelchLiveText *value;
};

G_DEFINE_FINAL_TYPE (SpelchFigureRow, spelch_figure_row, GTK_TYPE_WIDGET)

enum
{
  PROP_TITLE = 1,
  N_PROPS
};
static GParamSpec *props[N_PROPS];

enum
{
  SIGNAL_LET_GO,
  N_SIGNALS
};
static guint signals[N_SIGNALS];

void
spelch_figure_row_set_value (SpelchFigureRow *self, const char *value, bool held)
{
  spelch_live_text_set_text (self->value, value);
  gtk_widget_set_visible (GTK_WIDGET (self->pin), held);
}

void
spelch_figure_row_settle (SpelchFigureRow *self)
{
  spelch_live_text_settle (self->value);
}

static void
pin_clicked (SpelchFigureRow *self)
{
  g_signal_emit (self, signals[SIGNAL_LET_GO], 0);
}

static void
set_title (SpelchFigureRow *self, const char *title)
{
  gtk_label_set_text (self->title, title);
  spelch_live_text_set_caption (self->value, title);
  g_autofree char *let_go = g_strdup_printf (_ ("%s: held by hand; let go"), title);
  gtk_accessible_update_property (GTK_ACCESSIBLE (self->pin), GTK_ACCESSIBLE_PROPERTY_LABEL, let_go, -1);
}

static void
spelch_figure_row_get_property (GObject *object, guint id, GValue *value, GParamSpec *pspec)
{
  g_value_set_string (value, gtk_label_get_text (SPELCH_FIGURE_ROW (object)->title));
}

static void
spelch_figure_row_set_property (GObject *object, guint id, const GValue *value, GParamSpec *pspec)
{
  set_title (SPELCH_FIGURE_ROW (object), g_value_get_string (value));
}

static void
spelch_figure_row_dispose (GObject *object)
{
  spelch_template_dispose (GTK_WIDGET (object), SPELCH_TYPE_FIGURE_ROW);
  G_OBJECT_CLASS (spelch_figure_row_parent_class)->dispose (object);
}

static void
spelch_figure_row_class_init (SpelchFigureRowClass *klass)
{
  GObjectClass *object_class = G_OBJECT_CLASS (klass);
  GtkWidgetClass *widget_class = GTK_WIDGET_CLASS (klass);
  object_class->get_property = spelch_figure_row_get_property;
  object_class->set_property = spelch_figure_row_set_property;
  object_class->dispose = spelch_figure_row_dispose;
  props[PROP_TITLE]
      = g_param_spec_string ("title", NULL, NULL, "", G_PARAM_READWRITE | G_PARAM_STATIC_STRINGS);
  g_object_class_install_properties (object_class, N_PROPS, props);
  signals[SIGNAL_LET_GO] = g_signal_new ("let-go", SPELCH_TYPE_FIGURE_ROW, G_SIGNAL_RUN_LAST, 0, NULL, NULL,
                                         NULL, G_TYPE_NONE, 0);
  g_type_ensure (SPELCH_TYPE_LIVE_TEXT);
  g_type_ensure (SPELCH_TYPE_GLYPH);
  gtk_widget_class_set_template_from_resource (widget_class, "/org/spelch/Spelch/ui/figure-row.ui");
  gtk_widget_class_bind_template_child (widget_class, SpelchFigureRow, title);
  gtk_widget_class_bind_template_child (widget_class, SpelchFigureRow, pin);
  gtk_widget_class_bind_template_child (widget_class, SpelchFigureRow, pin_glyph);
  gtk_widget_class_bind_template_child (widget_class, SpelchFigureRow, value);
  gtk_widget_class_bind_template_callback (widget_class, pin_clicked);
  gtk_widget_class_set_css_name (widget_class, "figurerow");
  gtk_widget_class_set_accessible_role (widget_class, GTK_ACCESSIBLE_ROLE_GROUP);
  gtk_widget_class_set_layout_manager_type (widget_class, GTK_TYPE_BIN_LAYOUT);
}

static void
spelch_figure_row_init (SpelchFigureRow *self)
{
  gtk_widget_init_template (GTK_WIDGET (self));
  spelch_glyph_set_kind (self->pin_glyph, SPELCH_GLYPH_PIN);
  spelch_figure_row_set_value (self, "", false);
}
