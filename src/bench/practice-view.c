/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "bench/practice-view.h"
#include "bench/kept-picture.h"
#include "bench/side-view.h"
#include "bench/text-size.h"
#include "drawing/exercise-picture.h"
#include "shop/change.h"

#include <glib/gi18n-lib.h>
#include <math.h>

#define PICTURE_WIDTH  400
#define PICTURE_HEIGHT 220
#define ABOVE_HEIGHT   240 /* times the text size */
#define ABOVE_SIZE     12.0
#define ABOVE_GAP      12
#define BEGIN_SHARE    0.25 /* of the depth, where the bit stands before it is dragged: it tells nothing */
#define PAPER_PIXELS   9.0  /* the size of text that the picture is made for */

struct _SpelchPracticeView
{
  GtkWidget parent_instance;
  GtkWidget *all;           /* one above the other: */
  SpelchKeptPicture *above; /* the work seen from above, where that belongs to the question */
  GtkStack *stack;
  SpelchKeptPicture *picture;
  SpelchSideView *side_view;
  SpelchSession *session;
  GListModel *quantities;
  GtkFilter *filter; /* of the marks that are shown */
  SpelchLook look;
  SpelchLettering *lettering; /* of the picture from above */
  const SpelchPosed *posed;
  bool answered;
  bool showing; /* another question is being shown: nobody drags */
  double depth; /* as told last, mm */
};

G_DEFINE_FINAL_TYPE (SpelchPracticeView, spelch_practice_view, GTK_TYPE_WIDGET)

enum
{
  SIGNAL_DRAGGED,
  N_SIGNALS
};
static guint signals[N_SIGNALS];

SpelchSession *
spelch_practice_view_get_session (SpelchPracticeView *self)
{
  return self->session;
}

static bool
asks_depth (SpelchPracticeView *self)
{
  return self->posed != NULL && self->posed->by_depth && !self->answered;
}

/* ---- What is shown ---- */

static void
draw_picture (cairo_t *cr, double width, double height, gpointer data)
{
  SpelchPracticeView *self = data;
  if (self->posed == NULL)
    return;
  double larger = CLAMP (spelch_text_pixels (GTK_WIDGET (self)) / PAPER_PIXELS, 1, 3);
  SpelchLettering *lettering = spelch_lettering_new (NULL, 1);
  cairo_scale (cr, larger, larger);
  spelch_exercise_picture_draw (cr, self->posed, width / larger, height / larger, self->look, lettering);
  spelch_lettering_unref (lettering);
}

static void
draw_above (cairo_t *cr, double width, double height, gpointer data)
{
  SpelchPracticeView *self = data;
  GtkWidget *widget = GTK_WIDGET (self);
  if (self->posed == NULL || !spelch_exercise_picture_has_above (self->posed))
    return;
  spelch_text_keep_lettering (widget, &self->lettering);
  spelch_exercise_picture_draw_above (cr, self->posed, width, height, ABOVE_SIZE, self->look,
                                      spelch_session_get_numbers (self->session), self->lettering);
}

/* Large text needs more height for the words beside the picture. */
static void
size_above (SpelchPracticeView *self)
{
  spelch_kept_picture_set_size (self->above, PICTURE_WIDTH,
                                (int)(ABOVE_HEIGHT * spelch_text_factor (GTK_WIDGET (self))));
  spelch_kept_picture_changed (self->above);
}

static void
show_above (SpelchPracticeView *self)
{
  GtkWidget *frame = gtk_widget_get_parent (GTK_WIDGET (self->above));
  bool there = spelch_exercise_picture_has_above (self->posed);
  gtk_widget_set_visible (frame, there);
  if (!there)
    return;
  g_autofree char *words
      = spelch_exercise_picture_describe_above (self->posed, spelch_session_get_numbers (self->session));
  gtk_accessible_update_property (GTK_ACCESSIBLE (frame), GTK_ACCESSIBLE_PROPERTY_LABEL, words, -1);
  size_above (self);
}

static gboolean
is_marked (gpointer item, gpointer data)
{
  SpelchPracticeView *self = data;
  SpelchQuantityId id = spelch_quantity_get_id (item);
  if (self->answered)
    return TRUE;
  return asks_depth (self) && id.kind == SPELCH_MARK_PASS && id.index == 1;
}

static void
set_first_pass (SpelchPart *part, double depth)
{
  SpelchChange change = { .what = SPELCH_CHANGE_FIRST_PASS, .number = depth };
  spelch_change_apply (&change, part);
}

/* The part as it is drawn: while it is asked, with nothing in it that tells the answer. */
static SpelchPart *
part_of (SpelchPracticeView *self, const SpelchGiven *given)
{
  const SpelchPosed *posed = self->posed;
  SpelchPart *part = spelch_part_copy (posed->part);
  SpelchCut *cut = &part->cuts[0];
  int face;
  if (posed->by_depth && given == NULL)
    set_first_pass (part, round (posed->depth_most * BEGIN_SHARE));
  else if (posed->by_depth && given->choice < 0)
    set_first_pass (part, CLAMP (given->depth_mm, 0.1, posed->depth_most));
  if (posed->exercise->asks == SPELCH_ASKS_BIT && posed->right >= 0)
    g_strlcpy (cut->bit, posed->choices[posed->right], sizeof cut->bit);
  if (posed->exercise->asks == SPELCH_ASKS_WAY_UP && given != NULL && posed->right >= 0
      && spelch_code_read (&SPELCH_FACE_CODES, posed->choices[posed->right], &face))
    cut->way_up = (SpelchFace)face;
  return part;
}

/* What gives the answer away is shown only as a picture before it is answered. */
static bool
shows_side (SpelchPracticeView *self)
{
  SpelchAsks asks = self->posed->exercise->asks;
  return self->answered || asks == SPELCH_ASKS_FIRST_PASS || asks == SPELCH_ASKS_LIMIT
         || asks == SPELCH_ASKS_HOLD;
}

/* At which depths a pass is clean is the answer of a follow-up that is about passes. */
static bool
asks_passes_next (const SpelchPosed *posed)
{
  const SpelchFollowUp *next = &posed->exercise->follow_up;
  SpelchChangeKind what = next->change.what;
  return next->told && !posed->follow_up && posed->exercise->asks != SPELCH_ASKS_FIRST_PASS
         && (what == SPELCH_CHANGE_FIRST_PASS || what == SPELCH_CHANGE_DEPTH
             || what == SPELCH_CHANGE_OVERCUT);
}

void
spelch_practice_view_show (SpelchPracticeView *self, const SpelchPosed *posed, const SpelchGiven *given)
{
  self->posed = posed;
  self->answered = given != NULL;
  gtk_widget_set_visible (GTK_WIDGET (self), posed != NULL);
  if (posed == NULL)
    return;
  self->showing = true;
  g_autoptr (SpelchPart) part = part_of (self, given);
  spelch_session_set_asked (self->session, given == NULL);
  spelch_side_view_set_small (self->side_view, true, asks_passes_next (posed));
  spelch_session_open (self->session, part, NULL, NULL, false);
  gtk_filter_changed (self->filter, GTK_FILTER_CHANGE_DIFFERENT);
  spelch_kept_picture_changed (self->picture);
  show_above (self);
  gtk_stack_set_visible_child_name (self->stack, shows_side (self) ? "side" : "picture");
  self->showing = false;
}

void
spelch_practice_view_set_depth (SpelchPracticeView *self, double depth_mm)
{
  if (!asks_depth (self) || fabs (depth_mm - self->depth) < 1e-6)
    return;
  self->depth = depth_mm;
  SpelchPart *part = spelch_part_copy (spelch_session_get_part (self->session));
  set_first_pass (part, CLAMP (depth_mm, 0.1, self->posed->depth_most));
  self->showing = true;
  spelch_session_edit (self->session, part, _ ("type a depth"), "depth");
  self->showing = false;
}

static void
session_changed (SpelchSession *session, guint change, SpelchPracticeView *self)
{
  const SpelchPlan *plan = spelch_session_get_plan (session);
  if (self->showing || !asks_depth (self) || plan == NULL || plan->n_passes == 0)
    return;
  double depth = plan->passes[0].tip_mm;
  if (!(change & SPELCH_CHANGE_PART) || fabs (depth - self->depth) < 1e-6)
    return;
  self->depth = depth;
  g_signal_emit (self, signals[SIGNAL_DRAGGED], 0, depth);
}

void
spelch_practice_view_set_look (SpelchPracticeView *self, SpelchLook look)
{
  self->look = look;
  spelch_side_view_set_look (self->side_view, look);
  spelch_kept_picture_changed (self->picture);
  spelch_kept_picture_changed (self->above);
}

/* ---- Object ---- */

static void
spelch_practice_view_css_changed (GtkWidget *widget, GtkCssStyleChange *change)
{
  SpelchPracticeView *self = SPELCH_PRACTICE_VIEW (widget);
  GTK_WIDGET_CLASS (spelch_practice_view_parent_class)->css_changed (widget, change);
  spelch_kept_picture_changed (self->picture);
  size_above (self);
}

static void
spelch_practice_view_dispose (GObject *object)
{
  SpelchPracticeView *self = SPELCH_PRACTICE_VIEW (object);
  if (self->all != NULL)
    {
      spelch_kept_picture_set_draw (self->picture, NULL, NULL);
      spelch_kept_picture_set_draw (self->above, NULL, NULL);
    }
  if (self->session != NULL)
    g_signal_handlers_disconnect_by_data (self->session, self);
  g_clear_pointer (&self->all, gtk_widget_unparent);
  g_clear_pointer (&self->lettering, spelch_lettering_unref);
  g_clear_object (&self->quantities);
  g_clear_object (&self->filter);
  g_clear_object (&self->session);
  G_OBJECT_CLASS (spelch_practice_view_parent_class)->dispose (object);
}

static void
spelch_practice_view_class_init (SpelchPracticeViewClass *klass)
{
  GtkWidgetClass *widget_class = GTK_WIDGET_CLASS (klass);
  G_OBJECT_CLASS (klass)->dispose = spelch_practice_view_dispose;
  widget_class->css_changed = spelch_practice_view_css_changed;
  signals[SIGNAL_DRAGGED] = g_signal_new ("dragged", SPELCH_TYPE_PRACTICE_VIEW, G_SIGNAL_RUN_LAST, 0, NULL,
                                          NULL, NULL, G_TYPE_NONE, 1, G_TYPE_DOUBLE);
  gtk_widget_class_set_css_name (widget_class, "practiceview");
  gtk_widget_class_set_layout_manager_type (widget_class, GTK_TYPE_BIN_LAYOUT);
  gtk_widget_class_set_accessible_role (widget_class, GTK_ACCESSIBLE_ROLE_GROUP);
}

/* A picture that can't be taken hold of, with a name of its own. */
static GtkWidget *
picture_new (SpelchPracticeView *self, SpelchKeptPicture **picture, SpelchPictureDraw draw)
{
  GtkWidget *frame = g_object_new (GTK_TYPE_BOX, "accessible-role", GTK_ACCESSIBLE_ROLE_IMG, NULL);
  *picture = g_object_new (SPELCH_TYPE_KEPT_PICTURE, "hexpand", TRUE, "vexpand", TRUE, NULL);
  spelch_kept_picture_set_size (*picture, PICTURE_WIDTH, PICTURE_HEIGHT);
  spelch_kept_picture_set_draw (*picture, draw, self);
  gtk_widget_add_css_class (frame, "asked");
  gtk_box_append (GTK_BOX (frame), GTK_WIDGET (*picture));
  return frame;
}

static void
spelch_practice_view_init (SpelchPracticeView *self)
{
  GtkWidget *frame = picture_new (self, &self->picture, draw_picture);
  GtkWidget *above = picture_new (self, &self->above, draw_above);
  self->all = gtk_box_new (GTK_ORIENTATION_VERTICAL, ABOVE_GAP);
  self->stack = GTK_STACK (gtk_stack_new ());
  self->side_view = g_object_new (SPELCH_TYPE_SIDE_VIEW, "hexpand", TRUE, "vexpand", TRUE, NULL);
  gtk_accessible_update_property (GTK_ACCESSIBLE (frame), GTK_ACCESSIBLE_PROPERTY_LABEL,
                                  _ ("The board, the cut and the bits beside it, to one scale"), -1);
  gtk_stack_add_named (self->stack, frame, "picture");
  gtk_stack_add_named (self->stack, GTK_WIDGET (self->side_view), "side");
  gtk_widget_set_vexpand (above, FALSE);
  gtk_box_append (GTK_BOX (self->all), above);
  gtk_box_append (GTK_BOX (self->all), GTK_WIDGET (self->stack));
  gtk_widget_set_parent (self->all, GTK_WIDGET (self));
}

SpelchPracticeView *
spelch_practice_view_new (const SpelchConstants *constants)
{
  SpelchPracticeView *self = g_object_new (SPELCH_TYPE_PRACTICE_VIEW, NULL);
  self->session = spelch_session_new (constants);
  self->quantities = spelch_quantities_new (self->session);
  self->filter = GTK_FILTER (gtk_custom_filter_new (is_marked, self, NULL));
  g_autoptr (GListModel) marked = G_LIST_MODEL (
      gtk_filter_list_model_new (g_object_ref (self->quantities), g_object_ref (self->filter)));
  spelch_side_view_set_session (self->side_view, self->session, marked);
  g_signal_connect (self->session, "changed", G_CALLBACK (session_changed), self);
  return self;
}
