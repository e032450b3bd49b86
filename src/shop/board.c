/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "shop/board.h"

#include "shop/fault.h"

#include <glib/gi18n-lib.h>
#include <math.h>

/* How far the layers' sum may be from the nominal thickness, mm. */
#define SUM_WITHIN_MM 0.01

static const char *const faces[] = {
  [SPELCH_FACE_A] = "a",
  [SPELCH_FACE_B] = "b",
};
const SpelchCodes SPELCH_FACE_CODES = { N_ ("face"), faces, G_N_ELEMENTS (faces) };

static const char *const materials[] = {
  [SPELCH_MATERIAL_SOFTWOOD] = "softwood",           [SPELCH_MATERIAL_HARDWOOD] = "hardwood",
  [SPELCH_MATERIAL_BIRCH_PLY] = "birch-ply",         [SPELCH_MATERIAL_SOFTWOOD_PLY] = "softwood-ply",
  [SPELCH_MATERIAL_PARTICLEBOARD] = "particleboard", [SPELCH_MATERIAL_MDF] = "mdf",
  [SPELCH_MATERIAL_LAMINATE] = "laminate",
};
const SpelchCodes SPELCH_MATERIAL_CODES = { N_ ("material"), materials, G_N_ELEMENTS (materials) };

static const char *const grains[] = {
  [SPELCH_GRAIN_NONE] = "none",
  [SPELCH_GRAIN_STRAIGHT] = "straight",
  [SPELCH_GRAIN_FIGURED] = "figured",
  [SPELCH_GRAIN_END] = "end",
};
const SpelchCodes SPELCH_GRAIN_CODES = { N_ ("grain"), grains, G_N_ELEMENTS (grains) };

const SpelchLayer *
spelch_board_face_layer (const SpelchBoard *board, SpelchFace face)
{
  return &board->layers[face == SPELCH_FACE_A ? 0 : board->n_layers - 1];
}

double
spelch_angle_seen_from (SpelchFace face, double degrees)
{
  return face == SPELCH_FACE_A ? degrees : -degrees;
}

double
spelch_angle_of_line (double degrees)
{
  double angle = fmod (degrees, 180);
  if (angle > 90)
    return angle - 180;
  return angle <= -90 ? angle + 180 : angle;
}

double
spelch_board_thickness (const SpelchBoard *board)
{
  return board->measured.mm > 0 ? board->measured.mm : board->nominal.mm;
}

static double
sum_of_layers (const SpelchBoard *board)
{
  double sum = 0;
  for (guint i = 0; i < board->n_layers; i++)
    sum += board->layers[i].thickness.mm;
  return sum;
}

static double
sum_of_faces (const SpelchBoard *board)
{
  return board->layers[0].thickness.mm + board->layers[board->n_layers - 1].thickness.mm;
}

/* The faces keep their thickness and the core takes up the difference; where there is no core, or none would
 * be left, all layers stretch alike. */
static void
scale_layers (SpelchBoard *board, double thickness)
{
  if (board->n_layers == 0)
    return;
  double all = sum_of_layers (board);
  double kept = board->n_layers > 2 ? sum_of_faces (board) : 0;
  if (thickness <= kept || all <= kept)
    kept = 0;
  if (all <= 0)
    return;
  double factor = (thickness - kept) / (all - kept);
  for (guint i = 0; i < board->n_layers; i++)
    {
      bool is_face = i == 0 || i == board->n_layers - 1;
      double mm = board->layers[i].thickness.mm;
      board->layers[i].thickness = spelch_length_mm (kept > 0 && is_face ? mm : mm * factor);
    }
}

/* Turned over about its length, so that an angle counted counter-clockwise from one side counts the other way
 * round from the other. */
static void
turn_over (SpelchBoard *board)
{
  for (guint i = 0; i < board->n_layers / 2; i++)
    {
      SpelchLayer layer = board->layers[i];
      board->layers[i] = board->layers[board->n_layers - 1 - i];
      board->layers[board->n_layers - 1 - i] = layer;
    }
  for (guint i = 0; i < board->n_layers; i++)
    board->layers[i].grain_deg = 0.0 - board->layers[i].grain_deg;
}

SpelchBoard
spelch_board_toward_motor (const SpelchBoard *board, SpelchFace near)
{
  SpelchBoard turned = *board;
  turned.n_layers = MIN (turned.n_layers, SPELCH_MAX_LAYERS);
  scale_layers (&turned, spelch_board_thickness (board));
  if (near == SPELCH_FACE_B)
    turn_over (&turned);
  return turned;
}

static char *
fault_of_words (const SpelchBoard *board)
{
  return spelch_fault_id ("id", board->id, false)
             ?: spelch_fault_text ("name", board->name, sizeof board->name)
             ?: spelch_fault_text ("species", board->species, sizeof board->species);
}

static char *
fault_of_bounds (const SpelchBoard *board)
{
  const SpelchBounds bounds[] = {
    { "nominal", "mm", board->nominal.mm, 0.5, 200 },
    { "tolerance_plus_mm", "mm", board->tolerance_plus_mm, 0, 20 },
    { "tolerance_minus_mm", "mm", board->tolerance_minus_mm, 0, 20 },
    { "measured", "mm", board->measured.mm, 0.5, 200, true },
    { "measured_within_mm", "mm", board->measured_within_mm, 0, 5 },
    { "density_kg_m3", "kg/m³", board->density_kg_m3, 50, 1500, true },
  };
  return spelch_fault_bounds (bounds, G_N_ELEMENTS (bounds));
}

static bool
has_fibres (SpelchMaterial material)
{
  return material < SPELCH_MATERIAL_PARTICLEBOARD;
}

static char *
fault_of_grain (const SpelchLayer *layer)
{
  if (has_fibres (layer->material) == (layer->grain != SPELCH_GRAIN_NONE))
    return NULL;
  const char *material = spelch_code_of (&SPELCH_MATERIAL_CODES, (int)layer->material);
  if (has_fibres (layer->material))
    return g_strdup_printf (_ ("grain is none, but %s has grain: straight, figured or end."), material);
  return g_strdup_printf (_ ("grain is %s, but %s has none."),
                          spelch_code_of (&SPELCH_GRAIN_CODES, (int)layer->grain), material);
}

static char *
fault_of_layer (const SpelchLayer *layer)
{
  const SpelchBounds bounds[] = {
    { "thickness", "mm", layer->thickness.mm, 0.01, 200 },
    { "grain_deg", "°", layer->grain_deg, -360, 360 },
  };
  return spelch_fault_bounds (bounds, G_N_ELEMENTS (bounds))
             ?: spelch_fault_code ("material", &SPELCH_MATERIAL_CODES, (int)layer->material)
             ?: spelch_fault_code ("grain", &SPELCH_GRAIN_CODES, (int)layer->grain)
             ?: fault_of_grain (layer);
}

static char *
fault_of_layers (const SpelchBoard *board)
{
  if (board->n_layers < 1 || board->n_layers > SPELCH_MAX_LAYERS)
    return g_strdup_printf (_ ("layers (%u of them) must be 1 to %d."), board->n_layers, SPELCH_MAX_LAYERS);
  for (guint i = 0; i < board->n_layers; i++)
    {
      g_autofree char *fault = fault_of_layer (&board->layers[i]);
      if (fault != NULL)
        return g_strdup_printf (_ ("layers[%u]: %s"), i, fault);
    }
  return NULL;
}

static char *
fault_of_sums (const SpelchBoard *board)
{
  double sum = sum_of_layers (board);
  g_autofree char *nominal = spelch_fault_number (board->nominal.mm, "mm");
  /* The least bit more, so that a sum typed to the hundredth isn't refused for its binary rounding. */
  if (fabs (sum - board->nominal.mm) > SUM_WITHIN_MM + 1e-9)
    {
      g_autofree char *layers = spelch_fault_number (sum, "mm");
      return g_strdup_printf (_ ("layers add up to %s, but nominal is %s."), layers, nominal);
    }
  if (board->tolerance_minus_mm >= board->nominal.mm)
    {
      g_autofree char *minus = spelch_fault_number (board->tolerance_minus_mm, "mm");
      return g_strdup_printf (_ ("tolerance_minus_mm (%s) leaves nothing of nominal (%s)."), minus, nominal);
    }
  if (board->measured.mm > 0 && board->n_layers > 2 && board->measured.mm <= sum_of_faces (board))
    {
      g_autofree char *measured = spelch_fault_number (board->measured.mm, "mm");
      g_autofree char *faces_mm = spelch_fault_number (sum_of_faces (board), "mm");
      return g_strdup_printf (_ ("measured (%s) leaves no core between the two faces (%s together)."),
                              measured, faces_mm);
    }
  return NULL;
}

char *
spelch_board_fault (const SpelchBoard *board)
{
  return fault_of_words (board)
             ?: fault_of_bounds (board)
             ?: fault_of_layers (board)
             ?: fault_of_sums (board);
}
