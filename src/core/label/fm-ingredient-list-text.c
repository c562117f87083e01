/* SPDX-FileCopyrightText: 2026 the Forcemeat developers
 * SPDX-License-Identifier: GPL-3.0-or-later */
/* fm-ingredient-list-text.c - the words of an ingredient list, and what is emphasised in them */
#include "core/label/fm-ingredient-list-private.h"

#include <glib/gi18n-lib.h>
#include <math.h>
#include <string.h>

#include "core/base/fm-number.h"

/* A share may lie on the limit that it was weighed for. */
#define SLACK_PCT 1e-9
#define WHOLE_PCT 100.0

/* Words of a label, as those of the sources: the statement's name, then what stands for it. */
static const struct {
  const char *us_name;
  const char *words[8];
} allergens[FM_N_ALLERGENS] = {
  [FM_ALLERGEN_MILK] = { "Milk",
                         { "milk", "cheese", "butter", "cream", "whey", "casein", "lactose" } },
  [FM_ALLERGEN_EGGS] = { "Egg", { "egg" } },
  [FM_ALLERGEN_FISH] = { "Fish", { "fish", "anchov", "cod", "salmon", "tuna" } },
  [FM_ALLERGEN_CRUSTACEANS] = { "Crustacean shellfish",
                                { "crustacean", "shrimp", "prawn", "crab", "lobster" } },
  [FM_ALLERGEN_NUTS] = { "Tree nuts",
                         { "almond", "hazelnut", "walnut", "cashew", "pecan", "pistachio",
                           "macadamia", "brazil nut" } },
  [FM_ALLERGEN_WHEAT] = { "Wheat", { "wheat", "spelt" } },
  [FM_ALLERGEN_PEANUTS] = { "Peanuts", { "peanut" } },
  [FM_ALLERGEN_SOYBEANS] = { "Soy", { "soy" } },
  [FM_ALLERGEN_SESAME] = { "Sesame", { "sesame" } },
  [FM_ALLERGEN_OTHER_GLUTEN] = { NULL, { "rye", "barley", "oat" } },
  [FM_ALLERGEN_CELERY] = { NULL, { "celery", "celeriac" } },
  [FM_ALLERGEN_MUSTARD] = { NULL, { "mustard" } },
  [FM_ALLERGEN_SULPHITES] = { NULL, { "sulphite", "sulphur dioxide", "sulfite" } },
  [FM_ALLERGEN_LUPIN] = { NULL, { "lupin" } },
  [FM_ALLERGEN_MOLLUSCS] = { NULL, { "mollusc", "squid", "mussel", "oyster" } },
};

static gboolean
is_letter_at (const char *text, gssize at)
{
  return at >= 0 && g_ascii_isalpha (text[at]);
}

static void
emphasise (FmIngredientList *self, GString *text, gsize start, gsize end)
{
  const FmTextSpan span = { (guint)start, (guint)end };

  for (gsize i = start; i < end; i++)
    text->str[i] = g_ascii_toupper (text->str[i]);
  g_array_append_val (self->spans, span);
}

/* To the end of the word, so that "egg" takes "eggs" along. Returns how often it stood there. */
static guint
emphasise_word (FmIngredientList *self, GString *text, gsize from, const char *word)
{
  const gsize length = strlen (word);
  guint n = 0;

  for (gsize i = from; i + length <= text->len; i++) {
    gsize end = i + length;

    if (is_letter_at (text->str, (gssize)i - 1) ||
        g_ascii_strncasecmp (text->str + i, word, length) != 0)
      continue;
    while (is_letter_at (text->str, (gssize)end))
      end++;
    emphasise (self, text, i, end);
    n++;
    i = end;
  }
  return n;
}

static void
add_name (FmIngredientList *self, GString *text, FmAllergen allergen)
{
  g_autofree char *name = g_ascii_strdown (fm_allergen_name (allergen), -1);
  gsize start;

  g_string_append (text, _ (" (contains "));
  start = text->len;
  g_string_append (text, name);
  emphasise (self, text, start, text->len);
  g_string_append_c (text, ')');
}

static void
emphasise_allergens (FmIngredientList *self, GString *text, gsize from, FmAllergenSet set)
{
  for (int i = 0; i < FM_N_ALLERGENS; i++) {
    guint n = 0;

    if ((set & FM_ALLERGEN_BIT (i)) == 0)
      continue;
    for (guint j = 0; j < G_N_ELEMENTS (allergens[i].words) && allergens[i].words[j] != NULL; j++)
      n += emphasise_word (self, text, from, allergens[i].words[j]);
    if (n == 0)
      add_name (self, text, (FmAllergen)i);
  }
}

/* The European share of a meat: in percent, or above that as the mass in 100 g. */
static void
append_quid (GString *text, const FmListEntry *entry, double finished_g)
{
  const double share_pct = 100.0 * entry->mass_g / finished_g;
  g_autofree char *number = fm_number_format (share_pct, 0);

  if (share_pct > WHOLE_PCT + SLACK_PCT)
    g_string_append_printf (text, _ (" (made with %s g of %s per 100 g)"), number, entry->name);
  else
    g_string_append_printf (text, " (%s%%)", number);
}

static void
append_entry (FmIngredientList *self,
              GString *text,
              const FmListEntry *entry,
              double finished_g,
              FmLabelSetId set)
{
  const gsize from = text->len;

  g_string_append (text, entry->name);
  if (set == FM_LABEL_EU && fm_list_entry_is_meat (entry))
    append_quid (text, entry, finished_g);
  if (entry->parts != NULL)
    g_string_append_printf (text, " (%s)", entry->parts);
  if (set == FM_LABEL_EU)
    emphasise_allergens (self, text, from, entry->allergens);
}

static gboolean
is_gathered (const FmListEntry *entry, double total_g, const FmIngredientListInput *input)
{
  return input->set != FM_LABEL_EU &&
         100.0 * entry->mass_g / total_g <= input->gather_pct + SLACK_PCT;
}

static double
sum_mass_g (GPtrArray *entries)
{
  double sum_g = 0.0;

  for (guint i = 0; i < entries->len; i++)
    sum_g += ((const FmListEntry *)g_ptr_array_index (entries, i))->mass_g;
  return sum_g;
}

/* The gathered ones stand last, as they are the lightest. */
static char *
write_list (FmIngredientList *self,
            GPtrArray *entries,
            double finished_g,
            const FmIngredientListInput *input)
{
  GString *text = g_string_new (NULL);
  const double total_g = sum_mass_g (entries);
  gboolean is_gathering = FALSE;

  for (guint i = 0; i < entries->len; i++) {
    const FmListEntry *entry = g_ptr_array_index (entries, i);

    if (!(entry->mass_g > 0.0))
      continue;
    if (text->len > 0)
      g_string_append (text, ", ");
    if (!is_gathering && is_gathered (entry, total_g, input)) {
      char limit[G_ASCII_DTOSTR_BUF_SIZE];

      g_ascii_formatd (limit, sizeof limit, "%g", input->gather_pct);
      g_string_append_printf (text, "contains %s%% or less of ", limit);
      is_gathering = TRUE;
    }
    append_entry (self, text, entry, finished_g, input->set);
  }
  if (input->set != FM_LABEL_EU && text->len > 0)
    text->str[0] = g_ascii_toupper (text->str[0]);
  return g_string_free (text, FALSE);
}

static FmAllergenSet
all_allergens (GPtrArray *entries)
{
  FmAllergenSet set = 0;

  for (guint i = 0; i < entries->len; i++)
    set |= ((const FmListEntry *)g_ptr_array_index (entries, i))->allergens;
  return set;
}

/* FALCPA, section 203: right after the list. */
static char *
write_contains (FmAllergenSet set)
{
  g_autoptr (GString) text = g_string_new (NULL);

  for (int i = 0; i < FM_N_ALLERGENS; i++)
    if ((set & FM_ALLERGEN_BIT (i)) != 0 && allergens[i].us_name != NULL)
      g_string_append_printf (text, "%s%s", text->len > 0 ? ", " : "", allergens[i].us_name);
  return text->len > 0 ? g_strdup_printf ("Contains: %s", text->str) : NULL;
}

static void
note_meat (GString *notes, const FmListEntry *entry)
{
  const double ratio_pct = 100.0 * entry->collagen_g / entry->protein_g;
  g_autofree char *tissue = fm_number_format_unit (
      fm_connective_tissue_pct (100.0 * entry->collagen_g / entry->mass_g), 1, "%");

  if (isnan (fm_meat_fat_limit_pct (entry->species)))
    g_string_append_printf (notes, _ ("%s: no limit of fat is on record for this kind of meat.\n"),
                            entry->name);
  else if (isnan (entry->fat_g))
    g_string_append_printf (
        notes, _ ("%s: its fat is not known, so its share counts as all meat.\n"), entry->name);
  if (ratio_pct > fm_meat_collagen_limit_pct (entry->species))
    g_string_append_printf (
        notes,
        _ ("%s: collagen is above the limit of Annex VII Part B no 17; connective "
           "tissue is %s of it, and what is over must be named. It is not taken off here.\n"),
        entry->name, tissue);
}

/* An organ of an animal is not. */
static gboolean
may_be_compound (const FmListEntry *entry)
{
  if (entry->kind == FM_INGREDIENT_OTHER)
    return entry->species == FM_SPECIES_NONE || entry->species == FM_SPECIES_UNKNOWN;
  return entry->kind == FM_INGREDIENT_CURED || entry->kind == FM_INGREDIENT_BINDER;
}

static void
note_entry (GString *notes, const FmListEntry *entry, FmLabelSetId set)
{
  if (may_be_compound (entry) && entry->parts == NULL)
    g_string_append_printf (notes, _ ("%s: state what it is made of, if it is a compound.\n"),
                            entry->name);
  if (set == FM_LABEL_EU && fm_list_entry_is_meat (entry))
    note_meat (notes, entry);
}

static char *
write_notes (GPtrArray *entries, FmLabelSetId set)
{
  GString *notes = g_string_new (NULL);
  const FmAllergenSet by_species = FM_ALLERGEN_BIT (FM_ALLERGEN_FISH) |
                                   FM_ALLERGEN_BIT (FM_ALLERGEN_CRUSTACEANS) |
                                   FM_ALLERGEN_BIT (FM_ALLERGEN_NUTS);

  for (guint i = 0; i < entries->len; i++)
    note_entry (notes, g_ptr_array_index (entries, i), set);
  if ((all_allergens (entries) & by_species) != 0)
    g_string_append (notes, _ ("Fish, shellfish and nuts must be named by kind.\n"));
  return g_string_free (notes, FALSE);
}

void
fm_ingredient_list_write (FmIngredientList *self,
                          GPtrArray *entries,
                          double finished_g,
                          const FmIngredientListInput *input)
{
  self->notes = write_notes (entries, input->set);
  if (self->held_back != NULL)
    return;
  self->text = write_list (self, entries, finished_g, input);
  if (input->set != FM_LABEL_EU)
    self->contains = write_contains (all_allergens (entries));
}
