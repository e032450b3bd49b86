/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "bench/bit-ranking.h"
#include "plan/words-choose.h"

#include <glib/gi18n-lib.h>

#define AT_ONCE_MOST 200 /* bits; some tens of milliseconds */

/* All of it unchanging, or of its own, so that a thread may read it. */
typedef struct
{
  const SpelchConstants *constants;
  SpelchPart *part;
  SpelchCut cut;  /* of the part */
  SpelchCut made; /* as planned */
  SpelchBit *bits;
  guint n;
  SpelchNumbers numbers;
  SpelchBitRankingDone done;
  gpointer data;
} Asked;

static void
asked_free (gpointer data)
{
  Asked *asked = data;
  spelch_part_unref (asked->part);
  g_free (asked->bits);
  g_free (asked);
}

void
spelch_bit_ranking_free (SpelchBitRanking *ranking)
{
  for (guint i = 0; i < ranking->n; i++)
    g_free (ranking->reasons[i]);
  g_free (ranking->reasons);
  g_free (ranking->captions);
  g_free (ranking);
}

/* What speaks for and against a choice, a line each. */
static char *
reasons (const SpelchChoice *choice, const SpelchNumbers *numbers)
{
  GString *lines = g_string_new (NULL);
  for (guint i = 0; i < choice->n_reasons; i++)
    {
      const SpelchReason *reason = &choice->reasons[i];
      g_autofree char *words = spelch_words_reason (choice, reason, numbers);
      g_string_append_printf (lines, "%s%s %s", i == 0 ? "" : "\n",
                              spelch_reason_is_for (reason->kind) ? "+" : "−", words);
    }
  return g_string_free (lines, FALSE);
}

static SpelchBitRanking *
rank (const Asked *asked)
{
  g_autoptr (GPtrArray) choices
      = spelch_choose_rank (asked->constants, asked->part, &asked->cut, asked->bits, asked->n);
  const SpelchChoice *preferred = spelch_choose_best (choices);
  SpelchBitRanking *ranking = g_new0 (SpelchBitRanking, 1);
  ranking->n = asked->n;
  ranking->captions = g_new0 (const char *, asked->n);
  ranking->reasons = g_new0 (char *, asked->n);
  ranking->best = ranking->first = -1;
  ranking->served = preferred != NULL && preferred->meets;
  for (guint i = 0; i < choices->len; i++)
    {
      const SpelchChoice *choice = g_ptr_array_index (choices, i);
      if (choice->way_up != asked->cut.way_up || choice->pinned)
        continue;
      bool best = ranking->first < 0 && choice->plan.verdict != SPELCH_VERDICT_DO_NOT_CUT;
      ranking->best = best ? (int)choice->bit : ranking->best;
      ranking->first = ranking->first < 0 ? (int)choice->bit : ranking->first;
      ranking->captions[choice->bit]
          = best ? _ ("best")
                 : spelch_words_bit_caption (asked->part, &asked->made, &asked->bits[choice->bit],
                                             &choice->plan);
      ranking->reasons[choice->bit] = reasons (choice, &asked->numbers);
    }
  return ranking;
}

static void
rank_beside (GTask *task, gpointer source, gpointer data, GCancellable *cancellable)
{
  g_task_return_pointer (task, rank (data), (GDestroyNotify)spelch_bit_ranking_free);
}

static void
ranked (GObject *source, GAsyncResult *result, gpointer data)
{
  const Asked *asked = g_task_get_task_data (G_TASK (result));
  SpelchBitRanking *ranking = g_task_propagate_pointer (G_TASK (result), NULL);
  if (ranking != NULL) /* else it was cancelled */
    asked->done (ranking, asked->data);
}

static const SpelchCut *
cut_of (SpelchSession *session)
{
  const SpelchPart *part = spelch_session_get_part (session);
  guint index = spelch_session_get_cut_index (session);
  return part != NULL && index < part->n_cuts ? &part->cuts[index] : NULL;
}

void
spelch_bit_ranking_make (SpelchSession *session, GCancellable *cancellable, SpelchBitRankingDone done,
                         gpointer data)
{
  const SpelchCut *cut = cut_of (session), *made = spelch_session_get_cut (session);
  if (cut == NULL || made == NULL)
    {
      done (NULL, data);
      return;
    }
  Asked *asked = g_new (Asked, 1);
  *asked = (Asked){ .constants = spelch_session_get_constants (session),
                    .part = spelch_part_ref (spelch_session_get_part (session)),
                    .cut = *cut,
                    .made = *made,
                    .bits = spelch_session_copy_bits (session),
                    .n = spelch_session_count_bits (session),
                    .numbers = *spelch_session_get_numbers (session),
                    .done = done,
                    .data = data };
  if (asked->n <= AT_ONCE_MOST)
    {
      done (rank (asked), data);
      asked_free (asked);
      return;
    }
  g_autoptr (GTask) task = g_task_new (NULL, cancellable, ranked, NULL);
  g_task_set_task_data (task, asked, asked_free);
  g_task_run_in_thread (task, rank_beside);
}
