/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "bench/shelf-kind.h"
#include "bench/layer-list.h"
#include "drawing/shelf-pictures.h"
#include "files/species-names.h"
#include "shop/make-up.h"

#include <glib/gi18n-lib.h>
#include <string.h>

#define MARGIN     6
#define ROW_HEIGHT 60 /* of the thickest board of the list */

static const char *const ORDERS[] = { N_ ("By name"), N_ ("By thickness"), N_ ("By number of layers"), NULL };

/* Told once, it stays in sight. */
static bool
has_species (gconstpointer value)
{
  const SpelchBoard *board = value;
  for (guint i = 0; i < board->n_layers; i++)
    if (board->layers[i].material <= SPELCH_MATERIAL_HARDWOOD && !board->layers[i].veneer)
      return true;
  return board->species[0] != '\0';
}

/* What isn't in the table is kept as it was typed. */
static void
keep_species (const char *typed, char *into, gsize size)
{
  const SpelchSpecies *species = spelch_species_find (typed);
  memset (into, 0, size); /* values are compared byte for byte */
  g_strlcpy (into, species == NULL ? typed : species->id, size);
}

static bool
is_of_softwood (const SpelchBoard *board)
{
  for (guint i = 0; i < board->n_layers; i++)
    if (board->layers[i].material <= SPELCH_MATERIAL_HARDWOOD && !board->layers[i].veneer)
      return board->layers[i].material == SPELCH_MATERIAL_SOFTWOOD;
  return false;
}

static char *
tell_species (gconstpointer value)
{
  const SpelchBoard *board = value;
  if (board->species[0] == '\0' || spelch_species_with_id (board->species) != NULL)
    return NULL;
  if (board->density_kg_m3 > 0)
    return g_strdup (_ ("This wood isn't in the table of species: how strong it is isn't known, and is taken "
                        "by its density."));
  return g_strdup (
      is_of_softwood (board)
          ? _ ("This wood isn't in the table of species: how heavy and how strong it is isn't known, "
               "and is taken as softwood has it as a rule.")
          : _ ("This wood isn't in the table of species: how heavy and how strong it is isn't known, "
               "and is taken as hardwood has it as a rule."));
}

#define AT(member) G_STRUCT_OFFSET (SpelchBoard, member)

static const SpelchField FIELDS[] = {
  { SPELCH_FIELD_TEXT, "name", N_ ("Name"), AT (name), SPELCH_NAME_SIZE },
  { SPELCH_FIELD_HEADING, NULL, N_ ("Thickness") },
  { SPELCH_FIELD_LENGTH, "nominal", N_ ("Sold as"), AT (nominal),
    .hint = N_ ("The nominal thickness. The layers between the faces are fitted to it.") },
  { SPELCH_FIELD_NUMBER, "tolerance_plus_mm", N_ ("May be thicker by"), AT (tolerance_plus_mm),
    .unit = N_ ("mm") },
  { SPELCH_FIELD_NUMBER, "tolerance_minus_mm", N_ ("May be thinner by"), AT (tolerance_minus_mm),
    .unit = N_ ("mm") },
  { SPELCH_FIELD_LENGTH, "measured", N_ ("Measured"), AT (measured), .none = N_ ("not measured"),
    .hint = N_ ("With a caliper, at the board you will cut.") },
  { SPELCH_FIELD_NUMBER, "measured_within_mm", N_ ("Measured within"), AT (measured_within_mm),
    .unit = N_ ("mm"), .none = N_ ("0.1"), .hint = N_ ("How far it may differ elsewhere on the board.") },
  { SPELCH_FIELD_HEADING, NULL, N_ ("Wood") },
  { SPELCH_FIELD_TEXT, "species", N_ ("Species"), AT (species), SPELCH_ID_SIZE, .none = N_ ("not told"),
    .applies = has_species, .name = spelch_species_name, .keep = keep_species, .tell = tell_species,
    .hint = N_ ("For solid wood, as in the table of species: white oak. Plywood has it by its make-up.") },
  { SPELCH_FIELD_NUMBER, "density_kg_m3", N_ ("Density"), AT (density_kg_m3), .unit = N_ ("kg/m³"),
    .none = N_ ("usual") },
};

static double
measure (gconstpointer item, guint order)
{
  const SpelchBoard *board = item;
  return order == 1 ? spelch_board_thickness (board) : board->n_layers;
}

static void
begin (gpointer item, SpelchShelves *shelves)
{
  SpelchBoard *board = item;
  board->nominal = spelch_length_mm (18);
  spelch_make_up_apply (SPELCH_MAKE_UP_BIRCH_PLY, board);
}

static void
settle (gconstpointer before, gpointer after)
{
  SpelchBoard *board = after;
  if (((const SpelchBoard *)before)->nominal.mm != board->nominal.mm && board->nominal.mm > 0)
    spelch_make_up_follow (board, ((const SpelchBoard *)before)->nominal.mm);
}

static char *
line (gconstpointer item, SpelchShelves *shelves, const SpelchNumbers *numbers)
{
  const SpelchBoard *board = item;
  bool is_measured = board->measured.mm > 0;
  g_autofree char *thickness
      = spelch_length_show_whole (is_measured ? &board->measured : &board->nominal, numbers->unit,
                                  numbers->inch_style, numbers->decimal_sign);
  const char *format = is_measured
                           ? g_dngettext (GETTEXT_PACKAGE, "%s as measured, %u layer",
                                          "%s as measured, %u layers", board->n_layers)
                           : g_dngettext (GETTEXT_PACKAGE, "%s, %u layer", "%s, %u layers", board->n_layers);
  return g_strdup_printf (format, thickness, board->n_layers);
}

static double
span_mm (gconstpointer item)
{
  const SpelchBoard *board = item;
  return board->nominal.mm * SPELCH_SHELF_PICTURE_WIDTH / ROW_HEIGHT;
}

static int
row_height (gconstpointer item, double scale)
{
  return (int)(((const SpelchBoard *)item)->nominal.mm * scale) + MARGIN;
}

static void
draw_row (cairo_t *cr, gconstpointer item, double width, double height, double scale,
          const SpelchPalette *palette)
{
  spelch_picture_board (cr, item, 2, MARGIN / 2, width - 4, scale, palette);
}

static void
draw_large (cairo_t *cr, gconstpointer item, double width, double height, const SpelchPalette *palette)
{
  const SpelchBoard *board = item;
  double scale = (height - 2 * MARGIN) / MAX (board->nominal.mm, 12);
  double wide = MIN (width - 2 * MARGIN, 2.2 * height);
  spelch_picture_board (cr, board, (width - wide) / 2, (height - board->nominal.mm * scale) / 2, wide, scale,
                        palette);
}

static GtkWidget *
more_new (SpelchShelves *shelves)
{
  return GTK_WIDGET (spelch_layer_list_new ());
}

static void
more_show (GtkWidget *more, gconstpointer item, const SpelchNumbers *numbers)
{
  spelch_layer_list_show (SPELCH_LAYER_LIST (more), item, numbers);
}

const SpelchShelfKind SPELCH_SHELF_BOARDS = {
  .list = SPELCH_LIST_BOARDS,
  .title = N_ ("Boards"),
  .fresh_name = N_ ("New board"),
  .take = N_ ("Use for the part"),
  .empty = N_ ("There is no board yet. Add one, or import a list."),
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
