/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "plan/motion.h"

#include "mechanics/chip.h"
#include "plan/numbers.h"
#include "plan/stages.h"
#include "plan/travel.h"

#include <math.h>
#include <string.h>

double
spelch_motion_length (const SpelchMotionPass *pass)
{
  return 2 * M_PI * SPELCH_MOTION_TURNS;
}

double
spelch_motion_tooth (const SpelchMotionPass *pass)
{
  return 2 * M_PI / MAX (pass->teeth, 1);
}

SpelchBand
spelch_motion_axial (const SpelchMotionPass *pass, double turned)
{
  SpelchForceParts still, moving;
  spelch_force_at (&pass->force, turned, &still, &moving);
  return spelch_numbers_axial (pass->constants, still.axial + pass->feed_per_tooth * moving.axial);
}

/* ---- Made once ---- */

static void
fill_trace (SpelchMotionPass *pass)
{
  for (int i = 0; i < SPELCH_TRACE_POINTS; i++)
    pass->trace[i] = spelch_motion_axial (pass, 2 * M_PI * i / (SPELCH_TRACE_POINTS - 1)).mid;
}

static void
fill_pass (const SpelchCase *c, const SpelchPass *planned, double stick_out, double feed_per_tooth,
           SpelchLoads *room, SpelchMotionPass *pass)
{
  spelch_loads_find (c, planned, stick_out, room);
  const SpelchForceCase *force = &room->force;
  pass->bit = planned->bit;
  pass->constants = c->k;
  pass->depth = planned->tip_mm;
  pass->force = *force;
  pass->feed_per_tooth = feed_per_tooth;
  pass->chip_max = spelch_chip_max (feed_per_tooth, c->diameter, room->engaged);
  pass->chip_room = room->room_per_feed * feed_per_tooth;
  pass->teeth = spelch_flute_fewest_edges (&force->flutes);
  pass->tooth_s = 60 / (planned->speed_rpm * pass->teeth);
  pass->cutting_s = spelch_travel_of_pass (c, planned) / planned->feed_mm_min * 60;
  pass->axial = spelch_numbers_axial (c->k, spelch_force_means (force, feed_per_tooth).axial);
  if (force->n_slices > 0)
    {
      pass->stock_from = pass->depth - force->slices[force->n_slices - 1].s1;
      pass->stock_to = pass->depth - force->slices[0].s0;
    }
  fill_trace (pass);
}

static void
find_extent (SpelchMotion *motion, const SpelchConstants *constants)
{
  for (guint i = 0; i < motion->n_passes; i++)
    for (int j = 0; j < SPELCH_TRACE_POINTS; j++)
      {
        SpelchBand band = spelch_numbers_axial (constants, motion->passes[i].trace[j]);
        motion->most = fmax (motion->most, band.high);
        motion->least = fmin (motion->least, band.low);
      }
}

/* Whether it can be told how fast the passes go. */
static bool
goes (const SpelchPlan *plan)
{
  for (guint i = 0; i < plan->n_passes; i++)
    if (!(plan->passes[i].speed_rpm > 0 && plan->passes[i].feed_mm_min > 0))
      return false;
  return plan->n_passes > 0;
}

SpelchMotion *
spelch_motion_new (const SpelchConstants *constants, const SpelchPart *part, const SpelchCut *cut,
                   const SpelchBit *bit, const SpelchPlan *plan)
{
  SpelchMotion *motion = g_new0 (SpelchMotion, 1);
  int scorer = spelch_part_find_bit (part, plan->scoring.bit);
  motion->thickness = plan->thickness;
  motion->n_edges = plan->n_edges;
  memcpy (motion->edges, plan->edges, sizeof motion->edges);
  if (!goes (plan) || (plan->scoring.bit[0] != '\0' && scorer < 0))
    return motion;
  g_autofree SpelchLoads *room = g_new (SpelchLoads, 1);
  SpelchCase c[2];
  SpelchCut groove = *cut;
  spelch_case_prepare (&c[0], constants, part, cut, bit);
  if (scorer >= 0)
    {
      groove = spelch_stages_groove (constants, part, cut, bit, &part->bits[scorer]);
      spelch_case_prepare (&c[1], constants, part, &groove, &part->bits[scorer]);
    }
  for (guint i = 0; i < plan->n_passes; i++)
    {
      bool scores = plan->passes[i].bit == 1 && scorer >= 0;
      fill_pass (&c[scores], &plan->passes[i], scores ? plan->scoring.stick_out_mm : plan->stick_out_mm,
                 scores ? plan->scoring.feed_per_tooth : plan->feed_per_tooth, room,
                 &motion->passes[motion->n_passes++]);
    }
  find_extent (motion, constants);
  return motion;
}
