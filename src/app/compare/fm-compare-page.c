/* SPDX-FileCopyrightText: 2026 the Forcemeat developers
 * SPDX-License-Identifier: GPL-3.0-or-later */
/* fm-compare-page.c - versions or experiments side by side */
#include "app/compare/fm-compare-page.h"

#include <glib/gi18n-lib.h>

#include "app/compare/fm-compare-charts.h"
#include "app/compare/fm-compare-choice.h"
#include "app/compare/fm-compare-give.h"
#include "app/compare/fm-compare-load.h"
#include "app/compare/fm-compare-picker.h"
#include "app/compare/fm-compare-table.h"
#include "app/photos/fm-photo-viewer.h"
#include "app/session/fm-notebook-settings.h"
#include "app/widgets/fm-derivation-window.h"
#include "app/widgets/fm-widget.h"
#include "app/widgets/fm-wrap-layout.h"
#include "core/base/fm-chart-scale.h"
#include "core/compare/fm-comparison-derivation.h"

/* Ends the setting of the view where rows that are the same are left out. */
#define DIFFERING_WORD " differing"

struct _FmComparePage {
  FmPage parent_instance;

  GtkStack *stack;
  GtkToggleButton *values_button;
  GtkToggleButton *differences_button;
  GtkDropDown *reference_drop_down;
  GtkCheckButton *differing_button;
  GtkCheckButton *charts_button;
  FmCompareCharts *charts;
  FmCompareTable *table;

  GStrv keys;             /* (nullable): what is chosen */
  FmCompareShown *shown;  /* (nullable) */
  guint reference_column; /* of the user's choice */
  char *chart_key;
  GCancellable *cancellable; /* of the load that runs */
  GCancellable *recalling;   /* of what was shown last */
  gboolean stale;            /* to be read again when the page is shown */
  gboolean filling;          /* controls change by program, not by the user */
};

G_DEFINE_FINAL_TYPE (FmComparePage, fm_compare_page, FM_TYPE_PAGE)

static const FmComparison *
comparison (FmComparePage *self)
{
  return self->shown != NULL ? self->shown->comparison : NULL;
}

/* Column of the reference in difference mode, -1 in value mode. */
static int
reference (FmComparePage *self)
{
  guint selected = gtk_drop_down_get_selected (self->reference_drop_down);

  if (!gtk_toggle_button_get_active (self->differences_button) || self->shown == NULL ||
      selected >= fm_comparison_n_items (self->shown->comparison))
    return -1;
  return (int)selected;
}

static gboolean
only_differing (FmComparePage *self)
{
  return gtk_check_button_get_active (self->differing_button);
}

static void
show_numbers (FmComparePage *self)
{
  const FmCompareTableLook look = { reference (self), only_differing (self) };

  gtk_widget_set_sensitive (GTK_WIDGET (self->reference_drop_down),
                            gtk_toggle_button_get_active (self->differences_button));
  fm_compare_table_show (self->table, self->shown, &look);
  fm_compare_charts_show (self->charts, comparison (self), look.reference, self->chart_key);
}

static void
fill_reference (FmComparePage *self)
{
  g_autoptr (GtkStringList) names = gtk_string_list_new (NULL);
  guint selected = self->reference_column;
  guint n = fm_comparison_n_items (comparison (self));

  for (guint i = 0; i < n; i++) {
    g_autofree char *name = g_strdup_printf ("%s · %s", fm_chart_letter (i),
                                             fm_comparison_item (comparison (self), i)->title);

    gtk_string_list_append (names, name);
  }
  self->filling = TRUE;
  gtk_drop_down_set_model (self->reference_drop_down, G_LIST_MODEL (names));
  gtk_drop_down_set_selected (self->reference_drop_down, selected < n ? selected : 0);
  self->filling = FALSE;
}

static void
enable_actions (FmComparePage *self, gboolean enabled)
{
  static const char *const names[] = { "compare.copy", "compare.print", "compare.export",
                                       "compare.why" };

  for (guint i = 0; i < G_N_ELEMENTS (names); i++)
    gtk_widget_action_set_enabled (GTK_WIDGET (self), names[i], enabled);
}

/* The table points into what was shown before, so it lets go first. */
static void
take_shown (FmComparePage *self, FmCompareShown *shown)
{
  fm_compare_table_show (self->table, NULL, NULL);
  fm_compare_charts_show (self->charts, NULL, -1, NULL);
  g_clear_pointer (&self->shown, fm_compare_shown_free);
  if (shown != NULL && fm_comparison_n_items (shown->comparison) < FM_COMPARE_MIN_ITEMS)
    g_clear_pointer (&shown, fm_compare_shown_free);
  self->shown = shown;
  enable_actions (self, shown != NULL);
  if (shown == NULL) {
    gtk_stack_set_visible_child_name (self->stack, "empty");
    return;
  }
  fill_reference (self);
  show_numbers (self);
  gtk_stack_set_visible_child_name (self->stack, "content");
}

static void
loaded_cb (GObject *source, GAsyncResult *result, gpointer user_data)
{
  g_autoptr (FmComparePage) self = FM_COMPARE_PAGE (user_data);
  g_autoptr (GError) error = NULL;
  FmCompareShown *shown = fm_compare_load_finish (result, &error);

  if (g_error_matches (error, G_IO_ERROR, G_IO_ERROR_CANCELLED) ||
      fm_page_get_session (FM_PAGE (self)) == NULL)
    return;
  g_clear_object (&self->cancellable);
  if (error != NULL)
    fm_session_failure (fm_page_get_session (FM_PAGE (self)), error);
  take_shown (self, shown);
}

static void
stop (GCancellable **cancellable)
{
  g_cancellable_cancel (*cancellable);
  g_clear_object (cancellable);
}

static void
load (FmComparePage *self)
{
  FmNotebook *notebook = fm_page_get_notebook (FM_PAGE (self));

  self->stale = FALSE;
  stop (&self->cancellable);
  if (notebook == NULL || self->keys == NULL || self->keys[0] == NULL) {
    take_shown (self, NULL);
    return;
  }
  /* What is shown stays until the new numbers are there, so that nothing flickers. */
  if (self->shown == NULL)
    gtk_stack_set_visible_child_name (self->stack, "loading");
  self->cancellable = g_cancellable_new ();
  fm_compare_load_async (fm_page_get_session (FM_PAGE (self)), (const char *const *)self->keys,
                         self->cancellable, loaded_cb, g_object_ref (self));
}

static void
reload_cb (FmComparePage *self)
{
  self->stale = TRUE;
  if (gtk_widget_get_mapped (GTK_WIDGET (self)))
    load (self);
}

/* A keystroke in a draft that is not compared is no reason to read. */
static void
formula_changed_cb (FmComparePage *self, const FmChange *change)
{
  g_autofree char *key = fm_compare_key (FM_COMPARE_DRAFT, change->id);

  if (self->keys != NULL && g_strv_contains ((const char *const *)self->keys, key))
    reload_cb (self);
}

static void
photo_changed_cb (FmComparePage *self)
{
  if (self->keys != NULL)
    reload_cb (self);
}

static void
save_view (FmComparePage *self)
{
  gboolean differences = gtk_toggle_button_get_active (self->differences_button);
  g_autofree char *setting =
      g_strdup_printf ("%s %u%s", differences ? "differences" : "values", self->reference_column,
                       only_differing (self) ? DIFFERING_WORD : "");

  fm_session_remember (fm_page_get_session (FM_PAGE (self)), FM_COMPARE_VIEW_SETTING, setting);
}

static void
restore_view (FmComparePage *self, const char *setting)
{
  gboolean differences = setting != NULL && g_str_has_prefix (setting, "differences");
  const char *column = setting != NULL ? strchr (setting, ' ') : NULL;

  self->filling = TRUE;
  self->reference_column =
      column != NULL ? (guint)MIN (g_ascii_strtoull (column, NULL, 10), G_MAXINT) : 0;
  gtk_toggle_button_set_active (differences ? self->differences_button : self->values_button, TRUE);
  gtk_check_button_set_active (self->differing_button,
                               setting != NULL && g_str_has_suffix (setting, DIFFERING_WORD));
  self->filling = FALSE;
}

static void
set_keys (FmComparePage *self, GStrv keys)
{
  g_strfreev (self->keys);
  self->keys = keys;
}

static void
recalled_cb (GObject *source, GAsyncResult *result, gpointer user_data)
{
  g_autoptr (FmComparePage) self = FM_COMPARE_PAGE (user_data);
  g_autoptr (FmCompareMemory) memory = fm_compare_load_memory_finish (result, NULL);

  if (memory == NULL)
    return;
  g_clear_object (&self->recalling);
  if (memory->selection != NULL && memory->selection[0] != '\0')
    set_keys (self, g_strsplit (memory->selection, " ", -1));
  restore_view (self, memory->view);
  reload_cb (self);
}

static void
notebook_changed_cb (FmComparePage *self)
{
  FmNotebook *notebook = fm_page_get_notebook (FM_PAGE (self));

  stop (&self->cancellable);
  stop (&self->recalling);
  take_shown (self, NULL);
  set_keys (self, NULL);
  restore_view (self, NULL);
  gtk_widget_action_set_enabled (GTK_WIDGET (self), "compare.choose", notebook != NULL);
  if (notebook == NULL)
    return;
  self->recalling = g_cancellable_new ();
  fm_compare_load_memory_async (notebook, self->recalling, recalled_cb, g_object_ref (self));
}

static void
mode_changed_cb (FmComparePage *self)
{
  guint selected = gtk_drop_down_get_selected (self->reference_drop_down);

  if (self->filling || self->shown == NULL)
    return;
  if (selected != GTK_INVALID_LIST_POSITION)
    self->reference_column = selected;
  show_numbers (self);
  save_view (self);
}

/* Of all columns, so that one leads to the next. */
static void
show_photos (FmComparePage *self)
{
  GtkWindow *window = GTK_WINDOW (gtk_widget_get_root (GTK_WIDGET (self)));
  FmPhotoViewer *viewer =
      fm_photo_viewer_new (window, fm_page_get_notebook (FM_PAGE (self)), self->shown->photos, 0);

  gtk_window_present (GTK_WINDOW (viewer));
}

static void
row_activated_cb (FmComparePage *self, const char *key)
{
  if (g_str_equal (key, FM_COMPARE_PHOTOS_KEY)) {
    show_photos (self);
    return;
  }
  g_free (self->chart_key);
  self->chart_key = g_strdup (key);
  gtk_check_button_set_active (self->charts_button, TRUE);
  fm_compare_charts_show (self->charts, comparison (self), reference (self), self->chart_key);
}

static void
chosen_cb (FmComparePicker *picker, GStrv keys, gpointer user_data)
{
  fm_compare_page_choose (FM_COMPARE_PAGE (user_data), (const char *const *)keys);
}

static void
choose_action (GtkWidget *widget, const char *name, GVariant *parameter)
{
  FmComparePage *self = FM_COMPARE_PAGE (widget);
  GtkRoot *root = gtk_widget_get_root (widget);
  FmComparePicker *picker;

  picker = fm_compare_picker_new (GTK_WINDOW (root), fm_page_get_session (FM_PAGE (self)),
                                  (const char *const *)self->keys);
  g_signal_connect_object (picker, "chosen", G_CALLBACK (chosen_cb), self, 0);
  gtk_window_present (GTK_WINDOW (picker));
}

static FmCompareView
view_of (FmComparePage *self)
{
  return (FmCompareView){ comparison (self), reference (self), only_differing (self),
                          fm_notebook_notice () };
}

static void
copy_action (GtkWidget *widget, const char *name, GVariant *parameter)
{
  const FmCompareView view = view_of (FM_COMPARE_PAGE (widget));

  fm_compare_give_copy (widget, &view);
}

static void
print_action (GtkWidget *widget, const char *name, GVariant *parameter)
{
  const FmCompareView view = view_of (FM_COMPARE_PAGE (widget));

  fm_compare_give_print (widget, &view);
}

static void
export_action (GtkWidget *widget, const char *name, GVariant *parameter)
{
  const FmCompareView view = view_of (FM_COMPARE_PAGE (widget));

  fm_compare_give_csv (widget, &view);
}

/* Opened for a heading it would say nothing, so the row drawn stands in. */
static void
why_action (GtkWidget *widget, const char *name, GVariant *parameter)
{
  FmComparePage *self = FM_COMPARE_PAGE (widget);
  const FmCompareRow *row = fm_compare_table_get_row (self->table);
  g_autofree char *text = NULL;

  if (row == NULL)
    row = fm_comparison_find_row (comparison (self), "fat");
  if (row == NULL)
    return;
  text = fm_comparison_derivation (comparison (self), row, reference (self));
  fm_derivation_window_show (widget, row->name, text);
}

static void
fm_compare_page_show_session (FmPage *page)
{
  notebook_changed_cb (FM_COMPARE_PAGE (page));
}

static void
fm_compare_page_map (GtkWidget *widget)
{
  FmComparePage *self = FM_COMPARE_PAGE (widget);

  GTK_WIDGET_CLASS (fm_compare_page_parent_class)->map (widget);
  if (self->stale)
    load (self);
}

static void
fm_compare_page_dispose (GObject *object)
{
  FmComparePage *self = FM_COMPARE_PAGE (object);

  stop (&self->cancellable);
  stop (&self->recalling);
  if (self->table != NULL)
    fm_compare_table_show (self->table, NULL, NULL);
  g_clear_pointer (&self->shown, fm_compare_shown_free);
  fm_widget_drop_template (GTK_WIDGET (self), FM_TYPE_COMPARE_PAGE);
  G_OBJECT_CLASS (fm_compare_page_parent_class)->dispose (object);
}

static void
fm_compare_page_finalize (GObject *object)
{
  FmComparePage *self = FM_COMPARE_PAGE (object);

  g_strfreev (self->keys);
  g_free (self->chart_key);
  G_OBJECT_CLASS (fm_compare_page_parent_class)->finalize (object);
}

static void
fm_compare_page_class_init (FmComparePageClass *klass)
{
  GObjectClass *object_class = G_OBJECT_CLASS (klass);
  GtkWidgetClass *widget_class = GTK_WIDGET_CLASS (klass);

  g_type_ensure (FM_TYPE_COMPARE_CHARTS);
  g_type_ensure (FM_TYPE_COMPARE_TABLE);
  object_class->dispose = fm_compare_page_dispose;
  object_class->finalize = fm_compare_page_finalize;
  widget_class->map = fm_compare_page_map;
  FM_PAGE_CLASS (klass)->show_session = fm_compare_page_show_session;
  g_type_ensure (FM_TYPE_WRAP_LAYOUT);
  gtk_widget_class_set_template_from_resource (
      widget_class, "/io/github/forcemeat/Forcemeat/ui/compare/fm-compare-page.ui");
  gtk_widget_class_bind_template_child (widget_class, FmComparePage, stack);
  gtk_widget_class_bind_template_child (widget_class, FmComparePage, values_button);
  gtk_widget_class_bind_template_child (widget_class, FmComparePage, differences_button);
  gtk_widget_class_bind_template_child (widget_class, FmComparePage, reference_drop_down);
  gtk_widget_class_bind_template_child (widget_class, FmComparePage, differing_button);
  gtk_widget_class_bind_template_child (widget_class, FmComparePage, charts_button);
  gtk_widget_class_bind_template_child (widget_class, FmComparePage, charts);
  gtk_widget_class_bind_template_child (widget_class, FmComparePage, table);
  gtk_widget_class_bind_template_callback (widget_class, mode_changed_cb);
  gtk_widget_class_bind_template_callback (widget_class, row_activated_cb);
  gtk_widget_class_install_action (widget_class, "compare.choose", NULL, choose_action);
  gtk_widget_class_install_action (widget_class, "compare.copy", NULL, copy_action);
  gtk_widget_class_install_action (widget_class, "compare.print", NULL, print_action);
  gtk_widget_class_install_action (widget_class, "compare.export", NULL, export_action);
  gtk_widget_class_install_action (widget_class, "compare.why", NULL, why_action);
  gtk_widget_class_add_binding_action (widget_class, GDK_KEY_d, GDK_CONTROL_MASK, "compare.why",
                                       NULL);
}

static void
listen (FmPage *page)
{
  fm_page_listen (page, "changed::notebook", G_CALLBACK (notebook_changed_cb));
  fm_page_listen (page, "changed::experiment", G_CALLBACK (reload_cb));
  fm_page_listen (page, "changed::photo", G_CALLBACK (photo_changed_cb));
  fm_page_listen (page, "changed::formula", G_CALLBACK (formula_changed_cb));
  fm_page_listen (page, "changed::tasting", G_CALLBACK (reload_cb));
  fm_page_listen (page, "changed::blend", G_CALLBACK (reload_cb));
  fm_page_listen (page, "changed::draft", G_CALLBACK (reload_cb));
  fm_page_listen (page, "changed::version", G_CALLBACK (reload_cb));
}

static void
fm_compare_page_init (FmComparePage *self)
{
  gtk_widget_init_template (GTK_WIDGET (self));
  fm_widget_ellipsize_drop_down (self->reference_drop_down);
  /* The focus goes to the button inside, which a screen reader would call by its type. */
  gtk_accessible_update_property (
      GTK_ACCESSIBLE (gtk_widget_get_first_child (GTK_WIDGET (self->reference_drop_down))),
      GTK_ACCESSIBLE_PROPERTY_LABEL, _ ("Reference of the differences"), -1);
  gtk_widget_action_set_enabled (GTK_WIDGET (self), "compare.choose", FALSE);
  enable_actions (self, FALSE);
  listen (FM_PAGE (self));
}

void
fm_compare_page_choose (FmComparePage *self, const char *const *keys)
{
  g_autofree char *setting = g_strjoinv (" ", (char **)keys);

  stop (&self->recalling);
  set_keys (self, g_strdupv ((char **)keys));
  fm_session_remember (fm_page_get_session (FM_PAGE (self)), FM_COMPARE_SELECTION_SETTING, setting);
  load (self);
}
