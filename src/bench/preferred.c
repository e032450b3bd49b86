/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "bench/preferred.h"

struct _SpelchPreferred
{
  GObject parent_instance;
  char *folder;
  char *trouble;
  SpelchPreferences now;
  GActionMap *map; /* not owned */
};

G_DEFINE_FINAL_TYPE (SpelchPreferred, spelch_preferred, G_TYPE_OBJECT)

enum
{
  SIGNAL_CHANGED,
  SIGNAL_SAID,
  N_SIGNALS
};
static guint signals[N_SIGNALS];

const SpelchPreferences *
spelch_preferred_get (SpelchPreferred *self)
{
  return &self->now;
}

static void
set_state (SpelchPreferred *self, const char *name, GVariant *state)
{
  GAction *action = g_action_map_lookup_action (self->map, name);
  g_simple_action_set_state (G_SIMPLE_ACTION (action), state);
}

static void
show_states (SpelchPreferred *self)
{
  if (self->map == NULL)
    return;
  set_state (self, "unit", g_variant_new_string (self->now.unit == SPELCH_UNIT_INCH ? "in" : "mm"));
  set_state (self, "inch-decimals", g_variant_new_boolean (self->now.inch_style == SPELCH_INCH_DECIMAL));
  set_state (self, "appearance",
             g_variant_new_string (spelch_code_of (&SPELCH_APPEARANCE_CODES, (int)self->now.appearance)));
}

void
spelch_preferred_set (SpelchPreferred *self, const SpelchPreferences *preferences)
{
  g_autoptr (GError) error = NULL;
  self->now = *preferences;
  show_states (self);
  g_signal_emit (self, signals[SIGNAL_CHANGED], 0);
  if (!spelch_preferences_save (preferences, self->folder, &error))
    g_signal_emit (self, signals[SIGNAL_SAID], 0, error->message);
}

char *
spelch_preferred_take_trouble (SpelchPreferred *self)
{
  return g_steal_pointer (&self->trouble);
}

/* ---- Actions ---- */

static void
do_unit (GSimpleAction *action, GVariant *state, gpointer data)
{
  SpelchPreferences next = SPELCH_PREFERRED (data)->now;
  next.unit = g_str_equal (g_variant_get_string (state, NULL), "in") ? SPELCH_UNIT_INCH : SPELCH_UNIT_MM;
  spelch_preferred_set (data, &next);
}

static void
do_inch_decimals (GSimpleAction *action, GVariant *state, gpointer data)
{
  SpelchPreferences next = SPELCH_PREFERRED (data)->now;
  next.inch_style = g_variant_get_boolean (state) ? SPELCH_INCH_DECIMAL : SPELCH_INCH_FRACTION;
  spelch_preferred_set (data, &next);
}

static void
do_appearance (GSimpleAction *action, GVariant *state, gpointer data)
{
  SpelchPreferences next = SPELCH_PREFERRED (data)->now;
  int choice = SPELCH_APPEARANCE_SYSTEM;
  spelch_code_read (&SPELCH_APPEARANCE_CODES, g_variant_get_string (state, NULL), &choice);
  next.appearance = (SpelchAppearanceChoice)choice;
  spelch_preferred_set (data, &next);
}

void
spelch_preferred_add_actions (SpelchPreferred *self, GActionMap *map)
{
  const GActionEntry actions[] = {
    { .name = "unit", .parameter_type = "s", .state = "'mm'", .change_state = do_unit },
    { .name = "inch-decimals", .state = "false", .change_state = do_inch_decimals },
    { .name = "appearance", .parameter_type = "s", .state = "'system'", .change_state = do_appearance },
  };
  g_action_map_add_action_entries (map, actions, G_N_ELEMENTS (actions), self);
  self->map = map;
  show_states (self);
}

/* ---- Object ---- */

static void
spelch_preferred_finalize (GObject *object)
{
  SpelchPreferred *self = SPELCH_PREFERRED (object);
  g_free (self->folder);
  g_free (self->trouble);
  G_OBJECT_CLASS (spelch_preferred_parent_class)->finalize (object);
}

static void
spelch_preferred_class_init (SpelchPreferredClass *klass)
{
  G_OBJECT_CLASS (klass)->finalize = spelch_preferred_finalize;
  signals[SIGNAL_CHANGED] = g_signal_new ("changed", SPELCH_TYPE_PREFERRED, G_SIGNAL_RUN_LAST, 0, NULL, NULL,
                                          NULL, G_TYPE_NONE, 0);
  signals[SIGNAL_SAID] = g_signal_new ("said", SPELCH_TYPE_PREFERRED, G_SIGNAL_RUN_LAST, 0, NULL, NULL, NULL,
                                       G_TYPE_NONE, 1, G_TYPE_STRING);
}

static void
spelch_preferred_init (SpelchPreferred *self)
{
}

SpelchPreferred *
spelch_preferred_new (const char *folder)
{
  SpelchPreferred *self = g_object_new (SPELCH_TYPE_PREFERRED, NULL);
  self->folder = g_strdup (folder);
  self->now = spelch_preferences_load (folder, &self->trouble);
  return self;
}
