/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "files/model-json.h"

#include "files/json-fields.h"
#include "files/json-text.h"

#include <glib/gi18n-lib.h>
#include <stddef.h>
#include <string.h>

#define ROWS_MOST   200
#define SOURCE_SIZE 400
#define POINTS_MOST 4

/* The X-macro's ids and where each goes. */
static const struct
{
  const char *id;
  gsize offset;
} PLACES[] = {
#define X(member, id) { id, offsetof (SpelchConstants, member) },
  SPELCH_CONSTANTS (X)
#undef X
};

static const char *const facings[] = {
  [SPELCH_FACING_PLY] = "ply",
  [SPELCH_FACING_STRAIGHT] = "straight",
  [SPELCH_FACING_LAMINATE] = "laminate",
  [SPELCH_FACING_BOARD] = "board",
};
static const SpelchCodes FACING_CODES = { N_ ("facing"), facings, G_N_ELEMENTS (facings) };

/* Keeps source and evidence under @id; false when @id was there already. */
static bool
read_source (SpelchFields *fields, GHashTable *sources, const char *id)
{
  static const char *const NEEDED[] = { "evidence", "source", NULL };
  char source[SOURCE_SIZE] = "";
  spelch_fields_need (fields, NEEDED);
  int evidence = spelch_fields_code (fields, "evidence", &SPELCH_EVIDENCE_CODES, SPELCH_EVIDENCE_PRACTICE);
  spelch_fields_text (fields, "source", source, sizeof source);
  return g_hash_table_insert (
      sources, g_strdup (id),
      g_strdup_printf ("%s (%s)", source, spelch_code_of (&SPELCH_EVIDENCE_CODES, evidence)));
}

static void
told_twice (SpelchReading *reading, const char *list, const char *id)
{
  spelch_reading_fault (reading, g_strdup_printf (_ ("%s: “%s” is told twice."), list, id));
}

/* ---- Constants ---- */

static double *
constant_by_id (SpelchConstants *constants, const char *id)
{
  for (guint i = 0; i < G_N_ELEMENTS (PLACES); i++)
    if (g_str_equal (PLACES[i].id, id))
      return (double *)(void *)((char *)constants + PLACES[i].offset);
  return NULL;
}

static void
read_constant (SpelchFields *fields, SpelchReading *reading, SpelchModel *model)
{
  static const char *const NEEDED[] = { "id", "value", "unit", NULL };
  char id[SPELCH_ID_SIZE] = "", unit[SPELCH_ID_SIZE] = "";
  spelch_fields_need (fields, NEEDED);
  spelch_fields_text (fields, "id", id, sizeof id);
  spelch_fields_text (fields, "unit", unit, sizeof unit);
  double *value = constant_by_id (&model->constants, id);
  if (value == NULL)
    spelch_reading_fault (reading,
                          g_strdup_printf (_ ("constants: “%s” isn't a constant of the model."), id));
  else
    *value = spelch_fields_number (fields, "value", 0);
  if (!read_source (fields, model->sources, id))
    told_twice (reading, "constants", id);
}

static void
read_constants (SpelchFields *fields, SpelchReading *reading, SpelchModel *model)
{
  guint n = spelch_fields_count (fields, "constants", ROWS_MOST);
  for (guint i = 0; i < n; i++)
    {
      g_autoptr (SpelchFields) item = spelch_fields_item (fields, "constants", i);
      if (item != NULL)
        read_constant (item, reading, model);
    }
  for (guint i = 0; i < G_N_ELEMENTS (PLACES); i++)
    if (!g_hash_table_contains (model->sources, PLACES[i].id))
      spelch_reading_fault (reading, g_strdup_printf (_ ("constants: “%s” is missing."), PLACES[i].id));
}

/* ---- Forces ---- */

static SpelchForcePair
read_pair (SpelchFields *fields, const char *member)
{
  static const char *const NEEDED[] = { "a", "b", NULL };
  g_autoptr (SpelchFields) pair = spelch_fields_object (fields, member);
  if (pair == NULL)
    return (SpelchForcePair){ 0 };
  spelch_fields_need (pair, NEEDED);
  return (SpelchForcePair){ .a = spelch_fields_number (pair, "a", 0),
                            .b = spelch_fields_number (pair, "b", 0) };
}

static void
read_force (SpelchFields *fields, SpelchReading *reading, SpelchModel *model)
{
  static const char *const NEEDED[] = { "material", "along", "across", "slot", NULL };
  spelch_fields_need (fields, NEEDED);
  int material = spelch_fields_code (fields, "material", &SPELCH_MATERIAL_CODES, SPELCH_MATERIAL_SOFTWOOD);
  model->constants.force[material] = (SpelchMaterialForce){
    .along = read_pair (fields, "along"),
    .across = read_pair (fields, "across"),
    .slot = read_pair (fields, "slot"),
  };
  g_autofree char *id = g_strconcat ("force-", spelch_code_of (&SPELCH_MATERIAL_CODES, material), NULL);
  if (!read_source (fields, model->sources, id))
    told_twice (reading, "forces", id);
}

static void
read_forces (SpelchFields *fields, SpelchReading *reading, SpelchModel *model)
{
  guint n = spelch_fields_count (fields, "forces", ROWS_MOST);
  for (guint i = 0; i < n; i++)
    {
      g_autoptr (SpelchFields) item = spelch_fields_item (fields, "forces", i);
      if (item != NULL)
        read_force (item, reading, model);
    }
  if (n != SPELCH_MATERIAL_CODES.n)
    spelch_reading_fault (reading, g_strdup_printf (_ ("forces: %u rows, but there are %u materials."), n,
                                                    SPELCH_MATERIAL_CODES.n));
}

/* ---- Shear points ---- */

static void
read_points (SpelchFields *fields, SpelchReading *reading, SpelchModel *model)
{
  static const char *const NEEDED[] = { "facing", "press_in", "neutral", "pull_out", NULL };
  spelch_fields_need (fields, NEEDED);
  int facing = spelch_fields_code (fields, "facing", &FACING_CODES, SPELCH_FACING_PLY);
  model->constants.shear[facing] = (SpelchShearPoints){
    .press_in = (int)spelch_fields_whole (fields, "press_in", 0, 0, POINTS_MOST),
    .neutral = (int)spelch_fields_whole (fields, "neutral", 0, 0, POINTS_MOST),
    .pull_out = (int)spelch_fields_whole (fields, "pull_out", 0, 0, POINTS_MOST),
  };
  g_autofree char *id = g_strconcat ("shear-", spelch_code_of (&FACING_CODES, facing), NULL);
  if (!read_source (fields, model->sources, id))
    told_twice (reading, "shear_points", id);
}

static void
read_shear_points (SpelchFields *fields, SpelchReading *reading, SpelchModel *model)
{
  guint n = spelch_fields_count (fields, "shear_points", ROWS_MOST);
  for (guint i = 0; i < n; i++)
    {
      g_autoptr (SpelchFields) item = spelch_fields_item (fields, "shear_points", i);
      if (item != NULL)
        read_points (item, reading, model);
    }
  if (n != SPELCH_N_FACINGS)
    spelch_reading_fault (reading, g_strdup_printf (_ ("shear_points: %u rows, but there are %d facings."), n,
                                                    SPELCH_N_FACINGS));
}

/* ---- What the terms of the grade stand on ---- */

/* A row without stock speaks for every stock that has no row of its own: those are read first. */
static void
read_founding (SpelchFields *fields, SpelchReading *reading, SpelchModel *model, bool general)
{
  static const char *const NEEDED[] = { "term", NULL };
  if (spelch_fields_told (fields, "stock") == general)
    return;
  spelch_fields_need (fields, NEEDED);
  int term = spelch_fields_code (fields, "term", &SPELCH_TERM_CODES, SPELCH_TERM_SHEAR);
  int stock = spelch_fields_code (fields, "stock", &SPELCH_STOCK_CODES, SPELCH_N_STOCKS);
  char source[SOURCE_SIZE] = "";
  spelch_fields_text (fields, "source", source, sizeof source);
  SpelchFounding founding = {
    .evidence = (SpelchEvidence)spelch_fields_code (fields, "evidence", &SPELCH_EVIDENCE_CODES,
                                                    SPELCH_EVIDENCE_PRACTICE),
    .source = g_intern_string (source),
  };
  for (int i = general ? 0 : stock; i < (general ? SPELCH_N_STOCKS : stock + 1); i++)
    model->constants.founding[term][i] = founding;
  g_autofree char *id = g_strdup_printf ("term-%s-%s", spelch_code_of (&SPELCH_TERM_CODES, term),
                                         general ? "any" : spelch_code_of (&SPELCH_STOCK_CODES, stock));
  if (!read_source (fields, model->sources, id))
    told_twice (reading, "terms", id);
}

static void
read_foundings (SpelchFields *fields, SpelchReading *reading, SpelchModel *model)
{
  guint n = spelch_fields_count (fields, "terms", ROWS_MOST);
  for (int general = 1; general >= 0; general--)
    for (guint i = 0; i < n; i++)
      {
        g_autoptr (SpelchFields) item = spelch_fields_item (fields, "terms", i);
        if (item != NULL)
          read_founding (item, reading, model, general);
      }
  for (int term = 0; term < SPELCH_N_TERMS; term++)
    for (int stock = 0; stock < SPELCH_N_STOCKS; stock++)
      if (model->constants.founding[term][stock].source == NULL)
        spelch_reading_fault (reading, g_strdup_printf (_ ("terms: nothing is told of “%s” in “%s”."),
                                                        spelch_code_of (&SPELCH_TERM_CODES, term),
                                                        spelch_code_of (&SPELCH_STOCK_CODES, stock)));
}

bool
spelch_model_read (const char *text, gsize length, const char *name, SpelchModel *model, GError **error)
{
  g_autoptr (JsonNode) root = spelch_json_parse (text, length, name, error);
  if (root == NULL)
    return false;
  SpelchReading reading = { .name = name };
  g_autoptr (SpelchFields) fields = spelch_fields_root (&reading, root);
  *model = (SpelchModel){ .sources = g_hash_table_new_full (g_str_hash, g_str_equal, g_free, g_free) };
  char version[SPELCH_ID_SIZE] = "";
  spelch_fields_text (fields, "model_version", version, sizeof version);
  if (!g_str_equal (version, SPELCH_MODEL_VERSION))
    spelch_reading_fault (
        &reading, g_strdup_printf (_ ("model_version is “%s”, not %s."), version, SPELCH_MODEL_VERSION));
  read_constants (fields, &reading, model);
  read_forces (fields, &reading, model);
  read_shear_points (fields, &reading, model);
  read_foundings (fields, &reading, model);
  if (reading.error == NULL)
    return true;
  g_clear_pointer (&model->sources, g_hash_table_unref);
  g_propagate_error (error, reading.error);
  return false;
}
