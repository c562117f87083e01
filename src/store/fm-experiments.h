/* SPDX-FileCopyrightText: 2026 the Forcemeat developers
 * SPDX-License-Identifier: GPL-3.0-or-later */
/* fm-experiments.h - the experiment log and its photos */
#pragma once

#include "core/experiment/fm-photo-view.h"
#include "store/fm-versions.h"

G_BEGIN_DECLS

/** A row of the log: light, so that 100,000 of them stay quick. */
typedef struct {
  gint64 id;
  gint64 version_id;
  gint64 blend_id;
  int version_number;
  char *blend_name;
  char *title;
  gint64 made_at;
  double fat_pct; /* of the version */
  double mean_raw_g;
  double cook_loss_pct;
  double peak_core_c;
  int rating;
  guint n_photos;
  gint64 first_photo_id; /* 0 = none */
} FmExperimentInfo;

typedef enum {
  FM_EXPERIMENT_SORT_DATE,
  FM_EXPERIMENT_SORT_RATING,
  FM_EXPERIMENT_SORT_COOK_LOSS,
  FM_EXPERIMENT_SORT_FAT,
  FM_EXPERIMENT_SORT_BLEND,
} FmExperimentSort;

/** Zero / NULL fields do not filter. */
typedef struct {
  gint64 only_id; /* this experiment alone, where the other fields let it through */
  gint64 blend_id;
  gint64 version_id;
  const char *text; /* full text over title and notes: prefixes, any order, no syntax */
  gint64 from;      /* made_at >= */
  gint64 to;        /* made_at < */
  int min_rating;
  gboolean with_photos;
  FmExperimentSort sort;
  gboolean descending;
} FmExperimentFilter;

void fm_experiment_info_free (FmExperimentInfo *info);
GPtrArray *fm_experiments_list (FmNotebook *self,
                                const FmExperimentFilter *filter,
                                GCancellable *cancellable,
                                GError **error);
/** Below 0 when @a stands before @b in a list of that order, above 0 when after it. */
int fm_experiments_compare (const FmExperimentInfo *a,
                            const FmExperimentInfo *b,
                            const FmExperimentFilter *filter);
FmExperiment *fm_experiments_load (FmNotebook *self, gint64 id, GError **error);
/** Inserts (id 0; sets the id) or updates; one transaction. */
gboolean fm_experiments_save (FmNotebook *self, FmExperiment *experiment, GError **error);
gboolean fm_experiments_remove (FmNotebook *self, gint64 id, GError **error);

/** A photo of an experiment; the bytes are content-addressed, so the same file is stored once. */
typedef struct {
  gint64 id;
  gint64 experiment_id;
  char *sha256;
  char *mime;    /* image/jpeg, image/png ... */
  char *caption; /* (nullable) */
  int width_px;  /* after orientation */
  int height_px;
  gint64 size_bytes;
  int orientation; /* EXIF 1-8 */
  FmPhotoView view;
  char *taken;        /* (nullable): "YYYY-MM-DD HH:MM:SS" by the camera's clock, of no zone */
  char *title;        /* (nullable): of the experiment */
  int version_number; /* of the version that the experiment made */
} FmPhotoInfo;

#define FM_PHOTO_MAX_BYTES (64 * 1024 * 1024)
#define FM_PHOTO_MAX_PIXELS (100 * 1000 * 1000) /* refused from here on */
#define FM_PHOTO_THUMB_PX 256
#define FM_PHOTOS_BESIDE 500 /* that a photo can be laid beside */

void fm_photo_info_free (FmPhotoInfo *info);
GPtrArray *fm_photos_list (FmNotebook *self, gint64 experiment_id, GError **error);
/** Of all experiments of the same blend: first its own, then those of the newest; at most
 * FM_PHOTOS_BESIDE. */
GPtrArray *fm_photos_list_beside (FmNotebook *self, gint64 experiment_id, GError **error);
/** Checks the size from the header before decoding, reads what EXIF says, makes the thumbnail.
 * Returns the photo's id, 0 on error. */
gint64 fm_photos_add (FmNotebook *self,
                      gint64 experiment_id,
                      GBytes *data,
                      const char *caption,
                      GCancellable *cancellable,
                      GError **error);
gboolean fm_photos_describe (
    FmNotebook *self, gint64 photo_id, const char *caption, FmPhotoView view, GError **error);
gboolean fm_photos_remove (FmNotebook *self, gint64 photo_id, GError **error);
GBytes *fm_photos_thumbnail (FmNotebook *self, gint64 photo_id, GError **error); /* JPEG, upright */
GBytes *fm_photos_original (FmNotebook *self, gint64 photo_id, GError **error);  /* as imported */

G_DEFINE_AUTOPTR_CLEANUP_FUNC (FmExperimentInfo, fm_experiment_info_free)
G_DEFINE_AUTOPTR_CLEANUP_FUNC (FmPhotoInfo, fm_photo_info_free)

G_END_DECLS
