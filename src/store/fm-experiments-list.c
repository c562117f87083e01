/* SPDX-FileCopyrightText: 2026 the Forcemeat developers
 * SPDX-License-Identifier: GPL-3.0-or-later */
/* fm-experiments-list.c - the log: filter, full-text search and order */
#include "store/fm-experiments.h"

#include <glib/gi18n-lib.h>
#include <math.h>

#include "store/fm-search.h"
#include "store/notebook/fm-db.h"

/* Nobody narrows a log by more words; the full-text parser has a limit of its own. */
#define MAX_TERMS 32

/* Each word in quotes with a star, all of them wanted: whatever is typed is legal. NULL when the
 * text holds no word, which then filters nothing. */
static char *
match_expression (const char *text)
{
  g_auto (GStrv) words = fm_search_words (text, MAX_TERMS);
  g_autofree char *joined = g_strjoinv ("\"* \"", words);

  return words[0] != NULL ? g_strdup_printf ("\"%s\"*", joined) : NULL;
}

/* What is not known comes last in both directions; ties fall back to the newest first. */
static const char *
order_clause (FmExperimentSort sort, gboolean descending)
{
  static const char *const clauses[][2] = {
    [FM_EXPERIMENT_SORT_DATE] = { " ORDER BY e.made_at, e.id",
                                  " ORDER BY e.made_at DESC, e.id DESC" },
    [FM_EXPERIMENT_SORT_RATING] = { " ORDER BY nullif(e.rating, 0) NULLS LAST,"
                                    " e.made_at DESC, e.id DESC",
                                    " ORDER BY e.rating DESC, e.made_at DESC, e.id DESC" },
    [FM_EXPERIMENT_SORT_COOK_LOSS] = { " ORDER BY e.cook_loss_pct NULLS LAST,"
                                       " e.made_at DESC, e.id DESC",
                                       " ORDER BY e.cook_loss_pct DESC NULLS LAST,"
                                       " e.made_at DESC, e.id DESC" },
    [FM_EXPERIMENT_SORT_FAT] = { " ORDER BY e.fat_pct NULLS LAST, e.made_at DESC, e.id DESC",
                                 " ORDER BY e.fat_pct DESC NULLS LAST,"
                                 " e.made_at DESC, e.id DESC" },
    [FM_EXPERIMENT_SORT_BLEND] = { " ORDER BY b.name COLLATE NOCASE, v.number,"
                                   " e.made_at DESC, e.id DESC",
                                   " ORDER BY b.name COLLATE NOCASE DESC, v.number DESC,"
                                   " e.made_at DESC, e.id DESC" },
  };

  g_return_val_if_fail ((guint)sort < G_N_ELEMENTS (clauses), clauses[0][1]);
  return clauses[sort][descending ? 1 : 0];
}

/* Only the clauses in use, so that the planner can pick an index for them. Values are bound. */
static char *
list_sql (const FmExperimentFilter *filter, gboolean with_text)
{
  GString *sql = g_string_new (
      "SELECT e.id, e.version_id, e.blend_id, v.number, b.name, e.title, e.made_at, e.fat_pct,"
      " e.mean_raw_g, e.cook_loss_pct, e.peak_core_c, e.rating, e.n_photos,"
      " CASE WHEN e.n_photos > 0"
      " THEN (SELECT min(p.id) FROM photos p WHERE p.experiment_id = e.id) END"
      " FROM experiments e JOIN versions v ON v.id = e.version_id JOIN blends b ON b.id = "
      "e.blend_id"
      " WHERE 1");

  if (filter->only_id != 0)
    g_string_append (sql, " AND e.id = :only");
  if (filter->blend_id != 0)
    g_string_append (sql, " AND e.blend_id = :blend");
  if (filter->version_id != 0)
    g_string_append (sql, " AND e.version_id = :version");
  if (filter->from != 0)
    g_string_append (sql, " AND e.made_at >= :from");
  if (filter->to != 0)
    g_string_append (sql, " AND e.made_at < :to");
  if (filter->min_rating > 0)
    g_string_append (sql, " AND e.rating >= :rating");
  if (filter->with_photos)
    g_string_append (sql, " AND e.n_photos > 0");
  if (with_text)
    g_string_append (
        sql, " AND e.id IN (SELECT rowid FROM experiments_fts WHERE experiments_fts MATCH :text)");
  g_string_append (sql, order_clause (filter->sort, filter->descending));
  return g_string_free (sql, FALSE);
}

static void
bind_named (FmStmt *stmt, const char *name, gint64 value)
{
  int index = sqlite3_bind_parameter_index (stmt, name);

  if (index > 0)
    fm_stmt_bind_int (stmt, index, value);
}

static void
bind_filter (FmStmt *stmt, const FmExperimentFilter *filter, const char *match)
{
  bind_named (stmt, ":only", filter->only_id);
  bind_named (stmt, ":blend", filter->blend_id);
  bind_named (stmt, ":version", filter->version_id);
  bind_named (stmt, ":from", filter->from);
  bind_named (stmt, ":to", filter->to);
  bind_named (stmt, ":rating", filter->min_rating);
  if (match != NULL)
    fm_stmt_bind_text (stmt, sqlite3_bind_parameter_index (stmt, ":text"), match);
}

static FmExperimentInfo *
read_info (FmStmt *stmt)
{
  FmExperimentInfo *info = g_new0 (FmExperimentInfo, 1);

  info->id = fm_stmt_int (stmt, 0);
  info->version_id = fm_stmt_int (stmt, 1);
  info->blend_id = fm_stmt_int (stmt, 2);
  info->version_number = (int)CLAMP (fm_stmt_int (stmt, 3), 0, G_MAXINT);
  info->blend_name = fm_stmt_text (stmt, 4);
  info->title = fm_stmt_text (stmt, 5);
  info->made_at = fm_stmt_int (stmt, 6);
  info->fat_pct = fm_stmt_double (stmt, 7);
  info->mean_raw_g = fm_stmt_double (stmt, 8);
  info->cook_loss_pct = fm_stmt_double (stmt, 9);
  info->peak_core_c = fm_stmt_double (stmt, 10);
  info->rating = (int)CLAMP (fm_stmt_int (stmt, 11), 0, 10);
  info->n_photos = (guint)CLAMP (fm_stmt_int (stmt, 12), 0, G_MAXINT);
  info->first_photo_id = fm_stmt_int (stmt, 13);
  return info;
}

static gboolean
read_rows (FmReader *db,
           const FmExperimentFilter *filter,
           GCancellable *cancellable,
           GPtrArray *infos,
           GError **error)
{
  g_autofree char *match = match_expression (filter->text);
  g_autofree char *sql = list_sql (filter, match != NULL);
  g_autoptr (FmStmt) stmt = fm_db_prepare (db, sql, error);
  FmStep step = FM_FAILED;

  if (stmt == NULL)
    return FALSE;
  bind_filter (stmt, filter, match);
  while ((step = fm_stmt_step (db, stmt, error)) == FM_ROW) {
    if (g_cancellable_set_error_if_cancelled (cancellable, error))
      return FALSE;
    g_ptr_array_add (infos, read_info (stmt));
  }
  return step == FM_DONE;
}

GPtrArray *
fm_experiments_list (FmNotebook *self,
                     const FmExperimentFilter *filter,
                     GCancellable *cancellable,
                     GError **error)
{
  static const FmExperimentFilter newest_first = { .sort = FM_EXPERIMENT_SORT_DATE,
                                                   .descending = TRUE };
  g_autoptr (GPtrArray) infos =
      g_ptr_array_new_with_free_func ((GDestroyNotify)fm_experiment_info_free);

  if (g_cancellable_set_error_if_cancelled (cancellable, error))
    return NULL;
  g_autoptr (FmReader) db = fm_notebook_reader (self, cancellable, error);
  if (db == NULL ||
      !read_rows (db, filter != NULL ? filter : &newest_first, cancellable, infos, error))
    return NULL;
  return g_steal_pointer (&infos);
}

static int
compare_ids (gint64 a, gint64 b)
{
  return a < b ? -1 : a > b;
}

/* What is not known comes last in both directions. */
static int
compare_known (double a, double b, gboolean descending)
{
  if (isnan (a) || isnan (b))
    return isnan (a) - isnan (b);
  if (a == b)
    return 0;
  return (a < b) != descending ? -1 : 1;
}

static int
compare_blends (const FmExperimentInfo *a, const FmExperimentInfo *b)
{
  const int by_name = g_ascii_strcasecmp (a->blend_name != NULL ? a->blend_name : "",
                                          b->blend_name != NULL ? b->blend_name : "");

  return by_name != 0 ? by_name : a->version_number - b->version_number;
}

static double
known_rating (const FmExperimentInfo *info)
{
  return info->rating > 0 ? info->rating : (double)NAN;
}

/* As order_clause(). */
int
fm_experiments_compare (const FmExperimentInfo *a,
                        const FmExperimentInfo *b,
                        const FmExperimentFilter *filter)
{
  const int sign = filter->descending ? -1 : 1;
  const int by_date = compare_ids (a->made_at, b->made_at);
  const int by_age = by_date != 0 ? by_date : compare_ids (a->id, b->id);
  int order = 0;

  switch (filter->sort) {
  case FM_EXPERIMENT_SORT_DATE:
    return sign * by_age;
  case FM_EXPERIMENT_SORT_RATING:
    order = compare_known (known_rating (a), known_rating (b), filter->descending);
    break;
  case FM_EXPERIMENT_SORT_COOK_LOSS:
    order = compare_known (a->cook_loss_pct, b->cook_loss_pct, filter->descending);
    break;
  case FM_EXPERIMENT_SORT_FAT:
    order = compare_known (a->fat_pct, b->fat_pct, filter->descending);
    break;
  case FM_EXPERIMENT_SORT_BLEND:
    order = sign * compare_blends (a, b);
    break;
  }
  return order != 0 ? order : -by_age;
}
