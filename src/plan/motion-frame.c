/* SPDX-License-Identifier: GPL-3.0-or-later
 *
 * One instant of a cut in slow motion: teeth, chips, splinters. Where chips go follows from the shear; how
 * many are drawn, how long they stay and where in the flute they lie shows how full the flutes are.
 */
#include "plan/motion.h"

#include "mechanics/chip-flow.h"
#include "mechanics/chip.h"

#include <math.h>
#include <string.h>

#define ROW_MM       0.9 /* of height for one chip */
#define MOST_ROWS    14
#define FULL_COPIES  3.0 /* chips side by side in a flute that is full */
#define MOST_COPIES  4
#define APPEARS      0.15 /* rad in which a chip comes */
#define FADES        0.7  /* and in which it goes */
#define FLIES        1.8  /* rad for which one is seen above the board */
#define FLIES_OFF    0.55 /* of the radius sideways for each rad */
#define STAYS_LEAST  0.6  /* rad for which one left in the kerf is seen */
#define STAYS_FULL   7.0  /* and how much longer where the flutes are full */
#define OUTERMOST    0.94 /* where the outermost chips lie, of the radius */
#define COPY_INWARD  0.17
#define SPLINTER_RAD 1.0 /* for a splinter to come */

static double
within_turn (double angle)
{
  return angle - 2 * M_PI * floor (angle / (2 * M_PI));
}

/* A number from 0 to 1 that the seed decides. */
static double
chance (guint seed, guint which)
{
  guint32 x = seed * 2654435761u + which * 40503u + 12345u;
  x ^= x >> 15;
  x *= 2246822519u;
  x ^= x >> 13;
  return (x & 0xffff) / 65535.0;
}

/* The angles between which an edge is in the wood. */
static void
engaged_angles (const SpelchForceCase *force, double *from, double *to)
{
  double reach = spelch_chip_engagement (force->flutes.diameter, force->engaged);
  *from = force->climb ? M_PI - reach : 0;
  *to = *from + reach;
}

static double
edge_angle (const SpelchForceCase *force, guint k, double s, double turned)
{
  return -spelch_flute_edge_angle (&force->flutes, (int)k, s, turned);
}

/* ---- Chips ---- */

/* A chip's origin: its height, and the bit's turning since its edge let it go. */
typedef struct
{
  double s, age;
  double let_go; /* angle at which it was */
  guint copy;
  guint seed;
} Born;

static void
place_chip (const SpelchMotionPass *pass, const Born *born, double angle, double height,
            SpelchMotionChip *chip)
{
  double radius = pass->force.flutes.diameter / 2 * (OUTERMOST - COPY_INWARD * born->copy);
  chip->across = -radius * cos (angle);
  chip->depth = pass->depth - height;
  chip->in_front = sin (angle) < 0;
}

/* Above the motor-side face it is thrown aside and rises on. False once it is out of sight. */
static bool
fly (const SpelchMotionPass *pass, const Born *born, double speed, SpelchMotionChip *chip)
{
  double out = (pass->depth - born->s) / speed, since = born->age - out;
  SpelchChipPlace there = spelch_chip_flow_at (&pass->force.flutes, born->s, out);
  if (since > FLIES)
    return false;
  place_chip (pass, born, born->let_go + there.gained, there.height, chip);
  double way = pass->force.flutes.diameter / 2 * FLIES_OFF * since * (0.6 + 0.8 * chance (born->seed, 1));
  chip->across += chip->across < 0 ? -way : way;
  chip->depth = -speed * since * (0.7 + 0.6 * chance (born->seed, 2));
  chip->strength = fmin (1, (FLIES - since) / FADES);
  return true;
}

/* Where the shear sends it no further it is carried on until the flute opens backwards, and left in the kerf
 * there. False once it is out of sight. */
static bool
rest (const SpelchMotionPass *pass, const Born *born, const SpelchChipPlace *now, SpelchMotionChip *chip)
{
  SpelchChipPlace end = spelch_chip_flow_at (&pass->force.flutes, born->s, now->arrival);
  double arrived = born->let_go + end.gained;
  double left_at = M_PI * (1.15 + 0.7 * chance (born->seed, 3));
  double carried = within_turn (left_at - within_turn (arrived));
  double since = born->age - now->arrival - carried;
  double stays = STAYS_LEAST + STAYS_FULL * fmin (pass->chip_room, 1);
  double filled = (pass->stock_to - pass->stock_from) * fmin (pass->chip_room, 1);
  if (since > stays)
    return false;
  if (since < 0)
    return true; /* still in its flute */
  place_chip (pass, born, left_at, end.height, chip);
  /* They fill as much of the height that is cut as of the flutes' room: over the floor, or to both sides of
   * where they meet; chips that no shear sends stay where they were cut. */
  if (chip->hand != 0)
    chip->depth -= filled * (chance (born->seed, 4) - (end.height <= 0 ? 0 : 0.5));
  chip->depth = CLAMP (chip->depth, 0, pass->depth);
  chip->rests = true;
  chip->rise = 0;
  chip->strength = fmin (1, (stays - since) / FADES);
  return true;
}

static void
add_chip (const SpelchMotionPass *pass, const Born *born, SpelchMotionFrame *frame)
{
  const SpelchFlutes *flutes = &pass->force.flutes;
  SpelchMotionChip chip = { .seed = born->seed, .strength = 1 };
  double speed = spelch_chip_flow_speed (flutes, born->s);
  SpelchChipPlace now = spelch_chip_flow_at (flutes, born->s, born->age);
  bool seen = true;
  chip.hand = spelch_flute_sign_at (flutes, born->s);
  chip.rise = now.arrived ? 0 : speed;
  place_chip (pass, born, born->let_go + now.gained, now.height, &chip);
  if (chip.depth < 0)
    seen = fly (pass, born, speed, &chip);
  else if (now.arrived)
    seen = rest (pass, born, &now, &chip);
  chip.strength *= fmin (1, born->age / APPEARS);
  if (seen && frame->n_chips < SPELCH_MOST_CHIPS)
    frame->chips[frame->n_chips++] = chip;
}

/* All that edge @k let go at height @s since it first went through the wood. */
static void
add_chips_of (const SpelchMotionPass *pass, guint row, double s, guint k, guint copies,
              SpelchMotionFrame *frame)
{
  double from, to, turned = frame->turned;
  engaged_angles (&pass->force, &from, &to);
  double last = within_turn (edge_angle (&pass->force, k, s, turned) - to); /* since it last let one go */
  double first = within_turn (to - edge_angle (&pass->force, k, s, 0));
  for (int turn = 0; turned - last - 2 * M_PI * turn >= to - from - 1e-9; turn++)
    for (guint copy = 0; copy < copies; copy++)
      {
        int passage = (int)lround ((turned - last - first) / (2 * M_PI)) - turn;
        guint seed = ((row * SPELCH_MAX_TEETH + k) * (SPELCH_MOTION_TURNS + 1) + (guint)passage) * MOST_COPIES
                     + copy + 1;
        double age = last + 2 * M_PI * turn - 0.12 * copy;
        Born born = { s, age, to, copy, seed };
        if (age > 0)
          add_chip (pass, &born, frame);
      }
}

static void
add_chips (const SpelchMotionPass *pass, SpelchMotionFrame *frame)
{
  const SpelchFlutes *flutes = &pass->force.flutes;
  double s0 = pass->depth - pass->stock_to, s1 = pass->depth - pass->stock_from;
  guint copies = (guint)CLAMP (ceil (pass->chip_room * FULL_COPIES), 1, MOST_COPIES);
  int most = MAX (flutes->edges_up, flutes->edges_down);
  double room = SPELCH_MOST_CHIPS / (double)(MAX (most, 1) * copies * (SPELCH_MOTION_TURNS + 1));
  int rows = (int)CLAMP (ceil ((s1 - s0) / ROW_MM), 1, fmin (MOST_ROWS, floor (room)));
  if (!(s1 > s0) || pass->chip_max <= 0)
    return;
  for (int row = 0; row < rows; row++)
    {
      double s = s0 + (s1 - s0) * (row + 0.5) / rows;
      for (int k = 0; k < spelch_flute_edges_at (flutes, s); k++)
        add_chips_of (pass, (guint)row, s, (guint)k, copies, frame);
    }
}

/* ---- Teeth and splinters ---- */

static void
add_teeth (const SpelchMotionPass *pass, SpelchMotionFrame *frame)
{
  const SpelchForceCase *force = &pass->force;
  int edges = spelch_flute_edges_at (&force->flutes, 0);
  double from, to;
  double feed = pass->feed_per_tooth * spelch_flute_fewest_edges (&force->flutes) / edges;
  engaged_angles (force, &from, &to);
  frame->n_teeth = (guint)MIN (edges, SPELCH_MAX_TEETH);
  for (guint k = 0; k < frame->n_teeth; k++)
    {
      double angle = within_turn (edge_angle (force, k, 0, frame->turned));
      bool cutting = angle > from && angle < to;
      frame->teeth[k] = (SpelchMotionTooth){ angle, cutting, cutting ? feed * sin (angle) : 0 };
    }
}

/* By how much the bit has turned when an edge first passes a wall at a face. */
static double
opened_at (const SpelchMotion *motion, const SpelchMotionPass *pass, const SpelchEdge *edge)
{
  const SpelchFlutes *flutes = &pass->force.flutes;
  double face = edge->side == SPELCH_SIDE_MOTOR ? 0 : motion->thickness;
  double s = CLAMP (pass->depth - face, 0, flutes->length);
  double wall = edge->wall == SPELCH_WALL_LEFT ? 0 : M_PI,
         pitch = 2 * M_PI / spelch_flute_edges_at (flutes, s);
  double left = fmod (wall - edge_angle (&pass->force, 0, s, 0), pitch);
  return left < 0 ? left + pitch : left;
}

static void
find_opened (const SpelchMotion *motion, SpelchMotionFrame *frame)
{
  for (guint i = 0; i < motion->n_edges; i++)
    {
      const SpelchEdge *edge = &motion->edges[i];
      bool now = edge->pass == (int)frame->pass + 1;
      if (edge->grade < 1 || edge->pass < 1)
        frame->opened[i] = 0;
      else if (now)
        frame->opened[i] = CLAMP (
            (frame->turned - opened_at (motion, &motion->passes[frame->pass], edge)) / SPLINTER_RAD, 0, 1);
      else
        frame->opened[i] = edge->pass <= (int)frame->pass;
    }
}

void
spelch_motion_at (const SpelchMotion *motion, guint pass, double turned, SpelchMotionFrame *frame)
{
  memset (frame, 0, sizeof *frame);
  if (motion->n_passes == 0)
    return;
  frame->pass = MIN (pass, motion->n_passes - 1);
  const SpelchMotionPass *of = &motion->passes[frame->pass];
  frame->turned = isfinite (turned) ? CLAMP (turned, 0, spelch_motion_length (of)) : 0;
  frame->axial = spelch_motion_axial (of, frame->turned);
  add_teeth (of, frame);
  add_chips (of, frame);
  find_opened (motion, frame);
}
