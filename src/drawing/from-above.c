/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "drawing/from-above-private.h"

#include <math.h>

#define WORDS_SHARE 0.40  /* of the width */
#define WORDS_MOST  190.0 /* times the size of the words, by 12 */
#define BED_SHARE   0.05  /* of the longer side, around the board */
#define SHEET_SHARE 0.16  /* of the longer side, around a piece that is cut out */
#define SHEET_LEAST 26.0  /* mm */
#define FOOT        2.6   /* lines under the drawing, for the scale bar */
#define ACROSS_MM   300.0 /* a board whose size isn't told */
#define START_SHARE 0.22  /* along a straight way, where the bit is drawn */
#define START_NEAR  0.60  /* where it goes toward the words */
#define CLAMP_AT    0.72  /* along the side that the clamp stands at */
#define CORNER_LEFT 0.05  /* of the piece, under which vacuum holds a corner only */
#define CORNER_AT   0.96  /* and where: nearly in it, toward the words */
#define AHEAD_SHARE 0.86  /* along it, where its arrow ends */

/* ---- The way ---- */

double
spelch_from_above_way_length (const SpelchFromAbove *f)
{
  double length = 0;
  for (guint i = 1; i < f->n_way; i++)
    length += hypot (f->way[i].x - f->way[i - 1].x, f->way[i].y - f->way[i - 1].y);
  return length;
}

SpelchSpot
spelch_from_above_along (const SpelchFromAbove *f, double distance, double *deg)
{
  SpelchSpot spot = f->way[0];
  for (guint i = 1; i < f->n_way; i++)
    {
      double x = f->way[i].x - f->way[i - 1].x, y = f->way[i].y - f->way[i - 1].y, step = hypot (x, y);
      double share = step > 0 ? CLAMP (distance / step, 0, 1) : 0;
      *deg = atan2 (y, x) * 180 / G_PI;
      spot = (SpelchSpot){ f->way[i - 1].x + share * x, f->way[i - 1].y + share * y };
      if (distance <= step)
        break;
      distance -= step;
    }
  return spot;
}

/* A rectangle grown by @by, from a corner at the front, along the length first. */
static void
go_round (SpelchFromAbove *f, SpelchRect r, double by)
{
  bool clock = f->facts.round_clock;
  double left = r.x - by, right = r.x + r.width + by, front = r.y - by, back = r.y + r.height + by;
  double from = clock ? right : left, to = clock ? left : right;
  f->way[0] = (SpelchSpot){ from, front };
  f->way[1] = (SpelchSpot){ to, front };
  f->way[2] = (SpelchSpot){ to, back };
  f->way[3] = (SpelchSpot){ from, back };
  f->way[4] = f->way[0];
  f->n_way = 5;
  f->closed = true;
}

static void
open_rectangle (SpelchFromAbove *f, SpelchRect r)
{
  f->opening[0] = (SpelchSpot){ r.x, r.y };
  f->opening[1] = (SpelchSpot){ r.x + r.width, r.y };
  f->opening[2] = (SpelchSpot){ r.x + r.width, r.y + r.height };
  f->opening[3] = (SpelchSpot){ r.x, r.y + r.height };
  f->n_opening = 4;
}

static void
open_circle (SpelchFromAbove *f, double radius)
{
  double way = fmax (radius - f->diameter / 2, 0), sense = f->facts.round_clock ? -1 : 1;
  for (guint i = 0; i < WAY_MOST; i++)
    {
      double a = -G_PI / 2 + sense * 2 * G_PI * i / (WAY_MOST - 1), x = f->length / 2, y = f->width / 2;
      f->opening[i] = (SpelchSpot){ x + radius * cos (a), y + radius * sin (a) };
      f->way[i] = (SpelchSpot){ x + way * cos (a), y + way * sin (a) };
    }
  f->n_opening = f->n_way = WAY_MOST;
  f->closed = true;
}

/* Along a middle line from end to end, @half to either side; the bit @aside to the left of that line. */
static void
open_strip (SpelchFromAbove *f, SpelchSpot middle, double deg, double half_long, double half, double aside)
{
  double u = cos (deg * G_PI / 180), v = sin (deg * G_PI / 180);
  for (int i = 0; i < 4; i++)
    {
      double along = (i == 0 || i == 3 ? -1 : 1) * half_long, left = (i < 2 ? -1 : 1) * half;
      f->opening[i] = (SpelchSpot){ middle.x + along * u - left * v, middle.y + along * v + left * u };
    }
  f->n_opening = 4;
  for (int i = 0; i < 2; i++)
    {
      double along = (i == 0 ? -1 : 1) * half_long;
      f->way[i] = (SpelchSpot){ middle.x + along * u - aside * v, middle.y + along * v + aside * u };
    }
  f->n_way = 2;
}

/* From the middle of the piece to where a line in that direction leaves it. */
static double
reach (const SpelchFromAbove *f, double deg)
{
  double u = fabs (cos (deg * G_PI / 180)), v = fabs (sin (deg * G_PI / 180));
  return fmin (u > 1e-6 ? f->length / 2 / u : HUGE_VAL, v > 1e-6 ? f->width / 2 / v : HUGE_VAL);
}

/* Between two walls, straight on. */
static void
lay_groove (SpelchFromAbove *f, double deg, double wide)
{
  double half_long = reach (f, deg), from_edge = f->cut.from_edge.mm;
  double aside = reach (f, deg + 90) - from_edge - wide / 2;
  SpelchSpot middle = { f->length / 2, f->width / 2 };
  bool ends = f->cut.start == SPELCH_END_INSIDE && f->cut.end == SPELCH_END_INSIDE;
  if (from_edge > 0 && aside > 0)
    {
      middle.x += aside * sin (deg * G_PI / 180);
      middle.y -= aside * cos (deg * G_PI / 180);
    }
  if ((ends || f->cut.kind == SPELCH_CUT_MORTISE || f->cut.kind == SPELCH_CUT_SLOT) && f->cut.length.mm > 0)
    half_long = fmin (fmax (f->cut.length.mm, wide) / 2, half_long);
  open_strip (f, middle, deg, half_long, wide / 2, 0);
}

/* An edge runs along a side of the piece; where it is told to run askew to the board, the grain does. */
static double
take_side (SpelchFromAbove *f, double deg)
{
  double side = round (deg / 90) * 90;
  f->facts.grain_deg -= deg - side;
  return side;
}

/* Along an edge: what is kept lies left of the travel, seen from the motor, unless the right is kept. */
static void
lay_edge (SpelchFromAbove *f, double deg, double wide)
{
  bool left_stays = (f->cut.kept != SPELCH_WALL_RIGHT) != f->facts.motor_below;
  double off = reach (f, deg + 90) - wide / 2, side = left_stays ? -1 : 1;
  double u = cos (deg * G_PI / 180), v = sin (deg * G_PI / 180);
  SpelchSpot middle = { f->length / 2 - side * off * v, f->width / 2 + side * off * u };
  open_strip (f, middle, deg, reach (f, deg), wide / 2, side * (f->diameter - wide) / 2);
}

/* On a way round, at the corner nearest to the words. */
static void
lay_start (SpelchFromAbove *f)
{
  double whole = spelch_from_above_way_length (f);
  bool toward = f->n_way == 2 && f->way[1].x - f->way[0].x > fabs (f->way[1].y - f->way[0].y);
  f->ahead = AHEAD_SHARE * whole;
  f->start = (toward && !f->facts.board_moves ? START_NEAR : START_SHARE) * whole;
  if (f->closed)
    f->start = f->n_way == 5 && !f->facts.round_clock ? fabs (f->way[1].x - f->way[0].x) : 0;
}

static void
lay_way (SpelchFromAbove *f)
{
  double wide = spelch_cut_width (&f->cut) > 0 ? spelch_cut_width (&f->cut) : f->diameter;
  double deg = f->facts.board_moves ? 0 : f->facts.feed_deg;
  SpelchRect piece = { 0, 0, f->length, f->width };
  bool edge = f->cut.kind == SPELCH_CUT_RABBET || f->cut.kind == SPELCH_CUT_TRIM;
  f->with_waste = f->cut.kind == SPELCH_CUT_OUTLINE;
  if (f->cut.kind == SPELCH_CUT_OUTLINE)
    go_round (f, piece, f->diameter / 2);
  else if (f->cut.kind == SPELCH_CUT_HOLE)
    open_circle (f, fmin (wide, fmin (f->length, f->width)) / 2);
  else if (edge && f->cut.every_direction)
    go_round (f, piece, f->diameter / 2 - wide);
  else if (edge)
    lay_edge (f, take_side (f, deg), wide);
  else if (f->cut.kind == SPELCH_CUT_POCKET)
    {
      double high = fmin (wide, f->width * 0.9), round = f->cut.length.mm / 2 - high;
      double across = CLAMP (round, high, f->length * 0.9);
      SpelchRect r = { (f->length - across) / 2, (f->width - high) / 2, across, high };
      open_rectangle (f, r);
      go_round (f, r, -f->diameter / 2);
    }
  else
    lay_groove (f, deg, wide);
  lay_start (f);
}

/* Tabs stand where they are set out: at their distances along the finished line, from the corner at which the
 * way begins; the bit's middle runs beside that line. */
static void
lay_tabs (SpelchFromAbove *f, const SpelchSettingOut *out)
{
  double whole = 0, aside = f->cut.kind == SPELCH_CUT_OUTLINE ? f->diameter / 2 : 0;
  SpelchFromAbove line = *f;
  for (guint i = 0; i < SPELCH_TAB_SIDES; i++)
    whole += out->side_mm[i];
  guint n = whole > 0 ? MIN (spelch_setting_out_tabs (out), SPELCH_FROM_ABOVE_TABS_MOST) : 0;
  if (aside > 0)
    go_round (&line, (SpelchRect){ 0, 0, f->length, f->width }, 0);
  double way = spelch_from_above_way_length (&line), right = f->facts.round_clock ? -aside : aside;
  for (f->n_tabs = 0; f->n_tabs < n; f->n_tabs++)
    {
      double *deg = &f->tab_deg[f->n_tabs];
      SpelchSpot spot
          = spelch_from_above_along (&line, spelch_setting_out_tab (out, f->n_tabs) / whole * way, deg);
      f->tabs[f->n_tabs] = (SpelchSpot){ spot.x + right * sin (*deg * G_PI / 180),
                                         spot.y - right * cos (*deg * G_PI / 180) };
    }
}

/* ---- What keeps it down ---- */

static double
clamp_size (const SpelchFromAbove *f)
{
  return fmax (f->length, f->width) / 200;
}

/* How far a clamp lies on the board, and stands out over it. */
static double
clamp_on (const SpelchFromAbove *f)
{
  double on = CLAMP_LONG * clamp_size (f) * CLAMP_REACH;
  return f->beyond > 0 ? fmin (on, (f->beyond - f->diameter) * 0.7) : on;
}

static double
clamp_over (const SpelchFromAbove *f)
{
  return f->hold == SPELCH_HOLD_CLAMPS && !f->facts.board_moves
             ? CLAMP_LONG * clamp_size (f) * 1.1 - clamp_on (f)
             : 0;
}

/* How many there are isn't told, so one is drawn for all: at the right end of the board or, where the way
 * runs into that, at its back. */
static void
lay_clamps (SpelchFromAbove *f)
{
  SpelchRect board = spelch_from_above_board (f);
  double on = clamp_on (f), deep = CLAMP_LONG * clamp_size (f), wide = CLAMP_WIDE * clamp_size (f);
  bool across = !f->closed && fabs (f->way[1].x - f->way[0].x) > fabs (f->way[1].y - f->way[0].y);
  f->holds[f->n_holds++] = across ? (SpelchRect){ board.x + board.width * CLAMP_AT - wide / 2,
                                                  board.y + board.height - on, wide, deep }
                                  : (SpelchRect){ board.x + board.width - on,
                                                  board.y + board.height * CLAMP_AT - wide / 2, deep, wide };
}

/* A field of the piece's shape, as large as is told. So small a one is what is left of a larger: a corner. */
static void
lay_vacuum (SpelchFromAbove *f, double area)
{
  double part = area / (f->length * f->width), share = area > 0 ? sqrt (fmin (part, 0.98)) : 0.9;
  double place = area > 0 && part < CORNER_LEFT ? CORNER_AT : 0.5;
  f->holds[f->n_holds++] = (SpelchRect){ f->length * (1 - share) * place, f->width * (1 - share) * place,
                                         f->length * share, f->width * share };
}

static void
lay_screws (SpelchFromAbove *f)
{
  SpelchRect board = spelch_from_above_board (f);
  double in = fmax (f->beyond * 0.45, fmin (board.width, board.height) * 0.08), size = in * 0.5;
  for (int i = 0; i < HOLDS_MOST; i++)
    f->holds[f->n_holds++]
        = (SpelchRect){ (i % 2 ? board.x + board.width - in : board.x + in) - size / 2,
                        (i / 2 ? board.y + board.height - in : board.y + in) - size / 2, size, size };
}

static void
lay_hold (SpelchFromAbove *f, const SpelchHolding *holding)
{
  if (holding->method == SPELCH_HOLD_CLAMPS && !f->facts.board_moves)
    lay_clamps (f);
  else if (holding->method == SPELCH_HOLD_VACUUM)
    lay_vacuum (f, holding->area_mm2);
  else if (holding->method == SPELCH_HOLD_SCREWS)
    lay_screws (f);
}

/* ---- The frame ---- */

SpelchRect
spelch_from_above_board (const SpelchFromAbove *f)
{
  return (SpelchRect){ -f->beyond, -f->beyond, f->length + 2 * f->beyond, f->width + 2 * f->beyond };
}

void
spelch_from_above_place (const SpelchFromAbove *f, double across, double up, double *x, double *y)
{
  *x = f->left + across * f->scale;
  *y = f->front - up * f->scale;
}

static void
lay_frame (SpelchFromAbove *f, SpelchRect rect, double size)
{
  double words = fmin (WORDS_SHARE * rect.width, WORDS_MOST * size / 12);
  double longer = fmax (f->length, f->width);
  bool edge = f->cut.kind == SPELCH_CUT_RABBET || f->cut.kind == SPELCH_CUT_TRIM;
  double over
      = fmax (clamp_over (f), edge ? f->diameter * 1.2 : 0); /* the bit may stand out over the board */
  double bed = fmax (BED_SHARE * longer, over) + f->beyond;
  double ahead = f->facts.board_moves ? (FENCE_WIDE + BED_SHARE) * longer : 0;
  f->room = (SpelchRect){ rect.x, rect.y, rect.width - words, rect.height - FOOT * size };
  f->scale = fmin ((f->room.width - 2) / (f->length + 2 * bed),
                   (f->room.height - 2) / (f->width + 2 * bed + ahead));
  f->scale = fmax (f->scale, 1e-3);
  double spare = f->room.height - 2 - (f->width + 2 * bed + ahead) * f->scale;
  f->room.y += fmax (spare / 2, 0);
  f->left = f->room.x + 1 + bed * f->scale;
  f->front = f->room.y + 1 + (f->width + bed + ahead) * f->scale;
  f->room.width = (f->length + 2 * bed) * f->scale + 2;
  f->room.height = (f->width + 2 * bed + ahead) * f->scale + 2;
}

/* The piece as it lies: on a router table with its way along the fence. */
static void
take_size (SpelchFromAbove *f, const SpelchPart *part)
{
  double length = part->length.mm, width = part->width.mm;
  double turned = fabs (remainder (f->cut.path_deg, 180));
  if (length <= 0 && width <= 0)
    length = fmax (f->cut.kind == SPELCH_CUT_OUTLINE ? f->cut.length.mm * 0.3 : f->cut.length.mm, 1);
  if (length <= 0)
    length = f->cut.length.mm > 0 ? f->cut.length.mm : ACROSS_MM;
  if (width <= 0)
    width = length * 2 / 3;
  bool swap = f->facts.board_moves && !f->facts.goes_round && turned > 45;
  f->length = swap ? width : length;
  f->width = swap ? length : width;
  if (f->cut.kind == SPELCH_CUT_OUTLINE)
    f->beyond = fmax (SHEET_SHARE * fmax (length, width), SHEET_LEAST) + f->diameter;
}

/* ---- Object ---- */

SpelchFromAbove *
spelch_from_above_new (const SpelchPart *part, const SpelchCut *cut, const SpelchBit *bit,
                       const SpelchPlan *plan, SpelchRect rect, double size, const SpelchNumbers *numbers,
                       SpelchLettering *lettering, const SpelchPalette *palette)
{
  SpelchFromAbove *f = g_new0 (SpelchFromAbove, 1);
  const SpelchBoard *board = &part->board;
  f->facts = spelch_way_up_facts (part, cut, bit, plan);
  f->cut = *cut;
  f->machine = part->machine.kind;
  f->hold = part->holding.method;
  f->top = *spelch_board_face_layer (board, f->facts.top);
  f->diameter = spelch_bit_diameter_now (bit);
  f->palette = palette;
  f->unit = CLAMP (size / 12, 0.3, 4);
  f->gap = LABEL_GAP * f->unit;
  take_size (f, part);
  lay_frame (f, rect, size);
  lay_way (f);
  lay_tabs (f, &plan->setting_out);
  lay_hold (f, &part->holding);
  spelch_from_above_lay_words (f, rect, size, numbers, lettering);
  return f;
}

void
spelch_from_above_free (SpelchFromAbove *f)
{
  for (int i = 0; f != NULL && i < SPELCH_N_FROM_ABOVES; i++)
    g_clear_object (&f->labels[i].layout);
  if (f != NULL)
    g_clear_object (&f->bar);
  g_free (f);
}

bool
spelch_from_above_label (const SpelchFromAbove *f, SpelchFromAboveKind kind, SpelchRect *rect,
                         const char **words, double *x, double *y)
{
  g_return_val_if_fail (kind < SPELCH_N_FROM_ABOVES, false);
  const SpelchAimedLabel *label = &f->labels[kind];
  if (label->layout == NULL)
    return false;
  *rect = label->box;
  *words = pango_layout_get_text (label->layout);
  *x = label->x;
  *y = label->y;
  return true;
}

SpelchRect
spelch_from_above_drawing (const SpelchFromAbove *f)
{
  return f->room;
}

void
spelch_from_above_piece (const SpelchFromAbove *f, double *length, double *width)
{
  *length = f->length;
  *width = f->width;
}

bool
spelch_from_above_tab (const SpelchFromAbove *f, guint i, double *across, double *up)
{
  if (i >= f->n_tabs)
    return false;
  *across = f->tabs[i].x;
  *up = f->tabs[i].y;
  return true;
}

double
spelch_from_above_feed (const SpelchFromAbove *f)
{
  double deg = f->facts.feed_deg;
  if (!f->facts.board_moves)
    spelch_from_above_along (f, f->start, &deg);
  return deg;
}
