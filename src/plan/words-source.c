/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "plan/words-source.h"

#include <glib.h>
#include <glib/gi18n-lib.h>

/* Translators: names of works and their numbers stay; what is said about them is translated. */
static const char *const TOLD[] = {
  N_ ("ASM Handbook vol. 2, cemented carbides (memory)"),
  N_ ("Bershadsky and Tsvetkova, Rezanie drevesiny (memory)"),
  N_ ("Bershadsky and Tsvetkova, Rezanie drevesiny (memory); Orlowski, Ochrymiuk, Atkins and Chuchala 2013, "
      "Wood Sci. Technol. 47:949-963 (memory)"),
  N_ ("EN 847-1:2017, scope: milling tools with cutting circles of 16 mm and more"),
  N_ ("Filson, Rohrbacher and Kaziunas France 2017, Design for CNC, ch. 6, on plywood"),
  N_ ("Gurău, Coșereanu, Timar, Lungu and Condoroțeanu 2022, Coatings 12:1982 (abstract), on maple cut "
      "through"),
  N_ ("J. Wood Sci. 2018, doi:10.1007/s10086-018-1724-x (abstract), on hinoki cut slowly"),
  N_ ("Kukla et al. 2021, Wood Research 66(5):789-805: laminated chipboard on steel 0.33 at rest, 0.25 "
      "sliding"),
  N_ ("Szwajka and Trzepieciński 2016, J. Wood Sci. 62:305, doi:10.1007/s10086-016-1555-6 (abstract), on "
      "melamine-faced particleboard"),
  N_ ("Wood Handbook ch. 4: dry smooth wood on a hard smooth surface 0.3 to 0.5; Kukla et al. 2021, Wood "
      "Research 66(5):789-805: raw MDF on steel 0.77"),
  N_ ("Wood Handbook, FPL-GTR-190, Table 5-11 (memory)"),
  N_ ("Wood Handbook, FPL-GTR-190, Table 5-6 (read in a copy)"),
  N_ ("Wood Handbook, FPL-GTR-282, Table 12-2 (read in a copy)"),
  N_ ("Zarif Karimi and others 2016, Acta Polytechnica CTU Proceedings 3:19, on drilled glass-fibre "
      "laminate"),
  N_ ("a value from memory, the work not recalled (memory)"),
  N_ ("normal distribution: one value in twenty is lower than the mean less 1.645 standard deviations"),
  N_ ("textbooks give 0.7 to 0.95 for wood on rubber (memory); no citable value was found"),
  N_ ("the reference state of the edge force; 1 by definition"),
  N_ ("tool-steel data sheets, none named: 190 to 210 GPa"),
  N_ ("transverse rupture strength 2000 MPa, ASM Handbook vol. 2 (memory), divided by 4"),
};

bool
spelch_words_source_is_told (const char *source)
{
  for (guint i = 0; i < G_N_ELEMENTS (TOLD); i++)
    if (g_str_equal (TOLD[i], source))
      return true;
  return false;
}

const char *
spelch_words_source (const char *source)
{
  return spelch_words_source_is_told (source) ? g_dgettext (GETTEXT_PACKAGE, source) : source;
}

bool
spelch_words_source_is_nobodys (const char *source)
{
  return g_str_equal (source, "shop practice, no source")
         || g_str_equal (source, "common practice, no source");
}
