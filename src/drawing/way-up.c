/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "drawing/way-up-private.h"

#include <glib/gi18n-lib.h>
#include <math.h>
#include <string.h>

/* ---- Facts ---- */

SpelchWayUpFacts
spelch_way_up_facts (const SpelchPart *part, const SpelchCut *cut, const SpelchBit *bit,
                     const SpelchPlan *plan)
{
  bool below = spelch_machine_motor_below (&part->machine);
  SpelchFace top = below ? spelch_face_other (plan->near) : plan->near;
  const SpelchBoard *board = &part->board;
  const SpelchLayer *layer = spelch_board_face_layer (board, top);
  SpelchWayUpFacts facts
      = { .motor_below = below,
          .top = top,
          .turns_clock = (bit->hand == SPELCH_HAND_RIGHT) != below,
          .has_grain = layer->grain == SPELCH_GRAIN_STRAIGHT || layer->grain == SPELCH_GRAIN_FIGURED,
          .grain_deg = spelch_angle_seen_from (top, layer->grain_deg),
          .goes_round = plan->setting_out.round != SPELCH_ROUND_ALONG || spelch_cut_every_direction (cut),
          .round_clock = plan->setting_out.round == SPELCH_ROUND_WITH_CLOCK,
          .feed_deg = spelch_angle_seen_from (top, cut->path_deg),
          .mark_up = spelch_cut_sees (cut, top),
          .mark_down = spelch_cut_sees (cut, spelch_face_other (top)) };
  /* On a router table the board comes from the right, and lies so that its way runs along the fence. */
  if (below)
    {
      facts.board_moves = true;
      facts.grain_deg -= facts.goes_round ? 0 : facts.feed_deg;
      facts.feed_deg = 180;
    }
  facts.grain_deg = remainder (facts.grain_deg, 180);
  facts.feed_deg = remainder (facts.feed_deg, 360);
  return facts;
}

/* ---- Geometry ---- */

void
spelch_way_up_on_face (const SpelchWayUp *w, double s, double t, double *x, double *y)
{
  double lift = w->machine == SPELCH_MACHINE_TABLE ? -12 : 0;
  *x = FRONT_X + s * LONG + t * BACK_X;
  *y = FRONT_Y + lift + t * BACK_Y;
}

double
spelch_way_up_way_reach (const SpelchWayUp *w)
{
  return w->kind == SPELCH_CUT_HOLE ? 0.16 : 0.31;
}

void
spelch_way_up_from_middle (const SpelchWayUp *w, double deg, double length, double *x, double *y)
{
  double a = deg * G_PI / 180;
  spelch_way_up_on_face (w, w->middle_s + length * cos (a) / LONG, w->middle_t + length * sin (a) / DEEP, x,
                         y);
}

static void
to_page (const SpelchWayUp *w, double *x, double *y)
{
  *x = w->rect.x + *x * w->scale;
  *y = w->rect.y + *y * w->scale;
}

/* ---- Words ---- */

static const char *
feed_words (const SpelchWayUp *w)
{
  switch (w->machine)
    {
    case SPELCH_MACHINE_TABLE:
      return _ ("feed: push the board this way");
    case SPELCH_MACHINE_HAND:
      return _ ("feed: move the router this way");
    case SPELCH_MACHINE_GANTRY:
    default:
      return _ ("feed: the bit goes this way");
    }
}

static char *
face_words (const SpelchPlan *plan, const SpelchCut *cut, SpelchFace face, bool up)
{
  g_autofree char *name
      = spelch_words_face_alone (plan, cut, face == plan->near ? SPELCH_SIDE_MOTOR : SPELCH_SIDE_FAR);
  /* Translators: the name of a face, "Show face", and the letter of that face of the board */
  return g_strdup_printf (up ? _ ("UP: %s (%s)") : _ ("DOWN: %s (%s)"), name,
                          face == SPELCH_FACE_A ? "a" : "b");
}

static char *
words_of (const SpelchWayUp *w, const SpelchPlan *plan, const SpelchCut *cut, const SpelchLayer *top,
          SpelchWayUpKind kind)
{
  switch (kind)
    {
    case SPELCH_WAY_UP_MOTOR:
      return g_strdup (w->facts.motor_below ? _ ("motor below the board") : _ ("motor above the board"));
    case SPELCH_WAY_UP_TURN:
      return g_strdup (w->facts.turns_clock ? _ ("turns with the clock, seen from above")
                                            : _ ("turns against the clock, seen from above"));
    case SPELCH_WAY_UP_TOP:
      return face_words (plan, cut, w->facts.top, true);
    case SPELCH_WAY_UP_GRAIN:
      return g_strdup (w->facts.has_grain               ? _ ("grain")
                       : top->grain == SPELCH_GRAIN_END ? _ ("end grain")
                                                        : _ ("no grain"));
    case SPELCH_WAY_UP_FEED:
      return g_strdup (feed_words (w));
    case SPELCH_WAY_UP_BELOW:
      return face_words (plan, cut, spelch_face_other (w->facts.top), false);
    case SPELCH_WAY_UP_REST:
    case SPELCH_N_WAY_UPS:
    default:
      return g_strdup (w->machine == SPELCH_MACHINE_TABLE  ? _ ("router table")
                       : w->machine == SPELCH_MACHINE_HAND ? _ ("bench")
                                                           : _ ("spoilboard"));
    }
}

void
spelch_way_up_straight_end (const SpelchWayUp *w, double turn, double *x, double *y)
{
  double a = (w->facts.feed_deg + turn) * G_PI / 180;
  if (w->facts.board_moves)
    spelch_way_up_on_face (w, MIDDLE + STRAIGHT * cos (a) / LONG, 0.22, x, y);
  else
    spelch_way_up_from_middle (w, w->facts.feed_deg + turn, STRAIGHT, x, y);
}

/* The end of the way that is nearer to the words. */
static void
aim_at_way (const SpelchWayUp *w, double *x, double *y)
{
  bool right = cos (w->facts.feed_deg * G_PI / 180) >= 0;
  if (w->facts.goes_round)
    spelch_way_up_on_face (w, MIDDLE + spelch_way_up_way_reach (w), 0.5, x, y);
  else
    spelch_way_up_straight_end (w, right ? 0 : 180, x, y);
}

/* What each word names, on the grid. */
static void
aim (const SpelchWayUp *w, SpelchWayUpKind kind, double *x, double *y)
{
  double right_x, right_y;
  spelch_way_up_on_face (w, 1, 0, &right_x, &right_y);
  switch (kind)
    {
    case SPELCH_WAY_UP_MOTOR:
      spelch_way_up_from_middle (w, 0, 0, x, y);
      *x += MOTOR / 2;
      *y = w->machine == SPELCH_MACHINE_TABLE ? 45 : 6;
      break;
    case SPELCH_WAY_UP_TURN:
      spelch_way_up_from_middle (w, 0, 0, x, y);
      *x += TURN_WIDE;
      *y = w->machine == SPELCH_MACHINE_TABLE ? *y : TURN_Y;
      break;
    case SPELCH_WAY_UP_TOP:
      spelch_way_up_on_face (w, 0.93, 0.22, x, y);
      break;
    case SPELCH_WAY_UP_GRAIN:
      spelch_way_up_on_face (w, 0.90, 0.74, x, y);
      break;
    case SPELCH_WAY_UP_FEED:
      aim_at_way (w, x, y);
      break;
    case SPELCH_WAY_UP_BELOW:
      *x = right_x - 1;
      *y = right_y + THICK;
      break;
    case SPELCH_WAY_UP_REST:
    case SPELCH_N_WAY_UPS:
    default:
      *x = right_x - 4;
      *y = right_y + THICK + REST / 2;
      break;
    }
}

static void
set_labels (SpelchWayUp *w, const SpelchPart *part, const SpelchCut *cut, const SpelchPlan *plan, double size,
            SpelchLettering *lettering)
{
  double x = w->rect.x + LABEL_FROM * w->rect.width + ELBOW, room = w->rect.x + w->rect.width - x;
  const SpelchBoard *board = &part->board;
  const SpelchLayer *top = spelch_board_face_layer (board, w->facts.top);
  /* The words give way to their room: a long language sets them smaller. */
  for (double high = HUGE_VAL; high > w->rect.height; size *= 0.94)
    {
      high = -LABEL_GAP;
      for (int i = 0; i < SPELCH_N_WAY_UPS; i++)
        {
          SpelchAimedLabel *label = &w->labels[i];
          g_autofree char *words = words_of (w, plan, cut, top, (SpelchWayUpKind)i);
          bool strong = i == SPELCH_WAY_UP_TOP || i == SPELCH_WAY_UP_MOTOR;
          g_clear_object (&label->layout);
          label->layout = spelch_lettering_set (lettering, words, size,
                                                strong ? SPELCH_LETTERS_STRONG : SPELCH_LETTERS_PLAIN, room,
                                                PANGO_ALIGN_LEFT);
          label->box.x = x;
          spelch_lettering_measure (label->layout, &label->box.width, &label->box.height);
          aim (w, (SpelchWayUpKind)i, &label->x, &label->y);
          to_page (w, &label->x, &label->y);
          high += label->box.height + LABEL_GAP;
        }
    }
  spelch_aimed_labels_stack (w->labels, SPELCH_N_WAY_UPS, w->rect.y, w->rect.y + w->rect.height, LABEL_GAP);
}

/* A rabbet, or an edge that is trimmed, runs along the edge that is right of the travel when the wall at its
 * left stays; on a router table along the fence. */
static void
place_middle (SpelchWayUp *w, const SpelchCut *cut)
{
  bool at_edge = spelch_cut_has_one_wall (cut) && !w->facts.goes_round;
  double turn = cut->kept == SPELCH_WALL_RIGHT ? 90 : -90, a = (w->facts.feed_deg + turn) * G_PI / 180;
  w->middle_s = MIDDLE;
  /* On a way round the bit stands where that begins, at its front; under a board it can't be seen anyway. */
  w->middle_t = 0.5;
  if (w->facts.goes_round && !w->facts.board_moves)
    w->middle_t -= spelch_way_up_way_reach (w) * LONG / DEEP;
  if (!at_edge)
    return;
  w->middle_s += w->facts.board_moves ? 0 : EDGE * cos (a);
  w->middle_t += w->facts.board_moves ? EDGE : EDGE * sin (a);
}

SpelchWayUp *
spelch_way_up_new (const SpelchPart *part, const SpelchCut *cut, const SpelchBit *bit, const SpelchPlan *plan,
                   SpelchRect rect, double size, SpelchLettering *lettering, const SpelchPalette *palette)
{
  SpelchWayUp *w = g_new0 (SpelchWayUp, 1);
  w->rect = rect;
  w->scale = fmin (LABEL_FROM * rect.width / GRID_WIDE, rect.height / GRID_HIGH);
  w->facts = spelch_way_up_facts (part, cut, bit, plan);
  w->machine = part->machine.kind;
  w->kind = cut->kind;
  w->through = plan->through;
  place_middle (w, cut);
  w->palette = palette;
  set_labels (w, part, cut, plan, size, lettering);
  return w;
}

void
spelch_way_up_free (SpelchWayUp *w)
{
  for (int i = 0; i < SPELCH_N_WAY_UPS; i++)
    g_clear_object (&w->labels[i].layout);
  g_free (w);
}

bool
spelch_way_up_label (const SpelchWayUp *w, SpelchWayUpKind kind, SpelchRect *rect, const char **words)
{
  g_return_val_if_fail (kind < SPELCH_N_WAY_UPS, false);
  *rect = w->labels[kind].box;
  *words = pango_layout_get_text (w->labels[kind].layout);
  return true;
}
