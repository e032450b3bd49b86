/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "files/exercise-file.h"

#include "files/bit-json.h"
#include "files/board-json.h"
#include "files/by-language-json.h"
#include "files/cut-json.h"
#include "files/file-io.h"
#include "files/json-text.h"
#include "files/machine-json.h"
#include "files/part-file.h"
#include "files/part-json.h"
#include "files/shop-data.h"
#include "files/unread.h"

#include <glib/gi18n-lib.h>
#include <string.h>

#define BITS_MOST      40
#define NOT_IN_THE_SET N_ ("the starter set has no such; write another id, or tell it in full in braces {}.")

static const char *const NEEDED[]
    = { "format_version", "id", "title", "asks", "board", "machine", "bits", "cut", NULL };
static const char *const VARY_NEEDS[] = { "what", NULL };

/* ---- What the workshop has ---- */

static void
read_board (SpelchFields *fields, SpelchPart *part)
{
  char id[SPELCH_ID_SIZE] = "";
  guint n, i = 0;
  const SpelchBoard *boards = spelch_shop_boards (&n);
  if (!spelch_fields_is_text (fields, "board"))
    {
      g_autoptr (SpelchFields) board = spelch_fields_object (fields, "board");
      if (board != NULL)
        part->board = spelch_board_read (board);
      return;
    }
  spelch_fields_text (fields, "board", id, sizeof id);
  while (i < n && !g_str_equal (boards[i].id, id))
    i++;
  if (i < n)
    part->board = boards[i];
  else
    spelch_fields_refuse (fields, "board", _ (NOT_IN_THE_SET));
}

static void
read_machine (SpelchFields *fields, SpelchPart *part)
{
  char id[SPELCH_ID_SIZE] = "";
  guint n, i = 0;
  const SpelchMachine *machines = spelch_shop_machines (&n);
  if (!spelch_fields_is_text (fields, "machine"))
    {
      g_autoptr (SpelchFields) machine = spelch_fields_object (fields, "machine");
      if (machine != NULL)
        part->machine = spelch_machine_read (machine);
      return;
    }
  spelch_fields_text (fields, "machine", id, sizeof id);
  while (i < n && !g_str_equal (machines[i].id, id))
    i++;
  if (i < n)
    part->machine = machines[i];
  else
    spelch_fields_refuse (fields, "machine", _ (NOT_IN_THE_SET));
}

static void
take_bit (SpelchFields *fields, guint place, const char *id, SpelchPart *part)
{
  guint n, i = 0;
  const SpelchBit *bits = spelch_shop_bits (&n);
  while (i < n && !g_str_equal (bits[i].id, id))
    i++;
  if (i < n)
    part->bits[part->n_bits++] = bits[i];
  else
    spelch_reading_fault (
        spelch_fields_reading (fields),
        g_strdup_printf (_ ("bits[%u] is \"%s\": the starter set has no such; write another id, or tell it "
                            "in full in braces {}."),
                         place, id));
}

static void
read_bits (SpelchFields *fields, SpelchPart *part)
{
  char ids[BITS_MOST][SPELCH_ID_SIZE] = { { 0 } };
  guint n = spelch_fields_texts (fields, "bits", ids[0], sizeof ids[0], BITS_MOST, true);
  part->bits = g_new0 (SpelchBit, n);
  for (guint i = 0; i < n && spelch_fields_reading (fields)->error == NULL; i++)
    {
      if (*ids[i] != '\0')
        {
          take_bit (fields, i, ids[i], part);
          continue;
        }
      g_autoptr (SpelchFields) item = spelch_fields_item (fields, "bits", i);
      if (item != NULL)
        part->bits[part->n_bits++] = spelch_bit_read (item);
    }
}

static void
read_part (SpelchFields *fields, SpelchPart *part)
{
  g_strlcpy (part->id, "exercise", sizeof part->id);
  spelch_part_read_decisions (fields, part);
  read_board (fields, part);
  read_machine (fields, part);
  read_bits (fields, part);
  g_autoptr (SpelchFields) cut = spelch_fields_object (fields, "cut");
  if (cut == NULL)
    return;
  part->cuts = g_new (SpelchCut, 1);
  part->cuts[0] = spelch_cut_read (cut);
  part->n_cuts = 1;
}

/* ---- What is drawn and changed ---- */

/* A length or a number, by what it is about. */
static double
read_number (SpelchFields *fields, SpelchChangeKind what, const char *member)
{
  return spelch_change_value (what) == SPELCH_CHANGE_IS_LENGTH ? spelch_fields_length (fields, member).mm
                                                               : spelch_fields_number (fields, member, 0);
}

static void
read_codes (SpelchFields *fields, SpelchVary *vary)
{
  char codes[SPELCH_LIST_MOST][SPELCH_ID_SIZE] = { { 0 } };
  vary->n = spelch_fields_texts (fields, "one_of", codes[0], sizeof codes[0], SPELCH_LIST_MOST, false);
  for (guint i = 0; i < vary->n; i++)
    {
      vary->one_of[i] = (SpelchChange){ .what = vary->what };
      g_strlcpy (vary->one_of[i].code, codes[i], sizeof vary->one_of[i].code);
    }
}

static void
read_list (SpelchFields *fields, SpelchVary *vary)
{
  SpelchLength lengths[SPELCH_LIST_MOST] = { 0 };
  double numbers[SPELCH_LIST_MOST] = { 0 };
  bool is_length = spelch_change_value (vary->what) == SPELCH_CHANGE_IS_LENGTH;
  if (spelch_change_value (vary->what) == SPELCH_CHANGE_IS_CODE)
    {
      read_codes (fields, vary);
      return;
    }
  vary->n = is_length ? spelch_fields_lengths (fields, "one_of", lengths, SPELCH_LIST_MOST)
                      : spelch_fields_numbers (fields, "one_of", numbers, SPELCH_LIST_MOST);
  for (guint i = 0; i < vary->n; i++)
    vary->one_of[i] = (SpelchChange){ .what = vary->what, .number = is_length ? lengths[i].mm : numbers[i] };
}

static void
read_one_vary (SpelchFields *fields, SpelchVary *vary)
{
  static const char *const RANGE[] = { "from", "to", "step", NULL };
  spelch_fields_need (fields, VARY_NEEDS);
  vary->what = (SpelchChangeKind)spelch_fields_code (fields, "what", &SPELCH_CHANGE_CODES, 0);
  if (spelch_fields_told (fields, "one_of"))
    {
      read_list (fields, vary);
      if (vary->n == 0)
        spelch_fields_refuse (fields, "one_of", _ ("write at least one value."));
      return;
    }
  if (spelch_change_value (vary->what) == SPELCH_CHANGE_IS_CODE)
    {
      spelch_fields_refuse (fields, "what", _ ("it has no range; write one_of and a list."));
      return;
    }
  spelch_fields_need (fields, RANGE);
  vary->from = read_number (fields, vary->what, "from");
  vary->to = read_number (fields, vary->what, "to");
  vary->step = read_number (fields, vary->what, "step");
}

static void
read_vary (SpelchFields *fields, SpelchExercise *exercise)
{
  exercise->n_vary = spelch_fields_count (fields, "vary", SPELCH_VARY_MOST);
  for (guint i = 0; i < exercise->n_vary; i++)
    {
      g_autoptr (SpelchFields) item = spelch_fields_item (fields, "vary", i);
      if (item != NULL)
        read_one_vary (item, &exercise->vary[i]);
    }
}

static void
read_follow_up (SpelchFields *fields, SpelchFollowUp *follow_up)
{
  g_autoptr (SpelchFields) members = spelch_fields_object (fields, "follow_up");
  if (members == NULL)
    return;
  SpelchChange *change = &follow_up->change;
  spelch_fields_need (members, VARY_NEEDS);
  follow_up->told = true;
  change->what = (SpelchChangeKind)spelch_fields_code (members, "what", &SPELCH_CHANGE_CODES, 0);
  change->by = spelch_fields_told (members, "by");
  follow_up->same = spelch_fields_flag (members, "same", false);
  spelch_by_language_read (members, "lead", &follow_up->lead);
  if (change->by == spelch_fields_told (members, "is"))
    spelch_reading_fault (spelch_fields_reading (fields),
                          g_strdup (_ ("follow_up: write either is, the new value, or by, what is added.")));
  else if (spelch_change_value (change->what) == SPELCH_CHANGE_IS_CODE)
    spelch_fields_text (members, change->by ? "by" : "is", change->code, sizeof change->code);
  else
    change->number = read_number (members, change->what, change->by ? "by" : "is");
}

/* ---- The whole ---- */

static SpelchExercise *
read_exercise (JsonNode *root, SpelchReading *reading)
{
  g_autoptr (SpelchFields) fields = spelch_fields_root (reading, root);
  SpelchExercise *exercise = spelch_exercise_new ();
  spelch_fields_need (fields, NEEDED);
  spelch_fields_format (fields, SPELCH_FORMAT_VERSION);
  spelch_fields_text (fields, "id", exercise->id, sizeof exercise->id);
  exercise->asks = (SpelchAsks)spelch_fields_code (fields, "asks", &SPELCH_ASKS_CODES, 0);
  exercise->level = spelch_fields_whole (fields, "level", 1, 1, SPELCH_LEVELS);
  spelch_by_language_read (fields, "title", &exercise->title);
  spelch_by_language_read (fields, "lead", &exercise->lead);
  spelch_by_language_read (fields, "hint", &exercise->hint);
  read_part (fields, exercise->part);
  read_vary (fields, exercise);
  read_follow_up (fields, &exercise->follow_up);
  return exercise;
}

SpelchExercise *
spelch_exercise_from_json (const char *text, gsize length, const char *name, GError **error)
{
  g_autoptr (JsonNode) root = spelch_json_parse (text, length, name, error);
  if (root == NULL)
    return NULL;
  SpelchReading reading = { .name = name };
  g_autoptr (SpelchExercise) exercise = read_exercise (root, &reading);
  if (reading.error == NULL)
    spelch_reading_fault (&reading, spelch_exercise_fault (exercise));
  if (reading.error == NULL)
    return g_steal_pointer (&exercise);
  g_propagate_error (error, reading.error);
  return NULL;
}

gboolean
spelch_exercise_is (JsonObject *root)
{
  return json_object_has_member (root, "asks");
}

GPtrArray *
spelch_exercise_unread (const char *text, gsize length, const char *name)
{
  g_autoptr (JsonNode) root = spelch_json_parse (text, length, name, NULL);
  GPtrArray *unread = spelch_unread_list_new ();
  SpelchReading reading = { .name = name, .unread = unread };
  if (root != NULL)
    spelch_exercise_unref (read_exercise (root, &reading));
  g_clear_error (&reading.error);
  return unread;
}

SpelchExercise *
spelch_exercise_load (GFile *file, GError **error)
{
  g_autofree char *name = spelch_file_name (file);
  gsize length = 0;
  g_autofree char *text = spelch_file_read (file, &length, NULL, error);
  return text == NULL ? NULL : spelch_exercise_from_json (text, length, name, error);
}
