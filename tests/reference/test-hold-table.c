/* test-hold-table.c - each authority's hold table against the published rows */
#include "core/heat/fm-hold-table.h"

#include <string.h>

#include "core/base/fm-units.h"
#include "table.h"

static void
assert_row (FmAuthority authority, double temp_f, double temp_c, double hold_s)
{
  guint n_rows;
  const FmHoldRow *rows = fm_hold_table (authority, &n_rows);

  for (guint i = 0; i < n_rows; i++)
    if (rows[i].temp_f == temp_f) {
      g_assert_cmpfloat (rows[i].temp_c, ==, temp_c);
      g_assert_cmpfloat (rows[i].hold_s, ==, hold_s);
      g_assert_cmpfloat (fm_hold_required_s (authority, temp_c), ==, hold_s);
      g_assert_cmpfloat (fm_hold_required_s (authority, fm_fahrenheit_to_celsius (temp_f)), ==,
                         hold_s);
      return;
    }
  g_error ("%s: no row of %g F", fm_authority_name (authority), temp_f);
}

static void
assert_n_rows (FmAuthority authority, guint expected)
{
  guint n_rows;

  fm_hold_table (authority, &n_rows);
  g_assert_cmpuint (n_rows, ==, expected);
}

/* USDA FSIS Appendix A (1999), read. */
static void
test_appendix_a (void)
{
  g_autoptr (GPtrArray) rows = read_table ("cook_lethality_appendix_a.tsv", "\t");

  for (guint i = 0; i < rows->len; i++) {
    assert_row (FM_AUTHORITY_APPENDIX_A_6_5, number (rows, i, 0), number (rows, i, 1),
                number (rows, i, 2));
    assert_row (FM_AUTHORITY_APPENDIX_A_7, number (rows, i, 0), number (rows, i, 1),
                number (rows, i, 3));
  }
  assert_n_rows (FM_AUTHORITY_APPENDIX_A_6_5, rows->len);
  assert_n_rows (FM_AUTHORITY_APPENDIX_A_7, rows->len);
}

/* 9 CFR 318.23(b)(1): two rows read, five from memory. */
static void
test_cfr_318_23 (void)
{
  g_autoptr (GPtrArray) rows = read_table ("cook_patties_318_23.tsv", "\t");

  for (guint i = 0; i < rows->len; i++)
    assert_row (FM_AUTHORITY_CFR_318_23, number (rows, i, 0), number (rows, i, 1),
                number (rows, i, 2));
  assert_n_rows (FM_AUTHORITY_CFR_318_23, rows->len);
}

/* FDA Food Code 3-401.11(A)(2) and the USDA FSIS consumer chart (read), UK FSA (memory). The rows
 * for poultry are no row for ground meat. */
static void
test_food_code_and_others (void)
{
  g_autoptr (GPtrArray) rows = read_table ("cook_food_code.tsv", "\t");
  guint n_of[FM_N_AUTHORITIES] = { 0 };

  for (guint i = 0; i < rows->len; i++) {
    const char *body = cell (rows, i, 0);
    FmAuthority authority = FM_AUTHORITY_UK_FSA;

    if (strstr (cell (rows, i, 1), "poultry") != NULL)
      continue;
    if (strcmp (body, "FDA") == 0)
      authority = FM_AUTHORITY_FOOD_CODE;
    else if (strcmp (body, "USDA FSIS") == 0)
      authority = FM_AUTHORITY_CONSUMER;
    assert_row (authority, number (rows, i, 3), number (rows, i, 2), number (rows, i, 5));
    n_of[authority]++;
  }
  assert_n_rows (FM_AUTHORITY_CONSUMER, n_of[FM_AUTHORITY_CONSUMER]);
  assert_n_rows (FM_AUTHORITY_FOOD_CODE, n_of[FM_AUTHORITY_FOOD_CODE]);
  assert_n_rows (FM_AUTHORITY_UK_FSA, n_of[FM_AUTHORITY_UK_FSA]);
}

int
main (int argc, char **argv)
{
  g_test_init (&argc, &argv, NULL);
  g_test_add_func ("/hold-table/fsis-appendix-a-1999", test_appendix_a);
  g_test_add_func ("/hold-table/9-cfr-318.23", test_cfr_318_23);
  g_test_add_func ("/hold-table/food-code-3-401.11-and-others", test_food_code_and_others);
  return g_test_run ();
}
