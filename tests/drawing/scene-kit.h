/* SPDX-License-Identifier: GPL-3.0-or-later
 *
 * Scene kit: cases to draw, made of the starter sets and of chance, and what came out on the canvas.
 */
#pragma once

#include "drawing/scene-private.h"

typedef struct
{
  SpelchPart *part;
  SpelchCut cut;
  SpelchBit bit;
  SpelchPlan plan;
  SpelchView view;
} Case;

/* The demo's first cut with its bit, at the size of the design's reference picture. */
void case_demo (Case *c);

/* Any board, machine, bit, cut, size and way of writing. */
void case_random (Case *c);

void case_clear (Case *c);
G_DEFINE_AUTO_CLEANUP_CLEAR_FUNC (Case, case_clear)

/* The starter set's item with that id; it must be there. */
void case_take_machine (Case *c, const char *id);
void case_take_board (Case *c, const char *id);
void case_take_bit (Case *c, const char *id);

/* The demo's first cut, scored with a down-cut bit before an up-cut one follows; planned. */
void case_demo_scored (Case *c);

/* Plans and lays out; the scene is new. */
void case_plan (Case *c);
SpelchScene *case_scene (Case *c);

/* Draws one layer alone on clear ground. cairo_surface_destroy() it. */
cairo_surface_t *layer_image (const SpelchScene *scene, SpelchSceneLayer layer);

/* Opacity, 0 to 255, and colour, 0 to 255 each, of a pixel; 0 outside the image. */
typedef struct
{
  int a, r, g, b;
} Pixel;
Pixel pixel_at (cairo_surface_t *image, int x, int y);

/* The smallest rectangle around everything drawn; empty when nothing is. */
SpelchRect ink_of (cairo_surface_t *image);
