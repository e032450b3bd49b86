/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "bench/reload-offer.h"
#include "bench/bench-files.h"
#include "bench/file-watch.h"

#include <glib/gi18n-lib.h>

#define SPELCH_TYPE_RELOAD_OFFER (spelch_reload_offer_get_type ())
G_DECLARE_FINAL_TYPE (SpelchReloadOffer, spelch_reload_offer, SPELCH, RELOAD_OFFER, GObject)

struct _SpelchReloadOffer
{
  GObject parent_instance;
  SpelchOffer *offer;        /* owns this */
  SpelchBenchWindow *window; /* has the offer in it */
  SpelchSession *session;
  SpelchFileWatch *watch;
};

G_DEFINE_FINAL_TYPE (SpelchReloadOffer, spelch_reload_offer, G_TYPE_OBJECT)

static void
overtaken (SpelchFileWatch *watch, SpelchReloadOffer *self)
{
  g_autofree char *name = g_file_get_basename (spelch_session_get_file (self->session));
  g_autofree char *shown = g_filename_display_name (name);
  if (spelch_session_is_unsaved (self->session))
    {
      g_autofree char *words = g_strdup_printf (
          _ ("%s was changed by another program, and there are unsaved changes here. Reading "
             "it again can be undone."),
          shown);
      spelch_offer_ask (self->offer, words, _ ("Read it again"), _ ("Keep what is here"));
      return;
    }
  g_autofree char *words
      = g_strdup_printf (_ ("%s was changed by another program and has been read again."), shown);
  if (spelch_files_reload (self->window))
    spelch_session_say (self->session, words);
}

static void
answered (SpelchOffer *offer, guint answer, SpelchReloadOffer *self)
{
  if (answer == SPELCH_ANSWER_YES)
    spelch_files_reload (self->window);
  else if (answer == SPELCH_ANSWER_NO)
    spelch_session_overrule (self->session);
}

static void
session_changed (SpelchSession *session, guint change, SpelchReloadOffer *self)
{
  if ((change & SPELCH_CHANGE_HISTORY) && !spelch_session_is_overtaken (session))
    spelch_offer_withdraw (self->offer);
}

static void
became_active (GtkWindow *window, GParamSpec *pspec, SpelchReloadOffer *self)
{
  if (gtk_window_is_active (window))
    spelch_file_watch_look (self->watch);
}

static void
spelch_reload_offer_dispose (GObject *object)
{
  SpelchReloadOffer *self = SPELCH_RELOAD_OFFER (object);
  g_clear_object (&self->watch);
  g_clear_object (&self->session);
  G_OBJECT_CLASS (spelch_reload_offer_parent_class)->dispose (object);
}

static void
spelch_reload_offer_class_init (SpelchReloadOfferClass *klass)
{
  G_OBJECT_CLASS (klass)->dispose = spelch_reload_offer_dispose;
}

static void
spelch_reload_offer_init (SpelchReloadOffer *self)
{
}

void
spelch_reload_offer_attach (SpelchOffer *offer, SpelchBenchWindow *window)
{
  SpelchReloadOffer *self = g_object_new (SPELCH_TYPE_RELOAD_OFFER, NULL);
  self->offer = offer;
  self->window = window;
  self->session = g_object_ref (spelch_bench_window_get_session (window));
  self->watch = spelch_file_watch_new (self->session);
  g_object_set_data_full (G_OBJECT (offer), "spelch-reload-offer", self, g_object_unref);
  g_signal_connect_object (self->watch, "overtaken", G_CALLBACK (overtaken), self, 0);
  g_signal_connect_object (self->session, "changed", G_CALLBACK (session_changed), self, 0);
  g_signal_connect_object (offer, "answered", G_CALLBACK (answered), self, 0);
  g_signal_connect_object (window, "notify::is-active", G_CALLBACK (became_active), self, 0);
}
