/* SPDX-License-Identifier: GPL-3.0-or-later
 *
 * The side view on paper: its scale is one of ISO 5455, so that it can be measured with a rule; the largest
 * at which nothing in it covers anything else.
 */
#include "drawing/scene-private.h"
#include "drawing/sheet-private.h"

#include <math.h>

#define UNIT       0.22 /* mm of paper to a unit of the scene: its lines are 0.35 and 0.18 mm wide then */
#define STEP       2.0  /* mm by which a picture is made lower */
#define LEAST_HIGH 40.0
#define MOST_RECTS (SPELCH_N_LABELS + SPELCH_MAX_MARKS + 4)

/* ISO 5455: 1979, the enlargements, full size, and the reductions. */
static const double RATIOS[] = { 20, 10, 5, 2, 1, 1 / 2.0, 1 / 5.0, 1 / 10.0, 1 / 20.0 };

/* Of the board's width left of the opening, what is tried: names stand there, at the right dimensions begin.
 */
static const double LEFTS[] = { 0.54, 0.57, 0.60, 0.63, 0.66 };

static SpelchScene *
scene_at (const SpelchSheet *sheet, const SpelchTask *task, double ratio, double left, double width,
          double height)
{
  SpelchView view = { .width = width / UNIT,
                      .height = height / UNIT,
                      .text = 1,
                      .look = SPELCH_LOOK_PAPER,
                      .numbers = sheet->numbers,
                      .family = sheet->family,
                      .lettering = sheet->lettering,
                      .shown_pass = 1,
                      .with_marks = true,
                      .on_paper = true,
                      .left_share = left,
                      .scale_most = ratio / UNIT };
  return spelch_scene_new (sheet->work->part, &task->cut, &task->bit, &task->plan, &view);
}

static bool
is_at (const SpelchScene *scene, double ratio)
{
  return fabs (spelch_scene_scale (scene) * UNIT / ratio - 1) < 1e-6;
}

/* Everything that must not be covered by another: words, dimensions, the chevrons beside the bit. */
static guint
gather (const SpelchScene *scene, SpelchRect rects[MOST_RECTS])
{
  guint n = 0;
  for (guint i = 0; i < SPELCH_N_LABELS; i++)
    if (scene->labels[i].layout != NULL)
      rects[n++] = scene->labels[i].box;
  for (guint i = 0; i < scene->n_marks; i++)
    rects[n++] = scene->marks[i].box;
  rects[n++] = scene->chevrons;
  rects[n++] = spelch_scene_dimension_line (scene);
  rects[n++] = spelch_width_line (&scene->width);
  if (scene->width.layout != NULL)
    rects[n++] = scene->width.box;
  return n;
}

static bool
runs_through_words (const SpelchScene *scene, SpelchRect line)
{
  for (guint i = 0; i < SPELCH_N_LABELS; i++)
    if (scene->labels[i].layout != NULL && spelch_rect_overlap (line, scene->labels[i].box))
      return true;
  return false;
}

/* Whether an extension line runs through words. */
static bool
crosses_label (const SpelchScene *scene)
{
  for (guint i = 0; i < scene->n_marks; i++)
    if (runs_through_words (scene, spelch_scene_extension (&scene->marks[i])))
      return true;
  return runs_through_words (scene, spelch_width_extension (&scene->width, true))
         || runs_through_words (scene, spelch_width_extension (&scene->width, false));
}

static bool
is_inside (const SpelchScene *scene, SpelchRect r)
{
  return r.x >= 0 && r.y >= 0 && r.x + r.width <= scene->view.width && r.y + r.height <= scene->view.height;
}

static bool
is_clear (const SpelchScene *scene)
{
  SpelchRect rects[MOST_RECTS];
  guint n = gather (scene, rects);
  for (guint i = 0; i < n; i++)
    for (guint j = 0; j < i; j++)
      if (spelch_rect_overlap (rects[i], rects[j]))
        return false;
  if (crosses_label (scene))
    return false;
  for (guint i = 0; i < SPELCH_N_LABELS; i++)
    if (scene->labels[i].layout != NULL && !is_inside (scene, scene->labels[i].box))
      return false;
  return true;
}

/* What a view has found no room for: its width, or words of the shear. */
static guint
missing (const SpelchScene *scene)
{
  guint n = scene->width.layout == NULL && spelch_scene_has_width (scene) ? 2 : 0;
  for (guint id = SPELCH_LABEL_TURN_OVER; id <= SPELCH_LABEL_UPPER_SHEAR; id++)
    n += spelch_scene_lost (scene, (SpelchLabelId)id);
  return n;
}

/* Sets the ratio and the share of the board left of the opening; at one ratio a view that tells the width
 * goes before others. */
static SpelchScene *
largest (const SpelchSheet *sheet, const SpelchTask *task, double width, double height, double *ratio,
         double *left)
{
  for (guint i = 0; i + 1 < G_N_ELEMENTS (RATIOS); i++)
    {
      g_autoptr (SpelchScene) found = NULL;
      *ratio = RATIOS[i];
      for (guint j = 0; j < G_N_ELEMENTS (LEFTS) && (found == NULL || missing (found) > 0); j++)
        {
          g_autoptr (SpelchScene) scene = scene_at (sheet, task, RATIOS[i], LEFTS[j], width, height);
          if (!is_at (scene, RATIOS[i]))
            break;
          if (!is_clear (scene) || (found != NULL && missing (scene) >= missing (found)))
            continue;
          *left = LEFTS[j];
          g_clear_pointer (&found, spelch_scene_free);
          found = g_steal_pointer (&scene);
        }
      if (found != NULL)
        return g_steal_pointer (&found);
    }
  *ratio = RATIOS[G_N_ELEMENTS (RATIOS) - 1];
  *left = LEFTS[0];
  return scene_at (sheet, task, *ratio, *left, width, height);
}

SpelchSheetView
spelch_sheet_view_new (const SpelchSheet *sheet, const SpelchTask *task, double width, double most,
                       double *height)
{
  SpelchSheetView view = { .unit = UNIT };
  double left;
  *height = most;
  view.scene = largest (sheet, task, width, most, &view.ratio, &left);
  /* No higher than it takes at that scale. */
  while (*height - STEP >= LEAST_HIGH)
    {
      SpelchScene *lower = scene_at (sheet, task, view.ratio, left, width, *height - STEP);
      if (!is_at (lower, view.ratio) || !is_clear (lower) || missing (lower) > missing (view.scene))
        {
          spelch_scene_free (lower);
          break;
        }
      *height -= STEP;
      spelch_scene_free (view.scene);
      view.scene = lower;
    }
  return view;
}

void
spelch_sheet_view_clear (SpelchSheetView *view)
{
  g_clear_pointer (&view->scene, spelch_scene_free);
}

char *
spelch_sheet_ratio (const SpelchSheet *sheet, double ratio)
{
  g_autofree char *more = spelch_words_decimal (&sheet->numbers, ratio >= 1 ? ratio : 1 / ratio, 0);
  return ratio >= 1 ? g_strdup_printf ("%s : 1", more) : g_strdup_printf ("1 : %s", more);
}
