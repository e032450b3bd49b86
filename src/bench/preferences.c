/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "bench/preferences.h"

#include <glib/gi18n-lib.h>
#include <glib/gstdio.h>
#include <locale.h>

#define GROUP "window"

static const char *const appearances[] = { "system", "light", "dark", "high-contrast" };
const SpelchCodes SPELCH_APPEARANCE_CODES = { N_ ("appearance"), appearances, G_N_ELEMENTS (appearances) };

static const char *const units[] = { "mm", "in" };
static const SpelchCodes UNIT_CODES = { N_ ("unit"), units, G_N_ELEMENTS (units) };

static const char *const inch_styles[] = { "fraction", "decimal" };
static const SpelchCodes INCH_CODES = { N_ ("inches"), inch_styles, G_N_ELEMENTS (inch_styles) };

static char *
file_in (const char *folder)
{
  return g_build_filename (folder, "preferences.ini", NULL);
}

static int
read_choice (GKeyFile *keys, const char *key, const SpelchCodes *codes)
{
  int value = 0;
  g_autofree char *code = g_key_file_get_string (keys, GROUP, key, NULL);
  spelch_code_read (codes, code, &value);
  return value;
}

SpelchPreferences
spelch_preferences_load (const char *folder)
{
  g_autoptr (GKeyFile) keys = g_key_file_new ();
  g_autofree char *path = file_in (folder);
  g_key_file_load_from_file (keys, path, G_KEY_FILE_NONE, NULL);
  return (SpelchPreferences){
    .appearance = (SpelchAppearanceChoice)read_choice (keys, "appearance", &SPELCH_APPEARANCE_CODES),
    .unit = (SpelchUnit)read_choice (keys, "unit", &UNIT_CODES),
    .inch_style = (SpelchInchStyle)read_choice (keys, "inches", &INCH_CODES),
  };
}

void
spelch_preferences_save (const SpelchPreferences *preferences, const char *folder)
{
  g_autoptr (GKeyFile) keys = g_key_file_new ();
  g_autoptr (GError) error = NULL;
  g_autofree char *path = file_in (folder);
  g_key_file_load_from_file (keys, path, G_KEY_FILE_KEEP_COMMENTS, NULL);
  g_key_file_set_string (keys, GROUP, "appearance",
                         spelch_code_of (&SPELCH_APPEARANCE_CODES, (int)preferences->appearance));
  g_key_file_set_string (keys, GROUP, "unit", spelch_code_of (&UNIT_CODES, (int)preferences->unit));
  g_key_file_set_string (keys, GROUP, "inches", spelch_code_of (&INCH_CODES, (int)preferences->inch_style));
  g_mkdir_with_parents (folder, 0700);
  if (!g_key_file_save_to_file (keys, path, &error))
    g_info ("Preferences not kept: %s", error->message);
}

SpelchNumbers
spelch_preferences_numbers (const SpelchPreferences *preferences)
{
  const struct lconv *locale = localeconv ();
  return (SpelchNumbers){ preferences->unit, preferences->inch_style,
                          locale->decimal_point[0] == ',' ? ',' : '.' };
}
