/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "bench/shelf-kind.h"
#include "bench/bit-life.h"
#include "drawing/pictures.h"
#include "drawing/shelf-pictures.h"
#include "files/bit-names.h"

#include <glib/gi18n-lib.h>

#define MARGIN       6
#define ROW_SHANK_MM 12 /* of shank shown */
#define SHANK_MM     20
#define HELIX_DEG    30 /* most spiral bits of the starter set have it */

static const char *const ORDERS[]
    = { N_ ("By name"), N_ ("By diameter"), N_ ("By cutting length"), N_ ("By metres cut"), NULL };

static bool
is_compression (gconstpointer value)
{
  return ((const SpelchBit *)value)->kind == SPELCH_BIT_COMPRESSION;
}

static bool
has_helix (gconstpointer value)
{
  return ((const SpelchBit *)value)->kind != SPELCH_BIT_STRAIGHT;
}

static bool
has_uncut_centre (gconstpointer value)
{
  return !((const SpelchBit *)value)->end_cutting;
}

#define AT(member) G_STRUCT_OFFSET (SpelchBit, member)

static const SpelchField FIELDS[] = {
  { SPELCH_FIELD_TEXT, "name", N_ ("Name"), AT (name), SPELCH_NAME_SIZE },
  { SPELCH_FIELD_CHOICE, "kind", N_ ("Kind"), AT (kind), .choices = SPELCH_BIT_KIND_NAMES },
  { SPELCH_FIELD_HEADING, NULL, N_ ("Sizes") },
  { SPELCH_FIELD_LENGTH, "diameter", N_ ("Diameter"), AT (diameter) },
  { SPELCH_FIELD_LENGTH, "cutting_length", N_ ("Cutting length"), AT (cutting_length),
    .hint = N_ ("From the tip to where the edges end.") },
  { SPELCH_FIELD_LENGTH, "up_shear", N_ ("Up-shear length"), AT (up_shear), .applies = is_compression,
    .hint = N_ ("Measured on the bit, from the tip to where the flutes change hand.") },
  { SPELCH_FIELD_LENGTH, "overlap", N_ ("Overlap at the turn-over"), AT (overlap), .none = N_ ("not told"),
    .applies = is_compression, .hint = N_ ("The height about the turn-over where both hands cut.") },
  { SPELCH_FIELD_LENGTH, "shank", N_ ("Shank diameter"), AT (shank) },
  { SPELCH_FIELD_LENGTH, "overall_length", N_ ("Overall length"), AT (overall_length),
    .none = N_ ("not told"), .hint = N_ ("Without it, the length in the collet can't be checked.") },
  { SPELCH_FIELD_LENGTH, "neck", N_ ("Neck diameter"), AT (neck), .none = N_ ("no neck"),
    .hint = N_ ("Between the edges and the shank, where it is thinner or thicker than both.") },
  { SPELCH_FIELD_HEADING, NULL, N_ ("Edges and end") },
  { SPELCH_FIELD_WHOLE, "edges", N_ ("Cutting edges"), AT (edges),
    .hint = N_ ("How many there are at one height.") },
  { SPELCH_FIELD_WHOLE, "edges_up", N_ ("Edges near the tip"), AT (edges_up), .none = N_ ("as above"),
    .applies = is_compression, .hint = N_ ("In the up-shear part of a compression bit.") },
  { SPELCH_FIELD_NUMBER, "helix_deg", N_ ("Helix"), AT (helix_deg), .unit = N_ ("°"), .applies = has_helix,
    .hint = N_ ("Between the edge and the axis of the bit.") },
  { SPELCH_FIELD_NUMBER, "rake_deg", N_ ("Rake"), AT (rake_deg), .unit = N_ ("°"), .none = N_ ("not told") },
  { SPELCH_FIELD_CHOICE, "hand", N_ ("Turns"), AT (hand), .choices = SPELCH_HAND_NAMES },
  { SPELCH_FIELD_FLAG, "end_cutting", N_ ("Cuts at its end"), AT (end_cutting),
    .hint = N_ ("An edge reaches the centre of the end, so that it may plunge.") },
  { SPELCH_FIELD_LENGTH, "uncut_centre", N_ ("Uncut centre"), AT (uncut_centre), .none = N_ ("not told"),
    .applies = has_uncut_centre, .hint = N_ ("How wide the middle of the end is that no edge reaches.") },
  { SPELCH_FIELD_LENGTH, "end_hollow", N_ ("Height of the hollow"), AT (end_hollow), .none = N_ ("not told"),
    .applies = has_uncut_centre },
  { SPELCH_FIELD_HEADING, NULL, N_ ("Make") },
  { SPELCH_FIELD_CHOICE, "edge_material", N_ ("Edges of"), AT (edge_material),
    .choices = SPELCH_EDGE_MATERIAL_NAMES },
  { SPELCH_FIELD_CHOICE, "body_material", N_ ("Body of"), AT (body_material),
    .choices = SPELCH_BODY_MATERIAL_NAMES },
  { SPELCH_FIELD_FLAG, "coated", N_ ("Coated"), AT (coated) },
  { SPELCH_FIELD_CHOICE, "bearing", N_ ("Bearing"), AT (bearing), .choices = SPELCH_BEARING_NAMES },
  { SPELCH_FIELD_NUMBER, "max_rpm", N_ ("Highest speed marked"), AT (max_rpm), .unit = N_ ("rpm"),
    .none = N_ ("not marked"), .hint = N_ ("As marked on the tool. Never go above it.") },
  { SPELCH_FIELD_FLAG, "hand_feed", N_ ("Marked for feeding by hand"), AT (hand_feed) },
  { SPELCH_FIELD_NUMBER, "price", N_ ("Price"), AT (price), .none = N_ ("not told") },
  { SPELCH_FIELD_HEADING, NULL, N_ ("Edge today") },
  { SPELCH_FIELD_CHOICE, "wear", N_ ("State"), AT (wear), .choices = SPELCH_WEAR_NAMES },
  { SPELCH_FIELD_NUMBER, "metres_cut", N_ ("Metres cut"), AT (metres_cut), .unit = N_ ("m"),
    .none = N_ ("none"), .hint = N_ ("Since it was new or sharpened.") },
  { SPELCH_FIELD_TEXT, "sharpened", N_ ("Sharpened on"), AT (sharpened), SPELCH_DATE_SIZE, .is_past = true,
    .none = N_ ("not told"), .hint = N_ ("A day: 2026-05-31.") },
  { SPELCH_FIELD_LENGTH, "sharpened_diameter", N_ ("Diameter after that"), AT (sharpened_diameter),
    .none = N_ ("as marked") },
  { SPELCH_FIELD_LENGTH, "sharpened_up_shear", N_ ("Up-shear length after that"), AT (sharpened_up_shear),
    .none = N_ ("as marked"), .applies = is_compression },
};

static double
measure (gconstpointer item, guint order)
{
  const SpelchBit *bit = item;
  return order == 1 ? bit->diameter.mm : order == 2 ? bit->cutting_length.mm : bit->metres_cut;
}

static void
begin (gpointer item, SpelchShelves *shelves)
{
  SpelchBit *bit = item;
  bit->kind = SPELCH_BIT_UP_CUT;
  bit->diameter = bit->shank = spelch_length_mm (6);
  bit->cutting_length = spelch_length_mm (20);
  bit->edges = 2;
  bit->helix_deg = HELIX_DEG;
  bit->end_cutting = true;
  bit->wear = SPELCH_WEAR_NEW;
}

/* A compression bit that has just become one: an up-shear part as high as the bit is wide, to be measured.
 * Common practice, no source. */
static void
settle (gconstpointer before, gpointer after)
{
  SpelchBit *bit = after;
  if (bit->kind != SPELCH_BIT_COMPRESSION)
    {
      bit->up_shear = bit->overlap = bit->sharpened_up_shear = spelch_length_mm (0);
      bit->edges_up = 0;
    }
  else if (((const SpelchBit *)before)->kind != SPELCH_BIT_COMPRESSION && bit->up_shear.mm == 0)
    bit->up_shear = spelch_length_mm (MIN (bit->diameter.mm, bit->cutting_length.mm / 2));
  if (bit->kind == SPELCH_BIT_STRAIGHT)
    bit->helix_deg = 0;
  else if (((const SpelchBit *)before)->kind == SPELCH_BIT_STRAIGHT && bit->helix_deg == 0)
    bit->helix_deg = HELIX_DEG;
  if (bit->end_cutting)
    bit->uncut_centre = bit->end_hollow = spelch_length_mm (0);
}

static char *
show (const SpelchLength *length, const SpelchNumbers *numbers)
{
  return spelch_length_show_whole (length, numbers->unit, numbers->inch_style, numbers->decimal_sign);
}

static char *
line (gconstpointer item, SpelchShelves *shelves, const SpelchNumbers *numbers)
{
  const SpelchBit *bit = item;
  g_autofree char *diameter = show (&bit->diameter, numbers);
  g_autofree char *length = show (&bit->cutting_length, numbers);
  g_autofree char *shank = show (&bit->shank, numbers);
  g_autofree char *up = show (&bit->up_shear, numbers);
  if (bit->kind == SPELCH_BIT_COMPRESSION)
    return g_strdup_printf (_ ("%s: %s wide, cuts %s deep, up-shear %s, shank %s"),
                            _ (SPELCH_BIT_KIND_NAMES[bit->kind]), diameter, length, up, shank);
  return g_strdup_printf (_ ("%s: %s wide, cuts %s deep, shank %s"), _ (SPELCH_BIT_KIND_NAMES[bit->kind]),
                          diameter, length, shank);
}

static double
span_mm (gconstpointer item)
{
  return ((const SpelchBit *)item)->cutting_length.mm + ROW_SHANK_MM;
}

static double
widest (const SpelchBit *bit)
{
  return MAX (bit->diameter.mm, MAX (bit->shank.mm, bit->neck.mm));
}

static int
row_height (gconstpointer item, double scale)
{
  return (int)(widest (item) * scale) + MARGIN;
}

static void
draw_row (cairo_t *cr, gconstpointer item, double width, double height, double scale,
          const SpelchPalette *palette)
{
  spelch_picture_bit_lying (cr, item, 2, height / 2, scale, ROW_SHANK_MM, palette);
}

static void
draw_large (cairo_t *cr, gconstpointer item, double width, double height, const SpelchPalette *palette)
{
  const SpelchBit *bit = item;
  double scale = (height - 2 * MARGIN) / (bit->cutting_length.mm + SHANK_MM);
  scale = MIN (scale, (width - 2 * MARGIN) / widest (bit));
  spelch_picture_bit (cr, bit, width / 2, height - MARGIN, scale, SHANK_MM, false, 0, palette);
}

static GtkWidget *
more_new (SpelchShelves *shelves)
{
  return GTK_WIDGET (spelch_bit_life_new (shelves));
}

static void
more_show (GtkWidget *more, gconstpointer item, const SpelchNumbers *numbers)
{
  spelch_bit_life_show (SPELCH_BIT_LIFE (more), item, numbers);
}

const SpelchShelfKind SPELCH_SHELF_BITS = {
  .list = SPELCH_LIST_BITS,
  .title = N_ ("Bit drawer"),
  .fresh_name = N_ ("New bit"),
  .take = N_ ("Use for the cut"),
  .empty = N_ ("The drawer is empty. Add a bit, or import a list."),
  .fields = FIELDS,
  .n_fields = G_N_ELEMENTS (FIELDS),
  .retired = AT (retired),
  .orders = ORDERS,
  .measure = measure,
  .begin = begin,
  .settle = settle,
  .line = line,
  .span_mm = span_mm,
  .row_height = row_height,
  .draw_row = draw_row,
  .draw_large = draw_large,
  .more_new = more_new,
  .more_show = more_show,
};
