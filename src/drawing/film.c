/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "drawing/film.h"
#include "drawing/colour-table.h"
#include "drawing/motion-scene.h"
#include "files/file-io.h"

#include <gif_lib.h>
#include <glib/gi18n-lib.h>
#include <string.h>

#define PALETTE_PICTURES 8
#define HUNDREDTHS       100 /* GIF tells times in hundredths of a second */

struct _SpelchFilm
{
  SpelchMotion *motion;
  SpelchMotionScene *scene;
  SpelchMotionFrame *frame;
  guint pass, count, made, per_tooth;
  int width, height;
  char *path;
  bool animated, written;
  cairo_surface_t *picture;

  /* Of a GIF. */
  SpelchColourTable *colours;
  guint8 *indices, *before;
  GByteArray *bytes;
  GifFileType *gif;
};

G_DEFINE_QUARK (spelch - film - error - quark, spelch_film_error)

static bool
refuse (GError **error, SpelchFilmError code, char *sentence)
{
  g_set_error_literal (error, SPELCH_FILM_ERROR, (int)code, sentence);
  g_free (sentence);
  return false;
}

/* ---- Pictures ---- */

static void
draw_picture (SpelchFilm *film, guint i)
{
  const SpelchMotionPass *pass = &film->motion->passes[film->pass];
  cairo_t *cr = cairo_create (film->picture);

  spelch_motion_at (film->motion, film->pass, spelch_motion_tooth (pass) * i / film->per_tooth, film->frame);
  spelch_motion_scene_draw (film->scene, cr, film->frame, false);
  cairo_destroy (cr);
}

static char *
numbered (const SpelchFilm *film, guint i)
{
  g_autofree char *stem = g_strndup (film->path, strlen (film->path) - strlen (".png"));

  return g_strdup_printf ("%s-%03u.png", stem, i + 1);
}

static cairo_status_t
collect (void *closure, const unsigned char *data, unsigned int length)
{
  g_byte_array_append (closure, data, length);
  return CAIRO_STATUS_SUCCESS;
}

static bool
save (const char *path, const GByteArray *bytes, GError **error)
{
  g_autoptr (GError) local = NULL;
  g_autoptr (GFile) file = g_file_new_for_path (path);

  if (spelch_file_save_bytes (file, bytes->data, bytes->len, &local))
    return true;
  return refuse (error, SPELCH_FILM_ERROR_WRITE, g_strdup (local->message));
}

static bool
save_png (SpelchFilm *film, guint i, GError **error)
{
  g_autofree char *path = numbered (film, i);
  g_autoptr (GByteArray) bytes = g_byte_array_new ();

  cairo_surface_write_to_png_stream (film->picture, collect, bytes);
  return save (path, bytes, error);
}

/* ---- GIF ---- */

static int
collect_gif (GifFileType *gif, const GifByteType *data, int length)
{
  g_byte_array_append (gif->UserData, data, (guint)length);
  return length;
}

static ColorMapObject *
colour_map (SpelchColourTable *colours)
{
  GifColorType map[SPELCH_TABLE_COLOURS];

  for (guint i = 0; i < SPELCH_TABLE_COLOURS; i++)
    {
      guint8 rgb[3];

      spelch_colour_table_get (colours, i, rgb);
      map[i] = (GifColorType){ rgb[0], rgb[1], rgb[2] };
    }
  return GifMakeMapObject (SPELCH_TABLE_COLOURS, map);
}

/* For ever round. */
static bool
put_loop (GifFileType *gif)
{
  static const GifByteType AGAIN[] = { 1, 0, 0 };

  return EGifPutExtensionLeader (gif, APPLICATION_EXT_FUNC_CODE) == GIF_OK
         && EGifPutExtensionBlock (gif, 11, "NETSCAPE2.0") == GIF_OK
         && EGifPutExtensionBlock (gif, sizeof AGAIN, AGAIN) == GIF_OK
         && EGifPutExtensionTrailer (gif) == GIF_OK;
}

static bool
begin_gif (SpelchFilm *film)
{
  ColorMapObject *map;
  bool good;

  film->colours = spelch_colour_table_new ();
  for (guint i = 0; i < PALETTE_PICTURES; i++)
    {
      draw_picture (film, film->count * i / PALETTE_PICTURES);
      spelch_colour_table_count (film->colours, film->picture);
    }
  spelch_colour_table_choose (film->colours);
  film->indices = g_new (guint8, (gsize)film->width * film->height);
  film->before = g_new (guint8, (gsize)film->width * film->height);
  film->bytes = g_byte_array_new ();
  film->gif = EGifOpen (film->bytes, collect_gif, NULL);
  if (film->gif == NULL)
    return false;
  EGifSetGifVersion (film->gif, true);
  map = colour_map (film->colours);
  good
      = EGifPutScreenDesc (film->gif, film->width, film->height, 8, 0, map) == GIF_OK && put_loop (film->gif);
  GifFreeMapObject (map);
  return good;
}

typedef struct
{
  int x0, y0, x1, y1;
} Changed;

static bool
row_differs (const SpelchFilm *film, int y)
{
  gsize at = (gsize)y * film->width;

  return memcmp (&film->indices[at], &film->before[at], (gsize)film->width) != 0;
}

static bool
column_differs (const SpelchFilm *film, int x, int y0, int y1)
{
  for (int y = y0; y < y1; y++)
    if (film->indices[(gsize)y * film->width + x] != film->before[(gsize)y * film->width + x])
      return true;
  return false;
}

/* The rectangle in which a picture differs from the one before; one pixel when it doesn't. */
static Changed
find_changed (const SpelchFilm *film)
{
  Changed c = { 0, 0, film->width, film->height };

  if (film->made == 0)
    return c;
  while (c.y0 + 1 < c.y1 && !row_differs (film, c.y0))
    c.y0++;
  while (c.y1 - 1 > c.y0 && !row_differs (film, c.y1 - 1))
    c.y1--;
  while (c.x0 + 1 < c.x1 && !column_differs (film, c.x0, c.y0, c.y1))
    c.x0++;
  while (c.x1 - 1 > c.x0 && !column_differs (film, c.x1 - 1, c.y0, c.y1))
    c.x1--;
  return c;
}

static bool
put_picture (SpelchFilm *film)
{
  GraphicsControlBlock control = { .DisposalMode = DISPOSE_DO_NOT,
                                   .DelayTime = (int)(HUNDREDTHS / film->per_tooth),
                                   .TransparentColor = NO_TRANSPARENT_COLOR };
  GifByteType extension[4];
  Changed c;
  bool good;

  spelch_colour_table_index (film->colours, film->picture, film->indices);
  c = find_changed (film);
  EGifGCBToExtension (&control, extension);
  good = EGifPutExtension (film->gif, GRAPHICS_EXT_FUNC_CODE, sizeof extension, extension) == GIF_OK
         && EGifPutImageDesc (film->gif, c.x0, c.y0, c.x1 - c.x0, c.y1 - c.y0, false, NULL) == GIF_OK;
  for (int y = c.y0; good && y < c.y1; y++)
    good = EGifPutLine (film->gif, &film->indices[(gsize)y * film->width + c.x0], c.x1 - c.x0) == GIF_OK;
  memcpy (film->before, film->indices, (gsize)film->width * film->height);
  return good;
}

static bool
finish_gif (SpelchFilm *film, GError **error)
{
  GifFileType *gif = g_steal_pointer (&film->gif);

  if (EGifCloseFile (gif, NULL) != GIF_OK)
    return refuse (error, SPELCH_FILM_ERROR_WRITE, g_strdup (_ ("The animation could not be made.")));
  return save (film->path, film->bytes, error);
}

/* ---- Making ---- */

static bool
ends_in (const char *path, const char *ending)
{
  g_autofree char *lower = g_ascii_strdown (path, -1);

  return g_str_has_suffix (lower, ending);
}

static bool
check (const SpelchFilm *film, bool keep, GError **error)
{
  g_autofree char *first = NULL;

  if (!film->animated && !ends_in (film->path, ".png"))
    return refuse (error, SPELCH_FILM_ERROR_INPUT,
                   g_strdup (_ ("The file to write must end in .gif, for an animation, or in .png, for a "
                                "series of pictures.")));
  if (film->motion->n_passes == 0)
    return refuse (
        error, SPELCH_FILM_ERROR_INPUT,
        g_strdup (_ ("No pass can be cut as this is set, so there is nothing to show in motion.")));
  if ((double)film->width * film->height > SPELCH_FILM_MOST_PIXELS)
    return refuse (error, SPELCH_FILM_ERROR_INPUT,
                   g_strdup (_ ("The pictures would be too large. Make them smaller.")));
  if (film->animated || !keep)
    return true;
  first = numbered (film, 0);
  if (!g_file_test (first, G_FILE_TEST_EXISTS))
    return true;
  return refuse (error, SPELCH_FILM_ERROR_WRITE,
                 /* Translators: %s is the name of a file. */
                 g_strdup_printf (_ ("%s is there already. Choose another name."), first));
}

SpelchFilm *
spelch_film_new (const SpelchConstants *constants, const SpelchPart *part, const SpelchCut *cut,
                 const SpelchBit *bit, const SpelchPlan *plan, guint pass, const SpelchView *view,
                 const char *path, bool keep, GError **error)
{
  g_autoptr (SpelchFilm) film = g_new0 (SpelchFilm, 1);

  film->path = g_strdup (path);
  film->animated = ends_in (path, ".gif");
  film->per_tooth = film->animated ? SPELCH_FILM_GIF_PER_TOOTH : SPELCH_FILM_PNG_PER_TOOTH;
  film->width = (int)view->width;
  film->height = (int)view->height;
  film->motion = spelch_motion_new (constants, part, cut, bit, plan);
  if (!check (film, keep, error))
    return NULL;
  film->pass = MIN (pass, film->motion->n_passes - 1);
  film->count = (guint)film->motion->passes[film->pass].teeth * SPELCH_MOTION_TURNS * film->per_tooth;
  film->frame = g_new (SpelchMotionFrame, 1);
  film->scene = spelch_motion_scene_new (part, cut, bit, plan, film->motion, film->pass, view, 1);
  film->picture = cairo_image_surface_create (CAIRO_FORMAT_RGB24, film->width, film->height);
  if (film->animated && !begin_gif (film))
    {
      refuse (error, SPELCH_FILM_ERROR_WRITE, g_strdup (_ ("The animation could not be made.")));
      return NULL;
    }
  return g_steal_pointer (&film);
}

void
spelch_film_free (SpelchFilm *film)
{
  if (film == NULL)
    return;
  if (film->gif != NULL)
    EGifCloseFile (film->gif, NULL);
  g_clear_pointer (&film->bytes, g_byte_array_unref);
  g_clear_pointer (&film->colours, spelch_colour_table_free);
  g_clear_pointer (&film->picture, cairo_surface_destroy);
  g_clear_pointer (&film->scene, spelch_motion_scene_free);
  g_free (film->indices);
  g_free (film->before);
  g_free (film->frame);
  g_free (film->motion);
  g_free (film->path);
  g_free (film);
}

guint
spelch_film_count (const SpelchFilm *film)
{
  return film->count;
}

guint
spelch_film_made (const SpelchFilm *film)
{
  return film->made;
}

bool
spelch_film_is_done (const SpelchFilm *film)
{
  return film->written;
}

bool
spelch_film_step (SpelchFilm *film, GError **error)
{
  if (film->written)
    return true;
  draw_picture (film, film->made);
  if (!film->animated && !save_png (film, film->made, error))
    return false;
  if (film->animated && !put_picture (film))
    return refuse (error, SPELCH_FILM_ERROR_WRITE, g_strdup (_ ("The animation could not be made.")));
  film->made++;
  if (film->made < film->count)
    return true;
  if (film->animated && !finish_gif (film, error))
    return false;
  film->written = true;
  return true;
}
