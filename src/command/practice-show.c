/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "command/practice-show.h"

#include "command/figures.h"
#include "files/json-writer.h"
#include "files/part-file.h"
#include "files/shop-data.h"
#include "plan/words-posed.h"

#include <glib/gi18n.h>

#define LABEL_WIDTH 20

/* ---- List ---- */

char *
spelch_practice_list_text (const SpelchPracticeAsked *asked)
{
  GString *text = g_string_new (NULL);
  for (guint i = 0; i < asked->exercises->len; i++)
    {
      const SpelchExercise *exercise = asked->exercises->pdata[i];
      const char *title = spelch_by_language (&exercise->title, g_get_language_names ());
      g_string_append_printf (text, "%u  %-10s  %-28s  %s\n", exercise->level,
                              spelch_code_of (&SPELCH_ASKS_CODES, (int)exercise->asks), exercise->id, title);
    }
  return g_string_free (text, FALSE);
}

char *
spelch_practice_list_json (const SpelchPracticeAsked *asked)
{
  SpelchWriter *w = spelch_writer_new (NULL);
  spelch_writer_number (w, "format_version", SPELCH_FORMAT_VERSION);
  spelch_writer_open_list (w, "exercises");
  for (guint i = 0; i < asked->exercises->len; i++)
    {
      const SpelchExercise *exercise = asked->exercises->pdata[i];
      spelch_writer_open_item (w, NULL, false);
      spelch_writer_text (w, "id", exercise->id);
      spelch_writer_code (w, "asks", &SPELCH_ASKS_CODES, (int)exercise->asks);
      spelch_writer_number (w, "level", exercise->level);
      spelch_writer_text (w, "title", spelch_by_language (&exercise->title, g_get_language_names ()));
      spelch_writer_number (w, "draws", spelch_exercise_draws (exercise));
      spelch_writer_flag (w, "follow_up", exercise->follow_up.told);
      spelch_writer_close (w);
    }
  spelch_writer_close (w);
  return spelch_writer_end (w);
}

/* ---- Text ---- */

static void
add_paragraph (GString *text, char *words)
{
  if (*words != '\0')
    g_string_append_printf (text, "%s\n", words);
  g_free (words);
}

static void
add_facts (GString *text, const SpelchPosed *posed, const SpelchNumbers *numbers)
{
  g_autoptr (GArray) facts = spelch_words_facts (posed, numbers);
  for (guint i = 0; i < facts->len; i++)
    {
      const SpelchFact *fact = &g_array_index (facts, SpelchFact, i);
      glong spare = LABEL_WIDTH - g_utf8_strlen (fact->label, -1);
      g_string_append_printf (text, "  %s%*s%s\n", fact->label, (int)MAX (spare, 1), "", fact->value);
    }
}

static void
add_choices (GString *text, const SpelchPosed *posed, const SpelchNumbers *numbers)
{
  if (posed->by_depth)
    g_string_append_printf (text, "  %s\n", _ ("a depth, such as “8.5 mm”"));
  for (guint i = 0; i < posed->n_choices; i++)
    {
      g_autofree char *words = spelch_words_posed_choice (posed, i, numbers);
      const char *meaning = spelch_words_posed_meaning (posed, i);
      g_string_append_printf (text, "  %-20s %s\n", posed->choices[i], words);
      if (*meaning != '\0')
        g_string_append_printf (text, "  %-20s   %s\n", "", meaning);
    }
}

/* "The right answer: both", with the space before the colon that some languages set. */
static void
add_line (GString *text, const char *label, const char *value)
{
  g_autofree char *line = g_strdup_printf (_ ("%s: %s"), label, value);
  g_string_append_printf (text, "\n%s\n", line);
}

/* First what was answered and what comes of it, then what is right and why. */
static void
add_verdict (GString *text, const SpelchPosed *posed, const SpelchGiven *given, bool reckoning,
             const SpelchNumbers *numbers)
{
  g_autofree char *answered = spelch_words_given (posed, given, numbers);
  g_autofree char *right = spelch_words_posed_right (posed, numbers);
  g_autofree char *wrong = spelch_words_posed_wrong (posed, given, numbers);
  g_auto (GStrv) why = spelch_words_posed_why (posed, numbers);
  g_auto (GStrv) reckoned = spelch_words_posed_reckoning (posed, spelch_shop_constant_source, numbers);
  add_line (text, _ ("Your answer"), answered);
  g_string_append_printf (text, "%s\n", given->right ? _ ("Right.") : _ ("Not right."));
  if (*wrong != '\0')
    g_string_append_printf (text, "  %s\n", wrong);
  if (!given->right || given->choice < 0)
    add_line (text, _ ("The right answer"), right);
  for (guint i = 0; why[i] != NULL; i++)
    g_string_append_printf (text, "  %s\n", why[i]);
  if (reckoning)
    g_string_append_printf (text, "\n%s\n", _ ("The reckoning"));
  for (guint i = 0; reckoning && reckoned[i] != NULL; i++)
    g_string_append_printf (text, "  - %s\n", reckoned[i]);
}

char *
spelch_practice_text (const SpelchPosed *posed, const SpelchGiven *given, bool reckoning,
                      const SpelchNumbers *numbers)
{
  GString *text = g_string_new (NULL);
  const SpelchExercise *exercise = posed->exercise;
  const char *title = spelch_by_language (&exercise->title, g_get_language_names ());
  /* Translators: an exercise's title, and the seed its numbers were drawn by. */
  add_paragraph (text, g_strdup_printf (_ ("%s (seed %u)"), title, posed->seed));
  add_paragraph (text, spelch_words_lead (posed, g_get_language_names (), numbers));
  add_paragraph (text, spelch_words_changed (posed, numbers));
  add_paragraph (text, g_strdup (spelch_words_changed_means (posed)));
  add_facts (text, posed, numbers);
  add_paragraph (text, spelch_words_question (posed, numbers));
  add_choices (text, posed, numbers);
  if (given != NULL)
    add_verdict (text, posed, given, reckoning, numbers);
  return g_string_free (text, FALSE);
}

/* ---- JSON ---- */

static void
write_choices (SpelchWriter *w, const SpelchPosed *posed)
{
  spelch_writer_open_list (w, "choices");
  for (guint i = 0; i < posed->n_choices; i++)
    {
      g_autofree char *words = spelch_words_posed_choice (posed, i, &SPELCH_FIGURE_NUMBERS);
      spelch_writer_open_item (w, NULL, true);
      spelch_writer_text (w, "choice", posed->choices[i]);
      spelch_writer_text (w, "words", words);
      if (*spelch_words_posed_meaning (posed, i) != '\0')
        spelch_writer_text (w, "means", spelch_words_posed_meaning (posed, i));
      spelch_writer_close (w);
    }
  spelch_writer_close (w);
}

static void
write_facts (SpelchWriter *w, const SpelchPosed *posed)
{
  g_autoptr (GArray) facts = spelch_words_facts (posed, &SPELCH_FIGURE_NUMBERS);
  spelch_writer_open_list (w, "facts");
  for (guint i = 0; i < facts->len; i++)
    {
      const SpelchFact *fact = &g_array_index (facts, SpelchFact, i);
      spelch_writer_open_item (w, NULL, true);
      spelch_writer_text (w, "label", fact->label);
      spelch_writer_text (w, "value", fact->value);
      spelch_writer_close (w);
    }
  spelch_writer_close (w);
}

static void
write_verdict (SpelchWriter *w, const SpelchPosed *posed, const SpelchGiven *given)
{
  g_autofree char *right = spelch_posed_right_answer (posed);
  g_autofree char *words = spelch_words_posed_right (posed, &SPELCH_FIGURE_NUMBERS);
  g_autofree char *wrong = spelch_words_posed_wrong (posed, given, &SPELCH_FIGURE_NUMBERS);
  g_auto (GStrv) why = spelch_words_posed_why (posed, &SPELCH_FIGURE_NUMBERS);
  g_auto (GStrv) reckoned
      = spelch_words_posed_reckoning (posed, spelch_shop_constant_source, &SPELCH_FIGURE_NUMBERS);
  spelch_writer_flag (w, "right", given->right);
  spelch_writer_text (w, "right_answer", right);
  spelch_writer_text (w, "right_words", words);
  spelch_figure_write_if (w, "depth_from_mm", !posed->depths.empty, posed->depths.from);
  spelch_figure_write_if (w, "depth_to_mm", !posed->depths.empty, posed->depths.to);
  spelch_writer_text (w, "decides", posed->decides);
  spelch_writer_text (w, "wrong_because", wrong);
  spelch_writer_texts (w, "why", (const char *const *)why);
  spelch_writer_texts (w, "reckoning", (const char *const *)reckoned);
}

char *
spelch_practice_json (const SpelchPosed *posed, const SpelchGiven *given)
{
  SpelchWriter *w = spelch_writer_new (NULL);
  g_autofree char *question = spelch_words_question (posed, &SPELCH_FIGURE_NUMBERS);
  g_autofree char *lead = spelch_words_lead (posed, g_get_language_names (), &SPELCH_FIGURE_NUMBERS);
  g_autofree char *changed = spelch_words_changed (posed, &SPELCH_FIGURE_NUMBERS);
  spelch_writer_number (w, "format_version", SPELCH_FORMAT_VERSION);
  spelch_writer_text (w, "model_version", SPELCH_MODEL_VERSION);
  spelch_writer_text (w, "exercise", posed->exercise->id);
  spelch_writer_number (w, "seed", posed->seed);
  spelch_writer_flag (w, "follow_up", posed->follow_up);
  spelch_writer_code (w, "asks", &SPELCH_ASKS_CODES, (int)posed->exercise->asks);
  spelch_writer_text (w, "lead", lead);
  spelch_writer_text (w, "changed", changed);
  spelch_writer_text (w, "question", question);
  write_facts (w, posed);
  spelch_writer_flag (w, "by_depth", posed->by_depth);
  write_choices (w, posed);
  if (given != NULL)
    write_verdict (w, posed, given);
  return spelch_writer_end (w);
}
