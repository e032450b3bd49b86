/* SPDX-License-Identifier: GPL-3.0-or-later
 *
 * Practice paper: what leaves the practice window: sheets of questions and of answers, printed or as a PDF,
 * and the answers that were kept as a table. What went wrong, or where it went, is said in a sentence.
 */
#pragma once

#include "bench/practice.h"
#include "plan/words.h"

#include <gtk/gtk.h>

G_BEGIN_DECLS

/* Which exercises a sheet holds. */
typedef enum
{
  SPELCH_SHEET_THIS,  /* the one that is asked, or all of the lesson */
  SPELCH_SHEET_LEVEL, /* all as difficult as that */
  SPELCH_SHEET_ALL,
} SpelchSheetOf;
extern const SpelchCodes SPELCH_SHEET_OF_CODES; /* this, level, all */

typedef struct
{
  GtkWindow *window;
  SpelchPractice *practice;
  SpelchNumbers numbers;
  SpelchSheetOf of;
  bool answers; /* else questions */
  void (*say) (GtkWindow *window, const char *sentence);
} SpelchPracticePaper;

/* Asks how to print, and prints. */
void spelch_practice_print (const SpelchPracticePaper *paper);

/* Asks for a file, and writes a sheet as a PDF there. */
void spelch_practice_save_sheet (const SpelchPracticePaper *paper);

/* Asks for a file, and writes the table of answers there, this learner's or everyone's. */
void spelch_practice_export (const SpelchPracticePaper *paper, bool everyone);

/* The steps of that, without asking: the sentence to say. Free with g_free(). */
char *spelch_practice_write_sheet (const SpelchPracticePaper *paper, GFile *file);
char *spelch_practice_write_table (const SpelchPracticePaper *paper, bool everyone, GFile *file);

G_END_DECLS
