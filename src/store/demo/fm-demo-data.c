/* SPDX-FileCopyrightText: 2026 the Forcemeat developers
 * SPDX-License-Identifier: GPL-3.0-or-later */
#include "store/demo/fm-demo-data.h"

#include <glib/gi18n-lib.h>
#include <math.h>

/* The consumer figure for ground beef, lamb and pork (160 °F). */
#define FM_DEMO_CORE_C 71.1

#define MUSTARD FM_ALLERGEN_BIT (FM_ALLERGEN_MUSTARD)

/* Rows of the food dataset by number; the prices and what suppliers state are invented. */
const FmDemoStock fm_demo_stock[FM_DEMO_N_FOODS] = {
  [FM_DEMO_CHUCK] = { "13817", 11.80, 0 },     /* chuck, blade roast, lean and fat, choice */
  [FM_DEMO_SHORT_RIB] = { "23066", 14.50, 0 }, /* chuck short ribs, boneless, lean, choice */
  [FM_DEMO_BRISKET] = { "13807", 12.40, 0 },   /* brisket, point half, lean and fat */
  [FM_DEMO_SHANK] = { "13227", 5.90, 0 },      /* shank crosscuts, lean, choice */
  [FM_DEMO_HEART] = { "13321", NAN, 0 },       /* heart */
  [FM_DEMO_SUET] = { "13335", 4.50, 0 },       /* suet */
  [FM_DEMO_GROUND_70] = { "13498", 7.60, 0 },  /* ground, 70/30 */
  [FM_DEMO_GROUND_80] = { "23572", 9.40, 0 },  /* ground, 80/20 */
  [FM_DEMO_LAMB] = { "17224", 13.90, 0 },      /* lamb, ground */
  [FM_DEMO_BACKFAT] = { "10004", 5.20, 0 },    /* pork backfat */
  [FM_DEMO_SALT] = { "02047", 0.90, 0 },
  [FM_DEMO_PEPPER] = { "02030", 22.00, MUSTARD }, /* ground where mustard is */
  [FM_DEMO_TRIM_50] = { NULL, 5.10, 0 },
  [FM_DEMO_LAB_TRIM] = { NULL, 10.90, 0 },
};

static const FmDemoBlend blends[] = {
  { .name = N_ ("Pan patty"),
    .patty_mass_g = 180,
    .n_patties = 6,
    .fat_min_pct = 18,
    .fat_max_pct = 22,
    .cost_max = 2.75,
    .notes = N_ ("A thick patty for a hot pan: coarse, juicy, beef taste first."),
    .process = { .words = { [FM_PROCESS_ORDER] = N_ ("Brisket and suet first, then the lean"),
                            [FM_PROCESS_SURFACE] = N_ ("Cast iron pan"),
                            [FM_PROCESS_HEAT] = N_ ("High, then medium after the turn"),
                            [FM_PROCESS_STEPS] =
                                N_ ("Cut the meat into 3 cm cubes and chill it until it is firm.\n"
                                    "Grind once, mix by hand, grind again.\n"
                                    "Form without pressing, dent the middle, chill.\n"
                                    "Sear, turn once, probe the core, rest on a rack.") },
                 .numbers = { [FM_PROCESS_MEAT_TEMP] = 2,
                              [FM_PROCESS_MINCE_TEMP] = 6,
                              [FM_PROCESS_SALT_MINUTES] = 1,
                              [FM_PROCESS_DIAMETER] = 115,
                              [FM_PROCESS_THICKNESS] = 18,
                              [FM_PROCESS_CHILL] = 30,
                              [FM_PROCESS_SURFACE_TEMP] = 230,
                              [FM_PROCESS_SIDE_1] = 4,
                              [FM_PROCESS_SIDE_2] = 3.5,
                              [FM_PROCESS_TARGET_CORE] = FM_DEMO_CORE_C,
                              [FM_PROCESS_REST] = 4 },
                 .plates_mm = { 10, 8 },
                 .seasonings = { { N_ ("Salt"), FM_SEASON_AT_THE_HEAT, TRUE },
                                 { N_ ("Pepper"), FM_SEASON_AFTER_COOKING, TRUE } } } },
  { .name = N_ ("Lean shop patty"),
    .patty_mass_g = 120,
    .n_patties = 10,
    .fat_min_pct = 8,
    .fat_max_pct = 12,
    .cost_max = 1.20,
    .notes = N_ ("A thin, lean patty for a shop counter at a low cost."),
    .process = { .words = { [FM_PROCESS_SURFACE] = N_ ("Griddle"),
                            [FM_PROCESS_HEAT] = N_ ("Medium"),
                            [FM_PROCESS_STEPS] = N_ ("Grind the shank twice before it is mixed.\n"
                                                     "Form in a ring between papers, chill.\n"
                                                     "Turn once, probe the core.") },
                 .numbers = { [FM_PROCESS_MEAT_TEMP] = 2,
                              [FM_PROCESS_MINCE_TEMP] = 6,
                              [FM_PROCESS_DIAMETER] = 105,
                              [FM_PROCESS_THICKNESS] = 14,
                              [FM_PROCESS_CHILL] = 60,
                              [FM_PROCESS_SURFACE_TEMP] = 200,
                              [FM_PROCESS_SIDE_1] = 3.5,
                              [FM_PROCESS_SIDE_2] = 3,
                              [FM_PROCESS_TARGET_CORE] = FM_DEMO_CORE_C,
                              [FM_PROCESS_REST] = 2 },
                 .plates_mm = { 8, 4.5 },
                 .seasonings = { { N_ ("Salt"), FM_SEASON_AFTER_FORMING, TRUE } } } },
  { .name = N_ ("Lamb and beef"),
    .patty_mass_g = 150,
    .n_patties = 8,
    .fat_min_pct = 18,
    .fat_max_pct = 24,
    .cost_max = 2.20,
    .notes = N_ ("Lamb for the aroma, beef for the bite, from the broiler."),
    .process = { .words = { [FM_PROCESS_SURFACE] = N_ ("Broiler, on a rack"),
                            [FM_PROCESS_HEAT] = N_ ("High"),
                            [FM_PROCESS_STEPS] = N_ ("Grind lamb and beef apart, mix by hand.\n"
                                                     "Form, chill, broil close to the heat.\n"
                                                     "Turn once, probe the core, rest.") },
                 .numbers = { [FM_PROCESS_MEAT_TEMP] = 2,
                              [FM_PROCESS_MINCE_TEMP] = 6,
                              [FM_PROCESS_DIAMETER] = 110,
                              [FM_PROCESS_THICKNESS] = 16,
                              [FM_PROCESS_CHILL] = 30,
                              [FM_PROCESS_SIDE_1] = 5,
                              [FM_PROCESS_SIDE_2] = 4.5,
                              [FM_PROCESS_TARGET_CORE] = FM_DEMO_CORE_C,
                              [FM_PROCESS_REST] = 4 },
                 .plates_mm = { 8, 6 },
                 .seasonings = { { N_ ("Salt"), FM_SEASON_AFTER_FORMING, TRUE } } } },
  { .name = N_ ("Three cuts, mapped"),
    .patty_mass_g = 150,
    .n_patties = 8,
    .fat_min_pct = 14,
    .fat_max_pct = 24,
    .cost_max = NAN,
    .notes = N_ ("Chuck, shank and suet divided in several ways and tasted blind."),
    .process = { .words = { [FM_PROCESS_SURFACE] = N_ ("Cast iron pan"),
                            [FM_PROCESS_HEAT] = N_ ("Medium high"),
                            [FM_PROCESS_STEPS] = N_ ("Keep the suet frozen until it is ground.\n"
                                                     "Grind all of it twice through one plate.\n"
                                                     "Form, chill, turn once, probe, rest.") },
                 .numbers = { [FM_PROCESS_MEAT_TEMP] = 2.5,
                              [FM_PROCESS_MINCE_TEMP] = 6,
                              [FM_PROCESS_DIAMETER] = 110,
                              [FM_PROCESS_THICKNESS] = 16,
                              [FM_PROCESS_CHILL] = 30,
                              [FM_PROCESS_SURFACE_TEMP] = 220,
                              [FM_PROCESS_SIDE_1] = 4,
                              [FM_PROCESS_SIDE_2] = 3.5,
                              [FM_PROCESS_TARGET_CORE] = FM_DEMO_CORE_C,
                              [FM_PROCESS_REST] = 3 },
                 .plates_mm = { 6, 6 },
                 .seasonings = { { N_ ("Salt"), FM_SEASON_BETWEEN_PASSES, FALSE } } } },
};

#define L(food, mass_g)                                                                            \
  {                                                                                                \
    FM_DEMO_##food, mass_g                                                                         \
  }

static const FmDemoVersion versions[] = {
  { 0,
    1,
    0,
    0,
    N_ ("First try with two cuts from the counter"),
    { L (CHUCK, 756), L (BRISKET, 324) } },
  { 0,
    2,
    1,
    2,
    N_ ("Short rib for a deeper taste"),
    { L (CHUCK, 540), L (SHORT_RIB, 324), L (BRISKET, 216) } },
  { 0,
    3,
    2,
    7,
    N_ ("Short rib is leaner than it looks: suet brings the fat back"),
    { L (CHUCK, 540), L (SHORT_RIB, 302), L (BRISKET, 194), L (SUET, 44) } },
  { 0,
    4,
    2,
    9,
    N_ ("Another way from version 2: shank for chew, no suet"),
    { L (CHUCK, 486), L (SHORT_RIB, 216), L (BRISKET, 216), L (SHANK, 162) } },
  { 0,
    5,
    3,
    14,
    N_ ("Salt mixed in, to set against salt on the surface"),
    { L (CHUCK, 540), L (SHORT_RIB, 302), L (BRISKET, 194), L (SUET, 44), L (SALT, 9.8) } },
  { 0,
    6,
    3,
    16,
    N_ ("Bought trim instead of suet; only its lean point is known"),
    { L (CHUCK, 540), L (SHORT_RIB, 292), L (BRISKET, 162), L (TRIM_50, 86) } },
  { 0,
    7,
    6,
    21,
    N_ ("Some heart for colour; no price for it yet"),
    { L (CHUCK, 500), L (SHORT_RIB, 262), L (BRISKET, 152), L (TRIM_50, 86), L (HEART, 80) } },
  { 1, 1, 0, 4, N_ ("Ground beef let down with shank"), { L (GROUND_80, 540), L (SHANK, 660) } },
  { 1,
    2,
    1,
    11,
    N_ ("Own trim with a laboratory analysis, so that the fat is known"),
    { L (LAB_TRIM, 600), L (SHANK, 600) } },
  { 1,
    3,
    1,
    12,
    N_ ("Another way from version 1: fattest ground beef, most shank, lowest cost"),
    { L (GROUND_70, 290), L (SHANK, 910) } },
  { 1,
    4,
    2,
    18,
    N_ ("Seasoned in the mix"),
    { L (LAB_TRIM, 560), L (SHANK, 640), L (SALT, 12), L (PEPPER, 2.4) } },
  { 2, 1, 0, 5, N_ ("Three parts lamb, two parts chuck"), { L (LAMB, 720), L (CHUCK, 480) } },
  { 2,
    2,
    1,
    13,
    N_ ("Less lamb, short rib to carry it"),
    { L (LAMB, 480), L (CHUCK, 420), L (SHORT_RIB, 300) } },
  { 2,
    3,
    1,
    16,
    N_ ("Another way from version 1: shank, and pork backfat for the fat"),
    { L (LAMB, 720), L (SHANK, 400), L (BACKFAT, 80) } },
  { 2,
    4,
    2,
    20,
    N_ ("Seasoned in the mix"),
    { L (LAMB, 480), L (CHUCK, 420), L (SHORT_RIB, 300), L (SALT, 12), L (PEPPER, 3) } },
  { FM_DEMO_MAP_BLEND,
    1,
    0,
    22,
    N_ ("Where the map of three cuts starts from"),
    { L (CHUCK, 620), L (SHANK, 320), L (SUET, 60), L (SALT, 10) } },
};

const FmDemoBlend *
fm_demo_blends (guint *n_blends)
{
  *n_blends = G_N_ELEMENTS (blends);
  return blends;
}

const FmDemoVersion *
fm_demo_versions (guint *n_versions)
{
  *n_versions = G_N_ELEMENTS (versions);
  return versions;
}
