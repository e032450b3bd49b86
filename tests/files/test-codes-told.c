/* SPDX-License-Identifier: GPL-3.0-or-later
 *
 * Every code that a file may hold stands in the schema, all of its table in one list, and in the guide.
 */
#include "reading.h"

#include "shop/cut.h"
#include "shop/exercise.h"
#include "shop/part.h"

#include <string.h>

#define PART     "../../data/spelch-part.schema.json"
#define LOG      "../../data/spelch-log.schema.json"
#define EXERCISE "../../data/spelch-exercise.schema.json"
#define FORMAT   "../../docs/file-format.md"
#define LESSONS  "../../docs/exercises.md"

typedef struct
{
  const SpelchCodes *codes;
  const char *schema, *guide;
} Told;

static const Told TOLD[] = {
  { &SPELCH_BIT_KIND_CODES, PART, FORMAT },      { &SPELCH_HAND_CODES, PART, FORMAT },
  { &SPELCH_TOOL_MATERIAL_CODES, PART, FORMAT }, { &SPELCH_BEARING_CODES, PART, FORMAT },
  { &SPELCH_WEAR_CODES, PART, FORMAT },          { &SPELCH_WEAR_CODES, EXERCISE, LESSONS },
  { &SPELCH_RENEWAL_CODES, PART, FORMAT },       { &SPELCH_CUT_KIND_CODES, PART, FORMAT },
  { &SPELCH_CUT_KIND_CODES, LOG, FORMAT },       { &SPELCH_WALL_CODES, PART, FORMAT },
  { &SPELCH_END_CODES, PART, FORMAT },           { &SPELCH_ENTRY_KIND_CODES, PART, FORMAT },
  { &SPELCH_PASS_PLAN_CODES, PART, FORMAT },     { &SPELCH_FACE_CODES, PART, FORMAT },
  { &SPELCH_MATERIAL_CODES, PART, FORMAT },      { &SPELCH_GRAIN_CODES, PART, FORMAT },
  { &SPELCH_MACHINE_KIND_CODES, PART, FORMAT },  { &SPELCH_DATUM_CODES, PART, FORMAT },
  { &SPELCH_SPOILBOARD_CODES, PART, FORMAT },    { &SPELCH_HOLD_CODES, PART, FORMAT },
  { &SPELCH_ASKS_CODES, EXERCISE, LESSONS },     { &SPELCH_CHANGE_CODES, EXERCISE, LESSONS },
};

/* @text without white space, so that it doesn't matter where a list was broken. */
static char *
packed (const char *text)
{
  GString *out = g_string_new (NULL);
  for (const char *c = text; *c != '\0'; c++)
    if (!g_ascii_isspace (*c))
      g_string_append_c (out, *c);
  return g_string_free (out, FALSE);
}

static char *
quoted_list (const SpelchCodes *codes)
{
  GString *list = g_string_new ("\"enum\":[");
  for (guint i = 0; i < codes->n; i++)
    g_string_append_printf (list, "%s\"%s\"", i == 0 ? "" : ",", codes->codes[i]);
  g_string_append_c (list, ']');
  return g_string_free (list, FALSE);
}

static void
test_schemas (void)
{
  for (guint i = 0; i < G_N_ELEMENTS (TOLD); i++)
    {
      g_autofree char *schema = reading_file (TOLD[i].schema), *text = packed (schema);
      g_autofree char *list = quoted_list (TOLD[i].codes);
      g_test_message ("%s: %s in %s", TOLD[i].codes->what, list, TOLD[i].schema);
      g_assert_nonnull (strstr (text, list));
    }
}

static void
test_guides (void)
{
  for (guint i = 0; i < G_N_ELEMENTS (TOLD); i++)
    {
      g_autofree char *guide = reading_file (TOLD[i].guide);
      for (guint j = 0; j < TOLD[i].codes->n; j++)
        {
          const char *code = TOLD[i].codes->codes[j];
          g_autofree char *alone = g_strdup_printf ("`%s`", code), *within = g_strdup_printf ("\"%s\"", code);
          g_test_message ("%s: %s in %s", TOLD[i].codes->what, code, TOLD[i].guide);
          g_assert_true (strstr (guide, alone) != NULL || strstr (guide, within) != NULL);
        }
    }
}

int
main (int argc, char **argv)
{
  g_test_init (&argc, &argv, NULL);
  g_test_add_func ("/codes-told/schemas", test_schemas);
  g_test_add_func ("/codes-told/guides", test_guides);
  return g_test_run ();
}
