/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "bench/cut-fields.h"

#include <glib/gi18n-lib.h>
#include <string.h>

#define MM2_PER_CM2 100.0
#define AT(member)  G_STRUCT_OFFSET (SpelchPartDraft, member)

SpelchPartDraft
spelch_part_draft (const SpelchPart *part)
{
  SpelchPartDraft draft;
  memset (&draft, 0, sizeof draft); /* compared as bytes by the form */
  memcpy (draft.name, part->name, sizeof draft.name);
  memcpy (draft.note, part->note, sizeof draft.note);
  memcpy (&draft.length, &part->length, sizeof draft.length);
  memcpy (&draft.width, &part->width, sizeof draft.width);
  draft.accepted_seen = (guint)part->accepted_seen - 1;
  draft.accepted_hidden = (guint)part->accepted_hidden - 1;
  memcpy (&draft.tolerances, &part->tolerances, sizeof draft.tolerances);
  memcpy (&draft.holding, &part->holding, sizeof draft.holding);
  draft.area_cm2 = part->holding.area_mm2 / MM2_PER_CM2;
  return draft;
}

SpelchPart *
spelch_part_drafted (const SpelchPart *part, const SpelchPartDraft *draft)
{
  SpelchPart *next = spelch_part_copy (part);
  memcpy (next->name, draft->name, sizeof next->name);
  memcpy (next->note, draft->note, sizeof next->note);
  next->length = draft->length;
  next->width = draft->width;
  next->accepted_seen = (int)draft->accepted_seen + 1;
  next->accepted_hidden = (int)draft->accepted_hidden + 1;
  next->tolerances = draft->tolerances;
  next->holding = draft->holding;
  /* An area that wasn't touched stays exactly what it was. */
  if (draft->area_cm2 * MM2_PER_CM2 != part->holding.area_mm2)
    next->holding.area_mm2 = draft->area_cm2 * MM2_PER_CM2;
  return next;
}

char *
spelch_part_draft_fault (gconstpointer draft, gpointer data)
{
  SpelchPart **part = data;
  if (*part == NULL)
    return NULL;
  g_autoptr (SpelchPart) next = spelch_part_drafted (*part, draft);
  return next->name[0] == '\0' ? g_strdup (_ ("name: give the part a name.")) : spelch_part_fault (next);
}

/* ---- Fields ---- */

static const SpelchPartDraft *
of (gconstpointer draft)
{
  return draft;
}

static bool
by_vacuum (gconstpointer draft)
{
  return of (draft)->holding.method == SPELCH_HOLD_VACUUM;
}

static bool
by_clamps (gconstpointer draft)
{
  return of (draft)->holding.method == SPELCH_HOLD_CLAMPS;
}

static bool
is_held (gconstpointer draft)
{
  return of (draft)->holding.method != SPELCH_HOLD_UNTOLD;
}

static const char *const GRADES[]
    = { N_ ("1, clean"),           N_ ("2, nearly clean"), N_ ("3, fuzzy or nicked"),
        N_ ("4, torn or chipped"), N_ ("5, badly torn"),   NULL };
static const char *const HOLDS[] = {
  [SPELCH_HOLD_UNTOLD] = N_ ("not told"), [SPELCH_HOLD_VACUUM] = N_ ("vacuum"),
  [SPELCH_HOLD_CLAMPS] = N_ ("clamps"),   [SPELCH_HOLD_SCREWS] = N_ ("screws"),
  [SPELCH_HOLD_HANDS] = N_ ("hands"),     NULL,
};

/* clang-format off */
const SpelchField SPELCH_PART_FIELDS[] = {
  { SPELCH_FIELD_TEXT, "name", N_ ("Name"), AT (name), .size = SPELCH_NAME_SIZE },
  { SPELCH_FIELD_TEXT, "note", N_ ("Note"), AT (note), .size = sizeof ((SpelchPartDraft *)0)->note },
  { SPELCH_FIELD_HEADING, NULL, N_ ("The piece") },
  { SPELCH_FIELD_LENGTH, "length", N_ ("Length"), AT (length), .none = N_ ("not told") },
  { SPELCH_FIELD_LENGTH, "width", N_ ("Width"), AT (width), .none = N_ ("not told") },
  { SPELCH_FIELD_HEADING, NULL, N_ ("Worst edge accepted") },
  { SPELCH_FIELD_CHOICE, "accepted_seen", N_ ("Where it is seen"), AT (accepted_seen), .choices = GRADES },
  { SPELCH_FIELD_CHOICE, "accepted_hidden", N_ ("Where it is hidden"), AT (accepted_hidden), .choices = GRADES },
  { SPELCH_FIELD_HEADING, NULL, N_ ("How exactly it is made, plus or minus") },
  { SPELCH_FIELD_NUMBER, "tolerances.depth_mm", N_ ("Setting a depth"), AT (tolerances.depth_mm), .unit = N_ ("mm"),
    .none = N_ ("as usual") },
  { SPELCH_FIELD_NUMBER, "tolerances.up_shear_mm", N_ ("Up-shear as marked"), AT (tolerances.up_shear_mm),
    .unit = N_ ("mm"), .none = N_ ("as usual") },
  { SPELCH_FIELD_HEADING, NULL, N_ ("How it is kept down") },
  { SPELCH_FIELD_CHOICE, "holding.method", N_ ("Held by"), AT (holding.method), .choices = HOLDS },
  { SPELCH_FIELD_NUMBER, "holding.area_mm2", N_ ("Area on the bed"), AT (area_cm2), .unit = N_ ("cm²"),
    .none = N_ ("not told"), .applies = is_held },
  { SPELCH_FIELD_NUMBER, "holding.vacuum_kpa", N_ ("Vacuum"), AT (holding.vacuum_kpa), .unit = N_ ("kPa"),
    .none = N_ ("as usual"), .applies = by_vacuum },
  { SPELCH_FIELD_NUMBER, "holding.clamp_force_n", N_ ("Force of all clamps"), AT (holding.clamp_force_n),
    .unit = N_ ("N"), .none = N_ ("not told"), .applies = by_clamps },
  { SPELCH_FIELD_FLAG, "holding.on_rubber", N_ ("On a rubber mat"), AT (holding.on_rubber), .applies = is_held },
};
/* clang-format on */
const guint SPELCH_N_PART_FIELDS = G_N_ELEMENTS (SPELCH_PART_FIELDS);
