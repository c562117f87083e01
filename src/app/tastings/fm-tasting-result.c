/* fm-tasting-result.c - what an opened tasting says */
#include "app/tastings/fm-tasting-result.h"

#include "app/tastings/fm-tasting-result-job.h"
#include "app/tastings/fm-tasting-result-sections.h"
#include "app/widgets/fm-widget.h"

/* Sheets are typed one mark after the other; the reading may take a second. */
#define READ_DELAY_MS 300

struct _FmTastingResult {
  GtkWidget parent_instance;

  GtkWidget *box;
  GtkWidget *working_box;
  GtkLabel *headline_label;
  GtkBox *sections_box;

  FmTastingDocument *document;
  FmTastingReading *reading; /* NULL = not read, or it cannot be */
  GCancellable *work;        /* the reading under way */
  guint read_id;
  gboolean is_kept; /* what was found is in the notebook, or on its way */
};

G_DEFINE_FINAL_TYPE (FmTastingResult, fm_tasting_result, GTK_TYPE_WIDGET)

static void
kept_cb (GObject *source, GAsyncResult *result, gpointer data)
{
  g_autoptr (FmTastingDocument) document = data;
  g_autoptr (GError) error = NULL;

  if (fm_tasting_result_job_keep_finish (result, &error))
    fm_tasting_document_tell_outcome (document);
  else
    g_warning ("The outcome of a tasting was not kept: %s", error->message);
}

/* The notebook takes an outcome only once it knows that the tasting is opened. */
static void
keep (FmTastingResult *self)
{
  const FmTasting *tasting;

  if (self->document == NULL || self->reading == NULL || self->is_kept ||
      !fm_tasting_document_is_editable (self->document) ||
      !fm_stored_document_is_saved (FM_STORED_DOCUMENT (self->document)))
    return;
  tasting = fm_tasting_document_get_tasting (self->document);
  if (tasting->state != FM_TASTING_OPENED)
    return;
  self->is_kept = TRUE;
  fm_tasting_result_job_keep_async (fm_tasting_document_get_notebook (self->document), tasting,
                                    self->reading, kept_cb, g_object_ref (self->document));
}

static void
show (FmTastingResult *self, const char *headline)
{
  const FmTasting *tasting = fm_tasting_document_get_tasting (self->document);

  gtk_widget_set_visible (self->working_box, FALSE);
  gtk_label_set_text (self->headline_label, headline);
  fm_tasting_result_sections_show (self->sections_box, self->reading, tasting->attributes);
}

static void
read_done_cb (GObject *source, GAsyncResult *result, gpointer data)
{
  g_autoptr (FmTastingResult) self = data;
  g_autoptr (GError) error = NULL;
  FmTastingReading *reading = fm_tasting_result_job_read_finish (result, &error);

  if (g_task_get_cancellable (G_TASK (result)) != self->work || self->document == NULL) {
    g_clear_pointer (&reading, fm_tasting_reading_free);
    return;
  }
  g_clear_object (&self->work);
  g_clear_pointer (&self->reading, fm_tasting_reading_free);
  self->reading = reading;
  self->is_kept = FALSE;
  show (self, reading != NULL ? reading->headline : error->message);
  keep (self);
}

static void
stop (FmTastingResult *self)
{
  g_clear_handle_id (&self->read_id, g_source_remove);
  g_cancellable_cancel (self->work);
  g_clear_object (&self->work);
}

static gboolean
read_now_cb (gpointer data)
{
  FmTastingResult *self = data;

  self->read_id = 0;
  stop (self);
  self->work = g_cancellable_new ();
  gtk_widget_set_visible (self->working_box, TRUE);
  fm_tasting_result_job_read_async (fm_tasting_document_get_tasting (self->document), self->work,
                                    read_done_cb, g_object_ref (self));
  return G_SOURCE_REMOVE;
}

static void
changed_cb (FmTastingResult *self)
{
  stop (self);
  self->read_id = g_timeout_add (READ_DELAY_MS, read_now_cb, self);
}

static void
fm_tasting_result_dispose (GObject *object)
{
  FmTastingResult *self = FM_TASTING_RESULT (object);

  fm_tasting_result_set_document (self, NULL);
  fm_widget_drop_template (GTK_WIDGET (object), FM_TYPE_TASTING_RESULT);
  G_OBJECT_CLASS (fm_tasting_result_parent_class)->dispose (object);
}

static void
fm_tasting_result_class_init (FmTastingResultClass *klass)
{
  GtkWidgetClass *widget_class = GTK_WIDGET_CLASS (klass);

  G_OBJECT_CLASS (klass)->dispose = fm_tasting_result_dispose;
  gtk_widget_class_set_template_from_resource (
      widget_class, "/io/github/forcemeat/Forcemeat/ui/tastings/fm-tasting-result.ui");
  gtk_widget_class_set_layout_manager_type (widget_class, GTK_TYPE_BIN_LAYOUT);
  gtk_widget_class_bind_template_child (widget_class, FmTastingResult, box);
  gtk_widget_class_bind_template_child (widget_class, FmTastingResult, working_box);
  gtk_widget_class_bind_template_child (widget_class, FmTastingResult, headline_label);
  gtk_widget_class_bind_template_child (widget_class, FmTastingResult, sections_box);
}

static void
fm_tasting_result_init (FmTastingResult *self)
{
  gtk_widget_init_template (GTK_WIDGET (self));
}

static void
forget (FmTastingResult *self)
{
  stop (self);
  if (self->document != NULL)
    g_signal_handlers_disconnect_by_data (self->document, self);
  g_clear_pointer (&self->reading, fm_tasting_reading_free);
  self->is_kept = FALSE;
}

void
fm_tasting_result_set_document (FmTastingResult *self, FmTastingDocument *document)
{
  g_return_if_fail (FM_IS_TASTING_RESULT (self));
  if (self->document == document)
    return;
  forget (self);
  g_set_object (&self->document, document);
  if (self->headline_label == NULL)
    return;
  gtk_label_set_text (self->headline_label, "");
  fm_tasting_result_sections_show (self->sections_box, NULL, NULL);
  if (document == NULL)
    return;
  g_signal_connect_object (document, "changed", G_CALLBACK (changed_cb), self, G_CONNECT_SWAPPED);
  g_signal_connect_object (document, "saved", G_CALLBACK (keep), self, G_CONNECT_SWAPPED);
  read_now_cb (self);
}
