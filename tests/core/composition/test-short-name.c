/* SPDX-FileCopyrightText: 2026 the Forcemeat developers
 * SPDX-License-Identifier: GPL-3.0-or-later */
/* test-short-name.c - a food is named as the trade says it, and no two that matter alike */
#include "core/composition/fm-short-name.h"

static void
test_names (void)
{
  static const char *const pairs[][2] = {
    { "Beef, chuck, blade roast, lean and fat, trimmed to 1/8 inch fat, all grades, raw",
      "Chuck blade, 1/8 in trim" },
    { "Beef, chuck, blade roast, lean and fat, trimmed to 1/8 inch fat, choice grade, raw",
      "Chuck blade, 1/8 in trim, choice" },
    { "Beef, chuck, short ribs, boneless, lean and fat, trimmed to 0 inch fat, all grades, raw",
      "Chuck short ribs, boneless, 0 in trim" },
    { "Beef, brisket, point half, lean and fat, trimmed to 1/8 inch fat, all grades, raw",
      "Brisket point half, 1/8 in trim" },
    { "Beef, ground, 80/20 (80% lean, 20% fat), raw", "Ground beef 80/20" },
    { "Beef, ground, 80/20 (80% lean, 20% fat), patty, cooked, broiled",
      "Ground beef 80/20, patty, broiled" },
    { "Beef, variety meats and by-products, heart, raw", "Beef heart" },
    { "Beef, rib, short ribs, lean and fat, choice grade, raw", "Beef rib short ribs, choice" },
    { "Pork, fresh, ground, raw", "Ground pork" },
    { "Pork, fresh, backfat, raw", "Pork backfat" },
    { "Pork, fresh, loin, tenderloin, lean only, raw", "Pork loin tenderloin, lean" },
    { "Chicken, broilers or fryers, dark meat, thigh, meat only, raw",
      "Chicken dark meat thigh, no skin" },
    { "Lamb, New Zealand, imported, tenderloin, lean, raw", "Lamb New Zealand tenderloin, lean" },
    { "Game meat, bison, ground, raw", "Bison, ground" },
    { "Spices, pepper, black", "Pepper, black" },
    { "Salt, table", "Salt, table" },
    { "Onions, raw", "Onions" },
    { "Beef, raw", "Beef" },
    /* What the cook wrote stays. */
    { "Trim of the week", "Trim of the week" },
    { "House trim (80)", "House trim (80)" },
    { "", "" },
    { ", ", ", " },
    { "(a, b)", "(a, b)" },
  };

  for (guint i = 0; i < G_N_ELEMENTS (pairs); i++) {
    g_autofree char *name = fm_short_name (pairs[i][0]);

    g_assert_cmpstr (name, ==, pairs[i][1]);
  }
}

int
main (int argc, char *argv[])
{
  g_test_init (&argc, &argv, NULL);
  g_test_add_func ("/short-name/names", test_names);
  return g_test_run ();
}
