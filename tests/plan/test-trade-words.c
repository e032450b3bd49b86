/* SPDX-License-Identifier: GPL-3.0-or-later
 *
 * Words of the trade: where they are found in a text, and, in each language, that practice really shows them.
 */
#include "../language.h"

#include "files/practice-data.h"
#include "files/shop-data.h"
#include "plan/trade-words.h"
#include "plan/words-posed.h"

#include <glib/gi18n-lib.h>
#include <string.h>

static const SpelchNumbers MM = { SPELCH_UNIT_MM, SPELCH_INCH_FRACTION, '.' };

/* Of these only exercises of one's own, which set what those shipped leave alone, may speak. */
static const char *const RARE[] = {
  N_ ("A piece of waste that is held against a face or an edge to back its fibres."),
  N_ ("How far the bit is led on from one tooth to the next."),
  N_ ("The smooth round end by which the bit is gripped."),
  N_ ("Led so that the teeth would pull the bit along: each chip begins thick and ends thin."),
  N_ ("Led so that the teeth push back against the feed: each chip begins thin and ends thick."),
  N_ ("How far the bit goes below the far face, so that nothing is left standing."),
  N_ ("To go down into the wood on a slope."),
};

static bool
is_english (void)
{
  return g_getenv ("SPELCH_LOCALE_DIR") == NULL;
}

/* "feed per tooth at 60 kPa" -> "feed per tooth, kPa": by the words' names. */
static char *
names_in (const char *text)
{
  g_autoptr (GArray) words = spelch_trade_words_in (text);
  GString *names = g_string_new (NULL);
  for (guint i = 0; i < words->len; i++)
    {
      g_autofree char *name = spelch_trade_word_name (g_array_index (words, guint, i));
      g_string_append_printf (names, "%s%s", i == 0 ? "" : ", ", name);
    }
  return g_string_free (names, FALSE);
}

static void
test_found (void)
{
  static const struct
  {
    const char *text, *names;
  } CASES[] = {
    { "", "" },
    { "Vacuum of 60 kPa on 70 cm²", "vacuum, kPa" },
    { "The feed; FEED, then Feed.", "feed" },
    { "feed per tooth, and feed", "feed per tooth, feed" }, /* the longer one */
    { "spindle\u00a0speed", "spindle speed" },              /* a blank that doesn't break */
    { "The spindle’s speed", "spindle" },
    { "n, N; w, W: napkins", "N, W" }, /* units keep their case */
    { "feeder, unfed, stubfeed, tables, rampart", "" },
    { "Spoilboards, (tabs)—passes", "spoilboard, tab, pass" },
    { "Melamine-faced MDF, cut against the grain", "melamine, MDF, against the grain" },
    { "naïve über-tab", "tab" },
  };
  if (!is_english ())
    {
      g_test_skip ("in English only");
      return;
    }
  for (guint i = 0; i < G_N_ELEMENTS (CASES); i++)
    {
      g_autofree char *names = names_in (CASES[i].text);
      g_assert_cmpstr (names, ==, CASES[i].names);
    }
}

static void
test_places (void)
{
  const char *text = "“Über-feed” as a tab, TABS.";
  if (!is_english ())
    {
      g_test_skip ("in English only");
      return;
    }
  g_autoptr (GArray) mentions = spelch_trade_words_find (text);
  const char *parts[] = { "feed", "tab", "TABS" };
  g_assert_cmpuint (mentions->len, ==, G_N_ELEMENTS (parts));
  for (guint i = 0; i < mentions->len; i++)
    {
      SpelchTradeMention *mention = &g_array_index (mentions, SpelchTradeMention, i);
      g_autofree char *part = g_strndup (text + mention->from, mention->to - mention->from);
      g_assert_cmpstr (part, ==, parts[i]);
    }
}

static void
test_meanings (void)
{
  g_autoptr (GHashTable) names = g_hash_table_new_full (g_str_hash, g_str_equal, g_free, NULL);
  for (guint i = 0; i < spelch_trade_words_count (); i++)
    {
      char *name = spelch_trade_word_name (i);
      g_assert_cmpstr (name, !=, "");
      g_assert_true (g_str_has_suffix (spelch_trade_word_meaning (i), "."));
      g_assert_true (g_hash_table_add (names, name)); /* no two of one name */
    }
  g_assert_cmpstr (spelch_trade_word_meaning (spelch_trade_words_count ()), ==, "");
}

/* ---- What practice shows ---- */

static void
add (GString *text, const char *words)
{
  g_string_append_printf (text, "%s\n", words);
}

static void
add_own (GString *text, char *words)
{
  add (text, words);
  g_free (words);
}

static void
add_answered (GString *text, const SpelchPosed *posed)
{
  g_auto (GStrv) why = spelch_words_posed_why (posed, &MM);
  g_auto (GStrv) reckoning = spelch_words_posed_reckoning (posed, spelch_shop_constant_source, &MM);
  for (guint i = 0; i < posed->n_choices; i++)
    {
      SpelchGiven given = spelch_posed_grade (posed, posed->choices[i], SPELCH_UNIT_MM);
      add_own (text, spelch_words_posed_wrong (posed, &given, &MM));
    }
  for (guint i = 0; why[i] != NULL; i++)
    add (text, why[i]);
  for (guint i = 0; reckoning[i] != NULL; i++)
    add (text, reckoning[i]);
}

static void
add_posed (GString *text, const SpelchPosed *posed)
{
  const char *const *languages = g_get_language_names ();
  g_autoptr (GArray) facts = spelch_words_facts (posed, &MM);
  add_own (text, spelch_words_lead (posed, languages, &MM));
  add (text, spelch_by_language (&posed->exercise->hint, languages));
  add_own (text, spelch_words_question (posed, &MM));
  add_own (text, spelch_words_changed (posed, &MM));
  for (guint i = 0; i < facts->len; i++)
    add (text, g_array_index (facts, SpelchFact, i).value);
  for (guint i = 0; i < posed->n_choices; i++)
    {
      add_own (text, spelch_words_posed_choice (posed, i, &MM));
      add (text, spelch_words_posed_meaning (posed, i));
    }
  add_answered (text, posed);
}

static GString *
all_that_is_shown (void)
{
  GString *text = g_string_new (NULL);
  const GPtrArray *exercises = spelch_shop_exercises (), *lessons = spelch_shop_lessons ();
  for (guint i = 0; i < exercises->len; i++)
    for (int follow_up = 0; follow_up < 2; follow_up++)
      {
        SpelchPosed *posed
            = spelch_posed_new (spelch_shop_constants (), exercises->pdata[i], 1, follow_up != 0);
        add_posed (text, posed);
        spelch_posed_free (posed);
      }
  for (guint i = 0; i < lessons->len; i++)
    {
      const SpelchLesson *lesson = lessons->pdata[i];
      for (guint s = 0; s < lesson->n_steps; s++)
        add (text, spelch_by_language (&lesson->steps[s].telling, g_get_language_names ()));
      add (text, spelch_by_language (&lesson->closing, g_get_language_names ()));
    }
  return text;
}

static bool
is_rare (guint word)
{
  for (guint i = 0; i < G_N_ELEMENTS (RARE); i++)
    if (g_str_equal (spelch_trade_word_meaning (word), _ (RARE[i])))
      return true;
  return false;
}

/* A form that no text has, misspelt or of another word than the texts use, would explain nothing. */
static void
test_met (void)
{
  g_autoptr (GString) text = all_that_is_shown ();
  g_autoptr (GArray) words = spelch_trade_words_in (text->str);
  for (guint word = 0; word < spelch_trade_words_count (); word++)
    {
      bool met = false;
      for (guint i = 0; i < words->len; i++)
        met = met || g_array_index (words, guint, i) == word;
      if (!met && !is_rare (word))
        {
          g_autofree char *name = spelch_trade_word_name (word);
          g_test_message ("no exercise shows “%s”", name);
          g_test_fail ();
        }
    }
}

int
main (int argc, char **argv)
{
  take_language ();
  g_test_init (&argc, &argv, NULL);
  g_test_add_func ("/trade-words/found", test_found);
  g_test_add_func ("/trade-words/places", test_places);
  g_test_add_func ("/trade-words/meanings", test_meanings);
  g_test_add_func ("/trade-words/met", test_met);
  return g_test_run ();
}
