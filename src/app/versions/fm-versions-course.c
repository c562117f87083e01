/* SPDX-FileCopyrightText: 2026 the Forcemeat developers
 * SPDX-License-Identifier: GPL-3.0-or-later */
/* fm-versions-course.c - pictures of how a blend went */
#include "app/versions/fm-versions-course.h"

#include <glib/gi18n-lib.h>
#include <math.h>

#include "app/charts/fm-chart-series.h"
#include "app/session/fm-notebook-settings.h"
#include "app/session/fm-store-task.h"
#include "app/widgets/fm-widget.h"
#include "store/fm-course.h"

struct _FmVersionsCourse {
  GtkWidget parent_instance;

  GtkExpander *expander;
  GtkLabel *empty_label;
  GtkBox *loss_box;
  GtkBox *rating_box;
  GtkBox *cost_box;
  FmChartSeries *loss_chart;
  FmChartSeries *rating_chart;
  FmChartSeries *cost_chart;
  GtkLabel *cost_heading;

  FmNotebook *notebook; /* (nullable) */
  gint64 blend_id;
  GCancellable *reading;
};

G_DEFINE_FINAL_TYPE (FmVersionsCourse, fm_versions_course, GTK_TYPE_WIDGET)

static gpointer
read_course (FmNotebook *notebook, gpointer data, GCancellable *cancellable, GError **error)
{
  return fm_course_load (notebook, *(const gint64 *)data, cancellable, error);
}

static void
show_series (FmChartSeries *chart, GtkBox *box, const FmSeriesAxis *axis, const GArray *stops)
{
  g_autofree FmSeriesPoint *points = g_new (FmSeriesPoint, MAX (stops->len, 1));

  for (guint i = 0; i < stops->len; i++) {
    const FmCourseStop *stop = &g_array_index (stops, FmCourseStop, i);

    points[i] =
        (FmSeriesPoint){ stop->version_number, stop->time_s, stop->value, stop->low, stop->high };
  }
  fm_chart_series_set (chart, axis, points, stops->len);
  gtk_widget_set_visible (GTK_WIDGET (box), stops->len > 0);
}

static void
show_course (FmVersionsCourse *self, const FmCourse *course)
{
  g_autofree char *cost = g_strdup_printf (_ ("Cost, %s per kg"), fm_notebook_units ()->currency);
  const FmSeriesAxis loss = {
    .title = _ ("Cook loss by version, %"), .decimals = 1, .least = NAN, .most = NAN
  };
  const FmSeriesAxis rating = {
    .title = _ ("Rating over time, 1 to 10"), .over_time = TRUE, .least = 1, .most = 10
  };
  const FmSeriesAxis costs = {
    .title = cost, .decimals = 2, .over_time = TRUE, .least = NAN, .most = NAN
  };

  show_series (self->loss_chart, self->loss_box, &loss, course->cook_loss_pct);
  show_series (self->rating_chart, self->rating_box, &rating, course->rating);
  show_series (self->cost_chart, self->cost_box, &costs, course->cost_per_kg);
  fm_widget_set_label (self->cost_heading, cost);
  gtk_widget_set_visible (
      GTK_WIDGET (self->empty_label),
      course->cook_loss_pct->len + course->rating->len + course->cost_per_kg->len == 0);
}

static void
read_cb (GObject *source, GAsyncResult *result, gpointer data)
{
  FmVersionsCourse *self = FM_VERSIONS_COURSE (source);
  g_autoptr (GError) error = NULL;
  g_autoptr (FmCourse) course = fm_store_task_finish (result, &error);

  if (g_task_get_cancellable (G_TASK (result)) != self->reading)
    return;
  g_clear_object (&self->reading);
  if (course != NULL) {
    show_course (self, course);
    return;
  }
  fm_widget_set_label (self->empty_label, error->message);
  gtk_widget_set_visible (GTK_WIDGET (self->empty_label), TRUE);
}

static void
stop (FmVersionsCourse *self)
{
  g_cancellable_cancel (self->reading);
  g_clear_object (&self->reading);
}

static void
read_again (FmVersionsCourse *self)
{
  stop (self);
  if (self->notebook == NULL || self->blend_id == 0 || !gtk_expander_get_expanded (self->expander))
    return;
  self->reading = g_cancellable_new ();
  fm_store_task (&(FmStoreTask){
      .owner = self,
      .notebook = self->notebook,
      .run = read_course,
      .free_result = (GDestroyNotify)fm_course_free,
      .data = g_memdup2 (&self->blend_id, sizeof self->blend_id),
      .free_data = g_free,
      .cancellable = self->reading,
      .done = read_cb,
  });
}

static void
fm_versions_course_dispose (GObject *object)
{
  FmVersionsCourse *self = FM_VERSIONS_COURSE (object);

  stop (self);
  g_clear_pointer (&self->notebook, fm_notebook_unref);
  fm_widget_drop_template (GTK_WIDGET (object), FM_TYPE_VERSIONS_COURSE);
  G_OBJECT_CLASS (fm_versions_course_parent_class)->dispose (object);
}

static void
fm_versions_course_class_init (FmVersionsCourseClass *klass)
{
  GtkWidgetClass *widget_class = GTK_WIDGET_CLASS (klass);

  G_OBJECT_CLASS (klass)->dispose = fm_versions_course_dispose;
  g_type_ensure (FM_TYPE_CHART_SERIES);
  gtk_widget_class_set_layout_manager_type (widget_class, GTK_TYPE_BIN_LAYOUT);
  gtk_widget_class_set_template_from_resource (
      widget_class, "/io/github/forcemeat/Forcemeat/ui/versions/fm-versions-course.ui");
  gtk_widget_class_bind_template_child (widget_class, FmVersionsCourse, expander);
  gtk_widget_class_bind_template_child (widget_class, FmVersionsCourse, empty_label);
  gtk_widget_class_bind_template_child (widget_class, FmVersionsCourse, loss_box);
  gtk_widget_class_bind_template_child (widget_class, FmVersionsCourse, rating_box);
  gtk_widget_class_bind_template_child (widget_class, FmVersionsCourse, cost_box);
  gtk_widget_class_bind_template_child (widget_class, FmVersionsCourse, loss_chart);
  gtk_widget_class_bind_template_child (widget_class, FmVersionsCourse, rating_chart);
  gtk_widget_class_bind_template_child (widget_class, FmVersionsCourse, cost_chart);
  gtk_widget_class_bind_template_child (widget_class, FmVersionsCourse, cost_heading);
  gtk_widget_class_bind_template_callback (widget_class, read_again);
}

static void
fm_versions_course_init (FmVersionsCourse *self)
{
  gtk_widget_init_template (GTK_WIDGET (self));
}

void
fm_versions_course_show (FmVersionsCourse *self,
                         FmNotebook *notebook,
                         gint64 blend_id,
                         const char *blend_name)
{
  g_return_if_fail (FM_IS_VERSIONS_COURSE (self));
  if (notebook != NULL)
    fm_notebook_ref (notebook);
  g_clear_pointer (&self->notebook, fm_notebook_unref);
  self->notebook = notebook;
  self->blend_id = blend_id;
  fm_chart_set_subject_in (GTK_WIDGET (self), blend_name);
  read_again (self);
}
