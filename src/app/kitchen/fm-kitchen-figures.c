/* SPDX-FileCopyrightText: 2026 the Forcemeat developers
 * SPDX-License-Identifier: GPL-3.0-or-later */
/* fm-kitchen-figures.c - what each authority asks for the blend's animals, while it cooks */
#include "app/kitchen/fm-kitchen-figures.h"

#include <glib/gi18n-lib.h>
#include <math.h>

#include "app/cook/fm-cook-food.h"
#include "app/kitchen/fm-kitchen-clock.h"
#include "app/widgets/fm-widget.h"
#include "core/cooking/fm-caution.h"

struct _FmKitchenFigures {
  GtkWidget parent_instance;

  GtkWidget *box;
  GtkLabel *figures_label;

  char *ruling;
};

G_DEFINE_FINAL_TYPE (FmKitchenFigures, fm_kitchen_figures, GTK_TYPE_WIDGET)

enum {
  PROP_0,
  PROP_RULING,
  N_PROPS,
};

static GParamSpec *props[N_PROPS];

static char *
row_text (const FmHoldRow *row)
{
  g_autofree char *temp = fm_hold_row_temp_format (row);
  g_autofree char *hold = fm_kitchen_clock_text (row->hold_s);

  if (row->hold_s <= 0.0)
    return g_steal_pointer (&temp);
  if (row->hold_s < 1.0)
    return g_strdup_printf (_ ("%s, held less than 1 s"), temp);
  /* TRANSLATORS: a temperature, then a time as minutes:seconds */
  return g_strdup_printf (_ ("%s, held %s"), temp, hold);
}

/* A long table by its two ends. */
static char *
figure_text (FmAuthority authority, const FmCookFood *food)
{
  FmHoldRow rows[FM_AUTHORITY_MAX_ROWS];
  const guint n = fm_authority_rows (authority, food, rows);
  g_autofree char *first = n > 0 ? row_text (&rows[0]) : NULL;
  g_autofree char *last = n > 1 ? row_text (&rows[n - 1]) : NULL;

  if (n == 0)
    return NULL;
  if (n == 1)
    return g_strdup_printf ("%s: %s", fm_authority_name (authority), first);
  if (n == 2)
    return g_strdup_printf (_ ("%s: %s, or %s"), fm_authority_name (authority), first, last);
  /* TRANSLATORS: authority, then the first and the last row of its table */
  return g_strdup_printf (_ ("%s: from %s to %s"), fm_authority_name (authority), first, last);
}

static void
add (GString *text, FmAuthority authority, const FmCookFood *food)
{
  g_autofree char *line = figure_text (authority, food);

  if (line != NULL)
    g_string_append_printf (text, "%s%s", text->len > 0 ? "\n" : "", line);
}

static char *
figures_text (const FmCookFood *food)
{
  const FmAuthority ruling = fm_authority_ruling (food->species);
  g_autoptr (GString) text = g_string_new (NULL);

  add (text, ruling, food);
  for (int i = 0; i < FM_N_AUTHORITIES; i++)
    if (i != (int)ruling && fm_authority_applies ((FmAuthority)i, food->species))
      add (text, (FmAuthority)i, food);
  return g_string_free (g_steal_pointer (&text), FALSE);
}

static void
food_read_cb (GObject *source, GAsyncResult *result, gpointer data)
{
  g_autoptr (FmKitchenFigures) self = data;
  FmCookFood food = { FM_SPECIES_BIT (FM_SPECIES_UNKNOWN), (double)NAN };
  g_autofree char *text = NULL;
  g_autofree char *figure = NULL;

  /* Without an answer the figures for meat of unknown kind stand: all of them. */
  fm_cook_food_finish (result, &food, NULL);
  if (self->figures_label == NULL)
    return;
  text = figures_text (&food);
  figure = fm_caution_figure_text (food.species);
  gtk_label_set_text (self->figures_label, text);
  g_free (self->ruling);
  self->ruling = g_strdup_printf (_ ("The figure that rules for this blend: %s."), figure);
  g_object_notify_by_pspec (G_OBJECT (self), props[PROP_RULING]);
}

static void
fm_kitchen_figures_get_property (GObject *object, guint id, GValue *value, GParamSpec *pspec)
{
  if (id == PROP_RULING)
    g_value_set_string (value, FM_KITCHEN_FIGURES (object)->ruling);
  else
    G_OBJECT_WARN_INVALID_PROPERTY_ID (object, id, pspec);
}

static void
fm_kitchen_figures_dispose (GObject *object)
{
  fm_widget_drop_template (GTK_WIDGET (object), FM_TYPE_KITCHEN_FIGURES);
  g_clear_pointer (&FM_KITCHEN_FIGURES (object)->ruling, g_free);
  G_OBJECT_CLASS (fm_kitchen_figures_parent_class)->dispose (object);
}

static void
fm_kitchen_figures_class_init (FmKitchenFiguresClass *klass)
{
  GObjectClass *object_class = G_OBJECT_CLASS (klass);
  GtkWidgetClass *widget_class = GTK_WIDGET_CLASS (klass);

  object_class->dispose = fm_kitchen_figures_dispose;
  object_class->get_property = fm_kitchen_figures_get_property;
  props[PROP_RULING] =
      g_param_spec_string ("ruling", NULL, NULL, NULL, G_PARAM_READABLE | G_PARAM_STATIC_STRINGS);
  g_object_class_install_properties (object_class, N_PROPS, props);
  gtk_widget_class_set_template_from_resource (
      widget_class, "/io/github/forcemeat/Forcemeat/ui/kitchen/fm-kitchen-figures.ui");
  gtk_widget_class_set_layout_manager_type (widget_class, GTK_TYPE_BIN_LAYOUT);
  gtk_widget_class_bind_template_child (widget_class, FmKitchenFigures, box);
  gtk_widget_class_bind_template_child (widget_class, FmKitchenFigures, figures_label);
}

static void
fm_kitchen_figures_init (FmKitchenFigures *self)
{
  gtk_widget_init_template (GTK_WIDGET (self));
}

void
fm_kitchen_figures_set_version (FmKitchenFigures *self, FmNotebook *notebook, gint64 version_id)
{
  g_return_if_fail (FM_IS_KITCHEN_FIGURES (self));
  fm_cook_food_async (notebook, version_id, NULL, food_read_cb, g_object_ref (self));
}
