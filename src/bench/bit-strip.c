/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "bench/bit-strip.h"
#include "bench/text-size.h"

#define OWN_WIDTH_MOST 80 /* bits; more of them stand evenly */
#define TILES          48 /* of those that stand evenly */
#define BESIDE         12 /* bits out of sight that have tiles, at the least */
#define WIDTH_EM       9.0

static guint
count_tiles (const SpelchBitStrip *strip)
{
  return strip->width > 0 ? TILES : strip->n;
}

static void
hold_room (SpelchBitStrip *strip)
{
  guint rest = strip->n - strip->first - count_tiles (strip);
  gtk_widget_set_size_request (strip->before, (int)strip->first * strip->width, -1);
  gtk_widget_set_size_request (strip->after, (int)rest * strip->width, -1);
  gtk_widget_set_visible (strip->before, strip->first > 0);
  gtk_widget_set_visible (strip->after, rest > 0);
}

/* The keys go to no bit that isn't in sight any more. */
static void
let_focus_go (GtkWidget *tile)
{
  GtkRoot *root = gtk_widget_get_root (tile);
  if (root != NULL && gtk_widget_has_focus (tile))
    gtk_root_set_focus (root, NULL);
}

/* Takes the last tile to the front, or the first one to the end. */
static void
pass_on (SpelchBitStrip *strip, bool to_end)
{
  GtkWidget *room = GTK_WIDGET (strip->tiles);
  GtkWidget *first = gtk_widget_get_first_child (room), *last = gtk_widget_get_last_child (room);
  GtkWidget *tile = to_end ? first : last;
  let_focus_go (tile);
  gtk_box_reorder_child_after (strip->tiles, tile, to_end ? last : NULL);
  strip->first += to_end ? 1 : -1;
  guint place = to_end ? strip->first + TILES - 1 : strip->first;
  strip->show (SPELCH_BIT_TILE (tile), place, strip->data);
}

/* Leaves enough tiles on either side of what is in sight. */
static void
pushed (SpelchBitStrip *strip)
{
  GtkAdjustment *adjustment = gtk_scrolled_window_get_hadjustment (strip->scroller);
  if (strip->width == 0)
    return;
  int most = (int)strip->n - TILES;
  int from = (int)gtk_adjustment_get_value (adjustment) / strip->width;
  int to = from + (int)gtk_adjustment_get_page_size (adjustment) / strip->width + 1;
  int first = CLAMP ((int)strip->first, to + BESIDE - TILES + 1, from - BESIDE);
  if (to + BESIDE - TILES + 1 > from - BESIDE)
    first = (from + to) / 2 - TILES / 2; /* a very wide window */
  first = CLAMP (first, 0, most);
  if (first == (int)strip->first)
    return;
  if (ABS (first - (int)strip->first) >= TILES)
    {
      strip->first = (guint)first;
      spelch_bit_strip_show (strip);
    }
  while ((int)strip->first != first)
    pass_on (strip, first > (int)strip->first);
  hold_room (strip);
}

void
spelch_bit_strip_begin (SpelchBitStrip *strip)
{
  GtkAdjustment *adjustment = gtk_scrolled_window_get_hadjustment (strip->scroller);
  g_signal_connect_swapped (adjustment, "value-changed", G_CALLBACK (pushed), strip);
}

void
spelch_bit_strip_end (SpelchBitStrip *strip)
{
  if (strip->scroller != NULL)
    g_signal_handlers_disconnect_by_data (gtk_scrolled_window_get_hadjustment (strip->scroller), strip);
  strip->scroller = NULL;
}

void
spelch_bit_strip_show (SpelchBitStrip *strip)
{
  GtkWidget *tile = gtk_widget_get_first_child (GTK_WIDGET (strip->tiles));
  for (guint place = strip->first; tile != NULL; place++, tile = gtk_widget_get_next_sibling (tile))
    strip->show (SPELCH_BIT_TILE (tile), place, strip->data);
}

void
spelch_bit_strip_set_count (SpelchBitStrip *strip, guint n)
{
  bool even = n > OWN_WIDTH_MOST;
  double em = spelch_text_pixels (GTK_WIDGET (strip->tiles));
  guint have = 0;
  strip->n = n;
  strip->width = even ? (int)(em * WIDTH_EM) + gtk_box_get_spacing (strip->tiles) : 0;
  strip->first = even ? MIN (strip->first, n - TILES) : 0;
  for (GtkWidget *tile = gtk_widget_get_first_child (GTK_WIDGET (strip->tiles)); tile != NULL;
       tile = gtk_widget_get_next_sibling (tile))
    have++;
  for (; have > count_tiles (strip); have--)
    gtk_box_remove (strip->tiles, gtk_widget_get_last_child (GTK_WIDGET (strip->tiles)));
  for (; have < count_tiles (strip); have++)
    gtk_box_append (strip->tiles, GTK_WIDGET (strip->make (strip->data)));
  for (GtkWidget *tile = gtk_widget_get_first_child (GTK_WIDGET (strip->tiles)); tile != NULL;
       tile = gtk_widget_get_next_sibling (tile))
    spelch_bit_tile_set_width (SPELCH_BIT_TILE (tile), even ? (int)(em * WIDTH_EM) : -1);
  hold_room (strip);
  spelch_bit_strip_show (strip);
}

static GtkWidget *
tile_at (SpelchBitStrip *strip, guint place)
{
  GtkWidget *tile = gtk_widget_get_first_child (GTK_WIDGET (strip->tiles));
  for (guint at = strip->first; tile != NULL && at < place; at++)
    tile = gtk_widget_get_next_sibling (tile);
  return tile;
}

void
spelch_bit_strip_seek (SpelchBitStrip *strip, guint place)
{
  graphene_rect_t bounds
      = GRAPHENE_RECT_INIT ((float)(place * (guint)strip->width), 0, (float)strip->width, 1);
  if (strip->width == 0)
    {
      GtkWidget *tile = tile_at (strip, place);
      if (tile == NULL || !gtk_widget_compute_bounds (tile, GTK_WIDGET (strip->tiles), &bounds))
        return;
    }
  GtkAdjustment *adjustment = gtk_scrolled_window_get_hadjustment (strip->scroller);
  double left = (double)bounds.origin.x, right = left + (double)bounds.size.width;
  double value = gtk_adjustment_get_value (adjustment), page = gtk_adjustment_get_page_size (adjustment);
  /* Unlike gtk_adjustment_clamp_page() this ends a movement that is under way to what was clicked. */
  gtk_adjustment_set_value (adjustment, MIN (MAX (value, right - page), left));
}
