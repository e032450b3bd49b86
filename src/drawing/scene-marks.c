/* SPDX-License-Identifier: GPL-3.0-or-later
 *
 * Marks: the tip depth of each pass, the overcut, the allowance, the board's thickness. Their places are
 * always laid out, because a window puts its own handles there; they are drawn only when the view asks for
 * it.
 */
#include "drawing/scene-private.h"

#include <glib/gi18n-lib.h>
#include <math.h>

#define MARK_SIZE   12.5
#define MARK_HEIGHT 26.0 /* times the text size */
#define MARK_GAP    3.0
#define DOT_ROOM    25.0 /* left of the words, times the text size */
#define END_ROOM    12.0
#define FROM_WALL   4.0
#define ELBOW       12.0 /* between a mark pushed off its depth and its line */

static SpelchMark *
add_mark (SpelchScene *scene, SpelchMark mark, double depth, const char *text, double size)
{
  mark.y = spelch_scene_y (scene, depth);
  mark.layout = spelch_lettering_set (scene->lettering, text, size,
                                      mark.strong ? SPELCH_LETTERS_STRONG : SPELCH_LETTERS_PLAIN, 0,
                                      PANGO_ALIGN_LEFT);
  spelch_lettering_measure (mark.layout, &mark.box.width, &mark.box.height);
  scene->marks[scene->n_marks] = mark;
  return &scene->marks[scene->n_marks++];
}

SpelchMark *
spelch_scene_add_mark (SpelchScene *scene, SpelchMarkKind kind, double depth, const char *text, double size)
{
  return add_mark (scene, (SpelchMark){ .kind = kind }, depth, text, size);
}

void
spelch_scene_add_pass_mark (SpelchScene *scene, guint pass, const char *depth, double size)
{
  bool last = scene->plan.through && pass + 1 == scene->opening.n;
  SpelchMark mark = { .kind = last ? SPELCH_MARK_OVERCUT : SPELCH_MARK_PASS,
                      .index = last ? 0 : pass + 1,
                      .strong = pass == scene->shown };
  /* Translators: the number of a pass and the depth of the tip in it. */
  g_autofree char *text = g_strdup_printf (_ ("%u · %s"), pass + 1, depth);
  add_mark (scene, mark, scene->plan.passes[pass].tip_mm, text, size);
}

/* The largest allowance of the plan; a held one keeps its mark even at zero, so that it can be dragged back.
 */
static bool
allowance_of (const SpelchScene *scene, double *allowance)
{
  *allowance = 0;
  for (guint i = 0; i < scene->opening.n; i++)
    *allowance = MAX (*allowance, scene->plan.passes[i].side_allowance_mm);
  return *allowance > 0 || scene->cut.held.allowance_held;
}

/* Passes and the allowance share a column at the right. */
static guint
collect (SpelchScene *scene)
{
  double allowance;

  for (guint i = 0; i < scene->opening.n; i++)
    {
      if (scene->view.one_pass && i != scene->shown)
        continue;
      g_autofree char *depth = spelch_words_length (&scene->view.numbers, scene->plan.passes[i].tip_mm);
      spelch_scene_add_pass_mark (scene, i, depth, MARK_SIZE);
    }
  if (scene->opening.n > 0 && !scene->view.one_pass && allowance_of (scene, &allowance))
    {
      g_autofree char *width = spelch_words_length (&scene->view.numbers, allowance);
      /* Translators: %s is a length, left on the walls for a finishing pass. */
      g_autofree char *words = g_strdup_printf (_ ("%s left on"), width);
      spelch_scene_add_mark (scene, SPELCH_MARK_ALLOWANCE, scene->plan.through_depth * 0.5, words, MARK_SIZE);
    }
  return scene->n_marks;
}

/* Marks by height in the picture, as the placer wants them. */
static void
sort_by_y (const SpelchScene *scene, guint *order, guint n)
{
  for (guint i = 0; i < n; i++)
    {
      guint j = i;

      for (; j > 0 && scene->marks[order[j - 1]].y > scene->marks[i].y; j--)
        order[j] = order[j - 1];
      order[j] = i;
    }
}

/* The column ends where the note, or the words beside the collet, begin on the motor's side. */
static void
keep_off_note_and_motor (const SpelchScene *scene, double *highest, double *lowest)
{
  static const SpelchLabelId OTHERS[]
      = { SPELCH_LABEL_FIRST_NOTE, SPELCH_LABEL_LAST_NOTE, SPELCH_LABEL_MOTOR };

  for (guint i = 0; i < G_N_ELEMENTS (OTHERS); i++)
    {
      SpelchRect other = spelch_label_outer (&scene->labels[OTHERS[i]]);

      if (other.height <= 0)
        continue;
      if (scene->frame.turn > 0)
        *highest = MAX (*highest, other.y + other.height + MARK_GAP);
      else
        *lowest = MIN (*lowest, other.y - MARK_GAP);
    }
}

/* A single mark stands right of the board, clear of its edges. In a narrow picture beyond the board's end
 * rather than over the bit. */
static double
beside_bit (const SpelchScene *scene, double x, double width)
{
  const SpelchFrame *f = &scene->frame;
  double clear = f->origin_x + spelch_scene_cut_reach (scene, false) + 6;
  if (scene->view.one_pass)
    return MIN (f->right + 6, scene->view.width - 4 - width);
  if (spelch_scene_narrowness (scene) <= 0)
    return x;
  return MAX (x, MIN (clear, scene->view.width - 4 - width));
}

/* Of the marks in that order the one that is dragged; @n where none of them is. */
static guint
find_dragged (const SpelchScene *scene, const guint *order, guint n)
{
  const SpelchSceneHold *hold = &scene->view.hold;
  guint i = hold->dragged ? 0 : n;
  while (i < n && (scene->marks[order[i]].kind != hold->mark || scene->marks[order[i]].index != hold->index))
    i++;
  return i;
}

static void
place_column (SpelchScene *scene, guint n)
{
  const SpelchFrame *f = &scene->frame;
  guint order[SPELCH_MAX_MARKS], columns[SPELCH_MAX_MARKS];
  double wished[SPELCH_MAX_MARKS], tops[SPELCH_MAX_MARKS];
  double height = MARK_HEIGHT * scene->view.text, width = 0, highest = 4, lowest = f->foot + 4;
  keep_off_note_and_motor (scene, &highest, &lowest);
  sort_by_y (scene, order, n);
  for (guint i = 0; i < n; i++)
    {
      wished[i] = scene->marks[order[i]].y - height / 2;
      width = MAX (width, scene->marks[i].box.width);
    }
  width += (DOT_ROOM + END_ROOM) * scene->view.text;
  guint dragged = find_dragged (scene, order, n);
  if (dragged < n)
    {
      wished[dragged] += scene->view.hold.aside;
      spelch_placer_spread_around (wished, n, dragged, height, MARK_GAP, highest, lowest, tops, columns);
    }
  else
    spelch_placer_spread (wished, n, height, MARK_GAP, highest, lowest, tops, columns);
  for (guint i = 0; i < n; i++)
    {
      SpelchMark *mark = &scene->marks[order[i]];

      double x = f->right - width - columns[i] * (width + 6);
      mark->box = (SpelchRect){ columns[i] == 0 ? beside_bit (scene, x, width) : x, tops[i], width, height };
      spelch_placer_take (&scene->placer, mark->box);
    }
}

double
spelch_scene_wall_x (const SpelchScene *scene, const SpelchMark *mark)
{
  guint i = mark->kind == SPELCH_MARK_PASS ? mark->index - 1 : scene->opening.n - 1;
  double from = scene->opening.spans[i].from, to = scene->opening.spans[i].to;
  const SpelchFrame *f = &scene->frame;

  if (mark->kind == SPELCH_MARK_ALLOWANCE)
    spelch_opening_all (&scene->opening, &from, &to);
  return f->origin_x + f->turn * (f->turn > 0 ? to : from) * f->scale;
}

static void
place_lines (SpelchScene *scene, guint n)
{
  for (guint i = 0; i < n; i++)
    {
      SpelchMark *mark = &scene->marks[i];
      bool level = fabs (mark->box.y + mark->box.height / 2 - mark->y) < mark->box.height / 2 - 4;

      mark->x0 = mark->box.x - (level ? 0 : ELBOW);
      mark->x1 = MIN (spelch_scene_wall_x (scene, mark) + FROM_WALL, mark->x0);
    }
}

static bool
covers_others (const SpelchScene *scene, const SpelchMark *mark)
{
  for (guint i = 0; i < scene->n_marks; i++)
    if (&scene->marks[i] != mark && spelch_rect_overlap (scene->marks[i].box, mark->box))
      return true;
  return false;
}

/* The thickness stands at the far face, right of the board. */
static void
place_thickness (SpelchScene *scene)
{
  const SpelchFrame *f = &scene->frame;
  g_autofree char *thickness = spelch_words_length (&scene->view.numbers, scene->plan.thickness);
  SpelchMark *mark
      = spelch_scene_add_mark (scene, SPELCH_MARK_THICKNESS, scene->plan.thickness, thickness, MARK_SIZE);
  double room = scene->view.width - 4 - (f->right + 6);

  mark->box.height = MARK_HEIGHT * scene->view.text;
  mark->box.width = MIN (mark->box.width + 12, room);
  mark->box.x = f->right + 6;
  mark->box.y = CLAMP (mark->y - mark->box.height / 2, 2, scene->view.height - 2 - mark->box.height);
  /* Where the other marks reach into its column it stands above or below them. */
  if (covers_others (scene, mark))
    spelch_placer_slide (&scene->placer, &mark->box, 2, scene->view.height - 2 - mark->box.height);
  else
    spelch_placer_take (&scene->placer, mark->box);
  mark->x0 = mark->box.x;
  mark->x1 = f->board_right + 1;
}

/* A picture that stands alone says what it shows, where a window has its own words. */
static void
lay_out_heading (SpelchScene *scene)
{
  SpelchRect room = scene->frame.corner;
  SpelchLabel *setting, *heading;

  setting = spelch_scene_label (scene, SPELCH_LABEL_SETTING, SPELCH_LAYER_MARKS, g_strdup (scene->setting),
                                13, SPELCH_LETTERS_PLAIN, MAX (room.width, 60), PANGO_ALIGN_LEFT,
                                &scene->palette->ink);
  setting->box.x = room.x;
  setting->box.y = room.y;
  if (setting->box.height > room.height)
    spelch_scene_drop_label (scene, SPELCH_LABEL_SETTING);
  if (scene->opening.n == 0)
    return;
  heading = spelch_scene_label (scene, SPELCH_LABEL_HEADING, SPELCH_LAYER_MARKS,
                                g_strdup_printf (_ ("Pass %u of %u"), scene->shown + 1, scene->opening.n), 15,
                                SPELCH_LETTERS_STRONG, MAX (room.width, 60), PANGO_ALIGN_LEFT,
                                &scene->palette->ink);
  heading->box.x = room.x;
  heading->box.y = room.y + setting->box.height + (setting->layout != NULL ? 8 * scene->view.text : 0);
  if (heading->box.y + heading->box.height > room.y + room.height)
    spelch_scene_drop_label (scene, SPELCH_LABEL_HEADING);
}

static bool
is_covered (const SpelchScene *scene, SpelchLabelId id)
{
  SpelchRect box = scene->labels[id].box;

  if (id == SPELCH_LABEL_MOTOR)
    return false;
  for (guint i = 0; i < scene->n_marks; i++)
    if (spelch_rect_overlap (box, scene->marks[i].box))
      return true;
  for (guint other = 0; other < id; other++)
    if (scene->labels[other].layout != NULL && spelch_rect_overlap (box, scene->labels[other].box))
      return true;
  return spelch_rect_overlap (box, scene->labels[SPELCH_LABEL_MOTOR].box);
}

/* In a small picture with large letters there isn't room for everything: later labels give way to earlier
 * ones. Marks stay, because they can be moved by hand, and so do the words that belong to the bit's picture.
 */
static void
drop_covered (SpelchScene *scene)
{
  for (guint id = 0; id < SPELCH_N_LABELS; id++)
    if (scene->labels[id].layout != NULL && is_covered (scene, (SpelchLabelId)id))
      spelch_scene_drop_label (scene, (SpelchLabelId)id);
}

void
spelch_scene_lay_out_marks (SpelchScene *scene)
{
  if (scene->view.on_paper)
    spelch_scene_lay_out_dimensions (scene);
  else
    {
      guint n = collect (scene);

      place_column (scene, n);
      place_lines (scene, n);
      spelch_placer_take (&scene->placer, scene->labels[SPELCH_LABEL_MOTOR].box);
      place_thickness (scene);
      if (scene->view.with_marks)
        lay_out_heading (scene);
    }
  drop_covered (scene);
  for (guint id = SPELCH_LABEL_SETTING; id <= SPELCH_LABEL_MOTOR; id++)
    spelch_placer_take (&scene->placer, scene->labels[id].box);
}

/* ---- Drawing ---- */

static void
draw_line (cairo_t *cr, const SpelchScene *scene, const SpelchMark *mark)
{
  static const double DASH[] = { 8, 4 };
  double middle = mark->box.y + mark->box.height / 2;

  spelch_colour_set (cr, &scene->palette->ink, 1.0);
  cairo_set_line_width (cr, 1.2);
  if (mark->kind == SPELCH_MARK_ALLOWANCE)
    cairo_set_line_width (cr, 0.9);
  if (mark->x0 < mark->box.x)
    {
      cairo_move_to (cr, mark->box.x, middle);
      cairo_line_to (cr, mark->x0, mark->y);
      cairo_stroke (cr);
    }
  cairo_move_to (cr, mark->x0, mark->y);
  cairo_line_to (cr, mark->x1, mark->y);
  cairo_set_dash (cr, DASH, 2, 0);
  cairo_stroke (cr);
  cairo_set_dash (cr, NULL, 0, 0);
}

static void
add_pill (cairo_t *cr, SpelchRect r)
{
  double round = r.height / 2;

  cairo_new_sub_path (cr);
  cairo_arc (cr, r.x + r.width - round, r.y + round, round, -M_PI_2, M_PI_2);
  cairo_arc (cr, r.x + round, r.y + round, round, M_PI_2, 1.5 * M_PI);
  cairo_close_path (cr);
}

static void
draw_pill (cairo_t *cr, const SpelchScene *scene, const SpelchMark *mark)
{
  SpelchRect r = { mark->box.x + 0.7, mark->box.y + 0.7, mark->box.width - 1.4, mark->box.height - 1.4 };
  double text = scene->view.text, width, height;

  add_pill (cr, r);
  spelch_colour_set (cr, &scene->palette->label_ground, 1.0);
  cairo_fill_preserve (cr);
  spelch_colour_set (cr, &scene->palette->ink, 1.0);
  cairo_set_line_width (cr, mark->strong ? 1.6 : 1.1);
  cairo_stroke (cr);
  if (mark->kind != SPELCH_MARK_ALLOWANCE)
    {
      cairo_new_sub_path (cr);
      cairo_arc (cr, r.x + 14 * text, r.y + r.height / 2, 4 * text, 0, 2 * M_PI);
      if (mark->strong)
        cairo_fill (cr);
      else
        cairo_stroke (cr);
    }
  spelch_lettering_measure (mark->layout, &width, &height);
  spelch_lettering_draw (cr, mark->layout,
                         mark->kind == SPELCH_MARK_ALLOWANCE ? mark->box.x + (mark->box.width - width) / 2
                                                             : mark->box.x + DOT_ROOM * text,
                         mark->box.y + (mark->box.height - height) / 2, &scene->palette->ink);
}

/* A dimension from face to face. */
static void
draw_thickness (cairo_t *cr, const SpelchScene *scene, const SpelchMark *mark)
{
  const SpelchFrame *f = &scene->frame;
  double x = f->right + 12, end = mark->y - f->turn * mark->box.height / 2, width, height;

  cairo_move_to (cr, f->right + 3, f->near_y);
  cairo_line_to (cr, x + 5, f->near_y);
  cairo_move_to (cr, f->right + 3, f->far_y);
  cairo_line_to (cr, mark->box.x, f->far_y);
  if ((end - f->near_y) * f->turn > 12)
    {
      cairo_move_to (cr, x, f->near_y);
      cairo_line_to (cr, x, end);
      cairo_move_to (cr, x - 3, f->near_y + f->turn * 7);
      cairo_line_to (cr, x, f->near_y + f->turn * 1);
      cairo_line_to (cr, x + 3, f->near_y + f->turn * 7);
    }
  spelch_colour_set (cr, &scene->palette->ink_soft, 1.0);
  cairo_set_line_width (cr, 1.0);
  cairo_stroke (cr);
  spelch_lettering_measure (mark->layout, &width, &height);
  spelch_lettering_draw (cr, mark->layout, mark->box.x + 6, mark->box.y + (mark->box.height - height) / 2,
                         &scene->palette->ink_soft);
}

void
spelch_scene_draw_marks (const SpelchScene *scene, cairo_t *cr)
{
  if (!scene->view.with_marks)
    return;
  if (scene->view.on_paper)
    {
      spelch_scene_draw_dimensions (scene, cr);
      return;
    }
  cairo_save (cr);
  for (guint i = 0; i < scene->n_marks; i++)
    if (scene->marks[i].kind != SPELCH_MARK_THICKNESS)
      draw_line (cr, scene, &scene->marks[i]);
  for (guint i = 0; i < scene->n_marks; i++)
    if (scene->marks[i].kind == SPELCH_MARK_THICKNESS)
      draw_thickness (cr, scene, &scene->marks[i]);
  for (guint i = 0; i < scene->n_marks; i++)
    if (scene->marks[i].kind != SPELCH_MARK_THICKNESS)
      draw_pill (cr, scene, &scene->marks[i]);
  cairo_restore (cr);
  spelch_scene_draw_labels (scene, SPELCH_LAYER_MARKS, cr);
}

SpelchRect
spelch_scene_marks_bounds (const SpelchScene *scene)
{
  SpelchRect all = { 0, 0, 0, 0 };

  if (!scene->view.with_marks)
    return all;
  all = spelch_scene_label_bounds (scene, SPELCH_LAYER_MARKS);
  for (guint i = 0; i < scene->n_marks; i++)
    {
      const SpelchMark *mark = &scene->marks[i];
      double x1 = MIN (mark->x0, mark->x1);

      all = spelch_rect_union (
          all, (SpelchRect){ mark->box.x - 1, mark->box.y - 1, mark->box.width + 2, mark->box.height + 2 });
      all = spelch_rect_union (all, (SpelchRect){ x1 - 1, mark->y - 1, MAX (mark->x0 - x1, 0) + 2, 2 });
      if (mark->kind == SPELCH_MARK_THICKNESS)
        all = spelch_rect_union (all, (SpelchRect){ scene->frame.right + 2, scene->frame.near_y - 1, 18, 2 });
    }
  return all;
}
