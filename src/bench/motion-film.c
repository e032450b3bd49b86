/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "bench/motion-film.h"
#include "bench/dialogue.h"
#include "drawing/film.h"
#include "files/file-io.h"

#include <glib/gi18n-lib.h>

#define WIDTH  1000 /* pixels of a saved picture */
#define HEIGHT 760

struct _SpelchMotionFilm
{
  GtkWidget parent_instance;
  GtkWidget *row;
  GtkWidget *bar;
  GtkLabel *words;
  GtkButton *button; /* stops, or puts the words away */

  SpelchFilm *film; /* under way */
  char *name;       /* of its file, for people */
  bool animation;
  guint idle;
  GtkFileChooserNative *chooser;
  /* What is to be saved once a name is chosen. */
  SpelchSession *session;
  guint pass;
  SpelchLook look;
};

G_DEFINE_FINAL_TYPE (SpelchMotionFilm, spelch_motion_film, GTK_TYPE_WIDGET)

static void
say (SpelchMotionFilm *self, const char *words)
{
  gtk_widget_set_visible (self->row, TRUE);
  gtk_widget_set_visible (self->bar, self->film != NULL);
  gtk_label_set_text (self->words, words);
  gtk_button_set_label (self->button, self->film != NULL ? _ ("Stop") : _ ("Put away"));
}

static void
stop (SpelchMotionFilm *self)
{
  g_clear_handle_id (&self->idle, g_source_remove);
  g_clear_pointer (&self->film, spelch_film_free);
}

static void
finish (SpelchMotionFilm *self)
{
  g_autofree char *words
      = self->animation
            ? g_strdup_printf (_ ("Saved as %s."), self->name)
            : g_strdup_printf (g_dngettext (GETTEXT_PACKAGE, "Saved as %u picture, numbered after %s.",
                                            "Saved as %u pictures, numbered after %s.",
                                            spelch_film_count (self->film)),
                               spelch_film_count (self->film), self->name);
  stop (self);
  say (self, words);
}

/* A picture at a time; the window's own frames go first. */
static gboolean
go_on (gpointer data)
{
  SpelchMotionFilm *self = data;
  g_autoptr (GError) error = NULL;
  if (!spelch_film_step (self->film, &error))
    {
      self->idle = 0;
      stop (self);
      say (self, error->message);
      return G_SOURCE_REMOVE;
    }
  gtk_progress_bar_set_fraction (GTK_PROGRESS_BAR (self->bar),
                                 (double)spelch_film_made (self->film) / spelch_film_count (self->film));
  if (!spelch_film_is_done (self->film))
    return G_SOURCE_CONTINUE;
  self->idle = 0;
  finish (self);
  return G_SOURCE_REMOVE;
}

static void
begin (SpelchMotionFilm *self, GFile *file)
{
  g_autoptr (GError) error = NULL;
  g_autofree char *path = g_file_get_path (file), *base = g_file_get_basename (file);
  PangoContext *context = gtk_widget_get_pango_context (GTK_WIDGET (self));
  const SpelchPlan *plan = spelch_session_get_plan (self->session);
  SpelchView view
      = { .width = WIDTH,
          .height = HEIGHT,
          .text = 1,
          .look = self->look,
          .numbers = *spelch_session_get_numbers (self->session),
          .family = pango_font_description_get_family (pango_context_get_font_description (context)) };
  stop (self);
  g_free (self->name);
  self->name = g_filename_display_name (base);
  if (path == NULL || plan == NULL)
    {
      say (self, _ ("Only a file of this computer can be written. Choose another place."));
      return;
    }
  self->film
      = spelch_film_new (spelch_session_get_constants (self->session),
                         spelch_session_get_part (self->session), spelch_session_get_cut (self->session),
                         spelch_session_get_bit (self->session), plan, self->pass, &view, path, true, &error);
  if (self->film == NULL)
    {
      say (self, error->message);
      return;
    }
  g_autofree char *words = g_strdup_printf (_ ("Saving %s"), self->name);
  say (self, words);
  self->idle = g_idle_add (go_on, self);
}

/* ---- Asking ---- */

static void
forget_chooser (SpelchMotionFilm *self)
{
  if (self->chooser == NULL)
    return;
  gtk_native_dialog_destroy (GTK_NATIVE_DIALOG (self->chooser));
  g_clear_object (&self->chooser);
}

static void
name_chosen (GtkNativeDialog *dialog, int response, SpelchMotionFilm *self)
{
  g_autoptr (GFile) file = gtk_file_chooser_get_file (GTK_FILE_CHOOSER (dialog));
  spelch_dialogue_end_native (GTK_NATIVE_DIALOG (g_steal_pointer (&self->chooser)));
  if (response == GTK_RESPONSE_ACCEPT && file != NULL)
    begin (self, file);
}

void
spelch_motion_film_save (SpelchMotionFilm *self, SpelchSession *session, guint pass, SpelchLook look,
                         bool animation)
{
  const SpelchCut *cut = spelch_session_get_cut (session);
  if (cut == NULL)
    return;
  g_autofree char *stem = spelch_file_stem (cut->name, cut->id[0] != '\0' ? cut->id : _ ("cut"));
  g_autofree char *name = g_strdup_printf ("%s-%u.%s", stem, pass + 1, animation ? "gif" : "png");
  g_set_object (&self->session, session);
  self->pass = pass;
  self->look = look;
  self->animation = animation;
  forget_chooser (self);
  self->chooser = gtk_file_chooser_native_new (animation ? _ ("Save as an animation")
                                                         : _ ("Save as a series of pictures"),
                                               GTK_WINDOW (gtk_widget_get_root (GTK_WIDGET (self))),
                                               GTK_FILE_CHOOSER_ACTION_SAVE, _ ("_Save"), _ ("_Cancel"));
  gtk_file_chooser_set_current_name (GTK_FILE_CHOOSER (self->chooser), name);
  gtk_native_dialog_set_modal (GTK_NATIVE_DIALOG (self->chooser), TRUE);
  g_signal_connect (self->chooser, "response", G_CALLBACK (name_chosen), self);
  gtk_native_dialog_show (GTK_NATIVE_DIALOG (self->chooser));
}

/* ---- Object ---- */

static void
button_clicked (GtkButton *button, SpelchMotionFilm *self)
{
  stop (self);
  gtk_widget_set_visible (self->row, FALSE);
}

static void
spelch_motion_film_dispose (GObject *object)
{
  SpelchMotionFilm *self = SPELCH_MOTION_FILM (object);
  stop (self);
  forget_chooser (self);
  g_clear_object (&self->session);
  g_clear_pointer (&self->row, gtk_widget_unparent);
  g_clear_pointer (&self->name, g_free);
  G_OBJECT_CLASS (spelch_motion_film_parent_class)->dispose (object);
}

static void
spelch_motion_film_class_init (SpelchMotionFilmClass *klass)
{
  G_OBJECT_CLASS (klass)->dispose = spelch_motion_film_dispose;
  gtk_widget_class_set_layout_manager_type (GTK_WIDGET_CLASS (klass), GTK_TYPE_BIN_LAYOUT);
}

static void
spelch_motion_film_init (SpelchMotionFilm *self)
{
  self->row = gtk_box_new (GTK_ORIENTATION_HORIZONTAL, 12);
  self->bar = gtk_progress_bar_new ();
  self->words = GTK_LABEL (gtk_label_new (NULL));
  self->button = GTK_BUTTON (gtk_button_new ());
  gtk_widget_set_valign (self->bar, GTK_ALIGN_CENTER);
  gtk_widget_set_size_request (self->bar, 160, -1);
  gtk_label_set_wrap (self->words, TRUE);
  gtk_label_set_xalign (self->words, 0);
  gtk_widget_set_hexpand (GTK_WIDGET (self->words), TRUE);
  gtk_box_append (GTK_BOX (self->row), self->bar);
  gtk_box_append (GTK_BOX (self->row), GTK_WIDGET (self->words));
  gtk_box_append (GTK_BOX (self->row), GTK_WIDGET (self->button));
  gtk_widget_set_parent (self->row, GTK_WIDGET (self));
  gtk_widget_set_visible (self->row, FALSE);
  g_signal_connect (self->button, "clicked", G_CALLBACK (button_clicked), self);
}

SpelchMotionFilm *
spelch_motion_film_new (void)
{
  return g_object_new (SPELCH_TYPE_MOTION_FILM, NULL);
}
