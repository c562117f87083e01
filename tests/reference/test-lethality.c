/* test-lethality.c - integrated lethality against published figures */
#include "core/heat/fm-lethality.h"

#include <string.h>

#include "core/base/fm-units.h"
#include "table.h"

/* Worked example, Salmonella in lean ground beef: Tref 150 F, z 10 F, D 0.172 min (read up to 7.5
 * min; the trapezoid agrees to 3 decimals). */
static void
test_example (void)
{
  g_autoptr (GPtrArray) rows = read_table ("lethality_example.csv", ",");
  g_autoptr (GArray) readings = g_array_new (FALSE, FALSE, sizeof (FmCoreReading));
  g_autoptr (FmLethality) lethality = NULL;
  guint n;
  const FmLethalityParams *salmonella = &fm_lethality_params (&n)[n - 1];

  g_assert_cmpstr (salmonella->organism, ==, "Salmonella");
  for (guint i = 0; i < rows->len; i++) {
    FmCoreReading reading = { number (rows, i, 0) * 60.0,
                              fm_fahrenheit_to_celsius (number (rows, i, 1)) };
    g_array_append_val (readings, reading);
  }
  lethality = fm_lethality_new (readings, salmonella, NULL);
  for (guint i = 0; i < rows->len; i++) {
    g_assert_cmpfloat_with_epsilon (lethality->lethal_rate[i], number (rows, i, 2), 6e-7);
    g_assert_cmpfloat_with_epsilon (lethality->f_min[i], number (rows, i, 3), 1.7e-3);
    g_assert_cmpfloat_with_epsilon (lethality->f_min[i], number (rows, i, 4), 6e-7);
  }
  g_assert_cmpfloat_with_epsilon (lethality->log_reductions, 5.02, 0.005);
  g_assert_cmpfloat (lethality->linear_f_min, <, lethality->total_f_min);
}

static const FmLethalityParams *
find_params (const char *method_part, double fat_pct)
{
  guint n;
  const FmLethalityParams *all = fm_lethality_params (&n);

  for (guint i = 0; i < n; i++)
    if (strstr (all[i].method, method_part) != NULL && all[i].fat_pct == fat_pct)
      return &all[i];
  return NULL;
}

/* Line et al. 1991 (abstract, read): the sets in use carry its D at 145 F and its z. */
static void
test_line_1991_sets (void)
{
  g_autoptr (GPtrArray) deaths = read_table ("thermal_death.tsv", "\t");
  g_autoptr (GPtrArray) zs = read_table ("thermal_z.tsv", "\t");

  for (guint i = 0; i < zs->len; i++) {
    const char *method = cell (zs, i, 5);
    const char *part = strstr (method, "indole") != NULL ? "indole" : "pyruvate";
    const FmLethalityParams *params = find_params (part, number (zs, i, 2));

    g_assert_nonnull (params);
    g_assert_cmpfloat_with_epsilon (params->z_c * 1.8, number (zs, i, 3), 1e-9);
    g_assert_cmpfloat_with_epsilon (params->z_c, number (zs, i, 4), 0.051);
    for (guint d = 0; d < deaths->len; d++)
      if (g_strcmp0 (cell (deaths, d, 6), method) == 0 &&
          number (deaths, d, 2) == number (zs, i, 2) && number (deaths, d, 3) == 145)
        g_assert_cmpfloat (params->d_min, ==, number (deaths, d, 5));
  }
}

/* Line et al. 1991: D at 125 and 135 F follow from D at 145 F and z within the one digit that D at
 * 145 F is printed with (0.2 may be 0.15 to 0.25) and the scatter of a fitted z. */
static void
test_line_1991_other_temperatures (void)
{
  g_autoptr (GPtrArray) deaths = read_table ("thermal_death.tsv", "\t");

  for (guint i = 0; i < deaths->len; i++) {
    const char *part = strstr (cell (deaths, i, 6), "indole") != NULL ? "indole" : "pyruvate";
    const FmLethalityParams *params = find_params (part, number (deaths, i, 2));

    if (params == NULL)
      continue;
    double temp_c = fm_fahrenheit_to_celsius (number (deaths, i, 3));
    double d_min = params->d_min / fm_lethal_rate (temp_c, params->ref_c, params->z_c);
    g_test_message ("%s, %g %% fat, %g F: D %g min, by z %.2f", part, params->fat_pct,
                    number (deaths, i, 3), number (deaths, i, 5), d_min);
    g_assert_cmpfloat (fabs (log10 (d_min / number (deaths, i, 5))), <, log10 (0.25 / 0.15));
  }
}

int
main (int argc, char **argv)
{
  g_test_init (&argc, &argv, NULL);
  g_test_add_func ("/lethality/salmonella-worked-example", test_example);
  g_test_add_func ("/lethality/line-1991-sets", test_line_1991_sets);
  g_test_add_func ("/lethality/line-1991-other-temperatures", test_line_1991_other_temperatures);
  return g_test_run ();
}
