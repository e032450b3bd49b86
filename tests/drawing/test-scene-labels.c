/* SPDX-License-Identifier: GPL-3.0-or-later
 *
 * Labels of whole scenes: in any picture none covers another, and in one of ordinary size none is left out.
 */
#include "scene-kit.h"

static const char *
name_of (const SpelchScene *scene, guint i)
{
  return i < SPELCH_N_LABELS ? pango_layout_get_text (scene->labels[i].layout)
                             : pango_layout_get_text (scene->marks[i - SPELCH_N_LABELS].layout);
}

static void
assert_apart (const SpelchScene *scene)
{
  SpelchRect rects[SPELCH_N_LABELS + SPELCH_MAX_MARKS];
  guint which[SPELCH_N_LABELS + SPELCH_MAX_MARKS], n = 0;

  for (guint i = 0; i < SPELCH_N_LABELS; i++)
    if (scene->labels[i].layout != NULL)
      {
        rects[n] = scene->labels[i].box;
        which[n++] = i;
      }
  for (guint i = 0; i < scene->n_marks; i++)
    {
      rects[n] = scene->marks[i].box;
      which[n++] = SPELCH_N_LABELS + i;
    }
  for (guint i = 0; i < n; i++)
    for (guint j = 0; j < i; j++)
      if (spelch_rect_overlap (rects[i], rects[j]))
        g_error ("“%s” and “%s” overlap in a picture of %.0f x %.0f, text %.2f, %s, %s, %s",
                 name_of (scene, which[i]), name_of (scene, which[j]), scene->view.width, scene->view.height,
                 scene->view.text, scene->bit.id, scene->board.id,
                 scene->machine == SPELCH_MACHINE_TABLE ? "table" : "no table");
}

#ifdef __SANITIZE_ADDRESS__
#define ROUNDS 300 /* for what they do to memory that is enough */
#else
#define ROUNDS 2000
#endif

static void
test_labels_never_overlap (void)
{
  for (int round = 0; round < ROUNDS; round++)
    {
      g_auto (Case) c = { 0 };
      g_autoptr (SpelchScene) scene = NULL;

      case_random (&c);
      scene = case_scene (&c);
      assert_apart (scene);
    }
}

/* At the size of the reference picture nothing has to be left out. */
static void
test_all_labels_shown (void)
{
  static const SpelchLabelId ALWAYS[]
      = { SPELCH_LABEL_NEAR_FACE,   SPELCH_LABEL_FAR_FACE,    SPELCH_LABEL_FAR_REST,
          SPELCH_LABEL_SCALE,       SPELCH_LABEL_MOTOR,       SPELCH_LABEL_TURN_OVER,
          SPELCH_LABEL_LOWER_SHEAR, SPELCH_LABEL_UPPER_SHEAR, SPELCH_LABEL_FIRST_WINDOW,
          SPELCH_LABEL_LAST_WINDOW };
  g_auto (Case) c = { 0 };

  case_demo (&c);
  for (double depth = 1; depth < 17; depth += 0.25)
    {
      g_autoptr (SpelchScene) scene = NULL;

      c.cut.held.n_passes = 1;
      c.cut.held.passes[0] = spelch_length_mm (depth);
      case_plan (&c);
      scene = case_scene (&c);
      for (guint i = 0; i < G_N_ELEMENTS (ALWAYS); i++)
        if (scene->labels[ALWAYS[i]].layout == NULL)
          g_error ("label %d is missing at a depth of %.2f mm", ALWAYS[i], depth);
    }
}

int
main (int argc, char **argv)
{
  g_test_init (&argc, &argv, NULL);
  g_test_add_func ("/scene/labels/never-overlap", test_labels_never_overlap);
  g_test_add_func ("/scene/labels/all-shown", test_all_labels_shown);
  return g_test_run ();
}
