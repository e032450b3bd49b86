/* SPDX-License-Identifier: GPL-3.0-or-later
 *
 * spelch-bench: the window. spelch-bench [FILE.spelch]
 */
#include "bench/bench-application.h"

#include <glib/gi18n-lib.h>
#include <locale.h>

int
main (int argc, char **argv)
{
  /* The drawing is Cairo's, so GL would only cost start-up time and memory. A setting of the user's own
   * holds. */
  g_setenv ("GSK_RENDERER", "cairo", FALSE);
  g_setenv ("GDK_DEBUG", "gl-disable", FALSE);

  setlocale (LC_ALL, "");
  /* Translations that aren't installed yet, for those who write and test them. */
  const char *uninstalled = g_getenv ("SPELCH_LOCALE_DIR");
  bindtextdomain (GETTEXT_PACKAGE, uninstalled != NULL ? uninstalled : SPELCH_LOCALE_DIR);
  bind_textdomain_codeset (GETTEXT_PACKAGE, "UTF-8");
  textdomain (GETTEXT_PACKAGE);
  g_set_application_name ("Spelch");

  g_autoptr (SpelchApplication) application = spelch_application_new ();
  return g_application_run (G_APPLICATION (application), argc, argv);
}
