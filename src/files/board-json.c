/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "files/board-json.h"

#include "files/item-name.h"

static const char *const BOARD_NEEDS[] = { "id", "layers", "nominal", NULL };
static const char *const LAYER_NEEDS[] = { "thickness", "material", "grain", NULL };

static SpelchLayer
read_layer (SpelchFields *fields)
{
  SpelchLayer layer = { 0 };
  spelch_fields_need (fields, LAYER_NEEDS);
  layer.thickness = spelch_fields_length (fields, "thickness");
  layer.material = (SpelchMaterial)spelch_fields_code (fields, "material", &SPELCH_MATERIAL_CODES,
                                                       SPELCH_MATERIAL_SOFTWOOD);
  layer.grain = (SpelchGrain)spelch_fields_code (fields, "grain", &SPELCH_GRAIN_CODES, SPELCH_GRAIN_NONE);
  layer.grain_deg = spelch_fields_number (fields, "grain_deg", 0);
  layer.veneer = spelch_fields_flag (fields, "veneer", false);
  return layer;
}

static void
read_layers (SpelchFields *fields, SpelchBoard *board)
{
  board->n_layers = spelch_fields_count (fields, "layers", SPELCH_MAX_LAYERS);
  for (guint i = 0; i < board->n_layers; i++)
    {
      g_autoptr (SpelchFields) layer = spelch_fields_item (fields, "layers", i);
      if (layer != NULL)
        board->layers[i] = read_layer (layer);
    }
}

SpelchBoard
spelch_board_read (SpelchFields *fields)
{
  SpelchBoard board = { 0 };
  spelch_fields_need (fields, BOARD_NEEDS);
  spelch_item_read_name (fields, board.id, board.name);
  read_layers (fields, &board);
  board.nominal = spelch_fields_length (fields, "nominal");
  board.tolerance_plus_mm = spelch_fields_number (fields, "tolerance_plus_mm", 0);
  board.tolerance_minus_mm = spelch_fields_number (fields, "tolerance_minus_mm", 0);
  board.measured = spelch_fields_length (fields, "measured");
  board.measured_within_mm = spelch_fields_number (fields, "measured_within_mm", 0);
  spelch_fields_text (fields, "species", board.species, sizeof board.species);
  board.density_kg_m3 = spelch_fields_number (fields, "density_kg_m3", 0);
  board.retired = spelch_fields_flag (fields, "retired", false);
  return board;
}

static void
write_layer (SpelchWriter *writer, const SpelchLayer *layer)
{
  spelch_writer_open_item (writer, NULL, true);
  spelch_writer_length (writer, "thickness", &layer->thickness);
  spelch_writer_code (writer, "material", &SPELCH_MATERIAL_CODES, (int)layer->material);
  spelch_writer_code (writer, "grain", &SPELCH_GRAIN_CODES, (int)layer->grain);
  spelch_writer_number_told (writer, "grain_deg", layer->grain_deg);
  spelch_writer_flag_told (writer, "veneer", layer->veneer);
  spelch_writer_close (writer);
}

void
spelch_board_write (SpelchWriter *writer, const SpelchBoard *board)
{
  spelch_item_write_name (writer, board->id, board->name);
  spelch_writer_open_list (writer, "layers");
  for (guint i = 0; i < board->n_layers; i++)
    write_layer (writer, &board->layers[i]);
  spelch_writer_close (writer);
  spelch_writer_length (writer, "nominal", &board->nominal);
  spelch_writer_number_told (writer, "tolerance_plus_mm", board->tolerance_plus_mm);
  spelch_writer_number_told (writer, "tolerance_minus_mm", board->tolerance_minus_mm);
  spelch_writer_length_told (writer, "measured", &board->measured);
  spelch_writer_number_told (writer, "measured_within_mm", board->measured_within_mm);
  spelch_writer_text_told (writer, "species", board->species);
  spelch_writer_number_told (writer, "density_kg_m3", board->density_kg_m3);
  spelch_writer_flag_told (writer, "retired", board->retired);
}
