/* SPDX-FileCopyrightText: 2026 the Forcemeat developers
 * SPDX-License-Identifier: GPL-3.0-or-later */
/* fm-formula-line-item.c - what one row of the formula shows, and the list of them */
#include "app/session/fm-formula-line-item.h"

#include <math.h>

#include <glib/gi18n-lib.h>

#include "core/base/fm-double.h"

struct _FmFormulaLineItem {
  GObject parent_instance;

  FmLineFigures figures;
};

G_DEFINE_FINAL_TYPE (FmFormulaLineItem, fm_formula_line_item, G_TYPE_OBJECT)

enum {
  CHANGED,
  N_SIGNALS,
};

static guint signals[N_SIGNALS];

static gboolean
same_figures (const FmLineFigures *a, const FmLineFigures *b)
{
  return a->ingredient == b->ingredient && a->locked == b->locked && a->editable == b->editable &&
         a->position == b->position && a->n_lines == b->n_lines && a->n_patties == b->n_patties &&
         fm_double_same (a->mass_g, b->mass_g) && fm_double_same (a->share_pct, b->share_pct) &&
         fm_double_same (a->patty_g, b->patty_g) && fm_double_same (a->batch_g, b->batch_g) &&
         fm_double_same (a->fat_g, b->fat_g) && fm_double_same (a->fat_share_pct, b->fat_share_pct);
}

static void
fm_formula_line_item_finalize (GObject *object)
{
  FmFormulaLineItem *self = FM_FORMULA_LINE_ITEM (object);

  g_free (self->figures.id);
  g_clear_pointer (&self->figures.ingredient, fm_ingredient_unref);
  G_OBJECT_CLASS (fm_formula_line_item_parent_class)->finalize (object);
}

static void
fm_formula_line_item_class_init (FmFormulaLineItemClass *klass)
{
  G_OBJECT_CLASS (klass)->finalize = fm_formula_line_item_finalize;
  signals[CHANGED] = g_signal_new ("changed", FM_TYPE_FORMULA_LINE_ITEM, G_SIGNAL_RUN_LAST, 0, NULL,
                                   NULL, NULL, G_TYPE_NONE, 0);
}

static void
fm_formula_line_item_init (FmFormulaLineItem *self)
{
}

static void
take_figures (FmFormulaLineItem *self, const FmLineFigures *next)
{
  FmIngredient *old = self->figures.ingredient;
  char *id = self->figures.id;

  if (same_figures (&self->figures, next))
    return;
  self->figures = *next;
  self->figures.id = id;
  self->figures.ingredient = fm_ingredient_ref (next->ingredient);
  g_clear_pointer (&old, fm_ingredient_unref);
  g_signal_emit (self, signals[CHANGED], 0);
}

const FmLineFigures *
fm_formula_line_item_get_figures (FmFormulaLineItem *self)
{
  g_return_val_if_fail (FM_IS_FORMULA_LINE_ITEM (self), NULL);
  return &self->figures;
}

/* Names of the page's main numbers that this ingredient lacks. */
static char *
list_unknowns (const FmIngredient *ingredient)
{
  static const FmNutrient wanted[] = { FM_NUTRIENT_PROTEIN, FM_NUTRIENT_WATER,
                                       FM_NUTRIENT_ENERGY_KCAL };
  g_autoptr (GStrvBuilder) builder = g_strv_builder_new ();
  g_auto (GStrv) names = NULL;

  if (isnan (fm_ingredient_fat_g_per_100g (ingredient)))
    g_strv_builder_add (builder, _ ("fat"));
  for (guint i = 0; i < G_N_ELEMENTS (wanted); i++) {
    if (!fm_composition_is_known (&ingredient->composition, wanted[i])) {
      g_autofree char *lower = g_utf8_strdown (fm_nutrient_name (wanted[i]), -1);

      g_strv_builder_add (builder, lower);
    }
  }
  names = g_strv_builder_end (builder);
  return names[0] != NULL ? g_strjoinv (", ", names) : NULL;
}

char *
fm_formula_line_item_describe (FmFormulaLineItem *self)
{
  const FmIngredient *ingredient = NULL;
  g_autofree char *unknowns = NULL;
  const char *source = NULL;

  g_return_val_if_fail (FM_IS_FORMULA_LINE_ITEM (self), NULL);
  ingredient = self->figures.ingredient;
  source = fm_provenance_name (ingredient->provenance);
  unknowns = list_unknowns (ingredient);
  if (unknowns != NULL)
    /* Translators: where numbers come from, then names of nutrients that are not known. */
    return g_strdup_printf (_ ("%s; not known: %s"), source, unknowns);
  if (ingredient->provenance == FM_PROVENANCE_DATASET && ingredient->source_ref != NULL)
    /* Translators: number of a row of the food-composition dataset; room is scarce. */
    return g_strdup_printf (_ ("Dataset, row %s"), ingredient->source_ref);
  if (ingredient->source_ref != NULL && ingredient->source_ref[0] != '\0')
    return g_strdup_printf ("%s %s", source, ingredient->source_ref);
  return g_strdup (source);
}

struct _FmFormulaLineList {
  GObject parent_instance;

  GPtrArray *items;
};

static void list_model_init (GListModelInterface *iface);

G_DEFINE_FINAL_TYPE_WITH_CODE (FmFormulaLineList,
                               fm_formula_line_list,
                               G_TYPE_OBJECT,
                               G_IMPLEMENT_INTERFACE (G_TYPE_LIST_MODEL, list_model_init))

static GType
list_get_item_type (GListModel *model)
{
  return FM_TYPE_FORMULA_LINE_ITEM;
}

static guint
list_get_n_items (GListModel *model)
{
  return FM_FORMULA_LINE_LIST (model)->items->len;
}

static gpointer
list_get_item (GListModel *model, guint position)
{
  GPtrArray *items = FM_FORMULA_LINE_LIST (model)->items;

  return position < items->len ? g_object_ref (g_ptr_array_index (items, position)) : NULL;
}

static void
list_model_init (GListModelInterface *iface)
{
  iface->get_item_type = list_get_item_type;
  iface->get_n_items = list_get_n_items;
  iface->get_item = list_get_item;
}

static void
fm_formula_line_list_finalize (GObject *object)
{
  g_ptr_array_unref (FM_FORMULA_LINE_LIST (object)->items);
  G_OBJECT_CLASS (fm_formula_line_list_parent_class)->finalize (object);
}

static void
fm_formula_line_list_class_init (FmFormulaLineListClass *klass)
{
  G_OBJECT_CLASS (klass)->finalize = fm_formula_line_list_finalize;
}

static void
fm_formula_line_list_init (FmFormulaLineList *self)
{
  self->items = g_ptr_array_new_with_free_func (g_object_unref);
}

FmFormulaLineList *
fm_formula_line_list_new (void)
{
  return g_object_new (FM_TYPE_FORMULA_LINE_LIST, NULL);
}

static FmLineFigures
figures_of_line (const FmFormula *formula,
                 const FmAnalysis *analysis,
                 guint position,
                 gboolean editable)
{
  const FmFormulaLine *line = fm_formula_line (formula, position);
  const double share_pct = analysis->line_share_pct[position];
  const double patty_g = share_pct / 100.0 * formula->brief->patty_mass_g;

  return (FmLineFigures){
    .ingredient = line->ingredient,
    .mass_g = line->mass_g,
    .share_pct = share_pct,
    .patty_g = patty_g,
    .batch_g = patty_g * formula->brief->n_patties,
    .fat_g = analysis->line_fat_g[position],
    .fat_share_pct = analysis->line_fat_share_pct[position],
    .n_patties = formula->brief->n_patties,
    .position = position,
    .n_lines = fm_formula_n_lines (formula),
    .locked = line->locked,
    .editable = editable,
  };
}

static FmFormulaLineItem *
find_or_make (GPtrArray *items, const char *id)
{
  FmFormulaLineItem *made = NULL;

  for (guint i = 0; i < items->len; i++) {
    FmFormulaLineItem *item = g_ptr_array_index (items, i);

    if (g_str_equal (item->figures.id, id))
      return g_object_ref (item);
  }
  made = g_object_new (FM_TYPE_FORMULA_LINE_ITEM, NULL);
  made->figures.id = g_strdup (id);
  return made;
}

/* Announces only the run of rows that differs: what stays in place keeps its widgets. */
static void
replace_items (FmFormulaLineList *self, GPtrArray *next)
{
  g_autoptr (GPtrArray) old = g_steal_pointer (&self->items);
  const guint shorter = MIN (old->len, next->len);
  guint head = 0;
  guint tail = 0;

  self->items = g_ptr_array_ref (next);
  while (head < shorter && g_ptr_array_index (old, head) == g_ptr_array_index (next, head))
    head++;
  while (tail < shorter - head && g_ptr_array_index (old, old->len - 1 - tail) ==
                                      g_ptr_array_index (next, next->len - 1 - tail))
    tail++;
  if (old->len != next->len || head < shorter)
    g_list_model_items_changed (G_LIST_MODEL (self), head, old->len - head - tail,
                                next->len - head - tail);
}

void
fm_formula_line_list_update (FmFormulaLineList *self,
                             const FmFormula *formula,
                             const FmAnalysis *analysis,
                             gboolean editable)
{
  g_autoptr (GPtrArray) next = g_ptr_array_new_with_free_func (g_object_unref);
  const guint n_lines = formula != NULL && analysis != NULL ? fm_formula_n_lines (formula) : 0;

  g_return_if_fail (FM_IS_FORMULA_LINE_LIST (self));
  for (guint i = 0; i < n_lines; i++) {
    FmFormulaLineItem *item = find_or_make (self->items, fm_formula_line (formula, i)->id);
    const FmLineFigures figures = figures_of_line (formula, analysis, i, editable);

    take_figures (item, &figures);
    g_ptr_array_add (next, item);
  }
  replace_items (self, next);
}
