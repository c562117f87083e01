/* fm-session.c - what the window shows: one notebook, one blend, its draft or a saved version */
#include "app/session/fm-session-private.h"

G_DEFINE_FINAL_TYPE (FmSession, fm_session, G_TYPE_OBJECT)

static guint signals[FM_SESSION_N_SIGNALS];

/* Not for the signals with a text. */
void
fm_session_emit (FmSession *self, FmSessionSignal signal)
{
  g_signal_emit (self, signals[signal], 0);
}

static void
recompute (FmSession *self)
{
  const FmFormula *formula = fm_session_get_formula (self);

  g_clear_pointer (&self->analysis, fm_analysis_free);
  if (formula != NULL)
    self->analysis = fm_analysis_new (formula);
  fm_session_emit (self, FM_SESSION_FORMULA_CHANGED);
}

void
fm_session_emit_shown (FmSession *self)
{
  fm_session_emit (self, FM_SESSION_SHOWN_CHANGED);
  recompute (self);
  fm_session_emit (self, FM_SESSION_HISTORY_CHANGED);
}

gboolean
fm_session_is_writable (FmSession *self)
{
  return self->notebook != NULL && !fm_notebook_is_read_only (self->notebook);
}

static void
drop_notebook (FmSession *self)
{
  g_clear_handle_id (&self->autosave_id, g_source_remove);
  fm_session_save_drafts (self);
  g_clear_pointer (&self->analysis, fm_analysis_free);
  fm_session_clear_version (self);
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

  signals[FM_SESSION_NOTEBOOK_CHANGED] = add_signal ("notebook-changed");
  signals[FM_SESSION_BLENDS_CHANGED] = add_signal ("blends-changed");
  signals[FM_SESSION_VERSIONS_CHANGED] = add_signal ("versions-changed");
  signals[FM_SESSION_SHOWN_CHANGED] = add_signal ("shown-changed");
  signals[FM_SESSION_FORMULA_CHANGED] = add_signal ("formula-changed");
  signals[FM_SESSION_HISTORY_CHANGED] = add_signal ("history-changed");
  signals[FM_SESSION_EXPERIMENTS_CHANGED] = add_signal ("experiments-changed");
  signals[FM_SESSION_TASTINGS_CHANGED] = add_signal ("tastings-changed");
  signals[FM_SESSION_MAPS_CHANGED] = add_signal ("maps-changed");
  signals[FM_SESSION_MESSAGE] = add_text_signal ("message");
  signals[FM_SESSION_FAILURE] = add_text_signal ("failure");
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
    fm_session_restore_shown (self);
  fm_session_emit (self, FM_SESSION_NOTEBOOK_CHANGED);
  fm_session_emit (self, FM_SESSION_BLENDS_CHANGED);
  fm_session_emit (self, FM_SESSION_VERSIONS_CHANGED);
  fm_session_emit (self, FM_SESSION_EXPERIMENTS_CHANGED);
  fm_session_emit (self, FM_SESSION_TASTINGS_CHANGED);
  fm_session_emit_shown (self);
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
  return fm_session_is_writable (self) && self->draft != NULL && self->version == NULL;
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
  fm_session_mark_dirty (self);
  recompute (self);
  fm_session_emit (self, FM_SESSION_HISTORY_CHANGED);
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
  fm_session_mark_dirty (self);
  recompute (self);
  fm_session_emit (self, FM_SESSION_HISTORY_CHANGED);
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
fm_session_emit_experiments_changed (FmSession *self)
{
  fm_session_emit (self, FM_SESSION_EXPERIMENTS_CHANGED);
}

void
fm_session_emit_tastings_changed (FmSession *self)
{
  fm_session_emit (self, FM_SESSION_TASTINGS_CHANGED);
}

void
fm_session_emit_maps_changed (FmSession *self)
{
  fm_session_emit (self, FM_SESSION_MAPS_CHANGED);
}

void
fm_session_message (FmSession *self, const char *text)
{
  g_signal_emit (self, signals[FM_SESSION_MESSAGE], 0, text);
}

void
fm_session_failure (FmSession *self, const GError *error)
{
  g_signal_emit (self, signals[FM_SESSION_FAILURE], 0, error->message);
}
