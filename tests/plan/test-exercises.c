/* SPDX-License-Identifier: GPL-3.0-or-later
 *
 * The exercises that come with the program, over 1 000 seeds: each has one right answer that is clear of
 * every other, every wrong one has its reason, a different thing decides in each, and none can be guessed by
 * where its answer stands. Depths that are called right or wrong are planned, which goes another way than the
 * window they are read from.
 */
#include "files/practice-data.h"
#include "files/shop-data.h"
#include "plan/posed-sound.h"
#include "plan/words-posed.h"

#include <string.h>

#define SEEDS 1000

/* What isn't said to learners but in the reckoning: points, grades by number, evidence, works cited. */
static const char *const LEARNED[]
    = { "point", "grade 1", "grade 3", "geometry", "analogy", "shop practice", "doi" };

static const SpelchNumbers MM = { SPELCH_UNIT_MM, SPELCH_INCH_FRACTION, '.' };

static SpelchExercise *
nth (guint i)
{
  return spelch_shop_exercises ()->pdata[i];
}

static SpelchPosed *
pose (SpelchExercise *exercise, guint32 seed, bool follow_up)
{
  return spelch_posed_new (spelch_shop_constants (), exercise, seed, follow_up);
}

/* Seeds that draw something nothing was drawn like before; what is drawn alike is asked alike. */
static bool
is_new (GHashTable *drawn, SpelchExercise *exercise, guint32 seed)
{
  return g_hash_table_add (drawn, spelch_posed_drawn (exercise, seed));
}

static GHashTable *
nothing_drawn (void)
{
  return g_hash_table_new_full (g_str_hash, g_str_equal, g_free, NULL);
}

/* ---- Each ---- */

static void
test_sound (gconstpointer data)
{
  SpelchExercise *exercise = (SpelchExercise *)data;
  SpelchSound sound = spelch_posed_sound (spelch_shop_constants (), exercise, SEEDS);
  g_test_message ("%u draws", sound.draws);
  if (sound.n_doubts > 0)
    g_error ("%s, seed %u%s: %s; spelch check says more", exercise->id, sound.seed,
             sound.in_follow_up ? ", follow-up" : "", sound.meant ? "same or not" : sound.doubt);
  g_assert_cmpuint (sound.draws, >, 1);
  g_assert_true (exercise->follow_up.told);
}

static bool
is_sentence (const char *words)
{
  gsize n = strlen (words);
  return n > 10 && words[n - 1] == '.' && strstr (words, "nan") == NULL && strstr (words, "inf ") == NULL;
}

/* The right answer is graded right and nothing else is; each wrong one has a reason of its own. */
static void
try_choices (const SpelchPosed *posed)
{
  g_autofree char *right = spelch_posed_right_answer (posed);
  SpelchGiven best = spelch_posed_grade (posed, right, SPELCH_UNIT_MM);
  g_assert_true (best.understood && best.right);
  g_autofree char *nothing = spelch_words_posed_wrong (posed, &best, &MM);
  g_assert_cmpstr (nothing, ==, "");
  g_autoptr (GHashTable) said = nothing_drawn ();
  guint n_right = posed->by_depth && posed->right < 0 ? 1 : 0;
  for (guint i = 0; i < posed->n_choices; i++)
    {
      SpelchGiven given = spelch_posed_grade (posed, posed->choices[i], SPELCH_UNIT_MM);
      g_autofree char *wrong = spelch_words_posed_wrong (posed, &given, &MM);
      n_right += given.right ? 1 : 0;
      if (!given.right && !is_sentence (wrong))
        g_error ("%s, %s: \"%s\"", posed->exercise->id, posed->choices[i], wrong);
      if (!given.right && !g_hash_table_add (said, g_strdup (wrong)))
        g_error ("%s, %s: another answer has the same reason, \"%s\"", posed->exercise->id, posed->choices[i],
                 wrong);
    }
  g_assert_cmpuint (n_right, ==, 1);
}

/* Plans the cut with the first pass at a depth and says whether the face toward the motor is pulled out. */
static bool
pulled_out_at (const SpelchPosed *posed, double depth)
{
  g_autoptr (SpelchPart) part = spelch_part_copy (posed->part);
  SpelchChange first = { .what = SPELCH_CHANGE_FIRST_PASS, .number = depth };
  SpelchPlan plan;
  spelch_change_apply (&first, part);
  spelch_plan_make (posed->constants, part, &part->cuts[0],
                    &part->bits[spelch_part_find_bit (part, part->cuts[0].bit)], &plan);
  return spelch_plan_worst (&plan, SPELCH_SIDE_MOTOR)->load == SPELCH_LOAD_PULL_OUT;
}

static void
try_depths (const SpelchPosed *posed)
{
  for (double depth = 0.5; posed->by_depth && depth < posed->depth_most; depth += 0.5)
    {
      g_autofree char *typed = g_strdup_printf ("%.1f mm", depth);
      SpelchGiven given = spelch_posed_grade (posed, typed, SPELCH_UNIT_MM);
      g_autofree char *wrong = spelch_words_posed_wrong (posed, &given, &MM);
      g_assert_true (given.understood);
      g_assert_true (given.right == (*wrong == '\0'));
      g_assert_true (given.right || is_sentence (wrong));
      /* Right depths never pull it out; what is too shallow even with everything exact always does. */
      bool pulled = pulled_out_at (posed, depth);
      g_assert_false (given.right && pulled);
      if (posed->just.empty || depth < posed->just.from - 1e-6)
        g_assert_true (pulled);
    }
}

static void
try_words (const SpelchPosed *posed)
{
  g_autoptr (GArray) facts = spelch_words_facts (posed, &MM);
  g_autofree char *question = spelch_words_question (posed, &MM),
                  *changed = spelch_words_changed (posed, &MM);
  g_autofree char *lead = spelch_words_lead (posed, g_get_language_names (), &MM);
  g_auto (GStrv) why = spelch_words_posed_why (posed, &MM);
  g_auto (GStrv) reckoning = spelch_words_posed_reckoning (posed, spelch_shop_constant_source, &MM);
  g_assert_cmpuint (facts->len, >=, 3);
  g_assert_true (strchr (question, '?') != NULL);
  g_assert_true (posed->follow_up == (*changed != '\0'));
  g_assert_true (lead[0] != '\0' && strpbrk (lead, "{}") == NULL);
  g_assert_nonnull (why[0]);
  g_assert_nonnull (reckoning[0]);
  g_assert_cmpuint (g_strv_length (why), <=, 2);
  for (guint i = 0; why[i] != NULL; i++)
    if (!is_sentence (why[i]))
      g_error ("%s: \"%s\"", posed->exercise->id, why[i]);
}

/* ---- What a result may say ---- */

static bool
says (const char *text, const char *words)
{
  g_autofree char *all = g_utf8_casefold (text, -1), *part = g_utf8_casefold (words, -1);
  return *words != '\0' && strstr (all, part) != NULL;
}

/* What comes of an answer, and why another is right, never say the same thing; nor points or works cited. */
static void
try_parts (const SpelchPosed *posed)
{
  g_auto (GStrv) why = spelch_words_posed_why (posed, &MM);
  g_autofree char *whole = g_strjoinv (" ", why);
  for (guint i = 0; i < posed->n_choices; i++)
    {
      SpelchGiven given = spelch_posed_grade (posed, posed->choices[i], SPELCH_UNIT_MM);
      g_autofree char *wrong = spelch_words_posed_wrong (posed, &given, &MM);
      g_autofree char *both = g_strdup_printf ("%s %s", wrong, whole);
      g_auto (GStrv) sentences = g_strsplit (wrong, ". ", -1);
      for (guint s = 0; sentences[s] != NULL; s++)
        if (says (whole, sentences[s]))
          g_error ("%s, %s: \"%s\" is said twice", posed->exercise->id, posed->choices[i], sentences[s]);
      for (guint w = 0; why[w] != NULL; w++)
        g_assert_false (says (wrong, why[w]));
      for (guint word = 0; word < G_N_ELEMENTS (LEARNED); word++)
        if (says (both, LEARNED[word]))
          g_error ("%s, %s: \"%s\"", posed->exercise->id, posed->choices[i], both);
    }
}

/* All that is said of an answer to a question. */
static char *
result_of (const SpelchPosed *posed, const char *answer)
{
  SpelchGiven given = spelch_posed_grade (posed, answer, SPELCH_UNIT_MM);
  g_autofree char *wrong = spelch_words_posed_wrong (posed, &given, &MM);
  g_auto (GStrv) why = spelch_words_posed_why (posed, &MM);
  g_auto (GStrv) reckoning = spelch_words_posed_reckoning (posed, spelch_shop_constant_source, &MM);
  g_autofree char *first = g_strjoinv (" ", why), *rest = g_strjoinv (" ", reckoning);
  return g_strjoin (" ", wrong, first, rest, NULL);
}

/* "down-cut" of "down-cut bit, 6.35 mm across, cuts 25.0 mm deep". */
static char *
kind_of_bit (const SpelchPosed *posed)
{
  int i = spelch_part_find_bit (posed->part, posed->part->cuts[0].bit);
  g_autofree char *words = spelch_words_bit (&posed->part->bits[MAX (i, 0)], &MM);
  return g_strndup (words, strcspn (words, " "));
}

/* What would give the answer to the follow-up away: why it is right, what is right, and the bit that comes
 * in. What is the same in both questions can't. */
static GPtrArray *
telltales (const SpelchPosed *first, const SpelchPosed *next)
{
  GPtrArray *told = g_ptr_array_new_with_free_func (g_free);
  g_auto (GStrv) now = spelch_words_posed_why (first, &MM), then = spelch_words_posed_why (next, &MM);
  g_autofree char *of_first = kind_of_bit (first), *of_next = kind_of_bit (next);
  for (guint i = 0; then[i] != NULL; i++)
    if (!g_strv_contains ((const char *const *)now, then[i]))
      g_ptr_array_add (told, g_strdup (then[i]));
  if (first->by_depth && !next->depths.empty && !spelch_posed_agree (first, next))
    g_ptr_array_add (told, spelch_words_at_least (&MM, next->depths.from));
  if ((first->exercise->asks == SPELCH_ASKS_LIMIT || first->exercise->asks == SPELCH_ASKS_BIT)
      && !spelch_posed_agree (first, next))
    g_ptr_array_add (told, spelch_words_posed_right (next, &MM));
  if (first->exercise->follow_up.change.what == SPELCH_CHANGE_BIT && !g_str_equal (of_first, of_next))
    g_ptr_array_add (told, g_strdup (of_next));
  return told;
}

/* What would be advised: the follow-up may be just that. */
static void
add_advice (const SpelchPosed *posed, GPtrArray *told)
{
  for (int side = SPELCH_SIDE_MOTOR; side <= SPELCH_SIDE_FAR; side++)
    if (spelch_plan_worst (&posed->plan, (SpelchSide)side) != NULL)
      g_ptr_array_add (told, spelch_words_opener (&posed->plan, (SpelchSide)side, &MM));
  for (guint i = 0; i < posed->plan.n_stops; i++)
    if (posed->exercise->asks == SPELCH_ASKS_HOLD)
      g_ptr_array_add (told, spelch_words_stop (&posed->plan.stops[i], &MM));
}

/* Whatever was answered to a question, nothing that is said of it answers its follow-up; of one that was
 * answered for it, its own words are said. */
static void
try_untold_of (const SpelchPosed *first, const char *answer, const GPtrArray *told)
{
  g_autofree char *text = result_of (first, answer);
  for (guint t = 0; t < told->len; t++)
    if (says (text, told->pdata[t]))
      g_error ("%s, seed %u, %s: \"%s\" gives the follow-up away", first->exercise->id, first->seed, answer,
               (const char *)told->pdata[t]);
}

static void
try_untold (const SpelchPosed *first, const SpelchPosed *next)
{
  g_autoptr (GPtrArray) told = telltales (first, next);
  g_autofree char *right = spelch_posed_right_answer (next);
  add_advice (first, told);
  for (guint i = 0; i < first->n_choices; i++)
    if (!g_str_equal (first->choices[i], right))
      try_untold_of (first, first->choices[i], told);
  if (first->by_depth)
    try_untold_of (first, "3.3 mm", told);
}

static void
try_question (SpelchExercise *exercise, guint32 seed, bool follow_up)
{
  g_autoptr (SpelchPosed) posed = pose (exercise, seed, follow_up);
  try_parts (posed);
  if (!follow_up)
    {
      g_autoptr (SpelchPosed) next = pose (exercise, seed, true);
      try_untold (posed, next);
    }
  try_choices (posed);
  try_depths (posed);
  try_words (posed);
}

static void
test_answers (gconstpointer data)
{
  SpelchExercise *exercise = (SpelchExercise *)data;
  g_autoptr (GHashTable) drawn = nothing_drawn ();
  for (guint32 seed = 1; seed <= SEEDS; seed++)
    if (is_new (drawn, exercise, seed))
      {
        try_question (exercise, seed, false);
        try_question (exercise, seed, true);
      }
}

/* ---- All together ---- */

/* Common practice, no source: hands that guide a router can't hold the work too. At a router table they do.
 */
static void
test_work_is_held (void)
{
  for (guint i = 0; i < spelch_shop_exercises ()->len; i++)
    if (nth (i)->part->machine.kind == SPELCH_MACHINE_HAND)
      g_assert_cmpint (nth (i)->part->holding.method, !=, SPELCH_HOLD_HANDS);
}

static void
test_enough (void)
{
  const GPtrArray *exercises = spelch_shop_exercises ();
  guint of_kind[SPELCH_N_ASKS] = { 0 }, of_level[SPELCH_LEVELS + 1] = { 0 }, of_machine[3] = { 0 };
  g_assert_cmpuint (exercises->len, >=, 24);
  for (guint i = 0; i < exercises->len; i++)
    {
      of_kind[nth (i)->asks]++;
      of_level[nth (i)->level]++;
      of_machine[nth (i)->part->machine.kind]++;
      g_assert_true (i == 0 || nth (i - 1)->level <= nth (i)->level);
    }
  for (int kind = 0; kind < SPELCH_N_ASKS; kind++)
    g_assert_cmpuint (of_kind[kind], >=, 4);
  for (int level = 1; level <= SPELCH_LEVELS; level++)
    g_assert_cmpuint (of_level[level], >=, 4);
  for (guint machine = 0; machine < G_N_ELEMENTS (of_machine); machine++)
    g_assert_cmpuint (of_machine[machine], >=, 1);
}

static bool
cuts_along (const SpelchExercise *exercise, bool along)
{
  const SpelchPart *part = exercise->part;
  const SpelchLayer *layer = &part->board.layers[0];
  bool solid = !layer->veneer && layer->grain == SPELCH_GRAIN_STRAIGHT
               && layer->material == SPELCH_MATERIAL_HARDWOOD;
  return solid && part->cuts[0].path_deg == (along ? 0 : 90);
}

/* Every sort of board and bit that a workshop has comes up. */
static void
test_all_sorts (void)
{
  guint material[SPELCH_MATERIAL_LAMINATE + 1] = { 0 }, kind[SPELCH_N_BIT_KINDS] = { 0 };
  guint along = 0, across = 0, end_grain = 0, veneered = 0;
  for (guint i = 0; i < spelch_shop_exercises ()->len; i++)
    {
      const SpelchPart *part = nth (i)->part;
      const SpelchLayer *face = &part->board.layers[0];
      material[face->material]++;
      end_grain += face->grain == SPELCH_GRAIN_END;
      veneered += face->veneer && face->material == SPELCH_MATERIAL_HARDWOOD;
      along += cuts_along (nth (i), true);
      across += cuts_along (nth (i), false);
      for (guint b = 0; b < part->n_bits; b++)
        kind[part->bits[b].kind]++;
    }
  g_assert_true (material[SPELCH_MATERIAL_BIRCH_PLY] > 0 && material[SPELCH_MATERIAL_LAMINATE] > 0
                 && material[SPELCH_MATERIAL_MDF] > 0);
  g_assert_true (along > 0 && across > 0 && end_grain > 0 && veneered > 0);
  for (guint k = 0; k < G_N_ELEMENTS (kind); k++)
    if (kind[k] == 0)
      g_error ("no exercise has a bit of the kind %s", spelch_code_of (&SPELCH_BIT_KIND_CODES, (int)k));
}

/* Within a kind of question no two are decided by the same thing, whatever is drawn. */
static void
test_each_its_own (void)
{
  g_autoptr (GHashTable) owner = g_hash_table_new_full (g_str_hash, g_str_equal, g_free, NULL);
  for (guint i = 0; i < spelch_shop_exercises ()->len; i++)
    for (guint32 seed = 1; seed <= 50; seed++)
      {
        g_autoptr (SpelchPosed) posed = pose (nth (i), seed, false);
        g_autofree char *key = g_strdup_printf ("%d %s", (int)nth (i)->asks, posed->decides);
        const char *other = g_hash_table_lookup (owner, key);
        if (other != NULL && !g_str_equal (other, nth (i)->id))
          g_error (
              "%s and %s, with seed %u, are both decided by %s: change what is drawn until something else "
              "decides",
              other, nth (i)->id, seed, posed->decides);
        g_hash_table_insert (owner, g_steal_pointer (&key), nth (i)->id);
      }
}

/* Guessing one place, or one answer, never gets more than half. */
static void
test_not_guessed (void)
{
  for (int kind = 0; kind < SPELCH_N_ASKS; kind++)
    {
      guint at[SPELCH_CHOICES_MOST] = { 0 }, all = 0;
      for (guint i = 0; i < spelch_shop_exercises ()->len; i++)
        for (guint32 seed = 1; (int)nth (i)->asks == kind && kind != SPELCH_ASKS_FIRST_PASS && seed <= 60;
             seed++)
          {
            g_autoptr (SpelchPosed) posed = pose (nth (i), seed, false);
            at[posed->right]++;
            all++;
          }
      for (guint place = 0; place < SPELCH_CHOICES_MOST; place++)
        if (at[place] * 2 > all)
          g_error (
              "%s: choice %u is right %u times of %u, so it can be guessed: let another be right in one more",
              spelch_code_of (&SPELCH_ASKS_CODES, kind), place + 1, at[place], all);
    }
}

/* Depths follow what is drawn: where the bit's up-shear is, no two of them have the same answer. */
static void
test_depths_vary (void)
{
  SpelchExercise *exercise = spelch_exercises_find (spelch_shop_exercises (), "first-pass-plywood");
  for (guint32 seed = 1; seed <= 100; seed++)
    {
      g_autoptr (SpelchPosed) posed = pose (exercise, seed, false);
      double up_shear = posed->part->bits[0].up_shear.mm;
      /* By hand: the up-shear, the ply of 1.3 mm, and to be sure 0.4 mm of up-shear and what the depth may be
       * off; the board is measured, zero is on the bed. */
      double sure = posed->plan.windows.depth_uncertain_mm;
      g_assert_cmpfloat_with_epsilon (posed->just.from, up_shear + 1.3, 1e-9);
      g_assert_cmpfloat_with_epsilon (posed->depths.from, up_shear + 1.3 + 0.4 + sure, 1e-9);
    }
}

/* ---- Words of the files ---- */

/* The names in braces of a text, in order. */
static char *
names_in (const char *words)
{
  GString *names = g_string_new (NULL);
  for (const char *open = strchr (words, '{'); open != NULL; open = strchr (open + 1, '{'))
    g_string_append_len (names, open, strchr (open, '}') - open + 1);
  return g_string_free (names, FALSE);
}

/* English first, then those of the catalogues. Free with g_strfreev(). */
static char **
spoken (void)
{
  g_autofree char *path = g_test_build_filename (G_TEST_DIST, "..", "po", "LINGUAS", NULL), *text = NULL;
  g_assert_true (g_file_get_contents (path, &text, NULL, NULL));
  g_autofree char *all = g_strdup_printf ("en %s", g_strstrip (g_strdelimit (text, "\n", ' ')));
  return g_strsplit (all, " ", -1);
}

static bool
is_said_in (const SpelchByLanguage *words, const char *language)
{
  for (guint i = 0; i < words->n; i++)
    if (g_str_equal (words->said[i].language, language))
      return true;
  return false;
}

/* In every language that the program speaks, each in words of its own, with the same numbers in them. */
static void
check_said (const char *id, const SpelchByLanguage *words, bool needed)
{
  g_auto (GStrv) languages = spoken ();
  g_test_message ("%s", id);
  g_assert_true (!needed || words->n > 0);
  if (words->n == 0)
    return;
  for (guint i = 0; i < g_strv_length (languages); i++)
    if (!is_said_in (words, languages[i]))
      g_error ("%s: \"%s\" isn't said in \"%s\"; the languages are English and those of po/LINGUAS", id,
               words->said[0].words, languages[i]);
  g_assert_cmpuint (words->n, ==, g_strv_length (languages));
  for (guint i = 0; i < g_strv_length (languages); i++)
    {
      const char *const language[] = { languages[i], NULL }, *const english[] = { "en", NULL };
      const char *said = spelch_by_language (words, language), *first = spelch_by_language (words, english);
      g_autofree char *named = names_in (said), *named_first = names_in (first);
      g_assert_true ((i == 0) == g_str_equal (said, first));
      g_assert_cmpstr (named, ==, named_first);
    }
}

/* Whether an answer changes is for the learner to find, so it isn't asked only where it doesn't. */
static void
check_asks_nothing (const SpelchByLanguage *words)
{
  for (guint i = 0; i < words->n; i++)
    if (strchr (words->said[i].words, '?') != NULL)
      g_error ("\"%s\" asks; a follow-up's lead only tells what is changed", words->said[i].words);
}

static void
test_languages (void)
{
  for (guint i = 0; i < spelch_shop_exercises ()->len; i++)
    {
      const SpelchExercise *exercise = nth (i);
      check_said (exercise->id, &exercise->title, true);
      check_said (exercise->id, &exercise->lead, true);
      check_said (exercise->id, &exercise->hint, false);
      check_said (exercise->id, &exercise->follow_up.lead, true);
      check_asks_nothing (&exercise->follow_up.lead);
    }
}

/* A lesson asks with one bit after the other; a follow-up of its doesn't bring in one that was not told of,
 * and none asks the same as another. */
static void
check_follow_ups (const SpelchLesson *lesson)
{
  for (guint s = 0; s < lesson->n_steps; s++)
    {
      const SpelchExercise *exercise
          = spelch_exercises_find (spelch_shop_exercises (), lesson->steps[s].exercise);
      const SpelchChange *change = &exercise->follow_up.change;
      g_assert_true (!lesson->steps[s].follow_up || change->what != SPELCH_CHANGE_BIT);
      for (guint before = 0; before < s; before++)
        g_assert_cmpstr (lesson->steps[before].exercise, !=, lesson->steps[s].exercise);
    }
}

static void
test_lesson (void)
{
  const GPtrArray *lessons = spelch_shop_lessons ();
  g_assert_cmpuint (lessons->len, >=, 1);
  for (guint i = 0; i < lessons->len; i++)
    {
      const SpelchLesson *lesson = lessons->pdata[i];
      check_said (lesson->id, &lesson->title, true);
      check_said (lesson->id, &lesson->closing, true);
      check_follow_ups (lesson);
      for (guint s = 0; s < lesson->n_steps; s++)
        {
          const SpelchExercise *exercise
              = spelch_exercises_find (spelch_shop_exercises (), lesson->steps[s].exercise);
          g_assert_nonnull (exercise);
          g_assert_true (exercise->follow_up.told || !lesson->steps[s].follow_up);
          check_said (lesson->id, &lesson->steps[s].telling, true);
        }
    }
}

int
main (int argc, char **argv)
{
  g_test_init (&argc, &argv, NULL);
  for (guint i = 0; i < spelch_shop_exercises ()->len; i++)
    {
      g_autofree char *sound = g_strdup_printf ("/exercises/sound/%s", nth (i)->id);
      g_autofree char *answers = g_strdup_printf ("/exercises/answers/%s", nth (i)->id);
      g_test_add_data_func (sound, nth (i), test_sound);
      g_test_add_data_func (answers, nth (i), test_answers);
    }
  g_test_add_func ("/exercises/enough", test_enough);
  g_test_add_func ("/exercises/all-sorts", test_all_sorts);
  g_test_add_func ("/exercises/each-its-own", test_each_its_own);
  g_test_add_func ("/exercises/not-guessed", test_not_guessed);
  g_test_add_func ("/exercises/work-is-held", test_work_is_held);
  g_test_add_func ("/exercises/depths-vary", test_depths_vary);
  g_test_add_func ("/exercises/languages", test_languages);
  g_test_add_func ("/exercises/lesson", test_lesson);
  return g_test_run ();
}
