/* SPDX-FileCopyrightText: 2026 the Forcemeat developers
 * SPDX-License-Identifier: GPL-3.0-or-later */
/* fm-experiment-making.c - how it was made: grinding, salting, cooking and rest */
#include "app/experiments/fm-experiment-making.h"

#include <adwaita.h>
#include <glib/gi18n-lib.h>
#include <math.h>

#include "app/widgets/fm-accessible.h"
#include "app/session/fm-notebook-settings.h"
#include "app/widgets/fm-number-entry.h"
#include "app/widgets/fm-widget.h"
#include "core/experiment/fm-strange.h"

struct _FmExperimentMaking {
  GtkWidget parent_instance;

  GtkWidget *box;
  FmNumberEntry *meat_temp_entry;
  FmNumberEntry *plate_entry;
  FmNumberEntry *passes_entry;
  FmNumberEntry *salt_entry;
  FmNumberEntry *surface_salt_entry;
  FmNumberEntry *salt_minutes_entry;
  GtkDropDown *method_drop_down;
  GtkEntry *surface_entry;
  FmNumberEntry *surface_temp_entry;
  FmNumberEntry *side_1_entry;
  FmNumberEntry *side_2_entry;
  FmNumberEntry *rest_entry;

  FmExperimentDocument *document;
  gboolean loading;
};

G_DEFINE_FINAL_TYPE (FmExperimentMaking, fm_experiment_making, GTK_TYPE_WIDGET)

/* Which entry shows which number; temperatures also say their range in Celsius, since the
 * entry's own range follows the unit. */
typedef struct {
  size_t entry;
  size_t field;
} Binding;

#define NUMBER(entry, field)                                                                       \
  {                                                                                                \
    G_STRUCT_OFFSET (FmExperimentMaking, entry), G_STRUCT_OFFSET (FmExperiment, field)             \
  }

static const Binding bindings[] = {
  NUMBER (meat_temp_entry, meat_temp_c),
  NUMBER (plate_entry, plate_mm),
  NUMBER (salt_entry, salt_pct),
  NUMBER (surface_salt_entry, surface_salt_pct),
  NUMBER (salt_minutes_entry, salt_minutes_before),
  NUMBER (surface_temp_entry, surface_temp_c),
  NUMBER (side_1_entry, minutes_side_1),
  NUMBER (side_2_entry, minutes_side_2),
  NUMBER (rest_entry, rest_minutes),
};

static FmNumberEntry *
get_entry (FmExperimentMaking *self, const Binding *binding)
{
  return G_STRUCT_MEMBER (FmNumberEntry *, self, binding->entry);
}

static double *
get_field (FmExperimentMaking *self, const Binding *binding)
{
  FmExperiment *experiment = fm_experiment_document_get_experiment (self->document);

  return G_STRUCT_MEMBER_P (experiment, binding->field);
}

/* A reading hotter than what it cooked on. */
static void
warn (FmExperimentMaking *self)
{
  const FmExperiment *experiment = fm_experiment_document_get_experiment (self->document);
  const char *warning = NULL;

  for (guint i = 0; i < experiment->core_readings->len && warning == NULL; i++)
    warning = fm_strange_core (g_array_index (experiment->core_readings, FmCoreReading, i).temp_c,
                               experiment->surface_temp_c);
  fm_number_entry_set_warning (self->surface_temp_entry, warning);
}

static void
show_all (FmExperimentMaking *self)
{
  const FmExperiment *experiment = fm_experiment_document_get_experiment (self->document);

  self->loading = TRUE;
  for (guint i = 0; i < G_N_ELEMENTS (bindings); i++)
    fm_number_entry_load_value (get_entry (self, &bindings[i]), *get_field (self, &bindings[i]));
  fm_number_entry_load_value (self->passes_entry,
                              experiment->grind_passes > 0 ? experiment->grind_passes : NAN);
  gtk_drop_down_set_selected (self->method_drop_down, experiment->method);
  gtk_editable_set_text (GTK_EDITABLE (self->surface_entry),
                         experiment->surface != NULL ? experiment->surface : "");
  warn (self);
  self->loading = FALSE;
}

static void
number_changed_cb (FmExperimentMaking *self, double value, FmNumberEntry *entry)
{
  for (guint i = 0; i < G_N_ELEMENTS (bindings); i++) {
    if (get_entry (self, &bindings[i]) != entry)
      continue;
    *get_field (self, &bindings[i]) = value;
    warn (self);
    fm_experiment_document_did (self->document, fm_number_entry_get_what (entry));
  }
}

static void
passes_changed_cb (FmExperimentMaking *self, double value)
{
  fm_experiment_document_get_experiment (self->document)->grind_passes =
      isnan (value) ? 0 : (int)value;
  fm_experiment_document_did (self->document, fm_number_entry_get_what (self->passes_entry));
}

static void
method_changed_cb (FmExperimentMaking *self)
{
  const guint selected = gtk_drop_down_get_selected (self->method_drop_down);

  if (self->loading || self->document == NULL || selected >= FM_N_COOK_METHODS)
    return;
  fm_experiment_document_get_experiment (self->document)->method = (FmCookMethod)selected;
  fm_experiment_document_did (self->document, _ ("Cooking method"));
}

static void
surface_changed_cb (FmExperimentMaking *self)
{
  const char *text = gtk_editable_get_text (GTK_EDITABLE (self->surface_entry));
  FmExperiment *experiment;

  if (self->loading || self->document == NULL)
    return;
  experiment = fm_experiment_document_get_experiment (self->document);
  g_free (experiment->surface);
  experiment->surface = text[0] != '\0' ? g_strdup (text) : NULL;
  fm_experiment_document_did (self->document, _ ("Cooking surface"));
}

static void
fm_experiment_making_dispose (GObject *object)
{
  FmExperimentMaking *self = FM_EXPERIMENT_MAKING (object);

  fm_widget_drop_template (GTK_WIDGET (self), FM_TYPE_EXPERIMENT_MAKING);
  g_clear_object (&self->document);
  G_OBJECT_CLASS (fm_experiment_making_parent_class)->dispose (object);
}

static void
bind_children (GtkWidgetClass *widget_class)
{
  gtk_widget_class_bind_template_child (widget_class, FmExperimentMaking, box);
  gtk_widget_class_bind_template_child (widget_class, FmExperimentMaking, meat_temp_entry);
  gtk_widget_class_bind_template_child (widget_class, FmExperimentMaking, plate_entry);
  gtk_widget_class_bind_template_child (widget_class, FmExperimentMaking, passes_entry);
  gtk_widget_class_bind_template_child (widget_class, FmExperimentMaking, salt_entry);
  gtk_widget_class_bind_template_child (widget_class, FmExperimentMaking, surface_salt_entry);
  gtk_widget_class_bind_template_child (widget_class, FmExperimentMaking, salt_minutes_entry);
  gtk_widget_class_bind_template_child (widget_class, FmExperimentMaking, method_drop_down);
  gtk_widget_class_bind_template_child (widget_class, FmExperimentMaking, surface_entry);
  gtk_widget_class_bind_template_child (widget_class, FmExperimentMaking, surface_temp_entry);
  gtk_widget_class_bind_template_child (widget_class, FmExperimentMaking, side_1_entry);
  gtk_widget_class_bind_template_child (widget_class, FmExperimentMaking, side_2_entry);
  gtk_widget_class_bind_template_child (widget_class, FmExperimentMaking, rest_entry);
}

static void
fm_experiment_making_class_init (FmExperimentMakingClass *klass)
{
  GtkWidgetClass *widget_class = GTK_WIDGET_CLASS (klass);

  G_OBJECT_CLASS (klass)->dispose = fm_experiment_making_dispose;
  g_type_ensure (FM_TYPE_NUMBER_ENTRY);
  gtk_widget_class_set_template_from_resource (
      widget_class, "/io/github/forcemeat/Forcemeat/ui/experiments/fm-experiment-making.ui");
  gtk_widget_class_set_layout_manager_type (widget_class, GTK_TYPE_BIN_LAYOUT);
  bind_children (widget_class);
  gtk_widget_class_bind_template_callback (widget_class, number_changed_cb);
  gtk_widget_class_bind_template_callback (widget_class, passes_changed_cb);
  gtk_widget_class_bind_template_callback (widget_class, method_changed_cb);
  gtk_widget_class_bind_template_callback (widget_class, surface_changed_cb);
}

static void
fm_experiment_making_init (FmExperimentMaking *self)
{
  g_autoptr (GtkStringList) methods = gtk_string_list_new (NULL);

  self->loading = TRUE;
  gtk_widget_init_template (GTK_WIDGET (self));
  for (guint i = 0; i < FM_N_COOK_METHODS; i++)
    gtk_string_list_append (methods, fm_cook_method_name ((FmCookMethod)i));
  gtk_drop_down_set_model (self->method_drop_down, G_LIST_MODEL (methods));
  fm_accessible_name_drop_down (self->method_drop_down, _ ("Cooking method"));
  self->loading = FALSE;
  g_signal_connect_object (fm_notebook_settings_get_default (), "changed",
                           G_CALLBACK (fm_experiment_making_update), self, G_CONNECT_SWAPPED);
}

void
fm_experiment_making_set_document (FmExperimentMaking *self, FmExperimentDocument *document)
{
  g_return_if_fail (FM_IS_EXPERIMENT_MAKING (self));
  if (g_set_object (&self->document, document) && document != NULL)
    show_all (self);
}

void
fm_experiment_making_update (FmExperimentMaking *self)
{
  g_return_if_fail (FM_IS_EXPERIMENT_MAKING (self));
  if (self->document != NULL)
    show_all (self);
}
