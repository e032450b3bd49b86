/* SPDX-License-Identifier: GPL-3.0-or-later
 *
 * The table of bits: what is written reads back the same; quoting as in RFC 4180 (the cases of its section
 * 2); what can't be read is told of by line, column and value, and nothing of such a line is taken.
 */
#include "files/bit-csv.h"
#include "files/csv-text.h"
#include "files/list-file.h"
#include "files/shop-data.h"

#include <string.h>

#define HEAD "id,name,kind,diameter,shank,cutting_length,edges,helix_deg\n"

static SpelchBitTable *
read_table (const char *text)
{
  return spelch_bits_from_csv (text, strlen (text));
}

static void
tells (const SpelchBitTable *table, guint i, const char *part)
{
  g_assert_cmpuint (i, <, table->problems->len);
  g_assert_nonnull (strstr (g_ptr_array_index (table->problems, i), part));
}

/* ---- RFC 4180, section 2 ---- */

static void
rows (const char *text, char separator, const char *expected)
{
  g_autoptr (GPtrArray) list = spelch_csv_rows (text, separator);
  g_autoptr (GString) joined = g_string_new (NULL);
  for (guint i = 0; i < list->len; i++)
    {
      const SpelchCsvRow *row = g_ptr_array_index (list, i);
      for (guint v = 0; v < row->values->len; v++)
        g_string_append_printf (joined, "%s[%s]",
                                v > 0   ? ""
                                : i > 0 ? " / "
                                        : "",
                                (char *)g_ptr_array_index (row->values, v));
    }
  g_assert_cmpstr (joined->str, ==, expected);
}

static void
test_rows (void)
{
  rows ("aaa,bbb,ccc\r\nzzz,yyy,xxx\r\n", ',', "[aaa][bbb][ccc] / [zzz][yyy][xxx]");         /* rule 1 */
  rows ("aaa,bbb,ccc\r\nzzz,yyy,xxx", ',', "[aaa][bbb][ccc] / [zzz][yyy][xxx]");             /* rule 2 */
  rows ("\"aaa\",\"bbb\",\"ccc\"\r\nzzz,yyy,xxx", ',', "[aaa][bbb][ccc] / [zzz][yyy][xxx]"); /* rule 5 */
  rows ("\"aaa\",\"b\r\nbb\",\"ccc\"\r\nzzz,yyy,xxx", ',',
        "[aaa][b\r\nbb][ccc] / [zzz][yyy][xxx]");                 /* rule 6 */
  rows ("\"aaa\",\"b\"\"bb\",\"ccc\"", ',', "[aaa][b\"bb][ccc]"); /* rule 7 */
  rows ("a;b,c\n;\n", ';', "[a][b,c]");
  rows ("", ',', "");
  g_assert_cmpint (spelch_csv_separator ("a,b\nc;d"), ==, ',');
  g_assert_cmpint (spelch_csv_separator ("a;b\nc,d"), ==, ';');
  g_assert_cmpint (spelch_csv_separator ("\"a;b\",c"), ==, ',');
}

/* ---- Written and read back ---- */

static void
round_trip (char separator)
{
  guint n = 0;
  const SpelchBit *bits = spelch_shop_bits (&n);
  g_autoptr (GArray) list = g_array_append_vals (g_array_new (FALSE, TRUE, sizeof (SpelchBit)), bits, n);
  SpelchBit *first = &g_array_index (list, SpelchBit, 0);
  g_strlcpy (first->name, "Fräser, \"der gute\"; 6,35", sizeof first->name);
  first->metres_cut = 12.25;
  first->retired = true;
  g_strlcpy (first->sharpened, "2026-05-31", sizeof first->sharpened);
  g_autofree char *text = spelch_bits_to_csv (list, separator);
  g_autoptr (SpelchBitTable) table = read_table (text);
  g_assert_cmpuint (table->problems->len, ==, 0);
  g_assert_cmpuint (table->bits->len, ==, n);
  g_autofree char *json = spelch_list_to_json (SPELCH_LIST_BITS, list, NULL);
  g_autofree char *again = spelch_list_to_json (SPELCH_LIST_BITS, table->bits, NULL);
  g_assert_cmpstr (json, ==, again);
}

static void
test_round_trip (void)
{
  round_trip (',');
  round_trip (';');
}

static void
test_semicolons (void)
{
  g_autoptr (SpelchBitTable) table
      = read_table ("\xEF\xBB\xBFname;kind;diameter;shank;cutting_length;edges;helix_deg;price\r\n"
                    "Fein;up-cut;6,35;1/4 in;\"25,5 mm\";2;30;41,5\r\n");
  g_assert_cmpuint (table->problems->len, ==, 0);
  g_assert_cmpuint (table->bits->len, ==, 1);
  const SpelchBit *bit = &g_array_index (table->bits, SpelchBit, 0);
  g_assert_cmpstr (bit->id, ==, "");
  g_assert_cmpfloat (bit->diameter.mm, ==, 6.35);
  g_assert_cmpfloat (bit->cutting_length.mm, ==, 25.5);
  g_assert_cmpfloat (bit->price, ==, 41.5);
}

/* ---- What is wrong is told, and nothing of it taken ---- */

static void
test_problems (void)
{
  g_autoptr (SpelchBitTable) table = read_table (HEAD "a,A,up-cut,6,6,20,2,30\n"
                                                      "b,B,up-cut,wide,6,20,2,30\n"
                                                      "c,C,sideways,6,6,20,2,30\n"
                                                      "d,D,up-cut,6,6,20,1.5,30\n"
                                                      "e,E,up-cut,,6,20,2,30\n"
                                                      "a,Again,up-cut,6,6,20,2,30\n"
                                                      "f,F,up-cut,600,6,20,2,30\n"
                                                      "g,G,up-cut,6,6,20,2,30,more\n"
                                                      "h,H,up-cut,6,6,20,2,30\n"
                                                      "i,\"I,up-cut,6,6,20,2,30\n");
  g_assert_cmpuint (table->n_rows, ==, 10);
  g_assert_cmpuint (table->bits->len, ==, 2);
  g_assert_cmpstr (g_array_index (table->bits, SpelchBit, 1).id, ==, "h");
  g_assert_cmpuint (table->problems->len, ==, 8);
  tells (table, 0, "Line 3, column diameter: “wide”");
  tells (table, 1, "Line 4, column kind: “sideways”");
  tells (table, 1, "Compression");
  tells (table, 2, "Line 5, column edges: “1.5”");
  tells (table, 3, "Line 6, column diameter");
  tells (table, 4, "Line 7, “Again”");
  tells (table, 5, "Line 8, “F”: diameter (600 mm)");
  tells (table, 6, "Line 9 has more values");
  tells (table, 7, "Line 11: a quote");
}

/* The table as it says itself writes decimals with a comma where semicolons stand between the values, else
 * with a point. With the other sign, or of revolutions and edges with either, three digits may be thousands.
 */
static void
test_thousands (void)
{
  const struct
  {
    char separator;
    const char *column, *value;
    double read;      /* of what is read */
    const char *says; /* NULL: it is read */
  } rows[] = {
    { ',', "max_rpm", "18.000", 0, "“18.000” can be read in two ways; write 18000, or 18." },
    { ';', "max_rpm", "18.000", 0, "“18.000” can be read in two ways; write 18000, or 18." },
    { ';', "max_rpm", "18,000", 0, "“18,000” can be read in two ways; write 18000, or 18." },
    { ',', "max_rpm", "18000", 18000, NULL },
    { ',', "edges", "2.000", 0, "“2.000” can be read in two ways; write 2000, or 2." },
    { ',', "price", "41.125", 41.125, NULL },
    { ';', "price", "41,125", 41.125, NULL },
    { ';', "price", "41.125", 0, "“41.125” can be read in two ways; write 41125, or 41,1250." },
    { ',', "diameter", "9.525", 9.525, NULL },
    { ';', "diameter", "9,525", 9.525, NULL },
    { ';', "diameter", "9.525", 0, "“9.525” can be read in two ways; write 9525, or 9,5250." },
    { ';', "diameter", "9.5", 9.5, NULL },
  };
  for (guint i = 0; i < G_N_ELEMENTS (rows); i++)
    {
      GString *text = g_string_new (NULL);
      const char *names[]
          = { "id", "kind", "diameter", "shank", "cutting_length", "edges", "helix_deg", "max_rpm", "price" };
      const char *const usual[] = { "a", "up-cut", "10", "12", "30", "2", "30", "20000", "40" };
      for (guint line = 0; line < 4; line++)
        for (guint c = 0; c < G_N_ELEMENTS (names); c++)
          {
            g_autofree char *id = g_strdup_printf ("bit-%u", line);
            const char *value = line == 0                                             ? names[c]
                                : c == 0                                              ? id
                                : line == 2 && g_str_equal (names[c], rows[i].column) ? rows[i].value
                                                                                      : usual[c];
            spelch_csv_append (text, value, rows[i].separator);
            g_string_append_c (text, c + 1 < G_N_ELEMENTS (names) ? rows[i].separator : '\n');
          }
      g_autofree char *whole = g_string_free (text, FALSE);
      g_autoptr (SpelchBitTable) table = read_table (whole);
      g_test_message ("%s", whole);
      g_assert_cmpuint (table->bits->len, ==, rows[i].says != NULL ? 2 : 3);
      g_assert_cmpuint (table->problems->len, ==, rows[i].says != NULL ? 1 : 0);
      if (rows[i].says != NULL)
        {
          g_autofree char *says = g_strdup_printf ("Line 3, column %s: %s The line was left out.",
                                                   rows[i].column, rows[i].says);
          tells (table, 0, says);
          continue;
        }
      const SpelchBit *bit = &g_array_index (table->bits, SpelchBit, 1);
      g_assert_cmpfloat (g_str_equal (rows[i].column, "max_rpm") ? bit->max_rpm
                         : g_str_equal (rows[i].column, "price") ? bit->price
                                                                 : bit->diameter.mm,
                         ==, rows[i].read);
    }
}

/* A size typed with its unit is written as it was typed, but so that the table's own reader takes it. */
static void
test_typed_round_trip (void)
{
  const char separators[] = { ',', ';' };
  const char *const typed[] = { "9.525 mm", "9,525 mm", "0.375 in", "3/8 in" };
  for (guint s = 0; s < G_N_ELEMENTS (separators); s++)
    for (guint i = 0; i < G_N_ELEMENTS (typed); i++)
      {
        guint n = 0;
        SpelchBit bit = *spelch_shop_bits (&n);
        g_assert_true (spelch_length_parse (typed[i], SPELCH_UNIT_MM, &bit.shank, NULL));
        bit.metres_cut = 12.345;
        g_autoptr (GArray) list = g_array_new (FALSE, TRUE, sizeof bit);
        g_array_append_val (list, bit);
        g_autofree char *text = spelch_bits_to_csv (list, separators[s]);
        g_autoptr (SpelchBitTable) table = read_table (text);
        g_test_message ("%s", text);
        g_assert_cmpuint (table->problems->len, ==, 0);
        g_assert_cmpuint (table->bits->len, ==, 1);
        const SpelchBit *again = &g_array_index (table->bits, SpelchBit, 0);
        g_assert_cmpfloat (again->shank.mm, ==, bit.shank.mm);
        g_assert_cmpfloat (again->metres_cut, ==, bit.metres_cut);
      }
}

static void
test_columns (void)
{
  g_autoptr (SpelchBitTable) extra
      = read_table ("colour,KIND,diameter,shank,cutting_length,edges,helix_deg,diameter\n"
                    "red,up-cut,6,6,20,2,30,9\n");
  g_assert_cmpuint (extra->bits->len, ==, 1);
  g_assert_cmpfloat (g_array_index (extra->bits, SpelchBit, 0).diameter.mm, ==, 6);
  tells (extra, 0, "“colour”");
  tells (extra, 1, "“diameter” stands twice");
  g_autoptr (SpelchBitTable) missing = read_table ("name,kind,diameter\nA,up-cut,6\n");
  g_assert_cmpuint (missing->bits->len, ==, 0);
  tells (missing, 0, "“Shank diameter” is missing");
  tells (extra, 2, "These columns are known: ");
  tells (extra, 2, "Cutting length");
  tells (missing, missing->problems->len - 1, "These columns are known: ");
  g_autoptr (SpelchBitTable) empty = read_table ("");
  tells (empty, 0, "empty");
  g_autoptr (SpelchBitTable) latin = read_table ("name\n\xFC\n");
  tells (latin, 0, "UTF-8");
}

/* As the form of a bit calls them, and spaces between thousands as the program itself prints them. */
static void
test_as_in_the_form (void)
{
  g_autoptr (SpelchBitTable) table = read_table (
      "Name;Kind;Diameter;Shank;Cutting length;Cutting edges;Helix;Edges of;Highest speed marked;State\n"
      "A;Down-cut;6;6;20;2;30;High-speed steel;22 000;DULL\n"
      "B;straight;6;6;20;2;;carbide;22\u202f000;\n"
      "C;up-cut;6;6;20;2;30;hss;22\u00a0000;\n");
  for (guint i = 0; i < table->problems->len; i++)
    g_test_message ("%s", (const char *)g_ptr_array_index (table->problems, i));
  g_assert_cmpuint (table->problems->len, ==, 0);
  g_assert_cmpuint (table->bits->len, ==, 3);
  for (guint i = 0; i < 3; i++)
    g_assert_cmpfloat (g_array_index (table->bits, SpelchBit, i).max_rpm, ==, 22000);
  const SpelchBit *first = &g_array_index (table->bits, SpelchBit, 0);
  g_assert_cmpint (first->kind, ==, SPELCH_BIT_DOWN_CUT);
  g_assert_cmpint (first->edge_material, ==, SPELCH_TOOL_HSS);
  g_assert_cmpint (first->wear, ==, SPELCH_WEAR_DULL);
  g_assert_cmpint (g_array_index (table->bits, SpelchBit, 1).kind, ==, SPELCH_BIT_STRAIGHT);
}

int
main (int argc, char **argv)
{
  g_test_init (&argc, &argv, NULL);
  g_test_add_func ("/bit-csv/rows", test_rows);
  g_test_add_func ("/bit-csv/round-trip", test_round_trip);
  g_test_add_func ("/bit-csv/semicolons", test_semicolons);
  g_test_add_func ("/bit-csv/problems", test_problems);
  g_test_add_func ("/bit-csv/thousands", test_thousands);
  g_test_add_func ("/bit-csv/typed-round-trip", test_typed_round_trip);
  g_test_add_func ("/bit-csv/columns", test_columns);
  g_test_add_func ("/bit-csv/as-in-the-form", test_as_in_the_form);
  return g_test_run ();
}
