/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "bench/cut-fields.h"
#include "bench/part-edits.h"
#include "shop/fault.h"

#include <glib/gi18n-lib.h>
#include <math.h>
#include <string.h>

#define AT(member) G_STRUCT_OFFSET (SpelchCutDraft, member)

/* ---- Drafting ---- */

SpelchCutDraft
spelch_cut_draft (const SpelchCut *cut, const SpelchCutChoices *choices)
{
  SpelchCutDraft draft;
  /* Compared as bytes by the form. */
  memset (&draft, 0, sizeof draft);
  memcpy (&draft.cut, cut, sizeof draft.cut);
  draft.was = cut->kind;
  draft.width_by = cut->mating.told ? 1 : 0;
  draft.plan = cut->held.plan_held ? 1 + (guint)cut->held.plan : 0;
  draft.entry = cut->held.entry_held ? 1 + (guint)cut->held.entry : 0;
  for (guint i = 0; i < choices->n_bits; i++)
    if (g_str_equal (choices->bits[i].id, cut->held.score_bit))
      draft.scorer = 1 + i;
  return draft;
}

/* A changed answer begins with what fits: a part of the same board, or the width that the cut has. */
static void
take_width (const SpelchCutDraft *draft, const SpelchCutChoices *choices, SpelchCut *cut)
{
  bool was_told = cut->mating.told;
  double width = spelch_cut_width (cut);
  cut->mating.told = draft->width_by == 1;
  if (cut->mating.told)
    {
      cut->width = spelch_length_mm (0);
      if (!was_told && cut->mating.thickness.mm == 0 && choices->part != NULL)
        cut->mating.thickness = spelch_length_mm (spelch_board_thickness (&choices->part->board));
    }
  else
    {
      cut->mating = (SpelchMating){ 0 };
      if (was_told)
        cut->width = spelch_length_mm (width);
    }
}

static void
take_plan (const SpelchCutDraft *draft, const SpelchCutChoices *choices, SpelchHeld *held)
{
  held->plan_held = draft->plan > 0;
  held->plan = held->plan_held ? (SpelchPassPlan)(draft->plan - 1) : SPELCH_PASS_PLAN_FULL;
  if (!held->plan_held || held->plan != SPELCH_PASS_PLAN_SCORED)
    {
      held->score = spelch_length_mm (0);
      held->score_bit[0] = '\0';
    }
  else if (draft->scorer > 0 && draft->scorer <= choices->n_bits)
    g_strlcpy (held->score_bit, choices->bits[draft->scorer - 1].id, sizeof held->score_bit);
  else
    held->score_bit[0] = '\0';
  if (!held->plan_held || held->plan != SPELCH_PASS_PLAN_SKIN)
    held->skin = spelch_length_mm (0);
  if (held->plan_held && held->plan != SPELCH_PASS_PLAN_FINISHED)
    {
      held->allowance_held = false;
      held->allowance = spelch_length_mm (0);
    }
  else if (held->plan_held)
    held->allowance_held = held->allowance.mm != 0;
}

static void
take_entry (const SpelchCutDraft *draft, SpelchHeld *held)
{
  held->entry_held = draft->entry > 0;
  held->entry = held->entry_held ? (SpelchEntryKind)(draft->entry - 1) : SPELCH_ENTRY_PLUNGE;
  bool slopes = held->entry == SPELCH_ENTRY_RAMP || held->entry == SPELCH_ENTRY_HELIX;
  if (!held->entry_held || !slopes)
    held->entry_deg = 0;
  if (!held->entry_held || held->entry != SPELCH_ENTRY_LOWERED)
    held->entry_stops = false;
  if (!held->entry_held)
    held->entry_on_line = false;
}

/* Where there was a fault already the form must still let each of the others be put right. */
SpelchCut
spelch_cut_drafted (const SpelchCutDraft *draft, const SpelchCutChoices *choices)
{
  SpelchCut cut;
  memcpy (&cut, &draft->cut, sizeof cut);
  if (draft->cut.kind != draft->was && choices->part != NULL)
    cut = spelch_cut_of_kind (choices->part, &cut, cut.kind);
  if (spelch_cut_has_two_walls (&cut))
    take_width (draft, choices, &cut);
  if (!cut.through)
    cut.tabs.count = 0;
  take_plan (draft, choices, &cut.held);
  take_entry (draft, &cut.held);
  return cut;
}

SpelchPart *
spelch_cut_drafted_part (const SpelchCutDraft *draft, const SpelchCutChoices *choices)
{
  SpelchCut cut = spelch_cut_drafted (draft, choices);
  SpelchPart *part = spelch_edit_cut (choices->part, choices->index, &cut);
  if (cut.held.score_bit[0] != '\0' && spelch_part_find_bit (part, cut.held.score_bit) < 0)
    spelch_part_put_bit (part, &choices->bits[draft->scorer - 1]);
  return part;
}

/* The length of a pocket is easily taken for that of a side; a part that has it so already can still be
 * changed otherwise. */
static char *
fault_of_pocket (const SpelchCut *cut, const SpelchCut *before)
{
  bool same = cut->kind == before->kind && cut->length.mm == before->length.mm
              && cut->width.mm == before->width.mm && cut->corner_radius.mm == before->corner_radius.mm;
  if (same || spelch_cut_goes_round (cut))
    return NULL;
  g_autofree char *length = spelch_fault_number (cut->length.mm, "mm");
  g_autofree char *width = spelch_fault_number (cut->width.mm, "mm");
  g_autofree char *round = spelch_fault_number (spelch_cut_pocket_least (cut), "mm");
  return g_strdup_printf (
      _ ("length (%s) is the way once round the pocket: for one %s wide it is at least %s."), length, width,
      round);
}

char *
spelch_cut_draft_fault (gconstpointer value, gpointer data)
{
  const SpelchCutChoices *choices = data;
  if (choices->part == NULL)
    return NULL;
  SpelchCut cut = spelch_cut_drafted (value, choices);
  if (cut.name[0] == '\0')
    return g_strdup (_ ("name: give the cut a name."));
  char *fault = spelch_cut_fault (&cut, &choices->part->board);
  bool known = choices->index < choices->part->n_cuts;
  return fault == NULL && known ? fault_of_pocket (&cut, &choices->part->cuts[choices->index]) : fault;
}

/* ---- Which fields a kind needs ---- */

static const SpelchCut *
cut_of (gconstpointer draft)
{
  return &((const SpelchCutDraft *)draft)->cut;
}

static bool
may_be_blind (gconstpointer draft)
{
  return !spelch_cut_shape (cut_of (draft)->kind).through;
}

static bool
is_blind (gconstpointer draft)
{
  return may_be_blind (draft) && !cut_of (draft)->through;
}

static bool
is_through (gconstpointer draft)
{
  return !is_blind (draft);
}

static bool
has_tabs (gconstpointer draft)
{
  return is_through (draft) && cut_of (draft)->tabs.count > 0;
}

static bool
has_two_walls (gconstpointer draft)
{
  return spelch_cut_has_two_walls (cut_of (draft));
}

static bool
is_hole (gconstpointer draft)
{
  return cut_of (draft)->kind == SPELCH_CUT_HOLE;
}

static bool
is_rabbet (gconstpointer draft)
{
  return cut_of (draft)->kind == SPELCH_CUT_RABBET;
}

static bool
is_trim (gconstpointer draft)
{
  return cut_of (draft)->kind == SPELCH_CUT_TRIM;
}

static bool
width_told (gconstpointer draft)
{
  bool by_mating = has_two_walls (draft) && ((const SpelchCutDraft *)draft)->width_by == 1;
  return !by_mating && (has_two_walls (draft) || cut_of (draft)->kind == SPELCH_CUT_POCKET);
}

static bool
fits_a_part (gconstpointer draft)
{
  return has_two_walls (draft) && ((const SpelchCutDraft *)draft)->width_by == 1;
}

static bool
has_path (gconstpointer draft)
{
  return !is_hole (draft) && !spelch_cut_is_way_round (cut_of (draft));
}

static bool
is_way_round (gconstpointer draft)
{
  return spelch_cut_is_way_round (cut_of (draft));
}

static bool
has_corners (gconstpointer draft)
{
  SpelchCutKind kind = cut_of (draft)->kind;
  return kind == SPELCH_CUT_OUTLINE || spelch_cut_shape (kind).pit;
}

/* A closed path has neither ends nor a direction. */
static bool
is_open (gconstpointer draft)
{
  SpelchCutKind kind = cut_of (draft)->kind;
  return kind != SPELCH_CUT_OUTLINE && kind != SPELCH_CUT_POCKET && kind != SPELCH_CUT_HOLE;
}

static bool
has_direction (gconstpointer draft)
{
  return is_open (draft) && !cut_of (draft)->every_direction;
}

static bool
keeps_one_wall (gconstpointer draft)
{
  return !has_two_walls (draft) && cut_of (draft)->kind != SPELCH_CUT_POCKET && !is_hole (draft);
}

static bool
planned_as (gconstpointer draft, SpelchPassPlan plan)
{
  return ((const SpelchCutDraft *)draft)->plan == 1 + (guint)plan;
}

static bool
is_scored (gconstpointer draft)
{
  return planned_as (draft, SPELCH_PASS_PLAN_SCORED);
}

static bool
is_finished (gconstpointer draft)
{
  return planned_as (draft, SPELCH_PASS_PLAN_FINISHED);
}

static bool
leaves_skin (gconstpointer draft)
{
  return is_through (draft) && planned_as (draft, SPELCH_PASS_PLAN_SKIN);
}

static bool
entry_told (gconstpointer draft)
{
  return ((const SpelchCutDraft *)draft)->entry > 0;
}

static bool
entry_slopes (gconstpointer draft)
{
  guint entry = ((const SpelchCutDraft *)draft)->entry;
  return entry == 1 + SPELCH_ENTRY_RAMP || entry == 1 + SPELCH_ENTRY_HELIX;
}

static bool
entry_lowers (gconstpointer draft)
{
  return ((const SpelchCutDraft *)draft)->entry == 1 + SPELCH_ENTRY_LOWERED;
}

/* ---- The fields ---- */

static const char *const WIDTHS[] = { N_ ("a width"), N_ ("the part that goes in"), NULL };
static const char *const FACES[] = { N_ ("face a"), N_ ("face b"), NULL };
static const char *const WALLS[] = { [SPELCH_WALL_LEFT] = N_ ("left of the travel"),
                                     [SPELCH_WALL_RIGHT] = N_ ("right of the travel"),
                                     [SPELCH_WALL_BOTH] = N_ ("both walls"),
                                     NULL };
static const char *const ENDS[] = { [SPELCH_END_EDGE] = N_ ("over the board's edge"),
                                    [SPELCH_END_INSIDE] = N_ ("within the board"),
                                    [SPELCH_END_BACKED] = N_ ("against a backing piece"),
                                    NULL };
static const char *const PLANS[] = {
  N_ ("as recommended"),
  N_ ("whole depth at once"),
  N_ ("in steps"),
  N_ ("scored first"),
  N_ ("with a finishing pass"),
  N_ ("leaving an onion skin"),
  NULL,
};
static const char *const ENTRIES[] = {
  N_ ("as recommended"),
  N_ ("plunge"),
  N_ ("ramp"),
  N_ ("helix"),
  N_ ("from the edge"),
  N_ ("into a drilled hole"),
  N_ ("short plunges"),
  N_ ("lowered onto the bit"),
  NULL,
};

#define LENGTH(member_, label_, at_, ...)                                                                    \
  {                                                                                                          \
    .kind = SPELCH_FIELD_LENGTH, .member = member_, .label = label_, .offset = AT (at_), __VA_ARGS__         \
  }
#define NUMBER(member_, label_, at_, ...)                                                                    \
  {                                                                                                          \
    .kind = SPELCH_FIELD_NUMBER, .member = member_, .label = label_, .offset = AT (at_), __VA_ARGS__         \
  }
#define WHOLE(member_, label_, at_, ...)                                                                     \
  {                                                                                                          \
    .kind = SPELCH_FIELD_WHOLE, .member = member_, .label = label_, .offset = AT (at_), __VA_ARGS__          \
  }
#define CHOICE(member_, label_, at_, ...)                                                                    \
  {                                                                                                          \
    .kind = SPELCH_FIELD_CHOICE, .member = member_, .label = label_, .offset = AT (at_), __VA_ARGS__         \
  }
#define FLAG(member_, label_, at_, ...)                                                                      \
  {                                                                                                          \
    .kind = SPELCH_FIELD_FLAG, .member = member_, .label = label_, .offset = AT (at_), __VA_ARGS__           \
  }
#define HEADING(label_)                                                                                      \
  {                                                                                                          \
    .kind = SPELCH_FIELD_HEADING, .label = label_                                                            \
  }

/* clang-format off */
static const SpelchField FIELDS[] = {
  { .kind = SPELCH_FIELD_TEXT, .member = "name", .label = N_ ("Name"), .offset = AT (cut.name),
    .size = SPELCH_NAME_SIZE },
  CHOICE ("kind", N_ ("Kind of cut"), cut.kind, .choices = SPELCH_CUT_KIND_NAMES),

  HEADING (N_ ("Size")),
  FLAG ("through", N_ ("Right through"), cut.through, .applies = may_be_blind),
  LENGTH ("depth", N_ ("Depth"), cut.depth, .applies = is_blind, .hint = N_ ("From the face down to the floor of the cut.")),
  CHOICE ("width_by", N_ ("Width given by"), width_by, .choices = WIDTHS, .applies = has_two_walls),
  LENGTH ("width", N_ ("Width"), cut.width, .applies = width_told, .hint = N_ ("From wall to wall.")),
  LENGTH ("width", N_ ("Width of the step"), cut.width, .applies = is_rabbet),
  LENGTH ("width", N_ ("Taken off"), cut.width, .applies = is_trim),
  LENGTH ("width", N_ ("Diameter"), cut.width, .applies = is_hole),
  LENGTH ("mating.thickness", N_ ("Thickness of that part"), cut.mating.thickness, .applies = fits_a_part,
          .hint = N_ ("As measured, not as sold.")),
  LENGTH ("mating.clearance", N_ ("Clearance"), cut.mating.clearance, .applies = fits_a_part, .none = N_ ("none"),
          .hint = N_ ("How much wider the cut is to be, both sides together; 0.1 to 0.2 mm for glue is usual, below 0 is a tight fit.")),
  LENGTH ("length", N_ ("Length"), cut.length, .applies = has_path, .hint = N_ ("Along the finished line, once.")),
  LENGTH ("length", N_ ("Way round it"), cut.length, .applies = is_way_round,
          .hint = N_ ("Once along the finished line: twice the length and the width, or 3.14 times the diameter of a round one.")),
  LENGTH ("corner_radius", N_ ("Inside corners"), cut.corner_radius, .applies = has_corners, .none = N_ ("any"),
          .hint = N_ ("Radius of the smallest one. A bit wider than twice that can't cut it.")),
  LENGTH ("from_edge", N_ ("From the edge"), cut.from_edge, .applies = has_two_walls, .none = N_ ("not told"),
          .hint = N_ ("From the board's edge that runs along the cut to its near wall.")),
  WHOLE ("quantity", N_ ("How many"), cut.quantity),

  HEADING (N_ ("Faces and walls")),
  CHOICE ("way_up", N_ ("Lies in"), cut.way_up, .choices = FACES, .applies = is_blind,
          .hint = N_ ("The face toward the motor.")),
  CHOICE ("way_up", N_ ("Toward the motor"), cut.way_up, .choices = FACES, .applies = is_through),
  FLAG ("seen_a", N_ ("Edge at face a seen"), cut.seen_a, .hint = N_ ("When the piece is finished.")),
  FLAG ("seen_b", N_ ("Edge at face b seen"), cut.seen_b, .hint = N_ ("When the piece is finished.")),
  CHOICE ("kept", N_ ("Wall that stays"), cut.kept, .choices = WALLS, .applies = keeps_one_wall,
          .hint = N_ ("Seen from the motor, in the direction of travel.")),

  HEADING (N_ ("Where it runs")),
  CHOICE ("start", N_ ("Begins"), cut.start, .choices = ENDS, .applies = is_open),
  CHOICE ("end", N_ ("Ends"), cut.end, .choices = ENDS, .applies = is_open),
  FLAG ("every_direction", N_ ("In every direction"), cut.every_direction, .applies = is_open,
        .hint = N_ ("The path meets the grain at every angle.")),
  NUMBER ("path_deg", N_ ("Direction"), cut.path_deg, .unit = N_ ("°"), .applies = has_direction,
          .hint = N_ ("Of travel, against the clock seen from face a; 0 along the board's length.")),

  HEADING (N_ ("Under and beside it")),
  WHOLE ("tabs.count", N_ ("Tabs"), cut.tabs.count, .none = N_ ("none"), .applies = is_through),
  LENGTH ("tabs.width", N_ ("Width of a tab"), cut.tabs.width, .applies = has_tabs),
  LENGTH ("tabs.thickness", N_ ("Thickness of a tab"), cut.tabs.thickness, .applies = has_tabs),
  LENGTH ("backer", N_ ("Backing board"), cut.backer, .none = N_ ("none"), .applies = is_through,
          .hint = N_ ("Its thickness, under or behind the far face.")),

  HEADING (N_ ("Set by you")),
  CHOICE ("plan", N_ ("Passes"), plan, .choices = PLANS),
  LENGTH ("held.score", N_ ("Depth of scoring"), cut.held.score, .none = N_ ("through the face layer"), .applies = is_scored),
  CHOICE ("held.score_bit", N_ ("Scored with"), scorer, .applies = is_scored),
  LENGTH ("held.allowance", N_ ("Left for finishing"), cut.held.allowance, .none = N_ ("as recommended"), .applies = is_finished),
  LENGTH ("held.skin", N_ ("Skin left"), cut.held.skin, .none = N_ ("as recommended"), .applies = leaves_skin),
  CHOICE ("held.entry", N_ ("Entry"), entry, .choices = ENTRIES),
  FLAG ("held.entry_on_line", N_ ("Along the finished line"), cut.held.entry_on_line, .applies = entry_told,
        .hint = N_ ("Instead of in the waste.")),
  NUMBER ("held.entry_deg", N_ ("Slope of the entry"), cut.held.entry_deg, .unit = N_ ("°"), .none = N_ ("as usual"),
          .applies = entry_slopes),
  FLAG ("held.entry_stops", N_ ("Stop blocks set"), cut.held.entry_stops, .applies = entry_lowers,
        .hint = N_ ("At both ends of the work's way.")),
  NUMBER ("held.speed_rpm", N_ ("Spindle speed"), cut.held.speed_rpm, .unit = N_ ("rpm"), .none = N_ ("as recommended")),
  NUMBER ("held.feed_mm_min", N_ ("Feed"), cut.held.feed_mm_min, .unit = N_ ("mm/min"), .none = N_ ("as recommended")),
  LENGTH ("stick_out", N_ ("Stick-out"), cut.stick_out, .none = N_ ("as short as it goes"),
          .hint = N_ ("Of the bit, from the collet to its tip.")),
};
/* clang-format on */

SpelchField *
spelch_cut_fields (const char *const *scorers, guint *n)
{
  SpelchField *fields = g_memdup2 (FIELDS, sizeof FIELDS);
  *n = G_N_ELEMENTS (FIELDS);
  for (guint i = 0; i < *n; i++)
    if (fields[i].kind == SPELCH_FIELD_CHOICE && fields[i].choices == NULL)
      fields[i].choices = scorers;
  return fields;
}
