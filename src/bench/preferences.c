/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "bench/preferences.h"
#include "files/file-io.h"

#include "shop/decimal-sign.h"

#include <glib/gi18n-lib.h>
#include <glib/gstdio.h>
#include <math.h>
#include <string.h>

#define GROUP_WINDOW "window"
#define GROUP_PARTS  "new-parts"
#define GROUP_HINTS  "first-run"
#define GROUP_LEARN  "practice"
#define WORST_GRADE  5
#define MOST_MM      5.0
#define MOST_HINTS   100

static const char *const appearances[] = { "system", "light", "dark", "high-contrast" };
const SpelchCodes SPELCH_APPEARANCE_CODES = { N_ ("appearance"), appearances, G_N_ELEMENTS (appearances) };

static const char *const units[] = { "mm", "in" };
static const SpelchCodes UNIT_CODES = { N_ ("unit"), units, G_N_ELEMENTS (units) };

static const char *const inch_styles[] = { "fraction", "decimal" };
static const SpelchCodes INCH_CODES = { N_ ("inches"), inch_styles, G_N_ELEMENTS (inch_styles) };

static const char *const feed_units[] = { "as-lengths", "mm/min", "m/min", "in/min", "ft/min" };
static const SpelchCodes FEED_CODES = { N_ ("feeds"), feed_units, G_N_ELEMENTS (feed_units) };

static const char *const answers[] = { "false", "true" };
static const SpelchCodes ANSWER_CODES = { N_ ("reduced motion"), answers, G_N_ELEMENTS (answers) };

static char *
file_in (const char *folder)
{
  return g_build_filename (folder, "preferences.ini", NULL);
}

static SpelchPreferences
defaults (void)
{
  g_autoptr (SpelchPart) part = spelch_part_new ();
  return (SpelchPreferences){ .accepted_seen = part->accepted_seen,
                              .accepted_hidden = part->accepted_hidden,
                              .tolerances = part->tolerances };
}

/* ---- Reading ---- */

typedef struct
{
  GKeyFile *keys;
  char *spoilt; /* the first key whose value can't be used */
} SpelchReader;

static void
spoil (SpelchReader *reader, const char *key)
{
  if (reader->spoilt == NULL)
    reader->spoilt = g_strdup (key);
}

static int
read_choice (SpelchReader *reader, const char *group, const char *key, const SpelchCodes *codes, int usual)
{
  int value = usual;
  g_autofree char *code = g_key_file_get_string (reader->keys, group, key, NULL);
  if (code != NULL && !spelch_code_read (codes, code, &value))
    spoil (reader, key);
  return value;
}

static double
read_number (SpelchReader *reader, const char *group, const char *key, double least, double most,
             double usual)
{
  g_autofree char *text = g_key_file_get_string (reader->keys, group, key, NULL);
  char *end = text;
  double value = text == NULL ? usual : g_ascii_strtod (text, &end);
  if (text == NULL || (end != text && *end == '\0' && value >= least && value <= most))
    return value;
  spoil (reader, key);
  return usual;
}

static int
read_whole (SpelchReader *reader, const char *group, const char *key, int least, int most, int usual)
{
  double value = read_number (reader, group, key, least, most, usual);
  if (value == floor (value))
    return (int)value;
  spoil (reader, key);
  return usual;
}

static void
read_text (SpelchReader *reader, const char *group, const char *key, char *text, gsize size)
{
  g_autofree char *read = g_key_file_get_string (reader->keys, group, key, NULL);
  if (read != NULL && strlen (read) >= size)
    spoil (reader, key);
  else if (read != NULL)
    g_strlcpy (text, read, size);
}

static SpelchPreferences
read_all (SpelchReader *reader)
{
  SpelchPreferences read = defaults ();
  const SpelchTolerances usual = read.tolerances;
  read.appearance = (SpelchAppearanceChoice)read_choice (reader, GROUP_WINDOW, "appearance",
                                                         &SPELCH_APPEARANCE_CODES, (int)read.appearance);
  read.reduced_motion = read_choice (reader, GROUP_WINDOW, "reduced-motion", &ANSWER_CODES, 0) == 1;
  read.unit = (SpelchUnit)read_choice (reader, GROUP_WINDOW, "unit", &UNIT_CODES, (int)read.unit);
  read.inch_style = (SpelchInchStyle)read_choice (reader, GROUP_WINDOW, "inches", &INCH_CODES, 0);
  read.feed_unit = (SpelchFeedUnit)read_choice (reader, GROUP_WINDOW, "feeds", &FEED_CODES, 0);
  read.accepted_seen = read_whole (reader, GROUP_PARTS, "accepted-seen", 1, WORST_GRADE, read.accepted_seen);
  read.accepted_hidden
      = read_whole (reader, GROUP_PARTS, "accepted-hidden", 1, WORST_GRADE, read.accepted_hidden);
  read.tolerances.depth_mm
      = read_number (reader, GROUP_PARTS, "depth-tolerance-mm", 0, MOST_MM, usual.depth_mm);
  read.tolerances.up_shear_mm
      = read_number (reader, GROUP_PARTS, "up-shear-tolerance-mm", 0, MOST_MM, usual.up_shear_mm);
  read_text (reader, GROUP_LEARN, "learner", read.learner, sizeof read.learner);
  read.hints_done = (guint)read_whole (reader, GROUP_HINTS, "hints-done", 0, MOST_HINTS, 0);
  return read;
}

SpelchPreferences
spelch_preferences_load (const char *folder, char **trouble)
{
  g_autoptr (GKeyFile) keys = g_key_file_new ();
  g_autoptr (GError) error = NULL;
  g_autofree char *path = file_in (folder);
  SpelchReader reader = { keys, NULL };
  bool spoilt = !g_key_file_load_from_file (keys, path, G_KEY_FILE_NONE, &error)
                && !g_error_matches (error, G_FILE_ERROR, G_FILE_ERROR_NOENT);
  SpelchPreferences read = spoilt ? defaults () : read_all (&reader);
  g_autofree char *key = reader.spoilt;
  if (trouble == NULL)
    return read;
  *trouble = NULL;
  if (spoilt)
    *trouble = g_strdup_printf (_ ("The preferences in %s can't be read; the usual ones hold."), path);
  else if (key != NULL)
    *trouble = g_strdup_printf (_ ("“%s” in %s can't be used; the usual value holds."), key, path);
  return read;
}

/* ---- Keeping ---- */

static void
write_choice (GKeyFile *keys, const char *key, const SpelchCodes *codes, int value)
{
  g_key_file_set_string (keys, GROUP_WINDOW, key, spelch_code_of (codes, value));
}

static void
write_number (GKeyFile *keys, const char *key, double value)
{
  char text[G_ASCII_DTOSTR_BUF_SIZE];
  g_key_file_set_string (keys, GROUP_PARTS, key, g_ascii_formatd (text, sizeof text, "%.6g", value));
}

static void
write_all (GKeyFile *keys, const SpelchPreferences *preferences)
{
  write_choice (keys, "appearance", &SPELCH_APPEARANCE_CODES, (int)preferences->appearance);
  write_choice (keys, "reduced-motion", &ANSWER_CODES, preferences->reduced_motion);
  write_choice (keys, "unit", &UNIT_CODES, (int)preferences->unit);
  write_choice (keys, "inches", &INCH_CODES, (int)preferences->inch_style);
  write_choice (keys, "feeds", &FEED_CODES, (int)preferences->feed_unit);
  write_number (keys, "accepted-seen", preferences->accepted_seen);
  write_number (keys, "accepted-hidden", preferences->accepted_hidden);
  write_number (keys, "depth-tolerance-mm", preferences->tolerances.depth_mm);
  write_number (keys, "up-shear-tolerance-mm", preferences->tolerances.up_shear_mm);
  g_key_file_set_string (keys, GROUP_LEARN, "learner", preferences->learner);
  g_key_file_set_integer (keys, GROUP_HINTS, "hints-done", (int)preferences->hints_done);
}

bool
spelch_preferences_save (const SpelchPreferences *preferences, const char *folder, GError **error)
{
  g_autoptr (GKeyFile) keys = g_key_file_new ();
  g_autoptr (GError) reason = NULL;
  g_autofree char *path = file_in (folder);
  g_key_file_load_from_file (keys, path, G_KEY_FILE_KEEP_COMMENTS, NULL);
  write_all (keys, preferences);
  gsize length = 0;
  g_autofree char *text = g_key_file_to_data (keys, &length, NULL);
  g_mkdir_with_parents (folder, 0700);
  if (spelch_file_put (path, text, length, 0600, &reason))
    return true;
  g_set_error (error, reason->domain, reason->code,
               _ ("Preferences can't be kept in %s: %s. They hold until the program ends."), folder,
               reason->message);
  return false;
}

SpelchNumbers
spelch_preferences_numbers (const SpelchPreferences *preferences)
{
  return (SpelchNumbers){ preferences->unit, preferences->inch_style, spelch_decimal_sign (),
                          preferences->feed_unit };
}

void
spelch_preferences_seed (const SpelchPreferences *preferences, SpelchPart *part)
{
  part->accepted_seen = preferences->accepted_seen;
  part->accepted_hidden = preferences->accepted_hidden;
  part->tolerances = preferences->tolerances;
}
