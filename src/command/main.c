/* SPDX-License-Identifier: GPL-3.0-or-later
 *
 * spelch: the command line. Serves every command without a display; given a part file alone, or nothing, it
 * starts the window.
 */
#include "command/asked.h"
#include "command/commands.h"
#include "plan/constants.h"

#include <glib/gi18n.h>
#include <locale.h>
#include <stdio.h>
#include <string.h>
#include <unistd.h>

typedef struct
{
  const char *name;
  int (*run) (int argc, char **argv);
} Command;

static const Command COMMANDS[] = {
  { "plan", spelch_command_plan },         { "rank", spelch_command_rank },
  { "compare", spelch_command_compare },   { "draw", spelch_command_draw },
  { "sheet", spelch_command_sheet },       { "check", spelch_command_check },
  { "practice", spelch_command_practice },
};

int
spelch_command_fail (const char *sentence, int status)
{
  g_printerr ("spelch: %s\n", sentence);
  return status;
}

static int
show_help (void)
{
  g_print (
      "%s\n",
      _ ("spelch                start the window\n"
         "spelch FILE           start the window on a part file\n"
         "spelch plan FILE      say for each cut which depths, speed and feed, and how its edges come out\n"
         "spelch rank FILE      say for each cut which bit to take, and why\n"
         "spelch compare FILE   say what a cut comes to with two to four bits, side by side\n"
         "spelch draw FILE      draw the side view of a cut\n"
         "spelch sheet FILE     write the sheet to work from at the machine\n"
         "spelch check FILE     say whether a part file, a shop log, an exercise or another list can be "
         "read\n"
         "spelch practice       ask what a cut will do, and say why\n"
         "spelch --version      say which version this is, and of the model\n"
         "\n"
         "Each command has --help. Exit status: 0 done, 1 done and the plan must not be cut, 2 bad input, 3 "
         "could not write."));
  return SPELCH_EXIT_DONE;
}

static int
show_version (void)
{
  g_print (_ ("Spelch %s, model %s"), SPELCH_VERSION, SPELCH_MODEL_VERSION);
  g_print ("\n");
  return SPELCH_EXIT_DONE;
}

/* The window is a program of its own, beside this one or where programs are installed. */
static int
start_window (int argc, char **argv)
{
  if (g_getenv ("DISPLAY") == NULL && g_getenv ("WAYLAND_DISPLAY") == NULL)
    return spelch_command_fail (_ ("There is no display to open a window on. spelch plan, rank, compare, "
                                   "draw, sheet, check and practice work without one."),
                                SPELCH_EXIT_BAD_INPUT);
  g_autofree char *self = g_file_read_link ("/proc/self/exe", NULL);
  g_autofree char *folder = g_path_get_dirname (self != NULL ? self : argv[0]);
  g_autofree char *beside = g_build_filename (folder, "spelch-bench", NULL);
  g_autofree char *built = g_build_filename (folder, "..", "bench", "spelch-bench", NULL);
  const char *program = g_file_test (beside, G_FILE_TEST_IS_EXECUTABLE)  ? beside
                        : g_file_test (built, G_FILE_TEST_IS_EXECUTABLE) ? built
                                                                         : "spelch-bench";
  char *words[] = { (char *)"spelch-bench", argc > 1 ? argv[1] : NULL, NULL };
  execvp (program, words);
  return spelch_command_fail (_ ("The window's program, spelch-bench, isn't installed beside this one."),
                              SPELCH_EXIT_BAD_INPUT);
}

int
main (int argc, char **argv)
{
  setlocale (LC_ALL, "");
  /* Translations that aren't installed yet, for those who write and test them. */
  const char *uninstalled = g_getenv ("SPELCH_LOCALE_DIR");
  bindtextdomain (GETTEXT_PACKAGE, uninstalled != NULL ? uninstalled : SPELCH_LOCALE_DIR);
  bind_textdomain_codeset (GETTEXT_PACKAGE, "UTF-8");
  textdomain (GETTEXT_PACKAGE);

  if (argc > 1 && (g_str_equal (argv[1], "--help") || g_str_equal (argv[1], "-h")))
    return show_help ();
  if (argc > 1 && g_str_equal (argv[1], "--version"))
    return show_version ();
  for (guint i = 0; argc > 1 && i < G_N_ELEMENTS (COMMANDS); i++)
    if (g_str_equal (argv[1], COMMANDS[i].name))
      return COMMANDS[i].run (argc - 1, argv + 1);
  bool is_option = argc > 1 && argv[1][0] == '-';
  bool is_file = argc == 2 && (strpbrk (argv[1], "./") != NULL || g_file_test (argv[1], G_FILE_TEST_EXISTS));
  if (argc == 1 || (is_file && !is_option))
    return start_window (argc, argv);
  g_autofree char *sentence = g_strdup_printf (_ ("“%s” isn't a command. See spelch --help."), argv[1]);
  return spelch_command_fail (sentence, SPELCH_EXIT_BAD_INPUT);
}
