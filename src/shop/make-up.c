/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "shop/make-up.h"

#include <math.h>

#define BIRCH_FACE_MM 1.3
#define VENEER_MM     0.6
#define FILM_MM       0.15

static double
sum_of (const SpelchBoard *board, guint from, guint to)
{
  double sum = 0;
  for (guint i = from; i < to; i++)
    sum += board->layers[i].thickness.mm;
  return sum;
}

static void
scale (SpelchBoard *board, guint from, guint to, double wanted)
{
  double sum = sum_of (board, from, to);
  for (guint i = from; i < to && sum > 0; i++)
    board->layers[i].thickness = spelch_length_mm (board->layers[i].thickness.mm * wanted / sum);
}

void
spelch_make_up_fit (SpelchBoard *board)
{
  guint n = board->n_layers;
  double faces = n > 2 ? board->layers[0].thickness.mm + board->layers[n - 1].thickness.mm : 0;
  if (n > 2 && faces < board->nominal.mm)
    scale (board, 1, n - 1, board->nominal.mm - faces);
  else
    scale (board, 0, n, board->nominal.mm);
}

void
spelch_make_up_sum (SpelchBoard *board)
{
  double sum = sum_of (board, 0, board->n_layers);
  if (fabs (sum - board->nominal.mm) > 1e-6)
    board->nominal = spelch_length_mm (round (sum * 1e4) / 1e4);
}

void
spelch_make_up_alike (SpelchBoard *board)
{
  for (guint i = 0; i < board->n_layers; i++)
    board->layers[i].thickness = spelch_length_mm (board->nominal.mm / board->n_layers);
}

bool
spelch_make_up_face (SpelchBoard *board, const SpelchLayer *layer)
{
  if (board->n_layers + 2 > SPELCH_MAX_LAYERS || 2 * layer->thickness.mm >= board->nominal.mm)
    return false;
  for (guint i = board->n_layers; i > 0; i--)
    board->layers[i] = board->layers[i - 1];
  board->n_layers += 2;
  board->layers[0] = board->layers[board->n_layers - 1] = *layer;
  spelch_make_up_fit (board);
  return true;
}

guint
spelch_make_up_birch_plies (double mm)
{
  double plies = 2 * round ((mm / 1.4 + 1) / 2) - 1;
  return (guint)CLAMP (plies, 3, SPELCH_MAX_LAYERS - 1);
}

static guint
okoume_plies (double mm)
{
  double plies = 2 * round ((mm / 1.8 + 1) / 2) - 1;
  return (guint)CLAMP (plies, 3, SPELCH_MAX_LAYERS - 1);
}

static guint
softwood_plies (double mm)
{
  return mm <= 9.5 ? 3 : mm <= 15 ? 5 : mm <= 21 ? 7 : 9;
}

/* Plies that cross each other, the faces along the board. */
static void
cross (SpelchBoard *board, SpelchMaterial material, guint n)
{
  board->n_layers = n;
  for (guint i = 0; i < n; i++)
    board->layers[i] = (SpelchLayer){ spelch_length_mm (board->nominal.mm / n), material,
                                      SPELCH_GRAIN_STRAIGHT, i % 2 == 0 ? 0 : 90, true };
}

static void
one_layer (SpelchBoard *board, SpelchMaterial material, SpelchGrain grain)
{
  board->n_layers = 1;
  board->layers[0] = (SpelchLayer){ board->nominal, material, grain, 0, false };
}

static void
set_faces (SpelchBoard *board, double mm, SpelchMaterial material)
{
  guint n = board->n_layers;
  board->layers[0].thickness = board->layers[n - 1].thickness = spelch_length_mm (mm);
  board->layers[0].material = board->layers[n - 1].material = material;
  spelch_make_up_fit (board);
}

/* Films on the faces aside, the plies from @first on; 0 where there are none. */
static guint
plies_from (const SpelchBoard *board, guint *first)
{
  guint n = 0;
  *first = 0;
  for (guint i = 0; i < board->n_layers; i++)
    if (board->layers[i].veneer && board->layers[i].material < SPELCH_MATERIAL_PARTICLEBOARD)
      {
        *first = n == 0 ? i : *first;
        if (*first + n++ != i)
          return 0;
      }
  return n >= 3 ? n : 0;
}

guint
spelch_make_up_plies (const SpelchBoard *board)
{
  guint first;
  return plies_from (board, &first);
}

bool
spelch_make_up_set_plies (SpelchBoard *board, guint plies)
{
  guint first, before = plies_from (board, &first);
  if (before == 0 || plies < 3 || plies > SPELCH_MAKE_UP_PLIES_MOST || plies % 2 == 0)
    return false;
  SpelchBoard next = *board;
  double core = sum_of (board, first + 1, first + before - 1), face = board->layers[first].thickness.mm;
  bool alike = fabs (face - board->layers[first + 1].thickness.mm) < 0.01;
  double ply = alike ? sum_of (board, first, first + before) / plies : core / (plies - 2);
  next.n_layers = board->n_layers - before + plies;
  for (guint i = 1; i + 1 < plies; i++)
    {
      SpelchLayer *layer = &next.layers[first + i];
      *layer = board->layers[first + 1];
      layer->thickness = spelch_length_mm (ply);
      if (i % 2 == 0)
        layer->grain_deg = layer->grain_deg >= 90 ? layer->grain_deg - 90 : layer->grain_deg + 90;
    }
  for (guint i = first + before - 1; i < board->n_layers; i++)
    next.layers[i - before + plies] = board->layers[i];
  if (alike)
    next.layers[first].thickness = next.layers[first + plies - 1].thickness = spelch_length_mm (ply);
  *board = next;
  return true;
}

static void
plywood_tolerance (SpelchBoard *board)
{
  board->tolerance_plus_mm = 0.2 + 0.03 * board->nominal.mm;
  board->tolerance_minus_mm = 0.4 + 0.03 * board->nominal.mm;
}

/* MDF: ANSI A208.2; particleboard: EN 312, sanded, from memory. mm either way */
#define MDF_WITHIN           0.125
#define PARTICLEBOARD_WITHIN 0.3
#define MELAMINE_PLUS        0.5 /* EN 14322, to 20 mm */
#define MELAMINE_MINUS       0.3

static bool
is_tolerance (const SpelchBoard *board, double plus, double minus)
{
  return fabs (board->tolerance_plus_mm - plus) < 0.005 && fabs (board->tolerance_minus_mm - minus) < 0.005;
}

/* What somebody typed differs from what any make-up brings. */
static bool
is_usual_tolerance (const SpelchBoard *board)
{
  SpelchBoard plywood = { .nominal = board->nominal };
  plywood_tolerance (&plywood);
  return is_tolerance (board, plywood.tolerance_plus_mm, plywood.tolerance_minus_mm)
         || is_tolerance (board, MELAMINE_PLUS, MELAMINE_MINUS)
         || is_tolerance (board, MDF_WITHIN, MDF_WITHIN)
         || is_tolerance (board, PARTICLEBOARD_WITHIN, PARTICLEBOARD_WITHIN) || is_tolerance (board, 0, 0);
}

static void
unfaced (SpelchBoard *board, SpelchMaterial material, double within)
{
  if (is_usual_tolerance (board))
    board->tolerance_plus_mm = board->tolerance_minus_mm = within;
  one_layer (board, material, SPELCH_GRAIN_NONE);
}

static void
melamine (SpelchBoard *board, SpelchMaterial core)
{
  const SpelchLayer film
      = { spelch_length_mm (FILM_MM), SPELCH_MATERIAL_LAMINATE, SPELCH_GRAIN_NONE, 0, false };
  one_layer (board, core, SPELCH_GRAIN_NONE);
  spelch_make_up_face (board, &film);
  board->tolerance_plus_mm = MELAMINE_PLUS;
  board->tolerance_minus_mm = MELAMINE_MINUS;
}

void
spelch_make_up_follow (SpelchBoard *board, double before_mm)
{
  SpelchBoard before = { .nominal = spelch_length_mm (before_mm) };
  plywood_tolerance (&before);
  spelch_make_up_fit (board);
  if (is_tolerance (board, before.tolerance_plus_mm, before.tolerance_minus_mm))
    plywood_tolerance (board);
}

static void
plywood (SpelchMakeUp make_up, SpelchBoard *board)
{
  if (make_up == SPELCH_MAKE_UP_BIRCH_PLY)
    {
      cross (board, SPELCH_MATERIAL_BIRCH_PLY, spelch_make_up_birch_plies (board->nominal.mm));
      if (board->nominal.mm > 3 * BIRCH_FACE_MM - 0.5)
        set_faces (board, BIRCH_FACE_MM, SPELCH_MATERIAL_BIRCH_PLY);
    }
  else if (make_up == SPELCH_MAKE_UP_OKOUME_PLY)
    {
      cross (board, SPELCH_MATERIAL_SOFTWOOD_PLY, okoume_plies (board->nominal.mm));
      g_strlcpy (board->species, "okoume", sizeof board->species);
    }
  else
    cross (board, SPELCH_MATERIAL_SOFTWOOD_PLY, softwood_plies (board->nominal.mm));
  if (make_up == SPELCH_MAKE_UP_VENEERED_PLY)
    {
      const SpelchLayer veneer
          = { spelch_length_mm (VENEER_MM), SPELCH_MATERIAL_HARDWOOD, SPELCH_GRAIN_STRAIGHT, 0, true };
      for (guint i = 0; i < board->n_layers; i++)
        board->layers[i].grain_deg = i % 2 == 0 ? 90 : 0;
      spelch_make_up_face (board, &veneer);
    }
  plywood_tolerance (board);
}

void
spelch_make_up_apply (SpelchMakeUp make_up, SpelchBoard *board)
{
  const SpelchLayer veneer
      = { spelch_length_mm (VENEER_MM), SPELCH_MATERIAL_HARDWOOD, SPELCH_GRAIN_STRAIGHT, 0, true };
  board->species[0] = '\0';
  board->density_kg_m3 = 0;
  switch (make_up)
    {
    case SPELCH_MAKE_UP_MELAMINE_PARTICLEBOARD:
      melamine (board, SPELCH_MATERIAL_PARTICLEBOARD);
      return;
    case SPELCH_MAKE_UP_MELAMINE_MDF:
      melamine (board, SPELCH_MATERIAL_MDF);
      return;
    case SPELCH_MAKE_UP_VENEERED_MDF:
      one_layer (board, SPELCH_MATERIAL_MDF, SPELCH_GRAIN_NONE);
      spelch_make_up_face (board, &veneer);
      return;
    case SPELCH_MAKE_UP_PARTICLEBOARD:
      unfaced (board, SPELCH_MATERIAL_PARTICLEBOARD, PARTICLEBOARD_WITHIN);
      return;
    case SPELCH_MAKE_UP_MDF:
      unfaced (board, SPELCH_MATERIAL_MDF, MDF_WITHIN);
      return;
    case SPELCH_MAKE_UP_SOLID_SOFTWOOD:
      one_layer (board, SPELCH_MATERIAL_SOFTWOOD, SPELCH_GRAIN_STRAIGHT);
      return;
    case SPELCH_MAKE_UP_SOLID_HARDWOOD:
      one_layer (board, SPELCH_MATERIAL_HARDWOOD, SPELCH_GRAIN_STRAIGHT);
      return;
    case SPELCH_MAKE_UP_BIRCH_PLY:
    case SPELCH_MAKE_UP_SOFTWOOD_PLY:
    case SPELCH_MAKE_UP_OKOUME_PLY:
    case SPELCH_MAKE_UP_VENEERED_PLY:
    case SPELCH_MAKE_UPS:
    default:
      plywood (make_up, board);
    }
}
