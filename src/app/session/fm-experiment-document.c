/* fm-experiment-document.c - one experiment being edited, saved as it changes */
#include "app/session/fm-experiment-document.h"

struct _FmExperimentDocument {
  FmStoredDocument parent_instance;
};

G_DEFINE_FINAL_TYPE (FmExperimentDocument, fm_experiment_document, FM_TYPE_STORED_DOCUMENT)

static gpointer
copy (gconstpointer content)
{
  return fm_experiment_copy (content);
}

static void
free_content (gpointer content)
{
  fm_experiment_free (content);
}

static gboolean
save (FmNotebook *notebook, gpointer content, GError **error)
{
  return fm_experiments_save (notebook, content, error);
}

static void
fm_experiment_document_class_init (FmExperimentDocumentClass *klass)
{
  FmStoredDocumentClass *document_class = FM_STORED_DOCUMENT_CLASS (klass);

  document_class->copy = copy;
  document_class->free = free_content;
  document_class->save = save;
}

static void
fm_experiment_document_init (FmExperimentDocument *self)
{
}

FmExperimentDocument *
fm_experiment_document_new (FmNotebook *notebook, FmExperiment *experiment)
{
  return fm_stored_document_new (FM_TYPE_EXPERIMENT_DOCUMENT, notebook, experiment);
}

FmExperiment *
fm_experiment_document_get_experiment (FmExperimentDocument *self)
{
  return fm_stored_document_get_content (FM_STORED_DOCUMENT (self));
}

FmNotebook *
fm_experiment_document_get_notebook (FmExperimentDocument *self)
{
  return fm_stored_document_get_notebook (FM_STORED_DOCUMENT (self));
}

gboolean
fm_experiment_document_is_editable (FmExperimentDocument *self)
{
  return fm_stored_document_is_editable (FM_STORED_DOCUMENT (self));
}

void
fm_experiment_document_touch (FmExperimentDocument *self)
{
  fm_stored_document_touch (FM_STORED_DOCUMENT (self));
}

void
fm_experiment_document_flush (FmExperimentDocument *self)
{
  fm_stored_document_flush (FM_STORED_DOCUMENT (self));
}

gboolean
fm_experiment_document_flush_now (FmExperimentDocument *self, GError **error)
{
  return fm_stored_document_flush_now (FM_STORED_DOCUMENT (self), error);
}
