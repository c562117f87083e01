/* SPDX-FileCopyrightText: 2026 the Forcemeat developers
 * SPDX-License-Identifier: GPL-3.0-or-later */
/* fm-versions-page-detail.c - one version: its reason, and what changed since its parent */
#include "app/versions/fm-versions-page-detail.h"

#include <adwaita.h>
#include <glib/gi18n-lib.h>

#include "app/tastings/fm-tasting-story-list.h"
#include "app/versions/fm-versions-page-number.h"
#include "app/widgets/fm-one-stop.h"
#include "app/widgets/fm-widget.h"
#include "app/widgets/fm-wrap-layout.h"
#include "core/base/fm-date.h"

struct _FmVersionsPageDetail {
  GtkWidget parent_instance;

  GtkStack *stack;
  GtkWidget *back_button;
  GtkLabel *title_label;
  GtkLabel *reason_label;
  GtkLabel *saved_label;
  GtkButton *open_button;
  GtkButton *label_button;
  GtkButton *serving_button;
  GtkButton *branch_button;
  GtkLabel *lines_heading;
  GtkListBox *lines_box;
  GtkLabel *same_label;
  GtkLabel *process_heading;
  GtkListBox *process_box;
  GtkLabel *numbers_heading;
  GtkListBox *numbers_box;
  FmTastingStoryList *tastings;

  GListStore *lines;   /* FmVersionsPageChange */
  GListStore *process; /* FmVersionsPageChange */
  GListStore *numbers; /* FmVersionsPageChange */
  FmVersionsCourse *course;
};

G_DEFINE_FINAL_TYPE (FmVersionsPageDetail, fm_versions_page_detail, GTK_TYPE_WIDGET)

static GtkWidget *
line_row (gpointer item, gpointer user_data)
{
  FmVersionsPageChange *change = item;
  GtkWidget *row = adw_action_row_new ();
  GtkWidget *kind = gtk_label_new (fm_versions_page_change_get_kind (change));

  adw_preferences_row_set_use_markup (ADW_PREFERENCES_ROW (row), FALSE);
  adw_preferences_row_set_title (ADW_PREFERENCES_ROW (row),
                                 fm_versions_page_change_get_name (change));
  adw_action_row_set_subtitle (ADW_ACTION_ROW (row), fm_versions_page_change_get_text (change));
  gtk_widget_add_css_class (kind, "dim-label");
  adw_action_row_add_suffix (ADW_ACTION_ROW (row), kind);
  return row;
}

static GtkWidget *
number_row (gpointer item, gpointer user_data)
{
  FmVersionsPageChange *change = item;
  const char *values[3];

  for (guint i = 0; i < G_N_ELEMENTS (values); i++)
    values[i] = fm_versions_page_change_get_value (change, i);
  if (fm_versions_page_change_get_name (change) == NULL)
    return fm_versions_page_number_new ("", values, TRUE);
  return fm_versions_page_number_new (fm_versions_page_change_get_name (change), values, FALSE);
}

static void
fm_versions_page_detail_dispose (GObject *object)
{
  FmVersionsPageDetail *self = FM_VERSIONS_PAGE_DETAIL (object);

  fm_widget_drop_template (GTK_WIDGET (self), FM_TYPE_VERSIONS_PAGE_DETAIL);
  g_clear_object (&self->lines);
  g_clear_object (&self->process);
  g_clear_object (&self->numbers);
  G_OBJECT_CLASS (fm_versions_page_detail_parent_class)->dispose (object);
}

static void
fm_versions_page_detail_class_init (FmVersionsPageDetailClass *klass)
{
  GtkWidgetClass *widget_class = GTK_WIDGET_CLASS (klass);

  G_OBJECT_CLASS (klass)->dispose = fm_versions_page_detail_dispose;
  g_type_ensure (FM_TYPE_TASTING_STORY_LIST);
  g_type_ensure (FM_TYPE_ONE_STOP);
  g_type_ensure (FM_TYPE_WRAP_LAYOUT);
  g_type_ensure (FM_TYPE_VERSIONS_COURSE);
  gtk_widget_class_set_template_from_resource (
      widget_class, "/io/github/forcemeat/Forcemeat/ui/versions/fm-versions-page-detail.ui");
  gtk_widget_class_set_layout_manager_type (widget_class, GTK_TYPE_BIN_LAYOUT);
  gtk_widget_class_bind_template_child (widget_class, FmVersionsPageDetail, stack);
  gtk_widget_class_bind_template_child (widget_class, FmVersionsPageDetail, back_button);
  gtk_widget_class_bind_template_child (widget_class, FmVersionsPageDetail, title_label);
  gtk_widget_class_bind_template_child (widget_class, FmVersionsPageDetail, reason_label);
  gtk_widget_class_bind_template_child (widget_class, FmVersionsPageDetail, saved_label);
  gtk_widget_class_bind_template_child (widget_class, FmVersionsPageDetail, open_button);
  gtk_widget_class_bind_template_child (widget_class, FmVersionsPageDetail, label_button);
  gtk_widget_class_bind_template_child (widget_class, FmVersionsPageDetail, serving_button);
  gtk_widget_class_bind_template_child (widget_class, FmVersionsPageDetail, branch_button);
  gtk_widget_class_bind_template_child (widget_class, FmVersionsPageDetail, lines_heading);
  gtk_widget_class_bind_template_child (widget_class, FmVersionsPageDetail, lines_box);
  gtk_widget_class_bind_template_child (widget_class, FmVersionsPageDetail, same_label);
  gtk_widget_class_bind_template_child (widget_class, FmVersionsPageDetail, process_heading);
  gtk_widget_class_bind_template_child (widget_class, FmVersionsPageDetail, process_box);
  gtk_widget_class_bind_template_child (widget_class, FmVersionsPageDetail, numbers_heading);
  gtk_widget_class_bind_template_child (widget_class, FmVersionsPageDetail, numbers_box);
  gtk_widget_class_bind_template_child (widget_class, FmVersionsPageDetail, course);
  gtk_widget_class_bind_template_child (widget_class, FmVersionsPageDetail, tastings);
}

static void
fm_versions_page_detail_init (FmVersionsPageDetail *self)
{
  gtk_widget_init_template (GTK_WIDGET (self));
  self->lines = g_list_store_new (FM_TYPE_VERSIONS_PAGE_CHANGE);
  self->process = g_list_store_new (FM_TYPE_VERSIONS_PAGE_CHANGE);
  self->numbers = g_list_store_new (FM_TYPE_VERSIONS_PAGE_CHANGE);
  gtk_list_box_bind_model (self->lines_box, G_LIST_MODEL (self->lines), line_row, NULL, NULL);
  gtk_list_box_bind_model (self->process_box, G_LIST_MODEL (self->process), line_row, NULL, NULL);
  gtk_list_box_bind_model (self->numbers_box, G_LIST_MODEL (self->numbers), number_row, NULL, NULL);
}

static void
fill (GListStore *store, GPtrArray *changes)
{
  g_list_store_splice (store, 0, g_list_model_get_n_items (G_LIST_MODEL (store)), changes->pdata,
                       changes->len);
}

static char *
saved_text (const FmVersionsPageDiff *diff)
{
  g_autofree char *origin = diff->parent != NULL
                                ? g_strdup_printf (_ ("from version %d"), diff->parent->number)
                                : g_strdup (_ ("from nothing"));
  g_autofree char *when = NULL;

  if (diff->info == NULL)
    return g_strdup_printf (_ ("The draft started %s; each change is kept as you type."), origin);
  when = fm_date_text_with_time (diff->info->saved_at);
  return g_strdup_printf (_ ("Saved %s, %s"), when, origin);
}

static void
set_headings (FmVersionsPageDetail *self, const FmVersionsPageDiff *diff)
{
  g_autofree char *title = diff->info != NULL
                               ? g_strdup_printf (_ ("Version %d"), diff->info->number)
                               : g_strdup (_ ("Draft"));
  g_autofree char *saved = saved_text (diff);
  g_autofree char *lines =
      diff->parent != NULL
          ? g_strdup_printf (_ ("Lines changed from version %d"), diff->parent->number)
          : g_strdup (_ ("Lines"));
  g_autofree char *numbers =
      diff->parent != NULL ? g_strdup_printf (_ ("Numbers beside version %d"), diff->parent->number)
                           : g_strdup (_ ("Numbers"));
  g_autofree char *same = g_strdup_printf (
      ngettext ("%u line is the same.", "%u lines are the same.", diff->n_same), diff->n_same);

  gtk_label_set_text (self->title_label, title);
  gtk_label_set_text (self->reason_label, diff->info != NULL ? diff->info->reason : "");
  gtk_widget_set_visible (GTK_WIDGET (self->reason_label), diff->info != NULL);
  gtk_label_set_text (self->saved_label, saved);
  gtk_label_set_text (self->lines_heading, lines);
  gtk_label_set_text (self->numbers_heading, numbers);
  gtk_label_set_text (self->same_label, same);
  gtk_widget_set_visible (GTK_WIDGET (self->same_label), diff->parent != NULL && diff->n_same > 0);
}

void
fm_versions_page_detail_set_diff (FmVersionsPageDetail *self, const FmVersionsPageDiff *diff)
{
  gtk_stack_set_visible_child_name (self->stack, diff != NULL ? "detail" : "nothing");
  if (diff == NULL)
    return;
  set_headings (self, diff);
  gtk_widget_set_visible (GTK_WIDGET (self->label_button), diff->version_id != 0);
  gtk_widget_set_visible (GTK_WIDGET (self->serving_button), diff->version_id != 0);
  gtk_widget_set_visible (GTK_WIDGET (self->branch_button), diff->version_id != 0);
  gtk_actionable_set_action_target (GTK_ACTIONABLE (self->open_button), "x", diff->version_id);
  gtk_actionable_set_action_target (GTK_ACTIONABLE (self->label_button), "x", diff->version_id);
  gtk_actionable_set_action_target (GTK_ACTIONABLE (self->serving_button), "x", diff->version_id);
  gtk_actionable_set_action_target (GTK_ACTIONABLE (self->branch_button), "x", diff->version_id);
  fill (self->lines, diff->lines);
  fill (self->process, diff->process);
  gtk_widget_set_visible (GTK_WIDGET (self->process_heading), diff->process->len > 0);
  gtk_widget_set_visible (GTK_WIDGET (self->process_box), diff->process->len > 0);
  fill (self->numbers, diff->numbers);
  fm_tasting_story_list_set_outcomes (self->tastings, diff->tastings);
  gtk_widget_set_visible (GTK_WIDGET (self->lines_box), diff->lines->len > 0);
}

void
fm_versions_page_detail_set_folded (FmVersionsPageDetail *self, gboolean folded)
{
  gtk_widget_set_visible (self->back_button, folded);
}

FmVersionsCourse *
fm_versions_page_detail_get_course (FmVersionsPageDetail *self)
{
  return self->course;
}
