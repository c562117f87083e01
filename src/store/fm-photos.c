/* SPDX-FileCopyrightText: 2026 the Forcemeat developers
 * SPDX-License-Identifier: GPL-3.0-or-later */
/* fm-photos.c - photos of experiments, their bytes kept once under their SHA-256 */
#include "store/fm-experiments.h"

#include <glib/gi18n-lib.h>

#include "store/notebook/fm-db.h"
#include "store/fm-image.h"

static gboolean
set_not_found (GError **error)
{
  g_set_error_literal (error, FM_STORE_ERROR, FM_STORE_ERROR_NOT_FOUND,
                       _ ("This photo is no longer in the notebook."));
  return FALSE;
}

static const char *
caption_or_null (const char *caption)
{
  return caption != NULL && *caption != '\0' ? caption : NULL;
}

void
fm_photo_info_free (FmPhotoInfo *info)
{
  if (info == NULL)
    return;
  g_free (info->sha256);
  g_free (info->mime);
  g_free (info->caption);
  g_free (info->taken);
  g_free (info->title);
  g_free (info);
}

static FmPhotoInfo *
read_info (FmStmt *stmt)
{
  FmPhotoInfo *info = g_new0 (FmPhotoInfo, 1);
  g_autofree char *view = fm_stmt_text (stmt, 9);

  info->id = fm_stmt_int (stmt, 0);
  info->experiment_id = fm_stmt_int (stmt, 1);
  info->sha256 = fm_stmt_text (stmt, 2);
  info->mime = fm_stmt_text (stmt, 3);
  info->caption = fm_stmt_text (stmt, 4);
  info->width_px = (int)CLAMP (fm_stmt_int (stmt, 5), 0, G_MAXINT);
  info->height_px = (int)CLAMP (fm_stmt_int (stmt, 6), 0, G_MAXINT);
  info->size_bytes = fm_stmt_int (stmt, 7);
  info->orientation = (int)CLAMP (fm_stmt_int (stmt, 8), 1, 8);
  info->view = fm_photo_view_of_key (view);
  info->taken = fm_stmt_text (stmt, 10);
  info->title = fm_stmt_text (stmt, 11);
  info->version_number = (int)CLAMP (fm_stmt_int (stmt, 12), 0, G_MAXINT);
  return info;
}

#define INFO_SQL                                                                                   \
  "SELECT p.id, p.experiment_id, p.sha256, b.mime, p.caption, b.width_px, b.height_px,"            \
  " b.size_bytes, b.orientation, p.view, b.taken, e.title, v.number"                               \
  " FROM photos p JOIN photo_blobs b ON b.sha256 = p.sha256"                                       \
  " JOIN experiments e ON e.id = p.experiment_id JOIN versions v ON v.id = e.version_id"

static GPtrArray *
read_infos (FmNotebook *self, const char *sql, gint64 experiment_id, GError **error)
{
  g_autoptr (GPtrArray) infos = g_ptr_array_new_with_free_func ((GDestroyNotify)fm_photo_info_free);
  g_autoptr (FmReader) db = fm_notebook_reader (self, NULL, error);
  g_autoptr (FmStmt) stmt = db == NULL ? NULL : fm_db_prepare (db, sql, error);
  FmStep step = FM_FAILED;

  if (stmt == NULL)
    return NULL;
  fm_stmt_bind_int (stmt, 1, experiment_id);
  while ((step = fm_stmt_step (db, stmt, error)) == FM_ROW)
    g_ptr_array_add (infos, read_info (stmt));
  return step == FM_DONE ? g_steal_pointer (&infos) : NULL;
}

GPtrArray *
fm_photos_list (FmNotebook *self, gint64 experiment_id, GError **error)
{
  return read_infos (self, INFO_SQL " WHERE p.experiment_id = ?1 ORDER BY p.id", experiment_id,
                     error);
}

GPtrArray *
fm_photos_list_beside (FmNotebook *self, gint64 experiment_id, GError **error)
{
  return read_infos (
      self,
      INFO_SQL
      " WHERE e.blend_id = (SELECT blend_id FROM experiments WHERE id = ?1)"
      " ORDER BY e.id <> ?1, e.made_at DESC, e.id DESC, p.id LIMIT " G_STRINGIFY (FM_PHOTOS_BESIDE),
      experiment_id, error);
}

static gboolean
add_blob (FmDb *db, const char *sha256, const FmImage *image, GBytes *data, GError **error)
{
  g_autoptr (FmStmt) stmt =
      fm_db_prepare (db,
                     "INSERT INTO photo_blobs (sha256, mime, width_px, height_px, orientation,"
                     " size_bytes, thumb, data, taken)"
                     " VALUES (?1, ?2, ?3, ?4, ?5, ?6, ?7, ?8, ?9)"
                     /* An older edition of the notebook did not keep the time. */
                     " ON CONFLICT (sha256) DO UPDATE SET taken = excluded.taken"
                     " WHERE taken IS NOT excluded.taken",
                     error);

  if (stmt == NULL)
    return FALSE;
  fm_stmt_bind_text (stmt, 1, sha256);
  fm_stmt_bind_text (stmt, 2, image->mime);
  fm_stmt_bind_int (stmt, 3, image->width_px);
  fm_stmt_bind_int (stmt, 4, image->height_px);
  fm_stmt_bind_int (stmt, 5, image->orientation);
  fm_stmt_bind_int (stmt, 6, (gint64)g_bytes_get_size (data));
  fm_stmt_bind_bytes (stmt, 7, image->thumbnail);
  fm_stmt_bind_bytes (stmt, 8, data);
  fm_stmt_bind_text (stmt, 9, image->taken);
  return fm_stmt_run (db, stmt, error);
}

/* Selecting from the experiment inserts nothing when it is gone. */
static gboolean
add_photo (FmDb *db, gint64 experiment_id, const char *sha256, const char *caption, GError **error)
{
  g_autoptr (FmStmt) stmt =
      fm_db_prepare (db,
                     "INSERT INTO photos (experiment_id, sha256, added_at, caption)"
                     " SELECT id, ?2, ?3, ?4 FROM experiments WHERE id = ?1",
                     error);

  if (stmt == NULL)
    return FALSE;
  fm_stmt_bind_int (stmt, 1, experiment_id);
  fm_stmt_bind_text (stmt, 2, sha256);
  fm_stmt_bind_int (stmt, 3, g_get_real_time () / G_USEC_PER_SEC);
  fm_stmt_bind_text (stmt, 4, caption_or_null (caption));
  if (!fm_stmt_run (db, stmt, error))
    return FALSE;
  if (fm_db_changes (db) > 0)
    return TRUE;
  g_set_error_literal (error, FM_STORE_ERROR, FM_STORE_ERROR_NOT_FOUND,
                       _ ("The experiment is not in the notebook. Save it, then add the photo."));
  return FALSE;
}

gint64
fm_photos_add (FmNotebook *self,
               gint64 experiment_id,
               GBytes *data,
               const char *caption,
               GCancellable *cancellable,
               GError **error)
{
  /* All the slow work comes before the transaction, so that no other writer waits for it. */
  g_autoptr (FmImage) image = fm_image_inspect (data, cancellable, error);
  if (image == NULL)
    return 0;
  g_autofree char *sha256 = g_compute_checksum_for_bytes (G_CHECKSUM_SHA256, data);
  if (g_cancellable_set_error_if_cancelled (cancellable, error))
    return 0;

  FmDb *db = fm_notebook_begin (self, error);
  if (db == NULL)
    return 0;
  gboolean added = add_blob (db, sha256, image, data, error) &&
                   add_photo (db, experiment_id, sha256, caption, error);
  gint64 id = added ? fm_db_last_id (db) : 0;
  return fm_notebook_end (self, added, error) ? id : 0;
}

static gboolean
describe_in (FmDb *db, gint64 photo_id, const char *caption, FmPhotoView view, GError **error)
{
  g_autoptr (FmStmt) stmt =
      fm_db_prepare (db, "UPDATE photos SET caption = ?2, view = ?3 WHERE id = ?1", error);

  if (stmt == NULL)
    return FALSE;
  fm_stmt_bind_int (stmt, 1, photo_id);
  fm_stmt_bind_text (stmt, 2, caption_or_null (caption));
  fm_stmt_bind_text (stmt, 3, fm_photo_view_key (view));
  return fm_stmt_run (db, stmt, error) && (fm_db_changes (db) > 0 || set_not_found (error));
}

gboolean
fm_photos_describe (
    FmNotebook *self, gint64 photo_id, const char *caption, FmPhotoView view, GError **error)
{
  FmDb *db = fm_notebook_begin (self, error);

  return db != NULL &&
         fm_notebook_end (self, describe_in (db, photo_id, caption, view, error), error);
}

/* A trigger drops the bytes once no photo uses them. */
static gboolean
remove_in (FmDb *db, gint64 photo_id, GError **error)
{
  return fm_db_run_with_id (db, "DELETE FROM photos WHERE id = ?1", photo_id, error) &&
         (fm_db_changes (db) > 0 || set_not_found (error));
}

gboolean
fm_photos_remove (FmNotebook *self, gint64 photo_id, GError **error)
{
  FmDb *db = fm_notebook_begin (self, error);

  return db != NULL && fm_notebook_end (self, remove_in (db, photo_id, error), error);
}

/* @sql selects the bytes and their checksum. */
static GBytes *
read_bytes (FmNotebook *self, const char *sql, gint64 photo_id, char **sha256, GError **error)
{
  g_autoptr (FmReader) db = fm_notebook_reader (self, NULL, error);
  g_autoptr (FmStmt) stmt = db == NULL ? NULL : fm_db_prepare (db, sql, error);

  if (stmt == NULL)
    return NULL;
  fm_stmt_bind_int (stmt, 1, photo_id);
  FmStep step = fm_stmt_step (db, stmt, error);
  if (step == FM_DONE)
    set_not_found (error);
  if (step != FM_ROW)
    return NULL;
  *sha256 = fm_stmt_text (stmt, 1);
  return fm_stmt_bytes (stmt, 0);
}

GBytes *
fm_photos_thumbnail (FmNotebook *self, gint64 photo_id, GError **error)
{
  g_autofree char *sha256 = NULL;

  return read_bytes (self,
                     "SELECT b.thumb, b.sha256 FROM photos p"
                     " JOIN photo_blobs b ON b.sha256 = p.sha256 WHERE p.id = ?1",
                     photo_id, &sha256, error);
}

GBytes *
fm_photos_original (FmNotebook *self, gint64 photo_id, GError **error)
{
  g_autofree char *sha256 = NULL;
  g_autoptr (GBytes) data = read_bytes (self,
                                        "SELECT b.data, b.sha256 FROM photos p"
                                        " JOIN photo_blobs b ON b.sha256 = p.sha256"
                                        " WHERE p.id = ?1",
                                        photo_id, &sha256, error);
  if (data == NULL)
    return NULL;

  /* The address of the bytes is their checksum, so damage cannot hide. */
  g_autofree char *now = g_compute_checksum_for_bytes (G_CHECKSUM_SHA256, data);
  if (g_strcmp0 (now, sha256) == 0)
    return g_steal_pointer (&data);
  g_set_error_literal (error, FM_STORE_ERROR, FM_STORE_ERROR_DAMAGED,
                       _ ("The photo's bytes are not those that were stored: the notebook is "
                          "damaged. Open a backup of it."));
  return NULL;
}
