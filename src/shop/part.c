/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "shop/part.h"

#include "shop/fault.h"

#include <glib/gi18n-lib.h>
#include <string.h>

static const char *const holds[] = {
  [SPELCH_HOLD_UNTOLD] = "untold", [SPELCH_HOLD_VACUUM] = "vacuum", [SPELCH_HOLD_CLAMPS] = "clamps",
  [SPELCH_HOLD_SCREWS] = "screws", [SPELCH_HOLD_HANDS] = "hands",
};
const SpelchCodes SPELCH_HOLD_CODES = { N_ ("holding"), holds, G_N_ELEMENTS (holds) };

SpelchPart *
spelch_part_new (void)
{
  SpelchPart *part = g_new0 (SpelchPart, 1);
  g_atomic_ref_count_init (&part->ref_count);
  g_strlcpy (part->id, "part", sizeof part->id);
  part->accepted_seen = 1;
  part->accepted_hidden = 3;
  part->tolerances = (SpelchTolerances){ .depth_mm = 0.1, .up_shear_mm = 0.4 };
  part->file_version = 1;
  return part;
}

SpelchPart *
spelch_part_copy (const SpelchPart *part)
{
  SpelchPart *copy = g_new (SpelchPart, 1);
  *copy = *part;
  g_atomic_ref_count_init (&copy->ref_count);
  copy->bits = g_memdup2 (part->bits, part->n_bits * sizeof *part->bits);
  copy->cuts = g_memdup2 (part->cuts, part->n_cuts * sizeof *part->cuts);
  copy->corrections = g_memdup2 (part->corrections, part->n_corrections * sizeof *part->corrections);
  if (copy->unknown != NULL)
    g_hash_table_ref (copy->unknown);
  return copy;
}

SpelchPart *
spelch_part_ref (SpelchPart *part)
{
  g_atomic_ref_count_inc (&part->ref_count);
  return part;
}

void
spelch_part_unref (SpelchPart *part)
{
  if (!g_atomic_ref_count_dec (&part->ref_count))
    return;
  g_free (part->bits);
  g_free (part->cuts);
  g_free (part->corrections);
  g_clear_pointer (&part->unknown, g_hash_table_unref);
  g_free (part);
}

int
spelch_part_find_cut (const SpelchPart *part, const char *id)
{
  for (guint i = 0; i < part->n_cuts; i++)
    if (g_str_equal (part->cuts[i].id, id))
      return (int)i;
  return -1;
}

int
spelch_part_find_bit (const SpelchPart *part, const char *id)
{
  for (guint i = 0; i < part->n_bits; i++)
    if (g_str_equal (part->bits[i].id, id))
      return (int)i;
  return -1;
}

bool
spelch_part_outline_follows (const SpelchPart *part, const SpelchCut *cut)
{
  for (guint i = 0; cut->kind != SPELCH_CUT_OUTLINE && i < part->n_cuts; i++)
    if (part->cuts[i].kind == SPELCH_CUT_OUTLINE)
      return true;
  return false;
}

void
spelch_part_put_bit (SpelchPart *part, const SpelchBit *bit)
{
  /* Copied first: @bit may lie in the array that is about to move. */
  SpelchBit added = *bit;
  int place = spelch_part_find_bit (part, added.id);
  if (place < 0)
    {
      place = (int)part->n_bits++;
      part->bits = g_renew (SpelchBit, part->bits, part->n_bits);
    }
  part->bits[place] = added;
}

void
spelch_part_add_cut (SpelchPart *part, const SpelchCut *cut)
{
  SpelchCut added = *cut;
  part->cuts = g_renew (SpelchCut, part->cuts, part->n_cuts + 1);
  part->cuts[part->n_cuts++] = added;
}

int
spelch_part_find_correction (const SpelchPart *part, const char *board, const char *bit)
{
  for (guint i = 0; i < part->n_corrections; i++)
    if (g_str_equal (part->corrections[i].board, board) && g_str_equal (part->corrections[i].bit, bit))
      return (int)i;
  return -1;
}

const SpelchCorrection *
spelch_part_correction (const SpelchPart *part, const SpelchBit *bit)
{
  int i = spelch_part_find_correction (part, part->board.id, bit->id);
  return i >= 0 && spelch_correction_holds (&part->corrections[i], bit) ? &part->corrections[i] : NULL;
}

const SpelchCalibration *
spelch_part_calibration (const SpelchPart *part)
{
  const SpelchCalibration *calibration = &part->calibration;
  bool counts = *calibration->board != '\0' && !calibration->off;
  return counts && g_str_equal (calibration->board, part->board.id) ? calibration : NULL;
}

void
spelch_part_put_correction (SpelchPart *part, const SpelchCorrection *correction)
{
  SpelchCorrection added = *correction;
  int place = spelch_part_find_correction (part, added.board, added.bit);
  if (place < 0)
    {
      place = (int)part->n_corrections++;
      part->corrections = g_renew (SpelchCorrection, part->corrections, part->n_corrections);
    }
  part->corrections[place] = added;
}

void
spelch_part_drop_correction (SpelchPart *part, guint i)
{
  part->n_corrections--;
  memmove (&part->corrections[i], &part->corrections[i + 1],
           (part->n_corrections - i) * sizeof *part->corrections);
}

/* The sentence of a value inside the part, with where it stands in front. Takes @fault. */
static char *
in (const char *where, char *fault)
{
  g_autofree char *sentence = fault;
  return sentence == NULL ? NULL : g_strdup_printf (_ ("%s: %s"), where, sentence);
}

static char *
in_list (const char *list, guint i, const char *id, char *fault)
{
  g_autofree char *where = g_strdup_printf ("%s[%u] '%.*s'", list, i, SPELCH_ID_SIZE - 1, id);
  return in (where, fault);
}

static char *
fault_of_words (const SpelchPart *part)
{
  return spelch_fault_id ("id", part->id, false)
             ?: spelch_fault_text ("name", part->name, sizeof part->name)
             ?: spelch_fault_text ("note", part->note, sizeof part->note)
             ?: spelch_fault_code ("holding.method", &SPELCH_HOLD_CODES, (int)part->holding.method);
}

static char *
fault_of_bounds (const SpelchPart *part)
{
  /* A pump can take no more than the air's own pressure. */
  const SpelchBounds bounds[] = {
    { "length", "mm", part->length.mm, 1, 100000, true },
    { "width", "mm", part->width.mm, 1, 100000, true },
    { "accepted_seen", "", part->accepted_seen, 1, 5 },
    { "accepted_hidden", "", part->accepted_hidden, 1, 5 },
    { "tolerances.depth_mm", "mm", part->tolerances.depth_mm, 0, 5 },
    { "tolerances.up_shear_mm", "mm", part->tolerances.up_shear_mm, 0, 5 },
    { "holding.area_mm2", "mm²", part->holding.area_mm2, 1, 1e8, true },
    { "holding.vacuum_kpa", "kPa", part->holding.vacuum_kpa, 1, 101.3, true },
    { "holding.clamp_force_n", "N", part->holding.clamp_force_n, 0, 1e5 },
  };
  return spelch_fault_bounds (bounds, G_N_ELEMENTS (bounds));
}

static char *
fault_of_bits (const SpelchPart *part)
{
  for (guint i = 0; i < part->n_bits; i++)
    {
      const SpelchBit *bit = &part->bits[i];
      char *fault = spelch_bit_fault (bit);
      if (fault == NULL && spelch_part_find_bit (part, bit->id) != (int)i)
        fault = g_strdup (_ ("id stands twice in the list."));
      if (fault != NULL)
        return in_list ("bits", i, bit->id, fault);
    }
  return NULL;
}

static char *
fault_of_cut (const SpelchPart *part, guint i)
{
  const SpelchCut *cut = &part->cuts[i];
  char *fault = spelch_cut_fault (cut, &part->board);
  if (fault == NULL && spelch_part_find_cut (part, cut->id) != (int)i)
    fault = g_strdup (_ ("id stands twice in the list."));
  if (fault == NULL && *cut->bit != '\0' && spelch_part_find_bit (part, cut->bit) < 0)
    fault = g_strdup_printf (_ ("bit (“%s”) isn't among the part's bits."), cut->bit);
  if (fault == NULL && *cut->held.score_bit != '\0' && spelch_part_find_bit (part, cut->held.score_bit) < 0)
    fault = g_strdup_printf (_ ("held.score_bit (“%s”) isn't among the part's bits."), cut->held.score_bit);
  return fault;
}

static char *
fault_of_cuts (const SpelchPart *part)
{
  for (guint i = 0; i < part->n_cuts; i++)
    {
      char *fault = fault_of_cut (part, i);
      if (fault != NULL)
        return in_list ("cuts", i, part->cuts[i].id, fault);
    }
  return NULL;
}

static char *
fault_of_corrections (const SpelchPart *part)
{
  for (guint i = 0; i < part->n_corrections; i++)
    {
      const SpelchCorrection *correction = &part->corrections[i];
      char *fault = spelch_correction_fault (correction);
      if (fault == NULL && spelch_part_find_correction (part, correction->board, correction->bit) != (int)i)
        fault = g_strdup (_ ("this board and bit stand twice in the list."));
      if (fault != NULL)
        return in_list ("corrections", i, correction->bit, fault);
    }
  return in ("calibration", spelch_calibration_fault (&part->calibration));
}

char *
spelch_part_fault (const SpelchPart *part)
{
  return fault_of_words (part)
             ?: fault_of_bounds (part)
             ?: in ("board", spelch_board_fault (&part->board))
             ?: in ("machine", spelch_machine_fault (&part->machine))
             ?: fault_of_bits (part)
             ?: fault_of_cuts (part)
             ?: fault_of_corrections (part);
}
