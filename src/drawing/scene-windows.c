/* SPDX-License-Identifier: GPL-3.0-or-later
 *
 * Words of the clean windows: where each begins, beside its band, and why one is empty. They don't move with
 * a pass.
 */
#include "drawing/scene-private.h"

#include <glib/gi18n-lib.h>
#include <string.h>

#define SMALL_SIZE 11.5

/* Within the board where it can stand there, else near it, but not over the end of what the board lies on;
 * from @high to @low in any case. */
static bool
slide_in_board (SpelchScene *scene, SpelchRect *outer, double reach, double high, double low)
{
  const SpelchFrame *f = &scene->frame;
  double far_end = f->far_y + f->turn * (f->backer + f->far_rest);
  double top = MIN (f->near_y, f->far_y), bottom = MAX (f->near_y, f->far_y) - outer->height;
  double highest = MAX (outer->y - reach, high), lowest = MIN (outer->y + reach, low - outer->height);
  if (bottom > top && spelch_placer_slide (&scene->placer, outer, MAX (highest, top), MIN (lowest, bottom)))
    return true;
  if (far_end != f->far_y && f->turn > 0)
    lowest = MIN (lowest, far_end - outer->height - 1);
  return spelch_placer_slide (&scene->placer, outer, highest, lowest);
}

/* Whatever the depth, something else spoils the edge: then “at any depth” would promise too much. */
static bool
tears_anyway (const SpelchScene *scene, SpelchSide side)
{
  const SpelchEdge *worst = spelch_plan_worst (&scene->plan, side);
  return worst != NULL && worst->grade >= 2;
}

/* The range a window's words tell of. */
static const SpelchRange *
told_range (const SpelchRange *just, const SpelchRange *sure)
{
  return sure->empty ? just : sure;
}

/* Inches as decimals beside a board, and so beside passes, whose thickness is no fraction. That doesn't
 * change while a pass is dragged. */
static SpelchNumbers
numbers_of (const SpelchScene *scene)
{
  SpelchNumbers numbers = scene->view.numbers;
  g_autofree char *thickness = spelch_words_length (&numbers, scene->plan.thickness);
  if (strchr (thickness, numbers.decimal_sign) != NULL)
    numbers.inch_style = SPELCH_INCH_DECIMAL;
  return numbers;
}

/* Where the window begins, in words. @format: for a depth; @always: when the face is clean from the top down.
 * @deeper: the words of the other window, which begins deeper and so stand further into the board; or NULL.
 */
static void
lay_out_window (SpelchScene *scene, SpelchLabelId id, SpelchSide side, const SpelchRange *range,
                const char *format, const char *always, const SpelchLabel *deeper)
{
  g_autofree char *depth = NULL, *from = NULL;
  double x = scene->frame.left + 5, reach = 60 * scene->view.text;
  double room = scene->frame.corner.x + scene->frame.corner.width - x - 6;
  SpelchLabel *label;
  SpelchRect outer;

  if (range->empty || (range->from < 0.05 && tears_anyway (scene, side)))
    return;
  SpelchNumbers numbers = numbers_of (scene);
  depth = spelch_words_at_least (&numbers, range->from);
  from = spelch_label_unbroken (depth);
  label = spelch_scene_label (scene, id, SPELCH_LAYER_STILL,
                              range->from < 0.05 ? g_strdup (always) : g_strdup_printf (format, from),
                              SMALL_SIZE, SPELCH_LETTERS_STRONG, MAX (room, 70 * scene->view.text),
                              PANGO_ALIGN_LEFT, &scene->palette->ink);
  label->pad = 3;
  outer = spelch_label_outer (label);
  /* One word under another is worse than none: the band tells it too. */
  if (!scene->view.on_paper && (!spelch_label_in_lines (label->layout, 2) || label->box.width > room))
    {
      spelch_scene_drop_label (scene, id);
      return;
    }
  outer.x = x;
  /* From the face on: inside the board, so that the line of the face stays in sight. */
  outer.y = spelch_scene_y (scene, MAX (range->from, 0)) - outer.height / 2;
  if (range->from < 0.05)
    outer.y += (outer.height / 2 + 2) * scene->frame.turn;
  double high = 0, low = scene->view.height;
  if (deeper != NULL && deeper->layout != NULL && scene->frame.turn > 0)
    low = spelch_label_outer (deeper).y;
  else if (deeper != NULL && deeper->layout != NULL)
    high = spelch_label_outer (deeper).y + spelch_label_outer (deeper).height;
  if (!slide_in_board (scene, &outer, reach, high, low))
    {
      spelch_scene_drop_label (scene, id);
      return;
    }
  label->box.x = outer.x + label->pad;
  label->box.y = outer.y + label->pad;
}

/* Why a window is empty, under the face's name, in a corner of its own. Notes stand one after another away
 * from that corner: @from is where the next one begins. */
static void
lay_out_note (SpelchScene *scene, SpelchLabelId id, SpelchSide side, double *from)
{
  SpelchRect room = scene->frame.notes;
  g_autofree char *name = spelch_scene_face_name (scene, side);
  g_autofree char *why = spelch_words_window (&scene->plan, side, &scene->view.numbers);
  SpelchLabel *label;

  if (room.width <= 0)
    return;
  label
      = spelch_scene_label (scene, id, SPELCH_LAYER_STILL, g_strdup_printf ("%s\n%s", name, why), SMALL_SIZE,
                            SPELCH_LETTERS_TITLE, room.width, PANGO_ALIGN_LEFT, &scene->palette->ink);
  label->box.x = room.x;
  label->box.y = scene->frame.turn > 0 ? room.y + *from : room.y + room.height - *from - label->box.height;
  *from += label->box.height + 6 * scene->view.text;
  if (*from > room.height)
    spelch_scene_drop_label (scene, id);
  spelch_placer_take (&scene->placer, label->box);
}

static void
lay_out_notes (SpelchScene *scene)
{
  const SpelchWindows *w = &scene->plan.windows;
  double from = 0;

  if (w->robust.first_pass.empty)
    lay_out_note (scene, SPELCH_LABEL_FIRST_NOTE, SPELCH_SIDE_MOTOR, &from);
  if (w->far_applies && w->robust.last_tip.empty)
    lay_out_note (scene, SPELCH_LABEL_LAST_NOTE, SPELCH_SIDE_FAR, &from);
}

static void
lay_out_first (SpelchScene *scene, const SpelchRange *range, const SpelchLabel *deeper)
{
  /* Translators: the depth from which the first, or last, pass leaves its face clean. */
  lay_out_window (scene, SPELCH_LABEL_FIRST_WINDOW, SPELCH_SIDE_MOTOR, range, _ ("first pass from %s"),
                  _ ("first pass at any depth"), deeper);
}

static void
lay_out_last (SpelchScene *scene, const SpelchRange *range, const SpelchLabel *deeper)
{
  lay_out_window (scene, SPELCH_LABEL_LAST_WINDOW, SPELCH_SIDE_FAR, range, _ ("last pass from %s"),
                  _ ("last pass at any depth"), deeper);
}

/* The deeper one first, so that where both want the same place they stand in the order of their depths. */
static void
lay_out_both (SpelchScene *scene)
{
  const SpelchWindows *w = &scene->plan.windows;
  const SpelchRange *first = told_range (&w->nominal.first_pass, &w->robust.first_pass);
  const SpelchRange *last = told_range (&w->nominal.last_tip, &w->robust.last_tip);
  bool last_is_deeper = w->far_applies && (first->empty || last->from >= first->from);
  if (last_is_deeper)
    lay_out_last (scene, last, NULL);
  lay_out_first (scene, first, last_is_deeper ? &scene->labels[SPELCH_LABEL_LAST_WINDOW] : NULL);
  if (w->far_applies && !last_is_deeper)
    lay_out_last (scene, last, &scene->labels[SPELCH_LABEL_FIRST_WINDOW]);
}

void
spelch_scene_lay_out_windows (SpelchScene *scene)
{
  if (scene->view.asking || scene->view.without_windows)
    return;
  spelch_scene_take_faces (scene);
  /* A page tells that beside the verdicts. */
  if (!scene->view.on_paper)
    lay_out_notes (scene);
  lay_out_both (scene);
}
