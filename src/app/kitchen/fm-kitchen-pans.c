/* SPDX-FileCopyrightText: 2026 the Forcemeat developers
 * SPDX-License-Identifier: GPL-3.0-or-later */
/* fm-kitchen-pans.c - a tile for each position of the pan, and for what rests beside it */
#include "app/kitchen/fm-kitchen-pans.h"

#include <math.h>

#include "app/kitchen/fm-kitchen-tile.h"
#include "app/widgets/fm-widget.h"
#include "app/widgets/fm-wrap-layout.h"

#define N_RESTING 4

struct _FmKitchenPans {
  GtkWidget parent_instance;

  GtkWidget *box;
  GtkBox *pan_box;
  GtkBox *rest_box;
  FmKitchenTile *tiles[FM_KITCHEN_MAX_POSITIONS + N_RESTING];

  char *estimates[FM_KITCHEN_MAX_PORTIONS]; /* (nullable) */
};

G_DEFINE_FINAL_TYPE (FmKitchenPans, fm_kitchen_pans, GTK_TYPE_WIDGET)

enum {
  CHOSEN,
  N_SIGNALS,
};

static guint signals[N_SIGNALS];

static void
tile_chosen_cb (FmKitchenPans *self, FmKitchenTile *tile)
{
  g_signal_emit (self, signals[CHOSEN], 0, fm_kitchen_tile_get_portion (tile));
}

static void
add_tiles (FmKitchenPans *self)
{
  for (guint i = 0; i < G_N_ELEMENTS (self->tiles); i++) {
    GtkWidget *tile = fm_kitchen_tile_new ();

    self->tiles[i] = FM_KITCHEN_TILE (tile);
    g_signal_connect_swapped (tile, "chosen", G_CALLBACK (tile_chosen_cb), self);
    gtk_box_append (i < FM_KITCHEN_MAX_POSITIONS ? self->pan_box : self->rest_box, tile);
  }
}

static void
fm_kitchen_pans_dispose (GObject *object)
{
  FmKitchenPans *self = FM_KITCHEN_PANS (object);

  fm_widget_drop_template (GTK_WIDGET (object), FM_TYPE_KITCHEN_PANS);
  for (guint i = 0; i < FM_KITCHEN_MAX_PORTIONS; i++)
    g_clear_pointer (&self->estimates[i], g_free);
  G_OBJECT_CLASS (fm_kitchen_pans_parent_class)->dispose (object);
}

static void
fm_kitchen_pans_class_init (FmKitchenPansClass *klass)
{
  GtkWidgetClass *widget_class = GTK_WIDGET_CLASS (klass);

  G_OBJECT_CLASS (klass)->dispose = fm_kitchen_pans_dispose;
  g_type_ensure (FM_TYPE_WRAP_LAYOUT);
  widget_class->focus = fm_widget_pass_focus;
  signals[CHOSEN] = g_signal_new ("chosen", FM_TYPE_KITCHEN_PANS, G_SIGNAL_RUN_LAST, 0, NULL, NULL,
                                  NULL, G_TYPE_NONE, 1, G_TYPE_INT);
  gtk_widget_class_set_template_from_resource (
      widget_class, "/io/github/forcemeat/Forcemeat/ui/kitchen/fm-kitchen-pans.ui");
  gtk_widget_class_set_layout_manager_type (widget_class, GTK_TYPE_BIN_LAYOUT);
  gtk_widget_class_bind_template_child (widget_class, FmKitchenPans, box);
  gtk_widget_class_bind_template_child (widget_class, FmKitchenPans, pan_box);
  gtk_widget_class_bind_template_child (widget_class, FmKitchenPans, rest_box);
}

static void
fm_kitchen_pans_init (FmKitchenPans *self)
{
  gtk_widget_init_template (GTK_WIDGET (self));
  add_tiles (self);
}

/* What rests, and what has rested and waits for the scale. */
static gboolean
is_beside (const FmKitchenPortion *portion)
{
  return portion->stage == FM_STAGE_RESTING ||
         (portion->stage == FM_STAGE_RESTED && isnan (portion->cooked_g));
}

static void
list_beside (const FmKitchenState *state, int beside[N_RESTING])
{
  guint n = 0;

  for (int i = 0; i < (int)state->n_portions && n < N_RESTING; i++)
    if (is_beside (&state->portions[i]))
      beside[n++] = i;
  while (n < N_RESTING)
    beside[n++] = -1;
}

void
fm_kitchen_pans_show (FmKitchenPans *self,
                      const FmKitchenState *state,
                      const FmKitchenPlan *plan,
                      int chosen,
                      const FmKitchenMoment *now)
{
  int beside[N_RESTING];

  g_return_if_fail (FM_IS_KITCHEN_PANS (self));
  list_beside (state, beside);
  for (guint i = 0; i < G_N_ELEMENTS (self->tiles); i++) {
    const int portion =
        i < FM_KITCHEN_MAX_POSITIONS ? state->pan[i] : beside[i - FM_KITCHEN_MAX_POSITIONS];

    fm_kitchen_tile_show (self->tiles[i], state, plan, portion, portion == chosen, now,
                          portion >= 0 ? self->estimates[portion] : NULL);
  }
  gtk_widget_set_visible (GTK_WIDGET (self->rest_box), beside[0] >= 0);
}

void
fm_kitchen_pans_set_estimate (FmKitchenPans *self, int portion, const char *text)
{
  g_return_if_fail (FM_IS_KITCHEN_PANS (self));
  g_return_if_fail (portion >= 0 && portion < FM_KITCHEN_MAX_PORTIONS);
  g_free (self->estimates[portion]);
  self->estimates[portion] = g_strdup (text);
}
