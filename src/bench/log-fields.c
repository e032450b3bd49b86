/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "bench/log-fields.h"
#include "bench/log-lesson.h"
#include "bench/shelf-kind.h"
#include "bench/part-edits.h"
#include "plan/case.h"
#include "plan/words-log.h"
#include "shop/day.h"

#include <glib/gi18n-lib.h>
#include <stdlib.h>
#include <string.h>

const char *const SPELCH_LOG_PIECES[] = { N_ ("Finished piece"), N_ ("Test strip"), NULL };

#define GRADES                                                                                               \
  N_ ("Clean"), N_ ("Nearly clean"), N_ ("Fuzzy, or nicked"), N_ ("Torn, or chipped"),                       \
      N_ ("Badly torn, or badly chipped"), NULL

const char *const SPELCH_LOG_OUTCOMES[] = { N_ ("Not looked at"), N_ ("As reckoned"), GRADES };

/* By grade; 0 is what the entry has beside "as_predicted". */
#define OUTCOMES (SPELCH_LOG_OUTCOMES + 1)

static const char *const RECKONED[] = { N_ ("Not told"), GRADES };
#define GRADE_ONE 2 /* place of the first grade among the outcomes */

/* "Very fuzzy", as a choice. */
static char *
begun_large (const char *words)
{
  char letter[6] = { '\0' };
  g_unichar_to_utf8 (g_unichar_toupper (g_utf8_get_char (words)), letter);
  return g_strconcat (letter, g_utf8_next_char (words), NULL);
}

char **
spelch_log_outcomes (SpelchFacing facing)
{
  guint n = G_N_ELEMENTS (SPELCH_LOG_OUTCOMES) - 1;
  char **outcomes = g_new0 (char *, n + 1);
  for (guint i = 0; i < n; i++)
    outcomes[i] = i < GRADE_ONE || facing == SPELCH_N_FACINGS
                      ? g_strdup (_ (SPELCH_LOG_OUTCOMES[i]))
                      : begun_large (spelch_words_grade ((int)(i - GRADE_ONE) + 1, facing));
  return outcomes;
}

static const char *const FACES[] = { N_ ("Face a"), N_ ("Face b"), NULL };
static const char *const ORDERS[] = { N_ ("Newest first"), N_ ("Oldest first"), NULL };

static bool
is_clear_known (gconstpointer value)
{
  return ((const SpelchLogEntry *)value)->clear_known;
}

static bool
has_no_watts (gconstpointer value)
{
  return ((const SpelchLogEntry *)value)->load_w <= 0;
}

static bool
has_percent (gconstpointer value)
{
  return ((const SpelchLogEntry *)value)->load_percent > 0 || ((const SpelchLogEntry *)value)->rated_w > 0;
}

static bool
has_no_percent (gconstpointer value)
{
  return ((const SpelchLogEntry *)value)->load_percent <= 0;
}

#define AT(member) G_STRUCT_OFFSET (SpelchLogEntry, member)

static const SpelchField FIELDS[] = {
  { SPELCH_FIELD_HEADING, NULL, N_ ("What came out") },
  { SPELCH_FIELD_CHOICE, "grade", N_ ("The edge came out"), AT (grade), .choices = OUTCOMES },
  { SPELCH_FIELD_CHOICE, "piece", N_ ("Cut"), AT (piece), .choices = SPELCH_LOG_PIECES },
  { SPELCH_FIELD_TEXT, "date", N_ ("Day"), AT (date), SPELCH_DATE_SIZE, .is_past = true,
    .hint = N_ ("A day: 2026-05-31.") },
  { SPELCH_FIELD_FLAG, "burnt", N_ ("Burnt"), AT (burnt) },
  { SPELCH_FIELD_FLAG, "chattered", N_ ("Chattered"), AT (chattered),
    .hint = N_ ("Then it says nothing about the shear and doesn't count.") },
  { SPELCH_FIELD_FLAG, "clogged", N_ ("Clogged"), AT (clogged) },
  { SPELCH_FIELD_FLAG, "moved", N_ ("The work moved"), AT (moved),
    .hint = N_ ("Then it says nothing about the shear and doesn't count.") },
  { SPELCH_FIELD_TEXT, "note", N_ ("Note"), AT (note), SPELCH_NOTE_SIZE, .none = N_ ("none") },
  { SPELCH_FIELD_HEADING, NULL, N_ ("What was cut") },
  { SPELCH_FIELD_PICK, "board", N_ ("Board"), AT (board), SPELCH_ID_SIZE },
  { SPELCH_FIELD_PICK, "bit", N_ ("Bit"), AT (bit), SPELCH_ID_SIZE },
  { SPELCH_FIELD_PICK, "machine", N_ ("Machine"), AT (machine), SPELCH_ID_SIZE },
  { SPELCH_FIELD_CHOICE, "kind", N_ ("Kind of cut"), AT (kind), .choices = SPELCH_CUT_KIND_NAMES },
  { SPELCH_FIELD_CHOICE, "face", N_ ("Edge looked at"), AT (face), .choices = FACES },
  { SPELCH_FIELD_CHOICE, "way_up", N_ ("Toward the motor"), AT (way_up), .choices = FACES },
  { SPELCH_FIELD_LENGTHS, "passes", N_ ("Passes, depths"), AT (passes), SPELCH_MAX_PASSES, AT (n_passes),
    .none = N_ ("not told"), .hint = N_ ("Of the tip below the motor-side face, one after the other.") },
  { SPELCH_FIELD_LENGTH, "overcut", N_ ("Overcut"), AT (overcut), .none = N_ ("none") },
  { SPELCH_FIELD_NUMBER, "speed_rpm", N_ ("Spindle"), AT (speed_rpm), .unit = N_ ("rpm"),
    .none = N_ ("not told") },
  { SPELCH_FIELD_NUMBER, "feed_mm_min", N_ ("Feed"), AT (feed_mm_min), .unit = N_ ("mm/min"),
    .none = N_ ("not told") },
  { SPELCH_FIELD_HEADING, NULL, N_ ("What was reckoned") },
  { SPELCH_FIELD_CHOICE, "predicted_grade", N_ ("The edge"), AT (predicted), .choices = RECKONED,
    .hint = N_ ("Without what the log corrects.") },
  { SPELCH_FIELD_FLAG, "clear_known", N_ ("Pressed in by a compression bit"), AT (clear_known) },
  { SPELCH_FIELD_NUMBER, "clear_of_turn_over_mm", N_ ("Clear of the turn-over"), AT (clear_mm),
    .unit = N_ ("mm"), .applies = is_clear_known },
  { SPELCH_FIELD_NUMBER, "predicted_power_w", N_ ("Power"), AT (power_w), .unit = N_ ("W"),
    .none = N_ ("not told") },
  { SPELCH_FIELD_TEXT, "model_version", N_ ("Model"), AT (model_version), SPELCH_VERSION_SIZE,
    .none = N_ ("not told") },
  { SPELCH_FIELD_TEXT, "revision", N_ ("Part, and its state"), AT (revision), SPELCH_ID_SIZE,
    .none = N_ ("not told") },
  { SPELCH_FIELD_HEADING, NULL, N_ ("What the cut took of the spindle") },
  { SPELCH_FIELD_NUMBER, "spindle_load_w", N_ ("Load"), AT (load_w), .unit = N_ ("W"),
    .none = N_ ("not read"), .applies = has_no_percent,
    .hint = N_ ("The reading in the cut less the reading when it turns free.") },
  { SPELCH_FIELD_NUMBER, "rated_w", N_ ("Rated power"), AT (rated_w), .unit = N_ ("W"),
    .none = N_ ("not told"), .applies = has_no_watts },
  { SPELCH_FIELD_NUMBER, "spindle_load_percent", N_ ("Load, share of it"), AT (load_percent),
    .unit = N_ ("%"), .none = N_ ("not read"), .applies = has_percent },
};

/* ---- Names ---- */

static char *
known_as (gconstpointer item)
{
  const SpelchLogEntry *entry = item;
  return g_strdup_printf (spelch_log_entry_at_motor (entry) ? _ ("%s, motor side") : _ ("%s, far side"),
                          entry->date);
}

static char *
title (gconstpointer item, SpelchShelves *shelves)
{
  const SpelchLogEntry *entry = item;
  /* Translators: a board and a bit */
  return g_strdup_printf (_ ("%s, %s"), spelch_shelves_name (shelves, SPELCH_LIST_BOARDS, entry->board),
                          spelch_shelves_name (shelves, SPELCH_LIST_BITS, entry->bit));
}

/* Laminate has words of its own, and so has a board without grain; SPELCH_N_FACINGS where the board isn't
 * there any more. */
static SpelchFacing
facing_of (const SpelchLogEntry *entry, SpelchShelves *shelves)
{
  const SpelchBoard *board
      = spelch_shelf_find (spelch_shelves_get (shelves, SPELCH_LIST_BOARDS), entry->board);
  if (board == NULL || board->n_layers == 0)
    return SPELCH_N_FACINGS;
  return spelch_facing_of_layer (spelch_board_face_layer (board, entry->face));
}

static char *
line (gconstpointer item, SpelchShelves *shelves, const SpelchNumbers *numbers)
{
  const SpelchLogEntry *entry = item;
  g_autofree char *edge = spelch_words_log_entry (entry, facing_of (entry, shelves));
  g_autofree char *remarks = spelch_words_log_remarks (entry);
  return g_strdup_printf ("%s · %s%s%s", entry->date, edge, remarks[0] == '\0' ? "" : " · ", remarks);
}

static double
measure (gconstpointer item, guint order)
{
  const SpelchLogEntry *entry = item;
  double day = atoi (entry->date) * 372.0 + atoi (entry->date + 5) * 31.0 + atoi (entry->date + 8);
  return order == 0 ? -day : day;
}

/* ---- Changing ---- */

static void
take_first (char *into, SpelchShelves *shelves, SpelchListKind kind)
{
  const char *first = spelch_shelf_get_nth (spelch_shelves_get (shelves, kind), 0);
  if (first != NULL)
    g_strlcpy (into, first, SPELCH_ID_SIZE);
}

/* Of the part on the bench, or what lies first. */
static void
begin (gpointer item, SpelchShelves *shelves)
{
  SpelchLogEntry *entry = item;
  SpelchSession *session = spelch_shelves_get_session (shelves);
  const SpelchPart *part = session == NULL ? NULL : spelch_session_get_part (session);
  const SpelchBit *bit = session == NULL ? NULL : spelch_session_get_bit (session);
  spelch_day_today (entry->date);
  take_first (entry->board, shelves, SPELCH_LIST_BOARDS);
  take_first (entry->bit, shelves, SPELCH_LIST_BITS);
  if (part != NULL)
    g_strlcpy (entry->board, part->board.id, sizeof entry->board);
  if (part != NULL)
    g_strlcpy (entry->machine, part->machine.id, sizeof entry->machine);
  if (bit != NULL)
    g_strlcpy (entry->bit, bit->id, sizeof entry->bit);
  entry->predicted = 1;
  entry->as_predicted = true;
}

static void
settle (gconstpointer before, gpointer after)
{
  SpelchLogEntry *entry = after;
  entry->as_predicted = entry->grade == 0;
  if (!entry->clear_known)
    entry->clear_mm = 0;
}

static void
furnish_with (SpelchForm *form, SpelchShelves *shelves, const char *member, SpelchListKind kind,
              const char *none)
{
  SpelchShelf *shelf = spelch_shelves_get (shelves, kind);
  g_autoptr (GPtrArray) ids = g_ptr_array_new (), names = g_ptr_array_new ();
  if (none != NULL)
    {
      g_ptr_array_add (ids, (gpointer) "");
      g_ptr_array_add (names, (gpointer)none);
    }
  for (guint i = 0; i < spelch_shelf_count (shelf); i++)
    {
      gconstpointer item = spelch_shelf_get_nth (shelf, i);
      g_ptr_array_add (ids, (gpointer)item);
      g_ptr_array_add (names, (gpointer)spelch_shelf_item_name (item));
    }
  g_ptr_array_add (ids, NULL);
  g_ptr_array_add (names, NULL);
  spelch_form_set_picks (form, member, (const char *const *)ids->pdata, (const char *const *)names->pdata);
}

static void
call_grades (SpelchForm *form, const SpelchLogEntry *entry, SpelchShelves *shelves)
{
  g_auto (GStrv) outcomes = spelch_log_outcomes (facing_of (entry, shelves));
  const char *const *names = (const char *const *)outcomes;
  spelch_form_set_choices (form, "grade", names + 1);
  g_autofree char *as_reckoned = g_steal_pointer (&outcomes[1]);
  outcomes[1] = g_strdup (_ (RECKONED[0]));
  spelch_form_set_choices (form, "predicted_grade", names + 1);
}

static void
furnish (SpelchForm *form, SpelchShelves *shelves, gconstpointer item)
{
  call_grades (form, item, shelves);
  furnish_with (form, shelves, "board", SPELCH_LIST_BOARDS, NULL);
  furnish_with (form, shelves, "bit", SPELCH_LIST_BITS, NULL);
  furnish_with (form, shelves, "machine", SPELCH_LIST_MACHINES, _ ("not told"));
}

/* ---- What it teaches ---- */

static GtkWidget *
more_new (SpelchShelves *shelves)
{
  return GTK_WIDGET (spelch_log_lesson_new (shelves));
}

static void
more_show (GtkWidget *more, gconstpointer item, const SpelchNumbers *numbers)
{
  const SpelchLogEntry *entry = item;
  spelch_log_lesson_show (SPELCH_LOG_LESSON (more), entry->board, entry->bit, numbers);
}

const SpelchShelfKind SPELCH_SHELF_LOG = {
  .list = SPELCH_LIST_LOG,
  .title = N_ ("Shop log"),
  .fresh_name = N_ ("entry"),
  .empty = N_ ("Nothing is written down yet. Take “Record what came out…” on the bench after a cut or a test "
               "strip, or add an entry here."),
  .fields = FIELDS,
  .n_fields = G_N_ELEMENTS (FIELDS),
  .orders = ORDERS,
  .measure = measure,
  .filters = { { N_ ("Boards shown"), N_ ("Every board"), SPELCH_LIST_BOARDS, AT (board) },
               { N_ ("Bits shown"), N_ ("Every bit"), SPELCH_LIST_BITS, AT (bit) } },
  .n_filters = 2,
  .known_as = known_as,
  .title_of = title,
  .furnish = furnish,
  .begin = begin,
  .settle = settle,
  .line = line,
  .more_new = more_new,
  .more_first = true,
  .more_show = more_show,
};
