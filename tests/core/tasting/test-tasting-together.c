/* SPDX-FileCopyrightText: 2026 the Forcemeat developers
 * SPDX-License-Identifier: GPL-3.0-or-later */
/* test-tasting-together.c - several tastings in one reading, and what it says */
#include "core/tasting/fm-tasting-together.h"

#include <string.h>

#include "core/base/fm-error.h"
#include "tasting.h"

static void
assert_holds (const char *text, const char *part)
{
  g_test_message ("%s", text);
  if (strstr (text, part) == NULL)
    g_error ("\"%s\" does not stand in it", part);
}

/* An opened tasting of three samples and three tasters, versions 101 to 103, ranked as given. */
static FmTasting *
ranked (const double *place, guint64 seed)
{
  FmTasting *self = tasting_sealed (3, 3, FM_TASTING_RANK, seed);

  for (guint t = 0; t < 3; t++)
    for (guint s = 0; s < 3; s++)
      tasting_mark (self, t, s, FM_TASTING_RANK, place[t * 3 + s]);
  tasting_all_in (self);
  tasting_open (self);
  self->held_at = 1000 + (gint64)seed;
  return self;
}

static GPtrArray *
tastings_new (void)
{
  return g_ptr_array_new_with_free_func ((GDestroyNotify)fm_tasting_free);
}

static FmTastingTogether *
read_them (GPtrArray *tastings, GError **error)
{
  return fm_tasting_together_new (fm_tasting_pool_new (tastings), TRUE, NULL, error);
}

static void
test_one_sentence (void)
{
  const double place[] = { 1, 2, 3, 1, 2, 3, 1, 3, 2 };
  g_autoptr (GPtrArray) tastings = tastings_new ();

  for (guint i = 0; i < 8; i++)
    g_ptr_array_add (tastings, ranked (place, i));
  g_autoptr (FmTastingTogether) self = read_them (tastings, NULL);
  g_autofree char *headline = fm_tasting_together_headline (self);
  g_autofree char *tasters = fm_tasting_together_tasters_text (self);
  g_autofree char *drift = fm_tasting_together_drift_text (self);
  g_autofree char *repeat = fm_tasting_together_repeat_text (self);
  g_autofree char *apart = fm_tasting_together_apart_text (self);
  assert_holds (headline,
                "Over 8 tastings and 3 tasters Draft 1 is the most liked; 99 in 100 that it "
                "beats Draft 2; not told apart: Draft 2 and Draft 3.");
  assert_holds (tasters, "T1 put 16 of 16 pairs the way round that the others give.");
  assert_holds (drift, "not shown");
  assert_holds (repeat, "T3 met 84 pairs again and put 84 the same way round.");
  g_assert_null (apart);
}

/* Two tasters who agree once: nothing is called shown. */
static void
test_no_certainty (void)
{
  const double place[] = { 1, 2, 3, 1, 2, 3, 3, 2, 1 };
  g_autoptr (GPtrArray) tastings = tastings_new ();
  FmTasting *tasting = ranked (place, 3);

  fm_tasting_set_sheet (tasting, 1, 2, FM_SHEET_MISSING);
  g_ptr_array_add (tastings, tasting);
  g_autoptr (FmTastingTogether) self = read_them (tastings, NULL);
  g_autofree char *headline = fm_tasting_together_headline (self);
  g_autofree char *drift = fm_tasting_together_drift_text (self);
  assert_holds (headline, "Over 1 tasting and 2 tasters Draft 1 comes first, which may still be "
                          "chance");
  assert_holds (headline, "no two of them can be told apart yet.");
  assert_holds (drift, "nothing to say of drift");
}

static void
test_never_compared (void)
{
  const double place[] = { 1, 2, 3, 1, 2, 3, 1, 3, 2 };
  g_autoptr (GPtrArray) tastings = tastings_new ();
  FmTasting *other = ranked (place, 5);

  for (guint s = 0; s < 3; s++) {
    FmTastingSample *sample = other->samples->pdata[s];

    sample->version_id += 100;
    g_free (sample->name);
    sample->name = g_strdup_printf ("Other %u", s + 1);
  }
  g_ptr_array_add (tastings, ranked (place, 4));
  g_ptr_array_add (tastings, other);
  g_autoptr (FmTastingTogether) self = read_them (tastings, NULL);
  g_autofree char *apart = fm_tasting_together_apart_text (self);
  g_autofree char *headline = fm_tasting_together_headline (self);
  assert_holds (apart, "Draft 1, Draft 2, Draft 3; Other 1, Other 2, Other 3");
  assert_holds (headline, "among those that it was compared with");
  g_assert_true (isnan (fm_tasting_together_better (self, 0, 3)));
}

/* A version is one item whatever it is called; tasters are the same whatever their case; a tasting
 * that is not opened says nothing. */
static void
test_who_is_who (void)
{
  const double place[] = { 1, 2, 3, 1, 2, 3, 1, 3, 2 };
  g_autoptr (GPtrArray) tastings = tastings_new ();
  FmTasting *later = ranked (place, 9);
  FmTasting *sealed = tasting_sealed (3, 3, FM_TASTING_RANK, 10);
  FmTaster *first = later->tasters->pdata[0];
  FmTastingSample *sample = later->samples->pdata[1];

  g_free (first->name);
  first->name = g_strdup ("t1");
  g_free (sample->name);
  sample->name = g_strdup ("Fattier");
  g_ptr_array_add (tastings, later);
  g_ptr_array_add (tastings, sealed);
  g_ptr_array_add (tastings, ranked (place, 1));
  g_autoptr (FmTastingPool) pool = fm_tasting_pool_new (tastings);
  g_assert_cmpuint (pool->items->len, ==, 3);
  g_assert_cmpuint (pool->tasters->len, ==, 3);
  g_assert_cmpuint (pool->tastings->len, ==, 2);
  g_assert_cmpuint (pool->orders->sheets->len, ==, 6);
  g_assert_cmpstr (pool->items->pdata[1], ==, "Fattier");
}

/* Likings alone are read as well, and a pair is an order of two. */
static void
test_likings_and_pairs (void)
{
  g_autoptr (GPtrArray) tastings = tastings_new ();

  for (guint i = 0; i < 3; i++) {
    FmTasting *tasting = tasting_sealed (2, 4, FM_TASTING_LIKING | FM_TASTING_PREFERENCE, 20 + i);

    for (guint t = 0; t < 4; t++) {
      tasting_mark (tasting, t, 0, FM_TASTING_LIKING, 8 - (double)((t + i) % 2));
      tasting_mark (tasting, t, 1, FM_TASTING_LIKING, 4 + (double)(t % 2));
      tasting_mark (tasting, t, t == 0 ? 1 : 0, FM_TASTING_PREFERENCE, 1);
    }
    tasting_all_in (tasting);
    tasting_open (tasting);
    g_ptr_array_add (tastings, tasting);
  }
  g_autoptr (FmTastingTogether) self = read_them (tastings, NULL);
  g_autofree char *liking = fm_tasting_together_liking_text (self);
  g_assert_cmpuint (self->pool->orders->sheets->len, ==, 12);
  g_assert_nonnull (self->orders);
  g_assert_cmpfloat (fm_tasting_together_better (self, 0, 1), >, 0.5);
  g_assert_cmpfloat_with_epsilon (self->liking->mean[0], 7.5, 1e-9);
  assert_holds (liking, "The scores agree: Draft 1 is liked best there as well, 7.5 of 9.");
}

static void
test_nothing_to_read (void)
{
  g_autoptr (GPtrArray) tastings = tastings_new ();
  g_autoptr (GError) error = NULL;

  g_assert_null (read_them (tastings, &error));
  g_assert_error (error, FM_CORE_ERROR, FM_CORE_ERROR_EMPTY);
}

int
main (int argc, char **argv)
{
  g_test_init (&argc, &argv, NULL);
  g_test_add_func ("/tasting-together/one-sentence", test_one_sentence);
  g_test_add_func ("/tasting-together/no-certainty", test_no_certainty);
  g_test_add_func ("/tasting-together/never-compared", test_never_compared);
  g_test_add_func ("/tasting-together/who-is-who", test_who_is_who);
  g_test_add_func ("/tasting-together/likings-and-pairs", test_likings_and_pairs);
  g_test_add_func ("/tasting-together/nothing-to-read", test_nothing_to_read);
  return g_test_run ();
}
