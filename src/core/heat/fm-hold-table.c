#include "core/heat/fm-hold-table.h"

#include <glib/gi18n-lib.h>
#include <math.h>

#include "core/cooking/fm-caution.h"
#include "core/base/fm-number.h"
#include "core/base/fm-units.h"

/* Reading and rounding noise of a computed Celsius figure. */
#define TINY 1e-6

/*
 * USDA FSIS, Appendix A, "Compliance guidelines for meeting lethality performance standards for
 * certain meat and poultry products" (1999): whole table, read in a copy. Minutes are turned into
 * seconds. The 2021 revision was not at hand.
 */
typedef struct {
  double temp_f;
  double temp_c;
  double hold_6_5_s;
  double hold_7_s;
} AppendixRow;

static const AppendixRow appendix_a[] = {
  { 130, 54.4, 6720, 7260 }, { 131, 55.0, 5340, 5820 }, { 132, 55.6, 4260, 4620 },
  { 133, 56.1, 3360, 3720 }, { 134, 56.7, 2700, 2820 }, { 135, 57.2, 2160, 2220 },
  { 136, 57.8, 1680, 1920 }, { 137, 58.4, 1380, 1440 }, { 138, 58.9, 1080, 1140 },
  { 139, 59.5, 900, 900 },   { 140, 60.0, 720, 720 },   { 141, 60.6, 540, 600 },
  { 142, 61.1, 480, 480 },   { 143, 61.7, 360, 360 },   { 144, 62.2, 300, 300 },
  { 145, 62.8, 240, 240 },   { 146, 63.3, 169, 182 },   { 147, 63.9, 134, 144 },
  { 148, 64.4, 107, 115 },   { 149, 65.0, 85, 91 },     { 150, 65.6, 67, 72 },
  { 151, 66.1, 54, 58 },     { 152, 66.7, 43, 46 },     { 153, 67.2, 34, 37 },
  { 154, 67.8, 27, 29 },     { 155, 68.3, 22, 23 },     { 156, 68.9, 17, 19 },
  { 157, 69.4, 14, 15 },     { 158, 70.0, 0, 0 },       { 159, 70.6, 0, 0 },
  { 160, 71.1, 0, 0 },
};

/* Tables other than Appendix A are taken from the caution's figures, found by the beginning of
 * their source and of their food. */
typedef struct {
  const char *source_prefix;
  const char *food_prefix;
  const char *name;
  const char *note;
} AuthorityInfo;

static const AuthorityInfo authorities[FM_N_AUTHORITIES] = {
  [FM_AUTHORITY_CONSUMER] = { "Minimum internal temperature chart", "ground meat",
                              N_ ("USDA FSIS consumer chart, ground meat"),
                              N_ ("Minimum internal temperature chart, for consumers. One reading "
                                  "counts; no time is asked.") },
  [FM_AUTHORITY_FOOD_CODE] = { "Food Code 3-401.11(A)(2)", "comminuted",
                               N_ ("FDA Food Code 3-401.11(A)(2), comminuted meat"),
                               N_ ("Model code for retail and food service. Codes up to 2013 ask "
                                   "for 15 s at 68 °C (155 °F), later ones for 17 s.") },
  [FM_AUTHORITY_CFR_318_23] = { "9 CFR 318.23(b)(1)", "",
                                N_ ("9 CFR 318.23(b)(1), cooked beef patties"),
                                N_ ("For inspected establishments. The rows of 66.1 °C (151 °F) "
                                    "and 68.3 °C (155 °F) were read, the others are from "
                                    "memory.") },
  [FM_AUTHORITY_APPENDIX_A_6_5] = { NULL, NULL,
                                    N_ ("FSIS Appendix A (1999), 6.5 log of Salmonella"),
                                    N_ ("For inspected establishments, with conditions of its own "
                                        "such as humidity. Revised in 2021; this is the table of "
                                        "1999.") },
  [FM_AUTHORITY_APPENDIX_A_7] = { NULL, NULL, N_ ("FSIS Appendix A (1999), 7 log of Salmonella"),
                                  N_ ("For inspected establishments, with conditions of its own "
                                      "such as humidity. Revised in 2021; this is the table of "
                                      "1999.") },
  [FM_AUTHORITY_UK_FSA] = { "FSA/ACMSF", "burgers", N_ ("UK FSA burger advice, after ACMSF"),
                            N_ ("For caterers in the United Kingdom. From memory: check the "
                                "current text.") },
};

const char *
fm_authority_name (FmAuthority authority)
{
  return _ (authorities[authority].name);
}

const char *
fm_authority_note (FmAuthority authority)
{
  return _ (authorities[authority].note);
}

static void
append_appendix (GArray *rows, gboolean seven_log)
{
  for (guint i = 0; i < G_N_ELEMENTS (appendix_a); i++) {
    FmHoldRow row = { appendix_a[i].temp_c, appendix_a[i].temp_f,
                      seven_log ? appendix_a[i].hold_7_s : appendix_a[i].hold_6_5_s };
    g_array_append_val (rows, row);
  }
}

static void
append_caution_figures (GArray *rows, const AuthorityInfo *info)
{
  guint n_figures;
  const FmCautionFigure *figures = fm_caution_figures (&n_figures);

  for (guint i = 0; i < n_figures; i++)
    if (g_str_has_prefix (figures[i].source, info->source_prefix) &&
        g_str_has_prefix (figures[i].food, info->food_prefix)) {
      FmHoldRow row = { figures[i].temp_c, figures[i].temp_f, figures[i].hold_s };
      g_array_append_val (rows, row);
    }
}

const FmHoldRow *
fm_hold_table (FmAuthority authority, guint *n_rows)
{
  static GArray *tables[FM_N_AUTHORITIES];
  static gsize ready = 0;

  if (g_once_init_enter (&ready)) {
    for (int i = 0; i < FM_N_AUTHORITIES; i++) {
      tables[i] = g_array_new (FALSE, FALSE, sizeof (FmHoldRow));
      if (authorities[i].source_prefix == NULL)
        append_appendix (tables[i], i == FM_AUTHORITY_APPENDIX_A_7);
      else
        append_caution_figures (tables[i], &authorities[i]);
    }
    g_once_init_leave (&ready, 1);
  }
  *n_rows = tables[authority]->len;
  return (const FmHoldRow *)tables[authority]->data;
}

gboolean
fm_hold_row_is_met (const FmHoldRow *row, double temp_c)
{
  return temp_c >= fmin (row->temp_c, fm_fahrenheit_to_celsius (row->temp_f)) - TINY;
}

double
fm_hold_required_s (FmAuthority authority, double temp_c)
{
  guint n_rows;
  const FmHoldRow *rows = fm_hold_table (authority, &n_rows);
  double required_s = NAN;

  for (guint i = 0; i < n_rows; i++)
    if (fm_hold_row_is_met (&rows[i], temp_c))
      required_s = rows[i].hold_s;
  return required_s;
}

const char *
fm_hold_state_name (FmHoldState state)
{
  switch (state) {
  case FM_HOLD_REACHED:
    return _ ("Reached");
  case FM_HOLD_NOT_REACHED:
    return _ ("Not reached");
  case FM_HOLD_NOT_KNOWN:
  default:
    return _ ("Not known");
  }
}
