/* SPDX-License-Identifier: GPL-3.0-or-later
 *
 * Asked: what the command line asked for, and the part as it would be with the questions put ("what if it
 * were thicker"). The file itself is never changed.
 */
#pragma once

#include "plan/words.h"
#include "shop/part.h"

#include <gio/gio.h>

#define SPELCH_COMMAND_ERROR (spelch_command_error_quark ())
GQuark spelch_command_error_quark (void);

typedef enum
{
  SPELCH_COMMAND_ERROR_USAGE, /* words of the command line */
  SPELCH_COMMAND_ERROR_VALUE, /* a value in them, or an id that isn't in the part */
} SpelchCommandError;

/* Exit statuses. */
enum
{
  SPELCH_EXIT_DONE = 0,
  SPELCH_EXIT_DO_NOT_CUT = 1,
  SPELCH_EXIT_BAD_INPUT = 2,
  SPELCH_EXIT_NOT_WRITTEN = 3,
};

typedef struct
{
  char *file;
  char **cuts; /* ids; NULL: all */
  char *output;
  gboolean poster;
  char *motion; /* a film to write instead */
  char *bit;
  char **passes; /* tip depths */
  char *speed, *feed, *machine, *board, *way_up, *thickness, *datum;
  char *units;
  char *look, *paper;
  char *log;   /* a shop log whose corrections to apply; NULL: those of the part */
  char **bits; /* ids of bits to compare */
  gboolean tied;
  char *drawer; /* a file of bits to choose from; NULL: the part's and the starter set */
  gboolean json;
  int width, height, pass;
} SpelchAsked;

/* Which options a command takes beside the questions. */
typedef enum
{
  SPELCH_ASKING_CHECK, /* JSON alone: a file is checked as it is */
  SPELCH_ASKING_PLAN,
  SPELCH_ASKING_RANKING,    /* also a drawer */
  SPELCH_ASKING_DRAWING,    /* those of a picture, and exactly one cut */
  SPELCH_ASKING_COMPARISON, /* bits, and exactly one cut */
  SPELCH_ASKING_SHEET,      /* a file to write, paper, a drawer; never JSON */
} SpelchAsking;

void spelch_asked_clear (SpelchAsked *asked);
G_DEFINE_AUTO_CLEANUP_CLEAR_FUNC (SpelchAsked, spelch_asked_clear)

/* What is wrong with a command's options, and where they are told. Free with g_free(). */
char *spelch_asked_see_help (const GError *error, const char *command);

/* Prints what --help shows of a command's options. */
void spelch_asked_help (GOptionContext *context, const char *command);

/* Reads the words after the command's name. @summary is shown by --help, which prints and sets *helped.
 */
bool spelch_asked_read (SpelchAsked *asked, const char *command, const char *summary, SpelchAsking asking,
                        int argc, char **argv, bool *helped, GError **error);

/* Puts into @part, which isn't shared, what the log that was asked for teaches about its board and @bits. */
bool spelch_asked_put_log (const SpelchAsked *asked, SpelchPart *part, const SpelchBit *bits, guint n_bits,
                           GError **error);

/* Loads the file and puts the questions; of a log, what it teaches about the part's own bits. */
SpelchPart *spelch_asked_part (const SpelchAsked *asked, GError **error);

/* The indices of the cuts asked for, -1 at the end. g_free() it. NULL and an error when an id isn't in the
 * part. */
int *spelch_asked_cuts (const SpelchAsked *asked, const SpelchPart *part, GError **error);

/* The bit to plan @cut with: asked for, accepted, or NULL when the cut has none yet. */
const SpelchBit *spelch_asked_bit (const SpelchPart *part, const SpelchCut *cut);

/* How numbers are to be written: as was asked, else in millimetres, with the decimal sign of the locale. An
 * error where the unit asked for is no unit. */
bool spelch_asked_numbers (const SpelchAsked *asked, SpelchNumbers *numbers, GError **error);

/* What a command that answers in text works on. */
typedef struct
{
  SpelchPart *part;
  int *cuts; /* indices, -1 at the end */
  SpelchNumbers numbers;
} SpelchQuestions;

void spelch_questions_clear (SpelchQuestions *questions);
G_DEFINE_AUTO_CLEANUP_CLEAR_FUNC (SpelchQuestions, spelch_questions_clear)

/* Reads the words as spelch_asked_read() does, and then what they ask about. False when there is nothing left
 * to do: help was shown, or what is wrong was said; then *status is the exit status. */
bool spelch_asked_open (SpelchAsked *asked, const char *command, const char *summary, SpelchAsking asking,
                        int argc, char **argv, SpelchQuestions *questions, int *status);
