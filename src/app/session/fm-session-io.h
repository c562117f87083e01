/* fm-session-io.h - writes to a notebook, one after the other, off the main thread
 *
 * All writes of a session go through one writer, so that an older draft can never land after a
 * newer one and a version is saved after the edits that led to it.
 */
#pragma once

#include "store/fm-versions.h"

G_BEGIN_DECLS

typedef struct _FmSessionWriter FmSessionWriter;

FmSessionWriter *fm_session_writer_new (void);
/** Finishes what is queued, then frees. */
void fm_session_writer_free (FmSessionWriter *self);
/** Blocks until every queued job has run; their callbacks come later from the main context. */
void fm_session_writer_wait (FmSessionWriter *self);

/* Jobs. Each takes a reference to @notebook and a copy of @formula. */
void fm_session_io_save_draft (FmSessionWriter *self,
                               FmNotebook *notebook,
                               gint64 blend_id,
                               const FmFormula *formula,
                               gpointer source,
                               GAsyncReadyCallback callback,
                               gpointer user_data);
void fm_session_io_branch (FmSessionWriter *self,
                           FmNotebook *notebook,
                           gint64 blend_id,
                           gint64 version_id,
                           gpointer source,
                           GAsyncReadyCallback callback,
                           gpointer user_data);
void fm_session_io_save_version (FmSessionWriter *self,
                                 FmNotebook *notebook,
                                 gint64 blend_id,
                                 const FmFormula *formula,
                                 const char *reason,
                                 gpointer source,
                                 GAsyncReadyCallback callback,
                                 gpointer user_data);
/** @formulas: FmFormula; @reasons: as many. */
void fm_session_io_add_versions (FmSessionWriter *self,
                                 FmNotebook *notebook,
                                 gint64 blend_id,
                                 gint64 parent_id,
                                 const GPtrArray *formulas,
                                 const char *const *reasons,
                                 gpointer source,
                                 GAsyncReadyCallback callback,
                                 gpointer user_data);
void fm_session_io_save_setting (FmSessionWriter *self,
                                 FmNotebook *notebook,
                                 const char *key,
                                 const char *value,
                                 gpointer source,
                                 GAsyncReadyCallback callback,
                                 gpointer user_data);

gboolean fm_session_io_finish (GAsyncResult *result, GError **error);
/** The saved version. Returns: (transfer full), NULL on error. */
FmVersionInfo *fm_session_io_save_version_finish (GAsyncResult *result, GError **error);
/** The new versions (FmVersionInfo). Returns: (transfer full), NULL on error. */
GPtrArray *fm_session_io_add_versions_finish (GAsyncResult *result, GError **error);
/** Blend and formula that a finished job was about. (transfer none) */
gint64 fm_session_io_blend_id (GAsyncResult *result);
const FmFormula *fm_session_io_formula (GAsyncResult *result);

/** Drops a reference in a thread, because the last one checkpoints the file. (transfer full) */
void fm_session_io_close (FmNotebook *notebook);
/** Blocks until all those threads are done; before the program ends. */
void fm_session_io_wait_closed (void);

G_DEFINE_AUTOPTR_CLEANUP_FUNC (FmSessionWriter, fm_session_writer_free)

G_END_DECLS
