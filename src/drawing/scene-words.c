/* SPDX-License-Identifier: GPL-3.0-or-later
 *
 * Words that stand still: names of faces and of what the board rests on, the scale bar, the
 * caption. They are placed before anything that moves.
 */
#include "drawing/scene-private.h"

#include <glib/gi18n-lib.h>
#include <math.h>
#include <string.h>

#define NAME_SIZE    12.5
#define SMALL_SIZE   11.5
#define MARK_WIDE    14.0 /* the joiner's face mark */
#define MARK_HIGH    17.0
#define ROW_PAD      6.0
#define BAR_TICK     4.0
#define CORNER_CLEAR 14.0
#define ROW_LEAST    24.0 /* of a strip that holds a name */
#define BESIDE_WALL  8.0  /* between a name and the wall of a through cut */
#define LEAST_PAPER  48.0

/* ---- Names ---- */

/* Whether the face on that side carries the joiner's mark. */
static bool
has_face_mark (const SpelchScene *scene, SpelchSide side)
{
  SpelchFace face = side == SPELCH_SIDE_MOTOR ? scene->plan.near : spelch_face_other (scene->plan.near);

  return spelch_cut_sees (&scene->cut, face);
}

/* +1 when that side's open air is up in the picture. */
static double
up_from (const SpelchScene *scene, SpelchSide side)
{
  return scene->frame.turn * (side == SPELCH_SIDE_MOTOR ? 1 : -1);
}

static double
face_y (const SpelchScene *scene, SpelchSide side)
{
  return side == SPELCH_SIDE_MOTOR ? scene->frame.near_y : scene->frame.far_y;
}

/* From the board's left end to a name. */
static double
name_inset (const SpelchScene *scene)
{
  return scene->view.on_paper ? 6 : 12 - 6 * spelch_scene_narrowness (scene);
}

/* Room for a name: to the chevrons where the bit may come in its way, else to the middle of the board or so.
 */
static double
face_room (const SpelchScene *scene, SpelchSide side)
{
  const SpelchFrame *f = &scene->frame;

  if (f->ends_left && side == SPELCH_SIDE_FAR)
    return f->right - f->board_left - 128 * scene->view.text;
  if (f->ends_left)
    return f->right - MAX (f->board_left, f->origin_x + (f->origin_x - f->corner.x - f->corner.width)) - 24;
  if (side == SPELCH_SIDE_FAR && !scene->plan.through)
    return (f->right - f->left) * 0.6;
  if (side == SPELCH_SIDE_MOTOR && f->near_rest > 0)
    return f->origin_x - f->throat - f->board_left - name_inset (scene);
  /* A page shows the first pass alone. */
  if (side == SPELCH_SIDE_FAR && scene->view.on_paper)
    return f->origin_x + MIN (f->turn * scene->opening.left, f->turn * scene->opening.right) * f->scale
           - f->board_left - 2 * name_inset (scene);
  return f->corner.x + f->corner.width - f->board_left - name_inset (scene);
}

/* Where a name, with its face mark, begins: at the board's left, or at its right when that is where the board
 * is. */
static double
face_x (const SpelchScene *scene, SpelchSide side)
{
  const SpelchFrame *f = &scene->frame;
  const SpelchLabel *label
      = &scene->labels[side == SPELCH_SIDE_MOTOR ? SPELCH_LABEL_NEAR_FACE : SPELCH_LABEL_FAR_FACE];
  double mark = has_face_mark (scene, side) ? MARK_WIDE + 8 : 0;

  /* The last pass's mark stands at the far face's right. */
  double aside = side == SPELCH_SIDE_FAR && scene->plan.through ? 116 * scene->view.text : 12;

  return f->ends_left ? MAX (f->right - aside - label->box.width - mark, f->board_left + 4)
                      : f->board_left + name_inset (scene);
}

SpelchRect
spelch_scene_face (const SpelchScene *scene, SpelchSide side)
{
  const SpelchLabel *label
      = &scene->labels[side == SPELCH_SIDE_MOTOR ? SPELCH_LABEL_NEAR_FACE : SPELCH_LABEL_FAR_FACE];
  double text = scene->view.text, up = up_from (scene, side);
  double mark = has_face_mark (scene, side) ? (MARK_WIDE + 8) : 0;
  SpelchRect taken = label->box;
  taken.x = label->layout != NULL ? taken.x - mark : face_x (scene, side);
  taken.width += mark;
  if (label->layout == NULL)
    taken.y = face_y (scene, side) - up * (MARK_HIGH / 2 + 5) - MARK_HIGH / 2;
  taken.y = MIN (taken.y, face_y (scene, side) - up * (MARK_HIGH / 2 + 5) - MARK_HIGH / 2);
  taken.height = MAX (taken.height, MARK_HIGH + 2) + 2 * (text - 1);
  return taken;
}

/* Room under a tip that has gone right through, up to the wall: nothing of the bit comes there. */
static double
room_below (const SpelchScene *scene)
{
  const SpelchFrame *f = &scene->frame;
  bool left_wall = f->turn > 0 ? scene->opening.wall_left : scene->opening.wall_right;
  if (f->ends_left || !left_wall || f->far_rest + f->backer <= 0)
    return 0;
  return f->origin_x - spelch_scene_cut_reach (scene, true) - BESIDE_WALL - f->board_left
         - name_inset (scene);
}

/* How far below the far face that begins. */
static double
down_below (const SpelchScene *scene)
{
  double tip = scene->plan.through ? MAX (scene->plan.overcut, 0) * scene->frame.scale : 0;
  return MAX (tip + 3, ROW_PAD);
}

/* Sets a name in its room in as many lines as it may have; false where it needs more. It stands @off its
 * face.
 */
static bool
try_face (SpelchScene *scene, SpelchSide side, const char *name, double room, int lines, double off)
{
  const SpelchFrame *f = &scene->frame;
  SpelchLabelId id = side == SPELCH_SIDE_MOTOR ? SPELCH_LABEL_NEAR_FACE : SPELCH_LABEL_FAR_FACE;
  double up = up_from (scene, side), mark = has_face_mark (scene, side) ? (MARK_WIDE + 8) : 0;
  double strip = side == SPELCH_SIDE_FAR ? f->far_rest + f->backer : f->near_rest;
  room -= mark;
  if (room <= 0)
    return false;
  SpelchLabel *label
      = spelch_scene_label (scene, id, SPELCH_LAYER_WORDS, g_strdup (name), NAME_SIZE, SPELCH_LETTERS_STRONG,
                            room, PANGO_ALIGN_LEFT, &scene->palette->ink);
  label->box.x = face_x (scene, side) + mark;
  label->box.y = face_y (scene, side) - up * (off + label->box.height / 2 + 1) - label->box.height / 2;
  SpelchRect taken = f->corner; /* and what may stand over its end */
  taken.y -= CORNER_CLEAR;
  taken.height += 2 * CORNER_CLEAR;
  if (scene->view.corner_taken && spelch_rect_overlap (label->box, taken))
    return false;
  return spelch_label_in_lines (label->layout, lines) && label->box.width <= room + 1
         && (strip < ROW_LEAST * scene->view.text || off + label->box.height + 2 <= strip)
         && label->box.y >= 1;
}

/* In two lines: "show face," and "motor side". */
static char *
broken_name (const char *name)
{
  g_auto (GStrv) parts = g_strsplit (name, ", ", 2);
  return g_strjoinv (",\n", parts);
}

/* Whole in a line or two; else what kind of face it is alone, since the sides can be seen; else the mark
 * only. */
static void
name_face (SpelchScene *scene, SpelchSide side)
{
  g_autofree char *whole = spelch_scene_face_name (scene, side);
  g_autofree char *short_name = spelch_scene_face_short (scene, side);
  g_autofree char *broken = broken_name (whole);
  const char *const names[] = { whole, broken, short_name };
  bool far = side == SPELCH_SIDE_FAR;
  double room = face_room (scene, side), below = far ? room_below (scene) : 0;
  for (guint i = 0; i < G_N_ELEMENTS (names); i++)
    if (try_face (scene, side, names[i], room, names[i] == whole ? 1 : 2, ROW_PAD)
        || (far && try_face (scene, side, names[i], below, names[i] == broken ? 2 : 1, down_below (scene))))
      return;
  spelch_scene_drop_label (scene, far ? SPELCH_LABEL_FAR_FACE : SPELCH_LABEL_NEAR_FACE);
}

/* On a page, whether the end of a base or table stands behind words, where it would run through them. */
static bool
ends_in_strip (const SpelchScene *scene, const SpelchLabel *label)
{
  const SpelchFrame *f = &scene->frame;

  return scene->view.on_paper && f->near_rest > 0
         && label->box.x + label->box.width + 2 > f->origin_x - f->throat;
}

/* A page keeps "face 2" together. */
static char *
name_of (const SpelchScene *scene, SpelchSide side)
{
  char *name = spelch_scene_face_name (scene, side), *gap = strrchr (name, ' ');

  if (!scene->view.on_paper || gap == NULL || !g_ascii_isdigit (gap[1]))
    return name;
  *gap = '\0';
  char *kept = g_strconcat (name, "\u00a0", gap + 1, NULL);
  g_free (name);
  return kept;
}

/* On a page names are short, and have their room. */
static void
name_face_on_paper (SpelchScene *scene, SpelchSide side)
{
  SpelchLabelId id = side == SPELCH_SIDE_MOTOR ? SPELCH_LABEL_NEAR_FACE : SPELCH_LABEL_FAR_FACE;
  double up = up_from (scene, side), mark = has_face_mark (scene, side) ? (MARK_WIDE + 8) : 0;
  SpelchLabel *label = spelch_scene_label (
      scene, id, SPELCH_LAYER_WORDS, name_of (scene, side), NAME_SIZE, SPELCH_LETTERS_STRONG,
      MAX (face_room (scene, side) - mark, LEAST_PAPER * scene->view.text), PANGO_ALIGN_LEFT,
      &scene->palette->ink);
  /* In the air over the far face it stands beyond the last pass's line. */
  double off = side == SPELCH_SIDE_FAR && scene->frame.ends_left && scene->frame.far_rest <= 0
                   ? down_below (scene)
                   : ROW_PAD;
  label->box.x = face_x (scene, side) + mark;
  label->box.y = face_y (scene, side) - up * (off + label->box.height / 2 + 1) - label->box.height / 2;
  if (side == SPELCH_SIDE_MOTOR && ends_in_strip (scene, label))
    label->pad = 1;
}

/* Names stand in the strip that lies against the face, or in the air over it. */
static void
lay_out_face (SpelchScene *scene, SpelchSide side)
{
  if (scene->view.on_paper)
    name_face_on_paper (scene, side);
  else
    name_face (scene, side);
  spelch_placer_take (&scene->placer, spelch_scene_face (scene, side));
}

/* A line across the board that no words may cover. */
static void
take_line (SpelchScene *scene, double y)
{
  const SpelchFrame *f = &scene->frame;
  spelch_placer_take (&scene->placer,
                      (SpelchRect){ f->board_left, y - 1, f->board_right - f->board_left, 2 });
}

/* The end of what lies at a face, @x from the middle of the opening, over a height from that face on. */
static void
take_end (SpelchScene *scene, double x, double y0, double y1)
{
  SpelchRect end = spelch_scene_to_picture (scene, x - 1, y0, x + 1, y1);
  spelch_placer_take (&scene->placer, end);
}

/* Where router base, table, backer and bench end, at the picture's sides and around the opening. */
static void
take_ends_of_rests (SpelchScene *scene)
{
  const SpelchFrame *f = &scene->frame;
  double board = scene->plan.thickness * f->scale, far = board + f->backer + f->far_rest;
  const double sides[] = { f->turn * (f->left - f->origin_x), f->turn * (f->right - f->origin_x) };
  for (guint i = 0; i < G_N_ELEMENTS (sides); i++)
    {
      double way = sides[i] < 0 ? -1 : 1;
      if (f->near_rest > 0)
        {
          take_end (scene, sides[i], -f->near_rest, 0);
          take_end (scene, way * f->throat, -f->near_rest, 0);
        }
      if (far > board)
        take_end (scene, sides[i], board, far);
      if (f->far_rest > 0 && f->gap > 0)
        take_end (scene, way * f->gap, board + f->backer, far);
    }
}

void
spelch_scene_take_faces (SpelchScene *scene)
{
  const SpelchFrame *f = &scene->frame;
  double top = MIN (f->near_y, f->far_y), high = fabs (f->far_y - f->near_y);
  if (scene->view.on_paper)
    return;
  take_line (scene, f->near_y);
  take_line (scene, f->far_y);
  if (f->near_rest > 0)
    take_line (scene, f->near_y - f->turn * f->near_rest);
  if (f->backer > 0)
    take_line (scene, f->far_y + f->turn * f->backer);
  if (f->far_rest > 0)
    take_line (scene, f->far_y + f->turn * (f->backer + f->far_rest));
  take_ends_of_rests (scene);
  spelch_placer_take (&scene->placer, (SpelchRect){ f->board_left - 3, top, 4, high });
  spelch_placer_take (&scene->placer, (SpelchRect){ f->board_right - 1, top, 4, high });
  if (scene->view.with_marks) /* the dimension of the thickness */
    spelch_placer_take (&scene->placer, (SpelchRect){ f->right + 3, f->near_y - 7, 14, 14 });
}

static const char *
near_rest_name (const SpelchScene *scene)
{
  return scene->machine == SPELCH_MACHINE_TABLE ? _ ("router table") : _ ("router base");
}

static const char *
far_rest_name (const SpelchScene *scene)
{
  if (scene->grooved)
    return _ ("spoilboard, cut here before");
  return scene->machine == SPELCH_MACHINE_GANTRY ? _ ("spoilboard") : _ ("bench");
}

/* What lies on the near face is open where the bit goes through. */
static bool
clears_throat (const SpelchScene *scene, const SpelchRect *rect)
{
  const SpelchFrame *f = &scene->frame;
  return rect->x + rect->width <= f->origin_x - f->throat || rect->x >= f->origin_x + f->throat;
}

/* On a page the name of what lies on the motor's side gives way to the chevrons. */
static double
strip_room (const SpelchScene *scene, SpelchLabelId id)
{
  double end = scene->frame.corner.x + scene->frame.corner.width;

  return scene->view.on_paper && id == SPELCH_LABEL_NEAR_REST
             ? MAX (end - scene->frame.left - name_inset (scene), 1)
             : 0;
}

/* A strip's name, on its own row, beyond the row that names the face. */
static void
lay_out_strip (SpelchScene *scene, SpelchLabelId id, const char *name, double y0, double y1, double wished)
{
  SpelchLabel *label
      = spelch_scene_label (scene, id, SPELCH_LAYER_WORDS, g_strdup (name), 12, SPELCH_LETTERS_PLAIN,
                            strip_room (scene, id), PANGO_ALIGN_LEFT, &scene->palette->ink);
  double low = MIN (y0, y1), high = MAX (y0, y1);
  SpelchRect rect = { scene->frame.left + name_inset (scene), wished - label->box.height / 2,
                      label->box.width, label->box.height };

  /* On a page the lines of the dimensions run at the right. */
  for (int i = 0; i < (scene->view.on_paper ? 1 : 2) && high - low >= rect.height; i++)
    {
      rect.x = i == 0 ? rect.x : scene->frame.right - rect.width - name_inset (scene);
      rect.y = wished - rect.height / 2;
      if (id == SPELCH_LABEL_NEAR_REST && !clears_throat (scene, &rect))
        continue;
      if (!spelch_placer_slide (&scene->placer, &rect, low, high - rect.height))
        continue;
      label->box = rect;
      return;
    }
  spelch_scene_drop_label (scene, id);
}

static void
lay_out_strips (SpelchScene *scene)
{
  const SpelchFrame *f = &scene->frame;
  double row = (NAME_SIZE * 1.3 * scene->view.text + 2 * ROW_PAD);

  if (f->near_rest > 0)
    {
      double outer = f->near_y - f->turn * f->near_rest;

      lay_out_strip (scene, SPELCH_LABEL_NEAR_REST, near_rest_name (scene), f->near_y, outer,
                     f->near_y - f->turn * MIN (row + 10 * scene->view.text, f->near_rest - 10));
      if (ends_in_strip (scene, &scene->labels[SPELCH_LABEL_NEAR_REST]))
        scene->labels[SPELCH_LABEL_NEAR_REST].pad = 1;
    }
  if (f->backer > 0)
    lay_out_strip (scene, SPELCH_LABEL_BACKER, _ ("backer board"), f->far_y, f->far_y + f->turn * f->backer,
                   f->far_y + f->turn * MIN (row + 10 * scene->view.text, f->backer - 10));
  if (f->far_rest > 0)
    {
      double begin = f->far_y + f->turn * f->backer;

      lay_out_strip (
          scene, SPELCH_LABEL_FAR_REST, far_rest_name (scene), begin, begin + f->turn * f->far_rest,
          begin
              + f->turn
                    * (f->backer > 0 ? f->far_rest / 2 : MIN (row + 6 * scene->view.text, f->far_rest - 9)));
    }
}

/* ---- Scale bar and caption at the foot ---- */

static void
choose_bar (SpelchScene *scene)
{
  static const double MM[] = { 10, 5, 2, 20, 50, 100 };
  static const double INCH[] = { 12.7, 6.35, 3.175, 25.4, 50.8, 101.6 };
  const double *table = scene->view.numbers.unit == SPELCH_UNIT_INCH ? INCH : MM;
  double most = 0.34 * (scene->frame.right - scene->frame.left), scale = scene->frame.scale;

  scene->frame.bar_mm = table[0];
  for (guint i = 0; i < G_N_ELEMENTS (MM); i++)
    if (table[i] * scale <= most && table[i] * scale >= 40)
      {
        scene->frame.bar_mm = table[i];
        return;
      }
}

static void
lay_out_bar (SpelchScene *scene)
{
  SpelchFrame *f = &scene->frame;
  SpelchLabel *label;
  double y = f->foot + 18 * scene->view.text, bar;

  if (scene->view.on_paper)
    {
      f->bar_x = f->right;
      return;
    }
  choose_bar (scene);
  bar = f->bar_mm * f->scale;
  label = spelch_scene_label (scene, SPELCH_LABEL_SCALE, SPELCH_LAYER_WORDS,
                              spelch_scene_length (scene, f->bar_mm), 12, SPELCH_LETTERS_PLAIN, 0,
                              PANGO_ALIGN_LEFT, &scene->palette->ink_soft);
  f->bar_x = f->right - bar - 8 - label->box.width;
  label->box.x = f->right - label->box.width;
  label->box.y = y - label->box.height / 2;
  spelch_placer_take (&scene->placer, (SpelchRect){ f->bar_x - 4, label->box.y - 2, f->right - f->bar_x + 4,
                                                    label->box.height + 4 });
}

static bool
is_torn (const SpelchScene *scene)
{
  for (guint i = 0; i < scene->plan.n_edges; i++)
    if (scene->plan.edges[i].stays && scene->plan.edges[i].grade >= 2)
      return true;
  return false;
}

static void
lay_out_caption (SpelchScene *scene)
{
  const SpelchFrame *f = &scene->frame;
  double room = f->bar_x - f->left - 20;
  SpelchLabel *label;

  if (scene->view.on_paper || !is_torn (scene) || room < 60)
    return;
  label = spelch_scene_label (scene, SPELCH_LABEL_CAPTION, SPELCH_LAYER_WORDS,
                              g_strdup (_ ("Splinters show the grade, not a length.")), SMALL_SIZE,
                              SPELCH_LETTERS_PLAIN, room, PANGO_ALIGN_LEFT, &scene->palette->ink_soft);
  label->box.x = f->left;
  label->box.y = f->foot + 18 * scene->view.text - label->box.height / 2;
  if (label->box.y + label->box.height > scene->view.height)
    label->box.y = scene->view.height - label->box.height;
  if (label->box.y < f->foot - 8 || !spelch_label_in_lines (label->layout, 2))
    spelch_scene_drop_label (scene, SPELCH_LABEL_CAPTION);
  spelch_placer_take (&scene->placer, label->box);
}

void
spelch_scene_lay_out_words (SpelchScene *scene)
{
  spelch_placer_init (&scene->placer, (SpelchRect){ 2, 2, scene->view.width - 4, scene->view.height - 4 });
  if (!scene->view.corner_unused)
    spelch_placer_take (&scene->placer, scene->frame.corner);
  SpelchRect groove = spelch_scene_groove (scene);
  if (groove.height > 0)
    spelch_placer_take (&scene->placer,
                        spelch_scene_to_picture (scene, groove.x, groove.y, groove.x + groove.width,
                                                 groove.y + groove.height));
  lay_out_bar (scene);
  lay_out_caption (scene);
  lay_out_face (scene, SPELCH_SIDE_MOTOR);
  lay_out_face (scene, SPELCH_SIDE_FAR);
  lay_out_strips (scene);
  spelch_scene_lay_out_windows (scene);
}

/* ---- Drawing ---- */

/* The joiner's mark, its feet on the face. */
static void
add_face_mark (cairo_t *cr, const SpelchScene *scene, SpelchSide side)
{
  double up = up_from (scene, side), x = face_x (scene, side), y = face_y (scene, side) - up * 4;

  if (!has_face_mark (scene, side))
    return;
  cairo_move_to (cr, x, y);
  cairo_line_to (cr, x + MARK_WIDE / 2, y - up * MARK_HIGH);
  cairo_line_to (cr, x + MARK_WIDE, y);
}

static void
draw_bar (cairo_t *cr, const SpelchScene *scene)
{
  const SpelchFrame *f = &scene->frame;
  double y = f->foot + 18 * scene->view.text, end = f->bar_x + f->bar_mm * f->scale;

  cairo_move_to (cr, f->bar_x, y);
  cairo_line_to (cr, end, y);
  cairo_move_to (cr, f->bar_x, y - BAR_TICK);
  cairo_line_to (cr, f->bar_x, y + BAR_TICK);
  cairo_move_to (cr, end, y - BAR_TICK);
  cairo_line_to (cr, end, y + BAR_TICK);
  cairo_set_line_width (cr, 1.4);
  cairo_stroke (cr);
}

void
spelch_scene_draw_words (const SpelchScene *scene, cairo_t *cr)
{
  cairo_save (cr);
  add_face_mark (cr, scene, SPELCH_SIDE_MOTOR);
  add_face_mark (cr, scene, SPELCH_SIDE_FAR);
  cairo_set_line_width (cr, 1.6);
  cairo_set_line_join (cr, CAIRO_LINE_JOIN_MITER);
  spelch_colour_set (cr, &scene->palette->ink, 1.0);
  cairo_stroke (cr);

  if (!scene->view.on_paper)
    draw_bar (cr, scene);
  cairo_restore (cr);
  spelch_scene_draw_labels (scene, SPELCH_LAYER_WORDS, cr);
}

SpelchRect
spelch_scene_words_bounds (const SpelchScene *scene)
{
  const SpelchFrame *f = &scene->frame;
  SpelchRect all = spelch_scene_label_bounds (scene, SPELCH_LAYER_WORDS);
  double y = f->foot + 18 * scene->view.text;

  all = spelch_rect_union (
      all, (SpelchRect){ f->bar_x - 1, y - BAR_TICK - 1, f->bar_mm * f->scale + 2, 2 * BAR_TICK + 2 });
  for (int side = SPELCH_SIDE_MOTOR; side <= SPELCH_SIDE_FAR; side++)
    if (has_face_mark (scene, (SpelchSide)side))
      {
        double top = face_y (scene, (SpelchSide)side)
                     - up_from (scene, (SpelchSide)side) * (4 + MARK_HIGH / 2) - MARK_HIGH / 2;

        all = spelch_rect_union (
            all, (SpelchRect){ face_x (scene, (SpelchSide)side) - 2, top - 4, MARK_WIDE + 4, MARK_HIGH + 8 });
      }
  return all;
}
