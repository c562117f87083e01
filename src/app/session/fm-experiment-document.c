/* SPDX-FileCopyrightText: 2026 the Forcemeat developers
 * SPDX-License-Identifier: GPL-3.0-or-later */
/* fm-experiment-document.c - one experiment being edited, saved as it changes */
#include "app/session/fm-experiment-document.h"

#include <glib/gi18n-lib.h>

struct _FmExperimentDocument {
  FmStoredDocument parent_instance;
};

G_DEFINE_FINAL_TYPE (FmExperimentDocument, fm_experiment_document, FM_TYPE_STORED_DOCUMENT)

static gpointer
copy (FmStoredDocument *document)
{
  return fm_experiment_copy (fm_stored_document_get_content (document));
}

static void
free_content (gpointer content)
{
  fm_experiment_free (content);
}

static gpointer
copy_state (gconstpointer state, gconstpointer before)
{
  return fm_experiment_copy (state);
}

static gboolean
equal_states (gconstpointer a, gconstpointer b)
{
  return fm_experiment_equal (a, b);
}

static const FmHistoryKind history_kind = {
  .equal = equal_states,
  .copy = copy_state,
  .free = free_content,
};

static gboolean
save (FmNotebook *notebook, gpointer content, GError **error)
{
  return fm_experiments_save (notebook, content, error);
}

static char *
describe (FmStoredDocument *document)
{
  const FmExperiment *experiment = fm_stored_document_get_content (document);

  return g_strdup_printf (_ ("Experiment “%s”"), experiment->title != NULL
                                                     ? experiment->title
                                                     : _ ("Untitled experiment"));
}

static void
fm_experiment_document_class_init (FmExperimentDocumentClass *klass)
{
  FmStoredDocumentClass *document_class = FM_STORED_DOCUMENT_CLASS (klass);

  document_class->history = &history_kind;
  document_class->copy = copy;
  document_class->free = free_content;
  document_class->save = save;
  document_class->describe = describe;
  document_class->table = "experiments";
  document_class->is_told = TRUE;
  document_class->kind = FM_CHANGE_EXPERIMENT;
}

static void
fm_experiment_document_init (FmExperimentDocument *self)
{
}

FmExperimentDocument *
fm_experiment_document_open (FmSession *session, FmExperiment *experiment)
{
  return fm_documents_open (fm_session_get_documents (session), FM_TYPE_EXPERIMENT_DOCUMENT,
                            fm_session_get_notebook (session), experiment->id, experiment);
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
fm_experiment_document_did (FmExperimentDocument *self, const char *what)
{
  fm_stored_document_did (FM_STORED_DOCUMENT (self), what, what);
}

void
fm_experiment_document_seal (FmExperimentDocument *self)
{
  fm_stored_document_seal (FM_STORED_DOCUMENT (self));
}
