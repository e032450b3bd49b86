/* SPDX-License-Identifier: GPL-3.0-or-later
 *
 * spelch draw: the side view of one cut as SVG, PNG or PDF.
 */
#include "command/asked.h"
#include "command/commands.h"

#include "drawing/scene.h"
#include "files/shop-data.h"

#include <cairo-pdf.h>
#include <cairo-svg.h>
#include <glib/gi18n.h>

#define WIDTH  760
#define HEIGHT 668
#define LEAST  200
#define MOST   10000

static cairo_status_t
collect (void *closure, const unsigned char *data, unsigned int length)
{
  g_byte_array_append (closure, data, length);
  return CAIRO_STATUS_SUCCESS;
}

static cairo_surface_t *
surface_for (const char *output, int width, int height, GByteArray *into)
{
  g_autofree char *name = g_ascii_strdown (output, -1);
  if (g_str_has_suffix (name, ".svg"))
    return cairo_svg_surface_create_for_stream (collect, into, width, height);
  if (g_str_has_suffix (name, ".png"))
    return cairo_image_surface_create (CAIRO_FORMAT_RGB24, width, height);
  if (!g_str_has_suffix (name, ".pdf"))
    return NULL;
  cairo_surface_t *pdf = cairo_pdf_surface_create_for_stream (collect, into, width, height);
  cairo_pdf_surface_set_metadata (pdf, CAIRO_PDF_METADATA_TITLE, "Spelch");
  return pdf;
}

/* The whole picture in memory first, so that a failed save leaves an old picture alone. */
static bool
write_picture (const SpelchScene *scene, const char *output, int width, int height, GError **error)
{
  g_autoptr (GByteArray) bytes = g_byte_array_new ();
  cairo_surface_t *surface = surface_for (output, width, height, bytes);
  cairo_t *cr = cairo_create (surface);
  spelch_scene_draw (scene, cr);
  cairo_destroy (cr);
  cairo_surface_flush (surface);
  if (cairo_surface_get_type (surface) == CAIRO_SURFACE_TYPE_IMAGE)
    cairo_surface_write_to_png_stream (surface, collect, bytes);
  cairo_surface_finish (surface);
  cairo_surface_destroy (surface);
  return g_file_set_contents (output, (const char *)bytes->data, (gssize)bytes->len, error);
}

static bool
read_view (const SpelchAsked *asked, const SpelchPlan *plan, SpelchView *view, GError **error)
{
  static const char *const looks[] = { "light", "dark", "high-contrast", "paper" };
  static const SpelchCodes table = { "look", looks, G_N_ELEMENTS (looks) };
  int look = SPELCH_LOOK_LIGHT;
  int width = asked->width > 0 ? asked->width : WIDTH, height = asked->height > 0 ? asked->height : HEIGHT;
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
                        .shown_pass = (guint)CLAMP (asked->pass, 1, (int)MAX (plan->n_passes, 1)),
                        .with_marks = true };
  return spelch_asked_numbers (asked, &view->numbers, error);
}

int
spelch_command_draw (int argc, char **argv)
{
  g_auto (SpelchAsked) asked = { 0 };
  g_autoptr (GError) error = NULL;
  bool helped = false;
  if (!spelch_asked_read (&asked, "draw", _ ("Draws the side view of one cut to scale."),
                          SPELCH_ASKING_DRAWING, argc, argv, &helped, &error))
    return spelch_command_fail (error->message, SPELCH_EXIT_BAD_INPUT);
  if (helped)
    return SPELCH_EXIT_DONE;
  g_autoptr (SpelchPart) part = spelch_asked_part (&asked, &error);
  g_autofree int *cuts = part != NULL ? spelch_asked_cuts (&asked, part, &error) : NULL;
  if (cuts == NULL)
    return spelch_command_fail (error->message, SPELCH_EXIT_BAD_INPUT);
  const SpelchCut *cut = &part->cuts[cuts[0]];
  const SpelchBit *bit = spelch_asked_bit (part, cut);
  if (bit == NULL)
    return spelch_command_fail (_ ("No bit has been chosen for this cut yet: name one with --bit."),
                                SPELCH_EXIT_BAD_INPUT);

  SpelchPlan plan;
  SpelchView view;
  spelch_plan_make (spelch_shop_constants (), part, cut, bit, &plan);
  if (!read_view (&asked, &plan, &view, &error))
    return spelch_command_fail (error->message, SPELCH_EXIT_BAD_INPUT);
  g_autofree char *lower = g_ascii_strdown (asked.output, -1);
  if (!g_str_has_suffix (lower, ".svg") && !g_str_has_suffix (lower, ".png")
      && !g_str_has_suffix (lower, ".pdf"))
    return spelch_command_fail (_ ("The file to write must end in .svg, .png or .pdf."),
                                SPELCH_EXIT_BAD_INPUT);
  g_autoptr (SpelchScene) scene = spelch_scene_new (part, cut, bit, &plan, &view);
  if (!write_picture (scene, asked.output, (int)view.width, (int)view.height, &error))
    return spelch_command_fail (error->message, SPELCH_EXIT_NOT_WRITTEN);
  return plan.verdict == SPELCH_VERDICT_DO_NOT_CUT ? SPELCH_EXIT_DO_NOT_CUT : SPELCH_EXIT_DONE;
}
