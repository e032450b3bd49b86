/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "bench/help-windows.h"
#include "bench/escape.h"
#include "bench/paragraph.h"

#include <glib/gi18n-lib.h>

#define WIDTH  520
#define HEIGHT 560
#define MARGIN 24

static void
add_paragraph (GtkBox *box, const char *heading, const char *words)
{
  const char *texts[] = { heading, words };
  for (guint i = 0; i < G_N_ELEMENTS (texts); i++)
    {
      GtkWidget *label = spelch_paragraph_new (texts[i], i == 0 ? "strong" : "soft");
      if (i == 0)
        gtk_widget_set_margin_top (label, MARGIN / 2);
      gtk_box_append (box, label);
    }
}

static void
fill (GtkBox *box)
{
  add_paragraph (box, _ ("To scale, along the feed"),
                 _ ("The drawing looks along the feed. Board, kerf, bit and what the board rests on have one "
                    "scale; the motor is on the side where it really is."));
  add_paragraph (
      box, _ ("Up-shear and down-shear"),
      _ ("The chevrons beside the bit point the way its flutes push the fibres. Where they push a "
         "face's fibres out of the board, the face tears; where they push them in, it stays whole."));
  add_paragraph (box, _ ("Turn-over"),
                 _ ("On a compression bit the dotted line is the height at which the shear changes hand. The "
                    "first pass has to take it below the face on the motor side."));
  add_paragraph (box, _ ("Clean window"),
                 _ ("The bars beside the rule are the depths at which a face comes out clean, each with the "
                    "depth at which it begins."));
  add_paragraph (box, _ ("Splinters"),
                 _ ("Splinters at an edge mean that it tears. Their size shows the grade, not how long they "
                    "will be."));
  add_paragraph (
      box, _ ("Marks"),
      _ ("Drag a mark, or focus it and use the arrow keys. What is set by hand is held and shows a "
         "pin; everything else follows the recommendation."));
  add_paragraph (box, _ ("Before you cut"),
                 _ ("Forces, power and heat are estimates. Try a test strip, follow the instructions of tool "
                    "and machine and local rules, and ask a trained person where you aren't certain."));
}

/* Shows @box in a window of its own, however long it is. */
static void
show_window (GtkWindow *parent, const char *title, GtkWidget *box)
{
  GtkWidget *window = gtk_window_new ();
  GtkWidget *scroller = gtk_scrolled_window_new ();
  spelch_escape_closes (GTK_WINDOW (window));
  gtk_widget_add_css_class (window, "bench");
  gtk_widget_set_margin_start (box, MARGIN);
  gtk_widget_set_margin_end (box, MARGIN);
  gtk_widget_set_margin_bottom (box, MARGIN);
  gtk_scrolled_window_set_policy (GTK_SCROLLED_WINDOW (scroller), GTK_POLICY_NEVER, GTK_POLICY_AUTOMATIC);
  gtk_scrolled_window_set_child (GTK_SCROLLED_WINDOW (scroller), box);
  gtk_window_set_child (GTK_WINDOW (window), scroller);
  gtk_window_set_title (GTK_WINDOW (window), title);
  gtk_window_set_default_size (GTK_WINDOW (window), WIDTH, HEIGHT);
  gtk_window_set_transient_for (GTK_WINDOW (window), parent);
  gtk_window_present (GTK_WINDOW (window));
}

/* Not in a GtkShortcutsWindow, which gets wider than a small screen and doesn't scroll. */
void
spelch_help_show_keys (GtkWindow *parent)
{
  g_autoptr (GtkBuilder) builder = gtk_builder_new ();
  if (!gtk_builder_add_from_resource (builder, "/org/spelch/Spelch/ui/shortcuts.ui", NULL))
    return;
  GtkWidget *box = GTK_WIDGET (gtk_builder_get_object (builder, "shortcuts"));
  gtk_widget_set_margin_top (box, MARGIN);
  show_window (parent, _ ("Keyboard shortcuts"), box);
}

void
spelch_help_show_reading (GtkWindow *parent)
{
  GtkWidget *box = gtk_box_new (GTK_ORIENTATION_VERTICAL, 2);
  fill (GTK_BOX (box));
  show_window (parent, _ ("How to read the drawing"), box);
}
