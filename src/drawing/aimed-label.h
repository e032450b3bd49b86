/* SPDX-License-Identifier: GPL-3.0-or-later
 *
 * Aimed label: words in a column beside a picture, each with the place in it that they name.
 */
#pragma once

#include "drawing/scene.h"

typedef struct
{
  PangoLayout *layout; /* NULL: there is none */
  SpelchRect box;
  double x, y; /* what it names, in the picture */
} SpelchAimedLabel;

/* Stacks @n labels between @top and @bottom by the height of what they name, each as near to it as the others
 * let it, with @gap between two. Their boxes have their heights. */
void spelch_aimed_labels_stack (SpelchAimedLabel *labels, guint n, double top, double bottom, double gap);
