/* SPDX-FileCopyrightText: 2026 the Forcemeat developers
 * SPDX-License-Identifier: GPL-3.0-or-later */
/* fm-brief-pane.c - what is to be developed: patty, number, doneness and target bands */
#include "app/formula/fm-brief-pane.h"

#include <math.h>

#include <glib/gi18n-lib.h>

#include "app/formula/fm-brief-legal.h"
#include "app/widgets/fm-brief-target-row.h"
#include "app/session/fm-formula-line-edit.h"
#include "app/widgets/fm-number-entry.h"
#include "app/widgets/fm-widget.h"
#include "app/widgets/fm-wrap-layout.h"
#include "core/cooking/fm-caution.h"
#include "app/widgets/fm-text-room.h"
#include "core/base/fm-text-limit.h"

/* The lightest patty that a kitchen scale tells apart from nothing. */
#define MIN_PATTY_MASS_G 0.1

struct _FmBriefPane {
  GtkWidget parent_instance;

  GtkWidget *box;
  FmNumberEntry *patty_entry;
  FmNumberEntry *number_entry;
  FmNumberEntry *salt_entry;
  GtkEditable *doneness_entry;
  GtkTextBuffer *notes_buffer;
  GtkTextView *notes_view;
  GtkLabel *caution_label;
  GtkListBox *target_list;
  FmBriefTargetRow *rows[FM_N_TARGETS];
  FmBriefLegal *legal;

  FmSession *session;
  gboolean loading;
};

G_DEFINE_FINAL_TYPE (FmBriefPane, fm_brief_pane, GTK_TYPE_WIDGET)

static FmBrief *
copy_brief (FmBriefPane *self)
{
  const FmFormula *formula = NULL;

  if (self->loading || self->session == NULL || !fm_session_is_editable (self->session))
    return NULL;
  formula = fm_session_get_formula (self->session);
  return formula != NULL ? fm_brief_copy (formula->brief) : NULL;
}

static void
patty_changed_cb (FmBriefPane *self, double mass_g)
{
  g_autoptr (FmBrief) brief = copy_brief (self);

  if (brief == NULL)
    return;
  brief->patty_mass_g = mass_g;
  fm_line_edit_brief (self->session, brief, fm_number_entry_get_what (self->patty_entry));
}

static void
number_changed_cb (FmBriefPane *self, double number)
{
  g_autoptr (FmBrief) brief = copy_brief (self);

  if (brief == NULL)
    return;
  brief->n_patties = (int)number;
  fm_line_edit_brief (self->session, brief, fm_number_entry_get_what (self->number_entry));
}

static void
salt_changed_cb (FmBriefPane *self, double salt_pct)
{
  g_autoptr (FmBrief) brief = copy_brief (self);

  if (brief == NULL)
    return;
  brief->surface_salt_pct = salt_pct;
  fm_line_edit_brief (self->session, brief, fm_number_entry_get_what (self->salt_entry));
}

static void
doneness_changed_cb (FmBriefPane *self)
{
  g_autoptr (FmBrief) brief = copy_brief (self);
  const char *text = gtk_editable_get_text (self->doneness_entry);

  if (brief == NULL)
    return;
  g_free (brief->doneness);
  brief->doneness = text[0] != '\0' ? g_strdup (text) : NULL;
  fm_line_edit_brief (self->session, brief, _ ("Doneness"));
}

static char *
get_notes (FmBriefPane *self)
{
  GtkTextIter start, end;

  gtk_text_buffer_get_bounds (self->notes_buffer, &start, &end);
  return gtk_text_buffer_get_text (self->notes_buffer, &start, &end, FALSE);
}

static void
notes_changed_cb (FmBriefPane *self)
{
  g_autoptr (FmBrief) brief = copy_brief (self);
  g_autofree char *text = get_notes (self);

  if (brief == NULL)
    return;
  g_free (brief->notes);
  brief->notes = text[0] != '\0' ? g_steal_pointer (&text) : NULL;
  fm_line_edit_brief (self->session, brief, _ ("Notes"));
}

static void
band_end_changed_cb (FmBriefPane *self, gboolean maximum, double value, FmBriefTargetRow *row)
{
  g_autoptr (FmBrief) brief = copy_brief (self);
  g_autoptr (GError) error = NULL;
  g_autofree char *what = NULL;
  FmBand *band = NULL;

  if (brief == NULL)
    return;
  band = &brief->bands[fm_brief_target_row_get_kind (row)];
  *(maximum ? &band->max : &band->min) = value;
  if (!fm_brief_check (brief, &error)) {
    fm_brief_target_row_refuse (row, maximum, error->message);
    return;
  }
  what = g_strdup_printf (maximum ? _ ("%s, most") : _ ("%s, least"),
                          fm_target_name (fm_brief_target_row_get_kind (row)));
  fm_line_edit_brief (self->session, brief, what);
}

static void
rules_chosen_cb (FmBriefPane *self, guint rules)
{
  g_autoptr (FmBrief) brief = copy_brief (self);

  if (brief == NULL)
    return;
  brief->rules = (FmRuleSet)rules;
  fm_line_edit_brief (self->session, brief, _ ("Rules of the law"));
}

static void
add_target_rows (FmBriefPane *self)
{
  for (guint i = 0; i < FM_N_TARGETS; i++) {
    GtkWidget *row = fm_brief_target_row_new ((FmTargetKind)i);

    self->rows[i] = FM_BRIEF_TARGET_ROW (row);
    g_signal_connect_swapped (row, "band-end-changed", G_CALLBACK (band_end_changed_cb), self);
    gtk_list_box_append (self->target_list, row);
  }
}

static void
fm_brief_pane_dispose (GObject *object)
{
  g_clear_object (&FM_BRIEF_PANE (object)->session);
  fm_widget_drop_template (GTK_WIDGET (object), FM_TYPE_BRIEF_PANE);
  G_OBJECT_CLASS (fm_brief_pane_parent_class)->dispose (object);
}

static void
fm_brief_pane_class_init (FmBriefPaneClass *klass)
{
  GtkWidgetClass *widget_class = GTK_WIDGET_CLASS (klass);

  G_OBJECT_CLASS (klass)->dispose = fm_brief_pane_dispose;
  g_type_ensure (FM_TYPE_BRIEF_LEGAL);
  g_type_ensure (FM_TYPE_NUMBER_ENTRY);
  g_type_ensure (FM_TYPE_WRAP_LAYOUT);
  gtk_widget_class_set_template_from_resource (
      widget_class, "/io/github/forcemeat/Forcemeat/ui/formula/fm-brief-pane.ui");
  gtk_widget_class_set_layout_manager_type (widget_class, GTK_TYPE_BIN_LAYOUT);
  gtk_widget_class_bind_template_child (widget_class, FmBriefPane, box);
  gtk_widget_class_bind_template_child (widget_class, FmBriefPane, patty_entry);
  gtk_widget_class_bind_template_child (widget_class, FmBriefPane, number_entry);
  gtk_widget_class_bind_template_child (widget_class, FmBriefPane, salt_entry);
  gtk_widget_class_bind_template_child (widget_class, FmBriefPane, doneness_entry);
  gtk_widget_class_bind_template_child (widget_class, FmBriefPane, notes_buffer);
  gtk_widget_class_bind_template_child (widget_class, FmBriefPane, notes_view);
  gtk_widget_class_bind_template_child (widget_class, FmBriefPane, caution_label);
  gtk_widget_class_bind_template_child (widget_class, FmBriefPane, target_list);
  gtk_widget_class_bind_template_child (widget_class, FmBriefPane, legal);
  gtk_widget_class_bind_template_callback (widget_class, patty_changed_cb);
  gtk_widget_class_bind_template_callback (widget_class, number_changed_cb);
  gtk_widget_class_bind_template_callback (widget_class, salt_changed_cb);
  gtk_widget_class_bind_template_callback (widget_class, doneness_changed_cb);
  gtk_widget_class_bind_template_callback (widget_class, notes_changed_cb);
  gtk_widget_class_bind_template_callback (widget_class, rules_chosen_cb);
}

static void
fm_brief_pane_init (FmBriefPane *self)
{
  gtk_widget_init_template (GTK_WIDGET (self));
  fm_text_room_limit (self->notes_view, FM_TEXT_MAX_BYTES, FM_TEXT_MAX_LINES);
  fm_number_entry_set_range (self->patty_entry, MIN_PATTY_MASS_G, FM_MAX_PATTY_MASS_G);
  fm_number_entry_set_range (self->number_entry, 1.0, FM_MAX_N_PATTIES);
  fm_number_entry_set_range (self->salt_entry, 0.0, FM_MAX_SURFACE_SALT_PCT);
  gtk_label_set_text (self->caution_label, fm_caution_text ());
  add_target_rows (self);
}

void
fm_brief_pane_set_session (FmBriefPane *self, FmSession *session)
{
  g_return_if_fail (FM_IS_BRIEF_PANE (self));
  g_set_object (&self->session, session);
}

static void
show_fields (FmBriefPane *self, const FmBrief *brief, gboolean editable)
{
  const char *doneness = brief->doneness != NULL ? brief->doneness : "";
  const char *notes = brief->notes != NULL ? brief->notes : "";
  g_autofree char *shown_notes = get_notes (self);

  fm_number_entry_set_value (self->patty_entry, brief->patty_mass_g);
  fm_number_entry_set_value (self->number_entry, brief->n_patties);
  fm_number_entry_set_value (self->salt_entry, brief->surface_salt_pct);
  if (g_strcmp0 (gtk_editable_get_text (self->doneness_entry), doneness) != 0)
    gtk_editable_set_text (self->doneness_entry, doneness);
  if (g_strcmp0 (shown_notes, notes) != 0)
    gtk_text_buffer_set_text (self->notes_buffer, notes, -1);
  gtk_text_view_set_editable (self->notes_view, editable);
  fm_number_entry_set_editable (self->patty_entry, editable);
  fm_number_entry_set_editable (self->number_entry, editable);
  fm_number_entry_set_editable (self->salt_entry, editable);
  gtk_editable_set_editable (self->doneness_entry, editable);
}

void
fm_brief_pane_update (FmBriefPane *self)
{
  const FmFormula *formula = NULL;
  const FmAnalysis *analysis = NULL;
  gboolean editable = FALSE;

  g_return_if_fail (FM_IS_BRIEF_PANE (self));
  formula = fm_session_get_formula (self->session);
  analysis = fm_session_get_analysis (self->session);
  if (formula == NULL || analysis == NULL)
    return;
  editable = fm_session_is_editable (self->session);
  self->loading = TRUE;
  show_fields (self, formula->brief, editable);
  for (guint i = 0; i < FM_N_TARGETS; i++)
    fm_brief_target_row_update (
        self->rows[i], formula->brief->bands[i],
        fm_analysis_target_value (analysis, formula->brief, (FmTargetKind)i), editable);
  fm_brief_legal_update (self->legal, formula, analysis, editable);
  self->loading = FALSE;
}

void
fm_brief_pane_focus_target (FmBriefPane *self, FmTargetKind kind)
{
  g_return_if_fail (FM_IS_BRIEF_PANE (self));
  g_return_if_fail (kind < FM_N_TARGETS);
  fm_brief_target_row_focus (self->rows[kind]);
}
