/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "drawing/aimed-label.h"

#include <math.h>

/* By the height of what they name; those that are there. */
static guint
sort (const SpelchAimedLabel *labels, guint n, guint *order)
{
  guint there = 0;
  for (guint i = 0; i < n; i++)
    {
      guint j = there;
      if (labels[i].layout == NULL)
        continue;
      for (; j > 0 && labels[order[j - 1]].y > labels[i].y; j--)
        order[j] = order[j - 1];
      order[j] = i;
      there++;
    }
  return there;
}

void
spelch_aimed_labels_stack (SpelchAimedLabel *labels, guint n, double top, double bottom, double gap)
{
  g_autofree guint *order = g_new (guint, n);
  guint there = sort (labels, n, order);
  double y = top, below = bottom + gap;
  for (guint i = 0; i < there; i++)
    {
      SpelchAimedLabel *label = &labels[order[i]];
      label->box.y = fmax (y, label->y - label->box.height / 2);
      y = label->box.y + label->box.height + gap;
    }
  for (guint i = there; i-- > 0;)
    {
      SpelchAimedLabel *label = &labels[order[i]];
      label->box.y = fmin (label->box.y, below - gap - label->box.height);
      below = label->box.y;
    }
}
