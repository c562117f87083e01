#include "core/cooking/fm-caution.h"

#include <glib/gi18n-lib.h>
#include <math.h>

#include "core/base/fm-number.h"
#include "core/base/fm-units.h"

/* The figure that USDA FSIS gives consumers for ground meat. Its degrees Celsius are printed
 * rounded (160 F is 71.11 C), so a reading of 71.1 C counts as having reached it. */
#define GROUND_MEAT_C 71.1
#define GROUND_MEAT_F 160.0
#define GROUND_POULTRY_C 73.9
#define GROUND_POULTRY_F 165.0

/* Marks: "read" = seen in the document or a quotation of it while this table was written;
 * "memory" = known, document not at hand; check against the current text before relying on it.
 * Memory rows say so in their source, since a cook sees that too. */
static const FmCautionFigure figures[] = {
  /* FSIS, consumer chart of minimum internal temperatures: read. */
  { "USDA FSIS", N_ ("ground meat, consumers"), 71.1, 160, 0,
    N_ ("Minimum internal temperature chart") },
  { "USDA FSIS", N_ ("ground poultry, consumers"), 73.9, 165, 0,
    N_ ("Minimum internal temperature chart") },
  /* FDA Food Code 3-401.11: read. The Codes up to 2013 ask for 15 s at 68 C and at 74 C. */
  { "FDA", N_ ("comminuted meat"), 63, 145, 180, "Food Code 3-401.11(A)(2)" },
  { "FDA", N_ ("comminuted meat"), 66, 150, 60, "Food Code 3-401.11(A)(2)" },
  { "FDA", N_ ("comminuted meat"), 68, 155, 17, "Food Code 3-401.11(A)(2)" },
  { "FDA", N_ ("comminuted meat"), 70, 158, 1, "Food Code 3-401.11(A)(2)" },
  { "FDA", N_ ("poultry, stuffed meat"), 74, 165, 1, "Food Code 3-401.11(A)(3)" },
  /* 9 CFR 318.23(b)(1): 151 F and 155 F read, the other rows from memory; 157 F and up. */
  { "USDA FSIS", N_ ("cooked beef patties, establishments"), 66.1, 151, 41, "9 CFR 318.23(b)(1)" },
  { "USDA FSIS", N_ ("cooked beef patties, establishments"), 66.7, 152, 32,
    N_ ("9 CFR 318.23(b)(1), from memory") },
  { "USDA FSIS", N_ ("cooked beef patties, establishments"), 67.2, 153, 26,
    N_ ("9 CFR 318.23(b)(1), from memory") },
  { "USDA FSIS", N_ ("cooked beef patties, establishments"), 67.8, 154, 20,
    N_ ("9 CFR 318.23(b)(1), from memory") },
  { "USDA FSIS", N_ ("cooked beef patties, establishments"), 68.3, 155, 16, "9 CFR 318.23(b)(1)" },
  { "USDA FSIS", N_ ("cooked beef patties, establishments"), 68.9, 156, 13,
    N_ ("9 CFR 318.23(b)(1), from memory") },
  { "USDA FSIS", N_ ("cooked beef patties, establishments"), 69.4, 157, 10,
    N_ ("9 CFR 318.23(b)(1), from memory") },
  /* UK FSA after ACMSF, burger advice: memory. */
  { "UK FSA", N_ ("burgers and other minced meat"), 60, 140, 2700,
    N_ ("FSA/ACMSF burger advice, from memory") },
  { "UK FSA", N_ ("burgers and other minced meat"), 65, 149, 600,
    N_ ("FSA/ACMSF burger advice, from memory") },
  { "UK FSA", N_ ("burgers and other minced meat"), 70, 158, 120,
    N_ ("FSA/ACMSF burger advice, from memory") },
  { "UK FSA", N_ ("burgers and other minced meat"), 75, 167, 30,
    N_ ("FSA/ACMSF burger advice, from memory") },
  { "UK FSA", N_ ("burgers and other minced meat"), 80, 176, 6,
    N_ ("FSA/ACMSF burger advice, from memory") },
};

const FmCautionFigure *
fm_caution_figures (guint *n_figures)
{
  if (n_figures != NULL)
    *n_figures = G_N_ELEMENTS (figures);
  return figures;
}

const char *
fm_caution_text (void)
{
  return _ ("Undercooked ground meat can make people seriously ill: grinding carries bacteria from "
            "the surface to the core, and colour does not show doneness. USDA FSIS asks consumers "
            "for 71.1 °C (160 °F) in the core of ground meat and 73.9 °C (165 °F) of ground "
            "poultry. Local rules come first; for a kitchen that serves others, ask a licensed "
            "professional.");
}

/* A reading that misses a figure by a hair must not print as that figure. */
static char *
format_below (double temp_c, double figure_c, double figure_f)
{
  double shown_c = fmin (round (temp_c * 10.0) / 10.0, figure_c - 0.1);
  double shown_f = fmin (round (fm_celsius_to_fahrenheit (temp_c)), figure_f - 1.0);
  g_autofree char *c_text = fm_number_format_unit (shown_c, 1, "°C");
  g_autofree char *f_text = fm_number_format_unit (shown_f, 0, "°F");

  return g_strdup_printf ("%s (%s)", c_text, f_text);
}

char *
fm_caution_for_peak (double peak_core_c)
{
  if (!isfinite (peak_core_c))
    return g_strdup (_ ("No core temperature is recorded. USDA FSIS asks consumers for 71.1 °C "
                        "(160 °F) in the core of ground meat; local rules come first."));

  if (peak_core_c < GROUND_MEAT_C - 1e-9) {
    g_autofree char *peak = format_below (peak_core_c, GROUND_MEAT_C, GROUND_MEAT_F);
    return g_strdup_printf (
        _ ("Highest core reading %s: below the 71.1 °C (160 °F) that USDA FSIS asks consumers for "
           "in ground meat. Undercooked ground meat can make people ill; local rules come first."),
        peak);
  }
  if (peak_core_c < GROUND_POULTRY_C - 1e-9) {
    g_autofree char *peak = format_below (peak_core_c, GROUND_POULTRY_C, GROUND_POULTRY_F);
    return g_strdup_printf (
        _ ("Highest core reading %s: reaches the 71.1 °C (160 °F) that USDA FSIS asks consumers "
           "for in ground meat, but not the 73.9 °C (165 °F) for ground poultry. One reading may "
           "miss the coldest spot; local rules come first."),
        peak);
  }
  g_autofree char *peak = format_below (peak_core_c, INFINITY, INFINITY);
  return g_strdup_printf (
      _ ("Highest core reading %s: reaches the 71.1 °C (160 °F) that USDA FSIS asks consumers for "
         "in ground meat and the 73.9 °C (165 °F) for ground poultry. One reading may miss the "
         "coldest spot; local rules come first."),
      peak);
}
