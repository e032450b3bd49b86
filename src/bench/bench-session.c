/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "bench/bench-session.h"
#include "bench/bench-history.h"
#include "bench/offered-bits.h"
#include "files/part-file.h"
#include "plan/choose.h"

#include <glib/gi18n-lib.h>

struct _SpelchSession
{
  GObject parent_instance;

  const SpelchConstants *constants;
  SpelchNumbers numbers;

  SpelchPart *part;
  SpelchPart *saved; /* as it stands in the file */
  GFile *file;
  SpelchShelf *drawer; /* NULL: the starter set */
  SpelchOffered offered;
  char *etag;
  SpelchHistory *history;

  guint cut;
  guint shown_pass;
  bool has_plan;
  bool asked; /* what comes out isn't told */
  bool tries; /* @tried is tried without being accepted */
  SpelchBit tried;
  SpelchBit bit;  /* the plan's */
  SpelchCut made; /* the cut as planned */
  SpelchPlan plan;

  SpelchPart *before; /* the part when the gesture began; NULL outside one */
  char *gesture;      /* name of what the gesture did; NULL while it did nothing */

  guint settling;  /* idle source */
  guint unsettled; /* SpelchSessionChange since "settled" was emitted */
};

G_DEFINE_FINAL_TYPE (SpelchSession, spelch_session, G_TYPE_OBJECT)

enum
{
  SIGNAL_CHANGED,
  SIGNAL_SETTLED,
  SIGNAL_SAID,
  N_SIGNALS
};
static guint signals[N_SIGNALS];

/* ---- The plan ---- */

static const SpelchCut *
current_cut (SpelchSession *self)
{
  return self->part != NULL && self->cut < self->part->n_cuts ? &self->part->cuts[self->cut] : NULL;
}

/* The bit that serves the cut best as it lies, for a cut that has accepted none. */
static const SpelchBit *
suggested_bit (SpelchSession *self, const SpelchCut *cut)
{
  g_autofree SpelchBit *bits = spelch_session_copy_bits (self);
  g_autoptr (GPtrArray) ranking
      = spelch_choose_rank (self->constants, self->part, cut, bits, spelch_session_count_bits (self));
  for (guint i = 0; i < ranking->len; i++)
    {
      const SpelchChoice *choice = g_ptr_array_index (ranking, i);
      if (choice->way_up == cut->way_up && !choice->pinned)
        return spelch_session_get_nth_bit (self, choice->bit);
    }
  return NULL;
}

static const SpelchBit *
bit_to_plan (SpelchSession *self, const SpelchCut *cut)
{
  const SpelchBit *accepted = spelch_session_get_accepted (self);
  if (self->tries)
    return &self->tried;
  if (accepted != NULL)
    return accepted;
  /* A suggestion doesn't jump to another bit while something is dragged. */
  return self->before != NULL && self->has_plan ? &self->bit : suggested_bit (self, cut);
}

static void
make_plan (SpelchSession *self)
{
  const SpelchCut *cut = current_cut (self);
  const SpelchBit *bit = cut == NULL ? NULL : bit_to_plan (self, cut);
  self->has_plan = bit != NULL;
  if (bit == NULL)
    return;
  if (bit != &self->bit)
    self->bit = *bit;
  /* Nothing is held for a bit that is only suggested; what is held goes with the accepted one. */
  self->made = spelch_choose_cut (cut, &self->bit, cut->way_up);
  spelch_plan_make (self->constants, self->part, &self->made, &self->bit, &self->plan);
  self->shown_pass = CLAMP (self->shown_pass, 1, MAX (self->plan.n_passes, 1));
}

static gboolean
emit_settled (gpointer data)
{
  SpelchSession *self = data;
  self->settling = 0;
  if (self->before != NULL)
    return G_SOURCE_REMOVE; /* the end of the gesture comes here again */
  guint change = self->unsettled;
  self->unsettled = 0;
  g_signal_emit (self, signals[SIGNAL_SETTLED], 0, change);
  return G_SOURCE_REMOVE;
}

void
spelch_session_settle (SpelchSession *self)
{
  if (self->settling == 0)
    return;
  g_clear_handle_id (&self->settling, g_source_remove);
  emit_settled (self);
}

static void
emit_changed (SpelchSession *self, SpelchSessionChange change)
{
  self->unsettled |= change;
  if (self->settling == 0)
    self->settling = g_idle_add_full (G_PRIORITY_LOW, emit_settled, self, NULL);
  g_signal_emit (self, signals[SIGNAL_CHANGED], 0, (guint)change);
}

static void
replan (SpelchSession *self, SpelchSessionChange change)
{
  make_plan (self);
  emit_changed (self, change | SPELCH_CHANGE_PLAN);
}

/* ---- Object ---- */

static void
spelch_session_finalize (GObject *object)
{
  SpelchSession *self = SPELCH_SESSION (object);
  g_clear_handle_id (&self->settling, g_source_remove);
  g_clear_pointer (&self->part, spelch_part_unref);
  g_clear_pointer (&self->saved, spelch_part_unref);
  g_clear_pointer (&self->before, spelch_part_unref);
  g_clear_pointer (&self->history, spelch_history_free);
  g_clear_object (&self->file);
  g_clear_object (&self->drawer);
  spelch_offered_forget (&self->offered);
  g_free (self->etag);
  g_free (self->gesture);
  G_OBJECT_CLASS (spelch_session_parent_class)->finalize (object);
}

static void
spelch_session_class_init (SpelchSessionClass *klass)
{
  G_OBJECT_CLASS (klass)->finalize = spelch_session_finalize;
  signals[SIGNAL_CHANGED] = g_signal_new ("changed", SPELCH_TYPE_SESSION, G_SIGNAL_RUN_LAST, 0, NULL, NULL,
                                          NULL, G_TYPE_NONE, 1, G_TYPE_UINT);
  signals[SIGNAL_SETTLED] = g_signal_new ("settled", SPELCH_TYPE_SESSION, G_SIGNAL_RUN_LAST, 0, NULL, NULL,
                                          NULL, G_TYPE_NONE, 1, G_TYPE_UINT);
  signals[SIGNAL_SAID] = g_signal_new ("said", SPELCH_TYPE_SESSION, G_SIGNAL_RUN_LAST, 0, NULL, NULL, NULL,
                                       G_TYPE_NONE, 1, G_TYPE_STRING);
}

static void
spelch_session_init (SpelchSession *self)
{
  self->history = spelch_history_new ();
  self->shown_pass = 1;
  self->numbers.decimal_sign = '.';
}

SpelchSession *
spelch_session_new (const SpelchConstants *constants)
{
  SpelchSession *self = g_object_new (SPELCH_TYPE_SESSION, NULL);
  self->constants = constants;
  return self;
}

void
spelch_session_say (SpelchSession *self, const char *sentence)
{
  g_signal_emit (self, signals[SIGNAL_SAID], 0, sentence);
}

/* ---- What is looked at ---- */

static void
set_part (SpelchSession *self, SpelchPart *part)
{
  spelch_part_ref (part);
  g_clear_pointer (&self->part, spelch_part_unref);
  self->part = part;
  spelch_offered_forget (&self->offered);
  self->cut = part->n_cuts == 0 ? 0 : MIN (self->cut, part->n_cuts - 1);
}

static void
set_saved (SpelchSession *self, SpelchPart *part)
{
  g_clear_pointer (&self->saved, spelch_part_unref);
  self->saved = part == NULL ? NULL : spelch_part_ref (part);
}

void
spelch_session_open (SpelchSession *self, SpelchPart *part, GFile *file, const char *etag, bool unsaved)
{
  g_return_if_fail (part != NULL);
  spelch_history_clear (self->history);
  g_clear_pointer (&self->before, spelch_part_unref);
  g_clear_pointer (&self->gesture, g_free);
  set_part (self, part);
  set_saved (self, unsaved ? NULL : part);
  g_set_object (&self->file, file);
  g_free (self->etag);
  self->etag = g_strdup (etag);
  self->tries = false;
  self->cut = 0;
  self->shown_pass = 1;
  replan (self, SPELCH_CHANGE_OPENED | SPELCH_CHANGE_PART | SPELCH_CHANGE_CUT | SPELCH_CHANGE_HISTORY);
}

SpelchPart *
spelch_session_get_part (SpelchSession *self)
{
  return self->part;
}

const SpelchCut *
spelch_session_get_cut (SpelchSession *self)
{
  return self->has_plan ? &self->made : NULL;
}

const SpelchPlan *
spelch_session_get_plan (SpelchSession *self)
{
  return self->has_plan ? &self->plan : NULL;
}

const SpelchBit *
spelch_session_get_bit (SpelchSession *self)
{
  return self->has_plan ? &self->bit : NULL;
}

const SpelchConstants *
spelch_session_get_constants (SpelchSession *self)
{
  return self->constants;
}

bool
spelch_session_plan_other_way (SpelchSession *self, SpelchPlan *plan, SpelchCut *cut)
{
  if (!self->has_plan || !self->plan.through)
    return false;
  *cut = self->made;
  cut->way_up = spelch_face_other (cut->way_up);
  spelch_plan_make (self->constants, self->part, cut, &self->bit, plan);
  return true;
}

guint
spelch_session_get_cut_index (SpelchSession *self)
{
  return self->cut;
}

void
spelch_session_show_cut (SpelchSession *self, guint index)
{
  if (self->part == NULL || index >= self->part->n_cuts || index == self->cut)
    return;
  spelch_session_commit (self);
  self->cut = index;
  self->shown_pass = 1;
  self->tries = false;
  replan (self, SPELCH_CHANGE_CUT);
}

guint
spelch_session_get_shown_pass (SpelchSession *self)
{
  return self->shown_pass;
}

void
spelch_session_show_pass (SpelchSession *self, guint pass)
{
  guint most = self->has_plan ? MAX (self->plan.n_passes, 1) : 1;
  pass = CLAMP (pass, 1, most);
  if (pass == self->shown_pass)
    return;
  self->shown_pass = pass;
  emit_changed (self, SPELCH_CHANGE_PLAN);
}

bool
spelch_session_is_asked (SpelchSession *self)
{
  return self->asked;
}

void
spelch_session_set_asked (SpelchSession *self, bool asked)
{
  self->asked = asked;
  emit_changed (self, SPELCH_CHANGE_PLAN | SPELCH_CHANGE_CUT);
}

const SpelchNumbers *
spelch_session_get_numbers (SpelchSession *self)
{
  return &self->numbers;
}

void
spelch_session_set_numbers (SpelchSession *self, const SpelchNumbers *numbers)
{
  self->numbers = *numbers;
  emit_changed (self, SPELCH_CHANGE_NUMBERS);
}

/* ---- Bits ---- */

guint
spelch_session_count_bits (SpelchSession *self)
{
  return spelch_offered_count (&self->offered, self->part, self->drawer);
}

const SpelchBit *
spelch_session_get_nth_bit (SpelchSession *self, guint n)
{
  return spelch_offered_nth (&self->offered, self->part, self->drawer, n);
}

static void
drawer_changed (SpelchSession *self)
{
  spelch_offered_forget (&self->offered);
  if (self->part == NULL)
    return;
  make_plan (self);
  emit_changed (self, SPELCH_CHANGE_PLAN | SPELCH_CHANGE_BITS);
}

void
spelch_session_set_drawer (SpelchSession *self, SpelchShelf *bits)
{
  g_set_object (&self->drawer, bits);
  g_signal_connect_object (bits, "changed", G_CALLBACK (drawer_changed), self, G_CONNECT_SWAPPED);
  drawer_changed (self);
}

SpelchBit *
spelch_session_copy_bits (SpelchSession *self)
{
  guint n = spelch_session_count_bits (self);
  SpelchBit *bits = g_new (SpelchBit, MAX (n, 1));
  for (guint i = 0; i < n; i++)
    bits[i] = *spelch_session_get_nth_bit (self, i);
  return bits;
}

const SpelchBit *
spelch_session_get_accepted (SpelchSession *self)
{
  const SpelchCut *cut = current_cut (self);
  int index = cut == NULL || cut->bit[0] == '\0' ? -1 : spelch_part_find_bit (self->part, cut->bit);
  return index < 0 ? NULL : &self->part->bits[index];
}

void
spelch_session_try_bit (SpelchSession *self, const SpelchBit *bit)
{
  bool same = bit == NULL ? !self->tries : self->tries && g_str_equal (self->tried.id, bit->id);
  if (same || self->before != NULL)
    return;
  self->tries = bit != NULL;
  if (bit != NULL)
    self->tried = *bit;
  replan (self, SPELCH_CHANGE_PLAN);
}

/* ---- Editing ---- */

const char *
spelch_session_why_locked (SpelchSession *self)
{
  return self->part == NULL || !self->part->read_only
             ? NULL
             : _ (
                 "This part was written by a newer Spelch: it can be looked at here, but neither changed nor "
                 "saved. Use the newer program to change it.");
}

bool
spelch_session_edit (SpelchSession *self, SpelchPart *part, const char *name, const char *merge)
{
  g_autoptr (SpelchPart) next = part;
  if (self->part == NULL)
    return false;
  const char *locked = spelch_session_why_locked (self);
  g_autofree char *fault = locked != NULL ? g_strdup (locked) : spelch_part_fault (next);
  if (fault != NULL)
    {
      spelch_session_say (self, fault);
      return false;
    }
  if (self->before == NULL)
    spelch_history_step (self->history, self->part, self->cut, name, merge, g_get_monotonic_time ());
  else
    {
      g_free (self->gesture);
      self->gesture = g_strdup (name);
    }
  set_part (self, next);
  SpelchSessionChange history = self->before == NULL ? SPELCH_CHANGE_HISTORY : 0;
  replan (self, SPELCH_CHANGE_PART | history);
  return true;
}

void
spelch_session_begin (SpelchSession *self)
{
  if (self->before == NULL && self->part != NULL)
    self->before = spelch_part_ref (self->part);
}

void
spelch_session_commit (SpelchSession *self)
{
  g_autoptr (SpelchPart) before = g_steal_pointer (&self->before);
  g_autofree char *name = g_steal_pointer (&self->gesture);
  if (before == NULL)
    return;
  if (name != NULL)
    spelch_history_step (self->history, before, self->cut, name, NULL, g_get_monotonic_time ());
  emit_changed (self, SPELCH_CHANGE_HISTORY);
}

void
spelch_session_cancel (SpelchSession *self)
{
  g_autoptr (SpelchPart) before = g_steal_pointer (&self->before);
  g_clear_pointer (&self->gesture, g_free);
  if (before == NULL)
    return;
  set_part (self, before);
  replan (self, SPELCH_CHANGE_PART);
}

bool
spelch_session_in_gesture (SpelchSession *self)
{
  return self->before != NULL;
}

/* ---- Undo ---- */

const char *
spelch_session_undo_name (SpelchSession *self)
{
  return spelch_history_undo_name (self->history);
}

const char *
spelch_session_redo_name (SpelchSession *self)
{
  return spelch_history_redo_name (self->history);
}

bool
spelch_session_remembers (SpelchSession *self, const SpelchPart *part)
{
  return part == self->part || spelch_history_has (self->history, part);
}

static void
take_back (SpelchSession *self, SpelchPart *(*move) (SpelchHistory *, SpelchPart *, guint *))
{
  if (self->part == NULL)
    return;
  spelch_session_commit (self);
  guint cut = self->cut;
  g_autoptr (SpelchPart) part = move (self->history, self->part, &cut);
  if (part == NULL)
    return;
  SpelchSessionChange other_cut = cut == self->cut ? 0 : SPELCH_CHANGE_CUT;
  self->cut = cut;
  self->tries = false;
  set_part (self, part);
  replan (self, SPELCH_CHANGE_PART | SPELCH_CHANGE_HISTORY | other_cut);
}

void
spelch_session_undo (SpelchSession *self)
{
  take_back (self, spelch_history_undo);
}

void
spelch_session_redo (SpelchSession *self)
{
  take_back (self, spelch_history_redo);
}

/* ---- The file ---- */

bool
spelch_session_is_unsaved (SpelchSession *self)
{
  return self->part != self->saved;
}

GFile *
spelch_session_get_file (SpelchSession *self)
{
  return self->file;
}

const char *
spelch_session_get_etag (SpelchSession *self)
{
  return self->etag;
}

static char *
etag_on_disk (SpelchSession *self)
{
  g_autoptr (GFileInfo) info
      = self->file == NULL
            ? NULL
            : g_file_query_info (self->file, G_FILE_ATTRIBUTE_ETAG_VALUE, G_FILE_QUERY_INFO_NONE, NULL, NULL);
  return info == NULL ? NULL : g_strdup (g_file_info_get_etag (info));
}

bool
spelch_session_is_overtaken (SpelchSession *self)
{
  g_autofree char *etag = etag_on_disk (self);
  return etag != NULL && self->etag != NULL && !g_str_equal (etag, self->etag);
}

void
spelch_session_overrule (SpelchSession *self)
{
  g_free (self->etag);
  self->etag = etag_on_disk (self);
}

void
spelch_session_reload (SpelchSession *self, SpelchPart *part, const char *etag)
{
  g_return_if_fail (self->part != NULL);
  spelch_session_commit (self);
  spelch_history_step (self->history, self->part, self->cut, _ ("read the file again"), NULL,
                       g_get_monotonic_time ());
  self->tries = false;
  set_part (self, part);
  set_saved (self, part);
  g_free (self->etag);
  self->etag = g_strdup (etag);
  replan (self, SPELCH_CHANGE_OPENED | SPELCH_CHANGE_PART | SPELCH_CHANGE_CUT | SPELCH_CHANGE_HISTORY);
}

bool
spelch_session_save (SpelchSession *self, GFile *file, GError **error)
{
  g_return_val_if_fail (self->part != NULL, false);
  g_return_val_if_fail (file != NULL || self->file != NULL, false);
  spelch_session_commit (self);
  bool same = file == NULL || (self->file != NULL && g_file_equal (file, self->file));
  GFile *target = file == NULL ? self->file : file;
  g_autofree char *etag = NULL;
  if (!spelch_part_save (self->part, target, same ? self->etag : NULL, &etag, error))
    return false;
  g_set_object (&self->file, target);
  g_free (self->etag);
  self->etag = g_steal_pointer (&etag);
  set_saved (self, self->part);
  emit_changed (self, SPELCH_CHANGE_HISTORY);
  return true;
}
