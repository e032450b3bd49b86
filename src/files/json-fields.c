/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "files/json-fields.h"

#include "files/json-text.h"
#include "files/json-writer.h"
#include "files/part-file.h"
#include "files/unread.h"

#include <glib/gi18n-lib.h>
#include <math.h>
#include <string.h>

#define TYPED_WITHIN_MM 0.005    /* how far "typed" may be from "mm": as fine as lengths are shown */
#define LENGTH_MOST_MM  100000.0 /* as spelch_length_parse() */
#define VERSION_MOST    1000

struct _SpelchFields
{
  SpelchReading *reading;
  JsonObject *object;
  const SpelchFields *parent; /* that it came from; NULL: it is the whole file */
  const char *member;         /* of the parent; NULL: it has the members of one of the parent's lists */
  int index;                  /* in the parent's list; -1: in none */
  GPtrArray *read;            /* the nodes of told members that were asked for */
  GHashTable *asked; /* the names of all that were asked for, told or not; NULL when nobody wants them */
};

static bool
holds (JsonNode *node, GType type)
{
  return JSON_NODE_HOLDS_VALUE (node) && json_node_get_value_type (node) == type;
}

/* The object's own id, when it has a proper one to be known by. */
static const char *
id_of (JsonObject *object)
{
  JsonNode *node = json_object_get_member (object, "id");
  return node != NULL && holds (node, G_TYPE_STRING) ? json_node_get_string (node) : NULL;
}

/* How a member's place begins in sentences: "cuts[2] 'shelf-dado': ". Made when it is wanted, which is
 * seldom. */
static char *
prefix_of (const SpelchFields *fields)
{
  if (fields->parent == NULL)
    return g_strdup ("");
  g_autofree char *before = prefix_of (fields->parent);
  if (fields->member == NULL)
    return g_steal_pointer (&before);
  const char *id = id_of (fields->object);
  /* "board: measured", but "holding.method" and "cuts[2] 'shelf-dado': held.passes". */
  if (fields->index < 0)
    return g_strconcat (before, fields->member, id != NULL ? ": " : ".", NULL);
  return id == NULL ? g_strdup_printf ("%s%s[%d]: ", before, fields->member, fields->index)
                    : g_strdup_printf ("%s%s[%d] '%.64s': ", before, fields->member, fields->index, id);
}

/* Of the object in `unknown`: "cuts/shelf-dado". */
static char *
path_of (const SpelchFields *fields)
{
  if (fields->parent == NULL)
    return g_strdup ("");
  g_autofree char *before = path_of (fields->parent);
  if (fields->member == NULL)
    return g_steal_pointer (&before);
  g_autofree char *index = fields->index < 0 ? NULL : g_strdup_printf ("%d", fields->index);
  const char *id = id_of (fields->object), *key = id != NULL ? id : index;
  const char *gap = *before == '\0' ? "" : "/";
  return key == NULL ? g_strconcat (before, gap, fields->member, NULL)
                     : g_strconcat (before, gap, fields->member, "/", key, NULL);
}

void
spelch_reading_fault (SpelchReading *reading, char *sentence)
{
  g_autofree char *fault = sentence;
  if (fault != NULL && reading->error == NULL && !reading->lenient)
    g_set_error (&reading->error, SPELCH_FILE_ERROR, SPELCH_FILE_ERROR_MEMBER, _ ("%s: %s"), reading->name,
                 fault);
}

/* "depth is "9 mmm"; write a length." */
static void
fault_of_member (SpelchFields *fields, const char *member, JsonNode *node, const char *advice)
{
  g_autofree char *value = spelch_json_show (node);
  g_autofree char *prefix = prefix_of (fields);
  /* Translators: where it stands, the member's name, its value, what to write instead. */
  spelch_reading_fault (fields->reading,
                        g_strdup_printf (_ ("%s%s is %s; %s"), prefix, member, value, advice));
}

/* Takes @object. */
static SpelchFields *
fields_new (SpelchReading *reading, JsonObject *object, const SpelchFields *parent, const char *member,
            int index)
{
  SpelchFields *fields = g_new0 (SpelchFields, 1);
  fields->reading = reading;
  fields->object = object;
  fields->parent = parent;
  fields->member = member;
  fields->index = index;
  fields->read = g_ptr_array_new ();
  if (reading->unread != NULL)
    fields->asked = g_hash_table_new_full (g_str_hash, g_str_equal, g_free, NULL);
  return fields;
}

SpelchFields *
spelch_fields_root (SpelchReading *reading, JsonNode *root)
{
  return fields_new (reading, json_node_dup_object (root), NULL, NULL, -1);
}

SpelchReading *
spelch_fields_reading (SpelchFields *fields)
{
  return fields->reading;
}

static JsonNode *
member_node (SpelchFields *fields, const char *member)
{
  JsonNode *node = json_object_get_member (fields->object, member);
  if (fields->asked != NULL)
    g_hash_table_add (fields->asked, g_strdup (member));
  if (node != NULL)
    g_ptr_array_add (fields->read, node);
  return node;
}

/* Every member has a node of its own, which is quicker to know again than its name. */
static bool
was_read (const SpelchFields *fields, const JsonNode *node)
{
  return g_ptr_array_find (fields->read, node, NULL);
}

/* The member, or NULL when it isn't told; null is a fault. */
static JsonNode *
told_node (SpelchFields *fields, const char *member)
{
  JsonNode *node = member_node (fields, member);
  if (node == NULL || !JSON_NODE_HOLDS_NULL (node))
    return node;
  fault_of_member (fields, member, node, _ ("leave the member out when there is nothing to tell."));
  return NULL;
}

static bool
holds_number (JsonNode *node)
{
  return holds (node, G_TYPE_INT64) || holds (node, G_TYPE_DOUBLE);
}

SpelchFields *
spelch_fields_object (SpelchFields *fields, const char *member)
{
  JsonNode *node = told_node (fields, member);
  if (node == NULL)
    return NULL;
  if (!JSON_NODE_HOLDS_OBJECT (node))
    {
      fault_of_member (fields, member, node, _ ("its members stand in braces {}."));
      return NULL;
    }
  return fields_new (fields->reading, json_node_dup_object (node), fields, member, -1);
}

static JsonArray *
told_list (SpelchFields *fields, const char *member, guint most)
{
  JsonNode *node = told_node (fields, member);
  if (node == NULL)
    return NULL;
  if (!JSON_NODE_HOLDS_ARRAY (node))
    {
      fault_of_member (fields, member, node, _ ("write a list in brackets []."));
      return NULL;
    }
  JsonArray *list = json_node_get_array (node);
  if (json_array_get_length (list) <= most)
    return list;
  g_autofree char *prefix = prefix_of (fields);
  spelch_reading_fault (fields->reading,
                        g_strdup_printf (_ ("%s%s has %u entries; at most %u are read."), prefix, member,
                                         json_array_get_length (list), most));
  return NULL;
}

guint
spelch_fields_count (SpelchFields *fields, const char *member, guint most)
{
  JsonArray *list = told_list (fields, member, most);
  return list == NULL ? 0 : json_array_get_length (list);
}

SpelchFields *
spelch_fields_item (SpelchFields *fields, const char *member, guint i)
{
  JsonNode *node = json_array_get_element (json_object_get_array_member (fields->object, member), i);
  if (JSON_NODE_HOLDS_OBJECT (node))
    return fields_new (fields->reading, json_node_dup_object (node), fields, member, (int)i);
  g_autofree char *place = g_strdup_printf ("%s[%u]", member, i);
  fault_of_member (fields, place, node, _ ("its members stand in braces {}."));
  return NULL;
}

static void
keep_unknown (SpelchFields *fields)
{
  JsonObjectIter each;
  const char *member = NULL;
  JsonNode *node = NULL;
  g_autoptr (JsonObject) rest = NULL;
  json_object_iter_init_ordered (&each, fields->object);
  while (json_object_iter_next_ordered (&each, &member, &node))
    if (!was_read (fields, node))
      {
        rest = rest != NULL ? rest : json_object_new ();
        json_object_set_member (rest, member, json_node_copy (node));
      }
  if (rest != NULL)
    g_hash_table_insert (fields->reading->unknown, path_of (fields), spelch_writer_object_text (rest));
}

/* Members that were asked for and aren't told: one of them may be meant by one that nobody asked for. */
static GPtrArray *
missing_members (SpelchFields *fields)
{
  GPtrArray *missing = g_ptr_array_new ();
  GHashTableIter iter;
  gpointer member;
  g_hash_table_iter_init (&iter, fields->asked);
  while (g_hash_table_iter_next (&iter, &member, NULL))
    if (!json_object_has_member (fields->object, member))
      g_ptr_array_add (missing, member);
  return missing;
}

static void
tell_unread (SpelchFields *fields)
{
  g_autoptr (GList) members = json_object_get_members (fields->object);
  g_autoptr (GPtrArray) missing = missing_members (fields);
  g_autofree char *prefix = prefix_of (fields);
  g_autofree char *path = path_of (fields);
  for (GList *m = members; m != NULL; m = m->next)
    if (!g_hash_table_contains (fields->asked, m->data))
      spelch_unread_add (fields->reading->unread, path, prefix, m->data, missing);
}

void
spelch_fields_done (SpelchFields *fields)
{
  if (fields->reading->unread != NULL)
    tell_unread (fields);
  if (fields->reading->unknown != NULL)
    keep_unknown (fields);
  g_clear_pointer (&fields->asked, g_hash_table_unref);
  g_ptr_array_unref (fields->read);
  json_object_unref (fields->object);
  g_free (fields);
}

void
spelch_fields_need (SpelchFields *fields, const char *const *members)
{
  for (guint i = 0; members[i] != NULL; i++)
    if (!json_object_has_member (fields->object, members[i]))
      {
        g_autofree char *prefix = prefix_of (fields);
        spelch_reading_fault (fields->reading,
                              g_strdup_printf (_ ("%s%s is missing; it must be told."), prefix, members[i]));
      }
}

bool
spelch_fields_told (SpelchFields *fields, const char *member)
{
  return told_node (fields, member) != NULL;
}

void
spelch_fields_text (SpelchFields *fields, const char *member, char *into, gsize size)
{
  JsonNode *node = told_node (fields, member);
  if (node == NULL)
    return;
  if (!holds (node, G_TYPE_STRING))
    fault_of_member (fields, member, node, _ ("write a text in double quotes."));
  else if (strlen (json_node_get_string (node)) >= size)
    {
      g_autofree char *advice = g_strdup_printf (_ ("it has room for %u bytes."), (guint)size - 1);
      fault_of_member (fields, member, node, advice);
    }
  else
    g_strlcpy (into, json_node_get_string (node), size);
}

bool
spelch_fields_is_text (SpelchFields *fields, const char *member)
{
  JsonNode *node = member_node (fields, member);
  return node != NULL && holds (node, G_TYPE_STRING);
}

void
spelch_fields_refuse (SpelchFields *fields, const char *member, const char *advice)
{
  fault_of_member (fields, member, member_node (fields, member), advice);
}

char **
spelch_fields_members (SpelchFields *fields)
{
  g_autoptr (GList) members = json_object_get_members (fields->object);
  g_autoptr (GStrvBuilder) names = g_strv_builder_new ();
  for (GList *m = members; m != NULL; m = m->next)
    g_strv_builder_add (names, m->data);
  return g_strv_builder_end (names);
}

int
spelch_fields_code (SpelchFields *fields, const char *member, const SpelchCodes *table, int otherwise)
{
  JsonNode *node = told_node (fields, member);
  int value = otherwise;
  if (node == NULL)
    return otherwise;
  if (holds (node, G_TYPE_STRING) && spelch_code_read (table, json_node_get_string (node), &value))
    return value;
  g_autofree char *codes = spelch_codes_list (table);
  g_autofree char *advice = g_strdup_printf (_ ("write one of %s."), codes);
  fault_of_member (fields, member, node, advice);
  return otherwise;
}

bool
spelch_fields_flag (SpelchFields *fields, const char *member, bool otherwise)
{
  JsonNode *node = told_node (fields, member);
  if (node == NULL)
    return otherwise;
  if (holds (node, G_TYPE_BOOLEAN))
    return json_node_get_boolean (node);
  fault_of_member (fields, member, node, _ ("write true or false, without quotes."));
  return otherwise;
}

static double
number_of (SpelchFields *fields, const char *member, JsonNode *node, double otherwise)
{
  if (holds_number (node))
    return json_node_get_double (node);
  fault_of_member (fields, member, node, _ ("write a plain number such as 18 or 0.4, without quotes."));
  return otherwise;
}

double
spelch_fields_number (SpelchFields *fields, const char *member, double otherwise)
{
  JsonNode *node = told_node (fields, member);
  return node == NULL ? otherwise : number_of (fields, member, node, otherwise);
}

double
spelch_fields_number_or_null (SpelchFields *fields, const char *member, double otherwise)
{
  JsonNode *node = member_node (fields, member);
  return node == NULL || JSON_NODE_HOLDS_NULL (node) ? otherwise
                                                     : number_of (fields, member, node, otherwise);
}

int
spelch_fields_integer (SpelchFields *fields, const char *member, int otherwise, int least, int most)
{
  JsonNode *node = told_node (fields, member);
  if (node == NULL)
    return otherwise;
  double value = holds_number (node) ? json_node_get_double (node) : HUGE_VAL;
  if (value >= least && value <= most && value == floor (value))
    return (int)value;
  g_autofree char *advice = g_strdup_printf (_ ("write a whole number from %d to %d."), least, most);
  fault_of_member (fields, member, node, advice);
  return otherwise;
}

guint
spelch_fields_whole (SpelchFields *fields, const char *member, guint otherwise, guint least, guint most)
{
  return (guint)spelch_fields_integer (fields, member, (int)otherwise, (int)least, (int)most);
}

void
spelch_fields_format (SpelchFields *fields, guint version)
{
  guint told = spelch_fields_whole (fields, "format_version", version, 1, VERSION_MOST);
  if (told != version)
    spelch_reading_fault (
        fields->reading,
        g_strdup_printf (_ ("format_version is %u; this program reads %d."), told, (int)version));
}

/* ---- Lengths ---- */

static SpelchLength
length_of_text (SpelchFields *fields, const char *member, JsonNode *node)
{
  SpelchLength length = { 0 };
  if (!spelch_length_parse (json_node_get_string (node), SPELCH_UNIT_MM, &length, NULL))
    fault_of_member (fields, member, node, _ ("write a length such as 9 mm or 3/8 in."));
  return length;
}

static SpelchLength
length_of_number (SpelchFields *fields, const char *member, JsonNode *node)
{
  double mm = json_node_get_double (node);
  if (fabs (mm) <= LENGTH_MOST_MM)
    return spelch_length_mm (mm);
  fault_of_member (fields, member, node, _ ("a length is at most 100 m."));
  return (SpelchLength){ 0 };
}

/* Words typed without a unit took the one shown then, which may have been inches. */
static bool
typed_agrees (const char *typed, double mm)
{
  SpelchLength read;
  for (int unit = SPELCH_UNIT_MM; unit <= SPELCH_UNIT_INCH; unit++)
    if (spelch_length_parse (typed, (SpelchUnit)unit, &read, NULL) && fabs (read.mm - mm) <= TYPED_WITHIN_MM)
      return true;
  return false;
}

static SpelchLength
length_of_object (SpelchFields *fields, const char *member)
{
  static const char *const NEEDED[] = { "mm", NULL };
  g_autoptr (SpelchFields) both = spelch_fields_object (fields, member);
  SpelchLength length = { 0 };
  spelch_fields_need (both, NEEDED);
  JsonNode *mm = told_node (both, "mm");
  if (mm != NULL && holds_number (mm))
    length = length_of_number (both, "mm", mm);
  else if (mm != NULL)
    fault_of_member (both, "mm", mm, _ ("write a plain number such as 18 or 0.4, without quotes."));
  spelch_fields_text (both, "typed", length.typed, sizeof length.typed);
  if (both->reading->error != NULL || *length.typed == '\0' || typed_agrees (length.typed, length.mm))
    return length;
  char number[G_ASCII_DTOSTR_BUF_SIZE];
  spelch_json_number (length.mm, number);
  g_autofree char *prefix = prefix_of (fields);
  spelch_reading_fault (
      fields->reading, g_strdup_printf (_ ("%s%s is told as %s mm and typed as \"%s\", which isn't the same; "
                                           "correct one of them."),
                                        prefix, member, number, length.typed));
  return spelch_length_mm (length.mm);
}

SpelchLength
spelch_fields_length (SpelchFields *fields, const char *member)
{
  JsonNode *node = told_node (fields, member);
  if (node == NULL)
    return (SpelchLength){ 0 };
  if (holds (node, G_TYPE_STRING))
    return length_of_text (fields, member, node);
  if (holds_number (node))
    return length_of_number (fields, member, node);
  if (JSON_NODE_HOLDS_OBJECT (node))
    return length_of_object (fields, member);
  fault_of_member (fields, member, node, _ ("write a length such as 9 mm or 3/8 in."));
  return (SpelchLength){ 0 };
}

/* ---- Lists of plain values ---- */

/* A list's entries as members of an object of their own, named "passes[0]", so that one reader serves both.
 */
static SpelchFields *
entries_of (SpelchFields *fields, const char *member, guint most, guint *n)
{
  JsonArray *list = told_list (fields, member, most);
  JsonObject *entries = json_object_new ();
  *n = list == NULL ? 0 : json_array_get_length (list);
  for (guint i = 0; i < *n; i++)
    {
      g_autofree char *place = g_strdup_printf ("%s[%u]", member, i);
      json_object_set_member (entries, place, json_array_dup_element (list, i));
    }
  return fields_new (fields->reading, entries, fields, NULL, -1);
}

guint
spelch_fields_lengths (SpelchFields *fields, const char *member, SpelchLength *into, guint most)
{
  guint n;
  g_autoptr (SpelchFields) entries = entries_of (fields, member, most, &n);
  for (guint i = 0; i < n; i++)
    {
      g_autofree char *place = g_strdup_printf ("%s[%u]", member, i);
      into[i] = spelch_fields_length (entries, place);
    }
  return n;
}

guint
spelch_fields_numbers (SpelchFields *fields, const char *member, double *into, guint most)
{
  guint n;
  g_autoptr (SpelchFields) entries = entries_of (fields, member, most, &n);
  for (guint i = 0; i < n; i++)
    {
      g_autofree char *place = g_strdup_printf ("%s[%u]", member, i);
      into[i] = spelch_fields_number (entries, place, 0);
    }
  return n;
}

guint
spelch_fields_texts (SpelchFields *fields, const char *member, char *into, gsize size, guint most,
                     bool or_objects)
{
  guint n;
  g_autoptr (SpelchFields) entries = entries_of (fields, member, most, &n);
  for (guint i = 0; i < n; i++)
    {
      g_autofree char *place = g_strdup_printf ("%s[%u]", member, i);
      JsonNode *node = member_node (entries, place);
      if (!or_objects || !JSON_NODE_HOLDS_OBJECT (node))
        spelch_fields_text (entries, place, into + i * size, size);
    }
  return n;
}

guint
spelch_fields_codes (SpelchFields *fields, const char *member, const SpelchCodes *table, guint otherwise)
{
  if (!spelch_fields_told (fields, member))
    return otherwise;
  guint n, set = 0;
  g_autoptr (SpelchFields) entries = entries_of (fields, member, table->n, &n);
  for (guint i = 0; i < n; i++)
    {
      g_autofree char *place = g_strdup_printf ("%s[%u]", member, i);
      guint bit = 1u << spelch_fields_code (entries, place, table, 0);
      if (set & bit)
        fault_of_member (entries, place, member_node (entries, place), _ ("it stands in the list already."));
      set |= bit;
    }
  return set;
}
