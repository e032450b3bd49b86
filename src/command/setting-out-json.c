/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "command/setting-out-json.h"

#include "plan/words.h"

#include <math.h>

static const SpelchNumbers PLAIN = { SPELCH_UNIT_MM, SPELCH_INCH_DECIMAL, '.' };

static double
tidy (double value)
{
  char digits[G_ASCII_DTOSTR_BUF_SIZE];
  return g_ascii_strtod (g_ascii_formatd (digits, sizeof digits, "%.9g", value), NULL);
}

static void
number_or_null (SpelchWriter *w, const char *member, double value, bool applies)
{
  if (applies)
    spelch_writer_number (w, member, tidy (value));
  else
    spelch_writer_null (w, member);
}

static void
fit (SpelchWriter *w, const SpelchCut *cut, const SpelchSettingOut *out)
{
  if (!out->fitted)
    {
      spelch_writer_null (w, "fit");
      return;
    }
  spelch_writer_open (w, "fit", NULL);
  spelch_writer_number (w, "thickness_mm", tidy (cut->mating.thickness.mm));
  spelch_writer_number (w, "clearance_mm", tidy (cut->mating.clearance.mm));
  spelch_writer_number (w, "left_by_one_track_mm", tidy (out->left_mm));
  spelch_writer_number (w, "play_of_one_track_mm", tidy (out->play_mm));
  spelch_writer_close (w);
}

static void
tabs (SpelchWriter *w, const SpelchSettingOut *out)
{
  guint n = spelch_setting_out_tabs (out);
  g_autofree double *places = g_new (double, n + 1);
  for (guint i = 0; i < n; i++)
    places[i] = tidy (spelch_setting_out_tab (out, i));
  if (n > 0)
    spelch_writer_numbers_told (w, "tabs_at_mm", places, n);
  else
    spelch_writer_null (w, "tabs_at_mm");
}

static void
bit_heights (SpelchWriter *w, const SpelchPlan *plan)
{
  double heights[SPELCH_MAX_PASSES];
  for (guint i = 0; i < plan->n_passes; i++)
    heights[i] = tidy (plan->passes[i].tip_mm);
  if (plan->machine == SPELCH_MACHINE_TABLE && plan->n_passes > 0)
    spelch_writer_numbers_told (w, "bit_heights_mm", heights, plan->n_passes);
  else
    spelch_writer_null (w, "bit_heights_mm");
}

void
spelch_setting_out_json (SpelchWriter *w, const SpelchPart *part, const SpelchPlanned *planned)
{
  const SpelchSettingOut *out = &planned->plan.setting_out;
  g_auto (GStrv) sentences = spelch_words_setting_out (&planned->plan, part, planned->cut, &PLAIN);
  bool by_hand = part->machine.kind == SPELCH_MACHINE_HAND;
  spelch_writer_open (w, "setting_out", NULL);
  spelch_writer_number (w, "width_mm", tidy (out->width_mm));
  spelch_writer_number (w, "tracks", out->tracks);
  number_or_null (w, "step_over_mm", out->step_over_mm, out->step_over_mm > 0);
  number_or_null (w, "overlap_mm", out->overlap_mm, out->step_over_mm > 0);
  spelch_writer_flag (w, "drops_out", out->drops_out);
  number_or_null (w, "corner_radius_mm", out->corner_mm, out->corner_mm > 0);
  fit (w, planned->cut, out);
  spelch_writer_code (w, "round", &SPELCH_ROUND_CODES, (int)out->round);
  spelch_writer_flag (w, "inside", out->inside);
  number_or_null (w, "fence_offset_mm", out->fence_offset_mm, out->fence_offset_mm > 0);
  number_or_null (w, "guide_bush_mm", out->bush_mm, by_hand && out->bush_mm > 0);
  number_or_null (w, "guide_bush_offset_mm", out->bush_offset_mm, by_hand && out->bush_mm > 0);
  number_or_null (w, "fence_to_bit_mm", out->guide_mm, out->guide_mm > 0);
  number_or_null (w, "bit_stands_out_mm", out->stands_out_mm, out->stands_out_mm > 0);
  bit_heights (w, &planned->plan);
  number_or_null (w, "pecks", out->pecks, out->pecks > 0);
  number_or_null (w, "peck_mm", out->peck_mm, out->pecks > 0);
  tabs (w, out);
  spelch_writer_texts (w, "sentences", (const char *const *)sentences);
  spelch_writer_close (w);
}
