/* SPDX-FileCopyrightText: 2026 the Forcemeat developers
 * SPDX-License-Identifier: GPL-3.0-or-later */
/* fm-preferences-window.c - the units of the notebook, and the colours of the program */
#include "app/window/fm-preferences-window.h"

#include "app/widgets/fm-accessible.h"
#include "app/session/fm-notebook-settings.h"
#include "app/session/fm-preferences.h"

struct _FmPreferencesWindow {
  AdwPreferencesWindow parent_instance;

  AdwComboRow *mass_row;
  AdwComboRow *temperature_row;
  AdwComboRow *colour_row;
  GtkEditable *currency_row;
};

G_DEFINE_FINAL_TYPE (FmPreferencesWindow, fm_preferences_window, ADW_TYPE_PREFERENCES_WINDOW)

/* In the order of the choices in the template. */
static const char *const colour_values[] = { "system", "light", "dark", NULL };

static gboolean
value_to_choice (GValue *value, GVariant *variant, gpointer user_data)
{
  const char *text = g_variant_get_string (variant, NULL);
  const char *const *values = user_data;

  for (guint i = 0; values[i] != NULL; i++) {
    if (g_str_equal (values[i], text))
      g_value_set_uint (value, i);
  }
  return TRUE;
}

static GVariant *
choice_to_value (const GValue *value, const GVariantType *type, gpointer user_data)
{
  const char *const *values = user_data;
  guint choice = g_value_get_uint (value);

  return choice < g_strv_length ((char **)values) ? g_variant_new_string (values[choice]) : NULL;
}

static gboolean
flag_to_choice (GBinding *binding, const GValue *flag, GValue *choice, gpointer user_data)
{
  g_value_set_uint (choice, g_value_get_boolean (flag) ? 1 : 0);
  return TRUE;
}

static gboolean
choice_to_flag (GBinding *binding, const GValue *choice, GValue *flag, gpointer user_data)
{
  g_value_set_boolean (flag, g_value_get_uint (choice) == 1);
  return TRUE;
}

/* The second choice is the flag. */
static void
bind_flag (AdwComboRow *row, const char *property)
{
  g_object_bind_property_full (fm_notebook_settings_get_default (), property, row, "selected",
                               G_BINDING_SYNC_CREATE | G_BINDING_BIDIRECTIONAL, flag_to_choice,
                               choice_to_flag, NULL, NULL);
  fm_accessible_name_parts (GTK_WIDGET (row),
                            adw_preferences_row_get_title (ADW_PREFERENCES_ROW (row)));
}

static void
bind_choice (AdwComboRow *row, const char *key, const char *const *values)
{
  g_settings_bind_with_mapping (fm_preferences_get (), key, row, "selected",
                                G_SETTINGS_BIND_DEFAULT, value_to_choice, choice_to_value,
                                (gpointer)values, NULL);
  fm_accessible_name_parts (GTK_WIDGET (row),
                            adw_preferences_row_get_title (ADW_PREFERENCES_ROW (row)));
}

static void
fm_preferences_window_dispose (GObject *object)
{
  gtk_widget_dispose_template (GTK_WIDGET (object), FM_TYPE_PREFERENCES_WINDOW);
  G_OBJECT_CLASS (fm_preferences_window_parent_class)->dispose (object);
}

static void
fm_preferences_window_class_init (FmPreferencesWindowClass *klass)
{
  GtkWidgetClass *widget_class = GTK_WIDGET_CLASS (klass);

  G_OBJECT_CLASS (klass)->dispose = fm_preferences_window_dispose;
  gtk_widget_class_set_template_from_resource (
      widget_class, "/io/github/forcemeat/Forcemeat/ui/window/fm-preferences-window.ui");
  gtk_widget_class_bind_template_child (widget_class, FmPreferencesWindow, mass_row);
  gtk_widget_class_bind_template_child (widget_class, FmPreferencesWindow, temperature_row);
  gtk_widget_class_bind_template_child (widget_class, FmPreferencesWindow, colour_row);
  gtk_widget_class_bind_template_child (widget_class, FmPreferencesWindow, currency_row);
}

static void
fm_preferences_window_init (FmPreferencesWindow *self)
{
  gtk_widget_init_template (GTK_WIDGET (self));
  bind_flag (self->mass_row, "us-masses");
  bind_flag (self->temperature_row, "fahrenheit");
  bind_choice (self->colour_row, "colour-scheme", colour_values);
  g_object_bind_property (fm_notebook_settings_get_default (), "currency", self->currency_row,
                          "text", G_BINDING_SYNC_CREATE | G_BINDING_BIDIRECTIONAL);
}

FmPreferencesWindow *
fm_preferences_window_new (GtkWindow *parent)
{
  return g_object_new (FM_TYPE_PREFERENCES_WINDOW, "transient-for", parent, NULL);
}
