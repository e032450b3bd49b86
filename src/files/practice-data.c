/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "files/practice-data.h"

#include "files/exercise-file.h"
#include "files/lesson-file.h"

#include "spelch-shop.h"

#include <string.h>

#define EXERCISES "/org/spelch/Spelch/data/exercises/"
#define LESSONS   "/org/spelch/Spelch/data/lessons/"

/* ---- Lists ---- */

GPtrArray *
spelch_exercises_new (void)
{
  return g_ptr_array_new_with_free_func ((GDestroyNotify)spelch_exercise_unref);
}

static int
by_difficulty (gconstpointer x, gconstpointer y)
{
  const SpelchExercise *a = *(SpelchExercise *const *)x, *b = *(SpelchExercise *const *)y;
  if (a->level != b->level)
    return (int)a->level - (int)b->level;
  return a->asks != b->asks ? (int)a->asks - (int)b->asks : strcmp (a->id, b->id);
}

SpelchExercise *
spelch_exercises_find (const GPtrArray *exercises, const char *id)
{
  for (guint i = 0; i < exercises->len; i++)
    {
      SpelchExercise *exercise = exercises->pdata[i];
      if (g_str_equal (exercise->id, id))
        return exercise;
    }
  return NULL;
}

void
spelch_exercises_put (GPtrArray *exercises, SpelchExercise *exercise)
{
  SpelchExercise *old = spelch_exercises_find (exercises, exercise->id);
  g_ptr_array_add (exercises, spelch_exercise_ref (exercise));
  if (old != NULL)
    g_ptr_array_remove (exercises, old);
  g_ptr_array_sort (exercises, by_difficulty);
}

/* ---- What comes with the program ---- */

/* The data is part of the program and checked by its tests; a fault in it is a programming error. */
static void
must_be_right (const GError *error)
{
  if (error != NULL)
    g_error ("%s", error->message);
}

/* Reads each file of a folder of the resources. */
static void
for_each_resource (const char *folder,
                   void (*read) (const char *text, gsize length, const char *name, GPtrArray *into),
                   GPtrArray *into)
{
  g_autoptr (GError) error = NULL;
  g_auto (GStrv) names = g_resource_enumerate_children (spelch_shop_get_resource (), folder,
                                                        G_RESOURCE_LOOKUP_FLAGS_NONE, &error);
  must_be_right (error);
  for (guint i = 0; names[i] != NULL; i++)
    {
      g_autofree char *path = g_strconcat (folder, names[i], NULL);
      g_autoptr (GBytes) text
          = g_resource_lookup_data (spelch_shop_get_resource (), path, G_RESOURCE_LOOKUP_FLAGS_NONE, &error);
      must_be_right (error);
      read (g_bytes_get_data (text, NULL), g_bytes_get_size (text), names[i], into);
    }
}

static void
read_exercise (const char *text, gsize length, const char *name, GPtrArray *into)
{
  g_autoptr (GError) error = NULL;
  g_autoptr (SpelchExercise) exercise = spelch_exercise_from_json (text, length, name, &error);
  must_be_right (error);
  spelch_exercises_put (into, exercise);
}

static void
read_lesson (const char *text, gsize length, const char *name, GPtrArray *into)
{
  g_autoptr (GError) error = NULL;
  SpelchLesson *lesson = spelch_lesson_from_json (text, length, name, &error);
  must_be_right (error);
  g_ptr_array_add (into, lesson);
}

static GPtrArray *
read_exercises (void)
{
  GPtrArray *exercises = spelch_exercises_new ();
  for_each_resource (EXERCISES, read_exercise, exercises);
  return exercises;
}

static GPtrArray *
read_lessons (void)
{
  GPtrArray *lessons = g_ptr_array_new_with_free_func ((GDestroyNotify)spelch_lesson_free);
  for_each_resource (LESSONS, read_lesson, lessons);
  return lessons;
}

const GPtrArray *
spelch_shop_exercises (void)
{
  static GPtrArray *exercises;
  if (g_once_init_enter (&exercises))
    g_once_init_leave (&exercises, read_exercises ());
  return exercises;
}

const GPtrArray *
spelch_shop_lessons (void)
{
  static GPtrArray *lessons;
  if (g_once_init_enter (&lessons))
    g_once_init_leave (&lessons, read_lessons ());
  return lessons;
}

/* ---- What a teacher keeps ---- */

static void
read_file (GPtrArray *exercises, const char *path, GPtrArray *problems)
{
  g_autoptr (GError) error = NULL;
  g_autoptr (GFile) file = g_file_new_for_path (path);
  g_autoptr (SpelchExercise) exercise = spelch_exercise_load (file, &error);
  if (exercise != NULL)
    spelch_exercises_put (exercises, exercise);
  else if (problems != NULL)
    g_ptr_array_add (problems, g_strdup (error->message));
}

void
spelch_exercises_read_folder (GPtrArray *exercises, const char *folder, GPtrArray *problems)
{
  g_autoptr (GDir) dir = g_dir_open (folder, 0, NULL);
  if (dir == NULL)
    return;
  for (const char *name = g_dir_read_name (dir); name != NULL; name = g_dir_read_name (dir))
    if (g_str_has_suffix (name, ".json"))
      {
        g_autofree char *path = g_build_filename (folder, name, NULL);
        read_file (exercises, path, problems);
      }
}

char *
spelch_exercises_folder (void)
{
  return g_build_filename (g_get_user_data_dir (), "spelch", "exercises", NULL);
}

GPtrArray *
spelch_exercises_all (GPtrArray *problems)
{
  const GPtrArray *shipped = spelch_shop_exercises ();
  GPtrArray *exercises = spelch_exercises_new ();
  g_autofree char *folder = spelch_exercises_folder ();
  for (guint i = 0; i < shipped->len; i++)
    spelch_exercises_put (exercises, shipped->pdata[i]);
  spelch_exercises_read_folder (exercises, folder, problems);
  return exercises;
}
