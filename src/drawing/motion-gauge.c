/* SPDX-License-Identifier: GPL-3.0-or-later
 *
 * The strip under a side view in slow motion: at its left the bit seen from the motor, with the chip that is
 * being taken; beside it the force along the bit over one turn, with its band, and the instant on it.
 */
#include "drawing/motion-scene-private.h"
#include "plan/words-motion.h"

#include <glib/gi18n-lib.h>
#include <math.h>

#define MARGIN       16.0
#define GAP          26.0
#define TITLE_SIZE   12.0
#define SMALL_SIZE   11.5
#define MARKER       4.5
#define BAND_SHADE   0.16
#define ARC_STEPS    72
#define INSET_SEEN   9.0  /* units that a chip is thick at least, enlarged if need be */
#define CHIP_AREA    0.36 /* radius of the bit, of the inset's height */
#define LEAST_N      0.5  /* the scale of force spans as much at least, either way */
#define LESSER_SHARE 0.22 /* of the greater side of the scale, for the lesser one at least */

static PangoLayout *
set_words (const SpelchMotionScene *scene, char *words, double size, SpelchLetters letters, double wrap,
           PangoAlignment align)
{
  PangoLayout *layout = spelch_lettering_set (scene->side->lettering, words, size, letters, wrap, align);

  g_free (words);
  return layout;
}

static int
enlarged_to (double thickness)
{
  static const int BY[] = { 1, 2, 5, 10, 20, 50, 100 };

  for (guint i = 0; i < G_N_ELEMENTS (BY); i++)
    if (thickness * BY[i] >= INSET_SEEN)
      return BY[i];
  return BY[G_N_ELEMENTS (BY) - 1];
}

static double
inset_radius (const SpelchMotionScene *scene)
{
  return scene->inset.height * CHIP_AREA;
}

/* What isn't to scale, how full the flutes are, how sure the force is. */
static char *
caption_of (const SpelchMotionScene *scene)
{
  g_autofree char *chips = spelch_words_motion_chips (scene->pass);
  g_autofree char *room = spelch_words_motion_room (scene->pass);
  g_autofree char *extent = spelch_words_motion_extent (scene->pass);
  g_autofree char *factor
      = spelch_words_decimal (&scene->side->view.numbers, scene->pass->constants->band_axial, 0);
  g_autofree char *thick
      = scene->enlarged[0] == scene->enlarged[1]
            ? g_strdup_printf (_ ("Chips are drawn %d times as thick as they are."), scene->enlarged[0])
        : scene->enlarged[0] == 1 ? g_strdup_printf (_ ("Chips are as thick as they are in the side view, "
                                                        "and drawn %d times as thick from the motor."),
                                                     scene->enlarged[1])
                                  : g_strdup_printf (_ ("Chips are drawn %d times as thick as they are in "
                                                        "the side view, %d times from the motor."),
                                                     scene->enlarged[0], scene->enlarged[1]);
  g_autofree char *scale = g_strdup_printf (_ ("%s Their length and the board’s rise and fall aren’t to "
                                               "scale. The force may be out by a factor of %s "
                                               "either way."),
                                            thick, factor);
  const char *stop = scene->side->plan.verdict == SPELCH_VERDICT_DO_NOT_CUT
                         ? _ ("Do not cut this as it is set; the plan says why.")
                         : "";
  return g_strdup_printf ("%s%s%s %s %s %s", stop, stop[0] == '\0' ? "" : "\n", chips, room, scale, extent);
}

static double
height_of (PangoLayout *layout)
{
  double width, height;

  spelch_lettering_measure (layout, &width, &height);
  return height;
}

static double
width_of (PangoLayout *layout)
{
  double width, height;

  spelch_lettering_measure (layout, &width, &height);
  return width;
}

void
spelch_motion_lay_out_gauge (SpelchMotionScene *scene)
{
  const SpelchRect *g = &scene->gauge;
  const SpelchNumbers *numbers = &scene->side->view.numbers;
  double text = scene->side->view.text, room = g->width - 2 * MARGIN, words, left;
  bool stop = scene->side->plan.verdict == SPELCH_VERDICT_DO_NOT_CUT;
  g_autofree char *mean = spelch_words_motion_force (&scene->pass->axial, scene->machine, numbers);
  g_autofree char *thick = spelch_words_exactly (numbers, scene->pass->chip_max);
  double side = MIN (g->height - 74 * text, g->width * 0.24);

  scene->titles[0] = set_words (scene, g_strdup_printf (_ ("From the motor: chip %s"), thick), TITLE_SIZE,
                                SPELCH_LETTERS_STRONG, 0, PANGO_ALIGN_LEFT);
  /* Translators: the words after the colon say what the force does, "lifts 3.1 N (1.5 to 6.2)". */
  const char *title = scene->motion->n_passes > 1 ? _ ("Force over a turn of this pass, mean: %s")
                                                  : _ ("Force over a turn, mean: %s");
  scene->titles[1] = set_words (scene, g_strdup_printf (title, mean), TITLE_SIZE, SPELCH_LETTERS_STRONG, 0,
                                PANGO_ALIGN_LEFT);
  for (int i = 0; i < 2; i++)
    scene->ways[i] = set_words (scene, spelch_words_motion_way (i == 0, scene->machine), SMALL_SIZE,
                                SPELCH_LETTERS_PLAIN, 84 * text, PANGO_ALIGN_RIGHT);
  scene->row = g->y + 10 * text + height_of (scene->titles[0]) + 5 * text;
  scene->inset = (SpelchRect){ MARGIN, scene->row, MAX (side * 1.5, 60), MAX (side, 40) };
  scene->enlarged[1] = enlarged_to (scene->pass->chip_max * inset_radius (scene)
                                    / MAX (scene->pass->force.flutes.diameter / 2, 0.1));
  scene->caption = set_words (scene, caption_of (scene), SMALL_SIZE,
                              stop ? SPELCH_LETTERS_TITLE : SPELCH_LETTERS_PLAIN, room, PANGO_ALIGN_LEFT);
  words = MAX (width_of (scene->ways[0]), width_of (scene->ways[1]));
  left = MAX (scene->inset.x + scene->inset.width, MARGIN + width_of (scene->titles[0])) + GAP;
  scene->trace
      = (SpelchRect){ left + words + 8, scene->row, MAX (g->width - MARGIN - left - words - 8, 40),
                      MAX (g->y + g->height - height_of (scene->caption) - 12 * text - scene->row, 30) };
  scene->inset.height = MIN (scene->inset.height, scene->trace.height);
  scene->readout
      = (SpelchRect){ left, g->y + 10 * text, g->width - MARGIN - left, height_of (scene->titles[1]) };
}

void
spelch_motion_clear_gauge (SpelchMotionScene *scene)
{
  for (int i = 0; i < 2; i++)
    {
      g_clear_object (&scene->titles[i]);
      g_clear_object (&scene->ways[i]);
    }
  g_clear_object (&scene->caption);
}

/* ---- The trace ---- */

static double
most_of (const SpelchMotionScene *scene)
{
  return MAX (MAX (scene->motion->most, LEAST_N), -scene->motion->least * LESSER_SHARE);
}

static double
least_of (const SpelchMotionScene *scene)
{
  return MIN (MIN (scene->motion->least, -LEAST_N), -scene->motion->most * LESSER_SHARE);
}

void
spelch_motion_scene_marker (const SpelchMotionScene *scene, double turned, double force, double *x, double *y)
{
  const SpelchRect *t = &scene->trace;
  double turn = turned / (2 * M_PI), most = most_of (scene), least = least_of (scene);

  turn -= turned > 0 ? ceil (turn) - 1 : 0; /* the end of a turn is at its end */
  *x = t->x + CLAMP (turn, 0, 1) * t->width;
  *y = t->y + (most - CLAMP (force, least, most)) / (most - least) * t->height;
}

static void
add_line (const SpelchMotionScene *scene, cairo_t *cr, int which, bool back)
{
  double factor = scene->pass->constants->band_axial;

  for (int j = 0; j < SPELCH_TRACE_POINTS; j++)
    {
      int i = back ? SPELCH_TRACE_POINTS - 1 - j : j;
      double mid = scene->pass->trace[i], x, y;
      double force = which == 0 ? mid : which > 0 ? mid * factor : mid / factor;

      spelch_motion_scene_marker (scene, 2 * M_PI * i / (SPELCH_TRACE_POINTS - 1), force, &x, &y);
      cairo_line_to (cr, x, y);
    }
}

static void
draw_scale (const SpelchMotionScene *scene, cairo_t *cr)
{
  const SpelchPalette *p = scene->side->palette;
  const SpelchRect *t = &scene->trace;
  double x, zero;

  spelch_motion_scene_marker (scene, 0, 0, &x, &zero);
  spelch_colour_set (cr, &p->line_soft, 1.0);
  cairo_set_line_width (cr, 1.0);
  for (int k = 0; k <= scene->pass->teeth; k++)
    {
      double at = round (t->x + t->width * k / scene->pass->teeth) - 0.5;

      cairo_move_to (cr, at, t->y);
      cairo_line_to (cr, at, t->y + t->height);
    }
  cairo_stroke (cr);
  spelch_colour_set (cr, &p->ink_soft, 1.0);
  cairo_move_to (cr, t->x, round (zero) + 0.5);
  cairo_line_to (cr, t->x + t->width, round (zero) + 0.5);
  cairo_stroke (cr);
}

/* What is over the zero line and what is under it, as far as each has room. */
static void
draw_ways (const SpelchMotionScene *scene, cairo_t *cr)
{
  const SpelchRect *t = &scene->trace;
  const SpelchColour *ink = &scene->side->palette->ink_soft;
  double x, zero, high[2] = { height_of (scene->ways[0]), height_of (scene->ways[1]) };

  spelch_motion_scene_marker (scene, 0, 0, &x, &zero);
  spelch_lettering_draw (cr, scene->ways[0], t->x - 8 - width_of (scene->ways[0]),
                         MIN ((t->y + zero) / 2 - high[0] / 2, zero - high[0]), ink);
  spelch_lettering_draw (cr, scene->ways[1], t->x - 8 - width_of (scene->ways[1]),
                         MAX ((t->y + t->height + zero) / 2 - high[1] / 2, zero), ink);
}

static void
draw_trace (const SpelchMotionScene *scene, cairo_t *cr)
{
  const SpelchPalette *p = scene->side->palette;
  static const double DASH[] = { 5, 4 };
  double x, y;

  draw_scale (scene, cr);
  cairo_new_path (cr);
  add_line (scene, cr, 1, false);
  add_line (scene, cr, -1, true);
  cairo_close_path (cr);
  spelch_colour_set (cr, &p->ink, BAND_SHADE);
  cairo_fill (cr);
  spelch_motion_scene_marker (scene, 0, scene->pass->axial.mid, &x, &y);
  cairo_move_to (cr, scene->trace.x, y);
  cairo_line_to (cr, scene->trace.x + scene->trace.width, y);
  spelch_colour_set (cr, &p->ink_soft, 1.0);
  cairo_set_dash (cr, DASH, 2, 0);
  cairo_stroke (cr);
  cairo_set_dash (cr, NULL, 0, 0);
  add_line (scene, cr, 0, false);
  spelch_colour_set (cr, &p->ink, 1.0);
  cairo_set_line_width (cr, 1.8);
  cairo_set_line_join (cr, CAIRO_LINE_JOIN_ROUND);
  cairo_stroke (cr);
  draw_ways (scene, cr);
}

void
spelch_motion_draw_gauge_still (SpelchMotionScene *scene, cairo_t *cr)
{
  const SpelchPalette *p = scene->side->palette;
  const SpelchRect *g = &scene->gauge;

  cairo_save (cr);
  spelch_colour_set (cr, &p->ground, 1.0);
  cairo_rectangle (cr, g->x, g->y, g->width, g->height);
  cairo_fill (cr);
  spelch_colour_set (cr, &p->line_soft, 1.0);
  cairo_rectangle (cr, g->x, g->y, g->width, 1);
  cairo_fill (cr);
  spelch_lettering_draw (cr, scene->titles[0], MARGIN, scene->readout.y, &p->ink);
  spelch_lettering_draw (cr, scene->titles[1], scene->readout.x, scene->readout.y, &p->ink);
  spelch_lettering_draw (cr, scene->caption, MARGIN, g->y + g->height - height_of (scene->caption) - 6,
                         &p->ink_soft);
  draw_trace (scene, cr);
  cairo_restore (cr);
}

/* ---- From the motor ---- */

/* How thick the wood is that the teeth have left at @angle since one of them passed it last, mm; on average
 * over time when @blurred. */
static double
left_standing (const SpelchMotionScene *scene, const SpelchMotionFrame *frame, double angle, bool blurred)
{
  double pitch = 2 * M_PI / MAX (frame->n_teeth, 1u), since = pitch;
  double feed = scene->pass->feed_per_tooth * scene->pass->teeth / (double)MAX (frame->n_teeth, 1u);

  for (guint k = 0; k < frame->n_teeth; k++)
    {
      double past = frame->teeth[k].angle - angle;

      since = MIN (since, past < 0 ? past + 2 * M_PI : past);
    }
  return feed * sin (angle) * (blurred ? 0.5 : since / pitch);
}

typedef struct
{
  double x, y, radius, per_mm, from, to;
} FromMotor;

static FromMotor
from_motor (const SpelchMotionScene *scene)
{
  const SpelchForceCase *force = &scene->pass->force;
  double share = CLAMP (force->engaged / force->flutes.diameter, 0, 1), reach = acos (1 - 2 * share);
  double radius = inset_radius (scene);
  FromMotor m = { .x = scene->inset.x + scene->inset.width / 2,
                  .y = scene->inset.y + scene->inset.height * 0.56,
                  .radius = radius,
                  .per_mm = radius / MAX (force->flutes.diameter / 2, 0.1) };

  m.from = force->climb ? M_PI - reach : 0;
  m.to = m.from + reach;
  return m;
}

/* The feed is upwards; 0 is at the left. */
static void
point_at (const FromMotor *m, double angle, double radius, double *x, double *y)
{
  *x = m->x - radius * cos (angle);
  *y = m->y - radius * sin (angle);
}

/* Wood ahead of the bit and beside its kerf, as far as it is cut. */
static void
draw_wood (const SpelchMotionScene *scene, cairo_t *cr, const FromMotor *m)
{
  const SpelchRect *i = &scene->inset;
  const SpelchPalette *p = scene->side->palette;
  double share = CLAMP (scene->pass->force.engaged / scene->pass->force.flutes.diameter, 0, 1);
  bool slot = share > 0.999;
  double left = i->x, right = i->x + i->width;

  if (!slot && scene->pass->force.climb)
    left = m->x + m->radius - 2 * m->radius * share;
  else if (!slot)
    right = m->x - m->radius + 2 * m->radius * share;
  cairo_rectangle (cr, left, i->y, right - left, i->height);
  spelch_colour_set (cr, &p->end_grain, 1.0);
  cairo_fill (cr);
  cairo_move_to (cr, m->x - m->radius, i->y + i->height);
  cairo_arc (cr, m->x, m->y, m->radius, M_PI, 2 * M_PI);
  cairo_line_to (cr, m->x + m->radius, i->y + i->height);
  cairo_close_path (cr);
  spelch_colour_set (cr, &p->ground, 1.0);
  cairo_fill (cr);
}

static void
draw_standing (const SpelchMotionScene *scene, cairo_t *cr, const SpelchMotionFrame *frame,
               const FromMotor *m, bool blurred)
{
  const SpelchPalette *p = scene->side->palette;
  double x, y;

  for (int side = 0; side < 2; side++)
    for (int j = 0; j <= ARC_STEPS; j++)
      {
        int i = side == 0 ? j : ARC_STEPS - j;
        double angle = m->from + (m->to - m->from) * i / ARC_STEPS;
        double thick
            = side == 0 ? 0 : left_standing (scene, frame, angle, blurred) * m->per_mm * scene->enlarged[1];

        point_at (m, angle, m->radius - thick, &x, &y);
        cairo_line_to (cr, x, y);
      }
  cairo_close_path (cr);
  spelch_colour_set (cr, &p->long_grain, 1.0);
  cairo_fill_preserve (cr);
  spelch_colour_set (cr, &p->ink, 1.0);
  cairo_set_line_width (cr, 1.0);
  cairo_stroke (cr);
}

static void
draw_teeth (const SpelchMotionScene *scene, cairo_t *cr, const SpelchMotionFrame *frame, const FromMotor *m)
{
  const SpelchPalette *p = scene->side->palette;

  for (guint k = 0; k < frame->n_teeth; k++)
    {
      const SpelchMotionTooth *tooth = &frame->teeth[k];
      double x, y, u, v;

      point_at (m, tooth->angle, m->radius, &x, &y);
      point_at (m, tooth->angle - 0.5, m->radius * 0.5, &u, &v);
      cairo_move_to (cr, m->x, m->y);
      cairo_line_to (cr, u, v);
      cairo_line_to (cr, x, y);
      spelch_colour_set (cr, &p->ink, 1.0);
      cairo_set_line_width (cr, tooth->cutting ? 3.0 : 1.8);
      cairo_stroke (cr);
    }
}

static void
draw_from_motor (const SpelchMotionScene *scene, cairo_t *cr, const SpelchMotionFrame *frame, bool blurred)
{
  const SpelchPalette *p = scene->side->palette;
  FromMotor m = from_motor (scene);

  cairo_save (cr);
  cairo_rectangle (cr, scene->inset.x, scene->inset.y, scene->inset.width, scene->inset.height);
  cairo_clip (cr);
  spelch_colour_set (cr, &p->ground, 1.0);
  cairo_paint (cr);
  draw_wood (scene, cr, &m);
  draw_standing (scene, cr, frame, &m, blurred);
  cairo_new_sub_path (cr);
  cairo_arc (cr, m.x, m.y, m.radius * (blurred ? 1.0 : 0.5), 0, 2 * M_PI);
  spelch_colour_set (cr, &p->plain_flute, blurred ? 0.45 : 1.0);
  cairo_fill (cr);
  if (!blurred)
    draw_teeth (scene, cr, frame, &m);
  cairo_arc (cr, m.x, m.y, 2, 0, 2 * M_PI);
  spelch_colour_set (cr, &p->ink, 1.0);
  cairo_fill (cr);
  cairo_restore (cr);
}

/* ---- A frame ---- */

static void
draw_readout (const SpelchMotionScene *scene, cairo_t *cr, const SpelchMotionFrame *frame)
{
  double room = scene->readout.width - width_of (scene->titles[1]) - 20;
  g_autofree char *force
      = spelch_words_motion_force (&frame->axial, scene->machine, &scene->side->view.numbers);
  /* Translators: what the force on the board does at this instant: "now lifts 3.1 N (1.5 to 6.2)". */
  g_autoptr (PangoLayout) now = set_words (scene, g_strdup_printf (_ ("now %s"), force), TITLE_SIZE,
                                           SPELCH_LETTERS_PLAIN, 0, PANGO_ALIGN_LEFT);

  if (width_of (now) <= room)
    spelch_lettering_draw (cr, now, scene->readout.x + scene->readout.width - width_of (now),
                           scene->readout.y, &scene->side->palette->ink);
}

static void
draw_marker (const SpelchMotionScene *scene, cairo_t *cr, const SpelchMotionFrame *frame)
{
  const SpelchPalette *p = scene->side->palette;
  const SpelchRect *t = &scene->trace;
  double x, y;

  spelch_motion_scene_marker (scene, frame->turned, frame->axial.mid, &x, &y);
  cairo_move_to (cr, x, t->y);
  cairo_line_to (cr, x, t->y + t->height);
  spelch_colour_set (cr, &p->ink_soft, 1.0);
  cairo_set_line_width (cr, 1.2);
  cairo_stroke (cr);
  cairo_arc (cr, x, y, MARKER, 0, 2 * M_PI);
  spelch_colour_set (cr, &p->ink, 1.0);
  cairo_fill (cr);
}

SpelchRect
spelch_motion_gauge_bounds (const SpelchMotionScene *scene, SpelchMotionPart part,
                            const SpelchMotionFrame *frame)
{
  const SpelchRect *t = &scene->trace;
  double x, y, words;

  switch ((int)part)
    {
    case SPELCH_MOTION_INSET:
      return scene->inset;
    case SPELCH_MOTION_READOUT:
      words = width_of (scene->titles[1]) + 20;
      return (SpelchRect){ scene->readout.x + words, scene->readout.y - 2,
                           MAX (scene->readout.width - words, 1), scene->readout.height + 4 };
    default:
      spelch_motion_scene_marker (scene, frame->turned, frame->axial.mid, &x, &y);
      return (SpelchRect){ x - MARKER - 1, t->y - MARKER - 1, 2 * MARKER + 2, t->height + 2 * MARKER + 2 };
    }
}

void
spelch_motion_draw_gauge (const SpelchMotionScene *scene, SpelchMotionPart part, cairo_t *cr,
                          const SpelchMotionFrame *frame, bool blurred)
{
  if (part == SPELCH_MOTION_INSET)
    draw_from_motor (scene, cr, frame, blurred);
  else if (!blurred && part == SPELCH_MOTION_READOUT)
    draw_readout (scene, cr, frame);
  else if (!blurred && part == SPELCH_MOTION_MARKER)
    draw_marker (scene, cr, frame);
}
