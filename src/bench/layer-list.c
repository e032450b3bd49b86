/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "bench/layer-list.h"
#include "bench/form.h"
#include "bench/later-menu.h"
#include "bench/shelf-kind.h"
#include "bench/template.h"
#include "shop/make-up.h"

#include <glib/gi18n-lib.h>
#include <string.h>

struct _SpelchLayerList
{
  GtkWidget parent_instance;
  GtkListBox *list;
  GtkMenuButton *make_ups, *plies;
  GtkBox *below;
  SpelchForm *form;
  SpelchBoard board;
  SpelchNumbers numbers;
  guint chosen;
  bool showing;
};

G_DEFINE_FINAL_TYPE (SpelchLayerList, spelch_layer_list, GTK_TYPE_WIDGET)

enum
{
  SIGNAL_EDITED,
  SIGNAL_DRAFTED,
  N_SIGNALS
};
static guint signals[N_SIGNALS];

static const char *const MATERIALS[]
    = { N_ ("Softwood"),      N_ ("Hardwood"), N_ ("Birch veneer"), N_ ("Softwood, poplar or okoume veneer"),
        N_ ("Particleboard"), N_ ("MDF"),      N_ ("Laminate"),     NULL };
static const char *const GRAINS[]
    = { N_ ("None"), N_ ("Straight"), N_ ("Figured"), N_ ("End grain on the face"), NULL };
static const char *const MAKE_UPS[SPELCH_MAKE_UPS] = {
  [SPELCH_MAKE_UP_BIRCH_PLY] = N_ ("Birch plywood"),
  [SPELCH_MAKE_UP_SOFTWOOD_PLY] = N_ ("Softwood plywood"),
  [SPELCH_MAKE_UP_OKOUME_PLY] = N_ ("Okoume plywood"),
  [SPELCH_MAKE_UP_VENEERED_PLY] = N_ ("Veneered plywood"),
  [SPELCH_MAKE_UP_MELAMINE_PARTICLEBOARD] = N_ ("Melamine-faced particleboard"),
  [SPELCH_MAKE_UP_MELAMINE_MDF] = N_ ("Melamine-faced MDF"),
  [SPELCH_MAKE_UP_VENEERED_MDF] = N_ ("Veneered MDF"),
  [SPELCH_MAKE_UP_PARTICLEBOARD] = N_ ("Particleboard"),
  [SPELCH_MAKE_UP_MDF] = N_ ("MDF"),
  [SPELCH_MAKE_UP_SOLID_SOFTWOOD] = N_ ("Solid softwood"),
  [SPELCH_MAKE_UP_SOLID_HARDWOOD] = N_ ("Solid hardwood"),
};

static bool
has_fibres (gconstpointer value)
{
  return ((const SpelchLayer *)value)->material < SPELCH_MATERIAL_PARTICLEBOARD;
}

#define AT(member) G_STRUCT_OFFSET (SpelchLayer, member)

static const SpelchField FIELDS[] = {
  { SPELCH_FIELD_LENGTH, "thickness", N_ ("Layer thickness"), AT (thickness),
    .hint = N_ ("The thickness of the board follows.") },
  { SPELCH_FIELD_CHOICE, "material", N_ ("Material"), AT (material), .choices = MATERIALS },
  { SPELCH_FIELD_CHOICE, "grain", N_ ("Grain"), AT (grain), .choices = GRAINS, .applies = has_fibres },
  { SPELCH_FIELD_NUMBER, "grain_deg", N_ ("Grain angle"), AT (grain_deg), .unit = N_ ("°"),
    .applies = has_fibres, .hint = N_ ("0 along the board, 90 across, counter-clockwise seen from face a.") },
  { SPELCH_FIELD_FLAG, "veneer", N_ ("Veneer"), AT (veneer),
    .hint = N_ ("A leaf glued to what is under it, as the plies of plywood are.") },
};

/* ---- Words ---- */

static char *
words_of (const SpelchBoard *board, guint i, const SpelchNumbers *numbers)
{
  const SpelchLayer *layer = &board->layers[i];
  g_autofree char *thickness = spelch_length_show_whole (&layer->thickness, numbers->unit,
                                                         numbers->inch_style, numbers->decimal_sign);
  const char *place = i == 0 ? _ (", face a") : i + 1 == board->n_layers ? _ (", face b") : "";
  if (!has_fibres (layer))
    return g_strdup_printf ("%u. %s, %s%s", i + 1, _ (MATERIALS[layer->material]), thickness, place);
  return g_strdup_printf ("%u. %s, %s, %.4g°%s", i + 1, _ (MATERIALS[layer->material]), thickness,
                          layer->grain_deg, place);
}

static void
emit (SpelchLayerList *self, const SpelchBoard *board, const char *what)
{
  SpelchBoard next = *board;
  g_signal_emit (self, signals[SIGNAL_EDITED], 0, &next, what);
}

/* ---- Editing ---- */

static void
move_layer (SpelchLayerList *self, guint from, guint to)
{
  SpelchBoard next = self->board;
  if (from >= next.n_layers || to >= next.n_layers || from == to)
    return;
  SpelchLayer moved = next.layers[from];
  for (guint i = from; i < to; i++)
    next.layers[i] = next.layers[i + 1];
  for (guint i = from; i > to; i--)
    next.layers[i] = next.layers[i - 1];
  next.layers[to] = moved;
  self->chosen = to;
  emit (self, &next, _ ("order of layers"));
}

static void
add_layer (GtkWidget *widget, const char *action, GVariant *parameter)
{
  SpelchLayerList *self = SPELCH_LAYER_LIST (widget);
  SpelchBoard next = self->board;
  if (next.n_layers >= SPELCH_MAX_LAYERS)
    return;
  for (guint i = next.n_layers; i > self->chosen; i--)
    next.layers[i] = next.layers[i - 1];
  next.n_layers++;
  self->chosen++;
  spelch_make_up_sum (&next);
  emit (self, &next, _ ("layers"));
}

static void
remove_layer (GtkWidget *widget, const char *action, GVariant *parameter)
{
  SpelchLayerList *self = SPELCH_LAYER_LIST (widget);
  SpelchBoard next = self->board;
  if (next.n_layers < 2)
    return;
  for (guint i = self->chosen; i + 1 < next.n_layers; i++)
    next.layers[i] = next.layers[i + 1];
  next.n_layers--;
  self->chosen = MIN (self->chosen, next.n_layers - 1);
  spelch_make_up_sum (&next);
  emit (self, &next, _ ("layers"));
}

static void
move_up (GtkWidget *widget, const char *action, GVariant *parameter)
{
  SpelchLayerList *self = SPELCH_LAYER_LIST (widget);
  if (self->chosen > 0)
    move_layer (self, self->chosen, self->chosen - 1);
}

static void
move_down (GtkWidget *widget, const char *action, GVariant *parameter)
{
  SpelchLayerList *self = SPELCH_LAYER_LIST (widget);
  move_layer (self, self->chosen, self->chosen + 1);
}

static void
make_up (GtkWidget *widget, const char *action, GVariant *parameter)
{
  SpelchLayerList *self = SPELCH_LAYER_LIST (widget);
  SpelchBoard next = self->board;
  spelch_make_up_apply ((SpelchMakeUp)CLAMP (g_variant_get_int32 (parameter), 0, SPELCH_MAKE_UPS - 1), &next);
  self->chosen = 0;
  emit (self, &next, _ ("make-up"));
}

static void
set_plies (GtkWidget *widget, const char *action, GVariant *parameter)
{
  SpelchLayerList *self = SPELCH_LAYER_LIST (widget);
  SpelchBoard next = self->board;
  if (!spelch_make_up_set_plies (&next, (guint)g_variant_get_int32 (parameter)))
    return;
  self->chosen = MIN (self->chosen, next.n_layers - 1);
  emit (self, &next, _ ("number of plies"));
}

static void
alike (GtkWidget *widget, const char *action, GVariant *parameter)
{
  SpelchLayerList *self = SPELCH_LAYER_LIST (widget);
  SpelchBoard next = self->board;
  spelch_make_up_alike (&next);
  emit (self, &next, _ ("make-up"));
}

/* Both faces covered with what the chosen layer isn't: a film. */
static void
face_both (GtkWidget *widget, const char *action, GVariant *parameter)
{
  SpelchLayerList *self = SPELCH_LAYER_LIST (widget);
  SpelchBoard next = self->board;
  bool film = g_str_equal (g_variant_get_string (parameter, NULL), "laminate");
  const SpelchLayer laminate
      = { spelch_length_mm (0.15), SPELCH_MATERIAL_LAMINATE, SPELCH_GRAIN_NONE, 0, false };
  const SpelchLayer veneer
      = { spelch_length_mm (0.6), SPELCH_MATERIAL_HARDWOOD, SPELCH_GRAIN_STRAIGHT, 0, true };
  if (spelch_make_up_face (&next, film ? &laminate : &veneer))
    emit (self, &next, _ ("make-up"));
}

/* ---- The chosen layer's form ---- */

static void
settle (const SpelchLayer *before, SpelchLayer *after)
{
  if (!has_fibres (after))
    {
      after->grain = SPELCH_GRAIN_NONE;
      after->grain_deg = 0;
    }
  else if (!has_fibres (before) && after->grain == SPELCH_GRAIN_NONE)
    after->grain = SPELCH_GRAIN_STRAIGHT;
}

static SpelchBoard
board_with (SpelchLayerList *self, const SpelchLayer *layer)
{
  SpelchBoard next = self->board;
  SpelchLayer settled = *layer;
  settle (&self->board.layers[self->chosen], &settled);
  next.layers[self->chosen] = settled;
  spelch_make_up_sum (&next);
  return next;
}

static char *
fault_of (gconstpointer value, gpointer data)
{
  SpelchBoard next = board_with (data, value);
  g_autofree char *fault = spelch_board_fault (&next);
  const char *about = fault == NULL ? NULL : strstr (fault, "]: ");
  if (about != NULL && g_str_has_prefix (fault, "layers["))
    return g_strdup (about + 3);
  /* What the layer does to the board is said in the words of the board's form. */
  return fault == NULL
             ? NULL
             : spelch_fields_say (SPELCH_SHELF_BOARDS.fields, SPELCH_SHELF_BOARDS.n_fields, fault, NULL);
}

static void
layer_edited (SpelchForm *form, gconstpointer layer, const char *what, SpelchLayerList *self)
{
  SpelchBoard next = board_with (self, layer);
  emit (self, &next, what);
}

static void
layer_drafted (SpelchForm *form, gconstpointer layer, SpelchLayerList *self)
{
  SpelchBoard next = board_with (self, layer);
  g_signal_emit (self, signals[SIGNAL_DRAFTED], 0, &next);
}

static void
show_layer (SpelchLayerList *self)
{
  g_autofree char *id = g_strdup_printf ("%s/%u", self->board.id, self->chosen);
  spelch_form_show (self->form, id, &self->board.layers[self->chosen]);
}

static void
row_selected (SpelchLayerList *self, GtkListBoxRow *row)
{
  if (row == NULL || self->showing || self->form == NULL)
    return;
  self->chosen = MIN ((guint)gtk_list_box_row_get_index (row), self->board.n_layers - 1);
  show_layer (self);
}

/* ---- Dragging ---- */

static GdkContentProvider *
drag_prepared (GtkDragSource *source, double x, double y, GtkListBoxRow *row)
{
  return gdk_content_provider_new_typed (G_TYPE_INT, gtk_list_box_row_get_index (row));
}

static gboolean
dropped (GtkDropTarget *target, const GValue *value, double x, double y, GtkListBoxRow *row)
{
  GtkWidget *list = gtk_widget_get_ancestor (GTK_WIDGET (row), SPELCH_TYPE_LAYER_LIST);
  int to = gtk_list_box_row_get_index (row);
  if (list == NULL || to < 0 || g_value_get_int (value) < 0)
    return FALSE;
  move_layer (SPELCH_LAYER_LIST (list), (guint)g_value_get_int (value), (guint)to);
  return TRUE;
}

static GtkWidget *
row_new (void)
{
  GtkWidget *row = gtk_list_box_row_new ();
  GtkWidget *label = gtk_label_new (NULL);
  gtk_label_set_xalign (GTK_LABEL (label), 0);
  gtk_list_box_row_set_child (GTK_LIST_BOX_ROW (row), label);
  GtkDragSource *source = gtk_drag_source_new ();
  gtk_drag_source_set_actions (source, GDK_ACTION_MOVE);
  g_signal_connect (source, "prepare", G_CALLBACK (drag_prepared), row);
  gtk_widget_add_controller (row, GTK_EVENT_CONTROLLER (source));
  GtkDropTarget *target = gtk_drop_target_new (G_TYPE_INT, GDK_ACTION_MOVE);
  g_signal_connect (target, "drop", G_CALLBACK (dropped), row);
  gtk_widget_add_controller (row, GTK_EVENT_CONTROLLER (target));
  return row;
}

/* ---- Showing ---- */

static void
show_rows (SpelchLayerList *self)
{
  GtkListBoxRow *row;
  for (guint i = 0; i < self->board.n_layers; i++)
    {
      g_autofree char *words = words_of (&self->board, i, &self->numbers);
      row = gtk_list_box_get_row_at_index (self->list, (int)i);
      if (row == NULL)
        {
          row = GTK_LIST_BOX_ROW (row_new ());
          gtk_list_box_append (self->list, GTK_WIDGET (row));
        }
      gtk_label_set_text (GTK_LABEL (gtk_list_box_row_get_child (row)), words);
      gtk_accessible_update_property (GTK_ACCESSIBLE (row), GTK_ACCESSIBLE_PROPERTY_LABEL, words, -1);
    }
  while ((row = gtk_list_box_get_row_at_index (self->list, (int)self->board.n_layers)) != NULL)
    gtk_list_box_remove (self->list, GTK_WIDGET (row));
  gtk_list_box_select_row (self->list, gtk_list_box_get_row_at_index (self->list, (int)self->chosen));
}

static void
show_plies (SpelchLayerList *self)
{
  guint plies = spelch_make_up_plies (&self->board);
  g_autofree char *words = g_strdup_printf (ngettext ("%u ply", "%u plies", plies), plies);
  gtk_menu_button_set_label (self->plies, plies > 0 ? words : _ ("Plies"));
  gtk_widget_set_sensitive (GTK_WIDGET (self->plies), plies > 0);
}

void
spelch_layer_list_show (SpelchLayerList *self, const SpelchBoard *board, const SpelchNumbers *numbers)
{
  if (!g_str_equal (board->id, self->board.id))
    self->chosen = 0;
  self->board = *board;
  self->numbers = *numbers;
  self->chosen = MIN (self->chosen, board->n_layers - 1);
  self->showing = true;
  show_rows (self);
  self->showing = false;
  spelch_form_set_numbers (self->form, numbers);
  show_layer (self);
  show_plies (self);
  gtk_widget_action_set_enabled (GTK_WIDGET (self), "layer.remove", board->n_layers > 1);
  gtk_widget_action_set_enabled (GTK_WIDGET (self), "layer.add", board->n_layers < SPELCH_MAX_LAYERS);
}

/* ---- Object ---- */

static void
fill_make_ups (SpelchLayerList *self)
{
  g_autoptr (GMenu) menu = g_menu_new (), boards = g_menu_new (), more = g_menu_new ();
  for (int i = 0; i < SPELCH_MAKE_UPS; i++)
    {
      g_autoptr (GMenuItem) item = g_menu_item_new (_ (MAKE_UPS[i]), NULL);
      g_menu_item_set_action_and_target (item, "layer.make-up", "i", i);
      g_menu_append_item (boards, item);
    }
  g_menu_append (more, _ ("All layers as thick as each other"), "layer.alike");
  g_menu_append (more, _ ("Veneer on both faces"), "layer.face-both::veneer");
  g_menu_append (more, _ ("Laminate on both faces"), "layer.face-both::laminate");
  g_menu_append_section (menu, _ ("As it usually is"), G_MENU_MODEL (boards));
  g_menu_append_section (menu, NULL, G_MENU_MODEL (more));
  spelch_later_menu_set (self->make_ups, G_MENU_MODEL (menu));
}

static void
fill_plies (SpelchLayerList *self)
{
  g_autoptr (GMenu) menu = g_menu_new ();
  for (int n = 3; n <= SPELCH_MAKE_UP_PLIES_MOST; n += 2)
    {
      g_autofree char *words = g_strdup_printf (ngettext ("%u ply", "%u plies", (guint)n), (guint)n);
      g_autoptr (GMenuItem) item = g_menu_item_new (words, NULL);
      g_menu_item_set_action_and_target (item, "layer.plies", "i", n);
      g_menu_append_item (menu, item);
    }
  spelch_later_menu_set (self->plies, G_MENU_MODEL (menu));
}

static void
spelch_layer_list_dispose (GObject *object)
{
  SPELCH_LAYER_LIST (object)->form = NULL;
  spelch_template_dispose (GTK_WIDGET (object), SPELCH_TYPE_LAYER_LIST);
  G_OBJECT_CLASS (spelch_layer_list_parent_class)->dispose (object);
}

static void
install_actions (GtkWidgetClass *widget_class)
{
  gtk_widget_class_install_action (widget_class, "layer.add", NULL, add_layer);
  gtk_widget_class_install_action (widget_class, "layer.remove", NULL, remove_layer);
  gtk_widget_class_install_action (widget_class, "layer.up", NULL, move_up);
  gtk_widget_class_install_action (widget_class, "layer.down", NULL, move_down);
  gtk_widget_class_install_action (widget_class, "layer.make-up", "i", make_up);
  gtk_widget_class_install_action (widget_class, "layer.plies", "i", set_plies);
  gtk_widget_class_install_action (widget_class, "layer.alike", NULL, alike);
  gtk_widget_class_install_action (widget_class, "layer.face-both", "s", face_both);
  gtk_widget_class_add_binding_action (widget_class, GDK_KEY_Up, GDK_ALT_MASK, "layer.up", NULL);
  gtk_widget_class_add_binding_action (widget_class, GDK_KEY_Down, GDK_ALT_MASK, "layer.down", NULL);
}

static void
spelch_layer_list_class_init (SpelchLayerListClass *klass)
{
  GtkWidgetClass *widget_class = GTK_WIDGET_CLASS (klass);
  G_OBJECT_CLASS (klass)->dispose = spelch_layer_list_dispose;
  signals[SIGNAL_EDITED] = g_signal_new ("edited", SPELCH_TYPE_LAYER_LIST, G_SIGNAL_RUN_LAST, 0, NULL, NULL,
                                         NULL, G_TYPE_NONE, 2, G_TYPE_POINTER, G_TYPE_STRING);
  signals[SIGNAL_DRAFTED] = g_signal_new ("drafted", SPELCH_TYPE_LAYER_LIST, G_SIGNAL_RUN_LAST, 0, NULL, NULL,
                                          NULL, G_TYPE_NONE, 1, G_TYPE_POINTER);
  gtk_widget_class_set_template_from_resource (widget_class, "/org/spelch/Spelch/ui/layer-list.ui");
  gtk_widget_class_bind_template_child (widget_class, SpelchLayerList, list);
  gtk_widget_class_bind_template_child (widget_class, SpelchLayerList, make_ups);
  gtk_widget_class_bind_template_child (widget_class, SpelchLayerList, plies);
  gtk_widget_class_bind_template_child (widget_class, SpelchLayerList, below);
  gtk_widget_class_bind_template_callback (widget_class, row_selected);
  install_actions (widget_class);
  gtk_widget_class_set_layout_manager_type (widget_class, GTK_TYPE_BIN_LAYOUT);
  gtk_widget_class_set_css_name (widget_class, "layerlist");
  gtk_widget_class_set_accessible_role (widget_class, GTK_ACCESSIBLE_ROLE_GROUP);
}

static void
spelch_layer_list_init (SpelchLayerList *self)
{
  gtk_widget_init_template (GTK_WIDGET (self));
  self->form = spelch_form_new (FIELDS, G_N_ELEMENTS (FIELDS), sizeof (SpelchLayer), fault_of, self);
  g_signal_connect (self->form, "edited", G_CALLBACK (layer_edited), self);
  g_signal_connect (self->form, "drafted", G_CALLBACK (layer_drafted), self);
  gtk_box_append (self->below, GTK_WIDGET (self->form));
  fill_make_ups (self);
  fill_plies (self);
}

SpelchLayerList *
spelch_layer_list_new (void)
{
  return g_object_new (SPELCH_TYPE_LAYER_LIST, NULL);
}
