/* SPDX-License-Identifier: GPL-3.0-or-later
 *
 * The starter sets: that they are what their sources say, whole, and fit for use.
 */
#include "files/model-json.h"
#include "files/part-file.h"
#include "files/shop-data.h"
#include "files/starter-names.h"

#include <math.h>
#include <string.h>

static const SpelchBit *
bit_by_id (const char *id)
{
  guint n;
  const SpelchBit *bits = spelch_shop_bits (&n);
  for (guint i = 0; i < n; i++)
    if (g_str_equal (bits[i].id, id))
      return &bits[i];
  g_error ("no bit %s", id);
}

static const SpelchBoard *
board_by_id (const char *id)
{
  guint n;
  const SpelchBoard *boards = spelch_shop_boards (&n);
  for (guint i = 0; i < n; i++)
    if (g_str_equal (boards[i].id, id))
      return &boards[i];
  g_error ("no board %s", id);
}

static const SpelchSpecies *
wood_by_id (const char *id)
{
  guint n;
  const SpelchSpecies *species = spelch_shop_species (&n);
  for (guint i = 0; i < n; i++)
    if (g_str_equal (species[i].id, id))
      return &species[i];
  g_error ("no species %s", id);
}

/* ---- Bits ---- */

static void
test_bits_sizes (void)
{
  /* 1 in = 25.4 mm exactly (international inch, 1959). */
  static const struct
  {
    const char *typed;
    double mm;
  } sizes[] = { { "1/8 in", 25.4 / 8 }, { "3/16 in", 25.4 * 3 / 16 },
                { "1/4 in", 25.4 / 4 }, { "3/8 in", 25.4 * 3 / 8 },
                { "1/2 in", 25.4 / 2 }, { "3/4 in", 25.4 * 3 / 4 },
                { "3 mm", 3 },          { "4 mm", 4 },
                { "5 mm", 5 },          { "6 mm", 6 },
                { "8 mm", 8 },          { "10 mm", 10 },
                { "12 mm", 12 } };
  guint n;
  const SpelchBit *bits = spelch_shop_bits (&n);
  g_assert_cmpuint (n, >=, 18);
  for (guint s = 0; s < G_N_ELEMENTS (sizes); s++)
    {
      guint found = 0;
      for (guint i = 0; i < n; i++)
        if (g_str_equal (bits[i].diameter.typed, sizes[s].typed))
          {
            found++;
            g_assert_cmpfloat_with_epsilon (bits[i].diameter.mm, sizes[s].mm, 1e-9);
          }
      g_test_message ("%s: %u bits", sizes[s].typed, found);
      g_assert_cmpuint (found, >, 0);
    }
}

static void
test_bits_needed (void)
{
  /* Up-shear about the diameter at 6.35 mm, 15.9 mm at 12.7 mm, 3 to 6 mm on short tips: common practice, no
   * source. */
  g_assert_cmpfloat (bit_by_id ("compression-6.35x22")->up_shear.mm, ==, 6.35);
  g_assert_cmpfloat (bit_by_id ("compression-6.35x22")->cutting_length.mm, ==, 22);
  g_assert_cmpfloat (bit_by_id ("compression-12.7x35")->up_shear.mm, ==, 15.9);
  g_assert_cmpfloat (bit_by_id ("compression-12.7x35")->shank.mm, ==, 12.7);
  g_assert_cmpfloat (bit_by_id ("short-tip-9.5x25")->up_shear.mm, ==, 4);
  g_assert_cmpint (bit_by_id ("down-cut-6.35x25")->kind, ==, SPELCH_BIT_DOWN_CUT);
  g_assert_cmpint (bit_by_id ("down-cut-3.2x12")->kind, ==, SPELCH_BIT_DOWN_CUT);
  g_assert_cmpint (bit_by_id ("up-cut-6.35x25")->kind, ==, SPELCH_BIT_UP_CUT);
  g_assert_cmpint (bit_by_id ("up-cut-12.7x38")->kind, ==, SPELCH_BIT_UP_CUT);
  g_assert_cmpint (bit_by_id ("up-cut-3.2x12")->kind, ==, SPELCH_BIT_UP_CUT);
  g_assert_cmpint (bit_by_id ("straight-12.7x32")->kind, ==, SPELCH_BIT_STRAIGHT);
  g_assert_cmpint (bit_by_id ("straight-6.35x25")->kind, ==, SPELCH_BIT_STRAIGHT);
}

static void
test_bits_variety (void)
{
  guint n, coated = 0, one_edge = 0, two_edges = 0, marked = 0, centre_uncut = 0;
  const SpelchBit *bits = spelch_shop_bits (&n);
  for (guint i = 0; i < n; i++)
    {
      coated += bits[i].coated;
      one_edge += bits[i].edges == 1;
      two_edges += bits[i].edges == 2;
      marked += bits[i].max_rpm > 0;
      centre_uncut += bits[i].uncut_centre.mm > 0;
      g_assert_cmpfloat (bits[i].price, ==, 0);
      /* Shank for the collet beyond the flutes: 20 mm and two diameters, our rule. */
      double shank = bits[i].overall_length.mm - bits[i].cutting_length.mm;
      g_assert_cmpfloat (shank, >=, fmax (20, 2 * bits[i].shank.mm));
    }
  g_assert_true (coated > 0 && coated < n);
  g_assert_true (one_edge > 0 && two_edges > 0);
  g_assert_true (marked > 0 && marked < n);
  g_assert_cmpuint (centre_uncut, >, 0);
}

/* ---- Boards ---- */

static void
test_boards_birch (void)
{
  /* Dimension sheets of two birch-plywood mills, which agree. */
  static const struct
  {
    const char *id;
    double nominal;
    guint plies;
  } rows[] = { { "birch-ply-6.5", 6.5, 5 }, { "birch-ply-9", 9, 7 },    { "birch-ply-12", 12, 9 },
               { "birch-ply-15", 15, 11 },  { "birch-ply-18", 18, 13 }, { "birch-ply-21", 21, 15 },
               { "birch-ply-24", 24, 17 } };
  for (guint i = 0; i < G_N_ELEMENTS (rows); i++)
    {
      const SpelchBoard *board = board_by_id (rows[i].id);
      double t = rows[i].nominal;
      g_assert_cmpfloat (board->nominal.mm, ==, t);
      g_assert_cmpuint (board->n_layers, ==, rows[i].plies);
      /* Veneers of 1.4 mm, an odd number of them, make up every thickness of those sheets. */
      g_assert_cmpuint (board->n_layers, ==, (guint)(2 * round ((t / 1.4 + 1) / 2) - 1));
      /* EN 315, sanded (formula from memory; a table of one of the mills agrees). */
      g_assert_cmpfloat_with_epsilon (board->tolerance_plus_mm, 0.2 + 0.03 * t, 1e-9);
      g_assert_cmpfloat_with_epsilon (board->tolerance_minus_mm, 0.4 + 0.03 * t, 1e-9);
    }
}

/* Plywood is laid crosswise, ply on ply, and both faces run the same way: that is what makes it plywood. */
static void
test_boards_crosswise (void)
{
  guint n, plywoods = 0;
  const SpelchBoard *boards = spelch_shop_boards (&n);
  for (guint b = 0; b < n; b++)
    {
      if (boards[b].n_layers < 2 || !boards[b].layers[0].veneer)
        continue;
      plywoods++;
      g_assert_cmpuint (boards[b].n_layers % 2, ==, 1);
      for (guint i = 1; i < boards[b].n_layers; i++)
        g_assert_cmpfloat (fabs (boards[b].layers[i].grain_deg - boards[b].layers[i - 1].grain_deg), ==, 90);
    }
  g_assert_cmpuint (plywoods, >=, 9);
}

static void
test_boards_faced (void)
{
  /* EN 14322, boards to 20 mm: -0.3/+0.5 mm; films are 0.1 to 0.2 mm (memory). */
  const char *const ids[] = { "melamine-particleboard-18", "melamine-mdf-18" };
  for (guint i = 0; i < G_N_ELEMENTS (ids); i++)
    {
      const SpelchBoard *board = board_by_id (ids[i]);
      g_assert_cmpuint (board->n_layers, ==, 3);
      g_assert_cmpint (board->layers[0].material, ==, SPELCH_MATERIAL_LAMINATE);
      g_assert_cmpfloat (board->layers[0].thickness.mm, ==, 0.15);
      g_assert_cmpfloat (board->tolerance_plus_mm, ==, 0.5);
      g_assert_cmpfloat (board->tolerance_minus_mm, ==, 0.3);
    }
  g_assert_cmpfloat (board_by_id ("mdf-18")->tolerance_plus_mm, ==, 0.125); /* ANSI A208.2 */
}

static void
test_boards_solid (void)
{
  guint n;
  const SpelchBoard *boards = spelch_shop_boards (&n);
  g_assert_cmpuint (n, >=, 14);
  for (guint i = 0; i < n; i++)
    if (*boards[i].species != '\0')
      g_assert_cmpint (wood_by_id (boards[i].species)->softwood, ==,
                       boards[i].layers[0].material == SPELCH_MATERIAL_SOFTWOOD);
  g_assert_cmpint (board_by_id ("end-grain-maple-40")->layers[0].grain, ==, SPELCH_GRAIN_END);
  g_assert_cmpint (board_by_id ("figured-maple-20")->layers[0].grain, ==, SPELCH_GRAIN_FIGURED);
}

/* ---- Species ---- */

/* USDA Forest Products Laboratory, Wood Handbook, FPL-GTR-190 (2010), Table 5-3a, 12 % moisture; typed from
 * there. A dash in the table is 0. */
static void
test_species_table (void)
{
  static const SpelchSpecies rows[] = {
    { "sugar-maple", "", "Acer saccharum", false, false, 0.63, 12.6, 16.1, 10.1, 0, 6400 },
    { "white-oak", "", "Quercus alba", false, false, 0.68, 12.3, 13.8, 7.4, 5.5, 6000 },
    { "northern-red-oak", "", "Quercus rubra", false, false, 0.63, 12.5, 12.3, 7.0, 5.5, 5700 },
    { "black-cherry", "", "Prunus serotina", false, false, 0.50, 10.3, 11.7, 4.8, 3.9, 4200 },
    { "white-ash", "", "Fraxinus americana", false, false, 0.60, 12.0, 13.2, 8.0, 6.5, 5900 },
    { "yellow-poplar", "", "Liriodendron tulipifera", false, false, 0.42, 10.9, 8.2, 3.4, 3.7, 2400 },
    { "ponderosa-pine", "", "Pinus ponderosa", true, false, 0.40, 8.9, 7.8, 4.0, 2.9, 2000 },
    { "slash-pine", "", "Pinus elliottii", true, false, 0.59, 13.7, 11.6, 7.0, 0, 0 },
    { "douglas-fir-coast", "", "Pseudotsuga menziesii", true, false, 0.48, 13.4, 7.8, 5.5, 2.3, 3200 },
    { "eastern-redcedar", "", "Juniperus virginiana", true, false, 0.47, 6.1, 0, 6.3, 0, 4000 },
  };
  for (guint i = 0; i < G_N_ELEMENTS (rows); i++)
    {
      const SpelchSpecies *wood = wood_by_id (rows[i].id);
      g_test_message ("%s", rows[i].id);
      g_assert_cmpstr (wood->latin, ==, rows[i].latin);
      g_assert_cmpint (wood->softwood, ==, rows[i].softwood);
      g_assert_cmpfloat (wood->specific_gravity, ==, rows[i].specific_gravity);
      g_assert_cmpfloat (wood->modulus_gpa, ==, rows[i].modulus_gpa);
      g_assert_cmpfloat (wood->shear_mpa, ==, rows[i].shear_mpa);
      g_assert_cmpfloat (wood->compression_mpa, ==, rows[i].compression_mpa);
      g_assert_cmpfloat (wood->tension_mpa, ==, rows[i].tension_mpa);
      g_assert_cmpfloat (wood->hardness_n, ==, rows[i].hardness_n);
    }
}

/* Imported woods: specific gravity at 12 % from the green one, Wood Handbook eq. 4-11 with fibre saturation
 * at 30 %: G12 = Gb / (1 - 0.265 Gb (1 - 12/30)). The green values are those of Table 5-5a. */
static void
test_species_imported (void)
{
  static const struct
  {
    const char *id;
    double green;
  } rows[] = { { "true-mahogany", 0.45 }, { "african-mahogany", 0.42 }, { "teak", 0.55 },
               { "sapele", 0.55 },        { "okoume", 0.33 },           { "limba", 0.38 },
               { "obeche", 0.30 } };
  for (guint i = 0; i < G_N_ELEMENTS (rows); i++)
    {
      const SpelchSpecies *wood = wood_by_id (rows[i].id);
      g_assert_true (wood->imported);
      g_assert_cmpfloat_with_epsilon (wood->specific_gravity,
                                      rows[i].green / (1 - 0.265 * rows[i].green * (1 - 12.0 / 30)), 0.0006);
    }
}

/* Wood Handbook Table 5-11a, hardwoods at 12 % (memory): the table's woods lie about its curves. The mean is
 * the geometric one, as suits a power law. */
static void
test_species_curves (void)
{
  guint n, woods = 0;
  const SpelchSpecies *species = spelch_shop_species (&n);
  double modulus = 0, hardness = 0, shear = 0;
  g_assert_cmpuint (n, ==, 85);
  for (guint i = 0; i < n; i++)
    {
      const SpelchSpecies *s = &species[i];
      g_assert_true (*s->source != '\0');
      if (s->softwood || s->imported)
        continue;
      woods++;
      modulus += log (s->modulus_gpa * 1000 / (16500 * pow (s->specific_gravity, 0.7)));
      hardness += log (s->hardness_n / (15300 * pow (s->specific_gravity, 2.09)));
      shear += log (s->shear_mpa * 1000 / (21900 * pow (s->specific_gravity, 1.13)));
    }
  g_assert_cmpfloat_with_epsilon (exp (modulus / woods), 1, 0.02);
  g_assert_cmpfloat_with_epsilon (exp (hardness / woods), 1, 0.02);
  g_assert_cmpfloat_with_epsilon (exp (shear / woods), 1, 0.02);
}

/* ---- Machines ---- */

static void
test_machines (void)
{
  guint n, kinds[3] = { 0 };
  const SpelchMachine *machines = spelch_shop_machines (&n);
  g_assert_cmpuint (n, ==, 6);
  for (guint i = 0; i < n; i++)
    {
      kinds[machines[i].kind]++;
      g_assert_cmpuint (machines[i].n_collets, >, 0);
      if (machines[i].kind == SPELCH_MACHINE_GANTRY)
        g_assert_cmpint (machines[i].datum, ==, SPELCH_DATUM_BED);
      else
        g_assert_cmpuint (machines[i].n_steps, >, 0);
      g_assert_cmpint (machines[i].kind == SPELCH_MACHINE_HAND, ==, machines[i].mass_kg > 0);
    }
  g_assert_cmpuint (kinds[SPELCH_MACHINE_GANTRY], ==, 3);
  g_assert_cmpuint (kinds[SPELCH_MACHINE_TABLE], ==, 1);
  g_assert_cmpuint (kinds[SPELCH_MACHINE_HAND], ==, 2);
}

/* ---- Model ---- */

static void
test_model_sources (void)
{
  const SpelchConstants *c = spelch_shop_constants ();
  /* Pałubicki 2021, Materials 14:2208: particleboard takes 32.0 MPa; at a chip of 0.2 mm by our reading. */
  SpelchForcePair pair = c->force[SPELCH_MATERIAL_PARTICLEBOARD].slot;
  g_assert_cmpfloat_with_epsilon (pair.a / 0.2 + pair.b, 32.0, 0.05);
  /* Sedlecký and Gašparík 2017, BioResources 12(4):7413: MDF takes more than spruce is said to, and here than
   * particleboard. */
  g_assert_cmpfloat (c->force[SPELCH_MATERIAL_MDF].slot.b, >, pair.b);
  /* McKenzie and Karpovich 1968: 0.40 at 4 m/s. Kops and Vo 1990: 0.80 D. */
  g_assert_cmpfloat (c->friction, ==, 0.40);
  g_assert_cmpfloat (c->fluted_diameter, ==, 0.80);
  /* Gurău et al. 2022: 15, 30, 45 and 60° bad, 0, 75 and 90° good. */
  g_assert_cmpfloat (c->grain_bad_from, >, 0);
  g_assert_cmpfloat (c->grain_bad_from, <, 15);
  g_assert_cmpfloat (c->grain_bad_to, >, 60);
  g_assert_cmpfloat (c->grain_bad_to, <, 75);
  /* Briggs 1994 Table 7-1: sawdust 2.50, planer shavings 4.00. */
  g_assert_cmpfloat (c->bulking_board, ==, 2.50);
  g_assert_cmpfloat (c->bulking_wood, ==, 4.00);
}

static void
test_model_every_source (void)
{
#define X(member, id)                                                                                        \
  g_assert_nonnull (spelch_shop_constant_source (id));                                                       \
  g_assert_cmpuint (strlen (spelch_shop_constant_source (id)), >, strlen (" (practice)"));                   \
  g_assert_true (isfinite (spelch_shop_constants ()->member));                                               \
  g_assert_cmpfloat (spelch_shop_constants ()->member, >, 0);
  SPELCH_CONSTANTS (X)
#undef X
  g_assert_null (spelch_shop_constant_source ("no-such-constant"));
  g_assert_true (g_str_has_suffix (spelch_shop_constant_source ("heat-burns"), "(practice)"));
  g_assert_true (g_str_has_suffix (spelch_shop_constant_source ("fluted-diameter"), "(analogy)"));
}

/* Measured is what was read of the same material: nothing recalled from memory is, and wear only where the
 * source measured it, on melamine-faced board. */
static void
test_model_evidence (void)
{
  const SpelchConstants *c = spelch_shop_constants ();
#define X(member, id)                                                                                        \
  g_assert_false (strstr (spelch_shop_constant_source (id), "(memory)") != NULL                              \
                  && g_str_has_suffix (spelch_shop_constant_source (id), "(measured)"));
  SPELCH_CONSTANTS (X)
#undef X
  g_assert_true (g_str_has_suffix (spelch_shop_constant_source ("force-softwood"), "(memory)"));
  for (int term = 0; term < SPELCH_N_TERMS; term++)
    for (int stock = 0; stock < SPELCH_N_STOCKS; stock++)
      g_assert_cmpuint (strlen (c->founding[term][stock].source), >, 0);
  for (int stock = 0; stock < SPELCH_N_STOCKS; stock++)
    g_assert_cmpint (c->founding[SPELCH_TERM_WEAR][stock].evidence, ==,
                     stock == SPELCH_STOCK_LAMINATE ? SPELCH_EVIDENCE_MEASURED : SPELCH_EVIDENCE_ANALOGY);
  g_assert_cmpint (c->founding[SPELCH_TERM_SHEAR][SPELCH_STOCK_PLYWOOD].evidence, ==,
                   SPELCH_EVIDENCE_MEASURED);
  g_assert_cmpint (c->founding[SPELCH_TERM_SHEAR][SPELCH_STOCK_FIGURED].evidence, ==,
                   SPELCH_EVIDENCE_ANALOGY);
}

/* Cutting along the grain takes less than across it, and a slot meets both. */
static void
test_model_forces (void)
{
  const SpelchConstants *c = spelch_shop_constants ();
  for (int m = SPELCH_MATERIAL_SOFTWOOD; m <= SPELCH_MATERIAL_LAMINATE; m++)
    {
      const SpelchMaterialForce *f = &c->force[m];
      g_assert_cmpfloat (f->along.a, >, 0);
      g_assert_cmpfloat (f->along.a, <=, f->slot.a);
      g_assert_cmpfloat (f->slot.a, <=, f->across.a);
      g_assert_cmpfloat (f->along.b, <=, f->slot.b);
      g_assert_cmpfloat (f->slot.b, <=, f->across.b);
    }
  for (int i = 0; i < SPELCH_N_FACINGS; i++)
    {
      g_assert_cmpint (c->shear[i].press_in, ==, 0);
      g_assert_cmpint (c->shear[i].neutral, <=, c->shear[i].pull_out);
      g_assert_cmpint (c->shear[i].pull_out, >, 0);
    }
}

/* The model's text with its first @from replaced by @to must be refused in a sentence with @expected. */
static void
refuse_model (const char *from, const char *to, const char *expected)
{
  g_autofree char *path = g_test_build_filename (G_TEST_DIST, "..", "data", "model.json", NULL);
  g_autofree char *text = NULL;
  g_assert_true (g_file_get_contents (path, &text, NULL, NULL));
  g_autoptr (GString) spoilt = g_string_new (text);
  g_assert_cmpuint (g_string_replace (spoilt, from, to, 1), ==, 1);

  g_autoptr (GError) error = NULL;
  SpelchModel model;
  g_assert_false (spelch_model_read (spoilt->str, spoilt->len, "model.json", &model, &error));
  g_assert_error (error, SPELCH_FILE_ERROR, SPELCH_FILE_ERROR_MEMBER);
  g_test_message ("%s", error->message);
  g_assert_nonnull (strstr (error->message, expected));
}

static void
test_model_refused (void)
{
  refuse_model ("\"heat-burns\"", "\"heat-burnt\"", "heat-burnt");
  refuse_model ("\"heat-burns\"", "\"heat-caution\"", "heat-caution");
  refuse_model ("{\n      \"id\": \"blunting-new\",\n      \"value\": 1.0,",
                "{\n      \"id\": \"blunting-new\",", "value is missing");
  refuse_model ("\"evidence\": \"practice\"", "\"evidence\": \"hearsay\"", "hearsay");
  refuse_model ("\"material\": \"mdf\"", "\"material\": \"laminate\"", "laminate");
  refuse_model ("\"facing\": \"board\"", "\"facing\": \"ply\"", "ply");
  refuse_model ("{ \"term\": \"chip\",", "{ \"term\": \"grain\",", "grain");
  refuse_model ("\"model_version\": \"1.0\"", "\"model_version\": \"0.9\"", "0.9");
}

/* ---- Demo ---- */

static void
test_demo (void)
{
  g_autoptr (SpelchPart) demo = spelch_shop_demo ();
  guint kinds = 0;
  g_assert_true (g_str_has_prefix (demo->note, "Invented"));
  g_assert_cmpfloat (demo->board.measured.mm, ==, 18.0);
  g_assert_cmpfloat (demo->board.layers[0].thickness.mm, ==, 1.3);
  g_assert_cmpint (demo->machine.datum, ==, SPELCH_DATUM_BED);
  g_assert_cmpint (demo->holding.method, ==, SPELCH_HOLD_VACUUM);
  g_assert_cmpstr (demo->bits[0].id, ==, "compression-6.35x22");
  for (guint i = 0; i < demo->n_cuts; i++)
    {
      const SpelchCut *cut = &demo->cuts[i];
      bool some_bit_fits = false;
      kinds |= 1u << cut->kind;
      for (guint b = 0; b < demo->n_bits; b++)
        some_bit_fits |= cut->width.mm == 0 || demo->bits[b].diameter.mm <= cut->width.mm;
      g_assert_true (some_bit_fits);
    }
  g_assert_cmpint (__builtin_popcount (kinds), >=, 5);
  g_assert_cmpstr (demo->cuts[0].bit, ==, "compression-6.35x22");
  g_assert_cmpuint (demo->cuts[0].tabs.count, ==, 4);
}

/* The part's copies are the starter set's own. */
static void
test_demo_copies (void)
{
  g_autoptr (SpelchPart) demo = spelch_shop_demo ();
  g_assert_cmpuint (demo->n_bits, >=, 7);
  for (guint i = 0; i < demo->n_bits; i++)
    g_assert_cmpmem (&demo->bits[i], sizeof (SpelchBit), bit_by_id (demo->bits[i].id), sizeof (SpelchBit));
}

/* ---- Names in other languages ---- */

static void
is_named (GHashTable *left, const char *name)
{
  if (!g_hash_table_contains (left, name))
    g_error ("\"%s\" is missing in src/files/starter-names.c", name);
  g_hash_table_insert (left, (gpointer)name, GINT_TO_POINTER (TRUE));
}

/* Every name of the data is there for those who translate, and none that the data hasn't. */
static void
test_names (void)
{
  guint n, n_bits, n_boards, n_machines;
  const char *const *names = spelch_starter_names (&n);
  const SpelchBit *bits = spelch_shop_bits (&n_bits);
  const SpelchBoard *boards = spelch_shop_boards (&n_boards);
  const SpelchMachine *machines = spelch_shop_machines (&n_machines);
  g_autoptr (SpelchPart) demo = spelch_shop_demo ();
  g_autoptr (GHashTable) left = g_hash_table_new (g_str_hash, g_str_equal);
  for (guint i = 0; i < n; i++)
    g_assert_true (g_hash_table_insert (left, (gpointer)names[i], NULL));
  for (guint i = 0; i < n_bits; i++)
    is_named (left, bits[i].name);
  for (guint i = 0; i < n_boards; i++)
    is_named (left, boards[i].name);
  for (guint i = 0; i < n_machines; i++)
    is_named (left, machines[i].name);
  for (guint i = 0; i < demo->n_cuts; i++)
    is_named (left, demo->cuts[i].name);
  is_named (left, demo->name);
  is_named (left, demo->note);
  for (guint i = 0; i < n; i++)
    if (g_hash_table_lookup (left, names[i]) == NULL)
      g_error ("nothing is called \"%s\"", names[i]);
}

static bool
takes_shank (const SpelchMachine *machine, double mm)
{
  for (guint i = 0; i < machine->n_collets; i++)
    if (fabs (machine->collets[i].mm - mm) < 0.001)
      return true;
  return false;
}

/* What a shop that works in millimetres finds without asking: boards as they are sold there, a collet for
 * each usual shank where one guides by hand or along a fence, straight cutters for dadoes of a board's
 * thickness. Common practice, no source. */
static void
test_metric_shop (void)
{
  const char *const boards[] = { "melamine-particleboard-19",
                                 "mdf-16",
                                 "mdf-19",
                                 "mdf-22",
                                 "mdf-25",
                                 "birch-ply-9",
                                 "birch-ply-15",
                                 "birch-ply-21",
                                 "birch-ply-24" };
  const char *const bits[] = { "straight-16x20", "straight-18x20", "straight-20x20" };
  guint n = 0, tried = 0;
  const SpelchMachine *machines = spelch_shop_machines (&n);
  for (guint i = 0; i < G_N_ELEMENTS (boards); i++)
    g_assert_cmpfloat (board_by_id (boards[i])->nominal.mm, ==, atof (strrchr (boards[i], '-') + 1));
  for (guint i = 0; i < G_N_ELEMENTS (bits); i++)
    g_assert_cmpfloat (bit_by_id (bits[i])->shank.mm, ==, 8);
  for (guint i = 0; i < n; i++)
    if (g_str_equal (machines[i].id, "router-table") || g_str_equal (machines[i].id, "plunge-router"))
      {
        const double shanks[] = { 6, 8, 10, 12, 6.35, 9.525, 12.7 };
        for (guint k = 0; k < G_N_ELEMENTS (shanks); k++)
          g_assert_true (takes_shank (&machines[i], shanks[k]));
        tried++;
      }
  g_assert_cmpuint (tried, ==, 2);
}

int
main (int argc, char **argv)
{
  g_test_init (&argc, &argv, NULL);
  g_test_add_func ("/shop-data/bits/sizes", test_bits_sizes);
  g_test_add_func ("/shop-data/bits/needed", test_bits_needed);
  g_test_add_func ("/shop-data/bits/variety", test_bits_variety);
  g_test_add_func ("/shop-data/boards/birch", test_boards_birch);
  g_test_add_func ("/shop-data/boards/crosswise", test_boards_crosswise);
  g_test_add_func ("/shop-data/boards/faced", test_boards_faced);
  g_test_add_func ("/shop-data/boards/solid", test_boards_solid);
  g_test_add_func ("/shop-data/species/table", test_species_table);
  g_test_add_func ("/shop-data/species/imported", test_species_imported);
  g_test_add_func ("/shop-data/species/curves", test_species_curves);
  g_test_add_func ("/shop-data/machines", test_machines);
  g_test_add_func ("/shop-data/model/sources", test_model_sources);
  g_test_add_func ("/shop-data/model/every-source", test_model_every_source);
  g_test_add_func ("/shop-data/model/evidence", test_model_evidence);
  g_test_add_func ("/shop-data/model/forces", test_model_forces);
  g_test_add_func ("/shop-data/model/refused", test_model_refused);
  g_test_add_func ("/shop-data/demo", test_demo);
  g_test_add_func ("/shop-data/demo/copies", test_demo_copies);
  g_test_add_func ("/shop-data/names", test_names);
  g_test_add_func ("/shop-data/metric-shop", test_metric_shop);
  return g_test_run ();
}
