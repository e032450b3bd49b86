/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "bench/appearance.h"

#include <string.h>

#define PORTAL_NAME      "org.freedesktop.portal.Desktop"
#define PORTAL_PATH      "/org/freedesktop/portal/desktop"
#define PORTAL_INTERFACE "org.freedesktop.portal.Settings"
#define PORTAL_GROUP     "org.freedesktop.appearance"
#define PORTAL_KEY       "color-scheme"
#define PREFERS_DARK     1

struct _SpelchAppearance
{
  GObject parent_instance;
  GdkDisplay *display;
  GtkCssProvider *sheet;
  GtkCssProvider *colours;
  SpelchAppearanceChoice choice;
  bool system_dark;
  SpelchLook look;
  bool dressed;
  GCancellable *asking;
  GDBusConnection *bus;
  guint subscription;
};

G_DEFINE_FINAL_TYPE (SpelchAppearance, spelch_appearance, G_TYPE_OBJECT)

enum
{
  SIGNAL_CHANGED,
  N_SIGNALS
};
static guint signals[N_SIGNALS];

/* ---- Dressing ---- */

static void
define (GString *css, const char *name, SpelchColour colour)
{
  g_string_append_printf (css, "@define-color spelch_%s #%02x%02x%02x;\n", name,
                          (guint)(colour.r * 255 + 0.5), (guint)(colour.g * 255 + 0.5),
                          (guint)(colour.b * 255 + 0.5));
}

static void
load_colours (SpelchAppearance *self)
{
  const SpelchPalette *palette = spelch_palette (self->look);
  GString *css = g_string_new (NULL);
  define (css, "ground", palette->ground);
  define (css, "ink", palette->ink);
  define (css, "ink_soft", palette->ink_soft);
  define (css, "line_soft", palette->line_soft);
  define (css, "label_ground", palette->label_ground);
  gtk_css_provider_load_from_data (self->colours, css->str, -1);
  g_string_free (css, TRUE);
}

static bool
theme_is_high_contrast (void)
{
  g_autofree char *theme = NULL;
  g_object_get (gtk_settings_get_default (), "gtk-theme-name", &theme, NULL);
  return theme != NULL && (strstr (theme, "HighContrast") != NULL || g_str_has_suffix (theme, "-hc"));
}

static SpelchLook
wanted_look (SpelchAppearance *self)
{
  switch (self->choice)
    {
    case SPELCH_APPEARANCE_LIGHT:
      return SPELCH_LOOK_LIGHT;
    case SPELCH_APPEARANCE_DARK:
      return SPELCH_LOOK_DARK;
    case SPELCH_APPEARANCE_HIGH_CONTRAST:
      return SPELCH_LOOK_HIGH_CONTRAST;
    case SPELCH_APPEARANCE_SYSTEM:
    default:
      if (theme_is_high_contrast ())
        return SPELCH_LOOK_HIGH_CONTRAST;
      return self->system_dark ? SPELCH_LOOK_DARK : SPELCH_LOOK_LIGHT;
    }
}

/* Set to what it is, a setting has GTK read its theme anew all the same. */
static void
prefer_dark (bool dark)
{
  GtkSettings *settings = gtk_settings_get_default ();
  gboolean is_dark = FALSE;
  g_object_get (settings, "gtk-application-prefer-dark-theme", &is_dark, NULL);
  if (dark != is_dark)
    g_object_set (settings, "gtk-application-prefer-dark-theme", dark, NULL);
}

static void
dress (SpelchAppearance *self)
{
  SpelchLook look = wanted_look (self);
  prefer_dark (look == SPELCH_LOOK_DARK);
  if (self->dressed && look == self->look)
    return;
  self->look = look;
  self->dressed = true;
  load_colours (self);
  g_signal_emit (self, signals[SIGNAL_CHANGED], 0);
}

void
spelch_appearance_choose (SpelchAppearance *self, SpelchAppearanceChoice choice)
{
  self->choice = choice;
  dress (self);
}

SpelchLook
spelch_appearance_get_look (SpelchAppearance *self)
{
  return self->look;
}

/* ---- Scroll bars ---- */

static void
renew_scroll_bars (GtkWidget *widget)
{
  if (GTK_IS_SCROLLED_WINDOW (widget)
      && gtk_scrolled_window_get_overlay_scrolling (GTK_SCROLLED_WINDOW (widget)))
    {
      gtk_scrolled_window_set_overlay_scrolling (GTK_SCROLLED_WINDOW (widget), FALSE);
      gtk_scrolled_window_set_overlay_scrolling (GTK_SCROLLED_WINDOW (widget), TRUE);
    }
  for (GtkWidget *child = gtk_widget_get_first_child (widget); child != NULL;
       child = gtk_widget_get_next_sibling (child))
    renew_scroll_bars (child);
}

/* GTK 4.8 never disconnects a scrolled window from this setting, so that a change would be told to those of
 * windows closed long ago too, whose memory is gone. None is told; those that are there look at it anew. */
static void
scroll_bars_changed (SpelchAppearance *self, GParamSpec *pspec, GtkSettings *settings)
{
  g_signal_stop_emission_by_name (settings, "notify::gtk-overlay-scrolling");
  GListModel *windows = gtk_window_get_toplevels ();
  for (guint i = 0; i < g_list_model_get_n_items (windows); i++)
    {
      g_autoptr (GtkWidget) window = g_list_model_get_item (windows, i);
      renew_scroll_bars (window);
    }
}

/* ---- What the system prefers ---- */

static void
system_prefers (SpelchAppearance *self, GVariant *value)
{
  g_autoptr (GVariant) inner = g_variant_ref (value);
  while (g_variant_is_of_type (inner, G_VARIANT_TYPE_VARIANT))
    {
      GVariant *unpacked = g_variant_get_variant (inner);
      g_variant_unref (inner);
      inner = unpacked;
    }
  if (!g_variant_is_of_type (inner, G_VARIANT_TYPE_UINT32))
    return;
  bool dark = g_variant_get_uint32 (inner) == PREFERS_DARK;
  if (dark == self->system_dark)
    return;
  self->system_dark = dark;
  dress (self);
}

static void
setting_changed (GDBusConnection *bus, const char *sender, const char *path, const char *interface,
                 const char *name, GVariant *parameters, gpointer data)
{
  const char *group = NULL, *key = NULL;
  g_autoptr (GVariant) value = NULL;
  if (!g_variant_is_of_type (parameters, G_VARIANT_TYPE ("(ssv)")))
    return;
  g_variant_get (parameters, "(&s&sv)", &group, &key, &value);
  if (g_str_equal (group, PORTAL_GROUP) && g_str_equal (key, PORTAL_KEY))
    system_prefers (data, value);
}

static void
setting_read (GObject *source, GAsyncResult *result, gpointer data)
{
  g_autoptr (GVariant) reply = g_dbus_connection_call_finish (G_DBUS_CONNECTION (source), result, NULL);
  if (reply == NULL) /* no such portal, or the window is gone */
    return;
  g_autoptr (GVariant) value = NULL;
  g_variant_get (reply, "(v)", &value);
  system_prefers (data, value);
}

static void
bus_reached (GObject *source, GAsyncResult *result, gpointer data)
{
  g_autoptr (GDBusConnection) bus = g_bus_get_finish (result, NULL);
  if (bus == NULL)
    return;
  SpelchAppearance *self = data;
  self->subscription = g_dbus_connection_signal_subscribe (
      bus, PORTAL_NAME, PORTAL_INTERFACE, "SettingChanged", PORTAL_PATH, PORTAL_GROUP,
      G_DBUS_SIGNAL_FLAGS_NONE, setting_changed, self, NULL);
  g_dbus_connection_call (bus, PORTAL_NAME, PORTAL_PATH, PORTAL_INTERFACE, "Read",
                          g_variant_new ("(ss)", PORTAL_GROUP, PORTAL_KEY), G_VARIANT_TYPE ("(v)"),
                          G_DBUS_CALL_FLAGS_NO_AUTO_START, 2000, self->asking, setting_read, self);
  self->bus = g_steal_pointer (&bus);
}

/* ---- Object ---- */

static void
spelch_appearance_dispose (GObject *object)
{
  SpelchAppearance *self = SPELCH_APPEARANCE (object);
  g_cancellable_cancel (self->asking);
  if (self->bus != NULL && self->subscription != 0)
    g_dbus_connection_signal_unsubscribe (self->bus, self->subscription);
  self->subscription = 0;
  g_clear_object (&self->bus);
  g_clear_object (&self->asking);
  g_signal_handlers_disconnect_by_data (gtk_settings_get_default (), self);
  g_clear_object (&self->sheet);
  g_clear_object (&self->colours);
  G_OBJECT_CLASS (spelch_appearance_parent_class)->dispose (object);
}

static void
spelch_appearance_class_init (SpelchAppearanceClass *klass)
{
  G_OBJECT_CLASS (klass)->dispose = spelch_appearance_dispose;
  signals[SIGNAL_CHANGED] = g_signal_new ("changed", SPELCH_TYPE_APPEARANCE, G_SIGNAL_RUN_LAST, 0, NULL, NULL,
                                          NULL, G_TYPE_NONE, 0);
}

static void
spelch_appearance_init (SpelchAppearance *self)
{
  self->sheet = gtk_css_provider_new ();
  self->colours = gtk_css_provider_new ();
  self->asking = g_cancellable_new ();
}

SpelchAppearance *
spelch_appearance_new (GdkDisplay *display)
{
  SpelchAppearance *self = g_object_new (SPELCH_TYPE_APPEARANCE, NULL);
  self->display = display;
  gtk_css_provider_load_from_resource (self->sheet, "/org/spelch/Spelch/ui/bench.css");
  gtk_style_context_add_provider_for_display (display, GTK_STYLE_PROVIDER (self->colours),
                                              GTK_STYLE_PROVIDER_PRIORITY_APPLICATION);
  gtk_style_context_add_provider_for_display (display, GTK_STYLE_PROVIDER (self->sheet),
                                              GTK_STYLE_PROVIDER_PRIORITY_APPLICATION);
  g_signal_connect_swapped (gtk_settings_get_default (), "notify::gtk-theme-name", G_CALLBACK (dress), self);
  g_signal_connect_swapped (gtk_settings_get_default (), "notify::gtk-overlay-scrolling",
                            G_CALLBACK (scroll_bars_changed), self);
  dress (self);
  g_bus_get (G_BUS_TYPE_SESSION, self->asking, bus_reached, self);
  return self;
}
