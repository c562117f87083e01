/* SPDX-FileCopyrightText: 2026 the Forcemeat developers
 * SPDX-License-Identifier: GPL-3.0-or-later */
/* fm-price-list.c - the prices of a notebook as a table for a spreadsheet, out and in */
#include "report/fm-price-list.h"

#include <glib/gi18n-lib.h>
#include <math.h>
#include <stdlib.h>
#include <string.h>

#include "core/base/fm-csv.h"
#include "core/base/fm-date.h"
#include "report/fm-csv-text.h"
#include "store/fm-prices.h"
#include "store/fm-versions.h"

#define BYTE_ORDER_MARK "\xef\xbb\xbf"
#define DECIMALS 4
#define MAX_PRICE_PER_KG 1e6
#define NDB_LENGTH 5

/* As in an exported file; never translated, so that any file is read anywhere. */
#define ID_COLUMN "id"
#define NAME_COLUMN "ingredient"
#define PRICE_COLUMN "price_per_kg"
#define DATE_COLUMN "noted_on"

static void
take_formula (GHashTable *found, const FmFormula *formula)
{
  for (guint i = 0; i < fm_formula_n_lines (formula); i++) {
    FmIngredient *ingredient = fm_formula_line (formula, i)->ingredient;
    const char *identity = fm_ingredient_identity (ingredient);

    if (!g_hash_table_contains (found, identity))
      g_hash_table_insert (found, g_strdup (identity), fm_ingredient_ref (ingredient));
  }
}

/* The draft first, then versions from the newest on: the first one found is how it is now. */
static gboolean
take_blend (GHashTable *found, FmNotebook *notebook, gint64 blend_id, GError **error)
{
  g_autoptr (FmFormula) draft = fm_draft_load (notebook, blend_id, NULL, error);
  g_autoptr (GPtrArray) versions =
      draft != NULL ? fm_versions_list (notebook, blend_id, error) : NULL;

  if (versions == NULL)
    return FALSE;
  take_formula (found, draft);
  for (guint i = versions->len; i > 0; i--) {
    const FmVersionInfo *version = g_ptr_array_index (versions, i - 1);
    g_autoptr (FmFormula) formula = fm_versions_load (notebook, version->id, error);

    if (formula == NULL)
      return FALSE;
    take_formula (found, formula);
  }
  return TRUE;
}

/* identity -> FmIngredient of all that can have a price. */
static GHashTable *
find_ingredients (FmNotebook *notebook, GError **error)
{
  g_autoptr (GHashTable) found =
      g_hash_table_new_full (g_str_hash, g_str_equal, g_free, (GDestroyNotify)fm_ingredient_unref);
  g_autoptr (GPtrArray) own = fm_ingredients_list (notebook, NULL, error);
  g_autoptr (GPtrArray) blends = own != NULL ? fm_blends_list (notebook, error) : NULL;

  if (blends == NULL)
    return NULL;
  for (guint i = 0; i < own->len; i++) {
    FmIngredient *ingredient = g_ptr_array_index (own, i);

    g_hash_table_insert (found, g_strdup (fm_ingredient_identity (ingredient)),
                         fm_ingredient_ref (ingredient));
  }
  for (guint i = 0; i < blends->len; i++)
    if (!take_blend (found, notebook, ((const FmBlendInfo *)blends->pdata[i])->id, error))
      return NULL;
  return g_steal_pointer (&found);
}

static int
compare_names (gconstpointer a, gconstpointer b)
{
  return g_utf8_collate (((const FmIngredient *)a)->name, ((const FmIngredient *)b)->name);
}

static void
add_price (GString *csv, const FmIngredient *ingredient, const FmPrice *noted, FmCsvStyle style)
{
  const gsize start = csv->len;
  g_autofree char *day = noted != NULL ? fm_date_iso (noted->recorded_at) : g_strdup ("");

  g_string_append_c (csv, style.separator);
  fm_csv_append_number (csv, noted != NULL ? noted->price_per_kg : ingredient->price_per_kg,
                        DECIMALS);
  for (gsize i = start + 1; i < csv->len; i++)
    if (csv->str[i] == '.')
      csv->str[i] = style.decimal;
  g_string_append_c (csv, style.separator);
  fm_csv_append_text (csv, day);
  g_string_append (csv, "\r\n");
}

char *
fm_price_list_csv (FmNotebook *notebook, FmCsvStyle style, GError **error)
{
  g_autoptr (GHashTable) found = find_ingredients (notebook, error);
  g_autoptr (GHashTable) today = found != NULL ? fm_prices_today (notebook, error) : NULL;
  g_autoptr (GList) sorted = NULL;
  GString *csv;

  if (today == NULL)
    return NULL;
  csv = g_string_new (BYTE_ORDER_MARK);
  g_string_append_printf (csv, ID_COLUMN "%c" NAME_COLUMN "%c" PRICE_COLUMN "%c" DATE_COLUMN "\r\n",
                          style.separator, style.separator, style.separator);
  sorted = g_list_sort (g_hash_table_get_values (found), compare_names);
  for (GList *l = sorted; l != NULL; l = l->next) {
    const FmIngredient *ingredient = l->data;

    fm_csv_append_text (csv, fm_ingredient_identity (ingredient));
    g_string_append_c (csv, style.separator);
    fm_csv_append_text (csv, ingredient->name);
    add_price (csv, ingredient, g_hash_table_lookup (today, fm_ingredient_identity (ingredient)),
               style);
  }
  return g_string_free (csv, FALSE);
}

typedef struct {
  GHashTable *known; /* identity -> FmIngredient */
  GHashTable *seen;  /* identities of this file */
  GPtrArray *priced; /* FmIngredient with the price of the file */
  int id;
  int price;
  char decimal; /* of the file; 0 = none seen yet */
  gboolean may_be_comma;
  guint n_blank;
} Reading;

static gboolean
fail (GError **error, guint line, const char *what)
{
  /* TRANSLATORS: number of a line, what is wrong there */
  g_set_error (error, FM_STORE_ERROR, FM_STORE_ERROR_FAILED, _ ("Line %u: %s No price was noted."),
               line, what);
  return FALSE;
}

static gboolean
read_head (Reading *self, guint line, const char *const *cells, GError **error)
{
  for (int i = 0; cells[i] != NULL; i++) {
    if (g_ascii_strcasecmp (cells[i], ID_COLUMN) == 0)
      self->id = i;
    else if (g_ascii_strcasecmp (cells[i], PRICE_COLUMN) == 0)
      self->price = i;
  }
  if (self->id >= 0 && self->price >= 0)
    return TRUE;
  return fail (error, line,
               _ ("the columns id and price_per_kg are not there. Export a list to see them."));
}

/* One decimal sign a file; a second one would make 1,250 what nobody meant. */
static gboolean
read_price (Reading *self, guint line, const char *text, double *price, GError **error)
{
  g_autofree char *bare = g_strstrip (g_strdup (text));
  char *sign = strpbrk (bare, ".,"), *end = NULL;

  if (sign != NULL && (*sign == ',' && !self->may_be_comma))
    return fail (error, line, _ ("a decimal comma needs cells between semicolons."));
  if (sign != NULL && self->decimal != '\0' && *sign != self->decimal)
    return fail (error, line, _ ("points and commas are mixed in the prices."));
  if (sign != NULL) {
    self->decimal = *sign;
    *sign = '.';
  }
  *price = g_ascii_strtod (bare, &end);
  if (end == bare || *end != '\0' || !(*price >= 0.0 && *price <= MAX_PRICE_PER_KG))
    return fail (error, line, _ ("the price is not a number that a kilogram can cost."));
  return TRUE;
}

static gboolean
take_price (Reading *self, const FmIngredient *ingredient, double price)
{
  FmIngredient *priced = fm_ingredient_copy (ingredient);

  priced->price_per_kg = price;
  g_ptr_array_add (self->priced, priced);
  return TRUE;
}

/* A spreadsheet takes the zeros off the front of a number of the dataset. */
static const FmIngredient *
find_ingredient (Reading *self, const char *id)
{
  const FmIngredient *found = g_hash_table_lookup (self->known, id);
  const gsize length = strlen (id);
  g_autofree char *padded = NULL;

  if (found != NULL || length >= NDB_LENGTH || strspn (id, "0123456789") < length)
    return found;
  padded = g_strdup_printf ("%0*d", NDB_LENGTH, atoi (id));
  return g_hash_table_lookup (self->known, padded);
}

static gboolean
read_row (guint line, const char *const *cells, gpointer data, GError **error)
{
  Reading *self = data;
  const int n_cells = (int)g_strv_length ((GStrv)cells);
  const FmIngredient *ingredient;
  double price;

  if (self->id < 0)
    return read_head (self, line, cells, error);
  if (n_cells <= MAX (self->id, self->price))
    return fail (error, line, _ ("the row is shorter than the header."));
  if (*cells[self->price] == '\0') {
    self->n_blank++;
    return TRUE;
  }
  ingredient = find_ingredient (self, cells[self->id]);
  if (ingredient == NULL)
    return fail (error, line, _ ("this notebook has no ingredient of that id."));
  if (!g_hash_table_add (self->seen, g_strdup (fm_ingredient_identity (ingredient))))
    return fail (error, line, _ ("this ingredient has a price further up already."));
  return read_price (self, line, cells[self->price], &price, error) &&
         take_price (self, ingredient, price);
}

gboolean
fm_price_list_read (FmNotebook *notebook,
                    const char *text,
                    gsize length,
                    gint64 noted_at,
                    FmPriceListResult *result,
                    GError **error)
{
  const char separator = fm_csv_guess_separator (text);
  g_autoptr (GHashTable) known = find_ingredients (notebook, error);
  g_autoptr (GHashTable) seen = g_hash_table_new_full (g_str_hash, g_str_equal, g_free, NULL);
  g_autoptr (GPtrArray) priced =
      g_ptr_array_new_with_free_func ((GDestroyNotify)fm_ingredient_unref);
  Reading reading = { known, seen, priced, -1, -1, '\0', separator != ',', 0 };

  if (known == NULL || !fm_csv_read (text, length, separator, read_row, &reading, error) ||
      !fm_prices_record_all (notebook, priced, noted_at, &result->n_changed, error))
    return FALSE;
  result->n_same = priced->len - result->n_changed;
  result->n_blank = reading.n_blank;
  return TRUE;
}
