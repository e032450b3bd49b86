/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "files/json-text.h"

#include "files/part-file.h"

#include <glib/gi18n-lib.h>
#include <math.h>
#include <string.h>

G_DEFINE_QUARK (spelch - file - error - quark, spelch_file_error)

#define WHOLE_DIGITS_MOST 18 /* what a 64-bit integer always holds */
#define SHOWN_MOST        60 /* characters of a value repeated in a sentence */

/* ---- Before json-glib: one pass over the marks of the text ---- */

typedef struct
{
  const char *name;
  const char *start, *at, *end;
  const char *text, *text_end;     /* the last string, without its quotes */
  const char *member, *member_end; /* the last string that a colon followed */
  guint depth;
  bool closed; /* the first object has ended */
} Scan;

static guint
scan_line (const Scan *scan)
{
  guint line = 1;
  for (const char *p = scan->start; p < scan->at; p++)
    if (*p == '\n')
      line++;
  return line;
}

/* What stands at @scan->at, up to the next mark, cut off when long. */
static char *
scan_word (const Scan *scan)
{
  const char *end = scan->at;
  while (end < scan->end && end - scan->at < SHOWN_MOST && strchr (" \t\r\n,:[]{}\"", *end) == NULL)
    end = g_utf8_next_char (end);
  if (end == scan->at && end < scan->end)
    end = g_utf8_next_char (end);
  return g_strndup (scan->at, (gsize)(end - scan->at));
}

static bool
scan_fail_value (const Scan *scan, const char *word, const char *advice, GError **error)
{
  int length = scan->member != NULL ? (int)MIN (scan->member_end - scan->member, SHOWN_MOST) : 0;
  if (length > 0)
    g_set_error (error, SPELCH_FILE_ERROR, SPELCH_FILE_ERROR_SYNTAX, _ ("%s: line %u: %.*s is %s; %s"),
                 scan->name, scan_line (scan), length, scan->member, word, advice);
  else
    g_set_error (error, SPELCH_FILE_ERROR, SPELCH_FILE_ERROR_SYNTAX, _ ("%s: line %u: %s stands there; %s"),
                 scan->name, scan_line (scan), word, advice);
  return false;
}

static bool
scan_fail (const Scan *scan, const char *advice, GError **error)
{
  g_autofree char *word = scan_word (scan);
  return scan_fail_value (scan, word, advice, error);
}

static bool
scan_string (Scan *scan, GError **error)
{
  scan->text = ++scan->at;
  for (; scan->at < scan->end; scan->at++)
    {
      if (*scan->at == '"')
        {
          scan->text_end = scan->at++;
          return true;
        }
      if ((guchar)*scan->at < 0x20)
        return scan_fail_value (scan, _ ("a text that breaks off at the end of a line"),
                                _ ("close it with a double quote."), error);
      if (*scan->at == '\\' && scan->end - scan->at >= 6 && strncmp (scan->at, "\\u0000", 6) == 0)
        return scan_fail_value (scan, "\\u0000", _ ("leave that character out."), error);
      if (*scan->at == '\\' && scan->at + 1 < scan->end)
        scan->at++;
    }
  return scan_fail_value (scan, _ ("a text that never ends"), _ ("close it with a double quote."), error);
}

static const char *
digits_end (const char *p, const char *end)
{
  while (p < end && g_ascii_isdigit (*p))
    p++;
  return p;
}

/* JSON's own grammar of a number; NULL when the text isn't one. *whole tells whether it has neither point nor
 * exponent. */
static const char *
number_end (const char *p, const char *end, bool *whole)
{
  *whole = true;
  if (p < end && *p == '-')
    p++;
  const char *from = p;
  p = digits_end (p, end);
  if (p == from || (*from == '0' && p - from > 1))
    return NULL;
  if (p < end && *p == '.')
    {
      from = p + 1;
      p = digits_end (from, end);
      *whole = false;
      if (p == from)
        return NULL;
    }
  if (p < end && (*p == 'e' || *p == 'E'))
    {
      from = p + 1 < end && (p[1] == '+' || p[1] == '-') ? p + 2 : p + 1;
      p = digits_end (from, end);
      *whole = false;
      if (p == from)
        return NULL;
    }
  return p < end && (g_ascii_isalnum (*p) || *p == '.') ? NULL : p;
}

static bool
scan_number (Scan *scan, GError **error)
{
  bool whole;
  const char *end = number_end (scan->at, scan->end, &whole);
  if (end == NULL)
    return scan_fail (scan, _ ("write a plain decimal number such as 18 or 0.4."), error);
  g_autofree char *digits = g_strndup (scan->at, (gsize)(end - scan->at));
  if (!isfinite (g_ascii_strtod (digits, NULL)) || (whole && end - scan->at > WHOLE_DIGITS_MOST))
    return scan_fail (scan, _ ("that number is too large."), error);
  scan->at = end;
  return true;
}

static bool
scan_bare_word (Scan *scan, GError **error)
{
  static const char *const WORDS[] = { "true", "false", "null" };
  for (guint i = 0; i < G_N_ELEMENTS (WORDS); i++)
    {
      gsize n = strlen (WORDS[i]);
      bool fits = (gsize)(scan->end - scan->at) >= n && strncmp (scan->at, WORDS[i], n) == 0;
      if (fits && (scan->at + n == scan->end || !g_ascii_isalnum (scan->at[n])))
        {
          scan->at += n;
          return true;
        }
    }
  return scan_fail (
      scan, _ ("texts stand in double quotes, numbers are plain decimals, and there are no comments."),
      error);
}

static bool
scan_open (Scan *scan, GError **error)
{
  if (scan->depth == 0 && *scan->at != '{')
    return scan_fail (scan, _ ("the file must begin with a brace {."), error);
  if (++scan->depth > SPELCH_NESTING_MOST)
    {
      g_set_error (
          error, SPELCH_FILE_ERROR, SPELCH_FILE_ERROR_NESTED,
          _ ("%s: line %u: lists and braces stand inside each other more than %d deep; that can't be a "
             "workshop's file."),
          scan->name, scan_line (scan), SPELCH_NESTING_MOST);
      return false;
    }
  scan->at++;
  return true;
}

static bool
scan_close (Scan *scan, GError **error)
{
  if (scan->depth == 0)
    return scan_fail (scan, _ ("nothing was opened that this could close."), error);
  scan->depth--;
  scan->closed = scan->depth == 0;
  scan->at++;
  return true;
}

static bool
scan_mark (Scan *scan, GError **error)
{
  switch (*scan->at)
    {
    case '{':
    case '[':
      return scan_open (scan, error);
    case '}':
    case ']':
      return scan_close (scan, error);
    case '"':
      return scan_string (scan, error);
    case ':':
      scan->member = scan->text;
      scan->member_end = scan->text_end;
      scan->at++;
      return true;
    case ',':
      scan->at++;
      return true;
    default:
      return *scan->at == '-' || g_ascii_isdigit (*scan->at) ? scan_number (scan, error)
                                                             : scan_bare_word (scan, error);
    }
}

static bool
scan_text (const char *text, gsize length, const char *name, GError **error)
{
  Scan scan = { .name = name, .start = text, .at = text, .end = text + length };
  for (;;)
    {
      while (scan.at < scan.end && strchr (" \t\r\n", *scan.at) != NULL)
        scan.at++;
      if (scan.at == scan.end)
        break;
      if (scan.closed)
        return scan_fail (&scan, _ ("the file goes on after its closing brace."), error);
      if (scan.depth == 0 && *scan.at != '{')
        return scan_fail (&scan, _ ("the file must begin with a brace {."), error);
      if (!scan_mark (&scan, error))
        return false;
    }
  if (scan.closed)
    return true;
  if (scan.depth == 0)
    g_set_error (error, SPELCH_FILE_ERROR, SPELCH_FILE_ERROR_SYNTAX, _ ("%s: the file is empty."), name);
  else
    g_set_error (error, SPELCH_FILE_ERROR, SPELCH_FILE_ERROR_SYNTAX,
                 _ ("%s: line %u: the file breaks off there; a closing brace is missing."), name,
                 scan_line (&scan));
  return false;
}

/* ---- json-glib ---- */

/* json-glib lets the last of two members with one name win without a word. */
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

static JsonNode *
parse_members (const char *text, gsize length, const char *name, GError **error)
{
  g_autoptr (JsonParser) parser = json_parser_new ();
  g_autoptr (GHashTable) seen = g_hash_table_new_full (g_str_hash, g_str_equal, g_free, NULL);
  g_autoptr (GError) fault = NULL;
  Members members = { .seen = seen };
  g_signal_connect (parser, "object-member", G_CALLBACK (member_read), &members);
  bool read = json_parser_load_from_data (parser, text, (gssize)length, &fault);
  g_autofree char *twice = members.twice;
  JsonNode *root = read ? json_parser_get_root (parser) : NULL;
  if (!read)
    g_set_error (error, SPELCH_FILE_ERROR, SPELCH_FILE_ERROR_SYNTAX,
                 _ ("%s: line %u: commas, colons or brackets aren't where they belong (%s)."), name,
                 json_parser_get_current_line (parser), fault->message);
  else if (twice != NULL)
    g_set_error (error, SPELCH_FILE_ERROR, SPELCH_FILE_ERROR_SYNTAX,
                 _ ("%s: %s is told twice; keep one of them."), name, twice);
  else if (root == NULL || !JSON_NODE_HOLDS_OBJECT (root))
    g_set_error (error, SPELCH_FILE_ERROR, SPELCH_FILE_ERROR_SYNTAX,
                 _ ("%s: the file must begin with a brace {."), name);
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
                   _ ("%s: the file has %" G_GSIZE_FORMAT " bytes; no more than %d are read."), name, length,
                   SPELCH_FILE_MOST);
      return NULL;
    }
  if (!g_utf8_validate_len (text, length, NULL))
    {
      g_set_error (error, SPELCH_FILE_ERROR, SPELCH_FILE_ERROR_SYNTAX,
                   _ ("%s: the file isn't UTF-8 text; save it from your editor as UTF-8."), name);
      return NULL;
    }
  if (!scan_text (text, length, name, error))
    return NULL;
  return parse_members (text, length, name, error);
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
