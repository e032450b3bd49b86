/* SPDX-License-Identifier: GPL-3.0-or-later
 *
 * Model as JSON: the constants of data/model.json with their sources. Every constant that plan/constants.h
 * lists must be there, and no other.
 */
#pragma once

#include "plan/constants.h"

typedef struct
{
  SpelchConstants constants;
  GHashTable *
      sources; /* id -> source and class of evidence: "Kops and Vo 1990, CIRP Annals 39(1):93-96 (analogy)" */
} SpelchModel;

/* Reads the model; false and SPELCH_FILE_ERROR, naming the constant, when one is missing, unknown, told twice
 * or without unit, evidence or source. Free @model's sources with g_hash_table_unref(). */
bool spelch_model_read (const char *text, gsize length, const char *name, SpelchModel *model, GError **error);
