#include <math.h>
#include <string.h>

#include "core/cooking/fm-caution.h"
#include "core/base/fm-units.h"

/* The published pairs of degrees agree to the rounding of their Celsius figure (whole degrees in
 * the Food Code and UK advice, tenths elsewhere). */
static void
test_figures (void)
{
  guint n_figures;
  const FmCautionFigure *figures = fm_caution_figures (&n_figures);

  g_assert_cmpuint (n_figures, >=, 19);
  for (guint i = 0; i < n_figures; i++) {
    g_assert_true (figures[i].authority[0] != '\0' && figures[i].source[0] != '\0');
    g_assert_cmpfloat_with_epsilon (fm_fahrenheit_to_celsius (figures[i].temp_f), figures[i].temp_c,
                                    0.6);
    g_assert_cmpfloat (figures[i].hold_s, >=, 0);
  }
}

static double
hold_at (const char *source, double temp_f)
{
  guint n_figures;
  const FmCautionFigure *figures = fm_caution_figures (&n_figures);

  for (guint i = 0; i < n_figures; i++)
    if (g_str_has_prefix (figures[i].source, source) && figures[i].temp_f == temp_f)
      return figures[i].hold_s;
  return NAN;
}

/* FDA Food Code 3-401.11(A)(2) chart. */
static void
test_food_code (void)
{
  g_assert_cmpfloat (hold_at ("Food Code 3-401.11(A)(2)", 145), ==, 180);
  g_assert_cmpfloat (hold_at ("Food Code 3-401.11(A)(2)", 150), ==, 60);
  g_assert_cmpfloat (hold_at ("Food Code 3-401.11(A)(2)", 155), ==, 17);
  g_assert_cmpfloat (hold_at ("Food Code 3-401.11(A)(3)", 165), ==, 1);
}

/* 9 CFR 318.23(b)(1): the two rows that were read in ARS publication 118829. */
static void
test_cfr_318_23 (void)
{
  g_assert_cmpfloat (hold_at ("9 CFR 318.23(b)(1)", 151), ==, 41);
  g_assert_cmpfloat (hold_at ("9 CFR 318.23(b)(1)", 155), ==, 16);
}

static void
assert_no_verdict (const char *text)
{
  g_autofree char *lower = g_utf8_strdown (text, -1);

  g_assert_null (strstr (lower, "safe"));
  g_assert_nonnull (strstr (lower, "local rules"));
  g_assert_nonnull (strstr (lower, "usda fsis"));
}

static void
test_peak (void)
{
  const struct {
    double peak_c;
    const char *part;
  } cases[] = {
    { NAN, "No core temperature" },
    { 71.1, "reaches the 71.1" },
    { 71.111111, "reaches the 71.1" },
    { 71.06, "71.0 °C (159 °F): below" },
    { 60, "60.0 °C (140 °F): below" },
    { 73.9, "and the 73.9" },
    { 73.86, "73.8 °C (164 °F): reaches the 71.1" },
    { 68.33333, "68.3 °C (155 °F): below" },
  };

  for (guint i = 0; i < G_N_ELEMENTS (cases); i++) {
    g_autofree char *text = fm_caution_for_peak (cases[i].peak_c);
    g_autofree char *plain = g_strdup (text);
    for (char *space = plain; (space = strstr (space, "\u00a0")) != NULL;) {
      *space = ' ';
      memmove (space + 1, space + 2, strlen (space + 2) + 1);
    }
    g_test_message ("%s", plain);
    g_assert_nonnull (strstr (plain, cases[i].part));
    assert_no_verdict (plain);
  }
}

static void
test_text (void)
{
  g_assert_nonnull (strstr (fm_caution_text (), "licensed"));
  assert_no_verdict (fm_caution_text ());
}

int
main (int argc, char **argv)
{
  g_test_init (&argc, &argv, NULL);
  g_test_add_func ("/caution/figures", test_figures);
  g_test_add_func ("/caution/fda-food-code-3-401.11", test_food_code);
  g_test_add_func ("/caution/9-cfr-318.23", test_cfr_318_23);
  g_test_add_func ("/caution/peak", test_peak);
  g_test_add_func ("/caution/text", test_text);
  return g_test_run ();
}
