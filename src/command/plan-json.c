/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "command/plan-json.h"

#include "command/figures.h"
#include "command/setting-out-json.h"
#include "files/json-writer.h"
#include "files/shop-data.h"
#include "plan/cautions.h"
#include "plan/words-limits.h"

#include <math.h>

/* A figure that 0 stands for "not known" in. */
static void
number_or_null (SpelchWriter *w, const char *member, double value)
{
  spelch_figure_write_if (w, member, value > 0, value);
}

static void
band (SpelchWriter *w, const char *member, const SpelchBand *value)
{
  spelch_writer_open (w, member, NULL);
  spelch_figure_write (w, "low", value->low);
  spelch_figure_write (w, "mid", value->mid);
  spelch_figure_write (w, "high", value->high);
  spelch_writer_close (w);
}

static void
stops (SpelchWriter *w, const SpelchPlan *plan)
{
  spelch_writer_open_list (w, "stops");
  for (guint i = 0; i < plan->n_stops; i++)
    {
      g_autofree char *sentence = spelch_words_stop (&plan->stops[i], &SPELCH_FIGURE_NUMBERS);
      spelch_writer_open_item (w, NULL, false);
      spelch_writer_code (w, "stop", &SPELCH_STOP_CODES, (int)plan->stops[i].kind);
      spelch_figure_write (w, "value", plan->stops[i].value);
      spelch_figure_write (w, "limit", plan->stops[i].limit);
      spelch_writer_text (w, "sentence", sentence);
      spelch_writer_flag (w, "scoring_bit", plan->stops[i].bit == 1);
      spelch_writer_close (w);
    }
  spelch_writer_close (w);
}

/* A finishing pass runs along one wall, whatever the passes before it did. */
static SpelchSense
sense_of (const SpelchPlanned *one, const SpelchPass *pass)
{
  if (!pass->finishing)
    return one->plan.sense;
  return one->cut->kept == SPELCH_WALL_RIGHT ? SPELCH_SENSE_CLIMB : SPELCH_SENSE_CONVENTIONAL;
}

static void
passes (SpelchWriter *w, const SpelchPlanned *one)
{
  const SpelchPlan *plan = &one->plan;
  spelch_writer_open_list (w, "passes");
  for (guint i = 0; i < plan->n_passes; i++)
    {
      const SpelchPass *pass = &plan->passes[i];
      spelch_writer_open_item (w, NULL, false);
      spelch_figure_write (w, "n", i + 1);
      spelch_writer_text (w, "bit", pass->bit == 1 ? plan->scoring.bit : one->bit->id);
      spelch_figure_write (w, "tip_mm", pass->tip_mm);
      spelch_writer_text (w, "from", "near");
      spelch_figure_write (w, "side_allowance_mm", pass->side_allowance_mm);
      spelch_writer_flag (w, "finishing", pass->finishing);
      spelch_figure_write (w, "tracks", pass->tracks);
      spelch_writer_code (w, "sense", &SPELCH_SENSE_CODES, (int)sense_of (one, pass));
      spelch_writer_code (w, "entry", &SPELCH_ENTRY_KIND_CODES,
                          (int)(pass->bit == 1 ? plan->scoring.entry.kind : plan->entry.kind));
      spelch_figure_write (w, "speed_rpm", pass->speed_rpm);
      number_or_null (w, "feed_mm_min", pass->feed_mm_min);
      number_or_null (w, "plunge_feed_mm_min", pass->plunge_feed_mm_min);
      spelch_writer_flag (w, "held", pass->held);
      spelch_writer_close (w);
    }
  spelch_writer_close (w);
}

static void
terms (SpelchWriter *w, const SpelchEdge *edge)
{
  spelch_writer_open_list (w, "terms");
  for (guint i = 0; i < edge->n_terms; i++)
    {
      spelch_writer_open_item (w, NULL, false);
      spelch_writer_code (w, "term", &SPELCH_TERM_CODES, (int)edge->terms[i].kind);
      spelch_figure_write (w, "points", edge->terms[i].points);
      spelch_writer_code (w, "evidence", &SPELCH_EVIDENCE_CODES, (int)edge->terms[i].founding.evidence);
      spelch_writer_text (w, "source", edge->terms[i].founding.source);
      spelch_writer_close (w);
    }
  spelch_writer_close (w);
}

static void
edges (SpelchWriter *w, const SpelchPlan *plan)
{
  spelch_writer_open_list (w, "edges");
  for (guint i = 0; i < plan->n_edges; i++)
    {
      const SpelchEdge *edge = &plan->edges[i];
      if (edge->grade == 0)
        continue;
      spelch_writer_open_item (w, NULL, false);
      spelch_writer_code (w, "face", &SPELCH_FACE_CODES, (int)edge->face);
      spelch_writer_code (w, "side", &SPELCH_SIDE_CODES, (int)edge->side);
      spelch_writer_code (w, "wall", &SPELCH_WALL_CODES, (int)edge->wall);
      spelch_writer_flag (w, "stays", edge->stays);
      spelch_writer_flag (w, "seen", edge->seen);
      spelch_figure_write (w, "grade", edge->grade);
      spelch_figure_write (w, "line_grade", edge->line_grade);
      spelch_figure_write (w, "model_grade", edge->model_grade);
      spelch_writer_text (w, "word", spelch_words_grade (edge->grade, spelch_plan_facing (plan, edge->side)));
      spelch_writer_code (w, "shear", &SPELCH_LOAD_CODES, (int)edge->load);
      spelch_figure_write (w, "spoilt_by_entry_mm", edge->by_entry_mm);
      terms (w, edge);
      g_auto (GStrv) why = spelch_words_arris_why (plan, edge, &SPELCH_FIGURE_NUMBERS);
      spelch_writer_texts (w, "why", (const char *const *)why);
      spelch_writer_close (w);
    }
  spelch_writer_close (w);
}

static void
range (SpelchWriter *w, const char *member, const SpelchRange *value)
{
  double ends[2] = { spelch_figure_tidy (value->from), spelch_figure_tidy (value->to) };
  if (value->empty)
    spelch_writer_null (w, member);
  else
    spelch_writer_numbers_told (w, member, ends, 2);
}

static void
window (SpelchWriter *w, const char *member, const SpelchWindow *value)
{
  spelch_writer_open (w, member, NULL);
  range (w, "first_pass_mm", &value->first_pass);
  range (w, "last_tip_mm", &value->last_tip);
  spelch_writer_close (w);
}

static void
windows (SpelchWriter *w, const SpelchWindows *value)
{
  spelch_writer_open (w, "windows", NULL);
  window (w, "nominal", &value->nominal);
  window (w, "robust", &value->robust);
  spelch_writer_code (w, "opened_by", &SPELCH_OPENED_BY_CODES, (int)value->opened_by);
  spelch_writer_code (w, "first_pass_opened_by", &SPELCH_OPENED_BY_CODES, (int)value->near.by);
  spelch_writer_code (w, "last_tip_opened_by", &SPELCH_OPENED_BY_CODES, (int)value->far.by);
  number_or_null (w, "backer_mm", value->opened_mm);
  number_or_null (w, "needs_overcut_mm", value->needs_overcut_mm);
  number_or_null (w, "up_shear_at_least_mm", value->needs_up_shear_from);
  number_or_null (w, "up_shear_at_most_mm", value->needs_up_shear_to);
  spelch_writer_close (w);
}

static void
forces (SpelchWriter *w, const SpelchPlan *plan)
{
  band (w, "power_w", &plan->power_w);
  spelch_writer_open (w, "force_n", NULL);
  spelch_figure_write (w, "tangential_mean", plan->tangential_mean_n);
  spelch_figure_write (w, "sideways_peak", plan->sideways_peak_n);
  spelch_figure_write (w, "ripple", plan->ripple);
  spelch_figure_write (w, "axial_mean", plan->axial_mean_n);
  spelch_figure_write (w, "lift_bound", plan->lift_bound_n);
  spelch_writer_close (w);
  spelch_writer_open_list (w, "seat");
  for (guint i = 0; i < plan->n_seats; i++)
    {
      const SpelchSeat *seat = &plan->seats[i];
      spelch_writer_open_item (w, NULL, false);
      spelch_writer_code (w, "pair", &SPELCH_PAIR_CODES, (int)seat->pair);
      spelch_writer_text (w, "direction", seat->apart ? "apart" : "together");
      spelch_figure_write (w, "mean_n", seat->mean_n);
      spelch_figure_write (w, "low_n", seat->low_n);
      spelch_figure_write (w, "high_n", seat->high_n);
      spelch_figure_write (w, "bound_n", seat->bound_n);
      spelch_writer_close (w);
    }
  spelch_writer_close (w);
  spelch_writer_open (w, "hold", NULL);
  number_or_null (w, "needed_n", plan->hold_needed_n);
  number_or_null (w, "available_n", plan->hold_available_n);
  number_or_null (w, "factor", plan->hold_factor);
  number_or_null (w, "factor_at_worst", plan->hold_factor > 0 ? fmax (plan->hold_factor_worst, 1e-9) : 0);
  number_or_null (w, "weight_n", plan->weight_n);
  if (plan->hold_factor > 0)
    spelch_writer_code (w, "gives_way_by", &SPELCH_GIVES_CODES, (int)plan->hold_way);
  else
    spelch_writer_null (w, "gives_way_by");
  spelch_writer_close (w);
  spelch_writer_open (w, "bending", NULL);
  spelch_figure_write (w, "deflection_mm", plan->deflection_mm);
  spelch_figure_write (w, "machine_mm", plan->deflection_machine_mm);
  spelch_figure_write (w, "stress_mpa", plan->stress_mpa);
  spelch_figure_write (w, "stress_share", plan->stress_share);
  spelch_writer_close (w);
}

static void
limits (SpelchWriter *w, const SpelchPlan *plan)
{
  spelch_writer_open_list (w, "limits");
  for (guint i = 0; i < plan->n_limits; i++)
    {
      spelch_writer_open_item (w, NULL, false);
      spelch_writer_code (w, "name", &SPELCH_LIMIT_CODES, (int)plan->limits[i].kind);
      spelch_figure_write (w, "share", plan->limits[i].share);
      spelch_figure_write (w, "feed_mm_min", plan->limits[i].feed_mm_min);
      spelch_writer_flag (w, "binding", plan->limits[i].binding);
      spelch_writer_close (w);
    }
  spelch_writer_close (w);
}

static void
speed_held (SpelchWriter *w, const SpelchSpeedHeld *value)
{
  spelch_writer_open (w, "speed_held", NULL);
  spelch_writer_code (w, "by", &SPELCH_SPEED_BY_CODES, (int)value->by);
  number_or_null (w, "next_rpm", value->next_rpm);
  number_or_null (w, "share_of_mark", value->of_mark);
  spelch_figure_write (w, "share_of_machine", value->of_machine);
  spelch_writer_close (w);
}

static void
conflict_end (SpelchWriter *w, const char *member, const SpelchConflictEnd *end)
{
  spelch_writer_open (w, member, NULL);
  if (end->held)
    spelch_writer_text (w, "limit", "held-feed");
  else
    spelch_writer_code (w, "limit", &SPELCH_LIMIT_CODES, (int)end->limit);
  spelch_figure_write (w, "feed_mm_min", end->feed_mm_min);
  spelch_writer_close (w);
}

static void
conflict (SpelchWriter *w, const SpelchConflict *value, const SpelchPlan *plan)
{
  g_autofree char *sentence = spelch_words_conflict (value, plan, &SPELCH_FIGURE_NUMBERS);
  if (!value->found)
    {
      spelch_writer_null (w, "conflict");
      return;
    }
  spelch_writer_open (w, "conflict", NULL);
  spelch_figure_write (w, "speed_rpm", value->speed_rpm);
  conflict_end (w, "low", &value->low);
  conflict_end (w, "high", &value->high);
  spelch_writer_open_list (w, "freed_by");
  for (guint i = 0; i < value->n_freed; i++)
    {
      spelch_writer_open_item (w, NULL, false);
      spelch_writer_code (w, "by", &SPELCH_FREE_CODES, (int)value->freed[i].kind);
      spelch_figure_write (w, "value", value->freed[i].value);
      spelch_writer_close (w);
    }
  spelch_writer_close (w);
  spelch_writer_text (w, "sentence", sentence);
  spelch_writer_close (w);
}

static void
entry (SpelchWriter *w, const SpelchEntry *value)
{
  spelch_writer_open (w, "entry", NULL);
  spelch_writer_code (w, "kind", &SPELCH_ENTRY_KIND_CODES, (int)value->kind);
  spelch_writer_flag (w, "on_line", value->on_line);
  number_or_null (w, "angle_deg", value->angle_deg);
  number_or_null (w, "length_mm", value->length_mm);
  number_or_null (w, "legs", value->legs);
  number_or_null (w, "circle_mm", value->circle_mm);
  spelch_writer_close (w);
}

static void
tabs (SpelchWriter *w, const SpelchTabHold *value)
{
  if (value->count == 0)
    {
      spelch_writer_null (w, "tabs");
      return;
    }
  spelch_writer_open (w, "tabs", NULL);
  spelch_figure_write (w, "count", value->count);
  spelch_figure_write (w, "width_mm", value->width_mm);
  spelch_figure_write (w, "thickness_mm", value->thickness_mm);
  spelch_figure_write (w, "holds_n", value->holds_n);
  spelch_figure_write (w, "needed_n", value->needed_n);
  number_or_null (w, "factor", value->factor);
  number_or_null (w, "factor_at_worst", value->factor_worst);
  number_or_null (w, "needs_count", value->needs_count);
  number_or_null (w, "needs_width_mm", value->needs_width_mm);
  spelch_writer_flag (w, "alone", value->alone);
  spelch_writer_close (w);
}

/* The bit that goes first, as it is put in: null when there is none. */
static void
scoring (SpelchWriter *w, const SpelchScoring *value)
{
  if (value->bit[0] == '\0')
    {
      spelch_writer_null (w, "scoring");
      return;
    }
  spelch_writer_open (w, "scoring", NULL);
  spelch_writer_text (w, "bit", value->bit);
  spelch_figure_write (w, "stick_out_mm", value->stick_out_mm);
  number_or_null (w, "in_collet_mm", value->in_collet_mm);
  spelch_writer_close (w);
}

static void
upkeep (SpelchWriter *w, const SpelchPlan *plan)
{
  number_or_null (w, "path_m", spelch_wear_metres (plan));
  number_or_null (w, "edge_path_m", plan->edge_path_m);
  if (plan->life_known)
    spelch_figure_write (w, "life_m_left", plan->life_m_left);
  else
    spelch_writer_null (w, "life_m_left");
  number_or_null (w, "cost", plan->cost);
}

static void
learnt (SpelchWriter *w, const char *side, const SpelchLearnt *value)
{
  spelch_writer_open (w, side, NULL);
  spelch_figure_write (w, "points", value->points);
  spelch_figure_write (w, "points_cuts", value->points_cuts);
  spelch_figure_write (w, "window_mm", value->window_mm);
  spelch_figure_write (w, "window_cuts", value->window_cuts);
  spelch_writer_close (w);
}

/* What the shop log changed: null when nothing. */
static void
corrected (SpelchWriter *w, const SpelchPlan *plan)
{
  const SpelchLearnt *motor = &plan->log_motor, *far = &plan->log_far;
  if (motor->points_cuts + motor->window_cuts + far->points_cuts + far->window_cuts > 0)
    {
      spelch_writer_open (w, "log", NULL);
      learnt (w, "motor", motor);
      learnt (w, "far", far);
      spelch_writer_close (w);
    }
  else
    spelch_writer_null (w, "log");
  if (plan->force_readings > 0)
    {
      spelch_writer_open (w, "calibration", NULL);
      spelch_figure_write (w, "factor", plan->force_factor);
      spelch_figure_write (w, "readings", plan->force_readings);
      spelch_writer_close (w);
    }
  else
    spelch_writer_null (w, "calibration");
}

static void
settled (SpelchWriter *w, const SpelchPart *part, const SpelchPlanned *one)
{
  const SpelchPlan *plan = &one->plan;
  spelch_writer_code (w, "pass_plan", &SPELCH_PASS_PLAN_CODES, (int)plan->pass_plan);
  g_autofree char *sentence = spelch_words_pass_plan (plan, &SPELCH_FIGURE_NUMBERS);
  spelch_writer_text (w, "pass_plan_sentence", sentence);
  number_or_null (w, "skin_mm", plan->skin_mm);
  passes (w, one);
  edges (w, plan);
  windows (w, &plan->windows);
  entry (w, &plan->entry);
  spelch_figure_write (w, "speed_rpm", plan->speed_rpm);
  number_or_null (w, "feed_mm_min", plan->feed_mm_min);
  number_or_null (w, "feed_per_tooth_mm", plan->feed_per_tooth);
  number_or_null (w, "chip_max_mm", plan->chip_max);
  number_or_null (w, "chip_mean_mm", plan->chip_mean);
  spelch_figure_write (w, "cutting_speed_m_s", plan->cutting_speed);
  forces (w, plan);
  spelch_figure_write (w, "rubbing_share", plan->rubbing_share);
  spelch_figure_write (w, "wall_heat_mj_mm2", plan->wall_heat);
  spelch_figure_write (w, "chip_room", plan->chip_room);
  limits (w, plan);
  speed_held (w, &plan->speed_held);
  conflict (w, &one->conflict, plan);
  tabs (w, &plan->tabs);
  spelch_setting_out_json (w, part, one);
  number_or_null (w, "bit_height_mm", plan->bit_height_mm);
  spelch_figure_write (w, "stick_out_mm", plan->stick_out_mm);
  number_or_null (w, "in_collet_mm", plan->in_collet_mm);
  scoring (w, &plan->scoring);
  number_or_null (w, "time_s", plan->time_s);
  upkeep (w, plan);
  corrected (w, plan);
}

static void
cautions (SpelchWriter *w, const SpelchPart *part, const SpelchPlan *plan)
{
  g_auto (GStrv) beware = spelch_caution_plan (spelch_shop_constants (), part, plan);
  spelch_writer_texts (w, "cautions", (const char *const *)beware);
}

/* A cut without a bit, or that no pass can cut: every member is there, but tells nothing. */
static void
unsettled (SpelchWriter *w, const SpelchPlanned *one)
{
  static const char *const members[] = { "pass_plan",
                                         "pass_plan_sentence",
                                         "skin_mm",
                                         "entry",
                                         "speed_rpm",
                                         "feed_mm_min",
                                         "feed_per_tooth_mm",
                                         "chip_max_mm",
                                         "chip_mean_mm",
                                         "cutting_speed_m_s",
                                         "power_w",
                                         "force_n",
                                         "seat",
                                         "hold",
                                         "bending",
                                         "rubbing_share",
                                         "wall_heat_mj_mm2",
                                         "chip_room",
                                         "limits",
                                         "speed_held",
                                         "conflict",
                                         "tabs",
                                         "setting_out",
                                         "bit_height_mm",
                                         "stick_out_mm",
                                         "in_collet_mm",
                                         "scoring",
                                         "time_s",
                                         "path_m",
                                         "edge_path_m",
                                         "life_m_left",
                                         "cost",
                                         "log",
                                         "calibration" };
  spelch_writer_open_list (w, "passes");
  spelch_writer_close (w);
  spelch_writer_open_list (w, "edges");
  spelch_writer_close (w);
  if (one->bit != NULL)
    windows (w, &one->plan.windows);
  else
    spelch_writer_null (w, "windows");
  for (guint i = 0; i < G_N_ELEMENTS (members); i++)
    spelch_writer_null (w, members[i]);
}

static void
write_cut (SpelchWriter *w, const SpelchPart *part, const SpelchPlanned *one)
{
  spelch_writer_open_item (w, NULL, false);
  spelch_writer_text (w, "cut", one->cut->id);
  if (one->bit != NULL)
    spelch_writer_text (w, "bit", one->bit->id);
  else
    spelch_writer_null (w, "bit");
  spelch_writer_code (w, "way_up", &SPELCH_FACE_CODES, (int)one->cut->way_up);
  if (one->bit != NULL)
    spelch_writer_code (w, "verdict", &SPELCH_VERDICT_CODES, (int)one->plan.verdict);
  else
    spelch_writer_null (w, "verdict");
  stops (w, &one->plan);
  cautions (w, part, &one->plan);
  if (one->bit != NULL && one->plan.n_passes > 0)
    settled (w, part, one);
  else
    unsettled (w, one);
  spelch_writer_close (w);
}

char *
spelch_plan_json (const SpelchPart *part, const SpelchPlanned *planned, guint n)
{
  SpelchWriter *w = spelch_figures_begin (part);
  spelch_figures_work (w, part);
  spelch_writer_open_list (w, "cuts");
  for (guint i = 0; i < n; i++)
    write_cut (w, part, &planned[i]);
  spelch_writer_close (w);
  return spelch_writer_end (w);
}
