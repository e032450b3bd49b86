/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "files/json-text.h"

#include "files/json-scan.h"
#include "files/part-file.h"

#include <glib/gi18n-lib.h>
#include <math.h>
#include <string.h>

G_DEFINE_QUARK (spelch - file - error - quark, spelch_file_error)

#define SHOWN_MOST 60 /* characters of a value repeated in a sentence */

/* json-glib lets the last of two members with one name win without a word; then there are fewer than were
 * told. */
typedef struct
{
  GHashTable *seen; /* "object address/member" */
  char *twice;
} Members;

static void
member_read (JsonParser *parser, JsonObject *object, const char *member, gpointer data)
{
  Members *members = data;
  g_autofree char *key = g_strdup_printf ("%p/%s", (void *)object, member);
  if (!g_hash_table_add (members->seen, g_steal_pointer (&key)) && members->twice == NULL)
    members->twice = g_strdup (member);
}

/* A member that is told twice in one object, read for that alone. */
static char *
told_twice (const char *text, gsize length)
{
  g_autoptr (JsonParser) parser = json_parser_new ();
  g_autoptr (GHashTable) seen = g_hash_table_new_full (g_str_hash, g_str_equal, g_free, NULL);
  Members members = { .seen = seen };
  g_signal_connect (parser, "object-member", G_CALLBACK (member_read), &members);
  json_parser_load_from_data (parser, text, (gssize)length, NULL);
  return members.twice;
}

static guint
count_members (JsonNode *node)
{
  guint n = 0;
  if (JSON_NODE_HOLDS_ARRAY (node))
    {
      JsonArray *list = json_node_get_array (node);
      for (guint i = 0; i < json_array_get_length (list); i++)
        n += count_members (json_array_get_element (list, i));
    }
  else if (JSON_NODE_HOLDS_OBJECT (node))
    {
      JsonObjectIter each;
      JsonNode *member = NULL;
      json_object_iter_init (&each, json_node_get_object (node));
      while (json_object_iter_next (&each, NULL, &member))
        n += 1 + count_members (member);
    }
  return n;
}

/* @told: how many members the text has; @once: none of them twice, which saves counting them. */
static JsonNode *
parse_members (const char *text, gsize length, const char *name, guint told, bool once, GError **error)
{
  g_autoptr (JsonParser) parser = json_parser_new ();
  g_autoptr (GError) fault = NULL;
  bool read = json_parser_load_from_data (parser, text, (gssize)length, &fault);
  JsonNode *root = read ? json_parser_get_root (parser) : NULL;
  bool fewer = root != NULL && !once && count_members (root) < told;
  g_autofree char *twice = fewer ? told_twice (text, length) : NULL;
  if (root == NULL)
    g_set_error (error, SPELCH_FILE_ERROR, SPELCH_FILE_ERROR_SYNTAX, _ ("%s isn't JSON: %s"), name,
                 fault != NULL ? fault->message : "");
  else if (twice != NULL)
    g_set_error (error, SPELCH_FILE_ERROR, SPELCH_FILE_ERROR_SYNTAX,
                 _ ("%s: %s is told twice; keep one of them."), name, twice);
  else
    return json_node_ref (root);
  return NULL;
}

JsonNode *
spelch_json_parse (const char *text, gsize length, const char *name, GError **error)
{
  if (length > SPELCH_FILE_MOST)
    {
      g_set_error (error, SPELCH_FILE_ERROR, SPELCH_FILE_ERROR_TOO_BIG,
                   _ ("%s: the file has %lld bytes; no more than %d are read."), name, (long long)length,
                   SPELCH_FILE_MOST);
      return NULL;
    }
  if (!g_utf8_validate_len (text, length, NULL))
    {
      g_set_error (error, SPELCH_FILE_ERROR, SPELCH_FILE_ERROR_SYNTAX,
                   _ ("%s: the file isn't UTF-8 text; save it from your editor as UTF-8."), name);
      return NULL;
    }
  guint told = 0;
  bool once = false;
  if (!spelch_json_scan (text, length, name, &told, &once, error))
    return NULL;
  return parse_members (text, length, name, told, once, error);
}

void
spelch_json_number (double value, char buffer[static G_ASCII_DTOSTR_BUF_SIZE])
{
  g_return_if_fail (isfinite (value));
  double plain = value == 0 ? 0 : value; /* no minus before a zero */
  g_ascii_formatd (buffer, G_ASCII_DTOSTR_BUF_SIZE, "%.15g", plain);
  if (g_ascii_strtod (buffer, NULL) != plain)
    g_ascii_formatd (buffer, G_ASCII_DTOSTR_BUF_SIZE, "%.17g", plain);
}

static char *
show_text (const char *text)
{
  if (g_utf8_strlen (text, -1) <= SHOWN_MOST)
    return g_strdup_printf ("\"%s\"", text);
  g_autofree char *begin = g_utf8_substring (text, 0, SHOWN_MOST);
  return g_strdup_printf ("\"%s…\"", begin);
}

char *
spelch_json_show (JsonNode *node)
{
  char number[G_ASCII_DTOSTR_BUF_SIZE];
  if (JSON_NODE_HOLDS_NULL (node))
    return g_strdup (_ ("null"));
  if (JSON_NODE_HOLDS_OBJECT (node))
    return g_strdup (_ ("an object in braces"));
  if (JSON_NODE_HOLDS_ARRAY (node))
    return g_strdup (_ ("a list"));
  if (json_node_get_value_type (node) == G_TYPE_STRING)
    return show_text (json_node_get_string (node));
  if (json_node_get_value_type (node) == G_TYPE_BOOLEAN)
    return g_strdup (json_node_get_boolean (node) ? "true" : "false");
  spelch_json_number (json_node_get_double (node), number);
  return g_strdup (number);
}
