/* SPDX-FileCopyrightText: 2026 the Forcemeat developers
 * SPDX-License-Identifier: GPL-3.0-or-later */
#include "store/demo/fm-demo-data.h"

#include <glib/gi18n-lib.h>
#include <math.h>

/* Rows of the food dataset by number; the prices are invented. */
const FmDemoStock fm_demo_stock[FM_DEMO_N_FOODS] = {
  [FM_DEMO_CHUCK] = { "13817", 11.80 },     /* chuck, blade roast, lean and fat, choice */
  [FM_DEMO_SHORT_RIB] = { "23066", 14.50 }, /* chuck short ribs, boneless, lean, choice */
  [FM_DEMO_BRISKET] = { "13807", 12.40 },   /* brisket, point half, lean and fat */
  [FM_DEMO_SHANK] = { "13227", 5.90 },      /* shank crosscuts, lean, choice */
  [FM_DEMO_HEART] = { "13321", NAN },       /* heart */
  [FM_DEMO_SUET] = { "13335", 4.50 },       /* suet */
  [FM_DEMO_GROUND_70] = { "13498", 7.60 },  /* ground, 70/30 */
  [FM_DEMO_GROUND_80] = { "23572", 9.40 },  /* ground, 80/20 */
  [FM_DEMO_LAMB] = { "17224", 13.90 },      /* lamb, ground */
  [FM_DEMO_BACKFAT] = { "10004", 5.20 },    /* pork backfat */
  [FM_DEMO_SALT] = { "02047", 0.90 },       [FM_DEMO_PEPPER] = { "02030", 22.00 },
  [FM_DEMO_TRIM_50] = { NULL, 5.10 },       [FM_DEMO_LAB_TRIM] = { NULL, 10.90 },
};

static const FmDemoBlend blends[] = {
  { N_ ("Pan patty (invented)"), 180, 6, 18, 22, 2.75,
    N_ ("Invented for this demo. A thick patty for a hot pan: coarse, juicy, beef taste first.") },
  { N_ ("Lean shop patty (invented)"), 120, 10, 8, 12, 1.20,
    N_ ("Invented for this demo. A thin, lean patty for a shop counter at a low cost.") },
  { N_ ("Lamb and beef (invented)"), 150, 8, 18, 24, 2.20,
    N_ ("Invented for this demo. Lamb for the aroma, beef for the bite, from the broiler.") },
  { N_ ("Three cuts, mapped (invented)"), 150, 8, 14, 24, NAN,
    N_ ("Invented for this demo. Chuck, shank and suet divided in several ways and tasted "
        "blind.") },
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
    N_ ("Invented for this demo: first try with two cuts from the counter"),
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
  { 1,
    1,
    0,
    4,
    N_ ("Invented for this demo: ground beef let down with shank"),
    { L (GROUND_80, 540), L (SHANK, 660) } },
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
  { 2,
    1,
    0,
    5,
    N_ ("Invented for this demo: three parts lamb, two parts chuck"),
    { L (LAMB, 720), L (CHUCK, 480) } },
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
    N_ ("Invented for this demo: where the map of three cuts starts from"),
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
