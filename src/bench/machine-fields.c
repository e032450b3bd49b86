/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "bench/shelf-kind.h"
#include "drawing/shelf-pictures.h"
#include "plan/words.h"
#include "shop/machine.h"

#include <glib/gi18n-lib.h>

#define ROW_HEIGHT 44
#define MARGIN     6

static const char *const KINDS[]
    = { N_ ("Gantry router"), N_ ("Router table"), N_ ("Hand-held router"), NULL };
static const char *const DATUMS[] = { N_ ("The face toward the motor"), N_ ("The bed"), NULL };
static const char *const SPOILBOARDS[]
    = { N_ ("fresh here, so that it backs the board"), N_ ("cut here before"), N_ ("not told"), NULL };
static const char *const ORDERS[] = { N_ ("By name"), N_ ("By power"), N_ ("By highest speed"), NULL };

static bool
is_gantry (gconstpointer value)
{
  return ((const SpelchMachine *)value)->kind == SPELCH_MACHINE_GANTRY;
}

static bool
has_base (gconstpointer value)
{
  return !is_gantry (value);
}

static bool
is_hand_held (gconstpointer value)
{
  return ((const SpelchMachine *)value)->kind == SPELCH_MACHINE_HAND;
}

#define AT(member) G_STRUCT_OFFSET (SpelchMachine, member)

static const SpelchField FIELDS[] = {
  { SPELCH_FIELD_TEXT, "name", N_ ("Name"), AT (name), SPELCH_NAME_SIZE },
  { SPELCH_FIELD_CHOICE, "kind", N_ ("Kind"), AT (kind), .choices = KINDS },
  { SPELCH_FIELD_HEADING, NULL, N_ ("Speed and power") },
  { SPELCH_FIELD_NUMBER, "rpm_min", N_ ("Lowest speed"), AT (rpm_min), .unit = N_ ("rpm") },
  { SPELCH_FIELD_NUMBER, "rpm_max", N_ ("Highest speed"), AT (rpm_max), .unit = N_ ("rpm") },
  { SPELCH_FIELD_NUMBERS, "steps_rpm", N_ ("Dial steps"), AT (steps_rpm), SPELCH_MAX_STEPS, AT (n_steps),
    .unit = N_ ("rpm"), .none = N_ ("any speed between"),
    .hint = N_ ("The speeds of its dial, from the lowest up: 8000 12 000 16 000.") },
  { SPELCH_FIELD_NUMBER, "power_w", N_ ("Rated power"), AT (power_w), .unit = N_ ("W") },
  { SPELCH_FIELD_FLAG, "power_is_input", N_ ("Rated by what it draws"), AT (power_is_input),
    .hint = N_ ("Router motors are marked with the power they take from the mains; spindles with what they "
                "give.") },
  { SPELCH_FIELD_NUMBER, "rated_rpm", N_ ("Full power from"), AT (rated_rpm), .unit = N_ ("rpm"),
    .none = N_ ("highest speed") },
  { SPELCH_FIELD_NUMBER, "max_feed_mm_min", N_ ("Highest feed"), AT (max_feed_mm_min), .unit = N_ ("mm/min"),
    .none = N_ ("by hand") },
  { SPELCH_FIELD_HEADING, NULL, N_ ("What it takes") },
  { SPELCH_FIELD_LENGTHS, "collets", N_ ("Collets"), AT (collets), SPELCH_MAX_STEPS, AT (n_collets),
    .none = N_ ("not told"), .hint = N_ ("One after another: 1/4 in, 8 mm.") },
  { SPELCH_FIELD_LENGTHS, "guide_bushes", N_ ("Guide bushes"), AT (bushes), SPELCH_MAX_STEPS, AT (n_bushes),
    .none = N_ ("none"), .hint = N_ ("Outside diameters, one after another."), .applies = is_hand_held },
  { SPELCH_FIELD_HEADING, NULL, N_ ("Bed, table or base") },
  { SPELCH_FIELD_CHOICE, "datum", N_ ("Depths are set from"), AT (datum), .choices = DATUMS,
    .applies = is_gantry },
  { SPELCH_FIELD_NUMBER, "overcut_allowed_mm", N_ ("Cut into spoilboard"), AT (overcut_allowed_mm),
    .unit = N_ ("mm"), .applies = is_gantry, .hint = N_ ("How deep it may be cut.") },
  { SPELCH_FIELD_CHOICE, "spoilboard", N_ ("Spoilboard"), AT (spoilboard), .choices = SPOILBOARDS,
    .applies = is_gantry },
  { SPELCH_FIELD_LENGTH, "base_thickness", N_ ("Base or insert thickness"), AT (base_thickness),
    .none = N_ ("not told"), .applies = has_base, .hint = N_ ("What the bit passes through.") },
  { SPELCH_FIELD_LENGTH, "base_radius", N_ ("Axis to edge of base"), AT (base_radius),
    .none = N_ ("not told"), .applies = is_hand_held },
  { SPELCH_FIELD_NUMBER, "flatness_mm", N_ ("Flat within"), AT (flatness_mm), .unit = N_ ("mm"),
    .hint = N_ ("How much bed or table stands off a straightedge, plus or minus.") },
  { SPELCH_FIELD_NUMBER, "stiffness_n_mm", N_ ("Stiffness"), AT (stiffness_n_mm), .unit = N_ ("N/mm"),
    .hint = N_ ("Of the whole machine at the collet; about 250 light, 1500 medium, 5000 heavy.") },
  { SPELCH_FIELD_NUMBER, "mass_kg", N_ ("Weight in the hands"), AT (mass_kg), .unit = N_ ("kg"),
    .none = N_ ("not told"), .applies = is_hand_held },
};

static double
measure (gconstpointer item, guint order)
{
  const SpelchMachine *machine = item;
  return order == 1 ? machine->power_w : machine->rpm_max;
}

static void
begin (gpointer item, SpelchShelves *shelves)
{
  SpelchMachine *machine = item;
  machine->kind = SPELCH_MACHINE_HAND;
  machine->rpm_min = 8000;
  machine->rpm_max = 22000;
  machine->power_w = 1200;
  machine->power_is_input = true;
  machine->stiffness_n_mm = 1500;
  machine->flatness_mm = 0.1;
}

static void
settle (gconstpointer before, gpointer after)
{
  SpelchMachine *machine = after;
  if (machine->kind == SPELCH_MACHINE_GANTRY)
    {
      machine->base_thickness = machine->base_radius = spelch_length_mm (0);
      if (!is_gantry (before) && machine->max_feed_mm_min == 0)
        machine->max_feed_mm_min = 5000; /* of light ones; common practice, no source */
      if (!is_gantry (before))
        machine->datum = SPELCH_DATUM_BED;
    }
  else
    machine->datum = SPELCH_DATUM_FACE;
}

static char *
line (gconstpointer item, SpelchShelves *shelves, const SpelchNumbers *numbers)
{
  const SpelchMachine *machine = item;
  g_autofree char *power = spelch_words_count (machine->power_w);
  g_autofree char *least = spelch_words_count (machine->rpm_min),
                  *most = spelch_words_count (machine->rpm_max);
  return g_strdup_printf (_ ("%s: %s W, %s to %s rpm"), _ (KINDS[machine->kind]), power, least, most);
}

static int
row_height (gconstpointer item, double scale)
{
  return ROW_HEIGHT;
}

static void
draw_row (cairo_t *cr, gconstpointer item, double width, double height, double scale,
          const SpelchPalette *palette)
{
  double wide = MIN (width, height * 2);
  cairo_save (cr);
  cairo_translate (cr, (width - wide) / 2, 0);
  spelch_picture_machine (cr, item, wide, height, palette);
  cairo_restore (cr);
}

static void
draw_large (cairo_t *cr, gconstpointer item, double width, double height, const SpelchPalette *palette)
{
  cairo_save (cr);
  cairo_translate (cr, 0, MARGIN);
  draw_row (cr, item, width, height - 2 * MARGIN, 0, palette);
  cairo_restore (cr);
}

const SpelchShelfKind SPELCH_SHELF_MACHINES = {
  .list = SPELCH_LIST_MACHINES,
  .title = N_ ("Machines"),
  .fresh_name = N_ ("New machine"),
  .take = N_ ("Use for the part"),
  .empty = N_ ("There is no machine yet. Add one, or import a list."),
  .fields = FIELDS,
  .n_fields = G_N_ELEMENTS (FIELDS),
  .retired = AT (retired),
  .orders = ORDERS,
  .measure = measure,
  .begin = begin,
  .settle = settle,
  .line = line,
  .row_height = row_height,
  .draw_row = draw_row,
  .draw_large = draw_large,
};
