/* SPDX-License-Identifier: GPL-3.0-or-later
 *
 * Fuzzer of what teachers write: exercises, lessons and tables of answers. Whatever bytes a file holds, it is
 * refused in a sentence that names it, or read, and then it can be drawn, posed and asked about its answer.
 */
#include "files/exercise-file.h"
#include "files/lesson-file.h"
#include "files/practice-csv.h"
#include "files/shop-data.h"
#include "plan/posed.h"

#include <stddef.h>
#include <stdint.h>
#include <string.h>

int LLVMFuzzerTestOneInput (const uint8_t *data, size_t size);

static void
check_error (const GError *error)
{
  g_assert_true (g_utf8_validate (error->message, -1, NULL)
                 && g_str_has_prefix (error->message, "fuzz.json"));
}

static void
ask (SpelchExercise *exercise)
{
  for (int follow_up = 0; follow_up < 2; follow_up++)
    {
      g_autoptr (SpelchPosed) posed
          = spelch_posed_new (spelch_shop_constants (), exercise, 1, follow_up == 1);
      g_autofree char *right = spelch_posed_right_answer (posed);
      spelch_posed_is_clear (posed, NULL);
      g_assert_true (*right == '\0' || spelch_posed_grade (posed, right, SPELCH_UNIT_MM).understood);
    }
}

int
LLVMFuzzerTestOneInput (const uint8_t *data, size_t size)
{
  g_autoptr (GError) error = NULL, of_lesson = NULL;
  g_autofree char *text = g_strndup ((const char *)data, size);
  g_autoptr (SpelchExercise) exercise
      = spelch_exercise_from_json ((const char *)data, size, "fuzz.json", &error);
  g_autoptr (SpelchLesson) lesson
      = spelch_lesson_from_json ((const char *)data, size, "fuzz.json", &of_lesson);
  g_autoptr (GPtrArray) problems = g_ptr_array_new_with_free_func (g_free);
  g_autoptr (GArray) marked = spelch_attempts_from_csv (text, strlen (text), problems);
  g_assert_cmpuint (marked->len + problems->len, <=, size + 1);
  g_assert_true ((exercise == NULL) == (error != NULL) && (lesson == NULL) == (of_lesson != NULL));
  if (exercise != NULL)
    ask (exercise);
  else
    check_error (error);
  if (lesson == NULL)
    check_error (of_lesson);
  return 0;
}
