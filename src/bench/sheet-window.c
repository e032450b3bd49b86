/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "bench/sheet-window.h"
#include "bench/escape.h"
#include "bench/one-window.h"
#include "bench/page.h"
#include "bench/text-size.h"
#include "drawing/sheet-file.h"
#include "files/file-io.h"
#include "files/shop-data.h"

#include <glib/gi18n-lib.h>
#include <math.h>

#define WIDTH      940
#define HEIGHT     860
#define DOTS       (96.0 / 25.4) /* pixels of the screen to a millimetre of paper */
#define PAGE_GAP   18
#define KEY        "spelch-sheet-view" /* of the window's data */
#define PAPER_NEAR 2.0                 /* mm by which a printer's paper may differ from its name */

/* A sheet with all that it is made of; counted, for a print job may outlive the window. */
typedef struct
{
  SpelchWork *work;
  SpelchSheet *sheet;
  SpelchNumbers numbers;
  char *file, *revision, *date;
  GDateTime *when;
} Bundle;

typedef struct
{
  GtkWindow *window;
  SpelchSession *session;
  Bundle *bundle; /* NULL: there is no part, or none with a cut */
  GtkBox *pages;
  GtkDropDown *paper;
  GtkWidget *said_bar;
  GtkLabel *about, *said, *nothing;
} View;

/* ---- Sheet ---- */

static void
bundle_clear (gpointer data)
{
  Bundle *bundle = data;
  g_clear_pointer (&bundle->sheet, spelch_sheet_free);
  g_clear_pointer (&bundle->work, spelch_work_free);
  g_clear_pointer (&bundle->when, g_date_time_unref);
  g_free (bundle->file);
  g_free (bundle->revision);
  g_free (bundle->date);
}

static void
bundle_unref (gpointer bundle)
{
  g_atomic_rc_box_release_full (bundle, bundle_clear);
}

static void
lay_out (Bundle *bundle, SpelchPaper paper)
{
  const SpelchSheetOf of = { .work = bundle->work,
                             .constants = spelch_shop_constants (),
                             .numbers = bundle->numbers,
                             .paper = paper,
                             .file = bundle->file,
                             .revision = bundle->revision,
                             .date = bundle->date };
  g_clear_pointer (&bundle->sheet, spelch_sheet_free);
  bundle->sheet = spelch_sheet_new (&of);
}

static SpelchWork *
find_work (SpelchSession *session)
{
  g_autoptr (GArray) bits = g_array_new (FALSE, FALSE, sizeof (SpelchBit));
  for (guint i = 0; i < spelch_session_count_bits (session); i++)
    g_array_append_val (bits, *spelch_session_get_nth_bit (session, i));
  return spelch_work_find (spelch_shop_constants (), spelch_session_get_part (session), NULL,
                           (const SpelchBit *)(const void *)bits->data, bits->len);
}

static Bundle *
bundle_new (SpelchSession *session, SpelchPaper paper)
{
  const SpelchPart *part = spelch_session_get_part (session);
  GFile *file = spelch_session_get_file (session);
  if (part == NULL || part->n_cuts == 0)
    return NULL;
  Bundle *bundle = g_atomic_rc_box_new0 (Bundle);
  bundle->work = find_work (session);
  bundle->numbers = *spelch_session_get_numbers (session);
  bundle->file = file != NULL ? spelch_file_name (file) : g_strdup ("");
  bundle->revision = spelch_sheet_revision (part);
  bundle->when = spelch_sheet_moment ();
  bundle->date = g_date_time_format (bundle->when, "%Y-%m-%d");
  lay_out (bundle, paper);
  return bundle;
}

/* ---- Showing ---- */

static void
say (GtkWindow *window, const char *sentence)
{
  View *view = g_object_get_data (G_OBJECT (window), KEY);
  if (view == NULL)
    return; /* closed meanwhile */
  gtk_label_set_text (view->said, sentence);
  gtk_widget_set_visible (view->said_bar, sentence[0] != '\0');
}

/* Pages grow with the text of everything else. */
static double
dots_of (const View *view)
{
  return DOTS * spelch_text_factor (GTK_WIDGET (view->window));
}

static void
draw_page (GtkDrawingArea *area, cairo_t *cr, int width, int height, gpointer data)
{
  const View *view = data;
  guint page = GPOINTER_TO_UINT (g_object_get_data (G_OBJECT (area), "page"));
  if (view->bundle == NULL || page >= spelch_sheet_pages (view->bundle->sheet))
    return;
  const double dots = width / spelch_paper_width (spelch_sheet_paper (view->bundle->sheet));
  cairo_scale (cr, dots, dots);
  spelch_sheet_draw (view->bundle->sheet, page, cr);
}

static void
add_page (View *view, guint page)
{
  const SpelchSheet *sheet = view->bundle->sheet;
  SpelchPaper paper = spelch_sheet_paper (sheet);
  GtkWidget *area = g_object_new (GTK_TYPE_DRAWING_AREA, "accessible-role", GTK_ACCESSIBLE_ROLE_IMG, NULL);
  g_autofree char *name = g_strdup_printf (_ ("Page %u of %u"), page + 1, spelch_sheet_pages (sheet));
  g_autofree char *whole = g_strdup_printf (_ ("%s: %s"), name, spelch_sheet_title (sheet, page));
  g_autofree char *words = spelch_sheet_words (sheet, page);
  g_object_set_data (G_OBJECT (area), "page", GUINT_TO_POINTER (page));
  gtk_drawing_area_set_content_width (GTK_DRAWING_AREA (area),
                                      (int)round (spelch_paper_width (paper) * dots_of (view)));
  gtk_drawing_area_set_content_height (GTK_DRAWING_AREA (area),
                                       (int)round (spelch_paper_height (paper) * dots_of (view)));
  gtk_drawing_area_set_draw_func (GTK_DRAWING_AREA (area), draw_page, view, NULL);
  gtk_widget_set_halign (area, GTK_ALIGN_CENTER);
  gtk_widget_add_css_class (area, "sheetpage");
  gtk_accessible_update_property (GTK_ACCESSIBLE (area), GTK_ACCESSIBLE_PROPERTY_LABEL, whole,
                                  GTK_ACCESSIBLE_PROPERTY_DESCRIPTION, words, -1);
  gtk_box_append (view->pages, area);
}

static void
enable (View *view, bool any)
{
  static const char *const NAMES[] = { "print", "export-picture" };
  for (guint i = 0; i < G_N_ELEMENTS (NAMES); i++)
    g_simple_action_set_enabled (
        G_SIMPLE_ACTION (g_action_map_lookup_action (G_ACTION_MAP (view->window), NAMES[i])), any);
}

/* As many pages as there are now. Those that stay keep their place under the scroll bar. */
static void
show_pages (View *view)
{
  GtkWidget *child;
  guint n = view->bundle != NULL ? spelch_sheet_pages (view->bundle->sheet) : 0;
  const SpelchPart *part = spelch_session_get_part (view->session);
  g_autofree char *title = g_strdup_printf (_ ("Bench sheet – %s"), part != NULL ? part->name : "");
  while ((child = gtk_widget_get_first_child (GTK_WIDGET (view->pages))) != NULL)
    gtk_box_remove (view->pages, child);
  for (guint i = 0; i < n; i++)
    add_page (view, i);
  gtk_widget_set_visible (GTK_WIDGET (view->nothing), n == 0);
  gtk_window_set_title (view->window, title);
  gtk_label_set_text (view->about, part != NULL ? part->name : "");
  enable (view, n > 0);
}

static void
make_anew (View *view)
{
  g_clear_pointer (&view->bundle, bundle_unref);
  view->bundle = bundle_new (view->session, (SpelchPaper)gtk_drop_down_get_selected (view->paper));
  show_pages (view);
}

static void
session_settled (SpelchSession *session, guint change, GtkWindow *window)
{
  View *view = g_object_get_data (G_OBJECT (window), KEY);
  if (change & (SPELCH_CHANGE_PART | SPELCH_CHANGE_OPENED | SPELCH_CHANGE_BITS | SPELCH_CHANGE_NUMBERS))
    make_anew (view);
}

/* ---- Printing ---- */

/* What is chosen for the printer decides; the scale stays true. */
static void
begin_print (GtkPrintOperation *operation, GtkPrintContext *context, Bundle *bundle)
{
  GtkPageSetup *setup = gtk_print_context_get_page_setup (context);
  double width = gtk_page_setup_get_paper_width (setup, GTK_UNIT_MM);
  bool letter = fabs (width - spelch_paper_width (SPELCH_PAPER_LETTER)) < PAPER_NEAR;
  SpelchPaper paper = letter ? SPELCH_PAPER_LETTER : SPELCH_PAPER_A4;
  if (paper != spelch_sheet_paper (bundle->sheet))
    lay_out (bundle, paper);
  gtk_print_operation_set_n_pages (operation, (int)spelch_sheet_pages (bundle->sheet));
}

static void
print_page (GtkPrintOperation *operation, GtkPrintContext *context, int number, Bundle *bundle)
{
  cairo_t *cr = gtk_print_context_get_cairo_context (context);
  double width = spelch_paper_width (spelch_sheet_paper (bundle->sheet));
  double height = spelch_paper_height (spelch_sheet_paper (bundle->sheet));
  cairo_rectangle (cr, 0, 0, width, height);
  cairo_clip (cr);
  spelch_sheet_draw (bundle->sheet, (guint)number, cr);
}

static GtkPrintOperation *
operation_of (Bundle *bundle)
{
  GtkPrintOperation *operation = gtk_print_operation_new ();
  bool letter = spelch_sheet_paper (bundle->sheet) == SPELCH_PAPER_LETTER;
  g_autoptr (GtkPageSetup) setup = gtk_page_setup_new ();
  GtkPaperSize *size = gtk_paper_size_new (letter ? GTK_PAPER_NAME_LETTER : GTK_PAPER_NAME_A4);
  gtk_page_setup_set_paper_size_and_default_margins (setup, size);
  gtk_paper_size_free (size);
  gtk_print_operation_set_default_page_setup (operation, setup);
  gtk_print_operation_set_embed_page_setup (operation, TRUE);
  gtk_print_operation_set_use_full_page (operation, TRUE);
  gtk_print_operation_set_unit (operation, GTK_UNIT_MM);
  gtk_print_operation_set_n_pages (operation, (int)spelch_sheet_pages (bundle->sheet));
  gtk_print_operation_set_job_name (operation, spelch_sheet_title (bundle->sheet, 0));
  g_signal_connect (operation, "begin-print", G_CALLBACK (begin_print), bundle);
  g_signal_connect (operation, "draw-page", G_CALLBACK (print_page), bundle);
  return operation;
}

static void
do_print (GSimpleAction *action, GVariant *parameter, gpointer data)
{
  View *view = data;
  g_autoptr (GError) error = NULL;
  Bundle *bundle = bundle_new (view->session, (SpelchPaper)gtk_drop_down_get_selected (view->paper));
  g_autoptr (GtkWindow) window = g_object_ref (view->window);
  if (bundle == NULL)
    return;
  g_autoptr (GtkPrintOperation) operation = operation_of (bundle);
  g_object_set_data_full (G_OBJECT (operation), "bundle", bundle, bundle_unref);
  say (window, "");
  if (gtk_print_operation_run (operation, GTK_PRINT_OPERATION_ACTION_PRINT_DIALOG, window, &error)
      != GTK_PRINT_OPERATION_RESULT_ERROR)
    return;
  g_autofree char *words = g_strdup_printf (
      _ ("It can't be printed: %s. Export it as a PDF and print that, or try another printer."),
      error->message);
  say (window, words);
}

static bool
save (GFile *file, gconstpointer data, GError **error)
{
  const Bundle *bundle = data;
  return spelch_sheet_save (bundle->sheet, file, bundle->when, error);
}

static void
do_export (GSimpleAction *action, GVariant *parameter, gpointer data)
{
  View *view = data;
  const SpelchPart *part = spelch_session_get_part (view->session);
  if (view->bundle == NULL)
    return;
  g_autofree char *stem = spelch_file_stem (part->name, _ ("part"));
  /* Translators: the name of a file to begin with: the part's name, and what it holds. */
  g_autofree char *name = g_strdup_printf (_ ("%s, bench sheet"), stem);
  say (view->window, "");
  spelch_page_export (&(SpelchPage){ .title = _ ("Bench sheet"),
                                     .name = name,
                                     .save = save,
                                     .data = g_atomic_rc_box_acquire (view->bundle),
                                     .free_data = bundle_unref },
                      view->window, say);
}

static void
do_close (GSimpleAction *action, GVariant *parameter, gpointer data)
{
  gtk_window_close (((View *)data)->window);
}

static const GActionEntry ACTIONS[] = {
  { .name = "print", .activate = do_print },
  { .name = "export-picture", .activate = do_export },
  { .name = "close", .activate = do_close },
};

/* ---- Making ---- */

static GtkWidget *
quiet_button (const char *label, const char *action)
{
  GtkWidget *button = gtk_button_new_with_label (label);
  gtk_actionable_set_action_name (GTK_ACTIONABLE (button), action);
  gtk_widget_add_css_class (button, "quiet");
  return button;
}

static SpelchPaper
usual_paper (void)
{
  return g_str_equal (gtk_paper_size_get_default (), GTK_PAPER_NAME_LETTER) ? SPELCH_PAPER_LETTER
                                                                            : SPELCH_PAPER_A4;
}

static GtkWidget *
make_head (View *view)
{
  GtkWidget *head = gtk_header_bar_new (), *title = gtk_label_new (_ ("Bench sheet"));
  const char *const papers[] = { [SPELCH_PAPER_A4] = "A4", [SPELCH_PAPER_LETTER] = _ ("Letter"), NULL };
  GtkWidget *about = gtk_label_new (NULL), *paper = gtk_drop_down_new_from_strings (papers);
  view->about = GTK_LABEL (about);
  view->paper = GTK_DROP_DOWN (paper);
  gtk_label_set_ellipsize (view->about, PANGO_ELLIPSIZE_END);
  gtk_widget_add_css_class (title, "part");
  gtk_widget_add_css_class (about, "soft");
  gtk_drop_down_set_selected (view->paper, usual_paper ());
  gtk_accessible_update_property (GTK_ACCESSIBLE (paper), GTK_ACCESSIBLE_PROPERTY_LABEL, _ ("Paper"), -1);
  gtk_header_bar_set_title_widget (GTK_HEADER_BAR (head), gtk_box_new (GTK_ORIENTATION_HORIZONTAL, 0));
  gtk_header_bar_pack_start (GTK_HEADER_BAR (head), title);
  gtk_header_bar_pack_start (GTK_HEADER_BAR (head), about);
  gtk_header_bar_pack_end (GTK_HEADER_BAR (head), quiet_button (_ ("Print…"), "win.print"));
  gtk_header_bar_pack_end (GTK_HEADER_BAR (head), quiet_button (_ ("Export…"), "win.export-picture"));
  gtk_header_bar_pack_end (GTK_HEADER_BAR (head), paper);
  return head;
}

static void
close_said (View *view)
{
  say (view->window, "");
}

static GtkWidget *
make_said (View *view)
{
  GtkWidget *said = g_object_new (GTK_TYPE_LABEL, "accessible-role", GTK_ACCESSIBLE_ROLE_STATUS, "wrap", TRUE,
                                  "xalign", 0.0, "hexpand", TRUE, NULL);
  GtkWidget *button = gtk_button_new_with_label (_ ("Close"));
  view->said = GTK_LABEL (said);
  view->said_bar = gtk_box_new (GTK_ORIENTATION_HORIZONTAL, 12);
  gtk_widget_add_css_class (view->said_bar, "saidbar");
  gtk_widget_add_css_class (button, "quiet");
  gtk_widget_set_visible (view->said_bar, FALSE);
  gtk_box_append (GTK_BOX (view->said_bar), said);
  gtk_box_append (GTK_BOX (view->said_bar), button);
  g_signal_connect_swapped (button, "clicked", G_CALLBACK (close_said), view);
  return view->said_bar;
}

static GtkWidget *
make_body (View *view)
{
  GtkWidget *all = gtk_box_new (GTK_ORIENTATION_VERTICAL, 0), *scroller = gtk_scrolled_window_new ();
  GtkWidget *inner = gtk_box_new (GTK_ORIENTATION_VERTICAL, PAGE_GAP);
  GtkWidget *nothing = gtk_label_new (_ ("There is no cut to print yet. Add one on the bench."));
  view->pages = GTK_BOX (gtk_box_new (GTK_ORIENTATION_VERTICAL, PAGE_GAP));
  view->nothing = GTK_LABEL (nothing);
  gtk_widget_add_css_class (nothing, "soft");
  gtk_widget_add_css_class (inner, "sheetpages");
  gtk_label_set_wrap (view->nothing, TRUE);
  gtk_widget_set_vexpand (scroller, TRUE);
  gtk_widget_set_focusable (scroller, TRUE);
  gtk_accessible_update_property (GTK_ACCESSIBLE (scroller), GTK_ACCESSIBLE_PROPERTY_LABEL,
                                  _ ("Pages of the bench sheet"), -1);
  gtk_box_append (GTK_BOX (inner), nothing);
  gtk_box_append (GTK_BOX (inner), GTK_WIDGET (view->pages));
  gtk_scrolled_window_set_child (GTK_SCROLLED_WINDOW (scroller), inner);
  gtk_box_append (GTK_BOX (all), make_said (view));
  gtk_box_append (GTK_BOX (all), scroller);
  return all;
}

static void
view_free (gpointer data)
{
  View *view = data;
  g_clear_pointer (&view->bundle, bundle_unref);
  g_clear_object (&view->session);
  g_free (view);
}

static GtkWindow *
window_new (GtkWindow *bench, SpelchSession *session, SpelchAppearance *appearance)
{
  View *view = g_new0 (View, 1);
  view->window = GTK_WINDOW (gtk_application_window_new (gtk_window_get_application (bench)));
  view->session = g_object_ref (session);
  g_action_map_add_action_entries (G_ACTION_MAP (view->window), ACTIONS, G_N_ELEMENTS (ACTIONS), view);
  gtk_window_set_titlebar (view->window, make_head (view));
  gtk_window_set_child (view->window, make_body (view));
  gtk_window_set_default_size (view->window, WIDTH, HEIGHT);
  gtk_window_set_icon_name (view->window, "org.spelch.Spelch");
  gtk_widget_add_css_class (GTK_WIDGET (view->window), "bench");
  gtk_widget_add_css_class (GTK_WIDGET (view->window), "sheet");
  spelch_escape_closes (view->window);
  g_object_set_data_full (G_OBJECT (view->window), KEY, view, view_free);
  g_signal_connect_swapped (view->paper, "notify::selected", G_CALLBACK (make_anew), view);
  g_signal_connect_object (session, "settled", G_CALLBACK (session_settled), view->window, 0);
  make_anew (view);
  return view->window;
}

void
spelch_sheet_window_add_action (GtkApplicationWindow *bench, SpelchSession *session)
{
  spelch_one_window_add_action (bench, "print", session, NULL, window_new);
}
