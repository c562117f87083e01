/* SPDX-FileCopyrightText: 2026 the Forcemeat developers
 * SPDX-License-Identifier: GPL-3.0-or-later */
/* fm-reader-html.c - the card for readers at home, as a page of the web with JSON-LD
 *
 * Names of properties: schema.org, Recipe, HowToStep and NutritionInformation.
 */
#include <glib/gi18n-lib.h>
#include <json-glib/json-glib.h>
#include <math.h>
#include <string.h>

#include "core/cooking/fm-caution.h"
#include "core/formula/fm-analysis.h"
#include "report/fm-reader-card-private.h"

#define MINUTES_PER_HOUR 60

/* Per raw patty; the unit stands behind the number, as schema.org asks of a mass. */
static const struct {
  const char *property;
  FmNutrient nutrient;
  const char *unit;
} nutrition[] = {
  { "calories", FM_NUTRIENT_ENERGY_KCAL, "kcal" },
  { "fatContent", FM_NUTRIENT_FAT, "g" },
  { "saturatedFatContent", FM_NUTRIENT_SATURATED_FAT, "g" },
  { "cholesterolContent", FM_NUTRIENT_CHOLESTEROL, "mg" },
  { "sodiumContent", FM_NUTRIENT_SODIUM, "mg" },
  { "carbohydrateContent", FM_NUTRIENT_CARBOHYDRATE, "g" },
  { "fiberContent", FM_NUTRIENT_FIBRE, "g" },
  { "sugarContent", FM_NUTRIENT_SUGARS, "g" },
  { "proteinContent", FM_NUTRIENT_PROTEIN, "g" },
};

char *
fm_duration_iso (double minutes)
{
  const int whole = isnan (minutes) || minutes < 0.0 ? -1 : (int)lround (minutes);
  const int hours = whole / MINUTES_PER_HOUR, rest = whole % MINUTES_PER_HOUR;

  if (whole < 0)
    return NULL;
  if (hours > 0 && rest > 0)
    return g_strdup_printf ("PT%dH%dM", hours, rest);
  return hours > 0 ? g_strdup_printf ("PT%dH", hours) : g_strdup_printf ("PT%dM", rest);
}

static void
add_text (JsonBuilder *builder, const char *name, const char *text)
{
  if (text == NULL)
    return;
  json_builder_set_member_name (builder, name);
  json_builder_add_string_value (builder, text);
}

static void
add_nutrition (JsonBuilder *builder, const FmFormula *formula, double patty_g)
{
  g_autoptr (FmAnalysis) analysis = fm_analysis_new (formula);
  g_autofree char *size = g_strdup_printf ("1 raw patty (%.0f g)", patty_g);

  json_builder_set_member_name (builder, "nutrition");
  json_builder_begin_object (builder);
  add_text (builder, "@type", "NutritionInformation");
  add_text (builder, "servingSize", size);
  for (guint i = 0; i < G_N_ELEMENTS (nutrition); i++) {
    const double amount = fm_analysis_value (analysis, nutrition[i].nutrient) * patty_g / 100.0;
    char number[G_ASCII_DTOSTR_BUF_SIZE];
    g_autofree char *text = NULL;

    if (isnan (amount))
      continue;
    g_ascii_formatd (number, sizeof number, amount < 10.0 ? "%.1f" : "%.0f", amount);
    text = g_strdup_printf ("%s %s", number, nutrition[i].unit);
    add_text (builder, nutrition[i].property, text);
  }
  json_builder_end_object (builder);
}

static void
add_list (JsonBuilder *builder, const char *name, const char *const *lines, const char *type)
{
  json_builder_set_member_name (builder, name);
  json_builder_begin_array (builder);
  for (; *lines != NULL; lines++) {
    if (type == NULL) {
      json_builder_add_string_value (builder, *lines);
      continue;
    }
    json_builder_begin_object (builder);
    add_text (builder, "@type", type);
    add_text (builder, "text", *lines);
    json_builder_end_object (builder);
  }
  json_builder_end_array (builder);
}

/* The text of the cards, gathered once. */
typedef struct {
  char *yield;
  GStrv ingredients;
  GStrv steps;
  char *cook_time;
} Texts;

static void
texts_clear (Texts *self)
{
  g_free (self->yield);
  g_strfreev (self->ingredients);
  g_strfreev (self->steps);
  g_free (self->cook_time);
}

G_DEFINE_AUTO_CLEANUP_CLEAR_FUNC (Texts, texts_clear)

static char *
make_json (const FmHomeAmounts *amounts,
           const FmBatchSheetInput *input,
           const Texts *texts,
           const char *date)
{
  g_autoptr (JsonBuilder) builder = json_builder_new ();
  g_autoptr (JsonNode) root = NULL;

  json_builder_begin_object (builder);
  add_text (builder, "@context", "https://schema.org");
  add_text (builder, "@type", "Recipe");
  add_text (builder, "name", input->blend_name);
  add_text (builder, "description", input->notice);
  add_text (builder, "version", input->version_name);
  add_text (builder, "datePublished", date);
  add_text (builder, "recipeYield", texts->yield);
  add_text (builder, "cookTime", texts->cook_time);
  add_list (builder, "recipeIngredient", (const char *const *)texts->ingredients, NULL);
  add_list (builder, "recipeInstructions", (const char *const *)texts->steps, "HowToStep");
  add_nutrition (builder, amounts->formula, fm_reader_patty_g (amounts, input));
  json_builder_end_object (builder);
  root = json_builder_get_root (builder);
  return json_to_string (root, TRUE);
}

/* Within a script the text must not end it. */
static void
append_script (GString *page, const char *json)
{
  g_autoptr (GString) text = g_string_new (json);

  g_string_replace (text, "</", "<\\/", 0);
  g_string_append_printf (page, "<script type=\"application/ld+json\">\n%s\n</script>\n",
                          text->str);
}

static void
append_element (GString *page, const char *element, const char *text)
{
  g_autofree char *safe = g_markup_escape_text (text, -1);

  g_string_append_printf (page, "<%s>%s</%s>\n", element, safe, element);
}

static void
append_list (GString *page, const char *element, const char *const *lines)
{
  g_string_append_printf (page, "<%s>\n", element);
  for (; *lines != NULL; lines++)
    append_element (page, "li", *lines);
  g_string_append_printf (page, "</%s>\n", element);
}

static void
append_body (GString *page,
             const FmBatchSheetInput *input,
             const Texts *texts,
             const FmHomeAmounts *amounts)
{
  g_autofree char *figure = fm_caution_figure_text (input->food.species);

  if (input->notice != NULL)
    append_element (page, "p", input->notice);
  append_element (page, "h1", input->blend_name);
  append_element (page, "p", texts->yield);
  append_element (page, "p", input->version_name);
  append_element (page, "h2", _ ("Ingredients"));
  append_list (page, "ul", (const char *const *)texts->ingredients);
  append_element (page, "p", fm_reader_rounding_note (amounts));
  append_element (page, "h2", _ ("Steps"));
  append_list (page, "ol", (const char *const *)texts->steps);
  append_element (page, "h2", _ ("Ground meat"));
  append_element (page, "p", fm_caution_text ());
  append_element (page, "p", figure);
}

char *
fm_reader_card_html (const FmFormula *formula,
                     const FmBatchSheetInput *input,
                     gboolean ounces,
                     const char *date,
                     GError **error)
{
  g_autoptr (FmHomeAmounts) amounts =
      fm_home_amounts_new (formula, input->plan.n_patties, ounces, error);
  g_auto (Texts) texts = { NULL };
  g_autofree char *json = NULL;
  GString *page;

  if (amounts == NULL)
    return NULL;
  texts.yield = fm_reader_yield (amounts, input, ounces);
  texts.ingredients = fm_reader_ingredients (amounts, ounces);
  texts.steps = fm_reader_steps (formula, input);
  texts.cook_time = fm_duration_iso (fm_reader_cook_minutes (formula));
  json = make_json (amounts, input, &texts, date);
  page = g_string_new ("<!DOCTYPE html>\n<html>\n<head>\n<meta charset=\"utf-8\">\n");
  append_element (page, "title", input->blend_name);
  append_script (page, json);
  g_string_append (page, "</head>\n<body>\n");
  append_body (page, input, &texts, amounts);
  g_string_append (page, "</body>\n</html>\n");
  return g_string_free (page, FALSE);
}
