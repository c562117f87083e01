/* SPDX-FileCopyrightText: 2026 the Forcemeat developers
 * SPDX-License-Identifier: GPL-3.0-or-later */
/* fm-food-store.h - the food-composition dataset, read-only, with full-text search
 *
 * Any thread may call these functions; one store serialises its callers on a mutex. A search
 * takes a few milliseconds. Errors are FM_STORE_ERROR.
 *
 * Data: USDA National Nutrient Database for Standard Reference, Release 28 (see data/sr28).
 */
#pragma once

#include <gio/gio.h>

#include "core/composition/fm-food.h"

G_BEGIN_DECLS

/** How the dataset is cited in windows, reports and exports. Not translated: it is a title. */
#define FM_FOOD_STORE_CITATION                                                                     \
  "USDA National Nutrient Database for Standard Reference, Release 28 (2015, slightly revised "    \
  "May "                                                                                           \
  "2016). US Department of Agriculture, Agricultural Research Service, Nutrient Data Laboratory."

typedef struct _FmFoodStore FmFoodStore; /* atomic ref counted */

/** One line of a search result. */
typedef struct {
  char *ndb_no;
  char *name;          /* readable */
  char *original_name; /* for citation */
  double fat_g_per_100g;
  double protein_g_per_100g;
  double water_g_per_100g;
  double energy_kcal_per_100g;
  gboolean is_raw;
  gboolean is_ready_made; /* cooked, cured, branded, of a restaurant or for babies; come last */
} FmFoodHit;

/** FORCEMEAT_FOOD_DB, else the installed file, else the build's own. Returns: (transfer full). */
char *fm_food_store_default_path (void);
/** The dataset at the default path, opened by the first who asks. Returns: (transfer full). */
FmFoodStore *fm_food_store_default (GError **error);
/** Opens the compiled dataset for reading; never creates or changes the file. */
FmFoodStore *fm_food_store_open (const char *path, GError **error);
FmFoodStore *fm_food_store_ref (FmFoodStore *self);
void fm_food_store_unref (FmFoodStore *self);
/** How many foods the dataset holds. */
guint fm_food_store_n_foods (FmFoodStore *self);
/**
 * Foods that match every word of @text, best first: up to @max fresh or generic ones, then up to
 * @max that are ready-made. Words may stand in any order and be cut short; singular and plural are
 * one; "80/20" and "ground beef 80" find lean points; typing errors are forgiven and words of the
 * trade in five languages are known; any text is legal. Blank text gives no hits.
 * @read_as: (out) (transfer full) (nullable) (optional): the words searched for where they are not
 * those typed. Returns: (transfer full) (element-type FmFoodHit): owns its elements; NULL on error.
 */
GPtrArray *fm_food_store_search (
    FmFoodStore *self, const char *text, guint max, char **read_as, GError **error);
/** The whole row. FM_STORE_ERROR_NOT_FOUND when there is none. Returns: (transfer full). */
FmFood *fm_food_store_get (FmFoodStore *self, const char *ndb_no, GError **error);

void fm_food_hit_free (FmFoodHit *self);

G_DEFINE_AUTOPTR_CLEANUP_FUNC (FmFoodStore, fm_food_store_unref)
G_DEFINE_AUTOPTR_CLEANUP_FUNC (FmFoodHit, fm_food_hit_free)

G_END_DECLS
