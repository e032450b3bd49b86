/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "files/json-writer.h"

#include "files/json-text.h"

#include <string.h>

/* Something open: an object or a list. */
typedef struct
{
  bool is_list;
  bool one_line;
  guint n;         /* entries written */
  gsize path_size; /* of the path outside it */
} Level;

struct _SpelchWriter
{
  GString *text;
  GString *path; /* of the object open, as in `unknown` */
  GArray *levels;
  GHashTable *unknown;
};

static Level *
level_of (SpelchWriter *writer)
{
  return &g_array_index (writer->levels, Level, writer->levels->len - 1);
}

static void
write_string (GString *text, const char *string)
{
  g_string_append_c (text, '"');
  for (const char *p = string; *p != '\0'; p++)
    if (*p == '"' || *p == '\\')
      g_string_append_printf (text, "\\%c", *p);
    else if (*p == '\n')
      g_string_append (text, "\\n");
    else if (*p == '\t')
      g_string_append (text, "\\t");
    else if ((guchar)*p < 0x20)
      g_string_append_printf (text, "\\u%04x", (guint)(guchar)*p);
    else
      g_string_append_c (text, *p);
  g_string_append_c (text, '"');
}

static void
new_line (SpelchWriter *writer, guint depth)
{
  g_string_append_c (writer->text, '\n');
  for (guint i = 0; i < depth; i++)
    g_string_append (writer->text, "  ");
}

/* The comma, the gap and the name before a value; @member is NULL in a list. */
static void
begin_value (SpelchWriter *writer, const char *member)
{
  Level *level = level_of (writer);
  if (level->n++ > 0)
    g_string_append_c (writer->text, ',');
  if (!level->one_line)
    new_line (writer, writer->levels->len);
  else if (level->n > 1 || !level->is_list)
    g_string_append_c (writer->text, ' ');
  if (member != NULL)
    {
      write_string (writer->text, member);
      g_string_append (writer->text, ": ");
    }
}

static void
open_level (SpelchWriter *writer, bool is_list, bool one_line, gsize path_size)
{
  bool inside_line = writer->levels->len > 0 && level_of (writer)->one_line;
  Level level = { .is_list = is_list, .one_line = one_line || inside_line, .path_size = path_size };
  g_array_append_val (writer->levels, level);
  g_string_append_c (writer->text, is_list ? '[' : '{');
}

static void
add_to_path (SpelchWriter *writer, const char *name)
{
  if (writer->path->len > 0)
    g_string_append_c (writer->path, '/');
  g_string_append (writer->path, name);
}

static void
close_level (SpelchWriter *writer)
{
  Level level = *level_of (writer);
  g_array_set_size (writer->levels, writer->levels->len - 1);
  g_string_set_size (writer->path, level.path_size);
  if (level.n > 0 && !level.one_line)
    new_line (writer, writer->levels->len);
  else if (level.n > 0 && !level.is_list)
    g_string_append_c (writer->text, ' ');
  g_string_append_c (writer->text, level.is_list ? ']' : '}');
}

/* ---- Values of any kind, as the reader kept them ---- */

static void write_node (SpelchWriter *writer, const char *member, JsonNode *node);

static void
write_members (SpelchWriter *writer, JsonObject *object)
{
  g_autoptr (GList) members = json_object_get_members (object);
  for (GList *m = members; m != NULL; m = m->next)
    write_node (writer, m->data, json_object_get_member (object, m->data));
}

static void
write_entries (SpelchWriter *writer, JsonArray *list)
{
  for (guint i = 0; i < json_array_get_length (list); i++)
    write_node (writer, NULL, json_array_get_element (list, i));
}

static void
write_plain (GString *text, JsonNode *node)
{
  char number[G_ASCII_DTOSTR_BUF_SIZE];
  GType type = json_node_get_value_type (node);
  if (type == G_TYPE_STRING)
    write_string (text, json_node_get_string (node));
  else if (type == G_TYPE_BOOLEAN)
    g_string_append (text, json_node_get_boolean (node) ? "true" : "false");
  else if (type == G_TYPE_INT64)
    g_string_append_printf (text, "%" G_GINT64_FORMAT, json_node_get_int (node));
  else
    {
      spelch_json_number (json_node_get_double (node), number);
      g_string_append (text, number);
    }
}

/* How deep the node goes is bounded by SPELCH_NESTING_MOST when it was read. */
static void
write_node (SpelchWriter *writer, const char *member, JsonNode *node)
{
  begin_value (writer, member);
  if (JSON_NODE_HOLDS_NULL (node))
    g_string_append (writer->text, "null");
  else if (JSON_NODE_HOLDS_VALUE (node))
    write_plain (writer->text, node);
  else
    {
      bool is_list = JSON_NODE_HOLDS_ARRAY (node);
      open_level (writer, is_list, false, writer->path->len);
      if (is_list)
        write_entries (writer, json_node_get_array (node));
      else
        write_members (writer, json_node_get_object (node));
      close_level (writer);
    }
}

static const char *
unknown_here (SpelchWriter *writer)
{
  return writer->unknown == NULL ? NULL : g_hash_table_lookup (writer->unknown, writer->path->str);
}

bool
spelch_writer_keeps (SpelchWriter *writer, const char *member)
{
  gsize outside = writer->path->len;
  add_to_path (writer, member);
  bool keeps = unknown_here (writer) != NULL;
  g_string_set_size (writer->path, outside);
  return keeps;
}

static void
write_unknown (SpelchWriter *writer)
{
  const char *text = unknown_here (writer);
  g_autoptr (JsonNode) node = text == NULL ? NULL : json_from_string (text, NULL);
  if (node != NULL && JSON_NODE_HOLDS_OBJECT (node))
    write_members (writer, json_node_get_object (node));
}

/* ---- Objects and lists ---- */

SpelchWriter *
spelch_writer_new (GHashTable *unknown)
{
  SpelchWriter *writer = g_new0 (SpelchWriter, 1);
  writer->text = g_string_new (NULL);
  writer->path = g_string_new (NULL);
  writer->levels = g_array_new (FALSE, FALSE, sizeof (Level));
  writer->unknown = unknown;
  open_level (writer, false, false, 0);
  return writer;
}

char *
spelch_writer_end (SpelchWriter *writer)
{
  spelch_writer_close (writer);
  char *text = g_string_free (g_string_append_c (writer->text, '\n'), FALSE);
  g_string_free (writer->path, TRUE);
  g_array_unref (writer->levels);
  g_free (writer);
  return text;
}

void
spelch_writer_open (SpelchWriter *writer, const char *member, const char *id)
{
  gsize outside = writer->path->len;
  begin_value (writer, member);
  add_to_path (writer, member);
  if (id != NULL)
    add_to_path (writer, id);
  open_level (writer, false, false, outside);
}

void
spelch_writer_open_list (SpelchWriter *writer, const char *member)
{
  gsize outside = writer->path->len;
  begin_value (writer, member);
  add_to_path (writer, member);
  open_level (writer, true, false, outside);
}

void
spelch_writer_open_item (SpelchWriter *writer, const char *id, bool one_line)
{
  gsize outside = writer->path->len;
  g_autofree char *place = g_strdup_printf ("%u", level_of (writer)->n);
  begin_value (writer, NULL);
  add_to_path (writer, id != NULL ? id : place);
  open_level (writer, false, one_line, outside);
}

void
spelch_writer_close (SpelchWriter *writer)
{
  if (!level_of (writer)->is_list)
    write_unknown (writer);
  close_level (writer);
}

/* ---- Members ---- */

void
spelch_writer_text (SpelchWriter *writer, const char *member, const char *text)
{
  begin_value (writer, member);
  write_string (writer->text, text);
}

void
spelch_writer_text_told (SpelchWriter *writer, const char *member, const char *text)
{
  if (*text != '\0')
    spelch_writer_text (writer, member, text);
}

void
spelch_writer_code (SpelchWriter *writer, const char *member, const SpelchCodes *table, int value)
{
  spelch_writer_text (writer, member, spelch_code_of (table, value));
}

void
spelch_writer_code_told (SpelchWriter *writer, const char *member, const SpelchCodes *table, int value,
                         int otherwise)
{
  if (value != otherwise)
    spelch_writer_code (writer, member, table, value);
}

void
spelch_writer_flag_told (SpelchWriter *writer, const char *member, bool flag)
{
  if (!flag)
    return;
  begin_value (writer, member);
  g_string_append (writer->text, "true");
}

void
spelch_writer_flag (SpelchWriter *writer, const char *member, bool flag)
{
  begin_value (writer, member);
  g_string_append (writer->text, flag ? "true" : "false");
}

void
spelch_writer_null (SpelchWriter *writer, const char *member)
{
  begin_value (writer, member);
  g_string_append (writer->text, "null");
}

void
spelch_writer_number (SpelchWriter *writer, const char *member, double value)
{
  char number[G_ASCII_DTOSTR_BUF_SIZE];
  spelch_json_number (value, number);
  begin_value (writer, member);
  g_string_append (writer->text, number);
}

void
spelch_writer_number_told (SpelchWriter *writer, const char *member, double value)
{
  if (value != 0)
    spelch_writer_number (writer, member, value);
}

/* @name: of the length in `unknown`, which differs from @member in a list. */
static void
write_length (SpelchWriter *writer, const char *member, const char *name, const SpelchLength *length)
{
  if (*length->typed == '\0' && !spelch_writer_keeps (writer, name))
    {
      spelch_writer_number (writer, member, length->mm);
      return;
    }
  gsize outside = writer->path->len;
  add_to_path (writer, name);
  begin_value (writer, member);
  open_level (writer, false, true, outside);
  spelch_writer_number (writer, "mm", length->mm);
  spelch_writer_text_told (writer, "typed", length->typed);
  spelch_writer_close (writer);
}

void
spelch_writer_length (SpelchWriter *writer, const char *member, const SpelchLength *length)
{
  write_length (writer, member, member, length);
}

void
spelch_writer_length_told (SpelchWriter *writer, const char *member, const SpelchLength *length)
{
  if (length->mm != 0 || spelch_writer_keeps (writer, member))
    spelch_writer_length (writer, member, length);
}

/* A list of plain values on one line; it adds nothing to the path. */
static void
open_values (SpelchWriter *writer, const char *member)
{
  begin_value (writer, member);
  open_level (writer, true, true, writer->path->len);
}

void
spelch_writer_texts (SpelchWriter *writer, const char *member, const char *const *texts)
{
  begin_value (writer, member);
  open_level (writer, true, false, writer->path->len);
  for (guint i = 0; texts[i] != NULL; i++)
    spelch_writer_text (writer, NULL, texts[i]);
  close_level (writer);
}

void
spelch_writer_lengths (SpelchWriter *writer, const char *member, const SpelchLength *lengths, guint n)
{
  open_values (writer, member);
  for (guint i = 0; i < n; i++)
    {
      g_autofree char *name = g_strdup_printf ("%s[%u]", member, i);
      write_length (writer, NULL, name, &lengths[i]);
    }
  close_level (writer);
}

void
spelch_writer_lengths_told (SpelchWriter *writer, const char *member, const SpelchLength *lengths, guint n)
{
  if (n > 0)
    spelch_writer_lengths (writer, member, lengths, n);
}

void
spelch_writer_numbers_told (SpelchWriter *writer, const char *member, const double *values, guint n)
{
  if (n == 0)
    return;
  open_values (writer, member);
  for (guint i = 0; i < n; i++)
    spelch_writer_number (writer, NULL, values[i]);
  close_level (writer);
}

void
spelch_writer_codes (SpelchWriter *writer, const char *member, const SpelchCodes *table, guint set)
{
  open_values (writer, member);
  for (guint i = 0; i < table->n; i++)
    if (set & 1u << i)
      spelch_writer_code (writer, NULL, table, (int)i);
  close_level (writer);
}

char *
spelch_writer_object_text (JsonObject *object)
{
  SpelchWriter *writer = spelch_writer_new (NULL);
  level_of (writer)->one_line = true;
  write_members (writer, object);
  return spelch_writer_end (writer);
}
