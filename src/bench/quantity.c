/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "bench/quantity.h"
#include "bench/mark-words.h"

#include <math.h>
#include <string.h>

struct _SpelchQuantity
{
  GObject parent_instance;
  SpelchSession *session; /* outlives the quantity */
  SpelchQuantityId id;
  SpelchReading reading;
  GtkAdjustment *adjustment;
  char *label;
  char *pill;
  SpelchPart *base; /* while it is dragged: the part and plan it was begun from */
  SpelchCut base_made;
  SpelchBit base_bit;
  SpelchPlan base_plan;
  bool following; /* the adjustment is being brought up to date, not moved by a person */
};

G_DEFINE_FINAL_TYPE (SpelchQuantity, spelch_quantity, G_TYPE_OBJECT)

enum
{
  SIGNAL_CHANGED,
  N_SIGNALS
};
static guint signals[N_SIGNALS];

static SpelchPlanned
planned_now (SpelchSession *session)
{
  return (SpelchPlanned){ spelch_session_get_part (session), spelch_session_get_cut_index (session),
                          spelch_session_get_cut (session),  spelch_session_get_bit (session),
                          spelch_session_get_plan (session), spelch_session_is_asked (session) };
}

/* What a move starts from. */
static SpelchPlanned
planned_from (SpelchQuantity *self)
{
  SpelchPlanned planned = planned_now (self->session);
  if (self->base != NULL)
    {
      planned.part = self->base;
      planned.made = &self->base_made;
      planned.bit = &self->base_bit;
      planned.plan = &self->base_plan;
    }
  return planned;
}

static void
spelch_quantity_finalize (GObject *object)
{
  SpelchQuantity *self = SPELCH_QUANTITY (object);
  g_signal_handlers_disconnect_by_data (self->adjustment, self);
  g_clear_object (&self->adjustment);
  g_clear_pointer (&self->base, spelch_part_unref);
  g_free (self->label);
  g_free (self->pill);
  G_OBJECT_CLASS (spelch_quantity_parent_class)->finalize (object);
}

static void
spelch_quantity_class_init (SpelchQuantityClass *klass)
{
  G_OBJECT_CLASS (klass)->finalize = spelch_quantity_finalize;
  signals[SIGNAL_CHANGED] = g_signal_new ("changed", SPELCH_TYPE_QUANTITY, G_SIGNAL_RUN_LAST, 0, NULL, NULL,
                                          NULL, G_TYPE_NONE, 0);
}

static void
spelch_quantity_init (SpelchQuantity *self)
{
}

/* ---- Moving ---- */

static void
edit (SpelchQuantity *self, const SpelchPlanned *from, const SpelchLength *length)
{
  g_autofree char *name = spelch_quantity_gesture (self->id);
  g_autofree char *merge = spelch_quantity_merge (self->id);
  spelch_session_edit (self->session, spelch_quantity_set (from, self->id, length), name, merge);
}

/* Takes @mm as far as the limits let it. */
static void
move_exactly (SpelchQuantity *self, double mm)
{
  SpelchPlanned from = planned_from (self);
  SpelchReading reading = spelch_quantity_read (&from, self->id);
  double stopped = CLAMP (mm, reading.lower, reading.upper);
  if (fabs (stopped - mm) > 1e-9)
    {
      const SpelchNumbers *numbers = spelch_session_get_numbers (self->session);
      g_autofree char *stop = spelch_quantity_stop (&from, self->id, mm > stopped, numbers);
      spelch_session_say (self->session, stop);
    }
  if (fabs (stopped - self->reading.value) < 1e-9)
    return;
  SpelchLength length = spelch_length_mm (stopped);
  edit (self, &from, &length);
}

void
spelch_quantity_begin (SpelchQuantity *self)
{
  SpelchPlanned now = planned_now (self->session);
  if (now.plan == NULL)
    return;
  g_clear_pointer (&self->base, spelch_part_unref);
  self->base = spelch_part_ref (spelch_session_get_part (self->session));
  self->base_made = *now.made;
  self->base_bit = *now.bit;
  self->base_plan = *now.plan;
  spelch_session_begin (self->session);
}

void
spelch_quantity_end (SpelchQuantity *self, bool keep)
{
  if (self->base == NULL)
    return;
  g_clear_pointer (&self->base, spelch_part_unref);
  if (keep)
    spelch_session_commit (self->session);
  else
    spelch_session_cancel (self->session);
}

static void
adjustment_moved (SpelchQuantity *self)
{
  if (self->following || spelch_session_get_plan (self->session) == NULL)
    return;
  g_autoptr (SpelchQuantity) kept = g_object_ref (self); /* the edit may take it off the list */
  move_exactly (self, gtk_adjustment_get_value (self->adjustment));
  kept->following = true; /* a refused or rounded edit leaves the value where it was */
  gtk_adjustment_set_value (kept->adjustment, kept->reading.value);
  kept->following = false;
}

static double
to_grid (SpelchQuantity *self, double mm)
{
  double step = spelch_quantity_step (spelch_session_get_numbers (self->session)->unit);
  return round (mm / step) * step;
}

void
spelch_quantity_move (SpelchQuantity *self, double mm)
{
  move_exactly (self, to_grid (self, mm));
}

void
spelch_quantity_nudge (SpelchQuantity *self, int steps, int pages)
{
  SpelchUnit unit = spelch_session_get_numbers (self->session)->unit;
  double step = spelch_quantity_step (unit), at = self->reading.value / step;
  /* A value off the grid goes to its next point, never past it. */
  double from = steps > 0 ? floor (at + 1e-6) : steps < 0 ? ceil (at - 1e-6) : at;
  spelch_quantity_move (self, (from + steps) * step + pages * spelch_quantity_page (unit));
}

bool
spelch_quantity_enter (SpelchQuantity *self, const SpelchLength *length, char **complaint)
{
  const SpelchReading *reading = &self->reading;
  SpelchPlanned planned = planned_now (self->session);
  bool too_much = length->mm > reading->upper + 1e-9;
  if (too_much || length->mm < reading->lower - 1e-9)
    {
      *complaint
          = spelch_quantity_stop (&planned, self->id, too_much, spelch_session_get_numbers (self->session));
      return false;
    }
  bool same = reading->held && fabs (reading->value - length->mm) < 1e-9
              && g_strcmp0 (reading->typed.typed, length->typed) == 0;
  if (!same)
    edit (self, &planned, length);
  return true;
}

void
spelch_quantity_let_go (SpelchQuantity *self)
{
  if (!self->reading.held)
    return;
  SpelchPlanned planned = planned_now (self->session);
  g_autofree char *name = spelch_quantity_release_name (self->id);
  spelch_session_edit (self->session, spelch_quantity_release (&planned, self->id), name, NULL);
}

/* ---- Reading ---- */

SpelchQuantityId
spelch_quantity_get_id (SpelchQuantity *self)
{
  return self->id;
}

GtkAdjustment *
spelch_quantity_get_adjustment (SpelchQuantity *self)
{
  return self->adjustment;
}

SpelchSession *
spelch_quantity_get_session (SpelchQuantity *self)
{
  return self->session;
}

const SpelchReading *
spelch_quantity_get_reading (SpelchQuantity *self)
{
  return &self->reading;
}

guint
spelch_quantity_get_pass (SpelchQuantity *self)
{
  SpelchPlanned planned = planned_now (self->session);
  return planned.plan == NULL ? 0 : spelch_quantity_pass (&planned, self->id);
}

const char *
spelch_quantity_get_label (SpelchQuantity *self)
{
  return self->label;
}

const char *
spelch_quantity_get_pill (SpelchQuantity *self)
{
  return self->pill;
}

/* ---- Following the session ---- */

/* Another limit would make a spin button ask for another size, and the window lay itself out anew; so limits
 * wait until a drag, which has limits of its own, has ended. */
static void
follow_value (SpelchQuantity *self, SpelchUnit unit)
{
  const SpelchReading *reading = &self->reading;
  GtkAdjustment *adjustment = self->adjustment;
  bool fits = reading->value >= gtk_adjustment_get_lower (adjustment)
              && reading->value <= gtk_adjustment_get_upper (adjustment);
  self->following = true;
  if (fits && spelch_session_in_gesture (self->session))
    gtk_adjustment_set_value (adjustment, reading->value);
  else
    gtk_adjustment_configure (adjustment, reading->value, reading->lower, reading->upper,
                              spelch_quantity_step (unit), spelch_quantity_page (unit), 0);
  self->following = false;
}

static void
follow (SpelchQuantity *self, const SpelchPlanned *planned)
{
  const SpelchNumbers *numbers = spelch_session_get_numbers (self->session);
  SpelchReading before = self->reading;
  g_autofree char *label = self->label, *pill = self->pill;
  self->reading = spelch_quantity_read (planned, self->id);
  self->label = spelch_mark_label (planned, self->id, numbers);
  self->pill = spelch_mark_pill (planned, self->id, numbers);
  follow_value (self, numbers->unit);
  if (memcmp (&before, &self->reading, sizeof before) != 0 || g_strcmp0 (label, self->label) != 0
      || g_strcmp0 (pill, self->pill) != 0)
    g_signal_emit (self, signals[SIGNAL_CHANGED], 0);
}

static SpelchQuantity *
quantity_new (SpelchSession *session, SpelchQuantityId id)
{
  SpelchQuantity *self = g_object_new (SPELCH_TYPE_QUANTITY, NULL);
  self->session = session;
  self->id = id;
  self->adjustment = g_object_ref_sink (gtk_adjustment_new (0, 0, 0, 0.1, 1, 0));
  g_signal_connect_swapped (self->adjustment, "value-changed", G_CALLBACK (adjustment_moved), self);
  return self;
}

static bool
is_listed (SpelchQuantityId id, const SpelchQuantityId *ids, guint n)
{
  for (guint i = 0; i < n; i++)
    if (spelch_quantity_same (ids[i], id))
      return true;
  return false;
}

/* Both lists have the same order, so that nothing has to change places: what is dragged keeps its mark. */
static void
drop_unlisted (GListStore *list, const SpelchQuantityId *ids, guint n)
{
  for (guint i = g_list_model_get_n_items (G_LIST_MODEL (list)); i-- > 0;)
    {
      g_autoptr (SpelchQuantity) quantity = g_list_model_get_item (G_LIST_MODEL (list), i);
      if (!is_listed (quantity->id, ids, n))
        g_list_store_remove (list, i);
    }
}

static void
add_missing (GListStore *list, SpelchSession *session, const SpelchPlanned *planned,
             const SpelchQuantityId *ids, guint n)
{
  for (guint i = 0; i < n; i++)
    {
      g_autoptr (SpelchQuantity) there = g_list_model_get_item (G_LIST_MODEL (list), i);
      if (there != NULL && spelch_quantity_same (there->id, ids[i]))
        continue;
      g_autoptr (SpelchQuantity) quantity = quantity_new (session, ids[i]);
      follow (quantity, planned);
      g_list_store_insert (list, i, quantity);
    }
}

static void
session_changed (SpelchSession *session, guint change, GListStore *list)
{
  SpelchPlanned planned = planned_now (session);
  SpelchQuantityId ids[SPELCH_MAX_QUANTITIES];
  guint n = planned.plan == NULL ? 0 : spelch_quantity_list (&planned, ids, SPELCH_MAX_QUANTITIES);
  drop_unlisted (list, ids, n);
  add_missing (list, session, &planned, ids, n);
  for (guint i = 0; i < n; i++)
    {
      g_autoptr (SpelchQuantity) quantity = g_list_model_get_item (G_LIST_MODEL (list), i);
      follow (quantity, &planned);
    }
}

GListModel *
spelch_quantities_new (SpelchSession *session)
{
  GListStore *list = g_list_store_new (SPELCH_TYPE_QUANTITY);
  g_signal_connect_object (session, "changed", G_CALLBACK (session_changed), list, 0);
  if (spelch_session_get_plan (session) != NULL)
    session_changed (session, SPELCH_CHANGE_PLAN, list);
  return G_LIST_MODEL (list);
}
