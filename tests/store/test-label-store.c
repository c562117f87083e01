/* SPDX-FileCopyrightText: 2026 the Forcemeat developers
 * SPDX-License-Identifier: GPL-3.0-or-later */
/* test-label-store.c - what was chosen for a label, as text and back */
#include "store/fm-label-store.h"

#include <math.h>

static FmLabelChoice *
new_choice (void)
{
  FmLabelChoice *choice = fm_label_choice_new (113.0);

  choice->input.set = FM_LABEL_EU;
  choice->input.pack_g = 454.0;
  choice->input.with_more = TRUE;
  choice->gather_pct = 1.5;
  choice->stated.per_100g[FM_LABEL_ITEM_TRANS_FAT] = 0.1 + 0.2;
  choice->stated.protein_quality = 0.92;
  choice->stated_source = g_strdup ("Laboratory “A”, 2026");
  fm_label_choice_set_words (choice, "b", "rusk", "wheat flour, salt");
  fm_label_choice_set_words (choice, "a", NULL, "water, \"mustard\" seed");
  return choice;
}

static void
test_round_trip (void)
{
  g_autoptr (FmLabelChoice) choice = new_choice ();
  g_autoptr (FmLabelChoice) back = fm_label_choice_new (100.0);
  g_autofree char *text = fm_label_choice_to_json (choice);

  fm_label_choice_read_json (back, text);
  g_autofree char *again = fm_label_choice_to_json (back);
  g_assert_cmpstr (again, ==, text);
  g_assert_cmpint (back->input.set, ==, FM_LABEL_EU);
  g_assert_cmpfloat (back->stated.per_100g[FM_LABEL_ITEM_TRANS_FAT], ==, 0.1 + 0.2);
  g_assert_true (isnan (back->stated.per_100g[FM_LABEL_ITEM_SODIUM]));
}

/* What cannot be read leaves what was there. */
static void
test_bad_text (void)
{
  static const char *const texts[] = { NULL,
                                       "",
                                       "[]",
                                       "{",
                                       "{\"serving_g\":-3,\"rules\":\"moon\"}",
                                       "{\"words\":{\"a\":3},\"stated_per_100g\":7}" };

  for (guint i = 0; i < G_N_ELEMENTS (texts); i++) {
    g_autoptr (FmLabelChoice) choice = fm_label_choice_new (113.0);

    fm_label_choice_read_json (choice, texts[i]);
    g_assert_cmpfloat (choice->input.serving_g, ==, 113.0);
    g_assert_cmpint (choice->input.set, ==, FM_LABEL_US_RETAIL);
    g_assert_cmpuint (g_hash_table_size (choice->words), ==, 0);
  }
}

int
main (int argc, char **argv)
{
  g_test_init (&argc, &argv, NULL);
  g_test_add_func ("/label-store/round-trip", test_round_trip);
  g_test_add_func ("/label-store/bad-text", test_bad_text);
  return g_test_run ();
}
