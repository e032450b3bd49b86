/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "files/json-scan.h"

#include "files/part-file.h"

#include <glib/gi18n-lib.h>
#include <math.h>
#include <string.h>

#define WHOLE_DIGITS_MOST 18  /* what a 64-bit integer always holds */
#define PLAIN_DIGITS_MOST 300 /* without an exponent a double always holds so many */
#define SHOWN_MOST        60  /* bytes of a value repeated in a sentence */

#define NAMES_MOST 256 /* of members of all objects that are open */

/* A member's name, without its quotes. */
typedef struct
{
  const char *at;
  gsize length;
} Name;

/* What may stand next. */
typedef enum
{
  WANT_VALUE,
  WANT_VALUE_OR_CLOSE, /* a list has just been opened */
  WANT_NAME,
  WANT_NAME_OR_CLOSE, /* an object has just been opened */
  WANT_COLON,
  WANT_COMMA_OR_CLOSE,
  WANT_NOTHING, /* the first object has ended */
} Want;

typedef struct
{
  const char *name;
  const char *start, *at, *end;
  guint members; /* read so far */
  bool sure;     /* none of them stood in its object before, as far as could be seen */
  guint n_names;
  const char *member, *member_end; /* the last name of a member, without its quotes */
  Want want;
  guint depth;
  char closers[SPELCH_NESTING_MOST]; /* of what is open */
  guint first[SPELCH_NESTING_MOST];  /* where its members' names begin */
  Name names[NAMES_MOST];
} Scan;

/* ---- Saying what is wrong ---- */

static guint
line_of (const Scan *scan)
{
  guint line = 1;
  for (const char *p = scan->start; p < scan->at; p++)
    if (*p == '\n')
      line++;
  return line;
}

static bool
is_gap (char c)
{
  return c == ' ' || c == '\t' || c == '\r' || c == '\n';
}

/* What stands at @scan->at, up to the next mark. */
static char *
word_at (const Scan *scan)
{
  const char *end = scan->at;
  while (end < scan->end && end - scan->at < SHOWN_MOST && !is_gap (*end)
         && strchr (",:[]{}\"", *end) == NULL)
    end = g_utf8_next_char (end);
  if (end == scan->at && end < scan->end)
    end = g_utf8_next_char (end);
  return g_strndup (scan->at, (gsize)(end - scan->at));
}

static bool
fail_with (const Scan *scan, const char *word, const char *advice, GError **error)
{
  bool is_value = scan->want == WANT_VALUE || scan->want == WANT_VALUE_OR_CLOSE;
  g_autofree char *member
      = is_value && scan->member != NULL
            ? g_utf8_make_valid (scan->member, MIN (scan->member_end - scan->member, SHOWN_MOST))
            : NULL;
  if (member != NULL)
    g_set_error (error, SPELCH_FILE_ERROR, SPELCH_FILE_ERROR_SYNTAX, _ ("%s: line %u: %s is %s; %s"),
                 scan->name, line_of (scan), member, word, advice);
  else
    g_set_error (error, SPELCH_FILE_ERROR, SPELCH_FILE_ERROR_SYNTAX, _ ("%s: line %u: %s stands there; %s"),
                 scan->name, line_of (scan), word, advice);
  return false;
}

static bool
fail (const Scan *scan, const char *advice, GError **error)
{
  g_autofree char *word = word_at (scan);
  return fail_with (scan, word, advice, error);
}

static const char *
advice_for (Want want)
{
  switch (want)
    {
    case WANT_NAME:
    case WANT_NAME_OR_CLOSE:
      return _ ("a member's name in double quotes is expected, and there are no comments.");
    case WANT_COLON:
      return _ ("a colon is expected after a member's name.");
    case WANT_COMMA_OR_CLOSE:
      return _ ("a comma or the closing bracket is expected.");
    case WANT_NOTHING:
      return _ ("the file goes on after its closing brace.");
    case WANT_VALUE:
    case WANT_VALUE_OR_CLOSE:
    default:
      return _ ("a value is expected: a text in double quotes, a plain decimal number, true, false, a list "
                "or braces.");
    }
}

/* ---- Texts ---- */

/* The 16 bits of "\uXXXX" at @p, or -1. */
static int
code_unit (const char *p, const char *end)
{
  if (end - p < 6 || p[0] != '\\' || p[1] != 'u')
    return -1;
  int unit = 0;
  for (int i = 2; i < 6; i++)
    {
      int digit = g_ascii_xdigit_value (p[i]);
      if (digit < 0)
        return -1;
      unit = unit * 16 + digit;
    }
  return unit;
}

/* What follows the escape at @p, or NULL when it is none that can be held. */
static const char *
escape_end (const char *p, const char *end)
{
  if (end - p >= 2 && p[1] != '\0' && strchr ("\"\\/bfnrt", p[1]) != NULL)
    return p + 2;
  int unit = code_unit (p, end);
  if (unit <= 0 || (unit >= 0xDC00 && unit <= 0xDFFF))
    return NULL;
  if (unit < 0xD800 || unit > 0xDBFF)
    return p + 6;
  int low = code_unit (p + 6, end);
  return low >= 0xDC00 && low <= 0xDFFF ? p + 12 : NULL;
}

static bool
scan_text (Scan *scan, const char **from, const char **to, GError **error)
{
  *from = ++scan->at;
  while (scan->at < scan->end && *scan->at != '"')
    if ((guchar)*scan->at < 0x20)
      return fail_with (scan, _ ("a text that breaks off at the end of a line"),
                        _ ("close it with a double quote."), error);
    else if (*scan->at != '\\')
      scan->at++;
    else
      {
        const char *next = escape_end (scan->at, scan->end);
        if (next == NULL)
          return fail (scan, _ ("that is no character JSON can write with a backslash."), error);
        scan->at = next;
      }
  if (scan->at == scan->end)
    return fail_with (scan, _ ("a text that never ends"), _ ("close it with a double quote."), error);
  *to = scan->at++;
  return true;
}

/* ---- Numbers and words ---- */

static const char *
digits_end (const char *p, const char *end)
{
  while (p < end && g_ascii_isdigit (*p))
    p++;
  return p;
}

/* JSON's own grammar of a number; NULL when the text isn't one. *whole: it has neither point nor exponent;
 * *raised: it has an exponent. */
static const char *
number_end (const char *p, const char *end, bool *whole, bool *raised)
{
  *whole = true;
  *raised = false;
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
      *raised = true;
      if (p == from)
        return NULL;
    }
  return p < end && (g_ascii_isalnum (*p) || *p == '.') ? NULL : p;
}

static bool
is_held (const char *from, gsize length)
{
  g_autofree char *digits = g_strndup (from, length);
  return isfinite (g_ascii_strtod (digits, NULL));
}

static bool
scan_number (Scan *scan, GError **error)
{
  bool whole, raised;
  const char *end = number_end (scan->at, scan->end, &whole, &raised);
  if (end == NULL)
    return fail (scan, _ ("write a plain decimal number such as 18 or 0.4."), error);
  gsize length = (gsize)(end - scan->at);
  bool may_exceed = raised || length > PLAIN_DIGITS_MOST;
  if ((may_exceed && !is_held (scan->at, length)) || (whole && length > WHOLE_DIGITS_MOST))
    return fail (scan, _ ("that number is too large."), error);
  scan->at = end;
  return true;
}

static bool
scan_word (Scan *scan, GError **error)
{
  static const char *const words[] = { "true", "false", "null" };
  for (guint i = 0; i < G_N_ELEMENTS (words); i++)
    {
      gsize n = strlen (words[i]);
      bool fits = (gsize)(scan->end - scan->at) >= n && strncmp (scan->at, words[i], n) == 0;
      if (fits && (scan->at + n == scan->end || !g_ascii_isalnum (scan->at[n])))
        {
          scan->at += n;
          return true;
        }
    }
  return fail (scan, advice_for (scan->want), error);
}

/* ---- Structure ---- */

static bool
scan_open (Scan *scan, GError **error)
{
  bool is_list = *scan->at == '[';
  if (scan->depth == SPELCH_NESTING_MOST)
    {
      g_set_error (
          error, SPELCH_FILE_ERROR, SPELCH_FILE_ERROR_NESTED,
          _ ("%s: line %u: lists and braces stand inside each other more than %d deep; that can't be a "
             "workshop's file."),
          scan->name, line_of (scan), SPELCH_NESTING_MOST);
      return false;
    }
  scan->first[scan->depth] = scan->n_names;
  scan->closers[scan->depth++] = is_list ? ']' : '}';
  scan->want = is_list ? WANT_VALUE_OR_CLOSE : WANT_NAME_OR_CLOSE;
  scan->at++;
  return true;
}

static bool
may_close (const Scan *scan)
{
  bool is_list = scan->depth > 0 && scan->closers[scan->depth - 1] == ']';
  return scan->depth > 0 && *scan->at == scan->closers[scan->depth - 1]
         && (scan->want == WANT_COMMA_OR_CLOSE
             || scan->want == (is_list ? WANT_VALUE_OR_CLOSE : WANT_NAME_OR_CLOSE));
}

static bool
scan_close (Scan *scan)
{
  scan->depth--;
  scan->n_names = scan->first[scan->depth];
  scan->want = scan->depth == 0 ? WANT_NOTHING : WANT_COMMA_OR_CLOSE;
  scan->at++;
  return true;
}

static bool
scan_value (Scan *scan, GError **error)
{
  const char *from, *to;
  char c = *scan->at;
  if (scan->depth == 0 && c != '{')
    return fail (scan, _ ("the file must begin with a brace {."), error);
  if (c == '{' || c == '[')
    return scan_open (scan, error);
  bool read = c == '"'                          ? scan_text (scan, &from, &to, error)
              : c == '-' || g_ascii_isdigit (c) ? scan_number (scan, error)
                                                : scan_word (scan, error);
  scan->want = WANT_COMMA_OR_CLOSE;
  return read;
}

/* The same name may be written in two ways with a backslash; such ones are left to others. */
static void
keep_name (Scan *scan)
{
  Name name = { scan->member, (gsize)(scan->member_end - scan->member) };
  scan->sure = scan->sure && scan->n_names < NAMES_MOST && memchr (name.at, '\\', name.length) == NULL;
  if (!scan->sure)
    return;
  for (guint i = scan->first[scan->depth - 1]; i < scan->n_names; i++)
    if (scan->names[i].length == name.length && memcmp (scan->names[i].at, name.at, name.length) == 0)
      scan->sure = false;
  scan->names[scan->n_names++] = name;
}

static bool
scan_name (Scan *scan, GError **error)
{
  if (*scan->at != '"')
    return fail (scan, advice_for (scan->want), error);
  scan->want = WANT_COLON;
  scan->members++;
  if (!scan_text (scan, &scan->member, &scan->member_end, error))
    return false;
  keep_name (scan);
  return true;
}

static bool
scan_sign (Scan *scan, char sign, Want next, GError **error)
{
  if (*scan->at != sign)
    return fail (scan, advice_for (scan->want), error);
  scan->want = next;
  scan->at++;
  return true;
}

static bool
scan_next (Scan *scan, GError **error)
{
  if (may_close (scan))
    return scan_close (scan);
  switch (scan->want)
    {
    case WANT_NAME:
    case WANT_NAME_OR_CLOSE:
      return scan_name (scan, error);
    case WANT_COLON:
      return scan_sign (scan, ':', WANT_VALUE, error);
    case WANT_COMMA_OR_CLOSE:
      return scan_sign (scan, ',', scan->closers[scan->depth - 1] == ']' ? WANT_VALUE : WANT_NAME, error);
    case WANT_NOTHING:
      return fail (scan, advice_for (scan->want), error);
    case WANT_VALUE:
    case WANT_VALUE_OR_CLOSE:
    default:
      return scan_value (scan, error);
    }
}

static bool
scan_end (const Scan *scan, GError **error)
{
  if (scan->want == WANT_NOTHING)
    return true;
  if (scan->depth == 0)
    g_set_error (error, SPELCH_FILE_ERROR, SPELCH_FILE_ERROR_SYNTAX, _ ("%s: the file is empty."),
                 scan->name);
  else
    g_set_error (error, SPELCH_FILE_ERROR, SPELCH_FILE_ERROR_SYNTAX,
                 _ ("%s: line %u: the file breaks off there; a closing brace is missing."), scan->name,
                 line_of (scan));
  return false;
}

bool
spelch_json_scan (const char *text, gsize length, const char *name, guint *members, bool *once,
                  GError **error)
{
  Scan scan
      = { .name = name, .start = text, .at = text, .end = text + length, .want = WANT_VALUE, .sure = true };
  for (;;)
    {
      while (scan.at < scan.end && is_gap (*scan.at))
        scan.at++;
      if (scan.at == scan.end)
        {
          *members = scan.members;
          *once = scan.sure;
          return scan_end (&scan, error);
        }
      if (!scan_next (&scan, error))
        return false;
    }
}
