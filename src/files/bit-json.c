/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "files/bit-json.h"

#include "files/item-name.h"

static const char *const NEEDED[] = { "id", "kind", "diameter", "shank", "cutting_length", "edges", NULL };

#define EDGES_MOST 6

static void
read_sizes (SpelchFields *fields, SpelchBit *bit)
{
  bit->diameter = spelch_fields_length (fields, "diameter");
  bit->shank = spelch_fields_length (fields, "shank");
  bit->cutting_length = spelch_fields_length (fields, "cutting_length");
  bit->overall_length = spelch_fields_length (fields, "overall_length");
  bit->up_shear = spelch_fields_length (fields, "up_shear");
  bit->overlap = spelch_fields_length (fields, "overlap");
  bit->neck = spelch_fields_length (fields, "neck");
  bit->uncut_centre = spelch_fields_length (fields, "uncut_centre");
  bit->end_hollow = spelch_fields_length (fields, "end_hollow");
  bit->sharpened_diameter = spelch_fields_length (fields, "sharpened_diameter");
  bit->sharpened_up_shear = spelch_fields_length (fields, "sharpened_up_shear");
}

static void
read_edges (SpelchFields *fields, SpelchBit *bit)
{
  bit->edges = (int)spelch_fields_whole (fields, "edges", 0, 1, EDGES_MOST);
  bit->edges_up = (int)spelch_fields_whole (fields, "edges_up", 0, 0, EDGES_MOST);
  bit->helix_deg = spelch_fields_number (fields, "helix_deg", 0);
  bit->rake_deg = spelch_fields_number (fields, "rake_deg", 0);
  bit->hand = (SpelchHand)spelch_fields_code (fields, "hand", &SPELCH_HAND_CODES, SPELCH_HAND_RIGHT);
  bit->end_cutting = spelch_fields_flag (fields, "end_cutting", false);
}

static void
read_make (SpelchFields *fields, SpelchBit *bit)
{
  bit->edge_material = (SpelchToolMaterial)spelch_fields_code (
      fields, "edge_material", &SPELCH_TOOL_MATERIAL_CODES, SPELCH_TOOL_CARBIDE);
  bit->body_material = (SpelchToolMaterial)spelch_fields_code (
      fields, "body_material", &SPELCH_TOOL_MATERIAL_CODES, SPELCH_TOOL_CARBIDE);
  bit->coated = spelch_fields_flag (fields, "coated", false);
  bit->bearing
      = (SpelchBearing)spelch_fields_code (fields, "bearing", &SPELCH_BEARING_CODES, SPELCH_BEARING_NONE);
  bit->max_rpm = spelch_fields_number (fields, "max_rpm", 0);
  bit->hand_feed = spelch_fields_flag (fields, "hand_feed", false);
}

static void
read_life (SpelchFields *fields, SpelchBit *bit)
{
  bit->price = spelch_fields_number (fields, "price", 0);
  bit->metres_cut = spelch_fields_number (fields, "metres_cut", 0);
  bit->wear = (SpelchWear)spelch_fields_code (fields, "wear", &SPELCH_WEAR_CODES, SPELCH_WEAR_SHARP);
  bit->retired = spelch_fields_flag (fields, "retired", false);
  spelch_fields_text (fields, "sharpened", bit->sharpened, sizeof bit->sharpened);
}

static void
read_renewals (SpelchFields *fields, SpelchBit *bit)
{
  static const char *const RENEWAL_NEEDS[] = { "date", "kind", NULL };
  bit->n_renewals = spelch_fields_count (fields, "renewals", SPELCH_MAX_RENEWALS);
  for (guint i = 0; i < bit->n_renewals; i++)
    {
      g_autoptr (SpelchFields) item = spelch_fields_item (fields, "renewals", i);
      SpelchRenewal *renewal = &bit->renewals[i];
      if (item == NULL)
        continue;
      spelch_fields_need (item, RENEWAL_NEEDS);
      spelch_fields_text (item, "date", renewal->date, sizeof renewal->date);
      renewal->kind = (SpelchRenewalKind)spelch_fields_code (item, "kind", &SPELCH_RENEWAL_CODES,
                                                             SPELCH_RENEWAL_SHARPENED);
      renewal->metres_cut = spelch_fields_number (item, "metres_cut", 0);
    }
}

SpelchBit
spelch_bit_read (SpelchFields *fields)
{
  SpelchBit bit = { 0 };
  spelch_fields_need (fields, NEEDED);
  spelch_item_read_name (fields, bit.id, bit.name);
  bit.kind = (SpelchBitKind)spelch_fields_code (fields, "kind", &SPELCH_BIT_KIND_CODES, SPELCH_BIT_STRAIGHT);
  read_sizes (fields, &bit);
  read_edges (fields, &bit);
  read_make (fields, &bit);
  read_life (fields, &bit);
  read_renewals (fields, &bit);
  return bit;
}

static void
write_renewals (SpelchWriter *writer, const SpelchBit *bit)
{
  if (bit->n_renewals == 0)
    return;
  spelch_writer_open_list (writer, "renewals");
  for (guint i = 0; i < bit->n_renewals; i++)
    {
      const SpelchRenewal *renewal = &bit->renewals[i];
      spelch_writer_open_item (writer, NULL, true);
      spelch_writer_text (writer, "date", renewal->date);
      spelch_writer_code (writer, "kind", &SPELCH_RENEWAL_CODES, (int)renewal->kind);
      spelch_writer_number_told (writer, "metres_cut", renewal->metres_cut);
      spelch_writer_close (writer);
    }
  spelch_writer_close (writer);
}

void
spelch_bit_write (SpelchWriter *writer, const SpelchBit *bit)
{
  spelch_item_write_name (writer, bit->id, bit->name);
  spelch_writer_code (writer, "kind", &SPELCH_BIT_KIND_CODES, (int)bit->kind);
  spelch_writer_length (writer, "diameter", &bit->diameter);
  spelch_writer_length (writer, "shank", &bit->shank);
  spelch_writer_length (writer, "cutting_length", &bit->cutting_length);
  spelch_writer_length_told (writer, "overall_length", &bit->overall_length);
  spelch_writer_length_told (writer, "up_shear", &bit->up_shear);
  spelch_writer_length_told (writer, "overlap", &bit->overlap);
  spelch_writer_length_told (writer, "neck", &bit->neck);
  spelch_writer_number (writer, "edges", bit->edges);
  spelch_writer_number_told (writer, "edges_up", bit->edges_up);
  spelch_writer_number_told (writer, "helix_deg", bit->helix_deg);
  spelch_writer_number_told (writer, "rake_deg", bit->rake_deg);
  spelch_writer_code_told (writer, "hand", &SPELCH_HAND_CODES, (int)bit->hand, SPELCH_HAND_RIGHT);
  spelch_writer_code_told (writer, "edge_material", &SPELCH_TOOL_MATERIAL_CODES, (int)bit->edge_material,
                           SPELCH_TOOL_CARBIDE);
  spelch_writer_code_told (writer, "body_material", &SPELCH_TOOL_MATERIAL_CODES, (int)bit->body_material,
                           SPELCH_TOOL_CARBIDE);
  spelch_writer_flag_told (writer, "coated", bit->coated);
  spelch_writer_flag_told (writer, "end_cutting", bit->end_cutting);
  spelch_writer_length_told (writer, "uncut_centre", &bit->uncut_centre);
  spelch_writer_length_told (writer, "end_hollow", &bit->end_hollow);
  spelch_writer_code_told (writer, "bearing", &SPELCH_BEARING_CODES, (int)bit->bearing, SPELCH_BEARING_NONE);
  spelch_writer_number_told (writer, "max_rpm", bit->max_rpm);
  spelch_writer_flag_told (writer, "hand_feed", bit->hand_feed);
  spelch_writer_number_told (writer, "price", bit->price);
  spelch_writer_number_told (writer, "metres_cut", bit->metres_cut);
  spelch_writer_code_told (writer, "wear", &SPELCH_WEAR_CODES, (int)bit->wear, SPELCH_WEAR_SHARP);
  spelch_writer_text_told (writer, "sharpened", bit->sharpened);
  spelch_writer_length_told (writer, "sharpened_diameter", &bit->sharpened_diameter);
  spelch_writer_length_told (writer, "sharpened_up_shear", &bit->sharpened_up_shear);
  write_renewals (writer, bit);
  spelch_writer_flag_told (writer, "retired", bit->retired);
}
