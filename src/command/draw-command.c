/* SPDX-License-Identifier: GPL-3.0-or-later
 *
 * spelch draw: the side view of one cut as SVG, PNG or PDF, or a pass of it in slow motion.
 */
#include "command/asked.h"
#include "command/commands.h"

#include "command/picture-file.h"

#include "drawing/film.h"
#include "drawing/poster.h"

#include "files/shop-data.h"

#include <glib/gi18n.h>

#define WIDTH  760
#define HEIGHT 668

static void
draw_scene (cairo_t *cr, gconstpointer scene)
{
  spelch_scene_draw (scene, cr);
}

static int
write_film (const SpelchAsked *asked, const SpelchPart *part, const SpelchCut *cut, const SpelchBit *bit,
            const SpelchPlan *plan, const SpelchView *view)
{
  g_autoptr (GError) error = NULL;
  g_autoptr (SpelchFilm) film = spelch_film_new (spelch_shop_constants (), part, cut, bit, plan,
                                                 view->shown_pass - 1, view, asked->motion, false, &error);
  while (error == NULL && !spelch_film_is_done (film))
    spelch_film_step (film, &error);
  if (error == NULL)
    return SPELCH_EXIT_DONE;
  bool input = g_error_matches (error, SPELCH_FILM_ERROR, SPELCH_FILM_ERROR_INPUT);
  return spelch_command_fail (error->message, input ? SPELCH_EXIT_BAD_INPUT : SPELCH_EXIT_NOT_WRITTEN);
}

static void
draw_poster (cairo_t *cr, gconstpointer poster)
{
  spelch_poster_draw (cr, poster);
}

/* With bits of the starter set, whatever the part has. */
static int
write_poster (const SpelchAsked *asked, const SpelchPart *part, const SpelchCut *cut, SpelchView *view)
{
  SpelchPoster poster = { spelch_shop_constants (), part, cut, { NULL }, view->numbers, view->family };
  guint n = 0;
  const SpelchBit *bits = spelch_shop_bits (&n);
  g_return_val_if_fail (spelch_poster_choose (&poster, bits, n), SPELCH_EXIT_BAD_INPUT);
  view->width = SPELCH_POSTER_WIDTH;
  view->height = SPELCH_POSTER_HEIGHT;
  return spelch_picture_file_write (asked->output, view, draw_poster, &poster);
}

int
spelch_command_draw (int argc, char **argv)
{
  g_auto (SpelchAsked) asked = { 0 };
  g_auto (SpelchQuestions) questions = { 0 };
  int status = SPELCH_EXIT_DONE;
  if (!spelch_asked_open (&asked, "draw", _ ("Draws the side view of one cut to scale."),
                          SPELCH_ASKING_DRAWING, argc, argv, &questions, &status))
    return status;
  const SpelchPart *part = questions.part;
  g_autoptr (GError) error = NULL;
  const SpelchCut *cut = &part->cuts[questions.cuts[0]];
  SpelchView view;
  if (!spelch_picture_file_view (&asked, WIDTH, HEIGHT, &view, &error))
    return spelch_command_fail (error->message, SPELCH_EXIT_BAD_INPUT);
  if (asked.poster && asked.output != NULL)
    return write_poster (&asked, part, cut, &view);
  const SpelchBit *bit = spelch_asked_bit (part, cut);
  if (bit == NULL)
    return spelch_command_fail (_ ("No bit has been chosen for this cut yet: name one with --bit."),
                                SPELCH_EXIT_BAD_INPUT);

  SpelchPlan plan;
  spelch_plan_make (spelch_shop_constants (), part, cut, bit, &plan);
  view.shown_pass = MIN (view.shown_pass, MAX (plan.n_passes, 1));
  if (asked.motion != NULL)
    status = write_film (&asked, part, cut, bit, &plan, &view);
  else
    {
      g_autoptr (SpelchScene) scene = spelch_scene_new (part, cut, bit, &plan, &view);
      status = spelch_picture_file_write (asked.output, &view, draw_scene, scene);
    }
  return status == SPELCH_EXIT_DONE && plan.verdict == SPELCH_VERDICT_DO_NOT_CUT ? SPELCH_EXIT_DO_NOT_CUT
                                                                                 : status;
}
