/* SPDX-FileCopyrightText: 2026 the Forcemeat developers
 * SPDX-License-Identifier: GPL-3.0-or-later */
/* fm-tasting-caution.c - what is on record of samples before somebody eats them */
#include "core/tasting/fm-tasting-caution.h"

#include <glib/gi18n-lib.h>
#include <math.h>

FmTastingCaution *
fm_tasting_caution_new (const char *name)
{
  FmTastingCaution *self = g_new0 (FmTastingCaution, 1);

  self->name = g_strdup (name);
  self->peak_core_c = NAN;
  return self;
}

void
fm_tasting_caution_free (FmTastingCaution *self)
{
  if (self == NULL)
    return;
  g_free (self->name);
  g_free (self);
}

static const FmTastingCaution *
get_caution (const GPtrArray *cautions, guint index)
{
  return g_ptr_array_index (cautions, index);
}

static gboolean
has_core (const FmTastingCaution *self)
{
  return fm_caution_peak_meets (self->species, self->peak_core_c);
}

static gboolean
has_allergens (const FmTastingCaution *self)
{
  return self->n_parts > 0 && self->n_unstated == 0;
}

gboolean
fm_tasting_caution_is_on_record (const FmTastingCaution *self)
{
  return has_core (self) && has_allergens (self);
}

gboolean
fm_tasting_cautions_are_on_record (const GPtrArray *cautions)
{
  for (guint i = 0; i < cautions->len; i++)
    if (!fm_tasting_caution_is_on_record (get_caution (cautions, i)))
      return FALSE;
  return TRUE;
}

static char *
species_text (const FmTastingCaution *self)
{
  return self->species == 0 ? g_strdup (_ ("animal not known"))
                            : fm_species_set_join (self->species);
}

static char *
core_text (const FmTastingCaution *self)
{
  g_autofree char *figure = fm_caution_figure_text (self->species);

  if (isnan (self->peak_core_c))
    return g_strdup_printf (_ ("no core reading; the figure that rules: %s"), figure);
  g_autofree char *peak = fm_caution_reading_format (self->species, self->peak_core_c);
  return g_strdup_printf (has_core (self) ? _ ("highest core reading %s, not below %s")
                                          : _ ("highest core reading %s, BELOW %s"),
                          peak, figure);
}

static char *
allergens_text (const FmTastingCaution *self)
{
  g_autofree char *names = fm_allergens_join (self->allergens);

  if (self->n_parts == 0 || (*names == '\0' && self->n_unstated == self->n_parts))
    return g_strdup (_ ("not stated"));
  if (self->n_unstated == 0)
    return g_strdup (*names != '\0' ? names : _ ("none of the listed ones, as stated"));
  if (*names == '\0')
    return g_strdup_printf (ngettext ("not stated for %u of its ingredients",
                                      "not stated for %u of its ingredients", self->n_unstated),
                            self->n_unstated);
  return g_strdup_printf (ngettext ("%s; not stated for %u of its ingredients",
                                    "%s; not stated for %u of its ingredients", self->n_unstated),
                          names, self->n_unstated);
}

char *
fm_tasting_caution_text (const FmTastingCaution *self)
{
  g_autofree char *species = species_text (self);
  g_autofree char *core = core_text (self);
  g_autofree char *allergens = allergens_text (self);

  if (self->is_outside)
    /* TRANSLATORS: sample, what its core reached, its allergens */
    return g_strdup_printf (_ ("%s (from outside, animal not known): %s. Allergens: %s."),
                            self->name, core, allergens);
  /* TRANSLATORS: sample, "beef, pork", what its core reached, its allergens */
  return g_strdup_printf (_ ("%s (%s): %s. Allergens: %s."), self->name, species, core, allergens);
}

char *
fm_tasting_cautions_figures (const GPtrArray *cautions)
{
  gboolean is_named[FM_N_AUTHORITIES] = { FALSE };
  GString *text = g_string_new (NULL);

  for (guint i = 0; i < cautions->len; i++) {
    const FmAuthority ruling = fm_authority_ruling (get_caution (cautions, i)->species);
    if (is_named[ruling])
      continue;
    is_named[ruling] = TRUE;
    /* TRANSLATORS: an authority and what it speaks of, then section and edition */
    g_string_append_printf (text, _ ("%s: %s\n"), fm_authority_name (ruling),
                            fm_authority_note (ruling));
  }
  g_string_append (text, _ ("Where the animal is not known the strictest figure stands. A reading "
                            "may miss the coldest spot. Local rules come first; who serves others "
                            "asks a licensed professional."));
  return g_string_free (text, FALSE);
}

/* "1 of 4 samples has no core reading" and the like: nothing where there is none. */
static void
append_core_tally (GString *text, const GPtrArray *cautions)
{
  guint n_none = 0, n_below = 0;

  for (guint i = 0; i < cautions->len; i++) {
    const FmTastingCaution *caution = get_caution (cautions, i);
    n_none += isnan (caution->peak_core_c);
    n_below += !isnan (caution->peak_core_c) && !has_core (caution);
  }
  if (n_none > 0)
    g_string_append_printf (text,
                            ngettext ("%u of %u samples has no core reading. ",
                                      "%u of %u samples have no core reading. ", n_none),
                            n_none, cautions->len);
  if (n_below > 0)
    g_string_append_printf (text,
                            ngettext ("%u of %u samples was read below the core temperature that "
                                      "an authority asks for. ",
                                      "%u of %u samples were read below the core temperature that "
                                      "an authority asks for. ",
                                      n_below),
                            n_below, cautions->len);
  if (n_none + n_below > 0)
    g_string_append (text, _ ("Undercooked ground meat can make people ill. "));
}

char *
fm_tasting_cautions_tally (const GPtrArray *cautions)
{
  GString *text = g_string_new (NULL);
  FmAllergenSet stated = 0;
  guint n_unstated = 0;

  append_core_tally (text, cautions);
  for (guint i = 0; i < cautions->len; i++) {
    stated |= get_caution (cautions, i)->allergens;
    n_unstated += !has_allergens (get_caution (cautions, i));
  }
  g_autofree char *names = fm_allergens_join (stated);
  if (*names != '\0')
    /* TRANSLATORS: "milk, mustard" */
    g_string_append_printf (text, _ ("Allergens stated for the samples: %s. "), names);
  else if (n_unstated == 0)
    g_string_append (text, _ ("Allergens stated for the samples: none of the listed ones. "));
  if (n_unstated > 0)
    g_string_append_printf (text,
                            ngettext ("For %u of %u samples allergens are not all stated: any may "
                                      "be in it. ",
                                      "For %u of %u samples allergens are not all stated: any may "
                                      "be in them. ",
                                      n_unstated),
                            n_unstated, cautions->len);
  g_string_append (text, _ ("Who must avoid something asks before tasting."));
  return g_string_free (text, FALSE);
}
