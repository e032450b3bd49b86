/* SPDX-License-Identifier: GPL-3.0-or-later
 *
 * Edits of the list of cuts and of what is said of a part, without a window: what they change and what they
 * leave alone, and what a form of a cut comes to.
 */
#include "bench/cut-fields.h"
#include "bench/part-edits.h"
#include "files/part-file.h"
#include "files/shop-data.h"
#include "plan/plan.h"

#include <math.h>
#include <string.h>

static void
assert_faultless (const SpelchPart *part)
{
  g_autofree char *fault = spelch_part_fault (part);
  g_assert_cmpstr (fault, ==, NULL);
}

/* "outline,dado,..." Free with g_free(). */
static char *
ids_of (const SpelchPart *part)
{
  GString *ids = g_string_new (NULL);
  for (guint i = 0; i < part->n_cuts; i++)
    g_string_append_printf (ids, "%s%s", i == 0 ? "" : ",", part->cuts[i].id);
  return g_string_free (ids, FALSE);
}

static void
assert_ids (const SpelchPart *part, const char *expected)
{
  g_autofree char *ids = ids_of (part);
  g_assert_cmpstr (ids, ==, expected);
}

static SpelchPart *
nothing (guint board)
{
  guint n = 0;
  const SpelchBoard *boards = spelch_shop_boards (&n);
  g_assert_cmpuint (board, <, n);
  return spelch_part_from_nothing ("Try", &boards[board], &spelch_shop_machines (&n)[0]);
}

/* Takes @part. */
static SpelchPart *
with_cut (SpelchPart *part, SpelchCutKind kind)
{
  g_autoptr (SpelchPart) before = part;
  SpelchCut cut = spelch_cut_start (before, kind);
  return spelch_edit_add_cut (before, &cut, before->n_cuts);
}

/* Every kind, begun in every starter board, has no fault and can be planned, read and written. */
static void
test_start (void)
{
  guint n_boards = 0;
  spelch_shop_boards (&n_boards);
  for (guint board = 0; board < n_boards; board++)
    {
      g_autoptr (SpelchPart) part = nothing (board);
      assert_faultless (part);
      for (guint kind = 0; kind < SPELCH_CUT_KIND_CODES.n; kind++)
        part = with_cut (g_steal_pointer (&part), (SpelchCutKind)kind);
      assert_faultless (part);
      assert_ids (part, "outline,dado,rabbet,pocket,mortise,slot,trim,hole");
      g_autofree char *text = spelch_part_to_json (part);
      g_autoptr (GError) error = NULL;
      g_autoptr (SpelchPart) again = spelch_part_from_json (text, strlen (text), "again", &error);
      g_assert_no_error (error);
      g_autofree char *text_again = spelch_part_to_json (again);
      g_assert_cmpstr (text_again, ==, text);
    }
}

static void
assert_sixteenths (const SpelchLength *length, const char *what)
{
  double steps = length->mm / SPELCH_MM_PER_INCH * 16;
  g_test_message ("%s: %g mm", what, length->mm);
  g_assert_cmpfloat_with_epsilon (steps, round (steps), 1e-9);
}

/* Where lengths are in inches, every kind begins with sizes a tape shows, in every starter board; a dado
 * stays as wide as the board that goes into it is sold. */
static void
test_start_in_inches (void)
{
  guint n_boards = 0;
  spelch_shop_boards (&n_boards);
  for (guint board = 0; board < n_boards; board++)
    for (guint kind = 0; kind < SPELCH_CUT_KIND_CODES.n; kind++)
      {
        g_autoptr (SpelchPart) part = nothing (board);
        SpelchCut cut = spelch_cut_start (part, (SpelchCutKind)kind);
        spelch_cut_round_to_inches (part, &cut);
        g_autofree char *fault = spelch_cut_fault (&cut, &part->board);
        g_assert_null (fault);
        assert_sixteenths (&cut.length, "length");
        assert_sixteenths (&cut.tabs.width, "width of a tab");
        if (kind == SPELCH_CUT_DADO)
          g_assert_cmpfloat (cut.width.mm, ==, fmax (part->board.nominal.mm, 1));
        else
          assert_sixteenths (&cut.width, "width");
        assert_sixteenths (&cut.depth, "depth");
      }
}

/* A cut of any kind can be made one of any other. */
static void
test_of_kind (void)
{
  g_autoptr (SpelchPart) part = nothing (0);
  for (guint from = 0; from < SPELCH_CUT_KIND_CODES.n; from++)
    for (guint to = 0; to < SPELCH_CUT_KIND_CODES.n; to++)
      {
        SpelchCut cut = spelch_cut_start (part, (SpelchCutKind)from);
        cut.from_edge = spelch_length_mm (spelch_cut_has_two_walls (&cut) ? 30 : 0);
        SpelchCut other = spelch_cut_of_kind (part, &cut, (SpelchCutKind)to);
        g_autofree char *fault = spelch_cut_fault (&other, &part->board);
        g_assert_cmpstr (fault, ==, NULL);
        g_assert_cmpint ((int)other.kind, ==, (int)to);
        g_assert_cmpstr (other.name, ==, cut.name);
      }
}

static void
test_names (void)
{
  g_autoptr (SpelchPart) part = with_cut (nothing (0), SPELCH_CUT_DADO);
  part = with_cut (g_steal_pointer (&part), SPELCH_CUT_DADO);
  assert_ids (part, "dado,dado-2");
  g_assert_cmpstr (part->cuts[1].name, ==, "Dado or groove 2");
  g_autoptr (SpelchPart) more = spelch_edit_duplicate_cut (part, 1);
  assert_ids (more, "dado,dado-2,dado-3");
  g_assert_cmpstr (more->cuts[2].name, ==, "Dado or groove 3");
  g_autoptr (SpelchPart) shown = spelch_part_copy (part);
  memset (shown->cuts[0].name, 0, SPELCH_NAME_SIZE);
  for (guint i = 0; i + 2 < SPELCH_NAME_SIZE; i += 2)
    memcpy (shown->cuts[0].name + i, "ä", 2);
  g_autoptr (SpelchPart) lengthy = spelch_edit_duplicate_cut (shown, 0);
  g_assert_true (g_utf8_validate (lengthy->cuts[1].name, -1, NULL));
  assert_faultless (lengthy);
}

static void
test_list (void)
{
  g_autoptr (SpelchPart) demo = spelch_shop_demo ();
  g_autofree char *before = spelch_part_to_json (demo);
  g_autofree char *ids = ids_of (demo);
  g_auto (GStrv) id = g_strsplit (ids, ",", -1);
  guint n = demo->n_cuts;
  g_assert_cmpuint (n, >=, 3);

  g_autoptr (SpelchPart) twice = spelch_edit_duplicate_cut (demo, 0);
  g_assert_cmpuint (twice->n_cuts, ==, n + 1);
  g_assert_cmpstr (twice->cuts[0].id, ==, id[0]);
  g_assert_cmpstr (twice->cuts[2].id, ==, id[1]);
  assert_faultless (twice);
  SpelchCut copy = twice->cuts[1];
  memcpy (copy.id, demo->cuts[0].id, sizeof copy.id);
  memcpy (copy.name, demo->cuts[0].name, sizeof copy.name);
  g_assert_cmpmem (&copy, sizeof copy, &demo->cuts[0], sizeof copy);

  g_autoptr (SpelchPart) once = spelch_edit_delete_cut (twice, 1);
  g_autofree char *after = spelch_part_to_json (once);
  g_assert_cmpstr (after, ==, before);

  g_autoptr (SpelchPart) down = spelch_edit_move_cut (demo, 0, 2);
  g_assert_cmpstr (down->cuts[0].id, ==, id[1]);
  g_assert_cmpstr (down->cuts[1].id, ==, id[2]);
  g_assert_cmpstr (down->cuts[2].id, ==, id[0]);
  g_autoptr (SpelchPart) up = spelch_edit_move_cut (down, 2, 0);
  g_autofree char *back = spelch_part_to_json (up);
  g_assert_cmpstr (back, ==, before);
  g_autoptr (SpelchPart) last = spelch_edit_move_cut (demo, 0, n + 5);
  g_assert_cmpstr (last->cuts[n - 1].id, ==, id[0]);

  /* The first part never changed. */
  g_autofree char *still = spelch_part_to_json (demo);
  g_assert_cmpstr (still, ==, before);
}

static void
test_seen (void)
{
  g_autoptr (SpelchPart) demo = spelch_shop_demo ();
  g_autoptr (SpelchPart) other = spelch_edit_seen (demo, 0, SPELCH_FACE_B);
  g_assert_true (other->cuts[0].seen_b == !demo->cuts[0].seen_b);
  g_assert_true (other->cuts[0].seen_a == demo->cuts[0].seen_a);
  g_autoptr (SpelchPart) back = spelch_edit_seen (other, 0, SPELCH_FACE_B);
  g_assert_true (back->cuts[0].seen_b == demo->cuts[0].seen_b);
}

/* ---- Forms ---- */

/* Its bits are to be freed. */
static SpelchCutChoices
choices_of (SpelchPart *part, guint index)
{
  SpelchCutChoices choices = { .part = part, .index = index };
  guint n = 0;
  const SpelchBit *bits = spelch_shop_bits (&n);
  choices.bits = g_new (SpelchBit, n + part->n_bits);
  for (guint i = 0; i < part->n_bits; i++)
    choices.bits[choices.n_bits++] = part->bits[i];
  for (guint i = 0; i < n; i++)
    if (spelch_part_find_bit (part, bits[i].id) < 0)
      choices.bits[choices.n_bits++] = bits[i];
  return choices;
}

/* Looking at a cut or a part in its form changes nothing. */
static void
test_draft_is_whole (void)
{
  g_autoptr (SpelchPart) demo = spelch_shop_demo ();
  g_autofree char *before = spelch_part_to_json (demo);
  for (guint i = 0; i < demo->n_cuts; i++)
    {
      SpelchCutChoices choices = choices_of (demo, i);
      SpelchCutDraft draft = spelch_cut_draft (&demo->cuts[i], &choices);
      g_autoptr (SpelchPart) same = spelch_cut_drafted_part (&draft, &choices);
      g_autofree char *after = spelch_part_to_json (same);
      g_autofree char *fault = spelch_cut_draft_fault (&draft, &choices);
      g_assert_cmpstr (after, ==, before);
      g_assert_cmpstr (fault, ==, NULL);
      g_free (choices.bits);
    }
  SpelchPartDraft draft = spelch_part_draft (demo);
  g_autoptr (SpelchPart) same = spelch_part_drafted (demo, &draft);
  g_autofree char *after = spelch_part_to_json (same);
  g_assert_cmpstr (after, ==, before);
}

static bool
shows (const SpelchCutDraft *draft, const char *label)
{
  const char *const none[] = { NULL };
  guint n = 0;
  g_autofree SpelchField *fields = spelch_cut_fields (none, &n);
  for (guint i = 0; i < n; i++)
    if (g_str_equal (fields[i].label, label) && (fields[i].applies == NULL || fields[i].applies (draft)))
      return true;
  return false;
}

/* What each kind asks for, by the meaning of the kind: an outline has no depth, a hole no length. */
static void
test_fields_by_kind (void)
{
  const struct
  {
    const char *label;
    const char *kinds; /* a letter for each kind in order: outline, dado ... hole */
  } cases[] = {
    { "Name", "odrpmsth" },
    { "How many", "odrpmsth" },
    { "Right through", "drpmsh" },
    { "Depth", "drpmsh" },
    { "Width", "dpms" },
    { "Width of the step", "r" },
    { "Taken off", "t" },
    { "Diameter", "h" },
    { "Width given by", "dms" },
    { "From the edge", "dms" },
    { "Length", "drmst" },
    { "Inside corners", "opm" },
    { "Wall that stays", "ort" },
    { "Begins", "drmst" },
    { "Direction", "drmst" },
    { "Tabs", "ot" },
    { "Way round it", "op" },
    { "Backing board", "ot" },
    { "Passes", "odrpmsth" },
    { "Depth of scoring", "" },
    { "Skin left", "" },
    { "Slope of the entry", "" },
    { "Thickness of that part", "" },
  };
  const char letters[] = "odrpmsth";
  g_assert_cmpuint (strlen (letters), ==, SPELCH_N_CUT_KINDS);
  g_autoptr (SpelchPart) part = nothing (0);
  SpelchCutChoices choices = { .part = part };
  for (guint i = 0; i < G_N_ELEMENTS (cases); i++)
    for (guint kind = 0; kind < SPELCH_CUT_KIND_CODES.n; kind++)
      {
        SpelchCut cut = spelch_cut_start (part, (SpelchCutKind)kind);
        SpelchCutDraft draft = spelch_cut_draft (&cut, &choices);
        bool wanted = strchr (cases[i].kinds, letters[kind]) != NULL;
        g_test_message ("%s of %c", cases[i].label, letters[kind]);
        g_assert_true (shows (&draft, cases[i].label) == wanted);
      }
}

/* 35 mm once round can't be a cup of 35 mm, which takes 35 pi, 110 mm; nor can 50 be a pocket 35 wide with
 * sharp corners, which takes 70 and a little. */
static void
test_pocket (void)
{
  const struct
  {
    double round, corners;
    const char *fault; /* what it says; NULL: none */
  } cases[] = {
    { 35, 17.5, "at least 110 mm" }, { 60, 17.5, "at least 110 mm" }, { 110, 17.5, NULL },
    { 109.96, 17.5, NULL },          { 50, 0, "at least 71 mm" },     { 75, 0, NULL },
  };
  g_autoptr (SpelchPart) part = with_cut (nothing (0), SPELCH_CUT_POCKET);
  SpelchCutChoices choices = { .part = part, .index = 0 };
  for (guint i = 0; i < G_N_ELEMENTS (cases); i++)
    {
      SpelchCut cut = part->cuts[0];
      cut.width = spelch_length_mm (35);
      cut.length = spelch_length_mm (cases[i].round);
      cut.corner_radius = spelch_length_mm (cases[i].corners);
      SpelchCutDraft draft = spelch_cut_draft (&cut, &choices);
      g_autofree char *fault = spelch_cut_draft_fault (&draft, &choices);
      g_test_message ("%s", fault != NULL ? fault : "no fault");
      g_assert_true (cases[i].fault == NULL
                         ? fault == NULL
                         : g_str_has_prefix (fault, "length (") && strstr (fault, cases[i].fault));
      /* What a file has that way doesn't keep the rest from being changed. */
      g_autoptr (SpelchPart) had = spelch_edit_cut (part, 0, &cut);
      SpelchCutChoices later = { .part = had, .index = 0 };
      g_autofree char *none = spelch_cut_draft_fault (&draft, &later);
      g_assert_null (none);
    }
  SpelchCut start = spelch_cut_start (part, SPELCH_CUT_POCKET);
  g_assert_cmpfloat (start.length.mm, >=, spelch_cut_pocket_round (&start));
}

static void
test_fields_by_answer (void)
{
  g_autoptr (SpelchPart) part = with_cut (nothing (0), SPELCH_CUT_DADO);
  SpelchCutChoices choices = choices_of (part, 0);
  SpelchCutDraft draft = spelch_cut_draft (&part->cuts[0], &choices);
  draft.width_by = 1;
  g_assert_true (shows (&draft, "Thickness of that part") && shows (&draft, "Clearance"));
  g_assert_false (shows (&draft, "Width"));
  /* It begins as wide as a part of the same board is thick, and going back keeps that width. */
  g_assert_null (spelch_cut_draft_fault (&draft, &choices));
  SpelchCut fitted = spelch_cut_drafted (&draft, &choices);
  g_assert_cmpfloat (fitted.mating.thickness.mm, ==, spelch_board_thickness (&part->board));
  SpelchCutDraft back = spelch_cut_draft (&fitted, &choices);
  back.width_by = 0;
  SpelchCut wide = spelch_cut_drafted (&back, &choices);
  g_assert_false (wide.mating.told);
  g_assert_cmpfloat (wide.width.mm, ==, spelch_board_thickness (&part->board));
  /* A thickness that is taken out again is asked for. */
  back = spelch_cut_draft (&fitted, &choices);
  back.cut.mating.thickness = spelch_length_mm (0);
  g_autofree char *fault = spelch_cut_draft_fault (&back, &choices);
  g_assert_true (g_str_has_prefix (fault, "mating.thickness"));
  draft.cut.mating.thickness = spelch_length_mm (17.8);
  draft.cut.mating.clearance = spelch_length_mm (0.1);
  SpelchCut cut = spelch_cut_drafted (&draft, &choices);
  g_assert_cmpfloat_with_epsilon (spelch_cut_width (&cut), 17.9, 1e-9);
  g_assert_cmpfloat (cut.width.mm, ==, 0);

  /* Scored with a bit from the drawer: the part gets its copy, and the plan begins with it. */
  draft.plan = 1 + SPELCH_PASS_PLAN_SCORED;
  draft.scorer = 1;
  g_assert_true (shows (&draft, "Depth of scoring") && shows (&draft, "Scored with"));
  draft.cut.held.score = spelch_length_mm (1.6);
  g_autoptr (SpelchPart) scored = spelch_cut_drafted_part (&draft, &choices);
  assert_faultless (scored);
  g_assert_cmpuint (scored->n_bits, ==, 1);
  g_assert_cmpstr (scored->cuts[0].held.score_bit, ==, choices.bits[0].id);
  g_assert_true (spelch_held_plans (&scored->cuts[0].held, SPELCH_PASS_PLAN_SCORED));

  /* Following the recommendation again leaves nothing behind. */
  draft.plan = 0;
  SpelchCut loose = spelch_cut_drafted (&draft, &choices);
  g_assert_false (loose.held.plan_held);
  g_assert_cmpfloat (loose.held.score.mm, ==, 0);
  g_assert_cmpstr (loose.held.score_bit, ==, "");
  g_free (choices.bits);
}

static void
test_part_draft (void)
{
  g_autoptr (SpelchPart) demo = spelch_shop_demo ();
  SpelchPartDraft draft = spelch_part_draft (demo);
  SpelchPart *base = demo;
  g_strlcpy (draft.name, "", sizeof draft.name);
  g_autofree char *fault = spelch_part_draft_fault (&draft, &base);
  g_assert_true (g_str_has_prefix (fault, "name"));
  g_strlcpy (draft.name, "Side", sizeof draft.name);
  draft.accepted_seen = 1;
  draft.area_cm2 = 1500;
  g_autoptr (SpelchPart) next = spelch_part_drafted (demo, &draft);
  g_assert_cmpint (next->accepted_seen, ==, 2);
  g_assert_cmpfloat (next->holding.area_mm2, ==, 150000);
  draft.holding.vacuum_kpa = 150;
  g_autofree char *too_much = spelch_part_draft_fault (&draft, &base);
  g_assert_true (g_str_has_prefix (too_much, "holding.vacuum_kpa"));
}

int
main (int argc, char **argv)
{
  g_test_init (&argc, &argv, NULL);
  g_test_add_func ("/bench/part-edits/start", test_start);
  g_test_add_func ("/bench/part-edits/start-in-inches", test_start_in_inches);
  g_test_add_func ("/bench/part-edits/of-kind", test_of_kind);
  g_test_add_func ("/bench/part-edits/names", test_names);
  g_test_add_func ("/bench/part-edits/list", test_list);
  g_test_add_func ("/bench/part-edits/seen", test_seen);
  g_test_add_func ("/bench/part-edits/draft-is-whole", test_draft_is_whole);
  g_test_add_func ("/bench/part-edits/fields-by-kind", test_fields_by_kind);
  g_test_add_func ("/bench/part-edits/pocket", test_pocket);
  g_test_add_func ("/bench/part-edits/fields-by-answer", test_fields_by_answer);
  g_test_add_func ("/bench/part-edits/part", test_part_draft);
  return g_test_run ();
}
