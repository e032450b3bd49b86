/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "bench/part-edits.h"

#include <glib/gi18n-lib.h>
#include <math.h>
#include <string.h>

#define START_WIDTH       12.0 /* mm, of pockets, mortises and steps */
#define START_HOLE        8.0
#define START_SLOT        10.0
#define START_TRIM        1.0
#define START_LENGTH      300.0 /* along a cut in a piece of untold size */
#define START_SHARE       0.5   /* of the board's thickness, of a blind cut */
#define START_TAB_WIDTH   8.0
#define START_TAB_THICK   3.0
#define START_MORTISE_END 60.0

SpelchPart *
spelch_part_from_nothing (const char *name, const SpelchBoard *board, const SpelchMachine *machine)
{
  SpelchPart *part = spelch_part_new ();
  g_strlcpy (part->name, name, sizeof part->name);
  part->board = *board;
  part->machine = *machine;
  return part;
}

/* ---- Names ---- */

const char *const SPELCH_CUT_KIND_NAMES[] = {
  [SPELCH_CUT_OUTLINE] = N_ ("Outline"),
  [SPELCH_CUT_DADO] = N_ ("Dado or groove"),
  [SPELCH_CUT_RABBET] = N_ ("Rabbet"),
  [SPELCH_CUT_POCKET] = N_ ("Pocket"),
  [SPELCH_CUT_MORTISE] = N_ ("Mortise"),
  [SPELCH_CUT_SLOT] = N_ ("Slot"),
  [SPELCH_CUT_TRIM] = N_ ("Edge trim"),
  [SPELCH_CUT_HOLE] = N_ ("Hole"),
  NULL,
};
SPELCH_TABLE_HAS (SPELCH_CUT_KIND_NAMES, SPELCH_N_CUT_KINDS + 1);

const char *
spelch_cut_kind_name (SpelchCutKind kind)
{
  return (guint)kind < SPELCH_CUT_KIND_CODES.n ? _ (SPELCH_CUT_KIND_NAMES[kind]) : "";
}

static bool
has_name (const SpelchPart *part, const char *name)
{
  for (guint i = 0; i < part->n_cuts; i++)
    if (g_str_equal (part->cuts[i].name, name))
      return true;
  return false;
}

/* Copies as many whole letters of @words as leave room for a number behind them. */
static void
copy_start (char *into, gsize size, const char *words)
{
  gsize room = size - sizeof " 4294967295";
  const char *end = words + strlen (words);
  while ((gsize)(end - words) > room)
    end = g_utf8_find_prev_char (words, end);
  memcpy (into, words, (gsize)(end - words));
  into[end - words] = '\0';
}

/* Gives @cut the id @stem and the name @name, with a number behind each where that is taken. */
static void
name_cut (const SpelchPart *part, SpelchCut *cut, const char *stem, const char *name)
{
  char id[SPELCH_ID_SIZE], start[SPELCH_NAME_SIZE];
  copy_start (id, sizeof id, stem);
  copy_start (start, sizeof start, name);
  g_strlcpy (cut->id, id, sizeof cut->id);
  g_strlcpy (cut->name, start, sizeof cut->name);
  for (guint n = 2; spelch_part_find_cut (part, cut->id) >= 0; n++)
    {
      g_autofree char *numbered = g_strdup_printf ("%s-%u", id, n);
      g_strlcpy (cut->id, numbered, sizeof cut->id);
    }
  for (guint n = 2; has_name (part, cut->name); n++)
    {
      g_autofree char *numbered = g_strdup_printf ("%s %u", start, n);
      g_strlcpy (cut->name, numbered, sizeof cut->name);
    }
}

/* "shelf-dado-2" without its number: copies of a copy don't pile up numbers. Free with g_free(). */
static char *
without_number (const char *words, char before)
{
  char *stem = g_strdup (words);
  gsize length = strlen (stem), at = length;
  while (at > 0 && g_ascii_isdigit (stem[at - 1]))
    at--;
  if (at > 1 && at < length && stem[at - 1] == before)
    stem[at - 1] = '\0';
  return stem;
}

/* ---- A cut to begin with ---- */

static double
start_width (const SpelchPart *part, SpelchCutKind kind)
{
  switch (kind)
    {
    case SPELCH_CUT_OUTLINE:
      return 0;
    case SPELCH_CUT_HOLE:
      return START_HOLE;
    case SPELCH_CUT_SLOT:
      return START_SLOT;
    case SPELCH_CUT_TRIM:
      return START_TRIM;
    case SPELCH_CUT_DADO:
      return fmax (part->board.nominal.mm, 1); /* a shelf of the same board goes in */
    case SPELCH_CUT_POCKET:
      return 4 * START_WIDTH;
    case SPELCH_CUT_RABBET:
    case SPELCH_CUT_MORTISE:
    default:
      return START_WIDTH;
    }
}

static double
start_length (const SpelchPart *part, const SpelchCut *cut)
{
  double length = part->length.mm > 0 ? part->length.mm : START_LENGTH;
  double width = part->width.mm > 0 ? part->width.mm : START_LENGTH;
  switch (cut->kind)
    {
    case SPELCH_CUT_OUTLINE:
      return 2 * (length + width);
    case SPELCH_CUT_DADO:
      return width;
    case SPELCH_CUT_RABBET:
    case SPELCH_CUT_TRIM:
      return length;
    case SPELCH_CUT_HOLE:
      return 0; /* follows from the diameter */
    case SPELCH_CUT_MORTISE:
      return START_MORTISE_END;
    case SPELCH_CUT_POCKET:
      return 2 * (spelch_cut_width (cut) + START_MORTISE_END); /* once round */
    case SPELCH_CUT_SLOT:
    default:
      return 2 * START_MORTISE_END;
    }
}

static bool
runs_from_edge_to_edge (SpelchCutKind kind)
{
  return kind == SPELCH_CUT_DADO || kind == SPELCH_CUT_RABBET || kind == SPELCH_CUT_TRIM;
}

/* Only what is missing for the kind, or contradicts it, is changed. */
static void
suit_kind (const SpelchPart *part, SpelchCut *cut)
{
  double thickness = spelch_board_thickness (&part->board);
  cut->through = cut->through || spelch_cut_shape (cut->kind).through;
  if (cut->depth.mm <= 0 && !cut->through)
    cut->depth = spelch_length_mm (fmax (round (thickness * START_SHARE * 2) / 2, thickness / 4));
  if (!spelch_cut_has_two_walls (cut))
    {
      cut->mating = (SpelchMating){ 0 };
      cut->from_edge = spelch_length_mm (0);
    }
  if (!cut->through)
    cut->tabs.count = 0;
  if (!cut->mating.told && cut->width.mm <= 0)
    cut->width = spelch_length_mm (start_width (part, cut->kind));
  if (cut->kind == SPELCH_CUT_OUTLINE)
    cut->width = spelch_length_mm (0);
  if (cut->length.mm <= 0
      || (cut->kind == SPELCH_CUT_POCKET && cut->length.mm < spelch_cut_pocket_round (cut)))
    cut->length = spelch_length_mm (start_length (part, cut));
}

SpelchCut
spelch_cut_start (const SpelchPart *part, SpelchCutKind kind)
{
  SpelchCut cut = { .kind = kind, .quantity = 1, .kept = SPELCH_WALL_BOTH, .seen_a = true };
  double thickness = spelch_board_thickness (&part->board);
  bool one_wall = kind == SPELCH_CUT_OUTLINE || spelch_cut_shape (kind).one_wall;
  cut.kept = one_wall ? SPELCH_WALL_LEFT : SPELCH_WALL_BOTH;
  cut.start = cut.end = runs_from_edge_to_edge (kind) ? SPELCH_END_EDGE : SPELCH_END_INSIDE;
  cut.path_deg = kind == SPELCH_CUT_DADO ? 90 : 0;
  cut.tabs.width = spelch_length_mm (START_TAB_WIDTH);
  cut.tabs.thickness = spelch_length_mm (fmin (START_TAB_THICK, thickness / 2));
  suit_kind (part, &cut);
  name_cut (part, &cut, spelch_code_of (&SPELCH_CUT_KIND_CODES, (int)kind), spelch_cut_kind_name (kind));
  return cut;
}

static void
round_to_inches (SpelchLength *length, double most)
{
  double step = SPELCH_MM_PER_INCH / 16;
  double steps = fmax (round (length->mm / step), 1);
  if (length->mm > 0 && steps * step <= most)
    *length = spelch_length_mm (steps * step);
}

void
spelch_cut_round_to_inches (const SpelchPart *part, SpelchCut *cut)
{
  double thickness = spelch_board_thickness (&part->board);
  bool length_given = part->length.mm > 0 || part->width.mm > 0;
  round_to_inches (&cut->depth, thickness);
  round_to_inches (&cut->tabs.width, G_MAXDOUBLE);
  round_to_inches (&cut->tabs.thickness, thickness);
  if (cut->kind != SPELCH_CUT_DADO)
    round_to_inches (&cut->width, G_MAXDOUBLE);
  if (!length_given || cut->kind == SPELCH_CUT_MORTISE || cut->kind == SPELCH_CUT_SLOT
      || cut->kind == SPELCH_CUT_POCKET)
    round_to_inches (&cut->length, G_MAXDOUBLE);
}

SpelchCut
spelch_cut_of_kind (const SpelchPart *part, const SpelchCut *cut, SpelchCutKind kind)
{
  SpelchCut other = *cut;
  other.kind = kind;
  suit_kind (part, &other);
  return other;
}

/* ---- The list of cuts ---- */

SpelchPart *
spelch_edit_add_cut (const SpelchPart *part, const SpelchCut *cut, guint index)
{
  SpelchPart *next = spelch_part_copy (part);
  spelch_part_add_cut (next, cut);
  guint last = next->n_cuts - 1;
  if (index >= last)
    return next;
  memmove (&next->cuts[index + 1], &next->cuts[index], (last - index) * sizeof *next->cuts);
  next->cuts[index] = *cut;
  return next;
}

SpelchPart *
spelch_edit_duplicate_cut (const SpelchPart *part, guint index)
{
  SpelchCut copy = part->cuts[index];
  g_autofree char *stem = without_number (copy.id, '-');
  g_autofree char *name = without_number (copy.name, ' ');
  name_cut (part, &copy, stem, name);
  return spelch_edit_add_cut (part, &copy, index + 1);
}

SpelchPart *
spelch_edit_delete_cut (const SpelchPart *part, guint index)
{
  SpelchPart *next = spelch_part_copy (part);
  next->n_cuts--;
  memmove (&next->cuts[index], &next->cuts[index + 1], (next->n_cuts - index) * sizeof *next->cuts);
  return next;
}

SpelchPart *
spelch_edit_move_cut (const SpelchPart *part, guint from, guint to)
{
  SpelchPart *next = spelch_part_copy (part);
  SpelchCut moved = part->cuts[from];
  guint at = MIN (to, part->n_cuts - 1);
  if (at > from)
    memmove (&next->cuts[from], &next->cuts[from + 1], (at - from) * sizeof *next->cuts);
  else
    memmove (&next->cuts[at + 1], &next->cuts[at], (from - at) * sizeof *next->cuts);
  next->cuts[at] = moved;
  return next;
}

SpelchPart *
spelch_edit_cut (const SpelchPart *part, guint index, const SpelchCut *cut)
{
  SpelchPart *next = spelch_part_copy (part);
  next->cuts[index] = *cut;
  return next;
}

SpelchPart *
spelch_edit_seen (const SpelchPart *part, guint index, SpelchFace face)
{
  SpelchPart *next = spelch_part_copy (part);
  bool *seen = face == SPELCH_FACE_A ? &next->cuts[index].seen_a : &next->cuts[index].seen_b;
  *seen = !*seen;
  return next;
}
