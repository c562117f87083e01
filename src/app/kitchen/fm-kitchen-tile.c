/* SPDX-FileCopyrightText: 2026 the Forcemeat developers
 * SPDX-License-Identifier: GPL-3.0-or-later */
/* fm-kitchen-tile.c - one portion, to be read from two metres: where it stands and its timer */
#include "app/kitchen/fm-kitchen-tile.h"

#include <glib/gi18n-lib.h>
#include <math.h>

#include "app/kitchen/fm-kitchen-clock.h"
#include "app/session/fm-notebook-settings.h"
#include "app/widgets/fm-widget.h"

struct _FmKitchenTile {
  GtkWidget parent_instance;

  GtkToggleButton *button;
  GtkLabel *title_label;
  GtkLabel *stage_label;
  GtkLabel *time_label;
  GtkLabel *plan_label;
  GtkLabel *heat_label;
  GtkLabel *core_label;
  GtkLabel *estimate_label;

  int portion;
  gboolean showing;
};

G_DEFINE_FINAL_TYPE (FmKitchenTile, fm_kitchen_tile, GTK_TYPE_WIDGET)

enum {
  CHOSEN,
  N_SIGNALS,
};

static guint signals[N_SIGNALS];

static void
toggled_cb (FmKitchenTile *self)
{
  if (!self->showing)
    g_signal_emit (self, signals[CHOSEN], 0);
}

static void
show_text (GtkLabel *label, const char *text)
{
  fm_widget_set_label (label, text != NULL ? text : "");
  gtk_widget_set_visible (GTK_WIDGET (label), text != NULL);
}

static const char *
stage_text (const FmKitchenPortion *portion, gboolean is_next)
{
  switch (portion->stage) {
  case FM_STAGE_WAITING:
    return is_next ? _ ("Next") : _ ("Waiting");
  case FM_STAGE_SALTED:
    return _ ("Salted");
  case FM_STAGE_SIDE_1:
    return _ ("First side");
  case FM_STAGE_SIDE_2:
    return _ ("Second side");
  case FM_STAGE_RESTING:
    return _ ("Resting");
  case FM_STAGE_RESTED:
    return _ ("Rested");
  }
  g_return_val_if_reached (NULL);
}

static char *
plan_text (const FmKitchenTimer *timer)
{
  const double left_s = timer->planned_s - timer->elapsed.s;
  g_autofree char *planned = fm_kitchen_clock_text (timer->planned_s);
  g_autofree char *left = fm_kitchen_clock_text (fabs (left_s));
  g_autofree char *text =
      g_strdup_printf (left_s >= 0.0 ? _ ("%s left of %s") : _ ("%s over %s"), left, planned);
  const char *basis = timer->is_common_practice ? _ ("common practice") : _ ("as planned");

  return g_strdup_printf ("%s\n%s%s", text, basis,
                          timer->elapsed.by_wall ? _ (", by the wall clock") : "");
}

static void
show_timer (FmKitchenTile *self,
            const FmKitchenState *state,
            const FmKitchenPlan *plan,
            const FmKitchenMoment *now)
{
  FmKitchenTimer timer;
  const gboolean runs = fm_kitchen_timer (state, plan, self->portion, now, &timer);
  g_autofree char *time = runs ? fm_kitchen_clock_text (timer.elapsed.s) : NULL;
  g_autofree char *text = runs ? plan_text (&timer) : NULL;

  fm_widget_set_label (self->time_label, runs ? time : "–");
  show_text (self->plan_label, text);
  fm_widget_set_class (GTK_WIDGET (self), "fm-over", runs && timer.elapsed.s >= timer.planned_s);
}

static void
show_heat (FmKitchenTile *self, const FmKitchenPortion *portion, const FmKitchenMoment *now)
{
  const FmKitchenMoment *end = fm_kitchen_is_on_heat (portion) ? now : &portion->off;
  g_autofree char *time = NULL;
  g_autofree char *text = NULL;

  if (portion->was_on) {
    time = fm_kitchen_clock_text (fm_kitchen_span (&portion->on, end).s);
    text = g_strdup_printf (_ ("%s on the heat"), time);
  }
  show_text (self->heat_label, text);
}

static void
show_core (FmKitchenTile *self, const FmKitchenPortion *portion, const FmKitchenMoment *now)
{
  g_autofree char *temp = fm_notebook_text (FM_MEASURE_TEMPERATURE, portion->core_c, 1);
  g_autofree char *ago = NULL;
  g_autofree char *text = NULL;

  if (!isnan (portion->core_c)) {
    ago = fm_kitchen_clock_text (fm_kitchen_span (&portion->core_at, now).s);
    /* TRANSLATORS: a temperature, then how long ago it was read: "0:20" */
    text = g_strdup_printf (_ ("Core %s, read %s ago"), temp, ago);
  }
  show_text (self->core_label, text);
}

static void
fm_kitchen_tile_dispose (GObject *object)
{
  fm_widget_drop_template (GTK_WIDGET (object), FM_TYPE_KITCHEN_TILE);
  G_OBJECT_CLASS (fm_kitchen_tile_parent_class)->dispose (object);
}

static void
fm_kitchen_tile_class_init (FmKitchenTileClass *klass)
{
  GtkWidgetClass *widget_class = GTK_WIDGET_CLASS (klass);

  G_OBJECT_CLASS (klass)->dispose = fm_kitchen_tile_dispose;
  signals[CHOSEN] = g_signal_new ("chosen", FM_TYPE_KITCHEN_TILE, G_SIGNAL_RUN_LAST, 0, NULL, NULL,
                                  NULL, G_TYPE_NONE, 0);
  gtk_widget_class_set_template_from_resource (
      widget_class, "/io/github/forcemeat/Forcemeat/ui/kitchen/fm-kitchen-tile.ui");
  gtk_widget_class_set_layout_manager_type (widget_class, GTK_TYPE_BIN_LAYOUT);
  gtk_widget_class_bind_template_child (widget_class, FmKitchenTile, button);
  gtk_widget_class_bind_template_child (widget_class, FmKitchenTile, title_label);
  gtk_widget_class_bind_template_child (widget_class, FmKitchenTile, stage_label);
  gtk_widget_class_bind_template_child (widget_class, FmKitchenTile, time_label);
  gtk_widget_class_bind_template_child (widget_class, FmKitchenTile, plan_label);
  gtk_widget_class_bind_template_child (widget_class, FmKitchenTile, heat_label);
  gtk_widget_class_bind_template_child (widget_class, FmKitchenTile, core_label);
  gtk_widget_class_bind_template_child (widget_class, FmKitchenTile, estimate_label);
  gtk_widget_class_bind_template_callback (widget_class, toggled_cb);
}

static void
fm_kitchen_tile_init (FmKitchenTile *self)
{
  self->portion = -1;
  gtk_widget_init_template (GTK_WIDGET (self));
}

GtkWidget *
fm_kitchen_tile_new (void)
{
  return g_object_new (FM_TYPE_KITCHEN_TILE, NULL);
}

int
fm_kitchen_tile_get_portion (FmKitchenTile *self)
{
  g_return_val_if_fail (FM_IS_KITCHEN_TILE (self), -1);
  return self->portion;
}

static void
name_tile (FmKitchenTile *self, const char *title, const char *stage)
{
  g_autofree char *spoken = g_strdup_printf ("%s: %s", title, stage);

  fm_widget_set_label (self->title_label, title);
  fm_widget_set_label (self->stage_label, stage);
  gtk_accessible_update_property (GTK_ACCESSIBLE (self->button), GTK_ACCESSIBLE_PROPERTY_LABEL,
                                  spoken, -1);
}

void
fm_kitchen_tile_show (FmKitchenTile *self,
                      const FmKitchenState *state,
                      const FmKitchenPlan *plan,
                      int portion,
                      gboolean is_chosen,
                      const FmKitchenMoment *now,
                      const char *estimate)
{
  g_autofree char *title = g_strdup_printf (_ ("Portion %d"), portion + 1);

  g_return_if_fail (FM_IS_KITCHEN_TILE (self));
  self->portion = portion;
  gtk_widget_set_visible (GTK_WIDGET (self), portion >= 0);
  if (portion < 0)
    return;
  self->showing = TRUE;
  gtk_toggle_button_set_active (self->button, is_chosen);
  self->showing = FALSE;
  name_tile (self, title,
             stage_text (&state->portions[portion], portion == fm_kitchen_next_portion (state)));
  show_timer (self, state, plan, now);
  show_heat (self, &state->portions[portion], now);
  show_core (self, &state->portions[portion], now);
  show_text (self->estimate_label, estimate);
}
