/* fm-session-show.c - which blend, version or draft a session shows */
#include <glib/gi18n-lib.h>

#include "app/session/fm-session-private.h"

static void
setting_saved_cb (GObject *source, GAsyncResult *result, gpointer user_data)
{
  FmSession *self = FM_SESSION (source);
  g_autoptr (GError) error = NULL;

  self->n_in_flight--;
  if (!fm_session_io_finish (result, &error))
    g_debug ("Remembering what is shown: %s", error->message);
}

static void
remember (FmSession *self, const char *key, gint64 id)
{
  g_autofree char *value = g_strdup_printf ("%" G_GINT64_FORMAT, id);

  if (!fm_session_is_writable (self))
    return;
  self->n_in_flight++;
  fm_session_io_save_setting (self->writer, self->notebook, key, value, self, setting_saved_cb,
                              NULL);
}

static gint64
recall (FmSession *self, const char *key)
{
  g_autofree char *value = fm_notebook_get_setting (self->notebook, key);

  return value != NULL ? g_ascii_strtoll (value, NULL, 10) : 0;
}

void
fm_session_clear_version (FmSession *self)
{
  g_clear_pointer (&self->version, fm_version_info_free);
  g_clear_pointer (&self->version_formula, fm_formula_free);
}

/* Looks the name up, and answers whether the blend is (still) there. */
static gboolean
find_blend (FmSession *self, gint64 blend_id, gint64 *first_id)
{
  g_autoptr (GPtrArray) blends = NULL;
  gboolean found = FALSE;

  g_clear_pointer (&self->blend_name, g_free);
  blends = self->notebook != NULL ? fm_blends_list (self->notebook, NULL) : NULL;
  for (guint i = 0; blends != NULL && i < blends->len; i++) {
    FmBlendInfo *info = g_ptr_array_index (blends, i);

    if (first_id != NULL && *first_id == 0)
      *first_id = info->id;
    if (info->id == blend_id) {
      self->blend_name = g_strdup (info->name);
      found = TRUE;
    }
  }
  return found;
}

/* Sets the blend and its draft; FALSE (and nothing shown) when it cannot be read. */
static gboolean
take_blend (FmSession *self, gint64 blend_id)
{
  g_autoptr (GError) error = NULL;
  FmSessionDraft *draft;

  fm_session_clear_version (self);
  self->draft = NULL;
  self->blend_id = 0;
  if (blend_id == 0 || !find_blend (self, blend_id, NULL))
    return FALSE;
  draft = g_hash_table_lookup (self->drafts, &blend_id);
  if (draft == NULL) {
    draft = fm_session_draft_open (self->documents, self->notebook, blend_id, &error);
    if (draft == NULL) {
      fm_session_failure (self, error);
      return FALSE;
    }
    g_hash_table_insert (self->drafts, g_memdup2 (&blend_id, sizeof blend_id), draft);
  }
  fm_session_draft_set_blend_name (draft, self->blend_name);
  self->draft = draft;
  self->blend_id = blend_id;
  return TRUE;
}

static gboolean
take_version (FmSession *self, gint64 version_id)
{
  g_autoptr (GError) error = NULL;
  g_autoptr (FmVersionInfo) info = fm_versions_info (self->notebook, version_id, &error);
  g_autoptr (FmFormula) formula = NULL;

  if (info != NULL)
    formula = fm_versions_load (self->notebook, version_id, &error);
  if (formula == NULL) {
    fm_session_failure (self, error);
    return FALSE;
  }
  if (info->blend_id != self->blend_id && !take_blend (self, info->blend_id))
    return FALSE;
  fm_session_clear_version (self);
  self->version = g_steal_pointer (&info);
  self->version_formula = g_steal_pointer (&formula);
  return TRUE;
}

void
fm_session_restore_shown (FmSession *self)
{
  gint64 first_id = 0;
  gint64 blend_id = recall (self, "last-blend");
  gint64 version_id = recall (self, "last-version");

  if (!find_blend (self, blend_id, &first_id))
    blend_id = first_id;
  if (!take_blend (self, blend_id) || version_id == 0)
    return;
  g_autoptr (FmVersionInfo) info = fm_versions_info (self->notebook, version_id, NULL);

  if (info != NULL && info->blend_id == blend_id)
    take_version (self, version_id);
}

static void
show_changed (FmSession *self)
{
  remember (self, "last-blend", self->blend_id);
  remember (self, "last-version", fm_session_get_version_id (self));
  fm_session_emit_shown (self);
}

void
fm_session_show_blend (FmSession *self, gint64 blend_id)
{
  if (blend_id == self->blend_id && self->version == NULL)
    return;
  fm_session_seal (self);
  take_blend (self, blend_id);
  show_changed (self);
}

void
fm_session_show_version (FmSession *self, gint64 version_id)
{
  if (self->notebook == NULL || version_id == fm_session_get_version_id (self))
    return;
  fm_session_seal (self);
  if (version_id == 0)
    fm_session_clear_version (self);
  else if (!take_version (self, version_id))
    return;
  show_changed (self);
}

void
fm_session_show_draft (FmSession *self)
{
  fm_session_show_version (self, 0);
}

static void
branched_cb (GObject *source, GAsyncResult *result, gpointer user_data)
{
  FmSession *self = FM_SESSION (source);
  g_autoptr (GError) error = NULL;

  self->n_in_flight--;
  if (!fm_session_io_finish (result, &error))
    fm_session_failure (self, error);
  else
    fm_session_emit_changed (self, FM_CHANGE_DRAFT, fm_session_io_blend_id (result));
}

void
fm_session_branch (FmSession *self, gint64 version_id)
{
  g_autofree char *label = NULL;

  if (!fm_session_is_writable (self) || !take_version (self, version_id))
    return;
  fm_documents_flush (self->documents);
  label = g_strdup_printf (_ ("Branch from version %d"), self->version->number);
  fm_history_seal (self->draft->history);
  fm_history_push (self->draft->history, self->version_formula, label, NULL);
  fm_session_draft_set_parent (self->draft, version_id, self->version_formula);
  self->n_in_flight++;
  fm_session_io_branch (self->writer, self->notebook, self->blend_id, version_id, self, branched_cb,
                        GUINT_TO_POINTER (self->serial));
  fm_session_clear_version (self);
  show_changed (self);
}

void
fm_session_blend_changed (FmSession *self, gint64 blend_id)
{
  if (self->blend_id != 0 && !find_blend (self, self->blend_id, NULL)) {
    gint64 gone_id = self->blend_id;

    fm_session_show_blend (self, 0);
    g_hash_table_remove (self->drafts, &gone_id);
  }
  fm_session_emit_changed (self, FM_CHANGE_BLEND, blend_id);
}
