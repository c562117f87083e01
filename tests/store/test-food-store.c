/* SPDX-FileCopyrightText: 2026 the Forcemeat developers
 * SPDX-License-Identifier: GPL-3.0-or-later */
/* test-food-store.c - the compiled dataset says what the table says, and is found by its words */
#include "store/fm-food-store.h"

#include <glib/gstdio.h>
#include <math.h>
#include <string.h>

#include "core/composition/fm-slip.h"
#include "store/notebook/fm-notebook.h"

#define N_FOODS 8790
#define DB_PATH BUILDDIR "/data/sr28.db"
#define TABLE_PATH SRCDIR "/data/sr28/foods.tsv"
#define TRADE_PATH SRCDIR "/data/sr28/trade-words.tsv"

static FmFoodStore *
open_store (void)
{
  g_autoptr (GError) error = NULL;
  FmFoodStore *store = fm_food_store_open (DB_PATH, &error);

  g_assert_no_error (error);
  return store;
}

static GPtrArray *
search (FmFoodStore *store, const char *text, guint max)
{
  g_autoptr (GError) error = NULL;
  GPtrArray *hits = fm_food_store_search (store, text, max, NULL, &error);

  g_assert_no_error (error);
  g_assert_nonnull (hits);
  g_assert_cmpuint (hits->len, <=, 2 * max);
  return hits;
}

static const FmFoodHit *
hit_at (GPtrArray *hits, guint index)
{
  g_assert_cmpuint (index, <, hits->len);
  return g_ptr_array_index (hits, index);
}

static void
assert_cell (const char *cell, double value)
{
  if (*cell == '\0')
    g_assert_true (isnan (value));
  else
    g_assert_cmpfloat (g_ascii_strtod (cell, NULL), ==, value);
}

static void
assert_text_cell (const char *cell, const char *text)
{
  if (*cell == '\0')
    g_assert_null (text);
  else
    g_assert_cmpstr (cell, ==, text);
}

static void
assert_row (FmFoodStore *store, const char *line)
{
  g_auto (GStrv) cells = g_strsplit (line, "\t", -1);
  g_autoptr (GError) error = NULL;
  g_autoptr (FmFood) food = fm_food_store_get (store, cells[0], &error);
  char **after = cells + 2 + FM_N_NUTRIENTS;

  g_assert_no_error (error);
  g_assert_cmpuint (g_strv_length (cells), ==, 2 + FM_N_NUTRIENTS + 5);
  g_assert_cmpstr (food->ndb_no, ==, cells[0]);
  g_assert_cmpstr (food->original_name, ==, cells[1]);
  for (int i = 0; i < FM_N_NUTRIENTS; i++) {
    const gboolean dropped = i == FM_NUTRIENT_PROTEIN && fm_slip_protein_is_dropped (cells[0]);

    assert_cell (dropped ? "" : cells[2 + i], food->composition.per_100g[i]);
  }
  assert_cell (after[0], food->household_weights[0].mass_g);
  assert_text_cell (after[1], food->household_weights[0].description);
  assert_cell (after[2], food->household_weights[1].mass_g);
  assert_text_cell (after[3], food->household_weights[1].description);
  assert_cell (after[4], food->refuse_pct);
}

static void
test_every_cell (void)
{
  g_autoptr (FmFoodStore) store = open_store ();
  g_autofree char *table = NULL;
  g_auto (GStrv) lines = NULL;
  guint n_rows = 0;

  g_assert_true (g_file_get_contents (TABLE_PATH, &table, NULL, NULL));
  lines = g_strsplit (table, "\n", -1);
  for (guint i = 1; lines[i] != NULL && *lines[i] != '\0'; i++, n_rows++)
    assert_row (store, lines[i]);
  g_assert_cmpuint (n_rows, ==, N_FOODS);
  g_assert_cmpuint (fm_food_store_n_foods (store), ==, N_FOODS);
}

static void
test_header (void)
{
  g_autofree char *table = NULL;
  g_auto (GStrv) lines = NULL;
  g_auto (GStrv) columns = NULL;

  g_assert_true (g_file_get_contents (TABLE_PATH, &table, NULL, NULL));
  lines = g_strsplit (table, "\n", 2);
  columns = g_strsplit (lines[0], "\t", -1);
  for (int i = 0; i < FM_N_NUTRIENTS; i++)
    g_assert_cmpstr (columns[2 + i], ==, fm_nutrient_info ((FmNutrient)i)->key);
}

static void
test_readable_names (void)
{
  static const char *const cases[][2] = {
    { "23572", "Beef, ground, 80/20 (80% lean, 20% fat), raw" },
    { "23472", "Beef, ground, 93/7 (93% lean, 7% fat), raw" },
    { "23067",
      "Beef, chuck, short ribs, boneless, lean, trimmed to 0 inch fat, select grade, raw" },
    { "13147", "Beef, rib, short ribs, lean and fat, choice grade, raw" },
    { "13439", "Beef, loin, tenderloin steak, boneless, lean and fat, trimmed to 0 inch fat, all "
               "grades, cooked, grilled" },
    { "13411",
      "Beef, bottom round, roast, lean only, trimmed to 0 inch fat, choice grade, roasted" },
    { "13809",
      "Beef, chuck, arm pot roast, lean and fat, trimmed to 1/8 inch fat, all grades, raw" },
    { "17385", "Lamb, New Zealand, imported, tenderloin, lean, raw" },
    { "10060", "Pork, fresh, loin, tenderloin, lean only, raw" },
    { "10858", "Pork, fresh, loin, top loin (chops), boneless, lean, with added solution, cooked, "
               "pan-broiled" },
    { "05096", "Chicken, broilers or fryers, dark meat, thigh, meat only, raw" },
    { "10804", "USDA commodity, pork, cured, ham, boneless, cooked, unheated" },
    { "23000", "Beef, shoulder pot roast or steak, boneless, lean and fat, trimmed to 0 inch fat, "
               "all grades, R" },
  };
  g_autoptr (FmFoodStore) store = open_store ();

  for (guint i = 0; i < G_N_ELEMENTS (cases); i++) {
    g_autoptr (FmFood) food = fm_food_store_get (store, cases[i][0], NULL);

    g_assert_cmpstr (food->name, ==, cases[i][1]);
  }
}

static void
test_first_hits (void)
{
  static const char *const cases[][2] = {
    { "ground beef 80", "23572" },
    { "80/20", "23572" },
    { "80 20", "23572" },
    { "beef 80% lean", "23572" },
    { "GROUND BEEF 80/20 RAW", "23572" },
    { "hamburger 80", "23572" },
    { "mince beef 85/15", "23567" },
    { "23572", "23572" },
    { "fatback", "10004" },
    { "suet", "13335" },
    { "salt", "02047" },
    { "bacon", "10123" },
    { "pork belly", "10005" },
    { "belly pork", "10005" },
    { "boston butt", "10080" },
    { "onion", "11282" },
    { "lamb mince", "17224" },
    { "back fat", "10004" },
    { "beef trim 80", "23572" },
    { "marrow", "35021" },
  };
  g_autoptr (FmFoodStore) store = open_store ();

  for (guint i = 0; i < G_N_ELEMENTS (cases); i++) {
    g_autoptr (GPtrArray) hits = search (store, cases[i][0], 20);

    g_assert_cmpstr (hit_at (hits, 0)->ndb_no, ==, cases[i][1]);
  }
}

static void
assert_all_hits_contain (FmFoodStore *store, const char *text, const char *const *parts)
{
  g_autoptr (GPtrArray) hits = search (store, text, 12);

  g_assert_cmpuint (hits->len, >=, 6);
  for (guint i = 0; i < hits->len; i++) {
    g_autofree char *name = g_utf8_strdown (hit_at (hits, i)->name, -1);

    for (guint j = 0; parts[j] != NULL; j++)
      g_assert_nonnull (strstr (name, parts[j]));
  }
  g_assert_true (hit_at (hits, 0)->is_raw);
}

static void
test_any_order_and_number (void)
{
  static const char *const texts[] = {
    "chuck short rib",   "short rib chuck", "CHUCK SHORT RIBS",
    "rib, short; chuck", "chuc shor ri",    "shortribs chuck",
  };
  static const char *const parts[] = { "chuck", "short ribs", NULL };
  g_autoptr (FmFoodStore) store = open_store ();

  for (guint i = 0; i < G_N_ELEMENTS (texts); i++)
    assert_all_hits_contain (store, texts[i], parts);
}

static void
test_raw_meat_first (void)
{
  static const char *const texts[] = {
    "beef", "pork", "bee", "chuck", "ground", "brisket", "veal"
  };
  g_autoptr (FmFoodStore) store = open_store ();

  for (guint i = 0; i < G_N_ELEMENTS (texts); i++) {
    g_autoptr (GPtrArray) hits = search (store, texts[i], 5);

    for (guint j = 0; j < hits->len && !hit_at (hits, j)->is_ready_made; j++)
      g_assert_true (hit_at (hits, j)->is_raw);
  }
}

/* Whatever is mistyped or in another language finds what the plain English word finds. */
static void
test_other_words (void)
{
  static const char *const pairs[][2] = {
    { "briskett", "brisket" },
    { "chcuk", "chuck" },
    { "tendreloin", "tenderloin" },
    { "grond beef 80", "ground beef 80" },
    { "Rinderbrust", "beef brisket" },
    { "rinderbrusst", "beef brisket" },
    { "Rückenspeck", "backfat" },
    { "ruckenspeck", "backfat" },
    { "plat de côtes", "beef short ribs" },
    { "échine", "boston butt" },
    { "costillas cortas", "beef short ribs" },
    { "aguja", "beef chuck" },
    { "चरबी", "suet" },
    { "rinderbr", "beef brisket" }, /* unfinished */
    { "plat de c", "beef short ribs" },
    { "kaleji", "liver" },
    { "नमक", "salt" },
  };
  g_autoptr (FmFoodStore) store = open_store ();

  for (guint i = 0; i < G_N_ELEMENTS (pairs); i++) {
    g_autofree char *read_as = NULL;
    g_autoptr (GPtrArray) found = fm_food_store_search (store, pairs[i][0], 9, &read_as, NULL);
    g_autoptr (GPtrArray) plain = search (store, pairs[i][1], 9);

    g_assert_nonnull (read_as);
    g_assert_true (g_str_has_prefix (read_as, pairs[i][1]));
    g_assert_cmpstr (hit_at (found, 0)->ndb_no, ==, hit_at (plain, 0)->ndb_no);
  }
}

static void
test_read_as_typed (void)
{
  static const char *const texts[] = { "brisket", "Ground Beef 80", "jalapeño", "80/20" };
  g_autoptr (FmFoodStore) store = open_store ();

  for (guint i = 0; i < G_N_ELEMENTS (texts); i++) {
    g_autofree char *read_as = NULL;
    g_autoptr (GPtrArray) hits = fm_food_store_search (store, texts[i], 3, &read_as, NULL);

    g_assert_cmpuint (hits->len, >, 0);
    g_assert_null (read_as);
  }
}

/* Every row of the reviewed table leads to a food that is not ready-made, and names its source. */
static void
test_trade_words (void)
{
  g_autoptr (FmFoodStore) store = open_store ();
  g_autofree char *table = NULL;
  g_auto (GStrv) lines = NULL;

  g_assert_true (g_file_get_contents (TRADE_PATH, &table, NULL, NULL));
  lines = g_strsplit (table, "\n", -1);
  for (guint i = 1; lines[i] != NULL && *lines[i] != '\0'; i++) {
    g_auto (GStrv) cells = g_strsplit (lines[i], "\t", -1);
    g_autoptr (GPtrArray) hits = NULL;

    g_assert_cmpuint (g_strv_length (cells), ==, 5);
    g_assert_cmpstr (cells[4], !=, "");
    hits = search (store, cells[1], 5);
    if (hits->len == 0 || hit_at (hits, 0)->is_ready_made)
      g_error ("“%s” finds no fresh food", cells[1]);
  }
}

static void
test_ready_made_last (void)
{
  static const char *const texts[] = { "beef",   "chuck",  "turkey", "chicken",
                                       "salmon", "ground", "bread",  "onion" };
  g_autoptr (FmFoodStore) store = open_store ();

  for (guint i = 0; i < G_N_ELEMENTS (texts); i++) {
    g_autoptr (GPtrArray) hits = search (store, texts[i], 30);
    gboolean ready = FALSE;

    for (guint j = 0; j < hits->len; j++) {
      g_assert_true (hit_at (hits, j)->is_ready_made >= ready);
      ready = hit_at (hits, j)->is_ready_made;
    }
    g_assert_true (ready);
    g_assert_false (hit_at (hits, 0)->is_ready_made);
  }
}

static void
test_no_row_twice (void)
{
  g_autoptr (FmFoodStore) store = open_store ();
  g_autoptr (GPtrArray) hits = search (store, "beef chuck", 400);
  g_autoptr (GHashTable) seen = g_hash_table_new (g_str_hash, g_str_equal);

  for (guint i = 0; i < hits->len; i++)
    g_assert_true (g_hash_table_add (seen, hit_at (hits, i)->ndb_no));
  g_assert_cmpuint (hits->len, >, 100);
}

static void
test_hostile_text (void)
{
  static const char *const texts[] = {
    "\"",
    "'",
    "*",
    "beef*",
    "\"beef",
    "beef\"\"",
    "(",
    ")",
    "(beef",
    "NEAR(",
    "NOT",
    "AND",
    "OR",
    "beef AND",
    "name:",
    "extra : x",
    "^beef",
    "-beef",
    "+",
    "{name}",
    "beef NOT fat",
    "%",
    "_",
    "\\",
    "a\nb",
    "';DROP TABLE food;--",
    "\xff\xfe",
    "\xc3(",
    "🥩",
    "肉",
    "1/8\"FAT",
    "0\" FAT",
    "zq",
    "80/20/80/20",
    "--",
    "/",
    "beef\tchuck",
    "Ⅷ",
    "½",
    "²",
  };
  g_autoptr (FmFoodStore) store = open_store ();

  for (guint i = 0; i < G_N_ELEMENTS (texts); i++) {
    g_autoptr (GPtrArray) hits = search (store, texts[i], 10);

    g_assert_nonnull (hits);
  }
}

static void
test_random_text (void)
{
  g_autoptr (FmFoodStore) store = open_store ();
  g_autoptr (GRand) rand = g_rand_new_with_seed (28);

  for (int i = 0; i < 500; i++) {
    char text[24];

    for (guint j = 0; j < sizeof text - 1; j++)
      text[j] = (char)g_rand_int_range (rand, 1, 256);
    text[sizeof text - 1] = '\0';
    g_ptr_array_unref (search (store, text, 5));
  }
}

static void
test_blank_text (void)
{
  g_autoptr (FmFoodStore) store = open_store ();
  g_autoptr (GPtrArray) blank = search (store, "  ", 10);
  g_autoptr (GPtrArray) nothing = search (store, "xylophone", 10);
  g_autoptr (GPtrArray) none_wanted = search (store, "beef", 0);

  g_assert_cmpuint (blank->len, ==, 0);
  g_assert_cmpuint (nothing->len, ==, 0);
  g_assert_cmpuint (none_wanted->len, ==, 0);
}

static void
test_unknown_number (void)
{
  static const char *const numbers[] = { "", "00000", "23572 ", "' OR 1", "beef" };
  g_autoptr (FmFoodStore) store = open_store ();

  for (guint i = 0; i < G_N_ELEMENTS (numbers); i++) {
    g_autoptr (GError) error = NULL;

    g_assert_null (fm_food_store_get (store, numbers[i], &error));
    g_assert_error (error, FM_STORE_ERROR, FM_STORE_ERROR_NOT_FOUND);
  }
}

static void
assert_open_fails (const char *path, FmStoreError code)
{
  g_autoptr (GError) error = NULL;
  FmFoodStore *store = fm_food_store_open (path, &error);

  g_assert_null (store);
  g_assert_error (error, FM_STORE_ERROR, (int)code);
}

static void
test_bad_files (void)
{
  g_autofree char *dir = g_dir_make_tmp ("fm-food-XXXXXX", NULL);
  g_autofree char *text = g_build_filename (dir, "text?#%.db", NULL);
  g_autofree char *cut = g_build_filename (dir, "cut.db", NULL);
  g_autofree char *empty = g_build_filename (dir, "empty.db", NULL);
  g_autofree char *whole = NULL;

  g_assert_true (g_file_get_contents (DB_PATH, &whole, NULL, NULL));
  g_assert_true (g_file_set_contents (text, "no database at all, only text", -1, NULL));
  g_assert_true (g_file_set_contents (cut, whole, 8192, NULL));
  g_assert_true (g_file_set_contents (empty, "", 0, NULL));
  assert_open_fails ("/nonexistent/sr28.db", FM_STORE_ERROR_NOT_FOUND);
  assert_open_fails (dir, FM_STORE_ERROR_DAMAGED);
  assert_open_fails (text, FM_STORE_ERROR_DAMAGED);
  assert_open_fails (cut, FM_STORE_ERROR_DAMAGED);
  assert_open_fails (empty, FM_STORE_ERROR_DAMAGED);
  g_remove (text);
  g_remove (cut);
  g_remove (empty);
  g_rmdir (dir);
}

static void
test_default_path (void)
{
  g_autofree char *chosen = NULL;
  g_autofree char *own = NULL;

  g_setenv ("FORCEMEAT_FOOD_DB", "/somewhere/else.db", TRUE);
  chosen = fm_food_store_default_path ();
  g_assert_cmpstr (chosen, ==, "/somewhere/else.db");
  g_unsetenv ("FORCEMEAT_FOOD_DB");
  own = fm_food_store_default_path ();
  g_assert_true (g_file_test (own, G_FILE_TEST_EXISTS));
}

static gpointer
search_often (gpointer data)
{
  FmFoodStore *store = data;

  for (int i = 0; i < 50; i++) {
    g_autoptr (GPtrArray) hits = search (store, "ground beef 80", 5);
    g_autoptr (FmFood) food = fm_food_store_get (store, "23572", NULL);

    g_assert_cmpstr (hit_at (hits, 0)->ndb_no, ==, "23572");
    g_assert_cmpfloat (food->composition.per_100g[FM_NUTRIENT_FAT], ==, 20.0);
  }
  fm_food_store_unref (store);
  return NULL;
}

static void
test_threads (void)
{
  g_autoptr (FmFoodStore) store = open_store ();
  GThread *threads[4];

  for (guint i = 0; i < G_N_ELEMENTS (threads); i++)
    threads[i] = g_thread_new ("search", search_often, fm_food_store_ref (store));
  for (guint i = 0; i < G_N_ELEMENTS (threads); i++)
    g_thread_join (threads[i]);
}

int
main (int argc, char *argv[])
{
  g_test_init (&argc, &argv, NULL);
  g_test_add_func ("/food-store/every-cell", test_every_cell);
  g_test_add_func ("/food-store/header", test_header);
  g_test_add_func ("/food-store/readable-names", test_readable_names);
  g_test_add_func ("/food-store/first-hits", test_first_hits);
  g_test_add_func ("/food-store/any-order-and-number", test_any_order_and_number);
  g_test_add_func ("/food-store/raw-meat-first", test_raw_meat_first);
  g_test_add_func ("/food-store/other-words", test_other_words);
  g_test_add_func ("/food-store/read-as-typed", test_read_as_typed);
  g_test_add_func ("/food-store/trade-words", test_trade_words);
  g_test_add_func ("/food-store/ready-made-last", test_ready_made_last);
  g_test_add_func ("/food-store/no-row-twice", test_no_row_twice);
  g_test_add_func ("/food-store/hostile-text", test_hostile_text);
  g_test_add_func ("/food-store/random-text", test_random_text);
  g_test_add_func ("/food-store/blank-text", test_blank_text);
  g_test_add_func ("/food-store/unknown-number", test_unknown_number);
  g_test_add_func ("/food-store/bad-files", test_bad_files);
  g_test_add_func ("/food-store/default-path", test_default_path);
  g_test_add_func ("/food-store/threads", test_threads);
  return g_test_run ();
}
