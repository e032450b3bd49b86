/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "files/cut-json.h"

#include "files/item-name.h"

#define QUANTITY_MOST 100000
#define TABS_MOST     1000

static const char *const CUT_NEEDS[] = { "id", "kind", "way_up", "length", NULL };
static const char *const ENTRY_NEEDS[] = { "kind", NULL };
static const char *const MATING_NEEDS[] = { "thickness", NULL };
static const char *const TABS_NEED[] = { "count", NULL };

static SpelchEnd
usual_end (SpelchCutKind kind)
{
  return spelch_cut_shape (kind).closed ? SPELCH_END_INSIDE : SPELCH_END_EDGE;
}

/* ---- Reading ---- */

static void
read_mating (SpelchFields *fields, SpelchMating *mating)
{
  g_autoptr (SpelchFields) members = spelch_fields_object (fields, "mating");
  if (members == NULL)
    return;
  spelch_fields_need (members, MATING_NEEDS);
  mating->told = true;
  mating->thickness = spelch_fields_length (members, "thickness");
  mating->clearance = spelch_fields_length (members, "clearance");
}

static void
read_shape (SpelchFields *fields, SpelchCut *cut)
{
  cut->through = spelch_fields_flag (fields, "through", spelch_cut_shape (cut->kind).through);
  cut->way_up = (SpelchFace)spelch_fields_code (fields, "way_up", &SPELCH_FACE_CODES, SPELCH_FACE_A);
  cut->depth = spelch_fields_length (fields, "depth");
  cut->width = spelch_fields_length (fields, "width");
  read_mating (fields, &cut->mating);
  cut->from_edge = spelch_fields_length (fields, "from_edge");
  cut->length = spelch_fields_length (fields, "length");
  cut->corner_radius = spelch_fields_length (fields, "corner_radius");
  cut->quantity = spelch_fields_whole (fields, "quantity", 1, 1, QUANTITY_MOST);
}

static void
read_edges (SpelchFields *fields, SpelchCut *cut)
{
  SpelchEnd end = usual_end (cut->kind);
  guint seen = spelch_fields_codes (fields, "seen", &SPELCH_FACE_CODES, 0);
  cut->seen_a = seen & 1u << SPELCH_FACE_A;
  cut->seen_b = seen & 1u << SPELCH_FACE_B;
  cut->kept = (SpelchWall)spelch_fields_code (fields, "kept", &SPELCH_WALL_CODES, SPELCH_WALL_BOTH);
  cut->every_direction = spelch_fields_flag (fields, "every_direction", false);
  cut->path_deg = spelch_fields_number (fields, "path_deg", 0);
  cut->start = (SpelchEnd)spelch_fields_code (fields, "start", &SPELCH_END_CODES, end);
  cut->end = (SpelchEnd)spelch_fields_code (fields, "end", &SPELCH_END_CODES, end);
}

static void
read_tabs (SpelchFields *fields, SpelchTabs *tabs)
{
  g_autoptr (SpelchFields) members = spelch_fields_object (fields, "tabs");
  if (members == NULL)
    return;
  spelch_fields_need (members, TABS_NEED);
  tabs->count = spelch_fields_whole (members, "count", 0, 0, TABS_MOST);
  tabs->width = spelch_fields_length (members, "width");
  tabs->thickness = spelch_fields_length (members, "thickness");
}

static void
read_entry (SpelchFields *fields, SpelchHeld *held)
{
  g_autoptr (SpelchFields) entry = spelch_fields_object (fields, "entry");
  if (entry == NULL)
    return;
  spelch_fields_need (entry, ENTRY_NEEDS);
  held->entry_held = true;
  held->entry
      = (SpelchEntryKind)spelch_fields_code (entry, "kind", &SPELCH_ENTRY_KIND_CODES, SPELCH_ENTRY_PLUNGE);
  held->entry_on_line = spelch_fields_flag (entry, "on_line", false);
  held->entry_deg = spelch_fields_number (entry, "angle_deg", 0);
  held->entry_stops = spelch_fields_flag (entry, "stops", false);
}

static void
read_held (SpelchFields *fields, SpelchHeld *held)
{
  g_autoptr (SpelchFields) members = spelch_fields_object (fields, "held");
  if (members == NULL)
    return;
  held->passes_held = spelch_fields_told (members, "passes");
  held->n_passes = spelch_fields_lengths (members, "passes", held->passes, SPELCH_MAX_PASSES);
  held->overcut_held = spelch_fields_told (members, "overcut");
  held->overcut = spelch_fields_length (members, "overcut");
  held->allowance_held = spelch_fields_told (members, "allowance");
  held->allowance = spelch_fields_length (members, "allowance");
  held->plan_held = spelch_fields_told (members, "pass_plan");
  held->plan = (SpelchPassPlan)spelch_fields_code (members, "pass_plan", &SPELCH_PASS_PLAN_CODES,
                                                   SPELCH_PASS_PLAN_FULL);
  held->score = spelch_fields_length (members, "score");
  spelch_fields_text (members, "score_bit", held->score_bit, sizeof held->score_bit);
  held->skin = spelch_fields_length (members, "skin");
  held->speed_rpm = spelch_fields_number (members, "speed_rpm", 0);
  held->feed_mm_min = spelch_fields_number (members, "feed_mm_min", 0);
  read_entry (members, held);
}

SpelchCut
spelch_cut_read (SpelchFields *fields)
{
  SpelchCut cut = { 0 };
  spelch_fields_need (fields, CUT_NEEDS);
  spelch_item_read_name (fields, cut.id, cut.name);
  cut.kind = (SpelchCutKind)spelch_fields_code (fields, "kind", &SPELCH_CUT_KIND_CODES, SPELCH_CUT_DADO);
  read_shape (fields, &cut);
  read_edges (fields, &cut);
  read_tabs (fields, &cut.tabs);
  cut.backer = spelch_fields_length (fields, "backer");
  cut.stick_out = spelch_fields_length (fields, "stick_out");
  spelch_fields_text (fields, "bit", cut.bit, sizeof cut.bit);
  read_held (fields, &cut.held);
  return cut;
}

/* ---- Writing ---- */

static void
write_mating (SpelchWriter *writer, const SpelchMating *mating)
{
  if (!mating->told)
    return;
  spelch_writer_open (writer, "mating", NULL);
  spelch_writer_length (writer, "thickness", &mating->thickness);
  spelch_writer_length_told (writer, "clearance", &mating->clearance);
  spelch_writer_close (writer);
}

static void
write_shape (SpelchWriter *writer, const SpelchCut *cut)
{
  spelch_writer_flag_told (writer, "through", cut->through && !spelch_cut_shape (cut->kind).through);
  spelch_writer_code (writer, "way_up", &SPELCH_FACE_CODES, (int)cut->way_up);
  spelch_writer_length_told (writer, "depth", &cut->depth);
  spelch_writer_length_told (writer, "width", &cut->width);
  write_mating (writer, &cut->mating);
  spelch_writer_length_told (writer, "from_edge", &cut->from_edge);
  spelch_writer_length (writer, "length", &cut->length);
  spelch_writer_length_told (writer, "corner_radius", &cut->corner_radius);
  spelch_writer_number (writer, "quantity", cut->quantity);
}

static void
write_edges (SpelchWriter *writer, const SpelchCut *cut)
{
  guint seen = (cut->seen_a ? 1u << SPELCH_FACE_A : 0) | (cut->seen_b ? 1u << SPELCH_FACE_B : 0);
  int end = (int)usual_end (cut->kind);
  spelch_writer_codes (writer, "seen", &SPELCH_FACE_CODES, seen);
  spelch_writer_code_told (writer, "kept", &SPELCH_WALL_CODES, (int)cut->kept, SPELCH_WALL_BOTH);
  spelch_writer_flag_told (writer, "every_direction", cut->every_direction);
  spelch_writer_number_told (writer, "path_deg", cut->path_deg);
  spelch_writer_code_told (writer, "start", &SPELCH_END_CODES, (int)cut->start, end);
  spelch_writer_code_told (writer, "end", &SPELCH_END_CODES, (int)cut->end, end);
}

static void
write_tabs (SpelchWriter *writer, const SpelchTabs *tabs)
{
  if (tabs->count == 0 && tabs->width.mm == 0 && tabs->thickness.mm == 0
      && !spelch_writer_keeps (writer, "tabs"))
    return;
  spelch_writer_open (writer, "tabs", NULL);
  spelch_writer_number (writer, "count", tabs->count);
  spelch_writer_length_told (writer, "width", &tabs->width);
  spelch_writer_length_told (writer, "thickness", &tabs->thickness);
  spelch_writer_close (writer);
}

static void
write_entry (SpelchWriter *writer, const SpelchHeld *held)
{
  if (!held->entry_held)
    return;
  spelch_writer_open (writer, "entry", NULL);
  spelch_writer_code (writer, "kind", &SPELCH_ENTRY_KIND_CODES, (int)held->entry);
  spelch_writer_flag_told (writer, "on_line", held->entry_on_line);
  spelch_writer_number_told (writer, "angle_deg", held->entry_deg);
  spelch_writer_flag_told (writer, "stops", held->entry_stops);
  spelch_writer_close (writer);
}

static void
write_held (SpelchWriter *writer, const SpelchHeld *held)
{
  bool plans = held->plan_held || held->score.mm > 0 || held->skin.mm > 0 || *held->score_bit != '\0';
  bool something = plans || spelch_held_has_passes (held) || held->overcut_held || held->allowance_held
                   || held->speed_rpm != 0 || held->feed_mm_min != 0 || held->entry_held
                   || spelch_writer_keeps (writer, "held");
  if (!something)
    return;
  spelch_writer_open (writer, "held", NULL);
  if (spelch_held_has_passes (held))
    spelch_writer_lengths (writer, "passes", held->passes, held->n_passes);
  if (held->overcut_held)
    spelch_writer_length (writer, "overcut", &held->overcut);
  if (held->allowance_held)
    spelch_writer_length (writer, "allowance", &held->allowance);
  if (held->plan_held)
    spelch_writer_code (writer, "pass_plan", &SPELCH_PASS_PLAN_CODES, (int)held->plan);
  spelch_writer_length_told (writer, "score", &held->score);
  spelch_writer_text_told (writer, "score_bit", held->score_bit);
  spelch_writer_length_told (writer, "skin", &held->skin);
  spelch_writer_number_told (writer, "speed_rpm", held->speed_rpm);
  spelch_writer_number_told (writer, "feed_mm_min", held->feed_mm_min);
  write_entry (writer, held);
  spelch_writer_close (writer);
}

void
spelch_cut_write (SpelchWriter *writer, const SpelchCut *cut)
{
  spelch_item_write_name (writer, cut->id, cut->name);
  spelch_writer_code (writer, "kind", &SPELCH_CUT_KIND_CODES, (int)cut->kind);
  write_shape (writer, cut);
  write_edges (writer, cut);
  write_tabs (writer, &cut->tabs);
  spelch_writer_length_told (writer, "backer", &cut->backer);
  spelch_writer_length_told (writer, "stick_out", &cut->stick_out);
  spelch_writer_text_told (writer, "bit", cut->bit);
  write_held (writer, &cut->held);
}
