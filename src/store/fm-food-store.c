/* SPDX-FileCopyrightText: 2026 the Forcemeat developers
 * SPDX-License-Identifier: GPL-3.0-or-later */
/* fm-food-store.c - the food-composition dataset, read-only, with full-text search */
#include "store/fm-food-store.h"

#include <glib/gi18n-lib.h>
#include <math.h>
#include <sqlite3.h>
#include <string.h>

#include "core/base/fm-spelling.h"
#include "store/fm-food-query.h"
#include "store/fm-food-words.h"
#include "store/notebook/fm-notebook.h"
#include "store/notebook/fm-store-thread.h"

#define FOOD_APPLICATION_ID 0x464d4644 /* "FMFD", as tools/compile-food-db writes it */
#define FOOD_SCHEMA_VERSION 2
#define FILE_NAME "sr28.db"

struct _FmFoodStore {
  gatomicrefcount ref_count;
  GMutex mutex; /* guards the statements, which hold a position */
  sqlite3 *db;
  sqlite3_stmt *search;
  sqlite3_stmt *get;
  FmFoodWords *words;
  guint n_foods;
  int first_ready; /* row: from here on foods are ready-made */
};

/* What one search has gathered. */
typedef struct {
  GPtrArray *hits;  /* FmFoodHit */
  GHashTable *seen; /* rows that are among them */
  guint max;        /* hits in all, up to now */
  int from;         /* rows looked at */
  int to;
} Gathering;

enum {
  SEARCH_ID,
  SEARCH_NDB_NO,
  SEARCH_NAME,
  SEARCH_ORIGINAL,
  SEARCH_FAT,
  SEARCH_PROTEIN,
  SEARCH_WATER,
  SEARCH_ENERGY,
  SEARCH_IS_RAW,
};

/* Rows are stored best first, so the first matches by rowid are the best ones. */
static const char search_sql[] =
    "SELECT f.id, f.ndb_no, f.name, f.description, f.fat, f.protein, f.water, f.energy_kcal, "
    "f.is_raw FROM food_index JOIN food AS f ON f.id = food_index.rowid "
    "WHERE food_index MATCH ?1 AND food_index.rowid BETWEEN ?3 AND ?4 "
    "ORDER BY food_index.rowid LIMIT ?2";

enum {
  GET_NAME,
  GET_ORIGINAL,
  GET_IS_RAW,
  GET_REFUSE,
  GET_WEIGHT_1_G,
  GET_WEIGHT_1,
  GET_WEIGHT_2_G,
  GET_WEIGHT_2,
  GET_FIRST_NUTRIENT,
};

static char *
build_get_sql (void)
{
  g_autoptr (GString) sql =
      g_string_new ("SELECT name, description, is_raw, refuse_pct, weight_1_g, weight_1, "
                    "weight_2_g, weight_2");

  for (int i = 0; i < FM_N_NUTRIENTS; i++)
    g_string_append_printf (sql, ", %s", fm_nutrient_info ((FmNutrient)i)->key);
  g_string_append (sql, " FROM food WHERE ndb_no = ?1");
  return g_string_free (g_steal_pointer (&sql), FALSE);
}

static void
set_damaged (GError **error, const char *detail)
{
  g_set_error (error, FM_STORE_ERROR, FM_STORE_ERROR_DAMAGED,
               _ ("The food composition data cannot be read (%s). Reinstall the program, or set "
                  "FORCEMEAT_FOOD_DB to an intact copy of the file."),
               detail);
}

static double
column_amount (sqlite3_stmt *stmt, int column)
{
  if (sqlite3_column_type (stmt, column) == SQLITE_NULL)
    return (double)NAN;
  return sqlite3_column_double (stmt, column);
}

static char *
column_text (sqlite3_stmt *stmt, int column)
{
  return g_strdup ((const char *)sqlite3_column_text (stmt, column));
}

static gboolean
prepare (FmFoodStore *self, const char *sql, sqlite3_stmt **stmt, GError **error)
{
  if (sqlite3_prepare_v3 (self->db, sql, -1, SQLITE_PREPARE_PERSISTENT, stmt, NULL) == SQLITE_OK)
    return TRUE;
  set_damaged (error, sqlite3_errmsg (self->db));
  return FALSE;
}

static gboolean
read_integer (FmFoodStore *self, const char *sql, int *value, GError **error)
{
  sqlite3_stmt *stmt = NULL;
  gboolean done = FALSE;

  if (!prepare (self, sql, &stmt, error))
    return FALSE;
  if (sqlite3_step (stmt) == SQLITE_ROW) {
    *value = sqlite3_column_int (stmt, 0);
    done = TRUE;
  } else {
    set_damaged (error, sqlite3_errmsg (self->db));
  }
  sqlite3_finalize (stmt);
  return done;
}

static gboolean
check_file (FmFoodStore *self, GError **error)
{
  int application_id = 0;
  int version = 0;
  int n_foods = 0;

  if (!read_integer (self, "PRAGMA application_id", &application_id, error) ||
      !read_integer (self, "PRAGMA user_version", &version, error))
    return FALSE;
  if (application_id != FOOD_APPLICATION_ID || version != FOOD_SCHEMA_VERSION) {
    set_damaged (error, _ ("it is another kind of file or of another version"));
    return FALSE;
  }
  if (!read_integer (self, "SELECT count(*) FROM food", &n_foods, error))
    return FALSE;
  self->n_foods = (guint)n_foods;
  if (!read_integer (self, "SELECT first_id FROM food_ready", &self->first_ready, error))
    return FALSE;
  self->words = fm_food_words_new (self->db);
  if (self->words == NULL)
    set_damaged (error, sqlite3_errmsg (self->db));
  return self->words != NULL;
}

static gboolean
open_file (FmFoodStore *self, const char *path, GError **error)
{
  g_autofree char *absolute = g_canonicalize_filename (path, NULL);
  g_autofree char *file_uri = g_filename_to_uri (absolute, NULL, error);
  g_autofree char *uri = NULL;
  int flags = SQLITE_OPEN_READONLY | SQLITE_OPEN_URI | SQLITE_OPEN_FULLMUTEX;

  if (file_uri == NULL)
    return FALSE;
  if (!g_file_test (absolute, G_FILE_TEST_EXISTS)) {
    g_set_error (error, FM_STORE_ERROR, FM_STORE_ERROR_NOT_FOUND,
                 _ ("The food composition data were not found at “%s”. Reinstall the program."),
                 absolute);
    return FALSE;
  }
  uri = g_strconcat (file_uri, "?immutable=1", NULL);
  if (sqlite3_open_v2 (uri, &self->db, flags, NULL) != SQLITE_OK) {
    set_damaged (error, self->db != NULL ? sqlite3_errmsg (self->db) : g_strerror (ENOMEM));
    return FALSE;
  }
  sqlite3_db_config (self->db, SQLITE_DBCONFIG_DEFENSIVE, 1, NULL);
  sqlite3_db_config (self->db, SQLITE_DBCONFIG_TRUSTED_SCHEMA, 0, NULL);
  return TRUE;
}

static void
hit_destroy (gpointer hit)
{
  fm_food_hit_free (hit);
}

static FmFoodHit *
read_hit (sqlite3_stmt *stmt)
{
  FmFoodHit *hit = g_new0 (FmFoodHit, 1);

  hit->ndb_no = column_text (stmt, SEARCH_NDB_NO);
  hit->name = column_text (stmt, SEARCH_NAME);
  hit->original_name = column_text (stmt, SEARCH_ORIGINAL);
  hit->fat_g_per_100g = column_amount (stmt, SEARCH_FAT);
  hit->protein_g_per_100g = column_amount (stmt, SEARCH_PROTEIN);
  hit->water_g_per_100g = column_amount (stmt, SEARCH_WATER);
  hit->energy_kcal_per_100g = column_amount (stmt, SEARCH_ENERGY);
  hit->is_raw = sqlite3_column_int (stmt, SEARCH_IS_RAW) != 0;
  return hit;
}

/* Adds the matches of one strictness that are not there yet. Called with the mutex held. */
static gboolean
collect (FmFoodStore *self, const char *query, Gathering *gathering, GError **error)
{
  sqlite3_stmt *stmt = self->search;
  int rc;

  sqlite3_bind_text (stmt, 1, query, -1, SQLITE_TRANSIENT);
  sqlite3_bind_int64 (stmt, 2, (gint64)gathering->max + gathering->hits->len);
  sqlite3_bind_int (stmt, 3, gathering->from);
  sqlite3_bind_int (stmt, 4, gathering->to);
  while ((rc = sqlite3_step (stmt)) == SQLITE_ROW) {
    gpointer id = GINT_TO_POINTER (sqlite3_column_int (stmt, SEARCH_ID));

    if (gathering->hits->len < gathering->max && g_hash_table_add (gathering->seen, id))
      g_ptr_array_add (gathering->hits, read_hit (stmt));
  }
  if (rc != SQLITE_DONE)
    set_damaged (error, sqlite3_errmsg (self->db));
  sqlite3_reset (stmt);
  sqlite3_clear_bindings (stmt);
  return rc == SQLITE_DONE;
}

/* The matches of every reading, the strictest first; each reading has its part of the room. */
static gboolean
gather (FmFoodStore *self, GPtrArray *readings, guint max, Gathering *gathering, GError **error)
{
  const guint before = gathering->hits->len;

  for (guint i = 0; i < readings->len; i++) {
    const char *const *words = g_ptr_array_index (readings, i);

    gathering->max = before + max * (i + 1) / readings->len;
    for (guint match = 0; match < FM_N_FOOD_MATCHES; match++) {
      g_autofree char *query = fm_food_query_build (words, (FmFoodMatch)match);
      g_autoptr (GMutexLocker) locker = g_mutex_locker_new (&self->mutex);

      if (gathering->hits->len >= gathering->max)
        break;
      if (query != NULL && !collect (self, query, gathering, error))
        return FALSE;
    }
  }
  return TRUE;
}

static gboolean
gather_all (FmFoodStore *self, GPtrArray *readings, guint max, Gathering *gathering, GError **error)
{
  guint n_fresh;

  gathering->from = 1;
  gathering->to = self->first_ready - 1;
  if (!gather (self, readings, max, gathering, error))
    return FALSE;
  n_fresh = gathering->hits->len;
  gathering->from = self->first_ready;
  gathering->to = (int)self->n_foods;
  if (!gather (self, readings, max, gathering, error))
    return FALSE;
  for (guint i = n_fresh; i < gathering->hits->len; i++)
    ((FmFoodHit *)g_ptr_array_index (gathering->hits, i))->is_ready_made = TRUE;
  return TRUE;
}

/* How the text was read, when that is not as it was typed. */
static char *
describe_reading (GPtrArray *readings, const char *const *typed)
{
  g_autofree char *typed_text = g_strjoinv (" ", (char **)typed);
  g_autofree char *plain = fm_spelling_fold (typed_text);
  g_autoptr (GString) text = g_string_new (NULL);

  for (guint i = 0; i < readings->len; i++) {
    g_autofree char *read = g_strjoinv (" ", g_ptr_array_index (readings, i));

    if (!g_str_equal (plain, read))
      g_string_append_printf (text, "%s%s", text->len > 0 ? ", " : "", read);
  }
  return text->len > 0 ? g_string_free (g_steal_pointer (&text), FALSE) : NULL;
}

static FmFood *
read_food (sqlite3_stmt *stmt, const char *ndb_no)
{
  FmFood *food = fm_food_new (ndb_no, (const char *)sqlite3_column_text (stmt, GET_NAME),
                              (const char *)sqlite3_column_text (stmt, GET_ORIGINAL));

  food->is_raw = sqlite3_column_int (stmt, GET_IS_RAW) != 0;
  food->refuse_pct = column_amount (stmt, GET_REFUSE);
  food->household_weights[0].mass_g = column_amount (stmt, GET_WEIGHT_1_G);
  food->household_weights[0].description = column_text (stmt, GET_WEIGHT_1);
  food->household_weights[1].mass_g = column_amount (stmt, GET_WEIGHT_2_G);
  food->household_weights[1].description = column_text (stmt, GET_WEIGHT_2);
  for (int i = 0; i < FM_N_NUTRIENTS; i++)
    food->composition.per_100g[i] = column_amount (stmt, GET_FIRST_NUTRIENT + i);
  return food;
}

char *
fm_food_store_default_path (void)
{
  const char *chosen = g_getenv ("FORCEMEAT_FOOD_DB");
  g_autofree char *installed = g_build_filename (PKGDATADIR, FILE_NAME, NULL);

  if (chosen != NULL && *chosen != '\0')
    return g_strdup (chosen);
  if (g_file_test (installed, G_FILE_TEST_EXISTS))
    return g_steal_pointer (&installed);
  return g_build_filename (BUILD_DATADIR, FILE_NAME, NULL);
}

FmFoodStore *
fm_food_store_default (GError **error)
{
  static GMutex mutex;
  static FmFoodStore *store;
  g_autoptr (GMutexLocker) locker = g_mutex_locker_new (&mutex);
  g_autofree char *path = NULL;

  if (store == NULL) {
    path = fm_food_store_default_path ();
    store = fm_food_store_open (path, error);
  }
  return store != NULL ? fm_food_store_ref (store) : NULL;
}

FmFoodStore *
fm_food_store_open (const char *path, GError **error)
{
  g_autoptr (FmFoodStore) self = NULL;
  g_autofree char *get_sql = build_get_sql ();

  g_return_val_if_fail (path != NULL, NULL);

  fm_store_check_thread ();
  self = g_new0 (FmFoodStore, 1);
  g_atomic_ref_count_init (&self->ref_count);
  g_mutex_init (&self->mutex);
  if (!open_file (self, path, error) || !check_file (self, error) ||
      !prepare (self, search_sql, &self->search, error) ||
      !prepare (self, get_sql, &self->get, error))
    return NULL;
  return g_steal_pointer (&self);
}

FmFoodStore *
fm_food_store_ref (FmFoodStore *self)
{
  g_return_val_if_fail (self != NULL, NULL);

  g_atomic_ref_count_inc (&self->ref_count);
  return self;
}

void
fm_food_store_unref (FmFoodStore *self)
{
  g_return_if_fail (self != NULL);

  if (!g_atomic_ref_count_dec (&self->ref_count))
    return;
  sqlite3_finalize (self->search);
  sqlite3_finalize (self->get);
  fm_food_words_free (self->words);
  sqlite3_close (self->db);
  g_mutex_clear (&self->mutex);
  g_free (self);
}

guint
fm_food_store_n_foods (FmFoodStore *self)
{
  g_return_val_if_fail (self != NULL, 0);

  return self->n_foods;
}

GPtrArray *
fm_food_store_search (
    FmFoodStore *self, const char *text, guint max, char **read_as, GError **error)
{
  g_autoptr (GPtrArray) hits = g_ptr_array_new_with_free_func (hit_destroy);
  g_autoptr (GHashTable) seen = g_hash_table_new (NULL, NULL);
  g_autoptr (GPtrArray) readings = NULL;
  g_auto (GStrv) words = NULL;
  Gathering gathering = { .hits = hits, .seen = seen };

  g_return_val_if_fail (self != NULL && text != NULL, NULL);
  g_return_val_if_fail (read_as == NULL || *read_as == NULL, NULL);

  fm_store_check_thread ();
  words = fm_food_query_words (text);
  if (words[0] == NULL)
    return g_steal_pointer (&hits);
  readings = fm_food_words_read (self->words, (const char *const *)words);
  if (!gather_all (self, readings, max, &gathering, error))
    return NULL;
  if (hits->len == 0) {
    g_ptr_array_unref (readings);
    readings = fm_food_words_guess (self->words, (const char *const *)words);
    if (!gather_all (self, readings, max, &gathering, error))
      return NULL;
  }
  if (read_as != NULL && hits->len > 0)
    *read_as = describe_reading (readings, (const char *const *)words);
  return g_steal_pointer (&hits);
}

FmFood *
fm_food_store_get (FmFoodStore *self, const char *ndb_no, GError **error)
{
  g_autoptr (GMutexLocker) locker = NULL;
  FmFood *food = NULL;
  int rc;

  g_return_val_if_fail (self != NULL && ndb_no != NULL, NULL);

  fm_store_check_thread ();
  locker = g_mutex_locker_new (&self->mutex);
  sqlite3_bind_text (self->get, 1, ndb_no, -1, SQLITE_TRANSIENT);
  rc = sqlite3_step (self->get);
  if (rc == SQLITE_ROW)
    food = read_food (self->get, ndb_no);
  else if (rc == SQLITE_DONE)
    g_set_error (error, FM_STORE_ERROR, FM_STORE_ERROR_NOT_FOUND,
                 _ ("The food composition data hold no food with the number “%s”."), ndb_no);
  else
    set_damaged (error, sqlite3_errmsg (self->db));
  sqlite3_reset (self->get);
  sqlite3_clear_bindings (self->get);
  return food;
}

void
fm_food_hit_free (FmFoodHit *self)
{
  if (self == NULL)
    return;
  g_free (self->ndb_no);
  g_free (self->name);
  g_free (self->original_name);
  g_free (self);
}
