/* SPDX-FileCopyrightText: 2026 the Forcemeat developers
 * SPDX-License-Identifier: GPL-3.0-or-later */
/* fm-tasting-view.c - one tasting as a page: its plan, its sheets or its reading, by its state */
#include "app/tastings/fm-tasting-view.h"

#include <glib/gi18n-lib.h>

#include "app/session/fm-tasting-document.h"
#include "app/widgets/fm-date-entry.h"
#include "app/tastings/fm-tasting-plan.h"
#include "app/tastings/fm-tasting-result.h"
#include "app/tastings/fm-tasting-seal.h"
#include "app/tastings/fm-tasting-sheets.h"
#include "app/widgets/fm-text-room.h"
#include "app/widgets/fm-widget.h"
#include "core/base/fm-text-limit.h"

struct _FmTastingView {
  FmStoredView parent_instance;

  GtkScrolledWindow *scroller;
  GtkWidget *title_box;
  GtkEntry *title_entry;
  FmDateEntry *date;
  FmTastingSeal *seal;
  GtkWidget *part_switcher;
  GtkStack *parts;
  FmTastingPlan *plan;
  FmTastingSheets *sheets;
  FmTastingResult *result;
  GtkTextView *notes_view;

  GSignalGroup *signals; /* of the document */
  gboolean loading;
};

G_DEFINE_FINAL_TYPE (FmTastingView, fm_tasting_view, FM_TYPE_STORED_VIEW)

static FmTastingDocument *
get_document (FmTastingView *self)
{
  return fm_stored_view_get_document (FM_STORED_VIEW (self));
}

static FmTasting *
get_tasting (FmTastingView *self)
{
  return fm_stored_view_get_content (FM_STORED_VIEW (self));
}

static gboolean
is_loading (FmTastingView *self)
{
  return self->loading || get_document (self) == NULL;
}

/* Each part is given the document only while its state shows it: a plan knows who is who. */
static void
show_state (FmTastingView *self)
{
  FmTastingDocument *document = get_document (self);
  const FmTastingState state = document != NULL ? get_tasting (self)->state : FM_TASTING_PLANNED;
  const gboolean planned = state == FM_TASTING_PLANNED;
  const gboolean opened = state == FM_TASTING_OPENED;

  fm_tasting_plan_set_document (self->plan, planned ? document : NULL);
  fm_tasting_seal_set_document (self->seal, planned ? NULL : document);
  fm_tasting_sheets_set_document (self->sheets, planned ? NULL : document);
  fm_tasting_result_set_document (self->result, opened ? document : NULL);
  gtk_widget_set_visible (GTK_WIDGET (self->seal), !planned);
  gtk_widget_set_visible (self->part_switcher, opened);
  gtk_stack_set_visible_child_name (self->parts,
                                    planned ? "plan" : (opened ? "reading" : "sheets"));
}

static void
state_changed_cb (FmTastingView *self)
{
  show_state (self);
  gtk_adjustment_set_value (gtk_scrolled_window_get_vadjustment (self->scroller), 0);
}

static void
title_changed_cb (FmTastingView *self)
{
  const char *text = gtk_editable_get_text (GTK_EDITABLE (self->title_entry));

  if (is_loading (self))
    return;
  g_free (get_tasting (self)->title);
  get_tasting (self)->title = *text != '\0' ? g_strdup (text) : NULL;
  fm_tasting_document_did (get_document (self), _ ("Title"));
}

static void
date_changed_cb (FmTastingView *self, gint64 held_at)
{
  if (is_loading (self))
    return;
  get_tasting (self)->held_at = held_at;
  fm_tasting_document_did (get_document (self), _ ("Date"));
}

static void
notes_changed_cb (FmTastingView *self, GtkTextBuffer *buffer)
{
  g_autofree char *text = NULL;
  GtkTextIter start;
  GtkTextIter end;

  if (is_loading (self))
    return;
  gtk_text_buffer_get_bounds (buffer, &start, &end);
  text = gtk_text_buffer_get_text (buffer, &start, &end, FALSE);
  g_free (get_tasting (self)->notes);
  get_tasting (self)->notes = *text != '\0' ? g_steal_pointer (&text) : NULL;
  fm_tasting_document_did (get_document (self), _ ("Notes"));
}

static void
show_details (FmTastingView *self)
{
  const FmTasting *tasting = get_tasting (self);

  self->loading = TRUE;
  fm_widget_show_text (GTK_EDITABLE (self->title_entry), tasting->title);
  fm_date_entry_set (self->date, tasting->held_at);
  gtk_text_buffer_set_text (gtk_text_view_get_buffer (self->notes_view),
                            tasting->notes != NULL ? tasting->notes : "", -1);
  self->loading = FALSE;
}

static void
set_editable (FmTastingView *self, gboolean editable)
{
  gtk_widget_set_sensitive (self->title_box, editable);
  gtk_text_view_set_editable (self->notes_view, editable);
}

static void
fm_tasting_view_show (FmStoredView *view)
{
  FmTastingView *self = FM_TASTING_VIEW (view);
  FmTastingDocument *document = get_document (self);

  g_signal_group_set_target (self->signals, document);
  show_state (self);
  if (document == NULL)
    return;
  show_details (self);
  set_editable (self, fm_tasting_document_is_editable (document));
  gtk_adjustment_set_value (gtk_scrolled_window_get_vadjustment (self->scroller), 0);
}

/* The plan shows itself anew whenever the document changes. */
static void
fm_tasting_view_restored (FmStoredView *view)
{
  show_details (FM_TASTING_VIEW (view));
}

static void
fm_tasting_view_dispose (GObject *object)
{
  FmTastingView *self = FM_TASTING_VIEW (object);

  g_clear_object (&self->signals);
  gtk_widget_dispose_template (GTK_WIDGET (self), FM_TYPE_TASTING_VIEW);
  G_OBJECT_CLASS (fm_tasting_view_parent_class)->dispose (object);
}

static void
ensure_types (void)
{
  g_type_ensure (FM_TYPE_DATE_ENTRY);
  g_type_ensure (FM_TYPE_TASTING_PLAN);
  g_type_ensure (FM_TYPE_TASTING_RESULT);
  g_type_ensure (FM_TYPE_TASTING_SEAL);
  g_type_ensure (FM_TYPE_TASTING_SHEETS);
}

static void
bind_template (GtkWidgetClass *widget_class)
{
  gtk_widget_class_bind_template_child (widget_class, FmTastingView, scroller);
  gtk_widget_class_bind_template_child (widget_class, FmTastingView, title_box);
  gtk_widget_class_bind_template_child (widget_class, FmTastingView, title_entry);
  gtk_widget_class_bind_template_child (widget_class, FmTastingView, date);
  gtk_widget_class_bind_template_child (widget_class, FmTastingView, seal);
  gtk_widget_class_bind_template_child (widget_class, FmTastingView, part_switcher);
  gtk_widget_class_bind_template_child (widget_class, FmTastingView, parts);
  gtk_widget_class_bind_template_child (widget_class, FmTastingView, plan);
  gtk_widget_class_bind_template_child (widget_class, FmTastingView, sheets);
  gtk_widget_class_bind_template_child (widget_class, FmTastingView, result);
  gtk_widget_class_bind_template_child (widget_class, FmTastingView, notes_view);
  gtk_widget_class_bind_template_callback (widget_class, title_changed_cb);
  gtk_widget_class_bind_template_callback (widget_class, date_changed_cb);
  gtk_widget_class_bind_template_callback (widget_class, notes_changed_cb);
}

static void
fm_tasting_view_class_init (FmTastingViewClass *klass)
{
  GtkWidgetClass *widget_class = GTK_WIDGET_CLASS (klass);

  G_OBJECT_CLASS (klass)->dispose = fm_tasting_view_dispose;
  FM_STORED_VIEW_CLASS (klass)->show = fm_tasting_view_show;
  FM_STORED_VIEW_CLASS (klass)->restored = fm_tasting_view_restored;
  ensure_types ();
  gtk_widget_class_set_template_from_resource (
      widget_class, "/io/github/forcemeat/Forcemeat/ui/tastings/fm-tasting-view.ui");
  bind_template (widget_class);
}

static void
fm_tasting_view_init (FmTastingView *self)
{
  self->signals = g_signal_group_new (FM_TYPE_TASTING_DOCUMENT);
  g_signal_group_connect_swapped (self->signals, "state-changed", G_CALLBACK (state_changed_cb),
                                  self);
  self->loading = TRUE;
  gtk_widget_init_template (GTK_WIDGET (self));
  fm_text_room_limit (self->notes_view, FM_TEXT_MAX_BYTES, FM_TEXT_MAX_LINES);
  fm_date_entry_set_what (self->date, _ ("Date and time of the tasting"), _ ("Day of the tasting"));
  self->loading = FALSE;
}
