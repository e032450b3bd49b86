/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "files/shop-data.h"

#include "files/json-fields.h"
#include "files/json-text.h"
#include "files/list-file.h"
#include "files/model-json.h"
#include "files/part-file.h"
#include "files/starter-names.h"

#include "spelch-shop.h"
#include "shop/decimal-sign.h"

#define FOLDER       "/org/spelch/Spelch/data/"
#define SPECIES_MOST 1000

static const char *const wood_kinds[] = { "hardwood", "softwood" };
static const SpelchCodes WOOD_KIND_CODES = { "kind of wood", wood_kinds, G_N_ELEMENTS (wood_kinds) };

/* The data is part of the program and checked by its tests; a fault in it is a programming error. */
static void
must_be_right (const GError *error)
{
  if (error != NULL)
    g_error ("%s", error->message);
}

/* Asking for the resource by name, rather than trusting its constructor, keeps the linker from leaving it
 * out. */
static GBytes *
shop_text (const char *name)
{
  g_autoptr (GError) error = NULL;
  g_autofree char *path = g_strconcat (FOLDER, name, NULL);
  GBytes *bytes
      = g_resource_lookup_data (spelch_shop_get_resource (), path, G_RESOURCE_LOOKUP_FLAGS_NONE, &error);
  must_be_right (error);
  return bytes;
}

/* What stands in the shop begins with its id, and then its name. */
G_STATIC_ASSERT (offsetof (SpelchBit, name) == SPELCH_ID_SIZE);
G_STATIC_ASSERT (offsetof (SpelchBoard, name) == SPELCH_ID_SIZE);
G_STATIC_ASSERT (offsetof (SpelchMachine, name) == SPELCH_ID_SIZE);

static GArray *
read_list (SpelchListKind kind, const char *name)
{
  g_autoptr (GError) error = NULL;
  g_autoptr (GBytes) text = shop_text (name);
  GArray *items = spelch_list_from_json (kind, g_bytes_get_data (text, NULL), g_bytes_get_size (text), name,
                                         NULL, &error);
  must_be_right (error);
  for (guint i = 0; i < items->len; i++)
    spelch_starter_name (items->data + spelch_list_item_size (kind) * i + SPELCH_ID_SIZE, SPELCH_NAME_SIZE);
  return items;
}

const SpelchBit *
spelch_shop_bits (guint *n)
{
  static GArray *bits;
  if (g_once_init_enter (&bits))
    g_once_init_leave (&bits, read_list (SPELCH_LIST_BITS, "bits.json"));
  *n = bits->len;
  return (const SpelchBit *)(void *)bits->data;
}

const SpelchBoard *
spelch_shop_boards (guint *n)
{
  static GArray *boards;
  if (g_once_init_enter (&boards))
    g_once_init_leave (&boards, read_list (SPELCH_LIST_BOARDS, "boards.json"));
  *n = boards->len;
  return (const SpelchBoard *)(void *)boards->data;
}

const SpelchMachine *
spelch_shop_machines (guint *n)
{
  static GArray *machines;
  if (g_once_init_enter (&machines))
    g_once_init_leave (&machines, read_list (SPELCH_LIST_MACHINES, "machines.json"));
  *n = machines->len;
  return (const SpelchMachine *)(void *)machines->data;
}

/* ---- Species ---- */

static SpelchSpecies
read_wood (SpelchFields *fields)
{
  static const char *const NEEDED[]
      = { "id",        "name",   "latin",           "kind",        "specific_gravity", "modulus_gpa",
          "shear_mpa", "source", "compression_mpa", "tension_mpa", "hardness_n",       NULL };
  SpelchSpecies wood = { 0 };
  spelch_fields_need (fields, NEEDED);
  spelch_fields_text (fields, "id", wood.id, sizeof wood.id);
  spelch_fields_text (fields, "name", wood.name, sizeof wood.name);
  spelch_fields_text (fields, "latin", wood.latin, sizeof wood.latin);
  wood.softwood = spelch_fields_code (fields, "kind", &WOOD_KIND_CODES, 0) == 1;
  wood.imported = spelch_fields_flag (fields, "imported", false);
  wood.specific_gravity = spelch_fields_number_or_null (fields, "specific_gravity", 0);
  wood.modulus_gpa = spelch_fields_number_or_null (fields, "modulus_gpa", 0);
  wood.shear_mpa = spelch_fields_number_or_null (fields, "shear_mpa", 0);
  wood.compression_mpa = spelch_fields_number_or_null (fields, "compression_mpa", 0);
  wood.tension_mpa = spelch_fields_number_or_null (fields, "tension_mpa", 0);
  wood.hardness_n = spelch_fields_number_or_null (fields, "hardness_n", 0);
  spelch_fields_text (fields, "source", wood.source, sizeof wood.source);
  return wood;
}

static GArray *
read_species (void)
{
  g_autoptr (GError) error = NULL;
  g_autoptr (GBytes) text = shop_text ("species.json");
  g_autoptr (JsonNode) root
      = spelch_json_parse (g_bytes_get_data (text, NULL), g_bytes_get_size (text), "species.json", &error);
  must_be_right (error);
  SpelchReading reading = { .name = "species.json" };
  g_autoptr (SpelchFields) fields = spelch_fields_root (&reading, root);
  guint n = spelch_fields_count (fields, "species", SPECIES_MOST);
  GArray *species = g_array_sized_new (FALSE, TRUE, sizeof (SpelchSpecies), n);
  for (guint i = 0; i < n; i++)
    {
      g_autoptr (SpelchFields) item = spelch_fields_item (fields, "species", i);
      SpelchSpecies wood = read_wood (item);
      g_array_append_val (species, wood);
    }
  must_be_right (reading.error);
  return species;
}

const SpelchSpecies *
spelch_shop_species (guint *n)
{
  static GArray *species;
  if (g_once_init_enter (&species))
    g_once_init_leave (&species, read_species ());
  *n = species->len;
  return (const SpelchSpecies *)(void *)species->data;
}

/* ---- Model ---- */

/* The mass of a species at the table's 12 % of moisture: that of the dry wood, and the water. */
static SpelchDensity *
densities_of_species (guint *n)
{
  const SpelchSpecies *species = spelch_shop_species (n);
  SpelchDensity *densities = g_new0 (SpelchDensity, *n);
  for (guint i = 0; i < *n; i++)
    {
      g_strlcpy (densities[i].id, species[i].id, sizeof densities[i].id);
      densities[i].density_kg_m3 = 1000 * species[i].specific_gravity * 1.12;
      densities[i].shear_mpa = species[i].shear_mpa;
    }
  return densities;
}

static SpelchModel *
read_model (void)
{
  g_autoptr (GError) error = NULL;
  g_autoptr (GBytes) text = shop_text ("model.json");
  SpelchModel *model = g_new0 (SpelchModel, 1);
  spelch_model_read (g_bytes_get_data (text, NULL), g_bytes_get_size (text), "model.json", model, &error);
  must_be_right (error);
  model->constants.densities = densities_of_species (&model->constants.n_densities);
  return model;
}

static const SpelchModel *
shop_model (void)
{
  static SpelchModel *model;
  if (g_once_init_enter (&model))
    g_once_init_leave (&model, read_model ());
  return model;
}

const SpelchConstants *
spelch_shop_constants (void)
{
  return &shop_model ()->constants;
}

const char *
spelch_shop_constant_source (const char *id)
{
  return g_hash_table_lookup (shop_model ()->sources, id);
}

/* ---- Demo ---- */

/* What the program typed itself stands in fields as its reader would type it. */
static void
take_sign (SpelchPart *part)
{
  char sign = spelch_decimal_sign ();
  spelch_length_take_sign (&part->board.measured, sign);
  for (guint i = 0; i < part->n_cuts; i++)
    {
      SpelchCut *cut = &part->cuts[i];
      SpelchLength *const lengths[] = { &cut->depth, &cut->width, &cut->length, &cut->corner_radius };
      for (guint k = 0; k < G_N_ELEMENTS (lengths); k++)
        spelch_length_take_sign (lengths[k], sign);
    }
}

static SpelchPart *
read_demo (void)
{
  g_autoptr (GError) error = NULL;
  g_autoptr (GBytes) text = shop_text ("demo.spelch");
  SpelchPart *part
      = spelch_part_from_json (g_bytes_get_data (text, NULL), g_bytes_get_size (text), "demo.spelch", &error);
  must_be_right (error);
  take_sign (part);
  spelch_starter_name (part->name, sizeof part->name);
  spelch_starter_name (part->note, sizeof part->note);
  spelch_starter_name (part->board.name, sizeof part->board.name);
  spelch_starter_name (part->machine.name, sizeof part->machine.name);
  for (guint i = 0; i < part->n_bits; i++)
    spelch_starter_name (part->bits[i].name, sizeof part->bits[i].name);
  for (guint i = 0; i < part->n_cuts; i++)
    spelch_starter_name (part->cuts[i].name, sizeof part->cuts[i].name);
  return part;
}

SpelchPart *
spelch_shop_demo (void)
{
  static SpelchPart *demo;
  if (g_once_init_enter (&demo))
    g_once_init_leave (&demo, read_demo ());
  return spelch_part_ref (demo);
}
