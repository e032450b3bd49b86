/* SPDX-License-Identifier: GPL-3.0-or-later
 *
 * Bits compared without a window: which come first, exchanged, added and taken away; what taking one over
 * does to the part, with the depths tied and without; the page printed.
 */
#include "bench/comparison.h"
#include "bench/page.h"
#include "files/shop-data.h"

#include <glib/gstdio.h>

static SpelchSession *
session_with_demo (void)
{
  SpelchSession *session = spelch_session_new (spelch_shop_constants ());
  g_autoptr (SpelchPart) demo = spelch_shop_demo ();
  spelch_session_open (session, demo, NULL, NULL, false);
  return session;
}

static const SpelchCut *
cut_of (SpelchSession *session)
{
  return &spelch_session_get_part (session)->cuts[spelch_session_get_cut_index (session)];
}

/* The column of the bit of that kind. */
static guint
find_kind (const SpelchComparison *all, SpelchBitKind kind)
{
  guint i = 0;
  while (i < all->columns->len && all->bits[i].kind != kind)
    i++;
  g_assert_cmpuint (i, <, all->columns->len);
  return i;
}

static void
test_first_choice (void)
{
  g_autoptr (SpelchSession) session = session_with_demo ();
  SpelchPicks picks = { 0 };
  g_autoptr (SpelchComparison) all = spelch_comparison_new (session, &picks, false);
  g_assert_nonnull (all);
  g_assert_cmpuint (picks.n, ==, 4);
  g_assert_cmpstr (picks.ids[0], ==, cut_of (session)->bit);
  guint kinds = 0;
  for (guint i = 0; i < 4; i++)
    kinds |= 1u << all->bits[i].kind;
  g_assert_cmphex (kinds, ==, 0xf);
  g_assert_true (spelch_comparison_is_in_use (all, 0));
  g_assert_false (spelch_comparison_is_in_use (all, 1));
}

static void
test_picks (void)
{
  g_autoptr (SpelchSession) session = session_with_demo ();
  SpelchPicks picks = { 0 };
  g_autoptr (SpelchComparison) all = spelch_comparison_new (session, &picks, false);
  g_assert_false (spelch_picks_add (&picks, session)); /* full */
  SpelchPicks before = picks;
  spelch_picks_put (&picks, 2, before.ids[0]);
  g_assert_cmpstr (picks.ids[0], ==, before.ids[2]);
  g_assert_cmpstr (picks.ids[2], ==, before.ids[0]);
  spelch_picks_put (&picks, 2, before.ids[2]);
  spelch_picks_take_away (&picks, 1);
  g_assert_cmpuint (picks.n, ==, 3);
  g_assert_cmpstr (picks.ids[1], ==, before.ids[2]);
  spelch_picks_take_away (&picks, 0);
  spelch_picks_take_away (&picks, 0);
  g_assert_cmpuint (picks.n, ==, 2);
  g_assert_true (spelch_picks_add (&picks, session));
  g_assert_true (spelch_picks_add (&picks, session));
  for (guint i = 0; i < 4; i++)
    for (guint j = 0; j < i; j++)
      g_assert_cmpstr (picks.ids[i], !=, picks.ids[j]);
  /* A bit that is gone is dropped; when too few are left, it is begun anew. */
  g_strlcpy (picks.ids[1], "gone", SPELCH_ID_SIZE);
  g_autoptr (SpelchComparison) three = spelch_comparison_new (session, &picks, false);
  g_assert_cmpuint (three->columns->len, ==, 3);
  for (guint i = 0; i < 3; i++)
    g_strlcpy (picks.ids[i], "gone", SPELCH_ID_SIZE);
  g_autoptr (SpelchComparison) anew = spelch_comparison_new (session, &picks, false);
  g_assert_cmpuint (anew->columns->len, ==, 4);
}

static void
test_use (void)
{
  g_autoptr (SpelchSession) session = session_with_demo ();
  SpelchPicks picks = { 0 };
  g_autoptr (SpelchComparison) all = spelch_comparison_new (session, &picks, false);
  guint up = find_kind (all, SPELCH_BIT_UP_CUT);
  SpelchPart *before = spelch_session_get_part (session);
  spelch_comparison_use (all, 0, session); /* in use already */
  g_assert_null (spelch_session_undo_name (session));
  spelch_comparison_use (all, up, session);
  g_assert_cmpstr (cut_of (session)->bit, ==, all->bits[up].id);
  g_assert_false (spelch_held_has_passes (&cut_of (session)->held));
  g_assert_cmpfloat (spelch_session_get_plan (session)->time_s, ==,
                     spelch_comparison_get (all, up)->plan.time_s);
  g_autofree char *name = g_strdup_printf ("choose “%s”", all->bits[up].name);
  g_assert_cmpstr (spelch_session_undo_name (session), ==, name);
  spelch_session_undo (session);
  g_assert_true (spelch_session_get_part (session) == before);
}

/* Tied, a bit that would be given other depths takes those over, held; one that wouldn't is taken as it is.
 */
static void
test_use_tied (void)
{
  g_autoptr (SpelchSession) session = session_with_demo ();
  SpelchPicks picks = { 0 };
  g_autoptr (SpelchComparison) free_depths = spelch_comparison_new (session, &picks, false);
  g_autoptr (SpelchComparison) all = spelch_comparison_new (session, &picks, true);
  guint straight = find_kind (all, SPELCH_BIT_STRAIGHT), down = find_kind (all, SPELCH_BIT_DOWN_CUT);
  const SpelchPlan *first = &spelch_comparison_get (all, 0)->plan;
  g_assert_cmpuint (spelch_comparison_get (free_depths, straight)->plan.n_passes, !=, first->n_passes);
  g_assert_true (all->follows[straight]);
  g_assert_false (all->follows[down]);
  spelch_comparison_use (all, straight, session);
  const SpelchPlan *plan = spelch_session_get_plan (session);
  g_assert_cmpstr (cut_of (session)->bit, ==, all->bits[straight].id);
  g_assert_true (cut_of (session)->held.passes_held);
  g_assert_cmpuint (plan->n_passes, ==, first->n_passes);
  for (guint i = 0; i < plan->n_passes; i++)
    g_assert_cmpfloat_with_epsilon (plan->passes[i].tip_mm, first->passes[i].tip_mm, 0.005);
  g_assert_cmpfloat (plan->time_s, ==, spelch_comparison_get (all, straight)->plan.time_s);
  spelch_session_undo (session);
  spelch_comparison_use (all, down, session);
  g_assert_cmpstr (cut_of (session)->bit, ==, all->bits[down].id);
  g_assert_false (spelch_held_has_passes (&cut_of (session)->held));
  spelch_session_undo (session);
  /* The accepted bit itself can take the depths of another that stands first. */
  spelch_picks_put (&picks, 0, all->bits[straight].id);
  g_autoptr (SpelchComparison) turned = spelch_comparison_new (session, &picks, true);
  g_assert_true (turned->follows[straight]);
  g_assert_false (spelch_comparison_is_in_use (turned, straight));
  spelch_comparison_use (turned, straight, session);
  g_assert_cmpuint (spelch_session_get_plan (session)->n_passes, ==,
                    spelch_comparison_get (turned, 0)->plan.n_passes);
}

/* What was compared is left alone when another cut is looked at meanwhile. */
static void
test_other_cut (void)
{
  g_autoptr (SpelchSession) session = session_with_demo ();
  SpelchPicks picks = { 0 };
  g_autoptr (SpelchComparison) all = spelch_comparison_new (session, &picks, false);
  spelch_session_show_cut (session, 1);
  spelch_comparison_use (all, 1, session);
  g_assert_null (spelch_session_undo_name (session));
}

static void
draw (cairo_t *cr, gconstpointer data)
{
  const SpelchView view = { .width = 1360,
                            .height = 960,
                            .text = 1,
                            .look = SPELCH_LOOK_PAPER,
                            .numbers = { .decimal_sign = '.' },
                            .family = "sans-serif" };
  spelch_comparison_draw (data, cr, &view);
}

static void
test_page (void)
{
  g_autoptr (SpelchSession) session = session_with_demo ();
  SpelchPicks picks = { 0 };
  SpelchComparison *all = spelch_comparison_new (session, &picks, false);
  SpelchPage page = { .title = "Side by side",
                      .name = "page",
                      .width = 1360,
                      .height = 960,
                      .draw = draw,
                      .data = all,
                      .free_data = (GDestroyNotify)spelch_comparison_unref };
  g_autofree char *folder = g_dir_make_tmp ("spelch-page-XXXXXX", NULL);
  g_autofree char *path = g_build_filename (folder, "page.pdf", NULL);
  g_autofree char *content = NULL;
  g_autoptr (GError) error = NULL;
  gsize length = 0;
  {
    g_autoptr (GtkPrintOperation) operation = spelch_page_operation (&page);
    gtk_print_operation_set_export_filename (operation, path);
    GtkPrintOperationResult result
        = gtk_print_operation_run (operation, GTK_PRINT_OPERATION_ACTION_EXPORT, NULL, &error);
    g_assert_no_error (error);
    g_assert_cmpint (result, ==, GTK_PRINT_OPERATION_RESULT_APPLY);
    g_assert_cmpint (gtk_print_operation_get_n_pages_to_print (operation), ==, 1);
  }
  g_assert_true (g_file_get_contents (path, &content, &length, &error));
  g_assert_true (g_str_has_prefix (content, "%PDF"));
  g_assert_cmpuint (length, >, 10000);
  g_unlink (path);
  g_rmdir (folder);
}

int
main (int argc, char **argv)
{
  g_test_init (&argc, &argv, NULL);
  gtk_init_check ();
  g_test_add_func ("/comparison/first-choice", test_first_choice);
  g_test_add_func ("/comparison/picks", test_picks);
  g_test_add_func ("/comparison/use", test_use);
  g_test_add_func ("/comparison/use-tied", test_use_tied);
  g_test_add_func ("/comparison/other-cut", test_other_cut);
  g_test_add_func ("/comparison/page", test_page);
  return g_test_run ();
}
