/* SPDX-License-Identifier: GPL-3.0-or-later
 *
 * The opening: which part of the board each pass removes, and where the bit stands in it.
 */
#include "drawing/scene-private.h"

/* The width from wall to wall, or from the wall to the board's end. */
static double
width_of (const SpelchCut *cut, double diameter)
{
  if (cut->kind == SPELCH_CUT_OUTLINE || spelch_cut_width (cut) <= 0)
    return diameter;
  return spelch_cut_has_one_wall (cut) ? spelch_cut_width (cut) : MAX (spelch_cut_width (cut), diameter);
}

/* What a pass leaves on a wall: nothing on a wall that is waste, nor in a cut just one bit wide between two
 * walls that stay, where the bit can't move aside. */
static double
left_on (const SpelchScene *scene, const SpelchPass *pass, SpelchWall wall, double width)
{
  const SpelchCut *cut = &scene->cut;
  double spare = width - scene->plan.flutes.diameter;

  if (pass->finishing || (cut->kept != SPELCH_WALL_BOTH && cut->kept != wall))
    return 0;
  if (cut->kept == SPELCH_WALL_BOTH && !spelch_cut_has_one_wall (cut))
    return MIN (pass->side_allowance_mm, MAX (spare, 0) / 2);
  return pass->side_allowance_mm;
}

/* Between two walls that stay the bit stands at the one on the picture's right, away from the words at its
 * left. */
static bool
stands_at_right (const SpelchScene *scene)
{
  if (scene->cut.kept == SPELCH_WALL_BOTH && !spelch_cut_has_one_wall (&scene->cut))
    return scene->frame.turn > 0;
  return scene->cut.kept == SPELCH_WALL_RIGHT;
}

static SpelchSpan
span_of (const SpelchScene *scene, const SpelchPass *pass, double width)
{
  double diameter = scene->plan.flutes.diameter;
  double from = scene->opening.left + left_on (scene, pass, SPELCH_WALL_LEFT, width);
  double to = scene->opening.right - left_on (scene, pass, SPELCH_WALL_RIGHT, width);
  bool at_right = stands_at_right (scene);

  if (spelch_cut_has_one_wall (&scene->cut))
    return at_right ? (SpelchSpan){ scene->opening.left, to, pass->tip_mm, to - diameter / 2 }
                    : (SpelchSpan){ from, scene->opening.right, pass->tip_mm, from + diameter / 2 };
  /* A pass is never narrower than the bit: it goes further into the waste. */
  if (to - from < diameter && at_right)
    from = to - diameter;
  else if (to - from < diameter)
    to = from + diameter;
  return (SpelchSpan){ from, to, pass->tip_mm, at_right ? to - diameter / 2 : from + diameter / 2 };
}

/* Where there is no wall the board ends, on the side of the picture where the view puts it. */
static void
end_board (SpelchScene *scene)
{
  SpelchFrame *frame = &scene->frame;
  const SpelchOpening *opening = &scene->opening;
  bool ends_at_right = frame->turn > 0 ? !opening->wall_right : !opening->wall_left;
  bool ends_at_left = frame->turn > 0 ? !opening->wall_left : !opening->wall_right;
  double half = (opening->right - opening->left) / 2 * frame->scale;

  frame->ends_right = ends_at_right;
  frame->ends_left = ends_at_left;
  if (ends_at_right)
    frame->board_right = frame->origin_x + half;
  if (ends_at_left)
    frame->board_left = frame->origin_x - half;
}

/* An opening right through is only gone round: between the two kerfs, as wide as the bit, its middle is left.
 */
static void
leave_core (const SpelchScene *scene, SpelchOpening *opening)
{
  double diameter = scene->plan.flutes.diameter;
  opening->core_from = opening->core_to = 0;
  if (!scene->plan.setting_out.drops_out || opening->n == 0)
    return;
  double from = opening->spans[0].from + diameter, to = opening->spans[0].to - diameter;
  if (to - from <= 0)
    return;
  opening->core_from = from;
  opening->core_to = to;
}

void
spelch_scene_lay_out_opening (SpelchScene *scene)
{
  SpelchOpening *opening = &scene->opening;
  bool one_wall = spelch_cut_has_one_wall (&scene->cut);
  double width = width_of (&scene->cut, scene->plan.flutes.diameter);
  double most = spelch_scene_widest_opening (scene);

  opening->width_mm = width;
  opening->shortened = width > most;
  width = MIN (width, most);
  opening->left = -width / 2;
  opening->right = width / 2;
  opening->wall_left = !one_wall || scene->cut.kept != SPELCH_WALL_RIGHT;
  opening->wall_right = !one_wall || scene->cut.kept == SPELCH_WALL_RIGHT;
  opening->n = MIN (scene->plan.n_passes, SPELCH_MAX_PASSES);
  for (guint i = 0; i < opening->n; i++)
    opening->spans[i] = span_of (scene, &scene->plan.passes[i], width);
  leave_core (scene, opening);
  end_board (scene);
}

void
spelch_opening_all (const SpelchOpening *opening, double *from, double *to)
{
  *from = opening->left;
  *to = opening->right;
  for (guint i = 0; i < opening->n; i++)
    {
      *from = i == 0 ? opening->spans[i].from : MIN (*from, opening->spans[i].from);
      *to = i == 0 ? opening->spans[i].to : MAX (*to, opening->spans[i].to);
    }
}
