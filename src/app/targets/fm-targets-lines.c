/* SPDX-FileCopyrightText: 2026 the Forcemeat developers
 * SPDX-License-Identifier: GPL-3.0-or-later */
/* fm-targets-lines.c - the permitted ingredients: the lines of the blend and what else may be used
 */
#include "app/targets/fm-targets-lines.h"

#include <glib/gi18n-lib.h>
#include <math.h>

#include "app/ingredients/fm-food-search.h"
#include "app/ingredients/fm-ingredient-dialog.h"
#include "app/targets/fm-targets-line.h"
#include "app/widgets/fm-widget.h"
#include "core/composition/fm-fat-spread.h"
#include "core/targets/fm-targets.h"

struct _FmTargetsLines {
  GtkWidget parent_instance;

  GtkListBox *list;
  FmFoodSearch *search;
  GtkLabel *message_label;

  FmSession *session;
  FmFormula *formula; /* the owner's */
  guint n_present;
  GHashTable *freed; /* ids of lines whose kind keeps its share, but which may change */
};

G_DEFINE_FINAL_TYPE (FmTargetsLines, fm_targets_lines, GTK_TYPE_WIDGET)

enum {
  CHANGED,
  N_SIGNALS,
};

static guint signals[N_SIGNALS];

static void add_row (FmTargetsLines *self, guint index);

static void
say (FmTargetsLines *self, const char *text)
{
  gtk_label_set_text (self->message_label, text != NULL ? text : "");
  gtk_widget_set_visible (GTK_WIDGET (self->message_label), text != NULL);
}

/* A blend keeps the locks that its cook set: what keeps its share by its kind is noted here. */
static gboolean
store_line (FmTargetsLines *self, FmTargetsLine *row, FmFormulaLine *line)
{
  if (!fm_ingredient_kind_keeps_share (line->ingredient->kind))
    line->locked = fm_targets_line_keeps_mass (row);
  else if (fm_targets_line_keeps_mass (row))
    g_hash_table_remove (self->freed, line->id);
  else
    g_hash_table_add (self->freed, g_strdup (line->id));
  return fm_targets_line_store (row, line);
}

/* Keeps what was typed so far, even where a limit is not good yet. */
static void
store_row (FmTargetsLines *self, guint index)
{
  GtkListBoxRow *row = gtk_list_box_get_row_at_index (self->list, (int)index);

  store_line (self, FM_TARGETS_LINE (row), fm_formula_line (self->formula, index));
}

static void
fill_list (FmTargetsLines *self)
{
  GtkWidget *child = NULL;

  while ((child = gtk_widget_get_first_child (GTK_WIDGET (self->list))) != NULL)
    gtk_list_box_remove (self->list, child);
  for (guint i = 0; i < fm_formula_n_lines (self->formula); i++)
    add_row (self, i);
}

static void
limits_changed_cb (FmTargetsLines *self, FmTargetsLine *row)
{
  store_row (self, fm_targets_line_get_index (row));
  g_signal_emit (self, signals[CHANGED], 0);
}

static gboolean
is_permitted (FmTargetsLines *self, const FmIngredient *ingredient)
{
  for (guint i = 0; i < fm_formula_n_lines (self->formula); i++) {
    const FmFormulaLine *line = fm_formula_line (self->formula, i);

    if (g_str_equal (fm_ingredient_identity (line->ingredient),
                     fm_ingredient_identity (ingredient)))
      return TRUE;
  }
  return FALSE;
}

static void
permit (FmTargetsLines *self, FmIngredient *ingredient)
{
  g_autofree char *text = NULL;

  if (is_permitted (self, ingredient)) {
    text = g_strdup_printf (_ ("%s is in the list already."), ingredient->name);
    say (self, text);
    return;
  }
  if (fm_formula_n_lines (self->formula) >= FM_MAX_CANDIDATES) {
    say (self, _ ("The list is full. Take an ingredient out of it first."));
    return;
  }
  add_row (self, fm_formula_add (self->formula, ingredient, 0.0));
  text =
      fm_ingredient_kind_keeps_share (ingredient->kind)
          ? g_strdup_printf (_ ("%s is in the list, and stays out of the blend until “Keep mass” "
                                "is off: salt, spice, water and binders keep their share."),
                             ingredient->name)
          : g_strdup_printf (_ ("%s may be used now."), ingredient->name);
  say (self, text);
  g_signal_emit (self, signals[CHANGED], 0);
}

static void
chosen_cb (FmTargetsLines *self, FmIngredient *ingredient)
{
  permit (self, ingredient);
}

static void
own_entry_cb (FmTargetsLines *self, const char *text)
{
  g_autoptr (FmIngredient) blank = fm_ingredient_new (text, FM_INGREDIENT_CUT);
  FmIngredientDialog *dialog =
      fm_ingredient_dialog_ask (GTK_WIDGET (self), self->session, blank, TRUE);

  g_signal_connect_object (dialog, "written", G_CALLBACK (permit), self, G_CONNECT_SWAPPED);
}

/* The line is found again by what it holds: the list may have changed meanwhile. */
static void
figures_written_cb (FmTargetsLines *self, FmIngredient *ingredient)
{
  for (guint i = 0; i < fm_formula_n_lines (self->formula); i++) {
    store_row (self, i);
    if (g_str_equal (fm_formula_line (self->formula, i)->ingredient->id, ingredient->id))
      fm_formula_set_ingredient (self->formula, i, ingredient);
  }
  fill_list (self);
  g_signal_emit (self, signals[CHANGED], 0);
}

static void
figures_wanted_cb (FmTargetsLines *self, FmTargetsLine *row)
{
  const FmFormulaLine *line = fm_formula_line (self->formula, fm_targets_line_get_index (row));
  FmIngredientDialog *dialog =
      fm_ingredient_dialog_ask (GTK_WIDGET (self), self->session, line->ingredient, FALSE);

  g_signal_connect_object (dialog, "written", G_CALLBACK (figures_written_cb), self,
                           G_CONNECT_SWAPPED);
}

static void
removal_wanted_cb (FmTargetsLines *self, FmTargetsLine *row)
{
  for (guint i = 0; i < fm_formula_n_lines (self->formula); i++)
    store_row (self, i);
  fm_formula_remove (self->formula, fm_targets_line_get_index (row));
  fill_list (self);
  say (self, NULL);
  gtk_widget_grab_focus (GTK_WIDGET (self->search));
  g_signal_emit (self, signals[CHANGED], 0);
}

static void
add_row (FmTargetsLines *self, guint index)
{
  const FmFormulaLine *line = fm_formula_line (self->formula, index);
  GtkWidget *row = fm_targets_line_new (self->formula, index, index >= self->n_present,
                                        g_hash_table_contains (self->freed, line->id));

  g_signal_connect_swapped (row, "limits-changed", G_CALLBACK (limits_changed_cb), self);
  g_signal_connect_swapped (row, "figures-wanted", G_CALLBACK (figures_wanted_cb), self);
  g_signal_connect_swapped (row, "removal-wanted", G_CALLBACK (removal_wanted_cb), self);
  gtk_list_box_append (self->list, row);
}

static void
fm_targets_lines_dispose (GObject *object)
{
  FmTargetsLines *self = FM_TARGETS_LINES (object);

  self->formula = NULL;
  g_clear_object (&self->session);
  g_clear_pointer (&self->freed, g_hash_table_unref);
  fm_widget_drop_template (GTK_WIDGET (object), FM_TYPE_TARGETS_LINES);
  G_OBJECT_CLASS (fm_targets_lines_parent_class)->dispose (object);
}

static void
fm_targets_lines_class_init (FmTargetsLinesClass *klass)
{
  GtkWidgetClass *widget_class = GTK_WIDGET_CLASS (klass);

  G_OBJECT_CLASS (klass)->dispose = fm_targets_lines_dispose;
  g_type_ensure (FM_TYPE_FOOD_SEARCH);
  signals[CHANGED] = g_signal_new ("changed", FM_TYPE_TARGETS_LINES, G_SIGNAL_RUN_LAST, 0, NULL,
                                   NULL, NULL, G_TYPE_NONE, 0);
  gtk_widget_class_set_template_from_resource (
      widget_class, "/io/github/forcemeat/Forcemeat/ui/targets/fm-targets-lines.ui");
  gtk_widget_class_set_layout_manager_type (widget_class, GTK_TYPE_BIN_LAYOUT);
  gtk_widget_class_bind_template_child (widget_class, FmTargetsLines, list);
  gtk_widget_class_bind_template_child (widget_class, FmTargetsLines, search);
  gtk_widget_class_bind_template_child (widget_class, FmTargetsLines, message_label);
  gtk_widget_class_bind_template_callback (widget_class, chosen_cb);
  gtk_widget_class_bind_template_callback (widget_class, own_entry_cb);
}

static void
fm_targets_lines_init (FmTargetsLines *self)
{
  gtk_widget_init_template (GTK_WIDGET (self));
  self->freed = g_hash_table_new_full (g_str_hash, g_str_equal, g_free, NULL);
}

void
fm_targets_lines_set_formula (FmTargetsLines *self, FmSession *session, FmFormula *formula)
{
  g_return_if_fail (FM_IS_TARGETS_LINES (self));
  g_set_object (&self->session, session);
  self->formula = formula;
  self->n_present = fm_formula_n_lines (formula);
  fm_food_search_set_session (self->search, session);
  fill_list (self);
}

gboolean
fm_targets_lines_keeps_mass (FmTargetsLines *self, guint index)
{
  const FmFormulaLine *line = NULL;

  g_return_val_if_fail (FM_IS_TARGETS_LINES (self), FALSE);
  line = fm_formula_line (self->formula, index);
  return fm_ingredient_kind_keeps_share (line->ingredient->kind)
             ? !g_hash_table_contains (self->freed, line->id)
             : line->locked;
}

guint
fm_targets_lines_n_present (FmTargetsLines *self)
{
  g_return_val_if_fail (FM_IS_TARGETS_LINES (self), 0);
  return self->n_present;
}

/* A spread that is published and would be new to the line; NULL otherwise. */
static const FmFatSpread *
lacking_spread (const FmFormulaLine *line)
{
  return isnan (line->ingredient->fat_u_g_per_100g) ? fm_fat_spread_of (line->ingredient) : NULL;
}

gboolean
fm_targets_lines_lack_spread (FmTargetsLines *self)
{
  g_return_val_if_fail (FM_IS_TARGETS_LINES (self), FALSE);
  for (guint i = 0; i < fm_formula_n_lines (self->formula); i++) {
    if (lacking_spread (fm_formula_line (self->formula, i)) != NULL)
      return TRUE;
  }
  return FALSE;
}

void
fm_targets_lines_take_spreads (FmTargetsLines *self)
{
  g_return_if_fail (FM_IS_TARGETS_LINES (self));
  for (guint i = 0; i < fm_formula_n_lines (self->formula); i++) {
    const FmFormulaLine *line = fm_formula_line (self->formula, i);
    const FmFatSpread *spread = lacking_spread (line);
    g_autoptr (FmIngredient) next = NULL;

    if (spread == NULL)
      continue;
    next = fm_ingredient_copy (line->ingredient);
    next->fat_u_g_per_100g = fm_fat_spread_sd_g (spread);
    fm_formula_set_ingredient (self->formula, i, next);
  }
  g_signal_emit (self, signals[CHANGED], 0);
}

gboolean
fm_targets_lines_store (FmTargetsLines *self)
{
  gboolean good = TRUE;

  g_return_val_if_fail (FM_IS_TARGETS_LINES (self), FALSE);
  for (guint i = 0; i < fm_formula_n_lines (self->formula); i++) {
    GtkListBoxRow *row = gtk_list_box_get_row_at_index (self->list, (int)i);

    good &= store_line (self, FM_TARGETS_LINE (row), fm_formula_line (self->formula, i));
  }
  return good;
}
