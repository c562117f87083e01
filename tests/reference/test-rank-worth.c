/* SPDX-FileCopyrightText: 2026 the Forcemeat developers
 * SPDX-License-Identifier: GPL-3.0-or-later */
/* test-rank-worth.c - worths from incomplete rank orders, against published ones
 *
 * Marks: read = seen in the named document or package data; computed = maximised with R and SciPy
 * from the same sheets.
 */
#include "core/statistics/fm-rank-worth.h"

#include <math.h>
#include <string.h>

typedef struct {
  guint first, second;
  guint n[3]; /* who preferred the first, the second, neither */
} Pairing;

/* Davidson (1970), JASA 65, 317-328, example 2: six puddings in pairs, with ties; data read */
static const Pairing pudding[] = {
  { 0, 1, { 19, 22, 16 } }, { 0, 2, { 16, 19, 12 } }, { 1, 2, { 19, 19, 10 } },
  { 0, 3, { 18, 23, 13 } }, { 1, 3, { 23, 19, 9 } },  { 2, 3, { 19, 20, 15 } },
  { 0, 4, { 13, 19, 18 } }, { 1, 4, { 16, 20, 12 } }, { 2, 4, { 16, 15, 17 } },
  { 3, 4, { 17, 14, 16 } }, { 0, 5, { 18, 21, 12 } }, { 1, 5, { 22, 20, 12 } },
  { 2, 5, { 13, 18, 10 } }, { 3, 5, { 14, 19, 18 } }, { 4, 5, { 11, 21, 12 } },
};

static guint
pairing_add (FmRankTable *table, guint taster, const Pairing *pairing)
{
  static const double place[3][2] = { { 1, 2 }, { 2, 1 }, { 1, 1 } };
  for (guint outcome = 0; outcome < 3; outcome++)
    for (guint i = 0; i < pairing->n[outcome]; i++, taster++) {
      fm_rank_table_set (table, taster, pairing->first, place[outcome][0]);
      fm_rank_table_set (table, taster, pairing->second, place[outcome][1]);
    }
  return taster;
}

/* Printed as contrasts to pudding 1: read. They were printed after seven steps of the search, which
 * leaves up to 0.0002; half a unit of the last digit comes on top. */
static void
test_pudding (void)
{
  static const double published[] = { 0, 0.2202, 0.153, 0.1753, 0.1339, 0.3771 };
  static const double computed[] = { -0.176560772757984,   0.0436811275047639, -0.0235830678883871,
                                     -0.00141586415417654, -0.042695545758282, 0.200574123054066 };
  /* a prior with a standard deviation of 2: computed */
  static const double with_prior[] = { -0.175778032499972,  0.0434888588694446,
                                       -0.0234483526505276, -0.0014032394028028,
                                       -0.0424701349415849, 0.199610900625443 };
  guint n = 0, taster = 0;
  for (guint i = 0; i < G_N_ELEMENTS (pudding); i++)
    n += pudding[i].n[0] + pudding[i].n[1] + pudding[i].n[2];
  g_autoptr (FmRankTable) table = fm_rank_table_new (n, 6);
  for (guint i = 0; i < G_N_ELEMENTS (pudding); i++)
    taster = pairing_add (table, taster, &pudding[i]);

  g_autofree double *plain = fm_rank_worth (table, INFINITY);
  g_autofree double *weak = fm_rank_worth (table, FM_RANK_WORTH_PRIOR_SD);
  for (guint s = 0; s < 6; s++) {
    g_assert_cmpfloat_with_epsilon (plain[s] - plain[0], published[s], 0.00025);
    g_assert_cmpfloat_with_epsilon (plain[s], computed[s], 1e-6);
    g_assert_cmpfloat_with_epsilon (weak[s], with_prior[s], 1e-6);
  }
}

/* One sheet a string: "A>B=C" */
static FmRankTable *
read_sheets (const char *const *sheet, guint n, guint k)
{
  FmRankTable *table = fm_rank_table_new (n, k);
  for (guint t = 0; t < n; t++) {
    guint place = 1;
    for (const char *at = sheet[t]; *at != '\0'; at++)
      if (*at == '>')
        place++;
      else if (*at != '=')
        fm_rank_table_set (table, t, (guint)(*at - 'A'), place);
  }
  return table;
}

static void
check_worths (const FmRankTable *table, double prior_sd, const double *expected, double epsilon)
{
  g_autofree double *worth = fm_rank_worth (table, prior_sd);
  for (guint s = 0; s < table->n_samples; s++)
    g_assert_cmpfloat_with_epsilon (worth[s] - worth[0], expected[s] - expected[0], epsilon);
}

/* Vignette of the R package PlackettLuce: four pairings, printed 0, 0.8392, 0.4196; read */
static void
test_three_items (void)
{
  const char *const sheets[] = { "A>B", "C>A", "B>A", "B>C" };
  const double published[] = { 0, 0.8392, 0.4196 };
  g_autoptr (FmRankTable) table = read_sheets (sheets, 4, 3);
  check_worths (table, INFINITY, published, 0.00005);
}

/* The same with an item that only loses: the prior of standard deviation 2 or 1 keeps it finite;
 * computed */
static void
test_only_loses (void)
{
  const char *const sheets[] = { "A>B", "C>A", "A>D", "B>A", "B>C" };
  const double two[] = { 0.117809098546768, 0.627114620655999, 0.246862011397804,
                         -0.991785730600571 };
  const double one[] = { 0.034147374037203, 0.304140735165952, 0.0561710244936219,
                         -0.394459133696777 };
  g_autoptr (FmRankTable) table = read_sheets (sheets, 5, 4);
  check_worths (table, 2, two, 1e-6);
  check_worths (table, 1, one, 1e-6);
}

/* Sheets of different sizes with ties of two, three and four (A apple, B banana, C orange, D pear),
 * from the tests of the R package PlackettLuce, read; worths computed */
static void
test_ties_of_many (void)
{
  const char *const sheets[] = {
    "A>B", "B>C>D>A", "B=C=D>A", "A>B>C", "B>A>C", "A>D>C", "A=B=C=D"
  };
  const double computed[] = { 0.316410889318673, 0.768377596657859, -1.08308780868467,
                              -0.00170067729185941 };
  g_autoptr (FmRankTable) table = read_sheets (sheets, 7, 4);
  check_worths (table, INFINITY, computed, 1e-6);
}

/* Tastings that share samples; E only loses and F only wins. Made up; worths computed. */
static void
test_tastings (void)
{
  const char *const sheets[] = { "A>B>C", "B>A>C", "A=B>C", "B>D>E", "D>B>E", "B=D>E",
                                 "F>A>D", "F>A=D", "A>C>D", "C>A>D", "A>C=D" };
  const double computed[] = { 0.567812200260278,  0.53123375218461,  -0.441294319056216,
                              -0.567565557141602, -1.08844220374788, 0.998256127500813 };
  g_autoptr (FmRankTable) table = read_sheets (sheets, 11, 6);
  check_worths (table, 1, computed, 1e-6);
}

int
main (int argc, char **argv)
{
  g_test_init (&argc, &argv, NULL);
  g_test_add_func ("/reference/rank-worth/davidson-1970-pudding-read", test_pudding);
  g_test_add_func ("/reference/rank-worth/three-items-read", test_three_items);
  g_test_add_func ("/reference/rank-worth/only-loses-computed", test_only_loses);
  g_test_add_func ("/reference/rank-worth/ties-of-many-computed", test_ties_of_many);
  g_test_add_func ("/reference/rank-worth/tastings-computed", test_tastings);
  return g_test_run ();
}
