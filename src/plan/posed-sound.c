/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "plan/posed-sound.h"

char *
spelch_posed_drawn (const SpelchExercise *exercise, guint32 seed)
{
  g_autoptr (SpelchPart) part = spelch_exercise_draw (exercise, seed);
  GString *drawn = g_string_new (NULL);
  for (guint i = 0; i < exercise->n_vary; i++)
    {
      SpelchChange now = spelch_change_now (exercise->vary[i].what, part);
      char number[G_ASCII_DTOSTR_BUF_SIZE];
      g_ascii_formatd (number, sizeof number, "%.6g", now.number);
      g_string_append_printf (drawn, "%s%s=%s", i == 0 ? "" : " ",
                              spelch_code_of (&SPELCH_CHANGE_CODES, (int)now.what),
                              *now.code != '\0' ? now.code : number);
    }
  return g_string_free (drawn, FALSE);
}

/* Keeps the first thing that is wrong. */
static void
note (SpelchSound *sound, guint32 seed, bool in_follow_up, bool meant, const char *doubt)
{
  if (sound->n_doubts++ > 0)
    return;
  sound->seed = seed;
  sound->in_follow_up = in_follow_up;
  sound->meant = meant;
  sound->doubt = doubt;
}

static void
try_seed (const SpelchConstants *constants, SpelchExercise *exercise, guint32 seed, SpelchSound *sound)
{
  const char *doubt = NULL;
  g_autoptr (SpelchPosed) first = spelch_posed_new (constants, exercise, seed, false);
  if (!spelch_posed_is_clear (first, &doubt))
    {
      note (sound, seed, false, false, doubt);
      return;
    }
  if (!exercise->follow_up.told)
    return;
  g_autoptr (SpelchPosed) next = spelch_posed_new (constants, exercise, seed, true);
  if (!spelch_posed_is_clear (next, &doubt))
    note (sound, seed, true, false, doubt);
  else if (spelch_posed_agree (first, next) != exercise->follow_up.same)
    note (sound, seed, true, true, NULL);
}

SpelchSound
spelch_posed_sound (const SpelchConstants *constants, SpelchExercise *exercise, guint seeds)
{
  SpelchSound sound = { 0 };
  g_autoptr (GHashTable) tried = g_hash_table_new_full (g_str_hash, g_str_equal, g_free, NULL);
  for (guint32 seed = 1; seed <= seeds; seed++)
    if (g_hash_table_add (tried, spelch_posed_drawn (exercise, seed)))
      try_seed (constants, exercise, seed, &sound);
  sound.draws = g_hash_table_size (tried);
  return sound;
}
