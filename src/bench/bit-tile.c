/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "bench/bit-tile.h"
#include "bench/bit-words.h"
#include "bench/kept-picture.h"
#include "drawing/pictures.h"

#include <glib/gi18n-lib.h>
#include <math.h>
#include <string.h>

#define MARGIN        3
#define MAGNIFIED     1.2  /* the focused bit */
#define CAPTION_SHARE 0.73 /* of the width that as many letters of average width have */

struct _SpelchBitTile
{
  GtkButton parent_instance;
  GtkLabel *caption;
  SpelchKeptPicture *picture;
  GtkLabel *name;

  SpelchBit bit;
  const SpelchPalette *palette;
  bool accepted;
  bool even; /* as wide as all others */
  char decimal_sign;
  char *reasons;
  char *words; /* name and reasons */
  double scale;
  int height;
  double shank_mm;
};

G_DEFINE_FINAL_TYPE (SpelchBitTile, spelch_bit_tile, GTK_TYPE_BUTTON)

static double
picture_scale (SpelchBitTile *self)
{
  bool focused = gtk_widget_has_visible_focus (GTK_WIDGET (self));
  double tallest = (self->height - 2 * MARGIN) / (self->bit.cutting_length.mm + self->shank_mm);
  return focused ? MIN (self->scale * MAGNIFIED, MAX (tallest, self->scale)) : self->scale;
}

static void
draw (cairo_t *cr, double width, double height, gpointer data)
{
  SpelchBitTile *self = data;
  if (self->palette != NULL && self->scale > 0)
    spelch_picture_bit (cr, &self->bit, width / 2, height - MARGIN, picture_scale (self), self->shank_mm,
                        false, 0, self->palette);
}

static void
fit_picture (SpelchBitTile *self)
{
  double widest = MAX (self->bit.diameter.mm, self->bit.shank.mm) * self->scale * MAGNIFIED;
  spelch_kept_picture_set_size (self->picture, (int)widest + 2 * MARGIN, self->height);
  spelch_kept_picture_changed (self->picture);
}

static void
name_it (SpelchBitTile *self)
{
  const char *caption = gtk_label_get_text (self->caption);
  g_autofree char *full = spelch_bit_full_name (&self->bit, self->decimal_sign);
  GString *name = g_string_new (full);
  if (self->accepted)
    g_string_append_printf (name, ", %s", _ ("in use for this cut"));
  if (caption[0] != '\0')
    g_string_append_printf (name, ", %s", caption);
  gtk_accessible_update_property (GTK_ACCESSIBLE (self), GTK_ACCESSIBLE_PROPERTY_LABEL, name->str, -1);
  if (self->reasons != NULL)
    gtk_accessible_update_property (GTK_ACCESSIBLE (self), GTK_ACCESSIBLE_PROPERTY_DESCRIPTION, self->reasons,
                                    -1);
  g_free (self->words);
  self->words = self->reasons == NULL || self->reasons[0] == '\0'
                    ? g_strdup (name->str)
                    : g_strdup_printf ("%s\n%s", name->str, self->reasons);
  g_string_free (name, TRUE);
}

const SpelchBit *
spelch_bit_tile_get_bit (SpelchBitTile *self)
{
  return &self->bit;
}

const char *
spelch_bit_tile_get_words (SpelchBitTile *self)
{
  return self->words;
}

void
spelch_bit_tile_set_bit (SpelchBitTile *self, const SpelchBit *bit, const SpelchPalette *palette,
                         char decimal_sign)
{
  if (self->palette == palette && self->decimal_sign == decimal_sign
      && memcmp (&self->bit, bit, sizeof *bit) == 0)
    return;
  self->decimal_sign = decimal_sign;
  self->bit = *bit;
  self->palette = palette;
  g_autofree char *name = spelch_bit_short_name (bit, decimal_sign);
  gtk_label_set_text (self->name, name);
  fit_picture (self);
  name_it (self);
}

void
spelch_bit_tile_set_caption (SpelchBitTile *self, const char *caption, const char *reasons)
{
  if (g_strcmp0 (self->reasons, reasons) == 0 && g_str_equal (gtk_label_get_text (self->caption), caption))
    return;
  g_free (self->reasons);
  self->reasons = g_strdup (reasons);
  gtk_label_set_text (self->caption, caption);
  name_it (self);
}

/* What is said of the bit in use changes while a pass is dragged: its tile has room for the longest, or all
 * tiles behind it would be pushed to and fro. */
static void
keep_room (SpelchBitTile *self)
{
  double chars = CAPTION_SHARE * (double)g_utf8_strlen (_ ("pass too shallow"), -1);
  gtk_label_set_width_chars (self->caption, self->accepted && !self->even ? (int)ceil (chars) : -1);
}

void
spelch_bit_tile_set_accepted (SpelchBitTile *self, bool accepted)
{
  if (self->accepted == accepted)
    return;
  self->accepted = accepted;
  if (accepted)
    gtk_widget_add_css_class (GTK_WIDGET (self), "accepted");
  else
    gtk_widget_remove_css_class (GTK_WIDGET (self), "accepted");
  gtk_accessible_update_state (GTK_ACCESSIBLE (self), GTK_ACCESSIBLE_STATE_PRESSED,
                               accepted ? GTK_ACCESSIBLE_TRISTATE_TRUE : GTK_ACCESSIBLE_TRISTATE_FALSE, -1);
  keep_room (self);
  name_it (self);
}

void
spelch_bit_tile_set_scale (SpelchBitTile *self, double scale, int height, double shank_mm)
{
  if (self->scale == scale && self->height == height && self->shank_mm == shank_mm)
    return;
  self->scale = scale;
  self->height = height;
  self->shank_mm = shank_mm;
  fit_picture (self);
}

void
spelch_bit_tile_set_width (SpelchBitTile *self, int width)
{
  self->even = width >= 0;
  keep_room (self);
  PangoEllipsizeMode mode = width < 0 ? PANGO_ELLIPSIZE_NONE : PANGO_ELLIPSIZE_END;
  gtk_widget_set_size_request (GTK_WIDGET (self), width, -1);
  gtk_label_set_ellipsize (self->name, mode);
  gtk_label_set_ellipsize (self->caption, mode);
}

static void
state_changed (GtkWidget *widget, GtkStateFlags before)
{
  SpelchBitTile *self = SPELCH_BIT_TILE (widget);
  GtkStateFlags changed = before ^ gtk_widget_get_state_flags (widget);
  GTK_WIDGET_CLASS (spelch_bit_tile_parent_class)->state_flags_changed (widget, before);
  if ((changed & GTK_STATE_FLAG_FOCUS_VISIBLE) && self->picture != NULL)
    spelch_kept_picture_changed (self->picture);
}

/* ---- Dragging it out ---- */

static GdkContentProvider *
drag_prepared (GtkDragSource *source, double x, double y, SpelchBitTile *self)
{
  return gdk_content_provider_new_typed (SPELCH_TYPE_BIT_TILE, self);
}

static void
drag_begun (GtkDragSource *source, GdkDrag *drag, SpelchBitTile *self)
{
  g_autoptr (GdkPaintable) picture = gtk_widget_paintable_new (GTK_WIDGET (self->picture));
  gtk_drag_source_set_icon (source, picture, gtk_widget_get_width (GTK_WIDGET (self->picture)) / 2,
                            self->height / 2);
}

/* ---- Object ---- */

static void
spelch_bit_tile_dispose (GObject *object)
{
  SpelchBitTile *self = SPELCH_BIT_TILE (object);
  if (self->picture != NULL)
    spelch_kept_picture_set_draw (self->picture, NULL, NULL);
  gtk_widget_dispose_template (GTK_WIDGET (object), SPELCH_TYPE_BIT_TILE);
  G_OBJECT_CLASS (spelch_bit_tile_parent_class)->dispose (object);
}

static void
spelch_bit_tile_finalize (GObject *object)
{
  SpelchBitTile *self = SPELCH_BIT_TILE (object);
  g_free (self->reasons);
  g_free (self->words);
  G_OBJECT_CLASS (spelch_bit_tile_parent_class)->finalize (object);
}

static void
spelch_bit_tile_class_init (SpelchBitTileClass *klass)
{
  GtkWidgetClass *widget_class = GTK_WIDGET_CLASS (klass);
  G_OBJECT_CLASS (klass)->dispose = spelch_bit_tile_dispose;
  G_OBJECT_CLASS (klass)->finalize = spelch_bit_tile_finalize;
  widget_class->state_flags_changed = state_changed;
  g_type_ensure (SPELCH_TYPE_KEPT_PICTURE);
  gtk_widget_class_set_template_from_resource (widget_class, "/org/spelch/Spelch/ui/bit-tile.ui");
  gtk_widget_class_bind_template_child (widget_class, SpelchBitTile, caption);
  gtk_widget_class_bind_template_child (widget_class, SpelchBitTile, picture);
  gtk_widget_class_bind_template_child (widget_class, SpelchBitTile, name);
}

static void
spelch_bit_tile_init (SpelchBitTile *self)
{
  gtk_widget_init_template (GTK_WIDGET (self));
  spelch_kept_picture_set_draw (self->picture, draw, self);
  gtk_accessible_update_state (GTK_ACCESSIBLE (self), GTK_ACCESSIBLE_STATE_PRESSED,
                               GTK_ACCESSIBLE_TRISTATE_FALSE, -1);
  GtkDragSource *source = gtk_drag_source_new ();
  /* Before the button's own gesture, which would keep the pointer to itself. */
  gtk_event_controller_set_propagation_phase (GTK_EVENT_CONTROLLER (source), GTK_PHASE_CAPTURE);
  g_signal_connect (source, "prepare", G_CALLBACK (drag_prepared), self);
  g_signal_connect (source, "drag-begin", G_CALLBACK (drag_begun), self);
  gtk_widget_add_controller (GTK_WIDGET (self), GTK_EVENT_CONTROLLER (source));
}

SpelchBitTile *
spelch_bit_tile_new (void)
{
  return g_object_new (SPELCH_TYPE_BIT_TILE, NULL);
}
