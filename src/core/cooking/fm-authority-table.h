/* SPDX-FileCopyrightText: 2026 the Forcemeat developers
 * SPDX-License-Identifier: GPL-3.0-or-later */
/* fm-authority-table.h - the hold tables of the FSIS guideline of 2021
 *
 * Private to fm-authority.c. USDA FSIS Cooking Guideline for Meat and Poultry Products (Revised
 * Appendix A), FSIS-GD-2021-14, 14 December 2021: table 2 (p. 35), tables 3 and 4 (pp. 37-38) and
 * table 6 (p. 59), read off the pages. Minutes are turned into seconds; three cells of poultry
 * fall with rising fat in print and are kept as printed.
 */
#pragma once

#include <glib.h>

G_BEGIN_DECLS

#define FM_FSIS_N_MEAT_ROWS 31
#define FM_FSIS_N_POULTRY_ROWS 30
#define FM_FSIS_N_FAT_COLUMNS 12 /* 1 to 12 % fat */

/** Meat that is not poultry, from 130 to 160 °F; 0 s = at once. */
typedef struct {
  double temp_f;
  double temp_c;
  double hold_5_s;
  double hold_6_5_s;
  double hold_7_s;
} FmFsisMeatRow;

/** Poultry, 7 log, from 136 to 165 °F. */
typedef struct {
  double temp_f;
  double temp_c;
  double chicken_s[FM_FSIS_N_FAT_COLUMNS];
  double turkey_s[FM_FSIS_N_FAT_COLUMNS];
} FmFsisPoultryRow;

extern const FmFsisMeatRow fm_fsis_meat_rows[FM_FSIS_N_MEAT_ROWS];
extern const FmFsisPoultryRow fm_fsis_poultry_rows[FM_FSIS_N_POULTRY_ROWS];

G_END_DECLS
