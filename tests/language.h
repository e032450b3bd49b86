/* SPDX-License-Identifier: GPL-3.0-or-later
 *
 * Language: tests that run once a language take it from the environment, and its messages from the build.
 */
#pragma once

#include <glib.h>
#include <libintl.h>
#include <locale.h>

/* Takes the locale, but for numbers, and the messages in SPELCH_LOCALE_DIR where that is set. */
static inline void
take_language (void)
{
  const char *messages = g_getenv ("SPELCH_LOCALE_DIR");
  setlocale (LC_ALL, "");
  setlocale (LC_NUMERIC, "C");
  if (messages != NULL)
    {
      bindtextdomain (GETTEXT_PACKAGE, messages);
      bind_textdomain_codeset (GETTEXT_PACKAGE, "UTF-8");
    }
}
