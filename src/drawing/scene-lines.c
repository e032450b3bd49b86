/* SPDX-License-Identifier: GPL-3.0-or-later
 *
 * Lines of the side view. On a page they are those of ISO 128: wide for edges that are seen, narrow for all
 * others, one twice as wide as the other; dashed what is hidden or still to come, long dashes and dots for an
 * axis. A window draws them finer, as its dots ask for.
 */
#include "drawing/scene-private.h"

typedef struct
{
  double screen;
  bool wide; /* on paper */
} Kind;

static const Kind KINDS[] = {
  [SPELCH_LINE_VISIBLE] = { 1.6, true },    [SPELCH_LINE_BREAK] = { 1.1, false },
  [SPELCH_LINE_LAYER] = { 0.8, false },     [SPELCH_LINE_HIDDEN] = { 1.0, false },
  [SPELCH_LINE_CENTRE] = { 1.0, false },    [SPELCH_LINE_DIMENSION] = { 1.0, false },
  [SPELCH_LINE_HATCH] = { 1.0, false },     [SPELCH_LINE_REST] = { 1.0, false },
  [SPELCH_LINE_SHORTENED] = { 1.0, false }, [SPELCH_LINE_RULE] = { 1.0, false },
  [SPELCH_LINE_ARROW] = { 1.4, true },
};

double
spelch_scene_line (const SpelchScene *scene, SpelchLine line)
{
  if (!scene->view.on_paper)
    return KINDS[line].screen;
  return KINDS[line].wide ? SPELCH_PAPER_WIDE : SPELCH_PAPER_NARROW;
}

void
spelch_scene_set_line (const SpelchScene *scene, cairo_t *cr, SpelchLine line)
{
  /* ISO 128-2: dashes of 12 and gaps of 3 line widths; an axis' dashes are 24 long, its dots half a width. */
  static const double HIDDEN[] = { 12 * SPELCH_PAPER_NARROW, 3 * SPELCH_PAPER_NARROW };
  static const double CENTRE[] = { 24 * SPELCH_PAPER_NARROW, 3 * SPELCH_PAPER_NARROW,
                                   0.5 * SPELCH_PAPER_NARROW, 3 * SPELCH_PAPER_NARROW };
  static const double ON_SCREEN[] = { 4, 3 };
  cairo_set_line_width (cr, spelch_scene_line (scene, line));
  if (line == SPELCH_LINE_HIDDEN)
    cairo_set_dash (cr, scene->view.on_paper ? HIDDEN : ON_SCREEN, 2, 0);
  else if (line == SPELCH_LINE_CENTRE)
    cairo_set_dash (cr, CENTRE, G_N_ELEMENTS (CENTRE), 0);
  else
    cairo_set_dash (cr, NULL, 0, 0);
}
