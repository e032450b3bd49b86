/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "drawing/side-scenes.h"

#include <math.h>

struct _SpelchSideScenes
{
  double width, height;
  double level; /* of the boards' near faces */
  guint n;
  SpelchScene *scenes[SPELCH_COMPARE_MOST];
};

static SpelchScene *
scene_of (const SpelchPart *part, const SpelchCompared *one, const SpelchView *view, double scale)
{
  SpelchView own = *view;
  own.shown_pass = 1;
  own.lettering = NULL;
  own.without_words = true;
  own.with_marks = false;
  own.scale_most = scale;
  return spelch_scene_new (part, &one->cut, one->bit, &one->plan, &own);
}

/* The smallest of the scales at which each fits. */
static double
common_scale (const SpelchPart *part, const GArray *columns, const SpelchView *view)
{
  double scale = HUGE_VAL;
  for (guint i = 0; i < columns->len; i++)
    {
      g_autoptr (SpelchScene) scene = scene_of (part, &g_array_index (columns, SpelchCompared, i), view, 0);
      scale = fmin (scale, spelch_scene_scale (scene));
    }
  return scale;
}

SpelchSideScenes *
spelch_side_scenes_new (const SpelchPart *part, const GArray *columns, const SpelchView *view)
{
  SpelchSideScenes *self = g_new0 (SpelchSideScenes, 1);
  double scale = common_scale (part, columns, view);
  self->width = view->width;
  self->height = view->height;
  self->level = -HUGE_VAL;
  self->n = MIN (columns->len, SPELCH_COMPARE_MOST);
  for (guint i = 0; i < self->n; i++)
    {
      self->scenes[i] = scene_of (part, &g_array_index (columns, SpelchCompared, i), view, scale);
      self->level = fmax (self->level, spelch_scene_y (self->scenes[i], 0));
    }
  return self;
}

void
spelch_side_scenes_free (SpelchSideScenes *scenes)
{
  for (guint i = 0; i < scenes->n; i++)
    spelch_scene_free (scenes->scenes[i]);
  g_free (scenes);
}

const SpelchScene *
spelch_side_scenes_get (const SpelchSideScenes *scenes, guint column)
{
  return scenes->scenes[column];
}

double
spelch_side_scenes_shift (const SpelchSideScenes *scenes, guint column)
{
  return floor (scenes->level - spelch_scene_y (scenes->scenes[column], 0));
}

void
spelch_side_scenes_draw (const SpelchSideScenes *scenes, guint column, cairo_t *cr)
{
  cairo_save (cr);
  cairo_rectangle (cr, 0, 0, scenes->width, scenes->height);
  cairo_clip (cr);
  /* A shorter bit leaves more room above it: the boards stand level all the same. */
  cairo_translate (cr, 0, spelch_side_scenes_shift (scenes, column));
  for (int layer = SPELCH_LAYER_STILL; layer < SPELCH_LAYER_WORDS; layer++)
    spelch_scene_draw_layer (scenes->scenes[column], (SpelchSceneLayer)layer, cr);
  cairo_restore (cr);
}
