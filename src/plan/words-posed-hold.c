/* SPDX-License-Identifier: GPL-3.0-or-later
 *
 * Why work that is asked about stays put, or gives as it does.
 */
#include "plan/words-plain.h"
#include "plan/words-posed-private.h"

#include <glib/gi18n-lib.h>
#include <math.h>
#include <string.h>

void
spelch_words_say (GPtrArray *list, char *sentence)
{
  if (sentence != NULL && *sentence != '\0')
    g_ptr_array_add (list, sentence);
  else
    g_free (sentence);
}

void
spelch_words_say_on (GPtrArray *list, char *sentence)
{
  if (list->len == 0 || sentence == NULL || *sentence == '\0')
    {
      spelch_words_say (list, sentence);
      return;
    }
  char *last = list->pdata[list->len - 1];
  list->pdata[list->len - 1] = g_strdup_printf ("%s %s", last, sentence);
  g_free (last);
  g_free (sentence);
}

char *
spelch_words_joined (GPtrArray *list)
{
  g_ptr_array_add (list, NULL);
  g_auto (GStrv) sentences = (char **)g_ptr_array_free (list, FALSE);
  return g_strjoinv (" ", sentences);
}

char *
spelch_words_posed_press (double newtons, const SpelchNumbers *numbers)
{
  double step = newtons >= 100 ? 10 : 1;
  g_autofree char *force = spelch_words_count (round (newtons / step) * step);
  g_autofree char *weight = spelch_words_plain_weight (newtons, numbers);
  /* TRANSLATORS: a force and a weight: "570 N", "58 kg" */
  return g_strdup_printf (_ ("%s N press as much as a weight of about %s."), force, weight);
}

void
spelch_words_why_seat (const SpelchPlan *plan, const SpelchNumbers *numbers, GPtrArray *list)
{
  const SpelchSeat *seat = plan->n_seats > 0 ? &plan->seats[0] : NULL;
  bool table = plan->machine == SPELCH_MACHINE_TABLE;
  if (seat == NULL)
    return;
  if (table)
    spelch_words_say (
        list, g_strdup (seat->apart
                            ? _ ("The bit pushes away from the motor, and the motor is below: it pushes the "
                                 "board up off the table, where only hands hold it down.")
                            : _ ("The bit pulls toward the motor, and the motor is below: it draws the board "
                                 "down to the table.")));
  if (!seat->apart)
    return;
  double most = fmax (fmax (seat->high_n, seat->bound_n), 1);
  g_autofree char *force = spelch_words_count (round (most));
  g_autofree char *weight = spelch_words_plain_weight (most, numbers);
  spelch_words_say (
      list, g_strdup_printf (_ ("That is up to %s N, as much as a weight of %s would pull the other way."),
                             force, weight));
}

/* A way that isn't the one in which it gives. */
static char *
not_so_words (const char *code)
{
  int way = SPELCH_GIVES_SLIDING;
  spelch_code_read (&SPELCH_GIVES_CODES, code, &way);
  return g_strdup (way == SPELCH_GIVES_LIFTING   ? _ ("Lifting isn't what gives first.")
                   : way == SPELCH_GIVES_TILTING ? _ ("Tilting isn't what gives first.")
                                                 : _ ("Sliding isn't what gives first."));
}

static bool
hangs_on_tabs (const SpelchPlan *plan)
{
  return plan->tabs.count > 0 && plan->tabs.alone;
}

static char *
why_held (const SpelchPlan *plan, const SpelchNumbers *numbers)
{
  g_autofree char *factor
      = spelch_words_times (numbers, hangs_on_tabs (plan) ? plan->tabs.factor : plan->hold_factor);
  return g_strdup_printf (
      hangs_on_tabs (plan)
          ? _ ("The piece hangs on its tabs, and they bear %s times the force that the bit brings against "
               "them; "
               "twice is asked.")
          : _ ("What holds it bears %s times the force that the bit brings against it; twice is asked."),
      factor);
}

static void
why_gives (const SpelchPlan *plan, const SpelchNumbers *numbers, GPtrArray *list)
{
  g_autofree char *factor = spelch_words_times (numbers, plan->hold_factor);
  g_autofree char *needed = spelch_words_count (round (plan->hold_needed_n / 10) * 10);
  g_autofree char *weight = spelch_words_plain_weight (plan->hold_needed_n, numbers);
  spelch_words_say (
      list,
      g_strdup_printf (
          plan->hold_way == SPELCH_GIVES_TILTING ? _ (
              "The bit pushes sideways at the top of a piece that is narrow for its height: it tips over "
              "before it slides. What holds it bears %s times that push; twice is asked.")
          : plan->hold_way == SPELCH_GIVES_LIFTING
              ? _ ("The bit pulls the piece up before it pushes it aside. What holds it bears %s times that "
                   "pull; twice is asked.")
              : _ ("The bit pushes sideways, and the piece slides before it lifts or tips. What holds it "
                   "bears "
                   "%s times that push; twice is asked."),
          factor));
  if (plan->hold_needed_n > 0)
    spelch_words_say (
        list,
        g_strdup_printf (_ ("It would take a press of %s N on the piece, as much as a weight of about %s."),
                         needed, weight));
}

static char *
per_cent (double share, const SpelchNumbers *numbers)
{
  return spelch_words_decimal (numbers, share * 100, 0);
}

/* What comes of the pressure times the area; "" where no vacuum holds it. */
static char *
why_vacuum (const SpelchPosed *posed, const SpelchNumbers *numbers)
{
  const SpelchPlan *plan = &posed->plan;
  if (plan->hold_vacuum_n <= 0 || plan->hold_available_n <= 0)
    return g_strdup ("");
  g_autofree char *whole = spelch_words_count (round (plan->hold_vacuum_n));
  g_autofree char *leak = per_cent (posed->constants->vacuum_leak, numbers);
  g_autofree char *grip = per_cent (plan->hold_friction, numbers);
  return g_strdup_printf (
      _ ("The vacuum's pressure times its area would be %s N, but only %s %% of it gets through the "
         "spoilboard, and of what presses, friction holds only %s %% against a push sideways."),
      whole, leak, grip);
}

void
spelch_words_why_hold (const SpelchPosed *posed, const SpelchNumbers *numbers, GPtrArray *list)
{
  const SpelchPlan *plan = &posed->plan;
  g_autofree char *tabs = spelch_words_times (numbers, plan->tabs.factor);
  if (plan->machine != SPELCH_MACHINE_GANTRY)
    spelch_words_why_seat (plan, numbers, list);
  else if (g_str_equal (posed->choices[posed->right], SPELCH_ANSWER_STAYS))
    spelch_words_say (list, why_held (plan, numbers));
  else if (g_str_equal (posed->choices[posed->right], SPELCH_ANSWER_TABS))
    spelch_words_say (
        list, g_strdup_printf (
                  _ ("The sheet is held, but the piece cut out of it hangs on its tabs alone, and they bear "
                     "%s times the force that the bit brings against them; twice is asked."),
                  tabs));
  else
    why_gives (plan, numbers, list);
  if (plan->machine == SPELCH_MACHINE_GANTRY && !hangs_on_tabs (plan))
    spelch_words_say_on (list, why_vacuum (posed, numbers));
}

char *
spelch_words_wrong_hold (const SpelchPosed *posed, const char *code)
{
  const SpelchPlan *plan = &posed->plan;
  bool stays = posed->right == 0, tabs = g_str_equal (code, SPELCH_ANSWER_TABS);
  bool first = plan->hold_factor > 0
               && g_str_equal (code, spelch_code_of (&SPELCH_GIVES_CODES, (int)plan->hold_way));
  if (g_str_equal (code, SPELCH_ANSWER_STAYS))
    return g_strdup (_ ("It doesn't: something gives before twice the force of the bit is reached."));
  if (tabs)
    return g_strdup (stays ? _ ("The tabs are strong enough.") : _ ("The tabs aren't what gives first."));
  if (!stays)
    return not_so_words (code);
  if (first)
    return g_strdup (_ ("That would give first, but only at far more than the force of the bit."));
  GPtrArray *list = g_ptr_array_new ();
  spelch_words_say (list, not_so_words (code));
  spelch_words_say (list, g_strdup (_ ("It stays put.")));
  return spelch_words_joined (list);
}
