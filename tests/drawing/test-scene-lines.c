/* SPDX-License-Identifier: GPL-3.0-or-later
 *
 * Lines of a page's side view beside ISO 128, read again from an SVG: two widths, one twice the other, dashes
 * and chains for what is hidden and for axes, and hatching at 45 degrees where a section shows no grain. ISO
 * 128-2 and 128-3 are recalled from memory.
 */
#include "scene-kit.h"

#include <cairo-svg.h>
#include <math.h>
#include <stdio.h>
#include <string.h>

/* Beside the lines there are signs: the crisp corner of a clean arris and splinters. Walls are outlined twice
 * as wide, and half of it is cleared again. */
static const double SIGNS[] = { 2.6, 0.9, 2 * SPELCH_PAPER_WIDE };

typedef struct
{
  double width;
  char *dashes; /* "" when there are none */
  char *path;
  bool ink;
} Stroke;

static void
clear_stroke (gpointer stroke)
{
  g_free (((Stroke *)stroke)->dashes);
  g_free (((Stroke *)stroke)->path);
}

static cairo_status_t
collect (void *closure, const unsigned char *data, unsigned int length)
{
  g_string_append_len (closure, (const char *)data, length);
  return CAIRO_STATUS_SUCCESS;
}

static char *
svg_of (const SpelchScene *scene)
{
  GString *text = g_string_new (NULL);
  cairo_surface_t *svg
      = cairo_svg_surface_create_for_stream (collect, text, scene->view.width, scene->view.height);
  cairo_t *cr = cairo_create (svg);
  spelch_scene_draw (scene, cr);
  cairo_destroy (cr);
  cairo_surface_destroy (svg);
  return g_string_free (text, FALSE);
}

static char *
part_of (const char *text, const char *pattern)
{
  g_autoptr (GRegex) regex = g_regex_new (pattern, 0, 0, NULL);
  g_autoptr (GMatchInfo) found = NULL;
  return g_regex_match (regex, text, 0, &found) ? g_match_info_fetch (found, 1) : g_strdup ("");
}

static bool
is_ink (const char *path, const SpelchPalette *palette)
{
  const SpelchColour *const inks[] = { &palette->ink, &palette->ink_soft };
  g_autofree char *colour = part_of (path, ";stroke:rgb\\(([^)]*)\\)");
  char *end = colour;
  double r = g_ascii_strtod (end, &end), g = g_ascii_strtod (end + 2, &end),
         b = g_ascii_strtod (end + 2, &end);
  for (guint i = 0; i < G_N_ELEMENTS (inks); i++)
    if (fabs (r - inks[i]->r * 100) + fabs (g - inks[i]->g * 100) + fabs (b - inks[i]->b * 100) < 1)
      return true;
  return false;
}

/* Every stroke of the picture. Those in the cut's own coordinates are turned, never scaled. */
static GArray *
strokes_of (const SpelchScene *scene)
{
  GArray *strokes = g_array_new (FALSE, TRUE, sizeof (Stroke));
  g_autofree char *svg = svg_of (scene);
  g_auto (GStrv) paths = g_strsplit (svg, "<path ", -1);
  g_array_set_clear_func (strokes, clear_stroke);
  for (guint i = 1; paths[i] != NULL; i++)
    {
      g_autofree char *width = part_of (paths[i], "stroke-width:([0-9.]+)");
      if (width[0] == '\0' || strstr (paths[i], "stroke:rgb") == NULL)
        continue;
      Stroke stroke = { .width = g_ascii_strtod (width, NULL),
                        .dashes = part_of (paths[i], "stroke-dasharray:([^;]*)"),
                        .path = part_of (paths[i], " d=\"([^\"]*)\""),
                        .ink = is_ink (paths[i], scene->palette) };
      g_array_append_val (strokes, stroke);
    }
  return strokes;
}

static bool
is_sign (double width)
{
  for (guint i = 0; i < G_N_ELEMENTS (SIGNS); i++)
    if (fabs (width - SIGNS[i]) < 1e-3)
      return true;
  return false;
}

static SpelchScene *
scene_on_paper (Case *c)
{
  c->view.on_paper = true;
  c->view.look = SPELCH_LOOK_PAPER;
  c->view.with_marks = true;
  return case_scene (c);
}

static void
test_widths (void)
{
  g_auto (Case) c;
  guint wide = 0, narrow = 0;
  case_demo (&c);
  g_autoptr (SpelchScene) scene = scene_on_paper (&c);
  g_autoptr (GArray) strokes = strokes_of (scene);
  g_assert_cmpfloat (SPELCH_PAPER_WIDE, ==, 2 * SPELCH_PAPER_NARROW);
  for (guint i = 0; i < strokes->len; i++)
    {
      const Stroke *stroke = &g_array_index (strokes, Stroke, i);
      if (!stroke->ink || is_sign (stroke->width))
        continue;
      bool is_wide = fabs (stroke->width - SPELCH_PAPER_WIDE) < 1e-3;
      if (!is_wide && fabs (stroke->width - SPELCH_PAPER_NARROW) > 1e-3)
        g_error ("a line is %g wide: %s", stroke->width, stroke->path);
      wide += is_wide;
      narrow += !is_wide;
    }
  g_assert_cmpuint (wide, >=, 4);
  g_assert_cmpuint (narrow, >=, 8);
}

/* Of each kind of line, beside the names that the standard gives them. */
static void
test_kinds (void)
{
  static const SpelchLine narrow[]
      = { SPELCH_LINE_HIDDEN, SPELCH_LINE_CENTRE, SPELCH_LINE_DIMENSION, SPELCH_LINE_HATCH,
          SPELCH_LINE_BREAK,  SPELCH_LINE_REST,   SPELCH_LINE_LAYER,     SPELCH_LINE_SHORTENED };
  g_auto (Case) c;
  case_demo (&c);
  g_autoptr (SpelchScene) scene = scene_on_paper (&c);
  double wide = spelch_scene_line (scene, SPELCH_LINE_VISIBLE);
  for (guint i = 0; i < G_N_ELEMENTS (narrow); i++)
    g_assert_cmpfloat_with_epsilon (spelch_scene_line (scene, narrow[i]) * 2, wide, 1e-9);
}

/* Line 02.1: dashes of 12 widths, gaps of 3; line 04.1: 24, 3, half a width, 3. */
static void
test_dashes (void)
{
  static const double DASHED[] = { 12, 3 }, CHAIN[] = { 24, 3, 0.5, 3 };
  g_auto (Case) c;
  guint dashed = 0, chains = 0;
  case_demo (&c);
  g_autoptr (SpelchScene) scene = scene_on_paper (&c);
  g_autoptr (GArray) strokes = strokes_of (scene);
  for (guint i = 0; i < strokes->len; i++)
    {
      const Stroke *stroke = &g_array_index (strokes, Stroke, i);
      g_auto (GStrv) lengths = g_strsplit (stroke->dashes, ",", -1);
      guint n = g_strv_length (lengths), like_dashed = 0, like_chain = 0;
      for (guint j = 0; j < n; j++)
        {
          double length = g_ascii_strtod (lengths[j], NULL) / stroke->width;
          like_dashed += n == 2 && fabs (length - DASHED[j]) < 0.01;
          like_chain += n == 4 && fabs (length - CHAIN[j]) < 0.01;
        }
      dashed += like_dashed == 2;
      chains += like_chain == 4;
    }
  g_assert_cmpuint (dashed, ==, 1);
  g_assert_cmpuint (chains, ==, 1);
}

/* How many pieces of a path run at 45 degrees. */
static guint
slanted (const char *path)
{
  guint n = 0;
  g_auto (GStrv) pieces = g_strsplit (path, "M ", -1);
  for (guint i = 0; pieces[i] != NULL; i++)
    {
      double x0, y0, x1, y1;
      if (sscanf (pieces[i], "%lf %lf L %lf %lf", &x0, &y0, &x1, &y1) == 4)
        n += fabs (fabs (x1 - x0) - fabs (y1 - y0)) < 0.01 && fabs (x1 - x0) > 10;
    }
  return n;
}

static guint
hatching_of (const char *board, bool on_paper)
{
  g_auto (Case) c;
  guint most = 0;
  case_demo (&c);
  case_take_board (&c, board);
  g_autoptr (SpelchScene) scene = on_paper ? scene_on_paper (&c) : case_scene (&c);
  g_autoptr (GArray) strokes = strokes_of (scene);
  for (guint i = 0; i < strokes->len; i++)
    {
      const Stroke *stroke = &g_array_index (strokes, Stroke, i);
      guint n = slanted (stroke->path);
      if (n > 3)
        g_assert_cmpfloat_with_epsilon (stroke->width, SPELCH_PAPER_NARROW, 1e-3);
      most = MAX (most, n);
    }
  return most;
}

static void
test_hatching (void)
{
  g_assert_cmpuint (hatching_of ("mdf-18", true), >, 10);
  g_assert_cmpuint (hatching_of ("melamine-particleboard-18", true), >, 10);
  g_assert_cmpuint (hatching_of ("mdf-18", false), ==, 0);
  g_assert_cmpuint (hatching_of ("birch-ply-18", true), ==, 0);
}

int
main (int argc, char **argv)
{
  g_test_init (&argc, &argv, NULL);
  g_test_add_func ("/scene-lines/widths", test_widths);
  g_test_add_func ("/scene-lines/kinds", test_kinds);
  g_test_add_func ("/scene-lines/dashes", test_dashes);
  g_test_add_func ("/scene-lines/hatching", test_hatching);
  return g_test_run ();
}
