/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "on-demo.h"

#include "files/shop-data.h"

#include <string.h>

void
demo_set_up (Demo *demo, gconstpointer unused)
{
  g_autoptr (SpelchPart) shared = spelch_shop_demo ();
  demo->part = spelch_part_copy (shared);
  demo_take_cut (demo, "outline");
}

void
demo_tear_down (Demo *demo, gconstpointer unused)
{
  spelch_part_unref (demo->part);
}

const SpelchBit *
demo_bit (const char *id)
{
  guint n;
  const SpelchBit *bits = spelch_shop_bits (&n);
  for (guint i = 0; i < n; i++)
    if (g_str_equal (bits[i].id, id))
      return &bits[i];
  g_error ("no bit %s in the starter set", id);
}

void
demo_take_cut (Demo *demo, const char *id)
{
  demo->cut = &demo->part->cuts[spelch_part_find_cut (demo->part, id)];
  memset (&demo->cut->held, 0, sizeof demo->cut->held);
}

void
demo_take_board (Demo *demo, const char *id)
{
  guint n;
  const SpelchBoard *boards = spelch_shop_boards (&n);
  for (guint i = 0; i < n; i++)
    if (g_str_equal (boards[i].id, id))
      {
        demo->part->board = boards[i];
        return;
      }
  g_error ("no board %s in the starter set", id);
}

void
demo_cut_out (Demo *demo)
{
  for (guint i = 0; i < demo->part->n_cuts; i++)
    if (demo->part->cuts[i].kind == SPELCH_CUT_OUTLINE)
      demo->part->cuts[i].kind = SPELCH_CUT_TRIM;
}

void
demo_take_machine (Demo *demo, const char *id)
{
  guint n;
  const SpelchMachine *machines = spelch_shop_machines (&n);
  for (guint i = 0; i < n; i++)
    if (g_str_equal (machines[i].id, id))
      {
        demo->part->machine = machines[i];
        return;
      }
  g_error ("no machine %s in the starter set", id);
}

void
demo_hold_first_pass (Demo *demo, double depth)
{
  demo->cut->held.n_passes = 1;
  demo->cut->held.passes[0] = spelch_length_mm (depth);
}

void
demo_plan_bit (Demo *demo, const SpelchBit *bit)
{
  spelch_plan_make (spelch_shop_constants (), demo->part, demo->cut, bit, &demo->plan);
}

void
demo_plan_with (Demo *demo, const char *id)
{
  demo_plan_bit (demo, demo_bit (id));
}

int
demo_grade (const Demo *demo, SpelchSide side)
{
  const SpelchEdge *edge = spelch_plan_worst (&demo->plan, side);
  return edge != NULL ? edge->grade : 0;
}

bool
demo_has_stop (const Demo *demo, SpelchStopKind kind)
{
  for (guint i = 0; i < demo->plan.n_stops; i++)
    if (demo->plan.stops[i].kind == kind)
      return true;
  return false;
}

SpelchLogEntry
demo_entry (const char *date, SpelchFace face, int predicted, int grade)
{
  SpelchLogEntry one = { .face = face,
                         .way_up = SPELCH_FACE_A,
                         .predicted = predicted,
                         .grade = grade,
                         .board = "birch-ply-18",
                         .bit = "down-cut-6.35x25" };
  g_strlcpy (one.date, date, sizeof one.date);
  return one;
}
