/* SPDX-FileCopyrightText: 2026 the Forcemeat developers
 * SPDX-License-Identifier: GPL-3.0-or-later */
/* fm-cook-inputs.c - what an estimate of a cook starts from, as entries */
#include "app/cook/fm-cook-inputs.h"

#include <adwaita.h>
#include <glib/gi18n-lib.h>
#include <math.h>

#include "app/widgets/fm-number-row.h"
#include "app/widgets/fm-widget.h"
#include "core/experiment/fm-strange.h"
#include "core/base/fm-number.h"

/* USDA FSIS, Safe minimum internal temperature chart: ground meat, consumers. */
#define TARGET_DEFAULT_C 71.1
#define MOST_MINUTES 240.0

struct _FmCookInputs {
  GtkWidget parent_instance;

  GtkWidget *group;
  FmNumberEntry *mass_entry;
  FmNumberEntry *diameter_entry;
  FmNumberEntry *thickness_entry;
  FmNumberEntry *start_entry;
  FmNumberEntry *pan_entry;
  FmNumberEntry *contact_entry;
  GtkEntry *turns_entry;
  GtkLabel *turns_label;
  FmNumberEntry *off_entry;
  FmNumberEntry *rest_entry;
  FmNumberEntry *target_entry;

  FmHeatSetup setup;
  GArray *kept_turns; /* what stands while typed ones are refused */
  double target_c;
  gboolean loading;
};

G_DEFINE_FINAL_TYPE (FmCookInputs, fm_cook_inputs, GTK_TYPE_WIDGET)

enum {
  CHANGED,
  N_SIGNALS,
};

static guint signals[N_SIGNALS];

typedef struct {
  size_t entry;
  size_t field;     /* double of FmCookInputs */
  double per_field; /* of the entry's base unit: 60 where the field counts seconds */
} Binding;

#define BINDING(entry, field, base)                                                                \
  {                                                                                                \
    G_STRUCT_OFFSET (FmCookInputs, entry), G_STRUCT_OFFSET (FmCookInputs, field), base             \
  }

static const Binding bindings[] = {
  BINDING (mass_entry, setup.mass_g, 1.0),
  BINDING (diameter_entry, setup.diameter_mm, 1.0),
  BINDING (thickness_entry, setup.thickness_mm, 1.0),
  BINDING (start_entry, setup.start_c, 1.0),
  BINDING (pan_entry, setup.pan_c, 1.0),
  BINDING (contact_entry, setup.contact_w_m2k, 1.0),
  BINDING (off_entry, setup.off_s, 60.0),
  BINDING (rest_entry, setup.rest_s, 60.0),
  BINDING (target_entry, target_c, 1.0),
};

static FmNumberEntry *
get_entry (FmCookInputs *self, const Binding *binding)
{
  return G_STRUCT_MEMBER (FmNumberEntry *, self, binding->entry);
}

static void
show_number (FmCookInputs *self, const Binding *binding)
{
  const double value = G_STRUCT_MEMBER (double, self, binding->field);

  fm_number_entry_load_value (get_entry (self, binding), value / binding->per_field);
}

static void
show_turns_error (FmCookInputs *self, const char *message)
{
  gtk_label_set_text (self->turns_label, message != NULL ? message : "");
  gtk_widget_set_visible (GTK_WIDGET (self->turns_label), message != NULL);
  fm_widget_set_class (GTK_WIDGET (self->turns_entry), "error", message != NULL);
  gtk_accessible_update_state (
      GTK_ACCESSIBLE (self->turns_entry), GTK_ACCESSIBLE_STATE_INVALID,
      message != NULL ? GTK_ACCESSIBLE_INVALID_TRUE : GTK_ACCESSIBLE_INVALID_FALSE, -1);
}

static void
keep_turns (FmCookInputs *self)
{
  g_clear_pointer (&self->kept_turns, g_array_unref);
  self->kept_turns = g_array_ref (self->setup.turns_s);
}

static void
show_turns (FmCookInputs *self)
{
  g_autoptr (GString) text = g_string_new (NULL);

  for (guint i = 0; i < self->setup.turns_s->len; i++) {
    const int seconds = (int)lround (g_array_index (self->setup.turns_s, double, i));

    g_string_append_printf (text, "%s%d:%02d", i > 0 ? " " : "", seconds / 60, seconds % 60);
  }
  gtk_editable_set_text (GTK_EDITABLE (self->turns_entry), text->str);
  show_turns_error (self, NULL);
}

static void
warn (FmCookInputs *self)
{
  fm_number_entry_set_warning (self->target_entry,
                               fm_strange_core (self->target_c, self->setup.pan_c));
  fm_number_entry_set_warning (self->start_entry,
                               fm_strange_core (self->setup.start_c, self->setup.pan_c));
}

static void
show_numbers (FmCookInputs *self)
{
  for (guint i = 0; i < G_N_ELEMENTS (bindings); i++)
    show_number (self, &bindings[i]);
  warn (self);
}

/* "4:30" or minutes. */
static gboolean
parse_time (const char *text, double *time_s, GError **error)
{
  g_auto (GStrv) parts = g_strsplit (text, ":", 2);
  const char *what = _ ("The time of turning");
  double minutes;
  double seconds = 0;

  if (!fm_number_parse (parts[0], what, 0, MOST_MINUTES, &minutes, error) ||
      (parts[1] != NULL && !fm_number_parse (parts[1], what, 0, 59.999, &seconds, error)))
    return FALSE;
  *time_s = minutes * 60.0 + seconds;
  return TRUE;
}

static GArray *
parse_turns (const char *text, GError **error)
{
  g_autoptr (GArray) turns = g_array_new (FALSE, FALSE, sizeof (double));
  g_auto (GStrv) words = g_strsplit_set (text, " ;\t", -1);

  for (guint i = 0; words[i] != NULL; i++) {
    double time_s;

    if (words[i][0] == '\0')
      continue;
    if (!parse_time (words[i], &time_s, error))
      return NULL;
    g_array_append_val (turns, time_s);
  }
  return g_steal_pointer (&turns);
}

static void
turns_changed_cb (FmCookInputs *self)
{
  g_autoptr (GError) error = NULL;
  GArray *turns;

  if (self->loading)
    return;
  turns = parse_turns (gtk_editable_get_text (GTK_EDITABLE (self->turns_entry)), &error);
  show_turns_error (self, turns == NULL ? error->message : NULL);
  if (turns == NULL)
    turns = g_array_ref (self->kept_turns);
  g_array_unref (self->setup.turns_s);
  self->setup.turns_s = turns;
  g_signal_emit (self, signals[CHANGED], 0);
}

/* Good turns stand; in place of refused ones those before them come back. */
static void
turns_left_cb (FmCookInputs *self)
{
  keep_turns (self);
  self->loading = TRUE;
  show_turns (self);
  self->loading = FALSE;
}

static void
number_changed_cb (FmCookInputs *self, double value, FmNumberEntry *entry)
{
  for (guint i = 0; i < G_N_ELEMENTS (bindings); i++)
    if (get_entry (self, &bindings[i]) == entry)
      G_STRUCT_MEMBER (double, self, bindings[i].field) = value * bindings[i].per_field;
  warn (self);
  g_signal_emit (self, signals[CHANGED], 0);
}

static void
fm_cook_inputs_dispose (GObject *object)
{
  fm_widget_drop_template (GTK_WIDGET (object), FM_TYPE_COOK_INPUTS);
  G_OBJECT_CLASS (fm_cook_inputs_parent_class)->dispose (object);
}

static void
fm_cook_inputs_finalize (GObject *object)
{
  g_clear_pointer (&FM_COOK_INPUTS (object)->kept_turns, g_array_unref);
  fm_heat_setup_clear (&FM_COOK_INPUTS (object)->setup);
  G_OBJECT_CLASS (fm_cook_inputs_parent_class)->finalize (object);
}

static void
bind_children (GtkWidgetClass *widget_class)
{
  gtk_widget_class_bind_template_child (widget_class, FmCookInputs, group);
  gtk_widget_class_bind_template_child (widget_class, FmCookInputs, mass_entry);
  gtk_widget_class_bind_template_child (widget_class, FmCookInputs, diameter_entry);
  gtk_widget_class_bind_template_child (widget_class, FmCookInputs, thickness_entry);
  gtk_widget_class_bind_template_child (widget_class, FmCookInputs, start_entry);
  gtk_widget_class_bind_template_child (widget_class, FmCookInputs, pan_entry);
  gtk_widget_class_bind_template_child (widget_class, FmCookInputs, contact_entry);
  gtk_widget_class_bind_template_child (widget_class, FmCookInputs, turns_entry);
  gtk_widget_class_bind_template_child (widget_class, FmCookInputs, turns_label);
  gtk_widget_class_bind_template_child (widget_class, FmCookInputs, off_entry);
  gtk_widget_class_bind_template_child (widget_class, FmCookInputs, rest_entry);
  gtk_widget_class_bind_template_child (widget_class, FmCookInputs, target_entry);
}

static void
fm_cook_inputs_class_init (FmCookInputsClass *klass)
{
  GtkWidgetClass *widget_class = GTK_WIDGET_CLASS (klass);

  G_OBJECT_CLASS (klass)->dispose = fm_cook_inputs_dispose;
  G_OBJECT_CLASS (klass)->finalize = fm_cook_inputs_finalize;
  signals[CHANGED] = g_signal_new ("changed", FM_TYPE_COOK_INPUTS, G_SIGNAL_RUN_LAST, 0, NULL, NULL,
                                   NULL, G_TYPE_NONE, 0);
  g_type_ensure (FM_TYPE_NUMBER_ENTRY);
  gtk_widget_class_set_template_from_resource (
      widget_class, "/io/github/forcemeat/Forcemeat/ui/cook/fm-cook-inputs.ui");
  gtk_widget_class_set_layout_manager_type (widget_class, GTK_TYPE_BIN_LAYOUT);
  bind_children (widget_class);
  gtk_widget_class_bind_template_callback (widget_class, number_changed_cb);
  gtk_widget_class_bind_template_callback (widget_class, turns_changed_cb);
  gtk_widget_class_bind_template_callback (widget_class, turns_left_cb);
}

static void
fm_cook_inputs_init (FmCookInputs *self)
{
  fm_heat_setup_init (&self->setup);
  keep_turns (self);
  self->target_c = TARGET_DEFAULT_C;
  self->loading = TRUE;
  gtk_widget_init_template (GTK_WIDGET (self));
  for (guint i = 0; i < G_N_ELEMENTS (bindings); i++)
    fm_number_row_tell_errors (get_entry (self, &bindings[i]));
  show_numbers (self);
  self->loading = FALSE;
}

void
fm_cook_inputs_set_setup (FmCookInputs *self, const FmHeatSetup *setup)
{
  FmHeatSetup copy;

  g_return_if_fail (FM_IS_COOK_INPUTS (self));
  fm_heat_setup_copy (setup, &copy);
  fm_heat_setup_clear (&self->setup);
  self->setup = copy;
  keep_turns (self);
  self->loading = TRUE;
  show_numbers (self);
  show_turns (self);
  self->loading = FALSE;
}

const FmHeatSetup *
fm_cook_inputs_get_setup (FmCookInputs *self)
{
  g_return_val_if_fail (FM_IS_COOK_INPUTS (self), NULL);
  return &self->setup;
}

void
fm_cook_inputs_set_contact (FmCookInputs *self, double contact_w_m2k)
{
  g_return_if_fail (FM_IS_COOK_INPUTS (self));
  self->setup.contact_w_m2k = contact_w_m2k;
  fm_number_entry_load_value (self->contact_entry, contact_w_m2k);
}

void
fm_cook_inputs_set_target_c (FmCookInputs *self, double target_c)
{
  g_return_if_fail (FM_IS_COOK_INPUTS (self));
  self->target_c = isnan (target_c) ? TARGET_DEFAULT_C : target_c;
  show_numbers (self);
}

double
fm_cook_inputs_get_target_c (FmCookInputs *self)
{
  g_return_val_if_fail (FM_IS_COOK_INPUTS (self), NAN);
  return self->target_c;
}
