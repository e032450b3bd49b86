/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "bench/mark-words.h"

#include <glib/gi18n-lib.h>

char *
spelch_mark_face (const SpelchPlan *plan, const SpelchCut *cut, SpelchSide side)
{
  SpelchFace face = side == SPELCH_SIDE_MOTOR ? plan->near : spelch_face_other (plan->near);
  if (!spelch_cut_sees (cut, face))
    return g_strdup (_ ("hidden face"));
  if (!spelch_cut_sees (cut, spelch_face_other (face)))
    return g_strdup (_ ("show face"));
  return g_strdup_printf (_ ("show face %d"), face == SPELCH_FACE_A ? 1 : 2);
}

const char *
spelch_mark_grade (const SpelchPart *part, const SpelchPlan *plan, SpelchSide side)
{
  const SpelchEdge *edge = spelch_plan_worst (plan, side);
  if (edge == NULL || edge->grade == 0)
    return _ ("not cut");
  return spelch_words_grade (edge->grade, spelch_plan_facing (plan, side));
}

char *
spelch_mark_pill (const SpelchPlanned *planned, SpelchQuantityId id, const SpelchNumbers *numbers)
{
  guint pass = spelch_quantity_pass (planned, id);
  double value = pass > 0 ? planned->plan->passes[pass - 1].tip_mm : spelch_quantity_read (planned, id).value;
  g_autofree char *length = spelch_words_length (numbers, value);
  if (pass > 0)
    return g_strdup_printf ("%u · %s", pass, length);
  if (id.kind != SPELCH_MARK_ALLOWANCE)
    return g_steal_pointer (&length);
  /* Translators: %s is a length, left on the walls for a finishing pass. */
  return g_strdup_printf (_ ("%s left on"), length);
}

/* Adds ", show face badly torn". */
static void
add_verdict (GString *label, const SpelchPlanned *planned, SpelchSide side)
{
  g_autofree char *face = spelch_mark_face (planned->plan, planned->made, side);
  const char *grade = spelch_mark_grade (planned->part, planned->plan, side);
  /* Translators: a face of the board and how its edge comes out: "show face badly torn" */
  g_autofree char *verdict = g_strdup_printf (C_ ("face and its grade", "%s %s"), face, grade);
  g_string_append_printf (label, ", %s", verdict);
}

/* "Pass 1", "Scoring pass 1". */
static char *
name_of (const SpelchPlanned *planned, SpelchQuantityId id)
{
  return spelch_quantity_scores (planned, id) ? g_strdup_printf (_ ("Scoring pass %u"), id.index)
                                              : spelch_quantity_name (id);
}

char *
spelch_mark_label (const SpelchPlanned *planned, SpelchQuantityId id, const SpelchNumbers *numbers)
{
  const SpelchPlan *plan = planned->plan;
  guint pass = spelch_quantity_pass (planned, id);
  g_autofree char *name = name_of (planned, id);
  g_autofree char *value = spelch_words_length (numbers, spelch_quantity_read (planned, id).value);
  GString *label = g_string_new (NULL);
  g_string_append_printf (label, "%s, %s", name, value);
  if (id.kind == SPELCH_MARK_OVERCUT && pass > 0)
    {
      g_autofree char *depth = spelch_words_length (numbers, plan->passes[pass - 1].tip_mm);
      bool skin = plan->skin_mm > 0;
      g_autofree char *of_pass
          = g_strdup_printf (skin ? _ ("skin pass %u to %s") : _ ("pass %u to %s"), pass, depth);
      g_string_append_printf (label, ", %s", of_pass);
    }
  if (pass == 1 && !planned->asked)
    add_verdict (label, planned, SPELCH_SIDE_MOTOR);
  if (id.kind == SPELCH_MARK_OVERCUT && !planned->asked)
    add_verdict (label, planned, SPELCH_SIDE_FAR);
  return g_string_free (label, FALSE);
}
