/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "bench/copy-offer.h"

#include "bench/shelf-kind.h"
#include "bench/taking.h"

#include <glib/gi18n-lib.h>

#define N_KINDS (SPELCH_LIST_MACHINES + 1)

#define SPELCH_TYPE_COPY_OFFER (spelch_copy_offer_get_type ())
G_DECLARE_FINAL_TYPE (SpelchCopyOffer, spelch_copy_offer, SPELCH, COPY_OFFER, GObject)

struct _SpelchCopyOffer
{
  GObject parent_instance;
  SpelchOffer *offer; /* owns this */
  SpelchSession *session;
  SpelchShelves *shelves;
  char *seen[N_KINDS]; /* what lay on the shelf when last looked: the item that the part has a copy of */
  SpelchListKind asked;
  bool asking;
};

G_DEFINE_FINAL_TYPE (SpelchCopyOffer, spelch_copy_offer, G_TYPE_OBJECT)

/* The part's copy of what lies on that shelf; NULL where it has none. */
static gconstpointer
copy_of (SpelchSession *session, SpelchListKind kind)
{
  const SpelchPart *part = session == NULL ? NULL : spelch_session_get_part (session);
  if (part == NULL)
    return NULL;
  switch (kind)
    {
    case SPELCH_LIST_BITS:
      return spelch_session_get_accepted (session);
    case SPELCH_LIST_BOARDS:
      return &part->board;
    case SPELCH_LIST_MACHINES:
      return &part->machine;
    case SPELCH_LIST_LOG:
    default:
      return NULL;
    }
}

/* An item as text, without the metres a bit has cut and what a board was measured; NULL for none. */
static char *
text_of (SpelchListKind kind, gconstpointer item)
{
  if (item == NULL)
    return NULL;
  gsize size = spelch_list_item_size (kind);
  g_autofree gpointer plain = g_memdup2 (item, size);
  if (kind == SPELCH_LIST_BITS)
    ((SpelchBit *)plain)->metres_cut = 0;
  if (kind == SPELCH_LIST_BOARDS) /* the sheet measured for the part is the part's */
    {
      ((SpelchBoard *)plain)->measured = (SpelchLength){ 0 };
      ((SpelchBoard *)plain)->measured_within_mm = 0;
    }
  g_autoptr (GArray) one = g_array_new (FALSE, FALSE, (guint)size);
  g_array_append_vals (one, plain, 1);
  return spelch_list_to_json (kind, one, NULL);
}

bool
spelch_copy_differs (SpelchSession *session, SpelchListKind kind, gconstpointer item)
{
  gconstpointer copy = copy_of (session, kind);
  if (copy == NULL || item == NULL || !g_str_equal ((const char *)copy, (const char *)item))
    return false;
  g_autofree char *here = text_of (kind, copy), *there = text_of (kind, item);
  return !g_str_equal (here, there);
}

static gconstpointer
on_shelf (SpelchCopyOffer *self, SpelchListKind kind)
{
  gconstpointer copy = copy_of (self->session, kind);
  return copy == NULL ? NULL : spelch_shelf_find (spelch_shelves_get (self->shelves, kind), copy);
}

static void
ask (SpelchCopyOffer *self, SpelchListKind kind, gconstpointer item)
{
  g_autofree char *words = g_strdup_printf (_ ("“%s” has been changed. The part still has it as it was."),
                                            spelch_shelf_item_name (item));
  self->asked = kind;
  self->asking = true;
  spelch_offer_ask (self->offer, words, _ ("Take it as it is now"), _ ("Leave the part"));
}

static void
shelf_changed (SpelchShelf *shelf, SpelchCopyOffer *self)
{
  for (int kind = 0; kind < N_KINDS; kind++)
    {
      gconstpointer item = on_shelf (self, (SpelchListKind)kind);
      g_autofree char *now = text_of ((SpelchListKind)kind, item);
      bool changed = g_strcmp0 (now, self->seen[kind]) != 0;
      g_free (self->seen[kind]);
      self->seen[kind] = g_steal_pointer (&now);
      if (changed && spelch_copy_differs (self->session, (SpelchListKind)kind, item))
        ask (self, (SpelchListKind)kind, item);
    }
}

static void
session_changed (SpelchSession *session, guint change, SpelchCopyOffer *self)
{
  if (!(change & (SPELCH_CHANGE_OPENED | SPELCH_CHANGE_HISTORY | SPELCH_CHANGE_CUT)))
    return;
  for (int kind = 0; kind < N_KINDS; kind++)
    {
      g_free (self->seen[kind]);
      self->seen[kind] = text_of ((SpelchListKind)kind, on_shelf (self, (SpelchListKind)kind));
    }
  if (self->asking && !spelch_copy_differs (session, self->asked, on_shelf (self, self->asked)))
    {
      self->asking = false;
      spelch_offer_withdraw (self->offer);
    }
}

static void
answered (SpelchOffer *offer, guint answer, SpelchCopyOffer *self)
{
  self->asking = false;
  if (answer == SPELCH_ANSWER_YES)
    spelch_take (self->session, self->asked, on_shelf (self, self->asked));
}

static void
spelch_copy_offer_dispose (GObject *object)
{
  SpelchCopyOffer *self = SPELCH_COPY_OFFER (object);
  for (int kind = 0; kind < N_KINDS; kind++)
    g_clear_pointer (&self->seen[kind], g_free);
  g_clear_object (&self->session);
  g_clear_object (&self->shelves);
  G_OBJECT_CLASS (spelch_copy_offer_parent_class)->dispose (object);
}

static void
spelch_copy_offer_class_init (SpelchCopyOfferClass *klass)
{
  G_OBJECT_CLASS (klass)->dispose = spelch_copy_offer_dispose;
}

static void
spelch_copy_offer_init (SpelchCopyOffer *self)
{
}

void
spelch_copy_offer_attach (SpelchOffer *offer, SpelchSession *session, SpelchShelves *shelves)
{
  SpelchCopyOffer *self = g_object_new (SPELCH_TYPE_COPY_OFFER, NULL);
  self->offer = offer;
  self->session = g_object_ref (session);
  self->shelves = g_object_ref (shelves);
  g_object_set_data_full (G_OBJECT (offer), "spelch-copy-offer", self, g_object_unref);
  for (int kind = 0; kind < N_KINDS; kind++)
    g_signal_connect_object (spelch_shelves_get (shelves, (SpelchListKind)kind), "changed",
                             G_CALLBACK (shelf_changed), self, 0);
  g_signal_connect_object (session, "changed", G_CALLBACK (session_changed), self, 0);
  g_signal_connect_object (offer, "answered", G_CALLBACK (answered), self, 0);
}
