/* SPDX-FileCopyrightText: 2026 the Forcemeat developers
 * SPDX-License-Identifier: GPL-3.0-or-later */
/* fm-cook-own-params.c - D and z of the developer's own, as entries */
#include "app/cook/fm-cook-own-params.h"

#include <adwaita.h>
#include <glib/gi18n-lib.h>

#include "app/session/fm-notebook-settings.h"
#include "app/widgets/fm-number-row.h"
#include "app/widgets/fm-widget.h"

/* Temperatures at which heat kills what is counted, and nothing boils dry. */
#define MIN_REF_C 30.0
#define MAX_REF_C 150.0
#define MIN_Z_K 0.5
#define MAX_Z_K 100.0

struct _FmCookOwnParams {
  GtkWidget parent_instance;

  GtkWidget *group;
  FmNumberEntry *d_entry;
  FmNumberEntry *ref_entry;
  FmNumberEntry *z_entry;
};

G_DEFINE_FINAL_TYPE (FmCookOwnParams, fm_cook_own_params, GTK_TYPE_WIDGET)

enum {
  CHANGED,
  N_SIGNALS,
};

static guint signals[N_SIGNALS];

static void
show_numbers (FmCookOwnParams *self)
{
  const FmSettingValues *values =
      fm_notebook_settings_get_values (fm_notebook_settings_get_default ());

  fm_number_entry_set_value (self->d_entry, values->own_d_min);
  fm_number_entry_set_value (self->ref_entry, values->own_ref_c);
  fm_number_entry_set_value (self->z_entry, values->own_z_k);
}

static void
changed_cb (FmCookOwnParams *self)
{
  fm_notebook_settings_set_own (
      fm_notebook_settings_get_default (), fm_number_entry_get_value (self->d_entry),
      fm_number_entry_get_value (self->ref_entry), fm_number_entry_get_value (self->z_entry));
  g_signal_emit (self, signals[CHANGED], 0);
}

/* Another notebook has others. */
static void
settings_changed_cb (FmCookOwnParams *self)
{
  show_numbers (self);
  g_signal_emit (self, signals[CHANGED], 0);
}

static void
fm_cook_own_params_dispose (GObject *object)
{
  fm_widget_drop_template (GTK_WIDGET (object), FM_TYPE_COOK_OWN_PARAMS);
  G_OBJECT_CLASS (fm_cook_own_params_parent_class)->dispose (object);
}

static void
fm_cook_own_params_class_init (FmCookOwnParamsClass *klass)
{
  GtkWidgetClass *widget_class = GTK_WIDGET_CLASS (klass);

  G_OBJECT_CLASS (klass)->dispose = fm_cook_own_params_dispose;
  signals[CHANGED] = g_signal_new ("changed", FM_TYPE_COOK_OWN_PARAMS, G_SIGNAL_RUN_LAST, 0, NULL,
                                   NULL, NULL, G_TYPE_NONE, 0);
  g_type_ensure (FM_TYPE_NUMBER_ENTRY);
  gtk_widget_class_set_template_from_resource (
      widget_class, "/io/github/forcemeat/Forcemeat/ui/cook/fm-cook-own-params.ui");
  gtk_widget_class_set_layout_manager_type (widget_class, GTK_TYPE_BIN_LAYOUT);
  gtk_widget_class_bind_template_child (widget_class, FmCookOwnParams, group);
  gtk_widget_class_bind_template_child (widget_class, FmCookOwnParams, d_entry);
  gtk_widget_class_bind_template_child (widget_class, FmCookOwnParams, ref_entry);
  gtk_widget_class_bind_template_child (widget_class, FmCookOwnParams, z_entry);
  gtk_widget_class_bind_template_callback (widget_class, changed_cb);
}

static void
fm_cook_own_params_init (FmCookOwnParams *self)
{
  gtk_widget_init_template (GTK_WIDGET (self));
  fm_number_row_tell_errors (self->d_entry);
  fm_number_row_tell_errors (self->ref_entry);
  fm_number_row_tell_errors (self->z_entry);
  fm_number_entry_set_range (self->ref_entry, MIN_REF_C, MAX_REF_C);
  fm_number_entry_set_range (self->z_entry, MIN_Z_K, MAX_Z_K);
  show_numbers (self);
  g_signal_connect_object (fm_notebook_settings_get_default (), "changed",
                           G_CALLBACK (settings_changed_cb), self, G_CONNECT_SWAPPED);
}

void
fm_cook_own_params_read (FmCookOwnParams *self, FmLethalityParams *params)
{
  g_return_if_fail (FM_IS_COOK_OWN_PARAMS (self));
  fm_lethality_params_init_own (params, fm_number_entry_get_value (self->d_entry),
                                fm_number_entry_get_value (self->ref_entry),
                                fm_number_entry_get_value (self->z_entry));
}
