/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "command/picture-file.h"

#include "command/commands.h"

#include <glib/gi18n.h>

#define LEAST 200
#define MOST  10000

int
spelch_picture_file_write (const char *output, const SpelchView *view, SpelchPictureFileDraw draw,
                           gconstpointer data)
{
  g_autoptr (GFile) file = g_file_new_for_commandline_arg (output);
  g_autoptr (GError) error = NULL;
  if (!spelch_picture_file_knows (output))
    return spelch_command_fail (_ ("The file to write must end in .svg, .png or .pdf."),
                                SPELCH_EXIT_BAD_INPUT);
  if (!spelch_picture_file_save (file, view->width, view->height, draw, data, &error))
    return spelch_command_fail (error->message, SPELCH_EXIT_NOT_WRITTEN);
  return SPELCH_EXIT_DONE;
}

bool
spelch_picture_file_view (const SpelchAsked *asked, int width, int height, SpelchView *view, GError **error)
{
  static const char *const looks[] = { "light", "dark", "high-contrast", "paper" };
  static const SpelchCodes table = { "look", looks, G_N_ELEMENTS (looks) };
  int look = SPELCH_LOOK_LIGHT;
  width = asked->width > 0 ? asked->width : width;
  height = asked->height > 0 ? asked->height : height;
  if (asked->look != NULL && !spelch_code_read (&table, asked->look, &look))
    {
      g_set_error (error, SPELCH_COMMAND_ERROR, SPELCH_COMMAND_ERROR_VALUE,
                   _ ("--look “%s”: write light, dark, high-contrast or paper."), asked->look);
      return false;
    }
  if (asked->width < 0 || asked->height < 0 || width < LEAST || width > MOST || height < LEAST
      || height > MOST)
    {
      g_set_error (error, SPELCH_COMMAND_ERROR, SPELCH_COMMAND_ERROR_VALUE,
                   _ ("--size and --height are from %d to %d."), LEAST, MOST);
      return false;
    }
  *view = (SpelchView){ .width = width,
                        .height = height,
                        .text = 1,
                        .look = (SpelchLook)look,
                        .family = "Inter, Cantarell, sans-serif",
                        .shown_pass = (guint)MAX (asked->pass, 1),
                        .with_marks = true };
  return spelch_asked_numbers (asked, &view->numbers, error);
}
