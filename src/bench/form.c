/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "bench/form.h"
#include "bench/form-row.h"

#include <glib/gi18n-lib.h>
#include <string.h>

struct _SpelchForm
{
  GtkWidget parent_instance;
  const SpelchField *fields;
  guint n_fields;
  gsize size;
  SpelchFormFault fault;
  gpointer data;
  SpelchNumbers numbers;
  SpelchFormRow **rows; /* by field */
  char *id;             /* of what is shown; NULL: nothing */
  gpointer value;       /* as shown, without what is unfinished */
  GHashTable *left;     /* "id/member" -> what was typed there and can't be taken yet */
  GHashTable *refused;  /* "id/member" -> why not, as long as it stands there */
  bool showing;
};

G_DEFINE_FINAL_TYPE (SpelchForm, spelch_form, GTK_TYPE_WIDGET)

enum
{
  SIGNAL_EDITED,
  SIGNAL_DRAFTED,
  SIGNAL_DROPPED,
  N_SIGNALS
};
static guint signals[N_SIGNALS];

/* ---- What is left unfinished ---- */

static char *
place_of (SpelchForm *self, const SpelchField *field)
{
  return g_strconcat (self->id, "/", field->member, NULL);
}

static void
leave (SpelchForm *self, SpelchFormRow *row)
{
  const SpelchField *field = spelch_form_row_get_field (row);
  g_autofree char *place = place_of (self, field);
  if (spelch_form_row_is_typed (row))
    g_hash_table_insert (self->left, g_steal_pointer (&place), g_strdup (spelch_form_row_get_typed (row)));
  else
    g_hash_table_remove (self->left, place);
}

static void
keep_refusal (SpelchForm *self, const SpelchField *field, const char *why)
{
  g_autofree char *place = place_of (self, field);
  if (why != NULL)
    g_hash_table_insert (self->refused, g_steal_pointer (&place), g_strdup (why));
  else
    g_hash_table_remove (self->refused, place);
}

/* Why what stands in a field isn't taken, or NULL. */
static const char *
refusal_of (SpelchForm *self, const SpelchField *field)
{
  if (self->id == NULL || field->member == NULL)
    return NULL;
  g_autofree char *place = place_of (self, field);
  return g_hash_table_lookup (self->refused, place);
}

/* ---- Taking what is typed ---- */

/* The fault in the form's words, and in *@at the field that shows what it is about. A member may have another
 * name, and another field, for each kind of value. */
static char *
say (SpelchForm *self, gconstpointer value, const char *fault, int *at)
{
  g_autofree SpelchField *applying = g_new (SpelchField, self->n_fields);
  g_autofree int *places = g_new (int, self->n_fields);
  guint n = 0;
  for (guint i = 0; i < self->n_fields; i++)
    {
      const SpelchField *field = &self->fields[i];
      if (field->applies != NULL && !field->applies (value))
        continue;
      places[n] = (int)i;
      applying[n++] = *field;
    }
  int about = -1;
  char *said = spelch_fields_say (applying, n, fault, &about);
  if (about >= 0 && gtk_widget_get_visible (GTK_WIDGET (self->rows[places[about]])))
    *at = places[about];
  return said;
}

static bool
is_chosen (const SpelchField *field)
{
  return field->kind == SPELCH_FIELD_CHOICE || field->kind == SPELCH_FIELD_FLAG
         || field->kind == SPELCH_FIELD_PICK;
}

static void
pick (const SpelchField *field, const char *id, gpointer into)
{
  char *member = (char *)into + field->offset;
  if (id == NULL || strcmp (member, id) == 0)
    return;
  memset (member, 0, field->size); /* values are compared byte for byte */
  g_strlcpy (member, id, field->size);
}

/* The value with what stands in @row, in @into; a sentence about what is wrong with it, or NULL. *@at gets
 * the field it is about. */
static char *
take (SpelchForm *self, SpelchFormRow *row, gpointer into, int *at)
{
  const SpelchField *field = spelch_form_row_get_field (row);
  g_autoptr (GError) error = NULL;
  memcpy (into, self->value, self->size);
  *at = (int)(field - self->fields);
  if (field->kind == SPELCH_FIELD_PICK)
    pick (field, spelch_form_row_get_pick (row), into);
  else if (field->kind == SPELCH_FIELD_CHOICE || field->kind == SPELCH_FIELD_FLAG)
    spelch_field_choose (field, spelch_form_row_get_choice (row), into);
  else if (spelch_form_row_is_typed (row) /* what it shows of itself is no question */
           && !spelch_field_read (field, spelch_form_row_get_typed (row), &self->numbers, into, &error))
    return g_strdup (error->message);
  g_autofree char *fault = self->fault (into, self->data);
  if (fault == NULL)
    return NULL;
  return say (self, into, fault, at);
}

/* A refusal stays beside the words it is about. */
static void
clear_remark (SpelchForm *self, guint i)
{
  const SpelchField *field = &self->fields[i];
  const char *refusal = refusal_of (self, field);
  g_autofree char *told = refusal == NULL && field->tell != NULL ? field->tell (self->value) : NULL;
  spelch_form_row_remark (self->rows[i], refusal != NULL ? refusal : told, refusal != NULL);
}

static void
clear_remarks (SpelchForm *self)
{
  for (guint i = 0; i < self->n_fields; i++)
    clear_remark (self, i);
}

static void
row_typed (SpelchFormRow *row, SpelchForm *self)
{
  if (self->id == NULL || self->showing)
    return;
  leave (self, row);
  keep_refusal (self, spelch_form_row_get_field (row), NULL);
  g_autofree char *reading = spelch_field_reading (spelch_form_row_get_field (row),
                                                   spelch_form_row_get_typed (row), &self->numbers);
  spelch_form_row_remark (row, reading, false);
  if (!spelch_form_row_is_typed (row))
    {
      g_signal_emit (self, signals[SIGNAL_DROPPED], 0);
      return;
    }
  g_autofree gpointer draft = g_malloc (self->size);
  int at = -1;
  g_autofree char *fault = take (self, row, draft, &at);
  if (fault == NULL)
    g_signal_emit (self, signals[SIGNAL_DRAFTED], 0, draft);
}

/* What was typed keeps its place, and the reason beside it; what was chosen can't be and goes back. */
static void
refuse (SpelchForm *self, SpelchFormRow *row, const char *fault, int at)
{
  const SpelchField *field = spelch_form_row_get_field (row);
  leave (self, row);
  if (!is_chosen (field) && spelch_form_row_is_typed (row))
    keep_refusal (self, field, fault);
  clear_remarks (self);
  spelch_form_row_remark (self->rows[at], fault, true);
  if (at != (int)(field - self->fields))
    spelch_form_row_remark (row, fault, true);
  if (is_chosen (field))
    spelch_form_row_show (row, self->value, NULL, &self->numbers);
  g_signal_emit (self, signals[SIGNAL_DROPPED], 0);
}

static void
accept (SpelchForm *self, const SpelchField *field, gconstpointer entered)
{
  g_autofree char *place = place_of (self, field);
  g_hash_table_remove (self->left, place);
  g_hash_table_remove (self->refused, place);
  clear_remarks (self);
  if (memcmp (entered, self->value, self->size) != 0)
    g_signal_emit (self, signals[SIGNAL_EDITED], 0, entered, _ (field->label));
  else
    g_signal_emit (self, signals[SIGNAL_DROPPED], 0);
}

/* What was refused beside the value that has changed now may be right: it is taken, or says what is wrong
 * now. */
static void
try_refused (SpelchForm *self)
{
  for (guint i = 0; self->id != NULL && i < self->n_fields; i++)
    {
      if (refusal_of (self, &self->fields[i]) == NULL)
        continue;
      g_autofree gpointer entered = g_malloc (self->size);
      int at = -1;
      g_autofree char *fault = take (self, self->rows[i], entered, &at);
      if (fault == NULL)
        accept (self, &self->fields[i], entered);
      else
        {
          keep_refusal (self, &self->fields[i], fault);
          spelch_form_row_remark (self->rows[i], fault, true);
        }
    }
}

static void
row_entered (SpelchFormRow *row, SpelchForm *self)
{
  if (self->id == NULL || self->showing)
    return;
  g_autofree gpointer entered = g_malloc (self->size);
  int at = -1;
  g_autofree char *fault = take (self, row, entered, &at);
  if (fault != NULL)
    {
      refuse (self, row, fault, at);
      return;
    }
  g_autoptr (SpelchForm) kept = g_object_ref (self);
  accept (self, spelch_form_row_get_field (row), entered);
  if (memcmp (entered, self->value, self->size) == 0) /* the edit has come back */
    try_refused (self);
}

/* ---- Showing ---- */

static void
show_row (SpelchForm *self, guint i)
{
  const SpelchField *field = &self->fields[i];
  const char *left = NULL;
  if (field->member != NULL)
    {
      g_autofree char *place = place_of (self, field);
      left = g_hash_table_lookup (self->left, place);
    }
  spelch_form_row_show (self->rows[i], self->value, left, &self->numbers);
  if (field->tell != NULL && left == NULL)
    clear_remark (self, i);
}

/* A heading without a field under it says nothing. */
static void
hide_empty_headings (SpelchForm *self)
{
  bool any = false;
  for (guint i = self->n_fields; i-- > 0;)
    if (self->fields[i].kind == SPELCH_FIELD_HEADING)
      {
        gtk_widget_set_visible (GTK_WIDGET (self->rows[i]), any);
        any = false;
      }
    else
      any = any || gtk_widget_get_visible (GTK_WIDGET (self->rows[i]));
}

static void
show_all (SpelchForm *self)
{
  self->showing = true;
  for (guint i = 0; i < self->n_fields; i++)
    show_row (self, i);
  hide_empty_headings (self);
  self->showing = false;
}

void
spelch_form_show (SpelchForm *self, const char *id, gconstpointer value)
{
  bool other = g_strcmp0 (id, self->id) != 0;
  if (other)
    {
      g_free (self->id);
      self->id = g_strdup (id);
    }
  memcpy (self->value, value, self->size);
  show_all (self);
  if (other)
    clear_remarks (self);
}

void
spelch_form_set_numbers (SpelchForm *self, const SpelchNumbers *numbers)
{
  self->numbers = *numbers;
  if (self->id != NULL)
    show_all (self);
}

void
spelch_form_set_picks (SpelchForm *self, const char *member, const char *const *ids, const char *const *names)
{
  for (guint i = 0; i < self->n_fields; i++)
    if (g_strcmp0 (self->fields[i].member, member) == 0)
      spelch_form_row_set_picks (self->rows[i], ids, names);
}

void
spelch_form_set_choices (SpelchForm *self, const char *member, const char *const *names)
{
  for (guint i = 0; i < self->n_fields; i++)
    if (g_strcmp0 (self->fields[i].member, member) == 0)
      spelch_form_row_set_choices (self->rows[i], names);
}

void
spelch_form_put_under (SpelchForm *self, const char *member, GtkWidget *widget)
{
  GtkWidget *row = NULL;
  for (guint i = 0; i < self->n_fields; i++)
    if (g_strcmp0 (self->fields[i].member, member) == 0)
      row = GTK_WIDGET (self->rows[i]);
  gtk_widget_insert_after (widget, GTK_WIDGET (self), row);
}

bool
spelch_form_is_unfinished (SpelchForm *self)
{
  for (guint i = 0; i < self->n_fields; i++)
    {
      if (self->fields[i].member == NULL || self->id == NULL)
        continue;
      g_autofree char *place = place_of (self, &self->fields[i]);
      if (g_hash_table_contains (self->left, place))
        return true;
    }
  return false;
}

void
spelch_form_focus (SpelchForm *self, const char *member)
{
  for (guint i = 0; i < self->n_fields; i++)
    if (g_strcmp0 (self->fields[i].member, member) == 0)
      spelch_form_row_focus (self->rows[i]);
}

/* ---- Object ---- */

static void
spelch_form_dispose (GObject *object)
{
  SpelchForm *self = SPELCH_FORM (object);
  GtkWidget *child;
  g_clear_pointer (&self->id, g_free);
  while ((child = gtk_widget_get_first_child (GTK_WIDGET (self))) != NULL)
    gtk_widget_unparent (child);
  G_OBJECT_CLASS (spelch_form_parent_class)->dispose (object);
}

static void
spelch_form_finalize (GObject *object)
{
  SpelchForm *self = SPELCH_FORM (object);
  g_free (self->rows);
  g_free (self->value);
  g_hash_table_unref (self->left);
  g_hash_table_unref (self->refused);
  G_OBJECT_CLASS (spelch_form_parent_class)->finalize (object);
}

static void
spelch_form_class_init (SpelchFormClass *klass)
{
  GtkWidgetClass *widget_class = GTK_WIDGET_CLASS (klass);
  G_OBJECT_CLASS (klass)->dispose = spelch_form_dispose;
  G_OBJECT_CLASS (klass)->finalize = spelch_form_finalize;
  signals[SIGNAL_EDITED] = g_signal_new ("edited", SPELCH_TYPE_FORM, G_SIGNAL_RUN_LAST, 0, NULL, NULL, NULL,
                                         G_TYPE_NONE, 2, G_TYPE_POINTER, G_TYPE_STRING);
  signals[SIGNAL_DRAFTED] = g_signal_new ("drafted", SPELCH_TYPE_FORM, G_SIGNAL_RUN_LAST, 0, NULL, NULL, NULL,
                                          G_TYPE_NONE, 1, G_TYPE_POINTER);
  signals[SIGNAL_DROPPED]
      = g_signal_new ("dropped", SPELCH_TYPE_FORM, G_SIGNAL_RUN_LAST, 0, NULL, NULL, NULL, G_TYPE_NONE, 0);
  gtk_widget_class_set_layout_manager_type (widget_class, GTK_TYPE_BOX_LAYOUT);
  gtk_widget_class_set_css_name (widget_class, "spelchform");
  gtk_widget_class_set_accessible_role (widget_class, GTK_ACCESSIBLE_ROLE_GROUP);
}

static void
spelch_form_init (SpelchForm *self)
{
  GtkLayoutManager *layout = gtk_widget_get_layout_manager (GTK_WIDGET (self));
  gtk_orientable_set_orientation (GTK_ORIENTABLE (layout), GTK_ORIENTATION_VERTICAL);
  gtk_box_layout_set_spacing (GTK_BOX_LAYOUT (layout), 6);
  self->left = g_hash_table_new_full (g_str_hash, g_str_equal, g_free, g_free);
  self->refused = g_hash_table_new_full (g_str_hash, g_str_equal, g_free, g_free);
  self->numbers = (SpelchNumbers){ .unit = SPELCH_UNIT_MM, .decimal_sign = '.' };
}

SpelchForm *
spelch_form_new (const SpelchField *fields, guint n_fields, gsize size, SpelchFormFault fault, gpointer data)
{
  SpelchForm *self = g_object_new (SPELCH_TYPE_FORM, NULL);
  self->fields = fields;
  self->n_fields = n_fields;
  self->size = size;
  self->fault = fault;
  self->data = data;
  self->value = g_malloc0 (size);
  self->rows = g_new0 (SpelchFormRow *, n_fields);
  g_autoptr (GtkSizeGroup) names = gtk_size_group_new (GTK_SIZE_GROUP_HORIZONTAL); /* the rows keep it */
  for (guint i = 0; i < n_fields; i++)
    {
      self->rows[i] = spelch_form_row_new (&fields[i]);
      g_signal_connect (self->rows[i], "typed", G_CALLBACK (row_typed), self);
      g_signal_connect (self->rows[i], "entered", G_CALLBACK (row_entered), self);
      spelch_form_row_align (self->rows[i], names);
      gtk_widget_set_parent (GTK_WIDGET (self->rows[i]), GTK_WIDGET (self));
    }
  return self;
}
