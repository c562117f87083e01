/* SPDX-FileCopyrightText: 2026 the Forcemeat developers
 * SPDX-License-Identifier: GPL-3.0-or-later */
/* fm-food-list.c - the foods found, one of them highlighted */
#include "app/ingredients/fm-food-list.h"

#include "app/ingredients/fm-food-row.h"
#include "app/ingredients/fm-own-removal.h"
#include "app/widgets/fm-widget.h"

#define MAX_LIST_HEIGHT 280

struct _FmFoodList {
  GtkWidget parent_instance;

  GtkScrolledWindow *scroller;
  GtkListBox *list;

  const FmFoodFound *found;
  guint show_highlight_id; /* tick that scrolls to the highlight */
};

G_DEFINE_FINAL_TYPE (FmFoodList, fm_food_list, GTK_TYPE_WIDGET)

enum {
  HIGHLIGHTED,
  OWN_TAKEN,
  FOOD_TAKEN,
  WRITE_TAKEN,
  N_SIGNALS,
};

static guint signals[N_SIGNALS];

/* The page scrolls too and grants minimum heights only, so the list asks for what it needs. */
static void
fit_list (FmFoodList *self)
{
  const int width = gtk_widget_get_width (gtk_widget_get_parent (GTK_WIDGET (self)));
  int height = 0;

  gtk_widget_measure (GTK_WIDGET (self->list), GTK_ORIENTATION_VERTICAL, width > 0 ? width : -1,
                      &height, NULL, NULL, NULL);
  gtk_scrolled_window_set_min_content_height (self->scroller, MIN (height, MAX_LIST_HEIGHT));
}

/* Rows just made have no place before the next frame. */
static gboolean
show_highlight_cb (GtkWidget *widget, GdkFrameClock *clock, gpointer data)
{
  FmFoodList *self = data;
  GtkWidget *row = GTK_WIDGET (gtk_list_box_get_selected_row (self->list));
  graphene_rect_t bounds;

  if (row != NULL && gtk_widget_get_mapped (row)) {
    if (!gtk_widget_compute_bounds (row, widget, &bounds) || !(bounds.size.height > 0))
      return G_SOURCE_CONTINUE;
    gtk_adjustment_clamp_page (gtk_scrolled_window_get_vadjustment (self->scroller),
                               (double)bounds.origin.y,
                               (double)(bounds.origin.y + bounds.size.height));
  }
  self->show_highlight_id = 0;
  return G_SOURCE_REMOVE;
}

static void
highlight (FmFoodList *self, GtkListBoxRow *row)
{
  if (row == NULL)
    return;
  gtk_list_box_select_row (self->list, row);
  g_signal_emit (self, signals[HIGHLIGHTED], 0, fm_food_row_get_title (FM_FOOD_ROW (row)));
  if (self->show_highlight_id == 0)
    self->show_highlight_id =
        gtk_widget_add_tick_callback (GTK_WIDGET (self->list), show_highlight_cb, self, NULL);
}

static void
append_foods (FmFoodList *self, guint from, guint to)
{
  for (guint i = from; i < to; i++)
    gtk_list_box_append (self->list,
                         fm_food_row_new_food (g_ptr_array_index (self->found->hits, i), i));
}

static void
append_ready_made (FmFoodList *self)
{
  const guint first = fm_food_found_n_fresh (self->found);

  if (first == fm_food_found_n_hits (self->found))
    return;
  if (first + fm_food_found_n_own (self->found) == 0)
    append_foods (self, first, fm_food_found_n_hits (self->found));
  else
    gtk_list_box_append (self->list,
                         fm_food_row_new_ready (fm_food_found_n_hits (self->found) - first));
}

static void
show_rows (FmFoodList *self)
{
  const gboolean removable = fm_own_removal_is_offered (GTK_WIDGET (self));
  GtkWidget *child = NULL;

  while ((child = gtk_widget_get_first_child (GTK_WIDGET (self->list))) != NULL)
    gtk_list_box_remove (self->list, child);
  for (guint i = 0; i < fm_food_found_n_own (self->found); i++)
    gtk_list_box_append (
        self->list, fm_food_row_new_own (g_ptr_array_index (self->found->own, i), i, removable));
  append_foods (self, 0, fm_food_found_n_fresh (self->found));
  append_ready_made (self);
  if (self->found != NULL)
    gtk_list_box_append (self->list, fm_food_row_new_write (self->found->text));
}

/* Puts the ready-made foods where the row was that stood for them. */
static void
unfold (FmFoodList *self, GtkListBoxRow *row)
{
  const int at = gtk_list_box_row_get_index (row);
  const guint first = fm_food_found_n_fresh (self->found);

  gtk_list_box_remove (self->list, GTK_WIDGET (row));
  for (guint i = first; i < fm_food_found_n_hits (self->found); i++)
    gtk_list_box_insert (self->list,
                         fm_food_row_new_food (g_ptr_array_index (self->found->hits, i), i),
                         at + (int)(i - first));
  fit_list (self);
  highlight (self, gtk_list_box_get_row_at_index (self->list, at));
}

static void
take_row (FmFoodList *self, GtkListBoxRow *row)
{
  const guint index = fm_food_row_get_index (FM_FOOD_ROW (row));

  switch (fm_food_row_get_kind (FM_FOOD_ROW (row))) {
  case FM_FOOD_ROW_OWN:
    g_signal_emit (self, signals[OWN_TAKEN], 0, g_ptr_array_index (self->found->own, index));
    break;
  case FM_FOOD_ROW_FOOD:
    g_signal_emit (self, signals[FOOD_TAKEN], 0, g_ptr_array_index (self->found->hits, index));
    break;
  case FM_FOOD_ROW_READY:
    unfold (self, row);
    break;
  case FM_FOOD_ROW_WRITE:
    g_signal_emit (self, signals[WRITE_TAKEN], 0);
    break;
  }
}

static void
row_activated_cb (FmFoodList *self, GtkListBoxRow *row)
{
  take_row (self, row);
}

static void
fm_food_list_dispose (GObject *object)
{
  fm_widget_drop_template (GTK_WIDGET (object), FM_TYPE_FOOD_LIST);
  G_OBJECT_CLASS (fm_food_list_parent_class)->dispose (object);
}

static void
fm_food_list_class_init (FmFoodListClass *klass)
{
  GtkWidgetClass *widget_class = GTK_WIDGET_CLASS (klass);

  G_OBJECT_CLASS (klass)->dispose = fm_food_list_dispose;
  signals[HIGHLIGHTED] = g_signal_new ("highlighted", FM_TYPE_FOOD_LIST, G_SIGNAL_RUN_LAST, 0, NULL,
                                       NULL, NULL, G_TYPE_NONE, 1, G_TYPE_STRING);
  signals[OWN_TAKEN] = g_signal_new ("own-taken", FM_TYPE_FOOD_LIST, G_SIGNAL_RUN_LAST, 0, NULL,
                                     NULL, NULL, G_TYPE_NONE, 1, G_TYPE_POINTER);
  signals[FOOD_TAKEN] = g_signal_new ("food-taken", FM_TYPE_FOOD_LIST, G_SIGNAL_RUN_LAST, 0, NULL,
                                      NULL, NULL, G_TYPE_NONE, 1, G_TYPE_POINTER);
  signals[WRITE_TAKEN] = g_signal_new ("write-taken", FM_TYPE_FOOD_LIST, G_SIGNAL_RUN_LAST, 0, NULL,
                                       NULL, NULL, G_TYPE_NONE, 0);
  gtk_widget_class_set_template_from_resource (
      widget_class, "/io/github/forcemeat/Forcemeat/ui/ingredients/fm-food-list.ui");
  gtk_widget_class_set_layout_manager_type (widget_class, GTK_TYPE_BIN_LAYOUT);
  gtk_widget_class_bind_template_child (widget_class, FmFoodList, scroller);
  gtk_widget_class_bind_template_child (widget_class, FmFoodList, list);
  gtk_widget_class_bind_template_callback (widget_class, row_activated_cb);
}

static void
fm_food_list_init (FmFoodList *self)
{
  gtk_widget_init_template (GTK_WIDGET (self));
}

void
fm_food_list_show (FmFoodList *self, const FmFoodFound *found)
{
  g_return_if_fail (FM_IS_FOOD_LIST (self));
  self->found = found;
  show_rows (self);
  gtk_widget_set_visible (GTK_WIDGET (self), found != NULL);
  fit_list (self);
  highlight (self, gtk_list_box_get_row_at_index (self->list, 0));
  gtk_adjustment_set_value (gtk_scrolled_window_get_vadjustment (self->scroller), 0);
}

gboolean
fm_food_list_move (FmFoodList *self, int rows)
{
  GtkListBoxRow *row;

  g_return_val_if_fail (FM_IS_FOOD_LIST (self), FALSE);
  row = gtk_list_box_get_selected_row (self->list);
  if (row == NULL)
    return FALSE;
  highlight (self,
             gtk_list_box_get_row_at_index (self->list, gtk_list_box_row_get_index (row) + rows));
  return TRUE;
}

int
fm_food_list_get_own (FmFoodList *self)
{
  GtkListBoxRow *row;

  g_return_val_if_fail (FM_IS_FOOD_LIST (self), -1);
  row = gtk_list_box_get_selected_row (self->list);
  if (row == NULL || fm_food_row_get_kind (FM_FOOD_ROW (row)) != FM_FOOD_ROW_OWN)
    return -1;
  return (int)fm_food_row_get_index (FM_FOOD_ROW (row));
}

void
fm_food_list_take (FmFoodList *self)
{
  GtkListBoxRow *row;

  g_return_if_fail (FM_IS_FOOD_LIST (self));
  row = gtk_list_box_get_selected_row (self->list);
  if (row != NULL)
    take_row (self, row);
}
