/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "bench/practice-paper.h"
#include "bench/dialogue.h"
#include "drawing/exercise-sheet.h"
#include "files/file-io.h"
#include "files/practice-csv.h"
#include "files/shop-data.h"

#include <glib/gi18n-lib.h>
#include <string.h>

static const char *const sheets_of[] = { "this", "level", "all" };
const SpelchCodes SPELCH_SHEET_OF_CODES = { N_ ("sheet"), sheets_of, G_N_ELEMENTS (sheets_of) };

/* ---- The sheet ---- */

typedef struct
{
  SpelchExerciseSheet sheet;
  GPtrArray *posed;
} Sheet;

static void
sheet_free (gpointer data)
{
  g_ptr_array_unref (((Sheet *)data)->posed);
  g_free (data);
}
G_DEFINE_AUTOPTR_CLEANUP_FUNC (Sheet, sheet_free)

static bool
is_in_lesson (const SpelchLesson *lesson, const SpelchExercise *exercise)
{
  for (guint i = 0; i < lesson->n_steps; i++)
    if (g_str_equal (lesson->steps[i].exercise, exercise->id))
      return true;
  return false;
}

static bool
is_wanted (const SpelchPracticePaper *paper, const SpelchExercise *exercise)
{
  const SpelchPosed *posed = spelch_practice_get_posed (paper->practice);
  const SpelchLesson *lesson = spelch_practice_get_lesson (paper->practice);
  if (paper->of == SPELCH_SHEET_ALL || posed == NULL)
    return true;
  if (paper->of == SPELCH_SHEET_LEVEL)
    return exercise->level == posed->exercise->level;
  return lesson != NULL ? is_in_lesson (lesson, exercise) : exercise == posed->exercise;
}

/* Each exercise with its follow-up, by the numbers that are drawn in the window. */
static Sheet *
sheet_new (const SpelchPracticePaper *paper)
{
  Sheet *made = g_new0 (Sheet, 1);
  const GPtrArray *exercises = spelch_practice_get_exercises (paper->practice);
  const SpelchConstants *constants = spelch_shop_constants ();
  bool letter = g_str_equal (gtk_paper_size_get_default (), GTK_PAPER_NAME_LETTER);
  made->sheet = (SpelchExerciseSheet){ .paper = letter ? SPELCH_PAPER_LETTER : SPELCH_PAPER_A4,
                                       .answers = paper->answers,
                                       .seed = spelch_practice_get_seed (paper->practice),
                                       .numbers = paper->numbers,
                                       .languages = g_get_language_names () };
  made->posed = g_ptr_array_new_with_free_func ((GDestroyNotify)spelch_posed_free);
  for (guint i = 0; i < exercises->len; i++)
    {
      SpelchExercise *exercise = exercises->pdata[i];
      if (!is_wanted (paper, exercise))
        continue;
      g_ptr_array_add (made->posed, spelch_posed_new (constants, exercise, made->sheet.seed, false));
      if (exercise->follow_up.told)
        g_ptr_array_add (made->posed, spelch_posed_new (constants, exercise, made->sheet.seed, true));
    }
  return made;
}

static guint
draw (cairo_t *cr, const Sheet *made, guint only)
{
  SpelchExerciseSheet sheet = made->sheet;
  sheet.only = only;
  return spelch_exercise_sheet_draw (cr, &sheet, (SpelchPosed *const *)made->posed->pdata, made->posed->len);
}

/* ---- Printing ---- */

static void
begin_print (GtkPrintOperation *operation, GtkPrintContext *context, Sheet *made)
{
  gtk_print_operation_set_n_pages (operation, (int)draw (NULL, made, SPELCH_SHEET_COUNT));
}

/* The sheet keeps its margins itself; on paper of another size it is made to fit. */
static void
draw_page (GtkPrintOperation *operation, GtkPrintContext *context, int page, Sheet *made)
{
  cairo_t *cr = gtk_print_context_get_cairo_context (context);
  double width, height;
  spelch_paper_size (made->sheet.paper, &width, &height);
  double scale
      = MIN (gtk_print_context_get_width (context) / width, gtk_print_context_get_height (context) / height);
  cairo_scale (cr, scale, scale);
  draw (cr, made, (guint)page + 1);
}

void
spelch_practice_print (const SpelchPracticePaper *paper)
{
  g_autoptr (GtkPrintOperation) operation = gtk_print_operation_new ();
  g_autoptr (Sheet) made = sheet_new (paper);
  g_autoptr (GError) error = NULL;
  gtk_print_operation_set_use_full_page (operation, TRUE);
  gtk_print_operation_set_unit (operation, GTK_UNIT_POINTS);
  gtk_print_operation_set_job_name (operation,
                                    paper->answers ? _ ("Practice: answers") : _ ("Practice: questions"));
  g_signal_connect (operation, "begin-print", G_CALLBACK (begin_print), made);
  g_signal_connect (operation, "draw-page", G_CALLBACK (draw_page), made);
  if (gtk_print_operation_run (operation, GTK_PRINT_OPERATION_ACTION_PRINT_DIALOG, paper->window, &error)
      != GTK_PRINT_OPERATION_RESULT_ERROR)
    return;
  g_autofree char *sentence = g_strdup_printf (
      _ ("It can't be printed: %s. Save it as a PDF and print that, or try another printer."),
      error->message);
  paper->say (paper->window, sentence);
}

/* ---- Files ---- */

/* Writes bytes; the sentence when that fails, else NULL. */
static char *
write_bytes (GFile *file, GBytes *bytes)
{
  g_autoptr (GError) error = NULL;
  if (spelch_file_save_bytes (file, g_bytes_get_data (bytes, NULL), g_bytes_get_size (bytes), &error))
    return NULL;
  return g_strdup (error->message);
}

char *
spelch_practice_write_sheet (const SpelchPracticePaper *paper, GFile *file)
{
  g_autoptr (Sheet) made = sheet_new (paper);
  guint pages = 0;
  g_autoptr (GBytes) pdf = spelch_exercise_sheet_pdf (&made->sheet, (SpelchPosed *const *)made->posed->pdata,
                                                      made->posed->len, &pages);
  g_autofree char *name = spelch_file_name (file);
  char *failure = write_bytes (file, pdf);
  if (failure != NULL)
    return failure;
  return g_strdup_printf (g_dngettext (GETTEXT_PACKAGE, "%s is written: %u page, numbers of draw %u.",
                                       "%s is written: %u pages, numbers of draw %u.", pages),
                          name, pages, made->sheet.seed);
}

char *
spelch_practice_write_table (const SpelchPracticePaper *paper, bool everyone, GFile *file)
{
  g_autoptr (GArray) attempts = spelch_practice_copy_attempts (paper->practice);
  const char *learner = everyone ? NULL : spelch_practice_get_learner (paper->practice);
  char separator = paper->numbers.decimal_sign == ',' ? ';' : ',';
  char *text = spelch_attempts_to_csv (attempts, learner, separator);
  g_autoptr (GBytes) bytes = g_bytes_new_take (text, strlen (text));
  g_autofree char *name = spelch_file_name (file);
  guint n = spelch_attempts_progress (attempts, learner, NULL).tried;
  char *failure = write_bytes (file, bytes);
  if (failure != NULL)
    return failure;
  return g_strdup_printf (
      g_dngettext (GETTEXT_PACKAGE, "%u answer was written to “%s”.", "%u answers were written to “%s”.", n),
      n, name);
}

/* ---- Asking for a file ---- */

typedef struct
{
  SpelchPracticePaper paper;
  bool table, everyone;
} Leaving;

static void
leaving_free (gpointer data, GClosure *closure)
{
  Leaving *leaving = data;
  g_object_unref (leaving->paper.window);
  g_object_unref (leaving->paper.practice);
  g_free (leaving);
}

static void
answered (GtkNativeDialog *dialog, int response, Leaving *leaving)
{
  if (response == GTK_RESPONSE_ACCEPT)
    {
      g_autoptr (GFile) file = gtk_file_chooser_get_file (GTK_FILE_CHOOSER (dialog));
      g_autofree char *said = leaving->table
                                  ? spelch_practice_write_table (&leaving->paper, leaving->everyone, file)
                                  : spelch_practice_write_sheet (&leaving->paper, file);
      leaving->paper.say (leaving->paper.window, said);
    }
  spelch_dialogue_end_native (dialog);
}

static void
ask_file (const SpelchPracticePaper *paper, bool table, bool everyone, const char *title, const char *name)
{
  GtkFileChooserNative *chooser = gtk_file_chooser_native_new (
      title, paper->window, GTK_FILE_CHOOSER_ACTION_SAVE, _ ("_Save"), _ ("_Cancel"));
  Leaving *leaving = g_new0 (Leaving, 1);
  leaving->paper = *paper;
  leaving->table = table;
  leaving->everyone = everyone;
  g_object_ref (paper->window);
  g_object_ref (paper->practice);
  gtk_native_dialog_set_modal (GTK_NATIVE_DIALOG (chooser), TRUE);
  gtk_file_chooser_set_current_name (GTK_FILE_CHOOSER (chooser), name);
  g_signal_connect_data (chooser, "response", G_CALLBACK (answered), leaving, leaving_free, 0);
  gtk_native_dialog_show (GTK_NATIVE_DIALOG (chooser));
}

void
spelch_practice_save_sheet (const SpelchPracticePaper *paper)
{
  g_autofree char *name = g_strdup_printf (paper->answers ? _ ("answers-%u.pdf") : _ ("questions-%u.pdf"),
                                           spelch_practice_get_seed (paper->practice));
  ask_file (paper, false, false, paper->answers ? _ ("Save the answers") : _ ("Save the questions"), name);
}

void
spelch_practice_export (const SpelchPracticePaper *paper, bool everyone)
{
  ask_file (paper, true, everyone, _ ("Export answers"), _ ("answers.csv"));
}
