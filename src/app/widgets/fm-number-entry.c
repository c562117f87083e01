/* SPDX-FileCopyrightText: 2026 the Forcemeat developers
 * SPDX-License-Identifier: GPL-3.0-or-later */
/* fm-number-entry.c - an entry for one number, which says what is wrong with bad text */
#include "app/widgets/fm-number-entry.h"

#include <math.h>

#include "app/session/fm-notebook-settings.h"
#include "app/widgets/fm-measure-type.h"
#include "app/widgets/fm-number-message.h"
#include "app/widgets/fm-number-spec.h"
#include "app/widgets/fm-widget.h"
#include "core/base/fm-double.h"

struct _FmNumberEntry {
  GtkWidget parent_instance;

  GtkWidget *box;
  GtkEntry *entry;
  GtkLabel *unit_label;
  GtkLabel *message_label;
  FmNumberMessage says;

  FmNumberSpec spec;
  gboolean shows_unit;

  double value;
  double kept;    /* what stands while a text is refused: the value before the edit */
  gboolean valid; /* FALSE while the text is refused */
  char *refusal;  /* what the owner says against the value that it hears of */

  gboolean loading; /* the text changes by set_value, not by the user */
  guint blank_source;
};

G_DEFINE_FINAL_TYPE (FmNumberEntry, fm_number_entry, GTK_TYPE_WIDGET)

enum {
  PROP_0,
  PROP_WHAT,
  PROP_UNIT,
  PROP_MEASURE,
  PROP_MINIMUM,
  PROP_MAXIMUM,
  PROP_DECIMALS,
  PROP_OPTIONAL,
  PROP_INLINE_MESSAGE,
  PROP_MESSAGE,
  N_PROPS,
};

enum {
  VALUE_CHANGED,
  N_SIGNALS,
};

static GParamSpec *props[N_PROPS];
static guint signals[N_SIGNALS];

static void
show_message (FmNumberEntry *self)
{
  if (fm_number_message_show (&self->says))
    g_object_notify_by_pspec (G_OBJECT (self), props[PROP_MESSAGE]);
}

/* @reason: NULL for good text. */
static void
set_fault (FmNumberEntry *self, const char *reason)
{
  g_autofree char *kept = fm_number_spec_text_with_unit (&self->spec, self->kept);

  self->valid = reason == NULL;
  fm_number_message_set_fault (&self->says, reason, kept);
  show_message (self);
}

/* A share that went through the formula and back may differ in the last bits only. */
static gboolean
same_value (double a, double b)
{
  return fm_double_same (a, b) || fabs (a - b) <= 1e-9 * MAX (fabs (a), fabs (b));
}

/* Sets the value and tells of it; FALSE when the owner refuses it by fm_number_entry_refuse(). */
static gboolean
change_value (FmNumberEntry *self, double value)
{
  if (fm_double_same (value, self->value))
    return TRUE;
  self->value = value;
  g_signal_emit (self, signals[VALUE_CHANGED], 0, value);
  return self->valid;
}

/* Keystrokes before this one may have been good ("1" of "1x"): what they stored goes as well. */
static void
refuse (FmNumberEntry *self, const char *reason)
{
  g_autofree char *said = g_strdup (reason);

  change_value (self, self->kept);
  set_fault (self, said);
}

static void
take_text (FmNumberEntry *self)
{
  g_autoptr (FmNumberEntry) alive = g_object_ref (self);
  g_autoptr (GError) error = NULL;
  g_autofree char *refusal = NULL;
  double value = NAN;

  if (!fm_number_spec_read (&self->spec, gtk_editable_get_text (GTK_EDITABLE (self->entry)), &value,
                            &error)) {
    refuse (self, error->message);
    return;
  }
  set_fault (self, NULL);
  if (change_value (self, value)) {
    /* Without the keyboard, as when a tool sets the text, an edit is whole at once. */
    if (!gtk_widget_has_focus (GTK_WIDGET (gtk_editable_get_delegate (GTK_EDITABLE (self->entry)))))
      self->kept = self->value;
    return;
  }
  refusal = g_steal_pointer (&self->refusal);
  self->valid = TRUE;
  refuse (self, refusal);
}

/* What was typed is whole: it stands, or the value before it comes back for all to see. */
static void
finish_edit (FmNumberEntry *self)
{
  g_autofree char *typed = g_strdup (gtk_editable_get_text (GTK_EDITABLE (self->entry)));
  g_autofree char *kept = NULL;

  if (self->valid) {
    self->kept = self->value;
    return;
  }
  kept = fm_number_spec_text_with_unit (&self->spec, self->kept);
  fm_number_entry_load_value (self, self->kept);
  fm_number_message_set_note (&self->says, typed, kept);
  show_message (self);
}

static void
flush_blank (FmNumberEntry *self)
{
  if (self->blank_source == 0)
    return;
  g_clear_handle_id (&self->blank_source, g_source_remove);
  take_text (self);
}

/* Another window may have the keyboard for a while: then nothing was left. */
static void
focus_left_cb (FmNumberEntry *self)
{
  GtkRoot *root = gtk_widget_get_root (GTK_WIDGET (self));
  GtkWidget *focus = root != NULL ? gtk_root_get_focus (root) : NULL;

  if (focus != NULL && gtk_widget_is_ancestor (focus, GTK_WIDGET (self)))
    return;
  flush_blank (self);
  finish_edit (self);
}

static void
focus_entered_cb (FmNumberEntry *self)
{
  if (self->valid)
    self->kept = self->value;
  fm_number_message_set_note (&self->says, NULL, NULL);
  show_message (self);
}

static void
activate_cb (FmNumberEntry *self)
{
  flush_blank (self);
  if (self->valid)
    finish_edit (self);
}

static gboolean
blank_idle_cb (gpointer data)
{
  FmNumberEntry *self = data;

  self->blank_source = 0;
  take_text (self);
  return G_SOURCE_REMOVE;
}

/* Replacing the text passes through blank text; only a blank that stays is a value. Else bad
 * text that replaces a good number would not keep that number but the blank between them. */
static void
entry_changed_cb (FmNumberEntry *self)
{
  if (self->loading)
    return;
  g_clear_handle_id (&self->blank_source, g_source_remove);
  if (gtk_entry_get_text_length (self->entry) == 0)
    /* Ahead of the next event, which may end the program or show another experiment. */
    self->blank_source = g_idle_add_full (G_PRIORITY_HIGH, blank_idle_cb, self, NULL);
  else
    take_text (self);
}

static void
show_unit (FmNumberEntry *self)
{
  g_autofree char *unit = fm_number_spec_unit (&self->spec);

  gtk_label_set_text (self->unit_label, unit != NULL ? unit : "");
  gtk_widget_set_visible (GTK_WIDGET (self->unit_label), self->shows_unit && unit != NULL);
}

static void
settings_changed_cb (FmNumberEntry *self)
{
  if (self->spec.measure == FM_MEASURE_NUMBER)
    return;
  show_unit (self);
  fm_number_entry_load_value (self, self->valid ? self->value : self->kept);
}

static void
fm_number_entry_get_property (GObject *object, guint id, GValue *value, GParamSpec *pspec)
{
  if (id == PROP_MESSAGE)
    g_value_set_string (value, FM_NUMBER_ENTRY (object)->says.shown);
  else
    G_OBJECT_WARN_INVALID_PROPERTY_ID (object, id, pspec);
}

static void
fm_number_entry_set_property (GObject *object, guint id, const GValue *value, GParamSpec *pspec)
{
  FmNumberEntry *self = FM_NUMBER_ENTRY (object);

  switch (id) {
  case PROP_WHAT:
    fm_number_entry_set_what (self, g_value_get_string (value));
    break;
  case PROP_UNIT:
    fm_number_entry_set_unit (self, g_value_get_string (value));
    break;
  case PROP_MEASURE:
    fm_number_entry_set_measure (self, g_value_get_enum (value));
    break;
  case PROP_MINIMUM:
    self->spec.minimum = g_value_get_double (value);
    break;
  case PROP_MAXIMUM:
    self->spec.maximum = g_value_get_double (value);
    break;
  case PROP_DECIMALS:
    self->spec.decimals = g_value_get_int (value);
    break;
  case PROP_OPTIONAL:
    self->spec.optional = g_value_get_boolean (value);
    break;
  case PROP_INLINE_MESSAGE:
    self->says.is_inline = g_value_get_boolean (value);
    break;
  default:
    G_OBJECT_WARN_INVALID_PROPERTY_ID (object, id, pspec);
  }
}

static gboolean
fm_number_entry_grab_focus (GtkWidget *widget)
{
  return gtk_widget_grab_focus (GTK_WIDGET (FM_NUMBER_ENTRY (widget)->entry));
}

static void
fm_number_entry_dispose (GObject *object)
{
  g_clear_handle_id (&FM_NUMBER_ENTRY (object)->blank_source, g_source_remove);
  fm_widget_drop_template (GTK_WIDGET (object), FM_TYPE_NUMBER_ENTRY);
  G_OBJECT_CLASS (fm_number_entry_parent_class)->dispose (object);
}

static void
fm_number_entry_finalize (GObject *object)
{
  FmNumberEntry *self = FM_NUMBER_ENTRY (object);

  fm_number_spec_clear (&self->spec);
  g_free (self->refusal);
  fm_number_message_clear (&self->says);
  G_OBJECT_CLASS (fm_number_entry_parent_class)->finalize (object);
}

static void
install_properties (GObjectClass *object_class)
{
  const GParamFlags flags = G_PARAM_WRITABLE | G_PARAM_STATIC_STRINGS;

  props[PROP_WHAT] = g_param_spec_string ("what", NULL, NULL, NULL, flags);
  props[PROP_UNIT] = g_param_spec_string ("unit", NULL, NULL, NULL, flags);
  props[PROP_MEASURE] =
      g_param_spec_enum ("measure", NULL, NULL, FM_TYPE_MEASURE, FM_MEASURE_NUMBER, flags);
  props[PROP_MINIMUM] =
      g_param_spec_double ("minimum", NULL, NULL, -G_MAXDOUBLE, G_MAXDOUBLE, 0, flags);
  props[PROP_MAXIMUM] =
      g_param_spec_double ("maximum", NULL, NULL, -G_MAXDOUBLE, G_MAXDOUBLE, 1e7, flags);
  props[PROP_DECIMALS] = g_param_spec_int ("decimals", NULL, NULL, 0, 9, 1, flags);
  props[PROP_OPTIONAL] = g_param_spec_boolean ("optional", NULL, NULL, TRUE, flags);
  props[PROP_INLINE_MESSAGE] = g_param_spec_boolean ("inline-message", NULL, NULL, TRUE, flags);
  props[PROP_MESSAGE] =
      g_param_spec_string ("message", NULL, NULL, NULL,
                           G_PARAM_READABLE | G_PARAM_STATIC_STRINGS | G_PARAM_EXPLICIT_NOTIFY);
  g_object_class_install_properties (object_class, N_PROPS, props);
}

static void
fm_number_entry_class_init (FmNumberEntryClass *klass)
{
  GObjectClass *object_class = G_OBJECT_CLASS (klass);
  GtkWidgetClass *widget_class = GTK_WIDGET_CLASS (klass);

  object_class->dispose = fm_number_entry_dispose;
  object_class->finalize = fm_number_entry_finalize;
  object_class->get_property = fm_number_entry_get_property;
  object_class->set_property = fm_number_entry_set_property;
  gtk_widget_class_set_accessible_role (widget_class, GTK_ACCESSIBLE_ROLE_GROUP);
  widget_class->focus = fm_widget_pass_focus;
  widget_class->grab_focus = fm_number_entry_grab_focus;
  install_properties (object_class);
  signals[VALUE_CHANGED] = g_signal_new ("value-changed", FM_TYPE_NUMBER_ENTRY, G_SIGNAL_RUN_LAST,
                                         0, NULL, NULL, NULL, G_TYPE_NONE, 1, G_TYPE_DOUBLE);
  gtk_widget_class_set_template_from_resource (
      widget_class, "/io/github/forcemeat/Forcemeat/ui/widgets/fm-number-entry.ui");
  gtk_widget_class_set_layout_manager_type (widget_class, GTK_TYPE_BIN_LAYOUT);
  gtk_widget_class_bind_template_child (widget_class, FmNumberEntry, box);
  gtk_widget_class_bind_template_child (widget_class, FmNumberEntry, entry);
  gtk_widget_class_bind_template_child (widget_class, FmNumberEntry, unit_label);
  gtk_widget_class_bind_template_child (widget_class, FmNumberEntry, message_label);
  gtk_widget_class_bind_template_callback (widget_class, entry_changed_cb);
  gtk_widget_class_bind_template_callback (widget_class, activate_cb);
  gtk_widget_class_bind_template_callback (widget_class, focus_left_cb);
  gtk_widget_class_bind_template_callback (widget_class, focus_entered_cb);
}

static void
fm_number_entry_init (FmNumberEntry *self)
{
  self->spec.minimum = 0;
  self->spec.maximum = 1e7;
  self->spec.decimals = 1;
  self->spec.optional = TRUE;
  self->says.is_inline = TRUE;
  self->shows_unit = TRUE;
  self->value = NAN;
  self->kept = NAN;
  self->valid = TRUE;
  gtk_widget_init_template (GTK_WIDGET (self));
  self->says.entry = GTK_WIDGET (self->entry);
  self->says.label = self->message_label;
  g_signal_connect_object (fm_notebook_settings_get_default (), "changed",
                           G_CALLBACK (settings_changed_cb), self, G_CONNECT_SWAPPED);
}

GtkWidget *
fm_number_entry_new (const char *what, double min, double max, int decimals)
{
  return g_object_new (FM_TYPE_NUMBER_ENTRY, "what", what, "minimum", min, "maximum", max,
                       "decimals", decimals, NULL);
}

void
fm_number_entry_set_value (FmNumberEntry *self, double value)
{
  g_return_if_fail (FM_IS_NUMBER_ENTRY (self));
  /* What the user is typing ("12," on the way to "12,5", or text that is no number) stays. */
  if (same_value (value, self->value))
    self->value = value;
  else
    fm_number_entry_load_value (self, value);
}

void
fm_number_entry_load_value (FmNumberEntry *self, double value)
{
  g_autofree char *text = NULL;

  g_return_if_fail (FM_IS_NUMBER_ENTRY (self));
  g_clear_handle_id (&self->blank_source, g_source_remove);
  text = fm_number_spec_text (&self->spec, value);
  self->value = value;
  self->kept = value;
  self->loading = TRUE;
  gtk_editable_set_text (GTK_EDITABLE (self->entry), text);
  self->loading = FALSE;
  set_fault (self, NULL);
}

double
fm_number_entry_get_value (FmNumberEntry *self)
{
  g_return_val_if_fail (FM_IS_NUMBER_ENTRY (self), NAN);
  return self->value;
}

gboolean
fm_number_entry_is_valid (FmNumberEntry *self)
{
  g_return_val_if_fail (FM_IS_NUMBER_ENTRY (self), FALSE);
  return self->valid;
}

const char *
fm_number_entry_get_what (FmNumberEntry *self)
{
  return self->spec.what;
}

void
fm_number_entry_set_what (FmNumberEntry *self, const char *what)
{
  g_return_if_fail (FM_IS_NUMBER_ENTRY (self));
  if (g_strcmp0 (self->spec.what, what) == 0)
    return;
  g_free (self->spec.what);
  self->spec.what = g_strdup (what);
  if (what != NULL)
    gtk_accessible_update_property (GTK_ACCESSIBLE (self->entry), GTK_ACCESSIBLE_PROPERTY_LABEL,
                                    what, -1);
}

void
fm_number_entry_set_unit (FmNumberEntry *self, const char *unit)
{
  g_return_if_fail (FM_IS_NUMBER_ENTRY (self));
  g_free (self->spec.own_unit);
  self->spec.own_unit = g_strdup (unit);
  show_unit (self);
}

void
fm_number_entry_set_measure (FmNumberEntry *self, FmMeasure measure)
{
  g_return_if_fail (FM_IS_NUMBER_ENTRY (self));
  if (self->spec.measure == measure)
    return;
  self->spec.measure = measure;
  show_unit (self);
  fm_number_entry_load_value (self, self->value);
}

void
fm_number_entry_hide_unit (FmNumberEntry *self)
{
  g_return_if_fail (FM_IS_NUMBER_ENTRY (self));
  self->shows_unit = FALSE;
  show_unit (self);
}

void
fm_number_entry_set_range (FmNumberEntry *self, double min, double max)
{
  g_return_if_fail (FM_IS_NUMBER_ENTRY (self));
  self->spec.minimum = min;
  self->spec.maximum = max;
}

const char *
fm_number_entry_get_message (FmNumberEntry *self)
{
  g_return_val_if_fail (FM_IS_NUMBER_ENTRY (self), NULL);
  return self->says.shown;
}

void
fm_number_entry_refuse (FmNumberEntry *self, const char *reason)
{
  g_return_if_fail (FM_IS_NUMBER_ENTRY (self));
  g_return_if_fail (reason != NULL);
  g_free (self->refusal);
  self->refusal = g_strdup (reason);
  self->valid = FALSE;
}

void
fm_number_entry_set_warning (FmNumberEntry *self, const char *warning)
{
  g_return_if_fail (FM_IS_NUMBER_ENTRY (self));
  if (g_strcmp0 (warning, self->says.warning) == 0)
    return;
  fm_number_message_set_warning (&self->says, warning);
  show_message (self);
}

void
fm_number_entry_set_editable (FmNumberEntry *self, gboolean editable)
{
  g_return_if_fail (FM_IS_NUMBER_ENTRY (self));
  if (gtk_editable_get_editable (GTK_EDITABLE (self->entry)) != editable)
    gtk_editable_set_editable (GTK_EDITABLE (self->entry), editable);
}

void
fm_number_entry_set_width_chars (FmNumberEntry *self, int width_chars)
{
  g_return_if_fail (FM_IS_NUMBER_ENTRY (self));
  gtk_editable_set_width_chars (GTK_EDITABLE (self->entry), width_chars);
  gtk_editable_set_max_width_chars (GTK_EDITABLE (self->entry), width_chars);
}
