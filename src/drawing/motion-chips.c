/* SPDX-License-Identifier: GPL-3.0-or-later
 *
 * Chips as they are drawn: crescents as thick as the plan's thickest chip, enlarged by a factor that the
 * picture states. Which shear sends one shows in its outline, and in where it goes.
 */
#include "drawing/motion-scene-private.h"

#include <math.h>

#define CHIP_LONG  0.28 /* of the bit's diameter, within these units: not to scale */
#define CHIP_LEAST 6.0
#define CHIP_MOST  12.0
#define CURL       0.3 /* of the length */
#define OUTLINE    0.9

/* The angle at which a chip lies; one that is left behind lies flatter, one in the air tumbles. */
static double
lies_at (const SpelchMotionChip *chip)
{
  double lean = ((chip->seed * 37 % 100) / 100.0 - 0.5) * 1.6;

  if (chip->rests)
    return lean * 0.5;
  return chip->depth < 0 ? lean * 2 - chip->depth * 0.5 : lean;
}

/* A crescent @thick at its middle. */
static void
add_chip (cairo_t *cr, double x, double y, double angle, double length, double thick)
{
  double half = length / 2, rise = CURL * length, c = cos (angle), s = sin (angle);

#define AT(u, v) x + (u)*c - (v)*s, y + (u)*s + (v)*c
  cairo_move_to (cr, AT (-half, rise / 2));
  cairo_curve_to (cr, AT (-half / 3, -rise), AT (half / 3, -rise), AT (half, rise / 2));
  cairo_curve_to (cr, AT (half / 3, -rise + thick * 4 / 3), AT (-half / 3, -rise + thick * 4 / 3),
                  AT (-half, rise / 2));
#undef AT
  cairo_close_path (cr);
}

static bool
is_seen (const SpelchMotionScene *scene, const SpelchMotionChip *chip)
{
  return chip->in_front || fabs (chip->across) > scene->pass->force.flutes.diameter / 2;
}

static void
paint (const SpelchMotionScene *scene, cairo_t *cr, int hand, double opacity)
{
  const SpelchPalette *p = scene->side->palette;

  spelch_colour_set (cr, &p->long_grain, opacity);
  cairo_fill_preserve (cr);
  spelch_colour_set (cr, hand > 0 ? &p->up_ink : hand < 0 ? &p->down_ink : &p->ink, opacity);
  cairo_stroke (cr);
}

void
spelch_motion_draw_chips (const SpelchMotionScene *scene, cairo_t *cr, const SpelchMotionFrame *frame,
                          double opacity)
{
  double scale = scene->side->frame.scale;
  double length = CLAMP (CHIP_LONG * scene->side->plan.flutes.diameter * scale, CHIP_LEAST, CHIP_MOST);
  double thick = scene->pass->chip_max * scale * scene->enlarged[0];

  cairo_save (cr);
  cairo_set_line_width (cr, OUTLINE);
  cairo_set_line_join (cr, CAIRO_LINE_JOIN_ROUND);
  for (int hand = -1; hand <= 1; hand++)
    for (int fading = 0; fading < 2; fading++)
      {
        /* Those that are wholly there are painted at once. */
        for (guint i = 0; i < frame->n_chips; i++)
          {
            const SpelchMotionChip *chip = &frame->chips[i];
            double x, y;

            if (chip->hand != hand || (chip->strength < 0.999) != fading || !is_seen (scene, chip))
              continue;
            spelch_motion_scene_chip (scene, chip, &x, &y);
            add_chip (cr, x, y, lies_at (chip), length, MAX (thick, 0.5));
            if (fading)
              paint (scene, cr, hand, opacity * chip->strength);
          }
        if (!fading)
          paint (scene, cr, hand, opacity);
      }
  cairo_restore (cr);
}
