/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "command/setting-out-json.h"

#include "command/figures.h"

static void
fit (SpelchWriter *w, const SpelchCut *cut, const SpelchSettingOut *out)
{
  if (!out->fitted)
    {
      spelch_writer_null (w, "fit");
      return;
    }
  spelch_writer_open (w, "fit", NULL);
  spelch_figure_write (w, "thickness_mm", cut->mating.thickness.mm);
  spelch_figure_write (w, "clearance_mm", cut->mating.clearance.mm);
  spelch_figure_write (w, "left_by_one_track_mm", out->left_mm);
  spelch_figure_write (w, "play_of_one_track_mm", out->play_mm);
  spelch_writer_close (w);
}

static void
tabs (SpelchWriter *w, const SpelchSettingOut *out)
{
  guint n = spelch_setting_out_tabs (out);
  g_autofree double *places = g_new (double, n + 1);
  for (guint i = 0; i < n; i++)
    places[i] = spelch_figure_tidy (spelch_setting_out_tab (out, i));
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
    heights[i] = spelch_figure_tidy (plan->passes[i].tip_mm);
  if (plan->machine == SPELCH_MACHINE_TABLE && plan->n_passes > 0)
    spelch_writer_numbers_told (w, "bit_heights_mm", heights, plan->n_passes);
  else
    spelch_writer_null (w, "bit_heights_mm");
}

/* Of each track in the order in which they are cut. */
static void
stands_out (SpelchWriter *w, const SpelchSettingOut *out)
{
  if (out->stands_out_mm <= 0)
    {
      spelch_writer_null (w, "bit_stands_out_by_track_mm");
      return;
    }
  g_autofree double *by_track = g_new (double, out->tracks);
  for (int i = 0; i < out->tracks; i++)
    by_track[i] = spelch_figure_tidy (spelch_setting_out_stands_out (out, i));
  spelch_writer_numbers_told (w, "bit_stands_out_by_track_mm", by_track, (guint)out->tracks);
}

void
spelch_setting_out_json (SpelchWriter *w, const SpelchPart *part, const SpelchPlanned *planned)
{
  const SpelchSettingOut *out = &planned->plan.setting_out;
  g_auto (GStrv) sentences
      = spelch_words_setting_out (&planned->plan, part, planned->cut, &SPELCH_FIGURE_NUMBERS);
  bool by_hand = part->machine.kind == SPELCH_MACHINE_HAND;
  spelch_writer_open (w, "setting_out", NULL);
  spelch_figure_write (w, "width_mm", out->width_mm);
  spelch_writer_number (w, "tracks", out->tracks);
  spelch_figure_write_if (w, "step_over_mm", out->step_over_mm > 0, out->step_over_mm);
  spelch_figure_write_if (w, "overlap_mm", out->step_over_mm > 0, out->overlap_mm);
  spelch_writer_flag (w, "drops_out", out->drops_out);
  spelch_figure_write_if (w, "corner_radius_mm", out->corner_mm > 0, out->corner_mm);
  fit (w, planned->cut, out);
  spelch_writer_code (w, "round", &SPELCH_ROUND_CODES, (int)out->round);
  spelch_writer_flag (w, "inside", out->inside);
  spelch_figure_write_if (w, "fence_offset_mm", out->fence_offset_mm > 0, out->fence_offset_mm);
  spelch_figure_write_if (w, "guide_bush_mm", by_hand && out->bush_mm > 0, out->bush_mm);
  spelch_figure_write_if (w, "guide_bush_offset_mm", by_hand && out->bush_mm > 0, out->bush_offset_mm);
  spelch_figure_write_if (w, "fence_to_bit_mm", out->guide_mm > 0, out->guide_mm);
  spelch_figure_write_if (w, "bit_stands_out_mm", out->stands_out_mm > 0, out->stands_out_mm);
  stands_out (w, out);
  bit_heights (w, &planned->plan);
  spelch_figure_write_if (w, "pecks", out->pecks > 0, out->pecks);
  spelch_figure_write_if (w, "peck_mm", out->pecks > 0, out->peck_mm);
  tabs (w, out);
  spelch_writer_texts (w, "sentences", (const char *const *)sentences);
  spelch_writer_close (w);
}
