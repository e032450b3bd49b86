/* SPDX-License-Identifier: GPL-3.0-or-later
 *
 * The bench sheet as numbers: on either paper and in either unit every box stands inside the margins and none
 * covers another, the side view has a scale of ISO 5455, and what is written agrees with the plan.
 */
#include "drawing/scene-private.h"
#include "drawing/sheet-private.h"
#include "drawing/sheet.h"
#include "files/shop-data.h"
#include "trial.h"

#include <glib/gi18n-lib.h>
#include <locale.h>
#include <math.h>
#include <string.h>

#define HAIR 0.02 /* mm that rounding may take */

static const char *const KINDS[]
    = { "words", "rule", "tick", "blank", "verdict", "side view", "way up", "bar", "across" };

/* ---- One cut as a whole piece of work ---- */

static void
fill_work (SpelchWork *work, SpelchTask *task, const Trial *trial)
{
  *task = (SpelchTask){ .cut = trial->cut, .has_bit = true, .bit = trial->bit };
  g_strlcpy (task->cut.bit, trial->bit.id, sizeof task->cut.bit);
  spelch_plan_make (spelch_shop_constants (), trial->part, &task->cut, &task->bit, &task->plan);
  *work = (SpelchWork){ .part = trial->part, .n = 1, .tasks = task, .time_s = task->plan.time_s };
}

static SpelchSheet *
sheet_of (const SpelchWork *work, SpelchPaper paper, SpelchUnit unit, SpelchInchStyle style)
{
  const SpelchSheetOf of = { .work = work,
                             .constants = spelch_shop_constants (),
                             .numbers = { .unit = unit, .inch_style = style, .decimal_sign = '.' },
                             .paper = paper,
                             .file = "trial.spelch",
                             .revision = "0123abcd",
                             .date = "2026-05-31" };
  return spelch_sheet_new (&of);
}

/* ---- Boxes ---- */

static bool
is_within (SpelchRect room, SpelchRect r)
{
  return r.x >= room.x - HAIR && r.y >= room.y - HAIR && r.x + r.width <= room.x + room.width + HAIR
         && r.y + r.height <= room.y + room.height + HAIR;
}

static bool
do_overlap (SpelchRect a, SpelchRect b)
{
  return a.x + HAIR < b.x + b.width && b.x + HAIR < a.x + a.width && a.y + HAIR < b.y + b.height
         && b.y + HAIR < a.y + a.height;
}

static void
assert_apart (const SpelchSheet *sheet, guint page)
{
  SpelchRect room = spelch_sheet_room (sheet);
  guint n = spelch_sheet_boxes (sheet, page);
  for (guint i = 0; i < n; i++)
    {
      SpelchBox a = spelch_sheet_box (sheet, page, i);
      if (!is_within (room, a.rect))
        g_error (
            "page %u of “%s”: %s “%s” at %.2f, %.2f, %.2f by %.2f mm stands outside %.2f, %.2f, %.2f by %.2f",
            page + 1, spelch_sheet_title (sheet, page), KINDS[a.kind], a.words, a.rect.x, a.rect.y,
            a.rect.width, a.rect.height, room.x, room.y, room.width, room.height);
      for (guint j = 0; j < i && a.kind != SPELCH_BOX_ACROSS; j++)
        {
          SpelchBox b = spelch_sheet_box (sheet, page, j);
          if (b.kind != SPELCH_BOX_ACROSS && do_overlap (a.rect, b.rect))
            g_error ("page %u of “%s”: %s “%s” and %s “%s” overlap", page + 1,
                     spelch_sheet_title (sheet, page), KINDS[a.kind], a.words, KINDS[b.kind], b.words);
        }
    }
}

static void
assert_way_up_apart (const SpelchSheetPage *page)
{
  SpelchRect boxes[SPELCH_N_WAY_UPS], room = { 0 };
  const char *words[SPELCH_N_WAY_UPS];
  for (guint i = 0; i < page->items->len; i++)
    if (g_array_index (page->items, SpelchSheetItem, i).kind == SPELCH_BOX_WAY_UP)
      room = g_array_index (page->items, SpelchSheetItem, i).rect;
  for (int i = 0; i < SPELCH_N_WAY_UPS; i++)
    {
      g_assert_true (spelch_way_up_label (page->way_up, (SpelchWayUpKind)i, &boxes[i], &words[i]));
      if (!is_within (room, boxes[i]))
        g_error ("“%s” stands outside the picture of the way up", words[i]);
      for (int j = 0; j < i; j++)
        if (do_overlap (boxes[i], boxes[j]))
          g_error ("“%s” and “%s” overlap in the picture of the way up", words[i], words[j]);
    }
}

/* Labels and dimensions of the side view, and the column of chevrons beside the bit. */
static void
assert_view_apart (const SpelchScene *scene)
{
  SpelchRect rects[SPELCH_N_LABELS + SPELCH_MAX_MARKS + 4],
      all = { 0, 0, scene->view.width, scene->view.height };
  const char *words[G_N_ELEMENTS (rects)];
  guint n = 0;
  for (guint i = 0; i < SPELCH_N_LABELS; i++)
    if (scene->labels[i].layout != NULL)
      {
        rects[n] = scene->labels[i].box;
        words[n++] = pango_layout_get_text (scene->labels[i].layout);
      }
  for (guint i = 0; i < scene->n_marks; i++)
    {
      rects[n] = scene->marks[i].box;
      words[n++] = pango_layout_get_text (scene->marks[i].layout);
    }
  if (scene->width.layout != NULL)
    {
      rects[n] = scene->width.box;
      words[n++] = pango_layout_get_text (scene->width.layout);
      rects[n] = spelch_width_line (&scene->width);
      words[n++] = "the line of the width";
    }
  rects[n] = scene->chevrons;
  words[n++] = "chevrons";
  rects[n] = spelch_scene_dimension_line (scene);
  words[n++] = "the line of the dimensions";
  for (guint i = 0; i < n; i++)
    {
      if (i + 2 < n && !is_within (all, rects[i]))
        g_error ("“%s” stands outside the side view", words[i]);
      for (guint j = 0; j < i; j++)
        if (do_overlap (rects[i], rects[j]))
          g_error ("“%s” and “%s” overlap in the side view of %s with %s in %s", words[i], words[j],
                   scene->cut.id, scene->bit.id, scene->board.id);
    }
}

static void
assert_lines_apart (const SpelchScene *scene)
{
  for (guint i = 0; i < scene->n_marks; i++)
    for (guint j = 0; j < SPELCH_N_LABELS; j++)
      if (scene->labels[j].layout != NULL
          && do_overlap (spelch_scene_extension (&scene->marks[i]), scene->labels[j].box))
        g_error ("the line of “%s” runs through “%s”", pango_layout_get_text (scene->marks[i].layout),
                 pango_layout_get_text (scene->labels[j].layout));
}

/* The width stands against its walls, which are as far apart as it says unless a break line shortens them. */
static void
assert_width (const SpelchScene *scene)
{
  const SpelchWidth *width = &scene->width;
  g_assert_true ((width->layout != NULL) == spelch_scene_has_width (scene));
  if (width->layout == NULL)
    return;
  for (guint i = 0; i < SPELCH_N_LABELS; i++)
    if (scene->labels[i].layout != NULL)
      for (int left = 0; left < 2; left++)
        g_assert_false (do_overlap (spelch_width_extension (width, left), scene->labels[i].box));
  double drawn = (width->x1 - width->x0) / spelch_scene_scale (scene);
  if (scene->opening.shortened)
    g_assert_cmpfloat (drawn, <, scene->opening.width_mm);
  else
    g_assert_cmpfloat_with_epsilon (drawn, scene->opening.width_mm, 1e-6);
}

/* No word is broken, but after a hyphen of its own. */
static void
assert_words_whole (PangoLayout *layout)
{
  const char *text = pango_layout_get_text (layout);
  for (int i = 1; i < pango_layout_get_line_count (layout); i++)
    {
      char before = text[pango_layout_get_line_readonly (layout, i)->start_index - 1];
      if (strchr (" \n-", before) == NULL)
        g_error ("a word of “%s” is broken", text);
    }
}

/* A feed's unit isn't broken after its stroke. */
static void
assert_units_whole (const SpelchSheetPage *page)
{
  for (guint i = 0; i < page->items->len; i++)
    {
      PangoLayout *layout = g_array_index (page->items, SpelchSheetItem, i).layout;
      const char *text = layout != NULL ? pango_layout_get_text (layout) : "";
      for (int line = 1; layout != NULL && line < pango_layout_get_line_count (layout); line++)
        {
          int start = pango_layout_get_line_readonly (layout, line)->start_index;
          if (text[start - 1] == '/' && g_str_has_prefix (text + start, "min"))
            g_error ("a unit of “%s” is broken", text);
        }
    }
}

/* ISO 5455: 1979: 1, 2 or 5 times a power of ten, or one divided by that. */
static void
assert_standard_scale (double ratio)
{
  double more = ratio >= 1 ? ratio : 1 / ratio, first = more / pow (10, floor (log10 (more) + 1e-9));
  g_assert_true (fabs (first - 1) < 1e-9 || fabs (first - 2) < 1e-9 || fabs (first - 5) < 1e-9);
}

static void
assert_true_view (const SpelchSheetPage *page)
{
  const SpelchScene *scene = page->view.scene;
  double thickness = fabs (spelch_scene_y (scene, scene->plan.thickness) - spelch_scene_y (scene, 0));
  assert_standard_scale (page->view.ratio);
  g_assert_cmpfloat_with_epsilon (thickness * page->view.unit, scene->plan.thickness * page->view.ratio,
                                  1e-6);
}

static void
check_boxes (Trial *trial)
{
  SpelchWork work;
  g_autofree SpelchTask *task = g_new0 (SpelchTask, 1);
  fill_work (&work, task, trial);
  /* Either paper, either unit, in turn. */
  int form = g_rand_int_range (trial->random, 0, 4);
  {
    g_autoptr (SpelchSheet) sheet
        = sheet_of (&work, form % 2 == 0 ? SPELCH_PAPER_A4 : SPELCH_PAPER_LETTER,
                    form / 2 == 0 ? SPELCH_UNIT_MM : SPELCH_UNIT_INCH,
                    g_rand_boolean (trial->random) ? SPELCH_INCH_FRACTION : SPELCH_INCH_DECIMAL);
    const SpelchSheetPage *page = sheet->pages->pdata[1];
    g_assert_cmpuint (spelch_sheet_pages (sheet), ==, 2);
    for (guint i = 0; i < 2; i++)
      assert_apart (sheet, i);
    assert_way_up_apart (page);
    assert_view_apart (page->view.scene);
    assert_lines_apart (page->view.scene);
    assert_units_whole (page);
    assert_width (page->view.scene);
    for (guint i = 0; i < SPELCH_N_LABELS; i++)
      if (page->view.scene->labels[i].layout != NULL)
        assert_words_whole (page->view.scene->labels[i].layout);
    assert_true_view (page);
  }
  trial->counts = true;
}

/* 2000 cuts in English, half as many in another language. */
static void
test_boxes (gconstpointer translated)
{
  trial_run (20260531, translated != NULL ? 0.01 : 0.02, 1, check_boxes);
}

/* ---- What is written ---- */

/* All words of a page, a line each. */
static char *
words_of (const SpelchSheet *sheet, guint page)
{
  g_autofree char *words = spelch_sheet_words (sheet, page);
  g_autoptr (GString) plain = g_string_new ("\n");
  g_string_append (plain, words);
  g_string_replace (plain, "\u00a0", " ", 0);
  return g_strdup (plain->str);
}

static void
assert_says (const char *words, const char *line)
{
  g_autofree char *whole = g_strdup_printf ("\n%s\n", line);
  if (strstr (words, whole) == NULL)
    g_error ("the page doesn't say “%s” but:%s", line, words);
}

/* Millimetres as a person reads them, at most two decimals. */
static char *
mm (double value)
{
  char digits[G_ASCII_DTOSTR_BUF_SIZE];
  g_ascii_formatd (digits, sizeof digits, "%.2f", fabs (value));
  char *end = digits + strlen (digits);
  while (end[-1] == '0')
    *--end = '\0';
  if (end[-1] == '.')
    *--end = '\0';
  return g_strdup_printf ("%s%s mm", value < -0.004 ? "−" : "", digits);
}

/* A whole number in groups of three. */
static char *
grouped (double value)
{
  int whole = (int)round (value);
  return whole >= 1000 ? g_strdup_printf ("%d\u202f%03d", whole / 1000, whole % 1000)
                       : g_strdup_printf ("%d", whole);
}

static void
assert_depths (const char *words, const SpelchTask *task)
{
  const SpelchPlan *plan = &task->plan;
  for (guint i = 0; i < plan->n_passes; i++)
    {
      g_autofree char *tip = mm (plan->passes[i].tip_mm);
      bool gantry = plan->machine == SPELCH_MACHINE_GANTRY;
      g_autofree char *rest
          = mm (plan->thickness + (gantry ? task->cut.backer.mm : 0) - plan->passes[i].tip_mm);
      assert_says (words, tip);
      assert_says (words, rest);
    }
}

static void
assert_setting (const char *words, const SpelchPart *part, const SpelchPlan *plan)
{
  g_autofree char *stick_out = mm (plan->stick_out_mm), *collet = mm (plan->in_collet_mm);
  g_autofree char *speed = grouped (plan->speed_rpm), *feed = grouped (plan->feed_mm_min);
  g_autofree char *feed_line = g_strdup_printf ("%s mm/min", feed);
  g_autoptr (GString) speed_line = g_string_new (NULL);
  g_string_printf (speed_line, "%s rpm", speed);
  for (guint i = 0; i < part->machine.n_steps; i++)
    if (part->machine.steps_rpm[i] == plan->speed_rpm)
      g_string_append_printf (speed_line, ", dial step %u", i + 1);
  assert_says (words, stick_out);
  assert_says (words, plan->in_collet_mm > 0 ? collet : "not known");
  assert_says (words, speed_line->str);
  assert_says (words, feed_line);
}

static void
assert_grades (const char *words, const SpelchPlan *plan)
{
  for (int side = SPELCH_SIDE_MOTOR; side <= SPELCH_SIDE_FAR; side++)
    {
      const SpelchEdge *edge = spelch_plan_worst (plan, (SpelchSide)side);
      if (edge != NULL)
        assert_says (words, spelch_words_grade (edge->grade, spelch_plan_facing (plan, (SpelchSide)side)));
    }
}

/* Every open question has its box to tick. */
static void
assert_questions (const SpelchSheet *sheet, const char *words, const SpelchTask *task)
{
  SpelchNumbers numbers = { SPELCH_UNIT_MM, SPELCH_INCH_FRACTION, '.', SPELCH_FEED_AS_LENGTHS };
  guint asked = 0, ticks = 0;
  for (guint i = 0; i < task->plan.n_stops; i++)
    if (task->plan.stops[i].kind >= SPELCH_ASK_SPEED_MARK)
      {
        g_autofree char *question = spelch_words_stop (&task->plan.stops[i], &numbers);
        assert_says (words, question);
        asked++;
      }
  for (guint i = 0; i < spelch_sheet_boxes (sheet, 1); i++)
    ticks += spelch_sheet_box (sheet, 1, i).kind == SPELCH_BOX_TICK;
  g_assert_cmpuint (ticks, ==, asked + !spelch_task_stops (task));
}

/* Nothing by which it could be cut. */
static void
assert_forbids (const SpelchSheet *sheet, const char *words, const SpelchTask *task)
{
  SpelchNumbers numbers = { SPELCH_UNIT_MM, SPELCH_INCH_FRACTION, '.', SPELCH_FEED_AS_LENGTHS };
  bool across = false, reason = false;
  for (guint i = 0; i < spelch_sheet_boxes (sheet, 1); i++)
    across |= spelch_sheet_box (sheet, 1, i).kind == SPELCH_BOX_ACROSS;
  g_assert_true (across);
  for (guint i = 0; i < task->plan.n_stops; i++)
    if (task->plan.stops[i].kind < SPELCH_ASK_SPEED_MARK)
      {
        g_autofree char *sentence = spelch_words_stop (&task->plan.stops[i], &numbers);
        assert_says (words, sentence);
        reason = true;
      }
  g_assert_true (reason);
  g_assert_null (strstr (words, "mm/min"));
  g_assert_null (strstr (words, "Spindle"));
  g_assert_null (strstr (words, "below the near face"));
}

/* The first page doesn't pass a grade off as if it would do. */
static void
assert_accepted (const SpelchSheet *sheet, const SpelchPart *part, const SpelchPlan *plan)
{
  g_autofree char *cover = words_of (sheet, 0);
  bool all = true;
  for (int side = SPELCH_SIDE_MOTOR; side <= SPELCH_SIDE_FAR; side++)
    {
      const SpelchEdge *edge = spelch_plan_worst (plan, (SpelchSide)side);
      if (edge == NULL || edge->grade <= (edge->seen ? part->accepted_seen : part->accepted_hidden))
        continue;
      g_autofree char *refused
          = g_strdup_printf ("%s side %s (not accepted)", side == SPELCH_SIDE_MOTOR ? "motor" : "far",
                             spelch_words_grade (edge->grade, spelch_plan_facing (plan, (SpelchSide)side)));
      g_assert_nonnull (strstr (cover, refused));
      all = false;
    }
  g_assert_true (all == (strstr (cover, "not accepted") == NULL));
}

static void
check_words (Trial *trial)
{
  SpelchWork work;
  g_autofree SpelchTask *task = g_new0 (SpelchTask, 1);
  fill_work (&work, task, trial);
  g_autoptr (SpelchSheet) sheet = sheet_of (&work, SPELCH_PAPER_A4, SPELCH_UNIT_MM, SPELCH_INCH_FRACTION);
  g_autofree char *words = words_of (sheet, 1);
  assert_grades (words, &task->plan);
  assert_questions (sheet, words, task);
  if (spelch_task_stops (task))
    {
      assert_forbids (sheet, words, task);
      return;
    }
  assert_accepted (sheet, trial->part, &task->plan);
  assert_depths (words, task);
  assert_setting (words, trial->part, &task->plan);
  trial->counts = true;
}

static void
test_words (void)
{
  trial_run (20260601, 0.01, 6, check_words);
}

/* Cuts without a bit can't be cut. Where only the first and the third can, the others' pages are told in one.
 */
static void
test_pages (void)
{
  g_autoptr (SpelchPart) part = spelch_shop_demo ();
  g_autofree SpelchTask *tasks = g_new0 (SpelchTask, 7);
  const SpelchWork work = { .part = part, .n = 7, .tasks = tasks };
  for (guint i = 0; i < 7; i++)
    {
      tasks[i].cut = part->cuts[0];
      tasks[i].has_bit = i == 0 || i == 2;
      tasks[i].bit = part->bits[0];
      spelch_plan_make (spelch_shop_constants (), part, &tasks[i].cut, &tasks[i].bit, &tasks[i].plan);
    }
  g_autoptr (SpelchSheet) sheet = sheet_of (&work, SPELCH_PAPER_A4, SPELCH_UNIT_MM, SPELCH_INCH_FRACTION);
  g_autofree char *cover = words_of (sheet, 0);
  assert_says (cover, "Do not cut as planned: pages 3, 5–8.");
}

int
main (int argc, char **argv)
{
  const char *messages = g_getenv ("SPELCH_LOCALE_DIR");
  setlocale (LC_ALL, "");
  g_test_init (&argc, &argv, NULL);
  if (messages != NULL)
    {
      bindtextdomain (GETTEXT_PACKAGE, messages);
      bind_textdomain_codeset (GETTEXT_PACKAGE, "UTF-8");
    }
  g_test_add_data_func ("/sheet/boxes", messages, test_boxes);
  if (messages == NULL)
    {
      g_test_add_func ("/sheet/words", test_words);
      g_test_add_func ("/sheet/pages", test_pages);
    }
  return g_test_run ();
}
