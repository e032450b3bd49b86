/* SPDX-License-Identifier: GPL-3.0-or-later
 *
 * Keys of layers: a hash over everything that a layer's picture shows, and nothing else.
 */
#include "drawing/scene-private.h"

#include <string.h>

/* FNV-1a, 64 bits. */
typedef guint64 Hash;

static void
add_bytes (Hash *hash, const void *data, gsize n)
{
  const guchar *bytes = data;

  for (gsize i = 0; i < n; i++)
    *hash = (*hash ^ bytes[i]) * G_GUINT64_CONSTANT (1099511628211);
}

static void
add_number (Hash *hash, double value)
{
  double plain = value == 0 ? 0 : value; /* -0 and 0 look alike */

  add_bytes (hash, &plain, sizeof plain);
}

static void
add_numbers (Hash *hash, const double *values, guint n)
{
  for (guint i = 0; i < n; i++)
    add_number (hash, values[i]);
}

static void
add_text (Hash *hash, const char *text)
{
  add_bytes (hash, text != NULL ? text : "", text != NULL ? strlen (text) + 1 : 1);
}

static void
add_rect (Hash *hash, SpelchRect rect)
{
  add_numbers (hash, (const double[]){ rect.x, rect.y, rect.width, rect.height }, 4);
}

static void
add_labels (Hash *hash, const SpelchScene *scene, SpelchSceneLayer layer)
{
  for (guint i = 0; i < SPELCH_N_LABELS; i++)
    if (scene->labels[i].layout != NULL && scene->labels[i].layer == layer)
      {
        add_number (hash, i);
        add_text (hash, pango_layout_get_text (scene->labels[i].layout));
        add_rect (hash, scene->labels[i].box);
      }
}

static void
add_view (Hash *hash, const SpelchScene *scene)
{
  const SpelchView *view = &scene->view;

  add_numbers (hash, (const double[]){ view->text, view->look, scene->frame.scale, scene->frame.turn }, 4);
  add_text (hash, view->family);
}

static void
add_flutes (Hash *hash, const SpelchFlutes *f)
{
  add_numbers (hash,
               (const double[]){ f->diameter, f->helix, f->turn_over, f->overlap, f->length, f->edges_up,
                                 f->edges_down },
               7);
}

static void
add_range (Hash *hash, const SpelchRange *range)
{
  add_number (hash, range->empty);
  if (!range->empty)
    add_numbers (hash, (const double[]){ range->from, range->to }, 2);
}

static void
add_still (Hash *hash, const SpelchScene *scene)
{
  const SpelchFrame *f = &scene->frame;
  const SpelchWindows *w = &scene->plan.windows;
  const SpelchNumbers *numbers = &scene->view.numbers;

  add_numbers (hash,
               (const double[]){ scene->view.width, scene->view.height, f->origin_x, f->near_y, f->far_y,
                                 f->board_left, f->board_right, f->ends_left, f->ends_right, f->near_rest,
                                 f->far_rest, f->backer, f->throat, f->gap, f->rule_mm },
               15);
  if (scene->grooved)
    add_numbers (hash, (const double[]){ scene->opening.left, scene->opening.right }, 2);
  add_numbers (
      hash,
      (const double[]){ numbers->unit, numbers->inch_style, numbers->decimal_sign, scene->plan.through }, 4);
  for (guint i = 0; i < scene->board.n_layers; i++)
    {
      const SpelchLayer *layer = &scene->board.layers[i];

      add_numbers (hash,
                   (const double[]){ layer->thickness.mm, layer->material, layer->grain, layer->veneer,
                                     scene->layer_path[i] },
                   5);
    }
  add_number (hash, scene->view.asking);
  add_range (hash, &w->nominal.first_pass);
  add_range (hash, &w->robust.first_pass);
  add_number (hash, w->far_applies);
  add_range (hash, &w->nominal.last_tip);
  add_range (hash, &w->robust.last_tip);
}

static void
add_bit (Hash *hash, const SpelchScene *scene)
{
  const SpelchBitShape *s = &scene->shape;

  add_flutes (hash, &s->flutes);
  add_numbers (hash,
               (const double[]){ s->shank, s->neck, s->bearing, s->hollow, s->hollow_width, s->flute_mm,
                                 s->stub, s->collet, s->turned },
               9);
  add_text (hash, pango_layout_get_text (scene->labels[SPELCH_LABEL_MOTOR].layout));
}

/* Opening, passes up to the shown one, and what all of them will take. */
static void
add_opening (Hash *hash, const SpelchScene *scene)
{
  double from, to;
  const SpelchOpening *o = &scene->opening;
  const SpelchFrame *f = &scene->frame;

  add_numbers (hash,
               (const double[]){ o->left, o->right, o->wall_left, o->wall_right, o->shortened, scene->shown,
                                 scene->tip_y },
               7);
  add_numbers (hash,
               (const double[]){ f->origin_x, f->near_y, scene->plan.thickness, scene->plan.flutes.diameter },
               4);
  spelch_opening_all (o, &from, &to);
  add_numbers (hash, (const double[]){ from, to }, 2);
  for (guint i = 0; i < o->n; i++)
    if (i <= scene->shown || i + 1 == o->n)
      add_numbers (
          hash, (const double[]){ o->spans[i].from, o->spans[i].to, o->spans[i].depth, o->spans[i].axis }, 4);
}

static void
add_shear (Hash *hash, const SpelchScene *scene)
{
  add_flutes (hash, &scene->plan.flutes);
  add_rect (hash, scene->chevrons);
  add_numbers (hash,
               (const double[]){ scene->tip_y, scene->axis_x, scene->chevron_x, scene->frame.flute_mm,
                                 scene->frame.near_y, scene->frame.far_y },
               6);
}

static void
add_edges (Hash *hash, const SpelchScene *scene)
{
  add_opening (hash, scene);
  add_numbers (
      hash, (const double[]){ scene->cut.tabs.count, scene->cut.tabs.thickness.mm, scene->plan.through }, 3);
  for (guint i = 0; i < scene->plan.n_edges; i++)
    {
      const SpelchEdge *edge = &scene->plan.edges[i];

      add_numbers (hash, (const double[]){ edge->side, edge->wall, edge->stays, edge->grade }, 4);
    }
  if (scene->board.n_layers > 0)
    add_numbers (hash,
                 (const double[]){ scene->board.layers[0].material,
                                   scene->board.layers[scene->board.n_layers - 1].material },
                 2);
}

static void
add_words (Hash *hash, const SpelchScene *scene)
{
  const SpelchFrame *f = &scene->frame;

  add_numbers (hash,
               (const double[]){ f->bar_x, f->bar_mm, f->foot, f->board_left, f->right, f->near_y, f->far_y },
               7);
  add_numbers (hash,
               (const double[]){ spelch_cut_sees (&scene->cut, SPELCH_FACE_A),
                                 spelch_cut_sees (&scene->cut, SPELCH_FACE_B), scene->plan.near },
               3);
}

static void
add_marks (Hash *hash, const SpelchScene *scene)
{
  if (!scene->view.with_marks)
    return;
  add_numbers (hash, (const double[]){ scene->frame.right, scene->frame.near_y, scene->frame.far_y }, 3);
  for (guint i = 0; i < scene->n_marks; i++)
    {
      const SpelchMark *mark = &scene->marks[i];

      add_text (hash, pango_layout_get_text (mark->layout));
      add_rect (hash, mark->box);
      add_numbers (hash, (const double[]){ mark->kind, mark->x0, mark->x1, mark->y, mark->strong }, 5);
    }
}

guint64
spelch_scene_key (const SpelchScene *scene, SpelchSceneLayer layer)
{
  Hash hash = G_GUINT64_CONSTANT (14695981039346656037);

  add_number (&hash, layer);
  add_view (&hash, scene);
  switch (layer)
    {
    case SPELCH_LAYER_STILL:
      add_still (&hash, scene);
      break;
    case SPELCH_LAYER_KERF:
      add_opening (&hash, scene);
      break;
    case SPELCH_LAYER_BIT:
      add_bit (&hash, scene);
      return hash; /* its label moves with it */
    case SPELCH_LAYER_SHEAR:
      add_shear (&hash, scene);
      break;
    case SPELCH_LAYER_EDGES:
      add_edges (&hash, scene);
      break;
    case SPELCH_LAYER_WORDS:
      add_words (&hash, scene);
      break;
    case SPELCH_LAYER_MARKS:
      add_marks (&hash, scene);
      break;
    case SPELCH_N_LAYERS:
    default:
      break;
    }
  add_labels (&hash, scene, layer);
  return hash;
}
