/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "command/asked.h"
#include "command/commands.h"
#include "plan/compare.h"

#include "files/log-file.h"
#include "files/part-file.h"
#include "files/shop-data.h"
#include "plan/corrections.h"
#include "shop/decimal-sign.h"
#include "shop/fault.h"
#include "shop/number.h"

#include <glib/gi18n.h>
#include <math.h>

/* A last pass typed this little short of the far face still means to cut through, and is told that it
 * doesn't. */
#define THROUGH_WITHIN_MM 0.05

G_DEFINE_QUARK (spelch - command - error - quark, spelch_command_error)

void
spelch_asked_clear (SpelchAsked *asked)
{
  char **texts[]
      = { &asked->file,   &asked->output, &asked->bit,       &asked->speed, &asked->feed,  &asked->machine,
          &asked->board,  &asked->way_up, &asked->thickness, &asked->datum, &asked->units, &asked->look,
          &asked->drawer, &asked->log,    &asked->motion,    &asked->paper };
  for (guint i = 0; i < G_N_ELEMENTS (texts); i++)
    g_clear_pointer (texts[i], g_free);
  g_clear_pointer (&asked->cuts, g_strfreev);
  g_clear_pointer (&asked->passes, g_strfreev);
  g_clear_pointer (&asked->bits, g_strfreev);
}

static bool
refuse (GError **error, SpelchCommandError code, char *sentence)
{
  g_set_error_literal (error, SPELCH_COMMAND_ERROR, (int)code, sentence);
  g_free (sentence);
  return false;
}

char *
spelch_asked_see_help (const GError *error, const char *command)
{
  /* An option that isn't known is named as it was typed, whatever its bytes. */
  g_autofree char *said = g_utf8_make_valid (error->message, -1);
  return g_strdup_printf (_ ("%s. See spelch %s --help."), said, command);
}

void
spelch_asked_help (GOptionContext *context, const char *command)
{
  /* Its first line begins with the program's name. */
  g_autofree char *program = g_strconcat ("spelch ", command, NULL);
  g_set_prgname (program);
  g_autofree char *text = g_option_context_get_help (context, TRUE, NULL);
  g_print ("%s", text);
}

bool
spelch_asked_read (SpelchAsked *asked, const char *command, const char *summary, SpelchAsking asking,
                   int argc, char **argv, bool *helped, GError **error)
{
  g_autofree char *cut = NULL, *bits = NULL;
  bool drawing = asking == SPELCH_ASKING_DRAWING;
  const GOptionEntry common[]
      = { { "cut", 0, 0, G_OPTION_ARG_STRING, &cut,
            N_ ("the cut's id; several with commas; all when left out"), "ID" },
          { "bit", 0, 0, G_OPTION_ARG_STRING, &asked->bit,
            N_ ("what if this bit were used (of the part, or of the starter set)"), "ID" },
          { "pass", 0, 0, G_OPTION_ARG_STRING_ARRAY, &asked->passes,
            N_ ("what if a pass went this deep; repeat for each pass"), "DEPTH" },
          { "speed", 0, 0, G_OPTION_ARG_STRING, &asked->speed,
            N_ ("what if the spindle turned at this speed"), "RPM" },
          { "feed", 0, 0, G_OPTION_ARG_STRING, &asked->feed,
            N_ ("what if it were fed at this feed, in mm a minute"), "MM/MIN" },
          { "machine", 0, 0, G_OPTION_ARG_STRING, &asked->machine,
            N_ ("what if it were cut on this machine of the starter set"), "ID" },
          { "board", 0, 0, G_OPTION_ARG_STRING, &asked->board,
            N_ ("what if it were this board of the starter set"), "ID" },
          { "way-up", 0, 0, G_OPTION_ARG_STRING, &asked->way_up,
            N_ ("what if this face were toward the motor"), "a|b" },
          { "thickness", 0, 0, G_OPTION_ARG_STRING, &asked->thickness, N_ ("what if the board measured this"),
            "LENGTH" },
          { "datum", 0, 0, G_OPTION_ARG_STRING, &asked->datum, N_ ("what if zero were set there"),
            "face|bed" },
          { "units", 0, 0, G_OPTION_ARG_STRING, &asked->units,
            N_ ("how lengths are written; a bare number is read so too"), "mm|in" },
          { "log", 0, 0, G_OPTION_ARG_FILENAME, &asked->log,
            N_ ("a shop log whose corrections to apply, in place of those in the file"), "FILE" },
          G_OPTION_ENTRY_NULL };
  const GOptionEntry data[]
      = { { "json", 0, 0, G_OPTION_ARG_NONE, &asked->json, N_ ("print JSON"), NULL }, G_OPTION_ENTRY_NULL };
  const GOptionEntry drawer[]
      = { { "drawer", 0, 0, G_OPTION_ARG_FILENAME, &asked->drawer,
            N_ ("a file of bits to choose from, in place of the part's and the starter "
                "set"),
            "FILE" },
          G_OPTION_ENTRY_NULL };
  const GOptionEntry picture[] = {
    { "output", 'o', 0, G_OPTION_ARG_FILENAME, &asked->output, N_ ("the file to write: .svg, .png or .pdf"),
      "FILE" },
    { "size", 0, 0, G_OPTION_ARG_INT, &asked->width,
      N_ ("width of the picture in pixels or points, 760 when left out; 1360 of a comparison"), "WIDTH" },
    { "height", 0, 0, G_OPTION_ARG_INT, &asked->height, N_ ("height of the picture, 668 when left out"),
      "HEIGHT" },
    { "look", 0, 0, G_OPTION_ARG_STRING, &asked->look, N_ ("colours"), "light|dark|high-contrast|paper" },
    G_OPTION_ENTRY_NULL
  };
  const GOptionEntry sheet[] = { { "output", 'o', 0, G_OPTION_ARG_FILENAME, &asked->output,
                                   N_ ("the file to write: .pdf, or .svg or .png for a file a page; by the "
                                       "part's file when left out"),
                                   "FILE" },
                                 { "paper", 0, 0, G_OPTION_ARG_STRING, &asked->paper,
                                   N_ ("size of the paper, a4 when left out"), "a4|letter" },
                                 G_OPTION_ENTRY_NULL };
  const GOptionEntry drawn[]
      = { { "show-pass", 0, 0, G_OPTION_ARG_INT, &asked->pass,
            N_ ("show the bit at this pass, 1 when left out"), "N" },
          { "poster", 0, 0, G_OPTION_ARG_NONE, &asked->poster,
            N_ ("draw the five kinds of bit over the cut instead, for a workshop's wall"), NULL },
          { "motion", 0, 0, G_OPTION_ARG_FILENAME, &asked->motion,
            N_ ("write this pass in slow motion instead: .gif, or .png for a series"), "FILE" },
          G_OPTION_ENTRY_NULL };
  const GOptionEntry compared[]
      = { { "bits", 0, 0, G_OPTION_ARG_STRING, &bits,
            N_ ("two to four bits, of the part or of the starter set, with commas"), "ID,ID" },
          { "tied", 0, 0, G_OPTION_ARG_NONE, &asked->tied, N_ ("all at the depths of the first"), NULL },
          G_OPTION_ENTRY_NULL };
  g_autoptr (GOptionContext) context = g_option_context_new ("FILE");
  g_option_context_set_summary (context, summary);
  g_option_context_set_help_enabled (context, FALSE);
  gboolean help = FALSE;
  const GOptionEntry own[]
      = { { "help", 'h', 0, G_OPTION_ARG_NONE, &help, N_ ("show this"), NULL }, G_OPTION_ENTRY_NULL };
  g_option_context_add_main_entries (context, own, GETTEXT_PACKAGE);
  if (asking != SPELCH_ASKING_CHECK)
    g_option_context_add_main_entries (context, common, GETTEXT_PACKAGE);
  if (!drawing && asking != SPELCH_ASKING_SHEET)
    g_option_context_add_main_entries (context, data, GETTEXT_PACKAGE);
  if (drawing || asking == SPELCH_ASKING_COMPARISON)
    g_option_context_add_main_entries (context, picture, GETTEXT_PACKAGE);
  if (drawing)
    g_option_context_add_main_entries (context, drawn, GETTEXT_PACKAGE);
  if (asking == SPELCH_ASKING_SHEET)
    g_option_context_add_main_entries (context, sheet, GETTEXT_PACKAGE);
  if (asking == SPELCH_ASKING_RANKING || asking == SPELCH_ASKING_SHEET)
    g_option_context_add_main_entries (context, drawer, GETTEXT_PACKAGE);
  if (asking == SPELCH_ASKING_COMPARISON)
    g_option_context_add_main_entries (context, compared, GETTEXT_PACKAGE);

  g_autoptr (GError) local = NULL;
  if (!g_option_context_parse (context, &argc, &argv, &local))
    return refuse (error, SPELCH_COMMAND_ERROR_USAGE, spelch_asked_see_help (local, command));
  if ((*helped = help))
    {
      spelch_asked_help (context, command);
      return true;
    }
  if (argc != 2)
    return refuse (
        error, SPELCH_COMMAND_ERROR_USAGE,
        g_strdup_printf (_ ("spelch %s takes one part file. See spelch %s --help."), command, command));
  asked->file = g_strdup (argv[1]);
  if (cut != NULL)
    asked->cuts = g_strsplit (cut, ",", -1);
  if (bits != NULL)
    asked->bits = g_strsplit (bits, ",", -1);
  if (drawing
      && (cut == NULL || asked->cuts[1] != NULL || (asked->output == NULL) == (asked->motion == NULL)))
    return refuse (error, SPELCH_COMMAND_ERROR_USAGE,
                   g_strdup (_ ("spelch draw takes one --cut ID and either -o FILE or --motion FILE. See "
                                "spelch draw --help.")));
  guint n_bits = asked->bits != NULL ? g_strv_length (asked->bits) : 0;
  if (asking == SPELCH_ASKING_COMPARISON
      && (cut == NULL || asked->cuts[1] != NULL || n_bits < SPELCH_COMPARE_LEAST
          || n_bits > SPELCH_COMPARE_MOST))
    return refuse (error, SPELCH_COMMAND_ERROR_USAGE,
                   g_strdup (_ ("spelch compare takes one --cut ID and two to four --bits ID,ID. See spelch "
                                "compare --help.")));
  return true;
}

bool
spelch_asked_numbers (const SpelchAsked *asked, SpelchNumbers *numbers, GError **error)
{
  *numbers = (SpelchNumbers){ SPELCH_UNIT_MM, SPELCH_INCH_FRACTION, spelch_decimal_sign () };
  if (asked->units == NULL || g_str_equal (asked->units, "mm"))
    return true;
  if (!g_str_equal (asked->units, "in"))
    return refuse (error, SPELCH_COMMAND_ERROR_VALUE,
                   g_strdup_printf (_ ("--units is “%s”; write mm or in."), asked->units));
  numbers->unit = SPELCH_UNIT_INCH;
  return true;
}

static bool
read_length (const SpelchAsked *asked, const char *option, const char *text, SpelchLength *length,
             GError **error)
{
  bool inches = g_strcmp0 (asked->units, "in") == 0;
  g_autoptr (GError) local = NULL;
  if (!spelch_length_read (text, inches ? SPELCH_UNIT_INCH : SPELCH_UNIT_MM, spelch_decimal_sign (), length,
                           &local))
    return refuse (error, SPELCH_COMMAND_ERROR_VALUE,
                   g_strdup_printf (_ ("%s “%s”: %s"), option, text, local->message));
  if (length->mm <= 0)
    return refuse (error, SPELCH_COMMAND_ERROR_VALUE,
                   g_strdup_printf (_ ("%s “%s”: write a length greater than 0."), option, text));
  return true;
}

static bool
read_number (const char *option, const char *text, const char *unit, double most, double *value,
             GError **error)
{
  g_autoptr (GError) local = NULL;
  double number = 0;
  bool read = spelch_number_parse (text, unit, spelch_decimal_sign (), &number, &local);
  if (g_error_matches (local, SPELCH_LENGTH_ERROR, SPELCH_LENGTH_ERROR_AMBIGUOUS))
    return refuse (error, SPELCH_COMMAND_ERROR_VALUE, g_strdup_printf ("%s: %s", option, local->message));
  if (!read || number <= 0 || number > most)
    return refuse (
        error, SPELCH_COMMAND_ERROR_VALUE,
        g_strdup_printf (_ ("%s “%s”: write a number greater than 0, at most %.0f."), option, text, most));
  *value = number;
  return true;
}

static bool
read_code (const char *option, const char *text, const SpelchCodes *table, int *value, GError **error)
{
  if (spelch_code_read (table, text, value))
    return true;
  g_autofree char *list = spelch_codes_list (table);
  return refuse (error, SPELCH_COMMAND_ERROR_VALUE,
                 g_strdup_printf (_ ("%s “%s”: write one of %s."), option, text, list));
}

static bool
put_machine (const SpelchAsked *asked, SpelchPart *part, GError **error)
{
  guint n;
  const SpelchMachine *machines = spelch_shop_machines (&n);
  for (guint i = 0; i < n; i++)
    if (g_str_equal (machines[i].id, asked->machine))
      {
        part->machine = machines[i];
        return true;
      }
  return refuse (error, SPELCH_COMMAND_ERROR_VALUE,
                 g_strdup_printf (_ ("--machine “%s”: there is no such machine."), asked->machine));
}

static bool
put_board (const SpelchAsked *asked, SpelchPart *part, GError **error)
{
  guint n;
  const SpelchBoard *boards = spelch_shop_boards (&n);
  for (guint i = 0; i < n; i++)
    if (g_str_equal (boards[i].id, asked->board))
      {
        part->board = boards[i];
        return true;
      }
  return refuse (error, SPELCH_COMMAND_ERROR_VALUE,
                 g_strdup_printf (_ ("--board “%s”: there is no such board."), asked->board));
}

static bool
put_bit (const char *option, const char *id, SpelchPart *part, GError **error)
{
  guint n;
  const SpelchBit *bits = spelch_shop_bits (&n);
  for (guint i = 0; spelch_part_find_bit (part, id) < 0 && i < n; i++)
    if (g_str_equal (bits[i].id, id))
      spelch_part_put_bit (part, &bits[i]);
  if (spelch_part_find_bit (part, id) < 0)
    return refuse (error, SPELCH_COMMAND_ERROR_VALUE,
                   g_strdup_printf (_ ("%s “%s”: there is no such bit."), option, id));
  return true;
}

/* Takes one depth: the one that reaches the floor, or the far face of a through cut, is the last pass; the
 * others are held. */
static bool
put_pass (const char *text, const SpelchLength *depth, double thickness, SpelchCut *cut, GError **error)
{
  SpelchHeld *held = &cut->held;
  double above = held->n_passes > 0 ? held->passes[held->n_passes - 1].mm : 0;
  g_autofree char *floor_depth = spelch_fault_number (cut->depth.mm, "mm");
  if (depth->mm <= above || held->n_passes == SPELCH_MAX_PASSES - 1)
    return refuse (
        error, SPELCH_COMMAND_ERROR_VALUE,
        depth->mm <= above
            ? g_strdup_printf (_ ("--pass “%s”: each pass goes deeper than the one before."), text)
            : g_strdup_printf (_ ("--pass “%s”: there are at most %d passes."), text, SPELCH_MAX_PASSES));
  if (cut->through && depth->mm >= thickness - THROUGH_WITHIN_MM)
    {
      held->overcut_held = true;
      held->overcut = spelch_length_mm (depth->mm - thickness);
    }
  else if (!cut->through && depth->mm > cut->depth.mm + 1e-6)
    return refuse (
        error, SPELCH_COMMAND_ERROR_VALUE,
        g_strdup_printf (_ ("--pass “%s”: the cut %s is only %s deep."), text, cut->id, floor_depth));
  else if (cut->through || depth->mm < cut->depth.mm - 1e-6)
    held->passes[held->n_passes++] = *depth;
  return true;
}

/* The depths are all the passes there are. */
static bool
put_passes (const SpelchAsked *asked, const SpelchPart *part, SpelchCut *cut, GError **error)
{
  double thickness = spelch_board_thickness (&part->board), deepest = 0;
  cut->held.passes_held = true;
  cut->held.n_passes = 0;
  for (guint i = 0; asked->passes[i] != NULL; i++)
    {
      SpelchLength depth;
      if (!read_length (asked, "--pass", asked->passes[i], &depth, error))
        return false;
      if (cut->through && deepest >= thickness - THROUGH_WITHIN_MM)
        return refuse (error, SPELCH_COMMAND_ERROR_VALUE,
                       g_strdup_printf (_ ("--pass “%s”: only the last pass goes through the board."),
                                        asked->passes[i]));
      if (!put_pass (asked->passes[i], &depth, thickness, cut, error))
        return false;
      deepest = depth.mm;
    }
  return true;
}

static bool
put_on_cut (const SpelchAsked *asked, const SpelchPart *part, SpelchCut *cut, GError **error)
{
  int face = (int)cut->way_up;
  if (asked->bit != NULL)
    g_strlcpy (cut->bit, asked->bit, sizeof cut->bit);
  if (asked->way_up != NULL && !read_code ("--way-up", asked->way_up, &SPELCH_FACE_CODES, &face, error))
    return false;
  cut->way_up = (SpelchFace)face;
  if (asked->passes != NULL && !put_passes (asked, part, cut, error))
    return false;
  if (asked->speed != NULL
      && !read_number ("--speed", asked->speed, "rpm", 100000, &cut->held.speed_rpm, error))
    return false;
  return asked->feed == NULL
         || read_number ("--feed", asked->feed, "mm/min", 100000, &cut->held.feed_mm_min, error);
}

static bool
put_questions (const SpelchAsked *asked, SpelchPart *part, GError **error)
{
  int datum = (int)part->machine.datum;
  if (asked->machine != NULL && !put_machine (asked, part, error))
    return false;
  if (asked->board != NULL && !put_board (asked, part, error))
    return false;
  if (asked->bit != NULL && !put_bit ("--bit", asked->bit, part, error))
    return false;
  for (guint i = 0; asked->bits != NULL && asked->bits[i] != NULL; i++)
    if (!put_bit ("--bits", asked->bits[i], part, error))
      return false;
  if (asked->datum != NULL)
    {
      if (!read_code ("--datum", asked->datum, &SPELCH_DATUM_CODES, &datum, error))
        return false;
      part->machine.datum = (SpelchDatum)datum;
    }
  if (asked->thickness != NULL
      && !read_length (asked, "--thickness", asked->thickness, &part->board.measured, error))
    return false;
  g_autofree int *cuts = spelch_asked_cuts (asked, part, error);
  if (cuts == NULL)
    return false;
  for (guint i = 0; cuts[i] >= 0; i++)
    if (!put_on_cut (asked, part, &part->cuts[cuts[i]], error))
      return false;
  return true;
}

bool
spelch_asked_put_log (const SpelchAsked *asked, SpelchPart *part, const SpelchBit *bits, guint n_bits,
                      GError **error)
{
  if (asked->log == NULL)
    return true;
  g_autoptr (GFile) file = g_file_new_for_commandline_arg (asked->log);
  g_autoptr (SpelchLog) log = spelch_log_load (file, NULL, error);
  if (log == NULL)
    return false;
  spelch_corrections_take (spelch_shop_constants (), part, bits, n_bits,
                           (const SpelchLogEntry *)(const void *)log->entries->data, log->entries->len);
  return true;
}

/* What is wrong with the part as far as it was asked about: another cut may well not suit another board. */
static char *
fault_of_asked (const SpelchPart *part, const int *cuts)
{
  g_autoptr (SpelchPart) asked = spelch_part_copy (part);
  asked->n_cuts = 0;
  for (guint i = 0; cuts[i] >= 0 && i < part->n_cuts; i++)
    asked->cuts[asked->n_cuts++] = part->cuts[cuts[i]];
  return spelch_part_fault (asked);
}

SpelchPart *
spelch_asked_part (const SpelchAsked *asked, GError **error)
{
  g_autoptr (GFile) file = g_file_new_for_commandline_arg (asked->file);
  g_autoptr (SpelchPart) loaded = spelch_part_load (file, NULL, error);
  if (loaded == NULL)
    return NULL;
  g_autoptr (SpelchPart) part = spelch_part_copy (loaded);
  if (!put_questions (asked, part, error)
      || !spelch_asked_put_log (asked, part, part->bits, part->n_bits, error))
    return NULL;
  g_autofree int *cuts = spelch_asked_cuts (asked, part, error);
  g_autofree char *fault = fault_of_asked (part, cuts);
  if (fault != NULL)
    {
      refuse (error, SPELCH_COMMAND_ERROR_VALUE, g_strdup_printf (_ ("With what was asked: %s"), fault));
      return NULL;
    }
  return g_steal_pointer (&part);
}

int *
spelch_asked_cuts (const SpelchAsked *asked, const SpelchPart *part, GError **error)
{
  guint n = asked->cuts != NULL ? g_strv_length (asked->cuts) : part->n_cuts;
  g_autofree int *cuts = g_new (int, n + 1);
  for (guint i = 0; i < n; i++)
    {
      cuts[i] = asked->cuts != NULL ? spelch_part_find_cut (part, asked->cuts[i]) : (int)i;
      if (cuts[i] < 0)
        {
          refuse (error, SPELCH_COMMAND_ERROR_VALUE,
                  g_strdup_printf (_ ("--cut “%s”: the part has no such cut."), asked->cuts[i]));
          return NULL;
        }
    }
  cuts[n] = -1;
  return g_steal_pointer (&cuts);
}

const SpelchBit *
spelch_asked_bit (const SpelchPart *part, const SpelchCut *cut)
{
  int i = spelch_part_find_bit (part, cut->bit);
  return i >= 0 ? &part->bits[i] : NULL;
}

void
spelch_questions_clear (SpelchQuestions *questions)
{
  g_clear_pointer (&questions->part, spelch_part_unref);
  g_clear_pointer (&questions->cuts, g_free);
}

bool
spelch_asked_open (SpelchAsked *asked, const char *command, const char *summary, SpelchAsking asking,
                   int argc, char **argv, SpelchQuestions *questions, int *status)
{
  g_autoptr (GError) error = NULL;
  bool helped = false, opened = false;
  if (spelch_asked_read (asked, command, summary, asking, argc, argv, &helped, &error) && !helped)
    {
      questions->part = spelch_asked_part (asked, &error);
      questions->cuts = questions->part != NULL ? spelch_asked_cuts (asked, questions->part, &error) : NULL;
      opened = questions->cuts != NULL && spelch_asked_numbers (asked, &questions->numbers, &error);
    }
  *status = error != NULL ? spelch_command_fail (error->message, SPELCH_EXIT_BAD_INPUT) : SPELCH_EXIT_DONE;
  return opened;
}
