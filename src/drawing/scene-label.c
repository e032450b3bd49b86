/* SPDX-License-Identifier: GPL-3.0-or-later
 *
 * Labels of a scene: words with a place and a ground, set once and drawn with their layer.
 */
#include "drawing/scene-private.h"

#include <glib/gi18n-lib.h>
#include <math.h>
#include <string.h>

#define GROUND_OPACITY 0.92
#define GROUND_ROUND   5.0

char *
spelch_scene_length (const SpelchScene *scene, double mm)
{
  const SpelchNumbers *numbers = &scene->view.numbers;
  SpelchLength length = spelch_length_mm (mm);

  return spelch_length_show (&length, numbers->unit, numbers->inch_style, numbers->decimal_sign);
}

char *
spelch_label_unbroken (const char *text)
{
  g_auto (GStrv) parts = g_strsplit (text, " ", -1);

  return g_strjoinv ("\xc2\xa0", parts);
}

bool
spelch_label_in_lines (PangoLayout *layout, int lines)
{
  const char *text = pango_layout_get_text (layout);
  for (GSList *at = pango_layout_get_lines_readonly (layout); at != NULL; at = at->next)
    {
      int begins = ((PangoLayoutLine *)at->data)->start_index;
      if (begins > 0 && strchr (" \n-", text[begins - 1]) == NULL)
        return false;
    }
  return pango_layout_get_line_count (layout) <= lines;
}

SpelchLabel *
spelch_scene_label (SpelchScene *scene, SpelchLabelId id, SpelchSceneLayer layer, char *text, double size,
                    SpelchLetters letters, double wrap, PangoAlignment align, const SpelchColour *colour)
{
  SpelchLabel *label = &scene->labels[id];

  g_clear_object (&label->layout);
  /* Where a broken word would stay, none is: a page looks for a place that has room for it. */
  if (scene->view.on_paper && wrap > 0)
    wrap = MAX (wrap, ceil (spelch_lettering_longest (scene->lettering, text, size, letters)) + 0.5);
  label->layout = spelch_lettering_set (scene->lettering, text, size, letters, wrap, align);
  label->colour = colour;
  label->layer = layer;
  label->pad = 0;
  label->box = (SpelchRect){ 0, 0, 0, 0 };
  spelch_lettering_measure (label->layout, &label->box.width, &label->box.height);
  g_free (text);
  return label;
}

void
spelch_scene_drop_label (SpelchScene *scene, SpelchLabelId id)
{
  g_clear_object (&scene->labels[id].layout);
  scene->labels[id].box = (SpelchRect){ 0, 0, 0, 0 };
  scene->lost[id] = true;
}

bool
spelch_scene_lost (const SpelchScene *scene, SpelchLabelId id)
{
  return scene->lost[id];
}

SpelchRect
spelch_label_outer (const SpelchLabel *label)
{
  if (label->layout == NULL)
    return (SpelchRect){ 0, 0, 0, 0 };
  return (SpelchRect){ label->box.x - label->pad, label->box.y - label->pad,
                       label->box.width + 2 * label->pad, label->box.height + 2 * label->pad };
}

void
spelch_add_round (cairo_t *cr, SpelchRect r, double radius)
{
  double round = MIN (radius, MIN (r.width, r.height) / 2);

  cairo_new_sub_path (cr);
  cairo_arc (cr, r.x + r.width - round, r.y + round, round, -M_PI_2, 0);
  cairo_arc (cr, r.x + r.width - round, r.y + r.height - round, round, 0, M_PI_2);
  cairo_arc (cr, r.x + round, r.y + r.height - round, round, M_PI_2, M_PI);
  cairo_arc (cr, r.x + round, r.y + round, round, M_PI, 1.5 * M_PI);
  cairo_close_path (cr);
}

static void
draw_ground (cairo_t *cr, const SpelchScene *scene, SpelchRect rect)
{
  spelch_add_round (cr, rect, GROUND_ROUND);
  spelch_colour_set (cr, &scene->palette->label_ground, GROUND_OPACITY);
  cairo_fill (cr);
}

void
spelch_scene_draw_labels (const SpelchScene *scene, SpelchSceneLayer layer, cairo_t *cr)
{
  for (guint i = 0; i < SPELCH_N_LABELS; i++)
    {
      const SpelchLabel *label = &scene->labels[i];

      if (label->layout == NULL || label->layer != layer)
        continue;
      if (label->pad > 0)
        draw_ground (cr, scene, spelch_label_outer (label));
      spelch_lettering_draw (cr, label->layout, label->box.x, label->box.y, label->colour);
    }
}

SpelchRect
spelch_scene_label_bounds (const SpelchScene *scene, SpelchSceneLayer layer)
{
  SpelchRect all = { 0, 0, 0, 0 };

  for (guint i = 0; i < SPELCH_N_LABELS; i++)
    if (scene->labels[i].layout != NULL && scene->labels[i].layer == layer)
      {
        SpelchRect outer = spelch_label_outer (&scene->labels[i]);

        /* Letters may lean a little out of their boxes. */
        all = spelch_rect_union (all,
                                 (SpelchRect){ outer.x - 2, outer.y - 1, outer.width + 4, outer.height + 2 });
      }
  return all;
}

/* The first letter as inside a sentence: names on the drawing begin small, as its other words do. */
static char *
begin_small (const char *text)
{
  gunichar first = g_utf8_get_char_validated (text, -1);
  char letter[8] = "";

  /* German nouns keep theirs: the translator says so by the msgstr of this word. */
  if (first == (gunichar)-1 || first == (gunichar)-2 || first == 0
      || g_strcmp0 (C_ ("face names on the drawing: lower or as-is", "lower"), "lower") != 0)
    return g_strdup (text);
  letter[g_unichar_to_utf8 (g_unichar_tolower (first), letter)] = '\0';
  return g_strconcat (letter, g_utf8_next_char (text), NULL);
}

char *
spelch_scene_face_name (const SpelchScene *scene, SpelchSide side)
{
  return begin_small (scene->faces[side]);
}

char *
spelch_scene_face_short (const SpelchScene *scene, SpelchSide side)
{
  g_autofree char *name = spelch_words_face_alone (&scene->plan, &scene->cut, side);
  return begin_small (name);
}

void
spelch_scene_gather (const SpelchScene *scene, GString *text)
{
  cairo_t *cr = spelch_lettering_gather (text);

  if (scene != NULL)
    spelch_scene_draw (scene, cr);
  cairo_destroy (cr);
}
