/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "bench/record-window.h"
#include "bench/escape.h"
#include "bench/form.h"
#include "bench/log-edits.h"
#include "bench/log-fields.h"
#include "bench/paragraph.h"
#include "files/file-io.h"
#include "files/shop-data.h"
#include "plan/words.h"
#include "shop/day.h"

#include <glib/gi18n-lib.h>
#include <string.h>

#define WIDTH  560
#define HEIGHT 640

/* What is recorded, as it was planned when the window was opened. */
typedef struct
{
  SpelchSession *session;
  SpelchShelves *shelves;
  SpelchPart *part;
  SpelchCut cut;
  SpelchBit bit;
  SpelchPlan plan;
  SpelchOutcome outcome;
  char *revision;
  GtkWindow *window;
  SpelchForm *form;
  GtkLabel *complaint;
} Record;

static bool
cuts_motor (gconstpointer value)
{
  return ((const SpelchOutcome *)value)->cuts[SPELCH_SIDE_MOTOR];
}

static bool
cuts_far (gconstpointer value)
{
  return ((const SpelchOutcome *)value)->cuts[SPELCH_SIDE_FAR];
}

#define AT(member) G_STRUCT_OFFSET (SpelchOutcome, member)

static const SpelchField FIELDS[] = {
  { SPELCH_FIELD_CHOICE, "motor_side", N_ ("Motor side came out"), AT (came_out),
    .choices = SPELCH_LOG_OUTCOMES, .applies = cuts_motor },
  { SPELCH_FIELD_CHOICE, "far_side", N_ ("Far side came out"), AT (came_out) + sizeof (guint),
    .choices = SPELCH_LOG_OUTCOMES, .applies = cuts_far },
  { SPELCH_FIELD_CHOICE, "piece", N_ ("Cut"), AT (piece), .choices = SPELCH_LOG_PIECES },
  { SPELCH_FIELD_FLAG, "burnt", N_ ("Burnt"), AT (burnt) },
  { SPELCH_FIELD_FLAG, "chattered", N_ ("Chattered"), AT (chattered),
    .hint = N_ ("Then it says nothing about the shear and doesn't count.") },
  { SPELCH_FIELD_FLAG, "clogged", N_ ("Clogged"), AT (clogged) },
  { SPELCH_FIELD_FLAG, "moved", N_ ("The work moved"), AT (moved),
    .hint = N_ ("Then it says nothing about the shear and doesn't count.") },
  { SPELCH_FIELD_NUMBER, "spindle_load_w", N_ ("Load of the spindle"), AT (load_w), .unit = N_ ("W"),
    .none = N_ ("not read"), .hint = N_ ("The reading in the cut less the reading when it turns free.") },
  { SPELCH_FIELD_TEXT, "date", N_ ("Day"), AT (date), SPELCH_DATE_SIZE, .is_past = true,
    .hint = N_ ("A day: 2026-05-31.") },
  { SPELCH_FIELD_TEXT, "note", N_ ("Note"), AT (note), SPELCH_NOTE_SIZE, .none = N_ ("none") },
};

static void
record_free (gpointer data)
{
  Record *record = data;
  g_object_unref (record->session);
  g_object_unref (record->shelves);
  spelch_part_unref (record->part);
  g_free (record->revision);
  g_free (record);
}

static char *
fault (gconstpointer value, gpointer data)
{
  return spelch_outcome_fault (value);
}

/* ---- What is recorded ---- */

/* The part's file and its state, as far as there is room. */
static char *
revision_of (SpelchSession *session)
{
  GFile *file = spelch_session_get_file (session);
  const char *etag = spelch_session_get_etag (session);
  g_autofree char *name
      = file == NULL ? g_strdup (spelch_session_get_part (session)->name) : spelch_file_name (file);
  bool kept = etag != NULL && !spelch_session_is_unsaved (session);
  g_autofree char *whole = kept ? g_strdup_printf ("%s, %s", name, etag) : g_strdup (name);
  gsize room = SPELCH_ID_SIZE - 1;
  const char *end = whole + strlen (whole);
  while ((gsize)(end - whole) > room)
    end = g_utf8_find_prev_char (whole, end);
  return g_strndup (whole, (gsize)(end - whole));
}

static bool
put_in_log (Record *record)
{
  SpelchShelf *log = spelch_shelves_get (record->shelves, SPELCH_LIST_LOG);
  SpelchLogEntry entries[2];
  guint n = spelch_outcome_entries (&record->outcome, record->part, &record->cut, &record->bit, &record->plan,
                                    record->revision, entries);
  g_autoptr (GArray) put = g_array_new (FALSE, FALSE, sizeof (SpelchLogEntry));
  for (guint i = 0; i < n; i++)
    {
      g_autofree char *name
          = g_strdup_printf ("%s %s %s", entries[i].date, record->cut.id,
                             spelch_code_of (&SPELCH_SIDE_CODES, !spelch_log_entry_at_motor (&entries[i])));
      g_autofree char *id = spelch_shelf_make_id (log, name);
      g_strlcpy (entries[i].id, id, sizeof entries[i].id);
      g_array_append_val (put, entries[i]);
    }
  g_autofree char *what = g_strdup_printf (_ ("recording “%s”"), record->cut.name);
  return spelch_shelf_put_all (log, put, what);
}

/* The part goes by what the log teaches now, unless that was switched off there. */
static void
follow_log (Record *record)
{
  SpelchShelf *log = spelch_shelves_get (record->shelves, SPELCH_LIST_LOG);
  SpelchPart *next
      = spelch_edit_follow_log (spelch_shop_constants (), spelch_session_get_part (record->session),
                                &record->bit, spelch_shelf_get_nth (log, 0), spelch_shelf_count (log));
  g_autofree char *name = g_strdup_printf (_ ("go by the log for “%s”"), record->bit.name);
  if (next != NULL)
    spelch_session_edit (record->session, next, name, NULL);
}

static void
complain (Record *record, const char *words)
{
  gtk_label_set_text (record->complaint, words);
  gtk_widget_set_visible (GTK_WIDGET (record->complaint), words[0] != '\0');
}

static void
record_clicked (GtkButton *button, Record *record)
{
  const SpelchOutcome *outcome = &record->outcome;
  if (spelch_form_is_unfinished (record->form))
    {
      complain (record, _ ("Correct what is marked above first; nothing is written down yet."));
      return;
    }
  if (outcome->came_out[0] == 0 && outcome->came_out[1] == 0)
    {
      complain (record, _ ("Say of at least one edge how it came out; nothing is written down yet."));
      return;
    }
  if (!put_in_log (record))
    {
      const char *trouble = spelch_shelf_get_trouble (spelch_shelves_get (record->shelves, SPELCH_LIST_LOG));
      complain (record, trouble == NULL ? "" : trouble);
      return;
    }
  follow_log (record);
  gtk_window_close (record->window);
}

static void
edited (SpelchForm *form, gconstpointer value, const char *field, Record *record)
{
  record->outcome = *(const SpelchOutcome *)value;
  spelch_form_show (form, "outcome", &record->outcome);
  complain (record, "");
}

/* ---- The window ---- */

static void
add_reckoned (GtkBox *box, const Record *record, SpelchSide side)
{
  const SpelchEdge *edge = spelch_plan_worst (&record->plan, side);
  if (edge == NULL)
    return;
  g_autofree char *face = spelch_words_face (&record->plan, &record->cut, side);
  const char *grade = spelch_words_grade (edge->model_grade, spelch_plan_facing (&record->plan, side));
  g_autofree char *words = g_strdup_printf (_ ("%s: %s reckoned, without the log."), face, grade);
  gtk_box_append (box, spelch_paragraph_new (words, "soft"));
}

static void
describe (GtkBox *box, const Record *record)
{
  const SpelchNumbers *numbers = spelch_session_get_numbers (record->session);
  g_autofree char *passes = spelch_words_passes (&record->plan, numbers);
  g_autofree char *speed = spelch_words_count (record->plan.speed_rpm);
  g_autofree char *feed = spelch_words_feed (numbers, record->plan.feed_mm_min);
  g_autofree char *what
      = g_strdup_printf (_ ("%s: %s in %s"), record->cut.name, record->bit.name, record->part->board.name);
  g_autofree char *how
      = g_strdup_printf (_ ("Passes %s; %s rpm, %s; model %s."), passes, speed, feed, SPELCH_MODEL_VERSION);
  gtk_box_append (box, spelch_paragraph_new (what, "pass"));
  gtk_box_append (box, spelch_paragraph_new (how, "soft"));
  add_reckoned (box, record, SPELCH_SIDE_MOTOR);
  add_reckoned (box, record, SPELCH_SIDE_FAR);
}

static GtkWidget *
make_foot (Record *record)
{
  GtkWidget *foot = gtk_box_new (GTK_ORIENTATION_VERTICAL, 8);
  GtkWidget *buttons = gtk_box_new (GTK_ORIENTATION_HORIZONTAL, 8);
  GtkWidget *cancel = gtk_button_new_with_label (_ ("Cancel"));
  GtkWidget *put = gtk_button_new_with_label (_ ("Write it down"));
  record->complaint = GTK_LABEL (spelch_paragraph_new (NULL, "strong"));
  gtk_widget_set_visible (GTK_WIDGET (record->complaint), FALSE);
  gtk_widget_set_halign (buttons, GTK_ALIGN_END);
  gtk_box_append (GTK_BOX (buttons), cancel);
  gtk_box_append (GTK_BOX (buttons), put);
  gtk_box_append (GTK_BOX (foot), GTK_WIDGET (record->complaint));
  gtk_box_append (GTK_BOX (foot), buttons);
  gtk_widget_add_css_class (foot, "foot");
  g_signal_connect_swapped (cancel, "clicked", G_CALLBACK (gtk_window_close), record->window);
  g_signal_connect (put, "clicked", G_CALLBACK (record_clicked), record);
  return foot;
}

static void
call_outcomes (Record *record, const char *member, SpelchSide side)
{
  g_auto (GStrv) outcomes = spelch_log_outcomes (spelch_plan_facing (&record->plan, side));
  spelch_form_set_choices (record->form, member, (const char *const *)outcomes);
}

static GtkWidget *
make_body (Record *record)
{
  GtkWidget *all = gtk_box_new (GTK_ORIENTATION_VERTICAL, 0);
  GtkWidget *body = gtk_box_new (GTK_ORIENTATION_VERTICAL, 4);
  GtkWidget *scroller = gtk_scrolled_window_new ();
  const SpelchNumbers *numbers = spelch_session_get_numbers (record->session);
  record->form = spelch_form_new (FIELDS, G_N_ELEMENTS (FIELDS), sizeof (SpelchOutcome), fault, NULL);
  call_outcomes (record, "motor_side", SPELCH_SIDE_MOTOR);
  call_outcomes (record, "far_side", SPELCH_SIDE_FAR);
  spelch_form_set_numbers (record->form, numbers);
  spelch_form_show (record->form, "outcome", &record->outcome);
  g_signal_connect (record->form, "edited", G_CALLBACK (edited), record);
  describe (GTK_BOX (body), record);
  gtk_widget_set_margin_top (GTK_WIDGET (record->form), 12);
  gtk_box_append (GTK_BOX (body), GTK_WIDGET (record->form));
  gtk_widget_add_css_class (body, "fields");
  gtk_scrolled_window_set_policy (GTK_SCROLLED_WINDOW (scroller), GTK_POLICY_NEVER, GTK_POLICY_AUTOMATIC);
  gtk_scrolled_window_set_child (GTK_SCROLLED_WINDOW (scroller), body);
  gtk_widget_set_vexpand (scroller, TRUE);
  gtk_box_append (GTK_BOX (all), scroller);
  gtk_box_append (GTK_BOX (all), make_foot (record));
  return all;
}

void
spelch_record_window_show (GtkWindow *parent, SpelchSession *session, SpelchShelves *shelves)
{
  Record *record = g_new0 (Record, 1);
  char today[SPELCH_DATE_SIZE];
  spelch_day_today (today);
  record->session = g_object_ref (session);
  record->shelves = g_object_ref (shelves);
  record->part = spelch_part_ref (spelch_session_get_part (session));
  record->cut = *spelch_session_get_cut (session);
  record->bit = *spelch_session_get_bit (session);
  record->plan = *spelch_session_get_plan (session);
  record->outcome = spelch_outcome_start (&record->plan, today);
  record->revision = revision_of (session);
  record->window = GTK_WINDOW (gtk_window_new ());
  gtk_widget_add_css_class (GTK_WIDGET (record->window), "bench");
  gtk_widget_add_css_class (GTK_WIDGET (record->window), "shelf");
  gtk_window_set_child (record->window, make_body (record));
  gtk_window_set_title (record->window, _ ("Record what came out"));
  gtk_window_set_default_size (record->window, WIDTH, HEIGHT);
  gtk_window_set_transient_for (record->window, parent);
  gtk_window_set_modal (record->window, TRUE);
  spelch_escape_closes (record->window);
  g_object_set_data_full (G_OBJECT (record->window), "record", record, record_free);
  gtk_window_present (record->window);
  spelch_form_focus (record->form, record->outcome.cuts[SPELCH_SIDE_MOTOR] ? "motor_side" : "far_side");
}
