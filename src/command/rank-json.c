/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "command/rank-json.h"

#include "command/figures.h"
#include "files/json-writer.h"
#include "plan/words-choose.h"

#include <math.h>

/* Enough decimals for any use; spares readers the noise of the last bits. */
static void
number (SpelchWriter *w, const char *member, double value)
{
  spelch_writer_number (w, member, round (value * 1e6) / 1e6);
}

static void
number_if (SpelchWriter *w, const char *member, bool told, double value)
{
  if (told)
    number (w, member, value);
  else
    spelch_writer_null (w, member);
}

static bool
is_of_face (SpelchReasonKind kind)
{
  return kind == SPELCH_REASON_PRESSES_IN || kind == SPELCH_REASON_BACKED || kind == SPELCH_REASON_TEARS;
}

static void
write_reason (SpelchWriter *w, const SpelchChoice *choice, const SpelchReason *reason)
{
  g_autofree char *sentence = spelch_words_reason (choice, reason, &SPELCH_FIGURE_NUMBERS);
  spelch_writer_open_item (w, NULL, false);
  spelch_writer_code (w, "reason", &SPELCH_REASON_CODES, (int)reason->kind);
  spelch_writer_flag (w, "for", spelch_reason_is_for (reason->kind));
  if (reason->kind == SPELCH_REASON_STOP)
    spelch_writer_code (w, "stop", &SPELCH_STOP_CODES, (int)reason->stop.kind);
  else
    spelch_writer_null (w, "stop");
  if (is_of_face (reason->kind))
    {
      spelch_writer_code (w, "face", &SPELCH_FACE_CODES, (int)reason->face);
      spelch_writer_code (w, "side", &SPELCH_SIDE_CODES, (int)reason->side);
    }
  else
    {
      spelch_writer_null (w, "face");
      spelch_writer_null (w, "side");
    }
  if (reason->kind == SPELCH_REASON_TEARS)
    spelch_writer_code (w, "term", &SPELCH_TERM_CODES, (int)reason->term);
  else
    spelch_writer_null (w, "term");
  number (w, "value", reason->value);
  number (w, "limit", reason->limit);
  spelch_writer_text (w, "sentence", sentence);
  spelch_writer_close (w);
}

static void
score_bit (SpelchWriter *w, const SpelchBit *bits, const SpelchChoice *choice)
{
  if (choice != NULL && choice->scorer >= 0)
    spelch_writer_text (w, "score_bit", bits[choice->scorer].id);
  else
    spelch_writer_null (w, "score_bit");
}

static void
write_choice (SpelchWriter *w, const SpelchBit *bits, const SpelchChoice *choice)
{
  const SpelchPlan *plan = &choice->plan;
  bool cuts = plan->n_passes > 0;
  spelch_writer_open_item (w, NULL, false);
  spelch_writer_text (w, "bit", bits[choice->bit].id);
  spelch_writer_code (w, "way_up", &SPELCH_FACE_CODES, (int)choice->way_up);
  spelch_writer_code (w, "pass_plan", &SPELCH_PASS_PLAN_CODES, (int)plan->pass_plan);
  score_bit (w, bits, choice);
  spelch_writer_code (w, "verdict", &SPELCH_VERDICT_CODES, (int)plan->verdict);
  spelch_writer_flag (w, "meets_accepted", cuts && choice->meets);
  number_if (w, "worst_seen_grade", choice->seen > 0, choice->seen);
  number_if (w, "worst_hidden_grade", choice->hidden > 0, choice->hidden);
  number_if (w, "passes", cuts, plan->n_passes);
  number_if (w, "speed_rpm", cuts, plan->speed_rpm);
  number_if (w, "feed_mm_min", cuts, plan->feed_mm_min);
  number_if (w, "time_s", cuts && plan->feed_mm_min > 0, plan->time_s);
  spelch_writer_open_list (w, "reasons");
  for (guint i = 0; i < choice->n_reasons; i++)
    write_reason (w, choice, &choice->reasons[i]);
  spelch_writer_close (w);
  spelch_writer_close (w);
}

static void
write_wanted (SpelchWriter *w, const SpelchRanked *one)
{
  spelch_writer_open_list (w, "look_for");
  for (int kind = 0; one->looks && kind < SPELCH_N_BIT_KINDS; kind++)
    {
      const SpelchWantedKind *wanted = &one->wanted.kinds[kind];
      bool compression = kind == SPELCH_BIT_COMPRESSION;
      if (!wanted->serves)
        continue;
      spelch_writer_open_item (w, NULL, false);
      spelch_writer_code (w, "kind", &SPELCH_BIT_KIND_CODES, kind);
      spelch_writer_code (w, "way_up", &SPELCH_FACE_CODES, (int)wanted->way_up);
      number (w, "diameter_at_least_mm", wanted->diameter_least);
      number (w, "diameter_at_most_mm", wanted->diameter_most);
      number (w, "cutting_length_at_least_mm", wanted->cutting_length_least);
      number_if (w, "up_shear_at_least_mm", compression, wanted->up_shear_least);
      number_if (w, "up_shear_at_most_mm", compression, wanted->up_shear_most);
      spelch_writer_close (w);
    }
  spelch_writer_close (w);
}

/* What to do to the cut before such a bit will do. */
static void
write_change (SpelchWriter *w, const SpelchRanked *one)
{
  SpelchWantedChange change = one->looks ? one->wanted.change : SPELCH_WANTED_AS_IT_IS;
  spelch_writer_code (w, "look_after_changing", &SPELCH_WANTED_CHANGE_CODES, (int)change);
  if (one->looks && one->wanted.at_hand[0] != '\0')
    spelch_writer_text (w, "look_at_hand", one->wanted.at_hand);
  else
    spelch_writer_null (w, "look_at_hand");
}

static void
write_knife (SpelchWriter *w, const SpelchKnife *knife)
{
  g_autofree char *sentence = spelch_words_knife (knife, &SPELCH_FIGURE_NUMBERS);
  if (!knife->helps)
    {
      spelch_writer_null (w, "knife");
      return;
    }
  spelch_writer_open (w, "knife", NULL);
  spelch_writer_code (w, "face", &SPELCH_FACE_CODES, (int)knife->face);
  spelch_writer_code (w, "side", &SPELCH_SIDE_CODES, (int)knife->side);
  number (w, "deep_mm", knife->deep_mm);
  spelch_writer_text (w, "sentence", sentence);
  spelch_writer_close (w);
}

static void
write_cut (SpelchWriter *w, const SpelchBit *bits, const SpelchRanked *one)
{
  const SpelchChoice *best = spelch_choose_best (one->ranking);
  spelch_writer_open_item (w, NULL, false);
  spelch_writer_text (w, "cut", one->cut->id);
  if (best != NULL)
    {
      spelch_writer_text (w, "best", bits[best->bit].id);
      spelch_writer_code (w, "best_way_up", &SPELCH_FACE_CODES, (int)best->way_up);
    }
  else
    {
      spelch_writer_null (w, "best");
      spelch_writer_null (w, "best_way_up");
    }
  spelch_writer_open_list (w, "choices");
  for (guint i = 0; i < one->ranking->len; i++)
    write_choice (w, bits, one->ranking->pdata[i]);
  spelch_writer_close (w);
  write_wanted (w, one);
  write_change (w, one);
  write_knife (w, &one->knife);
  spelch_writer_close (w);
}

static void
write_order (SpelchWriter *w, const SpelchPart *part, const SpelchBit *bits, const SpelchOrder *order)
{
  spelch_writer_open (w, "order", NULL);
  number (w, "bit_changes", order->changes);
  number (w, "turns", order->turns);
  number (w, "time_s", order->time_s);
  spelch_writer_open_list (w, "steps");
  for (guint i = 0; i < order->n; i++)
    {
      const SpelchStep *step = &order->steps[i];
      spelch_writer_open_item (w, NULL, false);
      spelch_writer_text (w, "cut", part->cuts[step->cut].id);
      if (step->choice != NULL)
        {
          spelch_writer_text (w, "bit", bits[step->choice->bit].id);
          spelch_writer_code (w, "way_up", &SPELCH_FACE_CODES, (int)step->choice->way_up);
        }
      else
        {
          spelch_writer_null (w, "bit");
          spelch_writer_null (w, "way_up");
        }
      score_bit (w, bits, step->choice);
      spelch_writer_close (w);
    }
  spelch_writer_close (w);
  spelch_writer_close (w);
}

char *
spelch_rank_json (const SpelchPart *part, const SpelchBit *bits, const SpelchRanked *ranked, guint n,
                  const SpelchOrder *order)
{
  SpelchWriter *w = spelch_figures_begin (part);
  spelch_figures_work (w, part);
  number (w, "accepted_seen", part->accepted_seen);
  number (w, "accepted_hidden", part->accepted_hidden);
  spelch_writer_open_list (w, "cuts");
  for (guint i = 0; i < n; i++)
    write_cut (w, bits, &ranked[i]);
  spelch_writer_close (w);
  if (order != NULL)
    write_order (w, part, bits, order);
  else
    spelch_writer_null (w, "order");
  return spelch_writer_end (w);
}
