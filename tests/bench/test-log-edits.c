/* SPDX-License-Identifier: GPL-3.0-or-later
 *
 * What the shop log, a cut that is done and a sharpened bit make of a part; and a log on a shelf.
 */
#include "bench/log-edits.h"
#include "bench/log-fields.h"
#include "bench/shelf-files.h"
#include "bench/shelf.h"
#include "bench/shelves.h"
#include "files/shop-data.h"

#include <glib/gstdio.h>
#include <string.h>

#define BIT   "compression-6.35x22"
#define BOARD "birch-ply-18"

typedef struct
{
  SpelchPart *part;
  SpelchBit bit;
  SpelchPlan plan;
} Fixture;

static void
set_up (Fixture *f, gconstpointer data)
{
  f->part = spelch_shop_demo ();
  f->bit = f->part->bits[spelch_part_find_bit (f->part, BIT)];
  g_assert_cmpstr (f->part->board.id, ==, BOARD);
  spelch_plan_make (spelch_shop_constants (), f->part, &f->part->cuts[0], &f->bit, &f->plan);
}

static void
tear_down (Fixture *f, gconstpointer data)
{
  spelch_part_unref (f->part);
}

/* Two edges on the motor side that came out at @grade where clean was foretold. */
static void
fill (SpelchLogEntry entries[2], int grade)
{
  for (int i = 0; i < 2; i++)
    {
      entries[i] = (SpelchLogEntry){ .predicted = 1, .grade = grade, .power_w = 100, .load_w = 120 };
      g_strlcpy (entries[i].board, BOARD, sizeof entries[i].board);
      g_strlcpy (entries[i].bit, BIT, sizeof entries[i].bit);
      g_strlcpy (entries[i].date, i == 0 ? "2026-05-30" : "2026-05-31", sizeof entries[i].date);
    }
}

static void
test_states (Fixture *f, gconstpointer data)
{
  const SpelchConstants *k = spelch_shop_constants ();
  SpelchLogEntry entries[2];
  fill (entries, 3);
  g_assert_cmpint (spelch_log_state (k, f->part, BOARD, &f->bit, entries, 1), ==, SPELCH_LOG_NOTHING);
  g_assert_cmpint (spelch_log_state (k, f->part, "mdf-18", &f->bit, entries, 2), ==, SPELCH_LOG_OTHER_BOARD);
  g_assert_cmpint (spelch_log_state (k, f->part, BOARD, &f->bit, entries, 2), ==, SPELCH_LOG_NOT_TAKEN);
  g_autoptr (SpelchPart) taken = spelch_edit_take_edges (k, f->part, &f->bit, entries, 2);
  g_assert_cmpint (spelch_log_state (k, taken, BOARD, &f->bit, entries, 2), ==, SPELCH_LOG_TAKEN);
  g_assert_cmpint (taken->corrections[0].motor.points, ==, 1);
  g_assert_cmpstr (taken->calibration.board, ==, "");
  g_assert_cmpuint (f->part->n_corrections, ==, 0);
  g_assert_cmpint (spelch_log_state (k, taken, BOARD, &f->bit, entries, 1), ==, SPELCH_LOG_OLD);
  g_autoptr (SpelchPart) off = spelch_edit_switch_edges (taken, BOARD, BIT, true);
  g_assert_cmpint (spelch_log_state (k, off, BOARD, &f->bit, entries, 2), ==, SPELCH_LOG_OFF);
  g_autoptr (SpelchPart) on = spelch_edit_switch_edges (off, BOARD, BIT, false);
  g_assert_cmpint (spelch_log_state (k, on, BOARD, &f->bit, entries, 2), ==, SPELCH_LOG_TAKEN);
  g_autoptr (SpelchPart) dropped = spelch_edit_take_edges (k, taken, &f->bit, entries, 1);
  g_assert_cmpuint (dropped->n_corrections, ==, 0);
}

static void
test_forces (Fixture *f, gconstpointer data)
{
  SpelchLogEntry entries[2];
  fill (entries, 1);
  g_assert_cmpint (spelch_log_state_of_forces (f->part, BOARD, entries, 0), ==, SPELCH_LOG_NOTHING);
  g_assert_cmpint (spelch_log_state_of_forces (f->part, "mdf-18", entries, 2), ==, SPELCH_LOG_OTHER_BOARD);
  g_assert_cmpint (spelch_log_state_of_forces (f->part, BOARD, entries, 1), ==, SPELCH_LOG_NOT_TAKEN);
  g_autoptr (SpelchPart) taken = spelch_edit_take_forces (f->part, entries, 1);
  g_assert_cmpfloat_with_epsilon (taken->calibration.factor, 1.2, 1e-12);
  g_assert_cmpint (spelch_log_state_of_forces (taken, BOARD, entries, 1), ==, SPELCH_LOG_TAKEN);
  g_assert_cmpint (spelch_log_state_of_forces (taken, BOARD, entries, 2), ==, SPELCH_LOG_OLD);
  g_autoptr (SpelchPart) off = spelch_edit_switch_forces (taken, true);
  g_assert_cmpint (spelch_log_state_of_forces (off, BOARD, entries, 1), ==, SPELCH_LOG_OFF);
  g_autoptr (SpelchPart) none = spelch_edit_switch_forces (f->part, true);
  g_assert_false (none->calibration.off);
}

/* Only what is learnt is followed, and nothing that was switched off. */
static void
test_follow (Fixture *f, gconstpointer data)
{
  const SpelchConstants *k = spelch_shop_constants ();
  SpelchLogEntry entries[2];
  fill (entries, 3);
  g_assert_null (spelch_edit_follow_log (k, f->part, &f->bit, entries, 0));
  g_autoptr (SpelchPart) one = spelch_edit_follow_log (k, f->part, &f->bit, entries, 1);
  g_assert_cmpuint (one->n_corrections, ==, 0);
  g_assert_cmpuint (one->calibration.readings, ==, 1);
  g_autoptr (SpelchPart) two = spelch_edit_follow_log (k, one, &f->bit, entries, 2);
  g_assert_cmpuint (two->n_corrections, ==, 1);
  g_assert_cmpuint (two->calibration.readings, ==, 2);
  g_assert_null (spelch_edit_follow_log (k, two, &f->bit, entries, 2));
  g_assert_null (spelch_edit_follow_log (k, two, &f->bit, entries, 0));
  g_autoptr (SpelchPart) off = spelch_edit_switch_edges (two, BOARD, BIT, true);
  entries[1].grade = 4;
  g_strlcpy (entries[1].date, "2026-06-02", sizeof entries[1].date);
  g_assert_null (spelch_edit_follow_log (k, off, &f->bit, entries, 2));
}

static void
test_outcome (Fixture *f, gconstpointer data)
{
  SpelchOutcome outcome = spelch_outcome_start (&f->plan, "2026-05-31");
  SpelchLogEntry entries[2];
  const SpelchCut *cut = &f->part->cuts[0];
  g_assert_true (outcome.cuts[SPELCH_SIDE_MOTOR] && outcome.cuts[SPELCH_SIDE_FAR]);
  g_assert_null (spelch_outcome_fault (&outcome));
  g_assert_cmpuint (spelch_outcome_entries (&outcome, f->part, cut, &f->bit, &f->plan, "", entries), ==, 0);
  outcome.came_out[SPELCH_SIDE_MOTOR] = 5;
  outcome.came_out[SPELCH_SIDE_FAR] = 1;
  outcome.load_w = 300;
  outcome.burnt = true;
  g_assert_cmpuint (spelch_outcome_entries (&outcome, f->part, cut, &f->bit, &f->plan, "state", entries), ==,
                    2);
  g_assert_true (spelch_log_entry_at_motor (&entries[0]) && !spelch_log_entry_at_motor (&entries[1]));
  g_assert_cmpint (spelch_log_entry_grade (&entries[0]), ==, 4);
  g_assert_true (!entries[0].as_predicted && entries[1].as_predicted);
  g_assert_cmpint (entries[1].grade, ==, 0);
  g_assert_cmpfloat (entries[0].load_w, ==, 300); /* one reading isn't counted twice */
  g_assert_cmpfloat (entries[1].load_w, ==, 0);
  for (int i = 0; i < 2; i++)
    {
      g_autofree char *fault = NULL;
      g_assert_cmpstr (entries[i].date, ==, "2026-05-31");
      g_assert_cmpstr (entries[i].revision, ==, "state");
      g_assert_cmpstr (entries[i].bit, ==, BIT);
      g_assert_true (entries[i].burnt);
      g_assert_cmpuint (entries[i].n_passes, ==, f->plan.n_passes);
      g_strlcpy (entries[i].id, "an-id", sizeof entries[i].id);
      fault = spelch_log_entry_fault (&entries[i]);
      g_assert_cmpstr (fault, ==, NULL);
    }
  g_strlcpy (outcome.date, "yesterday", sizeof outcome.date);
  g_autofree char *fault = spelch_outcome_fault (&outcome);
  g_assert_nonnull (strstr (fault, "yesterday"));
}

/* The way of the cut, by the bit that makes it: both passes of the outline, gone round once each. */
static void
test_done (Fixture *f, gconstpointer data)
{
  double way = f->part->cuts[0].length.mm * f->plan.n_passes * MAX (f->part->cuts[0].quantity, 1);
  int at = spelch_part_find_bit (f->part, BIT);
  g_assert_cmpfloat_with_epsilon (spelch_wear_metres (&f->plan), way / 1000, way * 0.01 / 1000);
  g_assert_cmpfloat (spelch_wear_metres_scoring (&f->plan), ==, 0);
  g_autoptr (SpelchPart) done = spelch_edit_done (f->part, 0, &f->bit, &f->plan);
  g_assert_cmpfloat (done->bits[at].metres_cut, ==, f->bit.metres_cut + spelch_wear_metres (&f->plan));
  g_assert_cmpfloat (f->part->bits[at].metres_cut, ==, f->bit.metres_cut);
  g_assert_cmpmem (&done->cuts[0], sizeof done->cuts[0], &f->part->cuts[0], sizeof done->cuts[0]);
}

/* A bit that was only suggested is accepted by being cut with. */
static void
test_done_accepts (Fixture *f, gconstpointer data)
{
  guint n = 0;
  const SpelchBit *bits = spelch_shop_bits (&n);
  const SpelchBit *other = NULL;
  for (guint i = 0; i < n && other == NULL; i++)
    if (spelch_part_find_bit (f->part, bits[i].id) < 0)
      other = &bits[i];
  g_autoptr (SpelchPart) done = spelch_edit_done (f->part, 0, other, &f->plan);
  int at = spelch_part_find_bit (done, other->id);
  g_assert_cmpint (at, >=, 0);
  g_assert_cmpstr (done->cuts[0].bit, ==, other->id);
  g_assert_cmpfloat (done->bits[at].metres_cut, ==, other->metres_cut + spelch_wear_metres (&f->plan));
}

/* Each bit of a scored plan gets the way it makes, and together they make all of it. */
static void
test_done_scored (Fixture *f, gconstpointer data)
{
  guint n = 0;
  const SpelchBit *bits = spelch_shop_bits (&n);
  const SpelchBit *scorer = NULL;
  for (guint i = 0; i < n; i++)
    if (strcmp (bits[i].id, "down-cut-6.35x25") == 0)
      scorer = &bits[i];
  g_autoptr (SpelchPart) part = spelch_part_copy (f->part);
  spelch_part_put_bit (part, scorer);
  spelch_plan_make_two (spelch_shop_constants (), part, &part->cuts[0], &f->bit, scorer, &f->plan);
  g_assert_cmpstr (f->plan.scoring.bit, ==, scorer->id);
  double own = spelch_wear_metres (&f->plan), scored = spelch_wear_metres_scoring (&f->plan);
  g_assert_cmpfloat (own, >, 0);
  g_assert_cmpfloat (scored, >, 0);
  g_assert_cmpfloat_with_epsilon (own + scored, f->plan.path_mm / 1000, 1e-9);
  g_autoptr (SpelchPart) done = spelch_edit_done (part, 0, &f->bit, &f->plan);
  g_assert_cmpfloat (done->bits[spelch_part_find_bit (done, scorer->id)].metres_cut, ==,
                     scorer->metres_cut + scored);
}

static void
test_renewing (Fixture *f, gconstpointer data)
{
  SpelchRenewing renewing = { .kind = SPELCH_RENEWAL_SHARPENED, .diameter = spelch_length_mm (6.2) };
  SpelchBit worn = spelch_bit_wear_on (&f->bit, 12);
  g_strlcpy (renewing.date, "2026-05-31", sizeof renewing.date);
  g_assert_null (spelch_renewing_fault (&renewing, &worn));
  g_autoptr (SpelchPart) next = spelch_edit_renew (f->part, BIT, &renewing);
  const SpelchBit *renewed = &next->bits[spelch_part_find_bit (next, BIT)];
  g_assert_cmpstr (renewed->sharpened, ==, "2026-05-31");
  g_assert_cmpfloat (renewed->sharpened_diameter.mm, ==, 6.2);
  renewing.diameter = spelch_length_mm (7);
  g_autofree char *wide = spelch_renewing_fault (&renewing, &worn);
  g_assert_nonnull (strstr (wide, "sharpened_diameter"));
  renewing.diameter = spelch_length_mm (0);
  g_strlcpy (renewing.date, "2026-05-30", sizeof renewing.date);
  g_autofree char *early = spelch_renewing_fault (&renewing, renewed);
  g_assert_nonnull (strstr (early, "2026-05-30"));
  renewing.kind = SPELCH_RENEWAL_REPLACED;
  renewing.diameter = spelch_length_mm (6.2);
  g_strlcpy (renewing.date, "2026-06-01", sizeof renewing.date);
  SpelchBit fresh = spelch_bit_renewed (renewed, &renewing);
  g_assert_cmpfloat (fresh.sharpened_diameter.mm, ==, 0);
}

/* The log is a shelf that begins empty; what it tells of can't be deleted. */
static void
test_shelf (void)
{
  g_autofree char *folder = g_dir_make_tmp ("spelch-log-XXXXXX", NULL);
  g_autofree char *path = g_build_filename (folder, "log.json", NULL);
  g_autoptr (SpelchShelves) shelves = spelch_shelves_new (folder);
  SpelchShelf *log = spelch_shelves_get (shelves, SPELCH_LIST_LOG);
  SpelchLogEntry entries[2];
  g_assert_cmpuint (spelch_shelf_count (log), ==, 0);
  g_assert_null (spelch_shelves_use (shelves, SPELCH_LIST_BITS, BIT));
  fill (entries, 3);
  g_strlcpy (entries[0].id, "one", sizeof entries[0].id);
  g_assert_true (spelch_shelf_put (log, &entries[0], "record"));
  g_autofree char *use = spelch_shelves_use (shelves, SPELCH_LIST_BITS, BIT);
  g_assert_nonnull (use);
  g_assert_null (spelch_shelves_use (shelves, SPELCH_LIST_LOG, "one"));
  g_assert_cmpstr (spelch_shelves_name (shelves, SPELCH_LIST_BOARDS, BOARD), ==, "Birch plywood 18 mm");
  g_assert_cmpstr (spelch_shelves_name (shelves, SPELCH_LIST_BOARDS, "no-such"), ==, "no-such");
  g_autoptr (SpelchShelf) again = spelch_shelf_new (SPELCH_LIST_LOG, folder);
  g_assert_cmpuint (spelch_shelf_count (again), ==, 1);
  spelch_shelf_undo (log);
  g_assert_cmpuint (spelch_shelf_count (log), ==, 0);
  g_unlink (path);
  g_rmdir (folder);
}

/* An entry with an id that another has comes in beside that, as it was. */
static void
test_shelf_import (void)
{
  g_autofree char *folder = g_dir_make_tmp ("spelch-log-XXXXXX", NULL);
  g_autofree char *path = g_build_filename (folder, "theirs.json", NULL);
  g_autoptr (GFile) file = g_file_new_for_path (path);
  g_autoptr (SpelchShelf) log = spelch_shelf_new (SPELCH_LIST_LOG, NULL);
  SpelchLogEntry entries[2];
  fill (entries, 3);
  g_strlcpy (entries[0].id, "one", sizeof entries[0].id);
  g_strlcpy (entries[1].id, "one", sizeof entries[1].id);
  g_assert_true (spelch_shelf_put (log, &entries[0], "record"));
  g_autofree char *written = spelch_shelf_files_write (log, file, ',');
  g_assert_nonnull (written);
  g_assert_true (spelch_shelf_put (log, &entries[1], "change"));
  g_autofree char *taken = spelch_shelf_files_take (log, file);
  g_assert_nonnull (taken);
  g_assert_cmpuint (spelch_shelf_count (log), ==, 2);
  const SpelchLogEntry *theirs = spelch_shelf_get_nth (log, 1);
  g_assert_cmpstr (theirs->id, !=, "one");
  g_assert_cmpstr (theirs->date, ==, entries[0].date);
  g_assert_cmpstr (theirs->board, ==, BOARD);
  g_assert_cmpstr (theirs->bit, ==, BIT);
  g_unlink (path);
  g_rmdir (folder);
}

static void
test_shelf_spoilt (void)
{
  g_autofree char *folder = g_dir_make_tmp ("spelch-log-XXXXXX", NULL);
  g_autofree char *path = g_build_filename (folder, "log.json", NULL);
  g_assert_true (g_file_set_contents (path, "{\"format_version\": 1, \"log\": [{}]}", -1, NULL));
  g_autoptr (SpelchShelf) log = spelch_shelf_new (SPELCH_LIST_LOG, folder);
  SpelchLogEntry entries[2];
  fill (entries, 3);
  g_strlcpy (entries[0].id, "one", sizeof entries[0].id);
  g_assert_cmpuint (spelch_shelf_count (log), ==, 0);
  g_assert_nonnull (strstr (spelch_shelf_get_trouble (log), "log.json"));
  g_assert_false (spelch_shelf_put (log, &entries[0], "record"));
  g_unlink (path);
  g_rmdir (folder);
}

#define ADD(path, test) g_test_add (path, Fixture, NULL, set_up, test, tear_down)

/* ASTM D1666 (memory) grades wood as fuzzy and torn; MDF has no grain to tear and only gets fuzzier, and
 * laminate chips. What is chosen is kept by its place, so each has as many. */
static void
test_outcomes_of_board (void)
{
  const struct
  {
    SpelchFacing facing;
    const char *fourth;
    const char *never[3];
  } rows[] = {
    { SPELCH_FACING_PLY, "Torn grain", { "hipped", "icked" } },
    { SPELCH_FACING_STRAIGHT, "Torn grain", { "hipped", "icked" } },
    { SPELCH_FACING_LAMINATE, "Chipped", { "orn", "uzzy" } },
    { SPELCH_FACING_BOARD, "Very fuzzy", { "orn", "hipped", "icked" } },
    { SPELCH_N_FACINGS, "Torn, or chipped", { NULL } },
  };
  for (guint i = 0; i < G_N_ELEMENTS (rows); i++)
    {
      g_auto (GStrv) outcomes = spelch_log_outcomes (rows[i].facing);
      g_autofree char *all = g_strjoinv ("; ", outcomes);
      g_test_message ("%s", all);
      g_assert_cmpuint (g_strv_length (outcomes), ==, g_strv_length ((char **)SPELCH_LOG_OUTCOMES));
      g_assert_cmpstr (outcomes[1 + 4], ==, rows[i].fourth);
      for (guint n = 0; n < G_N_ELEMENTS (rows[i].never) && rows[i].never[n] != NULL; n++)
        g_assert_null (strstr (all, rows[i].never[n]));
    }
}

int
main (int argc, char **argv)
{
  g_test_init (&argc, &argv, NULL);
  ADD ("/log-edits/states", test_states);
  ADD ("/log-edits/forces", test_forces);
  ADD ("/log-edits/follow", test_follow);
  ADD ("/log-edits/outcome", test_outcome);
  ADD ("/log-edits/done", test_done);
  ADD ("/log-edits/done/accepts", test_done_accepts);
  ADD ("/log-edits/done/scored", test_done_scored);
  ADD ("/log-edits/renewing", test_renewing);
  g_test_add_func ("/log-edits/shelf", test_shelf);
  g_test_add_func ("/log-edits/shelf/import", test_shelf_import);
  g_test_add_func ("/log-edits/shelf/spoilt", test_shelf_spoilt);
  g_test_add_func ("/bench/log-edits/outcomes-of-board", test_outcomes_of_board);
  return g_test_run ();
}
