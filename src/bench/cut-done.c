/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "bench/cut-done.h"
#include "bench/log-edits.h"
#include "bench/record-window.h"
#include "plan/words-log.h"

#include <glib/gi18n-lib.h>

#define BITS_MOST 2 /* of a plan */

/* The part before and after a cut was done, and what that put on which bits: the drawer follows when the
 * part's step is undone or done again. The drawer's own window may undo it there first. */
typedef struct
{
  SpelchPart *before, *after;
  bool in_drawer; /* the metres are on the drawer's bits */
  guint step;     /* of the drawer, that put them there or took them back; 0: none yet */
  bool taken;     /* that step took them back */
  char bits[BITS_MOST][SPELCH_ID_SIZE];
  double metres[BITS_MOST];
} Done;

struct _SpelchCutDone
{
  GObject parent_instance;
  GtkApplicationWindow *window;
  SpelchSession *session;
  SpelchShelves *shelves;
  SpelchPart *seen;
  GPtrArray *dones; /* Done */
  bool enabled;
};

G_DEFINE_FINAL_TYPE (SpelchCutDone, spelch_cut_done, G_TYPE_OBJECT)

static void
done_free (gpointer data)
{
  Done *done = data;
  spelch_part_unref (done->before);
  spelch_part_unref (done->after);
  g_free (done);
}

/* ---- The drawer ---- */

static void
drawer_changed (SpelchShelf *drawer, SpelchCutDone *self)
{
  for (guint i = 0; i < self->dones->len; i++)
    {
      Done *done = g_ptr_array_index (self->dones, i);
      SpelchStepState state = spelch_shelf_step_state (drawer, done->step);
      bool is_done = state == SPELCH_STEP_DONE || state == SPELCH_STEP_DONE_LAST;
      if (state != SPELCH_STEP_FORGOTTEN)
        done->in_drawer = is_done != done->taken;
    }
}

static char *
name_of_step (SpelchCutDone *self, const Done *done, bool back)
{
  const SpelchNumbers *numbers = spelch_session_get_numbers (self->session);
  g_autofree char *way = spelch_words_way (numbers, done->metres[0]);
  const char *bit = spelch_shelves_name (self->shelves, SPELCH_LIST_BITS, done->bits[0]);
  return g_strdup_printf (back ? _ ("taking back %s cut with “%s”") : _ ("%s cut with “%s”"), way, bit);
}

/* Bits that don't lie in the drawer have their wear in the part alone. */
static void
put_in_drawer (SpelchCutDone *self, Done *done, bool back)
{
  SpelchShelf *drawer = spelch_shelves_get (self->shelves, SPELCH_LIST_BITS);
  g_autoptr (GArray) worn = g_array_new (FALSE, FALSE, sizeof (SpelchBit));
  for (guint i = 0; i < BITS_MOST; i++)
    {
      const SpelchBit *bit = spelch_shelf_find (drawer, done->bits[i]);
      if (bit == NULL || done->bits[i][0] == '\0')
        continue;
      SpelchBit next = spelch_bit_wear_on (bit, back ? -done->metres[i] : done->metres[i]);
      g_array_append_val (worn, next);
    }
  g_autofree char *what = name_of_step (self, done, back);
  if (worn->len == 0)
    return;
  if (!spelch_shelf_put_all (drawer, worn, what))
    {
      spelch_session_say (self->session, spelch_shelf_get_trouble (drawer));
      return;
    }
  done->step = spelch_shelf_get_step (drawer);
  done->taken = back;
  done->in_drawer = !back;
}

static void
follow_in_drawer (SpelchCutDone *self, Done *done, bool back)
{
  SpelchShelf *drawer = spelch_shelves_get (self->shelves, SPELCH_LIST_BITS);
  SpelchStepState state = spelch_shelf_step_state (drawer, done->step);
  if (done->in_drawer == !back)
    return;
  if (state == SPELCH_STEP_DONE_LAST)
    spelch_shelf_undo (drawer);
  else if (state == SPELCH_STEP_UNDONE_LAST)
    spelch_shelf_redo (drawer);
  else
    put_in_drawer (self, done, back);
}

static void
see (SpelchCutDone *self)
{
  SpelchPart *part = spelch_session_get_part (self->session);
  g_autoptr (SpelchPart) before = g_steal_pointer (&self->seen);
  self->seen = part == NULL ? NULL : spelch_part_ref (part);
  for (guint i = 0; before != part && i < self->dones->len; i++)
    {
      Done *done = g_ptr_array_index (self->dones, i);
      if (before == done->before && part == done->after)
        follow_in_drawer (self, done, false);
      else if (before == done->after && part == done->before)
        follow_in_drawer (self, done, true);
    }
  bool goes_back
      = spelch_session_undo_name (self->session) != NULL || spelch_session_redo_name (self->session) != NULL;
  if (!goes_back && self->dones->len > 0)
    g_ptr_array_set_size (self->dones, 0); /* another part was opened */
}

/* What undo has forgotten needn't be followed, and would keep its parts for ever. */
static void
forget_unreachable (SpelchCutDone *self)
{
  for (guint i = self->dones->len; i-- > 0;)
    {
      const Done *done = g_ptr_array_index (self->dones, i);
      if (!spelch_session_remembers (self->session, done->before)
          || !spelch_session_remembers (self->session, done->after))
        g_ptr_array_remove_index (self->dones, i);
    }
}

/* ---- Actions ---- */

static void
enable (SpelchCutDone *self)
{
  static const char *const names[] = { "cut-done", "record" };
  const SpelchPlan *plan = spelch_session_get_plan (self->session);
  bool makes_sense = plan != NULL && plan->path_mm > 0;
  if (self->enabled == makes_sense)
    return;
  self->enabled = makes_sense;
  for (guint i = 0; i < G_N_ELEMENTS (names); i++)
    {
      GAction *action = g_action_map_lookup_action (G_ACTION_MAP (self->window), names[i]);
      g_simple_action_set_enabled (G_SIMPLE_ACTION (action), makes_sense);
    }
}

static void
session_changed (SpelchSession *session, guint change, SpelchCutDone *self)
{
  if (change & (SPELCH_CHANGE_PART | SPELCH_CHANGE_OPENED))
    see (self);
  if (change & SPELCH_CHANGE_PLAN)
    enable (self);
}

static void
say_what_it_has_cut (SpelchCutDone *self, const char *bit)
{
  const SpelchPart *part = spelch_session_get_part (self->session);
  int at = spelch_part_find_bit (part, bit);
  if (at < 0)
    return;
  const SpelchNumbers *numbers = spelch_session_get_numbers (self->session);
  g_autofree char *way = spelch_words_way (numbers, part->bits[at].metres_cut);
  g_autofree char *words
      = g_strdup_printf (_ ("“%s” has now cut %s with this edge."), part->bits[at].name, way);
  spelch_session_say (self->session, words);
}

static void
do_done (GSimpleAction *action, GVariant *parameter, gpointer data)
{
  SpelchCutDone *self = data;
  SpelchPart *part = spelch_session_get_part (self->session);
  const SpelchPlan *plan = spelch_session_get_plan (self->session);
  if (plan == NULL || spelch_session_in_gesture (self->session))
    return;
  guint cut = spelch_session_get_cut_index (self->session);
  SpelchBit bit = *spelch_session_get_bit (self->session);
  forget_unreachable (self);
  Done *done = g_new0 (Done, 1);
  done->before = spelch_part_ref (part);
  done->after = spelch_edit_done (part, cut, &bit, plan);
  g_strlcpy (done->bits[0], bit.id, sizeof done->bits[0]);
  g_strlcpy (done->bits[1], plan->scoring.bit, sizeof done->bits[1]);
  done->metres[0] = spelch_wear_metres (plan);
  done->metres[1] = spelch_wear_metres_scoring (plan);
  g_ptr_array_add (self->dones, done);
  g_autofree char *way = spelch_words_way (spelch_session_get_numbers (self->session), done->metres[0]);
  g_autofree char *name = g_strdup_printf (_ ("%s cut with “%s”"), way, bit.name);
  if (spelch_session_edit (self->session, spelch_part_ref (done->after), name, NULL))
    say_what_it_has_cut (self, bit.id);
  else
    g_ptr_array_remove (self->dones, done);
}

static void
do_record (GSimpleAction *action, GVariant *parameter, gpointer data)
{
  SpelchCutDone *self = data;
  if (spelch_session_get_plan (self->session) != NULL)
    spelch_record_window_show (GTK_WINDOW (self->window), self->session, self->shelves);
}

static void
window_came_to_the_fore (SpelchCutDone *self)
{
  if (gtk_window_is_active (GTK_WINDOW (self->window)))
    spelch_shelves_look_at (self->shelves, self->session);
}

/* ---- Object ---- */

static void
spelch_cut_done_finalize (GObject *object)
{
  SpelchCutDone *self = SPELCH_CUT_DONE (object);
  g_clear_pointer (&self->seen, spelch_part_unref);
  g_ptr_array_unref (self->dones);
  g_object_unref (self->session);
  g_object_unref (self->shelves);
  G_OBJECT_CLASS (spelch_cut_done_parent_class)->finalize (object);
}

static void
spelch_cut_done_class_init (SpelchCutDoneClass *klass)
{
  G_OBJECT_CLASS (klass)->finalize = spelch_cut_done_finalize;
}

static void
spelch_cut_done_init (SpelchCutDone *self)
{
  self->dones = g_ptr_array_new_with_free_func (done_free);
}

SpelchCutDone *
spelch_cut_done_new (GtkApplicationWindow *window, SpelchSession *session, SpelchShelves *shelves)
{
  static const GActionEntry ENTRIES[] = {
    { .name = "cut-done", .activate = do_done },
    { .name = "record", .activate = do_record },
  };
  SpelchCutDone *self = g_object_new (SPELCH_TYPE_CUT_DONE, NULL);
  self->window = window;
  self->session = g_object_ref (session);
  self->shelves = g_object_ref (shelves);
  g_action_map_add_action_entries (G_ACTION_MAP (window), ENTRIES, G_N_ELEMENTS (ENTRIES), self);
  g_signal_connect_object (session, "changed", G_CALLBACK (session_changed), self, 0);
  g_signal_connect_object (window, "notify::is-active", G_CALLBACK (window_came_to_the_fore), self,
                           G_CONNECT_SWAPPED);
  g_signal_connect_object (spelch_shelves_get (shelves, SPELCH_LIST_BITS), "changed",
                           G_CALLBACK (drawer_changed), self, 0);
  self->enabled = true; /* as actions begin */
  see (self);
  enable (self);
  return self;
}
