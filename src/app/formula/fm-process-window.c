/* SPDX-FileCopyrightText: 2026 the Forcemeat developers
 * SPDX-License-Identifier: GPL-3.0-or-later */
/* fm-process-window.c - plans the process of the draft; each change is kept as it is made */
#include "app/formula/fm-process-window.h"

#include <glib/gi18n-lib.h>
#include <math.h>

#include "app/formula/fm-seasoning-row.h"
#include "app/session/fm-formula-line-edit.h"
#include "app/widgets/fm-number-entry.h"
#include "app/widgets/fm-widget.h"
#include "app/widgets/fm-text-room.h"
#include "core/base/fm-text-limit.h"

#define MAX_WORDS 200

struct _FmProcessWindow {
  AdwWindow parent_instance;

  AdwPreferencesGroup *grinding_group;
  GtkBox *seasonings_box;
  GtkWidget *add_button;
  AdwPreferencesGroup *salt_group;
  AdwPreferencesGroup *forming_group;
  AdwPreferencesGroup *heat_group;
  GtkTextView *steps_view;
  FmNumberEntry *plate_entries[FM_PROCESS_MAX_PASSES];

  FmSession *session;
  gboolean loading;
};

G_DEFINE_FINAL_TYPE (FmProcessWindow, fm_process_window, ADW_TYPE_WINDOW)

static FmProcess *
copy_process (FmProcessWindow *self)
{
  const FmFormula *formula = NULL;

  if (self->loading || !fm_session_is_editable (self->session))
    return NULL;
  formula = fm_session_get_formula (self->session);
  return formula != NULL ? fm_process_copy (formula->process) : NULL;
}

/* A run of typing in one field is one step of undo. */
static void
keep (FmProcessWindow *self, const FmProcess *process, FmProcessField field)
{
  fm_line_edit_process (self->session, process, fm_process_field_name (field));
}

static FmProcessField
field_of (gpointer widget)
{
  return (FmProcessField)GPOINTER_TO_INT (g_object_get_data (widget, "field"));
}

static void
number_changed_cb (FmProcessWindow *self, double value, FmNumberEntry *entry)
{
  g_autoptr (FmProcess) process = copy_process (self);

  if (process == NULL)
    return;
  process->numbers[field_of (entry)] = value;
  keep (self, process, field_of (entry));
}

static void
words_changed_cb (FmProcessWindow *self, GtkEditable *entry)
{
  g_autoptr (FmProcess) process = copy_process (self);

  if (process == NULL)
    return;
  fm_process_set_words (process, field_of (entry), gtk_editable_get_text (entry));
  keep (self, process, field_of (entry));
}

static void
steps_changed_cb (FmProcessWindow *self, GtkTextBuffer *buffer)
{
  g_autoptr (FmProcess) process = copy_process (self);
  g_autofree char *text = NULL;
  GtkTextIter start, end;

  if (process == NULL)
    return;
  gtk_text_buffer_get_bounds (buffer, &start, &end);
  text = gtk_text_buffer_get_text (buffer, &start, &end, FALSE);
  fm_process_set_words (process, FM_PROCESS_STEPS, text);
  keep (self, process, FM_PROCESS_STEPS);
}

static void
plate_changed_cb (FmProcessWindow *self)
{
  g_autoptr (FmProcess) process = copy_process (self);
  double plates_mm[FM_PROCESS_MAX_PASSES];

  if (process == NULL)
    return;
  for (guint i = 0; i < FM_PROCESS_MAX_PASSES; i++)
    plates_mm[i] = fm_number_entry_get_value (self->plate_entries[i]);
  fm_process_set_plates (process, plates_mm, FM_PROCESS_MAX_PASSES);
  keep (self, process, FM_PROCESS_PLATES);
}

static guint
n_seasoning_rows (FmProcessWindow *self)
{
  guint n = 0;

  for (GtkWidget *row = gtk_widget_get_first_child (GTK_WIDGET (self->seasonings_box)); row != NULL;
       row = gtk_widget_get_next_sibling (row))
    n++;
  return n;
}

static void
seasonings_changed_cb (FmProcessWindow *self)
{
  g_autoptr (FmProcess) process = copy_process (self);

  if (process == NULL)
    return;
  g_ptr_array_set_size (process->seasonings, 0);
  for (GtkWidget *row = gtk_widget_get_first_child (GTK_WIDGET (self->seasonings_box)); row != NULL;
       row = gtk_widget_get_next_sibling (row))
    fm_seasoning_row_add_to (FM_SEASONING_ROW (row), process);
  keep (self, process, FM_PROCESS_SEASONINGS);
}

static void
seasoning_remove_cb (FmProcessWindow *self, GtkWidget *row)
{
  GtkWidget *next = gtk_widget_get_next_sibling (row);

  gtk_widget_grab_focus (next != NULL ? next : self->add_button);
  gtk_box_remove (self->seasonings_box, row);
  gtk_widget_set_sensitive (self->add_button, TRUE);
  seasonings_changed_cb (self);
}

static GtkWidget *
add_seasoning (FmProcessWindow *self, const FmSeasoning *seasoning)
{
  const guint number = n_seasoning_rows (self) + 1;
  GtkWidget *row = fm_seasoning_row_new (number, seasoning);

  g_signal_connect_swapped (row, "changed", G_CALLBACK (seasonings_changed_cb), self);
  g_signal_connect_swapped (row, "remove", G_CALLBACK (seasoning_remove_cb), self);
  gtk_box_append (self->seasonings_box, row);
  gtk_widget_set_sensitive (self->add_button, number < FM_PROCESS_MAX_SEASONINGS);
  return row;
}

static void
add_clicked_cb (FmProcessWindow *self)
{
  gtk_widget_grab_focus (add_seasoning (self, NULL));
}

static GtkWidget *
number_entry_new (const char *what, const FmProcessFieldInfo *info)
{
  GtkWidget *entry = fm_number_entry_new (what, info->min, info->max, info->decimals);

  fm_number_entry_set_measure (FM_NUMBER_ENTRY (entry), info->measure);
  g_object_set (entry, "optional", TRUE, "hexpand", FALSE, "valign", GTK_ALIGN_CENTER, NULL);
  return entry;
}

static void
add_row (AdwPreferencesGroup *group, const char *title, GtkWidget *entry)
{
  GtkWidget *row = adw_action_row_new ();

  adw_preferences_row_set_title (ADW_PREFERENCES_ROW (row), title);
  adw_action_row_add_suffix (ADW_ACTION_ROW (row), entry);
  adw_action_row_set_activatable_widget (ADW_ACTION_ROW (row), NULL);
  adw_preferences_group_add (group, row);
}

static void
add_number (FmProcessWindow *self,
            AdwPreferencesGroup *group,
            FmProcessField field,
            const FmProcess *process)
{
  GtkWidget *entry = number_entry_new (fm_process_field_name (field), fm_process_field (field));

  g_object_set_data (G_OBJECT (entry), "field", GINT_TO_POINTER (field));
  fm_number_entry_load_value (FM_NUMBER_ENTRY (entry), process->numbers[field]);
  g_signal_connect_swapped (entry, "value-changed", G_CALLBACK (number_changed_cb), self);
  add_row (group, fm_process_field_name (field), entry);
}

static void
add_words (FmProcessWindow *self,
           AdwPreferencesGroup *group,
           FmProcessField field,
           const FmProcess *process)
{
  const char *words = process->words[field];
  GtkWidget *entry = gtk_entry_new ();

  g_object_set_data (G_OBJECT (entry), "field", GINT_TO_POINTER (field));
  g_object_set (entry, "max-length", MAX_WORDS, "valign", GTK_ALIGN_CENTER, "hexpand", TRUE, NULL);
  gtk_accessible_update_property (GTK_ACCESSIBLE (entry), GTK_ACCESSIBLE_PROPERTY_LABEL,
                                  fm_process_field_name (field), -1);
  gtk_editable_set_text (GTK_EDITABLE (entry), words != NULL ? words : "");
  g_signal_connect_swapped (entry, "changed", G_CALLBACK (words_changed_cb), self);
  add_row (group, fm_process_field_name (field), entry);
}

static void
add_plates (FmProcessWindow *self, const FmProcess *process)
{
  for (guint i = 0; i < FM_PROCESS_MAX_PASSES; i++) {
    g_autofree char *what = g_strdup_printf (_ ("Plate of pass %u"), i + 1);
    GtkWidget *entry = number_entry_new (what, fm_process_field (FM_PROCESS_PLATES));

    self->plate_entries[i] = FM_NUMBER_ENTRY (entry);
    if (i < process->plates_mm->len)
      fm_number_entry_load_value (self->plate_entries[i],
                                  g_array_index (process->plates_mm, double, i));
    g_signal_connect_swapped (entry, "value-changed", G_CALLBACK (plate_changed_cb), self);
    add_row (self->grinding_group, what, entry);
  }
}

static void
add_fields (FmProcessWindow *self, const FmProcess *process)
{
  const FmProcessField forming[] = { FM_PROCESS_DIAMETER, FM_PROCESS_THICKNESS, FM_PROCESS_CHILL };
  const FmProcessField heat[] = { FM_PROCESS_SURFACE_TEMP, FM_PROCESS_SIDE_1, FM_PROCESS_SIDE_2,
                                  FM_PROCESS_TARGET_CORE, FM_PROCESS_REST };

  add_words (self, self->grinding_group, FM_PROCESS_ORDER, process);
  add_number (self, self->grinding_group, FM_PROCESS_MEAT_TEMP, process);
  add_plates (self, process);
  add_number (self, self->grinding_group, FM_PROCESS_MINCE_TEMP, process);
  for (guint i = 0; i < process->seasonings->len; i++)
    add_seasoning (self, fm_process_seasoning (process, i));
  add_number (self, self->salt_group, FM_PROCESS_SALT_MINUTES, process);
  for (guint i = 0; i < G_N_ELEMENTS (forming); i++)
    add_number (self, self->forming_group, forming[i], process);
  add_words (self, self->heat_group, FM_PROCESS_SURFACE, process);
  add_words (self, self->heat_group, FM_PROCESS_HEAT, process);
  for (guint i = 0; i < G_N_ELEMENTS (heat); i++)
    add_number (self, self->heat_group, heat[i], process);
}

static void
show_process (FmProcessWindow *self, const FmProcess *process)
{
  const char *steps = process->words[FM_PROCESS_STEPS];

  self->loading = TRUE;
  add_fields (self, process);
  gtk_text_buffer_set_text (gtk_text_view_get_buffer (self->steps_view), steps != NULL ? steps : "",
                            -1);
  self->loading = FALSE;
}

static void
fm_process_window_dispose (GObject *object)
{
  FmProcessWindow *self = FM_PROCESS_WINDOW (object);

  self->loading = TRUE;
  gtk_widget_dispose_template (GTK_WIDGET (object), FM_TYPE_PROCESS_WINDOW);
  g_clear_object (&self->session);
  G_OBJECT_CLASS (fm_process_window_parent_class)->dispose (object);
}

static void
fm_process_window_class_init (FmProcessWindowClass *klass)
{
  GtkWidgetClass *widget_class = GTK_WIDGET_CLASS (klass);

  G_OBJECT_CLASS (klass)->dispose = fm_process_window_dispose;
  gtk_widget_class_set_template_from_resource (
      widget_class, "/io/github/forcemeat/Forcemeat/ui/formula/fm-process-window.ui");
  gtk_widget_class_bind_template_child (widget_class, FmProcessWindow, grinding_group);
  gtk_widget_class_bind_template_child (widget_class, FmProcessWindow, seasonings_box);
  gtk_widget_class_bind_template_child (widget_class, FmProcessWindow, add_button);
  gtk_widget_class_bind_template_child (widget_class, FmProcessWindow, salt_group);
  gtk_widget_class_bind_template_child (widget_class, FmProcessWindow, forming_group);
  gtk_widget_class_bind_template_child (widget_class, FmProcessWindow, heat_group);
  gtk_widget_class_bind_template_child (widget_class, FmProcessWindow, steps_view);
  gtk_widget_class_bind_template_callback (widget_class, add_clicked_cb);
  gtk_widget_class_bind_template_callback (widget_class, steps_changed_cb);
  gtk_widget_class_add_binding_action (widget_class, GDK_KEY_Escape, 0, "window.close", NULL);
}

static void
fm_process_window_init (FmProcessWindow *self)
{
  self->loading = TRUE;
  gtk_widget_init_template (GTK_WIDGET (self));
  fm_text_room_limit (self->steps_view, FM_TEXT_MAX_BYTES, FM_TEXT_MAX_LINES);
  self->loading = FALSE;
}

void
fm_process_window_present (GtkWidget *parent, FmSession *session)
{
  FmProcessWindow *self =
      g_object_new (FM_TYPE_PROCESS_WINDOW, "transient-for", gtk_widget_get_root (parent), NULL);

  self->session = g_object_ref (session);
  show_process (self, fm_session_get_formula (session)->process);
  gtk_window_present (GTK_WINDOW (self));
}
