/* SPDX-FileCopyrightText: 2026 the Forcemeat developers
 * SPDX-License-Identifier: GPL-3.0-or-later */
/* fm-search.c - one search over all that a notebook holds */
#include "store/fm-search.h"

#include "core/composition/fm-short-name.h"
#include "store/notebook/fm-db.h"

/* Nobody looks for more words at once. */
#define MAX_WORDS 8

/* One row that a statement found: its numbers, and the texts that words may stand in. */
enum {
  COLUMN_ID,
  COLUMN_BLEND_ID,
  COLUMN_VERSION_ID,
  COLUMN_EXPERIMENT_ID,
  COLUMN_NUMBER,
  COLUMN_AT,
  COLUMN_BLEND_NAME,
  COLUMN_TITLE,
  COLUMN_TEXT, /* and those behind it */
};

typedef struct {
  FmReader *db;
  GCancellable *cancellable;
  const char *text;
  GStrv words;
  guint n_max;
  FmSearchResult *result;
} Search;

/* Ingredients of a formula, a line each: the name of the dataset, a tab, what the cook calls it. */
#define INGREDIENTS_SQL(row)                                                                       \
  "(SELECT group_concat(json_extract(l.value, '$.ingredient.name') || char(9) ||"                  \
  " coalesce(n.name, ''), char(10)) FROM json_each(" row ".formula_json, '$.lines') l"             \
  " LEFT JOIN ingredient_names n ON n.ingredient ="                                                \
  " json_extract(l.value, '$.ingredient.source_ref'))"

static const char blends_sql[] = "SELECT id, id, 0, 0, 0, 0, name, name FROM blends"
                                 " ORDER BY name COLLATE NOCASE, id";

static const char drafts_sql[] =
    "SELECT d.blend_id, d.blend_id, 0, 0, 0, 0, b.name, NULL,"
    " json_extract(d.formula_json, '$.brief.notes'), " INGREDIENTS_SQL (
        "d") " FROM drafts d JOIN blends b ON b.id = d.blend_id"
             " WHERE d.changed AND json_valid(d.formula_json)"
             " ORDER BY d.saved_at DESC";

static const char versions_sql[] =
    "SELECT v.id, v.blend_id, v.id, 0, v.number, 0, b.name, v.reason,"
    " json_extract(v.formula_json, '$.brief.notes'), " INGREDIENTS_SQL (
        "v") ","
             " (SELECT group_concat(DISTINCT e.surface) FROM experiments e WHERE e.version_id = "
             "v.id)"
             " FROM versions v JOIN blends b ON b.id = v.blend_id WHERE json_valid(v.formula_json)"
             " ORDER BY v.saved_at DESC, v.id DESC";

static const char experiments_sql[] =
    "SELECT e.id, e.blend_id, e.version_id, e.id, v.number, e.made_at, b.name, e.title, e.surface,"
    " e.notes FROM experiments e JOIN versions v ON v.id = e.version_id"
    " JOIN blends b ON b.id = e.blend_id WHERE 1";

static const char photos_sql[] =
    "SELECT p.id, e.blend_id, e.version_id, e.id, v.number, e.made_at, b.name, p.caption"
    " FROM photos p JOIN experiments e ON e.id = p.experiment_id"
    " JOIN versions v ON v.id = e.version_id JOIN blends b ON b.id = e.blend_id"
    " WHERE p.caption IS NOT NULL AND p.caption <> '' ORDER BY p.id DESC";

static const char tastings_sql[] =
    "SELECT t.id, 0, 0, 0, 0, t.held_at, NULL, t.title, t.notes,"
    " (SELECT group_concat(r.remark, char(10)) FROM tasting_remarks r WHERE r.tasting_id = t.id),"
    " (SELECT group_concat(v.remark, char(10)) FROM tasting_events v WHERE v.tasting_id = t.id)"
    " FROM tastings t ORDER BY t.held_at DESC, t.id DESC";

static const char own_entries_sql[] = "SELECT 0, 0, 0, 0, 0, 0, NULL, name FROM ingredients"
                                      " ORDER BY name COLLATE NOCASE, id";

static void
found_free (gpointer data)
{
  FmFound *found = data;

  g_free (found->blend_name);
  g_free (found->title);
  g_free (found->text);
  g_free (found);
}

static gboolean
says_all (const Search *search, const char *text)
{
  return text != NULL && g_str_match_string (search->text, text, TRUE);
}

/* What a formula's line shows of an ingredient; both of its names are looked in. */
static char *
name_ingredients (const char *listed)
{
  g_auto (GStrv) lines = g_strsplit (listed, "\n", -1);
  g_autoptr (GString) names = g_string_new (NULL);

  for (guint i = 0; lines[i] != NULL; i++) {
    g_auto (GStrv) pair = g_strsplit (lines[i], "\t", 2);
    g_autofree char *ruled = pair[0] != NULL ? fm_short_name (pair[0]) : NULL;
    const char *shown = pair[0] != NULL && pair[1] != NULL && pair[1][0] != '\0' ? pair[1] : ruled;

    if (shown != NULL)
      g_string_append_printf (names, "%s%s", names->len > 0 ? ", " : "", shown);
  }
  return g_string_free (g_steal_pointer (&names), FALSE);
}

static gboolean
has_ingredients (FmFoundKind kind, int column)
{
  return (kind == FM_FOUND_VERSION || kind == FM_FOUND_DRAFT) && column == COLUMN_TEXT + 1;
}

/* The text that says all words, else the first that says anything; NULL when it is the title. */
static char *
telling_text (const Search *search, FmStmt *stmt, FmFoundKind kind)
{
  const int n_columns = sqlite3_column_count (stmt);
  g_autofree char *title = fm_stmt_text (stmt, COLUMN_TITLE);

  if (says_all (search, title))
    return NULL;
  for (int column = COLUMN_TEXT; column < n_columns; column++) {
    g_autofree char *text = fm_stmt_text (stmt, column);
    g_autofree char *shown =
        text != NULL && has_ingredients (kind, column) ? name_ingredients (text) : NULL;

    if (says_all (search, text) || says_all (search, shown))
      return shown != NULL ? g_steal_pointer (&shown) : g_steal_pointer (&text);
  }
  for (int column = COLUMN_TEXT; column < n_columns; column++) {
    g_autofree char *text = fm_stmt_text (stmt, column);

    if (text != NULL && text[0] != '\0')
      return has_ingredients (kind, column) ? name_ingredients (text) : g_steal_pointer (&text);
  }
  return NULL;
}

/* The words may stand in several texts of one row. */
static gboolean
row_says_all (const Search *search, FmStmt *stmt, FmFoundKind kind)
{
  g_autoptr (GString) all = g_string_new (NULL);

  for (int column = COLUMN_TITLE; column < sqlite3_column_count (stmt); column++) {
    g_autofree char *text = fm_stmt_text (stmt, column);
    g_autofree char *shown =
        text != NULL && has_ingredients (kind, column) ? name_ingredients (text) : NULL;

    g_string_append_printf (all, "%s\n%s\n", text != NULL ? text : "", shown != NULL ? shown : "");
  }
  return says_all (search, all->str);
}

static FmFound *
read_found (const Search *search, FmStmt *stmt, FmFoundKind kind)
{
  FmFound *found = g_new0 (FmFound, 1);

  found->kind = kind;
  found->id = fm_stmt_int (stmt, COLUMN_ID);
  found->blend_id = fm_stmt_int (stmt, COLUMN_BLEND_ID);
  found->version_id = fm_stmt_int (stmt, COLUMN_VERSION_ID);
  found->experiment_id = fm_stmt_int (stmt, COLUMN_EXPERIMENT_ID);
  found->version_number = (int)CLAMP (fm_stmt_int (stmt, COLUMN_NUMBER), 0, G_MAXINT);
  found->at = fm_stmt_int (stmt, COLUMN_AT);
  found->blend_name = fm_stmt_text (stmt, COLUMN_BLEND_NAME);
  found->title = fm_stmt_text (stmt, COLUMN_TITLE);
  found->text = telling_text (search, stmt, kind);
  return found;
}

/* @is_narrowed: the statement gives only what says all words. */
static gboolean
take_rows (Search *search, FmStmt *stmt, FmFoundKind kind, gboolean is_narrowed, GError **error)
{
  FmStep step = FM_DONE;
  guint n_found = 0;

  while ((step = fm_stmt_step (search->db, stmt, error)) == FM_ROW) {
    if (g_cancellable_set_error_if_cancelled (search->cancellable, error))
      return FALSE;
    if (!is_narrowed && !row_says_all (search, stmt, kind))
      continue;
    if (n_found == search->n_max) {
      search->result->is_cut[kind] = TRUE;
      return TRUE;
    }
    g_ptr_array_add (search->result->found, read_found (search, stmt, kind));
    n_found++;
  }
  return step == FM_DONE;
}

static gboolean
find_rows (Search *search, FmFoundKind kind, const char *sql, GError **error)
{
  g_autoptr (FmStmt) stmt = fm_db_prepare (search->db, sql, error);

  return stmt != NULL && take_rows (search, stmt, kind, FALSE, error);
}

static char *
escape_like (const char *word)
{
  g_autoptr (GString) pattern = g_string_new ("%");

  for (const char *p = word; *p != '\0'; p++) {
    if (strchr ("%_\\", *p) != NULL)
      g_string_append_c (pattern, '\\');
    g_string_append_c (pattern, *p);
  }
  g_string_append_c (pattern, '%');
  return g_string_free (g_steal_pointer (&pattern), FALSE);
}

/* A log may be long: titles, notes and surfaces have an index, and it is gone through from its
 * newest experiment until enough are found (25 to 130 ms for 100,000 experiments). */
static gboolean
find_experiments (Search *search, GError **error)
{
  g_autoptr (GString) sql = g_string_new (experiments_sql);
  g_autoptr (FmStmt) stmt = NULL;
  const guint n_words = g_strv_length (search->words);

  for (guint i = 0; i < n_words; i++)
    g_string_append_printf (
        sql,
        " AND (+e.id IN (SELECT rowid FROM experiments_fts WHERE experiments_fts"
        " MATCH ?%u) OR +e.id IN (SELECT id FROM experiments WHERE surface LIKE"
        " ?%u ESCAPE '\\'))",
        2 * i + 1, 2 * i + 2);
  g_string_append_printf (sql, " ORDER BY e.made_at DESC, e.id DESC LIMIT ?%u", 2 * n_words + 1);
  stmt = fm_db_prepare (search->db, sql->str, error);
  if (stmt == NULL)
    return FALSE;
  for (guint i = 0; i < n_words; i++) {
    g_autofree char *match = g_strdup_printf ("\"%s\"*", search->words[i]);
    g_autofree char *like = escape_like (search->words[i]);

    fm_stmt_bind_text (stmt, (int)(2 * i + 1), match);
    fm_stmt_bind_text (stmt, (int)(2 * i + 2), like);
  }
  fm_stmt_bind_int (stmt, (int)(2 * n_words + 1), (gint64)search->n_max + 1);
  return take_rows (search, stmt, FM_FOUND_EXPERIMENT, TRUE, error);
}

static gboolean
find_all (Search *search, GError **error)
{
  return find_rows (search, FM_FOUND_BLEND, blends_sql, error) &&
         find_rows (search, FM_FOUND_DRAFT, drafts_sql, error) &&
         find_rows (search, FM_FOUND_VERSION, versions_sql, error) &&
         find_experiments (search, error) &&
         find_rows (search, FM_FOUND_PHOTO, photos_sql, error) &&
         find_rows (search, FM_FOUND_TASTING, tastings_sql, error) &&
         find_rows (search, FM_FOUND_OWN_ENTRY, own_entries_sql, error);
}

/* What the search index takes as a letter of a word. */
static gboolean
is_word_char (gunichar c)
{
  return g_unichar_isalnum (c) || g_unichar_ismark (c);
}

GStrv
fm_search_words (const char *text, guint n_max)
{
  g_autofree char *valid = g_utf8_make_valid (text != NULL ? text : "", -1);
  g_autofree char *composed = g_utf8_normalize (valid, -1, G_NORMALIZE_NFC);
  g_autoptr (GStrvBuilder) words = g_strv_builder_new ();
  const char *p = composed;

  for (guint n = 0; *p != '\0' && n < n_max;) {
    const char *start = p;
    g_autofree char *word = NULL;

    while (*p != '\0' && is_word_char (g_utf8_get_char (p)))
      p = g_utf8_next_char (p);
    if (p == start) {
      p = g_utf8_next_char (p);
      continue;
    }
    word = g_strndup (start, p - start);
    g_strv_builder_add (words, word);
    n++;
  }
  return g_strv_builder_end (words);
}

FmSearchResult *
fm_search (
    FmNotebook *self, const char *text, guint n_max, GCancellable *cancellable, GError **error)
{
  g_auto (GStrv) words = fm_search_words (text, MAX_WORDS);
  g_autofree char *wanted = g_strjoinv (" ", words);
  g_autoptr (FmSearchResult) result = g_new0 (FmSearchResult, 1);
  g_autoptr (FmReader) db = NULL;

  g_return_val_if_fail (self != NULL && n_max > 0, NULL);
  result->found = g_ptr_array_new_with_free_func (found_free);
  if (words[0] == NULL)
    return g_steal_pointer (&result);
  db = fm_notebook_reader (self, cancellable, error);
  if (db == NULL)
    return NULL;
  Search search = { db, cancellable, wanted, words, n_max, result };
  return find_all (&search, error) ? g_steal_pointer (&result) : NULL;
}

void
fm_search_result_free (FmSearchResult *result)
{
  if (result == NULL)
    return;
  g_ptr_array_unref (result->found);
  g_free (result);
}
