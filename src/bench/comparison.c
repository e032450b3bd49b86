/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "bench/comparison.h"
#include "bench/edits.h"
#include "drawing/side-by-side.h"

#include <glib/gi18n-lib.h>

/* ---- Picks ---- */

static int
find_pick (const SpelchPicks *picks, const char *id)
{
  for (guint i = 0; i < picks->n; i++)
    if (g_str_equal (picks->ids[i], id))
      return (int)i;
  return -1;
}

void
spelch_picks_put (SpelchPicks *picks, guint column, const char *id)
{
  int other = find_pick (picks, id);
  g_return_if_fail (column < picks->n);
  if (other >= 0)
    g_strlcpy (picks->ids[other], picks->ids[column], SPELCH_ID_SIZE);
  g_strlcpy (picks->ids[column], id, SPELCH_ID_SIZE);
}

void
spelch_picks_take_away (SpelchPicks *picks, guint column)
{
  if (picks->n <= SPELCH_COMPARE_LEAST || column >= picks->n)
    return;
  for (guint i = column; i + 1 < picks->n; i++)
    g_strlcpy (picks->ids[i], picks->ids[i + 1], SPELCH_ID_SIZE);
  picks->n--;
}

static const SpelchCut *
cut_of (SpelchSession *session)
{
  SpelchPart *part = spelch_session_get_part (session);
  guint cut = spelch_session_get_cut_index (session);
  return part != NULL && cut < part->n_cuts ? &part->cuts[cut] : NULL;
}

static GPtrArray *
rank (SpelchSession *session, const SpelchCut *cut, const SpelchBit *bits)
{
  return spelch_choose_rank (spelch_session_get_constants (session), spelch_session_get_part (session), cut,
                             bits, spelch_session_count_bits (session));
}

bool
spelch_picks_add (SpelchPicks *picks, SpelchSession *session)
{
  const SpelchCut *cut = cut_of (session);
  guint picked[SPELCH_COMPARE_MOST], n = 0, next;
  if (cut == NULL || picks->n >= SPELCH_COMPARE_MOST)
    return false;
  g_autofree SpelchBit *bits = spelch_session_copy_bits (session);
  g_autoptr (GPtrArray) ranking = rank (session, cut, bits);
  for (guint i = 0; i < spelch_session_count_bits (session); i++)
    if (find_pick (picks, bits[i].id) >= 0)
      picked[n++] = i;
  if (!spelch_compare_pick_next (ranking, cut, picked, n, &next))
    return false;
  g_strlcpy (picks->ids[picks->n++], bits[next].id, SPELCH_ID_SIZE);
  return true;
}

static const SpelchBit *
find_bit (SpelchSession *session, const char *id)
{
  for (guint i = 0; i < spelch_session_count_bits (session); i++)
    if (g_str_equal (spelch_session_get_nth_bit (session, i)->id, id))
      return spelch_session_get_nth_bit (session, i);
  return NULL;
}

static void
pick_afresh (SpelchPicks *picks, SpelchSession *session, const SpelchCut *cut)
{
  guint picked[SPELCH_COMPARE_MOST];
  g_autofree SpelchBit *bits = spelch_session_copy_bits (session);
  g_autoptr (GPtrArray) ranking = rank (session, cut, bits);
  picks->n = spelch_compare_pick (ranking, bits, cut, picked);
  for (guint i = 0; i < picks->n; i++)
    g_strlcpy (picks->ids[i], bits[picked[i]].id, SPELCH_ID_SIZE);
}

static void
bring_up_to_date (SpelchPicks *picks, SpelchSession *session, const SpelchCut *cut)
{
  SpelchPicks left = { 0 };
  for (guint i = 0; i < picks->n; i++)
    if (find_bit (session, picks->ids[i]) != NULL)
      g_strlcpy (left.ids[left.n++], picks->ids[i], SPELCH_ID_SIZE);
  *picks = left;
  if (picks->n < SPELCH_COMPARE_LEAST)
    pick_afresh (picks, session, cut);
}

/* ---- The comparison ---- */

SpelchComparison *
spelch_comparison_new (SpelchSession *session, SpelchPicks *picks, bool tied)
{
  const SpelchConstants *constants = spelch_session_get_constants (session);
  const SpelchCut *cut = cut_of (session);
  const SpelchBit *bits[SPELCH_COMPARE_MOST];
  if (cut == NULL)
    return NULL;
  bring_up_to_date (picks, session, cut);
  if (picks->n < SPELCH_COMPARE_LEAST)
    return NULL;
  SpelchComparison *self = g_atomic_rc_box_new0 (SpelchComparison);
  self->part = spelch_part_ref (spelch_session_get_part (session));
  self->cut = *cut;
  self->tied = tied;
  for (guint i = 0; i < picks->n; i++)
    {
      self->bits[i] = *find_bit (session, picks->ids[i]);
      bits[i] = &self->bits[i];
    }
  self->columns = spelch_compare (constants, self->part, &self->cut, bits, picks->n, tied);
  for (guint i = 0; i < picks->n; i++)
    {
      const SpelchCompared *one = spelch_comparison_get (self, i);
      self->scans[i] = spelch_compare_scan (constants, self->part, one);
      self->follows[i] = tied && i > 0 && spelch_compared_follows (constants, self->part, &self->cut, one);
    }
  return self;
}

SpelchComparison *
spelch_comparison_ref (SpelchComparison *self)
{
  return g_atomic_rc_box_acquire (self);
}

static void
clear (gpointer data)
{
  SpelchComparison *self = data;
  g_array_unref (self->columns);
  spelch_part_unref (self->part);
}

void
spelch_comparison_unref (SpelchComparison *self)
{
  g_atomic_rc_box_release_full (self, clear);
}

const SpelchCompared *
spelch_comparison_get (const SpelchComparison *self, guint column)
{
  return &g_array_index (self->columns, SpelchCompared, column);
}

bool
spelch_comparison_is_in_use (const SpelchComparison *self, guint column)
{
  return !self->follows[column] && g_str_equal (self->cut.bit, self->bits[column].id);
}

void
spelch_comparison_use (const SpelchComparison *self, guint column, SpelchSession *session)
{
  SpelchPart *part = spelch_session_get_part (session);
  const SpelchCut *now = cut_of (session);
  const SpelchCompared *one = spelch_comparison_get (self, column);
  guint cut = spelch_session_get_cut_index (session);
  /* Another cut may have come to be looked at while the window hasn't followed yet. */
  if (now == NULL || !g_str_equal (now->id, self->cut.id) || spelch_comparison_is_in_use (self, column))
    return;
  g_autofree char *passes = spelch_words_passes (&one->plan, spelch_session_get_numbers (session));
  g_autofree char *name = self->follows[column]
                              ? g_strdup_printf (_ ("choose “%s” at %s"), one->bit->name, passes)
                              : g_strdup_printf (_ ("choose “%s”"), one->bit->name);
  SpelchPart *next = self->follows[column] ? spelch_edit_bit_at (part, cut, one->bit, &one->cut)
                                           : spelch_edit_bit (part, cut, one->bit);
  spelch_session_edit (session, next, name, NULL);
  spelch_session_try_bit (session, NULL);
}

void
spelch_comparison_draw (const SpelchComparison *self, cairo_t *cr, const SpelchView *view)
{
  spelch_side_by_side_draw (cr, self->part, &self->cut, self->columns, self->scans, view);
}
