/* SPDX-License-Identifier: GPL-3.0-or-later
 *
 * The session without a window: undo and redo, gestures, merging, refusals, bits tried and accepted, unsaved
 * work.
 */
#include "bench/bench-history.h"
#include "bench/bench-session.h"
#include "bench/edits.h"
#include "bench/quantity.h"
#include "bench/recovery.h"
#include "files/part-file.h"
#include "files/shop-data.h"

#include <fcntl.h>
#include <glib/gstdio.h>
#include <sys/file.h>
#include <unistd.h>

typedef struct
{
  guint changes, settles;
  guint seen;
  char *said;
} Heard;

static void
on_changed (SpelchSession *session, guint change, Heard *heard)
{
  heard->changes++;
  heard->seen |= change;
}

static void
on_settled (SpelchSession *session, guint change, Heard *heard)
{
  heard->settles++;
}

static void
on_said (SpelchSession *session, const char *words, Heard *heard)
{
  g_free (heard->said);
  heard->said = g_strdup (words);
}

static SpelchSession *
session_with_demo (Heard *heard)
{
  SpelchSession *session = spelch_session_new (spelch_shop_constants ());
  g_autoptr (SpelchPart) demo = spelch_shop_demo ();
  g_signal_connect (session, "changed", G_CALLBACK (on_changed), heard);
  g_signal_connect (session, "settled", G_CALLBACK (on_settled), heard);
  g_signal_connect (session, "said", G_CALLBACK (on_said), heard);
  g_assert_null (spelch_session_get_plan (session));
  spelch_session_open (session, demo, NULL, NULL, false);
  return session;
}

static SpelchPart *
with_first_pass (SpelchSession *session, double mm)
{
  SpelchPlanned planned = { spelch_session_get_part (session), spelch_session_get_cut_index (session),
                            spelch_session_get_cut (session), spelch_session_get_bit (session),
                            spelch_session_get_plan (session) };
  SpelchLength length = spelch_length_mm (mm);
  return spelch_quantity_set (&planned, (SpelchQuantityId){ SPELCH_MARK_PASS, 1 }, &length);
}

static double
first_pass (SpelchSession *session)
{
  return spelch_session_get_plan (session)->passes[0].tip_mm;
}

static void
let_settle (void)
{
  while (g_main_context_iteration (NULL, FALSE))
    ;
}

static void
test_undo (void)
{
  Heard heard = { 0 };
  g_autoptr (SpelchSession) session = session_with_demo (&heard);
  double before = first_pass (session);
  g_assert_null (spelch_session_undo_name (session));
  g_assert_false (spelch_session_is_unsaved (session));
  g_assert_true (spelch_session_edit (session, with_first_pass (session, 6), "move pass 1", NULL));
  g_assert_cmpfloat (first_pass (session), ==, 6);
  g_assert_cmpstr (spelch_session_undo_name (session), ==, "move pass 1");
  g_assert_true (spelch_session_is_unsaved (session));
  spelch_session_undo (session);
  g_assert_cmpfloat (first_pass (session), ==, before);
  g_assert_false (spelch_session_is_unsaved (session)); /* back to what was opened */
  g_assert_cmpstr (spelch_session_redo_name (session), ==, "move pass 1");
  spelch_session_redo (session);
  g_assert_cmpfloat (first_pass (session), ==, 6);
  g_assert_null (spelch_session_redo_name (session));
  g_autoptr (SpelchPart) left = spelch_part_ref (spelch_session_get_part (session));
  g_assert_true (spelch_session_remembers (session, left));
  spelch_session_undo (session);
  g_assert_true (spelch_session_remembers (session, left));
  g_autoptr (SpelchPart) opened = spelch_part_ref (spelch_session_get_part (session));
  g_assert_true (spelch_session_edit (session, with_first_pass (session, 7), "another", NULL));
  g_assert_null (spelch_session_redo_name (session)); /* a new step ends the old future */
  g_assert_false (spelch_session_remembers (session, left));
  g_assert_true (spelch_session_remembers (session, opened));
  g_free (heard.said);
}

static void
test_gesture (void)
{
  Heard heard = { 0 };
  g_autoptr (SpelchSession) session = session_with_demo (&heard);
  double before = first_pass (session);
  let_settle ();
  guint settles = heard.settles;
  spelch_session_begin (session);
  for (double mm = 9; mm > 6; mm -= 0.1)
    {
      guint changes = heard.changes;
      g_assert_true (spelch_session_edit (session, with_first_pass (session, mm), "move pass 1", NULL));
      g_assert_cmpuint (heard.changes, ==, changes + 1); /* one plan, one signal for each change */
      let_settle ();
    }
  g_assert_cmpuint (heard.settles, ==, settles); /* nothing settles under way */
  g_assert_null (spelch_session_undo_name (session));
  spelch_session_commit (session);
  let_settle ();
  g_assert_cmpuint (heard.settles, ==, settles + 1);
  g_assert_cmpstr (spelch_session_undo_name (session), ==, "move pass 1");
  spelch_session_undo (session);
  g_assert_cmpfloat (first_pass (session), ==, before);
  g_assert_null (spelch_session_undo_name (session)); /* it was one step */

  spelch_session_begin (session);
  g_assert_true (spelch_session_edit (session, with_first_pass (session, 6), "move pass 1", NULL));
  spelch_session_cancel (session);
  g_assert_cmpfloat (first_pass (session), ==, before);
  g_assert_null (spelch_session_undo_name (session));
  spelch_session_begin (session);
  spelch_session_commit (session); /* a click that moved nothing */
  g_assert_null (spelch_session_undo_name (session));
  g_free (heard.said);
}

static void
test_merging (void)
{
  g_autoptr (SpelchHistory) history = spelch_history_new ();
  g_autoptr (SpelchPart) a = spelch_shop_demo ();
  g_autoptr (SpelchPart) b = spelch_part_copy (a);
  g_autoptr (SpelchPart) c = spelch_part_copy (a);
  g_autoptr (SpelchPart) d = spelch_part_copy (a);
  guint cut = 9;
  spelch_history_step (history, a, 0, "move pass 1", "pass.1", 0);
  spelch_history_step (history, b, 0, "move pass 1", "pass.1", SPELCH_HISTORY_MERGE_US); /* just in time */
  spelch_history_step (history, c, 0, "move pass 2", "pass.2", SPELCH_HISTORY_MERGE_US + 1);
  g_autoptr (SpelchPart) back = spelch_history_undo (history, d, &cut);
  g_assert_true (back == c);
  g_assert_cmpuint (cut, ==, 0);
  g_autoptr (SpelchPart) further = spelch_history_undo (history, back, &cut);
  g_assert_true (further == a); /* the first two were one */
  g_assert_null (spelch_history_undo (history, a, &cut));

  spelch_history_clear (history);
  spelch_history_step (history, a, 0, "move pass 1", "pass.1", 0);
  spelch_history_step (history, b, 0, "move pass 1", "pass.1", SPELCH_HISTORY_MERGE_US + 1); /* too late */
  spelch_history_step (history, c, 1, "move pass 1", "pass.1", SPELCH_HISTORY_MERGE_US + 2); /* another cut */
  g_autoptr (SpelchPart) one = spelch_history_undo (history, d, &cut);
  g_assert_true (one == c);
  g_autoptr (SpelchPart) two = spelch_history_undo (history, one, &cut);
  g_assert_true (two == b);
}

/* A day of thousands of steps doesn't fill the memory: the oldest go, the newest are there. */
static void
test_long_history (void)
{
  const guint n = 5000;
  g_autoptr (SpelchHistory) history = spelch_history_new ();
  g_autoptr (SpelchPart) now = spelch_shop_demo (), first = spelch_part_ref (now);
  for (guint i = 0; i < n; i++)
    {
      g_assert_true (i < 1 || i > 1000 || spelch_history_has (history, first));
      SpelchPart *next = spelch_part_copy (now);
      next->length = spelch_length_mm (i + 1);
      spelch_history_step (history, now, i % 2, "change", NULL, i * 10 * G_USEC_PER_SEC);
      spelch_part_unref (now);
      now = next;
    }
  g_assert_false (spelch_history_has (history, first));
  gsize bytes = 0;
  guint back = 0, cut = 0;
  SpelchPart *before = NULL;
  while ((before = spelch_history_undo (history, now, &cut)) != NULL)
    {
      back++;
      g_assert_cmpuint (cut, ==, (n - back) % 2);
      if (back < n)
        g_assert_cmpfloat (before->length.mm, ==, n - back);
      bytes += sizeof *before + before->n_bits * sizeof *before->bits + before->n_cuts * sizeof *before->cuts;
      spelch_part_unref (now);
      now = before;
    }
  g_assert_cmpuint (back, >=, 1000);
  g_assert_cmpuint (back, <, n);
  g_assert_cmpuint (bytes, <, SPELCH_HISTORY_MOST_BYTES + bytes / back);
  /* All of them forward again. */
  guint on = 0;
  while ((before = spelch_history_redo (history, now, &cut)) != NULL)
    {
      on++;
      spelch_part_unref (now);
      now = before;
    }
  g_assert_cmpuint (on, ==, back);
  g_assert_cmpfloat (now->length.mm, ==, n);
}

static void
test_refusals (void)
{
  Heard heard = { 0 };
  g_autoptr (SpelchSession) session = session_with_demo (&heard);
  SpelchPart *before = spelch_session_get_part (session);
  SpelchPart *faulty = spelch_part_copy (before);
  faulty->board.measured = spelch_length_mm (-3);
  g_assert_false (spelch_session_edit (session, faulty, "break it", NULL));
  g_assert_true (spelch_session_get_part (session) == before);
  g_assert_nonnull (heard.said);
  g_assert_true (g_str_has_suffix (heard.said, "."));
  g_assert_null (spelch_session_undo_name (session));

  g_autoptr (SpelchPart) newer = spelch_part_copy (before);
  newer->read_only = true;
  spelch_session_open (session, newer, NULL, NULL, false);
  g_clear_pointer (&heard.said, g_free);
  g_assert_false (spelch_session_edit (session, with_first_pass (session, 6), "move pass 1", NULL));
  g_assert_nonnull (heard.said);
  g_assert_true (spelch_session_get_part (session) == newer);
  g_free (heard.said);
}

static const SpelchBit *
bit_of_kind (SpelchSession *session, SpelchBitKind kind)
{
  for (guint i = 0; i < spelch_session_count_bits (session); i++)
    if (spelch_session_get_nth_bit (session, i)->kind == kind)
      return spelch_session_get_nth_bit (session, i);
  g_assert_not_reached ();
}

static void
test_bits (void)
{
  Heard heard = { 0 };
  g_autoptr (SpelchSession) session = session_with_demo (&heard);
  g_autofree char *accepted = g_strdup (spelch_session_get_accepted (session)->id);
  const SpelchBit *up_cut = bit_of_kind (session, SPELCH_BIT_UP_CUT);
  spelch_session_try_bit (session, up_cut);
  g_assert_cmpstr (spelch_session_get_bit (session)->id, ==, up_cut->id);
  g_assert_cmpstr (spelch_session_get_accepted (session)->id, ==, accepted);
  g_assert_null (spelch_session_undo_name (session));
  spelch_session_try_bit (session, NULL);
  g_assert_cmpstr (spelch_session_get_bit (session)->id, ==, accepted);

  /* A cut that has accepted none is shown with a bit that meets what is accepted, as there is one. */
  SpelchPart *without = spelch_part_copy (spelch_session_get_part (session));
  without->cuts[0].bit[0] = '\0';
  g_assert_true (spelch_session_edit (session, without, "take the bit out", NULL));
  g_assert_null (spelch_session_get_accepted (session));
  g_assert_cmpint ((int)spelch_session_get_plan (session)->verdict, !=, (int)SPELCH_VERDICT_DO_NOT_CUT);
  g_assert_cmpint (spelch_plan_worst (spelch_session_get_plan (session), SPELCH_SIDE_MOTOR)->grade, ==, 1);
  /* A depth set by hand goes with the bit it was set for, and accepts it. */
  g_autofree char *suggested = g_strdup (spelch_session_get_bit (session)->id);
  g_assert_true (spelch_session_edit (session, with_first_pass (session, 9), "move pass 1", NULL));
  g_assert_cmpstr (spelch_session_get_accepted (session)->id, ==, suggested);
  g_assert_cmpfloat (first_pass (session), ==, 9);
  /* For another bit nothing is held, until one goes back. */
  spelch_session_try_bit (session, bit_of_kind (session, SPELCH_BIT_DOWN_CUT));
  g_assert_cmpfloat (first_pass (session), !=, 9);
  g_assert_false (spelch_held_has_passes (&spelch_session_get_cut (session)->held));
  spelch_session_try_bit (session, NULL);
  g_assert_cmpfloat (first_pass (session), ==, 9);
  g_free (heard.said);
}

static void
test_every_bit_once (void)
{
  Heard heard = { 0 };
  g_autoptr (SpelchSession) session = session_with_demo (&heard);
  g_autoptr (GHashTable) ids = g_hash_table_new (g_str_hash, g_str_equal);
  guint n = spelch_session_count_bits (session);
  for (guint i = 0; i < n; i++)
    g_assert_true (g_hash_table_add (ids, (gpointer)spelch_session_get_nth_bit (session, i)->id));
  g_assert_null (spelch_session_get_nth_bit (session, n));
  g_free (heard.said);
}

static void
test_other_way (void)
{
  Heard heard = { 0 };
  g_autoptr (SpelchSession) session = session_with_demo (&heard);
  SpelchPlan other;
  SpelchCut cut;
  g_assert_true (spelch_session_plan_other_way (session, &other, &cut));
  g_assert_cmpint ((int)other.near, !=, (int)spelch_session_get_plan (session)->near);
  const SpelchPart *part = spelch_session_get_part (session);
  for (guint i = 0; i < part->n_cuts; i++)
    if (!part->cuts[i].through)
      {
        spelch_session_show_cut (session, i);
        g_assert_false (spelch_session_plan_other_way (session, &other, &cut));
        break;
      }
  g_free (heard.said);
}

/* The quantities keep their objects while one of them is moved. */
static void
test_quantities (void)
{
  Heard heard = { 0 };
  g_autoptr (SpelchSession) session = session_with_demo (&heard);
  g_autoptr (GListModel) list = spelch_quantities_new (session);
  g_autoptr (SpelchQuantity) pass = g_list_model_get_item (list, 0);
  double before = spelch_quantity_get_reading (pass)->value;
  spelch_quantity_begin (pass);
  spelch_quantity_move (pass, 6.04);
  g_assert_cmpfloat_with_epsilon (spelch_quantity_get_reading (pass)->value, 6.0, 1e-9); /* to the tenth */
  spelch_quantity_move (pass, 1e9);
  g_assert_true (g_str_has_prefix (heard.said, "Stops here: "));
  g_assert_cmpfloat (spelch_quantity_get_reading (pass)->value, <, 18.3);
  spelch_quantity_move (pass, before);
  g_autoptr (SpelchQuantity) still = g_list_model_get_item (list, 0);
  g_assert_true (still == pass);
  spelch_quantity_end (pass, false);
  g_assert_false (spelch_quantity_get_reading (pass)->held);
  /* As assistive technology or a spin button sets it. */
  gtk_adjustment_set_value (spelch_quantity_get_adjustment (pass), 8.75);
  g_assert_cmpfloat (first_pass (session), ==, 8.75);
  spelch_quantity_nudge (pass, 1, 0);
  g_assert_cmpfloat_with_epsilon (first_pass (session), 8.8, 1e-9); /* to the next tenth */
  spelch_quantity_nudge (pass, -2, 0);
  g_assert_cmpfloat_with_epsilon (first_pass (session), 8.6, 1e-9);
  spelch_quantity_nudge (pass, 0, 1);
  g_assert_cmpfloat_with_epsilon (first_pass (session), 9.6, 1e-9);
  SpelchLength typed = spelch_length_mm (100);
  g_autofree char *complaint = NULL;
  g_assert_false (spelch_quantity_enter (pass, &typed, &complaint));
  g_assert_nonnull (complaint);
  g_free (heard.said);
}

static bool
has_copy (SpelchRecovery *recovery)
{
  g_autofree char *path = spelch_recovery_get_path (recovery);
  return g_file_test (path, G_FILE_TEST_EXISTS);
}

static bool
wait_for_copy (SpelchRecovery *recovery)
{
  gint64 begun = g_get_monotonic_time ();
  while (!has_copy (recovery) && g_get_monotonic_time () - begun < 5 * G_USEC_PER_SEC)
    g_main_context_iteration (NULL, FALSE);
  return has_copy (recovery);
}

static guint
count_left (const char *folder)
{
  g_autofree char *trouble = NULL;
  g_autoptr (GPtrArray) left = spelch_recovery_find (folder, &trouble);
  g_assert_null (trouble);
  return left->len;
}

static void
test_saving_and_recovery (void)
{
  Heard heard = { 0 };
  g_autofree char *folder = g_dir_make_tmp ("spelch-session-XXXXXX", NULL);
  g_autofree char *path = g_build_filename (folder, "part.spelch", NULL);
  g_autofree char *state = g_build_filename (folder, "state", NULL);
  g_autoptr (GFile) file = g_file_new_for_path (path);
  g_autoptr (GError) error = NULL;
  g_autoptr (SpelchSession) session = session_with_demo (&heard);
  g_autoptr (SpelchRecovery) recovery = spelch_recovery_new (session, state);
  g_assert_true (spelch_session_edit (session, with_first_pass (session, 6), "move pass 1", NULL));
  g_assert_true (wait_for_copy (recovery));
  g_assert_cmpuint (count_left (state), ==, 0); /* it is being kept, not left behind */

  g_assert_true (spelch_session_save (session, file, &error));
  g_assert_no_error (error);
  g_assert_false (spelch_session_is_unsaved (session));
  g_assert_false (has_copy (recovery));
  g_assert_cmpstr (spelch_session_undo_name (session), ==, "move pass 1"); /* saving forgets nothing */
  g_autoptr (GFile) nowhere = g_file_new_for_path ("/no/such/folder/part.spelch");
  g_assert_false (spelch_session_save (session, nowhere, &error));
  g_assert_nonnull (error);
  g_assert_true (g_file_equal (spelch_session_get_file (session), file)); /* a failed save changes nothing */
  g_clear_object (&recovery);
  g_unlink (path);
  g_rmdir (state);
  g_rmdir (folder);
  g_free (heard.said);
}

/* A copy that can't be read is told of once, with its reason and where it is, and stays. */
static void
test_unreadable (void)
{
  g_autofree char *folder = g_dir_make_tmp ("spelch-unreadable-XXXXXX", NULL);
  g_autofree char *path = g_build_filename (folder, "unsaved-1.kept", NULL);
  g_autofree char *aside = g_strconcat (path, ".unreadable", NULL);
  g_autofree char *text = NULL;
  g_assert_true (g_file_set_contents (path, "\n\n{\"format_version\": 1, ", -1, NULL));
  g_autofree char *trouble = NULL;
  g_autoptr (GPtrArray) left = spelch_recovery_find (folder, &trouble);
  g_assert_cmpuint (left->len, ==, 0);
  g_assert_nonnull (trouble);
  g_assert_nonnull (strstr (trouble, aside));
  g_assert_true (g_file_get_contents (aside, &text, NULL, NULL));
  g_assert_cmpstr (text, ==, "\n\n{\"format_version\": 1, ");
  g_assert_cmpuint (count_left (folder), ==, 0);
  g_autofree char *locked = g_strconcat (path, ".lock", NULL);
  g_unlink (locked);
  g_unlink (aside);
  g_assert_cmpint (g_rmdir (folder), ==, 0);
}

/* Two windows end without saving; a third takes one up and throws the other away. */
static void
test_left_behind (void)
{
  Heard heard = { 0 };
  g_autofree char *folder = g_dir_make_tmp ("spelch-left-XXXXXX", NULL);
  g_autofree char *path = g_build_filename (folder, "part.spelch", NULL);
  g_autoptr (GFile) file = g_file_new_for_path (path);
  g_autoptr (GError) error = NULL;
  g_autofree char *etag = NULL;
  for (int i = 0; i < 2; i++)
    {
      g_autoptr (SpelchSession) session = session_with_demo (&heard);
      g_autoptr (SpelchRecovery) recovery = spelch_recovery_new (session, folder);
      if (i == 0)
        g_assert_true (spelch_session_save (session, file, &error));
      if (i == 0)
        etag = g_strdup (spelch_session_get_etag (session));
      g_assert_true (spelch_session_edit (session, with_first_pass (session, 6 + i), "move", NULL));
      g_assert_true (wait_for_copy (recovery));
      for (int wait = 0; wait < 20; wait++) /* until the writing is over, which holds the lock */
        {
          let_settle ();
          g_usleep (10000);
        }
    }
  g_autoptr (SpelchSession) session = session_with_demo (&heard);
  g_autoptr (SpelchRecovery) recovery = spelch_recovery_new (session, folder);
  g_autofree char *trouble = NULL;
  g_autoptr (GPtrArray) left = spelch_recovery_find (folder, &trouble);
  g_assert_null (trouble);
  g_assert_cmpuint (left->len, ==, 2);
  guint with_file = ((SpelchLeftBehind *)g_ptr_array_index (left, 0))->file != NULL ? 0 : 1;
  SpelchLeftBehind *taken = g_ptr_array_steal_index (left, with_file);
  g_assert_true (g_file_equal (taken->file, file));
  g_assert_cmpstr (taken->etag, ==, etag);
  g_assert_cmpfloat (taken->part->cuts[0].held.passes[0].mm, ==, 6);
  g_autoptr (SpelchPart) part = spelch_part_ref (taken->part);
  spelch_recovery_take_over (recovery, taken);
  spelch_session_open (session, part, file, etag, true);
  g_assert_true (has_copy (recovery));
  spelch_left_behind_throw_away (g_ptr_array_index (left, 0));
  g_ptr_array_set_size (left, 0);
  g_assert_cmpuint (count_left (folder), ==, 0);

  /* Another program writes to the file; what is open can be kept or the file read again, with a way back. */
  g_assert_false (spelch_session_is_overtaken (session));
  g_usleep (20000);
  g_assert_true (spelch_part_save (part, file, NULL, NULL, &error));
  g_assert_true (spelch_session_is_overtaken (session));
  g_assert_false (spelch_session_save (session, NULL, &error));
  g_assert_error (error, SPELCH_FILE_ERROR, SPELCH_FILE_ERROR_CHANGED);
  g_autofree char *newer = NULL;
  g_autoptr (SpelchPart) again = spelch_part_load (file, &newer, NULL);
  spelch_session_reload (session, again, newer);
  g_assert_false (spelch_session_is_unsaved (session));
  g_assert_false (has_copy (recovery));
  spelch_session_undo (session);
  g_assert_true (spelch_session_get_part (session) == part);
  g_clear_object (&recovery);
  g_unlink (path);
  g_rmdir (folder);
  g_free (heard.said);
}

/* A drag that doesn't end: what it has done so far is kept again and again. */
static void
test_kept_in_a_drag (void)
{
  Heard heard = { 0 };
  g_autofree char *folder = g_dir_make_tmp ("spelch-drag-XXXXXX", NULL);
  g_autoptr (SpelchSession) session = session_with_demo (&heard);
  g_autoptr (SpelchRecovery) recovery = spelch_recovery_new (session, folder);
  g_autofree char *path = spelch_recovery_get_path (recovery);
  gint64 begun = g_get_monotonic_time (), first = 0;
  guint kept = 0;
  double seen = 0;
  spelch_session_begin (session);
  for (int step = 0; kept < 3 && g_get_monotonic_time () - begun < 10 * G_USEC_PER_SEC; step++)
    {
      GStatBuf status;
      spelch_session_edit (session, with_first_pass (session, 6 + 0.01 * (step % 300)), "drag", NULL);
      g_main_context_iteration (NULL, FALSE);
      g_usleep (4000);
      double when = g_stat (path, &status) == 0
                        ? (double)status.st_mtim.tv_sec + 1e-9 * (double)status.st_mtim.tv_nsec
                        : 0;
      if (when > seen)
        kept++;
      if (when > seen && first == 0)
        first = g_get_monotonic_time ();
      seen = when;
    }
  g_assert_cmpuint (kept, ==, 3);
  g_assert_cmpint (first - begun, <, 2 * G_USEC_PER_SEC);
  spelch_session_cancel (session);
  spelch_recovery_forget (recovery);
  g_clear_object (&recovery);
  g_rmdir (folder);
  g_free (heard.said);
}

/* While another program looks at a lock, its owner keeps the work under another name. */
static void
test_lock_held_elsewhere (void)
{
  Heard heard = { 0 };
  g_autofree char *folder = g_dir_make_tmp ("spelch-lock-XXXXXX", NULL);
  g_autoptr (SpelchSession) session = session_with_demo (&heard);
  g_autoptr (SpelchRecovery) recovery = spelch_recovery_new (session, folder);
  g_autofree char *before = spelch_recovery_get_path (recovery);
  g_autofree char *name = g_strconcat (before, ".lock", NULL);
  int other = g_open (name, O_RDWR | O_CREAT | O_CLOEXEC, 0600);
  g_assert_cmpint (flock (other, LOCK_EX | LOCK_NB), ==, 0);
  g_assert_true (spelch_session_edit (session, with_first_pass (session, 6), "move", NULL));
  while (!has_copy (recovery))
    g_main_context_iteration (NULL, FALSE);
  g_autofree char *after = spelch_recovery_get_path (recovery);
  g_assert_cmpstr (after, !=, before);
  g_assert_cmpuint (count_left (folder), ==, 0);
  spelch_recovery_forget (recovery);
  close (other);
  g_unlink (name);
  g_clear_object (&recovery);
  g_assert_cmpint (g_rmdir (folder), ==, 0); /* nothing else is there */
  g_free (heard.said);
}

int
main (int argc, char **argv)
{
  g_test_init (&argc, &argv, NULL);
  g_test_add_func ("/session/undo", test_undo);
  g_test_add_func ("/session/long-history", test_long_history);
  g_test_add_func ("/session/gesture", test_gesture);
  g_test_add_func ("/session/merging", test_merging);
  g_test_add_func ("/session/refusals", test_refusals);
  g_test_add_func ("/session/bits", test_bits);
  g_test_add_func ("/session/every-bit-once", test_every_bit_once);
  g_test_add_func ("/session/other-way", test_other_way);
  g_test_add_func ("/session/quantities", test_quantities);
  g_test_add_func ("/session/saving-and-recovery", test_saving_and_recovery);
  g_test_add_func ("/session/unreadable", test_unreadable);
  g_test_add_func ("/session/left-behind", test_left_behind);
  g_test_add_func ("/session/kept-in-a-drag", test_kept_in_a_drag);
  g_test_add_func ("/session/lock-held-elsewhere", test_lock_held_elsewhere);
  return g_test_run ();
}
