/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "command/practice-sheet.h"

#include "command/asked.h"
#include "command/commands.h"
#include "drawing/exercise-sheet.h"
#include "files/shop-data.h"

#include <cairo-pdf.h>
#include <glib/gi18n.h>

static cairo_status_t
collect (void *closure, const unsigned char *data, unsigned int length)
{
  g_byte_array_append (closure, data, length);
  return CAIRO_STATUS_SUCCESS;
}

/* Each exercise, and its follow-up after it. */
static GPtrArray *
pose_all (const SpelchPracticeAsked *asked)
{
  GPtrArray *posed = g_ptr_array_new_with_free_func ((GDestroyNotify)spelch_posed_free);
  for (guint i = 0; i < asked->exercises->len; i++)
    {
      SpelchExercise *exercise = asked->exercises->pdata[i];
      g_ptr_array_add (posed, spelch_posed_new (spelch_shop_constants (), exercise, asked->drawn_by, false));
      if (exercise->follow_up.told)
        g_ptr_array_add (posed, spelch_posed_new (spelch_shop_constants (), exercise, asked->drawn_by, true));
    }
  return posed;
}

/* The whole in memory first, so that a failed save leaves an old sheet alone. */
int
spelch_practice_sheet (const SpelchPracticeAsked *asked)
{
  int paper = SPELCH_PAPER_A4;
  double width, height;
  if (asked->exercises->len == 0)
    return spelch_command_fail (_ ("There is no such exercise to put on a sheet."), SPELCH_EXIT_BAD_INPUT);
  if (asked->paper != NULL)
    spelch_code_read (&SPELCH_PAPER_CODES, asked->paper, &paper);
  SpelchExerciseSheet sheet = { .paper = (SpelchPaper)paper,
                                .answers = asked->answers,
                                .seed = asked->drawn_by,
                                .numbers = asked->numbers,
                                .languages = g_get_language_names (),
                                .source = spelch_shop_constant_source };
  g_autoptr (GPtrArray) posed = pose_all (asked);
  g_autoptr (GByteArray) bytes = g_byte_array_new ();
  g_autoptr (GError) error = NULL;
  spelch_paper_size (sheet.paper, &width, &height);
  cairo_surface_t *surface = cairo_pdf_surface_create_for_stream (collect, bytes, width, height);
  cairo_pdf_surface_set_metadata (surface, CAIRO_PDF_METADATA_TITLE, "Spelch");
  cairo_t *cr = cairo_create (surface);
  guint pages = spelch_exercise_sheet_draw (cr, &sheet, (SpelchPosed *const *)posed->pdata, posed->len);
  cairo_destroy (cr);
  cairo_surface_finish (surface);
  cairo_surface_destroy (surface);
  if (!g_file_set_contents (asked->sheet, (const char *)bytes->data, (gssize)bytes->len, &error))
    return spelch_command_fail (error->message, SPELCH_EXIT_NOT_WRITTEN);
  g_print (g_dngettext (GETTEXT_PACKAGE, "%s: %u page, seed %u.\n", "%s: %u pages, seed %u.\n", pages),
           asked->sheet, pages, asked->drawn_by);
  return SPELCH_EXIT_DONE;
}
