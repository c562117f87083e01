/* fm-session.c - what the window shows: one notebook, one blend, its draft or a saved version */
#include "app/fm-session.h"

#include <glib/gi18n-lib.h>

#include "app/fm-session-draft.h"
#include "app/fm-session-io.h"

#define AUTOSAVE_MS 300
#define AUTOSAVE_AT_LATEST_US (2 * G_USEC_PER_SEC) /* during steady typing */
#define RETRY_MS 5000

struct _FmSession {
  GObject parent_instance;

  FmNotebook *notebook;
  FmFoodStore *foods;
  gboolean foods_tried;
  guint serial; /* counts notebooks, so that late results of an old one are told apart */

  GHashTable *drafts;    /* blend id -> FmSessionDraft: undo outlives a look at another blend */
  FmSessionDraft *draft; /* of the shown blend */
  gint64 blend_id;
  char *blend_name;
  FmVersionInfo *version; /* shown saved version, NULL = the draft */
  FmFormula *version_formula;
  FmAnalysis *analysis;

  FmSessionWriter *writer;
  guint n_in_flight;
  guint autosave_id;
  gint64 dirty_since_us; /* 0 = clean */
};

G_DEFINE_FINAL_TYPE (FmSession, fm_session, G_TYPE_OBJECT)

enum {
  NOTEBOOK_CHANGED,
  BLENDS_CHANGED,
  VERSIONS_CHANGED,
  SHOWN_CHANGED,
  FORMULA_CHANGED,
  HISTORY_CHANGED,
  EXPERIMENTS_CHANGED,
  MESSAGE,
  FAILURE,
  N_SIGNALS,
};

static guint signals[N_SIGNALS];

static void schedule_autosave (FmSession *self, guint delay_ms);

static void
recompute (FmSession *self)
{
  const FmFormula *formula = fm_session_get_formula (self);

  g_clear_pointer (&self->analysis, fm_analysis_free);
  if (formula != NULL)
    self->analysis = fm_analysis_new (formula);
  g_signal_emit (self, signals[FORMULA_CHANGED], 0);
}

static void
emit_shown (FmSession *self)
{
  g_signal_emit (self, signals[SHOWN_CHANGED], 0);
  recompute (self);
  g_signal_emit (self, signals[HISTORY_CHANGED], 0);
}

static gboolean
is_writable (FmSession *self)
{
  return self->notebook != NULL && !fm_notebook_is_read_only (self->notebook);
}

/* Lists say whether a draft has changes; they are told when that turns. */
static void
tell_of_changes (FmSession *self, FmSessionDraft *draft)
{
  gboolean has_changes = fm_session_draft_has_changes (draft);

  if (has_changes == draft->told_changes)
    return;
  draft->told_changes = has_changes;
  g_signal_emit (self, signals[BLENDS_CHANGED], 0);
}

static void
draft_saved_cb (GObject *source, GAsyncResult *result, gpointer user_data)
{
  FmSession *self = FM_SESSION (source);
  g_autoptr (GError) error = NULL;
  gint64 blend_id = fm_session_io_blend_id (result);
  FmSessionDraft *draft = g_hash_table_lookup (self->drafts, &blend_id);
  gboolean saved = fm_session_io_finish (result, &error);

  self->n_in_flight--;
  if (GPOINTER_TO_UINT (user_data) != self->serial || draft == NULL) {
    if (!saved)
      fm_session_failure (self, error);
    return;
  }
  if (!saved) {
    /* Said once per run of failures: the bar stays, and every try would only repeat it. */
    if (!draft->failed)
      fm_session_failure (self, error);
    draft->failed = TRUE;
    draft->dirty = TRUE;
    schedule_autosave (self, RETRY_MS);
  } else if (draft->failed) {
    draft->failed = FALSE;
    fm_session_message (self, _ ("The draft is saved again"));
  }
  if (saved)
    tell_of_changes (self, draft);
}

static void
save_drafts (FmSession *self)
{
  GHashTableIter iter;
  FmSessionDraft *draft;

  self->dirty_since_us = 0;
  if (!is_writable (self))
    return;
  g_hash_table_iter_init (&iter, self->drafts);
  while (g_hash_table_iter_next (&iter, NULL, (gpointer *)&draft)) {
    if (!draft->dirty)
      continue;
    draft->dirty = FALSE;
    self->n_in_flight++;
    fm_session_io_save_draft (self->writer, self->notebook, draft->blend_id,
                              fm_history_current (draft->history), self, draft_saved_cb,
                              GUINT_TO_POINTER (self->serial));
  }
}

static gboolean
autosave_cb (gpointer user_data)
{
  FmSession *self = user_data;

  self->autosave_id = 0;
  save_drafts (self);
  return G_SOURCE_REMOVE;
}

static void
schedule_autosave (FmSession *self, guint delay_ms)
{
  gint64 now_us = g_get_monotonic_time ();

  if (self->dirty_since_us == 0)
    self->dirty_since_us = now_us;
  if (self->autosave_id != 0 && now_us - self->dirty_since_us > AUTOSAVE_AT_LATEST_US)
    return;
  g_clear_handle_id (&self->autosave_id, g_source_remove);
  self->autosave_id = g_timeout_add (delay_ms, autosave_cb, self);
}

static void
mark_dirty (FmSession *self)
{
  self->draft->dirty = TRUE;
  schedule_autosave (self, AUTOSAVE_MS);
}

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

  if (!is_writable (self))
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

static void
clear_version (FmSession *self)
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

  clear_version (self);
  self->draft = NULL;
  self->blend_id = 0;
  if (blend_id == 0 || !find_blend (self, blend_id, NULL))
    return FALSE;
  draft = g_hash_table_lookup (self->drafts, &blend_id);
  if (draft == NULL) {
    draft = fm_session_draft_load (self->notebook, blend_id, &error);
    if (draft == NULL) {
      fm_session_failure (self, error);
      return FALSE;
    }
    g_hash_table_insert (self->drafts, &draft->blend_id, draft);
  }
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
  clear_version (self);
  self->version = g_steal_pointer (&info);
  self->version_formula = g_steal_pointer (&formula);
  return TRUE;
}

static void
restore_shown (FmSession *self)
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
branched_cb (GObject *source, GAsyncResult *result, gpointer user_data)
{
  FmSession *self = FM_SESSION (source);
  g_autoptr (GError) error = NULL;

  self->n_in_flight--;
  if (!fm_session_io_finish (result, &error))
    fm_session_failure (self, error);
  else
    g_signal_emit (self, signals[BLENDS_CHANGED], 0);
}

static void
version_saved_cb (GObject *source, GAsyncResult *result, gpointer user_data)
{
  FmSession *self = FM_SESSION (source);
  g_autoptr (GError) error = NULL;
  g_autofree char *text = NULL;
  gint64 blend_id = fm_session_io_blend_id (result);
  g_autoptr (FmVersionInfo) info = fm_session_io_save_version_finish (result, &error);
  FmSessionDraft *draft;

  self->n_in_flight--;
  if (info == NULL) {
    fm_session_failure (self, error);
    return;
  }
  if (GPOINTER_TO_UINT (user_data) != self->serial)
    return;
  draft = g_hash_table_lookup (self->drafts, &blend_id);
  if (draft != NULL)
    fm_session_draft_set_parent (draft, info->id, fm_session_io_formula (result));
  if (draft != NULL)
    draft->told_changes = fm_session_draft_has_changes (draft);
  text = g_strdup_printf (_ ("Saved as version %d"), info->number);
  fm_session_message (self, text);
  g_signal_emit (self, signals[BLENDS_CHANGED], 0);
  g_signal_emit (self, signals[VERSIONS_CHANGED], 0);
  g_signal_emit (self, signals[HISTORY_CHANGED], 0);
}

static void
drop_notebook (FmSession *self)
{
  g_clear_handle_id (&self->autosave_id, g_source_remove);
  save_drafts (self);
  g_clear_pointer (&self->analysis, fm_analysis_free);
  clear_version (self);
  self->draft = NULL;
  self->blend_id = 0;
  g_clear_pointer (&self->blend_name, g_free);
  g_hash_table_remove_all (self->drafts);
  fm_session_io_close (g_steal_pointer (&self->notebook));
}

static void
fm_session_finalize (GObject *object)
{
  FmSession *self = FM_SESSION (object);

  /* Without drafts nothing more is queued; each queued write holds a reference to the session. */
  g_hash_table_remove_all (self->drafts);
  drop_notebook (self);
  g_clear_pointer (&self->writer, fm_session_writer_free);
  g_clear_pointer (&self->foods, fm_food_store_unref);
  g_clear_pointer (&self->drafts, g_hash_table_unref);
  G_OBJECT_CLASS (fm_session_parent_class)->finalize (object);
}

static guint
add_signal (const char *name)
{
  return g_signal_new (name, FM_TYPE_SESSION, G_SIGNAL_RUN_LAST, 0, NULL, NULL, NULL, G_TYPE_NONE,
                       0);
}

static guint
add_text_signal (const char *name)
{
  return g_signal_new (name, FM_TYPE_SESSION, G_SIGNAL_RUN_LAST, 0, NULL, NULL, NULL, G_TYPE_NONE,
                       1, G_TYPE_STRING);
}

static void
fm_session_class_init (FmSessionClass *klass)
{
  G_OBJECT_CLASS (klass)->finalize = fm_session_finalize;

  signals[NOTEBOOK_CHANGED] = add_signal ("notebook-changed");
  signals[BLENDS_CHANGED] = add_signal ("blends-changed");
  signals[VERSIONS_CHANGED] = add_signal ("versions-changed");
  signals[SHOWN_CHANGED] = add_signal ("shown-changed");
  signals[FORMULA_CHANGED] = add_signal ("formula-changed");
  signals[HISTORY_CHANGED] = add_signal ("history-changed");
  signals[EXPERIMENTS_CHANGED] = add_signal ("experiments-changed");
  signals[MESSAGE] = add_text_signal ("message");
  signals[FAILURE] = add_text_signal ("failure");
}

static void
fm_session_init (FmSession *self)
{
  self->drafts = g_hash_table_new_full (g_int64_hash, g_int64_equal, NULL,
                                        (GDestroyNotify)fm_session_draft_free);
  self->writer = fm_session_writer_new ();
}

FmSession *
fm_session_new (void)
{
  return g_object_new (FM_TYPE_SESSION, NULL);
}

FmNotebook *
fm_session_get_notebook (FmSession *self)
{
  return self->notebook;
}

void
fm_session_set_notebook (FmSession *self, FmNotebook *notebook)
{
  drop_notebook (self);
  self->serial++;
  self->notebook = notebook;
  if (notebook != NULL)
    restore_shown (self);
  g_signal_emit (self, signals[NOTEBOOK_CHANGED], 0);
  g_signal_emit (self, signals[BLENDS_CHANGED], 0);
  g_signal_emit (self, signals[VERSIONS_CHANGED], 0);
  g_signal_emit (self, signals[EXPERIMENTS_CHANGED], 0);
  emit_shown (self);
}

FmFoodStore *
fm_session_get_foods (FmSession *self)
{
  g_autoptr (GError) error = NULL;
  g_autofree char *path = NULL;

  if (self->foods == NULL && !self->foods_tried) {
    self->foods_tried = TRUE;
    path = fm_food_store_default_path ();
    self->foods = fm_food_store_open (path, &error);
    if (self->foods == NULL)
      fm_session_failure (self, error);
  }
  return self->foods;
}

gint64
fm_session_get_blend_id (FmSession *self)
{
  return self->blend_id;
}

gint64
fm_session_get_version_id (FmSession *self)
{
  return self->version != NULL ? self->version->id : 0;
}

const FmVersionInfo *
fm_session_get_version_info (FmSession *self)
{
  return self->version;
}

const char *
fm_session_get_blend_name (FmSession *self)
{
  return self->blend_name;
}

static void
show_changed (FmSession *self, gint64 old_blend_id)
{
  remember (self, "last-blend", self->blend_id);
  remember (self, "last-version", fm_session_get_version_id (self));
  if (self->blend_id != old_blend_id)
    g_signal_emit (self, signals[VERSIONS_CHANGED], 0);
  emit_shown (self);
}

void
fm_session_show_blend (FmSession *self, gint64 blend_id)
{
  gint64 old_id = self->blend_id;

  if (blend_id == old_id && self->version == NULL)
    return;
  fm_session_seal (self);
  take_blend (self, blend_id);
  show_changed (self, old_id);
}

void
fm_session_show_version (FmSession *self, gint64 version_id)
{
  gint64 old_id = self->blend_id;

  if (self->notebook == NULL || version_id == fm_session_get_version_id (self))
    return;
  fm_session_seal (self);
  if (version_id == 0)
    clear_version (self);
  else if (!take_version (self, version_id))
    return;
  show_changed (self, old_id);
}

void
fm_session_show_draft (FmSession *self)
{
  fm_session_show_version (self, 0);
}

void
fm_session_branch (FmSession *self, gint64 version_id)
{
  g_autofree char *label = NULL;
  gint64 old_id = self->blend_id;

  if (!is_writable (self) || !take_version (self, version_id))
    return;
  save_drafts (self);
  label = g_strdup_printf (_ ("Branch from version %d"), self->version->number);
  fm_history_seal (self->draft->history);
  fm_history_push (self->draft->history, self->version_formula, label, NULL);
  fm_session_draft_set_parent (self->draft, version_id, self->version_formula);
  self->n_in_flight++;
  fm_session_io_branch (self->writer, self->notebook, self->blend_id, version_id, self, branched_cb,
                        GUINT_TO_POINTER (self->serial));
  clear_version (self);
  show_changed (self, old_id);
}

void
fm_session_save_version (FmSession *self, const char *reason)
{
  if (!is_writable (self) || self->draft == NULL)
    return;
  fm_session_seal (self);
  save_drafts (self);
  self->n_in_flight++;
  fm_session_io_save_version (self->writer, self->notebook, self->blend_id,
                              fm_history_current (self->draft->history), reason, self,
                              version_saved_cb, GUINT_TO_POINTER (self->serial));
}

gint64
fm_session_get_draft_parent (FmSession *self)
{
  return self->draft != NULL ? self->draft->parent_id : 0;
}

gboolean
fm_session_has_draft_changes (FmSession *self)
{
  return self->draft != NULL && fm_session_draft_has_changes (self->draft);
}

gboolean
fm_session_is_editable (FmSession *self)
{
  return is_writable (self) && self->draft != NULL && self->version == NULL;
}

const FmFormula *
fm_session_get_formula (FmSession *self)
{
  if (self->version_formula != NULL)
    return self->version_formula;
  return self->draft != NULL ? fm_history_current (self->draft->history) : NULL;
}

const FmAnalysis *
fm_session_get_analysis (FmSession *self)
{
  return self->analysis;
}

void
fm_session_edit (FmSession *self, const FmFormula *next, const char *label, const char *merge_key)
{
  if (!fm_session_is_editable (self) || fm_formula_equal (next, fm_session_get_formula (self)))
    return;
  fm_history_push (self->draft->history, next, label, merge_key);
  mark_dirty (self);
  recompute (self);
  g_signal_emit (self, signals[HISTORY_CHANGED], 0);
}

void
fm_session_seal (FmSession *self)
{
  if (self->draft != NULL)
    fm_history_seal (self->draft->history);
}

static void
step_history (FmSession *self, const FmFormula *(*step) (FmHistory *))
{
  if (!fm_session_is_editable (self))
    return;
  step (self->draft->history);
  mark_dirty (self);
  recompute (self);
  g_signal_emit (self, signals[HISTORY_CHANGED], 0);
}

void
fm_session_undo (FmSession *self)
{
  if (fm_session_get_undo_label (self) != NULL)
    step_history (self, fm_history_undo);
}

void
fm_session_redo (FmSession *self)
{
  if (fm_session_get_redo_label (self) != NULL)
    step_history (self, fm_history_redo);
}

const char *
fm_session_get_undo_label (FmSession *self)
{
  return fm_session_is_editable (self) ? fm_history_undo_label (self->draft->history) : NULL;
}

const char *
fm_session_get_redo_label (FmSession *self)
{
  return fm_session_is_editable (self) ? fm_history_redo_label (self->draft->history) : NULL;
}

void
fm_session_flush (FmSession *self)
{
  g_clear_handle_id (&self->autosave_id, g_source_remove);
  save_drafts (self);
  fm_session_writer_wait (self->writer);
  /* The results are ready; taking them tells of failures before the window goes. */
  while (self->n_in_flight > 0)
    g_main_context_iteration (NULL, TRUE);
}

gboolean
fm_session_is_saved (FmSession *self)
{
  GHashTableIter iter;
  FmSessionDraft *draft;

  g_hash_table_iter_init (&iter, self->drafts);
  while (g_hash_table_iter_next (&iter, NULL, (gpointer *)&draft)) {
    if (draft->dirty)
      return FALSE;
  }
  return self->n_in_flight == 0;
}

void
fm_session_emit_experiments_changed (FmSession *self)
{
  g_signal_emit (self, signals[EXPERIMENTS_CHANGED], 0);
}

void
fm_session_emit_blends_changed (FmSession *self)
{
  if (self->blend_id != 0 && !find_blend (self, self->blend_id, NULL)) {
    gint64 gone_id = self->blend_id;

    g_hash_table_steal (self->drafts, &gone_id);
    g_clear_pointer (&self->draft, fm_session_draft_free);
    fm_session_show_blend (self, 0);
  }
  g_signal_emit (self, signals[BLENDS_CHANGED], 0);
}

void
fm_session_message (FmSession *self, const char *text)
{
  g_signal_emit (self, signals[MESSAGE], 0, text);
}

void
fm_session_failure (FmSession *self, const GError *error)
{
  g_signal_emit (self, signals[FAILURE], 0, error->message);
}
