/* SPDX-FileCopyrightText: 2026 the Forcemeat developers
 * SPDX-License-Identifier: GPL-3.0-or-later */
/* fm-versions.h - blends, drafts and the immutable tree of versions */
#pragma once

#include "store/notebook/fm-notebook.h"

G_BEGIN_DECLS

typedef struct {
  gint64 id;
  char *name;
  gint64 created_at;              /* unix seconds */
  gint64 draft_parent_version_id; /* 0 = draft starts from nothing */
  gboolean has_draft_changes;     /* draft differs from its parent */
  guint n_versions;
  guint n_experiments;
} FmBlendInfo;

typedef struct {
  gint64 id;
  gint64 blend_id;
  gint64 parent_id; /* 0 = root */
  int number;       /* 1, 2, 3 ... within the blend */
  char *reason;
  gint64 saved_at;
  double fat_pct; /* at saving; NaN = unknown */
  guint n_lines;
  guint n_experiments;
  double mean_rating; /* NaN = none */
  guint n_tastings;   /* opened ones that found something of it; sealed ones count for nothing */
} FmVersionInfo;

void fm_blend_info_free (FmBlendInfo *info);
void fm_version_info_free (FmVersionInfo *info);

/* Lists are (transfer full) (element-type ...) with a free func set. */
GPtrArray *fm_blends_list (FmNotebook *self, GError **error);
/** One of them; NOT_FOUND once it is gone. */
FmBlendInfo *fm_blends_info (FmNotebook *self, gint64 blend_id, GError **error);
gint64 fm_blends_add (FmNotebook *self, const char *name, GError **error); /* 0 on error */
gboolean fm_blends_rename (FmNotebook *self, gint64 blend_id, const char *name, GError **error);
/** Refuses (FROZEN) while the blend has versions with experiments. */
gboolean fm_blends_remove (FmNotebook *self, gint64 blend_id, GError **error);

/** The blend's draft: an empty formula when there is none yet. @parent_version_id: (out)(nullable).
 */
FmFormula *
fm_draft_load (FmNotebook *self, gint64 blend_id, gint64 *parent_version_id, GError **error);
/** Autosave; one transaction. */
gboolean
fm_draft_save (FmNotebook *self, gint64 blend_id, const FmFormula *formula, GError **error);
/** Makes the draft a copy of @version_id (branch); the caller asks first if changes would go. */
gboolean fm_draft_branch (FmNotebook *self, gint64 blend_id, gint64 version_id, GError **error);

/** Saves the draft as the next immutable version under the draft's parent; returns its id, 0 on
 * error. */
gint64 fm_versions_save (FmNotebook *self,
                         gint64 blend_id,
                         const FmFormula *formula,
                         const char *reason,
                         GError **error);
/**
 * fm_versions_add:
 * @parent_id: the version of @blend_id that they grow from; 0 = from nothing
 * @formulas: FmFormula
 * @reasons: as many, NULL after the last
 *
 * Saves versions without touching the draft, in one transaction: all or none. Returns: (transfer
 * full): ids (gint64) in the order of @formulas, NULL on error.
 */
GArray *fm_versions_add (FmNotebook *self,
                         gint64 blend_id,
                         gint64 parent_id,
                         const GPtrArray *formulas,
                         const char *const *reasons,
                         GError **error);
/** All versions of a blend in order of number. */
GPtrArray *fm_versions_list (FmNotebook *self, gint64 blend_id, GError **error);
FmVersionInfo *fm_versions_info (FmNotebook *self, gint64 version_id, GError **error);
/** The version that an experiment was made of; NOT_FOUND once the experiment is gone. */
GPtrArray *fm_versions_of_experiment (FmNotebook *self, gint64 experiment_id, GError **error);
/** The versions among the samples of a tasting; NOT_FOUND once the tasting is gone. */
GPtrArray *fm_versions_of_tasting (FmNotebook *self, gint64 tasting_id, GError **error);
/** The formula exactly as frozen. */
FmFormula *fm_versions_load (FmNotebook *self, gint64 version_id, GError **error);

G_DEFINE_AUTOPTR_CLEANUP_FUNC (FmBlendInfo, fm_blend_info_free)
G_DEFINE_AUTOPTR_CLEANUP_FUNC (FmVersionInfo, fm_version_info_free)

/* Formula as JSON, compositions frozen inside (unknown = absent). Stable key order. */
char *fm_formula_to_json (const FmFormula *formula);
FmFormula *fm_formula_from_json (const char *json, GError **error);

/* The developer's own ingredients, kept for reuse in other blends. */
GPtrArray *
fm_ingredients_list (FmNotebook *self, const char *search, GError **error); /* FmIngredient */
gboolean fm_ingredients_save (FmNotebook *self, const FmIngredient *ingredient, GError **error);
/* FM_STORE_ERROR_IN_USE names the blends whose drafts use it; versions keep their own copy. */
gboolean fm_ingredients_remove (FmNotebook *self, const char *id, GError **error);

/** The setting of a notebook in which everything is invented; its value says so in words. */
#define FM_SETTING_INVENTED "invented"
/** The line that such a notebook carries in the window, on paper and in exports. Translated. */
const char *fm_invented_words (void);
/** That line, or NULL for a notebook of somebody's own. Any thread but the main one. */
const char *fm_notebook_invented (FmNotebook *self);

/* Small settings that belong to the file ("last-blend", "currency"). NULL = unset. */
char *fm_notebook_get_setting (FmNotebook *self, const char *key);
gboolean
fm_notebook_set_setting (FmNotebook *self, const char *key, const char *value, GError **error);
/** Several in one transaction. @keys: NULL after the last; @values: as many. */
gboolean fm_notebook_set_settings (FmNotebook *self,
                                   const char *const *keys,
                                   const char *const *values,
                                   GError **error);

G_END_DECLS
