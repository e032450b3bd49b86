/* SPDX-License-Identifier: GPL-3.0-or-later
 *
 * How long one frame of a drag takes to lay out and to rasterise at 760 x 668, in processor time, and against
 * painting a plain ground of that size.
 */
#include "../processor-time.h"
#include "scene-kit.h"

#define ROUNDS 300

static double
time_ground (cairo_surface_t *image)
{
  double start = processor_ms ();

  for (int i = 0; i < ROUNDS; i++)
    {
      cairo_t *cr = cairo_create (image);

      cairo_set_source_rgb (cr, 1, 1, 1);
      cairo_paint (cr);
      cairo_destroy (cr);
    }
  return (processor_ms () - start) / ROUNDS;
}

static double
time_layer (const SpelchScene *scene, SpelchSceneLayer layer, cairo_surface_t *image)
{
  double start = processor_ms ();

  for (int i = 0; i < ROUNDS; i++)
    {
      cairo_t *cr = cairo_create (image);

      spelch_scene_draw_layer (scene, layer, cr);
      cairo_destroy (cr);
    }
  return (processor_ms () - start) / ROUNDS;
}

static double
time_layout (Case *c)
{
  double start = processor_ms ();

  for (int i = 0; i < ROUNDS; i++)
    spelch_scene_free (case_scene (c));
  return (processor_ms () - start) / ROUNDS;
}

int
main (void)
{
  static const char *const NAMES[] = { "still", "kerf", "bit", "shear", "edges", "words", "marks" };
  cairo_surface_t *image = cairo_image_surface_create (CAIRO_FORMAT_RGB24, 760, 668);
  g_auto (Case) c = { 0 };
  g_autoptr (SpelchScene) scene = NULL;
  double ground, moving = 0;

  case_demo (&c);
  c.view.with_marks = true;
  c.cut.kept = SPELCH_WALL_BOTH;
  c.cut.held.n_passes = 1;
  c.cut.held.passes[0] = spelch_length_mm (6.0);
  case_plan (&c);
  scene = case_scene (&c);
  time_layer (scene, SPELCH_LAYER_WORDS, image); /* fonts are looked up once */
  ground = time_ground (image);
  g_print ("ground %.3f ms\nlaying out %.3f ms\n", ground, time_layout (&c));
  for (int layer = 0; layer < SPELCH_N_LAYERS; layer++)
    {
      double time = time_layer (scene, (SpelchSceneLayer)layer, image);

      if (layer != SPELCH_LAYER_STILL && layer != SPELCH_LAYER_BIT && layer != SPELCH_LAYER_MARKS)
        moving += time;
      g_print ("%s %.3f ms, %.1f grounds\n", NAMES[layer], time, time / ground);
    }
  g_print ("kerf, shear, edges and words together %.3f ms\n", moving);
  cairo_surface_destroy (image);
  return 0;
}
