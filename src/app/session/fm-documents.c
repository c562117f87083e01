/* SPDX-FileCopyrightText: 2026 the Forcemeat developers
 * SPDX-License-Identifier: GPL-3.0-or-later */
/* fm-documents.c - the documents of a session: one a record, and none is forgotten unsaved */
#include "app/session/fm-documents.h"

#include "store/notebook/fm-record-check.h"

struct _FmDocuments {
  GObject parent_instance;

  FmWriter *writer;
  GHashTable *live;    /* Key -> FmStoredDocument, not owned */
  GPtrArray *unsaved;  /* FmStoredDocument */
  gboolean failing;    /* that something could not be saved was said */
  GPtrArray *altered;  /* (nullable): FmAlteredRecord, of the notebook that was checked last */
  FmNotebook *checked; /* only compared */
};

G_DEFINE_FINAL_TYPE (FmDocuments, fm_documents, G_TYPE_OBJECT)

enum {
  SAVE_FAILED,
  SAVED_AGAIN,
  SAVED,
  N_SIGNALS,
};

static guint signals[N_SIGNALS];

/* The notebook is only compared. */
typedef struct {
  GType type;
  FmNotebook *notebook;
  gint64 id;
} Key;

static guint
key_hash (gconstpointer data)
{
  const Key *key = data;

  return g_int64_hash (&key->id) ^ g_direct_hash (key->notebook) ^
         g_direct_hash (GSIZE_TO_POINTER (key->type));
}

static gboolean
key_equal (gconstpointer a, gconstpointer b)
{
  const Key *first = a;
  const Key *second = b;

  return first->type == second->type && first->notebook == second->notebook &&
         first->id == second->id;
}

static gboolean
is_document (gpointer key, gpointer document, gpointer gone)
{
  return document == gone;
}

static void
gone_cb (gpointer data, GObject *document)
{
  FmDocuments *self = data;

  g_hash_table_foreach_remove (self->live, is_document, document);
}

static void
changed_cb (FmDocuments *self, FmStoredDocument *document)
{
  if (!fm_stored_document_is_saved (document) && !g_ptr_array_find (self->unsaved, document, NULL))
    g_ptr_array_add (self->unsaved, g_object_ref (document));
}

static void
settle (FmDocuments *self, FmStoredDocument *document)
{
  g_ptr_array_remove (self->unsaved, document);
  if (!self->failing || self->unsaved->len > 0)
    return;
  self->failing = FALSE;
  g_signal_emit (self, signals[SAVED_AGAIN], 0);
}

static void
saved_cb (FmDocuments *self, FmStoredDocument *document)
{
  g_autoptr (FmStoredDocument) held = g_object_ref (document);

  settle (self, held);
  g_signal_emit (self, signals[SAVED], 0, held);
}

/* Said once per run of failures: the bar stays, and every try would only repeat it. */
static void
save_failed_cb (FmDocuments *self, const char *message)
{
  if (self->failing)
    return;
  self->failing = TRUE;
  g_signal_emit (self, signals[SAVE_FAILED], 0, message);
}

static void
forget_all (FmDocuments *self)
{
  GHashTableIter iter;
  gpointer document;

  g_hash_table_iter_init (&iter, self->live);
  while (g_hash_table_iter_next (&iter, NULL, &document))
    g_object_weak_unref (document, gone_cb, self);
  g_hash_table_remove_all (self->live);
}

static void
fm_documents_finalize (GObject *object)
{
  FmDocuments *self = FM_DOCUMENTS (object);

  fm_documents_give_up (self);
  forget_all (self);
  g_clear_pointer (&self->live, g_hash_table_unref);
  g_clear_pointer (&self->unsaved, g_ptr_array_unref);
  g_clear_pointer (&self->altered, g_ptr_array_unref);
  g_clear_pointer (&self->writer, fm_writer_unref);
  G_OBJECT_CLASS (fm_documents_parent_class)->finalize (object);
}

static void
fm_documents_class_init (FmDocumentsClass *klass)
{
  const GType type = FM_TYPE_DOCUMENTS;

  G_OBJECT_CLASS (klass)->finalize = fm_documents_finalize;
  signals[SAVE_FAILED] = g_signal_new ("save-failed", type, G_SIGNAL_RUN_LAST, 0, NULL, NULL, NULL,
                                       G_TYPE_NONE, 1, G_TYPE_STRING);
  signals[SAVED_AGAIN] =
      g_signal_new ("saved-again", type, G_SIGNAL_RUN_LAST, 0, NULL, NULL, NULL, G_TYPE_NONE, 0);
  signals[SAVED] = g_signal_new ("saved", type, G_SIGNAL_RUN_LAST, 0, NULL, NULL, NULL, G_TYPE_NONE,
                                 1, FM_TYPE_STORED_DOCUMENT);
}

static void
fm_documents_init (FmDocuments *self)
{
  self->live = g_hash_table_new_full (key_hash, key_equal, g_free, NULL);
  self->unsaved = g_ptr_array_new_with_free_func (g_object_unref);
}

FmDocuments *
fm_documents_new (FmWriter *writer)
{
  FmDocuments *self = g_object_new (FM_TYPE_DOCUMENTS, NULL);

  self->writer = fm_writer_ref (writer);
  return self;
}

static void
watch (FmDocuments *self, const Key *key, FmStoredDocument *document)
{
  g_hash_table_insert (self->live, g_memdup2 (key, sizeof *key), document);
  g_object_weak_ref (G_OBJECT (document), gone_cb, self);
  g_signal_connect_object (document, "changed", G_CALLBACK (changed_cb), self, G_CONNECT_SWAPPED);
  g_signal_connect_object (document, "saved", G_CALLBACK (saved_cb), self, G_CONNECT_SWAPPED);
  g_signal_connect_object (document, "save-failed", G_CALLBACK (save_failed_cb), self,
                           G_CONNECT_SWAPPED);
}

/* Sums are of the record as it was read when the notebook was opened. */
static void
tell_if_altered (FmDocuments *self, FmStoredDocument *document)
{
  const char *table = FM_STORED_DOCUMENT_GET_CLASS (document)->table;
  const gint64 id = fm_stored_document_get_id (document);

  if (self->altered == NULL || self->checked != fm_stored_document_get_notebook (document))
    return;
  for (guint i = 0; i < self->altered->len; i++) {
    const FmAlteredRecord *record = g_ptr_array_index (self->altered, i);

    if (record->id == id && !record->is_gone && g_strcmp0 (record->table, table) == 0)
      fm_stored_document_set_altered (document);
  }
}

gpointer
fm_documents_open (FmDocuments *self, GType type, FmNotebook *notebook, gint64 id, gpointer content)
{
  const Key key = { type, notebook, id };
  FmStoredDocument *document = g_hash_table_lookup (self->live, &key);

  if (document != NULL) {
    if (content != NULL)
      FM_STORED_DOCUMENT_GET_CLASS (document)->free (content);
    return g_object_ref (document);
  }
  document = fm_stored_document_new (type, self->writer, notebook, id, content);
  watch (self, &key, document);
  tell_if_altered (self, document);
  return document;
}

gpointer
fm_documents_find (FmDocuments *self, GType type, FmNotebook *notebook, gint64 id)
{
  const Key key = { type, notebook, id };

  return g_hash_table_lookup (self->live, &key);
}

void
fm_documents_forget (FmDocuments *self, GType type, FmNotebook *notebook, gint64 id)
{
  FmStoredDocument *found = fm_documents_find (self, type, notebook, id);
  g_autoptr (FmStoredDocument) document = found != NULL ? g_object_ref (found) : NULL;

  if (document == NULL)
    return;
  fm_stored_document_forget (document);
  settle (self, document);
}

void
fm_documents_flush (FmDocuments *self)
{
  for (guint i = 0; i < self->unsaved->len; i++)
    fm_stored_document_flush (g_ptr_array_index (self->unsaved, i));
}

gboolean
fm_documents_is_saving (FmDocuments *self)
{
  for (guint i = 0; i < self->unsaved->len; i++) {
    if (fm_stored_document_is_saving (g_ptr_array_index (self->unsaved, i)))
      return TRUE;
  }
  return FALSE;
}

gboolean
fm_documents_is_saved (FmDocuments *self)
{
  return self->unsaved->len == 0;
}

gboolean
fm_documents_is_kept (FmDocuments *self)
{
  for (guint i = 0; i < self->unsaved->len; i++) {
    if (!fm_stored_document_is_kept (g_ptr_array_index (self->unsaved, i)))
      return FALSE;
  }
  return TRUE;
}

char *
fm_documents_describe (FmDocuments *self)
{
  GString *lines = g_string_new (NULL);

  for (guint i = 0; i < self->unsaved->len; i++) {
    FmStoredDocument *document = g_ptr_array_index (self->unsaved, i);
    g_autofree char *what = NULL;

    if (fm_stored_document_is_kept (document))
      continue;
    what = fm_stored_document_describe (document);
    g_string_append_printf (lines, "%s%s", lines->len > 0 ? "\n" : "", what);
  }
  return g_string_free (lines, FALSE);
}

GPtrArray *
fm_documents_copy_unsaved (FmDocuments *self, FmNotebook *notebook)
{
  GPtrArray *copies = g_ptr_array_new_with_free_func ((GDestroyNotify)fm_stored_copy_free);

  for (guint i = 0; i < self->unsaved->len; i++) {
    FmStoredDocument *document = g_ptr_array_index (self->unsaved, i);

    if (fm_stored_document_get_notebook (document) == notebook)
      g_ptr_array_add (copies, fm_stored_copy_new (document));
  }
  return copies;
}

void
fm_documents_give_up (FmDocuments *self)
{
  for (guint i = 0; i < self->unsaved->len; i++)
    fm_stored_document_forget (g_ptr_array_index (self->unsaved, i));
  g_ptr_array_set_size (self->unsaved, 0);
  self->failing = FALSE;
}

/* Of those that are open now; what hears of it may close some. */
static GPtrArray *
list_of (FmDocuments *self, FmNotebook *notebook)
{
  GPtrArray *found = g_ptr_array_new_with_free_func (g_object_unref);
  GHashTableIter iter;
  gpointer document;

  g_hash_table_iter_init (&iter, self->live);
  while (g_hash_table_iter_next (&iter, NULL, &document)) {
    if (fm_stored_document_get_notebook (document) == notebook)
      g_ptr_array_add (found, g_object_ref (document));
  }
  return found;
}

void
fm_documents_tell_lost (FmDocuments *self, FmNotebook *notebook, const char *message)
{
  g_autoptr (GPtrArray) open = list_of (self, notebook);

  for (guint i = 0; i < open->len; i++)
    g_signal_emit_by_name (g_ptr_array_index (open, i), "save-failed", message);
}

void
fm_documents_tell_altered (FmDocuments *self, FmNotebook *notebook, GPtrArray *altered)
{
  g_autoptr (GPtrArray) open = list_of (self, notebook);

  g_clear_pointer (&self->altered, g_ptr_array_unref);
  self->altered = altered;
  self->checked = notebook;
  for (guint i = 0; i < open->len; i++)
    tell_if_altered (self, g_ptr_array_index (open, i));
}

void
fm_documents_move (FmDocuments *self, FmNotebook *from, FmNotebook *to)
{
  g_autoptr (GPtrArray) open = list_of (self, from);

  for (guint i = 0; i < open->len; i++) {
    FmStoredDocument *document = g_ptr_array_index (open, i);
    const Key key = { G_OBJECT_TYPE (document), to, fm_stored_document_get_id (document) };

    g_hash_table_foreach_remove (self->live, is_document, document);
    fm_stored_document_move (document, to);
    g_hash_table_insert (self->live, g_memdup2 (&key, sizeof key), document);
  }
  if (self->unsaved->len == 0)
    self->failing = FALSE;
}
