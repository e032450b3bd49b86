/* SPDX-License-Identifier: GPL-3.0-or-later
 *
 * The drawing in sentences, in the order in which one would look at it: what lies where, the bit, its shear,
 * the edges.
 */
#include "drawing/scene-private.h"

#include <glib/gi18n-lib.h>

/* Adds a sentence and a space; takes @sentence. */
static void
say (GString *text, char *sentence)
{
  if (sentence != NULL && *sentence != '\0')
    {
      if (text->len > 0)
        g_string_append_c (text, ' ');
      g_string_append (text, sentence);
    }
  g_free (sentence);
}

static void
say_setting (GString *text, const SpelchScene *scene)
{
  say (text, g_strdup_printf (_ ("Side view of the cut “%s”, seen along the feed, drawn to one scale."),
                              scene->cut.name));
  say (text, g_strdup (scene->setting));
  say (text, g_strdup_printf (g_dngettext (GETTEXT_PACKAGE, "The board has %u layer.",
                                           "The board has %u layers.", scene->board.n_layers),
                              scene->board.n_layers));
}

static void
say_pass (GString *text, const SpelchScene *scene)
{
  g_autofree char *depth = spelch_words_length (&scene->view.numbers, spelch_scene_shown_depth (scene));

  if (scene->opening.n == 0)
    return;
  say (text, g_strdup_printf (_ ("Pass %u of %u is shown: the tip stands %s below the motor-side face."),
                              scene->shown + 1, scene->opening.n, depth));
}

static void
say_shear (GString *text, const SpelchScene *scene)
{
  SpelchZone zones[3];
  int n = spelch_bit_zones (&scene->plan.flutes, zones);

  for (int i = 0; i < n; i++)
    {
      g_autofree char *from = spelch_scene_length (scene, zones[i].from),
                      *to = spelch_scene_length (scene, zones[i].to);

      switch (zones[i].hand)
        {
        case SPELCH_SHEAR_UP:
          say (text, g_strdup_printf (_ ("From %s to %s above the tip the edges shear up, toward the motor, "
                                         "and lift fibres out."),
                                      from, to));
          break;
        case SPELCH_SHEAR_DOWN:
          say (text, g_strdup_printf (_ ("From %s to %s above the tip the edges shear down, away from the "
                                         "motor, and press fibres in."),
                                      from, to));
          break;
        case SPELCH_SHEAR_OVERLAP:
          say (text, g_strdup_printf (_ ("From %s to %s above the tip edges of both hands cut."), from, to));
          break;
        case SPELCH_SHEAR_NEUTRAL:
        default:
          say (text, g_strdup (_ ("The edges are straight: they neither lift nor press.")));
          break;
        }
    }
}

static void
say_face (GString *text, const SpelchScene *scene, SpelchSide side)
{
  const SpelchEdge *edge = spelch_plan_worst (&scene->plan, side);

  if (edge == NULL)
    {
      say (text, g_strdup_printf (_ ("%s: not cut."), scene->faces[side]));
      return;
    }
  say (text, g_strdup_printf (_ ("%s: %s."), scene->faces[side],
                              spelch_words_grade (edge->grade, spelch_plan_facing (&scene->plan, side))));
  if (side == SPELCH_SIDE_MOTOR || scene->plan.windows.far_applies)
    say (text, spelch_words_window (&scene->plan, side, &scene->view.numbers));
}

char *
spelch_scene_describe (const SpelchScene *scene)
{
  GString *text = g_string_new (NULL);

  say_setting (text, scene);
  say_pass (text, scene);
  say_shear (text, scene);
  for (int side = SPELCH_SIDE_MOTOR; !scene->view.asking && side <= SPELCH_SIDE_FAR; side++)
    say_face (text, scene, (SpelchSide)side);
  return g_string_free (text, FALSE);
}
